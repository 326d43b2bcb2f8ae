"""Runs a record through the live procedure, as if it happened now: the same table, gate and settle detector.

Times are those of the record. A record says nothing of prompts that were obeyed or not: each portion comes
when its row says, and one that comes before the station would have asked for it is early.
"""

from collections.abc import Collection, Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import accumulate

from station.practical import events as e
from station.practical.acts import Act
from station.practical.by_hand import OF_TRACE, U_SETTLED_C, hindsight_without_plan, u_reading_c
from station.practical.dataset import ReadingRow, RepeatData
from station.practical.fold import fold
from station.practical.kinds import DEFAULT, ready_plan
from station.practical.kinds.kind import Hindsight, kind_of
from station.practical.plan import Plan
from station.practical.procedure import advance
from station.practical.state import DOUBTS_VOLUME, LEAVES_OUT, State, Step


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
    """Return the repeats with the readings that the live procedure would have put down, and what it would have asked.

    Readings by hand stay, less those that are slips by all appearance.
    """
    traces = [each for each in repeats if each.samples]
    taken: dict[int, list[ReadingRow]] = {each.repeat: [] for each in traces}
    asked: dict[int, list[tuple[int, str]]] = {each.repeat: [] for each in traces}
    added_cm3 = {
        each.repeat: list(accumulate((volume_cm3 for _, volume_cm3, _ in each.pours), initial=0.0)) for each in traces
    }
    for decided in replay(plan, traces):
        event = decided.event
        if isinstance(event, e.ReadingSettled) and event.temperature_c is not None:
            volume_cm3 = added_cm3[decided.repeat][event.portion]
            taken[decided.repeat].append(ReadingRow(event.portion, volume_cm3, event.temperature_c))
        elif isinstance(event, e.QuestionAsked):
            asked[decided.repeat].append((event.portion, event.code))
    return [
        _asked_of_trace(plan, replace(each, readings=tuple(taken[each.repeat])), asked[each.repeat])
        if each.samples
        else _left_out(each, _hindsight(plan, each.readings, _u_c(each.readings)).noticed)
        for each in repeats
    ]


def _u_c(rows: Sequence[ReadingRow]) -> float:
    return u_reading_c([row.temperature_c for row in rows])


def _hindsight(
    plan: Plan | None, rows: Sequence[ReadingRow], u_c: float, doubted: Collection[int] = (), typed: bool = True
) -> Hindsight:
    points = [(row.portion, row.volume_cm3, row.temperature_c) for row in rows]
    if plan is None:
        return hindsight_without_plan(points, u_c)
    return kind_of(plan).hindsight(plan, points, u_c, None, doubted, typed)


def _asked_of_trace(plan: Plan | None, repeat: RepeatData, asked: Sequence[tuple[int, str]]) -> RepeatData:
    """The repeat with what was asked on the way and the readings did not answer, and with what they ask at its end."""
    if repeat.was_asked:
        return replace(_left_out(repeat, repeat.questions), of_file=False)
    if plan is None:
        return repeat
    doubted = {portion for portion, code in asked if code in LEAVES_OUT}
    seen = _hindsight(plan, repeat.readings, U_SETTLED_C, doubted, typed=False)
    kept = [each for each in asked if each not in seen.explained]
    late = [each for each in seen.noticed if each[1] in OF_TRACE and each[0] not in doubted]
    return _left_out(repeat, [*kept, *late])


def _left_out(repeat: RepeatData, asked: Sequence[tuple[int, str]]) -> RepeatData:
    """The repeat with these questions: nobody answers a file's, so these portions are in doubt."""
    doubted = {portion for portion, code in asked if code in LEAVES_OUT}
    doubted |= {number for number, (_, _, unsure) in enumerate(repeat.pours, 1) if unsure}
    volumes = {portion for portion, code in asked if code in DOUBTS_VOLUME}
    return replace(
        repeat,
        readings=tuple(row for row in repeat.readings if row.portion not in doubted),
        pours=tuple(
            (time_s, volume_cm3, unsure or number in volumes)
            for number, (time_s, volume_cm3, unsure) in enumerate(repeat.pours, 1)
        ),
        questions=tuple(asked),
        of_file=True,
    )


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
