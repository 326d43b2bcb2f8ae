"""Which addresses count as one."""

import ipaddress
import re
from collections import OrderedDict

# How many requests one address may send. Times are monotonic; the memory is bounded.


ACTS_PER_S = 10.0
ACTS_AT_ONCE = 60
"""A bench hears of an act every few seconds. This leaves room for a class behind one address and for impatience."""

LOOKS_PER_S = 80.0
LOOKS_AT_ONCE = 600
"""Forty pages behind one address that all load at once, and then ask every second because no stream reaches them."""

WEIGHTS = {
    "/api/stream": 5,
    "/api/samples": 5,
    "/api/kit": 10,
    "/api/readings.csv": 10,
    "/api/table.csv": 10,
    "/api/record.csv": 20,
    "/api/journal.jsonl": 20,
    "/api/record.xlsx": 60,
    "/api/records.zip": 60,
    "/api/room/sheets.zip": 60,
    "/api/room/backups.zip": 60,
    "/api/room/stream": 5,
    "/api/room/class": 5,
    "/api/room/lessons": 5,
    "/api/room/bench/{bench}/stream": 5,
    "/api/room/bench/{bench}/samples": 5,
    "/api/room/bench/{bench}/journal.jsonl": 20,
    "/api/room/readings.csv": 20,
    "/api/room/lesson.jsonl": 60,
    "/api/room/class.csv": 60,
    "/api/room/class.xlsx": 60,
}
"""So many looks those count that cost more than a state does. A group may fetch everything five times over."""
_BENCH = re.compile(r"(?<=^/api/room/bench/)[^/]+")


def weight_of(path: str) -> int:
    """Return for how many looks a look at this path counts."""
    return WEIGHTS.get(_BENCH.sub("{bench}", path), 1)


MOST_ADDRESSES = 512


class Rate:
    """Lets `at_once` requests of an address through, and from then on `per_s` a second."""

    def __init__(self, per_s: float = ACTS_PER_S, at_once: int = ACTS_AT_ONCE) -> None:
        self._every_s, self._slack_s = 1.0 / per_s, (at_once - 1) / per_s
        self._due_s: OrderedDict[str, float] = OrderedDict()

    def wait_s(self, address: str, now_s: float, weight: int = 1) -> float:
        """Count a request: return 0 when it may pass, else in how many seconds the next may (it is not counted).

        One that weighs more counts as so many.
        """
        due_s = max(self._due_s.get(address, now_s), now_s)
        early_s = due_s - self._slack_s - now_s
        if early_s > 1e-6:  # less is rounding
            return early_s
        self._due_s[address] = due_s + weight * self._every_s
        self._due_s.move_to_end(address)
        if len(self._due_s) > MOST_ADDRESSES:
            self._due_s.popitem(last=False)
        return 0.0


def network_of(address: str) -> str:
    """Return what counts as one address: of IPv6 its /64, since a device has as many in there as it likes."""
    try:
        found = ipaddress.ip_address(address)
    except ValueError:
        return address
    if isinstance(found, ipaddress.IPv4Address) or found.is_link_local:
        return str(found)
    if found.ipv4_mapped:  # of a socket that takes both
        return str(found.ipv4_mapped)
    return str(ipaddress.IPv6Network((int(found), 64), strict=False))


def is_loopback(address: str) -> bool:
    """Whether this is an address of this machine that no other can send from."""
    try:
        return ipaddress.ip_address(address).is_loopback
    except ValueError:
        return False
