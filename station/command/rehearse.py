"""`station rehearse`: a class of virtual benches through the real link, for a technician's trial and for load."""

import argparse
import asyncio
import json
import os
import sys
import tempfile
from asyncio.subprocess import Process
from collections.abc import AsyncIterator, Sequence
from contextlib import asynccontextmanager, suppress
from pathlib import Path
from typing import Any

from station.command.errors import EXIT_FAILED, EXIT_USAGE, CommandError
from station.command.rehearsal import ACID_MOL_DM3, rehearsing
from station.command.room import RoomParts, opened_room, room_at_work
from station.command.room_asking import Answer, ask
from station.command.room_settings import RoomPart, RoomSettings, load_room_settings
from station.command.settings import ServerSettings, load_plan
from station.server.serve import PortTaken, listen

Json = dict[str, Any]

PORT = 8080
MOST_BENCHES = 200
CHILD = "station.command.rehearse_benches"
RESULT_WITHIN_S = 180.0


def add_to(commands: Any) -> None:
    """Add the command to the parser."""
    parser = commands.add_parser("rehearse", help="a class of virtual benches through the real link to the room")
    parser.add_argument("--benches", type=_benches, default=15, metavar="N", help="how many benches (15)")
    parser.add_argument("--minutes", type=_positive, metavar="M", help="end after so much class time")
    parser.add_argument("--speed", type=_positive, default=20.0, metavar="S", help="class seconds per second (20)")
    parser.add_argument("--config", type=Path, metavar="FILE", help="the room's settings (default: room.toml)")
    parser.set_defaults(work=_rehearse)


def _rehearse(options: argparse.Namespace) -> int:
    settings, _ = load_room_settings(options.config)
    url = f"http://127.0.0.1:{settings.server.port or PORT}/"
    if _is_room(url):
        asyncio.run(_class(options, url))
        return 0
    with (
        tempfile.TemporaryDirectory(prefix="benchwarm-room-", ignore_cleanup_errors=True) as folder,
        opened_room(_private(), Path(folder), Path(folder) / "room") as parts,
    ):
        asyncio.run(_in_private_room(options, parts))
    return 0


async def _in_private_room(options: argparse.Namespace, parts: RoomParts) -> None:
    """Hold the class in a room of its own."""
    known: list[str] = []

    async def held() -> None:
        while not known:  # noqa: ASYNC110 - the room tells its address in a moment
            await asyncio.sleep(0.05)
        await _class(options, known[0])

    await room_at_work(parts, lambda _, addresses: known.extend(addresses), held)


def _private() -> RoomSettings:
    """Return the settings of a room for this rehearsal alone, on this machine alone."""
    port = PORT
    try:
        listen("127.0.0.1", PORT).close()
    except PortTaken:
        port = 0
    return RoomSettings(room=RoomPart(port=0, host="127.0.0.1"), server=ServerSettings(host="127.0.0.1", port=port))


def _is_room(url: str) -> bool:
    answer = ask(f"{url}api/room")
    return answer is not None and answer.status == 200 and "tiles" in answer.body


async def _class(options: argparse.Namespace, url: str) -> None:
    """Hold the class: benches in, students to work, result out."""
    benches = rehearsing(options.benches)
    admitted = await _told(url, "api/room/rehearsal", {"users": [each["user"] for each in benches]})
    lesson = await _told(url, "api/room/lessons", {"label": "Rehearsal"})
    print(f"Open {url}room in a browser: {options.benches} benches, {options.speed:g} times as fast.", flush=True)
    asked = {
        "host": admitted["host"],
        "port": admitted["port"],
        "speed": options.speed,
        "acid_mol_dm3": ACID_MOL_DM3,
        "plan": load_plan(None).model_copy(update={"results": "at once"}).model_dump(mode="json"),
    }
    for each in benches:
        each["password"] = admitted["passwords"][each["user"]]
    real_s = None if options.minutes is None else 60.0 * options.minutes / options.speed
    async with _children(asked, _shared(benches, _processes(len(benches)))) as children:
        with suppress(TimeoutError):
            async with asyncio.timeout(real_s):
                await asyncio.gather(*(_lines(child, count) for child, count in children))
                print("All benches have finished.", flush=True)
    await _tell_result(url, lesson["lesson"])


def _processes(count: int) -> int:
    """One process has one core: two fill a small machine, and the room needs some of it too."""
    return min(count, max(1, os.cpu_count() or 1))


def _shared(benches: Sequence[Json], processes: int) -> list[list[Json]]:
    return [list(benches[first::processes]) for first in range(processes)]


@asynccontextmanager
async def _children(asked: Json, shares: Sequence[Sequence[Json]]) -> AsyncIterator[list[tuple[Process, int]]]:
    """Yield the processes with their numbers of benches once all have begun; whatever ends this ends them."""
    children = [(await _child({**asked, "benches": share}), len(share)) for share in shares]
    try:
        await asyncio.gather(*(_lines(child, 1) for child, _ in children))
        yield children
    finally:
        for child, _ in children:
            if child.stdin is not None:
                child.stdin.close()
        await asyncio.gather(*(_ended(child) for child, _ in children))


async def _child(asked: Json) -> Process:
    child = await asyncio.create_subprocess_exec(
        sys.executable, "-P", "-m", CHILD, stdin=asyncio.subprocess.PIPE, stdout=asyncio.subprocess.PIPE
    )
    assert child.stdin is not None  # noqa: S101 - it is a pipe
    child.stdin.write((json.dumps(asked) + "\n").encode())
    await child.stdin.drain()
    return child


async def _lines(child: Process, count: int) -> None:
    """Return when the process has said so many things."""
    assert child.stdout is not None  # noqa: S101 - it is a pipe
    for _ in range(count):
        if not await child.stdout.readline():
            raise CommandError("some benches of the rehearsal ended too soon; see above", EXIT_FAILED)


async def _ended(child: Process) -> None:
    try:
        async with asyncio.timeout(10):
            await child.wait()
    except TimeoutError:
        child.kill()
        await child.wait()


async def _tell_result(url: str, lesson: int) -> None:
    """Print the class result once it is computed of all that has ended."""
    found = _body(await asyncio.to_thread(ask, f"{url}api/room/class?lesson={lesson}"), url)
    with suppress(TimeoutError):
        async with asyncio.timeout(RESULT_WITHIN_S):
            while found["computing"]:
                await asyncio.sleep(1.0)
                found = _body(await asyncio.to_thread(ask, f"{url}api/room/class?lesson={lesson}"), url)
    result = found.get("result")
    print()
    if result is None:
        print("Class result: held back, or nothing has ended.", flush=True)
        return
    for line in result["words"]:
        print(line)
    for each in result["anomalies"]:
        print(f"▲ {each['text']} {each['reasons'][0]}")
    sys.stdout.flush()


async def _told(url: str, path: str, body: Json) -> Json:
    return _body(await asyncio.to_thread(ask, f"{url}{path}", body), url)


def _body(answer: Answer | None, url: str) -> Json:
    if answer is None:
        raise CommandError(f"the room at {url} does not answer any more", EXIT_FAILED)
    if answer.status != 200:
        status = EXIT_FAILED if answer.status >= 500 else EXIT_USAGE
        raise CommandError(f"the room at {url} would not: {answer.body.get('detail', answer.status)}", status)
    return answer.body


def _benches(text: str) -> int:
    with suppress(ValueError):
        if 1 <= int(text) <= MOST_BENCHES:
            return int(text)
    raise argparse.ArgumentTypeError(f"choose from 1 to {MOST_BENCHES} benches")


def _positive(text: str) -> float:
    with suppress(ValueError):
        if 0 < float(text) <= 1000:
            return float(text)
    raise argparse.ArgumentTypeError("choose a number above 0 and up to 1000")
