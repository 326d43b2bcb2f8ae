"""Looks the record through, in a process of its own that can be ended.

`python -m station.bench.check.journal_child FOLDER` prints one JSON object a line as it gets on: SQLite's own check,
then the chain of digests.
"""

import json
import os
import sqlite3
import sys
from pathlib import Path

from station.record.journal import JournalError, first_broken, open_to_read, tail
from station.words import written


def look_through(folder: Path) -> None:
    """Print what is found. Raises JournalError or sqlite3.Error when the file cannot be read at all."""
    connection = open_to_read(folder)
    try:
        found = [row[0] for row in connection.execute("PRAGMA quick_check(3)")]
        told: dict[str, object] = {"quick_check": found, "events": tail(connection)[0] if found == ["ok"] else None}
    finally:
        connection.close()
    print(json.dumps(told), flush=True)  # noqa: T201
    if found == ["ok"]:
        print(json.dumps({"first_broken": first_broken(folder)}), flush=True)  # noqa: T201


def main(folder: Path) -> int:
    """Return 0 whatever was found: what was printed tells."""
    os.nice(10)
    try:
        look_through(folder)
    except (JournalError, sqlite3.Error) as error:
        code = getattr(error, "sqlite_errorcode", None) or getattr(error.__cause__, "sqlite_errorcode", None)
        print(json.dumps({"error": written(str(error)), "sqlite_code": code}), flush=True)  # noqa: T201
    return 0


if __name__ == "__main__":
    sys.exit(main(Path(sys.argv[1])))
