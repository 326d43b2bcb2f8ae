"""Colours, the worst of them, and their form for scripts and lamps."""

import json
from itertools import product
from typing import get_args

import pytest

from station.bench.check.finding import EXIT_STATUS, Colour, Finding, as_json, panel_signal, status_of
from station.bench.check.run import _tried
from station.bench.panel_patterns import PATTERNS, Lamps

COLOURS: tuple[Colour, ...] = get_args(Colour)


@pytest.mark.parametrize("colours", list(product(COLOURS, repeat=3)))
def test_the_worst_colour_counts_and_unknown_counts_for_nothing(colours: tuple[Colour, ...]) -> None:
    status = status_of(Finding("each", colour, "") for colour in colours)
    known = [colour for colour in ("green", "amber", "red") if colour in colours]
    assert status == (known[-1] if known else "green")


def test_each_status_has_an_exit_status_and_a_lamp_of_its_own() -> None:
    assert EXIT_STATUS == {"green": 0, "amber": 1, "red": 2}
    lamps = {status: PATTERNS[panel_signal(status)].lamp for status in EXIT_STATUS}
    assert lamps == {"green": Lamps(act=True), "amber": Lamps(wait=True), "red": Lamps(attention=True)}


def test_the_json_form() -> None:
    found = [Finding("bus", "green", "there"), Finding("probe", "amber", "noisy", "another", {"sd_c": 0.1})]
    assert json.loads(json.dumps(as_json(found))) == {
        "status": "amber",
        "findings": [
            {"name": "bus", "colour": "green", "text": "there", "remedy": "", "values": {}},
            {"name": "probe", "colour": "amber", "text": "noisy", "remedy": "another", "values": {"sd_c": 0.1}},
        ],
    }


def test_a_check_that_fails_itself_is_a_finding_of_its_own() -> None:
    def fails() -> Finding:
        raise RuntimeError("spilt tea")

    (found,) = _tried("tea", fails)
    assert (found.name, found.colour) == ("tea", "amber")
    assert "RuntimeError: spilt tea" in found.text
