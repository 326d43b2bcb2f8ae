"""`station check` on the kit that is the room: its broker, its page, and the machine below; no probe, no panel."""

import asyncio
import http.client
import json
import shutil
import tomllib
from pathlib import Path
from typing import Final

from station.bench.check.finding import ANY, WITHIN_S, Finding, Kit
from station.bench.check.machine import clock, power, versions
from station.bench.check.network import network
from station.bench.check.storage import free_space, storage
from station.command.check.link import asked
from station.command.room.settings import RoomSettings, load_room_settings, room_folder
from station.command.settings import settings_path
from station.command.terminal import CommandError
from station.room.wire import AddressError, BrokerAddress
from station.server.door.hosts import addresses
from station.words import say

BOOT_SETTINGS: Final = Path("/boot/firmware/room.toml")
SERVICE_FOLDER: Final = Path("/var/lib/station-room/room")


def room_settings_path(named: Path | None) -> Path | None:
    """Return the room's settings, where it is a room that is to be looked at; None for a bench."""
    if named is None:
        return BOOT_SETTINGS if settings_path(None) is None and BOOT_SETTINGS.is_file() else None
    try:
        return named if "room" in tomllib.loads(named.read_text(encoding="utf-8-sig")) else None
    except (OSError, ValueError):
        return None


def check_room(path: Path) -> tuple[str, list[Finding]]:
    """Return the room's name and what is found, in some seconds."""
    try:
        settings, base = load_room_settings(path)
    except CommandError as error:
        return say("kit-room-label"), [Finding("settings", "red", str(error), say("check-room-settings"))]
    kit = _kit(settings, base)
    found = [Finding("settings", "green", say("check-read-from", path=str(path))), _broker(settings, base), _page(kit)]
    return settings.room.name, [
        *found,
        *(check(kit) for check in (storage, free_space, clock, power, network, versions)),
    ]


def _kit(settings: RoomSettings, base: Path) -> Kit:
    own = settings.room.folder is None and SERVICE_FOLDER.exists()
    return Kit(
        bench=settings.room.name,
        driver="none",
        folder=SERVICE_FOLDER if own else room_folder(settings, base),
        host=settings.server.host,
        port=settings.server.port,
        addresses=tuple(addresses(settings.server.host, settings.server.port)),
    )


def _broker(settings: RoomSettings, base: Path) -> Finding:
    chosen = settings.room
    if chosen.broker is None:
        if shutil.which("mosquitto", path="/usr/sbin:/usr/bin:/usr/local/sbin") is None:
            return Finding("broker", "red", say("check-room-no-mosquitto"), say("check-room-install"))
        return Finding("broker", "green", say("check-room-private"))
    try:
        password_file = None if chosen.password_file is None else base / chosen.password_file
        address = BrokerAddress.read(chosen.broker, chosen.user, password_file)
    except AddressError as error:
        return Finding("broker", "red", str(error), say("check-link-password-file"))
    match asyncio.run(asked(address)):
        case "lets in":
            return Finding("broker", "green", say("check-room-lets-in", address=chosen.broker))
        case "refuses":
            text = say("check-room-refuses", address=str(address))
        case "is silent":
            text = say("check-link-silent", address=str(address))
    return Finding("broker", "red", text, say("check-room-systemctl"))


def _page(kit: Kit) -> Finding:
    host = "127.0.0.1" if kit.host in ANY else kit.host
    connection = http.client.HTTPConnection(host, kit.port, timeout=WITHIN_S)
    try:
        connection.request("GET", "/api/room")
        answer = connection.getresponse()
        json.loads(answer.read())
        if answer.status == 200:
            return Finding("room", "green", say("check-room-at-work", port=kit.port))
    except (OSError, http.client.HTTPException, ValueError):
        pass
    finally:
        connection.close()
    return Finding("room", "amber", say("check-room-not-at-work", port=kit.port), say("check-room-start"))
