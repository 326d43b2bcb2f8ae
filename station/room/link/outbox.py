"""The outbox: the journal itself, and up to where the room keeps it.

What the room is told a journal is called comes from its first event, so a wiped one has another name. A file beside
the journal says which event the room kept last, and its digest: where the journal does not hold that event any more
(restored, salvaged, copied by hand), or the room keeps another one under its number, the journal takes a new name and
is sent from its beginning. So nothing is lost, and nothing is mixed.
"""

import asyncio
import hashlib
import json
import os
from dataclasses import dataclass, replace
from pathlib import Path
from secrets import token_hex
from typing import Any, Final

from station.bench.loop import Bench
from station.practical import events as e
from station.record.journal import JournalError, read_rows
from station.record.upkeep import LINK_NAME
from station.room.orders import OrderError, act_of
from station.room.wire import MOST_EVENTS, Order, Orders, Row, digest_of, packed_batch
from station.words import say

# Does what the room orders, one after the other; what cannot be done is said in the bench's record, and no more.


AGAIN_AFTER_S: Final = 10.0
FAILED: Final = say("order-could-not")


class OrderTaker:
    """Takes a bench's orders: `told` when they come, `await run()` beside."""

    def __init__(self, bench: Bench) -> None:
        self._bench = bench
        self._orders: Orders | None = None
        self._journal = ""
        self._come = asyncio.Event()

    def told(self, orders: Orders, journal: str) -> None:
        """Take these orders in place of those before; `journal` is what the room calls the bench's record."""
        self._orders, self._journal = orders, journal
        self._come.set()

    async def run(self) -> None:
        """Do what comes, until cancelled."""
        while True:
            await self._come.wait()
            self._come.clear()
            orders = self._orders
            try:
                for order in () if orders is None else orders.orders:
                    await self._take(orders.room if orders else "", order)
            except JournalError:  # it did not happen: later again
                await asyncio.sleep(AGAIN_AFTER_S)
                self._come.set()

    async def _take(self, room: str, order: Order) -> None:
        taken = e.OrderTaken(room, order.order, str(order.act.get("act"))[:40])
        journal, practical_seq = _meant_for(order)
        if journal not in (None, self._journal):
            practical_seq = -1  # of another record, so it is over
        try:
            act = act_of(order.act, f"room-{room}-{order.order}")
            await self._bench.take_order(act, taken, practical_seq)
        except OrderError as error:
            await self._bench.take_order(None, replace(taken, refused=str(error)), None)
        except JournalError:
            raise
        except Exception:  # an order that fails would come again for ever, and the link with it
            await self._bench.take_order(None, replace(taken, refused=FAILED), None)


def _meant_for(order: Order) -> tuple[str | None, int | None]:
    """Return journal and first event of the practical that an order is meant for; None for whichever is on."""
    match order.act.get("practical"):
        case [str(journal), int(seq)]:
            return journal, seq
    return None, None


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
            told = say("file-cannot-be-written", path=str(path), reason=str(error.strerror))
            raise JournalError(told) from error

    def begin_anew(self) -> None:
        """Give the journal a new name and send it from its beginning."""
        self.acknowledged, self._digest, self._salt = 0, "", token_hex(8)
        self.journal = self._name()
        self.save()

    def _name(self) -> str:
        first = self._digest_at(1)
        if first is None:
            raise JournalError(say("room-no-first-event", path=str(self.folder)))
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
