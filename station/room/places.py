"""Where the tiles of the board stand: who needs help stands first, and nothing jumps while it is being read.

A tile moves up when its bench needs more help, and down only once that has been over for a while; tiles change
places at most every few seconds, and never among benches that need as much help: who came first stays first.
"""

import re
from collections.abc import Mapping
from dataclasses import dataclass, field
from types import MappingProxyType

CALM_S = 20.0
"""How long a bench stays in its place after its trouble has ended, in s."""
EVERY_S = 4.0
"""Tiles change places at most so often, in s."""
MOVES_FROM = 2
"""Needs below this one move nothing."""


@dataclass(frozen=True)
class _Stay:
    rank: int
    since_s: float
    needed_s: float


@dataclass(frozen=True)
class Places:
    """The benches from the first place to the last."""

    order: tuple[str, ...] = ()
    moved_s: float = float("-inf")
    _stays: Mapping[str, _Stay] = field(default_factory=lambda: MappingProxyType({}))


def arranged(places: Places, needs: Mapping[str, int], now_s: float) -> Places:
    """Return the places at this moment; `needs` says how much help each bench needs (see urgency.py)."""
    stays = {bench: _stay(places._stays.get(bench), need, now_s) for bench, need in needs.items()}
    same = set(places.order) == set(needs)
    if same and now_s - places.moved_s < EVERY_S:
        return Places(places.order, places.moved_s, stays)
    order = tuple(sorted(needs, key=lambda bench: (-stays[bench].rank, _entered_s(stays[bench]), natural(bench))))
    return Places(order, places.moved_s if order == places.order else now_s, stays)


def natural(bench: str) -> tuple[tuple[int, int | str], ...]:
    """Return what benches are sorted by: bench-2 stands before bench-10."""
    parts = re.split(r"(\d+)", bench)
    return tuple((0, int(part)) if part.isdecimal() else (1, part) for part in parts if part)


def _stay(stay: _Stay | None, need: int, now_s: float) -> _Stay:
    rank = need if need >= MOVES_FROM else 0
    if stay is None or rank > stay.rank:
        return _Stay(rank, now_s, now_s)
    if rank == stay.rank:
        return _Stay(rank, stay.since_s, now_s)
    return _Stay(rank, now_s, now_s) if now_s - stay.needed_s >= CALM_S else stay


def _entered_s(stay: _Stay) -> float:
    return stay.since_s if stay.rank else 0.0
