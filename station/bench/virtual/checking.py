"""Hands that check a virtual probe or cup: what a person at the page says was done is done to it."""

from typing import Final, Protocol

from station.practical import events as e
from station.practical.checks_found import known_point
from station.practical.probes import Check

COLD_C: Final = 3.0
APART_C: Final = 12.0
WATER_CM3: Final = 25.0
WARM_C: Final = 45.0
AT_ONCE_S: Final = 3.0
"""The virtual cup is tested with so much warm water, and with as much of the alkali's temperature."""


class BathHands(Protocol):
    """What hands can do with a probe that is checked."""

    def hold_in(self, time_s: float, temperature_c: float) -> None:
        """Hold the probe in a bath of this temperature."""

    def back_in_cup(self, time_s: float) -> None:
        """Put the probe back into the cup."""

    def dip_in_alkali(self, time_s: float) -> None:
        """Dip the probe into what is to be added."""

    def fill_with_water(self, time_s: float, volume_cm3: float, temperature_c: float) -> None:
        """Fill the cup with water of this temperature."""

    def pour(self, time_s: float, volume_cm3: float, duration_s: float | None = None) -> None:
        """Pour so much into the cup within this time."""


def follow_check(hands: BathHands, check: Check | None, event: e.Event, time_s: float, room_c: float) -> None:
    """Do what this event of a check says; `check` is the one under way after it."""
    if isinstance(event, e.ProbeChecked | e.ProbeCheckDiscarded | e.CupTested):
        hands.back_in_cup(time_s)
    if check is None or not isinstance(event, e.ProbeCheckStep):
        return
    if check.check in ("ice", "boiling"):
        hands.hold_in(time_s, known_point(check.check, check.values).temperature_c)
    elif check.check == "comparison":
        compared = sum(each.step == "compared" for each in check.steps)
        hands.hold_in(time_s, room_c + APART_C * compared)
    elif check.check == "dip":
        hands.hold_in(time_s, room_c if event.step == "hung" else COLD_C)
    elif check.check == "cup":
        _test_cup(hands, event.step, time_s)


def _test_cup(hands: BathHands, step: str, time_s: float) -> None:
    match step:
        case "in_added":
            hands.dip_in_alkali(time_s)
        case "filled":
            hands.fill_with_water(time_s, WATER_CM3, WARM_C)
        case "poured":
            hands.pour(time_s, WATER_CM3, AT_ONCE_S)
