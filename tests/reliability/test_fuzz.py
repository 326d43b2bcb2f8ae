"""The short form of the fuzzing: spoilt input of every kind gives words or is taken, never a traceback.

`python -m tests.benchmarks.bench_reliability` is the long form.
"""

from pathlib import Path
from random import Random

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from tests.reliability.fuzz import DOORS
from tests.reliability.spoilt import TARGETS, answers

COUNTS = {"stored journals": 25, "JSON of acts": 150}


@pytest.mark.fault("damaged-record", "spoilt-files")
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


@pytest.mark.fault("spoilt-files")
@pytest.mark.parametrize("name", TARGETS)
async def test_spoilt_requests_are_answered_and_leave_nothing_in_the_log(name: str, tmp_path: Path) -> None:
    async with TARGETS[name](tmp_path) as target:
        found = await answers(target, 250)
    assert found.failures == []
    assert found.statuses[200] > 20, "some were right"
    assert found.log == ""
