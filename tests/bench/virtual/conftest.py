"""The real reading library, pointed at a tree of our own."""

import os
from pathlib import Path

import pytest

os.environ["W1THERMSENSOR_NO_KERNEL_MODULE"] = "1"

from w1thermsensor import W1ThermSensor


@pytest.fixture
def reader(tmp_path: Path) -> type[W1ThermSensor]:
    """A reader class whose probes are in `tmp_path / "devices"`."""

    class Reader(W1ThermSensor):  # type: ignore[misc]
        BASE_DIRECTORY = tmp_path / "devices"

    return Reader
