"""Numbers as a school writes them: three or four significant figures, trailing zeros kept."""

import math

HALF_UP = 1e-12
"""More than the error of a product of a few numbers, far less than any figure shown."""
LEAST, MOST = 3, 4
"""Significant figures of a number in a calculation: at least and at most."""


def figures(value: float, least: int = LEAST, most: int = MOST) -> str:
    """Write a number with at least `least` significant figures, and up to `most` where it has them.

    25 becomes 25.0, 0.4 becomes 0.400, 23.754 becomes 23.75. Whole numbers with more figures keep all of them, and
    no number gets an exponent.
    """
    if value == 0 or not math.isfinite(value):
        return f"{value:.{least - 1}f}"
    power = int(f"{value:.{most - 1}e}".split("e")[1])
    places = max(most - 1 - power, 0)
    # A half is rounded up, as a school does: 52.25 becomes 52.3.
    text = f"{value * (1 + HALF_UP):.{places}f}"
    for _ in range(min(most - least, places)):
        if not text.endswith("0"):
            break
        text = text[:-1].removesuffix(".")
    return text
