"""The virtual cup is read by the real reading library, like a probe on a wire."""

import threading
from pathlib import Path

import pytest
from w1thermsensor import NoSensorFoundError, Sensor, SensorNotReadyError, W1ThermSensor

from station.bench.virtual.cup import CupParameters
from station.bench.virtual.driver import VirtualDriver
from station.bench.virtual.faults import Fault, FaultScript
from tests.conftest import PATIENCE_S

Reader = type[W1ThermSensor]


@pytest.fixture
def driver(tmp_path: Path) -> VirtualDriver:
    return VirtualDriver(tmp_path / "devices", CupParameters(probe_noise_c=0.0), seed=1)


def read(reader: Reader, driver: VirtualDriver, time_s: float) -> float:
    driver.prepare(time_s)
    return float(reader(Sensor.DS18B20, driver.tree.probe_id[3:]).get_temperature())


def test_a_read_shows_the_probe_of_that_moment(driver: VirtualDriver, reader: Reader) -> None:
    assert read(reader, driver, 60.0) == driver.world.reading_c()
    assert abs(driver.world.reading_c() - driver.world.probe_temperature_c) <= 0.03125


def test_a_portion_that_was_poured_is_seen_by_the_reader(driver: VirtualDriver, reader: Reader) -> None:
    before_c = read(reader, driver, 60.0)
    driver.pour(60.0, 4.0)
    assert read(reader, driver, 100.0) > before_c + 0.5


def test_the_hands_reach_the_world_at_their_time(driver: VirtualDriver) -> None:
    driver.pour(10.0, 4.0, duration_s=2.0)
    driver.spill(20.0, 9.0)
    assert driver.world.time_s == pytest.approx(20.0)
    assert driver.world.volume_cm3 == pytest.approx(20.0)
    driver.refill(30.0, 24.5)
    assert (driver.world.volume_cm3, driver.world.time_s) == pytest.approx((24.5, 30.0))


def test_a_time_already_past_changes_nothing(driver: VirtualDriver) -> None:
    driver.prepare(50.0)
    driver.prepare(40.0)
    assert driver.world.time_s == pytest.approx(50.0)


def test_the_dipped_probe_reads_the_alkali(tmp_path: Path, reader: Reader) -> None:
    driver = VirtualDriver(tmp_path / "devices", CupParameters(alkali_temperature_c=18.0, probe_noise_c=0.0))
    driver.dip_in_alkali(0.0)
    assert read(reader, driver, 120.0) == 18.0
    driver.back_in_cup(120.0)
    assert read(reader, driver, 240.0) > 20.5


@pytest.mark.parametrize("fault", [Fault.EMPTY, Fault.CRC, Fault.ZEROS])
def test_a_scripted_fault_comes_and_goes(tmp_path: Path, reader: Reader, fault: Fault) -> None:
    script = FaultScript.parse(f"{fault}@5+2")
    driver = VirtualDriver(tmp_path / "devices", CupParameters(), faults=script)
    assert read(reader, driver, 4.0) > 20.0
    for time_s in (5.0, 6.0):
        with pytest.raises(SensorNotReadyError):
            read(reader, driver, time_s)
    assert read(reader, driver, 7.0) > 20.0


def test_a_probe_that_is_gone_comes_back(tmp_path: Path, reader: Reader) -> None:
    driver = VirtualDriver(tmp_path / "devices", CupParameters(), faults=FaultScript.parse("gone@5+2,bus_gone@8+2"))
    read(reader, driver, 4.0)
    for time_s in (5.0, 8.0):
        with pytest.raises(NoSensorFoundError):
            read(reader, driver, time_s)
        assert read(reader, driver, time_s + 2.0) > 20.0


def test_every_fault_has_its_writer(tmp_path: Path) -> None:
    for fault in Fault:
        script = FaultScript.parse(f"{fault}@1+1")
        with VirtualDriver(tmp_path / fault, CupParameters(), faults=script) as driver:
            driver.prepare(0.0)
            good = driver.tree.w1_slave.read_text()
            driver.prepare(1.0)
            spoilt = driver.tree.w1_slave.read_text() if driver.tree.w1_slave.is_file() else None
            assert (spoilt == good) == (fault is Fault.STALE), fault
            driver.prepare(2.0)
            assert "YES" in driver.tree.w1_slave.read_text(), fault


def test_a_read_that_hangs_is_let_go_when_the_script_says(tmp_path: Path) -> None:
    script = FaultScript.parse("no_answer@1+20")
    driver = VirtualDriver(tmp_path / "devices", CupParameters(), faults=script, speed=1000.0)
    driver.prepare(1.0)
    texts: list[str] = []
    hanging = threading.Thread(target=lambda: texts.append(driver.tree.w1_slave.read_text()))
    hanging.start()
    hanging.join(timeout=PATIENCE_S)
    assert texts == [""]
    driver.close()
    driver.close()


def test_a_read_that_hangs_is_let_go_at_the_end(tmp_path: Path) -> None:
    driver = VirtualDriver(tmp_path / "devices", CupParameters(), faults=FaultScript.parse("no_answer@1+9999"))
    driver.prepare(1.0)
    hanging = threading.Thread(target=driver.tree.w1_slave.read_text)
    hanging.start()
    driver.close()
    hanging.join(timeout=PATIENCE_S)
    assert not hanging.is_alive()


def test_a_speed_of_nothing_is_refused(tmp_path: Path) -> None:
    with pytest.raises(ValueError, match="speed"):
        VirtualDriver(tmp_path, CupParameters(), speed=0.0)
