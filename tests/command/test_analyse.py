"""`station analyse` and `station replay`: files in, results and decisions out, mistakes named to the cell."""

import json
import math
from collections import Counter
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from station.command.main import main
from station.record.exchange_in import ExchangeError, read_exchange
from tests.records import record


def analysed(capsys: pytest.CaptureFixture[str], *arguments: str | Path) -> dict[str, Any]:
    assert main(["analyse", *map(str, arguments), "--json"]) == 0
    answer: dict[str, Any] = json.loads(capsys.readouterr().out)
    return answer


def test_both_methods_stand_side_by_side_and_the_truth_is_in_the_heat_balance(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    made = record(seed=5)
    (tmp_path / "record.csv").write_text(made.csv)
    (tmp_path / "plan.toml").write_text(made.plan)
    answer = analysed(capsys, tmp_path / "record.csv", "--plan", tmp_path / "plan.toml")
    assert [each["repeat"] for each in answer["repeats"]] == [1, 2]
    for each in (*answer["repeats"], answer["mean"]):
        heat, lines = each["heat_balance"], each["straight_lines"]
        low, high = heat["interval_95_cm3"]
        assert low <= heat["end_point_cm3"] <= high
        assert heat["end_point_cm3"] == pytest.approx(made.end_point_cm3, abs=4 * heat["u_end_point_cm3"])
        assert heat["acid_mol_dm3"] == pytest.approx(made.acid_mol_dm3, abs=4 * heat["u_acid_mol_dm3"])
        assert heat["enthalpy_kj_mol"] == pytest.approx(made.enthalpy_kj_mol, abs=3 * heat["u_enthalpy_kj_mol"])
        # Straight lines through raw temperatures come out low, and the prediction says by how much.
        assert lines["end_point_cm3"] < made.end_point_cm3 - 1.0
        assert lines["predicted_bias_cm3"] == pytest.approx(lines["end_point_cm3"] - made.end_point_cm3, abs=0.6)
        assert len(lines["before"]["points"]) >= 3
        assert len(lines["after"]["points"]) >= 3


def test_readings_by_hand_without_a_plan_give_straight_lines_alone(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    # RSC Education, thermometric titration (AQA handbook), typical results: mean of two trials.
    temperatures = (20.5, 24.3, 27.2, 29.1, 31.05, 32.3, 32.3, 31.7, 30.8)
    rows = "".join(f"1,{5 * number},{each}\n" for number, each in enumerate(temperatures))
    (tmp_path / "readings.csv").write_text("repeat,volume_cm3,temperature_c\n" + rows)
    answer = analysed(capsys, tmp_path / "readings.csv")
    lines = answer["repeats"][0]["straight_lines"]
    # Ordinary least squares on 0-20 and 25-40 cm³ cross at 22.323 cm³, Fieller 18.439 to 25.753 (own calculation).
    assert lines["before"]["points"] == [0, 1, 2, 3, 4]
    assert lines["end_point_cm3"] == pytest.approx(22.323, abs=0.001)
    assert lines["interval_95_cm3"] == pytest.approx([18.439, 25.753], abs=0.001)
    assert answer["repeats"][0]["heat_balance"] is None


def test_a_refusal_is_an_answer(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    rows = "".join(f"1,{3 * number},{20 + number}\n" for number in range(7))
    (tmp_path / "rising.csv").write_text("repeat,volume_cm3,temperature_c\n" + rows)
    answer = analysed(capsys, tmp_path / "rising.csv")
    assert answer["mean"]["straight_lines"] is None
    assert answer["mean"]["refused"]["straight_lines"]


def test_replay_settles_each_portion_once_and_never_before_its_press(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    made = record(seed=6, repeats=2)
    (tmp_path / "record.csv").write_text(made.csv)
    assert main(["replay", str(tmp_path / "record.csv"), "--json"]) == 0
    lines = [json.loads(line) for line in capsys.readouterr().out.splitlines()]
    settled = [line for line in lines if line["kind"] == "settled"]
    assert Counter((line["repeat"], line["portion"]) for line in settled).most_common(1)[0][1] == 1
    assert {line["portion"] for line in settled} == set(range(11))
    assert any(line["kind"] == "prompt" for line in lines)
    pressed = {(line["repeat"], line["portion"]): line["time_s"] for line in lines if line["kind"] == "portion_added"}
    for line in settled:
        assert {"repeat", "portion", "time_s", "temperature_c", "u_c"} <= set(line)
        if line["portion"]:
            assert line["time_s"] > pressed[line["repeat"], line["portion"]]


HEADER = "repeat,time_s,temperature_c,portion_cm3\n"
READINGS = "repeat,volume_cm3,temperature_c\n"


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("", "line 1, column repeat: the file is empty"),
        ("\ufeff", "line 1, column repeat: the file is empty"),
        ("a,b\n1,2\n", "line 1, column repeat: missing"),
        ("repeat;volume_cm3;temperature_c\n", "no rows below the header"),
        (HEADER, "line 2, column repeat: no rows"),
        (HEADER + "1,0,20,\n1,1,nan,\n", "line 3, column temperature_c: not a number"),
        (HEADER + "1,0,20,\n1,inf,20,\n", "line 3, column time_s: not a number"),
        (HEADER + "1,0,20,\n1,x,20,\n", "line 3, column time_s: not a number: x"),
        (HEADER + '1,0,"20,5",\n', "line 2, column temperature_c: not a number: 20,5 (a dot, not a comma)"),
        (HEADER + "1,0,,\n", "line 2, column temperature_c: neither temperature nor portion"),
        (HEADER + "1,0,20,4\n", "line 2, column temperature_c: both a temperature and a portion"),
        (HEADER + "1,5,20,\n1,4,20,\n", "line 3, column time_s: 4 comes after 5"),
        (HEADER + "1,5\n", "line 2, column temperature_c: 2 cells under a header of 4"),
        (HEADER + "1.5,5,20,\n", "line 2, column repeat: not a whole number"),
        (HEADER + "1,5,900,\n", "line 2, column temperature_c: 900 is not between -55 and 125"),
        (HEADER + "1,5,,-4\n", "line 2, column portion_cm3: -4 is not between 0 and 1000"),
        (
            "repeat,volume_cm3,temperature_c\n1,4,20\n1,3,21\n",
            "line 3, column volume_cm3: 3 is less than in the row before",
        ),
        ("repeat,repeat,volume_cm3,temperature_c\n", "column repeat: stands twice"),
    ],
)
def test_a_mistake_in_a_file_is_one_line_with_line_and_column(
    text: str, says: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    file = tmp_path / "lesson.csv"
    file.write_text(text, encoding="utf-8")
    assert main(["analyse", str(file)]) == 2
    said = capsys.readouterr()
    assert says in said.err
    assert str(file) in said.err
    assert said.err.count("\n") == 1
    assert said.out == ""


def test_a_file_that_is_not_there_not_text_or_huge_is_one_line(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (tmp_path / "binary.csv").write_bytes(b"\xff\xfe\x00\x01")
    with (tmp_path / "huge.csv").open("wb") as huge:
        huge.truncate(30_000_000)
    for name, says in (("no.csv", "no such file"), ("binary.csv", "not UTF-8"), ("huge.csv", "larger than 20 MB")):
        for command in ("analyse", "replay"):
            assert main([command, str(tmp_path / name)]) == 2
            assert says in capsys.readouterr().err


@settings(max_examples=300, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(
    st.one_of(
        st.text(max_size=200),
        st.lists(
            st.lists(st.one_of(st.floats().map(str), st.sampled_from(["", "1", "x", '"', "4.0"])), max_size=5),
            max_size=8,
        ).map(lambda rows: HEADER + "\n".join(",".join(row) for row in rows)),
    )
)
def test_any_text_is_repeats_or_an_error_with_its_line(text: str) -> None:
    try:
        repeats = read_exchange(text, "any.csv")
    except ExchangeError as error:
        assert "any.csv: line " in str(error)
    else:
        assert repeats


COLD_PLAN = """
kind = "once"
[liquid]
name = "water"
volume_cm3 = 50.0
[addition]
name = "potassium chloride"
mass_g = 4.0
"""


def cold(mass_g: str) -> str:
    """A cup that potassium chloride cools by 4.35 °C: it dissolves in 8 s, and the cup warms again in an hour."""
    rows = [f"1,{time_s},21.0000,," for time_s in range(121)]
    rows.append(f"1,120.5,,0,{mass_g}")
    for since_s in range(1, 240):
        change_c = -4.35 * (1.0 - math.exp(-since_s / 8.0)) * math.exp(-since_s / 3600.0)
        rows.append(f"1,{120.5 + since_s},{round((21.0 + change_c) / 0.0625) * 0.0625:.4f},,")
    return "\n".join([HEADER.strip() + ",mass_g", *rows, ""])


def test_the_mass_that_a_file_has_is_the_one_that_counts(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """17.22 kJ/mol (Parker, NSRDS-NBS 2, 1965) for 4 g; what was weighed stands in the steps as it was typed."""
    plan, file = tmp_path / "plan.toml", tmp_path / "cup.csv"
    plan.write_text(COLD_PLAN, encoding="utf-8")
    found = {}
    for mass_g in ("", "4.00", "5.00"):
        file.write_text(cold(mass_g), encoding="utf-8")
        assert main(["analyse", str(file), "--plan", str(plan), "--json"]) == 0
        lines = json.loads(capsys.readouterr().out)
        found[mass_g] = lines["mean"]["straight_lines"]["enthalpy_kj_mol"]
        if mass_g:
            assert f"{mass_g} g ÷" in " ".join(step["working"] for step in lines["mean"]["steps"]["straight_lines"])
    assert found["4.00"] == pytest.approx(found[""])
    assert found["4.00"] == pytest.approx(17.22, rel=0.05)
    assert found["5.00"] == pytest.approx(0.8 * found["4.00"], rel=0.01)
    assert main(["analyse", str(file), "--plan", str(plan)]) == 0
    said = " ".join(capsys.readouterr().out.split())
    assert "heat taken in" in said
    assert "enthalpy change per mole of potassium chloride dissolved +" in said


CLASS_C = (20.5, 24.3, 27.2, 29.1, 31.05, 32.3, 32.3, 31.7, 30.8)
"""RSC Education, thermometric titration (AQA handbook), typical results: mean of two trials, portions of 5 cm³."""
CLASS_PLAN = """
[acid]
name = "hydrochloric acid"
volume_cm3 = 30.0
[alkali]
name = "sodium hydroxide"
concentration_mol_dm3 = 1.0
[portions]
volume_cm3 = 5.0
count = 8
u_volume_cm3 = 0.1
"""


def _by_hand(folder: Path, readings: tuple[float, ...]) -> list[Path | str]:
    rows = "".join(f"1,{5 * number},{each}\n" for number, each in enumerate(readings))
    (folder / "readings.csv").write_text("repeat,volume_cm3,temperature_c\n" + rows)
    (folder / "plan.toml").write_text(CLASS_PLAN)
    return [folder / "readings.csv", "--plan", folder / "plan.toml"]


@pytest.mark.parametrize("with_plan", [True, False])
@pytest.mark.parametrize(("portion", "mistyped_c"), [(3, 39.1), (0, 10.5), (8, 38.0)])
def test_a_mistyped_reading_is_named_and_left_out(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], portion: int, mistyped_c: float, with_plan: bool
) -> None:
    sound = analysed(capsys, *_by_hand(tmp_path, CLASS_C)[: 3 if with_plan else 1])
    assert sound["repeats"][0]["questions"] == []
    files = _by_hand(tmp_path, (*CLASS_C[:portion], mistyped_c, *CLASS_C[portion + 1 :]))
    answer = analysed(capsys, *files[: 3 if with_plan else 1])
    assert answer["repeats"][0]["questions"] == [{"portion": portion, "code": "slip"}]
    for method in ("heat_balance", "straight_lines")[0 if with_plan else 1 :]:
        expected, found = sound["mean"][method], answer["mean"][method]
        assert found["end_point_cm3"] == pytest.approx(expected["end_point_cm3"], abs=1.2)


def test_what_would_be_asked_stands_in_words(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    files = _by_hand(tmp_path, (*CLASS_C[:3], 39.1, *CLASS_C[4:]))
    assert main(["analyse", *map(str, files)]) == 0
    told = capsys.readouterr().out
    assert "Left out until somebody answers: The reading after portion 3 does not fit: is it right?" in told


@pytest.mark.parametrize(("times", "code"), [(0.0, "no_change"), (2.0, "double")])
def test_a_portion_missed_or_doubled_in_a_record_is_asked_about_and_is_in_doubt(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], times: float, code: str
) -> None:
    made = record(seed=5, repeats=1, hold_s=60, times={3: times})
    (tmp_path / "record.csv").write_text(made.csv)
    (tmp_path / "plan.toml").write_text(made.plan)
    (repeat,) = analysed(capsys, tmp_path / "record.csv", "--plan", tmp_path / "plan.toml")["repeats"]
    assert repeat["questions"] == [{"portion": 3, "code": code}]
    heat = repeat["heat_balance"]
    low, high = heat["interval_95_cm3"]
    assert low <= made.end_point_cm3 <= high
    assert heat["end_point_cm3"] == pytest.approx(made.end_point_cm3, abs=0.8)


@pytest.mark.parametrize(("times", "code"), [(0, "no_change"), (2, "double")])
def test_so_it_is_in_readings_by_hand(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], times: int, code: str
) -> None:
    sound = analysed(capsys, *_by_hand(tmp_path, CLASS_C))["mean"]["heat_balance"]
    missed = (*CLASS_C[:3], CLASS_C[2], *CLASS_C[3:])
    doubled = (*CLASS_C[:3], *CLASS_C[4:])
    files = _by_hand(tmp_path, missed if times == 0 else doubled)
    (repeat,) = analysed(capsys, *files)["repeats"]
    assert repeat["questions"] == [{"portion": 3, "code": code}]
    heat = repeat["heat_balance"]
    assert heat["interval_95_cm3"][0] <= sound["end_point_cm3"] <= heat["interval_95_cm3"][1]


def test_a_sound_record_is_asked_nothing(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    made = record(seed=5, repeats=2, hold_s=60)
    (tmp_path / "record.csv").write_text(made.csv)
    (tmp_path / "plan.toml").write_text(made.plan)
    answer = analysed(capsys, tmp_path / "record.csv", "--plan", tmp_path / "plan.toml")
    assert [each["questions"] for each in answer["repeats"]] == [[], []]
