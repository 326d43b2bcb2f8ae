"""Writes the manual's tables that the code itself knows: `python -m tests.tables`.

- `station/manual/events.md`: which act is possible in which state (the procedure's table), and every event, from its
  own docstring and fields.
- `station/manual/faults.md`: the fault register, from tests/faults.toml and the marks `@pytest.mark.fault` of tests.

`tests/test_register.py` fails while a file is not what this program would write.
"""

import ast
import re
import tomllib
from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass, fields
from functools import cache
from inspect import getdoc
from itertools import groupby
from pathlib import Path

from station.practical.acts import ActName
from station.practical.events import EVENTS
from station.practical.procedure import TABLE
from station.practical.state import Step

TESTS = Path(__file__).parent
MANUAL = TESTS.parent / "station" / "manual"
WRITTEN = "This page is written by a program from the station itself: `python -m tests.tables`.\n"


@dataclass(frozen=True)
class Fault:
    """One fault: what people see of it, and the tests that provoke it, or why none does."""

    id: str
    group: str
    fault: str
    seen: str
    tests: tuple[str, ...]
    no_test: str


def marks_in(source: str) -> Iterator[tuple[str, str]]:
    """Yield each id that a test of a source is marked with, and the test's name."""
    for node in ast.walk(ast.parse(source)):
        if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef):
            for mark in node.decorator_list:
                if isinstance(mark, ast.Call) and ast.unparse(mark.func) == "pytest.mark.fault":
                    yield from ((str(ast.literal_eval(each)), node.name) for each in mark.args)


@cache
def marked() -> dict[str, tuple[str, ...]]:
    """Return the tests of each id, as `folder/test_file::test_name`."""
    found = defaultdict[str, list[str]](list)
    for path in sorted(TESTS.rglob("test_*.py")):
        file = path.relative_to(TESTS).with_suffix("").as_posix()
        for fault, test in marks_in(path.read_text(encoding="utf-8")):
            found[fault].append(f"{file}::{test}")
    return {fault: tuple(tests) for fault, tests in found.items()}


@cache
def faults() -> tuple[Fault, ...]:
    """Return the fault register in its order."""
    listed = tomllib.loads((TESTS / "faults.toml").read_text(encoding="utf-8"))["fault"]
    return tuple(
        Fault(
            each["id"],
            each["group"],
            each["fault"],
            each["seen"],
            marked().get(each["id"], ()),
            each.get("no_test", ""),
        )
        for each in listed
    )


def faults_page() -> str:
    """Return the page of the fault register: what people see first, then the tests."""
    found = faults()
    text = "# What can go wrong in a lesson\n\nWhat each fault looks like, and what happens to the practical. "
    text += f"{sum(bool(each.tests) for each in found)} of these {len(found)} faults are provoked by tests, through "
    text += "real parts wherever there is one; [reliability](reliability.md) has the numbers, "
    text += f"[which test provokes which fault](#tests) stands at the end.\n\n{WRITTEN}"
    for group, several in groupby(found, lambda each: each.group):
        text += f"\n## {group}\n\n| what goes wrong | what you see, and what happens |\n|---|---|\n"
        text += "".join(f"| {each.fault} | {each.seen} |\n" for each in several)
    text += "\n## Tests\n\nNames of files below `tests/`, and of the tests in them.\n\n| fault | tests |\n|---|---|\n"
    for each in found:
        text += f"| {each.fault} | {' '.join(f'`{test}`' for test in each.tests) or f'none: {each.no_test}'} |\n"
    return text


def events_page() -> str:
    """Return the page of states, acts and events."""
    text = "# States, acts and events\n\nFor programs that read a journal or send acts, and for those who change the "
    text += f"station. {WRITTEN}"
    text += "\n## States and acts\n\nWhat can be told to the station in each state of a practical; anything else is "
    text += "refused with a reason.\n\n| state | acts |\n|---|---|\n"
    for step in Step:
        text += f"| {step} | {', '.join(f'`{act}`' for at, act in TABLE if at is step)} |\n"
    anywhere = [act for act in ActName.__args__ if act not in {act for _, act in TABLE}]  # type: ignore[attr-defined]
    text += f"\nIn every state, where they mean something: {', '.join(f'`{act}`' for act in anywhere)}.\n"
    text += "\n## Events\n\nThe journal keeps these and nothing else.\n\n"
    text += "| event | what happened | its values |\n|---|---|---|\n"
    for kind, event in EVENTS.items():
        said = re.sub(r"\s+", " ", getdoc(event) or "").replace("None", "null")
        text += f"| `{kind}` | {said} | {', '.join(f'`{each.name}`' for each in fields(event)) or '–'} |\n"
    return text


PAGES = {"events.md": events_page, "faults.md": faults_page}


def main() -> None:
    """Write the pages."""
    for name, page in PAGES.items():
        (MANUAL / name).write_text(page(), encoding="utf-8")


if __name__ == "__main__":
    main()
