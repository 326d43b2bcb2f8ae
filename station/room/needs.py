"""Who needs help, and why: reasons as codes with their numbers (the page has the words), and the strip of them.

Nothing moves while it is being read: who began to need somebody stays where they are, and the newest stands last.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from enum import IntEnum
from typing import Any, cast

from station.practical.questions import open_questions
from station.practical.state import State, Step
from station.room.contract import ReasonCode, ReasonShown
from station.room.places import natural
from station.words import members

# The limits are engineering judgement, no source: a bench is slow when it takes clearly longer than the class does.


SILENT_S = 20.0
"""A bench from which nothing came for so long may be off, in s."""
SLOW, SLOW_S = 2.5, 45.0
STUCK, STUCK_S = 4.0, 120.0
BEHIND = 0.25
BAD_SHARE, BAD_FROM = 0.2, 10
GOOD_AGAIN = 3
"""So many good readings in a row end the trouble of the bad ones before."""
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
    """What is known of a bench beside its own state: times in s; `progress` and `usual_progress` are shares.

    `odd`: whether its curve is unlike the others'.
    """

    waits_s: float
    usual_s: float | None
    silent_s: float | None
    progress: float
    usual_progress: float
    trouble: str | None = None
    unreadable: bool = False
    odd: bool = False


def reasons(state: State, around: Around) -> list[Reason]:
    """Return why this bench needs help, the most pressing first; none when all is well."""
    found = [*_called(state), *_link(state, around), *_probe(state), *_waiting(state, around), *_said(state)]
    if around.odd:
        found.append(Reason(Need.NOTE, "odd_curve"))
    return sorted(found, key=lambda each: -each.need)


def _called(state: State) -> Sequence[Reason]:
    return () if state.called_s is None else (Reason(Need.HELP, "called"),)


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
    if len(state.recent) < BAD_FROM or all(each.bad is None for each in state.recent[-GOOD_AGAIN:]):
        return ()
    bad = sum(each.bad is not None for each in state.recent)
    if bad >= BAD_SHARE * len(state.recent):
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


@dataclass
class Strip:
    """Who needs somebody, in the order in which that arose."""

    _arisen: dict[str, None] = field(default_factory=dict)

    def now(self, needs: Mapping[str, int]) -> tuple[str, ...]:
        """Return the benches that need a look or help at this moment; `needs` says how much each does."""
        due = [bench for bench in sorted(needs, key=natural) if needs[bench] >= Need.LOOK]
        self._arisen = {bench: None for bench in self._arisen if bench in due} | dict.fromkeys(
            bench for bench in due if bench not in self._arisen
        )
        return tuple(self._arisen)
