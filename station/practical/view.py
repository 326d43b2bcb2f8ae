"""The state as the page, the student of the virtual cup and the room see it."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from functools import lru_cache
from typing import Any, Literal

from station.analysis.settle.detector import Verdict
from station.chemistry.pairs import WrongPairError, neutralisation_steps
from station.chemistry.reagents import UnknownReagentError, find_reagent
from station.practical.by_clock import next_mark_s
from station.practical.checks.correction import corrections_view
from station.practical.contract import (
    AdoptedShown,
    Band,
    ClockShown,
    LastGood,
    Live,
    Pair,
    ProbeReads,
    Reaction,
    RepeatRows,
    RepeatShown,
    Still,
    Trace,
    TypedIn,
    View,
)
from station.practical.course import MeanPoint
from station.practical.guide import Guide, guide
from station.practical.kinds.contract import OwnStep
from station.practical.kinds.kind import kind_of
from station.practical.kinds.own_working import PROBE_C
from station.practical.plan import Plan
from station.practical.procedure import possible_acts
from station.practical.prompts import instruction
from station.practical.questions import open_questions
from station.practical.settling import newest_verdict
from station.practical.state import (
    Adopted,
    Portion,
    Reading,
    Repeat,
    Sample,
    State,
    Step,
)

TYPED_C = 0.1
"""The division of a thermometer that nobody told of: the finest that schools read by eye."""


def view(state: State, time_s: float) -> View:
    """Return everything that a screen needs except the trace (see `trace`) and what the server adds."""
    return {**still(state), **live(state, time_s)}


def still(state: State) -> Still:
    """Return what the state alone says, whatever the time is."""
    asked = instruction(state)
    return {
        "plan": state.plan.public(),
        "state": state.step,
        "instruction": asked,
        "other_acts": [act for act in dict.fromkeys(possible_acts(state)) if act != asked.act],
        "repeat": len(state.repeats),
        "repeat_of_planned": state.repeat_of_planned,
        "repeats_planned": state.plan.cups,
        "cup": state.cup,
        "portion": state.poured,
        "portions_planned": state.plan.count,
        "total_added_cm3": sum(each.volume_cm3 for each in state.in_cup),
        "alkali_temperature_c": state.alkali_c,
        "ended_early": state.ended_early,
        "turned": state.turned,
        "silent": state.silent,
        "repeats": [_repeat(repeat) for repeat in state.worked_on],
        "mean": _mean(state.plan, tuple(_seen(each) for each in state.counted), state.alkali_c),
        "results": {
            "rule": state.plan.results,
            "shown": state.results_shown,
            "waits_for": _waits_for(state),
            "prepared_mol_dm3": state.prepared_mol_dm3 if state.results_shown else None,
        },
        "own_reading": state.own_reading,
        "sketch": state.sketch,
        "own_working": _own_working(state),
        "group": state.group,
        "notes": list(state.notes),
        "thermometer": _thermometer(state),
        "adopted": None if state.adopted is None else _adopted(state.adopted),
        "questions": open_questions(state),
        "corrections": corrections_view(state),
        "guide": _guide(state.plan),
        "reaction": _reaction(state.plan),
    }


def live(state: State, time_s: float, judged: Callable[[State], Verdict | None] = newest_verdict) -> Live:
    """Return what changes with every sample, and the wait for the temperature, which is counted down to `time_s`."""
    newest = state.recent[-1] if state.recent else None
    good, verdict = state.gate.good, judged(state)
    left_s = None if verdict is None else verdict.left_s
    if newest is not None and left_s is not None:
        left_s = round(max(left_s - max(time_s - newest.time_s, 0.0), 0.0), 3)
    return {
        "settle": None
        if verdict is None
        else {"left_s": left_s, "sure": round(verdict.sure, 3), "band": _band(verdict)},
        "live": newest,
        "last_good": _last_good(good),
        "clock": _clock(state, time_s),
        "probe": state.probe,
    }


def _clock(state: State, time_s: float) -> ClockShown | None:
    repeat, every_s = state.running, state.plan.clock_s
    if repeat is None or every_s is None or not state.typed or state.thermometer_division_c is None:
        return None
    return {
        "every_s": every_s,
        "now_s": round(time_s - repeat.begun_s, 3),
        "next_s": next_mark_s(state, repeat, time_s),
    }


def _band(verdict: Verdict) -> Band | None:
    band = verdict.band
    if band is None:
        return None
    return {
        "centre_c": round(band.centre_c, 4),
        "half_c": round(band.half_c, 4),
        "span_s": round(band.span_s, 4),
    }


def _last_good(good: Sample | None) -> LastGood | None:
    if good is None or good.temperature_c is None:
        return None
    return {"temperature_c": good.temperature_c, "time_s": good.time_s}


def shown_result(answer: Mapping[str, Any]) -> dict[str, Any]:
    """Return the results (see `results.py`) as screens and files show them: the mean's on top, then all the rest."""
    repeats = [{**(each["straight_lines"] or {}), **each} for each in answer["repeats"]]
    rest = {name: value for name, value in answer.items() if name != "mean"}
    return {**answer["mean"], **rest, "repeats": repeats}


def trace(state: State) -> Trace:
    """Return the samples since the newest pour (or the start) of the newest repeat, in bench time.

    While no cup is ready, those of the last minute: a page that is loaded then shows the alkali's temperature, too.
    """
    repeat = state.current
    if repeat is None or state.step in (Step.READY, Step.ALKALI):
        return {"repeat": 0, "samples": _pairs(state.recent, 0.0, 0.0)}
    since_s = repeat.portions[-1].time_s if repeat.portions else repeat.begun_s
    return {"repeat": repeat.repeat, "samples": _pairs(repeat.samples, since_s, 0.0)}


def samples_of(repeat: Repeat) -> Trace:
    """Return the whole trace of a repeat, times since its start."""
    return {"repeat": repeat.repeat, "samples": _pairs(repeat.samples, repeat.begun_s, repeat.begun_s)}


def _pairs(samples: Sequence[Sample], since_s: float, zero_s: float) -> list[Pair]:
    # To as many places as events have: pages that heard of a sample in different ways draw the same curve.
    return [(round(each.time_s - zero_s, 4), each.temperature_c) for each in samples if each.time_s >= since_s]


@lru_cache(maxsize=2)
def _guide(plan: Plan) -> Guide:
    """The guide changes with the plan alone."""
    return guide(plan)


@lru_cache(maxsize=2)
def _reaction(plan: Plan) -> Reaction | None:
    """The neutralisation in formulae, and the moles of acid for one of alkali; None where there is none."""
    try:
        one, other = (find_reagent(each.name) for each in plan.ingredients)
        pair = neutralisation_steps(*((one, other) if one.is_acid else (other, one)))
    except (UnknownReagentError, WrongPairError):
        return None
    return {"equation": pair.equation, "acid_per_alkali": pair.acid_per_alkali}


def _own_working(state: State) -> list[OwnStep]:
    """The calculation from the own reading, once results are seen: before that it would be an answer."""
    if state.own_reading is None or not state.results_shown:
        return []
    division_c = (state.thermometer_division_c or TYPED_C) if state.typed else PROBE_C
    return kind_of(state.plan).own_working(state.plan, state.own_reading, state.mean, division_c)


def _waits_for(state: State) -> Literal["end", "own reading", "staff"] | None:
    """What the results wait for."""
    if state.results_shown:
        return None
    if state.shown is not None or state.plan.results == "when shown":
        return "staff"
    return "own reading" if state.step is Step.DONE and state.has_curve else "end"


def _thermometer(state: State) -> ProbeReads | TypedIn:
    if not state.typed:
        return {"kind": "probe"}
    return {"kind": "typed", "division_c": state.thermometer_division_c, "digital": state.thermometer_digital}


def _adopted(adopted: Adopted) -> AdoptedShown:
    return {"label": adopted.label, "repeats": len(adopted.repeats)}


def _repeat(repeat: Repeat) -> RepeatShown:
    return {
        "repeat": repeat.repeat,
        "status": repeat.status,
        "reason": repeat.reason,
        "restorable": repeat.restorable,
        "started_s": repeat.begun_s,
        "cup": repeat.cup,
        "confirmed": sorted(repeat.confirmed),
        "clocked": list(repeat.clocked),
        **_rows(repeat.begun_s, *_seen(repeat)),
    }


@lru_cache(maxsize=64)
def _rows(
    begun_s: float,
    portions: tuple[Portion, ...],
    readings: tuple[Reading, ...],
    asked: tuple[tuple[int, str], ...],
    misread: frozenset[int],
    cup: int,
) -> RepeatRows:
    """Portions and readings of a repeat: the same objects again while they are the same, since samples come often."""
    repeat = _of_seen((portions, readings, asked, misread, cup), begun_s)
    return {
        "portions": [
            replace(each, time_s=round(each.time_s - begun_s, 3), unsure=repeat.unsure(each.portion))
            for each in repeat.portions
        ],
        "readings": [
            {
                "portion": reading.portion,
                "volume_cm3": repeat.added_cm3(reading.portion),
                "temperature_c": reading.temperature_c,
                "u_c": reading.u_c,
                "settled": reading.settled,
                "unsure": repeat.unsure(reading.portion),
                "reason": reading.reason,
                "typed": reading.typed,
                "time_s": round(reading.time_s - begun_s, 3),
            }
            for reading in repeat.readings
        ],
    }


Seen = tuple[tuple[Portion, ...], tuple[Reading, ...], tuple[tuple[int, str], ...], frozenset[int], int]
"""What rows are made of: portions, readings, open questions, readings that nobody stands by, and which cup it is."""


def _seen(repeat: Repeat) -> Seen:
    return repeat.portions, repeat.readings, repeat.asked, repeat.misread, repeat.cup


def _of_seen(seen: Seen, begun_s: float = 0.0) -> Repeat:
    portions, readings, asked, misread, cup = seen
    return Repeat(0, begun_s, portions=portions, readings=readings, asked=asked, misread=misread, cup=cup)


@lru_cache(maxsize=16)
def _mean(plan: Plan, repeats: tuple[Seen, ...], added_c: float | None) -> list[MeanPoint]:
    """The mean curve of these; kept like `_rows`."""
    return plan.mean_curve([_of_seen(seen) for seen in repeats], added_c)
