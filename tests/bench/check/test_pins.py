"""The panel's pins are looked at and never driven.

No Raspberry Pi was at hand: chips are imitated by a module with lgpio's own names. Where lgpio is installed, the
command is run with the real one as well (tests/command/test_check.py).
"""

import sys
from pathlib import Path

import pytest

from station.bench.check import pins as module
from station.bench.check.finding import Beside
from station.bench.check.pins import pins
from tests.bench.check.machine import Machine
from tests.bench.test_panel_lgpio import Chips, dev

ALONE = Beside()


class Header(Chips):
    """A chip whose lines may be held by somebody (lgpio: bit 0 of the flags, and the name)."""

    def __init__(self, labels: dict[int, str | None], held: dict[int, str] | None = None) -> None:
        super().__init__(labels)
        self.held = held or {}

    def gpio_get_line_info(self, handle: int, gpio: int) -> list[object]:
        assert handle in self.open
        return [0, gpio, 1 if gpio in self.held else 0, f"GPIO{gpio}", self.held.get(gpio, "")]


def with_chips(machine: Machine, monkeypatch: pytest.MonkeyPatch, chips: Header) -> Header:
    (machine.root / "dev").mkdir(parents=True)
    dev(machine.root / "dev", chips.labels)
    monkeypatch.setattr(module, "load_lgpio", lambda: chips)
    return chips


def test_no_panel_is_green_with_words(machine: Machine) -> None:
    found = pins(machine.kit(panel="none"), ALONE)
    assert (found.colour, found.remedy) == ("green", "")
    assert "on the page" in found.text


def test_mock_pins_are_not_for_a_lesson(machine: Machine) -> None:
    assert pins(machine.kit(panel="mock"), ALONE).colour == "amber"


def test_an_unknown_panel_is_unknown(machine: Machine) -> None:
    assert pins(machine.kit(panel=None), ALONE).colour == "unknown"


@pytest.mark.parametrize("panel", ["mock", "real"])
def test_pins_that_cannot_be_wired_so_are_red(machine: Machine, panel: str) -> None:
    found = pins(machine.kit(panel=panel, pins={"act_gpio": 4}), ALONE)
    assert found.colour == "red"
    assert "GPIO4 is taken by the temperature probe" in found.text


def test_a_header_that_may_be_opened_is_green_and_left_as_it_was(
    machine: Machine, monkeypatch: pytest.MonkeyPatch
) -> None:
    chips = with_chips(machine, monkeypatch, Header({0: "pinctrl-bcm2711", 1: "raspberrypi-exp-gpio"}))
    found = pins(machine.kit(panel="real"), ALONE)
    assert (found.colour, found.values["chip"], found.values["factory"]) == ("green", 0, "lgpio")
    assert (chips.open, chips.claimed) == (set(), [])


@pytest.mark.parametrize(
    ("labels", "text", "remedy"),
    [
        ({0: None}, "may not be opened by this user", 'group "gpio"'),
        ({0: "gpio-mockup-A"}, "no GPIO chip is a Raspberry Pi header", "supported"),
        ({}, "this machine has no GPIO pins", 'panel.pins = "none"'),
    ],
)
def test_what_keeps_the_pins_from_us_is_red(
    machine: Machine, monkeypatch: pytest.MonkeyPatch, labels: dict[int, str | None], text: str, remedy: str
) -> None:
    with_chips(machine, monkeypatch, Header(labels))
    found = pins(machine.kit(panel="real"), ALONE)
    assert found.colour == "red"
    assert text in found.text
    assert remedy in found.remedy


def test_a_pin_that_another_program_holds_is_red(machine: Machine, monkeypatch: pytest.MonkeyPatch) -> None:
    with_chips(machine, monkeypatch, Header({0: "pinctrl-rp1"}, {22: "spi0 CS1", 5: "not ours"}))
    found = pins(machine.kit(panel="real"), ALONE)
    assert (found.colour, found.values["held"]) == ("red", {22: "spi0 CS1"})
    assert "GPIO22 by spi0 CS1" in found.text


def test_a_station_at_work_holds_them_by_right(machine: Machine, monkeypatch: pytest.MonkeyPatch) -> None:
    with_chips(machine, monkeypatch, Header({0: "pinctrl-rp1"}, {17: "lg", 27: "lg"}))
    found = pins(machine.kit(panel="real"), Beside(record_pid=712))
    assert found.colour == "green"
    assert "the station at work holds the pins" in found.text


def test_without_lgpio_the_remedy_says_where_it_comes_from(
    machine: Machine, monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    monkeypatch.setitem(sys.modules, "lgpio", None)
    monkeypatch.setenv("LG_WD", str(tmp_path))
    found = pins(machine.kit(panel="real"), ALONE)
    assert found.colour == "red"
    assert "python3-lgpio" in found.remedy
