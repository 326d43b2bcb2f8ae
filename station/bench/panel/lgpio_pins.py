"""The real pins: lgpio, asked for by name, on the chip that carries the header.

gpiozero left to itself tries one driver after another and dies with the last one's unrelated message (gpiozero
issues 1120, 1166). Here every way to fail has its own reason and its own remedy.
"""

import importlib
import os
import re
import tempfile
from pathlib import Path
from typing import Any

from station.bench.panel.pins import GpioHands, PanelPins, PanelUnavailable
from station.words import say

HEADER_LABELS = ("pinctrl-rp1", "pinctrl-bcm2711", "pinctrl-bcm2835")
"""Labels that the kernel's drivers give the chip behind the 40-pin header: Pi 5, Pi 4, and the Pis before them.
The chip's number is no guide: on a Pi 5 it moved from 4 to 0 with kernel 6.6.45 (gpiozero issue 1166)."""


OUTPUTS_NOTE = "panel-outputs"
"""In the unit's runtime folder: the pins that a station drives, for whoever must drive them low after it was killed."""


def load_lgpio() -> Any:
    """Import lgpio and make sure it is the real thing.

    lgpio makes a pipe for its notices in `LG_WD`, and changes the process's working directory to it; without it
    the import fails where the working directory cannot be written (gpiozero issue 1106). So a folder is given, and
    the working directory is put back.

    Raises:
        PanelUnavailable: missing, empty (release 0.0.0.2 is), or without a folder to write in.
    """
    folder = os.environ.get("RUNTIME_DIRECTORY") or tempfile.gettempdir()
    os.environ.setdefault("LG_WD", folder)
    before = Path.cwd()
    try:
        lgpio = importlib.import_module("lgpio")
    except ImportError as error:
        reason = say("panel-lgpio-not-installed", reason=str(error))
        raise PanelUnavailable(reason, say("panel-install-lgpio")) from error
    except OSError as error:
        reason = say("panel-lgpio-cannot-write", path=os.environ["LG_WD"], reason=str(error))
        raise PanelUnavailable(reason, say("panel-set-lg-wd")) from error
    finally:
        os.chdir(before)
    if not hasattr(lgpio, "gpiochip_open"):
        raise PanelUnavailable(say("panel-lgpio-empty"), say("panel-install-lgpio"))
    return lgpio


def header_chip(lgpio: Any, dev: Path = Path("/dev")) -> int:
    """Return the number of the GPIO chip behind the 40-pin header, found by its label.

    Raises:
        PanelUnavailable: there is no such chip, or it may not be opened.
    """
    numbers = sorted(int(m[1]) for p in dev.glob("gpiochip*") if (m := re.fullmatch(r"gpiochip(\d+)", p.name)))
    if not numbers:
        raise PanelUnavailable(say("panel-no-gpio"), say("panel-run-on-pi"))
    labels = {number: _label(lgpio, number) for number in numbers}
    for number, label in labels.items():
        if label in HEADER_LABELS:
            return number
    if None in labels.values():
        raise PanelUnavailable(say("panel-gpio-not-allowed"), say("panel-add-to-group"))
    found = ", ".join(f"{number}: {label}" for number, label in labels.items())
    raise PanelUnavailable(say("panel-no-header", found_text=found), say("panel-use-supported"))


def _label(lgpio: Any, number: int) -> str | None:
    """Read a chip's label; None when it cannot be opened."""
    try:
        handle = lgpio.gpiochip_open(number)
    except lgpio.error:
        return None
    try:
        return str(lgpio.gpio_get_chip_info(handle)[3])
    finally:
        lgpio.gpiochip_close(handle)


def open_real(pins: PanelPins) -> GpioHands:
    """Open the real pins, and note them for `station.bench.panel_off`.

    Raises:
        PanelUnavailable: with the reason and the remedy.
    """
    lgpio = load_lgpio()
    chip = header_chip(lgpio)
    from gpiozero import GPIOZeroError  # noqa: PLC0415 - only where there are pins
    from gpiozero.pins.lgpio import LGPIOFactory  # noqa: PLC0415

    try:
        _note_outputs(pins)
        return GpioHands(LGPIOFactory(chip=chip), pins)
    except (lgpio.error, GPIOZeroError, OSError) as error:
        numbers = ", ".join(f"GPIO{number}" for number in pins.all)
        reason = say("panel-pins-not-claimed", reason=str(error))
        raise PanelUnavailable(reason, say("panel-check-nothing-else", pins_text=numbers)) from error


def _note_outputs(pins: PanelPins) -> None:
    folder = os.environ.get("RUNTIME_DIRECTORY")
    if folder:
        (Path(folder) / OUTPUTS_NOTE).write_text(" ".join(map(str, pins.outputs)))


def drive_low(outputs: tuple[int, ...]) -> None:
    """Drive the given GPIO numbers low and let them go.

    Raises:
        PanelUnavailable: with the reason and the remedy.
    """
    lgpio = load_lgpio()
    handle = lgpio.gpiochip_open(header_chip(lgpio))
    try:
        for number in outputs:
            lgpio.gpio_claim_output(handle, number, 0)
    finally:
        lgpio.gpiochip_close(handle)
