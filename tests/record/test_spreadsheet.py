"""The spreadsheet, opened again by another library: numbers are numbers, times are times, text is only ever text."""

import gc
import io
import re
import warnings
import zipfile
from collections.abc import Sequence
from datetime import datetime
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from openpyxl import load_workbook
from openpyxl.workbook import Workbook

from station.practical import events as e
from station.practical.events.cup import PlacedLine
from station.practical.fold import fold_all
from station.practical.kinds import read_plan
from station.practical.questions import QUESTIONS
from station.record.spreadsheet import sheets as spreadsheet_notes
from station.record.spreadsheet import sheets as spreadsheet_sheets
from station.record.spreadsheet.file import DANGEROUS, Sheet, local_time, spreadsheet
from station.record.spreadsheet.sheets import record_sheets, result_sheets
from station.record.spreadsheet.table import table_sheet
from station.words import Message, in_language, languages, say
from tests.records import PLAN_TEXT

PLAN = e.PlanChosen(read_plan(PLAN_TEXT).model_dump(mode="json"))
CHECKS = ("ice", "boiling", "comparison", "ice and boiling", "dip")
BAD_TEXTS = ("empty", "garbled", "zeros", "crc", "power_on", "several", "other_probe")
WALL = "2026-09-01T09:00:00.250+00:00"
DANGER = '=HYPERLINK("http://example.invalid","look")'

HAPPENED: Sequence[tuple[float, e.Event]] = [
    (0.0, PLAN),
    (0.5, e.GroupNamed("@Group 4")),
    (1.0, e.AlkaliMeasured(21.3, 0.05, "probe")),
    (2.0, e.RepeatBegun(1)),
    (2.5, e.SampleTaken(-0.0625)),
    (3.5, e.SampleTaken(None, "crc")),
    (4.5, e.SampleTaken(21.0)),
    (5.0, e.ReadingSettled(1, 0, -0.25, 0.03, True)),
    (6.0, e.PortionAdded(1, 1, 4.0)),
    (6.5, e.PortionUnsure(1, 1, None, "-1 drop spilled")),
    (7.0, e.ReadingSettled(1, 1, 22.5, 0.04, True)),
    (8.0, e.PortionAdded(1, 2, 4.5, True)),
    (8.5, e.NoteWritten(1, DANGER, 1, 2)),
    (9.0, e.ReadingSettled(1, 2, 24.0, None, False, "early")),
    (10.0, e.RepeatEnded(1)),
    (11.0, e.RepeatSetAside(1, "+the cup tipped")),
    (12.0, e.RepeatBegun(2)),
    (12.5, e.ReadingSettled(2, 0, 21.0, 0.03, True)),
    (13.0, e.PortionAdded(2, 1, 4.0)),
    (14.0, e.ReadingSettled(2, 1, 23.25, 0.03, True)),
]
RESULT: dict[str, Any] = {
    "seq": 99,
    "straight_lines": {
        "end_point_cm3": 25.1,
        "u_end_point_cm3": 0.2,
        "interval_95_cm3": [24.7, 25.5],
        "temperature_c": 28.4,
        "before": {"slope_c_cm3": 0.3, "intercept_c": 20.87, "points": [0, 1]},
        "after": {"slope_c_cm3": -0.1, "intercept_c": 30.91, "points": [2, 3]},
        "predicted_bias_cm3": -1.75,
    },
    "heat_balance": {
        "end_point_cm3": 26.9,
        "u_end_point_cm3": 0.1,
        "interval_95_cm3": [26.7, 27.1],
        "enthalpy_kj_mol": -57.25,
        "u_enthalpy_kj_mol": 0.5,
        "acid_mol_dm3": 0.43,
        "u_acid_mol_dm3": 0.002,
    },
    "refused": {},
    "notes": ["=not a formula"],
    "accepted": {"enthalpy_kj_mol": -57.1, "u": 0.3, "text": "strong acid", "source": "a table"},
    "steps": {
        "heat_balance": [
            {
                "text": "amount of alkali",
                "formula": "= c × V",
                "working": "0.4 × 26.9 / 1000",
                "value": 0.01076,
                "u": 4e-5,
                "unit": "mol",
            }
        ]
    },
    "repeats": [
        {
            "repeat": 1,
            "straight_lines": None,
            "heat_balance": None,
            "refused": {"straight_lines": "Too few readings.", "heat_balance": "No trace."},
            "notes": [],
        }
    ],
}


def stamped(happened: Sequence[tuple[float, e.Event]] = HAPPENED) -> list[e.Stamped]:
    return [e.Stamped(seq, "b", at, at, WALL, "none", event) for seq, (at, event) in enumerate(happened, 1)]


def content(result: dict[str, Any] | None = RESULT, bench: str = DANGER, language: str = "en") -> bytes:
    events = stamped()
    words = [each for each in events if not isinstance(each.event, e.SampleTaken)]
    return spreadsheet(record_sheets(bench, fold_all(events), result, words), language)


def opened(data: bytes) -> Workbook:
    return load_workbook(io.BytesIO(data))


def table(book: Workbook, name: str) -> list[tuple[Any, ...]]:
    return list(book[name].iter_rows(values_only=True))


def test_readings_are_numbers_with_what_became_of_them() -> None:
    rows = table(opened(content()), "Readings")
    assert rows[0][:4] == ("repeat", "portion", "total added / cm³", "temperature / °C")
    aside = "repeat set aside: +the cup tipped"
    assert rows[1:] == [
        (1, 0, 0, -0.25, 0.03, 3, "no", aside),
        (1, 1, 4, 22.5, 0.04, 5, "no", f"{aside}; not sure: -1 drop spilled"),
        (1, 2, 8.5, 24, None, 7, "no", f"{aside}; not settled; early"),
        (2, 0, 0, 21, 0.03, 0.5, "yes", None),
        (2, 1, 4, 23.25, 0.03, 2, "yes", None),
    ]


def test_in_another_language_the_words_differ_and_the_numbers_do_not() -> None:
    english, german = opened(content()), opened(content(language="de"))
    names = "Tabelle Plan Messwerte Fühler Mittel Messungen Portionen Ergebnisse Rechenschritte Notizen"
    assert german.sheetnames == names.split()
    rows = table(german, "Messwerte")
    assert rows[0][:4] == ("Durchgang", "Portion", "insgesamt zugegeben / cm³", "Temperatur / °C")
    assert rows[2][6:] == ("nein", "Durchgang zählt nicht mit: +the cup tipped; unsicher: -1 drop spilled")
    assert ("  Volumen", 25, "cm³") in table(german, "Plan")
    assert (1.0, None, None, "Temperatur der Zugabe", "21,30 °C") in [row[1:] for row in table(german, "Notizen")]
    for one, other in zip(english, german, strict=True):
        numbers = [
            [[cell for cell in row if not isinstance(cell, str)] for row in sheet.iter_rows(values_only=True)]
            for sheet in (one, other)
        ]
        assert numbers[0] == numbers[1]


@pytest.mark.parametrize("language", languages())
def test_every_language_has_names_that_sheets_may_have(language: str) -> None:
    state = fold_all(stamped())
    names = [in_language(sheet.name, language) for sheet in record_sheets("Bench 7", state, RESULT, stamped())]
    assert len({name.lower() for name in names}) == len(names) == 10
    assert all(re.fullmatch(r"[^\[\]:*?/\\']{1,31}", name) for name in names)


CODES = [
    ("noted-question", [e.QuestionAsked(1, 1, code) for code in QUESTIONS]),
    ("noted-answered", [e.QuestionAnswered(1, 1, "", each.answer) for q in QUESTIONS.values() for each in q.answers]),
    (
        "noted-bad",
        [e.ProbeLost(kind) for kind in (*BAD_TEXTS, "gone", "out_of_range", "jump", "no_answer", "not_read")],
    ),
    ("noted-check", [e.ProbeInUse("28-0", check=check) for check in CHECKS]),
]


@pytest.mark.parametrize(("message", "events"), CODES, ids=[message for message, _ in CODES])
def test_every_code_of_the_journal_has_words_of_its_own(message: str, events: list[e.Event]) -> None:
    """English has the code itself, as the spreadsheet always had; an unknown one stands as it is."""
    said = [spreadsheet_sheets._SAID[type(event)](event)[1] for event in events]
    assert all(isinstance(each, Message) and each.id == message for each in said)
    for each in said:
        assert isinstance(each, Message)
        assert each == each.values["text"]
        assert in_language(each, "de") != each, f"add {each.values['code']} to {message} in every language"
    assert in_language(say(message, code="of_a_newer_station", text="of a newer station"), "de") == "of a newer station"


def test_samples_portions_and_mean_are_numbers() -> None:
    book = opened(content())
    assert table(book, "Samples")[1:] == [(1, 0.5, -0.0625, "no", -0.0625), (1, 2.5, 21, "no", 21)]
    assert table(book, "Portions")[1:] == [
        (1, 1, 4, 4, "no", "yes", "-1 drop spilled", None),
        (1, 2, 6, 4.5, "yes", "no", None, None),
        (2, 1, 1, 4, "no", "no", None, None),
    ]
    assert table(book, "Mean")[1:] == [(0, 0, 21, 1), (1, 4, 23.25, 1)]


def test_it_opens_with_the_table_and_a_chart_with_both_lines() -> None:
    book = opened(content())
    assert book.sheetnames[0] == "Table"
    head, *rows = table(book, "Table")
    assert head[:3] == ("volume added / cm³", "run 2 / °C", "mean / °C".replace("mean", "mean temperature"))
    assert [row[:3] for row in rows[:2]] == [(0, 21, 21), (4, 23.25, 23.25)]
    (chart,) = charts(book)
    assert [each.tx.strRef is None for each in chart.series] == [True, True, True]
    lines = chart.series[1:]
    for series, (slope, intercept) in zip(lines, [(0.3, 20.87), (-0.1, 30.91)], strict=True):
        cells = [[book["Table"][cell] for cell in _cells(ref.numRef.f)] for ref in (series.xVal, series.yVal)]
        across, up = ([cell.value for cell in each] for each in cells)
        assert len(across) == 2
        assert up == pytest.approx([intercept + slope * cm3 for cm3 in across])
    assert "run 2" in head[1], "a repeat that was set aside has no column"


def charts(book: Workbook) -> list[Any]:
    """The charts of the table's sheet, as they were read back."""
    table_sheet: Any = book["Table"]
    return list(table_sheet._charts)


def _cells(reference: str) -> list[str]:
    """The two cells of a reference like Table!$F$2:$F$3."""
    return reference.rpartition("!")[2].replace("$", "").split(":")


def test_without_results_the_chart_has_no_line_of_theirs() -> None:
    (chart,) = charts(opened(content(None)))
    assert len(chart.series) == 1


COLD: dict[str, Any] = {
    "seq": 9,
    "straight_lines": {
        "change_c": -4.31,
        "u_change_c": 0.05,
        "interval_95_c": [-4.41, -4.21],
        "heat_j": -920.0,
        "u_heat_j": 20.0,
        "enthalpy_kj_mol": 17.15,
        "u_enthalpy_kj_mol": 0.4,
        "enthalpy_of": say("of-dissolved", reagent="potassium chloride"),
    },
    "heat_balance": None,
    "refused": {},
    "notes": [],
    "accepted": {"enthalpy_kj_mol": 17.22, "u": 0.02, "text": "much water", "source": "a table"},
    "repeats": [],
}


def test_a_change_has_its_sign_and_says_of_what_a_mole_is() -> None:
    """Heat that is taken in is never given out, less than nothing; an enthalpy that rises shows its plus."""
    book = opened(spreadsheet(result_sheets(fold_all(stamped()), COLD)))
    rows = {(row[1], row[2]): row for row in table(book, "Results")[1:]}
    mole = "enthalpy change per mole of potassium chloride dissolved"
    assert rows["straight lines", mole][3:5] == (17.15, 0.4)
    assert rows["straight lines", "heat taken in"][3] == 920
    assert rows[None, mole][3] == 17.22
    assert not any("given out" in str(row[2]) for row in rows.values())
    shown = {cell.value: cell.number_format for row in book["Results"].iter_rows() for cell in row}
    assert all(shown[value].startswith("+") for value in (-4.31, -4.41, -4.21, 17.15, 17.22))
    assert shown[0.4] == "General"


def test_dates_are_dates() -> None:
    book = opened(content())
    began = {row[0]: row[1] for row in table(book, "Plan")}["date and time (station's clock)"]
    assert began == datetime.fromisoformat(WALL).astimezone().replace(tzinfo=None)
    assert all(isinstance(row[0], datetime) for row in table(book, "Notes")[1:])
    assert book["Notes"].cell(2, 1).data_type == "d"


@pytest.mark.parametrize("wall", ["", "soon", "1700-01-01T00:00:00+00:00", "0001-01-01T00:00:00+14:00"])
def test_a_time_that_no_spreadsheet_knows_is_left_out(wall: str) -> None:
    assert local_time(wall) is None


@pytest.mark.fault("markup-and-formulas")
def test_no_text_is_a_formula_or_a_link() -> None:
    data = content()
    book = opened(data)
    dangerous = 0
    for sheet in book:
        for row in sheet.iter_rows():
            for cell in row:
                assert cell.data_type != "f"
                assert cell.hyperlink is None
                if isinstance(cell.value, str) and cell.value.startswith(DANGEROUS):
                    dangerous += 1
                    assert cell.quotePrefix, f"{cell.value!r} would be a formula once it is edited"
    assert dangerous >= 5
    with zipfile.ZipFile(io.BytesIO(data)) as parts:
        assert not any(b"<f>" in parts.read(name) or b"hyperlink" in parts.read(name) for name in parts.namelist())
    assert {row[0]: row[1] for row in table(book, "Plan")}["bench"] == DANGER


@settings(max_examples=30, deadline=None)
@given(st.text(st.characters(exclude_categories=["C"]), min_size=1, max_size=200))
def test_any_text_comes_out_as_it_went_in(text: str) -> None:
    for said in (text, *(start + text for start in DANGEROUS[:4])):
        book = opened(spreadsheet([Sheet("Notes", (("words", 10),), [(said,)])]))
        assert book["Notes"].cell(2, 1).value == said


@pytest.mark.parametrize("text", ["\ud800", "a\x00b\x1b", "\t=1+1", "\r\n-1", "_x0041_", "x" * 32_000])
def test_no_text_costs_the_file(text: str) -> None:
    cell = opened(spreadsheet([Sheet("Notes", (("words", 10),), [(text,)])]))["Notes"].cell(2, 1)
    assert cell.data_type in {"s", "inlineStr"}
    assert str(cell.value)


def test_a_number_that_is_none_leaves_its_cell_empty() -> None:
    rows = [(float("nan"), 1.5), (float("inf"), -2)]
    assert table(opened(spreadsheet([Sheet("S", (("a", 5), ("b", 5)), rows)])), "S")[1:] == [(None, 1.5), (None, -2)]


def test_results_have_both_methods_with_u_and_interval_and_the_steps() -> None:
    book = opened(content())
    rows = table(book, "Results")[1:]
    assert rows[0][:8] == ("mean", "straight lines", "end-point", 25.1, 0.2, 24.7, 25.5, "cm³")
    assert ("mean", "heat balance", "end-point", 26.9, 0.1, 26.7, 27.1, "cm³", None) in rows
    assert ("mean", "heat balance", "enthalpy change per mole", -57.25, 0.5, None, None, "kJ/mol", None) in rows
    assert ("repeat 1", "straight lines", "no result", None, None, None, None, None, "Too few readings.") in rows
    assert [row[8] for row in rows if row[2] == "worth a thought"] == ["=not a formula"]
    assert rows[-1] == (
        "accepted",
        None,
        "enthalpy change per mole",
        -57.1,
        0.3,
        None,
        None,
        "kJ/mol",
        "strong acid; a table",
    )
    (step,) = table(book, "Steps")[1:]
    assert step == ("mean", "heat balance", "amount of alkali", "= c × V", "0.4 × 26.9 / 1000", 0.01076, 4e-5, "mol")


def test_own_lines_that_never_cross_are_left_out_of_the_chart() -> None:
    level = PlacedLine(slope_c_cm3=0.0, intercept_c=22.0)
    other = PlacedLine(slope_c_cm3=0.0, intercept_c=25.0)
    read = e.EndPointRead(None, None, level, other, reason="they never meet")
    state = fold_all(stamped([*HAPPENED, (20.0, read)]))
    assert state.own_reading is not None and state.own_reading.before == level
    sheet = table_sheet(state, None)
    assert sheet.chart is not None
    assert [series.marks for series in sheet.chart.series] == [True], "the mean alone"


@pytest.mark.fault("early-results")
def test_before_results_are_shown_there_is_no_sheet_of_them() -> None:
    before = ["Table", "Plan", "Readings", "Probe", "Mean", "Samples", "Portions", "Notes"]
    assert opened(content(None)).sheetnames == before


def test_notes_and_corrections_stand_in_order_with_their_place() -> None:
    rows = [row[1:] for row in table(opened(content()), "Notes")[1:]]
    assert (8.5, 1, 2, "note 1", DANGER) in rows
    assert (6.5, 1, 1, "not sure of the portion", "-1 drop spilled") in rows
    assert (11, 1, None, "repeat set aside", "+the cup tipped") in rows
    assert [row[0] for row in rows] == sorted(row[0] for row in rows)


def test_every_kind_of_event_is_said_or_known_not_to_be() -> None:
    """A new kind of event is not forgotten here."""
    quiet = {e.StationStarted, e.SampleTaken, e.AlkaliDipBegun, e.PortionPrompted, e.PortionAdded, e.ReadingSettled}
    quiet |= {e.ProbeLookedAt, e.ProbeTallied, e.ProbeCheckBegun, e.ProbeCheckStep, e.ProbeCheckFound}
    quiet |= {e.ProbeCheckDiscarded, e.OrderTaken, e.TemperatureRead}
    assert set(e.EVENTS.values()) == set(spreadsheet_notes._SAID) | quiet | {e.Quieted, e.BenchRenamed}


def test_taken_over_readings_are_labelled_as_not_their_own() -> None:
    events = stamped(
        [*HAPPENED, (20.0, e.RepeatEnded(2)), (21.0, e.SetAdopted("=Bench 4", [(1, 0, 20.0), (1, 5, 22.5)]))]
    )
    book = opened(spreadsheet(record_sheets("Bench 7", fold_all(events), None, events[:1])))
    assert {row[0]: row[1] for row in table(book, "Plan")}["readings"] == "not this group's own: =Bench 4"
    assert [row[:4] for row in table(book, "Readings")[1:]] == [(1, 0, 0, 20), (1, 1, 5, 22.5)]
    assert len(table(book, "Samples")) == 3, "the own samples stay"


def test_a_repeat_left_running_for_days_does_not_fill_the_card(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(spreadsheet_sheets, "MOST_SAMPLES", 1)
    assert len(table(opened(content()), "Samples")) == 2


def test_temporary_files_do_not_outlast_a_failure(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("tempfile.tempdir", str(tmp_path))

    def rows() -> Any:
        yield (1,)
        raise OSError("no space left on device")

    with pytest.raises(OSError, match="no space left"):
        spreadsheet([Sheet("S", (("a", 5),), rows())])
    with warnings.catch_warnings(action="ignore", category=ResourceWarning):
        gc.collect()  # XlsxWriter leaves its open file to the collector
    assert list(tmp_path.iterdir()) == []
