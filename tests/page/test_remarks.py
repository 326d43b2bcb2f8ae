"""What the station remarks about its results stands under them, in its own words."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import expect

from tests.page.conftest import OpenPage, Station, expect_accessible, serve_settings, work

# The virtual cup's acid is about twice as strong as this plan believes.
MISTAKEN = """
results = "at once"
repeats = 1
[acid]
name = "nitric acid"
volume_cm3 = 25.0
concentration_mol_dm3 = 0.2
[alkali]
name = "potassium hydroxide"
concentration_mol_dm3 = 0.4
[portions]
volume_cm3 = 4.0
count = 10
"""


@pytest.fixture
def bench(tmp_path: Path) -> Iterator[Station]:
    """A bench whose plan names a concentration that the cup does not have."""
    station = Station("serve", "--config", str(serve_settings(tmp_path, "127.0.0.1", plan=MISTAKEN)))
    station.start()
    yield station
    station.stop()


def test_an_end_point_that_contradicts_the_plan_is_said_so(bench: Station, open_page: OpenPage) -> None:
    page = open_page(bench)
    work(bench, until="done", repeat=1)
    result = bench.final_state()["result"]
    notes = [note for each in (result, *result["repeats"]) for note in each["notes"]]
    assert any(note.startswith("The concentrations say 12.5 cm³") for note in notes), notes
    expect(page.get_by_role("heading", name="Worth a thought")).to_be_visible()
    expect(page.locator(".remarks li")).to_have_text(notes)
    expect_accessible(page)
