"""The table of benches, `kits.toml`: read, checked, and its mistakes told with file, line and remedy."""

import re
import tomllib
from collections import Counter
from collections.abc import Mapping
from pathlib import Path
from typing import Annotated, Any, Literal, Self

from pydantic import AfterValidator, BaseModel, ConfigDict, Field, PrivateAttr, ValidationError, model_validator

from station.practical.problems import problem_line_of, toml_values
from station.server.door.secrets import checked_words
from station.words import ENGLISH, Message, in_language, languages, plain, say

LARGEST_BYTES = 200_000
MOST_KITS = 100


class KitError(ValueError):
    """A table, or something beside it, that cannot be used; the message is one line that says what to change."""


class _Table(BaseModel):
    model_config = ConfigDict(extra="forbid", frozen=True)


def _plain(text: str) -> str:
    if not text.isprintable() or text != text.strip():
        raise ValueError(say("kit-plain-text"))
    return text


def _with_catalogue(language: str) -> str:
    if language not in languages():
        raise ValueError(say("settings-language", languages_text=", ".join(languages())))
    return language


Language = Annotated[str, AfterValidator(_with_catalogue)]
"""The code of a language that has a catalogue."""
Name = Annotated[str, Field(min_length=1, max_length=24), AfterValidator(_plain)]
SshKey = Annotated[str, Field(pattern=r"^(ssh-ed25519|ssh-rsa|ecdsa-sha2-\S+) \S+( .*)?$", max_length=2000)]
Country = Annotated[str, Field(pattern=r"^[A-Z]{2}$")]


class Network(_Table):
    """A Wi-Fi network; without a password it is an open one."""

    ssid: Annotated[str, Field(min_length=1, max_length=32), AfterValidator(_plain)]
    password: Annotated[str, Field(min_length=8, max_length=63), AfterValidator(_plain)] | None = None
    hidden: bool = False


class Kit(_Table):
    """One bench, or the room; what it does not say is the table's."""

    number: Annotated[int, Field(ge=1, le=999)]
    name: Name | None = None
    network: Network | None = None
    country: Country | None = None
    probe_id: Annotated[str, Field(pattern=r"^28-[0-9a-f]{12}$")] | None = None
    room: bool = False
    _prefix: str | None = PrivateAttr(None)
    """The table's: two rooms of one school have the same numbers."""

    @property
    def label(self) -> Message:
        """What people call the bench, or the room."""
        if self.name is not None:
            return plain(self.name)
        return say("kit-room-label") if self.room else say("kit-bench-label", number=self.number)

    @property
    def prefix(self) -> str | None:
        """The table's prefix for all names of its room."""
        return self._prefix

    @property
    def hostname(self) -> str:
        """What the network calls it (RFC 1123); a bench's user at the broker, too."""
        return host_name("room" if self.room else f"bench-{self.number}", self._prefix)


def host_name(name: str, prefix: str | None) -> str:
    """Return what a machine of a room is called on the network: with the room's prefix, where it has one."""
    return name if prefix is None else f"{prefix}-{name}"


Prefix = Annotated[str, Field(pattern=r"^[a-z0-9]([a-z0-9-]{0,14}[a-z0-9])?$")]
"""Small letters, digits and hyphens: a part of host names (RFC 1123) and of topics."""


def _long_enough(words: str) -> str:
    return checked_words("teacher", words) and words


Passphrase = Annotated[str, AfterValidator(_plain), AfterValidator(_long_enough)]


class Kits(_Table):
    """The whole table: what all benches share, then each bench."""

    release: Literal["trixie"] = "trixie"
    prefix: Prefix | None = None
    teacher_passphrase: Passphrase | None = None
    technician_passphrase: Passphrase | None = None
    own_passphrases: bool = False
    country: Country | None = None
    network: Network | None = None
    plan: str | None = None
    panel: Literal["real", "none"] = "real"
    language: Language | None = None
    units: Literal["cm3", "mL"] = "cm3"
    ssh_key: (
        Annotated[str, Field(pattern=r"^(ssh-ed25519|ssh-rsa|ecdsa-sha2-\S+) \S+( .*)?$", max_length=2000)] | None
    ) = None
    broker: Annotated[str, Field(pattern=r"^[0-9A-Za-z]([0-9A-Za-z.-]{0,251}[0-9A-Za-z])?$")] | None = None
    kit: Annotated[tuple[Kit, ...], Field(min_length=1, max_length=MOST_KITS)]

    @property
    def speaks(self) -> str:
        """The language of what is written for people: cards, sheets, names that the table does not give."""
        return self.language or ENGLISH

    @property
    def room(self) -> Kit | None:
        """The kit that is the room, if one is."""
        return next((each for each in self.kit if each.room), None)

    @property
    def laptop(self) -> Kit:
        """The room as a machine that is none of the kits: nobody's number, and the table's prefix."""
        laptop = Kit(number=999, room=True)
        laptop._prefix = self.prefix
        return laptop

    @property
    def needs_laptop(self) -> bool:
        """Whether the benches have a room that is none of the kits."""
        return self.broker is not None and self.room is None

    @property
    def broker_host(self) -> str | None:
        """Where the benches find the broker: as the table says, else the kit that is the room; None without a room."""
        return self.broker or (f"{self.room.hostname}.local" if self.room else None)

    @model_validator(mode="after")
    def _told_apart(self) -> Self:
        if self.own_passphrases and (self.teacher_passphrase or self.technician_passphrase):
            raise ValueError(say("kit-own-passphrases"))
        for each in self.kit:
            each._prefix = self.prefix
        for what, values in (
            ("number", [str(each.number) for each in self.kit]),
            ("name", [in_language(each.label, self.speaks).casefold() for each in self.kit]),
        ):
            twice = [value for value, count in Counter(values).items() if count > 1]
            if twice:
                raise ValueError(say("kit-twice", what_name=what, typed=twice[0]))
        if sum(each.room for each in self.kit) > 1:
            raise ValueError(say("kit-room-twice"))
        for each in self.kit:
            if (each.network or self.network) and not (each.country or self.country):
                raise ValueError(say("kit-wifi-country", label_name=each.label))
        return self


def read_kits(path: Path) -> Kits:
    """Return the table in this file. Raises KitError with file, line and remedy."""
    try:
        with path.open("rb") as file:
            content = file.read(LARGEST_BYTES + 1)
    except FileNotFoundError:
        raise KitError(say("file-no-such", path=str(path))) from None
    except OSError as error:
        raise KitError(say("file-cannot-be-read", path=str(path), reason=str(error.strerror))) from None
    if len(content) > LARGEST_BYTES:
        raise KitError(say("file-larger-kb", path=str(path), kilobytes=LARGEST_BYTES // 1000))
    try:
        text = content.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        line = content[: error.start].count(b"\n") + 1
        raise KitError(say("file-not-utf-8-line", path=str(path), line=line)) from None
    return kits_from(text, str(path))


def kits_from(text: str, where: str) -> Kits:
    """Return the table in this text; `where` names the file in errors. Raises KitError."""
    text = text.removeprefix("\ufeff").replace("\r\n", "\n")
    try:
        values = toml_values(text)
    except tomllib.TOMLDecodeError as error:
        raise KitError(say("problem-not-toml", where_text=where, reason=str(error))) from None
    try:
        return Kits.model_validate(values)
    except ValidationError as error:
        first = error.errors(include_url=False)[0]
        line = _line_of(text, first["loc"], values) if first["loc"] else _line_of_twice(text, first)
        raise KitError(say("file-line", path=where, line=line, reason=problem_line_of([dict(first)]))) from None


def _line_of_twice(text: str, problem: Mapping[str, Any]) -> int:
    """Return the line of the value that is there twice: the second one; 1 for what is about the whole table."""
    match problem.get("ctx"):
        case {
            "error": ValueError(args=(Message(id="kit-twice", values={"what_name": str(key), "typed": str(value)}),))
        }:
            pattern = re.compile(rf'\s*{key}\s*=\s*["\']?{re.escape(value)}["\']?\s*(#.*)?$', re.IGNORECASE)
        case _:
            return 1
    return max((index for index, line in enumerate(text.split("\n"), 1) if pattern.match(line)), default=1)


def _line_of(text: str, loc: tuple[int | str, ...], values: Mapping[str, Any]) -> int:
    """Return the line (from 1) of the key that a problem is about, or of the table that should have it."""
    lines = text.split("\n")
    start = 0
    numbers = [part for part in loc if isinstance(part, int)]
    if loc[:1] == ("kit",) and numbers:
        heads = [index for index, line in enumerate(lines) if re.match(r"\s*\[\[\s*kit\s*\]\]", line)]
        start = heads[numbers[0]] if numbers[0] < len(heads) else 0
    elif loc and isinstance(values.get(str(loc[0])), Mapping):
        start = next((index for index, line in enumerate(lines) if re.match(rf"\s*\[{loc[0]}\]", line)), 0)
    names = [re.escape(str(part)) for part in loc if isinstance(part, str)]
    for name in reversed(names):
        for index in range(start, len(lines)):
            if index > start and re.match(r"\s*\[\[", lines[index]):
                break
            if re.match(rf'\s*"?{name}"?\s*[.=]', lines[index]) or re.search(rf"[{{,]\s*{name}\s*=", lines[index]):
                return index + 1
    return start + 1
