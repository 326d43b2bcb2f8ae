"""Rest, dip and cup test: on the real step response of a DS18B20, on the virtual cup, and by their own logic."""

from dataclasses import replace
from random import Random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from station.analysis.probe.cup_test import CupRefused, CupTest, cup_of
from station.analysis.probe.dip import HOLD_S, DipRefused, dip_of, plunge_s, steadiness
from station.analysis.settle.lags import STEEL_TUBE
from station.bench.virtual.cup import CupParameters
from station.bench.virtual.world import World
from tests.analysis.test_settle_step_response import SAMPLES

WATER_J_G_K = 4.18


def test_the_real_probe_has_the_two_times_that_its_trace_shows() -> None:
    """The trace is described by 2.681 + 11.44 exp(−(t − 1.02)/4.65) + 9.76 exp(−(t − 1.02)/19.35), rms 0.050 °C."""
    dip = dip_of(SAMPLES)
    assert abs(dip.lags.fast_s - 4.65) < 2.0 * dip.u_fast_s < 2.0
    assert abs(dip.lags.slow_s - 19.35) < 2.0 * dip.u_slow_s < 2.0
    assert abs(dip.lags.fast_share - 11.44 / (11.44 + 9.76)) < 2.0 * dip.u_share < 0.1
    assert dip.water_c == pytest.approx(2.681, abs=0.04)
    assert dip.rms_c < 0.06
    # All eight probes of that course: 63 % after 6.8 to 19 s, 90 % after 21 to 50 s.
    assert 6.8 < dip.t63_s < 19.0
    assert 21.0 < dip.t90_s < 50.0


@settings(max_examples=12, deadline=None)
@given(st.integers(0, 1000), st.floats(2.0, 6.0), st.floats(9.0, 25.0), st.floats(0.3, 0.8), st.booleans())
def test_a_dip_of_the_virtual_probe_gives_its_times_back(
    seed: int, fast_s: float, slow_s: float, share: float, cold: bool
) -> None:
    air_c, water_c = (24.0, 2.0) if cold else (21.0, 52.0)
    p = CupParameters(
        acid_volume_cm3=900.0,
        acid_temperature_c=water_c,
        room_temperature_c=water_c,
        loss_w_k=0.0,
        wall_heat_capacity_j_k=0.0,
        probe_start_c=air_c,
        probe_fast_s=fast_s,
        probe_slow_s=slow_s,
        probe_fast_share=share,
    )
    dip = dip_of(dipped(World(p, seed), air_c))
    assert abs(dip.lags.fast_s - fast_s) < 4.0 * dip.u_fast_s + 0.3
    assert abs(dip.lags.slow_s - slow_s) < 4.0 * dip.u_slow_s + 0.6
    assert abs(dip.lags.mean_s - (share * fast_s + (1 - share) * slow_s)) < 0.6
    assert dip.water_c == pytest.approx(water_c, abs=0.15)


def dipped(world: World, air_c: float) -> list[tuple[float, float | None]]:
    rows: list[tuple[float, float | None]] = [(k - 15.0, round(air_c * 16) / 16) for k in range(15)]
    for k in range(140):
        world.advance(k + 0.4)
        rows.append((k + 0.4, None if k == 30 else world.reading_c()))
    return rows


def test_a_dip_that_says_nothing_is_refused() -> None:
    still: list[tuple[float, float | None]] = [(float(k), 21.0) for k in range(90)]
    assert plunge_s(still) is None
    with pytest.raises(DipRefused, match="not changed"):
        dip_of(still)
    with pytest.raises(DipRefused, match="too short"):
        dip_of([row for row in SAMPLES if row[0] < 30.0])
    with pytest.raises(DipRefused, match="too near"):
        dip_of([*still, *[(90.0 + k, 24.0) for k in range(90)]])


def cup_trace(
    p: CupParameters, seed: int, added_cm3: float, until_s: float = 480.0
) -> list[tuple[float, float | None]]:
    world, rows, time_s = World(p, seed), [], 0.3
    while time_s < until_s:
        if 240.0 < time_s < 241.0:
            world.pour(added_cm3, 3.0)
        world.advance(time_s)
        rows.append((time_s, world.reading_c()))
        time_s += 1.0
    return list(rows)


def water_cup(warm_c: float, wall_j_k: float, loss_w_k: float) -> CupParameters:
    return CupParameters(
        acid_volume_cm3=25.0,
        acid_concentration_mol_dm3=1e-9,
        alkali_concentration_mol_dm3=1e-9,
        acid_heat_capacity_j_cm3_k=WATER_J_G_K,
        alkali_heat_capacity_j_cm3_k=WATER_J_G_K,
        acid_temperature_c=warm_c,
        probe_start_c=warm_c,
        wall_heat_capacity_j_k=wall_j_k,
        loss_w_k=loss_w_k,
        room_drift_c_h=0.0,
    )


def test_the_virtual_cup_gives_its_heat_capacity_and_loss_back() -> None:
    found: list[tuple[float, float]] = []
    for seed in range(8):
        draw = Random(seed)
        wall, loss = draw.uniform(3.0, 8.0), draw.uniform(0.07, 0.14)
        trace = cup_trace(water_cup(draw.uniform(40.0, 46.0), wall, loss), seed, 25.0)
        cup = cup_of(trace, 241.0 + draw.gauss(0, 1), (21.0, 0.05), (25.0, 25.0), 0.05, WATER_J_G_K, STEEL_TUBE)
        found.append(((cup.heat_capacity_j_k - 2.0 - wall - 2.0) / cup.u_heat_capacity_j_k, cup.u_heat_capacity_j_k))
        assert cup.loss_w_k == pytest.approx(loss, rel=0.08)
    assert all(abs(z) < 2.0 for z, _ in found)
    assert all(u < 2.5 for _, u in found), "better than the 3 J/K of an untested cup"


def test_an_offset_and_a_slope_of_the_probe_cancel() -> None:
    trace = cup_trace(water_cup(44.0, 5.0, 0.1), 3, 25.0)
    wrong = [(t, None if c is None else 0.6 + 1.01 * c) for t, c in trace]

    def cup(rows: list[tuple[float, float | None]], added_c: float) -> CupTest:
        return cup_of(rows, 241.0, (added_c, 0.03), (25.0, 25.0), 0.05, WATER_J_G_K, STEEL_TUBE)

    right, other = cup(trace, 21.0), cup(wrong, 0.6 + 1.01 * 21.0)
    assert other.heat_capacity_j_k == pytest.approx(right.heat_capacity_j_k, abs=1e-6)


@pytest.mark.parametrize(
    ("until_s", "added_c", "words"),
    [(300.0, 21.0, "after pouring"), (480.0, 40.0, "warmer than what is added"), (200.0, 21.0, "before pouring")],
)
def test_a_cup_test_that_cannot_be_used_says_why(until_s: float, added_c: float, words: str) -> None:
    trace = cup_trace(water_cup(44.0, 5.0, 0.1), 1, 25.0, until_s)
    with pytest.raises(CupRefused, match=words):
        cup_of(trace, 241.0, (added_c, 0.03), (25.0, 25.0), 0.05, WATER_J_G_K, STEEL_TUBE)


def test_a_cup_that_still_warms_through_gives_no_figure() -> None:
    """Its curve just before pouring is the wall's, not that of a cup that cools: the result would be far too low."""
    cold_wall = replace(water_cup(45.0, 20.0, 0.1), wall_warming_s=40.0)
    trace = [(t + 130.0, c) for t, c in cup_trace(cold_wall, 2, 25.0, 110.0)]
    settled = [row for row in cup_trace(cold_wall, 2, 25.0) if row[0] > 241.0]
    with pytest.raises(CupRefused, match="smoothly"):
        cup_of([*trace, *settled], 241.0, (21.0, 0.03), (25.0, 25.0), 0.05, WATER_J_G_K, STEEL_TUBE)


def test_rest_is_told_from_drift_scatter_and_too_short_a_time() -> None:
    rest: list[tuple[float, float | None]] = [(float(k), 0.25 + 0.0625 * (k % 3 == 0)) for k in range(60)]
    at_rest = steadiness(rest, 0.0, 60.0)
    assert at_rest.steady
    assert at_rest.temperature_c == pytest.approx(0.2708, abs=0.003)
    assert at_rest.u_c is not None
    assert 0.018 < at_rest.u_c < 0.025
    assert steadiness(rest, 40.0, 60.0).reason == "too_short"
    assert steadiness(rest, 0.0, 70.0).reason == "no_reading"
    assert steadiness([(t, 20.0 - 0.01 * t) for t, _ in rest], 0.0, 60.0).reason == "moving"
    jumping = [(t, 99.5 + (0.4 if k % 2 else -0.4)) for k, (t, _) in enumerate(rest)]
    assert steadiness(jumping, 0.0, 60.0).reason == "scattering"
    assert steadiness([], 0.0, 1.0).reason == "no_reading"


@settings(max_examples=40)
@given(st.floats(-5.0, 110.0), st.integers(0, 10_000))
def test_what_is_said_to_be_at_rest_is_near_the_truth(true_c: float, seed: int) -> None:
    draw = Random(seed)
    rows: list[tuple[float, float | None]] = [
        (float(k), round((true_c + draw.gauss(0.0, 0.02)) * 16) / 16) for k in range(int(HOLD_S) + 5)
    ]
    found = steadiness(rows, 0.0, HOLD_S + 5.0)
    assert found.temperature_c is not None
    if found.steady:
        assert found.u_c is not None
        assert abs(found.temperature_c - true_c) < 2.5 * found.u_c
