"""The settle detector on simple cups; how well it reads on real ones is printed by
tests/benchmarks/bench_settle.py."""

from __future__ import annotations

from dataclasses import dataclass
from math import exp

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from station.analysis.settle.detector import LIMIT_S, MOST, Outcome, Pace, Verdict, judge, judge_start
from station.analysis.settle.lags import STEEL_TUBE, STEP_C, CupHabits, ProbeLags, Sample, learn

LAGS = ProbeLags(4.5, 15.0, 0.6)


@dataclass(frozen=True)
class Cup:
    """A cup at 21 °C that changes at `pour_s` and drifts from then on, seen through `lags`; the press is at 0 s."""

    change_c: float = 1.2
    drift_c_s: float = -0.004
    pour_s: float = -1.0
    lags: ProbeLags = LAGS

    def true_c(self, time_s: float) -> float:
        ago = time_s - self.pour_s
        return 21.0 if ago <= 0.0 else 21.0 + self.change_c + self.drift_c_s * ago

    def probe_c(self, time_s: float) -> float:
        ago = time_s - self.pour_s
        if ago <= 0.0:
            return 21.0
        lags = self.lags
        ramp_s = sum(
            share * (ago - lag_s * (1.0 - exp(-ago / lag_s)))
            for share, lag_s in ((lags.fast_share, lags.fast_s), (1.0 - lags.fast_share, lags.slow_s))
        )
        return 21.0 + self.change_c * (1.0 - lags.left(ago)) + self.drift_c_s * ramp_s

    def samples(self, until_s: int = 121) -> list[Sample]:
        return [(float(t), round(self.probe_c(float(t)) * 16) / 16) for t in range(-10, until_s)]


CUPS = st.builds(
    Cup,
    change_c=st.sampled_from([-1.0, 1.0]).flatmap(lambda sign: st.floats(0.3, 2.5).map(lambda size: sign * size)),
    drift_c_s=st.floats(-0.01, 0.002),
    pour_s=st.floats(-8.0, 5.0),
    lags=st.builds(ProbeLags, st.floats(3.0, 7.0), st.floats(8.0, 22.0), st.floats(0.45, 0.9)),
)


def first(
    samples: list[Sample], lags: ProbeLags = STEEL_TUBE, expected_c: float | None = None, pace: Pace = "graph"
) -> tuple[float, Verdict]:
    for now in range(1, 122):
        verdict = judge(
            samples,
            since_s=0.0,
            now_s=float(now),
            before_c=21.0,
            expected_change_c=expected_c,
            lags=lags,
            pace=pace,
        )
        if verdict.ready:
            return float(now), verdict
    raise AssertionError("no verdict by the limit")


def test_fires_on_a_cooling_cup_within_one_step() -> None:
    cup = Cup()
    now, verdict = first(cup.samples(), LAGS)
    assert verdict.reason == "settled"
    assert now < 60.0
    assert verdict.temperature_c is not None
    assert abs(verdict.temperature_c - cup.true_c(now)) <= STEP_C


def test_fires_on_a_cup_that_cools_at_a_tenth_of_its_warmth_a_minute() -> None:
    # An open cup 6.5 °C above the room loses 0.7 °C/min: its slope is never zero.
    cup = Cup(drift_c_s=-0.7 / 60.0)
    now, verdict = first(cup.samples(), LAGS)
    assert now < 60.0
    assert verdict.reason == "settled"


@settings(max_examples=25, deadline=None)
@given(cup=CUPS)
def test_never_fires_during_a_rise_or_a_fall(cup: Cup) -> None:
    now, verdict = first(cup.samples(), expected_c=cup.change_c)
    if verdict.outcome is not Outcome.TIME_UP:
        assert abs(cup.change_c) * cup.lags.left(now - cup.pour_s) <= 3.0 * STEP_C


@pytest.mark.fault("repeated-value")
@settings(max_examples=40, deadline=None)
@given(cup=CUPS, at_s=st.integers(3, 40), run_s=st.integers(2, 18))
def test_a_run_of_stale_values_is_not_taken_for_rest(cup: Cup, at_s: int, run_s: int) -> None:
    samples = cup.samples()
    stale = [(t, samples[at_s + 10][1] if at_s <= t <= at_s + run_s else c) for t, c in samples]
    now, verdict = first(stale, expected_c=cup.change_c)
    if verdict.outcome is not Outcome.TIME_UP and at_s <= now <= at_s + run_s:
        # Whatever was given again and again, the probe shows nearly the same and has nearly nothing to go.
        given_c = samples[at_s + 10][1]
        assert given_c is not None
        assert abs(given_c - cup.probe_c(now)) <= 3.0 * STEP_C
        assert abs(cup.change_c) * cup.lags.left(now - cup.pour_s) <= 3.0 * STEP_C


@pytest.mark.parametrize("lags", [ProbeLags(6.0, 18.0, 0.7), ProbeLags(4.5, 12.0, 0.7)])
def test_a_value_that_stops_on_the_way_down_is_not_read(lags: ProbeLags) -> None:
    samples = Cup(change_c=-0.65, drift_c_s=-0.007, pour_s=-4.0, lags=lags).samples()
    stuck = [(t, samples[16 + 10][1] if t >= 16.0 else c) for t, c in samples[: 16 + 29]]
    for now in range(16, 35):
        verdict = judge(stuck, since_s=0.0, now_s=float(now), before_c=21.0, expected_change_c=-0.65)
        assert not verdict.ready


def test_old_values_alone_never_settle_while_a_change_is_awaited() -> None:
    now, _ = first([(float(t), 21.0) for t in range(-10, 122)], expected_c=1.2)
    assert now >= 30.0


@pytest.mark.fault("repeated-value")
def test_a_repeated_sample_is_no_new_conversion() -> None:
    samples = [row for row in Cup().samples(31) for _ in range(5)]
    once = Cup().samples(31)
    options = {"since_s": 0.0, "now_s": 30.0, "before_c": 21.0}
    assert judge(samples, **options) == judge(once, **options)  # type: ignore[arg-type]


@settings(max_examples=15, deadline=None)
@given(cup=CUPS, lost=st.sets(st.integers(0, 130), max_size=60))
def test_the_reading_is_made_of_the_last_conversions(cup: Cup, lost: set[int]) -> None:
    samples: list[Sample] = [(t, None if i in lost else c) for i, (t, c) in enumerate(cup.samples())]
    now, verdict = first(samples)
    last = [c for t, c in samples if c is not None and t <= now][-MOST:]
    assert verdict.temperature_c is not None
    assert min(last) <= verdict.temperature_c <= max(last)


@settings(max_examples=20, deadline=None)
@given(cup=CUPS, lost=st.sets(st.integers(0, 130), max_size=39))
def test_three_in_ten_missing_samples_only_cost_time(cup: Cup, lost: set[int]) -> None:
    samples: list[Sample] = [(t, None if i in lost else c) for i, (t, c) in enumerate(cup.samples())]
    now, _ = first(samples)
    assert 8.0 <= now <= LIMIT_S


def test_the_time_limit_gives_the_best_fresh_value_and_says_so() -> None:
    jumping: list[Sample] = [(float(t), 21.0 + 2.0 * (t % 7) / 7 + 0.02 * t) for t in range(-10, 122)]
    now, verdict = first(jumping)
    assert now <= LIMIT_S
    assert verdict.temperature_c is not None
    assert verdict.reason != "settled" or verdict.sure >= 0.9


@pytest.mark.parametrize("samples", [[], [(1.0, None), (2.0, None)]])
def test_without_a_reading_nothing_settles(samples: list[Sample]) -> None:
    verdict = judge(samples, since_s=0.0, now_s=130.0, before_c=21.0)
    assert not verdict.ready
    assert verdict.temperature_c is None


def test_a_probe_that_went_silent_does_not_settle() -> None:
    verdict = judge(Cup().samples(60), since_s=0.0, now_s=70.0, before_c=21.0)
    assert (verdict.ready, verdict.reason) == (False, "too few fresh readings")


def test_quick_pace_goes_on_after_its_hold() -> None:
    now, verdict = first(Cup(pour_s=-2.0).samples(), pace="quick")
    assert 20.0 <= now <= 22.0
    assert verdict.u_c is not None
    assert verdict.u_c >= 0.02


def test_the_time_left_is_foretold() -> None:
    cup = Cup()
    done, _ = first(cup.samples(), LAGS)
    verdict = judge(cup.samples(), since_s=0.0, now_s=15.0, before_c=21.0, lags=LAGS)
    assert verdict.left_s is not None
    assert abs(15.0 + verdict.left_s - done) <= 12.0


def test_a_portion_teaches_the_lags() -> None:
    slow = ProbeLags(7.0, 22.0, 0.5)
    lags, cup = STEEL_TUBE, CupHabits(rest_c=21.0)
    for change in (1.2, 1.1, 1.0, 0.9, 1.2, 1.1):
        rows = Cup(change_c=change, drift_c_s=-0.001, lags=slow).samples(80)
        lags, cup = learn(rows, since_s=0.0, until_s=79.0, before_c=21.0, lags=lags, cup=cup)
    assert all(lags.covariance[i][i] < STEEL_TUBE.covariance[i][i] for i in range(3))
    # Fast, slow, share and mixing make up for each other; what counts is the part still to come.
    assert abs(lags.left(30.0 - cup.mix_s) - slow.left(29.0)) < 0.05
    assert abs(STEEL_TUBE.left(27.5) - slow.left(29.0)) > 0.05


def evaporating(change_c: float, drift_c_s: float, until_s: int = 80) -> list[Sample]:
    """An open cup at 21 °C that drifts before its pour at 0 s as after it; the probe trails it all along."""
    shown = (
        (float(t), change_c * (1.0 - LAGS.left(float(t))) + drift_c_s * (t - LAGS.mean_s)) for t in range(-10, until_s)
    )
    return [(t, round((21.0 + c) * 16) / 16) for t, c in shown]


def test_a_cup_that_evaporates_is_read_where_the_probe_crosses_it() -> None:
    # Late on the drift line the probe trails by 0.013 °C/s times 8.7 s: nearly two steps.
    known = CupHabits(rest_c=21.0, pull_c_s=-0.013, u_pull_c_s=0.001)
    taught = ProbeLags(4.5, 15.0, 0.6, ((0.003, 0.0, 0.0), (0.0, 0.003, 0.0), (0.0, 0.0, 0.001)))
    rows = evaporating(1.2, -0.013)
    verdicts = (
        (float(now), judge(rows, since_s=0.0, now_s=float(now), before_c=21.0, lags=taught, cup=known))
        for now in range(1, 79)
    )
    now, verdict = next(row for row in verdicts if row[1].ready)
    assert verdict.temperature_c is not None
    assert abs(verdict.temperature_c - (21.0 + 1.2 - 0.013 * now)) <= STEP_C
    assert now < 40.0


def test_portions_teach_that_a_cup_evaporates() -> None:
    lags, cup = LAGS, CupHabits(rest_c=21.0)
    for change in (1.2, 1.1, 1.0):
        rows = evaporating(change, -0.013)
        lags, cup = learn(rows, since_s=0.0, until_s=79.0, before_c=21.0, lags=lags, cup=cup)
    assert abs(cup.drift(21.0)[0] + 0.013) < 0.003
    assert cup.u_pull_c_s < 0.5 * CupHabits().u_pull_c_s


def test_the_time_left_ends_where_the_probe_is_nearest() -> None:
    known = CupHabits(rest_c=21.0, pull_c_s=-0.02, u_pull_c_s=0.001)
    rows = evaporating(-0.5, -0.02)
    verdict = judge(rows, since_s=0.0, now_s=12.0, before_c=21.0, lags=LAGS, cup=known)
    assert verdict.left_s is not None
    assert 0.0 < verdict.left_s <= LIMIT_S - 12.0


def test_a_small_change_teaches_nothing() -> None:
    rows = Cup(change_c=0.1).samples(60)
    cup = CupHabits(rest_c=21.0)
    assert learn(rows, since_s=0.0, until_s=59.0, before_c=21.0, lags=LAGS, cup=cup) == (LAGS, cup)


def test_the_start_waits_for_its_hold_and_for_a_warm_probe() -> None:
    flat: list[Sample] = [(float(t), 21.0625) for t in range(200)]
    assert not judge_start(flat, since_s=0.0, now_s=29.0).ready
    assert judge_start(flat, since_s=0.0, now_s=31.0).temperature_c == 21.0625
    from_hand: list[Sample] = [(float(t), round((21.0 + 6.0 * LAGS.left(float(t))) * 16) / 16) for t in range(300)]
    now, verdict = next((t, v) for t in range(300) if (v := judge_start(from_hand, since_s=0.0, now_s=float(t))).ready)
    assert now > 40
    assert verdict.temperature_c is not None
    assert abs(verdict.temperature_c - 21.0) <= STEP_C


def test_a_dither_between_two_codes_is_steady() -> None:
    rows: list[Sample] = [(float(t), 21.0 + STEP_C * (t % 2)) for t in range(60)]
    assert judge_start(rows, since_s=0.0, now_s=45.0).ready


def test_lags_without_sense_are_refused() -> None:
    with pytest.raises(ValueError, match="seconds"):
        ProbeLags(10.0, 5.0, 0.5)


def test_a_start_that_is_read_because_time_is_up_has_not_settled() -> None:
    sparse: list[Sample] = [(float(t), 21.0625) for t in range(0, 310, 7)]
    drifting: list[Sample] = [(float(t), 21.0 + t / 60.0) for t in range(310)]
    for rows in (sparse, drifting):
        assert judge_start(rows, since_s=0.0, now_s=299.0).outcome is Outcome.WAIT
        verdict = judge_start(rows, since_s=0.0, now_s=301.0)
        assert (verdict.outcome, verdict.ready) == (Outcome.TIME_UP, True)
