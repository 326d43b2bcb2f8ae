"""`station check` tells whether the room's broker lets this bench in, or what the station at work says of its link."""

import json
import threading
from collections.abc import Iterator
from http.server import BaseHTTPRequestHandler, HTTPServer
from pathlib import Path

import pytest

from station.command.check.link import link
from station.command.settings import LinkSettings, ServerSettings, Settings
from station.room.broker import PrivateBroker
from tests.room.class_room import broker_in


@pytest.fixture(scope="module")
def broker(tmp_path_factory: pytest.TempPathFactory) -> Iterator[PrivateBroker]:
    with broker_in(tmp_path_factory.mktemp("broker")) as broker:
        yield broker


def settings(folder: Path, broker: str, password: str, port: int = 0) -> Settings:
    (folder / "password").write_text(password)
    found = LinkSettings(broker=broker, user="bench-1", password_file=folder / "password")
    return Settings(link=found, server=ServerSettings(host="127.0.0.1", port=port))


def test_without_a_room_nothing_is_missing() -> None:
    assert link(Settings()).colour == "green"


@pytest.mark.parametrize(
    ("password", "colour", "words"),
    [("password-1", "green", "lets this bench in"), ("wrong", "amber", "does not let"), ("", "amber", "one line")],
)
def test_the_broker_is_asked(broker: PrivateBroker, tmp_path: Path, password: str, colour: str, words: str) -> None:
    found = link(settings(tmp_path, str(broker.address), password))
    assert (found.colour, words in found.text, bool(found.remedy)) == (colour, True, colour == "amber")


def test_a_broker_that_does_not_answer_is_amber(tmp_path: Path) -> None:
    found = link(settings(tmp_path, "mqtt://127.0.0.1:9", "x"))
    assert (found.colour, "does not answer" in found.text) == ("amber", True)


@pytest.mark.parametrize(("up", "colour"), [(True, "green"), (False, "amber")])
def test_a_station_at_work_says_how_its_link_is(tmp_path: Path, up: bool, colour: str) -> None:
    class Page(BaseHTTPRequestHandler):
        def do_GET(self) -> None:
            told = json.dumps({"link": {"up": up, "text": "As it says.", "waiting": 3}}).encode()
            self.send_response(200)
            self.end_headers()
            self.wfile.write(told)

        def log_message(self, *_: object) -> None: ...

    with HTTPServer(("127.0.0.1", 0), Page) as server:
        threading.Thread(target=server.handle_request, daemon=True).start()
        found = link(settings(tmp_path, "mqtt://127.0.0.1:9", "x", server.server_port))
    assert (found.colour, found.text, found.values) == (colour, "As it says.", {"up": up, "waiting": 3})
