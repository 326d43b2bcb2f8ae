"""Heat balance of readings by hand: the two lines through heat instead of temperature.

For each reading the heat taken up since the start is (heat capacity of liquid and cup) × (change of temperature)
plus what warms the alkali. Against volume it rises in proportion up to the end-point and then only falls by what
is lost to the room. For a given end-point all else is linear with normal priors (heat per cm³, loss, the alkali's
temperature, the true volume of each portion), so it is integrated out exactly and the end-point's posterior is
had on a grid.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from station.analysis.heat.balance import FAINTEST, Figure
from station.analysis.heat.inputs import Array, Estimate, HeatRefused, HeatSetup
from station.analysis.heat.start import bends, heat_taken_up
from station.words import Message, say

FEWEST_READINGS = 5
FLATTEST_U = 3.0
"""Range of the readings over their u, below which nothing happened: the trace's four steps of a probe."""

POINTS = 801
DOUBTED, DOUBTED_SD = 0.5, (-1.5, 1.5, 25)
"""A portion whose u is more than such a share of it is in doubt: from minus to plus so many u are tried, in steps."""
LOSS_J_K = Estimate(8.0, 7.0)
"""Heat lost between two readings, J for each kelvin above the room: some 0.13 W/K over about a minute. It is the same
however full the cup is. Common practice, no source."""

BELOW_ROOM_K = Estimate(0.5, 1.5)
"""How far below the room an open cup cools towards, for what evaporates: as in the fit of a trace."""

UNSEEN_LOSS = 0.02
"""Share of the heat by which readings alone may miss what was lost between them (measured on simulated open cups)."""


@dataclass(frozen=True)
class ReadingsFit:
    """Heat balance of readings by hand; ``heat_corrected_c`` (shape n) is the temperature without dilution and loss."""

    end_point_cm3: float
    u_end_point_cm3: float
    interval_95_cm3: tuple[float, float]
    enthalpy_kj_mol: float | None
    u_enthalpy_kj_mol: float | None
    acid_mol_dm3: float | None
    u_acid_mol_dm3: float | None
    heat_corrected_c: Array
    describes_readings: bool
    notes: tuple[Message, ...]


@dataclass(frozen=True)
class _Known:
    """Linear model of the heat: design for each end-point, priors, noise."""

    volume_cm3: Array
    heat_j: Array
    excess: Array
    warmed: Array
    chilled: Array
    u_heat_j: Array
    u_volume_cm3: Array
    heat_j_cm3: float
    u_alkali_j: float


def _known(volume: Array, temperature: Array, setup: HeatSetup, u_volume: Array, u_temperature: Array) -> _Known:
    heat = heat_taken_up(temperature, volume, setup)
    best = bends(heat, volume)[0]
    capacity = setup.acid_volume_cm3.value * setup.acid_j_cm3_k + setup.cup_j_k.value + setup.alkali_j_cm3_k * volume
    room = (setup.room_c.value if setup.room_c else float(temperature[0])) - BELOW_ROOM_K.value
    # The cup warms at once when a portion goes in, so it spends the interval near the temperature read at its end.
    excess = np.concatenate([[0.0], np.cumsum(temperature[1:] - room)])
    u_room = float(np.hypot(setup.room_c.u if setup.room_c else 2.0, BELOW_ROOM_K.u))
    chilled = LOSS_J_K.value * u_room * np.arange(float(len(volume)))
    u_alkali = setup.alkali_c.u if setup.alkali_c else 2.0
    return _Known(
        volume,
        heat,
        excess,
        volume,
        chilled,
        u_temperature * capacity,
        u_volume,
        best.heat_j_cm3,
        u_alkali * setup.alkali_j_cm3_k,
    )


def _posterior(known: _Known, end_points: Array) -> tuple[Array, Array, Array, float]:
    """ln posterior, mean and sd of the heat per cm³ at each end-point, and the least χ²."""
    n = len(known.volume_cm3)
    reacted = np.minimum(known.volume_cm3[None, :], end_points[:, None])
    before = (known.volume_cm3[None, :] < end_points[:, None]).astype(float)
    # Noise: the readings, the loss, the alkali's temperature, and the portions so far (a random walk that stops).
    walk = np.tril(np.ones((n, n)))
    walk[:, 0] = 0.0
    shared = known.u_volume_cm3[None, :] * known.heat_j_cm3 * walk
    steps = before[:, :, None] * shared[None, :, :]
    fixed = np.diag(known.u_heat_j**2)
    fixed = fixed + LOSS_J_K.u**2 * np.outer(known.excess, known.excess)
    fixed = fixed + known.u_alkali_j**2 * np.outer(known.warmed, known.warmed)
    fixed = fixed + np.outer(known.chilled, known.chilled)
    fixed = fixed + float(np.median(known.u_heat_j)) ** 2 * 1e4 * np.ones((n, n))  # where the start lies is free
    covariance = fixed[None] + steps @ steps.transpose(0, 2, 1)
    target = known.heat_j + LOSS_J_K.value * known.excess
    inverse = np.linalg.inv(covariance)
    information = np.einsum("gi,gij,gj->g", reacted, inverse, reacted)
    heat = np.einsum("gi,gij,j->g", reacted, inverse, target) / information
    rest = target[None, :] - heat[:, None] * reacted
    chi2 = np.einsum("gi,gij,gj->g", rest, inverse, rest)
    _, determinant = np.linalg.slogdet(covariance)
    return -0.5 * (chi2 + determinant + np.log(information)), heat, information**-0.5, float(chi2.min())


def _integrated(
    grid: Array, volume: Array, temperature: Array, setup: HeatSetup, u_volume: Array, u_temperature: Array
) -> tuple[_Known, Array, Array, Array, float]:
    """The posterior as `_posterior` gives it, and for which volumes.

    Where nobody knows whether a portion went in, it lies not near enough for a normal prior about its plan: which
    readings stand before the end-point depends on it. So it is integrated out over a grid of its own.
    """
    portion = np.diff(volume, prepend=volume[0])
    doubted = int(np.argmax(u_volume))
    if not u_volume[doubted] > DOUBTED * portion[doubted] > 0.0:
        known = _known(volume, temperature, setup, u_volume, u_temperature)
        return known, *_posterior(known, grid)
    others = np.where(np.arange(len(volume)) == doubted, np.min(u_volume[1:]), u_volume)
    logs, heats, u_heats, least, every = [], [], [], [], []
    for sd in np.linspace(*DOUBTED_SD):
        moved = volume + sd * u_volume[doubted] * (np.arange(len(volume)) >= doubted)
        if (np.diff(moved) < 0.0).any():
            continue
        every.append(_known(moved, temperature, setup, others, u_temperature))
        log, heat, u_heat, chi2 = _posterior(every[-1], grid)
        logs.append(log - 0.5 * sd * sd)
        heats.append(heat)
        u_heats.append(u_heat)
        least.append(chi2)
    log, heat, u_heat = np.array(logs), np.array(heats), np.array(u_heats)
    best = int(np.argmax(log.max(axis=1)))
    weight = np.exp(log - log.max(axis=0))
    weight /= weight.sum(axis=0)
    mean = (weight * heat).sum(axis=0)
    spread = np.sqrt((weight * (u_heat**2 + (heat - mean) ** 2)).sum(axis=0))
    return every[best], np.logaddexp.reduce(log, axis=0), mean, spread, least[best]


def _checked(volume: Array, temperature: Array, setup: HeatSetup, u_temperature: float) -> None:
    if setup.unmodelled is not None:
        raise HeatRefused("reagents", say("heat-unknown-reagents", reagents=setup.unmodelled))
    if volume.ndim != 1 or volume.shape != temperature.shape:
        raise ValueError("there must be one temperature for each volume")
    if not (np.isfinite(volume).all() and np.isfinite(temperature).all()):
        raise ValueError("volumes and temperatures must be finite numbers: leave bad readings out")
    if (np.diff(volume) < 0.0).any() or (len(volume) and volume[0] != 0.0):
        raise ValueError("volumes must begin with 0 and rise")
    if len(np.unique(volume)) < FEWEST_READINGS:
        raise HeatRefused("too_few_readings", say("heat-few-readings", least=FEWEST_READINGS))
    if float(np.ptp(temperature)) < FLATTEST_U * u_temperature:
        raise HeatRefused("no_heat", say("heat-hardly-changes"))


def fit_readings(
    volume_cm3: Array,
    temperature_c: Array,
    setup: HeatSetup,
    u_volume_cm3: Array | float = 0.0,
    u_temperature_c: Array | float = 0.1,
) -> ReadingsFit:
    """End-point from readings at cumulative volumes (0 first; equal where a portion was pressed and not poured).

    ``u_volume_cm3`` is that of one portion, or of what went in before each reading; ``u_temperature_c`` that of one
    reading, or of each.

    Raises :class:`HeatRefused` when no end-point can be made out, ValueError for impossible arrays.
    """
    u_volume = np.broadcast_to(np.asarray(u_volume_cm3, dtype=np.float64), volume_cm3.shape)
    u_temperature = np.broadcast_to(np.asarray(u_temperature_c, dtype=np.float64), temperature_c.shape)
    _checked(volume_cm3, temperature_c, setup, float(np.median(u_temperature)) if u_temperature.size else 0.0)
    grid = np.linspace(0.0, float(volume_cm3[-1]), POINTS)[1:]
    known, log, heat, u_heat, chi2 = _integrated(grid, volume_cm3, temperature_c, setup, u_volume, u_temperature)
    volume_cm3 = known.volume_cm3
    weight = np.exp(log - log.max())
    weight /= weight.sum()
    total = np.concatenate([[0.0], np.cumsum(weight)])
    half = 0.5 * (grid[1] - grid[0])  # a point of the grid stands for half a step either way
    low, high = np.interp([0.025, 0.975], total, np.concatenate([[grid[0] - half], grid + half]))
    edges = np.unique(volume_cm3)
    if high > 0.5 * (edges[-1] + edges[-2]):
        raise HeatRefused("not_passed", say("heat-more-readings-after"))
    if low < edges[1]:
        raise HeatRefused("no_bend", say("heat-no-bend"))
    mean = float(weight @ grid)
    q = float(weight @ heat)
    u_q = float(np.sqrt(weight @ (u_heat**2 + (heat - q) ** 2)))
    freedom = len(volume_cm3) - 3
    stretch = float(np.sqrt(max(1.0, chi2 / freedom)))
    if abs(q) < FAINTEST * stretch * u_q:
        raise HeatRefused("no_bend", say("heat-lost-in-scatter"))
    describes = chi2 / freedom < 4.0
    u = stretch * float(np.sqrt(weight @ (grid - mean) ** 2))
    acid, enthalpy = _figures(Figure(mean, u), Figure(q, stretch * u_q), setup)
    at_end = setup.acid_volume_cm3.value * setup.acid_j_cm3_k + setup.cup_j_k.value + setup.alkali_j_cm3_k * mean
    corrected = temperature_c[0] + (known.heat_j + LOSS_J_K.value * known.excess) / at_end
    return ReadingsFit(
        mean,
        u,
        (mean - stretch * (mean - float(low)), mean + stretch * (float(high) - mean)),
        enthalpy.value if enthalpy else None,
        enthalpy.u if enthalpy else None,
        acid.value if acid else None,
        acid.u if acid else None,
        corrected,
        describes,
        () if describes else (say("heat-note-readings-scatter"),),
    )


def _figures(end_point: Figure, heat: Figure, setup: HeatSetup) -> tuple[Figure | None, Figure | None]:
    """Acid concentration, mol/dm³, and enthalpy per mol of water, kJ/mol; None without the alkali's concentration."""
    alkali, acid = setup.alkali_mol_dm3, setup.acid_volume_cm3
    if alkali is None:
        return None, None
    value = end_point.value * alkali.value * setup.acid_per_alkali / acid.value
    parts = np.array([end_point.u / end_point.value, acid.u / acid.value, alkali.u / alkali.value])
    concentration = Figure(value, value * float(np.sqrt((parts**2).sum())))
    enthalpy = -heat.value / (alkali.value * setup.water_per_alkali)
    whole = acid.value * setup.acid_j_cm3_k + setup.alkali_j_cm3_k * end_point.value
    cup = setup.cup_j_k.u / (whole + setup.cup_j_k.value)
    shares = np.array([heat.u / heat.value, alkali.u / alkali.value, setup.u_heat_capacity, cup, UNSEEN_LOSS])
    return concentration, Figure(enthalpy, abs(enthalpy) * float(np.sqrt((shares**2).sum())))
