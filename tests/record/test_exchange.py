"""The files that leave: RFC 4180 with a dot or for spreadsheets, times afresh in each repeat, only what counts."""

import csv
import io
import json
import re
from collections.abc import Iterator, Sequence
from pathlib import Path

import pytest

from station.practical import events as e
from station.practical.dataset import repeat_data
from station.practical.fold import fold_all
from station.practical.kinds import plan_from, read_plan
from station.practical.readings_text import readings_from_text
from station.practical.state import State
from station.record.exchange import (
    PIECE,
    Figure,
    csv_text,
    journal_lines,
    journal_piece,
    newest_began,
    newest_practical,
    readings_text,
    record_csv,
    record_text,
    table_text,
)
from station.record.exchange_in import ExchangeError, read_exchange
from station.record.journal import Journal, JournalError, Moment
from tests.conftest import PATIENCE_S
from tests.records import PLAN_TEXT

HEADER = "repeat,time_s,temperature_c,portion_cm3"
PLAN = e.PlanChosen(read_plan(PLAN_TEXT).model_dump(mode="json"))
Happened = Sequence[tuple[float, e.Event]]

ONE_REPEAT: Happened = [
    (0.0, PLAN),
    (1.0, e.SampleTaken(20.0)),  # before the repeat: of no interest
    (2.0, e.RepeatBegun(1, "k1")),
    (1.75, e.SampleTaken(21.0)),  # its conversion was under way
    (2.5, e.SampleTaken(21.0625)),
    (3.5, e.SampleTaken(None, "crc", None, "ff")),
    (4.5, e.SampleTaken(-0.0625)),
    (5.0, e.ReadingSettled(1, 0, 21.1, 0.03, True)),
    (5.0, e.PortionPrompted(1, 1)),
    (6.25, e.PortionAdded(1, 1, 4.0, False, "page", "k2")),
    (6.0, e.SampleTaken(22.125)),  # the middle of a conversion that ended after the press
    (7.0, e.PortionAdded(1, 2, 2.55, True, "button", "k3")),
]


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    return tmp_path / "record"


def write(folder: Path, happened: Happened) -> None:
    journal = Journal(folder)
    moments = [(Moment("b", time_s, time_s, "2026-09-01T09:00:00+00:00", "none"), event) for time_s, event in happened]
    journal.append(moments).result(timeout=PATIENCE_S)
    journal.close()


def rows(text: str) -> Iterator[list[str]]:
    return csv.reader(io.StringIO(text, newline=""), strict=True)


def test_the_record_is_what_happened_in_the_repeat_and_nothing_else(folder: Path) -> None:
    write(folder, ONE_REPEAT)
    assert record_csv(folder) == "\r\n".join(
        [
            HEADER,
            "1,-0.250,21.0000,",
            "1,0.500,21.0625,",
            "1,2.500,-0.0625,",
            "1,4.000,22.1250,",
            "1,4.250,,4",
            "1,5.000,,2.55",
            "",
        ]
    )


def test_lines_end_as_rfc_4180_says_and_every_row_has_four_fields(folder: Path) -> None:
    """RFC 4180, 2: each record on its own line, ended by CRLF; the same number of fields in each."""
    write(folder, ONE_REPEAT)
    text = record_csv(folder)
    assert text.endswith("\r\n")
    assert not re.search(r"(?<!\r)\n|\r(?!\n)", text)
    assert {len(row) for row in rows(text)} == {4}
    assert next(rows(text)) == HEADER.split(",")
    assert text.isascii()


def test_times_start_afresh_in_each_repeat_and_a_repeat_set_aside_is_left_out(folder: Path) -> None:
    again: Happened = [
        (30.0, e.RepeatSetAside(1, "the cup tipped", "k4")),
        (31.0, e.RepeatBegun(2, "k5")),
        (32.0, e.SampleTaken(21.5)),
        (40.0, e.PortionAdded(2, 1, 4.0)),
        (90.0, e.RepeatEnded(2)),
        (95.0, e.SampleTaken(25.0)),  # while rinsing
        (100.0, e.RepeatBegun(3, "k6")),
        (100.5, e.SampleTaken(21.25)),
    ]
    write(folder, [*ONE_REPEAT, *again])
    assert list(rows(record_csv(folder)))[1:] == [
        ["2", "1.000", "21.5000", ""],
        ["2", "9.000", "", "4"],
        ["3", "0.500", "21.2500", ""],
    ]


def test_corrections_count_and_a_portion_taken_back_is_gone(folder: Path) -> None:
    corrected: Happened = [(8.0, e.PortionUndone(1, 2, "k4")), (9.0, e.PortionVolumeCorrected(1, 1, 5.5, "k5"))]
    write(folder, [*ONE_REPEAT, *corrected])
    assert [row for row in rows(record_csv(folder)) if row[3]] == [HEADER.split(","), ["1", "4.250", "", "5.5"]]


def test_only_the_newest_practical_leaves(folder: Path) -> None:
    write(folder, ONE_REPEAT)
    write(folder, [(200.0, PLAN), (201.0, e.RepeatBegun(1, "n1")), (202.0, e.SampleTaken(19.0))])
    assert record_csv(folder) == f"{HEADER}\r\n1,1.000,19.0000,\r\n"


def test_before_anything_happened_there_is_a_header_alone(folder: Path) -> None:
    write(folder, [])
    assert record_csv(folder) == f"{HEADER}\r\n"


def test_a_record_can_be_read_while_its_station_writes(folder: Path) -> None:
    write(folder, ONE_REPEAT)
    journal = Journal(folder)
    assert record_csv(folder).count("\r\n") == 7
    journal.close()


def test_where_there_is_no_record_the_error_says_so(folder: Path) -> None:
    with pytest.raises(JournalError, match=r"no record here; name the record's folder with --record"):
        record_csv(folder)


def state_of(folder: Path) -> State:
    return fold_all(newest_practical(folder))


READ: Happened = [
    *ONE_REPEAT,
    (7.0, e.ReadingSettled(1, 1, -0.5, None, False, "early")),
    (9.0, e.ReadingSettled(1, 2, 23.40625, 0.03, True)),
    (10.0, e.RepeatEnded(1)),
    (11.0, e.RepeatBegun(2, "k5")),
    (12.0, e.ReadingSettled(2, 0, 21.2, 0.03, True)),
    (13.0, e.PortionAdded(2, 1, 4.0, False, "page", "k6")),
    (14.0, e.PortionUnsure(2, 1, "k7", "spilled")),
    (15.0, e.ReadingSettled(2, 1, 30.0, 0.03, True)),
    (16.0, e.PortionAdded(2, 2, 2.55, False, "page", "k8")),
    (17.0, e.ReadingSettled(2, 2, 23.5, 0.03, True)),
]


def test_readings_are_totals_and_temperatures_without_what_is_doubted(folder: Path) -> None:
    write(folder, READ)
    assert readings_text(state_of(folder)) == "\r\n".join(
        [
            "repeat,volume_cm3,temperature_c",
            "1,0,21.1000",
            "1,4,-0.5000",
            "1,6.55,23.4062",
            "2,0,21.2000",
            "2,6.55,23.5000",
            "",
        ]
    )


def test_for_spreadsheets_that_want_a_comma_there_are_semicolons_too(folder: Path) -> None:
    """A file with decimal commas and commas between cells would fall apart in every spreadsheet."""
    write(folder, READ)
    state = state_of(folder)
    for plain, comma in (
        (record_text(state), record_text(state, decimal_comma=True)),
        (readings_text(state), readings_text(state, decimal_comma=True)),
    ):
        assert "." not in comma
        assert comma.replace(",", ".").replace(";", ",") == plain
    assert "1;6,55;23,4062\r\n" in readings_text(state, decimal_comma=True)


def test_no_cell_is_anything_but_a_number(folder: Path) -> None:
    """So no cell begins a formula: a bench or a group with a dangerous name does not stand in these files."""
    named: Happened = [(2.1, e.GroupNamed("=cmd()")), (2.2, e.BenchRenamed("@SUM(A1)", "teacher"))]
    write(folder, [*READ, *named])
    for text in (record_text(state_of(folder)), readings_text(state_of(folder))):
        assert all(float(cell) == float(cell) for row in list(rows(text))[1:] for cell in row if cell)


@pytest.mark.fault("markup-and-formulas")
@pytest.mark.parametrize("decimal_comma", [False, True])
@pytest.mark.parametrize(
    ("text", "kept"),
    [
        ("=1+1", "'=1+1"),
        ("Anna;=1+1", "Anna;'=1+1"),
        ("Anna; @SUM(A1)", "Anna; '@SUM(A1)"),
        ('Anna";-1', "Anna\";'-1"),
        ("Anna,+1", "Anna,'+1"),
        ("half-time; 2 = 1 + 1", "half-time; 2 = 1 + 1"),
    ],
)
def test_a_text_begins_no_formula_wherever_a_spreadsheet_splits(text: str, kept: str, decimal_comma: bool) -> None:
    written = csv_text(("name", "value"), [(text, Figure("1.5")), ("", Figure())], decimal_comma=decimal_comma)
    delimiter = ";" if decimal_comma else ","
    header, row, empty = csv.reader(io.StringIO(written, newline=""), delimiter=delimiter)
    assert (header, row[0], empty) == (["name", "value"], kept, ["", ""])
    assert written.splitlines()[1].startswith('"') and not written.splitlines()[1].endswith('"')
    assert not any(cell.strip().startswith(tuple("=+-@")) for line in written.splitlines() for cell in line.split(";"))


def test_what_leaves_can_come_in_again(folder: Path) -> None:
    write(folder, READ)
    (one, two) = read_exchange(record_text(state_of(folder)), "record.csv")
    assert one.samples == ((-0.25, 21.0), (0.5, 21.0625), (2.5, -0.0625), (4.0, 22.125))
    assert one.pours == ((4.25, 4.0, False), (5.0, 2.55, False))
    assert [len(each.pours) for each in (one, two)] == [2, 2]
    first, second = readings_from_text(readings_text(state_of(folder)))
    assert [(row.portion, row.volume_cm3) for row in first.readings] == [(0, 0.0), (1, 4.0), (2, 6.55)]
    assert [(row.portion, row.volume_cm3) for row in second.readings] == [(0, 0.0), (2, 6.55)]


SOLID = e.PlanChosen(
    plan_from(
        {
            "kind": "once",
            "liquid": {"name": "water", "volume_cm3": 50.0},
            "addition": {"name": "potassium chloride", "mass_g": 4.0},
        }
    ).model_dump(mode="json")
)
WEIGHED: Happened = [
    (0.0, SOLID),
    (2.0, e.RepeatBegun(1, "k1")),
    (3.0, e.SampleTaken(21.0)),
    (4.0, e.ReadingSettled(1, 0, 21.0, 0.03, True)),
    (5.0, e.PortionAdded(1, 1, 0.0, False, "page", "k2", mass_g=4.1, places=2)),
    (6.0, e.SampleTaken(16.5)),
    (7.0, e.ReadingSettled(1, 1, 16.5, 0.03, True)),
    (8.0, e.RepeatEnded(1)),
    (9.0, e.RepeatBegun(2, "k3")),
    (10.0, e.SampleTaken(21.0)),
    (11.0, e.ReadingSettled(2, 0, 21.0, 0.03, True)),
    (12.0, e.PortionAdded(2, 1, 0.0)),
    (13.0, e.ReadingSettled(2, 1, 16.75, 0.03, True)),
]


def test_what_was_weighed_leaves_with_its_digits_and_comes_back(folder: Path) -> None:
    write(folder, WEIGHED)
    state = state_of(folder)
    text = record_text(state)
    assert text.splitlines()[0] == f"{HEADER},mass_g"
    assert [row for row in rows(text) if row[3]] == [
        [*HEADER.split(","), "mass_g"],
        ["1", "3.000", "", "0", "4.10"],
        ["2", "3.000", "", "0", ""],
    ]
    one, two = read_exchange(text, "record.csv", once=True)
    assert (one.mass_g, one.places) == (4.1, 2)
    assert (two.mass_g, two.places) == (None, None)
    assert repeat_data(state.repeats[0]).mass_g == one.mass_g
    assert table_text(state).splitlines() == [
        "volume_cm3,repeat_1_c,repeat_2_c,mean_c,mass_1_g,mass_2_g",
        "0,21,21,21,,",
        "0,16.5,16.75,16.625,4.10,",
    ]


@pytest.mark.parametrize(("cell", "says"), [("4,1", "a dot"), ("0", "between"), ("-1", "between"), ("much", "number")])
def test_a_mass_that_cannot_be_is_named_by_line_and_column(cell: str, says: str) -> None:
    text = f'{HEADER},mass_g\r\n1,0,21,,\r\n1,5,,0,"{cell}"\r\n1,9,16.5,,\r\n'
    with pytest.raises(ExchangeError, match=f"line 3, column mass_g.*{says}"):
        read_exchange(text, "record.csv", once=True)


def test_another_groups_readings_leave_as_readings_and_the_own_samples_stay_the_own(folder: Path) -> None:
    write(
        folder, [*ONE_REPEAT, (20.0, e.RepeatEnded(1)), (21.0, e.SetAdopted("Bench 4", [(1, 0, 20.0), (1, 5, 22.5)]))]
    )
    state = state_of(folder)
    assert readings_text(state) == "repeat,volume_cm3,temperature_c\r\n1,0,20.0000\r\n1,5,22.5000\r\n"
    assert record_text(state).count("\r\n") == 7


def test_the_journal_leaves_event_by_event_from_the_choice_of_the_plan_on(folder: Path) -> None:
    write(folder, ONE_REPEAT)
    note = e.NoteWritten(1, "=1+1 \u2013 spilled \u00fc")
    write(folder, [(200.0, PLAN), (201.0, e.RepeatBegun(1, "n1")), (202.0, e.SampleTaken(None, "crc")), (203.0, note)])
    lines = [json.loads(line) for line in journal_lines(folder)]
    assert [line["seq"] for line in lines] == [13, 14, 15, 16]
    assert [line["kind"] for line in lines] == ["plan_chosen", "repeat_begun", "sample_taken", "note_written"]
    assert lines[2] == {
        "seq": 15,
        "boot": "b",
        "time_s": 202.0,
        "wall": "2026-09-01T09:00:00+00:00",
        "clock": "none",
        "kind": "sample_taken",
        "body": {"temperature_c": None, "bad": "crc", "rejected_c": None, "text": None},
    }
    assert lines[3]["body"]["text"] == "=1+1 \u2013 spilled \u00fc"


def test_a_long_journal_leaves_in_pieces_that_miss_and_repeat_nothing(folder: Path) -> None:
    samples = [(float(number), e.SampleTaken(20.0)) for number in range(2 * PIECE + 7)]
    write(folder, [(0.0, PLAN), *samples])
    first, last, text = newest_began(folder), 2 * PIECE + 3, ""
    sizes = []
    piece, first = journal_piece(folder, first, last)
    while piece:
        sizes.append(piece.count("\n"))
        text += piece
        piece, first = journal_piece(folder, first, last)
    assert sizes == [PIECE, PIECE, 3]
    assert [json.loads(line)["seq"] for line in text.splitlines()] == list(range(1, last + 1))


def test_an_event_of_a_newer_station_leaves_as_it_is(folder: Path) -> None:
    class Newer(e.Event):
        kind = "cup_weighed"

        def to_body(self) -> dict[str, float]:
            return {"mass_g": 12.5}

    write(folder, [(0.0, PLAN), (1.0, Newer())])
    newest = json.loads(list(journal_lines(folder))[-1])
    assert (newest["kind"], newest["body"]) == ("cup_weighed", {"mass_g": 12.5})
