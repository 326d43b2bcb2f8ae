"""All checks in order. One that fails itself does not take the others with it."""

from collections.abc import Callable, Iterable

from station.bench.check.finding import Finding, Kit, look_beside
from station.bench.check.machine import clock, power, versions
from station.bench.check.network import network, port
from station.bench.check.pins import pins
from station.bench.check.probe import probe_findings
from station.bench.check.storage import free_space, journal, storage
from station.words import say


def check_kit(kit: Kit) -> list[Finding]:
    """Look at everything, in about `kit.reads` seconds. Nothing is changed, and no station at work is disturbed."""
    beside = look_beside(kit)
    checks: dict[str, Callable[[], Finding | Iterable[Finding]]] = {
        "probe": lambda: probe_findings(kit, beside),
        "pins": lambda: pins(kit, beside),
        "storage": lambda: storage(kit),
        "free_space": lambda: free_space(kit),
        "journal": lambda: journal(kit),
        "clock": lambda: clock(kit),
        "power": lambda: power(kit),
        "network": lambda: network(kit),
        "port": lambda: port(kit, beside),
        "versions": lambda: versions(kit),
    }
    found: list[Finding] = []
    for name, check in checks.items():
        found += _tried(name, check)
    return found


def _tried(name: str, check: Callable[[], Finding | Iterable[Finding]]) -> list[Finding]:
    try:
        answer = check()
        return [answer] if isinstance(answer, Finding) else list(answer)
    except Exception as error:  # whatever it is, the other checks still help the technician
        text = say("check-failed-itself", fault_name=type(error).__name__, reason=str(error))
        return [Finding(name, "amber", text, say("check-report"))]
