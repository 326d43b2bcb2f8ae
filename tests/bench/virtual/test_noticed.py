"""What the live procedure asks about on a virtual cup: slips are noticed, honest cups are left in peace."""

from dataclasses import replace
from pathlib import Path

import pytest
from w1thermsensor import W1ThermSensor

from station.bench.virtual.student import BEHAVIOURS
from tests.bench.virtual.test_student import practical

Reader = type[W1ThermSensor]


async def asked(folder: Path, reader: Reader, behaviour: str, seed: int = 1) -> set[tuple[int, int, str]]:
    habits = replace(BEHAVIOURS[behaviour], owns_up=False)
    bench, _, _ = await practical(folder, reader, habits, seed=seed)
    return {(each.repeat, each.portion, each.code) for each in bench.state.asked}


@pytest.mark.parametrize("seed", [1, 2, 3])
async def test_a_careful_class_is_asked_nothing(tmp_path: Path, reader: Reader, seed: int) -> None:
    assert await asked(tmp_path, reader, "careful", seed) == set()


@pytest.mark.fault("portion-missing-or-doubled")
async def test_a_portion_pressed_and_not_poured_is_noticed(tmp_path: Path, reader: Reader) -> None:
    assert (1, 4, "no_change") in await asked(tmp_path, reader, "skips")


@pytest.mark.fault("portion-missing-or-doubled")
async def test_a_portion_poured_twice_is_noticed(tmp_path: Path, reader: Reader) -> None:
    assert (1, 3, "double") in await asked(tmp_path, reader, "doubles")
