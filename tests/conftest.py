"""For all tests: the order in which folders run, and no time limit on an example: a busy machine fails no test."""

from pathlib import Path

import pytest
from hypothesis import settings

settings.register_profile("station", deadline=None)
settings.load_profile("station")

PAGE = Path(__file__).parent / "page"


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Run the tests in a browser last: Playwright's own event loop stays open in the main thread."""
    items.sort(key=lambda item: PAGE in item.path.parents)
