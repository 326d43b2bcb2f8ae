"""The end-point on the plan's scale of volumes, where the edges of portions do not move.

The heat curve bends where the end-point passes from one portion into the next. With uncertain volumes that
edge itself is uncertain; on the scale of the planned volumes it stands still: a third into portion 5 is a
third into portion 5 whatever the portions hold. The fit works on that scale ("place"), everything else on the
true one ("theta"); they differ in the first parameter only.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from station.analysis.cup_layout import Layout
from station.analysis.heat_inputs import Array


@dataclass(frozen=True)
class PlanScale:
    """The planned cumulative volumes, cm³, shape pours + 1, beginning with 0."""

    edges_cm3: Array

    @staticmethod
    def of(planned_cm3: Array) -> PlanScale:
        """Scale of portions planned as ``planned_cm3``."""
        return PlanScale(np.concatenate([[0.0], np.cumsum(planned_cm3)]))

    @property
    def layout(self) -> Layout:
        """Places of the parameters."""
        return Layout(len(self.edges_cm3) - 1)

    def portion(self, place: Array) -> int:
        """Portion (from 0) in which the end-point lies."""
        last = len(self.edges_cm3) - 2
        return int(np.clip(np.searchsorted(self.edges_cm3, place[0], side="left") - 1, 0, last))

    def edges(self, portion: int) -> tuple[float, float]:
        """Planned volumes before and after a portion; the lower a hair inside it, where the model bends."""
        low, high = float(self.edges_cm3[portion]), float(self.edges_cm3[portion + 1])
        return low + 1e-6 * (high - low), high

    def theta(self, place: Array) -> tuple[Array, Array]:
        """True parameters, and the derivatives of the true end-point by the place (shape size)."""
        k, volumes = self.portion(place), place[self.layout.volumes]
        planned = self.edges_cm3[k + 1] - self.edges_cm3[k]
        share = (place[0] - self.edges_cm3[k]) / planned
        theta, turn = place.copy(), np.zeros(len(place))
        theta[0] = volumes[:k].sum() + share * volumes[k]
        turn[0] = volumes[k] / planned
        turn[self.layout.volumes][:k] = 1.0
        turn[self.layout.volumes][k] = share
        return theta, turn

    def place(self, theta: Array) -> Array:
        """The place of true parameters."""
        volume = np.concatenate([[0.0], np.cumsum(theta[self.layout.volumes])])
        place = theta.copy()
        place[0] = np.interp(theta[0], volume, self.edges_cm3)
        return place
