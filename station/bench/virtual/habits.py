"""How a virtual student works: how quick, how exact, and which slips.

The delays and errors are engineering judgement, no source; a class may be slower.
"""

from dataclasses import dataclass

Slips = frozenset[tuple[int, int]]
"""(repeat, portion) at which a slip happens."""


@dataclass(frozen=True)
class Habits:
    """Delays are medians of log-normal ones, errors are one standard deviation; units stand in the names.

    `press_after_s` is the mean time from the end of the pour to the press, with `press_spread_s`: a press can
    come before the pour is complete. A `hasty` portion is poured `hasty_after_s` after the press before it,
    unasked. A `skipped` one is pressed but not poured, a `doubled` one poured twice and pressed once. At a
    `spilled` one `spill_cm3` of the cup is lost, and the student starts the repeat again if `owns_up`. Before a
    `stalled` one nothing happens for `stall_s`: they are talking, or do not know how to go on.
    """

    react_s: float = 3.0
    rinse_s: float = 25.0
    spread: float = 0.35
    pour_rate_cm3_s: float = 1.5
    press_after_s: float = 1.0
    press_spread_s: float = 1.2
    portion_error_cm3: float = 0.08
    acid_error_cm3: float = 0.05
    dips: bool = True
    hasty: Slips = frozenset()
    hasty_after_s: float = 8.0
    skipped: Slips = frozenset()
    doubled: Slips = frozenset()
    spilled: Slips = frozenset()
    spill_cm3: float = 12.0
    owns_up: bool = True
    stalled: Slips = frozenset()
    stall_s: float = 600.0


BEHAVIOURS = {
    "careful": Habits(),
    "hasty": Habits(react_s=1.5, press_after_s=0.0, hasty=frozenset({(1, 3), (1, 7), (2, 4)})),
    "skips": Habits(skipped=frozenset({(1, 4)})),
    "doubles": Habits(doubled=frozenset({(1, 3)})),
    "spills": Habits(spilled=frozenset({(1, 4)})),
}
"""Behaviours by name."""
