"""The panel's pins: lgpio, the chip behind the header, and whether something else holds a line. Nothing is driven."""

from typing import Any

from station.bench.check.beside import Beside
from station.bench.check.finding import Finding
from station.bench.check.kit import Kit
from station.bench.panel_lgpio import header_chip, load_lgpio
from station.bench.panel_pins import PanelPins, PanelPinsError, PanelUnavailable

CLAIMED = 1  # "kernel" in lgpio's line flags: somebody holds the line


def pins(kit: Kit, beside: Beside) -> Finding:
    """Return whether the panel that the settings ask for can be driven."""
    if kit.panel is None:
        return Finding("pins", "unknown", "the settings cannot be read, so the panel is not known")
    if kit.panel == "none":
        text = 'no panel is wanted (panel.pins = "none"): everything is done on the page'
        return Finding("pins", "green", text, values={"kind": "none"})
    try:
        wired = PanelPins(**kit.pins)
    except PanelPinsError as error:
        return Finding("pins", "red", str(error), "correct it below [panel] in station.toml", {"kind": kit.panel})
    if kit.panel == "mock":
        remedy = 'for a lesson, set pins = "real" or "none" below [panel] in station.toml'
        return Finding("pins", "amber", "the settings choose mock pins: no lamp will light", remedy, {"kind": "mock"})
    return _real(kit, wired, beside)


def _real(kit: Kit, wired: PanelPins, beside: Beside) -> Finding:
    values: dict[str, Any] = {"kind": "real", "factory": "lgpio"}
    try:
        lgpio = load_lgpio()
        chip = header_chip(lgpio, kit.at("dev"))
    except PanelUnavailable as error:
        return Finding("pins", "red", error.reason, error.remedy, values)
    values["chip"] = chip
    holders = _holders(lgpio, chip, wired)
    if holders and not beside.at_work:
        names = ", ".join(f"GPIO{number} by {name}" for number, name in holders.items())
        remedy = "end that program, or take the overlay that uses the pin out of config.txt"
        return Finding("pins", "red", f"pins of the panel are held: {names}", remedy, {**values, "held": holders})
    held = "; the station at work holds the pins" if holders else ""
    return Finding("pins", "green", f"lgpio, header on gpiochip{chip}{held}", values=values)


def _holders(lgpio: Any, chip: int, wired: PanelPins) -> dict[int, str]:
    handle = lgpio.gpiochip_open(chip)
    try:
        lines = {number: lgpio.gpio_get_line_info(handle, number) for number in wired.all}
    finally:
        lgpio.gpiochip_close(handle)
    return {number: str(info[4] or "?") for number, info in lines.items() if info[2] & CLAIMED}
