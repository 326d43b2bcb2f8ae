"""Codes and passphrases that are made here, unique for each kit, from the system's own randomness."""

import secrets
from dataclasses import dataclass, field

from station.room.broker import new_password
from station.server.access_secrets import hashed

CODE_LETTERS = "ABCDEFGHJKMNPQRSTUVWXYZ23456789"
"""Without what is easily confused: I and 1, O and 0, L."""
CODE_LENGTH = 8
CONSONANTS, VOWELS = "bdfghjklmnprstvz", "aeiou"
SYLLABLES = 8
"""Eight of eighty syllables: 50 bits, said and typed without a mistake."""


@dataclass(frozen=True)
class KitSecrets:
    """What is printed on the label (the code) and on the separate sheet; only hashes go onto the card."""

    bench_code: str
    teacher_passphrase: str
    technician_passphrase: str
    link_password: str = field(default="", repr=False)
    """For the room's broker; nobody types it, so it is long, and lies on this kit's card alone."""

    def hashes(self) -> dict[str, str]:
        """Return the lines of `[access]` in the card's settings."""
        return {
            "bench_code_hash": hashed("bench", self.bench_code),
            "teacher_passphrase_hash": hashed("teacher", self.teacher_passphrase),
            "technician_passphrase_hash": hashed("technician", self.technician_passphrase),
        }


def new_secrets() -> KitSecrets:
    """Return fresh ones."""
    return KitSecrets(_code(), _passphrase(), _passphrase(), new_password())


def _code() -> str:
    letters = "".join(secrets.choice(CODE_LETTERS) for _ in range(CODE_LENGTH))
    return f"{letters[:4]}-{letters[4:]}"


def _passphrase() -> str:
    syllables = [secrets.choice(CONSONANTS) + secrets.choice(VOWELS) for _ in range(SYLLABLES)]
    return " ".join("".join(syllables[at : at + 2]) for at in range(0, SYLLABLES, 2))
