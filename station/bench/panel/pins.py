"""Where the panel is wired, and the hands that drive it: gpiozero's devices, or none.

gpiozero is imported only when pins are opened, so that a station without a panel neither needs nor loads it.
"""

from contextlib import ExitStack
from dataclasses import astuple, dataclass
from typing import Any, Protocol

from station.bench.panel.signals import DARK, Lamps
from station.words import Message, say

ONE_WIRE_GPIO = 4
"""The probe's data line: the default pin of the kernel's w1-gpio overlay."""

BEEP_S = 0.15
"""One sound, and the silence after it, in seconds. No sound may last longer than 0.5 s."""


class PanelPinsError(ValueError):
    """The pin numbers cannot be wired as asked; the message names the setting and what to do."""


@dataclass(frozen=True)
class PanelPins:
    """The panel's pins as GPIO numbers (not positions on the header).

    The outputs are pins that the processor pulls low from power-on (BCM2835 ARM Peripherals, page 102: GPIO 9 to
    27), so lamps and buzzer stay off until the station starts. hardware.md has the positions and the drawing.

    Raises:
        PanelPinsError: a number is not on the header, is the probe's, or is used twice.
    """

    wait_gpio: int = 17
    act_gpio: int = 27
    attention_gpio: int = 22
    buzzer_gpio: int = 23
    button_gpio: int = 24

    def __post_init__(self) -> None:
        seen: dict[int, str] = {ONE_WIRE_GPIO: say("panel-pin-of-probe")}
        for name, number in vars(self).items():
            if isinstance(number, bool) or not isinstance(number, int) or not 2 <= number <= 27:
                raise PanelPinsError(say("panel-pin-number", pin_name=name, typed=repr(number)))
            if number in seen:
                raise PanelPinsError(say("panel-pin-taken", pin_name=name, pin=number, by=seen[number]))
            seen[number] = name

    @property
    def lamps(self) -> tuple[int, int, int]:
        """The lamps' pins in the order of `Lamps`."""
        return (self.wait_gpio, self.act_gpio, self.attention_gpio)

    @property
    def outputs(self) -> tuple[int, ...]:
        """Every pin that the station drives."""
        return (*self.lamps, self.buzzer_gpio)

    @property
    def all(self) -> tuple[int, ...]:
        """Every pin of the panel."""
        return astuple(self)


class PanelUnavailable(RuntimeError):  # noqa: N818 - named for what the technician reads
    """The real panel cannot be opened. `reason` says why, `remedy` what to do."""

    def __init__(self, reason: Message, remedy: Message) -> None:
        self.reason, self.remedy = reason, remedy
        super().__init__(say("panel-cannot-be-used", reason=reason, remedy=remedy))


class Hands(Protocol):
    """What a panel can do with its wires."""

    has_button: bool

    def light(self, lit: Lamps) -> None:
        """Drive the three lamps."""

    def sound(self, beeps: int) -> None:
        """Sound so many short beeps, ended by their own timer; 0 is silence at once."""

    def button_down(self) -> bool:
        """Read the button's level: True while the contact is closed."""

    def close(self) -> None:
        """Drive every output low, then let the pins go."""


class NoHands:
    """No pins at all: the bench is worked from the page."""

    has_button = False

    def light(self, lit: Lamps) -> None:
        """Do nothing."""

    def sound(self, beeps: int) -> None:
        """Do nothing."""

    def button_down(self) -> bool:
        """Report an open contact."""
        return False

    def close(self) -> None:
        """Do nothing."""


class GpioHands:
    """Lamps, buzzer and button through gpiozero on the given pin factory, which it closes.

    A sound is ended by gpiozero's own timer thread, not by the caller's loop, so a loop that hangs cannot leave
    the buzzer on. A process that is killed within those 0.15 s can: see hardware.md for what the wiring does then.
    """

    has_button = True

    def __init__(self, factory: Any, pins: PanelPins) -> None:
        from gpiozero import LED, Buzzer, InputDevice  # noqa: PLC0415 - only where there are pins

        self.factory = factory
        with ExitStack() as opened:
            opened.callback(factory.close)
            self.lamp_devices = [opened.enter_context(LED(n, pin_factory=factory)) for n in pins.lamps]
            self.buzzer_device = opened.enter_context(Buzzer(pins.buzzer_gpio, pin_factory=factory))
            button = InputDevice(pins.button_gpio, pull_up=True, pin_factory=factory)
            self.button_device = opened.enter_context(button)
            self._opened = opened.pop_all()
        self._lit = DARK

    def light(self, lit: Lamps) -> None:
        """Write the lamps that change."""
        for device, new, old in zip(self.lamp_devices, lit, self._lit, strict=True):
            if new != old:
                device.value = new
        self._lit = lit

    def sound(self, beeps: int) -> None:
        """Start the beeps in gpiozero's timer thread and return; a sound still going is cut."""
        if beeps:
            self.buzzer_device.beep(on_time=BEEP_S, off_time=BEEP_S, n=beeps)
        else:
            self.buzzer_device.off()

    def button_down(self) -> bool:
        """Read the level; the contact closes to ground against the processor's pull-up."""
        return bool(self.button_device.is_active)

    def close(self) -> None:
        """Low first: a pin that is let go while high may stay high or float (gpiozero issue 1146)."""
        self.sound(0)
        self.light(DARK)
        self._opened.close()
