"""The fault register in DEVELOPERS.md is true: every test that it names is there; what has no test has its reason."""

import re
import tomllib
from dataclasses import dataclass
from pathlib import Path

import pytest

ROOT = Path(__file__).parent.parent
TITLE = "## Fault register"


@dataclass(frozen=True)
class Row:
    """One fault: what the user sees, and the tests that provoke it."""

    fault: str
    seen: str
    tests: tuple[str, ...]
    why_not: str


def rows() -> list[Row]:
    """Return the rows of the register, its groups' names left out."""
    _, _, rest = (ROOT / "DEVELOPERS.md").read_text().partition(TITLE)
    found = []
    for line in rest.partition("\n## ")[0].splitlines():
        cells = [cell.strip() for cell in line.strip().strip("|").split("|")]
        if len(cells) == 3 and cells[1] and cells[0] != "fault" and set(cells[0]) != {"-"}:
            tests = tuple(re.findall(r"`(\w[\w/]*::test_\w+)`", cells[2]))
            found.append(Row(cells[0], cells[1], tests, cells[2] if not tests else ""))
    return found


def test_there_is_a_register() -> None:
    assert len(rows()) > 60


@pytest.mark.parametrize("row", rows(), ids=lambda row: row.fault[:40])
def test_each_fault_is_provoked_by_a_test_that_is_there_or_says_why_not(row: Row) -> None:
    if not row.tests:
        assert re.match(r"– \w.{15,}", row.why_not)
    for test in row.tests:
        file, _, name = test.partition("::")
        text = (ROOT / "tests" / f"{file}.py").read_text()
        assert re.search(rf"^ *(async )?def {name}\(", text, re.MULTILINE), test


def test_every_dependency_has_its_range_a_reason_and_its_licence() -> None:
    needed = tomllib.loads((ROOT / "pyproject.toml").read_text())["project"]["dependencies"]
    _, _, rest = (ROOT / "DEVELOPERS.md").read_text().partition("## Dependencies")
    table = [
        [cell.strip() for cell in line.strip("|").split("|")] for line in rest.splitlines() if line.startswith("| ")
    ]
    for requirement in needed:
        name, bounds = re.fullmatch(r"([a-z0-9-]+)(.*)", requirement).groups()  # type: ignore[union-attr]
        (row,) = [cells for cells in table if name in re.split(r"[, ]+", cells[0])]
        place = re.split(r", ", row[0]).index(name) if ", " in row[0] else 0
        assert row[1].split(", ")[place] == f"`{bounds}`", requirement
        assert len(row[2]) > 15
        assert row[3]
