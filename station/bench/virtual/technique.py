"""How well a person worked with a virtual cup: what went in, when and how, against what the record says of it.

The cup's own truth tells what each slip cost: the reading less the temperature of the liquid, mixed, at that moment.
"""

from collections.abc import Callable
from dataclasses import dataclass, field
from typing import Final

from typing_extensions import TypedDict

from station.bench.virtual.world import World
from station.practical import events as e
from station.practical.plan import Plan
from station.practical.state import State
from station.words import Message, say

# From when on a slip is worth a word: engineering judgement, no source.

COSTS_C: Final = 0.05
"""What costs less is not told."""
AT_REST_C: Final = 0.05
"""The probe has come to rest when it shows the liquid's temperature to within this."""
EARLY_S: Final = 2.0
MOST_EARLY_S: Final = 90.0
COUNTS_CM3: Final = 0.05
MISSING: Final = 0.25
TWICE: Final = 1.75
"""Less than so much of a portion is none, more is two."""
VOLUME_CM3: Final = 0.15
VOLUME_PART: Final = 0.05
VOLUME_DIVISIONS: Final = 0.5
"""A volume is wrong that is read further off than this, than this part of a portion, or than so many divisions."""
PRESS_S: Final = 6.0
PRESS_WALL_S: Final = 1.5
WAIT_S: Final = 45.0
WAIT_WALL_S: Final = 6.0
"""Bench seconds, and seconds of the person, that a press may come after the pour, and a pour after it was asked for."""

Seen = Callable[[], World]


class SlipShown(TypedDict):
    """One slip; `cost_c` is what it did to the reading, `put_right`: the record has what truly happened."""

    slip: str
    repeat: int
    portion: int
    text: Message
    cost_c: float | None
    put_right: bool | None


class TechniqueShown(TypedDict):
    """The judgement of technique, with what was in the cup: for whoever may see the results."""

    slips: list[SlipShown]
    portions: int
    truth: Message


@dataclass
class _Pour:
    """What went into the cup since the press before; `before` is the cup when it began."""

    before: World | None = None
    volume_cm3: float = 0.0
    first_s: float = 0.0
    last_s: float = 0.0


@dataclass
class _Portion:
    """What truly happened with one portion (0: the start)."""

    repeat: int
    portion: int
    pour: _Pour = field(default_factory=_Pour)
    pressed_s: float = 0.0
    prompted_s: float | None = None
    prompted_c: float = 0.0
    stirred: bool = False
    lost_before_j: float = 0.0
    read: "_Read | None" = None


@dataclass(frozen=True)
class _Read:
    """A reading, beside the liquid's temperature at that moment; `early_s` is what the probe still needed to rest."""

    cost_c: float
    early_s: float
    in_cup: bool
    lid_c: float


class Technique:
    """Collects what a person does and what the station puts down, and judges it at the end."""

    def __init__(self, plan: Plan, speed: float, division_cm3: float) -> None:
        self._plan, self._speed = plan, speed
        self._division_cm3 = division_cm3
        self._portions: dict[tuple[int, int], _Portion] = {}
        self._pending = _Pour()
        self._prompted: tuple[float, float] | None = None
        self._stirred_s = float("-inf")
        self._fresh, self._carried = False, False
        self._of_repeat: list[tuple[int, str]] = []

    def filled(self) -> None:
        """Fresh acid is in the cup, and nothing else."""
        self._fresh, self._pending = True, _Pour()

    def stirred(self, time_s: float) -> None:
        """Somebody stirs."""
        self._stirred_s = time_s

    def carried_over(self) -> None:
        """The probe went from the alkali into the cup, neither rinsed nor wiped."""
        self._carried = True

    def pours(self, time_s: float, volume_cm3: float, seen: Seen) -> None:
        """So much more flows into the cup, as the scale reads."""
        pour = self._pending
        if pour.before is None:
            pour.before, pour.first_s = seen(), time_s
        pour.volume_cm3 += volume_cm3
        pour.last_s = time_s

    def heard(self, stamped: e.Stamped, state: State, seen: Seen, probe: str) -> None:
        """Take in an event of the record."""
        event, time_s = stamped.event, stamped.time_s
        if isinstance(event, e.RepeatBegun):
            self._begun(event.repeat, probe)
        elif isinstance(event, e.PortionPrompted):
            self._prompted = time_s, seen().true_temperature_c
        elif isinstance(event, e.PortionAdded):
            self._added(event, time_s)
        elif isinstance(event, e.PortionUndone):
            self._undone(event)
        elif isinstance(event, e.ReadingSettled) and event.temperature_c is not None:
            self._reads(event, self._pending.before or seen(), probe, of_step=state.station_reads)

    def judgement(self, state: State, truth: Message) -> TechniqueShown:
        """Return the judgement of all that counts."""
        counted = {each.repeat: each for each in state.repeats if each.counts}
        slips: list[SlipShown] = []
        for repeat, slip in self._of_repeat:
            if repeat in counted:
                slips.append(_slip(slip, repeat, 0))
        for (repeat, portion), each in self._portions.items():
            if repeat not in counted:
                continue
            of = counted[repeat]
            recorded = next((one.volume_cm3 for one in of.portions if one.portion == portion), None)
            slips += self._slips(each, recorded, self._plan.of_cup(of.cup).portion_cm3)
        slips.sort(key=lambda each: (each["repeat"], each["portion"]))
        count = sum(repeat in counted and portion > 0 for repeat, portion in self._portions)
        return {"slips": slips, "portions": count, "truth": truth}

    def _begun(self, repeat: int, probe: str) -> None:
        if not self._fresh:
            self._of_repeat.append((repeat, "not_filled"))
        if self._carried:
            self._of_repeat.append((repeat, "not_rinsed"))
        self._fresh = self._carried = False
        self._pending, self._prompted = _Pour(), None
        self._portions[repeat, 0] = _Portion(repeat, 0)
        if probe != "cup":
            self._of_repeat.append((repeat, "probe_out"))

    def _added(self, event: e.PortionAdded, time_s: float) -> None:
        prompted_s, prompted_c = self._prompted or (None, 0.0)
        each = _Portion(event.repeat, event.portion, self._pending, time_s, prompted_s, prompted_c)
        if each.pour.before is not None:
            each.lost_before_j = each.pour.before.lost_by_open_lid_j
        self._portions[event.repeat, event.portion] = each
        self._pending, self._prompted = _Pour(), None

    def _undone(self, event: e.PortionUndone) -> None:
        """What is said not to be in counts for the next press, if it is in."""
        undone = self._portions.pop((event.repeat, event.portion), None)
        if undone is not None and undone.pour.before is not None:
            undone.pour.volume_cm3 += self._pending.volume_cm3
            self._pending = undone.pour

    def _reads(self, event: e.ReadingSettled, world: World, probe: str, *, of_step: bool) -> None:
        each = self._portions.get((event.repeat, event.portion))
        if each is None or event.temperature_c is None:
            return
        each.stirred = each.portion == 0 or self._stirred_s >= each.pour.first_s
        lid_j = max(world.lost_by_open_lid_j - each.lost_before_j, 0.0)
        early_s = 0.0 if of_step and event.settled else _seconds_to_rest(world)
        cost_c = event.temperature_c - world.true_temperature_c
        each.read = _Read(cost_c, early_s, probe == "cup", lid_j / world.heat_capacity_j_k)

    def _slips(self, each: _Portion, recorded_cm3: float | None, planned_cm3: float) -> list[SlipShown]:
        return [*self._of_volume(each, recorded_cm3, planned_cm3), *self._of_time(each), *_of_reading(each)]

    def _of_volume(self, each: _Portion, recorded_cm3: float | None, planned_cm3: float) -> list[SlipShown]:
        poured_cm3 = each.pour.volume_cm3
        off_cm3 = max(VOLUME_CM3, VOLUME_PART * planned_cm3, VOLUME_DIVISIONS * self._division_cm3)
        if each.portion == 0 or abs(poured_cm3 - planned_cm3) <= off_cm3:
            return []
        right = recorded_cm3 is not None and abs(recorded_cm3 - poured_cm3) <= 2.0 * off_cm3
        part = poured_cm3 / planned_cm3
        little = "nothing" if poured_cm3 < COUNTS_CM3 else "missed"
        slip = little if part < MISSING else "double" if part > TWICE else "volume"
        told = {"poured_cm3": f"{poured_cm3:.1f}", "planned_cm3": f"{planned_cm3:.1f}"}
        return [_slip(slip, each.repeat, each.portion, None, right, **told)]

    def _of_time(self, each: _Portion) -> list[SlipShown]:
        pour, found = each.pour, list[SlipShown]()
        if each.portion == 0 or pour.before is None:
            return found
        late_s = each.pressed_s - pour.last_s
        if late_s > max(PRESS_S, PRESS_WALL_S * self._speed):
            found.append(_slip("pressed_late", each.repeat, each.portion, seconds=f"{late_s:.0f}"))
        if each.prompted_s is not None:
            waited_s = pour.first_s - each.prompted_s
            cost_c = pour.before.true_temperature_c - each.prompted_c
            if waited_s > max(WAIT_S, WAIT_WALL_S * self._speed):
                found.append(_slip("waited", each.repeat, each.portion, cost_c=cost_c, seconds=f"{waited_s:.0f}"))
        return found


def _of_reading(each: _Portion) -> list[SlipShown]:
    if each.read is None:
        return []
    read, cost_c, found = each.read, each.read.cost_c, list[SlipShown]()
    if not read.in_cup:
        return [_slip("probe_out", each.repeat, each.portion, cost_c=cost_c)] if each.portion else []
    if abs(cost_c) >= COSTS_C and read.early_s >= EARLY_S and each.stirred:
        found.append(_slip("early", each.repeat, each.portion, cost_c=cost_c, seconds=f"{read.early_s:.0f}"))
    if not each.stirred and each.pour.before is not None:
        found.append(_slip("not_stirred", each.repeat, each.portion, cost_c=cost_c))
    if read.lid_c >= COSTS_C:
        found.append(_slip("lid", each.repeat, each.portion, cost_c=-read.lid_c))
    return found


def _seconds_to_rest(world: World) -> float:
    """Return how long the probe would still have needed to show the temperature of the liquid."""
    world = world.copied()
    begun_s = world.time_s
    while abs(world.probe_temperature_c - world.true_temperature_c) > AT_REST_C:
        if world.time_s - begun_s >= MOST_EARLY_S:
            break
        world.advance(world.time_s + 0.5)
    return world.time_s - begun_s


SLIPS: Final = (
    *("nothing", "missed", "double", "volume", "pressed_late", "waited", "early", "not_stirred", "lid"),
    *("probe_out", "not_filled", "not_rinsed"),
)
TEXTS: Final = {slip: f"practise-slip-{slip.replace('_', '-')}" for slip in SLIPS}
SAYS = tuple(TEXTS.values())
"""The messages of slips: `_slip` makes them."""


def _slip(
    slip: str, repeat: int, portion: int, cost_c: float | None = None, put_right: bool | None = None, **told: str
) -> SlipShown:
    small = cost_c is None or abs(cost_c) < COSTS_C
    return {
        "slip": slip,
        "repeat": repeat,
        "portion": portion,
        "text": say(TEXTS[slip], **told),
        "cost_c": None if cost_c is None or small else round(cost_c, 2),
        "put_right": put_right,
    }
