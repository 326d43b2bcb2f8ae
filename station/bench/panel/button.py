"""The one button: a press told from its contact bounce by polling the level, with no edge events.

Pure: the caller reads the pin 25 to 50 times a second and passes the level and the time. Edge callbacks with a
bounce time lose a press that is shorter than the bounce time, and a lost trailing edge holds the button down for
ever (gpiozero issues 550, 697, 1039); a polled level can lose neither for longer than one poll.
"""

from enum import StrEnum

POLL_S = 0.025
"""How often to poll, in seconds. A 40 ms tap is then seen at least once, also when a poll comes 10 ms late."""

RELEASE_S = 0.06
"""How long the contact must be open before the next closing counts. Bounce of push buttons is mostly under 10 ms
(J. Ganssle, "A Guide to Debouncing", 2004; figure from memory)."""

GUARD_S = 1.0
"""A second press this soon is heard but does nothing: nobody pours two portions within a second, and a worn
contact or a nervous double press must not record one."""

HOLD_S = 5.0
"""Held at least this long and then let go before it counts as stuck, a press asks for more: the way out when a code
is lost (station/server/door/access.py). A wet or jammed button is not let go, so it never does."""

LONGEST_GAP_S = 0.5
"""Polls further apart do not tell one long hold from two taps."""

STUCK_S = 10.0
"""Held this long, the button is named stuck: wet, jammed or wired to ground."""


class ButtonState(StrEnum):
    """The button as last polled."""

    ABSENT = "absent"  # there is no button: the page alone is used
    UNKNOWN = "unknown"  # not polled yet
    UP = "up"
    DOWN = "down"
    STUCK = "stuck"


class ButtonEvent(StrEnum):
    """What one poll told."""

    PRESS = "press"  # act on it
    REPEATED = "repeated"  # heard, too soon after the last press to mean anything new
    HELD = "held"  # let go after a long press; its PRESS was told when it closed
    STUCK = "stuck"  # said once for each time it sticks


class Button:
    """Turns polled levels into presses.

    The first closing counts at once, so that the shortest tap counts; then the contact must have been open for
    `RELEASE_S` before the next counts. A button that is down at the first poll has not been pressed.
    """

    def __init__(self, guard_s: float = GUARD_S) -> None:
        self._guard_s = guard_s
        self._armed = False
        self._may_hold = False
        self._polled_s: float | None = None
        self._down_since_s: float | None = None
        self._up_since_s: float | None = None
        self._pressed_s: float | None = None
        self.state = ButtonState.UNKNOWN

    def poll(self, down: bool, now_s: float) -> ButtonEvent | None:
        """Take the level at `now_s` (monotonic seconds; `down` when the contact is closed)."""
        if self._polled_s is not None and now_s - self._polled_s > LONGEST_GAP_S:
            self._may_hold = False
        self._polled_s = now_s
        return self._closed(now_s) if down else self._open(now_s)

    def _open(self, now_s: float) -> ButtonEvent | None:
        if self._up_since_s is None:
            self._up_since_s = now_s
        held_s = 0.0 if self._down_since_s is None else self._up_since_s - self._down_since_s
        if now_s - self._up_since_s >= RELEASE_S:
            self._armed, self._down_since_s = True, None
        if self._down_since_s is None:
            self.state = ButtonState.UP
            if self._may_hold:
                self._may_hold = False
                return ButtonEvent.HELD if HOLD_S <= held_s < STUCK_S else None
        return None

    def _closed(self, now_s: float) -> ButtonEvent | None:
        self._up_since_s = None
        if self._down_since_s is None:
            self._down_since_s = now_s
            self.state = ButtonState.DOWN
        if self._armed:
            self._armed, self._may_hold = False, True
            return self._press(now_s)
        if self.state is ButtonState.DOWN and now_s - self._down_since_s >= STUCK_S:
            self.state = ButtonState.STUCK
            return ButtonEvent.STUCK
        return None

    def _press(self, now_s: float) -> ButtonEvent:
        too_soon = self._pressed_s is not None and now_s - self._pressed_s < self._guard_s
        self._pressed_s = now_s
        return ButtonEvent.REPEATED if too_soon else ButtonEvent.PRESS
