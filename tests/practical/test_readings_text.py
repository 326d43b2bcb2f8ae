"""Readings from a text: one parser for files and for what a page sends, and portions that find their like."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from station.practical.dataset import mean_rows
from station.practical.readings_text import CellError, readings_from_text

HEADER = "repeat,volume_cm3,temperature_c\r\n"


def text(*repeats: dict[float, float]) -> str:
    rows = [
        f"{number},{volume:g},{temperature:g}\r\n"
        for number, each in enumerate(repeats, 1)
        for volume, temperature in each.items()
    ]
    return HEADER + "".join(rows)


def test_readings_are_numbered_from_the_start_in_the_cup() -> None:
    (one, two) = readings_from_text(text({0: 20.0, 4: 21.5, 8: 22.75}, {0: 20.25, 4: 21.75, 8: 23}))
    assert [(row.portion, row.volume_cm3, row.temperature_c) for row in one.readings] == [
        (0, 0.0, 20.0),
        (1, 4.0, 21.5),
        (2, 8.0, 22.75),
    ]
    assert (two.repeat, two.ended, two.samples, two.pours) == (2, True, (), ())


def test_a_missing_reading_never_shifts_the_portions_after_it() -> None:
    """Each repeat lacks another reading: their mean still pairs equal volumes."""
    one, two = readings_from_text(
        text({0: 20, 4: 21, 12: 23, 16: 24, 20: 25}, {0: 20.5, 4: 21.5, 8: 22.5, 12: 23.5, 20: 25.5})
    )
    assert [row.portion for row in one.readings] == [0, 1, 3, 4, 5]
    assert [row.portion for row in two.readings] == [0, 1, 2, 3, 5]
    assert [(row.portion, row.volume_cm3, row.temperature_c) for row in mean_rows([one, two])] == [
        (0, 0.0, 20.25),
        (1, 4.0, 21.25),
        (2, 8.0, 22.5),
        (3, 12.0, 23.25),
        (4, 16.0, 24.0),
        (5, 20.0, 25.25),
    ]


def test_small_errors_of_portions_do_not_add_up() -> None:
    drifting = {round(4.3 * portion, 2): 20.0 + portion for portion in range(11)}
    exact = {4.0 * portion: 20.0 + portion for portion in range(11)}
    one, two = readings_from_text(text(drifting, exact))
    assert [row.portion for row in one.readings] == [row.portion for row in two.readings] == list(range(11))


def test_steps_of_unequal_size_are_still_counted_one_by_one() -> None:
    (one,) = readings_from_text(text(dict.fromkeys((0, 5, 10, 15, 20, 22, 23, 24, 25, 30), 20.0)))
    assert [row.portion for row in one.readings] == list(range(10))


@pytest.mark.parametrize(
    ("given_text", "says"),
    [
        ("", "line 1, column repeat: the file is empty; it needs the header repeat,volume_cm3,temperature_c"),
        ("repeat,time_s,temperature_c,portion_cm3\n1,0,20,\n", "line 1, column time_s: this is a record of samples"),
        (
            "repeat;volume_cm3\n1;4\n",
            "line 1, column temperature_c: missing; the header is repeat,volume_cm3,temperature_c",
        ),
        (HEADER + "1,0,20\n1,4,\n", "line 3, column temperature_c: is empty: type"),
        (HEADER + "1,0,20\n1,4,1e9\n", "line 3, column temperature_c: 1e9 is not between -55 and 125"),
        (HEADER + "1,0,20\n1,4\n", "line 3, column temperature_c: 2 cells under a header of 3"),
        (HEADER + "\n", "line 2, column repeat: no rows"),
        (HEADER + '1,0,"20', "line 2, column repeat: not a CSV row"),
    ],
)
def test_a_mistake_is_one_line_with_line_and_column(given_text: str, says: str) -> None:
    with pytest.raises(ValueError, match=says.replace("(", r"\(").replace(")", r"\)")) as caught:
        readings_from_text(given_text)
    assert "\n" not in str(caught.value)


cells = st.one_of(st.floats().map(str), st.integers(-2, 70).map(str), st.sampled_from(["", "x", '"', "5e-324", "4.0"]))


@given(st.one_of(st.text(max_size=80), st.lists(st.lists(cells, max_size=4), max_size=8).map(
    lambda rows: HEADER + "\n".join(",".join(row) for row in rows)
)))  # fmt: skip
def test_any_text_is_repeats_or_an_error_with_its_line(given_text: str) -> None:
    try:
        repeats = readings_from_text(given_text)
    except CellError as error:
        assert str(error).startswith("line ")
    else:
        for each in repeats:
            portions = [row.portion for row in each.readings]
            assert portions == sorted(set(portions))
