"""A plan for a command: a file, or the name of one that ships with the station."""

from pathlib import Path

from station.command.settings import load_plan
from station.practical.kinds import READY_NAMES, ready_plan
from station.practical.plan import Plan

PLAN_HELP = f"a file, or {', '.join(READY_NAMES[:-1])} or {READY_NAMES[-1]}: the plans that ship"


def named_plan(named: Path) -> Plan:
    """Return the plan; a file of that name goes first. Raises CommandError."""
    if str(named) in READY_NAMES and not named.exists():
        return ready_plan(str(named))
    return load_plan(named)
