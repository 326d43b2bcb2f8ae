"""Codes and passphrases: how they are kept (argon2id, RFC 9106) and checked, one at a time in the whole process.

A check takes memory and time on purpose. It runs in one thread of its own, with a lower priority, so that neither
the sampling nor the page waits for it, and no crowd of guessers can take more than one check's memory.
"""

import asyncio
import hmac
import math
import os
import re
import threading
import unicodedata
from collections import OrderedDict
from concurrent.futures import ThreadPoolExecutor
from contextlib import suppress
from dataclasses import dataclass, field
from typing import Literal, get_args

from station.words import say

# Slows guessing down for everyone, and locks nobody out for good. It knows no wall clock: times are monotonic.
#
# Two waits, and a try is looked at only when both are over:
# - **of its own**: after a wrong try the same address waits 1 s, then 2, 4, 8, 16 and at most 30 s. A minute without
# a wrong try forgives one of them; being right once forgives nothing, or who knows one code could guess another.
# - **of all together**: tries of all addresses come one a second once `BURST` are used up. Each address that has to
# wait holds one place in a queue, so that those who shout cannot push in front of those who wait: with A addresses
# guessing at once, a new one is let in after about A seconds at most.


FIRST_WAIT_S = 1.0
LONGEST_WAIT_S = 30.0
FORGIVEN_AFTER_S = 60.0
MOST_COUNTED = 6
"""Wrong tries that are counted; with this many the wait is the longest."""

EVERY_S = 1.0
BURST = 20
"""A class that types its codes at once, with slips, does not notice the queue."""

PLACE_KEPT_S = 30.0
"""A place in the queue is kept so long after its turn; places cannot be saved up for a rush."""

MOST_ADDRESSES = 512
MOST_QUEUED_S = 256.0
"""So long a queue, and who comes is told to come again without a place in it. One /24 network fills less."""


@dataclass
class _Address:
    wrong: int = 0
    wrong_s: float = 0.0
    turn_s: float | None = None
    trying: bool = False

    def counted(self, now_s: float) -> int:
        return max(0, self.wrong - math.floor((now_s - self.wrong_s) / FORGIVEN_AFTER_S))

    def wait_s(self, now_s: float) -> float:
        counted = self.counted(now_s)
        if counted == 0:
            return 0.0
        return max(0.0, self.wrong_s + min(LONGEST_WAIT_S, FIRST_WAIT_S * 2.0 ** (counted - 1)) - now_s)


class Slowdown:
    """Who may try now, and who waits how long. Call `admit`, then either `right` or `wrong` for each try let in."""

    def __init__(self) -> None:
        self._addresses: OrderedDict[str, _Address] = OrderedDict()
        self._next_s = -math.inf  # when the queue would be empty of all that was let in or has a place

    def admit(self, address: str, now_s: float, *, alone: bool = False) -> float:
        """Return 0 when this address may try now, else how many seconds it has to wait.

        `alone` leaves out the wait of all together, for a try that gives no one an advantage.
        """
        who = self._known(address)
        if who.trying:
            return FIRST_WAIT_S
        own_s = who.wait_s(now_s)
        if own_s > 0.0:
            return own_s
        if not alone:
            queued_s = self._queued(who, now_s)
            if queued_s > 0.0:
                return queued_s
        who.trying, who.turn_s = True, None
        return 0.0

    def right(self, address: str, *, alone: bool = False) -> None:
        """The try was right, or was not looked at after all: it counts for nothing."""
        self._known(address).trying = False
        if not alone:
            self._next_s -= EVERY_S

    def wrong(self, address: str, now_s: float) -> None:
        """The try was wrong."""
        who = self._known(address)
        who.trying = False
        who.wrong, who.wrong_s = min(who.counted(now_s) + 1, MOST_COUNTED), now_s

    def _queued(self, who: _Address, now_s: float) -> float:
        """Give this address a place in the queue if it has none; return how long until its turn."""
        if who.turn_s is None or now_s - who.turn_s > PLACE_KEPT_S:
            next_s = max(self._next_s, now_s) + EVERY_S
            turn_s = next_s - BURST * EVERY_S
            if turn_s - now_s > MOST_QUEUED_S:
                return turn_s - now_s
            self._next_s, who.turn_s = next_s, turn_s
        return max(0.0, who.turn_s - now_s)

    def _known(self, address: str) -> _Address:
        who = self._addresses.setdefault(address, _Address())
        self._addresses.move_to_end(address)
        while len(self._addresses) > MOST_ADDRESSES:
            self._addresses.popitem(last=False)
        return who


Staff = Literal["teacher", "technician"]
Holder = Literal["bench", "teacher", "technician"]
"""Whose secret it is: the bench's code stands on its label."""

HOLDERS: tuple[Holder, ...] = get_args(Holder)

MEMORY_KIB, PASSES, LANES = 19 * 1024, 2, 1
"""19 MiB, two passes, one lane: among the settings the OWASP Password Storage Cheat Sheet names for argon2id."""

MOST_PASSES = 4
SHORTEST_CODE, SHORTEST_PASSPHRASE, LONGEST = 6, 10, 200
"""In characters. At one guess a second (see access_slowdown.py) an hour finds one of a million six-digit codes with
a chance of 0.4 %, and one of six letters and digits practically never."""


@dataclass(frozen=True)
class Secrets:
    """What the settings name; None is not set. A code may stand in words, since it stands on the label too."""

    bench_code: str | None = field(default=None, repr=False)
    bench_code_hash: str | None = field(default=None, repr=False)
    teacher_passphrase_hash: str | None = field(default=None, repr=False)
    technician_passphrase_hash: str | None = field(default=None, repr=False)

    @property
    def needs_code(self) -> bool:
        """Whether a bench is operated only by who knows its code."""
        return self.bench_code is not None or self.bench_code_hash is not None

    @property
    def passphrases(self) -> list[Staff]:
        """The staff who have a passphrase."""
        roles: tuple[Staff, ...] = ("teacher", "technician")
        return [each for each in roles if self.kept(each) is not None]

    @property
    def has_staff(self) -> bool:
        """Whether anybody can sign in as staff."""
        return bool(self.passphrases)

    def kept(self, holder: Holder) -> str | None:
        """Return what the settings hold for this holder."""
        if holder == "bench":
            return self.bench_code_hash if self.bench_code is None else self.bench_code
        return self.teacher_passphrase_hash if holder == "teacher" else self.technician_passphrase_hash

    async def right(self, holder: Holder, words: str) -> bool:
        """Whether these are the holder's words. It takes as long when the holder has none."""
        words = plain(holder, words)[: LONGEST + 1]
        if holder == "bench" and self.bench_code is not None:
            expected = plain("bench", self.bench_code)
            return hmac.compare_digest(words.encode(), expected.encode())
        kept = self.kept(holder)
        loop = asyncio.get_running_loop()
        fits = await loop.run_in_executor(_ONE, _fits, kept or _NOBODYS, words)
        return fits and kept is not None


def plain(holder: Holder, words: str) -> str:
    """Return the words as they are compared: however a keyboard composed them; a code also in any case or grouping."""
    words = unicodedata.normalize("NFKC", words.encode(errors="replace").decode()).strip()
    if holder != "bench":
        return words
    return "".join(each for each in words if each not in " -\t").casefold()


def hashed(holder: Holder, words: str) -> str:
    """Return the argon2id hash of these words for the settings. Raises ValueError when they are too short or long."""
    words = checked_words(holder, words)
    from argon2 import PasswordHasher  # noqa: PLC0415 - 50 ms of start-up that a bench without codes does not need

    return PasswordHasher(PASSES, MEMORY_KIB, LANES).hash(words)


def checked_words(holder: Holder, words: str) -> str:
    """Return the words as they are compared. Raises ValueError when they are too short or too long."""
    words = plain(holder, words)
    shortest = SHORTEST_CODE if holder == "bench" else SHORTEST_PASSPHRASE
    if not shortest <= len(words) <= LONGEST:
        raise ValueError(say("secret-length", shortest=shortest, longest=LONGEST, count=len(words)))
    return words


def checked_hash(text: str) -> str:
    """Return the hash if it is one that this station can afford to check. Raises ValueError, without the text."""
    found = _HASH.fullmatch(text)
    if found is None:
        raise ValueError(say("secret-not-a-hash"))
    memory_kib, passes, lanes = (int(each) for each in found.groups())
    if not 8 <= memory_kib <= MEMORY_KIB or not 1 <= passes <= MOST_PASSES or lanes != LANES:
        raise ValueError(say("secret-other-strength"))
    return text


def _fits(kept: str, words: str) -> bool:
    from argon2 import PasswordHasher  # noqa: PLC0415
    from argon2.exceptions import InvalidHashError, VerificationError  # noqa: PLC0415

    try:
        return PasswordHasher().verify(kept, words)
    except (VerificationError, InvalidHashError):
        return False


def _step_back() -> None:
    """Let the thread give way to all others (on Linux the priority is a thread's own: setpriority(2))."""
    with suppress(OSError):
        os.setpriority(os.PRIO_PROCESS, threading.get_native_id(), 10)


# The encoded form of the reference implementation: 16 bytes of salt and 32 of hash in base64 without padding.
_HASH = re.compile(r"\$argon2id\$v=19\$m=(\d{1,6}),t=(\d),p=(\d)\$[A-Za-z0-9+/]{22}\$[A-Za-z0-9+/]{43}", re.ASCII)

_ONE = ThreadPoolExecutor(max_workers=1, thread_name_prefix="argon2", initializer=_step_back)

# Of 32 random bytes that nobody kept: a holder without a passphrase takes as long to refuse as one who has it.
_NOBODYS = "$argon2id$v=19$m=19456,t=2,p=1$rb1wmxrxsomzGTG2F4qf2w$gXx64q3Ygont7shvJfxjx3LpoZAAoXR5Gz3+5igDD6M"
