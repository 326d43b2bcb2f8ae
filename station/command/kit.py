"""`station kit`: from a table of benches to one folder per card, a label sheet, and a sheet to lock away."""

import argparse
from pathlib import Path
from typing import Any

from station.command.errors import CommandError
from station.kit.folders import make_kits
from station.kit.table import KitError, read_kits


def add_to(commands: Any) -> None:
    """Add the command to the parser."""
    parser = commands.add_parser("kit", help="from a table of benches to one folder per card, and labels")
    parser.add_argument("table", type=Path, metavar="kits.toml")
    parser.add_argument("--out", type=Path, required=True, metavar="FOLDER", help="a new folder")
    parser.add_argument("--lgpio", type=Path, metavar="FILE.whl", help="a wheel of lgpio for the cards' system")
    parser.add_argument("--wheelhouse", type=Path, metavar="FOLDER", help="wheels of an earlier run")
    parser.set_defaults(work=_kit)


def _kit(options: argparse.Namespace) -> int:
    for given in (options.lgpio, options.wheelhouse):
        if given is not None and not given.exists():
            raise CommandError(f"{given}: not there; check the name")
    try:
        made = make_kits(read_kits(options.table), options.table.parent, options.out, options.lgpio, options.wheelhouse)
    except KitError as error:
        raise CommandError(str(error)) from None
    print(f"{len(made.cards)} cards in {options.out}: copy what is in each folder onto the boot partition of its card.")
    labels, words = made.sheets
    print(f"{labels}: print it, cut it, one label on each box.")
    print(f"{words}: print it, lock it away, delete the file.")
    if (options.out / "room" / "record").is_dir():
        print(f"{options.out / 'room'}: copy it to the room's machine; there: station room --config room/room.toml")
    print(f"The folder wheelhouse also updates a station: station update wheelhouse --sha256 {made.digest[:16]}")
    for amber in made.amber:
        print(f"Mind: {amber}")
    return 0
