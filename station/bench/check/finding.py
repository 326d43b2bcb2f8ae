"""What the pre-flight found: a colour with words, and what to do next. Pure."""

from collections.abc import Iterable, Mapping
from dataclasses import asdict, dataclass, field
from typing import Any, Final, Literal

from station.bench.panel_patterns import Signal

Colour = Literal["green", "amber", "red", "unknown"]
Status = Literal["green", "amber", "red"]

EXIT_STATUS: Final[Mapping[Status, int]] = {"green": 0, "amber": 1, "red": 2}

_SIGNALS: Final[Mapping[Status, Signal]] = {
    "green": Signal.DONE,
    "amber": Signal.WAIT,
    "red": Signal.ATTENTION,
}


@dataclass(frozen=True)
class Finding:
    """One thing looked at. `unknown`: it cannot be told on this machine, and counts neither for nor against it.

    `text` says what was found, `remedy` what to do next ("" when nothing is to do), `values` the figures with
    their units in the keys, for scripts.
    """

    name: str
    colour: Colour
    text: str
    remedy: str = ""
    values: Mapping[str, Any] = field(default_factory=dict)


def status_of(findings: Iterable[Finding]) -> Status:
    """Return the worst colour; what is unknown does not count."""
    colours = {finding.colour for finding in findings}
    if "red" in colours:
        return "red"
    return "amber" if "amber" in colours else "green"


def as_json(findings: Iterable[Finding]) -> dict[str, Any]:
    """Return the JSON form: `{"status": …, "findings": [{name, colour, text, remedy, values}, …]}`."""
    found = list(findings)
    return {"status": status_of(found), "findings": [asdict(each) for each in found]}


def panel_signal(status: Status) -> Signal:
    """Return what the lamps show for it: act steady, wait slow and even, or attention fast."""
    return _SIGNALS[status]
