"""A person's hands on a virtual cup, with the real procedure: each slip is in the cup, and is told."""

import asyncio
import math
import random
from collections.abc import Sequence
from dataclasses import dataclass, field
from pathlib import Path
from statistics import mean, stdev

import pytest
from hypothesis import given
from hypothesis import strategies as st
from w1thermsensor import W1ThermSensor

from station.bench.virtual.cup import nitric_acid_and_potassium_hydroxide, of_plan
from station.bench.virtual.driver import VirtualDriver
from station.bench.virtual.hands import HandAct, HandRefused, Hands
from station.bench.virtual.practice import END_POINTS, practised, truth
from station.bench.virtual.technique import SlipShown
from station.bench.virtual.ware import SIZES_CM3, ware_of
from station.practical import events as e
from station.practical.fold import fold
from station.practical.kinds import plan_from, ready_plan
from station.practical.plan import Plan
from station.practical.state import State
from station.words import plain
from tests.bench.virtual.bench_in_jumps import Bench, JumpingClock
from tests.bench.virtual.test_student import STAFF_VALUES

Reader = type[W1ThermSensor]
Which = frozenset[tuple[int, int]]
NONE: Which = frozenset()
PLAN = plan_from({**STAFF_VALUES, "repeats": 1})


class PractisedBench(Bench):
    """Its hands hear of every event, as those of a practice cup do."""

    hands: Hands

    def _happen(self, happened: tuple[e.Event, ...]) -> None:
        super()._happen(happened)
        now_s = self._clock.now_s
        self.hands.heard([e.Stamped(0, "", 0.0, now_s, "", "", event) for event in happened], self.state)


@dataclass
class Person:
    """Follows the instruction with hands, and slips at these portions; `answers` by the question's code."""

    missed: Which = NONE
    doubled: Which = NONE
    wrong: Which = NONE
    hasty: Which = NONE
    unstirred: Which = NONE
    open_lid: Which = NONE
    late: Which = NONE
    refills: bool = True
    rinses: bool = True
    answers: dict[str, str] = field(default_factory=dict)
    asked: list[tuple[str, int]] = field(default_factory=list)
    first_poured: set[tuple[int, int]] = field(default_factory=set)
    truths: dict[tuple[int, int], float] = field(default_factory=dict)

    portion_cm3: float = 3.0
    wrong_cm3: float = 3.5
    count: int = 0

    async def run(self, bench: PractisedBench, clock: JumpingClock, driver: VirtualDriver) -> None:
        self.bench, self.clock, self.driver, self.drawn_cm3 = bench, clock, driver, 0.0
        while (view := bench.view())["state"] != "done":
            for question in view["questions"]:
                self.asked.append((question["code"], question["portion"]))
                given = self.answers.get(question["code"], "not sure")
                await self.act({"act": "answer", "question": question["id"], "answer": given})
            view, which = bench.view(), (len(bench.state.repeats), bench.state.poured + 1)
            if view["instruction"].act in ("begin", "rinsed"):
                await self.fill(str(view["instruction"].act))
            elif view["instruction"].act == "portion_added":
                await self.portion(which)
            elif view["state"] == "settle" and which in self.hasty:
                await clock.sleep(1.0)
                await self.portion(which)
            elif view["state"] != "done":
                await bench.changed()

    async def act(self, act: dict[str, object]) -> None:
        self.count += 1
        await self.bench.do({**act, "key": f"person {self.count}"})

    def hand(self, **act: object) -> None:
        self.bench.hands.do(HandAct.model_validate(act), self.clock.now_s)

    async def fill(self, act: str) -> None:
        if not self.rinses:
            self.hand(hand="probe", place="alkali")
            await self.clock.sleep(20.0)
        if self.refills or act == "begin":
            self.hand(hand="fill")
        self.hand(hand="probe", place="cup")
        self.hand(hand="lid", on=True)
        self.hand(hand="stir")
        await self.clock.sleep(2.0)
        await self.act({"act": act})

    async def portion(self, which: tuple[int, int]) -> None:
        await self.clock.sleep(3.0)
        first = which not in self.first_poured
        if not (first and which in self.missed):
            portion_cm3 = self.portion_cm3
            self.push(
                2 * portion_cm3 if which in self.doubled else self.wrong_cm3 if which in self.wrong else portion_cm3
            )
        self.first_poured.add(which)
        await self.clock.sleep(20.0 if which in self.late else 2.0)
        if which not in self.unstirred:
            self.hand(hand="stir")
        if which not in self.open_lid:
            self.hand(hand="lid", on=True)
        await self.act({"act": "portion_added", "portion": which[1]})

    def push(self, volume_cm3: float) -> None:
        """In two strokes where the syringe is too small."""
        portion = len(self.bench.state.repeats), self.bench.state.poured
        self.truths[portion] = self.driver.seen(self.clock.now_s).true_temperature_c
        most_cm3 = self.bench.hands.shown(self.clock.now_s)["ware"]["capacity_cm3"]
        for stroke_cm3 in (min(volume_cm3, most_cm3), max(volume_cm3 - most_cm3, 0.0)):
            poured_cm3 = self.drawn_cm3
            self.drawn_cm3 += stroke_cm3
            self.hand(hand="ware", drawn_cm3=self.drawn_cm3, poured_cm3=poured_cm3)
            self.hand(hand="ware", drawn_cm3=self.drawn_cm3, poured_cm3=self.drawn_cm3)


def driver_in(folder: Path, plan: Plan = PLAN) -> VirtualDriver:
    driver = VirtualDriver(folder / "devices", nitric_acid_and_potassium_hydroxide(1), seed=1)
    driver.reagents = lambda: of_plan(nitric_acid_and_potassium_hydroxide(1), plan)
    return driver


async def practise(
    folder: Path, reader: Reader, person: Person, plan: Plan = PLAN
) -> tuple[PractisedBench, list[SlipShown]]:
    clock, driver = JumpingClock(), driver_in(folder, plan)
    bench = PractisedBench(driver, reader, clock, plan.without_prepared())
    bench.hands = Hands(driver)
    bench.hands.begin(plan, 0.0)
    sampling = asyncio.ensure_future(bench.sampler())
    await clock.run(person.run(bench, clock, driver), until_s=3000.0)
    sampling.cancel()
    return bench, bench.hands.technique.judgement(bench.state, plain(""))["slips"]


def told(slips: Sequence[SlipShown]) -> list[tuple[str, int, int]]:
    return [(each["slip"], each["repeat"], each["portion"]) for each in slips]


async def test_who_works_with_care_is_told_of_no_slip(tmp_path: Path, reader: Reader) -> None:
    bench, slips = await practise(tmp_path, reader, Person())
    assert slips == []
    assert len(bench.state.repeats[0].readings) == 14
    rise_c = max(each.temperature_c or 0.0 for each in bench.state.repeats[0].readings)
    assert rise_c - (bench.state.repeats[0].readings[0].temperature_c or 0.0) > 2.0, "the cup did react"


async def test_a_missed_portion_is_found_by_the_stations_question_and_put_right(tmp_path: Path, reader: Reader) -> None:
    person = Person(missed=frozenset({(1, 3)}), answers={"no_change": "no"})
    bench, slips = await practise(tmp_path, reader, person)
    assert ("no_change", 3) in person.asked
    assert told(slips) == [("nothing", 1, 3)]
    assert slips[0]["put_right"] is True
    assert bench.state.repeats[0].portions[2].volume_cm3 == 0.0


async def test_a_missed_portion_that_nobody_owns_up_to_stays_a_slip(tmp_path: Path, reader: Reader) -> None:
    person = Person(missed=frozenset({(1, 3)}), answers={"no_change": "yes"})
    _, slips = await practise(tmp_path, reader, person)
    assert told(slips) == [("nothing", 1, 3)]
    assert slips[0]["put_right"] is False
    assert "nothing" in slips[0]["text"]


async def test_a_double_portion_is_found_and_put_right_in_the_record(tmp_path: Path, reader: Reader) -> None:
    person = Person(doubled=frozenset({(1, 2)}), answers={"double": "twice"})
    bench, slips = await practise(tmp_path, reader, person)
    assert ("double", 2) in person.asked
    assert told(slips) == [("double", 1, 2)]
    assert slips[0]["put_right"] is True
    assert bench.state.repeats[0].portions[1].volume_cm3 == pytest.approx(6.0)


async def test_a_wrong_volume_is_told_with_both_volumes(tmp_path: Path, reader: Reader) -> None:
    _, slips = await practise(tmp_path, reader, Person(wrong=frozenset({(1, 5)})))
    assert told(slips) == [("volume", 1, 5)]
    assert "3.5 cm³" in slips[0]["text"]
    assert "3.0 cm³" in slips[0]["text"]


async def test_a_portion_read_early_is_told_with_seconds_and_with_what_it_cost(tmp_path: Path, reader: Reader) -> None:
    person = Person(hasty=frozenset({(1, 5)}))
    bench, slips = await practise(tmp_path, reader, person)
    assert told(slips) == [("early", 1, 4)]
    reading_c = bench.state.repeats[0].readings[4].temperature_c
    assert reading_c is not None
    assert slips[0]["cost_c"] == pytest.approx(reading_c - person.truths[1, 4], abs=0.006)
    assert (slips[0]["cost_c"] or 0.0) < -0.05, "a probe that still rises shows too little"
    seconds = int(slips[0]["text"].split(" s early")[0].rsplit(maxsplit=1)[-1])
    assert 3 <= seconds <= 60, "a probe with 3.5 s and 10 s behind a rise of some tenths of a degree"


async def test_who_does_not_stir_is_told_what_it_cost(tmp_path: Path, reader: Reader) -> None:
    _, slips = await practise(tmp_path, reader, Person(unstirred=frozenset({(1, 2)})))
    assert ("not_stirred", 1, 2) in told(slips)


async def test_a_lid_left_off_costs_heat(tmp_path: Path, reader: Reader) -> None:
    open_lid = frozenset((1, portion) for portion in range(1, 14))
    _, slips = await practise(tmp_path, reader, Person(open_lid=open_lid, late=open_lid))
    lids = [each for each in slips if each["slip"] == "lid"]
    assert lids
    assert all((each["cost_c"] or 0.0) < 0.0 for each in lids)


async def test_a_press_long_after_the_pour_is_told(tmp_path: Path, reader: Reader) -> None:
    _, slips = await practise(tmp_path, reader, Person(late=frozenset({(1, 6)})))
    assert ("pressed_late", 1, 6) in told(slips)


async def test_a_cup_that_is_not_filled_afresh_and_a_probe_not_rinsed_are_told(tmp_path: Path, reader: Reader) -> None:
    two = plan_from({**STAFF_VALUES, "repeats": 2})
    _, slips = await practise(tmp_path, reader, Person(refills=False, rinses=False), two)
    assert ("not_filled", 2, 0) in told(slips)
    assert ("not_rinsed", 1, 0) in told(slips)


def cylinder_plan(volume_cm3: float = 3.0) -> Plan:
    portions = {"volume_cm3": volume_cm3, "count": 4, "glassware": "Measuring cylinder"}
    return plan_from({**STAFF_VALUES, "repeats": 1, "portions": portions})


def test_the_plans_glassware_decides_what_is_in_the_hand() -> None:
    assert (ware_of(PLAN).ware, ware_of(PLAN).capacity_cm3, ware_of(PLAN).division_cm3) == ("syringe", 5.0, 0.1)
    small, large = ware_of(cylinder_plan()), ware_of(cylinder_plan(9.0))
    assert (small.ware, small.capacity_cm3, small.division_cm3) == ("cylinder", 10.0, 0.2)
    assert (large.capacity_cm3, large.division_cm3) == (25.0, 0.5)
    assert (ware_of(ready_plan("mixed-once")).ware, ware_of(ready_plan("mixed-once")).division_cm3) == ("cylinder", 1.0)
    assert ware_of(ready_plan("neutralisation")).ware == "syringe"


@given(st.floats(0.1, 800.0))
def test_a_portion_has_room_in_what_it_is_measured_with(volume_cm3: float) -> None:
    for plan in (
        plan_from({**STAFF_VALUES, "portions": {"volume_cm3": volume_cm3, "count": 4}}),
        cylinder_plan(volume_cm3),
    ):
        ware = ware_of(plan)
        smaller = [each for each in SIZES_CM3[ware.ware] if each < ware.capacity_cm3]
        assert ware.capacity_cm3 >= volume_cm3 > max(smaller, default=0.0) / 2.0


@pytest.mark.parametrize("plan", [PLAN, cylinder_plan(), cylinder_plan(9.0)], ids=["syringe", "small", "large"])
def test_what_is_truly_poured_scatters_about_what_was_read_by_half_a_division(tmp_path: Path, plan: Plan) -> None:
    driver, ware, off_cm3 = driver_in(tmp_path), ware_of(plan), []
    hands = Hands(driver)
    hands.begin(plan, 0.0)
    hands.do(HandAct(hand="fill"), 0.0)
    for count in range(200):
        before_cm3, total_cm3 = driver.world.volume_cm3, plan.portion_cm3 * (count + 1)
        hands.do(HandAct(hand="ware", drawn_cm3=total_cm3, poured_cm3=total_cm3 - 1.0), 5.0 * count)
        hands.do(HandAct(hand="ware", drawn_cm3=total_cm3, poured_cm3=total_cm3), 5.0 * count + 2.0)
        driver.world.advance(5.0 * count + 5.0)
        off_cm3.append(driver.world.volume_cm3 - before_cm3 - plan.portion_cm3)
    assert stdev(off_cm3) == pytest.approx(0.5 * ware.division_cm3 / math.sqrt(3.0), rel=0.3)
    assert abs(mean(off_cm3)) < 0.1 * ware.division_cm3


@pytest.mark.parametrize(("read_cm3", "slips"), [(9.25, []), (10.0, [("volume", 1, 2)])])
async def test_a_portion_read_to_half_a_coarse_division_is_no_slip(
    tmp_path: Path, reader: Reader, read_cm3: float, slips: list[tuple[str, int, int]]
) -> None:
    person = Person(wrong=frozenset({(1, 2)}), portion_cm3=9.0, wrong_cm3=read_cm3)
    assert told((await practise(tmp_path, reader, person, cylinder_plan(9.0)))[1]) == slips


def test_nothing_is_poured_into_an_empty_cup_nor_more_than_the_syringe_holds(tmp_path: Path) -> None:
    driver = driver_in(tmp_path)
    hands = Hands(driver)
    hands.begin(PLAN, 0.0)
    with pytest.raises(HandRefused, match="fill it with acid"):
        hands.do(HandAct(hand="ware", drawn_cm3=3.0, poured_cm3=3.0), 1.0)
    assert hands.shown(1.0)["ware"]["poured_cm3"] == 0.0
    hands.do(HandAct(hand="fill"), 2.0)
    acid_cm3 = driver.world.volume_cm3
    hands.do(HandAct(hand="ware", drawn_cm3=50.0, poured_cm3=50.0), 3.0)
    assert hands.shown(3.0)["ware"]["drawn_cm3"] == hands.shown(3.0)["ware"]["capacity_cm3"] == 5.0
    hands.do(HandAct(hand="ware", drawn_cm3=5.0, poured_cm3=5.0), 3.2)  # the same message comes twice
    driver.world.advance(10.0)
    assert driver.world.volume_cm3 - acid_cm3 == pytest.approx(5.0, abs=5 * ware_of(PLAN).u_reading_cm3)


def test_pouring_lifts_the_lid_and_a_fresh_cup_has_none(tmp_path: Path) -> None:
    hands = Hands(driver_in(tmp_path))
    hands.begin(PLAN, 0.0)
    hands.do(HandAct(hand="fill"), 1.0)
    assert not hands.shown(1.0)["lid"]
    hands.do(HandAct(hand="lid", on=True), 2.0)
    hands.do(HandAct(hand="ware", drawn_cm3=3.0, poured_cm3=0.0), 3.0)
    assert hands.shown(3.0)["lid"], "filling a syringe needs no open cup"
    hands.do(HandAct(hand="ware", drawn_cm3=3.0, poured_cm3=3.0), 4.0)
    assert not hands.shown(4.0)["lid"]


@pytest.mark.parametrize("seed", range(20))
def test_each_practice_has_an_unknown_of_its_own_that_the_portions_can_find(seed: int) -> None:
    plan, cup = practised(ready_plan("neutralisation"), random.Random(seed))
    low, high = (share * 39.0 for share in END_POINTS)
    assert low - 0.1 < cup.end_point_cm3 < high + 0.1
    acid = plan.ingredients[0]
    assert acid.mol_dm3 is None
    assert acid.prepared_mol_dm3 == pytest.approx(cup.acid_concentration_mol_dm3, abs=0.001)
    assert "prepared" not in plan.without_prepared().model_dump_json(exclude_none=True)
    assert f"{cup.end_point_cm3:.1f} cm³" in truth(plan, cup)
    assert practised(ready_plan("neutralisation"), random.Random(seed + 100))[1] != cup


def test_two_liquids_mixed_once_are_practised_as_they_are_planned() -> None:
    plan, cup = practised(ready_plan("mixed-once"), random.Random(1))
    assert plan.kind == "once"
    assert cup.acid_volume_cm3 == 40.0
    assert f"{cup.enthalpy_kj_mol:+.1f} kJ/mol" in truth(plan, cup)


def test_a_solid_is_in_no_syringe_and_gives_way_to_the_ready_plan() -> None:
    plan, _ = practised(ready_plan("endothermic"), random.Random(1))
    assert plan.kind == "portions"


def test_a_plan_that_waits_for_staff_does_not_in_practice() -> None:
    plan, _ = practised(PLAN.model_copy(update={"results": "when shown"}), random.Random(1))
    assert plan.results == "after own reading"


def test_the_record_is_marked_and_one_without_the_mark_is_no_practice() -> None:
    chosen = e.PlanChosen(PLAN.without_prepared().model_dump(mode="json"), practice=True)
    stamped = e.Stamped(1, "", 0.0, 0.0, "", "", chosen)
    state = fold(State(), stamped)
    assert state.practice
    old = e.PlanChosen(PLAN.without_prepared().model_dump(mode="json"))
    assert not fold(state, e.Stamped(2, "", 0.0, 1.0, "", "", old)).practice
