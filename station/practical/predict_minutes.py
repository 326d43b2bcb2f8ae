"""How many minutes a practical takes, and what that rests on."""

from typing import Any, Final

from station.practical.plan import OncePlan, Plan, PortionsPlan

START_S: Final = 75.0
"""From the acid in the cup to a start temperature that stands still."""
WAIT_S: Final = {"graph": 30.0, "quick": 20.0}
"""From the press to the reading: in graph pace about the settle detector's median on simulated cups."""
POUR_S: Final = 15.0
"""To measure a portion, pour and stir it, and press."""
DIP_S: Final = 60.0
RINSE_S: Final = 150.0
LESSON_MIN: Final = 60
ASIDE_MIN: Final = 20
"""Of a lesson: ten minutes to set up, ten to clear away and plot; common practice, no source."""

_CUP = "The cup loses heat as a lidded foam cup usually does; other cups differ"
_EXACT = "Concentrations are exact; ± is one standard uncertainty of one repeat."

ASSUMED: Final = (
    f"{_CUP}, and ± includes the usual spread.",
    "Alkali and acid are about as warm as the room unless the plan says otherwise; the alkali's temperature is "
    "measured before.",
    f"A dip into the alkali takes {DIP_S / 60:g} min, a steady start {START_S / 60:g} min, a portion "
    f"{POUR_S:g} s to pour and {WAIT_S['graph']:g} s (quick pace: {WAIT_S['quick']:g} s) to settle, rinsing and "
    f"refilling {RINSE_S / 60:g} min. Setting up and clearing away come on top.",
    _EXACT,
)
ONCE_ASSUMED: Final = (
    f"{_CUP}.",
    "What is added is as warm as the cup unless the plan says otherwise.",
    f"A steady start takes {START_S / 60:g} min, rinsing and refilling {RINSE_S / 60:g} min; setting up and clearing "
    "away come on top.",
    _EXACT,
)


def minutes(plan: Plan) -> dict[str, Any]:
    """Return the minutes of the parts of a practical, all repeats together, and their total."""
    each_s = START_S + (_portions_s(plan) if isinstance(plan, PortionsPlan) else _once_s(plan))
    dip_s = DIP_S if plan.portion_cm3 else 0.0
    start_s = START_S * plan.repeats + dip_s
    work_s = (each_s - START_S) * plan.repeats
    rinse_s = RINSE_S * (plan.repeats - 1)
    return {
        "start": round(start_s / 60, 1),
        "portions" if isinstance(plan, PortionsPlan) else "recording": round(work_s / 60, 1),
        "rinsing": round(rinse_s / 60, 1),
        "total": round((start_s + work_s + rinse_s) / 60, 1),
    }


def _portions_s(plan: PortionsPlan) -> float:
    return plan.count * (WAIT_S[plan.pace] + POUR_S)


def _once_s(plan: OncePlan) -> float:
    return plan.timing.before_s + plan.timing.after_s
