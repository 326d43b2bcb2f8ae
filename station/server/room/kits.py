"""The technician's page of the room: every kit in one table, and what all kits are asked at once.

What a kit finds and does comes over the link, asked for by the room; what its probe's checks say is in its record.
"""

import asyncio
import time
from collections.abc import AsyncIterator, Generator, Iterator
from functools import partial
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Annotated, Final, Literal, cast, get_args

from anyio import CapacityLimiter
from anyio.to_thread import run_sync
from fastapi import Depends, FastAPI
from fastapi.responses import Response, StreamingResponse
from pydantic import BaseModel, ConfigDict, Field, ValidationError
from typing_extensions import TypedDict

from station.bench.check.finding import Colour, Status
from station.practical.checks.register import Check
from station.practical.checks.run import check_view
from station.practical.contract import Phase
from station.practical.state import State
from station.record.everything import Zipped
from station.record.journal import JournalError
from station.record.upkeep import kept_as_backup
from station.room.asks import Doing
from station.room.collector import KitHeard
from station.room.mqtt import BrokerLost
from station.room.store.store import RoomStore, row_of
from station.room.wire import LONGEST_USER
from station.server.door.access import STAFF
from station.server.door.requires import requires
from station.server.problems import problem
from station.server.room.contract import Done
from station.server.room.desk import RoomDesk
from station.words import Message, say

HERE_S: Final = 30.0
"""A kit that was not heard for so long is away."""
UNDONE_BY_NOBODY: Final = ("wipe", "restore")
MOST_KITS: Final = 100
PIECE: Final = 1 << 18
ZIP: Final = "application/zip"


class KitFinding(TypedDict):
    """A finding of a kit's pre-flight, as the kit tells it."""

    name: str
    colour: Colour
    text: Message
    remedy: Message


OfProbe = Literal["ice", "boiling", "comparison", "dip"]
_OF_PROBE: Final[tuple[OfProbe, ...]] = get_args(OfProbe)


class ProbeChecked(TypedDict):
    """The newest check of the probe at work; `day` is null where the bench's clock was not set."""

    check: OfProbe
    day: str | None


class IceNow(TypedDict):
    """A probe's check in ice under way: `temperature_c` is what the probe says, `correction_c` what was found."""

    phase: Phase
    far: bool
    temperature_c: float | None
    correction_c: float | None


class KitRow(TypedDict):
    """One kit. `state`: what came of what it was asked last (`asked`); `told` in its words."""

    bench: str
    name: str
    here: bool
    version: str
    address: str | None
    probe_id: str | None
    probe_checked: ProbeChecked | None
    ice: IceNow | None
    status: Status | None
    looked_s: float | None
    findings: list[KitFinding]
    asked: Doing | None
    state: Literal["idle", "waits", "done", "refused"]
    told: Message


class Kits(TypedDict):
    """All kits of this room that were ever heard, by their places."""

    kits: list[KitRow]


BenchName = Annotated[str, Field(max_length=LONGEST_USER)]
Short = Annotated[str, Field(max_length=80)] | None


class KitsAsked(BaseModel):
    """What kits are to do now; wiping and putting back another record also want `sure`."""

    model_config = ConfigDict(extra="forbid", frozen=True)

    benches: Annotated[list[BenchName], Field(min_length=1, max_length=MOST_KITS)]
    do: Doing
    place: Literal["card", "stick"] | None = None
    file: Short = None
    sha256: Short = None
    sure: bool = False


def add_kits(app: FastAPI, desk: RoomDesk) -> None:
    """Add the paths to the application."""
    staff = [Depends(requires(*STAFF))]
    one_at_a_time = CapacityLimiter(1)

    @app.get("/api/room/kits", dependencies=staff)
    async def kits() -> Kits:
        """Every kit: its pre-flight as it told it last, its probe, and what came of what it was asked."""
        return {"kits": rows(desk)}

    @app.post("/api/room/kits", dependencies=staff)
    async def ask(asked: KitsAsked) -> Done | Response:
        """Ask kits to do something now. One that is away never hears of it."""
        known = {row["bench"] for row in rows(desk)}
        strange = [bench for bench in asked.benches if bench not in known]
        if strange:
            return problem(422, "bad_order", say("order-no-bench", bench_name=repr(strange[0][:40])))
        if asked.do in UNDONE_BY_NOBODY and not asked.sure:
            return problem(422, "not_sure", say("kit-ask-not-sure"))
        more = {"place": asked.place, "file": asked.file, "sha256": asked.sha256}
        given = {key: value for key, value in more.items() if value is not None}
        try:
            await desk.collector.ask(list(dict.fromkeys(asked.benches)), asked.do, given)
        except ValidationError:
            return problem(422, "bad_order", say("problem-plain-text"))
        except BrokerLost as error:
            return problem(503, "no_broker", say("kit-ask-no-broker", reason=str(error)))
        return {"accepted": True}

    @app.get(
        "/api/room/backups.zip",
        response_class=StreamingResponse,
        responses={200: {"content": {ZIP: {"schema": {"type": "string"}}}}},
        dependencies=staff,
    )
    async def backups() -> Response:
        """Each bench's record as the room keeps it, as a file that `station restore` takes; all in one zip."""
        pieces = backups_of(desk.store)

        async def sent() -> AsyncIterator[bytes]:
            try:
                while (piece := await run_sync(partial(next, pieces, None), limiter=one_at_a_time)) is not None:
                    if piece:
                        yield piece
            finally:
                pieces.close()  # whoever goes away before the end leaves no folder behind

        day = await asyncio.to_thread(time.strftime, "%Y-%m-%d")
        attached = {"Content-Disposition": f'attachment; filename="backups-{day}.zip"', "Cache-Control": "no-store"}
        return StreamingResponse(sent(), media_type=ZIP, headers=attached)


def rows(desk: RoomDesk) -> list[KitRow]:
    """Return a row for each kit, by place."""
    known = {*desk.board.benches, *desk.collector.here, *desk.collector.kits}
    in_order = sorted(known, key=lambda bench: (desk.board.places.get(bench, MOST_KITS), bench))
    return [_row(desk, bench, time.monotonic()) for bench in in_order]


def _row(desk: RoomDesk, bench: str, now_s: float) -> KitRow:
    collector = desk.collector
    now, said = desk.board.benches.get(bench), collector.here.get(bench)
    state = State() if now is None else now.state
    latest = collector.latest.get(bench)
    heard = collector.kits.get(bench, KitHeard())
    answer, looked = heard.answer, heard.looked
    found = () if looked is None else looked.found
    idle = heard.asked is None
    return {
        "bench": bench,
        "name": state.name or (desk.name_of(bench) if said is None else said.name),
        "here": latest is not None and now_s - latest.heard < HERE_S,
        "version": "" if said is None else said.version,
        "address": None if said is None else next(iter(said.addresses), None),
        "probe_id": state.probes.probe_id,
        "probe_checked": _probe_checked(state),
        "ice": _ice(state.probes.check),
        "status": None if looked is None else looked.status,
        "looked_s": None if looked is None else round(now_s - heard.looked_s, 1),
        "findings": [
            {"name": each.name, "colour": each.colour, "text": each.text, "remedy": each.remedy} for each in found
        ],
        "asked": None if heard.asked is None else heard.asked.do,
        "state": "idle" if idle else "waits" if answer is None else "done" if answer.done else "refused",
        "told": Message("") if answer is None else answer.text,
    }


def _probe_checked(state: State) -> ProbeChecked | None:
    newest = state.probes.of(state.probes.probe_id, *_OF_PROBE)
    if newest is None:
        return None
    return {"check": cast(OfProbe, newest.check), "day": newest.wall[:10] if newest.clock == "network" else None}


def _ice(check: Check | None) -> IceNow | None:
    if check is None or check.check != "ice":
        return None
    shown = check_view(check, check.samples[-1][0] if check.samples else check.begun_s)
    live, found = shown["live"], shown["found"] or {}
    return {
        "phase": shown["phase"],
        "far": shown["why"] == "far",
        "temperature_c": None if live is None else live["temperature_c"],
        "correction_c": found.get("correction_c"),
    }


def backups_of(store: RoomStore) -> Generator[bytes, None, None]:
    """Yield the pieces of a zip with a backup of each bench's present record, as far as the room keeps it whole."""
    zipped = Zipped()
    with TemporaryDirectory(prefix="benchwarm-") as folder:
        for kept in store.benches():
            file = Path(folder) / f"{kept.bench}.backup"
            rows_kept = (row_of(each) for each in store.events(kept.bench, journal=kept.journal))
            try:
                kept_as_backup(rows_kept, file)
            except JournalError:  # nothing of it is whole yet
                continue
            yield from zipped.file(file.name, _pieces(file))
            file.unlink()
    yield zipped.end()


def _pieces(file: Path) -> Iterator[bytes]:
    with file.open("rb") as opened:
        while piece := opened.read(PIECE):
            yield piece
