"""The station's settings: `station.toml`, from the card's boot partition, the working directory, or as named."""

import os
import tomllib
from pathlib import Path
from typing import Annotated, Literal, Self, TypeVar

from pydantic import BaseModel, ConfigDict, Field, SecretStr, ValidationError, field_validator, model_validator

from station.command.errors import CommandError
from station.practical.plan import READY_PLAN, Plan, PlanError, read_plan
from station.practical.plan_parts import Label
from station.practical.problems import problem_line_of
from station.practical.toml_text import toml_values
from station.room.address import host_and_port
from station.room.topics import is_user
from station.server.access_secrets import Secrets, checked_hash, checked_words

BOOT_SETTINGS = Path("/boot/firmware/station.toml")
LARGEST_FILE = 1_000_000

HostName = Annotated[str, Field(pattern=r"^[A-Za-z0-9._-]{1,253}$")]
Gpio = Annotated[int, Field(ge=2, le=27)]
AnySettings = TypeVar("AnySettings", bound=BaseModel)


class _Table(BaseModel):
    model_config = ConfigDict(extra="forbid", frozen=True)


class BenchSettings(_Table):
    """The bench."""

    name: Label = "Bench"


class ProbeSettings(_Table):
    """The probe: `driver` is chosen by name and never falls back."""

    driver: Literal["one-wire", "virtual", "none"] = "one-wire"
    tree: Path = Path("/sys/bus/w1/devices")
    id: Annotated[str, Field(pattern=r"^28-[0-9a-f]{12}$")] | None = None


class VirtualSettings(_Table):
    """The virtual cup: how fast its time runs, its seed, a script of faults; the acid, unless the seed draws it."""

    speed: Annotated[float, Field(gt=0, le=200, allow_inf_nan=False)] = 1.0
    seed: int = 1
    faults: str = ""
    acid_mol_dm3: Annotated[float, Field(gt=0, le=20, allow_inf_nan=False)] | None = None


class PanelSettings(_Table):
    """The panel; GPIO numbers that are not set are those of hardware.md."""

    pins: Literal["real", "mock", "none"] = "none"
    silent: bool = False
    wait_gpio: Gpio | None = None
    act_gpio: Gpio | None = None
    attention_gpio: Gpio | None = None
    buzzer_gpio: Gpio | None = None
    button_gpio: Gpio | None = None


class ServerSettings(_Table):
    """Where the page is served."""

    host: Annotated[str, Field(min_length=1)] = "0.0.0.0"  # noqa: S104 - any device on the lab network
    port: Annotated[int, Field(ge=0, le=65535)] = 8080


class AccessSettings(_Table):
    """Who may do what. Codes and hashes are secret: no message shows them."""

    bench_code: SecretStr | None = None
    bench_code_hash: SecretStr | None = None
    teacher_passphrase_hash: SecretStr | None = None
    technician_passphrase_hash: SecretStr | None = None
    names: tuple[HostName, ...] = ()

    @field_validator("bench_code")
    @classmethod
    def _long_enough(cls, code: SecretStr | None) -> SecretStr | None:
        if code is not None:
            checked_words("bench", code.get_secret_value())
        return code

    @field_validator("bench_code_hash", "teacher_passphrase_hash", "technician_passphrase_hash")
    @classmethod
    def _can_be_checked(cls, value: SecretStr | None) -> SecretStr | None:
        if value is not None:
            checked_hash(value.get_secret_value())
        return value

    @model_validator(mode="after")
    def _one_code(self) -> Self:
        if self.bench_code is not None and self.bench_code_hash is not None:
            raise ValueError("set bench_code or bench_code_hash, not both")
        return self

    def secrets(self) -> Secrets:
        """Return what the server checks against."""
        kept = (self.bench_code, self.bench_code_hash, self.teacher_passphrase_hash, self.technician_passphrase_hash)
        return Secrets(*(None if each is None else each.get_secret_value() for each in kept))


class PageSettings(_Table):
    """How the page speaks until a device chooses otherwise; without a language it follows the browser."""

    language: Literal["en", "de"] | None = None
    units: Literal["cm3", "mL"] = "cm3"


class LinkSettings(_Table):
    """The room: where its broker is, and as whom this bench speaks there. Without a broker the bench works alone."""

    broker: str | None = None
    user: str | None = None
    password_file: Path | None = None

    @model_validator(mode="after")
    def _whole(self) -> Self:
        if self.broker is None:
            return self
        host_and_port(self.broker)
        if self.user is None or not is_user(self.user):
            raise ValueError("user: the broker needs to know this bench: letters, digits, '-', '_' or '.', at most 40")
        return self


class RecordSettings(_Table):
    """Where the record is kept."""

    folder: Path | None = None


class Settings(_Table):
    """All settings; every one has a default."""

    bench: BenchSettings = BenchSettings()
    probe: ProbeSettings = ProbeSettings()
    virtual: VirtualSettings = VirtualSettings()
    panel: PanelSettings = PanelSettings()
    server: ServerSettings = ServerSettings()
    access: AccessSettings = AccessSettings()
    page: PageSettings = PageSettings()
    record: RecordSettings = RecordSettings()
    link: LinkSettings = LinkSettings()
    plan: Path | None = None


def load_settings(named: Path | None) -> tuple[Settings, Path]:
    """Return the settings and the folder that their relative paths start from. Raises CommandError."""
    path = settings_path(named)
    if path is None:
        return Settings(), Path()
    return _placed(read_settings(path, Settings), path.parent), path.parent


def read_settings(path: Path, kind: type[AnySettings]) -> AnySettings:
    """Return the settings in this file. Raises CommandError."""
    try:
        values = toml_values(read_text(path))
        return kind.model_validate(values)
    except tomllib.TOMLDecodeError as error:
        raise CommandError(f"{path}: not valid TOML: {error}") from None
    except ValidationError as error:
        raise CommandError(f"{path}: {_problem_line(error)}") from None


def _placed(settings: Settings, base: Path) -> Settings:
    """Return the settings with the password's file where it is looked for: beside the settings."""
    file = settings.link.password_file
    if file is None:
        return settings
    return settings.model_copy(update={"link": settings.link.model_copy(update={"password_file": base / file})})


def settings_path(named: Path | None) -> Path | None:
    """Return the file that the settings are read from; None where the defaults hold."""
    return named or next((each for each in (BOOT_SETTINGS, Path("station.toml")) if each.is_file()), None)


def _problem_line(error: ValidationError) -> str:
    """Return the line that says what is wrong, without any secret: it ends in the system's log."""
    errors = error.errors(include_url=False)
    return problem_line_of(
        [{**each, "input": _Hidden() if each["loc"][:1] == ("access",) else each["input"]} for each in errors]
    )


class _Hidden:
    def __repr__(self) -> str:
        return "not shown"


def load_plan(path: Path | None) -> Plan:
    """Return the plan in this file, or the one that ships with the station. Raises CommandError."""
    try:
        return read_plan(READY_PLAN, "plan") if path is None else read_plan(read_text(path), str(path))
    except PlanError as error:
        raise CommandError(str(error)) from None


def read_text(path: Path, largest: int = LARGEST_FILE) -> str:
    """Return the text of a file that a person named. Raises CommandError with what to do."""
    try:
        with path.open("rb") as file:
            content = file.read(largest + 1)
        if len(content) > largest:
            raise CommandError(f"{path}: larger than {largest // 1_000_000} MB; is it the right file?")
        return content.decode("utf-8")
    except FileNotFoundError:
        raise CommandError(f"{path}: no such file; check the name") from None
    except UnicodeDecodeError as error:
        raise CommandError(f"{path}: not UTF-8 text (byte {error.start}); save it as UTF-8") from None
    except OSError as error:
        raise CommandError(f"{path}: cannot be read: {error.strerror}") from None


def record_folder(settings: Settings, base: Path) -> Path:
    """Return where the record is kept: as set, else the service's state folder, else the user's data folder."""
    if settings.record.folder is not None:
        return base / settings.record.folder
    return default_record_folder()


def default_record_folder() -> Path:
    """Return the record's folder when nothing is set."""
    state = os.environ.get("STATE_DIRECTORY")
    if state:
        return Path(state.split(":")[0])
    data = os.environ.get("XDG_DATA_HOME")
    return (Path(data) if data else Path.home() / ".local" / "share") / "benchwarm"
