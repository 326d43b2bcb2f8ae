"""The virtual probe and cup are checked as real ones are: the hands do what staff say, the station finds the truth."""

from pathlib import Path

import pytest

from station.bench.virtual.cup import CupParameters
from station.bench.virtual.driver import VirtualDriver, follow_check
from station.practical import events as e
from station.practical.procedure import advance
from station.practical.staff import StaffAct
from tests.practical.walk import Walk

P = CupParameters(loss_w_k=0.09, room_temperature_c=21.0, room_drift_c_h=0.0, alkali_temperature_c=21.3)


class VirtualChecking(Walk):
    """The procedure, with the virtual cup's own hands and readings."""

    def __init__(self, folder: Path) -> None:
        super().__init__()
        self.driver = VirtualDriver(folder, P, seed=4)
        self.told([e.StationStarted("0", "virtual", "28-00000b5eca01", "none")])

    def told(self, events: list[e.Event]) -> None:
        for event in self.keep(events):
            follow_check(self.driver, self.state.probes.check, event, self.time_s, P.room_temperature_c)

    def staff(self, act: str, **values: object) -> None:
        made = StaffAct.model_validate({"act": act, **values})
        self.told(list(advance(self.state, made, self.time_s)))

    def until(self, step_or_found: str) -> None:
        """Sample until a step of this name was taken, or something was found."""
        for _ in range(600):
            self.time_s += 1.0
            self.driver.prepare(self.time_s)
            taken = e.SampleTaken(self.driver.world.reading_c())
            events = list(advance(self.state, taken, self.time_s))
            self.told(events)
            if any(getattr(each, "step", each.kind) == step_or_found for each in events):
                return
        pytest.fail(f"no {step_or_found}")

    def wait(self, seconds: int) -> None:
        for _ in range(seconds):
            self.time_s += 1.0
            self.driver.prepare(self.time_s)
            self.told(list(advance(self.state, e.SampleTaken(self.driver.world.reading_c()), self.time_s)))


@pytest.fixture
def bench(tmp_path: Path) -> VirtualChecking:
    return VirtualChecking(tmp_path)


def test_a_cup_test_gives_the_virtual_cups_own_figures(bench: VirtualChecking) -> None:
    bench.staff("check_begin", check="cup", values={"label": "virtual"})
    bench.staff("check_step", step="in_added")
    bench.until("added_measured")
    bench.staff("check_step", step="filled")
    bench.wait(185)
    bench.staff("check_step", step="poured")
    bench.wait(185)
    grams = 25.0 * 4.115 / 4.179  # so much water has the heat capacity of the virtual liquids
    bench.staff("check_step", step="weighed", values={"warm_g": grams, "added_g": grams})
    bench.staff("check_save")
    found = bench.state.probes.cups[0].values
    true_j_k = P.cup_heat_capacity_j_k + P.wall_heat_capacity_j_k + P.probe_heat_capacity_j_k
    assert abs(found["heat_capacity_j_k"] - true_j_k) < 2.0 * found["u_heat_capacity_j_k"] < 5.0
    assert abs(found["loss_w_k"] - P.loss_w_k) < 2.5 * found["u_loss_w_k"]


def test_a_dip_and_a_boiling_point_of_the_virtual_probe(bench: VirtualChecking) -> None:
    bench.staff("check_begin", check="dip")
    bench.staff("check_step", step="hung")
    bench.until("probe_check_found")
    bench.staff("check_save")
    dip = bench.state.probes.checks[0].values
    assert abs(dip["fast_s"] - P.probe_fast_s) < 3.0 * dip["u_fast_s"] + 0.3
    assert abs(dip["slow_s"] - P.probe_slow_s) < 3.0 * dip["u_slow_s"] + 0.5
    bench.staff("check_begin", check="boiling", values={"pressure_kpa": 95.0})
    bench.staff("check_step", step="in")
    bench.until("probe_check_found")
    bench.staff("check_save")
    assert abs(bench.state.probes.checks[1].values["correction_c"]) < 0.08, "it has no offset"
