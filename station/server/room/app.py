"""The room's HTTP side: board, live stream, orders, lessons. Looking is free; ordering is for staff."""

import asyncio
import io
from collections.abc import AsyncIterator, Callable, Sequence
from functools import partial
from typing import Annotated, Any, Literal

import segno
from fastapi import Depends, FastAPI, Request
from fastapi.responses import RedirectResponse, Response, StreamingResponse
from pydantic import AfterValidator, BaseModel, ConfigDict, Field

from station.bench.clock import is_known_right
from station.practical.kinds import READY_NAMES, ready_plan
from station.practical.plan import Concentration
from station.room.broker import PrivateBroker, new_password
from station.room.lesson_book import LONGEST_LABEL
from station.room.orders import OrderError
from station.room.places import MOST as MOST_PLACES
from station.room.store.database import StoreError
from station.room.wire import LONGEST_USER
from station.server.bare_app import add_pages, bare_app
from station.server.bench.stream import EVENT_STREAM, Streamed, heard
from station.server.door.access import STAFF, Access
from station.server.door.limits import network_of
from station.server.door.requires import address_of, is_staff, requires
from station.server.door.routes import add_sessions
from station.server.manual import add_manual
from station.server.problems import problem
from station.server.room.bench import add_bench_view
from station.server.room.class_result import add_class, add_downloads
from station.server.room.contract import (
    Done,
    LessonBegun,
    Lessons,
    OrderGiven,
    RehearsalDoor,
    Room,
    RoomPlans,
    RoomStream,
)
from station.server.room.desk import RoomDesk
from station.server.room.kits import add_kits
from station.server.room.orders import Orders
from station.server.room.sheets import add_sheets
from station.server.streaming import PADDING, RETRY, Listener, unnumbered
from station.words import say

# Lets the virtual benches of a rehearsal into the room's private broker.


User = Annotated[str, Field(pattern=r"^rehearsal-[1-9][0-9]{0,2}$")]
"""Never the user of a real bench."""


class Rehearsal(BaseModel):
    """Who is to be let in."""

    model_config = ConfigDict(extra="forbid", frozen=True)

    users: Annotated[list[User], Field(min_length=1, max_length=200)]


def add_rehearsal(app: FastAPI, broker: PrivateBroker) -> None:
    """Add the endpoint to the application of a room with a private broker."""

    @app.post("/api/room/rehearsal", dependencies=[Depends(requires(*STAFF))])
    async def rehearsal(wanted: Rehearsal) -> RehearsalDoor:
        """Let virtual benches in; the answer says where the broker is, and their passwords."""
        passwords = {user: new_password() for user in wanted.users}
        await asyncio.to_thread(broker.add_users, passwords)
        return {"host": broker.address.host, "port": broker.address.port, "passwords": passwords}


SVG = "image/svg+xml"
PAGES = dict.fromkeys(("/room", "/room/class", "/room/lessons", "/room/sheets", "/room/kits"), "room.html")
MOST_BENCHES = 500
BenchName = Annotated[str, Field(max_length=LONGEST_USER)]


def _label(text: str) -> str:
    text = text.strip()
    if text and not text.isprintable():
        raise ValueError(say("problem-plain-text"))
    return text


class Order(BaseModel):
    """What benches are to do: `act` is one of `orders.ORDERS`, as `POST /api/staff` of a bench takes it."""

    model_config = ConfigDict(extra="forbid", frozen=True)

    benches: Annotated[list[BenchName], Field(min_length=1, max_length=MOST_BENCHES)]
    act: dict[str, Any]


class NewLesson(BaseModel):
    """A lesson begins on all benches: with the plan given, else each bench goes on with the plan it has."""

    model_config = ConfigDict(extra="forbid", frozen=True)

    label: Annotated[str, Field(max_length=LONGEST_LABEL), AfterValidator(_label)] = ""
    plan_toml: Annotated[str, Field(max_length=12_000)] | None = None
    plan: dict[str, Any] | None = None
    confirmed: bool = False


class Seat(BaseModel):
    """A bench's place on the board; who has it gets the bench's own."""

    model_config = ConfigDict(extra="forbid", frozen=True)

    bench: BenchName
    place: Annotated[int, Field(ge=1, le=MOST_PLACES)]


class Dismissal(BaseModel):
    """A refusal that was read: this bench would not do this order."""

    model_config = ConfigDict(extra="forbid", frozen=True)

    bench: BenchName
    order: Annotated[int, Field(ge=1, le=2**53)]


class MadeUpTo(BaseModel):
    """What the bottle was made up to, which staff know and the class is to find."""

    model_config = ConfigDict(extra="forbid", frozen=True)

    mol_dm3: Concentration


class Withdrawal(BaseModel):
    """Benches that need not do any more what they have not done yet."""

    model_config = ConfigDict(extra="forbid", frozen=True)

    benches: Annotated[list[BenchName], Field(min_length=1, max_length=MOST_BENCHES)]


def make_room_app(
    desk: RoomDesk, version: str, access: Access, addresses: Callable[[], Sequence[str]] = lambda: ()
) -> FastAPI:
    """Return the application that serves this room."""
    app = bare_app("Benchwarm room", version, access)
    app.add_exception_handler(StoreError, _on_store)
    add_sessions(app, access)
    _add_board(app, desk, addresses)
    orders = Orders(desk)
    _add_orders(app, orders)
    _add_lessons(app, desk, orders)
    add_class(app, desk)
    add_downloads(app, desk)
    add_kits(app, desk)
    add_sheets(app, desk)
    app.state.views = add_bench_view(app, desk)
    app.add_api_route("/", lambda: RedirectResponse("/room"), include_in_schema=False)
    add_pages(app, PAGES)
    add_manual(app, lambda: desk.about.get("language"))
    return app


async def _on_store(_: Any, error: Exception) -> Response:
    return problem(503, "not_kept", say("room-record-unusable", reason=str(error)))


def _add_board(app: FastAPI, desk: RoomDesk, addresses: Callable[[], Sequence[str]]) -> None:
    @app.get("/api/room")
    async def room() -> Room:
        """The board: a tile for each bench, in the order of who needs help; the lesson; what is still to be done."""
        return {**desk.whole(), "addresses": list(addresses())}

    @app.get("/api/room/stream", response_class=StreamingResponse, responses={200: {"content": {EVENT_STREAM: {}}}})
    async def stream(request: Request) -> RoomStream:
        """Server-sent events for all benches at once: `room` is the whole, `tiles` what has changed of it."""
        listener = desk.hub.join(network_of(address_of(request)), is_staff=is_staff(request))
        if listener is None:
            return problem(503, "too_many_streams", say("server-too-many-pages-room"))
        return Streamed(room_stream(listener, unnumbered("room", desk.whole())), partial(desk.hub.leave, listener))

    @app.get("/api/room/address.svg", response_class=Response, responses={200: {"content": {SVG: {}}}})
    async def address(of: Literal["room", "practise"] = "room") -> Response:
        """The room's address, or that of its practice cups, as a QR code (ISO/IEC 18004)."""
        known = addresses()
        if not known:
            return problem(503, "not_here", say("room-no-address"))
        picture = io.BytesIO()
        segno.make(f"{known[0]}{of}", error="m", micro=False).save(picture, kind="svg", border=4, light="white")
        return Response(picture.getvalue(), media_type=SVG)


async def room_stream(listener: Listener, first: bytes) -> AsyncIterator[bytes]:
    """Yield the bytes of a stream that begins with this message."""
    yield RETRY + PADDING + first
    async for message in heard(listener):
        yield message


def _add_orders(app: FastAPI, orders: Orders) -> None:
    staff = [Depends(requires(*STAFF))]

    @app.post("/api/room/orders", dependencies=staff)
    async def give(order: Order) -> OrderGiven | Response:
        """Tell benches to do something; one that is away does it when it is back. Answered once it is kept."""
        try:
            return {"accepted": True, "order": await orders.give(order.benches, order.act)}
        except OrderError as error:
            return problem(422, "bad_order", say("order-cannot-be-given", reason=str(error)))

    @app.post("/api/room/orders/withdrawn", dependencies=staff)
    async def withdraw(withdrawal: Withdrawal) -> Done | Response:
        """Take back what these benches have not done yet."""
        try:
            await orders.withdraw(withdrawal.benches)
        except OrderError as error:
            return problem(422, "bad_order", say("order-cannot-be-taken-back", reason=str(error)))
        return {"accepted": True}

    @app.post("/api/room/orders/dismissed", dependencies=staff)
    async def dismiss(dismissal: Dismissal) -> Done:
        """Speak no more of a refusal."""
        await orders.dismiss(dismissal.bench, dismissal.order)
        return {"accepted": True}

    @app.post("/api/room/places", dependencies=staff)
    async def seat(seat: Seat) -> Done | Response:
        """Move a bench on the board: all screens show it there from now on."""
        try:
            await orders.move(seat.bench, seat.place)
        except OrderError as error:
            return problem(422, "bad_order", say("order-cannot-be-given", reason=str(error)))
        return {"accepted": True}


def _add_lessons(app: FastAPI, desk: RoomDesk, orders: Orders) -> None:
    staff = [Depends(requires(*STAFF))]

    @app.post("/api/room/made-up", dependencies=staff)
    async def made_up(bottle: MadeUpTo) -> Done | Response:
        """Tell the room what this lesson's bottle was made up to; benches are not told."""
        try:
            await orders.keep_made_up(bottle.mol_dm3)
        except OrderError as error:
            return problem(422, "bad_order", say("order-cannot-be-given", reason=str(error)))
        return {"accepted": True}

    @app.post("/api/room/lessons", dependencies=staff)
    async def begin(lesson: NewLesson) -> LessonBegun | Response:
        """Begin a lesson; the one before ends, and its class result is kept."""
        try:
            begun = await orders.begin_lesson(lesson.label, lesson.plan, lesson.plan_toml, confirmed=lesson.confirmed)
            return {"accepted": True, "lesson": begun}
        except OrderError as error:
            return problem(422, "bad_plan", say("refusal-plan", reason=str(error)))

    @app.post("/api/room/lessons/end", dependencies=staff)
    async def end() -> Done:
        """End the lesson under way."""
        await orders.end_lesson()
        return {"accepted": True}

    @app.get("/api/room/plans")
    async def plans() -> RoomPlans:
        """The plans that ship with the station."""
        return {"plans": [{"name": name, "plan": ready_plan(name).public()} for name in READY_NAMES]}

    @app.get("/api/room/lessons")
    async def lessons() -> Lessons:
        """Every lesson, the newest first, with how many benches took part."""
        return {
            "lessons": await orders.lessons(),
            "forget_after_days": desk.forget_after_days,
            "clock_known": is_known_right(),
        }
