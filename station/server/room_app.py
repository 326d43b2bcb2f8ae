"""The room's HTTP side: board, live stream, orders, lessons. Looking is free; ordering is for staff."""

import io
from collections.abc import AsyncIterator, Callable, Sequence
from typing import Annotated, Any

import segno
from fastapi import Depends, FastAPI, Request
from fastapi.responses import RedirectResponse, Response, StreamingResponse
from pydantic import AfterValidator, BaseModel, ConfigDict, Field

from station.room.lesson_book import LONGEST_LABEL
from station.room.orders import OrderError
from station.room.store import StoreError
from station.server.access import STAFF, Access
from station.server.access_network import network_of
from station.server.access_requires import address_of, requires
from station.server.access_routes import add_sessions
from station.server.bare_app import bare_app
from station.server.hub import Hub, Listener
from station.server.messages import PADDING, RETRY, unnumbered
from station.server.pages import add_pages
from station.server.problems import problem
from station.server.ready_plans import READY_NAMES, ready_plan
from station.server.room_bench import add_bench_view
from station.server.room_class import add_class
from station.server.room_desk import RoomDesk
from station.server.room_downloads import add_downloads
from station.server.room_orders import Orders
from station.server.stream import heard

STREAM_HEADERS = {"Cache-Control": "no-cache, no-transform", "X-Accel-Buffering": "no"}
SVG = "image/svg+xml"
PAGES = {"/room": "room.html", "/room/class": "room.html", "/room/lessons": "room.html"}
MOST_BENCHES = 500


def _label(text: str) -> str:
    text = text.strip()
    if text and not text.isprintable():
        raise ValueError("must be plain text without control characters")
    return text


class Order(BaseModel):
    """What benches are to do: `act` as `POST /api/staff` of a bench takes it, or pause, or resume."""

    model_config = ConfigDict(extra="forbid", frozen=True)

    benches: Annotated[list[str], Field(min_length=1, max_length=MOST_BENCHES)]
    act: dict[str, Any]


class NewLesson(BaseModel):
    """A lesson begins on all benches: with the plan given, else each bench goes on with the plan it has."""

    model_config = ConfigDict(extra="forbid", frozen=True)

    label: Annotated[str, Field(max_length=LONGEST_LABEL), AfterValidator(_label)] = ""
    plan_toml: Annotated[str, Field(max_length=12_000)] | None = None
    plan: dict[str, Any] | None = None
    confirmed: bool = False


class Withdrawal(BaseModel):
    """Benches that need not do any more what they have not done yet."""

    model_config = ConfigDict(extra="forbid", frozen=True)

    benches: Annotated[list[str], Field(min_length=1, max_length=MOST_BENCHES)]


def make_room_app(
    desk: RoomDesk, version: str, access: Access, addresses: Callable[[], Sequence[str]] = lambda: ()
) -> FastAPI:
    """Return the application that serves this room."""
    app = bare_app("Benchwarm room", version, access)
    app.add_exception_handler(StoreError, _on_store)
    add_sessions(app, access)
    _add_board(app, desk, addresses)
    _add_orders(app, Orders(desk))
    add_class(app, desk)
    add_downloads(app, desk)
    app.state.views = add_bench_view(app, desk)
    app.add_api_route("/", lambda: RedirectResponse("/room"), include_in_schema=False)
    add_pages(app, PAGES)
    return app


async def _on_store(_: Any, error: Exception) -> Response:
    return problem(503, "not_kept", f"The room's record cannot be used now. {error}")


def _add_board(app: FastAPI, desk: RoomDesk, addresses: Callable[[], Sequence[str]]) -> None:
    @app.get("/api/room")
    async def room() -> dict[str, Any]:
        """The board: a tile for each bench, in the order of who needs help; the lesson; what is still to be done."""
        return {**desk.whole(), "addresses": list(addresses())}

    @app.get(
        "/api/room/stream", response_class=StreamingResponse, responses={200: {"content": {"text/event-stream": {}}}}
    )
    async def stream(request: Request) -> Response:
        """Server-sent events for all benches at once: `room` is the whole, `tiles` what has changed of it."""
        listener = desk.hub.join(network_of(address_of(request)))
        if listener is None:
            return problem(503, "too_many_streams", "Too many pages are open: ask /api/room instead.")
        return StreamingResponse(
            room_stream(desk.hub, listener, unnumbered("room", desk.whole())),
            media_type="text/event-stream",
            headers=STREAM_HEADERS,
        )

    @app.get("/api/room/address.svg", response_class=Response, responses={200: {"content": {SVG: {}}}})
    async def address() -> Response:
        """The room's address as a QR code (ISO/IEC 18004)."""
        known = addresses()
        if not known:
            return problem(503, "not_here", "This room does not know its address.")
        picture = io.BytesIO()
        segno.make(f"{known[0]}room", error="m", micro=False).save(picture, kind="svg", border=4, light="white")
        return Response(picture.getvalue(), media_type=SVG)


async def room_stream(hub: Hub, listener: Listener, first: bytes) -> AsyncIterator[bytes]:
    """Yield the bytes of a stream that begins with this message."""
    try:
        yield RETRY + PADDING + first
        async for message in heard(listener):
            yield message
    finally:
        hub.leave(listener)


def _add_orders(app: FastAPI, orders: Orders) -> None:
    staff = [Depends(requires(*STAFF))]

    @app.post("/api/room/orders", dependencies=staff)
    async def give(order: Order) -> Any:
        """Tell benches to do something; one that is away does it when it is back. Answered once it is kept."""
        try:
            return {"accepted": True, "order": await orders.give(order.benches, order.act)}
        except OrderError as error:
            return problem(422, "bad_order", f"This cannot be ordered: {error}.")

    @app.post("/api/room/orders/withdrawn", dependencies=staff)
    async def withdraw(withdrawal: Withdrawal) -> Any:
        """Take back what these benches have not done yet."""
        await orders.withdraw(withdrawal.benches)
        return {"accepted": True}

    @app.post("/api/room/lessons", dependencies=staff)
    async def begin(lesson: NewLesson) -> Any:
        """Begin a lesson; the one before ends, and its class result is kept."""
        try:
            begun = await orders.begin_lesson(lesson.label, lesson.plan, lesson.plan_toml, confirmed=lesson.confirmed)
            return {"accepted": True, "lesson": begun}
        except OrderError as error:
            return problem(422, "bad_plan", f"This plan cannot be used: {error}.")

    @app.post("/api/room/lessons/end", dependencies=staff)
    async def end() -> Any:
        """End the lesson under way."""
        await orders.end_lesson()
        return {"accepted": True}

    @app.get("/api/room/plans")
    async def plans() -> dict[str, Any]:
        """The plans that ship with the station."""
        return {"plans": [{"name": name, "plan": ready_plan(name).public()} for name in READY_NAMES]}

    @app.get("/api/room/lessons")
    async def lessons() -> Any:
        """Every lesson, the newest first, with how many benches took part."""
        return {"lessons": await orders.lessons()}
