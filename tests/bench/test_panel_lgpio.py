"""The real pins: each way they can be missing has its own reason and remedy.

No Raspberry Pi was at hand, so chips are imitated by a module with lgpio's own names; where lgpio itself is
installed, it is the real one that must refuse this machine.
"""

import importlib.util
import os
import subprocess
import sys
from pathlib import Path
from types import ModuleType, SimpleNamespace
from typing import Any

import pytest

from station.bench import panel_off
from station.bench.panel.lgpio_pins import OUTPUTS_NOTE, drive_low, header_chip, load_lgpio
from station.bench.panel.panel import open_panel
from station.bench.panel.pins import PanelPins, PanelUnavailable


class RefusedError(Exception):
    """Stands for lgpio.error, which is no OSError."""


class Chips:
    """lgpio's view of /dev: number to label, None where the chip may not be opened."""

    error = RefusedError

    def __init__(self, labels: dict[int, str | None]) -> None:
        self.labels = labels
        self.open: set[int] = set()
        self.claimed: list[tuple[int, int, int]] = []

    def gpiochip_open(self, number: int) -> int:
        if self.labels[number] is None:
            raise RefusedError("can not open gpiochip")
        self.open.add(number)
        return number

    def gpiochip_close(self, handle: int) -> None:
        self.open.remove(handle)

    def gpio_get_chip_info(self, handle: int) -> list[Any]:
        return [0, 54, f"gpiochip{handle}", self.labels[handle]]

    def gpio_claim_output(self, handle: int, gpio: int, level: int) -> None:
        assert handle in self.open
        self.claimed.append((handle, gpio, level))


def dev(folder: Path, numbers: dict[int, Any]) -> Path:
    for number in numbers:
        (folder / f"gpiochip{number}").touch()
    (folder / "gpiomem").touch()
    return folder


@pytest.mark.fault("chip-number")
@pytest.mark.parametrize(
    ("labels", "number"),
    [
        ({0: "pinctrl-bcm2835", 1: "raspberrypi-exp-gpio"}, 0),
        ({0: "pinctrl-bcm2711", 1: "raspberrypi-exp-gpio"}, 0),
        ({0: "gpio-brcmstb@107d508500", 1: "gpio-brcmstb@107d508520", 4: "pinctrl-rp1"}, 4),  # Pi 5, old kernel
        ({0: "pinctrl-rp1", 10: "gpio-brcmstb@107d508500", 11: None}, 0),  # Pi 5 since kernel 6.6.45
    ],
)
def test_the_header_is_found_by_its_label(tmp_path: Path, labels: dict[int, str | None], number: int) -> None:
    chips = Chips(labels)
    assert header_chip(chips, dev(tmp_path, labels)) == number
    assert not chips.open


@pytest.mark.parametrize(
    ("labels", "reason", "remedy"),
    [
        ({}, "this machine has no GPIO pins", 'panel.pins = "none"'),
        ({0: None, 1: None}, "may not be opened by this user", 'group "gpio"'),
        ({0: "gpio-mockup-A"}, r"no GPIO chip is a Raspberry Pi header \(0: gpio-mockup-A\)", "supported"),
    ],
)
def test_no_header_says_why(tmp_path: Path, labels: dict[int, str | None], reason: str, remedy: str) -> None:
    with pytest.raises(PanelUnavailable, match=reason) as caught:
        header_chip(Chips(labels), dev(tmp_path, labels))
    assert remedy in caught.value.remedy
    assert str(caught.value) == f"the panel cannot be used: {caught.value.reason}; {caught.value.remedy}"


@pytest.mark.fault("no-lgpio")
def test_a_missing_lgpio_is_named(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(sys.modules, "lgpio", None)
    with pytest.raises(PanelUnavailable, match=r"lgpio is not installed.*python3-lgpio.*system-site-packages"):
        open_panel("real", PanelPins(), lambda: None)


@pytest.mark.fault("no-lgpio")
def test_an_empty_lgpio_is_named(monkeypatch: pytest.MonkeyPatch) -> None:
    """Release 0.0.0.2 is an empty module that an installer may choose where no wheel fits."""
    monkeypatch.setitem(sys.modules, "lgpio", ModuleType("lgpio"))
    with pytest.raises(PanelUnavailable, match=r"empty \(release 0.0.0.2\)"):
        open_panel("real", PanelPins(), lambda: None)


@pytest.mark.fault("lgpio-folder")
def test_lgpio_gets_a_folder_to_write_in(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    monkeypatch.setitem(sys.modules, "lgpio", Chips({}))
    monkeypatch.delenv("LG_WD", raising=False)
    monkeypatch.setenv("RUNTIME_DIRECTORY", str(tmp_path))
    load_lgpio()
    assert os.environ["LG_WD"] == str(tmp_path)
    monkeypatch.delenv("LG_WD")


HAS_LGPIO = importlib.util.find_spec("lgpio") is not None
HAS_CHIPS = any(Path("/dev").glob("gpiochip*"))


@pytest.mark.skipif(not HAS_LGPIO, reason="lgpio is not installed")
class TestRealLgpio:
    def run(self, code: str, folder: Path, **env: str) -> str:
        """Run in a process of its own: lgpio starts a thread and moves the working directory when imported."""
        env = {"PYTHONPATH": str(Path.cwd()), **env}
        done = subprocess.run(
            [sys.executable, "-W", "error", "-c", code],
            cwd=folder,
            env=env,
            capture_output=True,
            text=True,
            check=False,
        )
        assert done.returncode == 0, done.stderr
        return done.stdout

    OPEN = (
        "from station.bench.panel.panel import *\n"
        "try: open_panel('real', PanelPins(), print)\n"
        "except PanelUnavailable as error: print(error)\n"
        "import os; print(os.getcwd())"
    )

    @pytest.mark.skipif(HAS_CHIPS, reason="this machine has GPIO chips, and its pins are not ours to drive")
    def test_refuses_a_machine_without_pins_and_stays_in_its_folder(self, tmp_path: Path) -> None:
        away = tmp_path / "away"
        away.mkdir()
        out = self.run(self.OPEN, tmp_path, LG_WD=str(away)).splitlines()
        assert out == [
            "the panel cannot be used: this machine has no GPIO pins; run the station on a Raspberry Pi, "
            'or set panel.pins = "none" to work from the page alone',
            str(tmp_path),
        ]

    @pytest.mark.skipif(HAS_CHIPS, reason="this machine has GPIO chips, and its pins are not ours to drive")
    def test_names_the_pins_that_cannot_be_claimed_and_has_noted_them(self, tmp_path: Path) -> None:
        found = "import station.bench.panel.lgpio_pins as real\nreal.header_chip = lambda lgpio: 0\n"
        out = self.run(found + self.OPEN, tmp_path, RUNTIME_DIRECTORY=str(tmp_path))
        assert "the pins cannot be claimed" in out
        assert "nothing else uses GPIO17, GPIO27, GPIO22, GPIO23, GPIO24" in out
        assert panel_off.noted_outputs(tmp_path) == PanelPins().outputs

    def test_names_the_folder_that_lgpio_cannot_write_to(self, tmp_path: Path) -> None:
        out = self.run(self.OPEN, tmp_path, LG_WD=str(tmp_path / "missing"))
        assert "lgpio cannot write to" in out
        assert "missing" in out
        assert "set LG_WD to a folder" in out


class TestPanelOff:
    """What the unit runs after the station has gone, killed or not."""

    def test_drives_the_noted_pins_low(self, monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
        chips = Chips({0: "pinctrl-bcm2711"})
        monkeypatch.setattr("station.bench.panel.lgpio_pins.load_lgpio", lambda: chips)
        monkeypatch.setattr("station.bench.panel.lgpio_pins.header_chip", lambda lgpio: 0)
        monkeypatch.setenv("RUNTIME_DIRECTORY", str(tmp_path))
        (tmp_path / OUTPUTS_NOTE).write_text(" ".join(map(str, PanelPins().outputs)))
        assert panel_off.main() == 0
        assert chips.claimed == [(0, number, 0) for number in PanelPins().outputs]
        assert not chips.open

    @pytest.mark.parametrize("note", [None, "", "spilt tea"])
    def test_touches_nothing_without_a_note(
        self, monkeypatch: pytest.MonkeyPatch, tmp_path: Path, note: str | None
    ) -> None:
        def fail(outputs: tuple[int, ...]) -> None:
            raise AssertionError(outputs)

        monkeypatch.setattr(panel_off, "drive_low", fail)
        monkeypatch.setenv("RUNTIME_DIRECTORY", str(tmp_path))
        if note is not None:
            (tmp_path / OUTPUTS_NOTE).write_text(note)
        assert panel_off.main() == 0

    def test_says_why_it_cannot(
        self, monkeypatch: pytest.MonkeyPatch, tmp_path: Path, capsys: pytest.CaptureFixture[str]
    ) -> None:
        monkeypatch.setitem(sys.modules, "lgpio", None)
        monkeypatch.setenv("LG_WD", str(tmp_path))
        monkeypatch.setenv("RUNTIME_DIRECTORY", str(tmp_path))
        (tmp_path / OUTPUTS_NOTE).write_text("17")
        assert panel_off.main() == 1
        assert "lgpio is not installed" in capsys.readouterr().err

    def test_the_chip_is_closed_when_a_pin_is_refused(self, monkeypatch: pytest.MonkeyPatch) -> None:
        chips = Chips({0: "pinctrl-bcm2711"})
        chips.gpio_claim_output = SimpleNamespace(__call__=None)  # type: ignore[method-assign,assignment]
        monkeypatch.setattr("station.bench.panel.lgpio_pins.load_lgpio", lambda: chips)
        monkeypatch.setattr("station.bench.panel.lgpio_pins.header_chip", lambda lgpio: 0)
        with pytest.raises(TypeError):
            drive_low((17,))
        assert not chips.open
