"""Mixing ratios: the plan, the order of its mixtures, rises and their crossing, checked against published data."""

import io
from typing import Any

import numpy as np
import pytest
from openpyxl import load_workbook

from station.analysis.lines.crossing import CHOSEN, draw, fit_lines
from station.analysis.lines.fit import LinesRefused
from station.chemistry.reagents import find_reagent
from station.practical.dataset import Known, RepeatData, from_question, question_for
from station.practical.events.cup import PlacedLine
from station.practical.kinds import plan_from, ready_plan
from station.practical.kinds.kind import kind_of
from station.practical.kinds.ratios.mixing import once_of
from station.practical.kinds.ratios.plan import RatiosPlan
from station.practical.plan import PlanError
from station.practical.predict import predict
from station.practical.prompts import instruction
from station.practical.results import results
from station.practical.state import OwnReading, State, Step
from station.practical.view import view
from station.record.spreadsheet.file import spreadsheet
from station.record.spreadsheet.sheets import record_sheets
from station.room.class_result.result import class_result
from station.room.class_result.words import answer_of
from station.words import in_language
from tests.practical.test_own_working import expect_followed
from tests.practical.walk import Walk

PLAN: dict[str, Any] = {
    "kind": "ratios",
    "acid": {"name": "hydrochloric acid", "concentration_mol_dm3": 0.4},
    "alkali": {"name": "sodium hydroxide", "concentration_mol_dm3": 0.4, "temperature_c": 20.0},
    "mixtures": {"total_cm3": 50, "first_cm3": 10, "step_cm3": 6, "count": 6},
    "timing": {"before_s": 90, "after_s": 120},
}
VOLUMES_CM3 = [10.0, 16.0, 22.0, 28.0, 34.0, 40.0]
BEFORE = AFTER = 4
"""Readings by the clock, every 30 s."""


def ratios(**changes: Any) -> RatiosPlan:
    merged = {
        key: {**PLAN.get(key, {}), **value} if isinstance(value, dict) else value for key, value in changes.items()
    }
    plan = plan_from({**PLAN, **merged})
    assert isinstance(plan, RatiosPlan)
    return plan


@pytest.mark.parametrize(
    ("changes", "says"),
    [
        ({"mixtures": {"step_cm3": 8.0}}, "the last mixture would have 50 cm³ of alkali"),
        ({"mixtures": {"first_cm3": 23.0, "step_cm3": 2.0}}, "they cross at 25.0 cm³"),
        ({"acid": {"name": "sulfuric acid"}}, "they cross at 33.3 cm³"),
        ({"alkali": {"name": "hydrochloric acid"}}, ""),
        ({"mixtures": {"count": 5}}, ""),
        ({"mixtures": {"count": 13, "step_cm3": 1.0}}, ""),
    ],
)
def test_a_plan_whose_lines_cannot_be_drawn_is_refused(changes: dict[str, Any], says: str) -> None:
    with pytest.raises(PlanError) as refused:
        ratios(**changes).check()
    assert says in str(refused.value)
    assert "\n" not in str(refused.value)


def test_the_mixtures_are_cups_and_one_that_was_set_aside_comes_again() -> None:
    plan = ratios(repeats=2)
    assert plan.cups == 12
    assert [plan.of_cup(cup).portion_cm3 for cup in range(1, 7)] == VOLUMES_CM3
    assert [plan.of_cup(cup).ingredients[0].volume_cm3 for cup in (1, 6)] == [40.0, 10.0]
    assert plan.next_cup([]) == 1
    assert plan.next_cup([1, 2, 4, 5, 6]) == 3
    assert plan.next_cup([1, 2, 3, 4, 5, 6]) == 1
    assert not plan.is_complete([1, 2, 3, 4, 5, 6])
    assert plan.is_complete([1, 2, 3, 4, 5, 6] * 2)


def test_safety_is_that_of_the_worst_mixture() -> None:
    """Judged is the one in which most reacts: 22 cm³ of one with 28 of the other, not the first one of the plan."""
    strong = {"concentration_mol_dm3": 3.0}
    hot = ratios(acid=strong, alkali=strong)
    worst = hot.every_cup[0]
    assert worst.portion_cm3 in {22.0, 28.0}
    rises = {cup: _ideal_rise_c(hot, cup) for cup in range(1, 7)}
    # Strong solutions give some per cent more than 57 kJ/mol.
    assert predict(hot)["rise_c"] == pytest.approx(max(rises.values()), rel=0.1)
    mixed = kind_of(hot).mixture(hot)
    assert mixed is not None
    assert mixed.amount_mol == pytest.approx(0.066)


def _ideal_rise_c(plan: RatiosPlan, cup: int) -> float:
    """57 kJ for each mole of water, 4.1 J/(cm³ K) and the cup."""
    acid, alkali = plan.of_cup(cup).ingredients
    mmol = min((acid.mol_dm3 or 0.0) * acid.volume_cm3, (alkali.mol_dm3 or 0.0) * alkali.volume_cm3)
    return 57.0 * mmol / (4.1 * plan.mixtures.total_cm3 + plan.cup.heat_capacity_j_k)


def typed(plan: dict[str, Any], rises_c: dict[float, float], aside: float | None = None) -> Walk:
    """A whole practical with an ordinary thermometer; the mixture with `aside` cm³ is set aside the first time."""
    walk = Walk(**plan)
    walk.act("thermometer", division_c=0.1)
    walk.act("begin")
    while walk.step() is not Step.DONE:
        cup_cm3 = walk.state.cup_plan.portion_cm3
        for _ in range(BEFORE):
            _read(walk, 20.0)
        walk.time_s += 8.0
        walk.act("portion_added", portion=1)
        for place in range(AFTER):
            # The thermometer lags at first; then the cup cools.
            _read(walk, round(20.0 + rises_c[cup_cm3] - (0.6 if place == 0 else 0.1 * (place - 1)), 1))
        if cup_cm3 == aside:
            walk.act("repeat_set_aside", repeat=len(walk.state.repeats), reason="spilled")
            aside = None
        while walk.step() is Step.RINSE:
            asked = instruction(walk.state)
            assert asked.act is not None
            walk.act(asked.act)
    return walk


def _read(walk: Walk, temperature_c: float) -> None:
    clock = view(walk.state, walk.time_s)["clock"]
    assert clock is not None
    walk.time_s = walk.state.repeats[-1].begun_s + clock["next_s"] + 4.0
    walk.act("reading", temperature_c=temperature_c)


RISES_C = {10.0: 1.0, 16.0: 1.6, 22.0: 2.2, 28.0: 2.2, 34.0: 1.6, 40.0: 1.0}
"""Lines from nothing at either side: they cross at 25 cm³, 2.5 °C."""


@pytest.fixture(scope="module")
def done() -> State:
    return typed(PLAN, RISES_C, aside=22.0).state


def test_typed_readings_go_through_all_mixtures_and_the_highest_counts(done: State) -> None:
    assert [each.cup for each in done.repeats] == [1, 2, 3, 3, 4, 5, 6]
    assert [each.status for each in done.repeats].count("set aside") == 1
    assert {each["volume_cm3"]: each["temperature_c"] for each in done.mean} == pytest.approx(RISES_C, abs=1e-9)
    tabled = kind_of(done.plan).table
    assert tabled is not None
    table = tabled(done.plan, done)
    assert [row[0] for row in table.rows] == VOLUMES_CM3
    assert [row[1] for row in table.rows] == [50.0 - cm3 for cm3 in VOLUMES_CM3]
    assert [row[5] for row in table.rows] == pytest.approx([RISES_C[cm3] for cm3 in VOLUMES_CM3])


def test_the_lines_cross_at_one_to_one_and_every_step_can_be_followed(done: State) -> None:
    answer = results(*from_question(question_for(done)))["mean"]
    for method in ("straight_lines", "heat_balance"):
        found = answer[method]
        assert found is not None, answer["refused"]
        # Symmetric about 25 cm³ but for the solutions' heat capacities, which differ by less than 1 %.
        assert found["alkali_per_acid"] == pytest.approx(1.0, abs=0.02)
        assert answer["steps"][method]
    own = OwnReading(25.0, None, PlacedLine(slope_c_cm3=0.1, intercept_c=0.0), None, 0.0)
    steps = kind_of(done.plan).own_working(done.plan, own, [], 0.1)
    assert [each["written"] for each in steps[:4]] == ["25.0", "0.0100", "0.0100", "1.00"]
    # 50 g × 4.18 J/(g °C) × 2.5 °C for 0.01 mol of water.
    assert -float(steps[-2]["written"]) == pytest.approx(52.25, abs=0.1)
    expect_followed([each for each in steps if each["unit"]])


def test_the_spreadsheet_has_the_mixtures_their_rises_and_the_ratio(done: State) -> None:
    answer = results(*from_question(question_for(done)))
    book = load_workbook(io.BytesIO(spreadsheet(record_sheets("3", done, {"seq": 1, **answer["mean"], **answer}, []))))
    first = list(book.worksheets[0].iter_rows(values_only=True))
    found = [row for row in first if row[0] in VOLUMES_CM3]
    assert [(row[0], row[1]) for row in found] == [(cm3, 50.0 - cm3) for cm3 in VOLUMES_CM3]
    assert [row[5] for row in found] == pytest.approx([RISES_C[cm3] for cm3 in VOLUMES_CM3])
    ratio = answer["mean"]["straight_lines"]["alkali_per_acid"]
    cells = [cell for sheet in book for row in sheet.iter_rows(values_only=True) for cell in row]
    assert any(isinstance(cell, float) and cell == pytest.approx(ratio, rel=1e-6) for cell in cells)


def test_alkali_that_is_warmer_is_no_rise() -> None:
    """4 °C of 40 of 50 cm³ are 3.2 °C without the cup; with its 5 J/K some 3.1."""
    plan = ratios()
    start_c = plan.start_of(6, 20.0, 24.0)
    assert start_c == pytest.approx(20.0 + 4.0 * (40 * 4.1) / (50 * 4.1 + 5.0), abs=0.03)
    warm = {
        cm3: start - 20.0 for cm3, start in ((c, plan.start_of(n, 20.0, 24.0)) for n, c in enumerate(VOLUMES_CM3, 1))
    }
    repeats = [
        RepeatData(n, (), _trace(RISES_C[cm3] + warm[cm3]), ((90.0, cm3, False),))
        for n, cm3 in enumerate(VOLUMES_CM3, 1)
    ]
    found = results(plan, repeats, Known(24.0, 0.1))["mean"]["straight_lines"]
    assert found["alkali_per_acid"] == pytest.approx(1.0, abs=0.02)
    assert [each["rise_c"] for each in found["rises"]] == pytest.approx([RISES_C[cm3] for cm3 in VOLUMES_CM3], abs=0.06)
    # The repeats tell no cup, as those of a record: the volume that was poured does.
    assert [each["cup"] for each in found["rises"]] == [1, 2, 3, 4, 5, 6]


def _trace(change_c: float) -> tuple[tuple[float, float], ...]:
    return tuple((float(s), 20.0 + (change_c if s > 91 else 0.0)) for s in range(0, 211, 2))


def test_sulfuric_acid_needs_two() -> None:
    plan = ratios(acid={"name": "sulfuric acid"}, mixtures={"first_cm3": 20.0, "step_cm3": 5.0})
    plan.check()
    assert plan.expected_cm3() == pytest.approx(100.0 / 3.0)
    found = predict(plan)
    assert found["alkali_per_acid"] == pytest.approx(2.0)
    top = max(found["curve"], key=lambda each: each["rise_c"])
    assert top["volume_cm3"] == 35.0
    for method in ("straight_lines", "heat_balance"):
        promised = found["methods"][method]
        assert abs(promised["bias_ratio"]) < 3.0 * promised["u_alkali_per_acid"]


def test_the_shipped_plan_promises_its_ratio() -> None:
    found = predict(ready_plan("mixing-ratios"))
    assert found["alkali_per_acid"] == pytest.approx(1.0)
    assert found["end_point_cm3"] == pytest.approx(25.0)
    assert [each["volume_cm3"] for each in found["curve"]] == [10.0, 15.0, 20.0, 25.0, 30.0, 35.0, 40.0]
    assert found["rise_c"] == pytest.approx(max(_ideal_rise_c(ratios(), 1) * 2.5, 0.0), rel=0.05)


# "Stoichiometry of a redox reaction", a student's report (coursehero.com/file/53080): sodium hypochlorite and potassium
# iodide, 50.0 cm³ in all. Volumes / cm³ of hypochlorite and iodide, their temperatures and the highest / °C. The report
# has 21.80 °C for the start of the first row together, a change of 3.16 °C, and from its lines a share of 0.67 (2 : 1).
PUBLISHED = (
    (45, 5, 21.88, 21.08, 24.96),
    (40, 10, 21.91, 21.44, 28.05),
    (35, 15, 21.97, 21.26, 28.95),
    (30, 20, 21.86, 21.79, 27.87),
    (25, 25, 22.13, 21.35, 26.88),
    (20, 30, 22.03, 22.05, 25.97),
    (15, 35, 21.96, 21.52, 24.68),
    (10, 40, 22.04, 21.32, 23.53),
    (5, 45, 21.95, 21.34, 22.31),
)


def test_a_published_start_of_both_liquids_and_rise_come_back() -> None:
    """Both counted as water there, the cup as nothing."""
    water = ratios(
        acid={"concentration_mol_dm3": 0.01},
        alkali={"concentration_mol_dm3": 0.01},
        mixtures={"first_cm3": 5, "step_cm3": 5, "count": 9},
        cup={"heat_capacity_j_k": 0.0, "u_heat_capacity_j_k": 0.0},
    )
    _, iodide_cm3, hypochlorite_c, iodide_c, highest_c = PUBLISHED[0]
    assert water.of_cup(1).portion_cm3 == iodide_cm3
    start_c = water.start_of(1, hypochlorite_c, iodide_c)
    assert start_c == pytest.approx(21.80, abs=0.005)
    assert highest_c - start_c == pytest.approx(3.16, abs=0.005)


def test_lines_through_published_rises_cross_near_the_published_ratio() -> None:
    """The report draws its lines by eye: 0.67. Its points bend, and the mixture of 35 cm³ could be on either line.

    The fit puts it on the rising one, so that two are left for the other, and refuses. With it on the falling one, as
    the equation has it, the lines cross at 0.71.
    """
    volumes_cm3 = np.array([float(row[0]) for row in PUBLISHED])
    rises_c = np.array([high - (a * at + b * bt) / 50.0 for a, b, at, bt, high in PUBLISHED])
    with pytest.raises(LinesRefused, match="The line after the turn needs 3 readings"):
        fit_lines(volumes_cm3, rises_c)
    rising, falling = ([n for n, x in enumerate(volumes_cm3) if (x < 35.0) == side] for side in (True, False))
    found = draw(volumes_cm3, rises_c, tuple(rising), tuple(falling), (), CHOSEN)
    assert found.end_point_cm3 / 50.0 == pytest.approx(0.715, abs=0.001)
    low, high = found.interval_95_cm3
    assert low < 0.67 * 50.0 < high


def test_published_lines_cross_where_their_class_read_it() -> None:
    """AP chemistry, soxteacher.com, 30 September 2011: y = 1.4778 x and y = 99 - 3.9663 x cross at 18.2 of 25 cm³."""
    x_cm3 = [4.0, 8.0, 12.0, 16.0, 20.0, 22.0, 24.0]
    y_c = [min(1.4778 * x, 99.0 - 3.9663 * x) for x in x_cm3]
    found = fit_lines(x_cm3, y_c)
    assert found.end_point_cm3 == pytest.approx(18.2, abs=0.05)
    assert found.end_point_cm3 / (25.0 - found.end_point_cm3) == pytest.approx(2.7, abs=0.05)


def test_a_mixture_is_one_mixing_of_its_two_volumes() -> None:
    once = once_of(ratios(), 2)
    assert (once.liquid.volume_cm3, once.portion_cm3) == (34.0, 16.0)
    assert find_reagent(once.addition.name).name == "sodium hydroxide"


def test_a_class_pools_its_ratios() -> None:
    def bench(name: str, ratio: float) -> dict[str, Any]:
        found = {
            "alkali_per_acid": ratio,
            "u_alkali_per_acid": 0.02,
            "enthalpy_kj_mol": -57.0,
            "u_enthalpy_kj_mol": 1.0,
        }
        mean = {"straight_lines": found, "heat_balance": None}
        about = {"plan": "the plan", "kind": "ratios", "asks": "alkali_per_acid", "shared": 0.0, "repeats": 1}
        return {"name": name, **about, "mean": mean, "refused": {}, "notes": [], "curve": []}

    made = class_result({f"b{n}": bench(f"b{n}", 0.98 + 0.01 * n) for n in range(5)}, 6)
    first = made["quantities"][0]
    assert (first["quantity"], first["method"]) == ("alkali_per_acid", "straight_lines")
    assert first["pooled"] is not None
    assert first["pooled"]["mean"] == pytest.approx(1.0)
    answer = answer_of(made, 6)["answer"]
    assert answer is not None
    assert " ".join(in_language(answer, "en").split()).startswith("The class: 1.000 ± 0.0")
