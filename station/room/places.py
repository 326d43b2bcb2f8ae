"""Where benches stand on the board: each in its own place, as in the room, and nothing moves but by hand.

Places count from 1, row by row. A bench gets the place of its number when it is first heard; once it has a place it
keeps that, whoever comes or goes.
"""

import re
from collections.abc import Iterable, Mapping
from typing import Final

HIGHEST: Final = 60
"""A number above this is no place: four rows of fifteen; an estimate."""
MOST: Final = 500


def natural(bench: str) -> tuple[tuple[int, int | str], ...]:
    """Return what benches are sorted by: bench-2 stands before bench-10."""
    parts = re.split(r"(\d+)", bench)
    return tuple((0, int(part)) if part.isdecimal() else (1, part) for part in parts if part)


def number_of(bench: str) -> int | None:
    """Return the number that a bench's id ends with, if it can be a place."""
    found = re.search(r"(\d{1,4})\D*$", bench)
    number = 0 if found is None else int(found[1])
    return number if 1 <= number <= HIGHEST else None


def seated(places: Mapping[str, int], benches: Iterable[str]) -> dict[str, int]:
    """Return places for those of these benches that have none: that of their number, else the first that is free."""
    new, taken = {}, set(places.values())
    for bench in sorted(set(benches) - set(places), key=lambda each: (number_of(each) is None, natural(each))):
        number = number_of(bench)
        free = number if number is not None and number not in taken else _first_free(taken)
        new[bench] = free
        taken.add(free)
    return new


def moved(places: Mapping[str, int], bench: str, place: int) -> dict[str, int]:
    """Return the places that change when this bench, which has one, goes there; whoever is there takes its own."""
    there = next((each for each, at in places.items() if at == place), None)
    return {bench: place} if there is None or there == bench else {bench: place, there: places[bench]}


def _first_free(taken: set[int]) -> int:
    return next(place for place in range(1, len(taken) + 2) if place not in taken)
