"""Which correction of the probe is in a repeat's temperatures, how sure they are with it, and that in words."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date

from typing_extensions import TypedDict

from station.analysis.probe.correction import U_ELSEWHERE, UNCHECKED_C
from station.practical.checks.register import InUse
from station.practical.state import Repeat, State
from station.words import Message, dumps, join, say

LINES = ("comparison", "ice and boiling")
"""Checks that found a slope, too."""

NAMES = {
    "ice": say("check-ice"),
    "comparison": say("check-comparison"),
    "ice and boiling": say("check-ice-and-boiling"),
}


@dataclass(frozen=True)
class ProbeUsed:
    """What was added to what the probe said, about `at_c`: `correction_c`, its u and the relative u of a difference.

    `check` is None where nothing was added: then `u_c` is the data sheet's. `day` is when the check was, as far as the
    station's clock knew. `changed` says that probe or correction changed within the repeat; `told` is False where
    nothing tells of a check, as in a file that comes from elsewhere.
    """

    check: str | None
    day: str
    at_c: float
    correction_c: float
    u_c: float
    u_slope: float
    changed: bool = False
    told: bool = True

    @property
    def has_slope(self) -> bool:
        """Whether the check found how the correction changes with temperature."""
        return self.check in LINES


def used_in(repeat: Repeat) -> ProbeUsed | None:
    """Return what is in a repeat's temperatures; None where they are not the probe's."""
    if not repeat.samples or any(reading.typed for reading in repeat.readings):
        return None
    read_c = [each.temperature_c for each in repeat.readings if each.temperature_c is not None]
    read_c = read_c or [each.temperature_c for each in repeat.samples[-8:] if each.temperature_c is not None]
    at_c = sum(read_c) / len(read_c) if read_c else 20.0
    used = used_of(repeat.corrected[-1] if repeat.corrected else None, at_c)
    changed = any(each != repeat.corrected[-1] for each in repeat.corrected)
    return ProbeUsed(used.check, used.day, used.at_c, used.correction_c, used.u_c, used.u_slope, changed)


def used_of(in_use: InUse | None, at_c: float) -> ProbeUsed:
    """Return what is added about this (corrected) temperature."""
    if in_use is None:
        return ProbeUsed(None, "", round(at_c, 2), 0.0, UNCHECKED_C, U_ELSEWHERE)
    line, said_c = in_use.correction, at_c - in_use.correction.of(at_c)
    return ProbeUsed(
        in_use.check,
        day_in_words(in_use.wall, in_use.clock),
        round(at_c, 2),
        round(line.of(said_c), 4),
        round(line.u_of(said_c), 4),
        line.u_slope,
    )


def day_in_words(wall: str, clock: str) -> str:
    """Return the day of a wall time, and whether the clock had been set."""
    try:
        day = date.fromisoformat(wall[:10]).isoformat()
    except ValueError:
        return say("day-not-known")
    return day if clock == "network" else say("day-clock-not-set", day_date=day)


def in_words(used: ProbeUsed) -> Message:
    """Return what a reader of the temperatures has to know."""
    if not used.told:
        return say("probe-nothing-told")
    if used.check is None:
        return say("probe-not-checked")
    name = NAMES.get(used.check, used.check)
    added_c = round(used.correction_c, 2) + 0.0  # no minus in front of nothing
    told = say("probe-corrected", added_c=f"{added_c:+.2f}", u_c=f"{used.u_c:.2f}", check=name, day=used.day)
    if used.has_slope:
        return join([told, say("probe-offset-cancels-slope", percent=f"{100.0 * used.u_slope:.2f}")])
    return join([told, say("probe-offset-cancels")])


def changed_note(repeat: int) -> Message:
    """Return the warning that goes with a repeat in which the probe changed."""
    return say("probe-changed", repeat=repeat)


def differing_note() -> Message:
    """Return the warning that goes with a mean of repeats that were not corrected alike."""
    return say("probe-differing")


class ProbeShown(TypedDict):
    """What was added to what the probe said, about `at_c`, and how sure that is; in words in `text`."""

    check: str | None
    day: str
    at_c: float
    correction_c: float
    u_c: float
    u_slope: float
    text: Message


def used_json(used: ProbeUsed) -> ProbeShown:
    """Return it as answers have it, in words too."""
    return {
        "check": used.check,
        "day": used.day,
        "at_c": used.at_c,
        "correction_c": used.correction_c,
        "u_c": round(used.u_c, 4),
        "u_slope": round(used.u_slope, 6),
        "text": in_words(used),
    }


def alike(used: Sequence[ProbeUsed]) -> bool:
    """Return whether these repeats were corrected by the same check."""
    return len({(each.check, each.day, each.u_slope) for each in used}) <= 1


class Corrected(TypedDict):
    """What was added to what the probe says, and in which repeats; all later ones where none is named."""

    repeats: list[int]
    text: Message


def corrections_view(state: State) -> list[Corrected]:
    """Return what corrects which repeats, in words: before there are any, what will correct the next."""
    if state.adopted is not None or state.typed:
        return []
    told: dict[str, tuple[Message, list[int]]] = {}
    for repeat, used in _used(state.repeats):
        text = in_words(used)
        told.setdefault(dumps(text), (text, []))[1].append(repeat)
    if not told and state.has_probe:
        text = in_words(used_of(state.probes.in_use, 20.0))
        told[dumps(text)] = text, []
    return [{"repeats": repeats, "text": text} for text, repeats in told.values()]


def _used(repeats: Iterable[Repeat]) -> Iterable[tuple[int, ProbeUsed]]:
    for repeat in repeats:
        used = used_in(repeat)
        if used is not None and repeat.counts:
            yield repeat.repeat, used
