"""The Cramér–Rao bound of a scene from the generator's own sensitivities, by central differences.

Samples count as independent with the variance of noise plus quantisation (step²/12); a parameter with a spread
enters as a normal prior, so this is the bound for someone who knows the true physics and its usual spread.
"""

from __future__ import annotations

import numpy as np

from tests.benchmarks.scenes import Scene, probe_at
from tests.benchmarks.scenes_physics import Array, Parameters


def _steps(scene: Scene) -> list[tuple[str, int | None, float, float]]:
    """Name, place in a vector, size of the difference, spread (inf when unknown to anyone)."""
    found: list[tuple[str, int | None, float, float]] = []
    for name, value in scene.drawn.parameters.items():
        spread = scene.drawn.spread.get(name)
        if value.ndim == 1:
            sd = float(spread) if spread is not None else np.inf
            found.append((name, None, 1e-4 * max(1.0, abs(float(value[0]))) if sd == np.inf else 0.01 * sd, sd))
        elif spread is not None:
            found += [(name, k, 0.01 * float(spread[k]), float(spread[k])) for k in range(len(value))]
    return [step for step in found if step[3] > 0.0]


def bound(scene: Scene) -> dict[str, float]:
    """Smallest possible standard uncertainties of end_point_cm3 and enthalpy_kj_mol for this scene."""
    steps = _steps(scene)
    batch: Parameters = {}
    for name, value in scene.drawn.parameters.items():
        wide = np.repeat(value, 2 * len(steps), axis=-1).astype(np.float64)
        for j, (other, k, size, _) in enumerate(steps):
            if other == name:
                where = (2 * j,) if k is None else (k, 2 * j)
                wide[where] += size
                wide[(*where[:-1], 2 * j + 1)] -= size
        batch[name] = wide
    felt = probe_at(scene.drawn.fixed, batch, scene.time_s[~scene.stale])
    sizes = np.array([s[2] for s in steps])
    jacobian: Array = (felt[:, 0::2] - felt[:, 1::2]) / (2.0 * sizes)
    information = jacobian.T @ jacobian / scene.noise_c**2
    information += np.diag([0.0 if s[3] == np.inf else 1.0 / s[3] ** 2 for s in steps])
    scale = 1.0 / np.sqrt(np.diag(information))
    inverse = np.linalg.inv(information * np.outer(scale, scale)) * np.outer(scale, scale)
    names = [s[0] for s in steps]
    return {n: float(np.sqrt(inverse[names.index(n), names.index(n)])) for n in ("end_point_cm3", "enthalpy_kj_mol")}
