"""The procedure: what a class does, step by step, and what it must refuse."""

import copy
from functools import lru_cache

import pytest

from station.practical import events as e
from station.practical.acts import Act, ActRefused
from station.practical.fold import fold_all
from station.practical.group import ANYWHERE
from station.practical.procedure import TABLE, advance, possible_acts
from station.practical.questions import ask_events
from station.practical.rules import MOST_REPEATS
from station.practical.state import Step
from station.practical.view import view
from tests.practical.walk import ACTS, Walk, kinds


def test_a_repeat_goes_from_start_to_rinse() -> None:
    walk = Walk()
    assert kinds(walk.act("begin")) == ["repeat_begun"]
    assert kinds(walk.rest(20.0)) == ["reading_settled", "portion_prompted"]
    for portion in (1, 2, 3):
        assert kinds(walk.act("portion_added", portion=portion)) == ["portion_added"]
        assert kinds(walk.rest(20.0 + portion)) == ["reading_settled", "portion_prompted"]
    walk.act("portion_added", portion=4)
    assert kinds(walk.rest(24.0)) == ["reading_settled", "repeat_ended"]
    assert walk.state.step is Step.RINSE
    assert [reading.portion for reading in walk.state.repeats[0].readings] == [0, 1, 2, 3, 4]


def test_the_last_repeat_ends_the_practical() -> None:
    walk = Walk(repeats=2)
    walk.to_pour()
    walk.repeat()
    assert kinds(walk.act("rinsed")) == ["repeat_begun"]
    walk.rest(20.0)
    walk.repeat()
    assert walk.state.step is Step.DONE
    assert [repeat.status for repeat in walk.state.repeats] == ["ended", "ended"]


@pytest.mark.fault("too-soon")
def test_a_portion_before_its_prompt_is_a_fact_and_flagged() -> None:
    walk = Walk()
    walk.to_pour()
    walk.act("portion_added", portion=1)
    walk.sample(20.25)
    walk.sample(20.75)
    early = walk.act("portion_added", portion=2)
    assert kinds(early) == ["reading_settled", "portion_added"]
    reading, added = early
    assert isinstance(reading, e.ReadingSettled)
    assert (reading.portion, reading.temperature_c, reading.settled) == (1, 20.75, False)
    assert isinstance(added, e.PortionAdded)
    assert added.early


def test_the_first_portion_can_come_before_the_start_is_steady() -> None:
    walk = Walk()
    walk.act("begin")
    walk.sample(20.0)
    reading = walk.act("portion_added", portion=1)[0]
    assert isinstance(reading, e.ReadingSettled)
    assert (reading.portion, reading.temperature_c, reading.settled) == (0, 20.0, False)


@pytest.mark.fault("restless-cup")
def test_a_reading_that_ran_out_of_time_is_kept_and_marked_unsettled() -> None:
    walk = Walk()
    walk.to_pour()
    walk.act("portion_added", portion=1)
    readings: list[e.Event] = []
    for second in range(121):  # a rise that never ends: nothing may fire in it
        readings += [each for each in walk.sample(20.0 + 0.1 * second) if isinstance(each, e.ReadingSettled)]
    assert len(readings) == 1
    assert isinstance(readings[0], e.ReadingSettled)
    assert (readings[0].settled, readings[0].reason, readings[0].outcome) == (False, "time is up", "time up")


def test_a_start_read_with_few_samples_is_marked_unsettled() -> None:
    walk = Walk()
    walk.act("begin")
    said: list[e.Event] = []
    for second in range(302):  # most conversions fail
        said += walk.sample(20.0) if second % 7 == 0 else walk.sample(None, "crc")
    reading = next(each for each in said if isinstance(each, e.ReadingSettled))
    assert (reading.portion, reading.settled, reading.outcome) == (0, False, "time up")
    assert walk.step() is Step.POUR


def test_a_reading_of_an_older_record_has_its_words_alone() -> None:
    body = {"repeat": 1, "portion": 0, "temperature_c": 20.0, "u_c": 0.1, "settled": False, "reason": "time is up"}
    old = e.from_body("reading_settled", body)
    walk = Walk()
    walk.act("begin")
    walk.keep([old])
    assert old == e.ReadingSettled(1, 0, 20.0, 0.1, False, "time is up", outcome="")
    assert view(walk.state, walk.time_s)["repeats"][0]["readings"][0]["reason"] == "time is up"


def test_a_reading_that_never_was_is_empty_not_invented() -> None:
    walk = Walk()
    walk.to_pour()
    walk.act("portion_added", portion=1)
    walk.sample(None, "empty")
    reading = walk.act("portion_added", portion=2)[0]
    assert isinstance(reading, e.ReadingSettled)
    assert (reading.temperature_c, reading.settled) == (None, False)


def test_the_same_key_again_changes_nothing() -> None:
    walk = Walk()
    walk.to_pour()
    act = Act(act="portion_added", portion=1, key="one press")
    walk.keep(list(advance(walk.state, act, walk.time_s)))
    assert advance(walk.state, act, walk.time_s) == ()
    assert walk.state.poured == 1


def test_two_phones_add_one_portion() -> None:
    walk = Walk()
    walk.to_pour()
    walk.act("portion_added", portion=1)
    with pytest.raises(ActRefused, match="already in") as refusal:
        walk.act("portion_added", portion=1)
    assert refusal.value.code == "already_in"


@pytest.mark.parametrize("portion", [3, 5, 999])
def test_another_portion_than_the_next_is_impossible(portion: int) -> None:
    walk = Walk()
    walk.to_pour()
    walk.act("portion_added", portion=1)
    with pytest.raises(ActRefused, match="comes next"):
        walk.act("portion_added", portion=portion)


def test_more_portions_than_planned_are_impossible() -> None:
    walk = Walk(repeats=1)
    walk.to_pour()
    for portion in (1, 2, 3, 4):
        walk.act("portion_added", portion=portion)
    with pytest.raises(ActRefused, match="ends with portion 4"):
        walk.act("portion_added", portion=5)


def test_a_portion_is_taken_back() -> None:
    walk = Walk()
    walk.to_pour()
    walk.portion(21.0)
    walk.act("portion_undone", portion=1)
    assert (walk.state.step, walk.state.poured, walk.state.prompted) == (Step.POUR, 0, 1)
    assert [reading.portion for reading in walk.state.repeats[0].readings] == [0]


def test_taking_an_early_portion_back_lets_the_one_before_settle() -> None:
    walk = Walk()
    walk.to_pour()
    walk.act("portion_added", portion=1)
    walk.sample(20.5)
    walk.act("portion_added", portion=2)
    walk.act("portion_undone", portion=2)
    assert walk.state.step is Step.SETTLE
    assert kinds(walk.rest(21.0)) == ["reading_settled", "portion_prompted"]


def test_only_the_newest_portion_is_taken_back() -> None:
    walk = Walk()
    walk.to_pour()
    walk.portion(21.0)
    walk.portion(22.0)
    with pytest.raises(ActRefused, match="newest portion, 2"):
        walk.act("portion_undone", portion=1)


def test_volumes_and_doubts_are_corrections_of_any_repeat() -> None:
    walk = Walk()
    walk.to_pour()
    walk.repeat()
    walk.act("portion_volume", portion=2, volume_cm3=6.0)
    walk.act("portion_unsure", portion=3, repeat=1)
    repeat = walk.state.repeats[0]
    assert repeat.added_cm3(2) == 9.0
    assert repeat.unsure(3)
    with pytest.raises(ActRefused, match="no repeat 2"):
        walk.act("portion_unsure", portion=1, repeat=2)
    with pytest.raises(ActRefused, match="has not been added"):
        walk.act("portion_volume", portion=9, volume_cm3=1.0)


@pytest.mark.parametrize("volume_cm3", [400.0, 30.0, 9.5, 0.3])
def test_a_volume_far_from_the_others_is_asked_again(volume_cm3: float) -> None:
    walk = Walk()
    walk.to_pour()
    with pytest.raises(ActRefused, match=r"is far from the planned 3 cm³.*press again") as refused:
        walk.act("portion_added", portion=1, volume_cm3=volume_cm3)
    assert refused.value.code == "doubtful"
    walk.portion(21.0)
    with pytest.raises(ActRefused, match="press again"):
        walk.act("portion_volume", portion=1, volume_cm3=volume_cm3)
    assert walk.state.repeats[0].total_cm3 == 3.0
    walk.act("portion_volume", portion=1, volume_cm3=volume_cm3, sure=True)
    assert walk.state.repeats[0].total_cm3 == volume_cm3
    walk.act("portion_added", portion=2, volume_cm3=volume_cm3)
    assert walk.state.poured == 2, "a second one of that size is not far from the others"


@pytest.mark.parametrize("volume_cm3", [1.0, 2.5, 6.0, 9.0])
def test_a_volume_near_the_others_is_taken_at_once(volume_cm3: float) -> None:
    walk = Walk()
    walk.to_pour()
    walk.act("portion_added", portion=1, volume_cm3=volume_cm3)
    assert walk.state.repeats[0].total_cm3 == volume_cm3


def test_a_repeat_to_be_started_again_is_the_same_of_the_planned_ones_with_nothing_in() -> None:
    walk = Walk(repeats=3)
    walk.to_pour()
    walk.portion(21.0)
    walk.act("repeat_restarted", reason="lost count of the portions")
    shown = view(walk.state, walk.time_s)
    assert (shown["repeat_of_planned"], shown["portion"], shown["total_added_cm3"]) == (1, 0, 0.0)
    walk.act("rinsed")
    shown = view(walk.state, walk.time_s)
    assert (shown["repeat"], shown["repeat_of_planned"], shown["portion"]) == (2, 1, 0)
    walk.rest(20.0)
    walk.repeat()
    shown = view(walk.state, walk.time_s)
    assert (shown["repeat_of_planned"], shown["portion"], shown["total_added_cm3"]) == (1, 4, 12.0)


def test_a_spilled_repeat_is_set_aside_and_made_again() -> None:
    walk = Walk(repeats=1)
    walk.to_pour()
    walk.portion(21.0)
    walk.act("repeat_restarted", reason="the cup tipped over")
    assert walk.step() is Step.RINSE
    assert walk.state.repeats[0].reason == "the cup tipped over"
    walk.act("rinsed")
    walk.rest(20.0)
    walk.repeat()
    assert walk.step() is Step.DONE
    assert [repeat.repeat for repeat in walk.state.counted] == [2]


def test_a_pause_keeps_the_reading_and_the_place() -> None:
    walk = Walk()
    walk.to_pour()
    walk.act("portion_added", portion=1)
    walk.act("pause")
    assert kinds(walk.rest(21.0)) == ["reading_settled"]
    assert walk.rest(21.0, 60) == []
    assert kinds(walk.act("resume")) == ["resumed", "portion_prompted"]


def test_a_portion_poured_in_a_pause_is_a_fact() -> None:
    walk = Walk()
    walk.to_pour()
    walk.act("pause")
    added = walk.act("portion_added", portion=1)
    assert kinds(added) == ["resumed", "portion_added"]
    assert walk.state.step is Step.SETTLE


def test_finishing_early_keeps_what_there_is() -> None:
    walk = Walk()
    walk.to_pour()
    walk.act("portion_added", portion=1)
    walk.sample(20.5)
    assert kinds(walk.act("finish")) == ["reading_settled", "repeat_ended", "practical_ended"]
    assert walk.state.step is Step.DONE
    assert walk.state.ended_early


def test_the_alkali_is_measured_by_a_dip_or_typed() -> None:
    walk = Walk()
    walk.act("alkali_temperature")
    assert walk.state.step is Step.ALKALI
    assert kinds(walk.rest(19.5)) == ["alkali_measured"]
    assert (walk.state.step, walk.state.alkali_c) == (Step.READY, 19.5)
    walk.act("alkali_temperature", temperature_c=18.5)
    assert walk.state.alkali_c == 18.5


def test_a_lost_probe_is_said_once_and_found_again() -> None:
    walk = Walk()
    walk.to_pour()
    said = [kinds(walk.sample(None, "empty")) for _ in range(5)]
    assert [kind for events in said for kind in events].count("probe_lost") == 1
    # After a gap of more than 5 s the first reading waits for a second that agrees with it.
    walk.sample(None, "empty")
    assert kinds(walk.sample(20.0)) == ["sample_taken"]
    assert kinds(walk.sample(20.0)) == ["sample_taken", "probe_found"]


def test_mixing_once_records_before_and_after_the_moment() -> None:
    timing = {"before_s": 90, "after_s": 60}
    walk = Walk(
        kind="once",
        repeats=1,
        liquid={"name": "water", "volume_cm3": 40},
        addition={"name": "potassium chloride", "mass_g": 3.0},
        timing=timing,
    )
    walk.act("begin")
    assert kinds(walk.rest(21.0)) == ["reading_settled", "portion_prompted"]
    assert walk.time_s >= 90.0
    added = walk.act("portion_added", portion=1)
    mixed_s = walk.time_s
    assert isinstance(added[0], e.PortionAdded)
    assert added[0].volume_cm3 == 0.0
    assert kinds(walk.rest(18.5)) == ["reading_settled", "repeat_ended", "practical_ended"]
    assert walk.time_s - mixed_s == 60.0


def test_every_act_outside_the_table_is_refused_and_changes_nothing() -> None:
    for step, walk in _one_in_each_step().items():
        assert walk.state.step is step
        for name in ACTS:
            before = walk.state
            if (step, name) in TABLE or name in ANYWHERE:
                continue
            with pytest.raises(ActRefused):
                walk.act(name, portion=1, volume_cm3=1.0, reason="a reason")
            assert walk.state == before


def test_every_row_of_the_table_can_be_used() -> None:
    for step, name in TABLE:
        walk = _ready_for(name, step)
        if name == "answer":
            walk.keep(list(ask_events(walk.state, ((walk.state.poured, "double"),))))
        reached = walk.state.poured if name != "portion_added" else walk.state.poured + 1
        values = {"portion": max(reached, 1), "volume_cm3": 2.0, "reason": "a reason"}
        values |= {"question": f"1-{walk.state.poured}-double", "answer": "once"}
        values |= {"division_c": 1.0} if name == "thermometer" else {}
        values |= {"temperature_c": 21.0} if name == "reading" else {}
        values |= {"portion": walk.state.poured} if name in ("reading", "read_now") else {}
        if step is Step.ALKALI and name == "alkali_temperature":
            values["temperature_c"] = 20.0
        assert walk.act(name, **values), (step, name)


def test_possible_acts_are_the_rows_of_the_table() -> None:
    walk = Walk()
    assert possible_acts(walk.state) == (
        "alkali_temperature", "thermometer", "begin", "finish", "group", "note", "adopt", "call_teacher",
    )  # fmt: skip


def test_the_state_is_the_fold_of_what_happened() -> None:
    walk = Walk()
    walk.to_pour()
    walk.repeat()
    assert fold_all(walk.happened) == walk.state


def _ready_for(name: str, step: Step) -> Walk:
    """A walk in this step in which the act makes sense."""
    plan = {"prompts": "own judgement"} if name == "read_now" else {}
    walk = _in(step) if not plan else _judging(step)
    if name == "portion_sure":
        walk.act("portion_unsure", portion=walk.state.poured)
    if name == "repeat_restored":
        walk.act("repeat_set_aside", reason="a reason")
    if name in ("reading", "thermometer") and step is not Step.READY:
        walk.keep([e.ThermometerChosen(0.1)])
    return walk


def _judging(step: Step) -> Walk:
    walk = Walk(prompts="own judgement")
    walk.act("begin")
    walk.sample(20.0)
    if step is Step.SETTLE:
        walk.act("portion_added", portion=1)
    return walk


def _one_in_each_step() -> dict[Step, Walk]:
    return {step: _in(step) for step in Step}


def _in(step: Step) -> Walk:
    """A walk of one's own in this step; getting there once is enough."""
    walk = copy.copy(_first_in(step))
    walk.happened = list(walk.happened)
    return walk


@lru_cache
def _first_in(step: Step) -> Walk:
    walk = Walk(repeats=1 if step is Step.DONE else 2)
    if step is Step.ALKALI:
        walk.act("alkali_temperature")
    if step is Step.START:
        walk.act("begin")
    if step in (Step.POUR, Step.SETTLE, Step.RINSE, Step.PAUSED, Step.DONE):
        walk.to_pour()
        walk.portion(21.0)
    if step is Step.SETTLE:
        walk.act("portion_added", portion=2)
    if step in (Step.RINSE, Step.DONE):
        for number in (2, 3, 4):
            walk.portion(21.0 + number)
    if step is Step.PAUSED:
        walk.act("pause")
    return walk


@pytest.mark.fault("very-long")
def test_a_practical_does_not_grow_without_end() -> None:
    """Whoever starts again all afternoon must not make every screen carry thousands of repeats."""
    walk = Walk()
    walk.act("begin")
    for _ in range(MOST_REPEATS - 1):
        walk.act("repeat_restarted", reason="spilled")
        walk.act("rinsed")
    walk.act("repeat_restarted", reason="spilled")
    with pytest.raises(ActRefused, match="staff begin a new one"):
        walk.act("rinsed")
    assert walk.state.step is Step.RINSE
