"""The station's answers: printed by Chromium on one side of A4 and read back, and looked at on screens."""

import re
import subprocess
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Page, ViewportSize, expect

from tests.page.conftest import PHONE, PROJECTOR, OpenPage, Station, expect_accessible
from tests.page.finished import NOTE, finished

TABLET = ViewportSize(width=768, height=1024)
A4_POINTS = (595.0, 842.0)


@pytest.fixture(scope="module")
def over(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Station]:
    with finished(tmp_path_factory.mktemp("record")) as station:
        yield station


@pytest.fixture(scope="module")
def shown(over: Station) -> Station:
    """The same after the students' own reading. Tests that need it come last."""
    if over.state()["own_reading"] is None:
        lines = {
            "before": {"slope_c_cm3": 0.1, "intercept_c": 19.5},
            "after": {"slope_c_cm3": -0.04, "intercept_c": 22.8},
        }
        over.act(act="own_reading", end_point_cm3=23.75, **lines).raise_for_status()
    over.final_state()
    return over


def record(open_page: OpenPage, station: Station, *, language: str = "en", **options: Any) -> Page:
    page = open_page(station, **options)
    page.goto(f"{station.url}?language={language}#record")
    page.wait_for_selector(".paper-answers[data-size] .record-head", state="attached")
    page.wait_for_selector(".sheet .record-happened")
    return page


def text_of(file: Path, *options: str) -> str:
    done = subprocess.run(["pdftotext", *options, file, "-"], check=True, capture_output=True, text=True)
    return done.stdout.replace("\u00a0", " ")


def printed(page: Page, folder: Path, button: str = "answers") -> str:
    """Print the answers by their button; return what their one side of A4 says in the order in which it is written: a
    row's cells follow one another, whatever the width of the letters."""
    page.evaluate("window.print = () => undefined")
    page.locator(f".record-tools button.prints-the-{button}").click()
    return re.sub(r"\s+", " ", text_of(on_paper(page, folder), "-raw"))


def on_paper(page: Page, folder: Path) -> Path:
    """Print the page; return the file, which has one side of A4."""
    file = folder / "record.pdf"
    page.pdf(path=file, prefer_css_page_size=True)
    about = subprocess.run(["pdfinfo", file], check=True, capture_output=True, text=True).stdout
    assert re.search(r"^Pages: +1$", about, re.MULTILINE), about
    size = re.search(r"^Page size: +([\d.]+) x ([\d.]+) pts", about, re.MULTILINE)
    assert size
    assert [float(each) for each in size.groups()] == pytest.approx(A4_POINTS, abs=1.0)
    return file


def test_before_the_own_reading_the_record_has_no_result(over: Station, open_page: OpenPage, tmp_path: Path) -> None:
    page = record(open_page, over)
    expect(page.locator(".sheet-answers")).to_contain_text("Results come after your own reading.")
    expect(page.get_by_role("button", name="answers")).to_have_count(0)
    text = re.sub(r"\s+", " ", text_of(on_paper(page, tmp_path), "-raw"))
    for word in ("Straight lines", "Heat balance", "line before", "Steps"):
        assert word not in text
    assert over.state()["result"] is None


@pytest.mark.parametrize(
    ("viewport", "scheme"),
    [(PHONE, "light"), (TABLET, "dark"), (PROJECTOR, "light")],
    ids=["phone", "tablet", "projector"],
)
def test_it_prints_on_one_side_whatever_the_screen(
    shown: Station, open_page: OpenPage, tmp_path: Path, viewport: ViewportSize, scheme: str
) -> None:
    text = printed(record(open_page, shown, viewport=viewport, color_scheme=scheme), tmp_path)
    state = shown.state()
    assert "How strong is the nitric acid?" in text
    assert "Bench 5 · Group 4 · " in text
    assert "25 cm³ of nitric acid in the cup; potassium hydroxide (0.4 mol/dm³) in 4 cm³ portions." in text
    cells = [float(each) for each in re.findall(r"\d+\.\d\d\b", text)]
    rows = [cells[at : at + 4] for at in range(len(cells))]
    for index, mean in enumerate(state["mean"]):
        readings = [repeat["readings"][index]["temperature_c"] for repeat in state["repeats"]]
        expected = pytest.approx([*readings, mean["temperature_c"]], abs=0.00501)
        assert any(row == expected for row in rows), (index, text)
    for unit in ("temperature / °C", "volume of alkali added / cm³", "repeat 3 / °C", "mol/dm³", "kJ/mol"):
        assert unit in text
    assert "Wear splash-proof eye protection." in text


def test_results_steps_and_own_reading_stand_on_it(shown: Station, open_page: OpenPage, tmp_path: Path) -> None:
    text = printed(record(open_page, shown), tmp_path)
    result = shown.state()["result"]
    assert "23.75 cm³" in text
    for method in ("straight_lines", "heat_balance"):
        found = re.findall(r"([\d.]+) ± ([\d.]+) cm³", text)
        assert any(
            float(value) == pytest.approx(result[method]["end_point_cm3"], abs=0.051)
            and float(u) == pytest.approx(result[method]["u_end_point_cm3"], rel=0.3)
            for value, u in found
        ), (method, found)
    steps = result["steps"]["heat_balance"]
    assert len(steps) > 3
    for step in steps:
        assert step["text"] in text
    written = re.search(r"enthalpy change per mole: −([\d.]+) ± ([\d.]+) kJ/mol", text)
    assert written
    u_kj_mol = result["heat_balance"]["u_enthalpy_kj_mol"]
    assert -float(written[1]) == pytest.approx(result["heat_balance"]["enthalpy_kj_mol"], abs=0.5 * u_kj_mol)
    assert float(written[2]) == pytest.approx(u_kj_mol, rel=0.3)


def test_notes_and_corrections_stand_on_it_with_their_place(
    shown: Station, open_page: OpenPage, tmp_path: Path
) -> None:
    text = printed(record(open_page, shown), tmp_path)
    assert f"repeat 2, portion 3: {NOTE}" in text, text.partition("Notes and")[2]
    assert "repeat 1, portion 10: 4.5 cm³ went in" in text
    assert "repeat 2, portion 3: not sure, left out of the lines: Spilled" in text
    assert "? not sure, left out of the lines." in text


def test_in_german_it_is_german_with_a_comma(shown: Station, open_page: OpenPage, tmp_path: Path) -> None:
    text = printed(record(open_page, shown, language="de"), tmp_path)
    for words in ("Messwerte", "Ergebnisse", "Rechenweg", "Notizen und Korrekturen", "23,75 cm³", "Salpetersäure"):
        assert words in text
    assert not re.search(r"\d\.\d\d\b", text.partition("Rechenweg")[0]), "no decimal point is left"


def test_the_pdf_is_named_after_bench_group_and_day(shown: Station, open_page: OpenPage) -> None:
    page = record(open_page, shown)
    before = page.title()
    page.evaluate("dispatchEvent(new Event('beforeprint'))")
    assert re.fullmatch(r"Bench 5 Group 4 \d{4}-\d\d-\d\d record", page.title())
    page.evaluate("dispatchEvent(new Event('afterprint'))")
    assert page.title() == before


def test_the_button_prints(shown: Station, open_page: OpenPage) -> None:
    page = record(open_page, shown)
    page.evaluate("window.print = () => { window.printed = true; }")
    page.get_by_role("button", name="Print the sheet to hand in").click()
    assert page.evaluate("window.printed") is True


@pytest.mark.parametrize("language", ["en", "de"])
@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_the_record_has_no_violation_that_axe_knows(
    shown: Station, open_page: OpenPage, scheme: str, language: str
) -> None:
    expect_accessible(record(open_page, shown, language=language, color_scheme=scheme))


@pytest.mark.parametrize("viewport", [PHONE, TABLET, PROJECTOR], ids=["phone", "tablet", "projector"])
def test_nothing_sticks_out_sideways(shown: Station, open_page: OpenPage, viewport: ViewportSize) -> None:
    page = record(open_page, shown, viewport=viewport)
    assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")
    expect(page.locator(".sheet-answers .record-number").first).to_be_visible()
    assert (
        page.evaluate("document.querySelectorAll('.paper [tabindex], .paper a, .paper button, .paper input').length")
        == 0
    )


def test_very_many_notes_do_not_make_another_side(shown: Station, open_page: OpenPage, tmp_path: Path) -> None:
    for number in range(35):
        shown.act(act="note", text=f"note {number}: {'a long remark about the cup ' * 6}").raise_for_status()
    text = printed(record(open_page, shown), tmp_path)
    assert re.search(r"… and \d+ more: all of them are in the spreadsheet\.", text)


def test_another_groups_readings_are_named_as_such(shown: Station, open_page: OpenPage, tmp_path: Path) -> None:
    rows = "".join(f"1,{4 * n},{20 + min(n, 6) - 0.4 * max(n - 6, 0):.1f}\n" for n in range(11))
    shown.act(act="adopt", label="Bench 9", csv=f"repeat,volume_cm3,temperature_c\n{rows}").raise_for_status()
    shown.act(act="own_reading", end_point_cm3=24.0).raise_for_status()
    text = printed(record(open_page, shown), tmp_path)
    assert "Not this group’s own readings: taken over from Bench 9." in text
    assert "26.00" in text


@pytest.mark.parametrize(("repeats", "portions", "portion_cm3"), [(3, 60, 0.7), (6, 10, 4.0)], ids=["long", "wide"])
def test_a_long_and_a_wide_table_print_on_one_side_too(
    shown: Station, open_page: OpenPage, tmp_path: Path, repeats: int, portions: int, portion_cm3: float
) -> None:
    rows = "".join(
        f"{repeat},{portion_cm3 * n:g},{20 + 0.1 * repeat + 0.1 * min(portion_cm3 * n, 26.0):.2f}\n"
        for repeat in range(1, repeats + 1)
        for n in range(portions + 1)
    )
    shown.act(act="adopt", label="Bench 9", csv=f"repeat,volume_cm3,temperature_c\n{rows}").raise_for_status()
    shown.act(act="own_reading", end_point_cm3=26.0)
    assert f"{portion_cm3 * portions:g} {20.1 + 2.6:.2f}" in printed(record(open_page, shown), tmp_path)
