"""The short form of the fuzzing: spoilt input of every kind gives words or is taken, never a traceback.

`python -m tests.benchmarks.bench_reliability` is the long form.
"""

from random import Random

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from tests.reliability.fuzz import DOORS

COUNTS = {"stored journals": 25, "JSON of acts": 150}


@pytest.mark.parametrize("name", DOORS)
def test_spoilt_input_is_answered_in_words(name: str) -> None:
    with DOORS[name]() as door:

        @settings(
            max_examples=COUNTS.get(name, 200), deadline=None, database=None, suppress_health_check=list(HealthCheck)
        )
        @given(st.integers(0, 2**32))
        def once(number: int) -> None:
            door(Random(number))

        once()
