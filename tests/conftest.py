"""For all tests: the order in which folders run."""

from pathlib import Path

import pytest

PAGE = Path(__file__).parent / "page"


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Run the tests in a browser last: Playwright's own event loop stays open in the main thread."""
    items.sort(key=lambda item: PAGE in item.path.parents)
