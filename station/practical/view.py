"""The state as the page, the student of the virtual cup and the room see it: plain JSON values."""

from collections.abc import Mapping, Sequence
from dataclasses import asdict
from functools import lru_cache
from typing import Any

from station.practical.guide import guide
from station.practical.plan import Plan
from station.practical.probe_used import corrections_view
from station.practical.procedure import possible_acts
from station.practical.prompts import instruction
from station.practical.questions import open_questions
from station.practical.settling import verdict_now
from station.practical.state import Adopted, Repeat, Sample, State, Step, mean_readings

View = dict[str, Any]


def view(state: State, time_s: float) -> View:
    """Return everything that a screen needs except the trace (see `trace`) and what the server adds."""
    asked = instruction(state)
    return {
        "plan": state.plan.public(),
        "state": state.step.value,
        "instruction": asdict(asked),
        "other_acts": [act for act in dict.fromkeys(possible_acts(state)) if act != asked.act],
        "repeat": len(state.repeats),
        "repeats_planned": state.plan.repeats,
        "portion": state.poured,
        "portions_planned": state.plan.count,
        "total_added_cm3": state.current.total_cm3 if state.current else 0.0,
        "alkali_temperature_c": state.alkali_c,
        "ended_early": state.ended_early,
        "silent": state.silent,
        "repeats": [_repeat(repeat) for repeat in state.worked_on],
        "mean": mean_readings(state.counted),
        "results": {"rule": state.plan.results, "shown": state.results_shown, "waits_for": _waits_for(state)},
        "own_reading": None if state.own_reading is None else asdict(state.own_reading),
        "group": state.group,
        "notes": [asdict(note) for note in state.notes],
        "thermometer": _thermometer(state),
        "adopted": None if state.adopted is None else _adopted(state.adopted),
        "questions": open_questions(state),
        "corrections": corrections_view(state),
        "guide": _guide(state.plan),
        **live(state, time_s),
    }


def live(state: State, time_s: float) -> View:
    """Return what changes with every sample."""
    verdict = verdict_now(state, time_s)
    newest = state.recent[-1] if state.recent else None
    good = state.gate.good
    settle = None if verdict is None else {"left_s": verdict.left_s, "sure": round(verdict.sure, 3)}
    return {
        "settle": settle,
        "live": None if newest is None else asdict(newest),
        "last_good": None if good is None else {"temperature_c": good.temperature_c, "time_s": good.time_s},
        "probe": state.probe,
    }


def shown_result(answer: Mapping[str, Any]) -> View:
    """Return the results (see `results.py`) as screens and files show them: the mean's on top, then all the rest."""
    repeats = [{**(each["straight_lines"] or {}), **each} for each in answer["repeats"]]
    rest = {name: value for name, value in answer.items() if name != "mean"}
    return {**answer["mean"], **rest, "repeats": repeats}


def trace(state: State) -> View:
    """Return the samples since the newest pour (or the start) of the newest repeat, in bench time."""
    repeat = state.current
    if repeat is None:
        return {"repeat": 0, "samples": []}
    since_s = repeat.portions[-1].time_s if repeat.portions else repeat.begun_s
    return {"repeat": repeat.repeat, "samples": _pairs(repeat.samples, since_s, 0.0)}


def samples_of(repeat: Repeat) -> View:
    """Return the whole trace of a repeat, times since its start."""
    return {"repeat": repeat.repeat, "samples": _pairs(repeat.samples, repeat.begun_s, repeat.begun_s)}


def _pairs(samples: Sequence[Sample], since_s: float, zero_s: float) -> list[list[float | None]]:
    return [[round(each.time_s - zero_s, 3), each.temperature_c] for each in samples if each.time_s >= since_s]


@lru_cache(maxsize=2)
def _guide(plan: Plan) -> View:
    """The guide changes with the plan alone."""
    return guide(plan)


def _waits_for(state: State) -> str | None:
    """What the results wait for."""
    if state.results_shown:
        return None
    if state.shown is not None or state.plan.results == "when shown":
        return "staff"
    return "own reading" if state.step is Step.DONE else "end"


def _thermometer(state: State) -> View:
    return {"kind": "typed", "division_c": state.thermometer_division_c} if state.typed else {"kind": "probe"}


def _adopted(adopted: Adopted) -> View:
    return {"label": adopted.label, "repeats": len(adopted.repeats)}


def _repeat(repeat: Repeat) -> View:
    return {
        "repeat": repeat.repeat,
        "status": repeat.status,
        "reason": repeat.reason,
        "restorable": repeat.restorable,
        "started_s": repeat.begun_s,
        "portions": [
            {**asdict(portion), "time_s": round(portion.time_s - repeat.begun_s, 3)} for portion in repeat.portions
        ],
        "readings": [
            {
                **asdict(reading),
                "typed": reading.typed,
                "time_s": round(reading.time_s - repeat.begun_s, 3),
                "volume_cm3": repeat.added_cm3(reading.portion),
                "unsure": repeat.unsure(reading.portion),
            }
            for reading in repeat.readings
        ],
    }
