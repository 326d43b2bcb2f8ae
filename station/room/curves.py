"""The curve so far, small, for a tile of the board; and whose is unlike the others'."""

from collections.abc import Mapping, Sequence
from statistics import median

from station.practical.state import Repeat, State

MOST_POINTS = 40
ODD_FROM, ODD_SHARE, ODD_SPREADS = 5, 0.15, 3.0
"""A curve is odd that somewhere lies further off the median of at least so many benches than this share of the class's
largest change, and than so many times their spread there (median distance × 1.4826, as of a normal scatter).
Engineering judgement, no source."""

Curve = tuple[tuple[float, float], ...]


def curve_of(state: State) -> Curve:
    """Return what there is of the newest repeat's curve: readings over cm³ added, or of one mixing °C over s.

    Where all repeats are one curve, that.
    """
    repeat = _newest(state)
    if repeat is None:
        return ()
    if state.plan.one_curve:
        return tuple((round(each["volume_cm3"], 3), round(each["temperature_c"], 3)) for each in state.mean)
    if state.plan.has_turn:
        return tuple(
            (round(repeat.added_cm3(each.portion), 3), round(each.temperature_c, 3))
            for each in repeat.readings
            if each.temperature_c is not None
        )
    return _thinned([(each.time_s - repeat.begun_s, each.temperature_c) for each in repeat.samples])


def _thinned(samples: Sequence[tuple[float, float | None]]) -> Curve:
    step = max(1, -(-len(samples) // MOST_POINTS))
    return tuple((round(time_s, 1), round(c, 2)) for time_s, c in samples[::step] if c is not None)


def changes_of(state: State) -> tuple[float, ...] | None:
    """Return the changes since the start, portion by portion; None where not each was read."""
    repeat = _newest(state)
    if repeat is None or not state.plan.has_turn:
        return None
    if state.plan.one_curve:
        mean = state.mean
        whole = [each["portion"] for each in mean] == list(range(1, len(mean) + 1))
        return (0.0, *(each["temperature_c"] for each in mean)) if whole and mean else None
    found = [each.temperature_c for each in repeat.readings]
    whole = [each.portion for each in repeat.readings] == list(range(len(found)))
    if not whole or len(found) < 2 or found[0] is None:
        return None
    return tuple(0.0 if each is None else each - found[0] for each in found)


def odd_of(changes: Mapping[str, tuple[float, ...]]) -> set[str]:
    """Return the benches whose curve is unlike the others'."""
    found: set[str] = set()
    columns = [
        {bench: each[portion] for bench, each in changes.items() if len(each) > portion}
        for portion in range(1, max(map(len, changes.values()), default=0))
    ]
    columns = [each for each in columns if len(each) >= ODD_FROM]
    largest = max((abs(median(each.values())) for each in columns), default=0.0)
    for column in columns:
        middle = median(column.values())
        spread = 1.4826 * median(abs(each - middle) for each in column.values())
        limit_c = max(ODD_SHARE * largest, ODD_SPREADS * spread)
        found.update(bench for bench, change_c in column.items() if abs(change_c - middle) > limit_c)
    return found


def grown(state: State) -> object:
    """Return what is another whenever the curve may be."""
    repeat = _newest(state)
    if repeat is None:
        return ()
    if state.plan.one_curve:
        return tuple((each.cup, each.readings, each.portions) for each in state.repeats if each.counts)
    # A portion's volume may be corrected, so portions count as well.
    return (repeat.readings, repeat.portions) if state.plan.has_turn else (repeat.begun_s, len(repeat.samples) // 5)


def curve_to(state: State) -> float | None:
    """Return how far the curve goes when all is in, in cm³; None where it is over time."""
    return state.plan.most_cm3 if state.plan.has_turn else None


def _newest(state: State) -> Repeat | None:
    """Return the newest repeat that counts."""
    return next((each for each in reversed(state.repeats) if each.counts), None)
