"""What a plan promises: the curve against energy balances by hand, the ± of both methods against simple figures."""

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from station.analysis.heat.inputs import Estimate, HeatSetup
from station.analysis.heat.model import INDEX
from station.analysis.lines.crossing import fit_lines
from station.analysis.lines.uncertainty import IdealCup, predicted_bias_cm3
from station.analysis.prediction.methods import (
    arm_points,
    expected_curve,
    expected_heat_balance,
    expected_lines,
    sample_information,
)
from station.analysis.prediction.model import (
    GLASS_TENTH,
    GLASS_WHOLE,
    PROBE,
    Course,
    Expected,
    Thermometer,
    expect,
    readings_c,
    usual_cups,
)

SETUP = HeatSetup(
    Estimate(25.0, 0.035),
    acid_j_cm3_k=4.1,
    alkali_j_cm3_k=4.1,
    product_j_cm3_k=4.1,
    alkali_mol_dm3=Estimate(1.0, 0.0),
    alkali_c=Estimate(20.0, 0.3),
    room_c=Estimate(20.0, 1.0),
    heat_slope_k=Estimate(0.0, 0.0),
)


def course(**changes: object) -> Course:
    usual = Course(SETUP, 23.0, 57.0, 20.0, 5.0, 9, 0.1, base_s=75.0, wait_s=30.0, pour_s=15.0)
    return replace(usual, **changes)  # type: ignore[arg-type]


def without_loss(expected: Expected) -> Expected:
    theta = expected.theta.copy()
    theta[INDEX["log_loss_w_k"]] = np.log(1e-9)
    return replace(expected, theta=theta)


def test_without_loss_the_curve_is_the_energy_balance() -> None:
    # After 600 s wall and probe have followed. By hand: heat of what has reacted over all heat capacities.
    curve = expected_curve(without_loss(expect(course(wait_s=600.0))))
    for volume, temperature in zip(curve.volume_cm3, curve.temperature_c, strict=True):
        by_hand = 20.0 + 57.0 * min(volume, 23.0) / (4.1 * (25.0 + volume) + 5.0)
        assert temperature == pytest.approx(by_hand, abs=0.005)
    assert curve.rise_c == pytest.approx(57.0 * 23.0 / (4.1 * 48.0 + 5.0), abs=0.03)  # 6.50 °C


def test_alkali_colder_than_the_acid_takes_heat() -> None:
    cold = replace(SETUP, alkali_c=Estimate(17.0, 0.3))
    curve = expected_curve(without_loss(expect(course(setup=cold, wait_s=600.0))))
    by_hand = 20.0 + (57.0 * 23.0 - 4.1 * 45.0 * 3.0) / (4.1 * 70.0 + 5.0)
    assert curve.temperature_c[-1] == pytest.approx(by_hand, abs=0.01)


def test_a_cup_that_loses_heat_stays_below_one_that_does_not() -> None:
    expected = expect(course())
    lossy, kept = expected_curve(expected), expected_curve(without_loss(expected))
    assert (lossy.temperature_c[1:] < kept.temperature_c[1:]).all()
    assert lossy.rise_c < kept.rise_c
    assert lossy.rise_c > 0.8 * kept.rise_c


@pytest.mark.parametrize(
    ("end_point_cm3", "points"),
    [(22.5, (5, 5)), (25.0, (6, 5)), (10.0, (3, 8)), (35.0, (8, 3)), (4.0, (1, 9)), (60.0, (10, 0))],
)
def test_readings_on_each_arm(end_point_cm3: float, points: tuple[int, int]) -> None:
    # Readings at 0, 5 … 45 cm³; one at the end-point lies on both arms.
    assert arm_points(5.0, 9, end_point_cm3) == points


@given(st.floats(0.1, 10.0), st.integers(1, 60), st.integers(0, 60))
def test_a_reading_at_the_end_point_counts_for_both_arms_whatever_the_rounding(
    portion_cm3: float, count: int, place: int
) -> None:
    before, after = arm_points(portion_cm3, count, sum([portion_cm3] * min(place, count)))
    assert before + after == count + 2


def test_the_bias_of_straight_lines_is_that_of_an_ideal_cup_and_its_loss() -> None:
    lines = expected_lines(expect(course(u_portion_cm3=0.02)), PROBE)
    ideal = predicted_bias_cm3(course().volume_cm3, 23.0, IdealCup(25.0, 4.1, 4.1, 5.0))
    assert lines.bias_cm3 == pytest.approx(ideal, abs=0.6)
    assert lines.bias_cm3 is not None
    assert lines.bias_cm3 < -2.0


def test_lines_through_the_very_readings_of_a_usual_cup_lie_within_the_predicted_scatter() -> None:
    expected = expect(course(end_point_cm3=25.0))
    lines, curve = expected_lines(expected, PROBE), expected_curve(expected)
    assert lines.bias_cm3 is not None
    assert lines.u_end_point_cm3 is not None
    crossing = fit_lines(curve.volume_cm3, curve.temperature_c).end_point_cm3
    assert crossing - 25.0 == pytest.approx(lines.bias_cm3, abs=2 * lines.u_end_point_cm3)


def test_lines_with_too_few_portions_are_expected_to_refuse_with_their_own_reason() -> None:
    lines = expected_lines(expect(course(count=4)), PROBE)
    assert (lines.bias_cm3, lines.u_end_point_cm3, lines.refused_share) == (None, None, 1.0)
    assert lines.reason is not None
    assert "3 different volumes" in lines.reason


def test_where_portions_decide_the_heat_balance_knows_no_more_than_their_mean() -> None:
    # With a perfect trace the heat of n portions tells the heat per cm³ to u(portion)/portion/√n: the end-point too.
    found = expected_heat_balance(expect(course(end_point_cm3=24.9, u_portion_cm3=0.5)), PROBE)
    assert found.u_end_point_cm3 == pytest.approx(24.9 * 0.5 / 5.0 / np.sqrt(5), rel=0.12)


def test_better_glassware_and_finer_readings_never_make_it_worse() -> None:
    for thermometer in (PROBE, GLASS_TENTH, GLASS_WHOLE):
        found = [
            expected_heat_balance(expect(course(u_portion_cm3=u)), thermometer).u_end_point_cm3
            for u in (0.02, 0.05, 0.1, 0.3)
        ]
        assert found == sorted(found)
    expected = expect(course())
    by_reading = [expected_heat_balance(expected, each).u_end_point_cm3 for each in (PROBE, GLASS_TENTH, GLASS_WHOLE)]
    assert by_reading == sorted(by_reading)
    assert by_reading[2] > 4 * by_reading[0]


def test_half_the_heat_of_a_strong_and_a_weak_pair_scales_the_rise_and_costs_certainty() -> None:
    own, weak = expect(course()), expect(course(heat_j_cm3=14.0))
    assert expected_curve(weak).rise_c == pytest.approx(expected_curve(own).rise_c * 14 / 57, rel=0.1)
    u_own, u_weak = (expected_heat_balance(each, GLASS_TENTH).u_end_point_cm3 for each in (own, weak))
    assert u_weak > 1.5 * u_own


def test_concentration_and_enthalpy_follow_the_end_point() -> None:
    found = expected_heat_balance(expect(course(u_portion_cm3=0.3)), PROBE)
    assert found.u_acid_mol_dm3 == pytest.approx(found.u_end_point_cm3 / 25.0, rel=0.05)
    assert found.u_enthalpy_kj_mol is not None
    # The cup alone, 3 J/K of about 195, leaves 1.5 %.
    assert found.u_enthalpy_kj_mol > 0.014 * 57
    unknown = replace(SETUP, alkali_mol_dm3=None)
    nothing = expected_heat_balance(expect(course(setup=unknown)), PROBE)
    assert (nothing.u_acid_mol_dm3, nothing.u_enthalpy_kj_mol) == (None, None)


def test_what_a_sample_says_is_the_information_of_its_likelihood() -> None:
    # Noise far above the step: a logistic distribution of scale s has the Fisher information 1/(3 s²).
    noisy = Thermometer("noisy", 0.01, 0.5, traced=True)
    assert sample_information(noisy) == pytest.approx((np.pi / 0.5) ** 2 / 9.0, rel=0.02)
    # Noise far below it: only samples near the edge of a step tell anything, 1/(s · step) on average.
    step, scale = 0.0625, 0.12 * 0.0625
    assert sample_information(Thermometer("quiet", step, 0.0, traced=True)) == pytest.approx(
        1 / (scale * step), rel=0.1
    )
    assert sample_information(Thermometer("read once", 1.0, 0.0)) == pytest.approx(12.0)


def test_drawn_cups_are_possible_and_the_same_each_time() -> None:
    expected = expect(course(u_portion_cm3=3.0))
    thetas = usual_cups(expected, 50)
    assert np.array_equal(thetas, usual_cups(expected, 50))
    assert (thetas[:, expected.cup.layout.volumes] > 0).all()
    assert (thetas[:, INDEX["cup_j_k"]] > 0).all()
    assert (thetas[:, INDEX["end_point_cm3"]] == 23.0).all()
    assert np.isfinite(readings_c(expected, thetas)).all()
