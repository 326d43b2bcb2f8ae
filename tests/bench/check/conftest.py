"""The machine that the checks look at."""

from pathlib import Path

import pytest

from tests.bench.check.machine import Machine


@pytest.fixture
def machine(tmp_path: Path) -> Machine:
    return Machine(tmp_path / "root")
