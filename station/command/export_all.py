"""Every practical of a record into a zip or a new folder; the finished one takes its name at once."""

import shutil
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

from station.command.terminal import CommandError
from station.practical.state import State
from station.record.everything import Zipped, files_of, practicals, state_of
from station.words import say
from station.words.speaking import current_language

ResultOf = Callable[[State], dict[str, Any] | None]


def export_all(folder: Path, out: Path, result_of: ResultOf) -> int:
    """Write all practicals; return how many. Raises JournalError, OSError, CommandError; then nothing is left."""
    found = practicals(folder)

    def files() -> Iterator[tuple[str, Iterator[bytes]]]:
        for practical in found:
            state = state_of(folder, practical)
            yield from files_of(folder, practical, state, result_of(state), current_language())

    if out.suffix == ".zip":
        _into_zip(out, files())
    else:
        _into_folder(out, files())
    return len(found)


def _into_zip(out: Path, files: Iterator[tuple[str, Iterator[bytes]]]) -> None:
    part = out.with_name(f"{out.name}.part")
    zipped = Zipped()
    try:
        with part.open("wb") as file:
            for name, pieces in files:
                file.writelines(zipped.file(name, pieces))
            file.write(zipped.end())
        part.replace(out)
    finally:
        part.unlink(missing_ok=True)


def _into_folder(out: Path, files: Iterator[tuple[str, Iterator[bytes]]]) -> None:
    if out.exists():
        raise CommandError(say("export-is-there", path=str(out)))
    part = out.with_name(f"{out.name}.part")
    try:
        part.mkdir(parents=True)
        for name, pieces in files:
            (part / name).parent.mkdir(exist_ok=True)
            with (part / name).open("wb") as file:
                file.writelines(pieces)
        part.rename(out)
    finally:
        shutil.rmtree(part, ignore_errors=True)
