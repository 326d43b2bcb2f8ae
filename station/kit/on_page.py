"""Cards made by a running station, for whoever has no computer that runs `station kit`: one zip, made while it is sent.

Nothing touches this station's card: codes and passphrases are drawn in memory and leave it in the zip alone. Wheels are
in the zip once, not once for each card.
"""

from collections.abc import Iterable, Iterator
from pathlib import Path

from station.kit.card import FOLDER, card_files
from station.kit.folders import LABELS, SECRETS, WHEELHOUSE, missing
from station.kit.offer import SUMS
from station.kit.room import laptop_files, needs_laptop
from station.kit.sheets import labels_sheet, secrets_sheet
from station.kit.table import Kit, KitError, Kits, kits_from
from station.kit.words import new_secrets
from station.practical.plan import PlanError, read_plan
from station.record.zipped import Zipped

WHEELHOUSES = (Path("/opt/benchwarm/wheelhouse"), Path("/boot/firmware") / FOLDER / WHEELHOUSE)
"""Where a station made from a card keeps the wheels it was installed from; the first: since its last update."""
NO_WHEELS = (
    "This station does not hold the wheels it was installed from, so the zip has none: a card made from it alone "
    "cannot install itself. Copy the folder benchwarm/wheelhouse of an earlier card into benchwarm on each new one."
)
EVERY_CARD = "on-every-card"
PIECE = 1 << 18
_READ_ME = """\
For each bench:
1. Write Raspberry Pi OS Lite, 64-bit, of the release "{release}" to a card.
2. Copy what is in {every_card} onto its boot partition.
3. Copy what is in the folder of the bench (bench-1, bench-2 ...) onto the same boot partition; replace files.
4. Put the card into the Pi and start it. What it did stands in benchwarm/result.txt on the card.

{labels} goes onto the boxes. {secrets}: print it, lock it away, delete the file; the cards hold only hashes.
{lack}"""


def wheelhouse_here(places: Iterable[Path] = WHEELHOUSES) -> Path | None:
    """Return the folder of wheels that this station was installed from; None where there is none."""
    needed = ("pip-*.whl", "benchwarm-*.whl")
    return next((each for each in places if all(any(each.glob(pattern)) for pattern in needed)), None)


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
        raise KitError(f"kits.toml: line {at}: it names the plan {kits.plan}; choose that file as well")
    text = text.removeprefix("\ufeff").replace("\r\n", "\n")
    try:
        read_plan(text, "plan.toml")
    except PlanError as error:
        raise KitError(str(error)) from None
    return text


def _pieces(kits: Kits, plan: str | None, wheels: Path | None) -> Iterator[bytes]:
    zipped = Zipped()
    yield from zipped.file("READ-ME-FIRST.txt", [_read_me(kits, wheels).encode()])
    drawn = [(kit, new_secrets()) for kit in kits.kit]
    for kit, secrets in drawn:
        for name, text in card_files(kits, kit, secrets, plan, drawn).items():
            yield from zipped.file(f"{kit.hostname}/{name}", [text.encode()])
    known = list(drawn)
    if needs_laptop(kits):
        known.append((Kit(number=999, room=True), new_secrets()))
        for name, text in laptop_files(kits, known[-1][1], drawn).items():
            yield from zipped.file(name, [text.encode()])
    yield from zipped.file(LABELS, [labels_sheet(drawn).encode()])
    yield from zipped.file(SECRETS, [secrets_sheet(known).encode()])
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
    text = _READ_ME.format(
        release=kits.release, every_card=EVERY_CARD, labels=LABELS, secrets=SECRETS, lack="\n".join(lack)
    )
    return f"{text.rstrip()}\n".replace("\n", "\r\n")  # for the editor of any computer
