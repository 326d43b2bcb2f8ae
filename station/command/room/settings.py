"""The room's settings: `room.toml`, in the working directory or as named."""

import argparse
import os
from pathlib import Path
from typing import Annotated

from pydantic import BaseModel, ConfigDict, Field, field_validator

from station.command.settings import AccessSettings, PageSettings, ServerSettings, page_language, read_settings
from station.kit.table import Prefix
from station.practical.plan import Label
from station.room.lesson_book import SCHOOL_YEAR_DAYS
from station.room.wire import host_and_port
from station.words import say

FILE = Path("room.toml")


class _Table(BaseModel):
    model_config = ConfigDict(extra="forbid", frozen=True)


class RoomPart(_Table):
    """The room itself: its broker and as whom to be there, and where its record is kept.

    Without a broker it has a private one, which listens on `host` and `port`. `prefix` tells the names of two rooms of
    one school apart; `announce` lets the network find the room by its name (multicast DNS). Names of
    classes and groups are forgotten `forget_after_days` after their lesson; 0 keeps them.
    """

    name: Label = say("kit-room-label")
    broker: str | None = None
    user: str = "room"
    password_file: Path | None = None
    host: Annotated[str, Field(min_length=1)] = "0.0.0.0"  # noqa: S104 - any bench on the lab network
    port: Annotated[int, Field(ge=0, le=65535)] = 1883
    folder: Path | None = None
    prefix: Prefix | None = None
    announce: bool = True
    forget_after_days: Annotated[int, Field(ge=0, le=3650)] = SCHOOL_YEAR_DAYS

    @field_validator("broker")
    @classmethod
    def _can_be_reached(cls, broker: str | None) -> str | None:
        if broker is not None:
            host_and_port(broker)
        return broker


class RoomSettings(_Table):
    """All settings of a room; every one has a default."""

    room: RoomPart = RoomPart()
    server: ServerSettings = ServerSettings()
    access: AccessSettings = AccessSettings()
    page: PageSettings = PageSettings()


def room_language(options: argparse.Namespace) -> str:
    """Return the language that the room's settings choose for the page; English otherwise."""
    return page_language(_path(options.config))


def _path(named: Path | None) -> Path | None:
    return named or (FILE if FILE.is_file() else None)


def load_room_settings(named: Path | None) -> tuple[RoomSettings, Path]:
    """Return the settings and the folder that their relative paths start from. Raises CommandError."""
    path = _path(named)
    if path is None:
        return RoomSettings(), Path()
    return read_settings(path, RoomSettings), path.parent


def room_folder(settings: RoomSettings, base: Path) -> Path:
    """Return where the room's record is kept: as set, else the service's state folder, else the user's data folder."""
    if settings.room.folder is not None:
        return base / settings.room.folder
    state = os.environ.get("STATE_DIRECTORY")
    if state:
        return Path(state.split(":")[0])
    data = os.environ.get("XDG_DATA_HOME")
    return (Path(data) if data else Path.home() / ".local" / "share") / "benchwarm-room"
