"""What stands on the sheets of a record's spreadsheet. Units stand in the headers, so that cells are numbers."""

from collections.abc import Iterator, Mapping, Sequence
from itertools import islice
from typing import Any

from station.practical.events import PlanChosen, Stamped
from station.practical.plan import OncePlan, Plan
from station.practical.probe_used import NAMES, in_words, used_in
from station.practical.state import Reading, Repeat, State, mean_readings
from station.record.spreadsheet_cells import Row, Sheet, local_time, yes
from station.record.spreadsheet_notes import notes_sheet
from station.record.spreadsheet_results import result_sheets

Json = Mapping[str, Any]
MOST_SAMPLES = 100_000
"""A repeat left running over a weekend must not fill the card with a spreadsheet; the journal has all."""


def record_sheets(bench: str, state: State, result: Json | None, happened: Sequence[Stamped]) -> Iterator[Sheet]:
    """Yield the sheets of a practical; `result` is None as long as it is not to be seen.

    `happened` are the practical's events, samples left out.
    """
    yield Sheet("Plan", (("what", 40), ("value", 40), ("unit", 12)), _plan(bench, state, happened))
    yield Sheet("Readings", _READINGS, (row for repeat in state.worked_on for row in _readings(state, repeat)))
    yield Sheet("Probe", _PROBE, (row for repeat in state.worked_on for row in _probe(repeat)))
    yield Sheet("Mean", _MEAN, (tuple(each.values()) for each in mean_readings(state.counted)))
    yield Sheet(
        "Samples", _SAMPLES, islice((row for repeat in state.repeats for row in _samples(repeat)), MOST_SAMPLES)
    )
    yield Sheet("Portions", _PORTIONS, (row for repeat in state.repeats for row in _portions(repeat)))
    if result is not None:
        yield from result_sheets(state, result)
    yield notes_sheet(happened)


def _plan(bench: str, state: State, happened: Sequence[Stamped]) -> Iterator[Row]:
    chosen = next((each for each in happened if isinstance(each.event, PlanChosen)), None)
    yield "bench", bench
    yield "group", state.group
    yield "practical", state.plan.name
    yield "date and time (station's clock)", None if chosen is None else local_time(chosen.wall)
    yield "how the station's clock was set", None if chosen is None else _CLOCK.get(chosen.clock, chosen.clock)
    own = "this group's own" if state.adopted is None else f"not this group's own: {state.adopted.label}"
    yield "readings", own
    yield "thermometer", "ordinary thermometer, typed" if state.typed else "the station's probe"
    yield from _substances(state.plan)
    yield "repeats planned", state.plan.repeats
    yield "temperature of what is added, before the start", state.alkali_c, "°C"
    yield "  its standard uncertainty", state.alkali_u_c, "°C"
    yield "heat capacity of cup and probe", state.plan.cup.heat_capacity_j_k, "J/K"


def _substances(plan: Plan) -> Iterator[Row]:
    if isinstance(plan, OncePlan):
        yield "in the cup", plan.liquid.name
        yield "  volume", plan.liquid.volume_cm3, "cm³"
        yield "  concentration", plan.liquid.concentration_mol_dm3, "mol/dm³"
        yield "added all at once", plan.addition.name
        yield "  volume", plan.addition.volume_cm3, "cm³"
        yield "  concentration", plan.addition.concentration_mol_dm3, "mol/dm³"
        yield "  mass", plan.addition.mass_g, "g"
        return
    yield "in the cup", plan.acid.name
    yield "  volume", plan.acid.volume_cm3, "cm³"
    yield "  concentration (empty: to be found)", plan.acid.concentration_mol_dm3, "mol/dm³"
    yield "added in portions", plan.alkali.name
    yield "  concentration", plan.alkali.concentration_mol_dm3, "mol/dm³"
    yield "  volume of a portion", plan.portions.volume_cm3, "cm³"
    yield "  its standard uncertainty", plan.portions.u_cm3, "cm³"
    yield "portions planned", plan.portions.count


def _readings(state: State, repeat: Repeat) -> Iterator[Row]:
    for reading in sorted(repeat.readings, key=lambda each: each.portion):
        counts = repeat.counts and reading.temperature_c is not None and not repeat.unsure(reading.portion)
        yield (
            repeat.repeat,
            reading.portion,
            repeat.added_cm3(reading.portion),
            reading.temperature_c,
            reading.u_c,
            None if state.adopted else round(reading.time_s - repeat.begun_s, 3),
            yes(counts),
            "; ".join(_special(repeat, reading)) or None,
        )


def _special(repeat: Repeat, reading: Reading) -> Iterator[str]:
    if not repeat.counts:
        yield f"repeat set aside: {repeat.reason or 'no reason given'}"
    if repeat.unsure(reading.portion):
        why = next((each.unsure_reason for each in repeat.portions if each.portion == reading.portion), None)
        yield f"not sure: {why}" if why else "not sure"
    if not reading.settled:
        yield "not settled"
    if reading.reason:
        yield reading.reason


def _samples(repeat: Repeat) -> Iterator[Row]:
    for sample in sorted(repeat.samples, key=lambda each: each.time_s):
        if sample.temperature_c is not None:
            yield (
                repeat.repeat,
                round(sample.time_s - repeat.begun_s, 3),
                sample.temperature_c,
                yes(repeat.counts),
                sample.said_c,
            )


def _probe(repeat: Repeat) -> Iterator[Row]:
    used = used_in(repeat)
    if used is None:
        yield repeat.repeat, "not a probe's temperatures"
        return
    check = "none" if used.check is None else NAMES.get(used.check, used.check)
    numbers = (used.correction_c, used.u_c, used.at_c, used.u_slope)
    yield repeat.repeat, check, used.day or None, *numbers, in_words(used)


def _portions(repeat: Repeat) -> Iterator[Row]:
    for each in repeat.portions:
        yield (
            repeat.repeat,
            each.portion,
            round(each.time_s - repeat.begun_s, 3),
            each.volume_cm3,
            yes(each.early),
            yes(each.unsure),
            each.unsure_reason,
        )


_CLOCK = {"network": "by the network", "none": "not set: date and time may be wrong"}
_READINGS = (
    ("repeat", 8),
    ("portion", 8),
    ("total added / cm³", 12),
    ("temperature / °C", 13),
    ("standard uncertainty / °C", 13),
    ("time in the repeat / s", 12),
    ("counts", 8),
    ("why not, or what is special", 44),
)
_MEAN = (("portion", 8), ("mean total added / cm³", 14), ("mean temperature / °C", 14), ("readings", 10))
_SAMPLES = (
    ("repeat", 8),
    ("time in the repeat / s", 14),
    ("temperature / °C", 14),
    ("repeat counts", 9),
    ("as the probe said / °C", 14),
)
_PROBE = (
    ("repeat", 8),
    ("corrected by", 30),
    ("checked on", 14),
    ("correction added / °C", 12),
    ("its standard uncertainty / °C", 13),
    ("at about / °C", 10),
    ("relative uncertainty of a difference", 13),
    ("in words", 80),
)
_PORTIONS = (
    ("repeat", 8),
    ("portion", 8),
    ("time in the repeat / s", 14),
    ("volume / cm³", 12),
    ("added before it was asked for", 14),
    ("not sure", 10),
    ("reason", 40),
)
