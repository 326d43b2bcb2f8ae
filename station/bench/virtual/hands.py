"""A person's hands on a virtual cup: syringe or cylinder, stirrer, lid, probe and fresh acid, each an act of its own.

Nothing here follows from what the person tells the station: a portion that is pressed and not poured is missing in the
cup. What truly happened is kept, for the judgement of technique (`technique.py`).
"""

import random
from collections.abc import Sequence
from functools import partial
from typing import Annotated, Final, Literal

from pydantic import BaseModel, ConfigDict, Field
from typing_extensions import TypedDict

from station.bench.virtual.driver import VirtualDriver
from station.bench.virtual.technique import Technique
from station.bench.virtual.ware import WareName, ware_of
from station.practical import events as e
from station.practical.plan import Plan
from station.practical.state import State
from station.words import Message, say

STIR_S: Final = 10.0
"""One press is a few turns of the hand."""
ACID_ERROR_CM3: Final = 0.05
"""One standard deviation of a filling with a pipette (as `Habits.acid_error_cm3` of the virtual student)."""

ProbePlace = Literal["out", "alkali", "cup"]
"""`out`: rinsed, wiped, in the air."""


class HandAct(BaseModel):
    """One thing that hands do.

    `fill`: pour away, rinse, fill with fresh acid. `ware`: so much was drawn into the syringe or measuring cylinder and
    poured from it into the cup so far, as its scale reads, each counted from the start of the practice, so that what
    got lost on its way is made up for by what comes next. `stir`: a few turns. `lid`: on or off. `probe`: to a place.
    """

    model_config = ConfigDict(extra="forbid", frozen=True)

    hand: Literal["fill", "ware", "stir", "lid", "probe"]
    drawn_cm3: Annotated[float, Field(ge=0, le=1e5, allow_inf_nan=False)] | None = None
    poured_cm3: Annotated[float, Field(ge=0, le=1e5, allow_inf_nan=False)] | None = None
    on: bool | None = None
    place: ProbePlace | None = None


class HandRefused(Exception):  # noqa: N818 - an answer to a person
    """What hands cannot do now; the message says what to do first."""


class WareShown(TypedDict):
    """What portions are measured with: what is in it is what was drawn less what was poured, as its scale reads."""

    ware: WareName
    capacity_cm3: float
    division_cm3: float
    drawn_cm3: float
    poured_cm3: float


class HandsShown(TypedDict):
    """The virtual cup as its person sees it; `stirred_for_s` is bench time."""

    filled: bool
    lid: bool
    stirred_for_s: float
    probe: ProbePlace
    ware: WareShown
    acid: Message
    alkali: str


class Hands:
    """Hands on this virtual cup; times are bench seconds. `begin` gives it the reagents of a practice."""

    def __init__(self, driver: VirtualDriver) -> None:
        self._driver = driver
        self._random = random.SystemRandom()

    def begin(self, plan: Plan, time_s: float, speed: float = 1.0) -> None:
        """A new practice: cup and glassware are empty, the probe hangs in the air, the lid lies beside the cup."""
        self._plan, self._cup_plan = plan, plan.of_cup(1)
        self._filled = self._lid = self._wet = False
        self._probe: ProbePlace = "out"
        self._ware = ware_of(plan)
        self._drawn_cm3 = self._poured_cm3 = 0.0
        self._true_share = 1.0
        self.technique = Technique(plan, speed, self._ware.division_cm3)
        self._driver.hold_in(time_s, self._driver.world.room_temperature_c)
        self._driver.put_lid(time_s, on=False)
        self._driver.stir(time_s, 0.0)

    def do(self, act: HandAct, time_s: float) -> None:
        """Do it now. Raises HandRefused."""
        match act.hand:
            case "fill":
                self._fill(time_s)
            case "ware":
                self._measure(act.drawn_cm3 or 0.0, act.poured_cm3 or 0.0, time_s)
            case "stir":
                self._driver.stir(time_s, STIR_S)
                self.technique.stirred(time_s)
            case "lid":
                self._put_lid(bool(act.on), time_s)
            case "probe":
                self._put_probe(act.place or "out", time_s)

    def shown(self, time_s: float) -> HandsShown:
        """Return the cup as its person sees it."""
        return {
            "filled": self._filled,
            "lid": self._lid,
            "stirred_for_s": round(self._driver.stirred_for_s(time_s), 2),
            "probe": self._probe,
            "ware": {
                "ware": self._ware.ware,
                "capacity_cm3": self._ware.capacity_cm3,
                "division_cm3": self._ware.division_cm3,
                "drawn_cm3": round(self._drawn_cm3, 3),
                "poured_cm3": round(self._poured_cm3, 3),
            },
            "acid": self._cup_plan.in_cup,
            "alkali": self._plan.added_name,
        }

    def heard(self, stamped: Sequence[e.Stamped], state: State) -> None:
        """Take in what the station put down, and how the cup truly was at that moment."""
        for each in stamped:
            self.technique.heard(each, state, partial(self._driver.seen, each.time_s), self._probe)
        self._cup_plan = self._plan.of_cup(state.cup)

    def _fill(self, time_s: float) -> None:
        acid_cm3 = self._cup_plan.ingredients[0].volume_cm3
        self._driver.refill(time_s, max(0.1, self._random.gauss(acid_cm3, ACID_ERROR_CM3)))
        self._driver.put_lid(time_s, on=False)
        self._filled, self._lid = True, False
        if self._probe == "cup":
            self._driver.back_in_cup(time_s)
        self.technique.filled()

    def _measure(self, drawn_cm3: float, poured_cm3: float, time_s: float) -> None:
        """Draw and pour what is new; more than there is in the glassware does not come out of it."""
        poured_cm3 = max(poured_cm3, self._poured_cm3)
        if poured_cm3 > self._poured_cm3 + 1e-9 and not self._filled:
            raise HandRefused(say("practise-no-acid"))
        drawn_cm3 = min(max(drawn_cm3, self._drawn_cm3), self._poured_cm3 + self._ware.capacity_cm3)
        if drawn_cm3 > self._drawn_cm3 + 1e-9:
            # No eye reads a scale better than its lines: what is truly in there differs, and nobody sees it.
            in_cm3 = drawn_cm3 - self._poured_cm3
            self._true_share = max(0.0, 1.0 + self._random.gauss(0.0, self._ware.u_reading_cm3) / in_cm3)
        self._drawn_cm3, poured_cm3 = drawn_cm3, min(poured_cm3, drawn_cm3)
        read_cm3, self._poured_cm3 = poured_cm3 - self._poured_cm3, poured_cm3
        if read_cm3 <= 1e-9:
            return
        if self._lid:  # nobody pours through a lid: it is lifted, and stays off until somebody puts it back
            self._put_lid(False, time_s)
        self.technique.pours(time_s, read_cm3, lambda: self._driver.seen(time_s))
        true_cm3 = read_cm3 * self._true_share
        if true_cm3 > 0.0:
            self._driver.pour(time_s, true_cm3, read_cm3 / self._ware.empties_cm3_s)

    def _put_lid(self, on: bool, time_s: float) -> None:
        self._lid = on
        self._driver.put_lid(time_s, on=on)

    def _put_probe(self, place: ProbePlace, time_s: float) -> None:
        if place == "cup" and self._probe == "alkali":
            self.technique.carried_over()
        self._probe = place
        if place == "alkali":
            self._driver.dip_in_alkali(time_s)
        elif place == "cup" and self._filled:
            self._driver.back_in_cup(time_s)
        else:
            self._driver.hold_in(time_s, self._driver.world.room_temperature_c)
