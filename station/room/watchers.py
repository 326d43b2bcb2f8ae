"""What the collector notices about benches: who floods, who sends rubbish, and where two kits are one bench."""

import time
from collections.abc import Callable
from dataclasses import dataclass, field

from station.room.wire import Here

MESSAGES_A_SECOND = 25.0
BURST = 100.0
BYTES_A_SECOND = 250_000
"""More than twice what a bench sends that catches up."""
BURST_BYTES = 5_000_000
STAYS_S = 60.0
"""How long a trouble is told after it was last seen, and how long a silent kit is remembered."""
MOST_BENCHES = 5000
MOST_KITS = 8

Monotonic = Callable[[], float]


@dataclass
class _Watched:
    tokens: float = BURST
    spare_bytes: float = BURST_BYTES
    at_s: float = 0.0
    kit: str = ""
    kits: dict[str, float] = field(default_factory=dict)
    here: dict[str, Here] = field(default_factory=dict)
    troubles: dict[str, tuple[str, float]] = field(default_factory=dict)


class Watchers:
    """One record a bench, bounded in number and in size."""

    def __init__(self, monotonic: Monotonic = time.monotonic) -> None:
        self._monotonic = monotonic
        self._benches: dict[str, _Watched] = {}

    def troubles(self) -> dict[str, str]:
        """Return what is wrong with which bench, in words."""
        now_s = self._monotonic()
        found: dict[str, str] = {}
        for bench, watched in self._benches.items():
            fresh = [text for text, at_s in watched.troubles.values() if now_s - at_s < STAYS_S]
            if fresh:
                found[bench] = " ".join(fresh)
        return found

    def may_speak(self, bench: str, size_bytes: int = 0) -> bool:
        """Whether another message of this bench is read now; who floods (in number, in bytes) is named and not read."""
        watched = self._of(bench)
        if watched is None:
            return False
        now_s = self._monotonic()
        passed_s = now_s - watched.at_s
        watched.tokens = min(BURST, watched.tokens + passed_s * MESSAGES_A_SECOND)
        watched.spare_bytes = min(BURST_BYTES, watched.spare_bytes + passed_s * BYTES_A_SECOND)
        watched.at_s = now_s
        if watched.spare_bytes < size_bytes:
            self.tell(bench, "flood", f"It sends more than {BYTES_A_SECOND // 1000} kB a second; not all is read.")
            return False
        watched.spare_bytes -= size_bytes
        if watched.tokens < 1.0:
            self.tell(
                bench, "flood", f"It sends more than {MESSAGES_A_SECOND:.0f} messages a second; not all are read."
            )
            return False
        watched.tokens -= 1.0
        return True

    def tell(self, bench: str, kind: str, text: str) -> None:
        """Name a trouble of a bench; the newest of a kind is told."""
        watched = self._of(bench)
        if watched is not None:
            watched.troubles[kind] = (text, self._monotonic())

    def heard(self, bench: str, kit: str, here: Here | None = None) -> None:
        """Note which kit spoke as this bench. Two that speak in turn are named: a restarted kit never comes back."""
        watched = self._of(bench)
        if watched is None:
            return
        now_s = self._monotonic()
        if here is not None:
            watched.here[kit] = here
        before, watched.kit = watched.kit, kit
        back_s = watched.kits.get(kit)
        watched.kits[kit] = now_s
        if before not in ("", kit) and back_s is not None and now_s - back_s < STAYS_S:
            both = " and ".join(sorted(_called(watched.here.get(each), each) for each in (before, kit)))
            self.tell(bench, "two", f"Two kits are {bench}: {both}. Make one of their cards anew.")
        while len(watched.kits) > MOST_KITS:
            oldest = min(watched.kits, key=lambda each: watched.kits[each])
            del watched.kits[oldest]
            watched.here.pop(oldest, None)

    def _of(self, bench: str) -> _Watched | None:
        if bench not in self._benches and len(self._benches) >= MOST_BENCHES:
            return None
        return self._benches.setdefault(bench, _Watched(at_s=self._monotonic()))


def _called(here: Here | None, kit: str) -> str:
    """How a kit can be told from its twin: the end of its board's number, its name, its address."""
    if here is None:
        return f"kit {kit[:6]}"
    where = f" at {here.addresses[0]}" if here.addresses else ""
    board = f"board …{here.board[-6:]}" if here.board else f"kit {kit[:6]}"
    return f"{here.name} ({board}{where})"
