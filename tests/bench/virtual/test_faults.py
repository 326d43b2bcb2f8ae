"""Fault scripts: what is written is what happens."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from station.bench.virtual.faults import SPOILS_ONE_READ, Fault, FaultScript, FaultScriptError


def test_a_fault_lasts_from_its_second_on_for_its_duration() -> None:
    script = FaultScript.parse("power_on@30+5, gone@120+20,stale@200+2.5")
    at = {time_s: script.at(time_s) for time_s in (29.9, 30.0, 34.9, 35.0, 120.0, 139.9, 140.0, 202.4, 202.5)}
    assert at == {
        29.9: None,
        30.0: Fault.POWER_ON,
        34.9: Fault.POWER_ON,
        35.0: None,
        120.0: Fault.GONE,
        139.9: Fault.GONE,
        140.0: None,
        202.4: Fault.STALE,
        202.5: None,
    }


@pytest.mark.parametrize("fault", Fault)
def test_every_fault_can_be_written(fault: Fault) -> None:
    assert FaultScript.parse(f" {fault} @ 1 + 1 ").at(1.5) is fault


def test_no_script_no_faults() -> None:
    assert FaultScript.parse("").at(10.0) is None
    assert FaultScript().at(10.0) is None


def test_random_faults_strike_as_often_as_they_should() -> None:
    """1,000 draws at 30 %: 300 ± 4.5 standard deviations (14.5) of the binomial."""
    script = FaultScript.parse("random 30 %", seed=3)
    struck = [script.at(float(time_s)) for time_s in range(1000)]
    assert 235 < sum(fault is not None for fault in struck) < 365
    assert {fault for fault in struck if fault} == set(SPOILS_ONE_READ)


def test_random_faults_keep_to_their_window() -> None:
    script = FaultScript.parse("random 100 %@10+5")
    assert [script.at(time_s) is not None for time_s in (9.0, 10.0, 14.0, 15.0)] == [False, True, True, False]


@given(st.floats(0.0, 1e5), st.integers(0, 1000))
def test_the_same_seed_and_moment_give_the_same_fault(time_s: float, seed: int) -> None:
    script = FaultScript.parse("random 50 %", seed)
    assert script.at(time_s) is FaultScript.parse("random 50%", seed).at(time_s)


@pytest.mark.parametrize(
    "text", ["boom@1+1", "gone", "gone@1", "gone@-1+2", "random", "random 120 %", "gone@1+1; crc@2+1", "random 5"]
)
def test_a_script_that_is_not_understood_says_how_to_write_it(text: str) -> None:
    with pytest.raises(FaultScriptError, match="In the fault script"):
        FaultScript.parse(text)
