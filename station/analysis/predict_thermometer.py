"""What a temperature is read with, and how a reading scatters."""

from __future__ import annotations

from dataclasses import dataclass
from math import hypot, sqrt

import numpy as np

from station.analysis.heat_inputs import Array


@dataclass(frozen=True)
class Thermometer:
    """A probe that is sampled all the time (``traced``), or a thermometer that is read once after each portion.

    ``step_c`` is the smallest step it is read to, ``noise_c`` one standard deviation of a reading before it is
    rounded to that step.
    """

    name: str
    step_c: float
    noise_c: float
    traced: bool = False

    @property
    def u_reading_c(self) -> float:
        """Standard uncertainty of one reading: rounding (step/√12, GUM 4.3.7) and scatter."""
        return hypot(self.step_c / sqrt(12.0), self.noise_c)

    def read(self, temperature_c: Array, rng: np.random.Generator) -> Array:
        """Readings of these temperatures, °C, any shape."""
        felt = temperature_c + self.noise_c * rng.standard_normal(temperature_c.shape)
        return np.asarray(np.round(felt / self.step_c) * self.step_c)


PROBE = Thermometer("probe", 0.0625, 0.02, traced=True)
"""A DS18B20 at 12 bits. Its noise below one step, and the scatter of a person's reading, a fifth of a division,
are common practice, no source."""
GLASS_TENTH = Thermometer("thermometer_0_1_c", 0.1, 0.02)
GLASS_WHOLE = Thermometer("thermometer_1_c", 1.0, 0.2)
