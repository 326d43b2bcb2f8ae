"""How many minutes a practical takes, whatever its kind, and what a teacher should know of that before."""

from typing import Final

from station.practical.plan import Plan
from station.practical.safety import Warned
from station.words import Message, say

START_S: Final = 75.0
"""From the acid in the cup to a start temperature that stands still."""
DIP_S: Final = 60.0
RINSE_S: Final = 150.0
LESSON_MIN: Final = 60
ASIDE_MIN: Final = 20
"""Of a lesson: ten minutes to set up, ten to clear away and plot; common practice, no source."""


def minutes(plan: Plan) -> dict[str, float]:
    """Return the minutes of the parts of a practical, all repeats together, and their total."""
    part, each_s = plan.work
    dip_s = DIP_S if plan.portion_cm3 else 0.0
    start_s = START_S * plan.cups + dip_s
    work_s = each_s * plan.cups
    rinse_s = RINSE_S * (plan.cups - 1)
    return {
        "start": round(start_s / 60, 1),
        part: round(work_s / 60, 1),
        "rinsing": round(rinse_s / 60, 1),
        "total": round((start_s + work_s + rinse_s) / 60, 1),
    }


# What a teacher should know before this plan meets a class: each warning has an `id` and a `text`.


LEAST_RISE_C: Final = 1.0


def weak_change(change_c: float) -> list[Warned]:
    """Return a warning when the temperature changes so little that the ± will be wide."""
    if abs(change_c) >= LEAST_RISE_C:
        return []
    return [warning("small-change", say("warning-small-change", change_c=f"{abs(change_c):.1f}"))]


def too_long(total_min: float) -> list[Warned]:
    """Return a warning when the practical does not fit into a lesson."""
    if total_min <= LESSON_MIN - ASIDE_MIN:
        return []
    minutes_there = f"{total_min:.0f}"
    text = say("warning-too-long", minutes=minutes_there, aside_min=ASIDE_MIN, lesson_min=LESSON_MIN)
    return [warning("too-long", text)]


def warning(name: str, text: Message) -> Warned:
    """Return one warning."""
    return {"id": name, "text": text}
