"""The record CSV: RFC 4180 with a dot, times afresh in each repeat, only what counts."""

import csv
import io
import re
from collections.abc import Iterator, Sequence
from pathlib import Path

import pytest

from station.practical import events as e
from station.practical.plan import READY_PLAN, read_plan
from station.record.exchange import record_csv
from station.record.journal import Journal, JournalError, Moment

HEADER = "repeat,time_s,temperature_c,portion_cm3"
PLAN = e.PlanChosen(read_plan(READY_PLAN).model_dump(mode="json"))
Happened = Sequence[tuple[float, e.Event]]

ONE_REPEAT: Happened = [
    (0.0, PLAN),
    (1.0, e.SampleTaken(20.0)),  # before the repeat: of no interest
    (2.0, e.RepeatBegun(1, "k1")),
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
    journal.append(moments).result(timeout=10)
    journal.close()


def rows(text: str) -> Iterator[list[str]]:
    return csv.reader(io.StringIO(text, newline=""), strict=True)


def test_the_record_is_what_happened_in_the_repeat_and_nothing_else(folder: Path) -> None:
    write(folder, ONE_REPEAT)
    assert record_csv(folder) == "\r\n".join(
        [
            HEADER,
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
    assert record_csv(folder).count("\r\n") == 6
    journal.close()


def test_where_there_is_no_record_the_error_says_so(folder: Path) -> None:
    with pytest.raises(JournalError, match=r"no record here; name the record's folder with --record"):
        record_csv(folder)
