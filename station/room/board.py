"""The board: what each bench's events add up to, as tiles that a teacher takes in at a glance. Knows no broker.

Nothing on a tile is a result: the board may hang on the wall before results are shown.
"""

import re
from collections import deque
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from enum import IntEnum
from statistics import median
from types import MappingProxyType
from typing import Any, cast

from station.practical import events as e
from station.practical.fold import fold
from station.practical.questions import open_questions
from station.practical.state import State, Step
from station.room.contract import ReasonCode, ReasonShown, Tile
from station.words import members

# Where the tiles of the board stand: who needs help stands first, and nothing jumps while it is being read.
#
# A tile moves up when its bench needs more help, and down only once that has been over for a while; tiles change
# places at most every few seconds, and never among benches that need as much help: who came first stays first.


CALM_S = 20.0
"""How long a bench stays in its place after its trouble has ended, in s."""
EVERY_S = 4.0
"""Tiles change places at most so often, in s."""
MOVES_FROM = 2
"""Needs below this one move nothing."""


@dataclass(frozen=True)
class _Stay:
    rank: int
    since_s: float
    needed_s: float


@dataclass(frozen=True)
class Places:
    """The benches from the first place to the last."""

    order: tuple[str, ...] = ()
    moved_s: float = float("-inf")
    _stays: Mapping[str, _Stay] = field(default_factory=lambda: MappingProxyType({}))


def arranged(places: Places, needs: Mapping[str, int], now_s: float) -> Places:
    """Return the places at this moment; `needs` says how much help each bench needs (see urgency.py)."""
    stays = {bench: _stay(places._stays.get(bench), need, now_s) for bench, need in needs.items()}
    same = set(places.order) == set(needs)
    if same and now_s - places.moved_s < EVERY_S:
        return Places(places.order, places.moved_s, stays)
    order = tuple(sorted(needs, key=lambda bench: (-stays[bench].rank, _entered_s(stays[bench]), natural(bench))))
    return Places(order, places.moved_s if order == places.order else now_s, stays)


def natural(bench: str) -> tuple[tuple[int, int | str], ...]:
    """Return what benches are sorted by: bench-2 stands before bench-10."""
    parts = re.split(r"(\d+)", bench)
    return tuple((0, int(part)) if part.isdecimal() else (1, part) for part in parts if part)


def _stay(stay: _Stay | None, need: int, now_s: float) -> _Stay:
    rank = need if need >= MOVES_FROM else 0
    if stay is None or rank > stay.rank:
        return _Stay(rank, now_s, now_s)
    if rank == stay.rank:
        return _Stay(rank, stay.since_s, now_s)
    return _Stay(rank, now_s, now_s) if now_s - stay.needed_s >= CALM_S else stay


def _entered_s(stay: _Stay) -> float:
    return stay.since_s if stay.rank else 0.0


# How long the class takes for each step, and how far it has come: what one bench is held against.


REMEMBERED = 300
ENOUGH = 5
USUAL_S = {Step.START: 60.0, Step.POUR: 20.0, Step.SETTLE: 50.0, Step.RINSE: 90.0}
"""Before the class has shown it: engineering judgement, no source."""


@dataclass
class Pace:
    """The newest durations of each step over all benches, in bench seconds."""

    _lasted_s: dict[Step, deque[float]] = field(default_factory=dict)

    def learn(self, before: State, after: State, time_s: float) -> None:
        """Take note of a step that ended at this bench time."""
        if after.step is before.step or before.step not in USUAL_S or after.step is Step.PAUSED:
            return
        lasted = self._lasted_s.setdefault(before.step, deque(maxlen=REMEMBERED))
        lasted.append(max(0.0, time_s - before.step_since_s))

    def usual_s(self, step: Step) -> float | None:
        """Return how long this step usually takes, in s; None where nothing is usual."""
        known = self._lasted_s.get(step, ())
        return median(known) if len(known) >= ENOUGH else USUAL_S.get(step)


def portions_done(state: State) -> int:
    """Return how many portions of the whole practical are in; all of them once it is done."""
    planned = state.plan.repeats * state.plan.count
    if state.step is Step.DONE:
        return planned
    counted = [repeat for repeat in state.repeats if repeat.counts]
    return min(planned, sum(min(len(repeat.portions), state.plan.count) for repeat in counted))


def usual_progress(shares: Iterable[float]) -> float:
    """Return the class's progress: the median of the benches' shares of their practicals; 0 without any."""
    known = list(shares)
    return median(known) if known else 0.0


# Who needs help, and why. The reasons are codes with their numbers; the page has the words.
#
# The limits are engineering judgement, no source: a bench is slow when it takes clearly longer than the class does.


SILENT_S = 20.0
"""A bench from which nothing came for so long may be off, in s."""
SLOW, SLOW_S = 2.5, 45.0
STUCK, STUCK_S = 4.0, 120.0
BEHIND = 0.25
BAD_SHARE, BAD_FROM = 0.2, 10
MANY_ASIDE = 2
LONG_PAUSE_S = 300.0


class Need(IntEnum):
    """How much help a bench needs."""

    FINE = 0
    NOTE = 1
    LOOK = 2
    HELP = 3


@dataclass(frozen=True)
class Reason:
    """Why a bench needs help; `seconds`, `text` and `count` where the code has one."""

    need: Need
    code: ReasonCode
    seconds: float | None = None
    text: str | None = None
    count: int | None = None

    def shown(self) -> ReasonShown:
        """Return the reason as the page gets it."""
        told: Any = {name: value for name, value in members(self).items() if value is not None}
        return cast(ReasonShown, told)


@dataclass(frozen=True)
class Around:
    """What is known of a bench beside its own state: times in s; `progress` and `usual_progress` are shares."""

    waits_s: float
    usual_s: float | None
    silent_s: float | None
    progress: float
    usual_progress: float
    trouble: str | None = None
    unreadable: bool = False


def reasons(state: State, around: Around) -> list[Reason]:
    """Return why this bench needs help, the most pressing first; none when all is well."""
    found = [*_link(state, around), *_probe(state), *_waiting(state, around), *_said(state)]
    return sorted(found, key=lambda each: -each.need)


def _link(state: State, around: Around) -> Sequence[Reason]:
    found = []
    if around.trouble is not None:
        found.append(Reason(Need.HELP, "trouble", text=around.trouble))
    if around.unreadable:
        found.append(Reason(Need.HELP, "unreadable"))
    if around.silent_s is not None and around.silent_s > SILENT_S and state.step is not Step.DONE:
        under_way = bool(state.repeats)
        found.append(Reason(Need.HELP if under_way else Need.NOTE, "silent", round(around.silent_s)))
    return found


def _probe(state: State) -> Sequence[Reason]:
    if state.typed or state.step is Step.DONE:
        return ()
    if state.probe == "lost":
        return (Reason(Need.HELP, "probe_lost"),)
    bad = sum(each.bad is not None for each in state.recent)
    if len(state.recent) >= BAD_FROM and bad >= BAD_SHARE * len(state.recent):
        return (Reason(Need.LOOK, "bad_readings", count=bad),)
    return ()


def _waiting(state: State, around: Around) -> Sequence[Reason]:
    found = []
    behind = around.usual_progress - around.progress
    if state.step is Step.READY and around.usual_progress > 0.0:
        found.append(Reason(Need.LOOK if behind > BEHIND / 2 else Need.NOTE, "not_begun"))
    elif around.usual_s is not None:
        limit_s = STUCK * around.usual_s + STUCK_S
        if around.waits_s > limit_s:
            found.append(Reason(Need.HELP, "stuck", round(around.waits_s)))
        elif around.waits_s > SLOW * around.usual_s + SLOW_S:
            found.append(Reason(Need.LOOK, "slow", round(around.waits_s)))
    if state.step is Step.PAUSED:
        forgotten = around.waits_s > LONG_PAUSE_S and not state.held
        found.append(Reason(Need.LOOK if forgotten else Need.NOTE, "paused", round(around.waits_s)))
    if state.step not in (Step.READY, Step.DONE) and behind > BEHIND:
        found.append(Reason(Need.NOTE, "behind"))
    return found


def _said(state: State) -> Sequence[Reason]:
    found = [Reason(Need.LOOK, "question", text=asked["text"]) for asked in open_questions(state)]
    aside = [repeat for repeat in state.repeats if not repeat.counts]
    if len(aside) >= MANY_ASIDE:
        found.append(Reason(Need.LOOK, "many_aside", count=len(aside)))
    elif aside and aside[-1] is state.current:
        found.append(Reason(Need.NOTE, "set_aside", text=aside[-1].reason, count=aside[-1].repeat))
    return found


@dataclass(frozen=True)
class Heard:
    """What came over the lossy way: the newest temperature in °C, and how long ago anything was heard, in s."""

    temperature_c: float | None
    age_s: float


@dataclass
class BenchNow:
    """One bench as its events leave it; `time_s` is its newest bench time, `began` the event of its practical."""

    journal: str = ""
    state: State = field(default_factory=State)
    seq: int = 0
    began: int = 0
    time_s: float = 0.0
    boot: str = ""
    unreadable: bool = False


@dataclass
class Board:
    """All benches. `take` their events in order; `tiles` says how each stands."""

    benches: dict[str, BenchNow] = field(default_factory=dict)
    names: dict[str, str] = field(default_factory=dict)
    pace: Pace = field(default_factory=Pace)
    places: Places = field(default_factory=Places)

    def take(self, bench: str, journal: str, happened: Iterable[e.Stamped]) -> None:
        """Take a bench's next events in; what does not fit together is noted and changes nothing else."""
        now = self.benches.get(bench)
        if now is None or now.journal != journal:  # a new card, or one that was wiped
            now = self.benches[bench] = BenchNow(journal)
        for stamped in happened:
            if stamped.seq <= now.seq:
                continue
            before = now.state
            try:
                now.state = fold(before, stamped)
            except (LookupError, ValueError, TypeError, AttributeError):
                now.unreadable = True
            else:
                if isinstance(stamped.event, e.PlanChosen):
                    now.unreadable, now.began = False, stamped.seq
                self.pace.learn(before, now.state, stamped.time_s)
            now.seq, now.boot, now.time_s = stamped.seq, stamped.boot, max(now.time_s, stamped.time_s)

    def tiles(self, now_s: float, heard: Mapping[str, Heard], troubles: Mapping[str, str]) -> dict[str, Tile]:
        """Return a tile for each bench that is known in any way, in the order of the places.

        `now_s` is the room's monotonic time.
        """
        known = {**self.benches, **{bench: BenchNow() for bench in (*heard, *troubles) if bench not in self.benches}}
        usual = usual_progress(_progress(each.state) for each in known.values() if each.state.chosen)
        tiles = {
            bench: self._tile(bench, each, usual, heard.get(bench), troubles.get(bench))
            for bench, each in known.items()
        }
        self.places = arranged(self.places, {bench: tile["need"] for bench, tile in tiles.items()}, now_s)
        return {bench: tiles[bench] for bench in self.places.order}

    def _tile(self, bench: str, now: BenchNow, usual: float, heard: Heard | None, trouble: str | None) -> Tile:
        state = now.state
        waits_s, usual_s = max(0.0, now.time_s - state.step_since_s), self.pace.usual_s(state.step)
        silent_s = None if heard is None else heard.age_s
        around = Around(waits_s, usual_s, silent_s, _progress(state), usual, trouble, now.unreadable)
        why = reasons(state, around)
        return {
            "bench": bench,
            "name": state.name or self.names.get(bench) or bench,
            "group": state.group,
            "plan": state.plan.name if state.chosen else None,
            "state": state.step if state.chosen else "unknown",
            "repeat": state.repeat_of_planned,
            "repeats_planned": state.plan.repeats,
            "portion": state.poured,
            "portions_planned": state.plan.count,
            "progress": round(_progress(state), 3),
            "temperature_c": None if heard is None else heard.temperature_c,
            "age_s": None if heard is None else round(heard.age_s, 1),
            "waits_s": round(waits_s),
            "usual_s": None if usual_s is None else round(usual_s),
            "questions": [{"id": each["id"], "text": each["text"]} for each in open_questions(state)],
            "probe": "typed" if state.typed else state.probe,
            "silent": bool(state.silent),
            "results_shown": state.results_shown,
            "repeats": [
                {"repeat": each.repeat, "status": each.status, "restorable": each.restorable} for each in state.repeats
            ],
            "need": max((each.need for each in why), default=Need.FINE).value,
            "reasons": [each.shown() for each in why],
        }


def _progress(state: State) -> float:
    return portions_done(state) / (state.plan.repeats * state.plan.count)
