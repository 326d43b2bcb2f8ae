"""The written tree as the real reading library sees it."""

import tempfile
import threading
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from w1thermsensor import NoSensorFoundError, ResetValueError, Sensor, SensorNotReadyError, W1ThermSensor

from station.bench.virtual.tree import OneWireTree
from tests.conftest import PATIENCE_S

PROBE = "28-00000b5eca01"


@pytest.fixture
def tree(tmp_path: Path) -> OneWireTree:
    return OneWireTree(tmp_path / "devices", PROBE)


def open_probe(reader: type[W1ThermSensor]) -> W1ThermSensor:
    return reader(Sensor.DS18B20, PROBE[3:])


@settings(max_examples=60)
@given(st.integers(-880, 2000).filter(lambda raw: raw != 0x0550))
def test_the_library_reads_every_step(raw: int) -> None:
    with tempfile.TemporaryDirectory() as folder:
        base = Path(folder) / "devices"
        OneWireTree(base, PROBE).write(raw / 16)
        reader = type("Reader", (W1ThermSensor,), {"BASE_DIRECTORY": base})
        assert open_probe(reader).get_temperature() == raw / 16


@pytest.mark.parametrize("bits", [9, 10, 11, 12])
def test_the_library_reads_the_resolution(tmp_path: Path, reader: type[W1ThermSensor], bits: int) -> None:
    tree = OneWireTree(tmp_path / "devices", PROBE, bits)
    tree.write(21.4)
    assert open_probe(reader).get_resolution() == bits
    assert (tree.probe_folder / "resolution").read_text() == f"{bits}\n"


def test_the_files_beside_w1_slave_are_those_of_a_probe_on_three_wires(tree: OneWireTree) -> None:
    """Names and forms: Linux, Documentation/ABI/testing/sysfs-driver-w1_therm."""
    tree.write(-0.0625)
    texts = {file.name: file.read_text() for file in tree.probe_folder.iterdir() if file.name != "w1_slave"}
    assert texts == {
        "name": f"{PROBE}\n",
        "resolution": "12\n",
        "ext_power": "1\n",
        "conv_time": "750\n",
        "features": "0\n",
        "temperature": "-62\n",
    }


@pytest.mark.parametrize("fault", ["empty", "zeros", "bus_high"])
def test_faults_that_the_library_calls_not_ready(tree: OneWireTree, reader: type[W1ThermSensor], fault: str) -> None:
    getattr(tree, fault)()
    with pytest.raises(SensorNotReadyError):
        open_probe(reader).get_temperature()


def test_a_crc_error_says_no_and_keeps_the_last_good_bytes(tree: OneWireTree, reader: type[W1ThermSensor]) -> None:
    tree.write(21.0)
    tree.crc_error(22.0)
    first, second = tree.w1_slave.read_text().splitlines()
    assert first.endswith(" NO")
    assert second.startswith("50 01 4b 46 7f ff 10 10 49 ")
    with pytest.raises(SensorNotReadyError):
        open_probe(reader).get_temperature()


def test_the_power_on_value(tree: OneWireTree, reader: type[W1ThermSensor]) -> None:
    tree.power_on()
    assert tree.w1_slave.read_text().startswith("50 05 4b 46 7f ff 0c 10 1c : crc=1c YES\n")
    with pytest.raises(ResetValueError):
        open_probe(reader).get_temperature()


def test_faults_that_the_library_takes_for_good(tree: OneWireTree, reader: type[W1ThermSensor]) -> None:
    tree.low_power()
    assert open_probe(reader).get_temperature() == 127.9375
    tree.wire_fault()
    assert open_probe(reader).get_temperature() == -109.9375


def test_faults_that_the_library_trips_over(tree: OneWireTree, reader: type[W1ThermSensor]) -> None:
    tree.one_line(21.0)
    with pytest.raises(IndexError):
        open_probe(reader).get_temperature()
    tree.garbled()
    with pytest.raises(ValueError, match="invalid literal"):
        open_probe(reader).get_temperature()


def test_a_lost_conversion_gives_the_one_before_again(tree: OneWireTree, reader: type[W1ThermSensor]) -> None:
    tree.stale()
    with pytest.raises(ResetValueError):
        open_probe(reader).get_temperature()
    tree.write(21.5)
    before = tree.w1_slave.read_text()
    for spoil in (tree.zeros, tree.power_on, tree.bus_high):
        spoil()
        tree.stale()
        assert tree.w1_slave.read_text() == before


def test_a_probe_and_a_bus_go_and_come_back(tree: OneWireTree, reader: type[W1ThermSensor]) -> None:
    ghost = tree.folder / "00-400000000000"
    ghost.mkdir()
    for leave in (tree.gone, tree.bus_gone, tree.bus_gone, tree.gone):
        leave()
        with pytest.raises(NoSensorFoundError):
            open_probe(reader)
        tree.write(21.0)
        assert open_probe(reader).get_temperature() == 21.0
        assert ghost.exists()


def test_the_bus_is_really_gone(tree: OneWireTree) -> None:
    tree.bus_gone()
    assert not tree.folder.exists()


def test_a_write_lets_a_hanging_read_go(tree: OneWireTree) -> None:
    tree.hang()
    tree.hang()
    texts: list[str] = []
    hanging = threading.Thread(target=lambda: texts.append(tree.w1_slave.read_text()))
    hanging.start()
    tree.write(21.0)
    hanging.join(timeout=PATIENCE_S)
    # started before or after the write: it gets an empty answer or the new one, and never waits on
    assert texts[0] in {"", tree.w1_slave.read_text()}
    tree.release()


@pytest.mark.parametrize("probe_id", ["10-000802b4ba0e", "28-XYZ", "28-00000b5eca0", "../28-00000b5eca01"])
def test_a_wrong_probe_id_is_refused(tmp_path: Path, probe_id: str) -> None:
    with pytest.raises(ValueError, match="hexadecimal"):
        OneWireTree(tmp_path, probe_id)


def test_a_wrong_resolution_is_refused(tmp_path: Path) -> None:
    with pytest.raises(ValueError, match="9 to 12"):
        OneWireTree(tmp_path, PROBE, bits=8)
