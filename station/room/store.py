"""What the room keeps: every event of every bench, once, by bench, journal and number. SQLite, WAL, FULL.

A journal that was wiped, restored or salvaged has another name (`room/outbox.py`), so it is another history of its
bench, and nothing of the one before is lost. May be used from any thread.
"""

import json
import sqlite3
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from station.practical.events import Stamped, Unknown
from station.room.database import StoreError, now
from station.room.lessons import Lesson, LessonsKept
from station.room.orders_kept import OrderKept, OrdersKept, settle_taken
from station.room.wire import Row, digest_of, stamped

__all__ = [
    "BenchKept",
    "Differs",
    "Kept",
    "Lesson",
    "OrderKept",
    "RoomStore",
    "Sent",
    "StoreError",
    "Unusable",
    "row_of",
]

PIECE = 1000
MOST_HISTORIES = 500
"""Each wipe and each restored backup begins another record of a bench."""
_COLUMNS = "seq,boot,monotonic_s,time_s,wall,clock,kind,body"


class Differs(Exception):  # noqa: N818 - somebody's record is copied or altered; the room made no mistake
    """Another event is kept under this number already; nothing was kept of what came with it."""

    def __init__(self, bench: str, journal: str, seq: int) -> None:
        super().__init__(f"{bench}: event {seq} of journal {journal} is not the one that is kept")
        self.bench, self.journal, self.seq = bench, journal, seq


class TooMany(Exception):  # noqa: N818 - somebody's mischief
    """No bench begins so many records."""


@dataclass(frozen=True)
class Unusable:
    """What a bench sent cannot be kept: nothing was kept of it."""

    bench: str
    why: str


@dataclass(frozen=True)
class BenchKept:
    """One history of a bench: its journal, up to where it is whole, when it was heard (wall time: labels only)."""

    bench: str
    name: str | None
    journal: str
    first_heard: str
    last_heard: str
    last_seq: int


@dataclass(frozen=True)
class Sent:
    """Rows of a bench's journal, in any order; with `name` the bench says that this is its present journal."""

    bench: str
    journal: str
    rows: Sequence[Row] = ()
    name: str | None = None


@dataclass(frozen=True)
class Kept:
    """A journal is kept whole up to `seq`, whose event has this digest.

    `fresh` are the rows that continued it, each returned once and in order.
    """

    seq: int
    digest: str = ""
    fresh: Sequence[Row] = ()


class RoomStore(OrdersKept, LessonsKept):
    """The room's record in a folder: events, orders and lessons. Raises StoreError."""

    def keep(self, bench: str, journal: str, events: Sequence[Stamped]) -> int:
        """Keep these events, and return up to which number all of this journal are there.

        What is kept already is left alone. Raises Differs when it is not the same.
        """
        (answer,) = self.keep_many([Sent(bench, journal, [row_of(each) for each in events])])
        if isinstance(answer, Differs):
            raise answer
        if isinstance(answer, Unusable):
            raise StoreError(f"{answer.bench}: cannot be kept: {answer.why}")
        return answer.seq

    def keep_many(self, sent: Sequence[Sent]) -> list[Kept | Differs | Unusable]:
        """Keep what many benches sent in one transaction; what is wrong with one does not spoil the others."""
        with self._writing() as write:
            return [_kept_or_why(write, each) for each in sent]

    def benches(self) -> list[BenchKept]:
        """Return every bench with its present journal, in the order of their ids."""
        newest = {each.bench: each for each in self._histories("", ())}
        return [newest[bench] for bench in sorted(newest)]

    def histories(self, bench: str) -> list[BenchKept]:
        """Return all journals that were ever heard of this bench, the present one last."""
        return self._histories("WHERE bench = ?", (bench,))

    def events(
        self, bench: str, after: int = 0, kinds: Sequence[str] = (), journal: str | None = None
    ) -> Iterator[Stamped]:
        """Yield what is kept whole of a bench's present journal, or of the named one, after this number, in order.

        Read in pieces: nobody who reads slowly keeps the writer from tidying up. Raises StoreError.
        """
        if journal is None:
            journal = next((each.journal for each in reversed(self.histories(bench))), "")
        among = f" AND kind IN ({','.join('?' * len(kinds))})" if kinds else ""
        sql = (
            f"SELECT {_COLUMNS} FROM events JOIN histories USING (history) WHERE bench = ? AND journal = ?"  # noqa: S608
            f" AND seq > ? AND seq <= contiguous{among} ORDER BY seq LIMIT {PIECE}"
        )
        while piece := self._rows(sql, (bench, journal, after, *kinds)):
            for seq, boot, monotonic_s, time_s, wall, clock, kind, body in piece:
                yield stamped((seq, boot, monotonic_s, time_s, wall, clock, kind, body))
            after = piece[-1][0]

    def _histories(self, where: str, values: Sequence[str]) -> list[BenchKept]:
        sql = (
            "SELECT bench,name,journal,first_heard,last_heard,contiguous FROM histories LEFT JOIN names USING (bench)"  # noqa: S608
            f" {where} ORDER BY turn"
        )
        return [BenchKept(*row) for row in self._rows(sql, values)]


def row_of(stamped: Stamped) -> Row:
    """Return an event as a row."""
    event = stamped.event
    kind, body = (event.name, event.body) if isinstance(event, Unknown) else (event.kind, event.to_body())
    text = json.dumps(body, ensure_ascii=False, separators=(",", ":"), allow_nan=False)
    times = (float(stamped.monotonic_s), float(stamped.time_s))
    return stamped.seq, stamped.boot, *times, stamped.wall, stamped.clock, kind, text


def _history(write: sqlite3.Connection, bench: str, journal: str) -> tuple[int, int, str]:
    """Return number, whole part and its last digest of this journal's history, begun where there is none."""
    sql = "SELECT history, contiguous, digest FROM histories WHERE bench = ? AND journal = ?"
    row = write.execute(sql, (bench, journal)).fetchone()
    if row is None:
        (there,) = write.execute("SELECT count(*) FROM histories WHERE bench = ?", (bench,)).fetchone()
        if there >= MOST_HISTORIES:
            raise TooMany(f"more than {MOST_HISTORIES} records")
        heard = now()
        write.execute(
            "INSERT INTO histories (bench, journal, first_heard, last_heard, turn)"
            " VALUES (?, ?, ?, ?, (SELECT coalesce(max(turn), 0) + 1 FROM histories))",
            (bench, journal, heard, heard),
        )
        row = write.execute(sql, (bench, journal)).fetchone()
    return int(row[0]), int(row[1]), str(row[2])


def _kept_or_why(write: sqlite3.Connection, sent: Sent) -> Kept | Differs | Unusable:
    write.execute("SAVEPOINT one")
    try:
        answer = _keep(write, sent)
    except sqlite3.OperationalError:
        raise  # the disk's fault, and everybody's
    except Differs as error:
        write.execute("ROLLBACK TO one")
        return error
    except Exception as error:  # whatever it is, only this bench sent it
        write.execute("ROLLBACK TO one")
        return Unusable(sent.bench, str(error) if isinstance(error, TooMany) else type(error).__name__)
    write.execute("RELEASE one")
    return answer


def _keep(write: sqlite3.Connection, sent: Sent) -> Kept:
    history, whole, digest = _history(write, sent.bench, sent.journal)
    if sent.name is not None:
        _make_present(write, history, sent.bench, sent.name)
    new = _new_rows(write, history, sent)
    write.executemany("INSERT INTO events VALUES (?,?,?,?,?,?,?,?,?)", [(history, *row) for row in new.values()])
    fresh = _continuing(write, history, whole) if whole + 1 in new else []
    if fresh:
        whole, digest = fresh[-1][0], digest_of(fresh[-1])
        write.execute(
            "UPDATE histories SET contiguous = ?, digest = ?, last_heard = ? WHERE history = ?",
            (whole, digest, now(), history),
        )
        settle_taken(write, sent.bench, fresh)
    return Kept(whole, digest, fresh)


def _make_present(write: sqlite3.Connection, history: int, bench: str, name: str) -> None:
    write.execute(
        "UPDATE histories SET turn = (SELECT max(turn) + 1 FROM histories) WHERE history = ?"
        " AND turn < (SELECT max(turn) FROM histories WHERE bench = ?)",
        (history, bench),
    )
    write.execute("UPDATE histories SET last_heard = ? WHERE history = ?", (now(), history))
    write.execute("INSERT OR REPLACE INTO names VALUES (?, ?)", (bench, name))


def _new_rows(write: sqlite3.Connection, history: int, sent: Sent) -> dict[int, Row]:
    """Return the rows that are not kept yet. Raises Differs."""
    if not sent.rows:
        return {}
    seqs = [row[0] for row in sent.rows]
    among = f"SELECT {_COLUMNS} FROM events WHERE history = ? AND seq BETWEEN ? AND ?"  # noqa: S608
    there = {row[0]: row for row in write.execute(among, (history, min(seqs), max(seqs)))}
    new: dict[int, Row] = {}
    for row in sent.rows:
        known = there.get(row[0], new.get(row[0]))
        if known is None:
            new[row[0]] = row
        elif known != row:
            raise Differs(sent.bench, sent.journal, row[0])
    return new


def _continuing(write: sqlite3.Connection, history: int, whole: int) -> list[Row]:
    """Return the rows that follow one another from the whole part on."""
    found: list[Row] = []
    for row in write.execute(
        f"SELECT {_COLUMNS} FROM events WHERE history = ? AND seq > ? ORDER BY seq",  # noqa: S608
        (history, whole),
    ):
        if row[0] != whole + len(found) + 1:
            break
        found.append(row)
    return found
