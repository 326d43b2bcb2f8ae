"""`station predict`: one JSON object, or a table a teacher can read in 80 columns; a bad plan is one line."""

import json
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest

from station.command.main import main
from tests.conftest import PATIENCE_S
from tests.records import PLAN_TEXT

ONCE = """
kind = "once"
[liquid]
name = "water"
volume_cm3 = 50.0
[addition]
name = "potassium chloride"
mass_g = 4.00
"""
SEVERAL_STEPS = PLAN_TEXT.replace("nitric acid", "citric acid")
GAS = PLAN_TEXT.replace("potassium hydroxide", "sodium hydrogencarbonate")
LEAVES_A_SOLID = PLAN_TEXT.replace("potassium", "barium").replace("0.400", "0.100").replace("nitric", "ethanedioic")
FEW = PLAN_TEXT.replace("volume_cm3 = 25.0", "volume_cm3 = 25.0\nconcentration_mol_dm3 = 0.7")
STAFF = PLAN_TEXT.replace("volume_cm3 = 25.0", "volume_cm3 = 25.0\nprepared_mol_dm3 = 0.412")


def told(tmp_path: Path, capsys: pytest.CaptureFixture[str], text: str, *options: str) -> str:
    (tmp_path / "plan.toml").write_text(text)
    assert main(["predict", str(tmp_path / "plan.toml"), *options]) == 0
    said = capsys.readouterr()
    assert said.err == ""
    return said.out


def test_json_is_one_object_with_units_in_its_keys(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    out = told(tmp_path, capsys, PLAN_TEXT, "--json")
    assert out.count("\n") == 1
    found: dict[str, Any] = json.loads(out)
    assert set(found) == {
        "kind", "practical", "acid", "end_point_cm3", "points", "minutes", "start_c", "rise_c", "curve",
        "enthalpy_kj_mol", "methods", "comparison", "refused", "assumed", "warnings",
    }  # fmt: skip
    assert set(found["methods"]) == {"probe", "thermometer_0_1_c", "thermometer_1_c"}
    for method in found["methods"].values():
        for name in ("straight_lines", "heat_balance"):
            assert {"bias_cm3", "u_end_point_cm3", "u_mean_cm3"} <= set(method[name])


@pytest.mark.parametrize("text", [PLAN_TEXT, STAFF, SEVERAL_STEPS, LEAVES_A_SOLID, FEW, ONCE])
def test_the_words_fit_into_80_columns(text: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    lines = told(tmp_path, capsys, text).splitlines()
    assert max(map(len, lines)) <= 80
    assert any(line.startswith("About ") and "minutes at the bench" in line for line in lines)


def test_the_words_hold_curve_methods_and_comparison(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    plan = STAFF.replace("count = 10", 'count = 10\nglassware = "burette"')
    found = json.loads(told(tmp_path, capsys, plan, "--json"))
    out = told(tmp_path, capsys, plan)
    assert "Expected end-point 25.7" in out  # 25 · 0.412 / 0.400 = 25.75
    assert "Do not show this page to the class" in out
    for row in found["curve"]:
        assert f"{row['volume_cm3']:9.2f}  {row['temperature_c']:14.2f}" in out
    assert f"{found['methods']['probe']['heat_balance']['u_end_point_cm3']:.2f}\n" in out
    assert out.count("*burette") == 1
    for ware in ("measuring cylinder", "graduated pipette", "syringe", "balance"):
        assert out.count(f"\n {ware} ") == 2


def test_warnings_are_objects_and_stand_above_the_numbers(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    blue = ONCE.replace("potassium chloride", "copper(II) sulfate pentahydrate").replace("4.00", "14.0")
    found = json.loads(told(tmp_path, capsys, blue, "--json"))
    assert [set(each) for each in found["warnings"]] == [{"id", "text"}]
    assert found["warnings"][0]["id"] == "dissolves-slowly"
    assert found["change_c"] < -3, "the blue salt takes heat in"
    out = told(tmp_path, capsys, blue)
    assert " ".join(found["warnings"][0]["text"].split()[:6]) in out
    assert out.index("Mind:") < out.index("Expected change")


def test_an_end_point_out_of_reach_refuses_in_the_table_and_says_what_to_do(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    out = told(tmp_path, capsys, FEW)
    assert "refuses" in out
    assert "plan more portions" in " ".join(out.split())


def test_one_mixing(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    out = told(tmp_path, capsys, ONCE)
    # 17.22 kJ/mol · 0.05365 mol over 53.9 g · 3.8 J/(g K) + 5 J/K; 3.8 for 7.4 % potassium chloride, from memory.
    assert "Expected change -4.4" in out
    assert "straight lines" in out
    assert "heat balance" in out


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("", "missing; add it"),
        ("[acid\n", "not valid TOML"),
        (PLAN_TEXT.replace("count = 10", "count = 0"), "[portions] count"),
        (PLAN_TEXT.replace("nitric acid", "potassium hydroxide"), "is not an acid"),
        (PLAN_TEXT.replace("count = 10", "count = 3"), "at least 4 portions"),
        (GAS, "Carbon dioxide leaves a mixture of nitric acid"),
        (ONCE.replace("potassium", "sodium").replace("4.00", "30.0"), "Not all of 30 g of sodium chloride dissolves"),
        (PLAN_TEXT.replace("0.400", "11"), "not for potassium hydroxide of 11 mol/dm³"),
    ],
)
@pytest.mark.parametrize("options", [[], ["--json"]])
def test_a_bad_plan_is_one_line_and_exit_status_2(
    text: str, says: str, options: list[str], tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    file = tmp_path / "plan.toml"
    file.write_text(text)
    assert main(["predict", str(file), *options]) == 2
    said = capsys.readouterr()
    assert said.out == ""
    assert said.err.count("\n") == 1
    assert said.err.startswith(f"station predict: {file}: ")
    assert says in said.err


def test_a_plan_that_is_not_there_is_one_line(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["predict", str(tmp_path / "no.toml")]) == 2
    assert "no such file" in capsys.readouterr().err


def test_the_command_as_it_is_typed(tmp_path: Path) -> None:
    (tmp_path / "plan.toml").write_text(PLAN_TEXT)
    command = [sys.executable, "-m", "station.command.main", "predict", str(tmp_path / "plan.toml"), "--json"]
    done = subprocess.run(command, capture_output=True, text=True, check=True, timeout=PATIENCE_S)
    assert json.loads(done.stdout)["kind"] == "portions"
    assert done.stderr == ""


@pytest.mark.parametrize("command", [["predict"], ["prepare", "--benches", "3"]])
def test_a_plan_that_ships_is_known_by_its_name_and_a_file_of_that_name_goes_first(
    command: list[str], tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.chdir(tmp_path)
    name, *options = command
    assert main([name, "endothermic", *options]) == 0
    assert "urea" in capsys.readouterr().out
    (tmp_path / "endothermic").write_text("[acid]\nname = 'rain'")
    assert main([name, "endothermic", *options]) == 2
    assert "rain" in capsys.readouterr().err
