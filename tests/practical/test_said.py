"""Whatever a plan's answers say to people is a message: its id and values are there for other languages."""

from collections.abc import Iterator
from typing import Any

import pytest

from station.practical.dataset import Known, ReadingRow, RepeatData
from station.practical.guide import guide
from station.practical.kinds import plan_from, ready_plan
from station.practical.plan import PlanError
from station.practical.plan_check import check_plan, problems_of
from station.practical.predict import predict
from station.practical.prepare.amounts import preparation
from station.practical.prepare.sheet import sheet
from station.practical.results import results
from station.practical.safety import safe
from station.words import Message, in_language, say

PORTIONS: dict[str, Any] = {
    "acid": {"name": "nitric acid", "volume_cm3": 20.0, "concentration_mol_dm3": 0.35},
    "alkali": {"name": "sodium hydroxide", "concentration_mol_dm3": 0.4},
    "portions": {"volume_cm3": 3.0, "count": 11, "glassware": "burette"},
}
SOLID: dict[str, Any] = {
    "kind": "once",
    "liquid": {"name": "water", "volume_cm3": 50.0},
    "addition": {"name": "sodium hydroxide", "mass_g": 2.0},
}
MIXED: dict[str, Any] = {
    "kind": "once",
    "liquid": {"name": "nitric acid", "volume_cm3": 40.0, "concentration_mol_dm3": 0.4},
    "addition": {"name": "ammonia", "volume_cm3": 40.0, "concentration_mol_dm3": 0.4},
}
WEAK = {**PORTIONS, "acid": {"name": "citric acid", "volume_cm3": 20.0}}
FIZZING = {**PORTIONS, "alkali": {"name": "potassium carbonate", "concentration_mol_dm3": 0.4}}
PLANS = [PORTIONS, SOLID, MIXED, WEAK]

NO_WORDS = frozenset({"categories", "plan", "toml", "source", "working", "unit", "kind", "id", "where", "values"})
"""Members that hold what a plan file says, citations and figures."""
FORMULAS = frozenset({"n = c V", "n = m ÷ M", "c = n ÷ V", "q = m c ΔT", "q = -m c ΔT", "q = C ΔT"})


def words_without_id(value: Any) -> Iterator[str]:
    """Yield each text of several words that is no message."""
    match value:
        case Message() if value.id:
            return
        case str():
            formula = value in FORMULAS or value.startswith(("ΔH = ", "n(H₂O) = "))
            if " " in value and not formula:
                yield str.__str__(value)
        case dict():
            for name, part in value.items():
                if name not in NO_WORDS:
                    yield from words_without_id(part)
        case list() | tuple():
            for part in value:
                yield from words_without_id(part)


def test_plain_words_are_found() -> None:
    answer = {"a": [{"text": "two words", "source": "a book"}], "b": "", "c": say("reagent-nitric-acid"), "d": 4.0}
    assert list(words_without_id(answer)) == ["two words"]


@pytest.mark.parametrize("values", [*PLANS, FIZZING], ids=["portions", "solid", "mixed", "weak", "gas"])
def test_the_guide_and_the_first_look_at_a_plan(values: dict[str, Any]) -> None:
    assert list(words_without_id(guide(plan_from(values)))) == []
    assert list(words_without_id(check_plan(values))) == []


@pytest.mark.parametrize("values", PLANS, ids=["portions", "solid", "mixed", "weak"])
def test_the_preparation_and_the_prediction(values: dict[str, Any]) -> None:
    plan = plan_from(values)
    answer = preparation(plan, 3)
    assert list(words_without_id(answer)) == []
    assert list(words_without_id(sheet(answer))) == []
    assert list(words_without_id({**predict(plan, compare=False), "comparison": None})) == []


def test_the_steps_of_a_result_and_what_books_say() -> None:
    volumes = [3.0 * portion for portion in range(12)]
    rows = tuple(
        ReadingRow(portion, volume, 20.0 + min(volume, 18.0) * 0.15 - max(volume - 18.0, 0.0) * 0.05)
        for portion, volume in enumerate(volumes)
    )
    (repeat,) = results(plan_from(PORTIONS), [RepeatData(1, rows)], Known())["repeats"]
    assert len(repeat["steps"]["straight_lines"]) > 6
    assert list(words_without_id([repeat["steps"], repeat["accepted"]])) == []
    assert (
        in_language(repeat["steps"]["straight_lines"][0]["text"], "de")
        == "Stoffmenge Natronlauge bis zum Äquivalenzpunkt"
    )


def test_a_solid_is_called_otherwise_than_its_solution_where_the_language_does_so() -> None:
    assert (plan_from(SOLID).added, plan_from(PORTIONS).added) == (
        "2 g of sodium hydroxide",
        "3 cm³ of sodium hydroxide",
    )
    assert in_language(plan_from(SOLID).added, "de") == "2 g Natriumhydroxid"
    assert in_language(plan_from(PORTIONS).added, "de") == "3 cm³ Natronlauge"


def test_the_title_of_a_plan_of_the_station_is_a_message_and_any_other_stays_as_it_is() -> None:
    assert in_language(ready_plan("neutralisation").name, "de") == "Wie stark ist diese Salzsäure?"
    assert plan_from({**PORTIONS, "title": "Wie sauer?"}).name == "Wie sauer?"
    assert in_language(plan_from(PORTIONS).name, "de") == "Salpetersäure mit Natronlauge"


def test_a_mistake_and_a_danger_are_said_in_german_too() -> None:
    spoilt = {**PORTIONS, "portions": {"volume_cm3": 0.01, "count": "many", "glassware": "bucket"}}
    with pytest.raises(PlanError) as mistake:
        plan_from(spoilt, "plan.toml")
    assert str(mistake.value) == (
        "plan.toml: [portions] volume_cm3: input should be greater than or equal to 0.1 (got 0.01) (and 2 more)"
    )
    assert in_language(str(mistake.value), "de").startswith("plan.toml: [portions] volume_cm3: ")
    assert "und 2 weitere" in in_language(str(mistake.value), "de")
    assert [each["text"].id for each in problems_of(spoilt)] == [
        "field-at-least",
        "field-whole-number",
        "problem-unknown-glassware",
    ]
    with pytest.raises(PlanError) as danger:
        safe(plan_from({**SOLID, "addition": {"name": "sodium hydroxide", "mass_g": 40.0}}))
    assert "heißer" in in_language(danger.value.refusal, "de") or "kochen" in in_language(danger.value.refusal, "de")
    assert danger.value.refusal == f"This plan cannot be used: {danger.value}."


def test_one_danger_is_a_whole_sentence_in_the_refusal() -> None:
    with pytest.raises(PlanError) as danger:
        safe(plan_from(FIZZING))
    assert danger.value.refusal == f"This plan cannot be used: {danger.value}"
    assert str(danger.value).endswith("choose other reagents.")
