"""Runs a record through the live procedure, as if it happened now: the same table, gate and settle detector.

Times are those of the record. A record says nothing of prompts that were obeyed or not: each portion comes
when its row says, and one that comes before the station would have asked for it is early.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from station.practical import events as e
from station.practical.acts import Act
from station.practical.dataset import ReadingRow, RepeatData
from station.practical.fold import fold
from station.practical.plan import READY_PLAN, Plan, PortionsPlan, read_plan
from station.practical.procedure import advance
from station.practical.state import State


@dataclass(frozen=True)
class Decided:
    """An event that the procedure gave at this time of the record (s since the repeat's start)."""

    repeat: int
    time_s: float
    event: e.Event


def replay(plan: Plan | None, recorded: RepeatData) -> Iterator[Decided]:
    """Yield what the procedure decides on this repeat, samples left out."""
    state = _chosen(plan, recorded)
    start_s = min(0.0, *(row[0] for row in (*recorded.samples[:1], *recorded.pours[:1])))
    state, decided = _step(state, Act(act="begin", key="begin"), start_s, recorded.repeat)
    yield from decided
    for time_s, happening in _happenings(recorded):
        state, decided = _step(state, happening, time_s, recorded.repeat)
        yield from decided
    if state.running is not None:
        end_s = max((row[0] for row in (*recorded.samples[-1:], *recorded.pours[-1:])), default=0.0)
        yield from _step(state, Act(act="finish", key="finish"), end_s, recorded.repeat)[1]


def with_readings(plan: Plan | None, recorded: RepeatData) -> RepeatData:
    """Return the repeat with the readings that the live procedure would have put down."""
    added_cm3, total_cm3 = [0.0], 0.0
    for _, volume_cm3, _ in recorded.pours:
        total_cm3 += volume_cm3
        added_cm3.append(total_cm3)
    readings = [
        ReadingRow(each.event.portion, added_cm3[each.event.portion], each.event.temperature_c)
        for each in replay(plan, recorded)
        if isinstance(each.event, e.ReadingSettled) and each.event.temperature_c is not None
    ]
    return replace(recorded, readings=tuple(readings))


def _chosen(plan: Plan | None, recorded: RepeatData) -> State:
    chosen = read_plan(READY_PLAN) if plan is None else plan
    changes: dict[str, object] = {"repeats": 1}
    if isinstance(chosen, PortionsPlan):
        count = max(len(recorded.pours), 1 if plan is None else chosen.count)
        changes["portions"] = chosen.portions.model_copy(update={"count": count})
    return State(plan=chosen.model_copy(update=changes), chosen=True)


def _happenings(recorded: RepeatData) -> Iterator[tuple[float, e.SampleTaken | Act]]:
    """Samples and presses in order of time; a sample of the very moment of a press comes first."""
    rows: list[tuple[float, int, e.SampleTaken | Act]] = [
        (time_s, 0, e.SampleTaken(temperature_c)) for time_s, temperature_c in recorded.samples
    ]
    for number, (time_s, volume_cm3, _) in enumerate(recorded.pours, 1):
        rows.append((time_s, 1, Act(act="portion_added", portion=number, volume_cm3=volume_cm3, key=f"{number}")))
    rows.sort(key=lambda row: row[:2])
    return ((time_s, happening) for time_s, _, happening in rows)


def _step(state: State, happening: e.SampleTaken | Act, time_s: float, repeat: int) -> tuple[State, list[Decided]]:
    events = advance(state, happening, time_s)
    for event in events:
        state = fold(state, e.Stamped(0, "", 0.0, time_s, "", "", event))
    return state, [Decided(repeat, time_s, event) for event in events if not isinstance(event, e.SampleTaken)]
