"""A reading that was misread, or a portion that was not poured as planned: what far better fits the other readings.

The heat taken up so far rises in proportion to what was added up to the end-point, and then no more; loss and the
temperature of what is added bend that a little. For a given end-point it is linear regression, so what follows when a
reading is left out, or when all after a portion may lie higher or lower, has closed forms. Plain Python: a station
asks while somebody types, and loads no numpy.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import accumulate, pairwise
from math import hypot, inf, log, sqrt
from statistics import NormalDist, median

FEWEST = 6
"""So many readings, the start among them, before one can stand against the others."""
LEVEL = 0.002
"""Chance of a question where nothing is wrong, over all readings of a repeat at once."""
KNOWN_DEGREES = 8
"""The u of a reading is itself known to 25 %: as much as eight degrees of freedom say (JCGM 100:2008, G.4.2)."""
LEAST_U, LEAST_SHARE = 3.0, 0.2
"""A reading nearer to the others than so many of its u, and a portion wrong by less than such a share, is let alone."""
CLEAR_SHARE, CLEAR_U = 0.5, 2.0
"""A portion was as planned where by so many u less than such a share of it is missing or too much."""
REFUTES_U, FAVOURS_U = 4.0, 2.0
"""It was poured, and once, where the contrary would fit worse by so many u; maybe not, where it fits so much better."""
PIECES = 4
"""End-points that are tried within one portion."""
LOSS_J_K, U_LOSS_J_K = 8.0, 7.0
"""Heat lost between two readings, J for each kelvin above the room: as the heat balance of readings by hand."""
U_HEAT = 0.25
"""Relative u of what is known of the heat beforehand: as where the station looks at a first portion."""
UNTOLD_C = 3.0
"""u of the temperature of what is added, where nobody measured it."""
PARAMETERS = 4
"""End-point, heat and start are free; what the added warms and what is lost are half known: one more between them."""
MOST = 2
"""So many are looked for in one repeat: a third is no slip."""


@dataclass(frozen=True, slots=True)
class Contents:
    """What is in the cup: heat capacities in J/K at the start and in J/(cm³ K) of what is added.

    `added_c` is the temperature of what is added and `u_added_c` its u; None: about that of the start. `room_c` is the
    room's (None: the start's), `u_portion_cm3` the u of one portion. `heat_j_cm3` is about what a cm³ gives out as long
    as it reacts (None: nobody knows). `typed`: a reading can be a slip.
    """

    start_j_k: float
    added_j_cm3_k: float = 4.1
    added_c: float | None = None
    u_added_c: float = 0.3
    room_c: float | None = None
    u_portion_cm3: float = 0.0
    heat_j_cm3: float | None = None
    typed: bool = True


@dataclass(frozen=True, slots=True)
class Odd:
    """What does not fit: the reading of this index (`share` None), or what was poured before it.

    `off_c` is how far the reading lies off, `share` how many portions too much went in (negative: too little);
    `deviate` is what chance would need for it.
    """

    index: int
    deviate: float
    off_c: float = 0.0
    share: float | None = None


@dataclass(frozen=True, slots=True)
class Hindsight:
    """What does not fit, the worst first, and what surely does, by the indices of readings.

    `fitting`: these and what was poured before them; `poured`: that was poured; `once`: it was not poured twice;
    `maybe_poured`, `maybe_once`: that is at least as likely as the contrary.
    """

    odd: tuple[Odd, ...] = ()
    fitting: frozenset[int] = frozenset()
    poured: frozenset[int] = frozenset()
    once: frozenset[int] = frozenset()
    maybe_poured: frozenset[int] = frozenset()
    maybe_once: frozenset[int] = frozenset()

    def among(self, indices: Sequence[int], odd: tuple[Odd, ...]) -> Hindsight:
        """Return the same by other indices: of each reading here, which one it is."""
        every = (self.fitting, self.poured, self.once, self.maybe_poured, self.maybe_once)
        return Hindsight(odd, *(frozenset(indices[i] for i in each) for each in every))


Rows = list[list[float]]


def odd_ones(
    volume_cm3: Sequence[float],
    temperature_c: Sequence[float],
    contents: Contents,
    u_c: float,
    doubted: Sequence[int] = (),
) -> Hindsight:
    """Return what fits and what does not in readings (total added, rising from 0, and temperature; `u_c` each).

    What was poured before the readings of indices `doubted` is in doubt already. The statistic is the externally
    studentised residual, its variance shared between what is known beforehand and what the other readings scatter,
    with Bonferroni's correction (R. D. Cook and S. Weisberg, Residuals and Influence in Regression, 1982, 2.2.2).
    """
    left, steps = list(range(len(volume_cm3))), list(doubted)
    found: list[Odd] = []
    while len(left) >= FEWEST and len(found) <= MOST:
        among = [left.index(each) for each in steps if each in left]
        look = _look([volume_cm3[i] for i in left], [temperature_c[i] for i in left], contents, u_c, among)
        if not look.odd:
            return look.among(left, tuple(found))
        odd = look.odd[0]
        index = left[odd.index]
        found.append(replace(odd, index=index))
        if odd.share is None:
            left.remove(index)
        else:
            steps.append(index)
    return Hindsight(tuple(found[:MOST]))


@dataclass(slots=True)
class _Best:
    """The least χ² so far with a reading or a portion set free, what it then is, its variance, and the heat per cm³.

    `missed` and `doubled` are the least χ² if the portion was that.
    """

    chi2: float = inf
    value: float = 0.0
    variance: float = 0.0
    heat_j_cm3: float = 0.0
    missed: float = inf
    doubled: float = inf


def _look(
    volumes: list[float], temperatures: list[float], contents: Contents, u_c: float, steps: Sequence[int]
) -> Hindsight:
    """The oddest, if anything is, and what fits."""
    count = len(volumes)
    if max(temperatures) - min(temperatures) < LEAST_U * u_c:
        return Hindsight()
    profile = _Profile(_Design(volumes, temperatures, contents, u_c, steps), count - PARAMETERS - len(steps) - 1)
    candidates = []
    if contents.typed:
        candidates = [Odd(k, profile.deviate(best), best.value) for k, best in enumerate(profile.readings)]
    fitting = set()
    for k, best in enumerate(profile.portions):
        if not k or best.chi2 == inf:
            continue
        of_portion = contents.u_portion_cm3 * best.heat_j_cm3
        share, u_share = profile.share(k, of_portion)
        off_u = abs(profile.readings[k].value) / u_c / sqrt(profile.scattered(best.chi2))
        if abs(share) + CLEAR_U * u_share < CLEAR_SHARE and off_u < LEAST_U:
            fitting.add(k)
        if k not in steps:
            candidates.append(Odd(k, profile.deviate(best, of_portion), 0.0, share))
    limit = NormalDist().inv_cdf(1 - LEVEL / 4 / count)
    told = [each for each in candidates if each.deviate > limit and _is_far(each, u_c)]
    odd = max(told, key=lambda each: (round(each.deviate, 6), _is_whole(each)), default=None)
    known = [(k, best) for k, best in enumerate(profile.portions) if best.chi2 < inf and k not in steps]
    sure = (
        frozenset(k for k, best in known if profile.refutes(best.missed)),
        frozenset(k for k, best in known if profile.refutes(best.doubled)),
        frozenset(k for k, best in known if not profile.favours(best.missed)),
        frozenset(k for k, best in known if not profile.favours(best.doubled)),
    )
    return Hindsight((odd,) if odd else (), frozenset(fitting) - set(steps), *sure)


class _Profile:
    """The least χ² over all end-points, of everything and with each reading or portion set free."""

    def __init__(self, design: _Design, degrees: int) -> None:
        self.design, self.degrees = design, max(degrees, 0)
        self.free = KNOWN_DEGREES + self.degrees
        self.whole = inf
        self.readings, self.portions = [_Best() for _ in design.volumes], [_Best() for _ in design.volumes]
        for end_point_cm3 in _end_points(design.volumes):
            fitted = design.fitted(end_point_cm3)
            self.whole = min(self.whole, fitted.chi2)
            self.readings = [min(pair, key=_chi2) for pair in zip(self.readings, fitted.without, strict=True)]
            self.portions = [_joined(*pair) for pair in zip(self.portions, fitted.shifted, strict=True)]

    def scattered(self, chi2: float) -> float:
        """By how much more than known beforehand the readings scatter, as a variance."""
        return max((KNOWN_DEGREES + chi2) / self.free, 1.0)

    def deviate(self, best: _Best, of_portion_j: float = 0.0) -> float:
        """What chance would need for this gain; `of_portion_j` is what a portion may step by anyway, J."""
        t = studentised(self.whole, best.chi2, self.degrees)
        if of_portion_j:
            t /= sqrt(1.0 + of_portion_j**2 / best.variance * self.free / (KNOWN_DEGREES + best.chi2))
        return normal_deviate(t, self.free)

    def share(self, k: int, of_portion_j: float) -> tuple[float, float]:
        """How many portions too much went in before a reading, and its u."""
        best = self.portions[k]
        portion_j = self.design.portion_j(k, best.heat_j_cm3)
        variance = self.scattered(best.chi2) * best.variance + of_portion_j**2
        return best.value / portion_j, sqrt(variance) / abs(portion_j)

    def refutes(self, contrary: float) -> bool:
        """Whether what would have this χ² is out of the question."""
        return contrary > self.whole + REFUTES_U**2 * self.scattered(self.whole)

    def favours(self, contrary: float) -> bool:
        """Whether what would have this χ² is likelier than that all is as planned."""
        return contrary < self.whole - FAVOURS_U**2 * self.scattered(contrary)


def _chi2(best: _Best) -> float:
    return best.chi2


def _joined(one: _Best, other: _Best) -> _Best:
    missed, doubled = min(one.missed, other.missed), min(one.doubled, other.doubled)
    return replace(min(one, other, key=_chi2), missed=missed, doubled=doubled)


def _is_far(odd: Odd, u_c: float) -> bool:
    return abs(odd.off_c) >= LEAST_U * u_c if odd.share is None else abs(odd.share) >= LEAST_SHARE


def _is_whole(odd: Odd) -> bool:
    """A start that lies off looks like a wrong first portion: what is about a whole portion is taken for one."""
    return odd.share is not None and abs(abs(odd.share) - 1.0) < LEAST_SHARE


def studentised(whole: float, without: float, degrees: int, known: int = KNOWN_DEGREES) -> float:
    """Return the externally studentised residual of a reading from χ² with it and without it.

    `degrees` are left without it; `known` says for how many more the u of a reading is known beforehand.
    """
    scatter = (known + without) / (known + degrees)
    return sqrt(max(whole - without, 0.0) / scatter)


def normal_deviate(t: float, degrees: int) -> float:
    """Return Student's t as a normal deviate (D. L. Wallace, Ann. Math. Statist. 30, 1124 (1959); from memory)."""
    return (8 * degrees + 1) / (8 * degrees + 3) * sqrt(degrees * log(1 + t * t / degrees))


def _end_points(volumes: Sequence[float]) -> Iterator[float]:
    """Where the bend may be, from the first portion to the last reading."""
    for low, high in pairwise(volumes):
        yield from (low + (high - low) * (k + 1) / PIECES for k in range(PIECES))


@dataclass(frozen=True, slots=True)
class _Fitted:
    """χ², and what it is without each reading, and with all after each portion free to lie higher or lower."""

    chi2: float
    without: list[_Best]
    shifted: list[_Best]


class _Design:
    """All that stays while end-points are tried: the heat of each reading, its u, and what else bends it.

    The columns are heat of the reaction, the start, what the added warms, what was lost, and a step for each portion
    in doubt; the last rows say what is known of warming, loss and heat beforehand.
    """

    def __init__(
        self, volumes: list[float], temperatures: list[float], contents: Contents, u_c: float, steps: Sequence[int] = ()
    ) -> None:
        start_c = median(temperatures[:3])
        near_c = min(temperatures[0], start_c, key=lambda c: abs(c - start_c))
        added_c, u_added_c = contents.added_c, contents.u_added_c
        if added_c is None:
            added_c, u_added_c = near_c, UNTOLD_C
        room_c = near_c if contents.room_c is None else contents.room_c
        added = contents.added_j_cm3_k
        self.volumes, self.capacity = volumes, [contents.start_j_k + added * v for v in volumes]
        self.portions = [0.0, *(w - v for v, w in pairwise(volumes))]
        self.warming = [added * (c - added_c) for c in temperatures]
        readings = list(zip(volumes, temperatures, strict=True))
        self.heat = [contents.start_j_k * (c - start_c) + added * v * (c - added_c) for v, c in readings]
        rises = zip(pairwise(self.heat), pairwise(volumes), strict=True)
        heat_j_cm3 = median(abs(b - a) / (w - v) for (a, b), (v, w) in rises)
        u_poured = contents.u_portion_cm3 * heat_j_cm3
        self.u = [hypot(u_c * j, u_poured * (v > 0.0)) for v, j in zip(volumes, self.capacity, strict=True)]
        excess = accumulate((c - room_c for c in _smooth(temperatures)[1:]), initial=0.0)
        stepped = [[float(k >= step) for step in steps] for k in range(len(volumes))]
        self.beside = [[1.0, v, -x, *more] for v, x, more in zip(volumes, excess, stepped, strict=True)]
        none = [0.0] * len(steps)
        u_slope = u_added_c * added
        self.known = [[0.0, 0.0, 1.0 / u_slope, 0.0, *none], [0.0, 0.0, 0.0, 1.0 / U_LOSS_J_K, *none]]
        target = [h / u for h, u in zip(self.heat, self.u, strict=True)]
        self.target = [*target, 0.0, LOSS_J_K / U_LOSS_J_K]
        if contents.heat_j_cm3:
            u_heat = U_HEAT * contents.heat_j_cm3
            self.known.append([1.0 / u_heat, 0.0, 0.0, 0.0, *none])
            self.target.append(contents.heat_j_cm3 / u_heat)

    def portion_j(self, index: int, heat_j_cm3: float) -> float:
        """By how much the heat steps where one portion too much was poured before the reading of this index."""
        step = self.portions[index] * (heat_j_cm3 - self.warming[index])
        return step if abs(step) > 1e-9 else 1e-9

    def fitted(self, end_point_cm3: float) -> _Fitted:
        """Fit with the bend there. Portions that went in after it bring no heat: they are let alone."""
        readings = zip(self.volumes, self.beside, self.u, strict=True)
        rows = [[x / u for x in (min(v, end_point_cm3), *beside)] for v, beside, u in readings]
        triangle, answer = _solved([*rows, *self.known], self.target)
        seen = zip([*rows, *self.known], self.target, strict=True)
        residuals = [t - sum(a * x for a, x in zip(row, answer, strict=True)) for row, t in seen]
        chi2 = sum(r * r for r in residuals)
        without, shifted = [], []
        for row, r, u, j in zip(rows, residuals, self.u, self.capacity, strict=False):
            free = max(1.0 - sum(x * x for x in _forward(triangle, row)), 1e-6)
            without.append(_Best(chi2 - r * r / free, r / free * u / j))
        moved, pull, own = [0.0] * len(answer), 0.0, 0.0
        for k in range(len(rows) - 1, -1, -1):
            weight = 1.0 / self.u[k]
            moved = [m + x * weight for m, x in zip(moved, rows[k], strict=True)]
            pull, own = pull + residuals[k] * weight, own + weight * weight
            free = own - sum(x * x for x in _forward(triangle, moved))
            if free < 1e-6 * own or self.volumes[k] - self.portions[k] >= end_point_cm3:
                shifted.append(_Best())
            else:
                least, step, portion_j = chi2 - pull * pull / free, pull / free, self.portion_j(k, answer[0])
                wrong = [least + (times * portion_j - step) ** 2 * free for times in (-1.0, 1.0)]
                shifted.append(_Best(least, step, 1.0 / free, answer[0], *wrong))
        return _Fitted(chi2, without, shifted[::-1])


def _smooth(values: Sequence[float]) -> list[float]:
    """Running median of three, so that one value far off does not count."""
    inner = [median(values[k - 1 : k + 2]) for k in range(1, len(values) - 1)]
    return [median(values[:3]), *inner, median(values[-3:])]


def _solved(rows: Rows, target: list[float]) -> tuple[Rows, list[float]]:
    """Return Cholesky's factor of the normal equations (lower), and their solution."""
    size = len(rows[0])
    matrix = [[sum(row[i] * row[j] for row in rows) for j in range(i + 1)] for i in range(size)]
    right = [sum(row[i] * t for row, t in zip(rows, target, strict=True)) for i in range(size)]
    lower: Rows = []
    for i in range(size):
        line: list[float] = []
        for j in range(i + 1):
            rest = matrix[i][j] - sum(line[k] * (lower[j][k] if j < i else line[k]) for k in range(j))
            line.append(sqrt(max(rest, 1e-12 * matrix[i][i])) if i == j else rest / lower[j][j])
        lower.append(line)
    return lower, _backward(lower, _forward(lower, right))


def _forward(lower: Rows, right: Sequence[float]) -> list[float]:
    found: list[float] = []
    for line, value in zip(lower, right, strict=True):
        found.append((value - sum(a * x for a, x in zip(line, found, strict=False))) / line[-1])
    return found


def _backward(lower: Rows, right: Sequence[float]) -> list[float]:
    size = len(right)
    found = [0.0] * size
    for i in range(size - 1, -1, -1):
        found[i] = (right[i] - sum(lower[k][i] * found[k] for k in range(i + 1, size))) / lower[i][i]
    return found
