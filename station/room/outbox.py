"""The outbox: the journal itself, and up to where the room keeps it.

What the room is told a journal is called comes from its first event, so a wiped one has another name. A file beside
the journal says which event the room kept last, and its digest: where the journal does not hold that event any more
(restored, salvaged, copied by hand), or the room keeps another one under its number, the journal takes a new name and
is sent from its beginning. So nothing is lost, and nothing is mixed.
"""

import hashlib
import json
import os
from dataclasses import dataclass
from pathlib import Path
from secrets import token_hex
from typing import Any, Final

from station.record.journal import JournalError, read_rows
from station.record.upkeep import LINK_NAME
from station.room.wire import MOST_EVENTS, Row, digest_of, packed_batch

MOST_BODY_BYTES: Final = 200_000


@dataclass
class Outbox:
    """The outbox of the record in a folder. Its methods read and write files: call them from a thread."""

    folder: Path
    journal: str = ""
    acknowledged: int = 0
    _digest: str = ""
    _salt: str = ""

    @classmethod
    def opened(cls, folder: Path) -> "Outbox":
        """Return the outbox where it was left, under a new name if the journal is another one. Raises JournalError."""
        outbox = cls(folder)
        outbox._load()
        if outbox.acknowledged and outbox._digest_at(outbox.acknowledged) != outbox._digest:
            outbox.begin_anew()
        outbox.journal = outbox._name()
        return outbox

    def next_rows(self) -> list[Row]:
        """Return the next events that the room does not keep yet, as many as go into one message."""
        rows: list[Row] = []
        body_bytes = 0
        for row in _rows(self.folder, self.acknowledged, MOST_EVENTS):
            body_bytes += len(row[7].encode())
            if rows and body_bytes > MOST_BODY_BYTES:
                break
            rows.append(row)
        return rows

    def next_batch(self, kit: str) -> tuple[int, bytes]:
        """Return how many events go next, and the message that holds them; (0, b"") when the room keeps all."""
        rows = self.next_rows()
        return len(rows), packed_batch(self.journal, kit, rows) if rows else b""

    def forget(self, seq: int, digest: str) -> bool:
        """Note that the room keeps all up to this event; False when the one kept there is not ours."""
        if seq and self._digest_at(seq) != digest:
            return False
        self.acknowledged, self._digest = seq, digest
        return True

    def save(self) -> None:
        """Write down how far it is. Not needed after each answer: what is not written down is only asked again."""
        path = self.folder / LINK_NAME
        part = path.with_name(f"{LINK_NAME}.part")
        text = json.dumps({"seq": self.acknowledged, "digest": self._digest, "salt": self._salt})
        try:
            with part.open("w", encoding="utf-8") as file:
                file.write(text)
                file.flush()
                os.fsync(file.fileno())
            part.replace(path)
        except OSError as error:
            raise JournalError(f"{path}: cannot be written: {error.strerror}") from error

    def begin_anew(self) -> None:
        """Give the journal a new name and send it from its beginning."""
        self.acknowledged, self._digest, self._salt = 0, "", token_hex(8)
        self.journal = self._name()
        self.save()

    def _name(self) -> str:
        first = self._digest_at(1)
        if first is None:
            raise JournalError(f"{self.folder}: the record has no first event")
        return hashlib.blake2b(f"{first}{self._salt}".encode(), digest_size=8).hexdigest()

    def _digest_at(self, seq: int) -> str | None:
        rows = _rows(self.folder, seq - 1, 1)
        return digest_of(rows[0]) if rows and rows[0][0] == seq else None

    def _load(self) -> None:
        """A file that is lost or spoilt costs only that the room is asked again."""
        try:
            kept = json.loads((self.folder / LINK_NAME).read_text(encoding="utf-8"))
            self.acknowledged, self._digest, self._salt = int(kept["seq"]), str(kept["digest"]), str(kept["salt"])
        except (OSError, ValueError, LookupError, TypeError):
            self.acknowledged, self._digest, self._salt = 0, "", ""


def _rows(folder: Path, after: int, most: int) -> list[Row]:
    return [_normal(row) for row in read_rows(folder, after, most)]


def _normal(row: tuple[Any, ...]) -> Row:
    """The body as it comes out at the other end, so that digests agree."""
    seq, boot, monotonic_s, time_s, wall, clock, kind, body = row
    body = json.dumps(json.loads(body), ensure_ascii=False, separators=(",", ":"), allow_nan=False)
    return seq, boot, monotonic_s, time_s, wall, clock, kind, body
