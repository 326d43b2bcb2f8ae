"""From the state to what the analysis needs, and through JSON to the child process and back."""

from collections.abc import Mapping, Sequence
from dataclasses import asdict, dataclass
from typing import Any

from station.practical.plan import Plan, plan_from
from station.practical.probe_used import ProbeUsed, used_in
from station.practical.state import Repeat, State


@dataclass(frozen=True)
class ReadingRow:
    """A reading that counts: portion number (0: the start), total added in cm³, temperature in °C."""

    portion: int
    volume_cm3: float
    temperature_c: float


@dataclass(frozen=True)
class RepeatData:
    """One repeat as the analysis sees it: readings, and the trace and pours where there is one.

    `ended` is False for a repeat under way: its numbers are shown, and kept out of a mean with ended ones.
    `samples` are (time_s, temperature_c), good ones only; `pours` are (time_s of the press, volume_cm3,
    unsure); `read_s` (portion, time_s of its reading); times since the repeat's start. `probe` says what was added to
    what the probe said (None: nothing is known of that, or no probe was used).
    """

    repeat: int
    readings: tuple[ReadingRow, ...]
    samples: tuple[tuple[float, float], ...] = ()
    pours: tuple[tuple[float, float, bool], ...] = ()
    ended: bool = True
    read_s: tuple[tuple[int, float], ...] = ()
    probe: ProbeUsed | None = None


@dataclass(frozen=True)
class Known:
    """What was measured beside the trace: the temperature of what is added, in °C, if it was.

    `alkali_typed` says that another thermometer measured it: then the probe's own `u_probe_c` does not cancel in the
    difference to the cup. `u_slope` is the relative u of every difference that the probe measures.
    """

    alkali_c: float | None = None
    alkali_u_c: float | None = None
    alkali_typed: bool = False
    u_probe_c: float = 0.0
    u_slope: float = 0.0


def repeat_data(repeat: Repeat) -> RepeatData:
    """Return what the analysis sees of a repeat: readings that nobody doubts, the trace, the pours.

    Where readings were typed there is no trace to speak of: the probe was missing or failing.
    """
    typed = any(reading.typed for reading in repeat.readings)
    return RepeatData(
        repeat.repeat,
        tuple(
            ReadingRow(reading.portion, repeat.added_cm3(reading.portion), reading.temperature_c)
            for reading in sorted(repeat.readings, key=lambda each: each.portion)
            if reading.temperature_c is not None and not repeat.unsure(reading.portion)
        ),
        tuple(
            (round(each.time_s - repeat.begun_s, 3), each.temperature_c)
            for each in sorted(repeat.samples, key=lambda each: each.time_s)
            if each.temperature_c is not None and not typed
        ),
        tuple((round(each.time_s - repeat.begun_s, 3), each.volume_cm3, each.unsure) for each in repeat.portions),
        repeat.status == "ended",
        tuple((each.portion, round(each.time_s - repeat.begun_s, 3)) for each in repeat.readings),
        used_in(repeat),
    )


def question_for(state: State) -> dict[str, Any]:
    """Return the JSON question that a child process answers: the plan and the repeats that count."""
    data = [repeat_data(repeat) for repeat in state.counted]
    return {
        "plan": state.plan.model_dump(mode="json"),
        "alkali_c": state.alkali_c,
        "alkali_u_c": state.alkali_u_c,
        "alkali_typed": state.alkali_typed,
        "repeats": [
            {
                "repeat": each.repeat,
                "readings": [[row.portion, row.volume_cm3, row.temperature_c] for row in each.readings],
                "samples": each.samples,
                "pours": each.pours,
                "ended": each.ended,
                "read_s": each.read_s,
                "probe": None if each.probe is None else asdict(each.probe),
            }
            for each in data
        ],
    }


def from_question(question: Mapping[str, Any]) -> tuple[Plan, Sequence[RepeatData], Known]:
    """Return plan, repeats and what else is known of such a question."""
    repeats = [
        RepeatData(
            each["repeat"],
            tuple(ReadingRow(*row) for row in each["readings"]),
            tuple((time_s, temperature_c) for time_s, temperature_c in each["samples"]),
            tuple((time_s, volume_cm3, unsure) for time_s, volume_cm3, unsure in each["pours"]),
            each["ended"],
            tuple((portion, time_s) for portion, time_s in each["read_s"]),
            None if each["probe"] is None else ProbeUsed(**each["probe"]),
        )
        for each in question["repeats"]
    ]
    known = Known(question["alkali_c"], question["alkali_u_c"], question["alkali_typed"])
    return plan_from(question["plan"]), repeats, known
