"""The orders that the room gave, and what became of each at each bench."""

import json
import sqlite3
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from station.practical.events import OrderTaken
from station.room.database import Database, now
from station.room.wire import Row, stamped


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
        text = json.dumps(act, ensure_ascii=False, separators=(",", ":"), allow_nan=False)
        with self._writing() as write:
            (number,) = write.execute("SELECT coalesce(max(number), 0) + 1 FROM orders").fetchone()
            for bench in benches:
                for name in supersedes:
                    write.execute(
                        "UPDATE orders SET state = 'superseded' WHERE bench = ? AND state = 'pending'"
                        " AND act ->> 'act' = ?",
                        (bench, name),
                    )
                write.execute(
                    "INSERT INTO orders (number, bench, act, given) VALUES (?,?,?,?)", (number, bench, text, now())
                )
        return int(number)

    def withdraw(self, benches: Sequence[str]) -> None:
        """Take back what these benches have not done yet."""
        with self._writing() as write:
            for bench in benches:
                write.execute("UPDATE orders SET state = 'withdrawn' WHERE bench = ? AND state = 'pending'", (bench,))

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
