"""What a practical believes of a probe that may be pulled, power up with nonsense or come back elsewhere."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from station.practical import events as e
from station.practical.gate import GAP_S, HIGHEST_C, LOWEST_C, RATE_C_S, STEP_C, judge_sample
from station.practical.procedure import LOST_AFTER, sample_events
from station.practical.prompts import instruction
from station.practical.state import Gate, Sample, State
from tests.practical.walk import Walk, kinds

KNOWN = Gate(good=Sample(100.0, 21.0))

# A DS18B20 plunged from air into water at about 2.3 °C, one of eight loggers of a student course, Universität
# Hamburg, 2023 (public repository QuentinRauschenbach/Temperature_Logger); 1.14 s apart.
PLUNGE_C = [23.88, 23.44, 20.81, 18.06, 16.0, 14.44, 13.13, 12.0, 11.19, 10.38, 9.75, 9.0, 8.56, 8.06, 7.69, 7.25]

# Readings while a plug is half out, before the probe is gone: w1thermsensor, issue 114.
HALF_OUT_C = [-109.9375, -110.1875]


@pytest.mark.parametrize("temperature_c", [-5.0, 0.0, 21.0, 60.0])
def test_the_very_first_reading_of_a_cup_is_believed(temperature_c: float) -> None:
    assert judge_sample(Gate(), 0.0, temperature_c) == (None, Gate(good=Sample(0.0, temperature_c)))


@pytest.mark.fault("impossible-value")
@pytest.mark.parametrize("gate", [Gate(), KNOWN, Gate(candidate=Sample(100.0, 30.0))])
@pytest.mark.parametrize("temperature_c", [-5.0625, 60.0625, 85.0, 127.9375, float("nan"), float("inf"), *HALF_OUT_C])
def test_out_of_range_is_refused_and_remembered_by_nobody(gate: Gate, temperature_c: float) -> None:
    assert judge_sample(gate, 101.0, temperature_c) == ("out_of_range", gate)


@pytest.mark.parametrize(
    ("passed_s", "reach_c"), [(-1.0, 1.0), (0.0, 1.0), (0.5, 2.5), (1.0, 4.0), (3.0, 10.0), (5.0, 16.0)]
)
@pytest.mark.parametrize("sign", [1, -1])
def test_how_far_a_probe_can_move(passed_s: float, reach_c: float, sign: int) -> None:
    at_s, near_c, far_c = 100.0 + passed_s, 21.0 + sign * reach_c, 21.0 + sign * (reach_c + 0.0625)
    assert judge_sample(KNOWN, at_s, near_c) == (None, Gate(good=Sample(at_s, near_c)))
    assert judge_sample(KNOWN, at_s, far_c) == ("jump", Gate(KNOWN.good, Sample(at_s, far_c)))


def test_a_jump_is_believed_once_a_second_reading_agrees() -> None:
    bad, gate = judge_sample(KNOWN, 101.0, 40.0)
    assert bad == "jump"
    assert judge_sample(gate, 102.0, 40.5) == (None, Gate(good=Sample(102.0, 40.5)))


@pytest.mark.fault("impossible-value")
def test_two_jumps_that_disagree_are_both_refused() -> None:
    _, gate = judge_sample(KNOWN, 101.0, 40.0)
    bad, gate = judge_sample(gate, 102.0, 55.0)
    assert (bad, gate) == ("jump", Gate(KNOWN.good, Sample(102.0, 55.0)))


def test_one_jump_costs_one_sample_and_is_forgotten() -> None:
    _, gate = judge_sample(KNOWN, 101.0, 40.0)
    bad, gate = judge_sample(gate, 102.0, 21.0)
    assert (bad, gate) == (None, Gate(good=Sample(102.0, 21.0)))
    assert judge_sample(gate, 103.0, 40.0)[0] == "jump"


@pytest.mark.parametrize(("gap_s", "first"), [(GAP_S, None), (GAP_S + 0.01, "jump"), (3600.0, "jump")])
def test_after_a_gap_the_first_reading_waits_for_a_second(gap_s: float, first: str | None) -> None:
    bad, gate = judge_sample(KNOWN, 100.0 + gap_s, 21.0)
    assert bad == first
    assert judge_sample(gate, 101.0 + gap_s, 21.0)[0] is None


def test_an_agreement_too_late_is_none() -> None:
    _, gate = judge_sample(KNOWN, 110.0, 30.0)
    assert judge_sample(gate, 110.0 + GAP_S + 0.01, 30.0)[0] == "jump"


def test_a_real_plunge_is_no_jump() -> None:
    gate = Gate()
    for number, temperature_c in enumerate(PLUNGE_C):
        bad, gate = judge_sample(gate, 1.14 * number, temperature_c)
        assert bad is None


readings = st.floats(-130.0, 130.0)
steps = st.tuples(st.floats(0.0, 8.0), readings)


@given(st.lists(steps, max_size=40))
def test_what_is_believed_is_in_range_and_within_reach(series: list[tuple[float, float]]) -> None:
    gate, time_s, past = Gate(), 0.0, list[Sample]()
    for passed_s, temperature_c in series:
        time_s += passed_s
        bad, after = judge_sample(gate, time_s, temperature_c)
        if bad is None:
            assert LOWEST_C <= temperature_c <= HIGHEST_C
            assert after == Gate(good=Sample(time_s, temperature_c))
            assert gate == Gate() or any(within_reach(each, time_s, temperature_c) for each in past)
        if LOWEST_C <= temperature_c <= HIGHEST_C:
            past.append(Sample(time_s, temperature_c))
        gate = after


def within_reach(before: Sample, time_s: float, temperature_c: float) -> bool:
    assert before.temperature_c is not None
    passed_s = time_s - before.time_s
    return passed_s <= GAP_S and abs(temperature_c - before.temperature_c) <= STEP_C + RATE_C_S * passed_s


@given(st.lists(st.tuples(st.floats(0.1, 8.0), st.none() | readings), max_size=40))
def test_the_state_remembers_what_the_gate_said(series: list[tuple[float, float | None]]) -> None:
    """The fold over what is recorded leads to the same gate: so does a restart from the journal."""
    state, gate, time_s = State(), Gate(), 0.0
    for passed_s, temperature_c in series:
        time_s += passed_s
        taken = e.SampleTaken(temperature_c, "crc" if temperature_c is None else None, None, "text")
        (sample, *_), state = sample_events(state, taken, time_s)
        assert isinstance(sample, e.SampleTaken)
        if temperature_c is None:
            assert sample == taken
        else:
            bad, gate = judge_sample(gate, time_s, temperature_c)
            shown = (temperature_c, None) if bad is None else (None, temperature_c)
            assert (sample.bad, sample.temperature_c, sample.rejected_c) == (bad, *shown)
        assert state.gate == gate
        assert state.recent[-1] == Sample(time_s, sample.temperature_c, sample.bad)


@pytest.mark.fault("unplugged")
def test_a_probe_is_lost_at_the_third_bad_sample_and_once() -> None:
    walk = Walk()
    walk.sample(21.0)
    assert [kinds(walk.sample(None, "empty")) for _ in range(5)] == [
        ["sample_taken"],
        ["sample_taken"],
        ["sample_taken", "probe_lost"],
        ["sample_taken"],
        ["sample_taken"],
    ]
    assert LOST_AFTER == 3
    assert walk.happened[-3].event == e.ProbeLost("empty")


def test_a_probe_that_fails_now_and_then_is_not_lost() -> None:
    walk = Walk()
    for _ in range(10):
        walk.sample(None, "crc")
        walk.sample(None, "crc")
        standing: list[str] = [walk.state.probe]
        assert kinds(walk.sample(21.0)) == ["sample_taken"]
        assert [*standing, walk.state.probe] == ["failing", "ok"]


def test_nonsense_counts_as_much_as_silence() -> None:
    walk = Walk()
    walk.sample(21.0)
    walk.sample(40.0)
    walk.sample(HALF_OUT_C[0])
    assert kinds(walk.sample(None, "zeros")) == ["sample_taken", "probe_lost"]


def test_a_lost_probe_is_found_by_a_reading_that_is_believed_and_lost_again() -> None:
    walk = Walk()
    for _ in range(2):
        walk.sample(21.0)
        for _ in range(6):
            walk.sample(None, "gone")
        assert walk.state.probe == "lost"
        assert kinds(walk.sample(21.0)) == ["sample_taken"]
        assert walk.state.probe == "lost"
        assert kinds(walk.sample(21.0)) == ["sample_taken", "probe_found"]
        assert (walk.state.probe, walk.state.bad_in_a_row) == ("ok", 0)


@pytest.mark.parametrize("bad", ["empty", "crc", "zeros", "garbled", "power_on", "gone", "no_answer"])
def test_what_the_reader_refused_stays_as_it_is(bad: str) -> None:
    taken = e.SampleTaken(None, bad, None, "what was read")
    assert sample_events(State(), taken, 1.0)[0] == (taken,)


@pytest.mark.fault("several-probes")
@pytest.mark.parametrize(
    ("bad", "words"),
    [
        ("gone", "No reading from the probe. Check its plug; call your teacher."),
        ("several", "Several probes are plugged in. Unplug all but one."),
        ("other_probe", "Another probe is plugged in. Plug in this bench's own."),
    ],
)
def test_a_lost_probe_is_told_with_what_to_do(bad: str, words: str) -> None:
    walk = Walk()
    walk.act("begin")
    for _ in range(3):
        walk.sample(None, bad)
    asked = instruction(walk.state)
    assert (asked.code, asked.text) == ("probe_lost", words)
