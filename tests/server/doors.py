"""Codes and passphrases for tests, hashed as cheaply as the format allows; and a clock in our hand."""

from argon2 import PasswordHasher

from station.server.door.secrets import Secrets

CODE, TEACHER, TECHNICIAN = "K7M-4QX", "otter lamp seven", "brass cedar ninety"
_CHEAP = PasswordHasher(1, 8, 1)

SECRETS = Secrets(CODE, None, _CHEAP.hash(TEACHER), _CHEAP.hash(TECHNICIAN))
HASHED = Secrets(None, _CHEAP.hash("k7m4qx"), SECRETS.teacher_passphrase_hash, SECRETS.technician_passphrase_hash)

GIVEN: dict[str, dict[str, object]] = {
    "bench": {"code": CODE},
    "teacher": {"role": "teacher", "passphrase": TEACHER},
    "technician": {"role": "technician", "passphrase": TECHNICIAN},
}
"""What each role gives to `POST /api/session`."""


class Hand:
    """A monotonic clock that moves when the test says so."""

    def __init__(self, now_s: float = 1000.0) -> None:
        self.now_s = now_s

    def __call__(self) -> float:
        return self.now_s


LOOKER = {"role": "looker", "needs_code": True, "passphrases": ["teacher", "technician"]}
"""What a device without a session is told, where code and both passphrases are set."""
