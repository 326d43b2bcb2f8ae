"""`station export`: the newest practical of a record as a file: samples, readings, spreadsheet or journal."""

import argparse
import sys
from pathlib import Path
from typing import Any

from station.command.helping import add_command
from station.command.settings import default_record_folder
from station.command.terminal import EXIT_RECORD, CommandError
from station.practical.fold import fold_all
from station.practical.state import State
from station.practical.view import shown_result
from station.record.exchange import WITHOUT_SAMPLES, journal_lines, newest_practical, readings_text, record_csv
from station.record.journal import JournalError
from station.words import say
from station.words.speaking import current_language, spoken


def add_to(commands: Any) -> None:
    """Add the command to the parser."""
    parser = add_command(
        commands,
        "export",
        does="write the newest practical as a record CSV, or as another file",
        example="export --xlsx --out record.xlsx",
        ends=(EXIT_RECORD,),
    )
    parser.add_argument(
        "--record", type=Path, metavar="FOLDER", help="where the record is kept (default: the service's folder)"
    )
    parser.add_argument("--out", type=Path, metavar="FILE", help="the file to write (default: standard output)")
    kinds = parser.add_mutually_exclusive_group()
    kinds.add_argument("--readings", action="store_true", help="the readings as a readings CSV")
    kinds.add_argument(
        "--xlsx", action="store_true", help="everything, with the results, as a spreadsheet; needs --out"
    )
    kinds.add_argument("--jsonl", action="store_true", help="every event as a JSON line")
    kinds.add_argument(
        "--all", action="store_true", help="every practical, with all these files; needs --out FILE.zip or FOLDER"
    )
    parser.set_defaults(work=_export)


def _export(options: argparse.Namespace) -> int:
    if options.xlsx and options.out is None:
        raise CommandError(say("export-not-for-terminal"))
    if options.all:
        return _export_all(options)
    try:
        content = _content(options, options.record or default_record_folder())
    except JournalError as error:
        raise CommandError(str(error), EXIT_RECORD) from None
    if options.out is None:
        sys.stdout.write(content.decode())
        return 0
    try:
        options.out.write_bytes(content)
    except OSError as error:
        raise CommandError(say("file-cannot-be-written", path=str(options.out), reason=str(error.strerror))) from None
    return 0


def _content(options: argparse.Namespace, folder: Path) -> bytes:
    if options.readings:
        return readings_text(fold_all(newest_practical(folder))).encode()
    if options.jsonl:
        return "".join(journal_lines(folder)).encode()
    return _spreadsheet(folder) if options.xlsx else record_csv(folder).encode()


def _export_all(options: argparse.Namespace) -> int:
    from station.command.export_all import export_all  # noqa: PLC0415 - the spreadsheet's library is loaded there

    folder = options.record or default_record_folder()
    if options.out is None:
        raise CommandError(say("export-all-needs-out"))
    try:
        count = export_all(folder, options.out, result_of)
    except JournalError as error:
        raise CommandError(str(error), EXIT_RECORD) from None
    except OSError as error:
        told = say("export-cannot-be-written", path=str(options.out), reason=str(error.strerror))
        raise CommandError(told) from None
    print(spoken(say("told-exported", path=str(options.out), count=count)))
    return 0


def result_of(state: State) -> dict[str, Any] | None:
    """Return the results of a practical as a spreadsheet shows them; None where there is nothing to compute."""
    # Loaded here: the analysis loads scipy, which no other export needs.
    from station.practical.dataset import from_question, question_for  # noqa: PLC0415
    from station.practical.results import results  # noqa: PLC0415

    return shown_result(results(*from_question(question_for(state)))) if state.counted else None


def _spreadsheet(folder: Path) -> bytes:
    from station.record.spreadsheet.file import spreadsheet  # noqa: PLC0415
    from station.record.spreadsheet.sheets import record_sheets  # noqa: PLC0415

    happened = list(newest_practical(folder))
    state = fold_all(happened)
    result = result_of(state)
    words = [each for each in happened if each.event.kind in WITHOUT_SAMPLES]
    return spreadsheet(record_sheets(state.name or "", state, result, words), current_language())
