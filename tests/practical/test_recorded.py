"""Reasons from the record are the station's own messages again; what a person typed stays as it is."""

import json

import pytest

from station.practical import events as e
from station.practical.checks.register import Check, CheckStep
from station.practical.checks.run import check_view
from station.practical.fold import fold_all
from station.practical.recorded import SAYS, recorded
from station.practical.state import Repeat
from station.words import Message, in_language, say
from tests.practical.walk import Walk


def again(walk: Walk) -> Repeat:
    """The newest repeat as a restart reads it from the record."""
    stored = []
    for each in walk.happened:
        body = json.loads(json.dumps(each.event.to_body()))
        stored.append(e.Stamped(each.seq, "boot", 0.0, each.time_s, "", "none", e.from_body(each.event.kind, body)))
    return fold_all(stored).repeats[-1]


def test_a_reading_that_was_not_waited_for_has_its_reason_in_every_language_after_a_restart() -> None:
    walk = Walk()
    walk.to_pour()
    walk.act("portion_added", portion=1)
    walk.sample(21.0)
    walk.act("portion_added", portion=2)
    [early] = [each for each in again(walk).readings if not each.settled]
    assert early.reason == "read before it had settled"
    assert in_language(early.reason, "de") == in_language(say("reason-not-settled"), "de") != early.reason
    assert early == next(each for each in walk.state.repeats[-1].readings if not each.settled)


def test_reasons_that_the_page_offers_are_known_and_others_are_the_persons_own() -> None:
    for reason, german in (("lid off", "Deckel ab"), ("the bell rang", "the bell rang")):
        walk = Walk()
        walk.to_pour()
        walk.act("repeat_restarted", reason=reason)
        told = again(walk).reason
        assert told == reason
        assert in_language(told, "de") == german


@pytest.mark.parametrize("of", SAYS)
def test_each_reason_is_found_by_what_a_record_holds(of: str) -> None:
    found = recorded(str.__str__(say(of)))
    assert isinstance(found, Message)
    assert found.id == of


def test_why_a_dip_was_refused_is_said_with_its_values() -> None:
    refused = CheckStep("dip_refused", {"why": "Water and air are too near each other: 10 °C apart at least."}, 9.0)
    view = check_view(Check("dip", None, {}, 0.0, "teacher", (refused,)), 10.0)
    assert isinstance(view["missing"], Message)
    assert view["missing"].id == "dip-too-near"
    assert view["missing"].values == {"least_c": "10"}
