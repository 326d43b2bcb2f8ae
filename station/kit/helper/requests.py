"""What may be asked of the helper: each request by its name, with values that are checked here and nowhere else."""

from typing import Annotated, Any, Final, Literal, Self

from pydantic import BaseModel, ConfigDict, Field, TypeAdapter, model_validator

from station.kit.on_card import network

LONGEST_BYTES: Final = 4096
SOCKET: Final = "/run/station-helper.sock"

# Letters are named: \w is every letter there is, which costs this process 25 MB for as long as it runs.
Hash = Annotated[str, Field(pattern=r"^\$argon2id\$[A-Za-z0-9_$,=+/.-]{20,200}$")]
Backup = Annotated[str, Field(pattern=r"^[A-Za-z0-9_-][A-Za-z0-9_.-]{0,79}\.backup$")]
"""The name of a file, without a way to another folder."""


class _Ask(BaseModel):
    model_config = ConfigDict(extra="forbid", frozen=True)


class NetworkAsk(_Ask):
    """Try another network, and keep it once it has answered for a minute."""

    do: Literal["network"]
    ssid: str | None = None
    password: Annotated[str | None, Field(repr=False)] = None
    hidden: bool = False
    country: str | None = None
    wired: bool = False

    @model_validator(mode="after")
    def _as_the_file(self) -> Self:
        if network.checked(self._values()) is None:
            raise ValueError("ssid, or wired = true")
        return self

    def _values(self) -> dict[str, Any]:
        return self.model_dump(exclude={"do"}, exclude_none=True)

    @property
    def wanted(self) -> network.Network:
        """The network, as network.toml would ask for it."""
        found = network.checked(self._values())
        assert found is not None  # noqa: S101 - the validator above
        return found


class Restart(_Ask):
    """Restart the machine."""

    do: Literal["restart"]


class ShutDown(_Ask):
    """Shut the machine down, so that the plug can be pulled."""

    do: Literal["shut-down"]


class Wipe(_Ask):
    """Delete the record and all sessions for good."""

    do: Literal["wipe"]


class Restore(_Ask):
    """Put a backup in the record's place: one of the card's own copies, or one on the stick."""

    do: Literal["restore"]
    place: Literal["card", "stick"]
    file: Backup


class BackUp(_Ask):
    """Copy the record onto the stick."""

    do: Literal["backup"]


class Update(_Ask):
    """Install the station from the stick's wheelhouse, named by its digits."""

    do: Literal["update"]
    sha256: Annotated[str, Field(pattern=r"^[0-9a-f]{16,64}$")]


class Settings(_Ask):
    """Change the name, the code or a passphrase in the card's settings; hashes alone travel."""

    do: Literal["settings"]
    name: Annotated[str, Field(min_length=1, max_length=24)] | None = None
    bench_code_hash: Hash | None = None
    teacher_passphrase_hash: Hash | None = None
    technician_passphrase_hash: Hash | None = None

    @property
    def changes(self) -> dict[tuple[str, str], str]:
        """The values by table and key of station.toml."""
        given = self.model_dump(exclude={"do"}, exclude_none=True)
        return {("bench" if key == "name" else "access", key): value for key, value in given.items()}


class Look(_Ask):
    """Ask what is there: the network, what became of a trial, copies that can be restored."""

    do: Literal["look"]


Ask = Annotated[
    NetworkAsk | Restart | ShutDown | Wipe | Restore | BackUp | Update | Settings | Look, Field(discriminator="do")
]
_ASK: Final[TypeAdapter[Any]] = TypeAdapter(Ask)


def read(line: bytes) -> Ask:
    """Return the request in this line of JSON. Raises ValueError; no value stands in its words."""
    if len(line) > LONGEST_BYTES:
        raise ValueError("too long")
    asked: Ask = _ASK.validate_json(line)
    return asked
