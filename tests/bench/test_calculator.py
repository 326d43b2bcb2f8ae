"""The calculation runs outside the station, one at a time, and whatever happens to it the station goes on."""

import asyncio
import fcntl
import math
import os
import sys
from pathlib import Path
from typing import Any

import pytest

from station.bench import calculator as module
from station.bench.calculator import CalculationFailed, Calculator, calculate
from station.practical.dataset import question_for
from station.practical.state import Portion, Reading, Repeat, State

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


async def test_the_child_finds_where_the_lines_cross() -> None:
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
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    for name in ("json.py", "random.py", "station.py", "numpy.py"):
        (tmp_path / name).write_text("raise SystemExit('the wrong file was run')")
    monkeypatch.chdir(tmp_path)
    assert (await calculate(question()))["mean"]["straight_lines"]


class Answers:
    """What the calculator says."""

    def __init__(self) -> None:
        self.told: list[tuple[int, dict[str, Any]]] = []
        self.calculator = Calculator(lambda seq, answer: self.told.append((seq, answer)))


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


def child(monkeypatch: pytest.MonkeyPatch, tmp_path: Path, program: str) -> None:
    """Let a calculation run this shell program in place of Python."""
    path = tmp_path / "child"
    path.write_text(f"#!/bin/sh\n{program}\n")
    path.chmod(0o755)
    monkeypatch.setattr(sys, "executable", str(path))


@pytest.mark.parametrize(
    ("program", "words"),
    [
        ("echo 'MemoryError: no room' >&2; exit 1", "MemoryError: no room"),
        ("kill -9 $$", "exit status -9"),
        ("exit 3", "exit status 3"),
        ("cat > /dev/null; echo 'not json'", "no answer that can be read"),
        ("cat > /dev/null; echo '[]'", "no answer that can be read"),
        ("exec 0<&-; sleep 0.1; exit 4", "exit status 4"),
    ],
)
async def test_a_child_that_dies_leaves_words(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, program: str, words: str
) -> None:
    answers = Answers()
    with monkeypatch.context() as patch:
        child(patch, tmp_path, program)
        answers.calculator.ask(1, question())
        await answers.calculator.finished()
    assert answers.told[0][0] == 1
    assert words in answers.told[0][1]["mean"]["refused"]["straight_lines"]
    assert "readings are kept" in answers.told[0][1]["mean"]["refused"]["straight_lines"]


async def test_after_a_failure_the_next_question_is_answered(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    answers = Answers()
    with monkeypatch.context() as patch:
        child(patch, tmp_path, "kill -9 $$")
        answers.calculator.ask(1, question())
        await answers.calculator.finished()
    answers.calculator.ask(2, question())
    await answers.calculator.finished()
    assert [bool(answer["mean"]["straight_lines"]) for _, answer in answers.told] == [False, True]


async def test_a_child_that_cannot_be_started_leaves_words(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(module, "nice", lambda: ())
    monkeypatch.setattr(sys, "executable", str(tmp_path / "no such program"))
    answers = Answers()
    answers.calculator.ask(1, question())
    await answers.calculator.finished()
    assert "No such file" in answers.told[0][1]["mean"]["refused"]["straight_lines"]


async def test_a_child_that_hangs_is_ended_at_the_limit(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    child(monkeypatch, tmp_path, f"echo $$ > {tmp_path}/pid; exec sleep 60")
    monkeypatch.setattr(module, "LIMIT_S", 0.3)
    answers = Answers()
    answers.calculator.ask(1, question())
    await answers.calculator.finished()
    assert "no answer within" in answers.told[0][1]["mean"]["refused"]["straight_lines"]
    assert not is_alive(int((tmp_path / "pid").read_text()))


async def test_closing_ends_the_child_and_tells_nothing_more(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    child(monkeypatch, tmp_path, f"echo $$ > {tmp_path}/pid; exec sleep 60")
    answers = Answers()
    answers.calculator.ask(1, question())
    while not (tmp_path / "pid").exists() or not (tmp_path / "pid").read_text():  # noqa: ASYNC110 - another process
        await asyncio.sleep(0.01)
    await answers.calculator.close()
    assert answers.told == []
    assert not is_alive(int((tmp_path / "pid").read_text()))


async def test_a_calculation_waits_for_its_turn_on_this_machine() -> None:
    with module._turn_file() as turn:
        fcntl.flock(turn, fcntl.LOCK_EX)
        waiting = asyncio.ensure_future(calculate(question()))
        await asyncio.sleep(0.2)
        assert not waiting.done()
        fcntl.flock(turn, fcntl.LOCK_UN)
        assert (await waiting)["mean"]["straight_lines"]


async def test_a_turn_file_that_cannot_be_opened_leaves_words(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("tempfile.tempdir", str(tmp_path / "gone"))
    with pytest.raises(CalculationFailed, match="No such file"):
        await calculate(question())


def is_alive(process: int) -> bool:
    try:
        os.kill(process, 0)
    except ProcessLookupError:
        return False
    return True
