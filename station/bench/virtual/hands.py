"""A person's hands on a virtual cup: syringe, stirrer, lid, probe and fresh acid, each an act of its own.

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
from station.practical import events as e
from station.practical.plan import Plan
from station.practical.state import State
from station.words import Message, say

STIR_S: Final = 10.0
"""One press is a few turns of the hand."""
PUSH_CM3_S: Final = 4.0
"""As fast as a syringe empties into a cup: engineering judgement, no source."""
SYRINGES_CM3: Final = (2.0, 5.0, 10.0, 20.0, 50.0, 100.0, 1000.0)
ROOM_TO_SPARE: Final = 1.25
ACID_ERROR_CM3: Final = 0.05
"""One standard deviation of a filling with a pipette (as `Habits.acid_error_cm3` of the virtual student)."""

ProbePlace = Literal["out", "alkali", "cup"]
"""`out`: rinsed, wiped, in the air."""


class HandAct(BaseModel):
    """One thing that hands do.

    `fill`: pour away, rinse, fill with fresh acid. `syringe`: so much was drawn up and pushed into the cup so far, each
    counted from the start of the practice, so that what got lost on its way is made up for by what comes next. `stir`:
    a few turns. `lid`: on or off. `probe`: to this place.
    """

    model_config = ConfigDict(extra="forbid", frozen=True)

    hand: Literal["fill", "syringe", "stir", "lid", "probe"]
    drawn_cm3: Annotated[float, Field(ge=0, le=1e5, allow_inf_nan=False)] | None = None
    pushed_cm3: Annotated[float, Field(ge=0, le=1e5, allow_inf_nan=False)] | None = None
    on: bool | None = None
    place: ProbePlace | None = None


class HandRefused(Exception):  # noqa: N818 - an answer to a person
    """What hands cannot do now; the message says what to do first."""


class SyringeShown(TypedDict):
    """The syringe: what is in it is what was drawn up less what was pushed out."""

    capacity_cm3: float
    division_cm3: float
    drawn_cm3: float
    pushed_cm3: float


class HandsShown(TypedDict):
    """The virtual cup as its person sees it; `stirred_for_s` is bench time."""

    filled: bool
    lid: bool
    stirred_for_s: float
    probe: ProbePlace
    syringe: SyringeShown
    acid: Message
    alkali: str


class Hands:
    """Hands on this virtual cup; times are bench seconds. `begin` gives it the reagents of a practice."""

    def __init__(self, driver: VirtualDriver) -> None:
        self._driver = driver
        self._random = random.SystemRandom()

    def begin(self, plan: Plan, time_s: float, speed: float = 1.0) -> None:
        """A new practice: cup and syringe are empty, the probe hangs in the air, the lid lies beside the cup."""
        self._plan = plan
        self._filled = self._lid = self._wet = False
        self._probe: ProbePlace = "out"
        self._drawn_cm3 = self._pushed_cm3 = 0.0
        self.technique = Technique(plan, speed)
        self._driver.hold_in(time_s, self._driver.world.room_temperature_c)
        self._driver.put_lid(time_s, on=False)
        self._driver.stir(time_s, 0.0)

    def do(self, act: HandAct, time_s: float) -> None:
        """Do it now. Raises HandRefused."""
        match act.hand:
            case "fill":
                self._fill(time_s)
            case "syringe":
                self._use_syringe(act.drawn_cm3 or 0.0, act.pushed_cm3 or 0.0, time_s)
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
            "syringe": {
                "capacity_cm3": self._capacity_cm3,
                "division_cm3": 0.1 if self._capacity_cm3 <= 10.0 else self._capacity_cm3 / 100.0,
                "drawn_cm3": round(self._drawn_cm3, 3),
                "pushed_cm3": round(self._pushed_cm3, 3),
            },
            "acid": self._plan.in_cup,
            "alkali": self._plan.added_name,
        }

    def heard(self, stamped: Sequence[e.Stamped], state: State) -> None:
        """Take in what the station put down, and how the cup truly was at that moment."""
        for each in stamped:
            self.technique.heard(each, state, partial(self._driver.seen, each.time_s), self._probe)

    @property
    def _capacity_cm3(self) -> float:
        wanted_cm3 = self._plan.portion_cm3 * ROOM_TO_SPARE
        return next((each for each in SYRINGES_CM3 if each >= wanted_cm3), SYRINGES_CM3[-1])

    def _fill(self, time_s: float) -> None:
        acid_cm3 = self._plan.ingredients[0].volume_cm3
        self._driver.refill(time_s, max(0.1, self._random.gauss(acid_cm3, ACID_ERROR_CM3)))
        self._driver.put_lid(time_s, on=False)
        self._filled, self._lid = True, False
        if self._probe == "cup":
            self._driver.back_in_cup(time_s)
        self.technique.filled()

    def _use_syringe(self, drawn_cm3: float, pushed_cm3: float, time_s: float) -> None:
        """Draw up and push what is new; more than there is in the syringe does not come out of it."""
        pushed_cm3 = max(pushed_cm3, self._pushed_cm3)
        if pushed_cm3 > self._pushed_cm3 + 1e-9 and not self._filled:
            raise HandRefused(say("practise-no-acid"))
        drawn_cm3 = min(max(drawn_cm3, self._drawn_cm3), self._pushed_cm3 + self._capacity_cm3)
        self._drawn_cm3, pushed_cm3 = drawn_cm3, min(pushed_cm3, drawn_cm3)
        out_cm3, self._pushed_cm3 = pushed_cm3 - self._pushed_cm3, pushed_cm3
        if out_cm3 <= 1e-9:
            return
        if self._lid:  # nobody pours through a lid: it is lifted, and stays off until somebody puts it back
            self._put_lid(False, time_s)
        self.technique.pours(time_s, out_cm3, lambda: self._driver.seen(time_s))
        self._driver.pour(time_s, out_cm3, out_cm3 / PUSH_CM3_S)

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
