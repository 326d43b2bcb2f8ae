"""Cards made by a running station, for whoever has no computer that runs `station kit`: one zip, made while it is sent.

Nothing touches this station's card: codes and passphrases are drawn in memory and leave it in the zip alone. Wheels are
in the zip once, not once for each card.
"""

from collections.abc import Iterator
from pathlib import Path
from typing import Final

from station.kit.card import FOLDER, LABELS, SECRETS, WHEELHOUSE, card_files, missing
from station.kit.offer import SUMS
from station.kit.releases import HOME, WHEELS
from station.kit.room import laptop_files
from station.kit.sheets import drawn_for, labels_sheet, secrets_sheet
from station.kit.table import KitError, Kits, kits_from
from station.practical.kinds import read_plan
from station.practical.plan import PlanError
from station.practical.safety import safe
from station.record.everything import Zipped
from station.words import in_language, say

NO_WHEELS: Final = say("kit-no-wheels")
EVERY_CARD = "on-every-card"
PIECE = 1 << 18


def wheelhouse_here(folder: Path = HOME / WHEELS) -> Path | None:
    """Return the folder of wheels that this station was installed from; None where there is none."""
    return folder if all(any(folder.glob(pattern)) for pattern in ("pip-*.whl", "benchwarm-*.whl")) else None


def made_on_page(kits_text: str, plan_text: str | None, wheels: Path | None) -> Iterator[bytes]:
    """Return the pieces of a zip with a folder for each card, what goes onto every card, and the two sheets.

    Raises KitError, before anything is made, with file, line and remedy.
    """
    kits = kits_from(kits_text, "kits.toml")
    plan = _plan(kits, kits_text, plan_text)
    return _pieces(kits, plan, wheels)


def _plan(kits: Kits, kits_text: str, text: str | None) -> str | None:
    if text is None:
        if kits.plan is None:
            return None
        at = next(
            (n for n, line in enumerate(kits_text.splitlines(), 1) if line.lstrip("\ufeff ").startswith("plan")), 1
        )
        raise KitError(say("kit-choose-plan-too", line=at, path=kits.plan))
    text = text.removeprefix("\ufeff").replace("\r\n", "\n")
    try:
        safe(read_plan(text, "plan.toml"))
    except PlanError as error:
        raise KitError(str(error)) from None
    return text


def _pieces(kits: Kits, plan: str | None, wheels: Path | None) -> Iterator[bytes]:
    zipped = Zipped()
    yield from zipped.file("READ-ME-FIRST.txt", [_read_me(kits, wheels).encode()])
    known = drawn_for(kits)
    drawn = known[: len(kits.kit)]
    for kit, secrets in drawn:
        for name, text in card_files(kits, kit, secrets, plan, drawn).items():
            yield from zipped.file(f"{kit.hostname}/{name}", [text.encode()])
    for _, secrets in known[len(drawn) :]:
        for name, text in laptop_files(kits, secrets, drawn).items():
            yield from zipped.file(name, [text.encode()])
    yield from zipped.file(LABELS, [labels_sheet(drawn, kits.speaks, kits).encode()])
    yield from zipped.file(SECRETS, [secrets_sheet(known, kits.speaks).encode()])
    for wheel in sorted(wheels.iterdir()) if wheels else []:
        if wheel.suffix == ".whl" or wheel.name == SUMS:
            yield from zipped.file(f"{EVERY_CARD}/{FOLDER}/{WHEELHOUSE}/{wheel.name}", _in_pieces(wheel))
    yield zipped.end()


def _in_pieces(path: Path) -> Iterator[bytes]:
    with path.open("rb") as file:
        while piece := file.read(PIECE):
            yield piece


def _read_me(kits: Kits, wheels: Path | None) -> str:
    lack = (NO_WHEELS,) if wheels is None else missing(kits, wheels)
    steps = say(
        "kit-read-me",
        release_name=kits.release,
        every_card_file=EVERY_CARD,
        labels_file=LABELS,
        secrets_file=SECRETS,
    )
    lines = [line for each in (steps, *lack) for line in in_language(each, kits.speaks).splitlines()]
    return "".join(f"{line}\r\n" for line in lines)  # for the editor of any computer
