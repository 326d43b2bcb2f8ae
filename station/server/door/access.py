"""Who may do what. Looking is free; a bench is operated by who gave its code; staff sign in with a passphrase.

**The bench button as the way out.** Who holds it for five seconds and lets go opens a window of one minute in which
one device, the first that asks, may operate the bench without the code, and may try passphrases without waiting
behind others. It gives no more than that on purpose: every student can reach the button. It already operates the
bench, so the window gives nothing away; a teacher's or technician's powers would be a gift to the bored. A forgotten
passphrase is mended where only the technician gets at: by a new line in `station.toml` on the card. A device that was
faster than the one meant is shaken off by holding again, which ends the session that the last hold gave.
"""

import asyncio
import math
import time
from collections.abc import Awaitable, Callable
from functools import partial
from typing import Literal

from fastapi import Request

from station.server.door.hosts import Hosts
from station.server.door.limits import LOOKS_AT_ONCE, LOOKS_PER_S, Rate, is_loopback, network_of
from station.server.door.secrets import Holder, Secrets, Slowdown
from station.server.door.sessions import Session, Sessions
from station.server.problems import Problem, problem
from station.words import Message, say

# What is not allowed, or not now, as an exception and as the reply it becomes.


class Refusal(Exception):  # noqa: N818 - an answer to a person, not a fault of the station
    """Not allowed, or not now; becomes a problem reply."""

    def __init__(self, status: int, code: str, detail: Message, wait_s: float = 0.0) -> None:
        super().__init__(detail)
        self.status, self.code, self.wait_s = status, code, wait_s


def too_soon(code: str, why: Message, wait_s: float) -> Refusal:
    """Return the refusal that says when to come again."""
    seconds = max(1, math.ceil(wait_s))
    return Refusal(429, code, say("access-wait", why=why, seconds=seconds), wait_s)


def reply(refusal: Refusal) -> Problem:
    """Return the problem reply; `Retry-After` in whole seconds (RFC 9110, 10.2.3)."""
    answer = problem(refusal.status, refusal.code, str(refusal))
    if refusal.wait_s > 0.0:
        answer.headers["Retry-After"] = str(max(1, math.ceil(refusal.wait_s)))
    return answer


async def on_refusal(_: Request, refusal: Exception) -> Problem:
    """Answer a refusal that was raised."""
    assert isinstance(refusal, Refusal)  # noqa: S101 - registered for this class only
    return reply(refusal)


Role = Literal["looker", "bench", "teacher", "technician"]
ACTING: tuple[Role, ...] = ("bench", "teacher", "technician")
STAFF: tuple[Role, ...] = ("teacher", "technician")

RECOVERY_S = 60.0
_BUTTON = "button"
_NONE_SET: dict[Holder, Message] = {
    "bench": say("access-no-code"),
    "teacher": say("access-no-teacher"),
    "technician": say("access-no-technician"),
}


class Access:
    """The one place that knows who may do what.

    `everyone` is what a device on this machine may do without signing in, for a demonstration only. `hosts`, `rate`
    (of acts) and `looks` are asked at the door (guard.py). Times are of the machine's monotonic clock: setting the
    wall clock changes nothing.
    """

    def __init__(
        self,
        secrets: Secrets | None = None,
        sessions: Sessions | None = None,
        *,
        everyone: Role = "looker",
        hosts: Hosts | None = None,
        rate: Rate | None = None,
        monotonic: Callable[[], float] = time.monotonic,
    ) -> None:
        self.secrets = secrets or Secrets()
        self.sessions = sessions or Sessions(self.secrets)
        self.hosts, self.rate, self.monotonic = hosts or Hosts(), rate or Rate(), monotonic
        self.looks = Rate(LOOKS_PER_S, LOOKS_AT_ONCE)
        self._everyone: Role = everyone
        self._slowdown, self._asking = Slowdown(), Slowdown()
        self._recovery_until_s = -math.inf
        self._recovered: Session | None = None

    def role(self, cookie: str | None, address: str) -> Role:
        """Return what the device with this cookie at this address may do."""
        session = self.sessions.read(cookie)
        if session is not None:
            return session.role
        if self._everyone != "looker" and is_loopback(address):
            return self._everyone
        return "looker" if self.secrets.needs_code else "bench"

    async def sign_in(self, holder: Holder, words: str, cookie: str | None, address: str) -> str:
        """Return the cookie for who gives the right code or passphrase. Raises Refusal: wrong, to wait, or none set."""
        if self.secrets.kept(holder) is None:
            raise Refusal(403, "none_set", _NONE_SET[holder])
        session = self.sessions.read(cookie)
        by_button = session is not None and session == self._recovered
        lane = _BUTTON if by_button else network_of(address)
        check = partial(self.secrets.right, holder, words)
        if not await self._tried(self._slowdown, lane, check, alone=by_button):
            raise Refusal(403, "not_accepted", say("access-not-right"))
        return self.sessions.issue(holder)

    async def recover(self, address: str) -> str:
        """Return a bench cookie for the first device that asks after the button was held. Raises Refusal."""
        # Asking while nobody holds the button is slowed like guessing: who asks all the time is not the first.
        if not await self._tried(self._asking, network_of(address), self._window, alone=True):
            raise Refusal(403, "not_accepted", say("access-hold-button"))
        cookie = self.sessions.issue("bench")
        self._recovered = self.sessions.read(cookie)
        return cookie

    def recovery_opened(self) -> None:
        """The bench button was held; called in the event loop. What the hold before gave ends."""
        self._recovery_until_s = self.monotonic() + RECOVERY_S
        if self._recovered is not None:
            self.sessions.end(self._recovered)
            self._recovered = None
            self._keeping = asyncio.get_running_loop().run_in_executor(None, self.sessions.keep)

    async def sign_out(self, cookie: str | None) -> None:
        """End the session of this cookie, if it has one."""
        session = self.sessions.read(cookie)
        if session is not None:
            self.sessions.end(session)
            await asyncio.to_thread(self.sessions.keep)

    async def sign_out_all(self) -> None:
        """End every session on this station."""
        self.sessions.end_all()
        await asyncio.to_thread(self.sessions.keep)

    async def _window(self) -> bool:
        is_open = self.monotonic() < self._recovery_until_s
        self._recovery_until_s = -math.inf
        return is_open

    async def _tried(self, slowdown: Slowdown, lane: str, check: Callable[[], Awaitable[bool]], *, alone: bool) -> bool:
        """Look at a try when its wait is over. A try that was cut short counts as wrong."""
        wait_s = slowdown.admit(lane, self.monotonic(), alone=alone)
        if wait_s > 0.0:
            raise too_soon("too_many_tries", say("access-too-many-tries"), wait_s)
        is_right = False
        try:
            is_right = await check()
        finally:
            if is_right:
                slowdown.right(lane, alone=alone)
            else:
                slowdown.wrong(lane, self.monotonic())
        return is_right
