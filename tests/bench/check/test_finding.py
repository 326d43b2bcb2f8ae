"""Colours, the worst of them, and their form for scripts and lamps."""

import json
from dataclasses import asdict
from itertools import product
from typing import get_args

import pytest

from station.bench.check.finding import EXIT_STATUS, Colour, Finding, as_json, panel_signal, status_of
from station.bench.check.run import _tried
from station.bench.panel.signals import PATTERNS, Lamps
from station.bench.probes.scratchpad import kind_of
from station.words import in_language, join, say, understood

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
    found = [
        Finding("bus", "green", "there"),
        Finding("probe", "amber", say("check-probe-ghosts", count=2), "another", {"sd_c": 0.1}),
    ]
    ghosts = "no probe, but 2 ghosts (00-…): the data wire is not connected"
    assert json.loads(json.dumps(as_json(found))) == {
        "status": "amber",
        "findings": [
            {"name": "bus", "colour": "green", "text": "there", "remedy": "", "values": {}},
            {"name": "probe", "colour": "amber", "text": ghosts, "remedy": "another", "values": {"sd_c": 0.1}},
        ],
        "messages": {ghosts: {"id": "check-probe-ghosts", "values": {"count": 2}}},
    }


def test_the_json_form_can_be_said_in_german_by_who_reads_it() -> None:
    against = kind_of("28-0316a2795fee", [])
    found = Finding(
        "probe_kind", "green", say("check-kind-copy", reasons=join(against.against)), values=asdict(against)
    )
    (read,) = understood(json.loads(json.dumps(as_json([found]))))["findings"]
    assert read["text"] == found.text
    assert "nicht das Muster des Herstellers" in in_language(read["text"], "de")
    assert "nicht das Muster des Herstellers" in in_language(read["values"]["against"][0], "de")


def test_a_check_that_fails_itself_is_a_finding_of_its_own() -> None:
    def fails() -> Finding:
        raise RuntimeError("spilt tea")

    (found,) = _tried("tea", fails)
    assert (found.name, found.colour) == ("tea", "amber")
    assert "RuntimeError: spilt tea" in found.text
