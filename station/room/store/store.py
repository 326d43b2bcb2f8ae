"""What the room keeps: every event of every bench, once, by bench, journal and number. SQLite, WAL, FULL.

A journal that was wiped, restored or salvaged has another name (`room/outbox.py`), so it is another history of its
bench, and nothing of the one before is lost. May be used from any thread.
"""

import json
import sqlite3
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from station.practical.events import Stamped, Unknown
from station.practical.events.bench import OrderTaken
from station.practical.events.cup import GroupNamed, SetAdopted
from station.room.store.database import Database, StoreError, now
from station.room.wire import Row, digest_of, stamped
from station.words import say

# Which practicals are of which lesson. A practical is named by its bench, its journal and its first event.


@dataclass(frozen=True)
class Lesson:
    """One lesson: the class's label, and when it began and ended (wall time: labels only)."""

    lesson: int
    label: str
    began: str
    ended: str | None


_LABELLED = """
SELECT events.history, events.seq, boot, monotonic_s, time_s, wall, clock, kind, body
FROM practicals JOIN histories USING (bench, journal) JOIN events USING (history)
WHERE lesson = ? AND kind IN (?, ?) AND coalesce(body ->> 'label', '') <> '' AND events.seq < contiguous
AND events.seq >= practicals.seq
AND NOT EXISTS (
    SELECT 1 FROM practicals AS later WHERE later.bench = practicals.bench AND later.journal = practicals.journal
    AND later.seq > practicals.seq AND later.seq <= events.seq
)
"""
"""Events of a lesson's practicals, each up to the next one of its bench, that have a label."""


class LessonsKept(Database):
    """The lessons of the room."""

    def end_lesson(self) -> None:
        """End the lesson that is under way, if one is."""
        with self._writing() as write:
            write.execute("UPDATE lessons SET ended = ? WHERE ended IS NULL", (now(),))

    def lessons(self) -> list[Lesson]:
        """Return all lessons, the newest first."""
        return [Lesson(*row) for row in self._rows("SELECT lesson,label,began,ended FROM lessons ORDER BY lesson DESC")]

    def add_practical(self, lesson: int, bench: str, journal: str, seq: int) -> None:
        """Say that the practical that began with this event (`plan_chosen`) is of this lesson; the first word holds."""
        with self._writing() as write:
            write.execute("INSERT OR IGNORE INTO practicals VALUES (?,?,?,?)", (lesson, bench, journal, seq))

    def practicals(self, lesson: int) -> list[tuple[str, str, int]]:
        """Return bench, journal and first event of each practical of a lesson."""
        sql = "SELECT bench,journal,seq FROM practicals WHERE lesson = ? ORDER BY bench,journal,seq"
        return [(bench, journal, seq) for bench, journal, seq in self._rows(sql, (lesson,))]

    def forget(self, before: str) -> int:
        """Forget the names of classes and groups of lessons that ended before this wall time; return how many lessons.

        All that was measured stays. An event keeps its number and its place: only its label goes. The last event of a
        record is left, since bench and room know it by its digest.
        """
        names = (GroupNamed.kind, SetAdopted.kind)
        with self._writing() as write:
            due = [row[0] for row in write.execute("SELECT lesson FROM lessons WHERE ended < ?", (before,)).fetchall()]
            forgotten = 0
            for lesson in due:
                named = "UPDATE lessons SET label = '' WHERE lesson = ? AND label <> ''"
                changed = write.execute(named, (lesson,)).rowcount
                rows = write.execute(_LABELLED, (lesson, *names)).fetchall()
                for history, seq, *kept, kind, body in rows:
                    values = {**json.loads(body), "label": None if kind == GroupNamed.kind else ""}
                    text = json.dumps(values, ensure_ascii=False, separators=(",", ":"))
                    write.execute("DELETE FROM events WHERE history = ? AND seq = ?", (history, seq))
                    write.execute("INSERT INTO events VALUES (?,?,?,?,?,?,?,?,?)", (history, seq, *kept, kind, text))
                forgotten += bool(changed or rows)
            return forgotten

    def made_up(self, lesson: int) -> float | None:
        """Return what the bottle of this lesson was made up to in mol/dm³, as staff told the room."""
        rows = self._rows("SELECT mol_dm3 FROM made_up WHERE lesson = ?", (lesson,))
        return float(rows[0][0]) if rows else None

    def keep_made_up(self, lesson: int, mol_dm3: float) -> None:
        """Keep it; a new value replaces the one before."""
        with self._writing() as write:
            write.execute("INSERT OR REPLACE INTO made_up VALUES (?, ?)", (lesson, mol_dm3))


def lesson_begun(write: sqlite3.Connection, label: str) -> int:
    """Begin a lesson of the class with this label, ending the one before, in this transaction; return its number."""
    write.execute("UPDATE lessons SET ended = ? WHERE ended IS NULL", (now(),))
    return int(write.execute("INSERT INTO lessons (label, began) VALUES (?, ?)", (label, now())).lastrowid or 0)


# The orders that the room gave, and what became of each at each bench.


@dataclass(frozen=True)
class OrderKept:
    """One order to one bench; `state` is pending, taken, refused, superseded or withdrawn, `why` a refusal's words."""

    order: int
    bench: str
    act: Mapping[str, Any]
    given: str
    state: str
    why: str | None


class OrdersKept(Database):
    """The orders of the room. Numbers go up and are never used twice."""

    def give(self, benches: Sequence[str], act: Mapping[str, Any], supersedes: Sequence[str] = ()) -> int:
        """Give an order to these benches and return its number.

        What is still pending there and has one of the names in `supersedes` would only be undone: it is dropped.
        """
        with self._writing() as write:
            return order_given(write, benches, act, supersedes)

    def withdraw(self, benches: Sequence[str]) -> None:
        """Take back what these benches have not done yet."""
        with self._writing() as write:
            for bench in benches:
                write.execute("UPDATE orders SET state = 'withdrawn' WHERE bench = ? AND state = 'pending'", (bench,))

    def dismiss(self, bench: str, order: int | None = None) -> None:
        """Speak no more of what this bench would not do: of this order, or of any."""
        which, values = ("", ()) if order is None else (" AND number = ?", (order,))
        with self._writing() as write:
            write.execute(
                f"UPDATE orders SET state = 'withdrawn' WHERE bench = ? AND state = 'refused'{which}",  # noqa: S608
                (bench, *values),
            )

    def pending(self, bench: str) -> list[OrderKept]:
        """Return what this bench is still to do, in the order in which it was given."""
        return self._orders("WHERE bench = ? AND state = 'pending' ORDER BY number", (bench,))

    def ordered(self) -> list[str]:
        """Return the benches that are still to do something; also one that was never heard may be."""
        return [str(row[0]) for row in self._rows("SELECT DISTINCT bench FROM orders WHERE state = 'pending'")]

    def orders(self, after: int = 0) -> list[OrderKept]:
        """Return all orders to all benches after this number."""
        return self._orders("WHERE number > ? ORDER BY number, bench", (after,))

    def _orders(self, where: str, values: Sequence[Any]) -> list[OrderKept]:
        sql = f"SELECT number,bench,act,given,state,why FROM orders {where}"  # noqa: S608
        return [
            OrderKept(number, bench, json.loads(act), given, state, why)
            for number, bench, act, given, state, why in self._rows(sql, values)
        ]


def order_given(
    write: sqlite3.Connection, benches: Sequence[str], act: Mapping[str, Any], supersedes: Sequence[str]
) -> int:
    """Give an order to these benches in this transaction; return its number."""
    text = json.dumps(act, ensure_ascii=False, separators=(",", ":"), allow_nan=False)
    (number,) = write.execute("SELECT coalesce(max(number), 0) + 1 FROM orders").fetchone()
    for bench in benches:
        for name in supersedes:
            write.execute(
                "UPDATE orders SET state = 'superseded' WHERE bench = ? AND state = 'pending' AND act ->> 'act' = ?",
                (bench, name),
            )
        write.execute("INSERT INTO orders (number, bench, act, given) VALUES (?,?,?,?)", (number, bench, text, now()))
    return int(number)


def settle_taken(write: sqlite3.Connection, bench: str, rows: Sequence[Row]) -> None:
    """Note what the bench did with orders, as its record says: in the transaction that keeps this record."""
    for row in rows:
        if row[6] != OrderTaken.kind:
            continue
        taken = stamped(row).event
        if not isinstance(taken, OrderTaken) or not 0 < taken.order < 2**53:
            continue  # not of a bench that we know how to read
        write.execute(
            "UPDATE orders SET state = ?, why = ? WHERE bench = ? AND number = ?"
            " AND EXISTS (SELECT 1 FROM about WHERE key = 'room' AND value = ?)",
            ("taken" if taken.refused is None else "refused", taken.refused, bench, taken.order, taken.room),
        )


PIECE = 1000
MOST_HISTORIES = 500
"""Each wipe and each restored backup begins another record of a bench."""
_COLUMNS = "seq,boot,monotonic_s,time_s,wall,clock,kind,body"


class Differs(Exception):  # noqa: N818 - somebody's record is copied or altered; the room made no mistake
    """Another event is kept under this number already; nothing was kept of what came with it."""

    def __init__(self, bench: str, journal: str, seq: int) -> None:
        super().__init__(say("room-event-differs", bench=bench, event=seq, journal=journal))
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
    """The room's record in a folder: events, orders, lessons and places. Raises StoreError."""

    def places(self) -> dict[str, int]:
        """Return each bench's place on the board."""
        return {str(bench): int(place) for bench, place in self._rows("SELECT bench, place FROM places")}

    def keep_places(self, places: Mapping[str, int]) -> None:
        """Keep the places of these benches."""
        with self._writing() as write:
            write.executemany("INSERT OR REPLACE INTO places VALUES (?, ?)", list(places.items()))

    def begin_lesson(
        self, label: str, orders: Sequence[tuple[Sequence[str], Mapping[str, Any], Sequence[str]]] = ()
    ) -> int:
        """Begin a lesson of the class with this label, ending the one before, and give its orders; return its number.

        `orders` are as `give` takes them. All of it is kept, or nothing.
        """
        with self._writing() as write:
            lesson = lesson_begun(write, label)
            for order in orders:
                order_given(write, *order)
        return lesson

    def keep(self, bench: str, journal: str, events: Sequence[Stamped]) -> int:
        """Keep these events, and return up to which number all of this journal are there.

        What is kept already is left alone. Raises Differs when it is not the same.
        """
        (answer,) = self.keep_many([Sent(bench, journal, [row_of(each) for each in events])])
        if isinstance(answer, Differs):
            raise answer
        if isinstance(answer, Unusable):
            raise StoreError(say("room-cannot-be-kept", bench=answer.bench, reason=answer.why))
        return answer.seq

    def keep_many(self, sent: Sequence[Sent]) -> list[Kept | Differs | Unusable]:
        """Keep what many benches sent in one transaction; what is wrong with one does not spoil the others."""
        with self._writing(into_file=False) as write:
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
            raise TooMany(say("room-too-many-records", count=MOST_HISTORIES))
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
