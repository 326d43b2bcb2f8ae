"""The world against hand calculations: heat balance, end-point, probe and room."""

import math
from collections.abc import Callable
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from station.bench.virtual.cup import SCENARIOS, CupParameters, nitric_acid_and_potassium_hydroxide, of_plan
from station.bench.virtual.world import STEP_S, World
from station.practical.kinds import plan_from, ready_plan
from station.practical.plan import Plan
from station.practical.predict import predict


def no_loss(**figures: float) -> CupParameters:
    """A cup that keeps its heat and has no heat capacity of its own; the probe takes none."""
    bare = {"cup_heat_capacity_j_k": 0.0, "wall_heat_capacity_j_k": 0.0, "probe_heat_capacity_j_k": 0.0}
    return CupParameters(**{"loss_w_k": 0.0, "room_drift_c_h": 0.0, "probe_noise_c": 0.0, **bare, **figures})


def test_a_published_class_calculation() -> None:
    """OpenStax, Chemistry 2e, section 5.2: 50.0 cm³ of 1.00 M HCl and of NaOH, 22.0 to 28.9 °C.

    With 100 g of 4.184 J/g/K that is 2,887 J for 0.0500 mol, −57.74 kJ/mol.
    """
    cup = no_loss(
        acid_volume_cm3=50.0,
        acid_concentration_mol_dm3=1.0,
        acid_temperature_c=22.0,
        alkali_concentration_mol_dm3=1.0,
        alkali_temperature_c=22.0,
        enthalpy_kj_mol=-57.74,
        acid_heat_capacity_j_cm3_k=4.184,
        alkali_heat_capacity_j_cm3_k=4.184,
    )
    world = World(cup)
    world.pour(50.0)
    world.advance(120.0)
    assert world.true_temperature_c == pytest.approx(28.9, abs=0.005)


@settings(max_examples=30, deadline=None)
@given(
    st.lists(st.floats(0.5, 12.0), min_size=1, max_size=8),
    st.floats(10.0, 30.0),
    st.floats(10.0, 30.0),
    st.floats(0.05, 1.5),
    st.floats(0.0, 20.0),
)
def test_the_adiabatic_limit(
    portions_cm3: list[float], acid_c: float, alkali_c: float, acid_mol_dm3: float, cup_j_k: float
) -> None:
    """Heat in = heat held: acid and cup at theirs, alkali at its temperature, one enthalpy per mole of water."""
    cup = no_loss(
        acid_temperature_c=acid_c,
        alkali_temperature_c=alkali_c,
        acid_concentration_mol_dm3=acid_mol_dm3,
        cup_heat_capacity_j_k=cup_j_k,
        mixing_s=0.5,
        pour_rate_cm3_s=5.0,
    )
    world = World(cup)
    for portion_cm3 in portions_cm3:
        world.pour(portion_cm3)
    world.advance(sum(portions_cm3) / 5.0 + 10.0)
    added_cm3 = sum(portions_cm3)
    acid_j_k = 25.0 * 4.11 + cup_j_k
    alkali_j_k = added_cm3 * 4.12
    water_mol = min(25.0 * acid_mol_dm3, added_cm3 * 0.4) / 1000.0
    expected_c = (acid_j_k * acid_c + alkali_j_k * alkali_c + 56_500.0 * water_mol) / (acid_j_k + alkali_j_k)
    assert world.true_temperature_c == pytest.approx(expected_c, abs=1e-3)
    assert world.volume_cm3 == pytest.approx(25.0 + added_cm3)


def test_wall_and_probe_take_their_share_of_the_heat() -> None:
    """Without a loss liquid, wall and probe end at their common temperature."""
    cup = CupParameters(
        acid_temperature_c=30.0,
        room_temperature_c=20.0,
        room_drift_c_h=0.0,
        loss_w_k=0.0,
        cup_heat_capacity_j_k=0.0,
        wall_heat_capacity_j_k=8.0,
        probe_heat_capacity_j_k=5.0,
        probe_start_c=10.0,
    )
    world = World(cup)
    world.advance(400.0)
    expected_c = (25.0 * 4.11 * 30.0 + 8.0 * 20.0 + 5.0 * 10.0) / (25.0 * 4.11 + 8.0 + 5.0)
    assert world.true_temperature_c == pytest.approx(expected_c, abs=1e-6)
    assert world.probe_temperature_c == pytest.approx(expected_c, abs=1e-6)


def test_a_warm_cup_cools_exponentially() -> None:
    """Newton's law: heat capacity over loss is the time constant."""
    cup = no_loss(acid_temperature_c=31.0, room_temperature_c=21.0, loss_w_k=0.1, mixing_s=0.5)
    world = World(cup)
    world.advance(600.0)
    assert world.true_temperature_c == pytest.approx(21.0 + 10.0 * math.exp(-600.0 * 0.1 / (25.0 * 4.11)), abs=0.01)


def test_the_room_drifts() -> None:
    world = World(CupParameters(room_temperature_c=20.0, room_drift_c_h=0.6))
    world.advance(1800.0)
    assert world.room_temperature_c == pytest.approx(20.3)


@pytest.mark.parametrize("acid_mol_dm3", [0.38, 0.4, 0.424])
def test_the_end_point_is_where_the_heating_stops(acid_mol_dm3: float) -> None:
    """In small portions without loss the highest temperature lies within half a portion of the end-point."""
    world = World(no_loss(acid_concentration_mol_dm3=acid_mol_dm3, mixing_s=0.3))
    curve = []
    for portion in range(1, 161):
        world.pour(0.2)
        world.advance(portion * 3.0)
        curve.append((world.true_temperature_c, portion * 0.2))
    assert world.end_point_cm3 == pytest.approx(25.0 * acid_mol_dm3 / 0.4)
    assert max(curve)[1] == pytest.approx(world.end_point_cm3, abs=0.2)


def test_a_dipped_probe_follows_its_two_time_constants() -> None:
    """Closed form of two first-order bodies read together."""
    cup = no_loss(probe_fast_s=3.5, probe_slow_s=10.0, probe_fast_share=0.7, probe_start_c=30.0)
    world = World(cup)
    world.dip_in_alkali()
    for time_s in (1.0, 5.0, 12.0, 40.0):
        world.advance(time_s)
        left = 0.7 * math.exp(-time_s / 3.5) + 0.3 * math.exp(-time_s / 10.0)
        assert world.probe_temperature_c == pytest.approx(21.0 + 9.0 * left, abs=1e-6)


def test_a_real_step_response_is_within_reach() -> None:
    """A DS18B20 plunged from air into cold water: 11.44 °C with 4.65 s and 9.76 °C with 19.35 s, from 1.02 s.

    Every seventh point of the log of one of eight probes, students' course at Universität Hamburg, 2023
    (public repository QuentinRauschenbach/Temperature_Logger), and the two exponentials that fit it.
    """
    seen = [(7.98, 12.0), (15.96, 7.69), (23.95, 5.69), (31.93, 4.69), (39.92, 3.94), (59.31, 3.13), (79.82, 2.88)]
    cup = no_loss(
        probe_start_c=23.88,
        alkali_temperature_c=2.681,
        probe_fast_s=4.65,
        probe_slow_s=19.35,
        probe_fast_share=11.44 / (11.44 + 9.76),
    )
    world = World(cup)
    world.dip_in_alkali()
    for time_s, temperature_c in seen:
        world.advance(time_s - 1.02)
        assert world.probe_temperature_c == pytest.approx(temperature_c, abs=0.15)


@pytest.mark.fault("restless-cup")
def test_slow_stirring_is_seen_as_a_slow_creep() -> None:
    """Fifteen seconds after the portion a stirred cup is nearly there, a cup left alone is not."""
    creeps_c = []
    for mixing_s in (2.0, 30.0):
        world = World(no_loss(mixing_s=mixing_s))
        world.pour(4.0)
        world.advance(20.0)
        early_c = world.probe_temperature_c
        world.advance(200.0)
        creeps_c.append(world.probe_temperature_c - early_c)
    assert creeps_c[0] < 0.06 < 0.12 < creeps_c[1]


def test_readings_come_in_steps_with_the_noise_asked_for() -> None:
    cup = no_loss(probe_noise_c=0.2, probe_start_c=21.0)
    world = World(cup, seed=4)
    readings = []
    for second in range(400):
        world.advance(float(second))
        readings.append(world.reading_c())
        assert world.reading_c() == readings[-1]
    assert all(reading * 16 == round(reading * 16) for reading in readings)
    spread_c = math.sqrt(sum((reading - 21.0) ** 2 for reading in readings) / len(readings))
    # 0.2 °C and a step of 1/16 °C; 400 draws scatter by 3.5 %, four times that is allowed
    assert spread_c == pytest.approx(math.hypot(0.2, 0.0625 / math.sqrt(12.0)), rel=0.14)


def _at_once(world: World) -> None:
    world.advance(90.0)


def _in_bits(world: World) -> None:
    for tenth in range(901):
        world.advance(tenth * 0.1)


@pytest.mark.parametrize("advance", [_at_once, _in_bits])
def test_what_happens_does_not_depend_on_how_often_one_looks(advance: Callable[[World], None]) -> None:
    looked, plain = World(CupParameters()), World(CupParameters())
    for world in (looked, plain):
        world.pour(4.0, duration_s=3.0)
    advance(looked)
    plain.advance(45.0)
    plain.advance(90.0)
    assert looked.true_temperature_c == plain.true_temperature_c
    assert looked.reading_c() == plain.reading_c()


def test_a_refill_gives_fresh_acid_and_the_probe_keeps_its_temperature() -> None:
    world = World(CupParameters())
    world.pour(20.0)
    world.advance(60.0)
    probe_c = world.probe_temperature_c
    world.refill(24.0)
    assert world.probe_temperature_c == probe_c
    assert world.volume_cm3 == 24.0
    assert world.true_temperature_c == pytest.approx(21.0)
    assert world.end_point_cm3 == pytest.approx(24.0)


def test_a_refill_stops_a_pour() -> None:
    world = World(CupParameters())
    world.pour(20.0, duration_s=10.0)
    world.advance(5.0)
    world.refill()
    world.advance(60.0)
    assert world.volume_cm3 == pytest.approx(25.0)


@settings(max_examples=30, deadline=None)
@given(st.integers(0, 8), st.floats(1.0, 9.0), st.floats(0.05, 30.0), st.floats(15.0, 25.0))
def test_a_pour_taken_back_leaves_the_cup_as_if_it_had_never_been(
    before: int, volume_cm3: float, after_s: float, alkali_c: float
) -> None:
    """Before, at or past the end-point; still flowing, half mixed or long in."""
    cups = [World(no_loss(alkali_temperature_c=alkali_c, cup_heat_capacity_j_k=4.0, mixing_s=1.0)) for _ in range(2)]
    for world in cups:
        for _ in range(before):
            world.pour(4.0)
            world.advance(world.time_s + 10.0)
    doubted, plain = cups
    doubted.pour(volume_cm3)
    doubted.advance(doubted.time_s + after_s)
    doubted.take_back_pour()
    for world in cups:
        world.advance(doubted.time_s + 20.0)
    assert doubted.volume_cm3 == pytest.approx(plain.volume_cm3)
    assert doubted.true_temperature_c == pytest.approx(plain.true_temperature_c, abs=1e-6)
    for world in cups:
        world.pour(4.0)
        world.advance(world.time_s + 20.0)
    assert doubted.true_temperature_c == pytest.approx(plain.true_temperature_c, abs=1e-6), "the acid is there again"


def test_only_what_was_poured_is_taken_back() -> None:
    world = World(CupParameters())
    world.take_back_pour()
    world.pour(4.0)
    world.pour(3.0)
    world.advance(1.0)
    world.take_back_pour()
    world.advance(20.0)
    assert world.volume_cm3 == pytest.approx(29.0), "the first went on flowing"
    world.take_back_pour()
    world.take_back_pour()
    assert world.volume_cm3 == pytest.approx(25.0)
    world.fill_with_water(25.0, 45.0)
    world.pour(25.0)
    world.advance(40.0)
    world.take_back_pour()
    assert world.volume_cm3 == pytest.approx(25.0)
    assert world.true_temperature_c > 40.0, "water gives no heat that could be taken back"


def test_a_spill_takes_liquid_not_temperature() -> None:
    world = World(no_loss(acid_temperature_c=25.0))
    world.spill(10.0)
    assert world.volume_cm3 == pytest.approx(15.0)
    assert world.true_temperature_c == pytest.approx(25.0)
    world.spill(1000.0)
    assert world.volume_cm3 == pytest.approx(1.5)


@pytest.mark.parametrize(("volume_cm3", "duration_s"), [(0.0, None), (-1.0, 2.0), (4.0, 0.0)])
def test_an_impossible_pour_is_refused(volume_cm3: float, duration_s: float | None) -> None:
    with pytest.raises(ValueError, match="pour"):
        World(CupParameters()).pour(volume_cm3, duration_s)


def test_an_impossible_refill_is_refused() -> None:
    with pytest.raises(ValueError, match="refill"):
        World(CupParameters()).refill(0.0)


@pytest.mark.parametrize(
    ("name", "value"),
    [("acid_volume_cm3", 0.0), ("loss_w_k", -0.1), ("probe_fast_share", 1.1), ("room_temperature_c", math.nan)],
)
def test_an_impossible_cup_is_refused(name: str, value: float) -> None:
    with pytest.raises(ValueError, match=name):
        CupParameters(**{name: value})


def test_a_world_may_start_late() -> None:
    world = World(CupParameters(), start_s=1e6)
    world.advance(1e6 + 1.0)
    assert world.time_s == pytest.approx(1e6 + 1.0, abs=STEP_S)


@given(st.integers(0, 500))
def test_the_unknown_acid_is_within_six_per_cent(seed: int) -> None:
    cup = SCENARIOS["nitric-acid-potassium-hydroxide"](seed)
    assert 23.5 <= cup.end_point_cm3 <= 26.5
    assert cup.alkali_concentration_mol_dm3 == 0.4
    assert cup == SCENARIOS["nitric-acid-potassium-hydroxide"](seed)


ACID = {"name": "nitric acid", "volume_cm3": 25.0}
ALKALI = {"name": "potassium hydroxide", "concentration_mol_dm3": 0.4}


def plan_with(**acid: float) -> Plan:
    return plan_from(
        {
            "acid": {"name": "hydrochloric acid", "volume_cm3": 20.0, **acid},
            "alkali": {"name": "sodium hydroxide", "concentration_mol_dm3": 0.5},
            "portions": {"volume_cm3": 2.0, "count": 12},
        }
    )


@given(st.integers(0, 500), st.sampled_from(["prepared_mol_dm3", "concentration_mol_dm3"]))
def test_the_acid_that_a_plan_tells_is_the_same_on_every_bench(seed: int, told: str) -> None:
    drawn = SCENARIOS["nitric-acid-potassium-hydroxide"](seed)
    cup = of_plan(drawn, plan_with(**{told: 0.36}), 0.3)
    assert cup.end_point_cm3 == pytest.approx(20.0 * 0.36 / 0.5)
    assert (cup.acid_volume_cm3, cup.alkali_concentration_mol_dm3) == (20.0, 0.5)
    assert cup.loss_w_k == drawn.loss_w_k


@given(st.integers(0, 500))
def test_an_acid_that_no_plan_tells_has_its_end_point_within_the_planned_portions(seed: int) -> None:
    drawn = SCENARIOS["nitric-acid-potassium-hydroxide"](seed)
    assert of_plan(drawn, plan_with()).end_point_cm3 == pytest.approx(15.0, rel=0.06)
    assert of_plan(drawn, plan_with(), 0.3).end_point_cm3 == pytest.approx(12.0)
    usual = {"acid": ACID, "alkali": ALKALI, "portions": {"volume_cm3": 4.0, "count": 10}}
    assert of_plan(drawn, plan_from(usual)).end_point_cm3 == pytest.approx(drawn.end_point_cm3)


def test_an_acid_with_two_protons_takes_twice_the_alkali() -> None:
    values = plan_with(prepared_mol_dm3=0.2).model_dump()
    plan = plan_from({**values, "acid": {**values["acid"], "name": "sulfuric acid"}})
    assert of_plan(CupParameters(), plan).end_point_cm3 == pytest.approx(16.0)


def mixed_change_c(plan: Plan) -> tuple[World, float]:
    """The cup of this plan two minutes after all of it is in, without loss: how far it has warmed."""
    cup = replace(of_plan(nitric_acid_and_potassium_hydroxide(4), plan), loss_w_k=0.0, room_drift_c_h=0.0)
    even = replace(cup, alkali_temperature_c=20.0, acid_temperature_c=20.0, room_temperature_c=20.0, probe_start_c=20.0)
    world = World(even, 1)
    world.pour(plan.portion_amount)
    world.advance(240.0)
    return world, world.true_temperature_c - 20.0


@pytest.mark.parametrize("name", ["mixed-once", "endothermic"])
def test_a_cup_of_a_plan_that_mixes_once_changes_as_its_prediction_says(name: str) -> None:
    plan = ready_plan(name)
    world, change_c = mixed_change_c(plan)
    promised = predict(plan, compare=False)
    # The prediction counts 5 J/K for cup and probe; these are 9 J/K.
    inside_j_k = -promised["heat_j"] / -promised["change_c"]
    assert change_c == pytest.approx(promised["heat_j"] / (inside_j_k + 4.0), rel=0.01)
    assert world.volume_cm3 == pytest.approx(sum(each.volume_cm3 for each in plan.ingredients) + (plan.portion_g or 0))


def test_an_alkali_may_stand_in_the_cup_and_the_acid_be_added() -> None:
    values = {"kind": "once", "liquid": {"name": "potassium hydroxide", "volume_cm3": 50, "concentration_mol_dm3": 0.4}}
    acid = {"name": "sulfuric acid", "volume_cm3": 20, "concentration_mol_dm3": 0.4}
    plan = plan_from({**values, "addition": acid})
    _, change_c = mixed_change_c(plan)
    assert change_c == pytest.approx(predict(plan, compare=False)["change_c"] * (295.0 / 299.0), rel=0.01)


def test_a_solid_that_was_not_added_after_all_is_out_again_with_its_heat() -> None:
    plan = ready_plan("endothermic")
    cup = replace(of_plan(nitric_acid_and_potassium_hydroxide(4), plan), loss_w_k=0.0)
    world, other = World(cup, 1), World(cup, 1)
    for each in (world, other):
        each.advance(60.0)
    world.pour(plan.portion_amount)
    world.advance(75.0)
    world.take_back_pour()
    world.advance(300.0)
    other.advance(300.0)
    assert world.true_temperature_c == pytest.approx(other.true_temperature_c, abs=0.05)
    assert world.volume_cm3 == pytest.approx(50.0)


def test_the_unknown_acid_differs_from_bench_to_bench() -> None:
    drawn = {SCENARIOS["nitric-acid-potassium-hydroxide"](seed).acid_concentration_mol_dm3 for seed in range(20)}
    assert len(drawn) == 20
    assert max(drawn) - min(drawn) > 0.02


def test_a_copy_goes_on_as_the_world_would_and_leaves_it_alone() -> None:
    world = World(nitric_acid_and_potassium_hydroxide(1), 1)
    world.advance(10.0)
    world.pour(5.0, 8.0)
    world.stir(3.0)
    world.put_lid(False)
    world.advance(12.0)
    other, flowing_cm3 = world.copied(), world.still_to_flow_cm3
    other.advance(60.0)
    assert (world.time_s, world.still_to_flow_cm3) == (12.0, flowing_cm3)
    world.advance(60.0)
    for each in ("true_temperature_c", "probe_temperature_c", "volume_cm3", "lost_by_open_lid_j"):
        assert getattr(world, each) == getattr(other, each)
    assert world.reading_c() == other.reading_c()
