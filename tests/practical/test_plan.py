"""Plans: what is accepted, what is refused with a line a teacher can act on, what is never shown."""

import json
import re
import tomllib
from contextlib import suppress

import pytest
from hypothesis import given
from hypothesis import strategies as st

from station.chemistry.preparation import GLASSWARE
from station.chemistry.reagents import REAGENTS
from station.practical.events.bench import PlanChosen
from station.practical.kinds import plan_from, read_plan
from station.practical.plan import PlanError
from station.practical.plan_check import check_plan
from station.practical.prepare.amounts import preparation
from station.practical.prepare.sheet import sheet
from station.practical.prompts import instruction
from station.practical.state import State, Step
from station.practical.view import view
from station.words import members
from tests.practical.walk import chosen, portions_plan
from tests.records import PLAN_TEXT

GOOD = """
[acid]
name = "nitric acid"
volume_cm3 = 20
[alkali]
name = "potassium hydroxide"
concentration_mol_dm3 = 0.5
[portions]
volume_cm3 = 3
count = 4
"""


def test_the_required_keys_are_enough() -> None:
    plan = portions_plan(**tomllib.loads(GOOD))
    assert (plan.repeats, plan.portions.u_cm3, plan.cup.heat_capacity_j_k) == (2, 0.1, 5.0)
    assert plan.acid.concentration_mol_dm3 is None


def test_a_file_from_another_computer_is_read() -> None:
    assert read_plan("\ufeff" + GOOD.replace("\n", "\r\n")) == read_plan(GOOD)


@pytest.mark.parametrize(
    ("change", "says"),
    [
        (("volume_cm3 = 20", ""), "[acid] volume_cm3: missing; add it"),
        (
            ("volume_cm3 = 20", "volume_cm3 = -1"),
            "[acid] volume_cm3: input should be greater than or equal to 0.1 (got -1)",
        ),
        (("volume_cm3 = 20", "volume_cm3 = nan"), "[acid] volume_cm3: "),
        (("volume_cm3 = 20", "volume_cm3 = 1e-320"), "[acid] volume_cm3: "),
        (("concentration_mol_dm3 = 0.5", "concentration_mol_dm3 = 1e-9"), "[alkali] concentration_mol_dm3: "),
        (("count = 4", "count = 4\nu_volume_cm3 = 1e-320"), "[portions] u_volume_cm3: "),
        (("count = 4", "count = 4\n[cup]\nheat_capacity_j_k = 1e-320"), "[cup] heat_capacity_j_k: "),
        (("count = 4", "count = 0"), "[portions] count: "),
        (("count = 4", 'count = "many"'), "[portions] count: "),
        (("count = 4", 'count = 4\nglassware = "bucket"'), "[portions] glassware: unknown glassware 'bucket'; known: "),
        (('name = "nitric acid"', 'name = "unobtainic acid"'), "[acid] name: "),
        (("[portions]", "[portionen]"), "portions: missing; add it"),
        (("[portions]", "repeets = 2\n[portions]"), "[alkali] repeets: unknown key; remove it or check its spelling"),
        (("[acid]", "[acid"), "not valid TOML"),
        (("volume_cm3 = 20", "volume_cm3 = 20\nconcentration_mol_dm3 = 1\nprepared_mol_dm3 = 1"), "not both"),
        (
            ("volume_cm3 = 20", "volume_cm3 = 20\nprepared_mol_dm3 = '(0,4) 3'"),
            "a valid number, unable to parse string as a number (got: not shown)",
        ),
        (
            ("volume_cm3 = 20", "volume_cm3 = 20\nprepared_mol_dm3 = [0.43]"),
            "[acid] prepared_mol_dm3: input should be a valid number (got: not shown)",
        ),
        (('name = "nitric acid"', 'name = "nitric acid\\u202e"'), "plain text"),
    ],
)
def test_a_mistake_is_one_line_that_says_what_to_do(change: tuple[str, str], says: str) -> None:
    with pytest.raises(PlanError) as error:
        read_plan(GOOD.replace(*change, 1), "lesson.toml")
    assert says in str(error.value)
    assert str(error.value).startswith("lesson.toml: ")
    assert "\n" not in str(error.value)


@given(st.text(max_size=200))
def test_any_text_is_a_plan_or_a_plan_error(text: str) -> None:
    try:
        read_plan(text)
    except PlanError as error:
        assert str(error)


def test_what_staff_prepared_is_never_shown_nor_kept() -> None:
    values = tomllib.loads(GOOD.replace("volume_cm3 = 20", "volume_cm3 = 20\nprepared_mol_dm3 = 0.4321"))
    plan = plan_from(values)
    kept = PlanChosen(plan.without_prepared().model_dump(mode="json")).to_body()
    assert "0.4321" not in json.dumps(plan.public())
    assert "0.4321" not in json.dumps(kept)


def test_a_plan_survives_the_journal() -> None:
    plan = read_plan(PLAN_TEXT)
    assert plan_from(json.loads(json.dumps(plan.model_dump(mode="json")))) == plan


def test_glassware_gives_the_uncertainty_unless_the_plan_states_it() -> None:
    for name, ware in GLASSWARE.items():
        plan = portions_plan(portions={"volume_cm3": 3, "count": 4, "glassware": name})
        assert plan.portions.u_cm3 == ware.u_portion_cm3
    stated = {"volume_cm3": 3, "count": 4, "glassware": "burette", "u_volume_cm3": 0.2}
    assert portions_plan(portions=stated).portions.u_cm3 == 0.2


def test_every_instruction_is_at_most_twelve_words_for_every_reagent() -> None:
    for name in (reagent.name for reagent in REAGENTS):
        portions = portions_plan(
            acid={"name": name, "volume_cm3": 12.25}, alkali={"name": name, "concentration_mol_dm3": 1}
        )
        solution = {"name": name, "volume_cm3": 12.25, "concentration_mol_dm3": 1.0}
        once = chosen(kind="once", liquid=solution, addition=solution)
        for plan in (portions, once):
            for step in Step:
                asked = instruction(State(plan=plan, step=step, prompted=10))
                assert len(asked.text.split()) <= 12, asked.text


ONCE = {
    "kind": "once",
    "liquid": {"name": "water", "volume_cm3": 50},
    "addition": {"name": "potassium chloride", "mass_g": 4.0},
}


def test_a_plan_that_mixes_once_takes_a_solid_or_a_solution() -> None:
    solid = plan_from(ONCE)
    assert (solid.count, solid.portion_cm3, solid.added) == (1, 0.0, "4 g of potassium chloride")
    acid = {"name": "nitric acid", "volume_cm3": 20, "concentration_mol_dm3": 0.5}
    assert plan_from({**ONCE, "addition": acid}).added == "20 cm³ of nitric acid"


@pytest.mark.parametrize(
    ("changes", "says"),
    [
        ({"liquid": {"name": "nitric acid", "volume_cm3": 20}}, "nitric acid needs a concentration_mol_dm3"),
        ({"liquid": {"name": "water", "volume_cm3": 20, "concentration_mol_dm3": 1}}, "water has no"),
        ({"addition": {"name": "potassium chloride"}}, "give mass_g"),
        ({"addition": {"name": "potassium chloride", "volume_cm3": 3}}, "a solution needs"),
        ({"timing": {"before_s": 5}}, "[timing] before_s: "),
    ],
)
def test_a_mistake_in_such_a_plan_says_what_to_do(changes: dict[str, object], says: str) -> None:
    with pytest.raises(PlanError, match=re.escape(says)):
        plan_from({**ONCE, **changes})


def test_a_text_that_is_nested_without_end_is_no_plan() -> None:
    """The library's parser calls itself for every bracket; 12,000 of them fit into what staff may send."""
    with pytest.raises(PlanError, match="nested too deeply"):
        read_plan("repeats = " + "[" * 11_000)


def test_a_key_without_end_is_named_by_its_beginning() -> None:
    with pytest.raises(PlanError) as error:
        read_plan(f"{'x' * 11_000} = 1\n{GOOD}")
    assert len(str(error.value)) < 200


ACIDS = [each.name for each in REAGENTS if each.is_acid]
ALKALIS = [each.name for each in REAGENTS if each.is_alkali]
SOLIDS = [each.name for each in REAGENTS]
VOLUMES, CONCENTRATIONS = st.sampled_from([0.1, 25.0, 1000.0]), st.sampled_from([0.001, 0.4, 20.0])
UNCERTAINTIES = st.sampled_from([None, 0.0001, 100.0])
COMMON = {
    "repeats": st.sampled_from([1, 10]),
    "pace": st.sampled_from(["graph", "quick"]),
    "cup": st.fixed_dictionaries(
        {name: st.sampled_from([0, 0.001, 1000]) for name in ("heat_capacity_j_k", "u_heat_capacity_j_k")}
    ),
    "surroundings": st.fixed_dictionaries({"room_c": st.sampled_from([None, -5, 60])}),
}
PORTIONS = st.fixed_dictionaries(
    {
        **COMMON,
        "acid": st.fixed_dictionaries(
            {"name": st.sampled_from(ACIDS), "volume_cm3": VOLUMES, "u_volume_cm3": UNCERTAINTIES},
            optional={"prepared_mol_dm3": CONCENTRATIONS},
        ),
        "alkali": st.fixed_dictionaries({"name": st.sampled_from(ALKALIS), "concentration_mol_dm3": CONCENTRATIONS}),
        "portions": st.fixed_dictionaries(
            {"volume_cm3": VOLUMES, "count": st.sampled_from([1, 4, 60]), "u_volume_cm3": UNCERTAINTIES}
        ),
    }
)
MIXED_ONCE = st.fixed_dictionaries(
    {
        **COMMON,
        "kind": st.just("once"),
        "liquid": st.fixed_dictionaries({"name": st.just("water"), "volume_cm3": VOLUMES}),
        "addition": st.fixed_dictionaries(
            {
                "name": st.sampled_from([each.name for each in REAGENTS]),
                "mass_g": st.sampled_from([0.001, 4.0, 1000.0]),
            },
            optional={"u_mass_g": UNCERTAINTIES},
        ),
    }
)


@pytest.mark.fault("impossible-plan")
@given(PORTIONS | MIXED_ONCE)
def test_at_the_limits_of_a_plan_everything_that_is_said_of_it_can_be_said(values: dict[str, object]) -> None:
    plan = plan_from(values)
    assert json.dumps(view(State(plan=plan, chosen=True), 1.0), allow_nan=False, default=members)
    assert json.dumps(check_plan(values), allow_nan=False)
    with suppress(PlanError):  # two reagents that are none of a neutralisation
        assert json.dumps(sheet(preparation(plan, 100)), allow_nan=False)
