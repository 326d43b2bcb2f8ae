"""Tests provoke the faults of the register, or it says why not; generated pages are fresh; dependencies are told."""

import ast
import re
import sys
import tomllib
from importlib.metadata import packages_distributions
from pathlib import Path

import pytest

from tests.tables import MANUAL, PAGES, Fault, faults, marked, marks_in

ROOT = Path(__file__).parent.parent


def test_there_is_a_register() -> None:
    assert len(faults()) > 100
    assert len({each.id for each in faults()}) == len(faults())


@pytest.mark.parametrize("fault", faults(), ids=lambda fault: fault.id)
def test_each_fault_is_provoked_by_a_test_or_says_why_not(fault: Fault) -> None:
    assert fault.fault and fault.seen
    assert bool(fault.tests) != bool(fault.no_test)
    assert not fault.no_test or len(fault.no_test) > 15


def test_no_test_is_marked_with_a_fault_that_is_not_in_the_register() -> None:
    assert marked().keys() <= {each.id for each in faults()}


def test_marks_are_found_on_any_test_and_nowhere_else() -> None:
    source = """
@pytest.mark.fault("one", "two")
@pytest.mark.parametrize("x", [1])
async def test_of_two(x): ...

class TestIt:
    @pytest.mark.fault("three")
    def test_inside(self): ...

@pytest.mark.skip("four")
def test_unmarked(): ...
"""
    found = [("one", "test_of_two"), ("two", "test_of_two"), ("three", "test_inside")]
    assert sorted(marks_in(source)) == sorted(found)


@pytest.mark.parametrize("name", PAGES)
def test_the_generated_pages_of_the_manual_are_up_to_date(name: str) -> None:
    assert (MANUAL / name).read_text(encoding="utf-8") == PAGES[name](), "run: python -m tests.tables"


def imported() -> dict[str, Path]:
    """Return what the station imports from other distributions, each with a module that does so."""
    found: dict[str, Path] = {}
    for module in sorted((ROOT / "station").rglob("*.py")):
        for node in ast.walk(ast.parse(module.read_text())):
            names = [each.name for each in node.names] if isinstance(node, ast.Import) else []
            if isinstance(node, ast.ImportFrom) and node.module and not node.level:
                names = [node.module]
            found |= {name.partition(".")[0]: module for name in names}
    return {name: module for name, module in found.items() if name not in {*sys.stdlib_module_names, "station"}}


def test_whatever_the_station_imports_is_declared() -> None:
    """What is only there because another distribution needs it may be gone with that one's next version."""
    project = tomllib.loads((ROOT / "pyproject.toml").read_text())["project"]
    needed = [*project["dependencies"], *project["optional-dependencies"]["pi"]]
    declared = {re.split(r"[^a-z0-9-]", requirement)[0] for requirement in needed}
    there = packages_distributions()
    for name, module in imported().items():
        assert declared & {each.lower().replace("_", "-") for each in there[name]}, f"{module} imports {name}"


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
