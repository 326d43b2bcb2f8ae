"""The broker: the real Mosquitto, as a system service with these files, or as a private child with the same ones.

Nobody is anonymous, each bench reaches its own branch and nothing else, and a message is no longer than a batch may
be. The broker is taken for forgetful all the same: what matters is acknowledged by the room, not by the broker.
"""

import base64
import hashlib
import os
import secrets
from collections.abc import Mapping
from pathlib import Path
from typing import Final

from station.room import topics
from station.room.wire import LARGEST_BYTES

ROOM_USER: Final = "room"
CONFIG, PASSWORDS, ACL = "mosquitto.conf", "passwords", "acl"
_ROUNDS, _SALT_BYTES, _HASH_BYTES = 101, 12, 64
_PACKET_BYTES = LARGEST_BYTES + 2_000


def acl_text() -> str:
    """Return who may do what. `%u` is the user who signed in; a client's own id (`%c`) anybody can choose."""
    lines = [
        f"user {ROOM_USER}",
        f"topic readwrite {topics.PREFIX}/#",
        "",
        *(f"pattern write {topics.PREFIX}/%u/{what}" for what in topics.FROM_BENCH),
        *(f"pattern read {topics.PREFIX}/%u/{what}" for what in topics.TO_BENCH),
    ]
    return "\n".join(lines) + "\n"


def password_line(user: str, password: str) -> str:
    """Return the line that `mosquitto_passwd` would write: PBKDF2 with SHA-512 (Mosquitto's format 7).

    The passwords are made by `new_password`, so that the few rounds of the format do no harm.
    """
    if not topics.is_user(user):
        raise ValueError(f"{user!r} cannot be a user")
    salt = secrets.token_bytes(_SALT_BYTES)
    digest = hashlib.pbkdf2_hmac("sha512", password.encode(), salt, _ROUNDS, _HASH_BYTES)
    return f"{user}:$7${_ROUNDS}${base64.b64encode(salt).decode()}${base64.b64encode(digest).decode()}\n"


def new_password() -> str:
    """Return a password of 128 bits."""
    return secrets.token_urlsafe(16)


def config_text(passwords: str, acl: str, *, host: str | None = None, port: int = 1883, own: str | None = None) -> str:
    """Return the broker's configuration.

    `passwords` and `acl` are the paths of those files. `own` is the folder of a private broker's data; without it
    the text is for `/etc/mosquitto/conf.d`, where Debian's own file says that and where the data are.
    """
    lines = [
        "# Made by Benchwarm. One bench, one user; who may do what stands in the ACL file.",
        f"listener {port}" + ("" if host is None else f" {host}"),
        "allow_anonymous false",
        f"password_file {passwords}",
        f"acl_file {acl}",
        f"max_packet_size {_PACKET_BYTES}",
        "max_inflight_messages 500",  # to the room: 20, the usual, would be a turn of its loop
        "max_queued_messages 5000",
        "persistent_client_expiration 1d",
        "autosave_interval 60",
        "connection_messages false",
        "set_tcp_nodelay true",
    ]
    if own is not None:
        lines += ["persistence true", f"persistence_location {own}/", "log_dest stderr", "log_type error"]
        if os.geteuid() == 0:
            lines.append("user root")  # otherwise it gives up root, and cannot write into our folder
    return "\n".join(lines) + "\n"


def write_private(path: Path, text: str) -> None:
    """Write a file that only this user can read, at once or not at all."""
    part = path.with_name(f"{path.name}.part")
    handle = os.open(part, os.O_WRONLY | os.O_CREAT | os.O_TRUNC, 0o600)
    with os.fdopen(handle, "w", encoding="utf-8") as file:
        file.write(text)
    part.replace(path)


def with_passwords(text: str, users: Mapping[str, str]) -> str:
    """Return the text of a password file with these users' passwords in it, others being left as they are."""
    others = [line for line in text.splitlines() if line and line.partition(":")[0] not in users]
    return "".join(f"{line}\n" for line in others) + "".join(map(password_line, users, users.values()))
