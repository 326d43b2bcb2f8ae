"""`station prepare`: words, JSON and a page that stands alone; mistakes are one line."""

import json
from html.parser import HTMLParser
from pathlib import Path

import pytest

from station.command.main import main

PLAN = """
title = "Nitric acid <by titration> & heat"
[acid]
name = "nitric acid"
volume_cm3 = 20.0
prepared_mol_dm3 = 0.357
[alkali]
name = "sodium hydroxide"
concentration_mol_dm3 = 0.5
[portions]
volume_cm3 = 3.0
count = 11
"""


def test_a_plan_that_leads_into_danger_is_one_line_and_exit_status_2(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = tmp_path / "plan.toml"
    path.write_text(PLAN.replace("hydroxide", "hydrogencarbonate"), encoding="utf-8")
    assert main(["prepare", str(path), "--benches", "3"]) == 2
    said = capsys.readouterr()
    assert said.out == ""
    assert said.err.count("\n") == 1
    assert "Carbon dioxide leaves a mixture of nitric acid and sodium hydrogencarbonate" in said.err


@pytest.fixture
def plan(tmp_path: Path) -> str:
    path = tmp_path / "plan.toml"
    path.write_text(PLAN, encoding="utf-8")
    return str(path)


class Text(HTMLParser):
    def __init__(self) -> None:
        super().__init__()
        self.labels, self.depth, self.text, self.outside = [""], 0, "", list[str]()

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        given = dict(attrs)
        self.outside += [value for name in ("src", "href") if (value := given.get(name))]
        if given.get("class") == "label":
            self.labels.append("")

    def handle_data(self, data: str) -> None:
        self.text += data
        self.labels[-1] += data


def test_words_say_what_to_do_and_what_comes_first(plan: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["prepare", plan, "--benches", "15"]) == 0
    said = capsys.readouterr().out
    assert "risk assessment" in said.split("\n\n")[0]
    assert "fume cupboard" in said
    assert "do not write it on the students' bottles" in " ".join(said.split())
    assert "the stricter class is shown" in " ".join(said.split()), "0.5 mol/dm³ is near 2 % by mass"
    assert max(len(line) for line in said.splitlines()) <= 90


def test_the_page_stands_alone_and_no_label_gives_the_answer_away(plan: str, tmp_path: Path) -> None:
    out = tmp_path / "sheet.html"
    assert main(["prepare", plan, "--benches", "4", "--out", str(out)]) == 0
    page = Text()
    page.feed(out.read_text(encoding="utf-8"))
    assert page.outside == [], "nothing is fetched"
    assert "Nitric acid <by titration> & heat" in page.text
    labels = page.labels[1:]
    assert len(labels) == 8 + 2
    drawn = out.read_text(encoding="utf-8").partition('<div class="labels">')[2]
    assert drawn.count("<svg") == 10 + 1, "the pictogram is drawn on each label; a store bottle of alkali has two"
    benches, stored = labels[:8], labels[8:]
    assert not [each for each in benches if "0.357" in each]
    assert len([each for each in benches if "Causes severe skin burns" in each]) == 4
    assert "0.357 mol/dm³" in stored[0]
    assert all("for staff only" in each and "(H290)" in each for each in stored)


def test_json_is_one_object(plan: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["prepare", plan, "--benches", "4", "--json"]) == 0
    assert json.loads(capsys.readouterr().out)["benches"] == 4


def test_the_schools_own_bottle_counts(plan: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["prepare", plan, "--benches", "4", "--json", "--stock", "nitric acid=2"]) == 0
    acid = json.loads(capsys.readouterr().out)["solutions"][0]
    assert acid["stock_cm3"] == pytest.approx(0.357 * acid["make_cm3"] / 2, rel=1e-3)


@pytest.mark.parametrize(
    ("arguments", "words"),
    [
        (["--benches", "0"], "from 1 to 100"),
        (["--benches", "3", "--stock", "nitric acid"], "NAME=MOL_DM3"),
        (["--benches", "3", "--stock", "nitric acid=nan"], "above 0"),
        (["--benches", "3", "--stock", "moonshine=2"], "moonshine"),
        (["--benches", "3", "--stock", "nitric acid=0.1"], "weaker than"),
        (["--benches", "3", "--out", "/nowhere/sheet.html"], "cannot be written"),
    ],
)
def test_a_mistake_is_one_line(plan: str, arguments: list[str], words: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["prepare", plan, *arguments]) == 2
    said = capsys.readouterr().err
    assert words in said
    assert said.count("\n") == 1
