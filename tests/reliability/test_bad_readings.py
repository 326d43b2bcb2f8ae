"""A probe that fails nearly every third time costs samples, not the practical and not its answer."""

import pytest

from tests.reliability.bad_readings import AT_RANDOM, practical


@pytest.mark.fault("third-of-reads-fail")
def test_a_practical_with_a_third_of_its_reads_bad_ends_and_its_interval_holds() -> None:
    """At random; in bursts: bench_reliability."""
    done = practical(AT_RANDOM, seed=3, repeats=1)
    (repeat,) = done.state.repeats
    assert repeat.status == "ended"
    assert 0.2 < done.bad < 0.35
    kinds = {each.bad for each in repeat.samples if each.temperature_c is None}
    assert None not in kinds
    assert len(kinds) > 5
    good_c = [each.temperature_c for each in repeat.samples if each.temperature_c is not None]
    assert max(good_c) - min(good_c) < 9.0, "no fault of a read became a temperature"
    assert done.holds
