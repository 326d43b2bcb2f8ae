"""The panel: one contract for the mock pins and for no pins, then what the pins themselves went through."""

import subprocess
import sys
from collections.abc import Iterator
from itertools import pairwise
from typing import Any, Literal

import pytest
from gpiozero import LED, GPIOPinInUse
from gpiozero.pins.mock import MockFactory
from hypothesis import given
from hypothesis import strategies as st

from station.bench.panel import pins as panel_pins
from station.bench.panel.button import ButtonState
from station.bench.panel.panel import TICK_S, open_panel
from station.bench.panel.pins import BEEP_S, GpioHands, PanelPins, PanelPinsError
from station.bench.panel.signals import ALL_LIT, DARK, Lamps, Signal, lamps
from tests.conftest import PATIENCE_S

PINS = PanelPins()


class Bench:
    """A panel, its presses and a hand-driven clock."""

    def __init__(self, kind: Literal["real", "mock", "none"], *, silent: bool = True) -> None:
        self.presses = self.holds = 0
        self.now_s = 100.0
        self.panel = open_panel(kind, PINS, self.press, self.hold, silent=silent)

    def press(self) -> None:
        self.presses += 1

    def hold(self) -> None:
        self.holds += 1

    def run(self, seconds: float) -> list[Lamps]:
        """Tick for so long; return the lamps after each tick."""
        seen = []
        for _ in range(round(seconds / TICK_S)):
            self.panel.tick(self.now_s)
            seen.append(self.panel.lit)
            self.now_s += TICK_S
        return seen

    def pin(self, number: int) -> Any:
        assert isinstance(self.panel.hands, GpioHands)
        return self.panel.hands.factory.pin(number)

    def finger(self, *, down: bool) -> None:
        button = self.pin(PINS.button_gpio)
        button.drive_low() if down else button.drive_high()

    def states(self, number: int) -> list[bool]:
        return [state.state for state in self.pin(number).states]


@pytest.fixture(params=["mock", "none"])
def either(request: pytest.FixtureRequest) -> Iterator[Bench]:
    bench = Bench(request.param)
    yield bench
    bench.panel.close()


@pytest.fixture
def mock() -> Iterator[Bench]:
    bench = Bench("mock")
    yield bench
    bench.panel.close()


class TestContract:
    """Holds for every kind of panel."""

    def test_starts_dark_and_off(self, either: Bench) -> None:
        assert either.panel.signal is Signal.OFF
        assert set(either.run(1.0)) == {DARK}

    @pytest.mark.parametrize("signal", Signal)
    def test_shows_the_pattern(self, either: Bench, signal: Signal) -> None:
        either.panel.show(signal)
        assert either.panel.signal is signal
        seen = either.run(6.0)
        expected = [lamps(signal, k * TICK_S) for k in range(len(seen))]
        differ = sum(a != b for a, b in zip(seen, expected, strict=True))
        assert differ <= 24, "at most the rounding of one tick at each edge"
        assert bool(any(map(any, seen))) == (signal is not Signal.OFF)

    def test_showing_the_same_signal_again_does_not_restart_it(self, either: Bench) -> None:
        either.panel.show(Signal.ADD)
        either.run(0.7)
        either.panel.show(Signal.ADD)
        assert either.run(TICK_S) == [DARK]

    def test_a_new_signal_replaces_the_old(self, either: Bench) -> None:
        either.panel.show(Signal.WAIT)
        either.run(0.5)
        either.panel.show(Signal.ATTENTION)
        assert either.run(TICK_S) == [Lamps(attention=True)]

    def test_can_be_silenced_and_heard_again(self, either: Bench) -> None:
        either.panel.silent = False
        assert not either.panel.silent
        either.panel.silent = True
        assert either.panel.silent

    def test_closing_twice_and_late_calls_are_harmless(self, either: Bench) -> None:
        either.panel.show(Signal.ADD)
        either.run(0.1)
        either.panel.close()
        either.panel.close()
        either.panel.show(Signal.DONE)
        either.panel.silent = True
        assert set(either.run(1.0)) == {DARK}
        assert either.panel.signal is Signal.OFF

    def test_is_a_context_manager(self, either: Bench) -> None:
        with either.panel as panel:
            panel.show(Signal.DONE)
        assert panel.signal is Signal.OFF

    def test_nobody_pressed(self, either: Bench) -> None:
        either.run(2.0)
        assert either.presses == 0


@given(st.lists(st.tuples(st.sampled_from(Signal), st.floats(0.0, 1.0)), min_size=1, max_size=30))
def test_three_flashes_a_second_at_most_however_the_signal_flaps(shown: list[tuple[Signal, float]]) -> None:
    """WCAG 2.2, 2.3.1."""
    bench = Bench("none")
    came_on_s, before = [], DARK
    for signal, seconds in shown:
        bench.panel.show(signal)
        start_s = bench.now_s
        for k, lit in enumerate(bench.run(seconds)):
            if any(new and not old for new, old in zip(lit, before, strict=True)):
                came_on_s.append(start_s + k * TICK_S)
            before = lit
    assert all(later_s - first_s > 1.0 for first_s, later_s in zip(came_on_s, came_on_s[3:], strict=False))


class TestButton:
    def test_a_press_acts_once_inside_the_tick(self, mock: Bench) -> None:
        mock.run(0.5)
        mock.finger(down=True)
        assert mock.presses == 0
        mock.run(TICK_S)
        assert mock.presses == 1
        mock.run(3.0)
        mock.finger(down=False)
        mock.run(3.0)
        assert mock.presses == 1

    @pytest.mark.parametrize("signal", Signal)
    @pytest.mark.parametrize("into_s", [0.5, 0.7, 0.9, 1.1, 1.4, 2.0])
    def test_every_press_is_answered_by_all_three_lamps(self, mock: Bench, signal: Signal, into_s: float) -> None:
        mock.panel.show(signal)
        mock.run(into_s)
        mock.finger(down=True)
        seen = mock.run(1.0)
        assert seen[: round(0.4 / TICK_S)].count(ALL_LIT) >= 1
        assert 0.3 <= seen.count(ALL_LIT) * TICK_S <= 0.75

    def test_a_long_press_is_told_when_it_is_let_go(self, mock: Bench) -> None:
        mock.run(1.0)
        mock.finger(down=True)
        mock.run(6.0)
        assert (mock.presses, mock.holds) == (1, 0)
        mock.finger(down=False)
        mock.run(0.5)
        assert (mock.presses, mock.holds) == (1, 1)
        assert mock.panel.lit == ALL_LIT

    def test_what_the_callback_raises_reaches_the_caller_with_the_lamps_written(self) -> None:
        def fail() -> None:
            raise LookupError("no such portion")

        with open_panel("mock", PINS, fail, silent=True) as panel:
            assert isinstance(panel.hands, GpioHands)
            panel.show(Signal.ADD)
            for k in range(10):
                panel.tick(k * TICK_S)
            panel.hands.factory.pin(PINS.button_gpio).drive_low()
            with pytest.raises(LookupError):
                panel.tick(0.25)
            assert panel.lit == Lamps(act=True)

    def test_states(self, mock: Bench) -> None:
        states = [mock.panel.button]
        mock.run(0.1)
        states.append(mock.panel.button)
        mock.finger(down=True)
        mock.run(11.0)
        states.append(mock.panel.button)
        assert states == [ButtonState.UNKNOWN, ButtonState.UP, ButtonState.STUCK]
        assert mock.presses == 1

    def test_no_pins_no_button(self) -> None:
        bench = Bench("none")
        bench.run(1.0)
        assert bench.panel.button is ButtonState.ABSENT


class TestPins:
    def test_the_lamp_pin_went_through_the_pattern(self, mock: Bench) -> None:
        mock.panel.show(Signal.ADD)
        mock.run(3.0)
        assert mock.states(PINS.act_gpio) == [False, True, False, True, False, True, False]
        assert mock.states(PINS.wait_gpio) == [False]
        assert mock.states(PINS.attention_gpio) == [False]

    def test_a_pin_is_written_only_when_it_changes(self, mock: Bench, monkeypatch: pytest.MonkeyPatch) -> None:
        written: list[bool] = []
        monkeypatch.setattr(mock.pin(PINS.act_gpio), "_set_state", written.append)
        mock.panel.show(Signal.DONE)
        mock.run(5.0)
        assert written == [True]

    def test_closing_lets_every_pin_go(self) -> None:
        bench = Bench("mock")
        assert isinstance(bench.panel.hands, GpioHands)
        pins = dict(bench.panel.hands.factory.pins)
        assert len(pins) == len(PINS.all)
        bench.panel.close()
        assert bench.panel.hands.factory.pins == {}
        assert all(pin.function == "input" for pin in pins.values())

    @pytest.mark.fault("pins-after-the-end")
    @pytest.mark.parametrize("number", PINS.outputs)
    def test_outputs_are_driven_low_while_still_outputs(self, number: int, monkeypatch: pytest.MonkeyPatch) -> None:
        """A released pin may keep its level or float, so the order matters."""
        bench = Bench("mock", silent=False)
        pin = bench.pin(number)
        bench.panel.show(Signal.DONE)
        for device in (*bench.panel.hands.lamp_devices, bench.panel.hands.buzzer_device):  # type: ignore[attr-defined]
            device.on()
        bench.panel.hands.light(ALL_LIT)
        at_release: list[tuple[str, bool]] = []
        release = pin.close

        def note_and_release() -> None:
            at_release.append((pin.function, pin.state))
            release()

        monkeypatch.setattr(pin, "close", note_and_release)
        bench.panel.close()
        assert at_release[0] == ("output", False)
        assert pin.state is False

    def test_the_same_pins_can_be_opened_again(self) -> None:
        for _ in range(2):
            bench = Bench("mock")
            bench.run(0.1)
            bench.panel.close()


class TestBuzzer:
    def sounded(self, bench: Bench) -> list[float]:
        """Wait for the sound's own timer to end it; return how long each sound was, in s."""
        assert isinstance(bench.panel.hands, GpioHands)
        timer = bench.panel.hands.buzzer_device._blink_thread
        if timer is not None:
            timer.join(PATIENCE_S)
        states = bench.pin(PINS.buzzer_gpio).states
        assert states[-1].state is False
        return [after.timestamp for this, after in pairwise(states) if this.state]

    @pytest.mark.fault("pins-after-the-end")
    @pytest.mark.parametrize(("signal", "beeps"), [(Signal.ADD, 1), (Signal.ATTENTION, 2)])
    def test_a_sound_ends_by_itself_when_the_ticks_stop(self, signal: Signal, beeps: int) -> None:
        bench = Bench("mock", silent=False)
        bench.panel.show(Signal.WAIT)
        bench.run(TICK_S)
        bench.panel.show(signal)
        bench.run(TICK_S)  # and never again
        lengths_s = self.sounded(bench)
        assert len(lengths_s) == beeps
        assert all(length_s >= BEEP_S * 0.9 for length_s in lengths_s)
        bench.panel.close()

    def test_what_is_found_at_the_start_is_not_news(self) -> None:
        bench = Bench("mock", silent=False)
        bench.panel.show(Signal.ADD)
        bench.run(2.0)
        assert self.sounded(bench) == []
        bench.panel.close()

    @pytest.mark.parametrize("signal", [Signal.WAIT, Signal.PAUSED, Signal.OFF])
    def test_only_what_asks_for_something_sounds(self, signal: Signal) -> None:
        bench = Bench("mock", silent=False)
        bench.panel.show(Signal.DONE)
        bench.panel.show(signal)
        bench.run(2.0)
        assert self.sounded(bench) == []
        bench.panel.close()

    def test_silent_is_silent(self, mock: Bench) -> None:
        mock.panel.show(Signal.WAIT)
        mock.panel.show(Signal.ADD)
        mock.run(2.0)
        assert self.sounded(mock) == []

    def test_a_flapping_signal_starts_a_sound_once_a_second(self, monkeypatch: pytest.MonkeyPatch) -> None:
        bench = Bench("mock", silent=False)
        started_s: list[float] = []
        monkeypatch.setattr(bench.panel.hands, "sound", lambda beeps: started_s.append(bench.now_s))
        bench.panel.show(Signal.WAIT)
        for _ in range(40):
            bench.panel.show(Signal.ATTENTION)
            bench.run(0.1)
            bench.panel.show(Signal.WAIT)
            bench.run(0.1)
        assert len(started_s) > 4
        assert all(later_s - first_s >= 1.0 for first_s, later_s in pairwise(started_s))
        monkeypatch.undo()
        bench.panel.close()

    @pytest.mark.parametrize("how", ["silence", "close"])
    def test_a_sound_is_cut_at_once(self, how: str, monkeypatch: pytest.MonkeyPatch) -> None:
        monkeypatch.setattr(panel_pins, "BEEP_S", 10 * PATIENCE_S)  # it ends by being cut, or not here
        bench = Bench("mock", silent=False)
        bench.panel.show(Signal.WAIT)
        bench.panel.show(Signal.ADD)
        bench.run(TICK_S)
        assert bench.pin(PINS.buzzer_gpio).state is True
        if how == "silence":
            bench.panel.silent = True
        else:
            bench.panel.close()
        assert bench.pin(PINS.buzzer_gpio).state is False
        bench.panel.close()


class TestSettings:
    @pytest.mark.parametrize(
        ("wrong", "word"),
        [
            ({"act_gpio": 4}, "act_gpio = 4: GPIO4 is taken by the temperature probe"),
            ({"act_gpio": 17}, "taken by wait_gpio"),
            ({"button_gpio": 1}, "give a GPIO number from 2 to 27"),
            ({"button_gpio": 28}, "give a GPIO number from 2 to 27"),
            ({"buzzer_gpio": True}, "give a GPIO number"),
        ],
    )
    def test_pins_that_cannot_be_are_refused_by_name(self, wrong: dict[str, int], word: str) -> None:
        with pytest.raises(PanelPinsError, match=word):
            PanelPins(**wrong)

    def test_outputs_are_pins_that_are_pulled_low_from_power_on(self) -> None:
        """BCM2835 ARM Peripherals, page 102: pull-up on GPIO 0 to 8, pull-down on 9 to 27."""
        assert all(9 <= number <= 27 for number in PINS.outputs)

    @pytest.mark.fault("no-lgpio")
    def test_the_kind_is_never_guessed(self) -> None:
        with pytest.raises(ValueError, match='use "real", "mock" or "none"'):
            open_panel("auto", PINS, lambda: None)  # type: ignore[arg-type]

    def test_without_a_panel_gpiozero_is_not_loaded(self) -> None:
        code = (
            "import sys; from station.bench.panel.panel import *;"
            'open_panel("none", PanelPins(), print).close(); assert "gpiozero" not in sys.modules'
        )
        subprocess.run([sys.executable, "-c", code], check=True)

    def test_a_failed_open_leaves_the_pins_free(self) -> None:
        factory = MockFactory(revision="a02082")
        taken = LED(PINS.button_gpio, pin_factory=factory)
        with pytest.raises(GPIOPinInUse):
            GpioHands(factory, PINS)
        taken.close()
        GpioHands(factory, PINS).close()
