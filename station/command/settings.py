"""The station's settings: `station.toml`, from the card's boot partition, the working directory, or as named."""

import os
import tomllib
from pathlib import Path
from typing import Annotated, Literal, Self, TypeVar

from pydantic import BaseModel, ConfigDict, Field, SecretStr, ValidationError, field_validator, model_validator

from station.command.terminal import CommandError, language_in
from station.kit.table import Language
from station.practical.kinds import DEFAULT, read_plan, ready_plan
from station.practical.plan import Label, Plan, PlanError
from station.practical.problems import problem_line, toml_values
from station.practical.safety import safe
from station.room.wire import host_and_port, is_user
from station.server.door.secrets import Secrets, checked_hash, checked_words
from station.words import say

BOOT_SETTINGS = Path("/boot/firmware/station.toml")
LARGEST_FILE = 1_000_000

HostName = Annotated[str, Field(pattern=r"^[A-Za-z0-9._-]{1,253}$")]
Gpio = Annotated[int, Field(ge=2, le=27)]
AnySettings = TypeVar("AnySettings", bound=BaseModel)


class _Table(BaseModel):
    model_config = ConfigDict(extra="forbid", frozen=True)


class BenchSettings(_Table):
    """The bench."""

    name: Label = say("bench-label")


class ProbeSettings(_Table):
    """The probe: `driver` is chosen by name and never falls back."""

    driver: Literal["one-wire", "virtual", "none"] = "one-wire"
    tree: Path = Path("/sys/bus/w1/devices")
    id: Annotated[str, Field(pattern=r"^28-[0-9a-f]{12}$")] | None = None


class VirtualSettings(_Table):
    """The virtual cup: how fast its time runs, its seed, a script of faults; the acid where the plan tells none."""

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
            raise ValueError(say("settings-one-code"))
        return self

    def secrets(self) -> Secrets:
        """Return what the server checks against."""
        kept = (self.bench_code, self.bench_code_hash, self.teacher_passphrase_hash, self.technician_passphrase_hash)
        return Secrets(*(None if each is None else each.get_secret_value() for each in kept))


class PageSettings(_Table):
    """How the page speaks until a device chooses otherwise; without a language it follows the browser."""

    language: Language | None = None
    units: Literal["cm3", "mL"] = "cm3"


class LinkSettings(_Table):
    """The room: where its broker is, and as whom this bench speaks there. Without a broker the bench works alone.

    The password stands here, or alone in a file.
    """

    broker: str | None = None
    user: str | None = None
    password: Annotated[str, Field(min_length=1, max_length=200)] | None = Field(default=None, repr=False)
    password_file: Path | None = None

    @field_validator("broker")
    @classmethod
    def _can_be_reached(cls, broker: str | None) -> str | None:
        if broker is not None:
            host_and_port(broker)
        return broker

    @field_validator("user")
    @classmethod
    def _can_be_a_user(cls, user: str | None) -> str | None:
        if user is not None and not is_user(user):
            raise ValueError(say("settings-user-letters"))
        return user

    @model_validator(mode="after")
    def _whole(self) -> Self:
        if self.broker is not None and self.user is None:
            raise ValueError(say("settings-user-missing"))
        if self.password is not None and self.password_file is not None:
            raise ValueError(say("settings-one-password"))
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
        raise CommandError(say("problem-not-toml", where_text=str(path), reason=str(error))) from None
    except ValidationError as error:
        raise CommandError(say("file-problem", path=str(path), reason=problem_line(error))) from None


def _placed(settings: Settings, base: Path) -> Settings:
    """Return the settings with the password's file where it is looked for: beside the settings."""
    file = settings.link.password_file
    if file is None:
        return settings
    return settings.model_copy(update={"link": settings.link.model_copy(update={"password_file": base / file})})


def settings_path(named: Path | None) -> Path | None:
    """Return the file that the settings are read from; None where the defaults hold."""
    return named or next((each for each in (BOOT_SETTINGS, Path("station.toml")) if each.is_file()), None)


def page_language(path: Path | None) -> str:
    """Return the language that these settings of a bench or of a room choose for the page; English otherwise."""
    return language_in(path, "page")


def load_plan(path: Path | None) -> Plan:
    """Return the plan in this file, or the one that ships with the station. Raises CommandError."""
    try:
        return ready_plan(DEFAULT) if path is None else read_plan(read_text(path), str(path))
    except PlanError as error:
        raise CommandError(str(error)) from None


def load_safe_plan(path: Path | None) -> Plan:
    """Return the plan of a practical that is to begin. Raises CommandError also for one that leads into danger."""
    plan = load_plan(path)
    try:
        return safe(plan)
    except PlanError as error:
        raise CommandError(say("file-problem", path=str(path), reason=str(error))) from None


def read_text(path: Path, largest: int = LARGEST_FILE) -> str:
    """Return the text of a file that a person named. Raises CommandError with what to do."""
    try:
        with path.open("rb") as file:
            content = file.read(largest + 1)
        if len(content) > largest:
            raise CommandError(say("file-larger-mb", path=str(path), megabytes=largest // 1_000_000))
        return content.decode("utf-8")
    except FileNotFoundError:
        raise CommandError(say("file-no-such", path=str(path))) from None
    except UnicodeDecodeError as error:
        raise CommandError(say("file-not-utf-8-byte", path=str(path), byte=error.start)) from None
    except OSError as error:
        raise CommandError(say("file-cannot-be-read", path=str(path), reason=str(error.strerror))) from None


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
