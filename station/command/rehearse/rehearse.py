"""`station rehearse`: a class of virtual benches through the real link, for a technician's trial and for load."""

import argparse
import asyncio
import json
import os
import random
import sys
import tempfile
from asyncio.subprocess import Process
from collections.abc import AsyncIterator, Sequence
from contextlib import asynccontextmanager, suppress
from pathlib import Path
from typing import Any

from station.bench.check.finding import ANY
from station.command.helping import add_command
from station.command.plans import PLAN_HELP, named_plan
from station.command.room.asking import Asking
from station.command.room.room import RoomParts, opened_room, room_at_work
from station.command.room.settings import RoomPart, RoomSettings, load_room_settings, room_language
from station.command.settings import ServerSettings, load_plan
from station.command.terminal import EXIT_ADDRESS, EXIT_FAILED, EXIT_RECORD, EXIT_USAGE, CommandError
from station.practical.kinds import DEFAULT
from station.room.wire import AddressError, words_in
from station.server.door.access import STAFF
from station.server.serve import PortTaken, listen, stopped_by_signal
from station.words import join, say
from station.words.speaking import spoken

# Who sits at the virtual benches of a rehearsal, and what goes wrong there.


Json = dict[str, Any]

ACID_MOL_DM3 = 0.392
"""All cups hold the same acid: a class has one bottle."""

TROUBLES: tuple[Json, ...] = (
    {},
    {"habits": {"stalled": [(1, 4)], "stall_s": 600.0}},
    {"faults": "gone@260+420"},
    {"habits": {"doubled": [(1, 3)]}},
    {},
    {"habits": {"react_s": 8.0, "calls": [(1, 2)]}},
    {},
    {"habits": {"hasty": [(1, 3), (1, 7), (2, 4)], "react_s": 1.5, "press_after_s": 0.0}},
    {},
    {"habits": {"spilled": [(1, 5)]}},
    {},
    {"habits": {"skipped": [(2, 4)]}},
    {},
    {"late_s": 150.0},
    {},
)
"""What is out of the ordinary at each bench, over and over again: two of the first three get into trouble."""


def rehearsing(count: int) -> list[Json]:
    """Return `count` benches: user, name, seed, habits, faults, and how late they begin in class seconds."""
    draw = random.Random("class")  # noqa: S311  (a simulation, not a secret)
    found = []
    for number in range(1, count + 1):
        trouble = TROUBLES[(number - 1) % len(TROUBLES)]
        habits = {"react_s": round(draw.uniform(2.0, 5.0), 2), "rinse_s": round(draw.uniform(20.0, 60.0), 1)}
        found.append(
            {
                "user": f"rehearsal-{number}",
                "name": spoken(say("kit-bench-label", number=number)),
                "seed": number,
                "habits": {**habits, **trouble.get("habits", {})},
                "faults": trouble.get("faults", ""),
                "late_s": trouble.get("late_s", round(draw.uniform(0.0, 40.0), 1)),
            }
        )
    return found


PORT = 8080
MOST_BENCHES = 200
CHILD = "station.command.rehearse.benches"
RESULT_WITHIN_S = 180.0


def add_to(commands: Any) -> None:
    """Add the command to the parser."""
    parser = add_command(
        commands,
        "rehearse",
        does="a class of virtual benches through the real link to the room",
        example="rehearse --benches 15 --speed 20",
        ends=(EXIT_ADDRESS, EXIT_RECORD),
    )
    parser.add_argument("--benches", type=_benches, default=15, metavar="N", help="how many benches")
    parser.add_argument(
        "--minutes", type=_positive, metavar="M", help="end after so many minutes of class time (default: with Ctrl-C)"
    )
    parser.add_argument("--plan", type=Path, metavar="PLAN", help=f"{PLAN_HELP} (default: {DEFAULT})")
    parser.add_argument("--speed", type=_positive, default=20.0, metavar="S", help="class seconds per second")
    parser.add_argument("--config", type=Path, metavar="FILE", help="the room's settings (default: room.toml)")
    parser.add_argument(
        "--passphrase-file",
        type=Path,
        metavar="FILE",
        help="one line: the teacher's or technician's passphrase of the room at work here (default: it has none)",
    )
    parser.set_defaults(work=_rehearse, language=room_language)


def _rehearse(options: argparse.Namespace) -> int:
    settings, _ = load_room_settings(options.config)
    passphrase = _passphrase(options.passphrase_file)
    room = Asking(_url(settings.server))
    if _is_room(room):
        asyncio.run(_beside(options, room, passphrase))
        return 0
    with (
        tempfile.TemporaryDirectory(prefix="benchwarm-room-", ignore_cleanup_errors=True) as folder,
        opened_room(_private(settings), Path(folder), Path(folder) / "room") as parts,
    ):
        asyncio.run(_in_private_room(options, parts))
    return 0


def _passphrase(path: Path | None) -> str | None:
    try:
        return None if path is None else words_in(path, "passphrase")
    except AddressError as error:
        raise CommandError(str(error)) from None


def _url(server: ServerSettings) -> str:
    """Return where a room with these settings is asked from this machine."""
    host = "127.0.0.1" if server.host in ANY else server.host
    return f"http://{f'[{host}]' if ':' in host else host}:{server.port or PORT}/"


async def _beside(options: argparse.Namespace, room: Asking, passphrase: str | None) -> None:
    """Hold the class in the room at work, until it is over or SIGINT or SIGTERM comes."""

    async def held() -> None:
        await _sign_in(room, passphrase)
        await _class(options, room)

    tasks = [asyncio.create_task(work()) for work in (stopped_by_signal(), held)]
    done, _ = await asyncio.wait(tasks, return_when=asyncio.FIRST_COMPLETED)
    for task in tasks:
        task.cancel()
    await asyncio.wait(tasks)
    for task in done:
        task.result()


async def _sign_in(room: Asking, passphrase: str | None) -> None:
    """Be who may hold a class there: who sits at the machine of a room without passphrases is already."""
    standing = await _told(room, "api/session")
    if standing["role"] in STAFF:
        return
    if passphrase is None:
        raise CommandError(say("rehearse-wants-passphrase", address=room.url))
    for role in STAFF:
        given = {"role": role, "passphrase": passphrase}
        answer = await asyncio.to_thread(room.ask, "api/session", given)
        while answer is not None and answer.status == 429:
            await asyncio.sleep(answer.wait_s)
            answer = await asyncio.to_thread(room.ask, "api/session", given)
        if answer is not None and answer.status == 204:
            return
    raise CommandError(say("rehearse-passphrase-wrong", address=room.url))


async def _in_private_room(options: argparse.Namespace, parts: RoomParts) -> None:
    """Hold the class in a room of its own."""
    known: list[str] = []

    async def held() -> None:
        while not known:  # noqa: ASYNC110 - the room tells its address in a moment
            await asyncio.sleep(0.05)
        await _class(options, Asking(known[0]))

    await room_at_work(parts, lambda _, addresses: known.extend(addresses), held)


def _private(settings: RoomSettings) -> RoomSettings:
    """Return the settings of a room for this rehearsal and this machine alone; on a free port if theirs is taken."""
    port = settings.server.port
    try:
        listen("127.0.0.1", port).close()
    except PortTaken:
        port = 0
    server = ServerSettings(host="127.0.0.1", port=port)
    return RoomSettings(room=RoomPart(port=0, host="127.0.0.1"), server=server, page=settings.page)


def _is_room(room: Asking) -> bool:
    answer = room.ask("api/room")
    return answer is not None and answer.status == 200 and "tiles" in answer.body


async def _class(options: argparse.Namespace, room: Asking) -> None:
    """Hold the class: benches in, students to work, result out; then it is there to be looked at until it is ended."""
    benches = rehearsing(options.benches)
    admitted = await _told(room, "api/room/rehearsal", {"users": [each["user"] for each in benches]})
    lesson = await _told(room, "api/room/lessons", {"label": spoken(say("rehearse-label"))})
    speed = f"{options.speed:g}"
    plan = load_plan(None) if options.plan is None else named_plan(options.plan)
    for found in (each for each in plan.ingredients if each.to_find):
        await _told(room, "api/room/made-up", {"mol_dm3": found.prepared_mol_dm3 or ACID_MOL_DM3})
    print(spoken(say("rehearse-open", address=f"{room.url}room", count=options.benches, speed=speed)), flush=True)
    asked = {
        "host": admitted["host"],
        "port": admitted["port"],
        "speed": options.speed,
        "acid_mol_dm3": ACID_MOL_DM3,
        "plan": plan.model_copy(update={"results": "at once"}).model_dump(mode="json"),
    }
    for each in benches:
        each["password"] = admitted["passwords"][each["user"]]
    real_s = None if options.minutes is None else 60.0 * options.minutes / options.speed
    told = False
    async with _children(asked, _shared(benches, _processes(len(benches)))) as children:
        with suppress(TimeoutError):
            async with asyncio.timeout(real_s):
                await asyncio.gather(*(_lines(child, count) for child, count in children))
                print(spoken(say("rehearse-all-finished")), flush=True)
                await _tell_result(room, lesson["lesson"])
                told = True
                print(f"\n{spoken(say('rehearse-stays-open'))}", flush=True)
                await asyncio.Event().wait()
    if not told:
        await _tell_result(room, lesson["lesson"])


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
        sys.executable,
        "-P",
        "-m",
        CHILD,
        stdin=asyncio.subprocess.PIPE,
        stdout=asyncio.subprocess.PIPE,
        start_new_session=True,  # Ctrl-C is for us; it ends when we close its standard input
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
            raise CommandError(say("rehearse-ended-too-soon"), EXIT_FAILED)


async def _ended(child: Process) -> None:
    try:
        async with asyncio.timeout(10):
            await child.wait()
    except TimeoutError:
        child.kill()
        await child.wait()


async def _tell_result(room: Asking, lesson: int) -> None:
    """Print the class result once it is computed of all that has ended."""
    found = await _told(room, f"api/room/class?lesson={lesson}")
    with suppress(TimeoutError):
        async with asyncio.timeout(RESULT_WITHIN_S):
            while found["computing"]:
                await asyncio.sleep(1.0)
                found = await _told(room, f"api/room/class?lesson={lesson}")
    result = found.get("result")
    print()
    if result is None:
        print(spoken(say("rehearse-no-result")), flush=True)
        return
    for line in [result["answer"], *result["plain"]] if result["answer"] else result["words"]:
        print(spoken(line))
    for each in result["anomalies"]:
        print(f"▲ {spoken(join([each['text'], each['reasons'][0]]))}")
    sys.stdout.flush()


async def _told(room: Asking, path: str, body: Json | None = None) -> Json:
    answer, url = await asyncio.to_thread(room.ask, path, body), room.url
    if answer is None:
        raise CommandError(say("rehearse-no-answer", address=url), EXIT_FAILED)
    if answer.status != 200:
        status = EXIT_FAILED if answer.status >= 500 else EXIT_USAGE
        reason = str(answer.body.get("detail", answer.status))
        raise CommandError(say("rehearse-would-not", address=url, reason=reason), status)
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
