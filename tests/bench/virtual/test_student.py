"""The virtual student works whole practicals with the real procedure; no second of wall time passes."""

import asyncio
import json
from dataclasses import replace
from pathlib import Path

import pytest
from w1thermsensor import W1ThermSensor

from station.bench.loop import current_practical
from station.bench.virtual.cup import SCENARIOS
from station.bench.virtual.driver import VirtualDriver
from station.bench.virtual.faults import FaultScript
from station.bench.virtual.student import BEHAVIOURS, Habits, VirtualStudent, follow_press
from station.command.assembly import follow_plan, follow_presses, opened_parts, watched_bench
from station.command.settings import ProbeSettings, Settings, VirtualSettings
from station.practical.dataset import from_question, question_for
from station.practical.kinds import plan_from, read_plan, ready_plan
from station.practical.plan import Plan
from station.practical.results import results
from station.practical.staff import StaffAct
from station.words import members
from tests.bench.virtual.bench_in_jumps import Bench, JumpingClock
from tests.records import PLAN_TEXT

Reader = type[W1ThermSensor]
ACID = {"name": "hydrochloric acid", "volume_cm3": 25.0}
STAFF_VALUES = {
    "acid": {**ACID, "prepared_mol_dm3": 0.36},
    "alkali": {"name": "sodium hydroxide", "concentration_mol_dm3": 0.4},
    "portions": {"volume_cm3": 3.0, "count": 13},
}
STAFF_PLAN = plan_from(STAFF_VALUES)
"""As staff have it: what they made up is in no journal and on no page."""


async def practical(
    folder: Path, reader: Reader, habits: Habits, *, seed: int = 1, faults: str = "", plan: Plan | None = None
) -> tuple[Bench, VirtualStudent, VirtualDriver]:
    """Work one practical to its end; it must take less than 1,500 bench seconds."""
    clock = JumpingClock()
    parameters = SCENARIOS["nitric-acid-potassium-hydroxide"](seed)
    script = FaultScript.parse(faults, seed)
    driver = VirtualDriver(folder / "devices", parameters, seed=seed, faults=script)
    bench = Bench(driver, reader, clock, read_plan(PLAN_TEXT) if plan is None else plan.without_prepared())
    if plan is not None:
        follow_plan(driver, lambda: plan, None)
    student = VirtualStudent(bench, driver, clock, seed=seed, habits=habits)
    sampling = asyncio.ensure_future(bench.sampler())
    await clock.run(student.run(), until_s=1500.0)
    sampling.cancel()
    return bench, student, driver


async def test_a_careful_student_works_the_whole_practical(tmp_path: Path, reader: Reader) -> None:
    bench, student, driver = await practical(tmp_path, reader, BEHAVIOURS["careful"])
    assert [repeat.status for repeat in bench.state.repeats] == ["ended", "ended"]
    assert [len(repeat.readings) for repeat in bench.state.repeats] == [11, 11]
    assert not any(portion.early for repeat in bench.state.repeats for portion in repeat.portions)
    assert student.refusals == []
    assert set(student.poured_cm3) == {(repeat, portion) for repeat in (1, 2) for portion in range(1, 11)}
    assert bench.state.alkali_c == pytest.approx(driver.world.parameters.alkali_temperature_c, abs=0.15)
    assert driver.world.time_s < 1200.0


async def test_the_poured_volumes_scatter_about_the_portion(tmp_path: Path, reader: Reader) -> None:
    habits = Habits(portion_error_cm3=0.08)
    _, student, _ = await practical(tmp_path, reader, habits)
    errors = [volume_cm3 - 4.0 for volume_cm3 in student.poured_cm3.values()]
    root_mean_square = (sum(error**2 for error in errors) / len(errors)) ** 0.5
    # 20 draws: chi-square bounds at 0.1 % and 99.9 %, 20 × (0.55 … 1.51)²
    assert 0.55 < root_mean_square / 0.08 < 1.51


async def test_a_press_may_come_before_the_pour_is_complete(tmp_path: Path, reader: Reader) -> None:
    habits = Habits(press_after_s=-1.0, press_spread_s=0.0, pour_rate_cm3_s=1.0, portion_error_cm3=0.0)
    bench, student, _ = await practical(tmp_path, reader, habits)
    assert bench.state.repeats[1].status == "ended"
    still_to_flow_cm3 = [act["still_to_flow_cm3"] for act in bench.acts if act["act"] == "portion_added"]
    assert all(0.2 < volume_cm3 < 4.0 for volume_cm3 in still_to_flow_cm3)
    assert student.refusals == []


async def test_hasty_portions_are_early_and_nothing_is_lost(tmp_path: Path, reader: Reader) -> None:
    bench, student, _ = await practical(tmp_path, reader, BEHAVIOURS["hasty"])
    early = {
        (repeat.repeat, portion.portion)
        for repeat in bench.state.repeats
        for portion in repeat.portions
        if portion.early
    }
    assert early == BEHAVIOURS["hasty"].hasty
    assert len(student.poured_cm3) == 20


async def test_a_skipped_portion_is_pressed_but_the_cup_stays_as_it_is(tmp_path: Path, reader: Reader) -> None:
    bench, student, _ = await practical(tmp_path, reader, BEHAVIOURS["skips"])
    assert student.poured_cm3[1, 4] == 0.0
    rises_c = _rises_c(bench)
    assert abs(rises_c[4]) < 0.15 < rises_c[3]


async def test_a_doubled_portion_shows_as_a_far_larger_rise(tmp_path: Path, reader: Reader) -> None:
    bench, student, _ = await practical(tmp_path, reader, BEHAVIOURS["doubles"])
    assert student.poured_cm3[1, 3] == pytest.approx(8.0, abs=0.5)
    rises_c = _rises_c(bench)
    # twice the heat, but also more cool alkali to warm: by hand 0.81 °C after 0.52 °C
    assert rises_c[3] > 1.3 * rises_c[2]


@pytest.mark.fault("mishaps")
async def test_after_a_spill_the_repeat_is_started_again(tmp_path: Path, reader: Reader) -> None:
    bench, student, _ = await practical(tmp_path, reader, BEHAVIOURS["spills"])
    assert [repeat.status for repeat in bench.state.repeats] == ["set aside", "ended", "ended"]
    assert bench.state.repeats[0].reason == "The cup tipped over."
    assert student.refusals == []


async def test_a_spill_may_be_kept_quiet(tmp_path: Path, reader: Reader) -> None:
    habits = replace(BEHAVIOURS["spills"], owns_up=False)
    bench, _, _ = await practical(tmp_path, reader, habits)
    assert [repeat.status for repeat in bench.state.repeats] == ["ended", "ended"]


@pytest.mark.parametrize(("name", "enthalpy_kj_mol"), [("mixed-once", -57.5), ("endothermic", 15.3)])
async def test_a_plan_that_mixes_once_is_worked_and_gives_its_enthalpy(
    tmp_path: Path, reader: Reader, name: str, enthalpy_kj_mol: float
) -> None:
    """What `station predict` says of these plans: the cup holds what the plan says."""
    plan = ready_plan(name).model_copy(update={"repeats": 1})
    careful = BEHAVIOURS["careful"]
    bench, student, _ = await practical(tmp_path, reader, careful, seed=3, plan=plan)
    assert student.refusals == []
    (repeat,) = bench.state.repeats
    assert student.poured_cm3[1, 1] == pytest.approx(plan.portion_amount, rel=0.05)
    (portion,) = repeat.portions
    assert portion.mass_g == (round(student.poured_cm3[1, 1], 2) if plan.portion_g else None)
    found = results(*from_question(question_for(bench.state)))["mean"]
    for method in ("straight_lines", "heat_balance"):
        assert found[method]["enthalpy_kj_mol"] == pytest.approx(enthalpy_kj_mol, rel=0.04)
        assert abs(found[method]["enthalpy_kj_mol"] - enthalpy_kj_mol) < 2.0 * found[method]["u_enthalpy_kj_mol"]


@pytest.mark.fault("third-of-reads-fail")
async def test_the_practical_ends_on_a_failing_probe(tmp_path: Path, reader: Reader) -> None:
    faults = "random 10 %, gone@300+20, bus_gone@500+5"
    bench, _, driver = await practical(tmp_path, reader, BEHAVIOURS["careful"], faults=faults)
    assert [repeat.status for repeat in bench.state.repeats] == ["ended", "ended"]
    assert driver.world.time_s > 400.0


async def test_the_same_seed_gives_the_same_practical(tmp_path: Path, reader: Reader) -> None:
    first, _, _ = await practical(tmp_path, reader, BEHAVIOURS["careful"], seed=5)
    again, _, _ = await practical(tmp_path, reader, BEHAVIOURS["careful"], seed=5)
    assert first.state.repeats == again.state.repeats


async def test_a_student_looks_again_before_pouring(tmp_path: Path, reader: Reader) -> None:
    """Somebody else presses the first portion while the student still reaches for the syringe."""
    clock = JumpingClock()
    driver = VirtualDriver(tmp_path / "devices", SCENARIOS["nitric-acid-potassium-hydroxide"](1))
    bench = Bench(driver, reader, clock)
    student = VirtualStudent(bench, driver, clock, habits=Habits(react_s=10.0))

    async def other() -> None:
        while bench.view()["instruction"].act != "portion_added":
            await bench.changed()
        await clock.sleep(0.5)
        act = {"act": "portion_added", "portion": 1, "key": "somebody"}
        await bench.do(act)
        follow_press(driver, act, clock.time_s(), 4.0)

    tasks = [asyncio.ensure_future(job) for job in (bench.sampler(), other())]
    await clock.run(student.run(), until_s=2000.0)
    for task in tasks:
        task.cancel()
    assert (1, 1) not in student.poured_cm3
    assert (1, 2) in student.poured_cm3
    assert student.refusals == []


@pytest.mark.fault("break")
async def test_a_paused_practical_is_resumed_and_a_refusal_survived(tmp_path: Path, reader: Reader) -> None:
    clock = JumpingClock()
    driver = VirtualDriver(tmp_path / "devices", SCENARIOS["nitric-acid-potassium-hydroxide"](1))
    bench = Bench(driver, reader, clock)
    student = VirtualStudent(bench, driver, clock)

    async def other() -> None:
        await clock.sleep(200.0)
        await bench.do({"act": "pause", "key": "p"})
        await clock.sleep(400.0)
        await bench.do({"act": "finish", "key": "f"})

    tasks = [asyncio.ensure_future(job) for job in (bench.sampler(), other())]
    await clock.run(student.run(), until_s=700.0)
    for task in tasks:
        task.cancel()
    assert [act["act"] for act in bench.acts].count("resume") == 1
    assert bench.state.ended_early


@pytest.mark.parametrize("seed", [1, 2])
async def test_every_bench_of_a_plan_measures_the_acid_that_staff_made_up(
    tmp_path: Path, reader: Reader, seed: int
) -> None:
    """By hand: 25.0 cm³ of 0.36 mol/dm³ takes 22.5 cm³ of 0.40 mol/dm³; the seeds' own acids would not."""
    bench, student, driver = await practical(tmp_path, reader, BEHAVIOURS["careful"], seed=seed, plan=STAFF_PLAN)
    assert student.refusals == []
    found = results(*from_question(question_for(bench.state)))["mean"]["heat_balance"]
    assert found["end_point_cm3"] == pytest.approx(22.5, abs=0.35)
    assert driver.world.parameters.acid_concentration_mol_dm3 == pytest.approx(0.36)


async def test_a_plan_chosen_while_running_fills_the_next_cup_and_tells_nobody(tmp_path: Path) -> None:
    settings = Settings(probe=ProbeSettings(driver="virtual"), virtual=VirtualSettings(seed=3, acid_mol_dm3=0.41))
    with opened_parts(settings, tmp_path / "record") as parts:
        assert parts.driver is not None
        watch = await watched_bench(parts, plan_from({**STAFF_VALUES, "acid": ACID}))
        follow_presses(watch.bench, parts.driver)
        await watch.bench.do({"act": "begin", "key": "b1"})
        assert parts.driver.world.end_point_cm3 == pytest.approx(25.0 * 0.41 / 0.4), "what the settings say"
        await watch.bench.do({"act": "finish", "key": "f1"})
        act = StaffAct(act="choose_plan", plan=STAFF_VALUES)
        await watch.bench.do(act)
        watch.remember(STAFF_PLAN)
        await watch.bench.do({"act": "begin", "key": "b2"})
        assert parts.driver.world.end_point_cm3 == pytest.approx(22.5)
        assert "0.36" not in json.dumps(watch.whole(), default=members)
        told = [each.event.to_body() for each in current_practical(parts.journal)]
        assert "0.36" not in json.dumps(told)


async def test_a_portion_that_was_not_added_is_out_of_the_virtual_cup(tmp_path: Path) -> None:
    settings = Settings(probe=ProbeSettings(driver="virtual"), virtual=VirtualSettings(speed=200.0))
    with opened_parts(settings, tmp_path / "record") as parts:
        assert parts.driver is not None
        bench = (await watched_bench(parts, STAFF_PLAN)).bench
        follow_presses(bench, parts.driver)
        running = asyncio.create_task(bench.run())
        await bench.do({"act": "begin", "key": "b"})
        while bench.view()["instruction"].act != "portion_added":
            await bench.changed()
        for key, act in enumerate(("portion_added", "portion_undone", "portion_added")):
            await bench.do({"act": act, "portion": 1, "key": f"k{key}"})
        running.cancel()
        await asyncio.wait([running])
        world = parts.driver.world
        world.advance(world.time_s + 30.0)
        assert world.volume_cm3 == pytest.approx(28.0)


@pytest.mark.parametrize(("act", "volume_cm3"), [({"act": "portion_added"}, 29.0), ({"act": "rinsed"}, 25.0)])
def test_a_person_can_play_the_student(tmp_path: Path, act: dict[str, str], volume_cm3: float) -> None:
    with VirtualDriver(tmp_path / "devices", SCENARIOS["nitric-acid-potassium-hydroxide"](1)) as driver:
        follow_press(driver, act, 5.0, 4.0)
        driver.prepare(20.0)
        assert driver.world.volume_cm3 == pytest.approx(volume_cm3)


def _rises_c(bench: Bench) -> dict[int, float]:
    """The rise of each portion of the first repeat."""
    readings = {reading.portion: reading.temperature_c for reading in bench.state.repeats[0].readings}
    rises: dict[int, float] = {}
    for portion in range(1, 11):
        before_c, after_c = readings[portion - 1], readings[portion]
        assert before_c is not None and after_c is not None
        rises[portion] = after_c - before_c
    return rises
