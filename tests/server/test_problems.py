"""Beside its English words a problem tells the message's id and values, so that a page can say it in its language."""

import json

from station.server.door.access import reply, too_soon
from station.server.problems import problem
from station.words import in_language, said, say


def test_a_message_tells_its_id_and_values() -> None:
    told = json.loads(bytes(problem(404, "no_such_repeat", say("refusal-no-repeat", repeat=7)).body))
    assert (told["detail"], told["id"], told["values"]) == ("There is no repeat 7.", "refusal-no-repeat", {"repeat": 7})


def test_messages_in_a_message_tell_theirs() -> None:
    told = json.loads(bytes(reply(too_soon("too_many_tries", say("access-too-many-tries"), 1.5)).body))
    assert told["detail"] == "Too many wrong tries here. Wait 2 s, then try again."
    assert told["values"]["why"] == {"id": "access-too-many-tries", "values": {}, "text": "Too many wrong tries here."}
    message = said({"id": told["id"], "values": told["values"], "text": told["detail"]})
    assert (
        in_language(message, "de")
        == "Hier gab es zu viele falsche Versuche. Warte 2 s und versuch es dann noch einmal."
    )


def test_a_text_that_no_catalogue_has_stays_alone() -> None:
    told = json.loads(bytes(problem(404, "refused", "Not Found").body))
    assert set(told) == {"type", "title", "status", "code", "detail", "messages"}
    assert told["messages"] == {}
