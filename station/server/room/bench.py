"""One bench's own page, read-only, fed by what the room keeps of it: the same shapes, and nothing to press."""

import asyncio
from collections.abc import AsyncIterator
from dataclasses import replace
from functools import partial
from typing import Annotated

from fastapi import FastAPI, Header, Path, Query, Request
from fastapi.responses import FileResponse, Response, StreamingResponse

from station.bench.calculation.results import Results
from station.practical import events as e
from station.practical.contract import Trace
from station.practical.kinds.answers import Result
from station.practical.state import State
from station.practical.view import live, samples_of, trace, view
from station.room.board import BenchNow
from station.room.class_result.export import lesson_lines
from station.room.lesson_book import Practical
from station.room.wire import is_user
from station.server.bare_app import PAGE
from station.server.bench.contract import BenchState, BenchStream, BenchView
from station.server.bench.downloads import LINES, file_answer
from station.server.bench.stream import EVENT_STREAM, MOST_MISSED, Streamed, heard, sequence_number
from station.server.door.limits import network_of
from station.server.door.requires import address_of, is_staff
from station.server.door.routes import Standing
from station.server.problems import problem
from station.server.room.desk import RoomDesk
from station.server.streaming import PADDING, RESET, RETRY, Hub, Listener, happened, unnumbered
from station.words import say

Bench = Annotated[str, Path(max_length=40)]


def seen_by_room(desk: RoomDesk, bench: str, state: State, time_s: float, result: Result | None = None) -> BenchView:
    """Return a bench as its own page shows it, with nothing to press."""
    shown = view(state, time_s)
    return {
        "seq": 0,
        "boot": "",  # another practical is loaded anew
        "time_s": round(time_s, 3),
        "speed": 1.0,
        "bench": {
            "name": desk.name_of(bench),
            "virtual": False,
            "panel": "none",
            "read_only": True,
            "language": desk.about.get("language"),
            "units": desk.about.get("units"),
        },
        "fault": None,
        "link": None,
        "repeats_id": "",
        **shown,
        "instruction": replace(shown["instruction"], act=None, label=None),
        "other_acts": [],
        "questions": [{**each, "answers": []} for each in shown["questions"]],
        "result": result,
    }


class BenchViews:
    """The benches as their pages see them. What nobody looks at costs nothing."""

    def __init__(self, desk: RoomDesk) -> None:
        self.desk = desk
        self._hubs: dict[str, Hub] = {}
        self._results: dict[str, Results] = {}
        desk.listen(self._happened)

    def now(self, bench: str) -> BenchNow | None:
        """Return a bench as the room knows it."""
        return self.desk.board.benches.get(bench) if is_user(bench) else None

    def view(self, bench: str, now: BenchNow) -> BenchView:
        """Return what `GET /api/state` of the bench would say, without its trace and without any act."""
        result = self._result(bench, now) if now.state.results_shown else None
        seen = seen_by_room(self.desk, bench, now.state, now.time_s, result)
        return {**seen, "seq": now.seq, "boot": f"{now.journal} {now.began}", "repeats_id": f"{now.seq}"}

    def join(self, bench: str, network: str, *, is_staff: bool) -> Listener | None:
        """Return a listener to a bench."""
        return self._hubs.setdefault(bench, Hub()).join(network, is_staff=is_staff)

    def leave(self, bench: str, listener: Listener) -> None:
        """Forget a listener."""
        hub = self._hubs.get(bench)
        if hub is not None:
            hub.leave(listener)
            if hub.count == 0:
                del self._hubs[bench]

    def close(self) -> None:
        """End all streams, so that the server can stop."""
        for hub in self._hubs.values():
            hub.close()

    async def ended(self) -> None:
        """Stop calculating."""
        for results in self._results.values():
            await results.calculator.close()

    def _result(self, bench: str, now: BenchNow) -> Result | None:
        """Return the newest result; what has changed since is computed meanwhile."""
        results = self._results.get(bench) or self._results.setdefault(bench, Results(lambda: self._calculated(bench)))
        results.follow((now.journal, now.began), now.seq, now.state)
        return results.newest

    def _calculated(self, bench: str) -> None:
        now = self.now(bench)
        if now is not None and bench in self._hubs:
            self._hubs[bench].send(unnumbered("view", self.view(bench, now)))

    def _happened(self, bench: str, stamped: e.Stamped) -> None:
        hub, now = self._hubs.get(bench), self.now(bench)
        if hub is None or now is None:
            return
        hub.send(happened(stamped), stamped.seq)
        if isinstance(stamped.event, e.SampleTaken):
            time_s = round(now.time_s, 3)
            hub.send(unnumbered("live", {"time_s": time_s, **live(now.state, now.time_s)}))
        else:
            hub.send(unnumbered("view", self.view(bench, now)))


def add_bench_view(app: FastAPI, desk: RoomDesk) -> BenchViews:
    """Add the benches' own pages to the application."""
    views = BenchViews(desk)
    _add_looking(app, views)

    @app.get("/api/room/bench/{bench}/session")
    async def session(bench: Bench) -> Standing | Response:
        """Here everybody only looks; that asks for no code."""
        return _no_bench() if views.now(bench) is None else {"role": "looker", "needs_code": False, "passphrases": []}

    @app.get("/room/bench/{bench}", include_in_schema=False)
    def page(bench: Bench) -> Response:
        """Serve the bench's page."""
        file = PAGE / "index.html"
        if views.now(bench) is None or not file.is_file():
            return _no_bench()
        return FileResponse(file, headers={"Cache-Control": "no-cache"})

    return views


def _add_looking(app: FastAPI, views: BenchViews) -> None:
    @app.get("/api/room/bench/{bench}/state")
    async def state(bench: Bench) -> BenchState | Response:
        """Everything the bench's page shows, and the samples since the newest pour."""
        now = views.now(bench)
        if now is None:
            return _no_bench()
        return {**views.view(bench, now), "trace": trace(now.state)}

    @app.get("/api/room/bench/{bench}/samples")
    async def samples(bench: Bench, repeat: Annotated[int, Query(ge=1, le=100_000)]) -> Trace | Response:
        """The whole trace of one repeat."""
        now = views.now(bench)
        if now is None or repeat > len(now.state.repeats):
            return problem(404, "no_such_repeat", say("refusal-no-repeat", repeat=repeat))
        return samples_of(now.state.repeats[repeat - 1])

    @app.get("/api/room/bench/{bench}/journal.jsonl", response_class=StreamingResponse, responses=file_answer(LINES))
    async def journal(bench: Bench, samples: bool = True) -> Response:
        """Every event of the bench's practical, or all but the samples, one JSON object a line."""
        now = views.now(bench)
        if now is None:
            return _no_bench()
        which = Practical(bench, now.journal, now.began)
        lines = lesson_lines(views.desk.store, [which], samples=samples)
        return StreamingResponse(lines, media_type=LINES)

    @app.get(
        "/api/room/bench/{bench}/stream",
        response_class=StreamingResponse,
        responses={200: {"content": {EVENT_STREAM: {}}}},
    )
    async def live_stream(
        request: Request,
        bench: Bench,
        after: Annotated[int, Query(ge=0)] = 0,
        last_event_id: Annotated[str | None, Header()] = None,
    ) -> BenchStream:
        """Server-sent events as the bench sends them; ids are its journal's numbers."""
        if views.now(bench) is None:
            return _no_bench()
        start = after if last_event_id is None else max(after, sequence_number(last_event_id))
        listener = views.join(bench, network_of(address_of(request)), is_staff=is_staff(request))
        if listener is None:
            return problem(503, "too_many_streams", say("server-too-many-pages-ask"))
        return Streamed(_stream(views, bench, listener, start), partial(views.leave, bench, listener))


async def _stream(views: BenchViews, bench: str, listener: Listener, after: int) -> AsyncIterator[bytes]:
    yield RETRY + PADDING
    now = views.now(bench)
    if now is None or after > now.seq or now.seq - after > MOST_MISSED or after < now.began - 1:
        yield RESET
        return
    store, journal = views.desk.store, now.journal
    missed = await asyncio.to_thread(
        lambda: [(each.seq, happened(each)) for each in store.events(bench, after, (), journal)]
    )
    sent = missed[-1][0] if missed else after
    yield b"".join(message for _, message in missed) + unnumbered("view", views.view(bench, now))
    async for message in heard(listener, sent):
        yield message


def _no_bench() -> Response:
    return problem(404, "no_such_bench", say("room-no-such-bench"))
