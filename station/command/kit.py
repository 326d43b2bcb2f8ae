"""`station kit`: from a table of benches to one folder per card, a label sheet, and a sheet to lock away."""

import argparse
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from station.command.helping import add_command
from station.command.terminal import CommandError, language_in
from station.kit.card import Given, Made, make_kits
from station.kit.table import KitError, read_kits
from station.words import Message, say
from station.words.speaking import spoken


def add_to(commands: Any) -> None:
    """Add the command to the parser."""
    parser = add_command(
        commands,
        "kit",
        does="from a table of benches to one folder per card, and labels",
        example="kit kits.toml --out cards",
    )
    parser.add_argument("table", type=Path, metavar="kits.toml", help="the table of benches")
    parser.add_argument("--out", type=Path, required=True, metavar="FOLDER", help="a new folder")
    parser.add_argument(
        "--lgpio",
        type=Path,
        metavar="FILE.whl",
        help="a wheel of lgpio for the cards' system (default: none is added)",
    )
    parser.add_argument(
        "--wheelhouse", type=Path, metavar="FOLDER", help="wheels of an earlier run (default: fetched and made anew)"
    )
    parser.add_argument(
        "--debs",
        type=Path,
        metavar="FOLDER",
        help="Mosquitto's packages, for a room offline (default: the card fetches them)",
    )
    parser.add_argument(
        "--image",
        type=Path,
        metavar="BASE.img[.xz]",
        help="the official image: write complete ones (default: a folder for each card)",
    )
    parser.add_argument(
        "--image-sha256", metavar="HEX", help="the image's digest, as published beside it (default: not compared)"
    )
    parser.set_defaults(work=_kit, language=lambda options: language_in(options.table))


def _kit(options: argparse.Namespace) -> int:
    for path in (options.lgpio, options.wheelhouse, options.debs, options.image):
        if path is not None and not path.exists():
            raise CommandError(say("file-not-there", path=str(path)))
    given = Given(options.lgpio, options.wheelhouse, options.debs, options.image, options.image_sha256)
    try:
        made = make_kits(read_kits(options.table), options.table.parent, options.out, given)
    except KitError as error:
        raise CommandError(str(error)) from None
    for line in _made(made, options.out):
        print(spoken(line))
    return 0


def _made(made: Made, out: Path) -> Iterator[Message]:
    """Yield what was made, and what to do with each part of it."""
    labels, words = made.sheets
    yield say("told-cards", count=len(made.cards), path=str(out))
    if made.images:
        yield say("told-images", path=str(out))
    yield say("told-labels", path=str(labels))
    yield say("told-secrets", path=str(words))
    if (out / "room" / "record").is_dir():
        yield say("told-room-folder", path=str(out / "room"))
    yield say("told-wheelhouse", digits_text=made.digest[:16])
    for amber in made.amber:
        yield say("told-mind", reason=amber)
