"""`station room`: the collector, a private broker unless another is named, and the teacher's page, until stopped."""

import argparse
import asyncio
import re
import unicodedata
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from importlib.metadata import version
from pathlib import Path
from typing import TYPE_CHECKING, Any

from station.command.helping import add_command
from station.command.practise import IN_A_ROOM, hall_of
from station.command.room.settings import RoomSettings, load_room_settings, room_folder, room_language
from station.command.settings import AccessSettings, PageSettings, Settings
from station.command.terminal import EXIT_ADDRESS, EXIT_FAILED, EXIT_RECORD, CommandError, tell
from station.kit.room import toml_text
from station.kit.table import host_name
from station.practical.kinds import DEFAULT, ready_plan
from station.practical.plan import Plan
from station.room.broker import ROOM_USER, BrokerError, PrivateBroker, UserTakenError, let_in, new_password
from station.room.collector import Collector
from station.room.store.database import StoreError
from station.room.store.store import RoomStore
from station.room.wire import LONGEST_USER, PORT, AddressError, BrokerAddress
from station.server.door.access import Access
from station.server.door.hosts import Hosts, addresses, own_addresses
from station.server.door.sessions import Sessions
from station.server.room.app import add_rehearsal, make_room_app
from station.server.room.contract import RoomAbout
from station.server.room.desk import RoomDesk
from station.server.room.serve import Work, serve_room
from station.server.serve import PortTaken, listen
from station.words import say

if TYPE_CHECKING:
    from station.room.announce import Announcer

BROKER_FOLDER = "broker"
EVERYWHERE = ("0.0.0.0", "::")  # noqa: S104 - compared, not bound


def add_to(commands: Any) -> None:
    """Add the command to the parser."""
    parser = add_command(
        commands,
        "room",
        does="all benches of a class: collector, broker, the teacher's page",
        example="room --new-bench bench-1 > bench-1.toml",
        ends=(EXIT_ADDRESS, EXIT_RECORD),
    )
    parser.add_argument("--config", type=Path, metavar="FILE", help="settings (default: room.toml, if there is one)")
    parser.add_argument(
        "--new-bench",
        metavar="NAME",
        help="let a bench in, print the [link] for its station.toml, and end; the room may be at work meanwhile"
        " (default: run the room)",
    )
    parser.add_argument(
        "--new-password", action="store_true", help="with --new-bench: a new password for one that is let in already"
    )
    parser.set_defaults(work=_room, language=room_language)


@dataclass(frozen=True)
class RoomParts:
    """What a room is made of; `private` is its own broker, None where another is named."""

    settings: RoomSettings
    store: RoomStore
    private: PrivateBroker | None
    broker: BrokerAddress


def _room(options: argparse.Namespace) -> int:
    settings, base = load_room_settings(options.config)
    if options.new_bench is not None:
        folder = room_folder(settings, base) / BROKER_FOLDER
        return _new_bench(options.new_bench, settings, folder, anew=options.new_password)
    with opened_room(settings, base, room_folder(settings, base)) as parts:
        asyncio.run(room_at_work(parts, _told, announced=settings.room.announce))
    return 0


def _new_bench(name: str, settings: RoomSettings, folder: Path, *, anew: bool) -> int:
    """Let a bench of this name into the private broker, and print its `[link]`. Raises CommandError.

    A name that is let in already keeps its password, which its card has, unless a new one is wanted (`anew`).
    """
    if settings.room.broker is not None:
        raise CommandError(say("new-bench-other-broker", address=settings.room.broker))
    user = host_name(_user_of(name), settings.room.prefix)[:LONGEST_USER]
    password = new_password()
    try:
        let_in(folder, {user: password}, anew=anew)
    except UserTakenError:
        raise CommandError(say("new-bench-taken", user_name=user)) from None
    except OSError as error:
        told = say("file-cannot-be-written-folder", path=str(folder), reason=str(error.strerror))
        raise CommandError(told, EXIT_FAILED) from None
    link = {"broker": str(_for_benches(settings)), "user": user, "password": password}
    print(toml_text({"link": link}), end="")
    return 0


def _user_of(name: str) -> str:
    """Return the bench's user at the broker: its name in letters that a topic can hold. Raises CommandError."""
    plain = unicodedata.normalize("NFKD", name).encode("ascii", "ignore").decode()
    user = re.sub(r"[^0-9A-Za-z._-]+", "-", plain).strip("-.").lower()[:LONGEST_USER]
    if not user or user == ROOM_USER:
        raise CommandError(say("new-bench-no-name", typed=name))
    return user


def _for_benches(settings: RoomSettings) -> BrokerAddress:
    """Return where benches find the room's private broker: this machine's address on a network."""
    host = settings.room.host
    found = next(iter(own_addresses()), "127.0.0.1") if host in EVERYWHERE else host
    return BrokerAddress(found, settings.room.port or PORT)


@contextmanager
def opened_room(settings: RoomSettings, base: Path, folder: Path) -> Iterator[RoomParts]:
    """Open store and broker; close them at the end. Raises CommandError."""
    try:
        store = RoomStore(folder)
        store.hold()
    except StoreError as error:
        raise CommandError(str(error), EXIT_RECORD) from None
    private: PrivateBroker | None = None
    try:
        named = settings.room.broker
        if named is None:
            private = PrivateBroker(folder / BROKER_FOLDER, settings.room.host, settings.room.port)
            private.start()
        broker = private.room_address if private else _named(settings, base)
        yield RoomParts(settings, store, private, broker)
    except BrokerError as error:
        raise CommandError(str(error), EXIT_FAILED) from None
    except StoreError as error:
        raise CommandError(str(error), EXIT_RECORD) from None
    finally:
        if private is not None:
            private.stop()
        store.close()


async def room_at_work(
    parts: RoomParts, told: Callable[[RoomParts, list[str]], None], *more: Work, announced: bool = False
) -> RoomDesk:
    """Serve the room until it is told to stop, or one of `more` returns. Raises CommandError.

    `announced`: the network is told where it is.
    """
    server = parts.settings.server
    try:
        bound = listen(server.host, server.port)
    except PortTaken as error:
        raise CommandError(str(error), EXIT_ADDRESS) from None
    known = addresses(server.host, bound.getsockname()[1])
    page = parts.settings.page
    collector = Collector(parts.store, parts.broker)
    about: RoomAbout = {"name": parts.settings.room.name, "language": page.language, "units": page.units}
    days = parts.settings.room.forget_after_days
    desk = RoomDesk(parts.store, collector, about, lambda: hall.states(), days)  # noqa: PLW0108 - the hall comes later
    app = make_room_app(desk, version("benchwarm"), _access(parts), lambda: known)
    if parts.private is not None:
        add_rehearsal(app, parts.private)
    works: list[Work] = [collector.run, *more]
    if parts.private is not None:
        works.append(parts.private.run)
    if announced and not _is_loopback(server.host):
        works.append(_announcer(parts, bound.getsockname()[1]).run)
    around = Settings(page=PageSettings(language=page.language, units=page.units), access=_names(parts))
    hall = hall_of(lambda: _plan_of(desk), IN_A_ROOM, around)
    await serve_room(app, desk, bound, works, lambda: told(parts, known), hall)
    return desk


def _is_loopback(host: str) -> bool:
    return host in ("localhost", "::1") or host.startswith("127.")


def _host(settings: RoomSettings) -> str:
    """Return what the room is called on the network, without ".local"."""
    return host_name(ROOM_USER, settings.room.prefix)


def _announcer(parts: RoomParts, page_port: int) -> "Announcer":
    from station.room.announce import Announced, Announcer  # noqa: PLC0415 - a room that is not announced needs it not

    settings = parts.settings
    host = settings.server.host
    broker_port = None if parts.private is None else parts.private.address.port
    room = Announced(str(settings.room.name), _host(settings), page_port, broker_port)
    return Announcer(room, own_addresses if host in EVERYWHERE else lambda: [host], tell)


def _plan_of(desk: RoomDesk) -> Plan:
    """Return the plan that most benches have, for practice; the ready one where there is none."""
    plans = [each.state.plan for each in desk.board.benches.values() if each.state.chosen and not each.state.practice]
    return max(plans, key=plans.count) if plans else ready_plan(DEFAULT)


def _names(parts: RoomParts) -> AccessSettings:
    return AccessSettings(names=parts.settings.access.names)


def _named(settings: RoomSettings, base: Path) -> BrokerAddress:
    chosen = settings.room
    password_file = None if chosen.password_file is None else base / chosen.password_file
    try:
        return BrokerAddress.read(chosen.broker or "", chosen.user, password_file)
    except AddressError as error:
        raise CommandError(str(error)) from None


def _access(parts: RoomParts) -> Access:
    """Return who may do what. Without a passphrase who sits at this machine is the teacher, and nobody else is."""
    settings = parts.settings.access
    secrets = settings.secrets()
    sessions = Sessions(secrets, parts.store.path.parent)
    return Access(
        secrets,
        sessions,
        everyone="looker" if secrets.has_staff else "teacher",
        hosts=Hosts((*settings.names, f"{_host(parts.settings)}.local")),
    )


def _told(parts: RoomParts, known: list[str]) -> None:
    for address in known:
        tell(say("told-address", name=parts.settings.room.name, address=address))
    broker = parts.broker
    if parts.private is not None:
        broker = parts.private.address
        if parts.settings.room.host in EVERYWHERE:
            broker = BrokerAddress(next(iter(own_addresses()), broker.host), broker.port)
    tell(say("told-benches-send-to", address=str(broker)))
