"""Codes and passphrases: how they are kept (argon2id, RFC 9106) and checked, one at a time in the whole process.

A check takes memory and time on purpose. It runs in one thread of its own, with a lower priority, so that neither
the sampling nor the page waits for it, and no crowd of guessers can take more than one check's memory.
"""

import asyncio
import hmac
import os
import re
import threading
import unicodedata
from concurrent.futures import ThreadPoolExecutor
from contextlib import suppress
from dataclasses import dataclass, field
from typing import Literal, get_args

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
    def has_staff(self) -> bool:
        """Whether anybody can sign in as staff."""
        return self.teacher_passphrase_hash is not None or self.technician_passphrase_hash is not None

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
        raise ValueError(f"choose {shortest} to {LONGEST} characters (these are {len(words)})")
    return words


def checked_hash(text: str) -> str:
    """Return the hash if it is one that this station can afford to check. Raises ValueError, without the text."""
    found = _HASH.fullmatch(text)
    if found is None:
        raise ValueError("not a hash: put the line here that `station passphrase` prints")
    memory_kib, passes, lanes = (int(each) for each in found.groups())
    if not 8 <= memory_kib <= MEMORY_KIB or not 1 <= passes <= MOST_PASSES or lanes != LANES:
        raise ValueError("a hash of other strength than this station checks: make it with `station passphrase`")
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
