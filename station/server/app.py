"""The HTTP side: state, stream, acts, samples, and the built page. Everything else is somewhere else."""

from typing import Annotated, Any

from fastapi import Depends, FastAPI, Header, Query, Request
from fastapi.responses import Response, StreamingResponse

from station.practical.acts import Act, ActRefused
from station.practical.view import samples_of
from station.record.journal import JournalError
from station.server.access import ACTING, Access
from station.server.access_network import network_of
from station.server.access_requires import address_of, requires
from station.server.access_routes import add_access
from station.server.bare_app import bare_app
from station.server.checks_routes import add_checks
from station.server.downloads import add_downloads
from station.server.everything import add_everything
from station.server.kit_cards import add_cards
from station.server.kit_routes import add_kit
from station.server.pages import BENCH_PAGES, add_pages
from station.server.planning import add_planning
from station.server.preparing import add_preparing
from station.server.problems import problem
from station.server.stream import sequence_number, stream
from station.server.watch import Watch

STREAM_HEADERS = {"Cache-Control": "no-cache, no-transform", "X-Accel-Buffering": "no"}


def make_app(watch: Watch, version: str, access: Access | None = None) -> FastAPI:
    """Return the application that serves this bench; without `access` any device operates it, and nobody is staff."""
    access = access or Access()
    app = bare_app("Benchwarm station", version, access)
    _add_looking(app, watch)
    _add_acting(app, watch)
    add_access(app, watch, access)
    add_downloads(app, watch)
    add_checks(app, watch)
    add_everything(app, watch)
    add_kit(app, watch)
    add_cards(app, watch)
    add_planning(app, watch)
    add_preparing(app)
    add_pages(app, BENCH_PAGES)
    return app


def _add_looking(app: FastAPI, watch: Watch) -> None:
    @app.get("/api/state")
    async def state() -> dict[str, Any]:
        """Everything a screen shows, and the samples since the newest pour."""
        return watch.whole()

    @app.get("/api/samples")
    async def samples(repeat: Annotated[int, Query(ge=1, le=100_000)]) -> Any:
        """The whole trace of one repeat."""
        repeats = watch.bench.state.repeats
        if repeat > len(repeats):
            return problem(404, "no_such_repeat", f"There is no repeat {repeat}.")
        return samples_of(repeats[repeat - 1])

    @app.get("/api/stream", response_class=StreamingResponse, responses={200: {"content": {"text/event-stream": {}}}})
    async def live(
        request: Request, after: Annotated[int, Query(ge=0)] = 0, last_event_id: Annotated[str | None, Header()] = None
    ) -> Response:
        """Server-sent events; ids are journal sequence numbers, `Last-Event-ID` says where to go on."""
        start = after if last_event_id is None else max(after, sequence_number(last_event_id))
        listener = watch.hub.join(network_of(address_of(request)))
        if listener is None:
            return problem(503, "too_many_streams", "Too many pages are open: ask /api/state instead.")
        return StreamingResponse(stream(watch, listener, start), media_type="text/event-stream", headers=STREAM_HEADERS)


def _add_acting(app: FastAPI, watch: Watch) -> None:
    @app.post("/api/acts", dependencies=[Depends(requires(*ACTING))])
    async def acts(act: Act) -> Any:
        """Tell the station what was done; answered once it is kept."""
        try:
            seq = await watch.bench.do(act.model_copy(update={"by": "page"}))
        except ActRefused as refusal:
            return problem(409, refusal.code, str(refusal), {"state": watch.whole()})
        except JournalError as error:
            return problem(503, "not_kept", f"It could not be kept, so it did not happen. {error}")
        return {"accepted": True, "seq": seq, "state": watch.whole()}
