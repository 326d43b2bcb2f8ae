"""What a bench lets out gives the same results again: its record analysed anew, its readings on another bench."""

import csv
import io
from pathlib import Path
from typing import Any

import pytest

from station.practical import events as e
from station.practical.acts import Act
from station.practical.dataset import Known, RepeatData, from_question, question_for
from station.practical.fold import fold
from station.practical.kinds import read_plan
from station.practical.plan import Plan
from station.practical.procedure import advance
from station.practical.readings_text import readings_from_text
from station.practical.replay import with_readings
from station.practical.results import results
from station.practical.state import State, Step
from station.record.exchange import readings_text, record_csv, record_text, table_text
from station.record.exchange_in import ExchangeError, read_exchange
from station.record.journal import Journal, Moment
from station.record.spreadsheet.table import table_sheet
from station.words import in_language, languages
from tests.conftest import PATIENCE_S
from tests.records import record

MADE = record(seed=3, repeats=2, error_cm3=0.1)
PLAN = read_plan(MADE.plan)
ALKALI = Known(21.5, 0.29, alkali_typed=True)
BEGAN_S = 4321.987
"""Bench time goes on over restarts: no practical begins at 0."""


class Bench:
    """A bench at work in its own time, and the events it keeps."""

    def __init__(self, plan: Plan) -> None:
        self.state, self.time_s, self.keys = State(), BEGAN_S, 0
        self.happened: list[tuple[Moment, e.Event]] = []
        self.keep(e.PlanChosen(plan.model_dump(mode="json")))

    def keep(self, *events: e.Event) -> None:
        for event in events:
            moment = Moment("b", self.time_s, self.time_s, "2026-09-01T09:00:00+00:00", "none")
            self.happened.append((moment, event))
            self.state = fold(
                self.state, e.Stamped(len(self.happened), "b", self.time_s, self.time_s, "", "none", event)
            )

    def act(self, name: str, **values: Any) -> None:
        self.keys += 1
        act = Act.model_validate({"act": name, "key": f"key {self.keys}", **values})
        self.keep(*advance(self.state, act, self.time_s))

    def sample(self, temperature_c: float) -> None:
        self.keep(*advance(self.state, e.SampleTaken(temperature_c), self.time_s))

    def do_everything(self) -> None:
        """Both repeats of the cup, one after the other, with the presses of its record."""
        self.act("alkali_temperature", temperature_c=ALKALI.alkali_c)
        for recorded in read_exchange(MADE.csv, "cup"):
            begun_s = self.time_s = self.time_s + 40.003
            self.act("begin" if self.state.step is Step.READY else "rinsed")
            rows = [(time_s, 0, temperature_c) for time_s, temperature_c in recorded.samples]
            rows.append((-0.25, 0, recorded.samples[0][1]))  # its conversion was under way at the press
            rows += [(time_s, number, 0.0) for number, (time_s, _, _) in enumerate(recorded.pours, 1)]
            for time_s, portion, temperature_c in sorted(rows, key=lambda row: row[:2]):
                self.time_s = begun_s + time_s
                if portion:
                    self.act("portion_added", portion=portion)
                else:
                    self.sample(temperature_c)
        if self.state.step is not Step.DONE:
            self.act("finish")


@pytest.fixture(scope="module")
def bench() -> Bench:
    made = Bench(PLAN)
    made.do_everything()
    return made


@pytest.fixture(scope="module")
def live(bench: Bench) -> dict[str, Any]:
    """What the station itself works out of what it has."""
    return results(*from_question(question_for(bench.state)))


def test_the_record_analysed_again_gives_the_same_end_points(
    bench: Bench, live: dict[str, Any], tmp_path: Path
) -> None:
    journal = Journal(tmp_path)
    journal.append(bench.happened).result(timeout=PATIENCE_S)
    journal.close()
    text = record_csv(tmp_path)
    again = results(PLAN, with_readings(PLAN, read_exchange(text, "record.csv")), ALKALI)
    for method, within_cm3 in (("straight_lines", 1e-9), ("heat_balance", 1e-4)):
        assert again["mean"][method]["end_point_cm3"] == pytest.approx(
            live["mean"][method]["end_point_cm3"], abs=within_cm3
        )
        for one, other in zip(again["repeats"], live["repeats"], strict=True):
            assert one[method]["end_point_cm3"] == pytest.approx(other[method]["end_point_cm3"], abs=within_cm3)
            assert one[method]["u_end_point_cm3"] == pytest.approx(other[method]["u_end_point_cm3"], rel=1e-3)


def test_the_readings_on_another_bench_give_the_same_lines(bench: Bench, live: dict[str, Any]) -> None:
    other = Bench(PLAN)
    other.act("adopt", label="Bench 4", csv=readings_text(bench.state))
    found = results(*from_question(question_for(other.state)))
    assert [each["repeat"] for each in found["repeats"]] == [1, 2]
    assert_same_lines(found["mean"], live["mean"])
    for one, lived in zip(found["repeats"], live["repeats"], strict=True):
        assert_same_lines(one, lived)


def test_a_reading_that_is_left_out_never_shifts_the_others_on_another_bench(bench: Bench) -> None:
    doubted = Bench(PLAN)
    doubted.happened, doubted.state, doubted.time_s = list(bench.happened), bench.state, bench.time_s
    doubted.keep(e.PortionUnsure(1, 3), e.PortionUnsure(2, 6))
    live = results(*from_question(question_for(doubted.state)))["mean"]
    assert_same_lines(results(PLAN, readings_from_text(readings_text(doubted.state)))["mean"], live)
    other = Bench(PLAN)
    other.act("adopt", label="Bench 4", csv=readings_text(doubted.state))
    assert_same_lines(results(*from_question(question_for(other.state)))["mean"], live)
    assert readings_text(other.state) == readings_text(doubted.state)


def test_an_adopted_set_can_be_handed_on(bench: Bench) -> None:
    text = readings_text(bench.state)
    other = Bench(PLAN)
    other.act("adopt", label="Bench 4", csv=text)
    assert readings_text(other.state) == text
    assert record_text(other.state) == "repeat,time_s,temperature_c,portion_cm3\r\n"


def test_what_is_read_again_is_what_the_bench_has(bench: Bench) -> None:
    """To the last digit of the probe and the millisecond."""
    question = from_question(question_for(bench.state))
    for one, other in zip(read_exchange(record_text(bench.state), "r"), question[1], strict=True):
        assert (one.repeat, one.samples, one.pours, one.ended) == (
            other.repeat,
            other.samples,
            other.pours,
            other.ended,
        )


def assert_same_lines(one: dict[str, Any], other: dict[str, Any]) -> None:
    one, other = one["straight_lines"], other["straight_lines"]
    assert one["end_point_cm3"] == pytest.approx(other["end_point_cm3"], abs=2e-3)
    assert one["u_end_point_cm3"] == pytest.approx(other["u_end_point_cm3"], rel=2e-2)
    for arm in ("before", "after"):
        assert len(one[arm]["points"]) == len(other[arm]["points"])
        assert one[arm]["slope_c_cm3"] == pytest.approx(other[arm]["slope_c_cm3"], abs=1e-4)


@pytest.fixture(scope="module")
def doubted() -> Bench:
    """A bench that asked about two portions of its first repeat, one answered, and has a doubt about a third."""
    bench = Bench(PLAN)
    bench.do_everything()
    bench.keep(
        e.QuestionAsked(1, 3, "double"),
        e.QuestionAnswered(1, 3, "double", "once"),
        e.QuestionAsked(1, 5, "no_change"),
        e.PortionUnsure(1, 7),
    )
    return bench


@pytest.mark.parametrize("decimal_comma", [False, True])
def test_doubts_and_questions_come_back_from_the_record(doubted: Bench, decimal_comma: bool) -> None:
    text = record_text(doubted.state, decimal_comma=decimal_comma)
    first, second = with_readings(PLAN, read_exchange("\ufeff" + text, "record.csv"))
    assert first.questions == ((5, "no_change"),)
    assert [number for number, pour in enumerate(first.pours, 1) if pour[2]] == [5, 7]
    assert not {5, 7} & {row.portion for row in first.readings}
    assert second.questions == ()
    found, there = (results(PLAN, each, ALKALI) for each in ([first, second], as_worked(doubted)))
    for one, other in zip(found["repeats"], there["repeats"], strict=True):
        assert one["questions"] == other["questions"]
        assert one["heat_balance"]["end_point_cm3"] == pytest.approx(other["heat_balance"]["end_point_cm3"], abs=0.02)
        assert one["heat_balance"]["u_end_point_cm3"] == pytest.approx(
            other["heat_balance"]["u_end_point_cm3"], rel=0.05
        )


def as_worked(bench: Bench) -> list[RepeatData]:
    """The repeats as the worker gets them."""
    return list(from_question(question_for(bench.state))[1])


def test_a_question_that_no_station_asks_is_named(doubted: Bench) -> None:
    text = record_text(doubted.state).replace("no_change", "no_chance")
    with pytest.raises(ExchangeError, match="questions"):
        read_exchange(text, "record.csv")


@pytest.mark.parametrize("decimal_comma", [False, True])
def test_the_table_comes_back_as_readings(doubted: Bench, decimal_comma: bool) -> None:
    back = read_exchange(table_text(doubted.state, decimal_comma=decimal_comma), "table.csv")
    written = [
        [(r.portion, r.temperature_c) for r in sorted(each.readings, key=lambda r: r.portion)]
        for each in doubted.state.counted
    ]
    assert [[row.portion for row in each.readings] for each in back] == [[p for p, _ in each] for each in written]
    for one, other in zip(back, written, strict=True):
        assert [row.temperature_c for row in one.readings] == pytest.approx([c for _, c in other], abs=1e-3)


@pytest.mark.parametrize("language", languages())
@pytest.mark.parametrize("delimiter", [",", ";", "\t"])
def test_a_spreadsheets_first_sheet_saved_as_csv_comes_back(doubted: Bench, language: str, delimiter: str) -> None:
    answer = results(PLAN, as_worked(doubted), ALKALI)
    sheet = table_sheet(doubted.state, answer["mean"])
    out = io.StringIO()
    writer = csv.writer(out, delimiter=delimiter)
    writer.writerow([in_language(name, language) for name, _ in sheet.columns])
    width = len(sheet.columns)
    for row in sheet.rows:
        cells = ["" if each is None else str(each).replace(".", "," if delimiter == ";" else ".") for each in row]
        writer.writerow([*cells, *[""] * (width - len(cells))])
    back = read_exchange("\ufeff" + out.getvalue(), "Table.csv")
    assert [each.repeat for each in back] == [1, 2]
    assert len(back[0].readings) == len([r for r in doubted.state.counted[0].readings if r.temperature_c is not None])


def test_readings_by_semicolons_come_back(doubted: Bench) -> None:
    dot, comma = (readings_text(doubted.state, decimal_comma=each) for each in (False, True))
    assert read_exchange(comma, "readings.csv") == read_exchange(dot, "readings.csv")
