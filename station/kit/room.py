"""What the room needs: the broker's files, with a hash of each bench's password, and the room's own settings.

A bench's password lies on its own card and nowhere else. The room may be a kit of its own, with Mosquitto as a system
service, or any machine that runs `station room`, which then starts a private one with the same files.
"""

import json
from collections.abc import Mapping, Sequence
from typing import Final

from station.kit.table import Kit, Kits
from station.kit.words import KitSecrets
from station.room.address import PORT
from station.room.broker import ACL, PASSWORDS, ROOM_USER, acl_text, config_text, with_passwords

Drawn = Sequence[tuple[Kit, KitSecrets]]
LINK_FILE: Final = "link-password"
FOLDER: Final = "benchwarm/mosquitto"
LAPTOP_FOLDER: Final = "room"
_ETC: Final = "/etc/mosquitto"


def room_card(kits: Kits, secrets: KitSecrets, drawn: Drawn) -> dict[str, str]:
    """Return what makes a card the room's: its settings, and Mosquitto's files for first-start.sh to put in place."""
    room = {
        "name": kits.room.label if kits.room else "Room",
        "broker": f"mqtt://127.0.0.1:{PORT}",
        "password_file": LINK_FILE,
    }
    users = _users(drawn) | {ROOM_USER: secrets.link_password}
    return {
        "room.toml": toml_tables({"room": room, **_common(kits, secrets)}),
        LINK_FILE: f"{secrets.link_password}\n",
        f"{FOLDER}/benchwarm.conf": config_text(f"{_ETC}/benchwarm.passwords", f"{_ETC}/benchwarm.acl"),
        f"{FOLDER}/benchwarm.passwords": with_passwords("", users),
        f"{FOLDER}/benchwarm.acl": acl_text(),
    }


def laptop_files(kits: Kits, secrets: KitSecrets, drawn: Drawn) -> dict[str, str]:
    """Return what a machine that is no kit needs for `station room --config room/room.toml`, by path."""
    room = {"folder": "record"}
    broker = f"{LAPTOP_FOLDER}/record/broker"
    return {
        f"{LAPTOP_FOLDER}/room.toml": toml_tables({"room": room, **_common(kits, secrets)}),
        f"{broker}/{PASSWORDS}": with_passwords("", _users(drawn)),
        f"{broker}/{ACL}": acl_text(),
    }


def needs_laptop(kits: Kits) -> bool:
    """Whether the benches have a room that is none of the kits."""
    return kits.broker is not None and kits.room is None


def toml_tables(tables: Mapping[str, Mapping[str, str | None]]) -> str:
    """Return tables of texts as TOML; None is left out."""
    lines = []
    for name, values in tables.items():
        lines.append(f"[{name}]\n")
        # A JSON string is a TOML basic string (TOML 1.0; both escape in the same way).
        lines += [f"{key} = {json.dumps(value)}\n" for key, value in values.items() if value is not None]
        lines.append("\n")
    return "".join(lines)


def _users(drawn: Drawn) -> dict[str, str]:
    return {kit.hostname: secrets.link_password for kit, secrets in drawn if not kit.room}


def _common(kits: Kits, secrets: KitSecrets) -> dict[str, Mapping[str, str | None]]:
    access = {name: value for name, value in secrets.hashes().items() if not name.startswith("bench")}
    return {"access": access, "page": {"language": kits.language, "units": kits.units}}
