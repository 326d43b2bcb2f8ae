"""The sheet to hand in: one side of A4 from the record and from the bench's page, with room to write and no answers."""

import re
from collections.abc import Iterator
from decimal import ROUND_HALF_UP, Decimal
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from tests.page.conftest import PHONE, PROJECTOR, OpenPage, Station, expect_accessible
from tests.page.finished import finished
from tests.page.test_record_page import on_paper, text_of

AIM = "We want to find out how strong the acid is."
ANSWERS = ("Straight lines", "Heat balance", "line before", "mol/dm³ ×", "Accepted value")


@pytest.fixture(scope="module")
def over(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Station]:
    with finished(tmp_path_factory.mktemp("sheet")) as station:
        yield station


def sheet(open_page: OpenPage, station: Station, **options: object) -> Page:
    page = open_page(station, **options)
    page.goto(f"{station.url}?language=en#record")
    for part in (".record-evaluation", "svg text", "tbody tr:nth-child(4)"):
        page.wait_for_selector(f".paper-sheet[data-size] {part}", state="attached")
    return page


def printed(page: Page, folder: Path) -> str:
    return re.sub(r"\s+", " ", text_of(on_paper(page, folder), "-raw"))


def test_it_has_graph_table_and_blanks_on_one_side(over: Station, open_page: OpenPage, tmp_path: Path) -> None:
    text = printed(sheet(open_page, over), tmp_path)
    for words in (
        "How strong is the nitric acid?",
        "Names:",
        "Aim",
        "Your own calculation",
        "Conclusion",
        "Evaluation",
    ):
        assert words in text
    assert "temperature / °C" in text, "the graph"
    mean_c = Decimal(str(over.state()["mean"][3]["temperature_c"]))
    assert str(mean_c.quantize(Decimal("0.01"), ROUND_HALF_UP)) in text, "the table"
    assert text.count("?") >= 5, "the questions"
    assert not any(words in text for words in ANSWERS)


def test_what_is_typed_stands_on_it_and_survives_a_reload(over: Station, open_page: OpenPage, tmp_path: Path) -> None:
    page = sheet(open_page, over)
    on_screen = page.get_by_test_id("sheet")
    on_screen.get_by_label("Aim").fill(AIM)
    on_screen.get_by_label("Which way did heat leave").fill("Through the lid.")
    page.reload()
    expect(page.get_by_test_id("sheet").get_by_label("Aim")).to_have_value(AIM)
    page.wait_for_selector(".paper-sheet[data-size] .record-evaluation", state="attached")
    text = printed(page, tmp_path)
    assert AIM in text
    assert "Through the lid." in text


def test_very_much_typed_still_prints_on_one_side(over: Station, open_page: OpenPage, tmp_path: Path) -> None:
    page = sheet(open_page, over)
    for field in page.get_by_test_id("sheet").get_by_role("textbox").all()[:3]:
        field.fill("Heat went out through the lid. " * 14)
    printed(page, tmp_path)


@pytest.mark.parametrize("viewport", [PHONE, PROJECTOR], ids=["phone", "projector"])
def test_the_benchs_page_prints_it(
    over: Station, open_page: OpenPage, tmp_path: Path, viewport: dict[str, int]
) -> None:
    page = open_page(over, viewport=viewport)
    with page.expect_response(re.compile(r"/paper-\w+\.js")):
        page.reload()
    page.wait_for_selector("body.prints-record")
    text = printed(page, tmp_path)
    for words in ("Names:", "Aim", "Conclusion"):
        assert words in text
    expect(page.locator(".paper")).to_have_count(0)


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_axe_knows_no_violation(over: Station, open_page: OpenPage, scheme: str) -> None:
    page = sheet(open_page, over, color_scheme=scheme)
    expect_accessible(page)
    assert page.evaluate("document.documentElement.scrollWidth <= innerWidth"), "nothing sticks out sideways"


def test_when_results_are_shown_the_answers_stay_on_their_own_sheet(
    over: Station, open_page: OpenPage, tmp_path: Path
) -> None:
    over.act(act="own_reading", end_point_cm3=23.75).raise_for_status()
    over.final_state()
    page = sheet(open_page, over)
    expect(page.get_by_role("button", name="Print the station’s answers")).to_be_visible()
    text = printed(page, tmp_path)
    assert "Your reading: 23.75 cm³" in text
    assert not any(words in text for words in ANSWERS)


@pytest.mark.parametrize(("repeats", "portions", "portion_cm3"), [(3, 60, 0.7), (6, 10, 4.0)], ids=["long", "wide"])
def test_long_and_wide_tables_print_on_one_side_too(
    over: Station, open_page: OpenPage, tmp_path: Path, repeats: int, portions: int, portion_cm3: float
) -> None:
    rows = "".join(
        f"{repeat},{portion_cm3 * n:g},{20 + 0.1 * repeat + 0.1 * min(portion_cm3 * n, 26.0):.2f}\n"
        for repeat in range(1, repeats + 1)
        for n in range(portions + 1)
    )
    over.act(act="adopt", label="Bench 9", csv=f"repeat,volume_cm3,temperature_c\n{rows}").raise_for_status()
    assert "Names:" in printed(sheet(open_page, over), tmp_path)
