"""What the station remarks about its results stands under them, in its own words."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import expect

from tests.page.conftest import OpenPage, Station, expect_accessible, serve_settings
from tests.page.test_adopt_page import GIVEN

# The acid of the readings below is about twice as strong as this plan believes.
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
    """A bench whose plan names a concentration that the acid does not have."""
    station = Station("serve", "--config", str(serve_settings(tmp_path, "127.0.0.1", plan=MISTAKEN)))
    station.start()
    yield station
    station.stop()


@pytest.mark.fault("wrong-bottle")
def test_an_end_point_that_contradicts_the_plan_is_said_so(bench: Station, open_page: OpenPage) -> None:
    page = open_page(bench)
    one_repeat = "".join(line for line in GIVEN.splitlines(keepends=True) if not line.startswith("2,"))
    bench.act(act="adopt", label="Group 4", csv=one_repeat).raise_for_status()
    result = bench.final_state()["result"]
    notes = [note for each in (result, *result["repeats"]) for note in each["notes"]]
    assert any(note.startswith("The concentrations say 12.5 cm³") for note in notes), notes
    expect(page.get_by_role("heading", name="Check this")).to_be_visible()
    expect(page.locator(".remarks li")).to_have_text(notes)
    expect_accessible(page)
