"""What is installed, and on what board."""

import platform
import re
from importlib.metadata import requires

import pytest

from station.bench.check.versions import MAIN_DEPENDENCIES, installed, told, versions
from tests.bench.check.machine import Machine


def test_each_main_dependency_is_one_of_the_distribution() -> None:
    wanted = {re.split(r"[^A-Za-z0-9_-]", each)[0] for each in requires("benchwarm") or []}
    assert set(MAIN_DEPENDENCIES) <= wanted
    assert all(number for name, number in installed().items() if name != "lgpio")


def test_the_versions_are_four_lines() -> None:
    package, python, system, libraries = told().splitlines()
    assert package.startswith("benchwarm ")
    assert python == f"Python {platform.python_version()}"
    assert platform.release() in system
    assert all(name in libraries for name in (*MAIN_DEPENDENCIES, "sqlite"))


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
