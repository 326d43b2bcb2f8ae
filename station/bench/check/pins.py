"""The panel's pins: lgpio, the chip behind the header, and whether something else holds a line. Nothing is driven."""

from typing import Any

from station.bench.check.finding import Beside, Finding, Kit
from station.bench.panel.lgpio_pins import header_chip, load_lgpio
from station.bench.panel.pins import PanelPins, PanelPinsError, PanelUnavailable
from station.words import join, say

CLAIMED = 1  # "kernel" in lgpio's line flags: somebody holds the line


def pins(kit: Kit, beside: Beside) -> Finding:
    """Return whether the panel that the settings ask for can be driven."""
    if kit.panel is None:
        return Finding("pins", "unknown", say("check-pins-settings"))
    if kit.panel == "none":
        return Finding("pins", "green", say("check-pins-none-wanted"), values={"kind": "none"})
    try:
        wired = PanelPins(**kit.pins)
    except PanelPinsError as error:
        return Finding("pins", "red", str(error), say("check-pins-correct"), {"kind": kit.panel})
    if kit.panel == "mock":
        return Finding("pins", "amber", say("check-pins-mock"), say("check-pins-set"), {"kind": "mock"})
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
        held = [say("check-pins-held-by", pin=number, program_name=name) for number, name in holders.items()]
        text = say("check-pins-held", pins=join(held, "list-comma"))
        return Finding("pins", "red", text, say("check-pins-end-program"), {**values, "held": holders})
    text = say("check-pins-good-at-work" if holders else "check-pins-good", chip=chip)
    return Finding("pins", "green", text, values=values)


def _holders(lgpio: Any, chip: int, wired: PanelPins) -> dict[int, str]:
    handle = lgpio.gpiochip_open(chip)
    try:
        lines = {number: lgpio.gpio_get_line_info(handle, number) for number in wired.all}
    finally:
        lgpio.gpiochip_close(handle)
    return {number: str(info[4] or "?") for number, info in lines.items() if info[2] & CLAIMED}
