"""What the settle detector says."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

Pace = Literal["graph", "quick"]


@dataclass(frozen=True, slots=True)
class Verdict:
    """What the detector thinks at `now_s`.

    `temperature_c` is the mean of the last fresh conversions (None without any), `u_c` its standard
    uncertainty as the temperature of the cup, `slope_c_s` the slope of the trace, `left_s` the seconds
    still to wait (None when not known), `sure` the probability (0 to 1) that `temperature_c` is within one
    step of the cup, `reason` says why in a few words.
    """

    settled: bool
    temperature_c: float | None
    u_c: float | None
    slope_c_s: float | None
    left_s: float | None
    sure: float
    reason: str
