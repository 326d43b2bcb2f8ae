"""What stands on the sheets of a record's spreadsheet. Units stand in the headers, so that cells are numbers."""

from collections.abc import Callable, Iterator, Mapping, Sequence
from itertools import islice
from typing import Any

from station.practical import events as e
from station.practical.checks.correction import NAMES, in_words, used_in
from station.practical.course import MeanPoint
from station.practical.events import Stamped
from station.practical.events.bench import PlanChosen
from station.practical.kinds.kind import METHOD_NAMES, quantities
from station.practical.plan import number, typed_amount
from station.practical.state import OwnReading, Reading, Repeat, State
from station.record.spreadsheet.file import Cell, Row, Sheet, Signed, local_time, yes
from station.record.spreadsheet.table import table_sheet
from station.words import Message, join, say

# What a practical's record says in words: notes, corrections, what was set aside and why, in order of time.


_NOTE_COLUMNS = (
    (say("sheet-date-and-time"), 20),
    (say("sheet-bench-time"), 12),
    (say("sheet-repeat"), 8),
    (say("sheet-portion"), 8),
    (say("sheet-what"), 34),
    (say("sheet-in-words"), 60),
)


def notes_sheet(happened: Sequence[e.Stamped]) -> Sheet:
    """Return the sheet of everything that is worth reading in these events."""
    return Sheet(say("sheet-notes"), _NOTE_COLUMNS, _note_rows(happened))


def _note_rows(happened: Sequence[e.Stamped]) -> Iterator[Row]:
    for each in happened:
        said = _SAID.get(type(each.event))
        if said is not None:
            what, words = said(each.event)
            place = (getattr(each.event, "repeat", None), getattr(each.event, "portion", None))
            yield (local_time(each.wall), round(each.time_s, 3), *place, what, words or None)


def _own_note(read: e.EndPointRead) -> Message:
    if read.end_point_cm3 is not None:
        return say("noted-quantity", value=f"{read.end_point_cm3:g}", unit="cm³")
    if read.change_c is not None:
        return say("noted-quantity", value=f"{read.change_c:+g}", unit="°C")
    return say("sheet-nothing-read") if read.reason is None else say("sheet-nothing-read-why", reason=read.reason)


def _sketched(event: e.CurveSketched) -> str:
    return "; ".join(f"{volume_cm3:g} cm³: {temperature_c:g} °C" for volume_cm3, temperature_c in event.points)


def _shown_note(event: e.ResultsShown) -> Message:
    if not event.shown:
        return say("noted-withheld-by-staff")
    if event.prepared_mol_dm3 is None:
        return say("noted-shown-by-staff")
    return say("noted-shown-with-prepared", mol_dm3=f"{event.prepared_mol_dm3:g}")


def _ordinary(event: e.ThermometerChosen) -> Message:
    if event.division_c is None:
        return say("noted-stations-probe")
    return say("noted-ordinary-thermometer", division_c=f"{event.division_c:g}", digital=str(event.digital).lower())


def _tested(event: e.CupTested) -> Message:
    j_k, u_j_k = event.values["heat_capacity_j_k"], event.values["u_heat_capacity_j_k"]
    return say("noted-cup", label_name=event.label, j_k=f"{j_k:.1f}", u_j_k=f"{u_j_k:.1f}")


def _code(code: str) -> dict[str, str]:
    """Return the values that say a code of the journal; one that the catalogues do not know stands as it is."""
    return {"code": code.replace(" ", "_"), "text": code.replace("_", " ")}


def _check(check: str | None) -> Message:
    return say("noted-none") if check is None else say("noted-check", **_code(check))


Said = Callable[[Any], tuple[Message, str]]

_SAID: dict[type[e.Event], Said] = {
    e.PlanChosen: lambda event: (say("noted-plan-chosen"), say("sheet-practice") if event.practice else ""),
    e.GroupNamed: lambda event: (say("noted-group"), event.label or say("noted-no-label")),
    e.ThermometerChosen: lambda event: (say("noted-thermometer"), _ordinary(event)),
    e.AlkaliMeasured: lambda event: (
        say("noted-temperature-of-added"),
        say("noted-quantity", value=f"{event.temperature_c:.2f}", unit="°C"),
    ),
    e.SetUpStepDone: lambda event: (say("noted-set-up"), say("noted-set-up-step", step=event.step)),
    e.RepeatBegun: lambda _: (say("noted-repeat-begun"), ""),
    e.RepeatEnded: lambda _: (say("noted-repeat-ended"), ""),
    e.RepeatSetAside: lambda event: (say("noted-repeat-set-aside"), event.reason),
    e.RepeatRestored: lambda _: (say("noted-repeat-counts-again"), ""),
    e.PortionUndone: lambda _: (say("noted-portion-taken-back"), ""),
    e.PortionVolumeCorrected: lambda event: (
        say("noted-volume-corrected" if event.mass_g is None else "noted-mass-corrected"),
        say("noted-quantity", value=number(event.volume_cm3), unit="cm³")
        if event.mass_g is None
        else say("noted-quantity", value=typed_amount(event.mass_g, event.places), unit="g"),
    ),
    e.PortionUnsure: lambda event: (say("noted-portion-unsure"), event.reason or ""),
    e.PortionSure: lambda _: (say("noted-portion-sure"), ""),
    e.QuestionAsked: lambda event: (say("noted-station-asked"), say("noted-question", **_code(event.code))),
    e.QuestionAnswered: lambda event: (say("noted-answer"), say("noted-answered", **_code(event.answer))),
    e.NoteWritten: lambda event: (say("noted-note", number=event.note), event.text),
    e.NoteWithdrawn: lambda event: (say("noted-note-withdrawn", number=event.note), ""),
    e.SetAdopted: lambda event: (say("noted-adopted"), event.label),
    e.SetReturned: lambda _: (say("noted-own-again"), ""),
    e.CurveSketched: lambda event: (say("noted-sketch"), _sketched(event)),
    e.EndPointRead: lambda event: (say("noted-own-reading"), _own_note(event)),
    e.ResultsShown: lambda event: (
        say("noted-results"),
        _shown_note(event),
    ),
    e.ProbeInUse: lambda event: (say("noted-correction-of-probe"), _check(event.check)),
    e.ProbeChecked: lambda event: (say("noted-check-saved", number=event.number), _check(event.check)),
    e.ProbeCheckWithdrawn: lambda event: (say("noted-check-withdrawn", number=event.number), ""),
    e.CupTested: lambda event: (say("noted-cup-tested"), _tested(event)),
    e.RecordSalvaged: lambda event: (say("noted-record-damaged"), say("noted-events-go-on", count=event.kept)),
    e.ProbeLost: lambda event: (say("noted-probe-lost"), say("noted-bad", **_code(event.bad))),
    e.ProbeFound: lambda _: (say("noted-probe-found"), ""),
    e.Paused: lambda event: (
        say("noted-paused"),
        "" if event.by is None else say("noted-by-role", role=event.by),
    ),
    e.Resumed: lambda _: (say("noted-resumed"), ""),
    e.RepeatAsked: lambda _: (say("noted-repeat-asked"), ""),
    e.TeacherCalled: lambda _: (say("noted-teacher-called"), ""),
    e.CallEnded: lambda event: (
        say("noted-call-ended"),
        "" if event.by is None else say("noted-by-role", role=event.by),
    ),
    e.FinishUndone: lambda _: (say("noted-finish-undone"), ""),
    e.PracticalEnded: lambda event: (say("noted-practical-ended"), say("noted-early") if event.early else ""),
}


# What was found, for a spreadsheet: both methods side by side with u and interval, and the steps to the numbers.


Json = Mapping[str, Any]

_QUANTITIES = (
    (say("quantity-end-point"), "end_point_cm3", "interval_95_cm3", "cm³"),
    (say("sheet-temperature-at-end-point"), "temperature_c", None, "°C"),
    (say("sheet-expected-shift"), "predicted_bias_cm3", None, "cm³"),
    (say("sheet-change-of-temperature"), "change_c", "interval_95_c", "°C"),
    (say("sheet-heat-given-out"), "heat_j", None, "J"),
    (say("sheet-enthalpy-per-mole"), "enthalpy_kj_mol", None, "kJ/mol"),
    (say("sheet-acid-concentration"), "acid_mol_dm3", None, "mol/dm³"),
)
_COLUMNS = (
    (say("sheet-of"), 12),
    (say("sheet-method"), 16),
    (say("sheet-quantity"), 30),
    (say("sheet-value"), 12),
    (say("sheet-standard-uncertainty"), 12),
    (say("sheet-95-from"), 12),
    (say("sheet-95-to"), 12),
    (say("sheet-unit"), 10),
    (say("sheet-in-words"), 60),
)
_STEPS = (
    (say("sheet-of"), 12),
    (say("sheet-method"), 16),
    (say("sheet-step"), 44),
    (say("sheet-formula"), 34),
    (say("sheet-working"), 44),
    (say("sheet-value"), 14),
    (say("sheet-standard-uncertainty"), 12),
    (say("sheet-unit"), 12),
)


def result_sheets(state: State, result: Json) -> Iterator[Sheet]:
    """Yield the results and, where there are any, the steps that led to them."""
    yield Sheet(say("sheet-results"), _COLUMNS, _rows(state.own_reading, result))
    steps = list(_steps(result))
    if steps:
        yield Sheet(say("sheet-steps"), _STEPS, steps)


def _parts(result: Json) -> Iterator[tuple[Message, Json]]:
    yield say("sheet-mean-of-repeats"), result
    for each in result.get("repeats") or ():
        yield say("sheet-repeat-number", repeat=each["repeat"]), each


def _rows(own: OwnReading | None, result: Json) -> Iterator[Row]:
    if own is not None:
        yield from _own(own)
    for of, part in _parts(result):
        for method, name in METHOD_NAMES.items():
            found = part.get(method)
            if found:
                yield from _found(of, name, found)
            else:
                why = (part.get("refused") or {}).get(method, "")
                yield of, name, say("sheet-no-result"), None, None, None, None, None, why
        for note in part.get("notes") or ():
            yield of, None, say("sheet-worth-a-thought"), None, None, None, None, None, note
    accepted = result.get("accepted")
    if accepted:
        words = join([each for each in (accepted.get("text"), accepted.get("source")) if each], "list-semicolon")
        row: Row = (
            say("sheet-accepted"),
            None,
            _per_mole(next((each["enthalpy_of"] for each in _methods_of(result) if each.get("enthalpy_of")), None)),
            None if accepted.get("enthalpy_kj_mol") is None else Signed(accepted["enthalpy_kj_mol"]),
            accepted.get("u"),
            None,
            None,
            "kJ/mol",
            words,
        )
        yield row


def _methods_of(result: Json) -> list[Json]:
    return [found for method in METHOD_NAMES if (found := result.get(method))]


def _own(own: OwnReading) -> Iterator[Row]:
    if own.change_c is not None:
        yield (
            say("sheet-own-lines"),
            None,
            say("sheet-change-of-temperature"),
            Signed(own.change_c),
            None,
            None,
            None,
            "°C",
        )
    else:
        words = None if own.end_point_cm3 is not None else say("sheet-nothing-read")
        yield say("sheet-own-lines"), None, say("quantity-end-point"), own.end_point_cm3, None, None, None, "cm³", words


def _found(of: Message, method: Message, found: Json) -> Iterator[Row]:
    known = {key for _, key, _, _ in _QUANTITIES}
    others = [
        (each.name, each.key, each.interval, each.unit) for each in quantities().values() if each.key not in known
    ]
    for quantity, key, interval, unit in (*_QUANTITIES, *others):
        value = found.get(key)
        if value is None:
            continue
        ends = (found.get(interval) or (None, None)) if interval else (None, None)
        if key in quantities() and quantities()[key].signed:
            value, ends = Signed(value), tuple(None if each is None else Signed(each) for each in ends)
        # What is taken in is never "given out", less than nothing.
        taken_in = key == "heat_j" and value < 0.0
        named = say("sheet-heat-taken-in") if taken_in else quantity
        if key == "enthalpy_kj_mol":
            named = _per_mole(found.get("enthalpy_of"))
        yield of, method, named, -value if taken_in else value, found.get(f"u_{key}"), *ends, unit


def _per_mole(of: str | None) -> Message:
    return say("sheet-enthalpy-per-mole") if of is None else say("step-enthalpy", of=of)


def _steps(result: Json) -> Iterator[Row]:
    for of, part in _parts(result):
        for method, name in METHOD_NAMES.items():
            for step in (part.get("steps") or {}).get(method) or ():
                texts: list[Cell] = [step.get(key) for key in ("text", "formula", "working")]
                value, unit = step.get("value"), step.get("unit")
                signed = value is not None and unit == "kJ/mol"
                yield (of, name, *texts, Signed(value) if signed else value, step.get("u"), unit)


MOST_SAMPLES = 100_000
"""A repeat left running over a weekend must not fill the card with a spreadsheet; the journal has all."""


def record_sheets(bench: str, state: State, result: Json | None, happened: Sequence[Stamped]) -> Iterator[Sheet]:
    """Yield the sheets of a practical, first the table of readings with its chart.

    `result` is None as long as it is not to be seen. `happened` are the practical's events, samples left out.
    """
    yield table_sheet(state, result)
    yield Sheet(say("sheet-plan"), _PLAN, _plan(bench, state, happened))
    readings = (row for repeat in state.worked_on for row in _readings(state, repeat))
    yield Sheet(say("sheet-readings"), _READINGS, readings)
    yield Sheet(say("sheet-probe"), _PROBE, (row for repeat in state.worked_on for row in _probe(repeat)))
    yield Sheet(say("sheet-mean"), _MEAN, map(_mean, state.mean))
    samples = islice((row for repeat in state.repeats for row in _samples(repeat)), MOST_SAMPLES)
    yield Sheet(say("sheet-samples"), _SAMPLES, samples)
    yield Sheet(say("sheet-portions"), _PORTIONS, (row for repeat in state.repeats for row in _portions(repeat)))
    if result is not None:
        yield from result_sheets(state, result)
    yield notes_sheet(happened)


def _plan(bench: str, state: State, happened: Sequence[Stamped]) -> Iterator[Row]:
    chosen = next((each for each in happened if isinstance(each.event, PlanChosen)), None)
    yield say("sheet-bench"), bench
    yield say("sheet-group"), state.group
    yield say("sheet-practical"), state.plan.name
    if state.practice:
        yield say("sheet-practice"), say("sheet-virtual-cup")
    yield say("sheet-date-and-time"), None if chosen is None else local_time(chosen.wall)
    yield say("sheet-how-clock-set"), None if chosen is None else _CLOCK.get(chosen.clock, chosen.clock)
    own = say("sheet-own") if state.adopted is None else say("sheet-not-own", label_name=state.adopted.label)
    yield say("sheet-readings-of"), own
    yield say("sheet-thermometer"), say("sheet-ordinary-typed" if state.typed else "noted-stations-probe")
    yield say("sheet-moments"), say("sheet-moments-own" if state.plan.own_judgement else "sheet-moments-station")
    for what, value, *unit in state.plan.amounts():
        yield (_below(what) if unit else what), value, *unit
    yield say("sheet-repeats-planned"), state.plan.repeats
    yield say("sheet-temperature-added-before"), state.alkali_c, "°C"
    yield _below(say("sheet-its-uncertainty")), state.alkali_u_c, "°C"
    yield say("sheet-cup-heat-capacity"), state.plan.cup.heat_capacity_j_k, "J/K"


def _below(of: Message) -> Message:
    """Say a row that belongs to the one above it."""
    return say("sheet-indented", of=of)


def _mean(each: MeanPoint) -> Row:
    return each["portion"], each["volume_cm3"], each["temperature_c"], each["count"]


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
            join(_special(repeat, reading), "list-semicolon") or None,
        )


def _special(repeat: Repeat, reading: Reading) -> Iterator[str]:
    if not repeat.counts:
        yield say("sheet-repeat-set-aside", reason=repeat.reason or say("sheet-no-reason"))
    if repeat.unsure(reading.portion):
        why = next((each.unsure_reason for each in repeat.portions if each.portion == reading.portion), None)
        yield say("sheet-not-sure-why", reason=why) if why else say("reason-not-sure")
    if not reading.settled:
        yield say("sheet-not-settled")
    if reading.reason:
        yield reading.reason


def _samples(repeat: Repeat) -> Iterator[Row]:
    for read in repeat.clocked:
        yield repeat.repeat, read.at_s, read.temperature_c, yes(repeat.counts), None
    for sample in () if repeat.clocked else sorted(repeat.samples, key=lambda each: each.time_s):
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
        yield repeat.repeat, say("sheet-not-a-probes")
        return
    check = say("noted-none") if used.check is None else NAMES.get(used.check, used.check)
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
            each.mass_g,
        )


_CLOCK = {"network": say("sheet-clock-network"), "none": say("sheet-clock-not-set")}
_PLAN = ((say("sheet-what"), 40), (say("sheet-value"), 40), (say("sheet-unit"), 12))
_READINGS = (
    (say("sheet-repeat"), 8),
    (say("sheet-portion"), 8),
    (say("sheet-total-added"), 12),
    (say("sheet-temperature"), 13),
    (say("sheet-u-temperature"), 13),
    (say("sheet-time-in-repeat"), 12),
    (say("sheet-counts"), 8),
    (say("sheet-why-not"), 44),
)
_MEAN = (
    (say("sheet-portion"), 8),
    (say("sheet-mean-added"), 14),
    (say("sheet-mean-temperature"), 14),
    (say("sheet-readings-of"), 10),
)
_SAMPLES = (
    (say("sheet-repeat"), 8),
    (say("sheet-time-in-repeat"), 14),
    (say("sheet-temperature"), 14),
    (say("sheet-repeat-counts"), 9),
    (say("sheet-as-probe-said"), 14),
)
_PROBE = (
    (say("sheet-repeat"), 8),
    (say("sheet-corrected-by"), 30),
    (say("sheet-checked-on"), 14),
    (say("sheet-correction-added"), 12),
    (say("sheet-u-correction"), 13),
    (say("sheet-at-about"), 10),
    (say("sheet-relative-u"), 13),
    (say("sheet-in-words"), 80),
)
_PORTIONS = (
    (say("sheet-repeat"), 8),
    (say("sheet-portion"), 8),
    (say("sheet-time-in-repeat"), 14),
    (say("sheet-volume-cm3"), 12),
    (say("sheet-added-early"), 14),
    (say("reason-not-sure"), 10),
    (say("sheet-reason"), 40),
    (say("sheet-mass-g"), 10),
)
