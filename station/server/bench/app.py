"""The HTTP side: state, stream, acts, samples, and the built page. Everything else is somewhere else."""

from functools import partial
from typing import Annotated, Literal

from fastapi import Depends, FastAPI, Header, Query, Request
from fastapi.responses import Response, StreamingResponse

from station.practical.acts import Act, ActRefused
from station.practical.checks.run import checks_view
from station.practical.contract import Trace
from station.practical.view import samples_of
from station.record.journal import JournalError
from station.server.bare_app import BENCH_PAGES, add_pages, bare_app
from station.server.bench.contract import ActDone, BenchState, BenchStream, Checks, ShortState
from station.server.bench.downloads import add_downloads, add_everything
from station.server.bench.kit import add_cards, add_kit
from station.server.bench.machine import add_machine
from station.server.bench.planning import add_planning, add_preparing
from station.server.bench.stream import EVENT_STREAM, Streamed, sequence_number, stream
from station.server.bench.watch import Watch
from station.server.door.access import ACTING, Access
from station.server.door.limits import network_of
from station.server.door.requires import address_of, is_staff, requires
from station.server.door.routes import add_access
from station.server.manual import add_manual
from station.server.problems import problem
from station.words import say

# The probe register and the check under way, to look at; what staff do about them goes through `/api/staff`.


def add_checks(app: FastAPI, watch: Watch) -> None:
    """Add the path to the application."""

    @app.get("/api/checks")
    async def checks() -> Checks:
        """The check under way, the probes with what was found of them, and the cups that were tested."""
        bench = watch.bench
        time_s = bench.clock.time_s()
        moment = bench.clock.moment(time_s)
        return {
            "time_s": round(time_s, 3),
            "speed": bench.clock.speed,
            **checks_view(bench.state, time_s, moment.wall, moment.clock),
        }


RepeatsId = Annotated[
    str | None, Query(max_length=40, description="while it is still the state's, `repeats` and `mean` are left out")
]


def make_app(watch: Watch, version: str, access: Access | None = None) -> FastAPI:
    """Return the application that serves this bench; without `access` any device operates it, and nobody is staff."""
    access = access or Access()
    app = bare_app("Benchwarm station", version, access)
    add_looking(app, watch)
    add_acting(app, watch)
    add_access(app, watch, access)
    add_downloads(app, watch)
    add_checks(app, watch)
    add_everything(app, watch)
    add_kit(app, watch)
    add_cards(app, watch)
    add_machine(app, watch)
    add_planning(app, watch)
    add_preparing(app)
    add_pages(app, BENCH_PAGES)
    add_manual(app, lambda: watch.language)
    return app


def add_looking(app: FastAPI, watch: Watch) -> None:
    """Add what everybody may see of a bench."""

    @app.get("/api/state")
    async def state(repeats_id: RepeatsId = None) -> BenchState | ShortState | Response:
        """Everything a screen shows, and the samples since the newest pour."""
        return Response(watch.whole_text(repeats_id), media_type="application/json")

    @app.get("/api/samples")
    async def samples(repeat: Annotated[int, Query(ge=1, le=100_000)]) -> Trace | Response:
        """The whole trace of one repeat."""
        repeats = watch.bench.state.repeats
        if repeat > len(repeats):
            return problem(404, "no_such_repeat", say("refusal-no-repeat", repeat=repeat))
        return samples_of(repeats[repeat - 1])

    @app.get("/api/stream", response_class=StreamingResponse, responses={200: {"content": {EVENT_STREAM: {}}}})
    async def live(
        request: Request,
        after: Annotated[int, Query(ge=0)] = 0,
        repeats: Annotated[
            Literal["always", "changed"], Query(description="changed: a view has the repeats only when they changed")
        ] = "always",
        last_event_id: Annotated[str | None, Header()] = None,
    ) -> BenchStream:
        """Server-sent events; ids are journal sequence numbers, `Last-Event-ID` says where to go on."""
        start = after if last_event_id is None else max(after, sequence_number(last_event_id))
        listener = watch.hub.join(network_of(address_of(request)), is_staff=is_staff(request))
        if listener is not None:
            listener.is_short = repeats == "changed"
        if listener is None:
            return problem(503, "too_many_streams", say("server-too-many-pages-state"))
        return Streamed(stream(watch, listener, start), partial(watch.hub.leave, listener))


def add_acting(app: FastAPI, watch: Watch) -> None:
    """Add the acts of who is at the bench."""

    @app.post("/api/acts", dependencies=[Depends(requires(*ACTING))])
    async def acts(act: Act) -> ActDone | Response:
        """Tell the station what was done; answered once it is kept."""
        try:
            seq = await watch.bench.do(act.model_copy(update={"by": "page"}))
        except ActRefused as refusal:
            return problem(409, refusal.code, str(refusal), {"state": watch.whole()})
        except JournalError as error:
            return problem(503, "not_kept", say("server-not-kept", reason=str(error)))
        return {"accepted": True, "seq": seq, "state": watch.whole()}
