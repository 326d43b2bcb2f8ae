"""The panel: three lamps, a buzzer and one button that always means "done what is asked".

The bench loop says what to show and ticks it; the panel has no loop or clock of its own:

    panel = open_panel("real", PanelPins(), on_press=...)
    panel.show(Signal.ADD)
    panel.tick(time.monotonic())  # every TICK_S

The button's callback runs inside `tick`, in the caller's own thread. If the ticks stop, the lamps freeze as they are
and a sound still ends.
"""

from collections.abc import Callable
from types import TracebackType
from typing import Any, Literal, Self

from station.bench.panel.button import GUARD_S, POLL_S, Button, ButtonEvent, ButtonState
from station.bench.panel.pins import GpioHands, Hands, NoHands, PanelPins, PanelPinsError, PanelUnavailable
from station.bench.panel.signals import ALL_LIT, DARK, PATTERNS, FlashLimiter, Lamps, Signal, lamps, trial
from station.words import say

__all__ = [
    "TICK_S",
    "ButtonState",
    "Lamps",
    "Panel",
    "PanelPins",
    "PanelPinsError",
    "PanelUnavailable",
    "Signal",
    "open_panel",
]

Kind = Literal["real", "mock", "none"]

TICK_S = POLL_S
"""How often to call `Panel.tick`, in seconds (40 Hz)."""

HEARD_S = 0.7
"""After a press all three lamps light, which no signal does, until this long after it; the flash limit may let them
come on up to 0.36 s late."""

SOUND_GAP_S = 1.0
"""Sounds start at least this far apart, however the signal flaps."""


class Panel:
    """What is shown, and the button. Use `open_panel`."""

    def __init__(
        self,
        kind: Kind,
        hands: Hands,
        on_press: Callable[[], None],
        on_hold: Callable[[], None],
        *,
        silent: bool,
        guard_s: float,
    ) -> None:
        self.kind: Kind = kind
        self.hands = hands
        self._on_press, self._on_hold = on_press, on_hold
        self._silent = silent
        self._button = Button(guard_s)
        self._limiter = FlashLimiter()
        self._signal: Signal | None = None
        self._since_s: float | None = None
        self._heard_s: float | None = None
        self._sounded_s: float | None = None
        self._sound_due = False
        self._trial_asked = False
        self._trial_s: float | None = None
        self._lit = DARK
        self._closed = False

    @property
    def signal(self) -> Signal:
        """What is shown; off before the first `show` and after `close`."""
        return self._signal or Signal.OFF

    @property
    def lit(self) -> Lamps:
        """The lamps as last written."""
        return self._lit

    @property
    def button(self) -> ButtonState:
        """The button as last polled; `STUCK` deserves a word on the page."""
        return self._button.state if self.hands.has_button else ButtonState.ABSENT

    @property
    def silent(self) -> bool:
        """Whether the buzzer is silenced. Setting it cuts a sound at once; the lamps go on."""
        return self._silent

    @silent.setter
    def silent(self, silent: bool) -> None:
        self._silent = silent
        if silent and not self._closed:
            self.hands.sound(0)

    def show(self, signal: Signal) -> None:
        """Show a signal from the next tick on. Showing the same one again changes nothing.

        A new signal sounds, but not the first: what a restarted station finds is not news.
        """
        if self._closed or signal is self._signal:
            return
        self._sound_due = self._signal is not None and PATTERNS[signal].beeps > 0
        self._signal, self._since_s = signal, None

    def try_all(self) -> None:
        """Test from the next tick on: each lamp in turn, then all, and one beep; then the signal is shown again."""
        self._trial_asked = not self._closed

    def tick(self, now_s: float) -> None:
        """Write the lamps, start a sound that is due, poll the button; `now_s` in monotonic seconds.

        `on_press` and `on_hold` are called from here, last, so what they raise reaches the caller with the lamps
        already written.
        """
        if self._closed:
            return
        self._light(now_s)
        self._sound(now_s)
        if self.hands.has_button:
            event = self._button.poll(self.hands.button_down(), now_s)
            if event in (ButtonEvent.PRESS, ButtonEvent.REPEATED, ButtonEvent.HELD):
                self._heard_s = now_s
            if event is ButtonEvent.PRESS:
                self._on_press()
            if event is ButtonEvent.HELD:
                self._on_hold()

    def _light(self, now_s: float) -> None:
        if self._since_s is None:
            self._since_s = now_s
        heard = self._heard_s is not None and now_s - self._heard_s < HEARD_S
        wanted = ALL_LIT if heard else self._tried(now_s) or lamps(self.signal, now_s - self._since_s)
        self._lit = self._limiter.admit(wanted, now_s)
        self.hands.light(self._lit)

    def _tried(self, now_s: float) -> Lamps | None:
        if self._trial_asked:
            self._trial_asked, self._trial_s = False, now_s
            if not self._silent:
                self.hands.sound(1)
        return None if self._trial_s is None else trial(now_s - self._trial_s)

    def _sound(self, now_s: float) -> None:
        too_soon = self._sounded_s is not None and now_s - self._sounded_s < SOUND_GAP_S
        if not self._sound_due or too_soon:
            return
        self._sound_due, self._sounded_s = False, now_s
        if not self._silent:
            self.hands.sound(PATTERNS[self.signal].beeps)

    def close(self) -> None:
        """Drive everything low and let the pins go. Closing twice is harmless, and so is a late `show` or `tick`."""
        if self._closed:
            return
        self._closed, self._signal, self._lit = True, Signal.OFF, DARK
        self.hands.close()

    def __enter__(self) -> Self:
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        self.close()


def open_panel(
    kind: Kind,
    pins: PanelPins,
    on_press: Callable[[], None],
    on_hold: Callable[[], None] = lambda: None,
    *,
    silent: bool = False,
    guard_s: float = GUARD_S,
) -> Panel:
    """Open the panel that was asked for; never another one instead.

    "real" is the Pi's header through lgpio, "mock" is gpiozero's mock pins (`panel.hands.factory.pin(24).drive_low()`
    presses the button), "none" has no pins. `on_press` is called once for each press, from within `tick`, and
    `on_hold` once when it is let go after 5 to 10 s.

    Raises:
        PanelUnavailable: "real" cannot be opened; its text says why and what to do.
        ValueError: no such kind.
    """
    return Panel(kind, _hands(kind, pins), on_press, on_hold, silent=silent, guard_s=guard_s)


def _hands(kind: Kind, pins: PanelPins) -> Hands:
    if kind == "real":
        from station.bench.panel.lgpio_pins import open_real  # noqa: PLC0415 - only where there are pins

        return open_real(pins)
    if kind == "mock":
        return GpioHands(_mock_factory(), pins)
    if kind == "none":
        return NoHands()
    raise ValueError(say("panel-pins-choose", typed=repr(kind)))


def _mock_factory() -> Any:
    """Mock pins of a named Pi (3B, revision a02082), whatever the environment says."""
    from gpiozero.pins.mock import MockFactory, MockPin  # noqa: PLC0415 - only where there are pins

    return MockFactory(revision="a02082", pin_class=MockPin)
