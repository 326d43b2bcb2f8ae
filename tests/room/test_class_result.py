"""The class result: pooled as the published table is, honest about spread, and nothing is left out by itself."""

import math
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from station.bench.virtual.student import Habits
from station.practical.dataset import question_for
from station.practical.events import QuestionAnswered
from station.practical.fold import fold_all
from station.practical.results import answer
from station.room.class_result.kept import ClassResults, has_ended
from station.room.class_result.result import class_result
from station.room.class_result.words import with_u
from station.room.contract import ClassResult, PooledShown
from station.words import Message, in_language
from tests.analysis.test_pooling import VALUES, VARIANCES
from tests.room.class_benches import bench
from tests.room.lesson_in_jumps import events_of, until


def pooled(result: ClassResult, quantity: str = "end_point_cm3", method: str = "heat_balance") -> PooledShown:
    found = next(
        each["pooled"] for each in result["quantities"] if (each["quantity"], each["method"]) == (quantity, method)
    )
    assert found is not None
    return found


def test_a_class_is_pooled_as_kackers_laboratories_are() -> None:
    """R. N. Kacker, Metrologia 41, 132 (2004), Table 1; figures of R's metafor (Hartung–Knapp), see test_pooling.py."""
    names = [f"bench-{number}" for number in range(1, 10)]
    rows = zip(names, VALUES, VARIANCES, strict=True)
    made = pooled(class_result({name: bench(name, value, math.sqrt(v)) for name, value, v in rows}))
    assert made["mean"] == pytest.approx(62.3901386044504, rel=1e-12)
    assert made["u"] == pytest.approx(0.29477605699879, rel=1e-9)
    assert (made["low"], made["high"]) == pytest.approx((61.710383798052, 63.0698934108488), rel=1e-9)
    assert made["between"] ** 2 == pytest.approx(0.288049246973751, rel=1e-9)
    assert made["p"] == pytest.approx(0.00167935146372742, rel=1e-9)


def test_what_all_benches_share_does_not_average_out() -> None:
    """Ten benches with cups of one kind, known to 3 %: the mean's u stays above 3 %."""
    benches = {
        f"bench-{n}": bench(f"bench-{n}", 25.0, 0.2, enthalpy=(-57.0 + 0.1 * n, 2.0), shared=0.03) for n in range(10)
    }
    made = pooled(class_result(benches), "enthalpy_kj_mol")
    assert made["u"] > 0.03 * 56.5
    assert made["u"] < math.hypot(0.03 * 57.0, 2.0 / math.sqrt(10)) + 0.01


def test_a_bench_that_stands_off_is_named_with_its_reason_and_stays_in() -> None:
    benches = {f"bench-{n}": bench(f"Bench {n}", 25.0 + 0.05 * n, 0.2) for n in range(6)}
    asked = "Repeat 1, portion 3: the station asked “…”, answer: Once."
    benches["bench-4"] = bench("Bench 4", 20.1, 0.3, happened=[asked], aside=[{"repeat": 2, "reason": "spilt"}])
    result = class_result(benches)
    (odd,) = result["anomalies"]
    assert odd["bench"] == "bench-4"
    assert "Bench 4: its end-point by heat balance lies" in odd["text"]
    assert odd["reasons"] == [asked, "Repeat 2 was set aside: spilt"]
    assert pooled(result)["count"] == 6
    without = result["quantities"][0]["without"]
    assert without is not None
    assert without["mean"] == pytest.approx(25.1, abs=0.05)
    assert any("Without the benches that stand off (1)" in words for words in result["words"])


def test_the_words_say_whether_benches_agree() -> None:
    agree = class_result({f"b{n}": bench(f"b{n}", 25.0 + 0.01 * n, 0.3) for n in range(5)})
    assert any("agree within their own uncertainties" in words for words in agree["words"])
    differ = class_result({f"b{n}": bench(f"b{n}", 23.0 + n, 0.2) for n in range(5)})
    assert any("beyond their own uncertainties (p = 0.001 or less)" in words for words in differ["words"])
    assert any("cross 3.00 cm³ below the heat balance" in words for words in differ["words"])


def test_benches_of_another_plan_and_without_a_result_are_listed_and_not_pooled() -> None:
    benches = {f"b{n}": bench(f"b{n}", 25.0 + 0.1 * n, 0.2) for n in range(4)}
    benches["other"] = bench("other", 40.0, 0.2, plan="another plan")
    benches["mute"] = bench("mute", 25.0, 0.2, mean={"heat_balance": None, "straight_lines": None})
    result = class_result(benches)
    assert result["other_plans"] == ["other"]
    assert pooled(result)["count"] == 4
    assert result["quantities"][0]["silent"] == ["mute"]
    assert {each["bench"] for each in result["benches"]} == set(benches)


def test_without_benches_and_with_one_there_is_no_mean_but_words() -> None:
    assert class_result({})["words"] == ["No bench has ended a repeat yet."]
    one = class_result({"b": bench("b", 25.0, 0.2)})
    assert one["quantities"][0]["pooled"] is None
    assert one["words"] == ["One bench alone has a result: a class mean needs two."]


@given(st.lists(st.tuples(st.floats(10.0, 40.0), st.floats(0.05, 2.0)), min_size=2, max_size=12), st.randoms())
@settings(max_examples=20, deadline=None)
def test_the_order_of_benches_changes_nothing(rows: list[tuple[float, float]], random: object) -> None:
    benches = {f"b{n}": bench(f"b{n}", value, u) for n, (value, u) in enumerate(rows)}
    turned = dict(reversed(benches.items()))
    one, other = class_result(benches), class_result(turned)
    assert pooled(one)["mean"] == pytest.approx(pooled(other)["mean"], rel=1e-9)
    assert {each["bench"] for each in one["anomalies"]} == {each["bench"] for each in other["anomalies"]}


def test_the_answer_comes_first_then_plain_words() -> None:
    benches = {
        f"b{n}": bench(f"b{n}", 24.5 + 0.1 * n, 0.2, acid=(0.392 + 0.0016 * n, 0.0033), asks="acid_mol_dm3")
        for n in range(-2, 3)
    }
    result = class_result(benches, 6)
    assert result["answer"] == "The class: 0.392 ± 0.0015 mol/dm³ from 5 of 6 benches".replace("0.392 ", "0.3920 ")
    spread, lines = result["plain"]
    assert spread.startswith("One bench alone is good to about ± 0.003 mol/dm³")
    assert spread.endswith("no more than is to be expected.")
    assert lines.startswith("The straight lines give an end-point 12 % lower, on every bench alike")
    known = class_result({name: {**each, "asks": "enthalpy_kj_mol"} for name, each in benches.items()})
    assert all(each["quantity"] != "acid_mol_dm3" for each in known["quantities"]), "nobody asks for what is known"
    assert known["answer"] is None


def test_repeats_that_clash_have_no_usable_interval_and_a_question_stays_open() -> None:
    benches = {
        f"b{n}": bench(f"b{n}", 24.5, 0.2, clash=n == 1, open=["Was portion 3 added?"] * (n == 2)) for n in (1, 2)
    }
    one, other = class_result(benches)["benches"]
    assert (one["clash"], other["clash"]) == (True, False)
    assert (one["open"], other["open"]) == ([], ["Was portion 3 added?"])


@pytest.mark.parametrize(
    ("value", "u", "told"),
    [(0.37612, 0.0031, ("0.376", "0.003")), (0.37612, 0.0012, ("0.3761", "0.0012")), (-52.13, 0.96, ("-52.1", "1.0")),
     (24.5, 12.0, ("24", "12")), (1.0, 0.0, ("1", "0"))],
)  # fmt: skip
def test_a_value_has_the_places_of_its_u(value: float, u: float, told: tuple[str, str]) -> None:
    assert with_u(value, u) == told


async def test_a_lesson_of_virtual_cups_finds_their_acid() -> None:
    """Three cups of one acid (0.392 mol/dm³ against 0.400: 24.5 cm³), one of them with a doubled portion.

    Asked about and not answered it is in doubt, and the end-point holds; answered wrongly it is not.
    """
    lesson = {f"bench-{seed}": events_of(seed) for seed in (1, 2)}
    lesson["bench-3"] = events_of(3, Habits(doubled=frozenset({(1, 3)})))
    unanswered = fold_all(lesson["bench-3"])
    (question,) = [each for each in unanswered.asked if each.code == "double"]
    said = QuestionAnswered(question.repeat, question.portion, question.code, "once")
    lesson["bench-3"] = (*lesson["bench-3"], replace(lesson["bench-3"][-1], event=said))
    states = {name: fold_all(events) for name, events in lesson.items()}
    under_way = fold_all(until(lesson["bench-1"], 200.0))
    assert not has_ended(under_way)
    results = ClassResults()
    found = await results.of({**states, "bench-9": under_way}, {})
    values = {each["bench"]: each for each in found["quantities"][0]["values"]}
    for name in ("bench-1", "bench-2"):
        assert values[name]["value"] == pytest.approx(24.5, abs=4 * values[name]["u"])
    assert values["bench-3"]["value"] < 22.0
    in_doubt = answer(question_for(unanswered))["mean"]["heat_balance"]
    assert in_doubt["end_point_cm3"] == pytest.approx(24.5, abs=4 * in_doubt["u_end_point_cm3"])
    assert found["curve"][0]["change_c"] == 0.0
    assert [each["count"] for each in found["curve"]] == [3] * 11
    assert found["answer"] is not None
    assert found["answer"].startswith("The class: 0.3")
    assert found["answer"].endswith("mol/dm³ from 3 of 4 benches")
    assert await results.known({**states, "bench-9": under_way}, {}) is found, (
        "what was computed before need not be again"
    )
    assert await results.known({**states, "bench-3": under_way}, {}) is None
    (odd,) = found["anomalies"]
    assert in_language(found["words"][0], "de").startswith("Klassenwert (Endpunkt, Wärmebilanz): 2")
    assert "cm³ unter den anderen (mehr als 3 Standardunsicherheiten des Unterschieds)." in in_language(
        odd["text"], "de"
    )
    asked = "Durchgang 1, Portion 3: Die Station fragte „Eine große Änderung: Kam Portion 3 einmal oder zweimal dazu?“"
    assert in_language(odd["reasons"][0], "de").startswith(asked), "what the question held comes back as a message"
    told = [*found["words"], odd["text"], *odd["reasons"]]
    assert all(isinstance(each, Message) and each.id for each in told), "through the child and back"
