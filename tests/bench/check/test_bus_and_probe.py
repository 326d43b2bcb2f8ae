"""No bus, no probe, too many, ghosts: each has its own words and its own next thing to do."""

from pathlib import Path

import pytest

from station.bench.check.finding import Beside, Kit
from station.bench.check.probe import bus, chosen, probe, probe_findings, probe_guard, probe_power, probe_resolution
from station.bench.virtual.tree import OneWireTree
from tests.bench.check.machine import Machine

PROBE, OTHER = "28-0316a2795fee", "28-00000b5eca01"
TREE = "sys/bus/w1/devices"
LINE = "dtoverlay=w1-gpio"


def devices(machine: Machine, *names: str) -> Kit:
    for name in names:
        (machine.root / TREE / name).mkdir(parents=True)
    return machine.kit()


class TestBus:
    def test_a_bus_master_is_green(self, machine: Machine) -> None:
        found = bus(devices(machine, "w1_bus_master1", PROBE))
        assert (found.colour, found.values["masters"]) == ("green", ["w1_bus_master1"])

    @pytest.mark.fault("no-bus")
    @pytest.mark.parametrize(
        ("read", "unread", "remedy"),
        [
            ("[all]\n", None, "write the line dtoverlay=w1-gpio below [all] in /boot/firmware/config.txt"),
            ("[all]\n#dtoverlay=w1-gpio\n", None, "write the line"),
            ("[all]\n", f"{LINE}\n", "move the line dtoverlay=w1-gpio from /boot/config.txt, which is not read"),
            (f"[all]\n{LINE},gpiopin=4\n", None, "restart the Pi; if that is no help, put the line below [all]"),
            (None, None, 'on another machine set driver = "none"'),
        ],
    )
    def test_no_bus_says_which_line_goes_where(
        self, machine: Machine, read: str | None, unread: str | None, remedy: str
    ) -> None:
        """The file moved with Debian 12; a line in the old place is never read (MichaIng/DietPi issue 5504)."""
        for path, text in (("boot/firmware/config.txt", read), ("boot/config.txt", unread)):
            if text is not None:
                machine.write(path, text)
        found = bus(machine.kit())
        assert found.colour == "red"
        assert remedy in found.remedy

    def test_the_tree_without_a_master_is_red(self, machine: Machine) -> None:
        (machine.root / TREE).mkdir(parents=True)
        found = bus(machine.kit())
        assert (found.colour, found.text.split(" (")[0]) == ("red", "no bus master on the one-wire bus")

    def test_a_tree_of_ones_own_is_named_and_a_missing_one_is_red(self, machine: Machine, tmp_path: Path) -> None:
        OneWireTree(tmp_path / "devices")
        assert bus(machine.kit(tree=tmp_path / "devices")).colour == "green"
        found = bus(machine.kit(tree=tmp_path / "gone"))
        assert found.colour == "red"
        assert "probe.tree" in found.remedy

    def test_without_a_bus_nothing_is_said_of_the_probe(self, machine: Machine) -> None:
        assert [each.name for each in probe_findings(machine.kit(), Beside())] == ["bus"]


class TestProbe:
    def test_the_only_probe_is_taken(self, machine: Machine) -> None:
        kit = devices(machine, "w1_bus_master1", PROBE, "00-400000000000")
        assert (probe(kit).colour, chosen(kit)) == ("green", PROBE)

    def test_two_probes_without_a_choice_are_red_and_both_named(self, machine: Machine) -> None:
        kit = devices(machine, "w1_bus_master1", PROBE, OTHER)
        found = probe(kit)
        assert (found.colour, chosen(kit)) == ("red", None)
        assert PROBE in found.text
        assert OTHER in found.text
        assert "set probe.id in station.toml" in found.remedy

    def test_of_two_probes_the_set_one_is_read(self, machine: Machine) -> None:
        devices(machine, "w1_bus_master1", PROBE, OTHER)
        kit = machine.kit(probe_id=PROBE)
        found = probe(kit)
        assert (found.colour, chosen(kit)) == ("green", PROBE)
        assert f"{OTHER} is not read" in found.text

    @pytest.mark.parametrize(("there", "remedy"), [((OTHER,), f'set id = "{OTHER}"'), ((), "three wires")])
    def test_a_set_probe_that_is_not_there_is_red(self, machine: Machine, there: tuple[str, ...], remedy: str) -> None:
        devices(machine, "w1_bus_master1", *there)
        kit = machine.kit(probe_id=PROBE)
        found = probe(kit)
        assert (found.colour, chosen(kit)) == ("red", None)
        assert PROBE in found.text
        assert remedy in found.remedy

    @pytest.mark.fault("ghost-probes")
    def test_ghosts_mean_a_floating_data_wire(self, machine: Machine) -> None:
        found = probe(devices(machine, "w1_bus_master1", "00-400000000000", "00-c00000000000"))
        assert found.colour == "red"
        assert "4.7 kΩ" in found.remedy

    def test_another_family_is_no_probe(self, machine: Machine) -> None:
        assert probe(devices(machine, "w1_bus_master1", "10-000802824e58")).colour == "red"

    @pytest.mark.parametrize(("driver", "colour"), [("none", "green"), ("virtual", "amber")])
    def test_a_bench_without_a_real_probe_says_so(self, machine: Machine, driver: str, colour: str) -> None:
        (found,) = probe_findings(machine.kit(driver=driver), Beside())
        assert (found.name, found.colour) == ("probe", colour)


@pytest.mark.fault("supply-wire-open")
@pytest.mark.parametrize(("text", "colour"), [("1\n", "green"), ("0\n", "red"), ("-5\n", "unknown"), (None, "unknown")])
def test_the_supply_wire(machine: Machine, text: str | None, colour: str) -> None:
    """The values are those of the kernel's Documentation/ABI/testing/sysfs-driver-w1_therm."""
    kit = devices(machine, PROBE)
    if text is not None:
        machine.write(f"{TREE}/{PROBE}/ext_power", text)
    assert probe_power(kit, PROBE).colour == colour


@pytest.mark.fault("low-resolution")
@pytest.mark.parametrize(
    ("bits", "colour", "step"),
    [(9, "red", "0.5 °C"), (10, "red", "0.25 °C"), (11, "amber", "0.125 °C"), (12, "green", "0.0625 °C")],
)
def test_the_resolution(tmp_path: Path, machine: Machine, bits: int, colour: str, step: str) -> None:
    """Steps: Maxim DS18B20 data sheet, thermometer resolution configuration."""
    tree = OneWireTree(tmp_path / "devices", PROBE, bits)
    found = probe_resolution(machine.kit(tree=tree.folder), PROBE)
    assert (found.colour, found.values["resolution_bits"]) == (colour, bits)
    assert step in found.text
    assert ("echo 12" in found.remedy) is (bits < 12)


@pytest.mark.parametrize("text", [None, "", "-5\n", "0\n", "twelve\n"])
def test_a_resolution_that_is_not_told_is_unknown(machine: Machine, text: str | None) -> None:
    kit = devices(machine, PROBE)
    if text is not None:
        machine.write(f"{TREE}/{PROBE}/resolution", text)
    assert probe_resolution(kit, PROBE).colour == "unknown"


@pytest.mark.fault("kernel-check-off")
@pytest.mark.parametrize(
    ("text", "colour"), [("0\n", "amber"), ("1\n", "green"), ("2\n", "amber"), ("3\n", "green"), (None, "unknown")]
)
def test_the_kernels_own_check_of_a_conversion(machine: Machine, text: str | None, colour: str) -> None:
    """Bits of `features`: sysfs-driver-w1_therm; the unit folder's udev rule sets the first."""
    kit = devices(machine, PROBE)
    if text is not None:
        machine.write(f"{TREE}/{PROBE}/features", text)
    found = probe_guard(kit, PROBE)
    assert found.colour == colour
    assert ("60-station-probe.rules" in found.remedy) is (colour == "amber")
