"""What is installed, and on what board."""

import platform
import re
import sqlite3
from importlib.metadata import requires, version
from pathlib import Path

import pytest

from station.bench.check import machine as checked
from station.bench.check.machine import MAIN_DEPENDENCIES, installed, told, versions
from station.words import in_language
from tests.bench.check.machine import Machine


def test_each_main_dependency_is_one_of_the_distribution() -> None:
    wanted = {re.split(r"[^A-Za-z0-9_-]", each)[0] for each in requires("benchwarm") or []}
    assert set(MAIN_DEPENDENCIES) <= wanted
    assert all(number for name, number in installed().items() if name != "lgpio")


def test_the_versions_are_four_lines(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    package, python, system, libraries = told().splitlines()
    assert re.fullmatch(r"benchwarm \S+, page (not )?built", package)
    assert python == f"Python {platform.python_version()}"
    assert platform.release() in system
    runtime = [re.split(r"[^A-Za-z0-9_-]", each)[0] for each in requires("benchwarm") or [] if "extra" not in each]
    assert {each.split()[0] for each in libraries.split(", ")} == {*runtime, *MAIN_DEPENDENCIES, "sqlite"}
    (tmp_path / "model").write_text("Raspberry Pi 4 Model B Rev 1.5\0")
    monkeypatch.setattr(checked, "BOARD", tmp_path / "model")
    monkeypatch.setattr(checked, "PAGE", tmp_path / "no page")
    package, _, system, _ = told().splitlines()
    assert package.endswith(", page not built")
    assert system.endswith(", Raspberry Pi 4 Model B Rev 1.5")
    german = in_language(told(), "de")
    assert german.startswith(f"{version('benchwarm').join(['benchwarm ', ', '])}Seite nicht gebaut\nPython ")
    assert german.endswith(f", sqlite {sqlite3.sqlite_version}")


@pytest.mark.parametrize(
    ("model", "machine_name", "colour"),
    [
        ("Raspberry Pi 4 Model B Rev 1.5", "aarch64", "green"),
        ("Raspberry Pi Zero 2 W Rev 1.0", "armv7l", "amber"),
        ("Another Board", "aarch64", "unknown"),
        (None, "x86_64", "unknown"),
    ],
)
def test_the_board(
    machine: Machine, monkeypatch: pytest.MonkeyPatch, model: str | None, machine_name: str, colour: str
) -> None:
    monkeypatch.setattr(platform, "machine", lambda: machine_name)
    if model:
        machine.is_a_pi(model)
    found = versions(machine.kit())
    assert (found.colour, found.values["board"]) == (colour, model)
