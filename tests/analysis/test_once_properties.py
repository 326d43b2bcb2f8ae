"""What must hold for any cup mixed once: clock, thermometer's zero, direction and unit of heat are conventions."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from station.analysis.heat.inputs import Estimate, Trace
from station.analysis.once.enthalpy import extrapolate
from station.analysis.once.fit import fit_once
from station.analysis.once.inputs import OnceSetup
from tests.analysis.once_cup import MIXED_S, STEP_C, Array, cup_trace, known_setup

CUPS = [
    cup_trace(change, seed=k, release_s=release) for k, (change, release) in enumerate([(5, 2), (-3, 12), (1.2, 4)])
]
FITS = [fit_once(Trace(*cup), MIXED_S, known_setup()) for cup in CUPS]

cups = st.sampled_from(range(len(CUPS)))
shifts_s = st.floats(-1e5, 1e5).map(lambda t: round(t, 1))
shifts_c = st.integers(-200, 200).map(lambda n: n * STEP_C)


def shifted(setup: OnceSetup, shift_c: float) -> OnceSetup:
    assert setup.added_c is not None
    assert setup.room_c is not None
    added, room = setup.added_c, setup.room_c
    return replace(
        setup, added_c=Estimate(added.value + shift_c, added.u), room_c=Estimate(room.value + shift_c, room.u)
    )


@given(cups, shifts_s, shifts_c)
def test_lines_do_not_depend_on_clock_or_zero(cup: int, shift_s: float, shift_c: float) -> None:
    time_s, temperature_c = CUPS[cup]
    plain = extrapolate(time_s, temperature_c, MIXED_S)
    other = extrapolate(time_s + shift_s, temperature_c + shift_c, MIXED_S + shift_s)
    assert other.change_c == pytest.approx(plain.change_c, abs=1e-6)
    assert other.u_change_c == pytest.approx(plain.u_change_c, rel=1e-4)
    assert np.array_equal(other.after.used, plain.after.used)


@given(cups)
def test_cooling_is_warming_upside_down_for_lines(cup: int) -> None:
    time_s, temperature_c = CUPS[cup]
    plain, mirrored = (extrapolate(time_s, sign * temperature_c, MIXED_S) for sign in (1.0, -1.0))
    assert mirrored.change_c == pytest.approx(-plain.change_c, abs=1e-9)
    assert mirrored.interval_95_c == pytest.approx((-plain.interval_95_c[1], -plain.interval_95_c[0]), abs=1e-9)


@settings(max_examples=12, deadline=None)
@given(cups, shifts_s, shifts_c)
def test_heat_does_not_depend_on_clock_or_zero(cup: int, shift_s: float, shift_c: float) -> None:
    time_s, temperature_c = CUPS[cup]
    other = fit_once(
        Trace(time_s + shift_s, temperature_c + shift_c), MIXED_S + shift_s, shifted(known_setup(), shift_c)
    )
    assert other.heat_j == pytest.approx(FITS[cup].heat_j, abs=0.05 * FITS[cup].u_heat_j)
    assert other.u_heat_j == pytest.approx(FITS[cup].u_heat_j, rel=0.05)
    assert other.mixed_at_s - shift_s == pytest.approx(FITS[cup].mixed_at_s, abs=0.1)


@settings(max_examples=6, deadline=None)
@given(cups)
def test_taking_heat_in_is_giving_it_out_upside_down(cup: int) -> None:
    time_s, temperature_c = CUPS[cup]
    setup = known_setup()
    assert setup.added_c is not None
    assert setup.room_c is not None
    upside_down = replace(
        setup,
        added_c=Estimate(-setup.added_c.value, setup.added_c.u),
        room_c=Estimate(-setup.room_c.value, setup.room_c.u),
    )
    other = fit_once(Trace(time_s, -temperature_c), MIXED_S, upside_down)
    assert other.heat_j == pytest.approx(-FITS[cup].heat_j, abs=0.05 * FITS[cup].u_heat_j)
    assert other.u_heat_j == pytest.approx(FITS[cup].u_heat_j, rel=0.05)


@settings(max_examples=8, deadline=None)
@given(cups, st.floats(0.3, 4.0))
def test_heat_is_in_proportion_to_the_heat_capacities(cup: int, factor: float) -> None:
    def times(estimate: Estimate) -> Estimate:
        return Estimate(estimate.value * factor, estimate.u * factor)

    setup = known_setup()
    larger = replace(
        setup,
        contents_j_k=times(setup.contents_j_k),
        added_j_k=times(setup.added_j_k),
        cup_j_k=times(setup.cup_j_k),
    )
    time_s, temperature_c = CUPS[cup]
    other = fit_once(Trace(time_s, temperature_c), MIXED_S, larger)
    # Only what is presumed of the loss in W/K is not in proportion.
    assert other.heat_j == pytest.approx(factor * FITS[cup].heat_j, abs=1.5 * factor * FITS[cup].u_heat_j)


@given(st.integers(0, 2**32 - 1), st.floats(-60.0, 700.0))
def test_any_readings_give_a_finite_change_or_a_refusal(seed: int, mixed_at_s: float) -> None:
    rng = np.random.default_rng(seed)
    time_s: Array = np.cumsum(rng.uniform(0.3, 30.0, int(rng.integers(0, 80))))
    temperature_c = 20.0 + np.cumsum(rng.normal(0.0, rng.choice([0.0, 0.05, 3.0]), len(time_s)))
    try:
        found = extrapolate(time_s, temperature_c, mixed_at_s)
    except ValueError as refusal:
        assert str(refusal).endswith((".", "?"))
    else:
        assert np.isfinite([found.change_c, found.u_change_c, *found.interval_95_c]).all()
        assert found.u_change_c > 0.0
