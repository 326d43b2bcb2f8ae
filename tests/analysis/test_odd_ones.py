"""A reading that was misread: the published rule, the deletion by the hat matrix, and what is and is not named."""

import math
import random

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.stats import norm, t

from station.analysis.lines.fit import fit_line
from station.analysis.odd_ones import Contents, _Design, normal_deviate, odd_ones, studentised

VOLUMES = [5.0 * k for k in range(11)]
CUP = Contents(4.1 * 25.0 + 5.0, added_c=20.0, room_c=20.0, u_portion_cm3=0.02)


def cup(end_point_cm3: float, seed: int = 0, division_c: float = 0.1) -> list[float]:
    """Readings of a cup with no loss, 56 J/cm³ until the end-point, read by eye to whole divisions."""
    draw, found = random.Random(seed), []
    for volume in VOLUMES:
        true_c = 20.0 + 56.0 * min(volume, end_point_cm3) / (4.1 * (25.0 + volume) + 5.0)
        found.append(round((true_c + draw.gauss(0.0, 0.3 * division_c)) / division_c) * division_c)
    return found


def test_the_statistic_is_that_of_forbes_boiling_points() -> None:
    # J. D. Forbes, Trans. R. Soc. Edinburgh 21, 135 (1857); S. Weisberg, Applied Linear Regression, takes 100·log10 of
    # the pressure (inch of mercury) against the boiling point (°F) and finds case 12 with t = 12.4 on 14 degrees of
    # freedom (data and figure from memory).
    bp = [194.5, 194.3, 197.9, 198.4, 199.4, 199.9, 200.9, 201.1, 201.4]
    bp += [201.3, 203.6, 204.6, 209.5, 208.6, 210.7, 211.9, 212.2]
    inches = [20.79, 20.79, 22.40, 22.67, 23.15, 23.35, 23.89, 23.99, 24.02]
    inches += [24.01, 25.14, 26.57, 28.49, 27.76, 29.04, 29.88, 30.06]
    pressure = [100.0 * math.log10(each) for each in inches]
    whole, found = fit_line(bp, pressure).sse, []
    for case in range(len(bp)):
        others = fit_line(bp[:case] + bp[case + 1 :], pressure[:case] + pressure[case + 1 :])
        found.append(studentised(whole, others.sse, others.degrees, known=0))
    assert found[11] == pytest.approx(12.4, abs=0.05)
    assert max(found[:11] + found[12:]) < 3.0


@pytest.mark.parametrize("degrees", [8, 12, 30])
@pytest.mark.parametrize("value", [1.0, 3.0, 8.0])
def test_the_deviate_is_as_unlikely_as_students_t(degrees: int, value: float) -> None:
    assert normal_deviate(value, degrees) == pytest.approx(norm.isf(t.sf(value, degrees)), abs=0.02)


@settings(max_examples=25, deadline=None)
@given(st.floats(12.0, 38.0), st.integers(0, 10), st.floats(-8.0, 8.0))
def test_a_deletion_is_what_a_fit_without_the_reading_gives(end_point_cm3: float, index: int, off_c: float) -> None:
    readings = cup(26.0, seed=1)
    readings[index] += off_c
    design = _Design(VOLUMES, readings, CUP, 0.06)
    deleted = design.fitted(end_point_cm3).without
    rows = [
        [x / u for x in (min(v, end_point_cm3), *more)]
        for v, more, u in zip(VOLUMES, design.beside, design.u, strict=True)
    ]
    matrix, target = np.array([*rows, *design.known]), np.array(design.target)
    kept = np.arange(len(target)) != index
    answer, *_ = np.linalg.lstsq(matrix[kept], target[kept], rcond=None)
    rest = target - matrix @ answer
    assert deleted[index].chi2 == pytest.approx(float(rest[kept] @ rest[kept]), rel=1e-5, abs=1e-5)
    off = float(rest[index]) * design.u[index] / design.capacity[index]
    assert deleted[index].value == pytest.approx(off, rel=1e-4, abs=1e-5)


@pytest.mark.parametrize("index", range(11))
@pytest.mark.parametrize("off_c", [-10.0, 3.0])
def test_the_reading_that_is_off_is_named_wherever_it_stands(index: int, off_c: float) -> None:
    readings = cup(26.0)
    readings[index] += off_c
    (found,) = odd_ones(VOLUMES, readings, CUP, 0.06).odd
    assert found.index == index
    assert found.off_c == pytest.approx(off_c, abs=1.0)


def test_two_slips_are_both_named() -> None:
    readings = cup(26.0)
    readings[3] += 5.0
    readings[8] -= 2.0
    assert {each.index for each in odd_ones(VOLUMES, readings, CUP, 0.06).odd} == {3, 8}


@pytest.mark.parametrize("seed", range(20))
def test_sound_readings_are_let_alone_at_every_length(seed: int) -> None:
    readings = cup(18.0 + seed, seed)
    assert not any(odd_ones(VOLUMES[:count], readings[:count], CUP, 0.06).odd for count in range(1, 12))


def test_a_published_class_set_has_no_slip_until_one_is_put_in() -> None:
    # RSC Education, handbook of required practicals (edu.rsc.org resource 4012042), mean of two trials.
    mean_c = [20.5, 24.3, 27.2, 29.1, 31.05, 32.3, 32.3, 31.7, 30.8]
    contents = Contents(4.1 * 30.0 + 5.0)
    assert odd_ones(VOLUMES[:9], mean_c, contents, 0.1).odd == ()
    mean_c[4] = 13.05  # two digits the wrong way round
    assert [each.index for each in odd_ones(VOLUMES[:9], mean_c, contents, 0.1).odd] == [4]


def test_too_few_readings_and_level_ones_name_nothing() -> None:
    assert odd_ones(VOLUMES[:5], [20.0, 22.0, 42.0, 25.0, 26.0], CUP, 0.06).odd == ()
    assert odd_ones(VOLUMES, [20.0, 20.1] * 5 + [20.0], CUP, 0.06).odd == ()
    assert odd_ones([], [], CUP, 0.06).odd == ()
