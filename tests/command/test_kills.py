"""Twelve kills at random moments: what was answered is kept, nothing is invented, and the practical goes on.

Four times the whole station under its own command, eight times the bench without a server: each killed with SIGKILL,
while acts are told as fast as they are answered. All lives are one practical, on one record. Then six lives more, in
which the record's log is deleted at a random moment before the kill.
`python -m tests.benchmarks.bench_reliability` does it two hundred times.
"""

import json
import os
import random
import subprocess
import sys
import threading
import time
from collections import Counter
from collections.abc import Callable, Iterator, Sequence
from contextlib import suppress
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

import httpx
import pytest

from station.practical import events as e
from station.practical.fold import fold_all
from station.practical.state import State
from station.record.journal import FILE_NAME, first_broken, read_events
from tests.command.child import SETTINGS, Served
from tests.conftest import PATIENCE_S

BENCH_KILLS, STATION_KILLS = 8, 4
LOG_DELETED_BENCH, LOG_DELETED_STATION = 4, 2
MOST_ANSWERS, LONGEST_AFTER_S = 50, 0.1
"""A life ends at a random moment after a random number of answers: so few, or many, are answered on any machine."""
SPEED = 120.0

PLAN = """\
repeats = 10
[acid]
name = "nitric acid"
volume_cm3 = 25
[alkali]
name = "potassium hydroxide"
concentration_mol_dm3 = 0.4
[portions]
volume_cm3 = 1
count = 60
"""

Answer = dict[str, Any]
Tell = Callable[[Answer], Answer | None]


@dataclass
class Telling:
    """A person who tells acts without a pause, remembers what was answered, and tells again what was not."""

    chance: random.Random
    told: dict[str, Answer] = field(default_factory=dict)
    answered: dict[str, int] = field(default_factory=dict)
    refused: set[str] = field(default_factory=set)
    told_again: int = 0
    back_s: list[float] = field(default_factory=list)
    """How long each start took to its first answer."""

    def work(self, tell: Tell, where: Answer, ends: Sequence[threading.Timer]) -> None:
        """Tell act after act until the station is gone (None); what ends it begins after some have been answered."""
        enough = len(self.answered) + self.chance.randrange(MOST_ANSWERS)
        waiting = True
        while True:
            if waiting and len(self.answered) >= enough:
                for each in ends:
                    each.start()
                waiting = False
            key = self._key(where)
            answer = tell(self.told[key])
            if answer is None:
                return
            if answer["seq"] is None:
                assert key not in self.answered
                self.refused.add(key)
            else:
                assert self.answered.setdefault(key, answer["seq"]) == answer["seq"]
            where = answer

    def _key(self, where: Answer) -> str:
        """Choose what to tell: first what a kill left without an answer, at times what was answered long ago."""
        newest = next(reversed(self.told), None)
        if newest is not None and newest not in self.answered and newest not in self.refused:
            return newest
        if self.answered and self.chance.random() < 0.3:
            self.told_again += 1
            return self.chance.choice(list(self.answered))
        key = f"key {len(self.told)}"
        self.told[key] = {**self._act(where), "key": key}
        return key

    def _act(self, where: Answer) -> Answer:
        state, portion = where["state"], where["portion"]
        asked = {"ready": "begin", "rinse": "rinsed", "paused": "resume"}.get(state)
        if asked is not None:
            return {"act": asked}
        if self.chance.random() < (0.2 if state == "pour" else 0.002):
            return {"act": "portion_added", "portion": portion + 1}
        if portion and self.chance.random() < 0.98:
            return {"act": "portion_volume", "portion": portion, "volume_cm3": 1 + self.chance.randrange(20) / 100}
        return {"act": "pause" if portion else "portion_added", "portion": portion + 1}


class BenchLife:
    """One life of a bench without a server."""

    def __init__(self, record: Path, plan: Path) -> None:
        command = [sys.executable, str(Path(__file__).with_name("kill_child.py")), str(record), str(plan)]
        # What a killed process leaves in the temporary folder goes with the test's own.
        env = {**os.environ, "TMPDIR": str(record.parent)}
        self.process = subprocess.Popen(command, stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True, env=env)
        assert self.process.stdin is not None
        assert self.process.stdout is not None
        self._acts, self._answers = self.process.stdin, self.process.stdout
        self.where: Answer = json.loads(self._answers.readline())

    def tell(self, act: Answer) -> Answer | None:
        try:
            self._acts.write(json.dumps(act) + "\n")
            self._acts.flush()
            line = self._answers.readline()
        except BrokenPipeError:
            return None
        answer: Answer | None = json.loads(line) if line.endswith("\n") else None
        return answer

    def end(self) -> None:
        self.process.wait(timeout=PATIENCE_S)
        self._answers.close()
        with suppress(BrokenPipeError):  # an act that nobody was there to read
            self._acts.close()


class StationLife:
    """One life of `station serve`."""

    def __init__(self, folder: Path) -> None:
        self._served = Served(folder, SPEED, settings=SETTINGS.replace("[bench]", 'plan = "plan.toml"\n[bench]'))
        self.process = self._served.process
        self.where: Answer = self._served.state()

    def tell(self, act: Answer) -> Answer | None:
        try:
            answer = self._served.client.post("/api/acts", json=act)
        except httpx.TransportError:
            return None
        body = answer.json()
        assert answer.status_code in {200, 409}, body
        return {**body["state"], "seq": body["seq"] if answer.status_code == 200 else None}

    def end(self) -> None:
        self._served.wait()


def lives(folder: Path, chance: random.Random, bench: int, station: int) -> Iterator[BenchLife | StationLife]:
    (folder / "plan.toml").write_text(PLAN)
    kinds = ["bench"] * bench + ["station"] * station
    chance.shuffle(kinds)
    for kind in kinds:
        yield BenchLife(folder / "record", folder / "plan.toml") if kind == "bench" else StationLife(folder)


def state_of(record: Path) -> State:
    kept = list(read_events(record))
    chosen = next(each.seq for each in kept if isinstance(each.event, e.PlanChosen))
    return fold_all(kept[chosen - 1 :])


Survived = tuple[Path, Telling, list[tuple[State, Answer]]]


@pytest.fixture(scope="module")
def survived(tmp_path_factory: pytest.TempPathFactory) -> Survived:
    return killed(tmp_path_factory.mktemp("kills"), random.Random(60), BENCH_KILLS, STATION_KILLS)


def kill(life: BenchLife | StationLife, telling: Telling, acts: int, after_s: float) -> None:
    """Kill it after so long, when so many acts have been told."""
    time.sleep(after_s)
    while len(telling.told) < acts and life.process.poll() is None:
        time.sleep(0.001)
    life.process.kill()


def killed(folder: Path, chance: random.Random, bench: int, station: int) -> Survived:
    """The record after so many kills, what was told, for each start the state before it and where it stood after."""
    telling = Telling(chance)
    starts: list[tuple[State, Answer]] = []
    before: State | None = None
    begun_s = time.monotonic()
    for life in lives(folder, chance, bench, station):
        telling.back_s.append(time.monotonic() - begun_s)
        if before is not None:
            starts.append((before, life.where))
        killer = threading.Timer(chance.uniform(0.0, LONGEST_AFTER_S), life.process.kill)
        telling.work(life.tell, life.where, [killer])
        killer.join()
        life.end()
        assert life.process.returncode == -9
        assert first_broken(folder / "record") is None
        before = state_of(folder / "record")
        begun_s = time.monotonic()
    return folder / "record", telling, starts


@pytest.mark.fault("plug-pulled")
def test_every_act_that_was_answered_is_in_the_record_with_its_number(survived: Survived) -> None:
    record, telling, _ = survived
    kept = {each.seq: each.event for each in read_events(record)}
    assert len(telling.answered) > 200
    for key, seq in telling.answered.items():
        assert getattr(kept[seq], "key", None) == key


def test_nothing_is_invented_doubled_or_kept_after_a_refusal(survived: Survived) -> None:
    record, telling, _ = survived
    keys = Counter(key for each in read_events(record) if (key := getattr(each.event, "key", None)) is not None)
    assert set(keys.values()) == {1}
    assert set(telling.answered) <= set(keys) <= set(telling.told) - telling.refused
    unanswered = set(telling.told) - set(telling.answered) - telling.refused
    assert len(unanswered) <= 1  # the act that was under way at the last kill; the others were told again
    assert telling.told_again > 50


def test_what_is_kept_is_what_was_told(survived: Survived) -> None:
    record, telling, _ = survived
    for each in read_events(record):
        match each.event:
            case e.PortionAdded(portion=portion, key=key) | e.PortionVolumeCorrected(portion=portion, key=key):
                assert key is not None
                assert telling.told[key]["portion"] == portion


@pytest.mark.fault("plug-pulled")
def test_each_start_is_in_the_same_portion_of_the_same_repeat(survived: Survived) -> None:
    _, __, starts = survived
    assert len(starts) == BENCH_KILLS + STATION_KILLS - 1
    for before, after in starts:
        assert goes_on(before, after), (before, after)


def goes_on(before: State, after: Answer) -> bool:
    """Whether it stands where it stood; a sample between start and question may have settled what was waited for."""
    settled = {("start", "pour"), ("settle", "pour"), ("settle", "rinse")}
    same = (after["repeat"], after["portion"]) == (len(before.repeats), before.poured)
    return same and (after["state"] == before.step or (before.step, after["state"]) in settled)


def test_the_practical_went_on_and_no_portion_was_asked_for_twice(survived: Survived) -> None:
    record, _, starts = survived
    kept = [each.event for each in read_events(record)]
    prompts = Counter((each.repeat, each.portion) for each in kept if isinstance(each, e.PortionPrompted))
    assert set(prompts.values()) == {1}
    assert len(prompts) > 3
    assert sum(isinstance(each, e.StationStarted) for each in kept) == BENCH_KILLS + STATION_KILLS
    assert sum(isinstance(each, e.PlanChosen) for each in kept) == 1
    added = [(each.repeat, each.portion) for each in kept if isinstance(each, e.PortionAdded)]
    assert added == sorted(set(added))
    assert starts[-1][0].poured > 3


def test_numbers_have_no_gap_and_samples_time_never_goes_back_over_a_start(survived: Survived) -> None:
    record, _, __ = survived
    kept = list(read_events(record))
    assert [each.seq for each in kept] == list(range(1, len(kept) + 1))
    newest_s = 0.0
    for each in kept:
        if isinstance(each.event, e.StationStarted):
            assert each.time_s >= newest_s
        newest_s = max(newest_s, each.time_s)


@pytest.mark.fault("log-deleted")
def test_acts_answered_before_and_after_the_log_was_deleted_outlive_the_kill(tmp_path: Path) -> None:
    chance = random.Random(9)
    telling = Telling(chance)
    log = tmp_path / "record" / f"{FILE_NAME}-wal"
    for life in lives(tmp_path, chance, LOG_DELETED_BENCH, LOG_DELETED_STATION):
        after_s = chance.uniform(0.0, 2 * LONGEST_AFTER_S)
        deleter = threading.Timer(after_s * chance.random(), log.unlink)
        killer = threading.Timer(after_s, life.process.kill)
        telling.work(life.tell, life.where, [deleter, killer])
        deleter.join()
        killer.join()
        life.end()
        assert life.process.returncode == -9
        assert first_broken(tmp_path / "record") is None
        kept = {each.seq: each.event for each in read_events(tmp_path / "record")}
        assert not [key for key, seq in telling.answered.items() if getattr(kept.get(seq), "key", None) != key]
    assert len(telling.answered) > 100
