"""One folder per card, the wheelhouse in each, and the two sheets beside them."""

import os
import shutil
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from station.kit.card import FOLDER, card_files
from station.kit.offer import write_sums
from station.kit.room import Drawn, laptop_files, needs_laptop
from station.kit.sheets import labels_sheet, secrets_sheet
from station.kit.table import Kit, KitError, Kits
from station.kit.wheelhouse import fetched, own_wheel
from station.kit.words import KitSecrets, new_secrets
from station.practical.plan import PlanError, read_plan

WHEELHOUSE, LABELS, SECRETS = "wheelhouse", "labels.html", "codes-and-passphrases.html"


@dataclass(frozen=True)
class Made:
    """What was made: the cards' folders, the sheets, what is missing, in words, and the SHA-256 of the wheels' list."""

    cards: tuple[Path, ...]
    sheets: tuple[Path, ...]
    amber: tuple[str, ...]
    digest: str


def make_kits(
    kits: Kits, base: Path, out: Path, lgpio_wheel: Path | None = None, wheelhouse: Path | None = None
) -> Made:
    """Write everything into `out`, which must be new or empty. Raises KitError; then nothing is left half done.

    `base` is the folder of the table, where its plan lies; `wheelhouse` holds wheels that were fetched before.
    """
    plan = _plan(kits, base)
    _empty(out)
    try:
        wheels, digest = _wheels(kits, out, lgpio_wheel, wheelhouse)
        drawn = [(kit, new_secrets()) for kit in kits.kit]
        cards = tuple(_card(kits, kit, secrets, plan, out, wheels, drawn) for kit, secrets in drawn)
        known = [*drawn, *_laptop(kits, out, drawn)]
        sheets = (_private(out / LABELS, labels_sheet(drawn)), _private(out / SECRETS, secrets_sheet(known)))
    except OSError as error:
        raise KitError(f"{out}: cannot be written: {error.strerror}; choose another folder") from None
    return Made(cards, sheets, missing(kits, wheels), digest)


def _plan(kits: Kits, base: Path) -> str | None:
    if kits.plan is None:
        return None
    path = base / kits.plan
    try:
        text = path.read_text(encoding="utf-8-sig")
        read_plan(text, str(path))
    except OSError as error:
        raise KitError(f"{path}: the plan cannot be read: {error.strerror}") from None
    except (PlanError, UnicodeDecodeError) as error:
        raise KitError(f"{path}: {error}" if isinstance(error, UnicodeDecodeError) else str(error)) from None
    return text


def _empty(out: Path) -> None:
    try:
        out.mkdir(parents=True, exist_ok=True)
        if any(out.iterdir()):
            raise KitError(f"{out}: not empty; name a new folder, since each run makes new codes")
    except OSError as error:
        raise KitError(f"{out}: cannot be written: {error.strerror}; choose another folder") from None


def _wheels(kits: Kits, out: Path, lgpio_wheel: Path | None, given: Path | None) -> tuple[Path, str]:
    wheels = out / WHEELHOUSE
    wheels.mkdir()
    if given is not None:
        for wheel in given.glob("*.whl"):
            shutil.copy(wheel, wheels)
    own = own_wheel(wheels)
    if given is None:
        fetched(own, wheels, kits.release)
    if not list(wheels.glob("pip-*.whl")):
        raise KitError(f"{given}: no pip wheel in it; leave --wheelhouse out to have everything fetched")
    if lgpio_wheel is not None:
        shutil.copy(lgpio_wheel, wheels)
    return wheels, write_sums(wheels)


def _laptop(kits: Kits, out: Path, drawn: Drawn) -> Drawn:
    """Write the folder of a room that is none of the kits, and return what was drawn for it."""
    if not needs_laptop(kits):
        return ()
    room, secrets = Kit(number=999, room=True), new_secrets()
    for name, text in laptop_files(kits, secrets, drawn).items():
        (out / name).parent.mkdir(parents=True, exist_ok=True)
        _private(out / name, text)
    return ((room, secrets),)


def _card(kits: Kits, kit: Kit, secrets: KitSecrets, plan: str | None, out: Path, wheels: Path, drawn: Drawn) -> Path:
    card = out / kit.hostname
    for name, text in card_files(kits, kit, secrets, plan, drawn).items():
        target = card / name
        target.parent.mkdir(parents=True, exist_ok=True)
        target.write_text(text, encoding="utf-8", newline="\n")
    house = card / FOLDER / WHEELHOUSE
    house.mkdir(parents=True)
    for wheel in wheels.iterdir():
        try:
            os.link(wheel, house / wheel.name)  # fifteen cards, one copy on this disk
        except OSError:
            shutil.copy(wheel, house)
    return card


def _private(path: Path, text: str) -> Path:
    """Write a sheet that nobody else on this computer may read."""
    handle = os.open(path, os.O_WRONLY | os.O_CREAT | os.O_TRUNC, 0o600)
    with os.fdopen(handle, "w", encoding="utf-8") as file:
        file.write(text)
    return path


def missing(kits: Kits, wheels: Path) -> tuple[str, ...]:
    """Return what the wheels lack for these cards, and what follows, in words."""
    found: Sequence[Path] = list(wheels.glob("lgpio-*.whl"))
    if kits.panel == "real" and not found:
        return (
            "No lgpio wheel is in the wheelhouse. If the card's system has no python3-lgpio either, lamps, buzzer and "
            "button stay off, and result.txt on the card says so; give one with --lgpio.",
        )
    return ()
