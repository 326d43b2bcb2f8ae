"""Whatever the probe gives and whoever presses what: the procedure keeps its promises (hypothesis)."""

import json
from collections import Counter

from hypothesis import given, settings
from hypothesis import strategies as st

from station.practical import events as e
from station.practical.acts import ActRefused
from station.practical.fold import fold_all
from station.practical.prompts import instruction
from station.practical.questions import QUESTIONS, ask_events
from station.practical.state import State, Step
from station.practical.view import trace, view
from tests.practical.walk import ACTS, Walk

BAD = ("empty", "crc", "zeros", "power_on", "gone", "no_answer", "garbled")

CODES = tuple(QUESTIONS)

ADOPTABLE = "repeat,volume_cm3,temperature_c\r\n1,0,20\r\n1,3,21\r\n1,6,22\r\n2,0,20\r\n2,3,21.5\r\n"

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
        before = walk.state
        try:
            _happen(walk, what, value)
        except ActRefused as refusal:
            assert str(refusal)
            assert walk.state == before
    state = walk.state
    assert fold_all(walk.happened) == state
    _holds(state, walk.happened)
    json.dumps({**view(state, walk.time_s), "trace": trace(state)}, allow_nan=False)


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
