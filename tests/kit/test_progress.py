"""The page of a card that installs itself: the real server in a process of its own, as the card starts it."""

import json
import socket
import subprocess
import sys
import time
import urllib.error
import urllib.request
from collections.abc import Iterator
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from station.command.settings import ServerSettings
from station.kit.card import card_files, progress_words
from station.kit.on_card.progress import PORT, State, language_of, page, port_of, state_of
from station.kit.sheets import new_secrets
from station.kit.table import kits_from
from tests.conftest import PATIENCE_S, free_port
from tests.kit.cards import card_in, run_script

KITS = kits_from('language = "de"\n[[kit]]\nnumber = 1\n[[kit]]\nnumber = 2\nroom = true\n', "kits.toml")


@pytest.fixture
def card(tmp_path: Path) -> Path:
    """The folder `benchwarm` of a bench's card, as `station kit` fills it."""
    for name, text in card_files(KITS, KITS.kit[0], new_secrets(), None).items():
        (tmp_path / name).parent.mkdir(parents=True, exist_ok=True)
        (tmp_path / name).write_text(text)
    return tmp_path / "benchwarm"


@pytest.fixture
def address(card: Path) -> Iterator[str]:
    port = free_port()
    command = [sys.executable, "-I", str(card / "progress.py"), str(card), str(port)]
    with subprocess.Popen(command) as server:
        try:
            until_s = time.monotonic() + PATIENCE_S
            while not answers(port):
                assert time.monotonic() < until_s
                time.sleep(0.02)
            yield f"http://127.0.0.1:{port}"
        finally:
            server.terminate()
            server.wait(PATIENCE_S)


def answers(port: int) -> bool:
    with socket.socket() as probe:
        return probe.connect_ex(("127.0.0.1", port)) == 0


def asked(url: str, language: str = "en") -> tuple[str, dict[str, str]]:
    with pytest.raises(urllib.error.HTTPError) as answer:
        urllib.request.urlopen(urllib.request.Request(url, headers={"Accept-Language": language}), timeout=PATIENCE_S)
    assert answer.value.code == 503, "no browser keeps it, no program takes it for the station"
    return answer.value.read().decode(), dict(answer.value.headers)


def test_it_follows_the_installation_in_the_readers_language(card: Path, address: str) -> None:
    assert "The installation begins soon." in asked(address)[0]
    (card / "result.txt").write_text("first start of bench-1\nstep 1 of 5: …\nstep 3 of 5: station, some minutes\n")
    text, first = asked(f"{address}/anything")
    assert "Installing, step 3 of 5: the station itself" in text
    assert "Installation, Schritt 3 von 5: die Station selbst" in asked(address, "de-CH,en;q=0.5")[0]
    assert "Installation, étape 3 sur 5" in asked(address, "fr")[0]
    assert "Schritt 3 von 5" in asked(address, "pt")[0], "else the kit's own language"
    assert asked(address)[1]["ETag"] == first["ETag"], "nothing new: a browser loads nothing anew"
    (card / "result.txt").write_text("step 5 of 5: services\ndone\n")
    text, then = asked(address)
    assert "Installed." in text
    assert then["ETag"] != first["ETag"]


def test_what_failed_is_told_and_is_no_markup(card: Path, address: str) -> None:
    (card / "result.txt").write_text(
        "step 2 of 5: wheels\nFAILED: <b>pip</b> is missing\nit is tried again at the next start\n"
    )
    text, _ = asked(address)
    assert "The installation failed." in text
    assert "FAILED: &lt;b&gt;pip&lt;/b&gt; is missing" in text


def test_a_program_learns_that_nothing_is_there_yet(address: str) -> None:
    text, headers = asked(f"{address}/api/state")
    assert json.loads(text)["status"] == 503
    assert headers["Content-Type"] == "application/problem+json"


def test_the_steps_are_those_of_the_script(made: Path, tmp_path: Path) -> None:
    """What install.sh writes is what the page reads, step by step, to the end."""
    boot, environment = card_in(tmp_path / "card", made / "bench-1")
    done = run_script(boot, environment)
    lines = done.stdout.splitlines()
    seen = [state_of("\n".join(lines[: n + 1])).key for n in range(len(lines))]
    assert list(dict.fromkeys(seen)) == ["waits", "1", "2", "3", "4", "5", "done"]
    words = progress_words(KITS, room=False)
    assert next(iter(words)) == "de"
    assert all(key in each for key in [*seen, "failed", "failed-mend"] for each in words.values())
    assert progress_words(KITS, room=True)["en"]["4"] != words["en"]["4"]


def test_it_is_where_the_station_will_be(tmp_path: Path) -> None:
    assert port_of(tmp_path) == PORT == ServerSettings().port
    (tmp_path / "room.toml").write_text("[server]\nport = 8123\n")
    assert port_of(tmp_path) == 8123
    (tmp_path / "station.toml").write_text("[server\n")
    assert port_of(tmp_path) == 8123, "a spoilt file is no reason to be nowhere"


@given(st.text(), st.text())
def test_any_result_and_any_wish_gives_a_page(result: str, accepted: str) -> None:
    state = state_of(result)
    language = language_of(accepted, {"en": {}, "de": {}}, "de")
    assert language in ("en", "de")
    assert b"<script>" in page(state, {}, language, "bench-1")[0]


def test_without_a_result_it_waits() -> None:
    assert state_of("") == State("waits")
