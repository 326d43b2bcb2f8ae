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

from station.bench.panel_pins import GpioHands, PanelPins, PanelUnavailable

HEADER_LABELS = ("pinctrl-rp1", "pinctrl-bcm2711", "pinctrl-bcm2835")
"""Labels that the kernel's drivers give the chip behind the 40-pin header: Pi 5, Pi 4, and the Pis before them.
The chip's number is no guide: on a Pi 5 it moved from 4 to 0 with kernel 6.6.45 (gpiozero issue 1166)."""

_INSTALL = (
    'install "python3-lgpio" from Raspberry Pi OS and make the environment with --system-site-packages, '
    'or set panel.pins = "none" to work from the page alone'
)


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
        raise PanelUnavailable(f"Python's lgpio is not installed ({error})", _INSTALL) from error
    except OSError as error:
        remedy = "set LG_WD to a folder that the station may write to"
        raise PanelUnavailable(f"lgpio cannot write to {os.environ['LG_WD']} ({error})", remedy) from error
    finally:
        os.chdir(before)
    if not hasattr(lgpio, "gpiochip_open"):
        raise PanelUnavailable("the lgpio that is installed is empty (release 0.0.0.2)", _INSTALL)
    return lgpio


def header_chip(lgpio: Any, dev: Path = Path("/dev")) -> int:
    """Return the number of the GPIO chip behind the 40-pin header, found by its label.

    Raises:
        PanelUnavailable: there is no such chip, or it may not be opened.
    """
    numbers = sorted(int(m[1]) for p in dev.glob("gpiochip*") if (m := re.fullmatch(r"gpiochip(\d+)", p.name)))
    if not numbers:
        remedy = 'run the station on a Raspberry Pi, or set panel.pins = "none" to work from the page alone'
        raise PanelUnavailable("this machine has no GPIO pins", remedy)
    labels = {number: _label(lgpio, number) for number in numbers}
    for number, label in labels.items():
        if label in HEADER_LABELS:
            return number
    if None in labels.values():
        remedy = 'add the station\'s user to the group "gpio" and start it again'
        raise PanelUnavailable("the GPIO chips may not be opened by this user", remedy)
    found = ", ".join(f"{number}: {label}" for number, label in labels.items())
    raise PanelUnavailable(f"no GPIO chip is a Raspberry Pi header ({found})", "use a supported Raspberry Pi")


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
        remedy = f"check that nothing else uses {numbers} (an overlay in config.txt, another program)"
        raise PanelUnavailable(f"the pins cannot be claimed ({error})", remedy) from error


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
