"""The calculation runs outside the station, one at a time, and whatever happens to it the station goes on."""

import asyncio
import fcntl
import json
import math
import os
import signal
import subprocess
import sys
from collections.abc import Callable, Iterator
from contextlib import suppress
from pathlib import Path
from typing import Any

import pytest

from station.bench.calculation import worker as module
from station.bench.calculation.results import Calculator, Results, calculate
from station.bench.calculation.worker import WORKERS, CalculationFailed, Worker, answered, turn_file
from station.practical import events as e
from station.practical.dataset import question_for
from station.practical.kinds import ready_plan
from station.practical.kinds.answers import Result
from station.practical.state import Portion, Reading, Repeat, State
from tests.conftest import PATIENCE_S
from tests.practical.walk import Walk

VOLUMES_CM3 = [4.0 * portion for portion in range(11)]


def question(kink_cm3: float = 22.0, falling: bool = True) -> dict[str, Any]:
    """The question of a repeat whose readings lie on two straight lines, but for steps of 0.02 °C to and fro."""
    after = -0.15 if falling else 0.3
    readings = tuple(
        Reading(
            portion, 20.0 + (0.3 * v if v < kink_cm3 else 0.3 * kink_cm3 + after * (v - kink_cm3)) + wobble, 0.03, True
        )
        for portion, v in enumerate(VOLUMES_CM3)
        for wobble in (0.02 * (-1) ** portion,)
    )
    portions = tuple(Portion(portion, 60.0 * portion, 4.0) for portion in range(1, 11))
    return question_for(State(repeats=(Repeat(1, 0.0, "ended", None, portions, readings),)))


@pytest.fixture
def worker(monkeypatch: pytest.MonkeyPatch) -> Iterator[Worker]:
    """A worker of this test's own, in place of the one that stays warm from test to test."""
    own = Worker()
    monkeypatch.setitem(WORKERS, "calculation", own)
    yield own
    own.end()


def number_of(worker: Worker) -> int:
    """Return the number of its process, which runs."""
    assert worker.process is not None
    assert worker.process.poll() is None
    return worker.process.pid


async def until(condition: Callable[[], bool]) -> None:
    """Wait for something of another process, which tells of it to nobody."""
    async with asyncio.timeout(PATIENCE_S):
        while not condition():  # noqa: ASYNC110
            await asyncio.sleep(0.002)


async def test_the_worker_finds_where_the_lines_cross() -> None:
    answer = await calculate(question(22.0))
    lines = answer["mean"]["straight_lines"]
    assert math.isclose(lines["end_point_cm3"], 22.0, abs_tol=0.3)
    low, high = lines["interval_95_cm3"]
    assert low < 22.0 < high
    assert [each["repeat"] for each in answer["repeats"]] == [1]


async def test_readings_without_a_crossing_are_refused_in_words_not_by_failing() -> None:
    answer = await calculate(question(falling=False))
    assert answer["mean"]["straight_lines"] is None
    assert answer["mean"]["refused"]["straight_lines"]


async def test_a_question_that_cannot_be_answered_gives_its_reason() -> None:
    with pytest.raises(CalculationFailed, match="plan"):
        await calculate({**question(), "plan": {}})


async def test_a_file_of_the_same_name_in_the_working_folder_is_not_run(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, worker: Worker
) -> None:
    for name in ("json.py", "random.py", "station.py", "numpy.py"):
        (tmp_path / name).write_text("raise SystemExit('the wrong file was run')")
    monkeypatch.chdir(tmp_path)
    assert (await calculate(question()))["mean"]["straight_lines"]


class Answers:
    """What the calculator says."""

    def __init__(self) -> None:
        self.told: list[tuple[int, dict[str, Any]]] = []
        self.calculator: Calculator[int] = Calculator(lambda seq, answer: self.told.append((seq, answer)))


async def test_the_newest_question_wins_and_those_in_between_are_dropped() -> None:
    answers = Answers()
    for seq in range(1, 6):
        answers.calculator.ask(seq, question())
        if seq == 1:
            await asyncio.sleep(0.05)  # it is being calculated while the others come
    await answers.calculator.finished()
    assert [seq for seq, _ in answers.told] == [1, 5]
    answers.calculator.ask(6, question())
    await answers.calculator.finished()
    assert answers.told[-1][0] == 6


async def test_one_process_answers_results_and_class_results_and_another_one_predictions(worker: Worker) -> None:
    first = await calculate(question())
    number = number_of(worker)
    asked = {"name": "Bench 7", "facts": {"group": None, "aside": [], "happened": []}, "question": question()}
    told = await answered("class_result", {"benches": {"bench-7": asked}})
    assert told["class"]["benches"][0]["bench"] == "bench-7"
    with pytest.raises(CalculationFailed, match="plan"):
        await calculate({**question(), "plan": {}})
    assert await calculate(question()) == first, "what was asked in between changes nothing"
    assert number_of(worker) == number, "a question that has no answer does not end it either"
    await answered("prediction", PREDICTION)
    assert number_of(WORKERS["prediction"]) != number


PREDICTION = {"plan": ready_plan("endothermic").model_dump(mode="json"), "compare": False}


async def test_a_prediction_does_not_wait_for_results_that_are_long_under_way(worker: Worker) -> None:
    await calculate(question())
    os.kill(number_of(worker), signal.SIGSTOP)
    results = asyncio.ensure_future(calculate(question()))
    assert (await answered("prediction", PREDICTION))["kind"] == "once"
    assert not results.done()
    os.kill(number_of(worker), signal.SIGCONT)
    assert (await results)["mean"]["straight_lines"]


async def test_one_that_is_killed_over_a_question_or_while_it_idles_is_replaced_and_the_answer_comes(
    worker: Worker,
) -> None:
    asked = asyncio.ensure_future(calculate(question()))
    await until(lambda: worker.process is not None and "numpy" in maps_of(worker.process.pid))  # it has the question
    first = number_of(worker)
    os.kill(first, signal.SIGKILL)
    assert (await asked)["mean"]["straight_lines"]
    second = number_of(worker)
    os.kill(second, signal.SIGKILL)
    assert (await calculate(question()))["mean"]["straight_lines"]
    assert len({first, second, number_of(worker)}) == 3


async def test_one_that_hangs_is_killed_at_the_limit_and_replaced(
    worker: Worker, monkeypatch: pytest.MonkeyPatch
) -> None:
    await calculate(question())
    number = number_of(worker)
    os.kill(number, signal.SIGSTOP)
    with monkeypatch.context() as patch, pytest.raises(CalculationFailed, match="no answer within"):
        patch.setattr(module, "LIMIT_S", 0.1)
        await calculate(question())
    assert not maps_of(number)
    assert (await calculate(question()))["mean"]["straight_lines"]


async def test_one_that_idles_ends_by_itself_and_the_next_question_starts_another(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    worker = Worker(idle_s=0.2)
    monkeypatch.setitem(WORKERS, "calculation", worker)
    await calculate(question())
    ended = worker.process
    assert ended is not None
    assert await asyncio.to_thread(ended.wait, PATIENCE_S) == 0
    assert (await calculate(question()))["mean"]["straight_lines"]
    assert worker.process is not ended
    worker.end()
    assert module.IDLE_S == 120.0


ASK_AND_DIE = """
import asyncio, json, os, sys
from station.bench.calculation.worker import WORKERS, answered
asyncio.run(answered("results", json.loads(sys.stdin.read())))
print(WORKERS["calculation"].process.pid, flush=True)
os.kill(os.getpid(), 9)
"""


async def test_it_ends_when_its_station_is_killed() -> None:
    command, asked = [sys.executable, "-c", ASK_AND_DIE], json.dumps(question())
    done = await asyncio.to_thread(
        subprocess.run, command, input=asked, capture_output=True, text=True, timeout=PATIENCE_S, check=False
    )
    assert (done.returncode, done.stderr) == (-9, "")
    await until(lambda: not maps_of(int(done.stdout)))


def maps_of(number: int) -> str:
    """Return what a process has loaded (proc_pid_maps): nothing once it has ended."""
    try:
        return Path(f"/proc/{number}/maps").read_text()
    except (OSError, ProcessLookupError):
        return ""


def child(monkeypatch: pytest.MonkeyPatch, tmp_path: Path, program: str) -> None:
    """Let the worker run this shell program in place of Python."""
    path = tmp_path / "child"
    path.write_text(f"#!/bin/sh\n{program}\n")
    path.chmod(0o755)
    monkeypatch.setattr(sys, "executable", str(path))


HANGS = "read question; read another"


@pytest.mark.parametrize(
    ("program", "words"),
    [
        ("echo 'MemoryError: no room' >&2; exit 1", "MemoryError: no room"),
        ("kill -9 $$", "exit status -9"),
        ("exit 3", "exit status 3"),
        ("read question; echo 'not json'; read another", "no answer that can be read"),
        ("read question; echo '[]'; read another", "no answer that can be read"),
        ('read question; echo \'{"asked": "results", "answer": []}\'', "no answer that can be read"),
        ('read question; echo \'{"asked": "results", "answer": {}}\'', "no answer that can be read"),
        ('read question; echo \'{"asked": "prediction", "answer": {}}\'', "no answer that can be read"),
        ("read question; printf '{\"asked\": '; exit 5", "exit status 5"),
        ("exec 0<&-; sleep 0.1; exit 4", "exit status 4"),
    ],
)
async def test_a_child_that_dies_or_talks_nonsense_leaves_words(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, worker: Worker, program: str, words: str
) -> None:
    answers = Answers()
    with monkeypatch.context() as patch:
        child(patch, tmp_path, program)
        answers.calculator.ask(1, question())
        await answers.calculator.finished()
    assert answers.told[0][0] == 1
    assert words in answers.told[0][1]["mean"]["refused"]["straight_lines"]
    assert "readings are kept" in answers.told[0][1]["mean"]["refused"]["straight_lines"]


async def test_after_nonsense_the_next_question_is_answered(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, worker: Worker
) -> None:
    answers = Answers()
    with monkeypatch.context() as patch:
        child(patch, tmp_path, "read question; echo 'not json'; read another")
        answers.calculator.ask(1, question())
        await answers.calculator.finished()
        assert not at_work(tmp_path), "who talks nonsense is killed"
    answers.calculator.ask(2, question())
    await answers.calculator.finished()
    assert [bool(answer["mean"]["straight_lines"]) for _, answer in answers.told] == [False, True]


async def test_a_child_that_cannot_be_started_leaves_words(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, worker: Worker
) -> None:
    monkeypatch.setattr(module, "nice", lambda: ())
    monkeypatch.setattr(sys, "executable", str(tmp_path / "no such program"))
    answers = Answers()
    answers.calculator.ask(1, question())
    await answers.calculator.finished()
    assert "No such file" in answers.told[0][1]["mean"]["refused"]["straight_lines"]


async def test_a_child_that_hangs_is_ended_at_the_limit(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, worker: Worker
) -> None:
    child(monkeypatch, tmp_path, HANGS)
    monkeypatch.setattr(module, "LIMIT_S", 0.3)
    answers = Answers()
    answers.calculator.ask(1, question())
    await answers.calculator.finished()
    assert "no answer within" in answers.told[0][1]["mean"]["refused"]["straight_lines"]
    assert not at_work(tmp_path)


async def test_closing_ends_the_child_and_tells_nothing_more(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, worker: Worker
) -> None:
    child(monkeypatch, tmp_path, HANGS)
    answers = Answers()
    answers.calculator.ask(1, question())
    await until(lambda: at_work(tmp_path))
    await answers.calculator.close()
    assert answers.told == []
    assert not at_work(tmp_path)


async def test_a_calculation_waits_for_its_turn_on_this_machine_and_gives_it_back() -> None:
    with turn_file("calculation").open("a") as turn:
        fcntl.flock(turn, fcntl.LOCK_EX)
        waiting = asyncio.ensure_future(calculate(question()))
        await asyncio.sleep(0.2)
        assert not waiting.done()
        fcntl.flock(turn, fcntl.LOCK_UN)
        assert (await waiting)["mean"]["straight_lines"]
        number_of(WORKERS["calculation"])
        fcntl.flock(turn, fcntl.LOCK_EX | fcntl.LOCK_NB)  # a worker that idles keeps nobody waiting


async def test_a_turn_file_that_cannot_be_opened_leaves_words(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("tempfile.tempdir", str(tmp_path / "gone"))
    with pytest.raises(CalculationFailed, match="No such file"):
        await calculate(question())


def shown(followed: "Followed") -> Result | None:
    return followed.results.newest


class Followed:
    """The results of a practical that is walked through."""

    def __init__(self) -> None:
        self.told = 0
        self.results = Results(self._tell)

    def _tell(self) -> None:
        self.told += 1

    async def asks(self, walk: Walk, practical: int = 1) -> bool:
        """Whether this state makes it ask."""
        before = self.told
        self.results.follow(practical, len(walk.happened), walk.state)
        await self.results.calculator.finished()
        return self.told > before


async def test_it_is_asked_anew_when_the_question_has_changed_and_only_then() -> None:
    walk, followed = Walk(repeats=2), Followed()
    walk.act("begin")
    assert not await followed.asks(walk), "there is no reading yet"
    walk.rest(20.0)
    assert await followed.asks(walk)
    unread: tuple[tuple[str, dict[str, Any]], ...] = (
        ("note", {"text": "a note"}),
        ("portion_added", {"portion": 1}),
        ("portion_volume", {"portion": 1, "volume_cm3": 3.5}),
    )
    for act, values in unread:
        walk.sample(20.0)
        assert not await followed.asks(walk)
        walk.act(act, **values)
        assert not await followed.asks(walk), act
    walk.rest(20.5)
    assert await followed.asks(walk)
    corrections: tuple[tuple[str, dict[str, Any]], ...] = (
        ("portion_volume", {"portion": 1, "volume_cm3": 3.2}),
        ("portion_unsure", {"portion": 1}),
        ("portion_sure", {"portion": 1}),
        ("finish", {}),
        ("repeat_set_aside", {"repeat": 1, "reason": "spilled"}),
        ("repeat_restored", {"repeat": 1}),
    )
    for act, values in corrections:
        walk.act(act, **values)
        assert await followed.asks(walk), act
        assert not await followed.asks(walk), f"{act} is asked about once"
    walk.keep([e.AlkaliMeasured(19.0, 0.1, "probe")])
    assert await followed.asks(walk)


async def test_results_of_other_readings_are_gone_at_once_and_come_too_late() -> None:
    walk, followed = Walk(repeats=2), Followed()
    walk.to_pour()
    assert await followed.asks(walk)
    for label in ("Group 4", "Group 5"):  # as many readings each
        walk.keep([e.SetAdopted(label, ((1, 0.0, 20.0), (1, 3.0, 21.0 + len(walk.happened))))])
        followed.results.follow(1, len(walk.happened), walk.state)
        assert shown(followed) is None
        while followed.results.calculator._waiting is not None:  # noqa: ASYNC110 - until it is being calculated
            await asyncio.sleep(0)
    await followed.results.calculator.finished()
    newest = shown(followed)
    assert newest is not None
    assert newest["seq"] == len(walk.happened), "what was asked of Group 4 came too late"
    assert followed.told == 2
    walk.act("adopt_returned")
    assert await followed.asks(walk), "the own readings again"
    assert not await followed.asks(Walk(), 2)
    assert shown(followed) is None, "another practical, without a reading"


def at_work(folder: Path) -> bool:
    """Whether a process runs this folder's program: its number may soon be another's (proc_pid_cmdline)."""
    program = str(folder / "child").encode()
    for each in Path("/proc").glob("[0-9]*/cmdline"):
        with suppress(OSError):  # one that has just ended
            if program in each.read_bytes().split(b"\0"):
                return True
    return False
