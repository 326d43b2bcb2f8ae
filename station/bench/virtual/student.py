"""A virtual student: reads the one instruction, does it with human hands, presses.

The student knows what a person in front of the page knows, the view, and has hands on the virtual cup.
"""

import math
import random
import uuid
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any, Protocol

from station.practical.acts import ActRefused
from station.practical.contract import View
from station.practical.kinds import plan_from
from station.practical.plan import Plan
from station.words import say

# How a virtual student works: how quick, how exact, and which slips.
#
# The delays and errors are engineering judgement, no source; a class may be slower.


Slips = frozenset[tuple[int, int]]
"""(repeat, portion) at which a slip happens."""


@dataclass(frozen=True)
class Habits:
    """Delays are medians of log-normal ones, errors are one standard deviation; units stand in the names.

    `press_after_s` is the mean time from the end of the pour to the press, with `press_spread_s`: a press can
    come before the pour is complete. A `hasty` portion is poured `hasty_after_s` after the press before it,
    unasked. A `skipped` one is pressed but not poured, a `doubled` one poured twice and pressed once. At a
    `spilled` one `spill_cm3` of the cup is lost, and the student starts the repeat again if `owns_up`. Before a
    `stalled` one nothing happens for `stall_s`: they are talking, or do not know how to go on. Before one of `calls`
    they call the teacher, who has helped after `call_s`.
    """

    react_s: float = 3.0
    rinse_s: float = 25.0
    spread: float = 0.35
    pour_rate_cm3_s: float = 1.5
    press_after_s: float = 1.0
    press_spread_s: float = 1.2
    pour_all_s: float = 3.0
    portion_error_cm3: float = 0.08
    mass_error_g: float = 0.03
    acid_error_cm3: float = 0.05
    dips: bool = True
    hasty: Slips = frozenset()
    hasty_after_s: float = 8.0
    skipped: Slips = frozenset()
    doubled: Slips = frozenset()
    spilled: Slips = frozenset()
    spill_cm3: float = 12.0
    owns_up: bool = True
    stalled: Slips = frozenset()
    stall_s: float = 600.0
    calls: Slips = frozenset()
    call_s: float = 90.0


BEHAVIOURS = {
    "careful": Habits(),
    "hasty": Habits(react_s=1.5, press_after_s=0.0, hasty=frozenset({(1, 3), (1, 7), (2, 4)})),
    "skips": Habits(skipped=frozenset({(1, 4)})),
    "doubles": Habits(doubled=frozenset({(1, 3)})),
    "spills": Habits(spilled=frozenset({(1, 4)})),
}
"""Behaviours by name."""


class Operable(Protocol):
    """A bench as a person operates it."""

    def view(self) -> View:
        """Return what a screen shows: at least state, instruction, plan, repeat, portion, other_acts."""

    async def do(self, act: dict[str, Any]) -> object:
        """Do an act, as POST /api/acts would; return once it is kept. Raises ActRefused when impossible."""

    async def changed(self) -> object:
        """Return at the next change of the view after this call (a mere sample need not count)."""


class Clock(Protocol):
    """Bench time, which may run faster than the wall's."""

    def time_s(self) -> float:
        """Return bench time now, in s."""

    async def sleep(self, bench_seconds: float) -> object:
        """Return after so much bench time."""


class Hands(Protocol):
    """What hands do to a cup, at a bench time; `VirtualDriver` fulfils it."""

    def pour(self, time_s: float, volume_cm3: float, duration_s: float | None = None) -> None:
        """Alkali starts to flow."""

    def take_back_pour(self, time_s: float) -> None:
        """What was poured last was not."""

    def refill(self, time_s: float, acid_volume_cm3: float | None = None) -> None:
        """Cup rinsed, fresh acid in it."""

    def spill(self, time_s: float, volume_cm3: float) -> None:
        """Part of the cup is lost."""

    def dip_in_alkali(self, time_s: float) -> None:
        """The probe goes into the alkali."""

    def back_in_cup(self, time_s: float) -> None:
        """The probe goes into the cup."""


class VirtualStudent:
    """Obeys the prompts of a bench until the practical is done; `await run()`.

    `poured_cm3` tells what truly went into the cup, by (repeat, portion); `refusals` what the bench refused.
    """

    def __init__(
        self, bench: Operable, hands: Hands, clock: Clock, *, seed: int = 0, habits: Habits | None = None
    ) -> None:
        self.poured_cm3: dict[tuple[int, int], float] = {}
        self.refusals: list[str] = []
        self._bench, self._hands, self._clock = bench, hands, clock
        self._habits = habits or Habits()
        self._random = random.Random(f"student {seed}")  # noqa: S311  (a simulation, not a secret)
        self._probe_in_alkali = False
        self._helped: set[tuple[int, int]] = set()

    async def run(self) -> None:
        """Work until the bench says that the practical is done."""
        while (view := self._bench.view())["state"] != "done":
            try:
                await self._follow(view)
            except ActRefused as refused:
                self.refusals.append(str(refused))
                await self._hesitate(self._habits.react_s)

    async def _follow(self, view: View) -> None:
        match view["instruction"].act:
            case "begin" if self._habits.dips and _alkali_is_open(view):
                await self._take_alkali_temperature()
            case "alkali_temperature" | "alkali_left_out" | "probe_rinsed" | "cup_emptied" | "cup_rinsed" as act:
                await self._set_up(act)
            case "begin":
                await self._begin()
            case "portion_added":
                await self._asked_portion(view)
            case "rinsed":
                asked = view["instruction"].code == "rinse"
                await self._hesitate(self._habits.rinse_s if asked else self._habits.react_s)
                self._fill()
                await self._do(act="rinsed")
            case "resume":
                await self._hesitate(self._habits.react_s)
                await self._do(act="resume")
            case _ if view["state"] == "settle" and self._next(view) in self._habits.hasty - set(self.poured_cm3):
                await self._hasty_portion(view)
            case _:
                if view["state"] not in {"ready", "alkali"}:
                    self._put_probe_back()
                await self._bench.changed()

    async def _take_alkali_temperature(self) -> None:
        await self._hesitate(self._habits.react_s)
        self._hands.dip_in_alkali(self._clock.time_s())
        self._probe_in_alkali = True
        await self._do(act="alkali_temperature")

    async def _set_up(self, act: str) -> None:
        """Do the step that this act ends."""
        if act == "alkali_temperature" and self._habits.dips:
            await self._take_alkali_temperature()
            return
        if act == "probe_rinsed":
            self._put_probe_back()
        await self._hesitate(self._habits.rinse_s if act == "cup_rinsed" else self._habits.react_s)
        await self._do(act="alkali_left_out" if act == "alkali_temperature" else act)

    async def _begin(self) -> None:
        await self._hesitate(self._habits.react_s)
        self._fill()
        await self._do(act="begin")

    def _fill(self) -> None:
        """Cup filled with measured acid, probe in it."""
        acid_cm3 = _plan(self._bench.view()).ingredients[0].volume_cm3
        measured_cm3 = max(0.1, self._random.gauss(acid_cm3, self._habits.acid_error_cm3))
        self._hands.refill(self._clock.time_s(), measured_cm3)
        self._put_probe_back()

    def _put_probe_back(self) -> None:
        if self._probe_in_alkali:
            self._hands.back_in_cup(self._clock.time_s())
            self._probe_in_alkali = False

    async def _asked_portion(self, view: View) -> None:
        """Look again after the delay: somebody else may have pressed meanwhile."""
        which = (view["repeat"], view["instruction"].portion)
        if which in self._habits.calls and which not in self._helped:
            self._helped.add(which)
            await self._do(act="call_teacher")
            await self._clock.sleep(self._habits.call_s)
            await self._do(act="call_over")
        if which in self._habits.stalled and which not in self.poured_cm3:
            await self._clock.sleep(self._habits.stall_s)
        await self._hesitate(self._habits.react_s)
        now = self._bench.view()
        if now["instruction"].act == "portion_added" and self._next(now) == which:
            await self._add(which)

    async def _hasty_portion(self, view: View) -> None:
        which = self._next(view)
        await self._hesitate(self._habits.hasty_after_s)
        now = self._bench.view()
        if now["state"] == "settle" and self._next(now) == which and which[1] <= now["portions_planned"]:
            await self._add(which)

    async def _add(self, which: tuple[int, int]) -> None:
        """Pour and press. What is in already, though taken back on the page, is not poured again: only pressed."""
        habits = self._habits
        first = which not in self.poured_cm3
        if first and which not in habits.skipped:
            for _ in range(2 if which in habits.doubled else 1):
                await self._pour(which)
        await self._do(act="portion_added", portion=which[1], **self._weighed(which))
        self.poured_cm3.setdefault(which, 0.0)
        if first and which in habits.spilled:
            await self._spill()

    def _weighed(self, which: tuple[int, int]) -> dict[str, Any]:
        """A solid is weighed, and what the balance says is told."""
        if not _plan(self._bench.view()).portion_g or which not in self.poured_cm3:
            return {}
        return {"mass_g": round(self.poured_cm3[which], 2), "places": 2}

    async def _spill(self) -> None:
        await self._hesitate(self._habits.react_s)
        self._hands.spill(self._clock.time_s(), self._habits.spill_cm3)
        if self._habits.owns_up:
            await self._do(act="repeat_restarted", reason=say("virtual-tipped-over"))

    async def _pour(self, which: tuple[int, int]) -> None:
        """Return at the moment of the press, which may come before the last drop."""
        habits, draw = self._habits, self._random
        plan = _plan(self._bench.view())
        error, least = (habits.mass_error_g, 0.01) if plan.portion_g else (habits.portion_error_cm3, 0.1)
        volume_cm3 = max(least, draw.gauss(plan.portion_amount, error))
        usual_s = habits.pour_all_s if plan.pours_once else volume_cm3 / habits.pour_rate_cm3_s
        duration_s = usual_s * draw.lognormvariate(0.0, habits.spread)
        self._hands.pour(self._clock.time_s(), volume_cm3, duration_s)
        self.poured_cm3[which] = self.poured_cm3.get(which, 0.0) + volume_cm3
        press_s = duration_s + draw.gauss(habits.press_after_s, habits.press_spread_s)
        await self._clock.sleep(max(0.3, press_s))

    async def _hesitate(self, median_s: float) -> None:
        await self._clock.sleep(self._random.lognormvariate(math.log(median_s), self._habits.spread))

    async def _do(self, **act: Any) -> None:
        # a key must be new even after a restart of the station, so it is not drawn from the seed
        await self._bench.do({**act, "key": f"student-{uuid.uuid4().hex}"})

    @staticmethod
    def _next(view: View) -> tuple[int, int]:
        return view["repeat"], view["portion"] + 1


def _plan(view: View) -> Plan:
    """The plan of the cup that is worked on, or comes next."""
    return plan_from(view["plan"]).of_cup(view["cup"])


def _alkali_is_open(view: View) -> bool:
    return view["alkali_temperature_c"] is None and "alkali_temperature" in view["other_acts"]


def follow_press(hands: Hands, act: Mapping[str, Any], time_s: float, portion: float) -> None:
    """Let a person play the student: what their accepted press says was done, is done to the virtual cup.

    `portion` is what the plan adds: cm³, or g of a solid.
    """
    match act["act"]:
        case "portion_added":
            hands.pour(time_s, act.get("mass_g") or act.get("volume_cm3") or portion)
        case "portion_undone":
            hands.take_back_pour(time_s)
        case "begin" | "rinsed":
            hands.back_in_cup(time_s)
            hands.refill(time_s)
        case "alkali_left_out" | "probe_rinsed":
            hands.back_in_cup(time_s)
        case "alkali_temperature" if act.get("temperature_c") is None:
            hands.dip_in_alkali(time_s)
