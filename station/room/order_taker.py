"""Does what the room orders, one after the other; what cannot be done is said in the bench's record, and no more."""

import asyncio
from dataclasses import replace
from typing import Final

from station.bench.loop import Bench
from station.practical import events as e
from station.record.journal import JournalError
from station.room.orders import OrderError, act_of
from station.room.wire import Order, Orders

AGAIN_AFTER_S: Final = 10.0
FAILED: Final = "This bench could not do it."


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
