"""Readings that do not fit the others of their repeat: somebody misread them, or portions were not as planned."""

from collections.abc import Collection, Mapping, Sequence
from itertools import pairwise

from station.analysis.odd_ones import Contents, Odd, odd_ones
from station.practical.kinds.kind import Hindsight, Point
from station.practical.state import SLIP

SOLUTION_J_CM3_K = 4.1
"""Dilute solutions, to 3 %: enough to tell a slip from a reading."""
GUESSED = (0.25, 0.5, 1.0)
"""Without a plan nobody knows what was in the cup: so much of all that was added, and a slip is one in each case."""

U_SETTLED_C = 0.06
"""u of a settled reading as it stands against others: a step of the probe."""
WHOLE = 0.6
"""A portion is missed or doubled where so much of one is missing or too much; less is another volume."""
MOST_TIMES = 1.6
"""More than so many portions too much is no double portion."""
OF_READING = ("volume", "sudden_fall", "probe_out", SLIP)
"""Codes of questions that are answered where the reading fits, and what was poured before it."""
OF_TRACE = frozenset({"no_change", "double"})
"""What is asked where there is a trace: less than a whole portion it tells better than settled readings, in its fit."""


def u_reading_c(temperatures_c: Sequence[float]) -> float:
    """Return one standard uncertainty of a reading, from the divisions that the readings themselves show.

    Half a division either way as a rectangular limit, and as much again for where the eye puts it: common
    practice, no source.
    """
    for division in (1.0, 0.5, 0.2):
        if all(abs(each / division - round(each / division)) < 1e-6 for each in temperatures_c):
            return float(division / 3.0**0.5)
    return 0.1


def hindsight_without_plan(points: Sequence[Point], u_c: float) -> Hindsight:
    """Return the same where nobody knows what was in the cup."""
    total_cm3 = max((volume_cm3 for _, volume_cm3, _ in points), default=0.0)
    noticed = [
        seen_in(points, Contents(SOLUTION_J_CM3_K * share * total_cm3, SOLUTION_J_CM3_K), u_c).noticed
        for share in GUESSED
    ]
    return Hindsight(tuple(each for each in noticed[0] if all(each in others for others in noticed)))


def seen_in(points: Sequence[Point], contents: Contents, u_c: float, doubted: Collection[int] = ()) -> Hindsight:
    """Return what readings of a cup of these contents say together."""
    # Where a portion was pressed and not poured there are two readings of one volume: the later one counts.
    told = [point for point, after in pairwise([*points, None]) if point and (after is None or after[1] > point[1])]
    steps = [index for index, point in enumerate(told) if index and point[0] in doubted]
    volumes, temperatures = [volume for _, volume, _ in told], [temperature for _, _, temperature in told]
    found = odd_ones(volumes, temperatures, contents, u_c, steps)
    sure = odd_ones(volumes, temperatures, contents, u_c) if steps else found
    of_reading = dict.fromkeys(OF_READING, sure.fitting)

    def named(answers: Mapping[str, Collection[int]]) -> frozenset[tuple[int, str]]:
        return frozenset((told[index][0], code) for code, indices in answers.items() for index in indices)

    return Hindsight(
        tuple((told[each.index][0], _code(each)) for each in found.odd),
        named({"no_change": sure.poured, "double": sure.once, **of_reading}),
        named({"no_change": sure.maybe_poured, "double": sure.maybe_once, **of_reading}),
    )


def _code(odd: Odd) -> str:
    return SLIP if odd.share is None else code_of(odd.share)


def code_of(share: float) -> str:
    """Return which question asks about a portion of which so much was too much (negative: too little)."""
    return "no_change" if share < -WHOLE else "double" if WHOLE < share < MOST_TIMES else "volume"
