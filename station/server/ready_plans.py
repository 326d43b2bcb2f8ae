"""The plans that ship with the station, by name: for the page and for commands; files in `station/plans`."""

import functools
from importlib.resources import files

from station.practical.plan import Plan, read_plan

READY_NAMES = ("neutralisation", "mixed-once", "endothermic")


@functools.cache
def ready_plan(name: str) -> Plan:
    """Return one of them. Raises KeyError for another name."""
    if name not in READY_NAMES:
        raise KeyError(name)
    return read_plan(files("station").joinpath("plans", f"{name}.toml").read_text(encoding="utf-8"), f"{name}.toml")
