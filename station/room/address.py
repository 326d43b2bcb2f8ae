"""Where the broker is, and as whom one speaks to it."""

import re
from dataclasses import dataclass, field
from pathlib import Path
from urllib.parse import urlsplit

PORT = 1883
LARGEST_PASSWORD_FILE = 1000


class AddressError(ValueError):
    """The address or the password cannot be used; the message says what to change."""


@dataclass(frozen=True)
class BrokerAddress:
    """Host and port of an MQTT 5 broker, and the user to be there."""

    host: str
    port: int = PORT
    user: str | None = None
    password: str | None = field(default=None, repr=False)

    @classmethod
    def read(cls, address: str, user: str | None = None, password_file: Path | None = None) -> "BrokerAddress":
        """Return the address in `mqtt://host:1883`, with the password that stands in a file. Raises AddressError."""
        host, port = host_and_port(address)
        return cls(host, port, user, None if password_file is None else _password_in(password_file))

    def __str__(self) -> str:
        host = f"[{self.host}]" if ":" in self.host else self.host
        return f"mqtt://{host}:{self.port}"


def host_and_port(address: str) -> tuple[str, int]:
    """Return what stands in `mqtt://host:1883`. Raises AddressError."""
    try:
        split = urlsplit(address)
        port = PORT if split.port is None else split.port
    except ValueError:
        split, port = urlsplit(""), 0
    right = split.scheme == "mqtt" and split.hostname and not (split.path.strip("/") or split.query or split.username)
    if not right or not 0 < port <= 65535 or not re.fullmatch(r"[0-9A-Za-z.:_%-]{1,253}", split.hostname or ""):
        raise AddressError(f'{address!r} is no address of a broker: write it like "mqtt://room.local:1883"')
    return str(split.hostname), port


def _password_in(path: Path) -> str:
    try:
        with path.open("rb") as file:
            content = file.read(LARGEST_PASSWORD_FILE + 1)
        password = content.decode().rstrip("\r\n")
    except OSError as error:
        raise AddressError(f"{path}: the password cannot be read: {error.strerror}") from None
    except UnicodeDecodeError:
        password = ""
    if not password or len(content) > LARGEST_PASSWORD_FILE or not password.isprintable():
        raise AddressError(f"{path}: one line with the password should stand there")
    return password
