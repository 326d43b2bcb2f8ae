"""Runs a record through the live procedure, as if it happened now: the same table, gate and settle detector.

Times are those of the record. A record says nothing of prompts that were obeyed or not: each portion comes
when its row says, and one that comes before the station would have asked for it is early.
"""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import accumulate

from station.practical import events as e
from station.practical.acts import Act
from station.practical.dataset import ReadingRow, RepeatData
from station.practical.fold import fold
from station.practical.kinds import DEFAULT, ready_plan
from station.practical.plan import Plan
from station.practical.procedure import advance
from station.practical.state import State, Step


@dataclass(frozen=True)
class Decided:
    """An event that the procedure gave at this time of the record (s since the repeat's start)."""

    repeat: int
    time_s: float
    event: e.Event


def replay(plan: Plan | None, repeats: Iterable[RepeatData]) -> Iterator[Decided]:
    """Yield what the procedure decides on these repeats, samples left out.

    What a repeat taught of the probe's lags and the cup is known in the next, as on the bench.
    """
    taught = State()
    for recorded in repeats:
        state = _chosen(plan, recorded, taught)
        for time_s, happening in _happenings(recorded):
            events = advance(state, happening, time_s)
            for event in events:
                state = fold(state, e.Stamped(0, "", 0.0, time_s, "", "", event))
                if not isinstance(event, e.SampleTaken):
                    yield Decided(recorded.repeat, time_s, event)
            if state.step is Step.DONE:
                break
        taught = state


def with_readings(plan: Plan | None, repeats: Sequence[RepeatData]) -> list[RepeatData]:
    """Return the repeats with the readings that the live procedure would have put down; readings by hand stay."""
    traces = [each for each in repeats if each.samples]
    taken: dict[int, list[ReadingRow]] = {each.repeat: [] for each in traces}
    added_cm3 = {
        each.repeat: list(accumulate((volume_cm3 for _, volume_cm3, _ in each.pours), initial=0.0)) for each in traces
    }
    for decided in replay(plan, traces):
        event = decided.event
        if isinstance(event, e.ReadingSettled) and event.temperature_c is not None:
            volume_cm3 = added_cm3[decided.repeat][event.portion]
            taken[decided.repeat].append(ReadingRow(event.portion, volume_cm3, event.temperature_c))
    return [replace(each, readings=tuple(taken.get(each.repeat, each.readings))) for each in repeats]


def _chosen(plan: Plan | None, recorded: RepeatData, taught: State) -> State:
    chosen = ready_plan(DEFAULT) if plan is None else plan
    count = max(len(recorded.pours), 1 if plan is None else chosen.count)
    changes = {"repeats": len(taught.repeats) + 1, "prompts": "station"}
    plan = chosen.with_count(count).model_copy(update=changes)
    return State(plan=plan, chosen=True, repeats=taught.repeats, lags=taught.lags, habits=taught.habits)


def _happenings(recorded: RepeatData) -> Iterator[tuple[float, e.SampleTaken | Act]]:
    """The begin, then samples and presses in order of time (a sample of the very moment of a press first), the end."""
    rows: list[tuple[float, int, e.SampleTaken | Act]] = [
        (time_s, 1, e.SampleTaken(temperature_c)) for time_s, temperature_c in recorded.samples
    ]
    for number, (time_s, volume_cm3, _) in enumerate(recorded.pours, 1):
        act = Act(act="portion_added", portion=number, volume_cm3=volume_cm3 or None, key=f"portion {number}")
        rows.append((time_s, 2, act))
    times = [row[0] for row in rows]
    rows.append((min(0.0, *times), 0, Act(act="begin", key="begin")))
    rows.append((max(0.0, *times), 3, Act(act="finish", key="finish")))
    rows.sort(key=lambda row: row[:2])
    return ((time_s, happening) for time_s, _, happening in rows)
