"""Where each parameter of the cup model stands in its vector: first the cup, then pours, then intervals.

Knows names, units and order only; the physics is in :mod:`station.analysis.cup`.
"""

from __future__ import annotations

from dataclasses import dataclass

SCALARS = (
    "end_point_cm3",  # true cumulative volume of alkali at neutralisation
    "heat_j_cm3",  # heat given out per cm³ of alkali that reacts, at the reference temperature
    "start_c",  # temperature of the acid when the trace begins
    "alkali_c",
    "room_c",  # what the cup cools towards: the room, less what evaporation takes
    "log_loss_w_k",  # ln of the heat loss per kelvin above the room
    "log_lag_fast_s",  # the probe's two time constants …
    "log_lag_slow_s",
    "lag_share",  # … and the share of the fast one in its step response
    "log_mixing_s",  # ln of the common mixing time
    "slow_share",  # the part of a portion's heat that mixes slowly, in a corner that is not stirred …
    "log_slow_mixing_s",  # … and ln of the time that takes
    "press_s",  # how much later than the pour this group presses, on average
    "cup_j_k",  # heat capacity of cup and probe
    "wall_share",  # the part of it that warms slowly
    "log_wall_s",
    "wall_offset_c",  # how far the slow part begins from the acid's temperature
    "probe_offset_c",  # the same for the probe
    "acid_volume_cm3",
    "heat_capacity_scale",  # common relative factor on the liquids' heat capacities
    "room_drift_c_s",
    "loss_curve_k",  # relative growth of the loss per kelvin the cup is warmer
    "heat_slope_k",  # relative change of the heat of reaction per kelvin
)
"""Names of the scalar parameters, in the order of the vector."""

INDEX = {name: place for place, name in enumerate(SCALARS)}
"""Place of each scalar parameter in the vector."""


@dataclass(frozen=True)
class Layout:
    """Places of the parameters of a cup with ``pours`` portions."""

    pours: int

    @property
    def size(self) -> int:
        """Length of the parameter vector."""
        return self.moved + self.pours + 1

    @property
    def moved(self) -> int:
        """How many of the parameters move heat about; the patches behind them only shift what is read."""
        return len(SCALARS) + 3 * self.pours

    @property
    def times(self) -> slice:
        """Moments of the pours, s, before the common lateness of the press is taken off."""
        return slice(len(SCALARS), len(SCALARS) + self.pours)

    @property
    def volumes(self) -> slice:
        """True volumes of the portions, cm³."""
        return slice(len(SCALARS) + self.pours, len(SCALARS) + 2 * self.pours)

    @property
    def mixings(self) -> slice:
        """Logarithm of each portion's mixing time over the common one."""
        return slice(len(SCALARS) + 2 * self.pours, self.moved)

    @property
    def patches(self) -> slice:
        """How much warmer than the mean the liquid around the probe is in each interval (pours + 1), °C."""
        return slice(self.moved, self.size)

    def names(self) -> tuple[str, ...]:
        """Name of every place: the scalars, then such as ``pour_time_s[1]``, ``volume_cm3[1]``, ``patch_c[0]``."""
        groups = ("pour_time_s", "volume_cm3", "log_mixing")
        moved = tuple(f"{group}[{k + 1}]" for group in groups for k in range(self.pours))
        return SCALARS + moved + tuple(f"patch_c[{k}]" for k in range(self.pours + 1))
