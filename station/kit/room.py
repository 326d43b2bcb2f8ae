"""What the room needs: the broker's files, with a hash of each bench's password, and the room's own settings.

A bench's password lies on its own card and nowhere else. The room may be a kit of its own, with Mosquitto as a system
service, or any machine that runs `station room`, which then starts a private one with the same files.
"""

from collections.abc import Mapping, Sequence
from typing import Any, Final

import tomli_w

from station.kit.sheets import KitSecrets
from station.kit.table import Kit, Kits
from station.room.broker import ACL, PASSWORDS, ROOM_PORT, ROOM_USER, acl_text, config_text, limits_text, with_passwords
from station.words import in_language, say

Drawn = Sequence[tuple[Kit, KitSecrets]]
LINK_FILE: Final = "link-password"
FOLDER: Final = "benchwarm/mosquitto"
LAPTOP_FOLDER: Final = "room"
_ETC: Final = "/etc/mosquitto"


def room_card(kits: Kits, secrets: KitSecrets, drawn: Drawn) -> dict[str, str]:
    """Return what makes a card the room's: its settings, and Mosquitto's files for first-start.sh to put in place."""
    room = {
        "name": in_language(kits.room.label if kits.room else say("kit-room-label"), kits.speaks),
        "broker": f"mqtt://127.0.0.1:{ROOM_PORT}",
        "password_file": LINK_FILE,
        "prefix": kits.prefix,
    }
    users = _users(drawn) | {ROOM_USER: secrets.link_password}
    return {
        "room.toml": toml_text({"room": room, **_common(kits, secrets)}),
        LINK_FILE: f"{secrets.link_password}\n",
        f"{FOLDER}/benchwarm.conf": config_text(f"{_ETC}/benchwarm.passwords", f"{_ETC}/benchwarm.acl"),
        f"{FOLDER}/benchwarm.passwords": with_passwords("", users),
        f"{FOLDER}/benchwarm.acl": acl_text(),
        f"{FOLDER}/service.conf": limits_text(),
    }


def laptop_files(kits: Kits, secrets: KitSecrets, drawn: Drawn) -> dict[str, str]:
    """Return what a machine that is no kit needs for `station room --config room/room.toml`, by path."""
    room = {"prefix": kits.prefix, "folder": "record"}
    broker = f"{LAPTOP_FOLDER}/record/broker"
    return {
        f"{LAPTOP_FOLDER}/room.toml": toml_text({"room": room, **_common(kits, secrets)}),
        f"{broker}/{PASSWORDS}": with_passwords("", _users(drawn)),
        f"{broker}/{ACL}": acl_text(),
    }


def toml_text(values: Mapping[str, Any]) -> str:
    """Return values and tables of values as TOML; None is left out."""
    kept = {key: _without_none(value) for key, value in values.items()}
    return tomli_w.dumps({key: value for key, value in kept.items() if value is not None})


def _without_none(value: Any) -> Any:
    return {key: each for key, each in value.items() if each is not None} if isinstance(value, Mapping) else value


def _users(drawn: Drawn) -> dict[str, str]:
    return {kit.hostname: secrets.link_password for kit, secrets in drawn if not kit.room}


def _common(kits: Kits, secrets: KitSecrets) -> dict[str, Mapping[str, str | None]]:
    access = {name: value for name, value in secrets.hashes().items() if not name.startswith("bench")}
    return {"access": access, "page": {"language": kits.language, "units": kits.units}}
