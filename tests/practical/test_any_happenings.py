"""Whatever the probe gives and whoever presses what: the procedure keeps its promises (hypothesis)."""

import json
from collections import Counter
from contextlib import suppress
from itertools import pairwise

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from station.practical import events as e
from station.practical.acts import ActRefused
from station.practical.dataset import question_for
from station.practical.fold import fold_all
from station.practical.prompts import instruction
from station.practical.questions import QUESTIONS, ask_events
from station.practical.state import State, Step
from station.practical.view import trace, view
from station.words import members
from tests.practical.walk import ACTS, Walk

BAD = ("empty", "crc", "zeros", "power_on", "gone", "no_answer", "garbled")

CODES = tuple(QUESTIONS)

ADOPTABLE = "repeat,volume_cm3,temperature_c\r\n1,0,20\r\n1,3,21\r\n1,6,22\r\n2,0,20\r\n2,3,21.5\r\n"

ONE_ROW = "repeat,volume_cm3,temperature_c\r\n1,0,20\r\n"
TURNED = ADOPTABLE.replace("1,6,22", "1,6,20.5")


def aside(repeat: int) -> dict[str, object]:
    """What names a repeat that is set aside, or counts again."""
    return {"repeat": repeat, "reason": "spilled"}


sampled = st.one_of(
    st.tuples(st.just("sample"), st.floats(-60, 130, allow_nan=False)),
    st.tuples(st.just("steady"), st.sampled_from([19.9375, 20.0, 22.5, 25.0])),
    st.tuples(st.just("bad"), st.sampled_from(BAD)),
    st.tuples(st.just("ask"), st.sampled_from(CODES)),
)
acted = st.tuples(
    st.just("act"),
    st.fixed_dictionaries(
        {"act": st.sampled_from(ACTS)},
        optional={
            "portion": st.integers(0, 5),
            "repeat": st.integers(1, 4),
            "volume_cm3": st.floats(0.1, 50),
            "temperature_c": st.floats(-5, 60),
            "reason": st.just("a reason"),
            "question": st.builds("{}-{}-{}".format, st.integers(1, 2), st.integers(1, 3), st.sampled_from(CODES)),
            "division_c": st.sampled_from([1.0, 0.1]),
            "end_point_cm3": st.floats(0, 50),
            "label": st.sampled_from(["Group 4", "", " "]),
            "text": st.sampled_from(["late", "= 1 + 1"]),
            "note": st.integers(1, 3),
            "csv": st.sampled_from(["", "rubbish", ADOPTABLE]),
            "answer": st.sampled_from(["yes", "no", "once", "twice", "spilled", "lid", "not sure"]),
        },
    ),
)


@settings(max_examples=150, deadline=None)
@given(st.lists(st.one_of(sampled, acted), max_size=60), st.sampled_from(["station", "station", "own judgement"]))
def test_any_stream_of_samples_and_acts(stream: list[tuple[str, object]], prompts: str) -> None:
    walk = Walk(repeats=2, prompts=prompts)
    for what, value in stream:
        before, told = walk.state, len(walk.happened)
        try:
            _happen(walk, what, value)
        except ActRefused as refusal:
            assert str(refusal)
            assert walk.state == before
        if not any(isinstance(each.event, e.ReadingSettled) for each in walk.happened[told:]) and what != "act":
            assert question_for(walk.state) == question_for(before), "samples that lead to no reading ask nothing"
    state = walk.state
    assert fold_all(walk.happened) == state
    _holds(state, walk.happened)
    json.dumps({**view(state, walk.time_s), "trace": trace(state)}, allow_nan=False, default=members)


read_by_hand = st.one_of(
    st.tuples(st.just("begin"), st.just({})),
    st.tuples(st.just("rinsed"), st.just({})),
    st.tuples(st.just("finish"), st.just({})),
    st.tuples(st.just("own_reading"), st.sampled_from([{}, {"end_point_cm3": 3.0}, {"reason": "why"}])),
    st.tuples(st.just("own_reading"), st.just({"end_point_cm3": 3.0, "sure": True})),
    st.tuples(
        st.just("adopt"), st.sampled_from([{"label": "Bench 4", "csv": each} for each in (ADOPTABLE, ONE_ROW, TURNED)])
    ),
    st.tuples(st.just("adopt_returned"), st.just({})),
    st.tuples(st.sampled_from(["repeat_set_aside", "repeat_restored"]), st.builds(aside, st.integers(1, 3))),
    st.tuples(st.just("pour"), st.sampled_from([19.0, 20.0, 21.0, 22.0, 23.0])),
)


@pytest.mark.fault("early-results")
@settings(max_examples=300, deadline=None)
@given(st.lists(read_by_hand, max_size=30))
@example([("pour", 20.0), ("pour", 22.0), ("pour", 21.0), ("finish", {}), ("own_reading", {"end_point_cm3": 3.0})])
def test_results_are_never_open_before_what_was_read_was_there(happened: list[tuple[str, object]]) -> None:
    walk = Walk(repeats=2, portions={"volume_cm3": 3, "count": 3})
    walk.keep([e.StationStarted("0", "none", None, "none")])
    walk.act("thermometer", division_c=1.0)
    read = False
    for what, value in [("begin", {}), *happened]:
        with suppress(ActRefused):
            if isinstance(value, dict):
                events = walk.act(what, **value)
                if what == "own_reading":
                    read = _may_be_read(walk.state, value)
                    assert read, "an own reading is refused where there is nothing to read"
                elif {type(each) for each in events} & {e.RepeatBegun, e.SetAdopted, e.SetReturned}:
                    read = False
            else:
                with suppress(ActRefused):
                    walk.act("portion_added", portion=walk.state.poured + 1)
                walk.act("reading", temperature_c=value)
        assert read or not walk.state.results_shown
        assert fold_all(walk.happened).results_shown is walk.state.results_shown


def _may_be_read(state: State, reading: dict[str, object]) -> bool:
    """The promise, from the readings alone: a repeat that ended and counts, and turned unless a reason is given."""
    repeats = state.repeats if state.adopted is None else state.adopted.repeats
    for repeat in repeats:
        temperatures = [each.temperature_c for each in sorted(repeat.readings, key=lambda each: each.portion)]
        known = [each for each in temperatures if each is not None]
        if repeat.status != "ended" or len(known) < 2:
            continue
        rising = [after > before for before, after in pairwise(known)]
        falling = [after < before for before, after in pairwise(known)]
        if "reason" in reading or not (all(rising) or all(falling)):
            return True
    return False


def _happen(walk: Walk, what: str, value: object) -> None:
    match what, value:
        case "sample", float(temperature_c):
            walk.sample(temperature_c)
        case "steady", float(temperature_c):
            for _ in range(35):
                walk.sample(temperature_c)
        case "bad", str(bad):
            walk.sample(None, bad)
        case "ask", str(code) if walk.state.poured:
            walk.keep(list(ask_events(walk.state, ((walk.state.poured, code),))))
        case "act", dict(values):
            walk.act(**{"name" if key == "act" else key: each for key, each in values.items()})


def _holds(state: State, happened: list[e.Stamped]) -> None:
    for repeat in state.repeats:
        numbers = [portion.portion for portion in repeat.portions]
        assert numbers == list(range(1, len(numbers) + 1)), "portions are numbered without a gap"
        read = Counter(reading.portion for reading in repeat.readings)
        assert all(count == 1 for count in read.values()), "one reading a portion"
        assert set(read) <= {0, *numbers}, "no reading without its portion"
        taken = [reading for reading in repeat.readings if not reading.typed]
        temperatures = [reading.temperature_c for reading in taken if reading.temperature_c is not None]
        good = [sample.temperature_c for sample in repeat.samples if sample.temperature_c is not None]
        assert all(min(good) <= each <= max(good) for each in temperatures), "no reading is extrapolated"
    prompts: Counter[tuple[int, int]] = Counter()
    for stamped in happened:
        match stamped.event:
            case e.PortionPrompted(repeat=number, portion=portion):
                prompts[number, portion] += 1
            case e.PortionUndone(repeat=number, portion=portion):
                prompts[number, portion] -= 1
                prompts[number, portion + 1] = 0
    assert all(count <= 1 for count in prompts.values()), "a portion is asked for once"
    assert len([repeat for repeat in state.repeats if repeat.status == "running"]) <= 1
    assert len(instruction(state).text.split()) <= 12
    if state.step is Step.DONE:
        assert state.running is None
