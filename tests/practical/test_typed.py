"""Readings that people take: typed from an ordinary thermometer, or from the probe at their own moment."""

import math

import pytest

from station.practical import events as e
from station.practical.acts import ActRefused
from station.practical.dataset import from_question, question_for, repeat_data
from station.practical.fold import fold_all
from station.practical.prompts import instruction
from station.practical.results import results
from station.practical.state import Step
from station.practical.view import view
from tests.practical.walk import Walk, kinds

RISE = (20.0, 22.2, 24.1, 25.9, 25.4)


def typed_bench(division_c: float | None = 0.1, **plan: object) -> Walk:
    """A bench whose settings name no probe."""
    walk = Walk(**plan)
    walk.keep([e.StationStarted("0", "none", None, "none")])
    if division_c is not None:
        walk.act("thermometer", division_c=division_c)
    return walk


def typed_repeat(walk: Walk, readings: tuple[float, ...] = RISE) -> None:
    walk.act("reading", temperature_c=readings[0])
    for portion, temperature_c in enumerate(readings[1:], 1):
        walk.act("portion_added", portion=portion)
        walk.act("reading", temperature_c=temperature_c)


def test_a_bench_without_a_probe_asks_for_the_divisions_first() -> None:
    walk = typed_bench(None)
    assert instruction(walk.state).code == "thermometer"
    assert view(walk.state, 0.0)["thermometer"] == {"kind": "typed", "division_c": None, "digital": False}
    assert view(walk.state, 0.0)["probe"] == "none"
    walk.act("begin")
    with pytest.raises(ActRefused, match="divisions"):
        walk.act("reading", temperature_c=20.0)


def test_a_whole_repeat_is_typed_and_counts_like_any_other() -> None:
    walk = typed_bench(repeats=1)
    walk.act("begin")
    assert instruction(walk.state).code == "type_start"
    assert kinds(walk.act("reading", temperature_c=20.0)) == ["reading_settled", "portion_prompted"]
    walk.act("portion_added", portion=1)
    assert instruction(walk.state).code == "type_reading"
    walk.act("reading", temperature_c=22.2)
    for portion, temperature_c in ((2, 24.1), (3, 25.9), (4, 25.4)):
        walk.act("portion_added", portion=portion)
        walk.act("reading", temperature_c=temperature_c)
    assert walk.step() is Step.DONE
    (repeat,) = walk.state.repeats
    assert [each.temperature_c for each in repeat.readings] == list(RISE)
    assert all(each.typed for each in repeat.readings)
    assert fold_all(walk.happened) == walk.state


@pytest.mark.parametrize("division_c", [1.0, 0.5, 0.2, 0.1])
def test_the_u_of_a_typed_reading_follows_the_divisions(division_c: float) -> None:
    """GUM 4.3.7: half a division either way is a rectangular limit; twice, for scale and eye (common practice)."""
    walk = typed_bench(division_c)
    walk.act("begin")
    walk.act("reading", temperature_c=20.0)
    limits_c = (division_c / 2, division_c / 2)
    u_c = walk.state.repeats[0].readings[0].u_c
    assert u_c is not None
    assert u_c >= math.hypot(*(limit / math.sqrt(3) for limit in limits_c))


def test_a_typed_reading_is_corrected_and_the_first_value_stays_in_the_record() -> None:
    walk = typed_bench(repeats=1)
    walk.act("begin")
    typed_repeat(walk)
    assert kinds(walk.act("reading", portion=2, temperature_c=24.3)) == ["reading_settled"]
    found = {each.portion: each.temperature_c for each in walk.state.repeats[0].readings}
    assert found[2] == 24.3
    said = [
        each.event for each in walk.happened if isinstance(each.event, e.ReadingSettled) and each.event.portion == 2
    ]
    assert [each.temperature_c for each in said] == [24.1, 24.3]


def test_a_reading_that_was_not_taken_cannot_be_corrected() -> None:
    walk = typed_bench()
    walk.act("begin")
    walk.act("reading", temperature_c=20.0)
    with pytest.raises(ActRefused, match="Portion 3 of repeat 1 has no reading"):
        walk.act("reading", portion=3, temperature_c=20.0)


def test_a_lost_probe_is_replaced_by_a_thermometer_and_given_back() -> None:
    walk = Walk()
    walk.to_pour()
    walk.act("portion_added", portion=1)
    with pytest.raises(ActRefused, match="probe works"):
        walk.act("thermometer", division_c=1.0)
    for _ in range(3):
        walk.sample(None, "gone")
    assert instruction(walk.state).code == "probe_lost"
    walk.act("thermometer", division_c=1.0)
    assert instruction(walk.state).code == "type_reading"
    walk.act("reading", temperature_c=22.0)
    assert walk.step() is Step.POUR
    walk.act("thermometer")
    assert not walk.state.typed
    walk.act("portion_added", portion=2)
    assert kinds(walk.rest(24.0)) == ["probe_found"]
    assert "reading_settled" in kinds(walk.rest(24.0))
    assert repeat_data(walk.state.repeats[0]).samples == (), "a trace with a gap of minutes is not fitted"


def test_without_a_probe_nothing_is_dipped_and_the_alkalis_temperature_is_typed() -> None:
    walk = typed_bench()
    with pytest.raises(ActRefused, match="type the temperature of the alkali"):
        walk.act("alkali_temperature")
    walk.act("alkali_temperature", temperature_c=19.5)
    assert walk.step() is Step.READY
    assert walk.state.alkali_c == 19.5


def test_with_a_probe_that_works_nothing_is_typed() -> None:
    walk = Walk()
    walk.act("begin")
    with pytest.raises(ActRefused, match="reads its probe"):
        walk.act("reading", temperature_c=20.0)


def test_typed_readings_give_both_end_points() -> None:
    """An ideal cup of a strong acid and alkali, computed by hand: 20 cm³ each side of the end-point at 20 cm³."""
    walk = typed_bench(
        0.1,
        repeats=1,
        acid={"name": "hydrochloric acid", "volume_cm3": 20},
        alkali={"name": "sodium hydroxide", "concentration_mol_dm3": 1.0},
        portions={"volume_cm3": 4, "count": 9},
        cup={"heat_capacity_j_k": 0.0, "u_heat_capacity_j_k": 0.0},
    )
    rises = [57.0 * min(4 * n, 18.0) / 4.1 / (20 + 4 * n) for n in range(10)]
    walk.act("begin")
    typed_repeat(walk, tuple(round(20.0 + rise_c, 1) for rise_c in rises))
    found = results(walk.state.plan, [repeat_data(walk.state.repeats[0])])
    heat = found["mean"]["heat_balance"]
    assert heat["end_point_cm3"] == pytest.approx(18.0, abs=3 * heat["u_end_point_cm3"])
    assert found["mean"]["straight_lines"]["end_point_cm3"] < 18.0


def judging(**plan: object) -> Walk:
    walk = Walk(prompts="own judgement", **plan)
    walk.act("begin")
    return walk


def test_by_own_judgement_the_station_only_records() -> None:
    walk = judging()
    said = [kind for _ in range(200) for kind in kinds(walk.sample(20.0)) if kind != "sample_taken"]
    assert said == []
    assert instruction(walk.state).act == "read_now"
    assert view(walk.state, walk.time_s)["settle"] is None, "no hint of when"


def test_by_own_judgement_readings_and_portions_come_when_the_students_say() -> None:
    walk = judging(repeats=1)
    walk.sample(20.0)
    walk.act("read_now", portion=0)
    for portion in range(1, 5):
        assert instruction(walk.state).portion == portion
        walk.act("portion_added", portion=portion)
        walk.sample(20.0 + portion)
        walk.act("read_now", portion=portion)
    assert walk.step() is Step.DONE
    (repeat,) = walk.state.repeats
    assert [each.temperature_c for each in repeat.readings] == [20.0, 21.0, 22.0, 23.0, 24.0]
    assert not any(each.early for each in repeat.portions)
    assert fold_all(walk.happened) == walk.state


def test_by_own_judgement_a_portion_may_be_added_without_reading() -> None:
    walk = judging()
    walk.sample(20.0)
    walk.act("read_now")
    walk.act("portion_added", portion=1)
    walk.sample(21.0)
    walk.act("portion_added", portion=2)
    assert [each.portion for each in walk.state.repeats[0].readings] == [0], "nothing is read for them"


def test_an_old_sample_cannot_be_read() -> None:
    walk = judging()
    walk.sample(20.0)
    for _ in range(8):
        walk.sample(None, "gone")
    with pytest.raises(ActRefused, match="no fresh reading"):
        walk.act("read_now")


SOUND = (20.0, 22.2, 24.1, 25.9, 27.3, 28.7, 28.3, 27.9, 27.6)
SLIPPED = (20.0, 22.2, 24.1, 29.5, 27.3, 28.7)


def slip_bench(readings: tuple[float, ...]) -> Walk:
    """Readings of a plan whose end-point lies in portion 5, one typed after the other."""
    walk = typed_bench(repeats=1, portions={"volume_cm3": 4, "count": 8, "u_volume_cm3": 0.02})
    walk.act("begin")
    typed_repeat(walk, readings)
    return walk


def open_codes(walk: Walk) -> list[tuple[int, str]]:
    return [(each["portion"], each["code"]) for each in view(walk.state, 0.0)["questions"]]


def test_sound_readings_are_asked_nothing() -> None:
    walk = slip_bench(SOUND)
    assert walk.step() is Step.DONE
    assert open_codes(walk) == []


def test_a_slip_is_asked_about_as_soon_as_others_stand_against_it_and_is_left_out_meanwhile() -> None:
    walk = slip_bench(SLIPPED)
    assert open_codes(walk) == [(3, "slip")]
    assert walk.state.repeats[0].unsure(3)
    assert not walk.state.repeats[0].unsure_volume(3)
    assert 3 not in [row.portion for row in repeat_data(walk.state.repeats[0]).readings]
    assert repeat_data(walk.state.repeats[0]).questions == ((3, "slip"),)


def test_a_reading_that_somebody_stands_by_counts_and_is_not_asked_about_again() -> None:
    walk = slip_bench(SLIPPED)
    walk.act("answer", question="1-3-slip", answer="yes")
    assert not walk.state.repeats[0].unsure(3)
    walk.act("portion_added", portion=6)
    assert kinds(walk.act("reading", temperature_c=28.3)) == ["reading_settled", "portion_prompted"]


@pytest.mark.parametrize("answer", ["no", "not sure"])
def test_one_that_nobody_stands_by_stays_out_until_it_is_sure_again(answer: str) -> None:
    walk = slip_bench(SLIPPED)
    walk.act("answer", question="1-3-slip", answer=answer)
    assert walk.state.repeats[0].unsure(3)
    walk.act("portion_sure", repeat=1, portion=3)
    assert not walk.state.repeats[0].unsure(3)


def test_typed_again_it_counts_and_the_question_is_closed() -> None:
    walk = slip_bench(SLIPPED)
    again = walk.act("reading", repeat=1, portion=3, temperature_c=25.9)
    assert kinds(again) == ["reading_settled", "question_answered"]
    assert open_codes(walk) == []
    assert not walk.state.repeats[0].unsure(3)


def test_typed_wrong_again_it_is_asked_about_again() -> None:
    walk = slip_bench(SLIPPED)
    walk.act("reading", repeat=1, portion=3, temperature_c=35.9)
    assert open_codes(walk) == [(3, "slip")]


def test_a_start_that_was_misread_is_left_out_of_the_heat_balance_too() -> None:
    walk = slip_bench((30.0, *SOUND[1:]))
    assert open_codes(walk) == [(0, "slip")]
    data = repeat_data(walk.state.repeats[0])
    right = repeat_data(slip_bench(SOUND).state.repeats[0])
    found, expected = (results(walk.state.plan, [each])["mean"]["heat_balance"] for each in (data, right))
    assert found["end_point_cm3"] == pytest.approx(expected["end_point_cm3"], abs=0.6)
    walk.act("portion_sure", repeat=1, portion=0)
    assert not walk.state.repeats[0].unsure(0)


def test_a_slip_in_the_last_reading_is_asked_about_when_the_repeat_is_over() -> None:
    walk = slip_bench((*SOUND[:8], 37.6))
    assert walk.step() is Step.DONE
    assert open_codes(walk) == [(8, "slip")]
    walk.act("answer", question="1-8-slip", answer="yes")
    assert open_codes(walk) == []


def test_the_worker_is_told_of_open_questions() -> None:
    walk = slip_bench(SLIPPED)
    plan, (data,), _ = from_question(question_for(walk.state))
    assert data.questions == ((3, "slip"),)
    assert results(plan, [data])["repeats"][0]["questions"] == [{"portion": 3, "code": "slip"}]
