"""What staff have done to the machine over the page: the real endpoints, the real helper, a folder for the card."""

from collections.abc import AsyncIterator
from dataclasses import replace
from functools import partial
from pathlib import Path

import pytest
import pytest_asyncio

from station.command.settings import load_settings
from station.kit.helper.asking import asked
from station.kit.helper.work import System
from tests.kit.helping import at_work, card_in
from tests.server.doors import GIVEN, SECRETS
from tests.server.live import Station, here, in_process


@pytest.fixture
def system(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> System:
    (tmp_path / "c").mkdir()
    return card_in(tmp_path / "c", monkeypatch)


@pytest_asyncio.fixture
async def station(tmp_path: Path, system: System) -> AsyncIterator[Station]:
    async with at_work(system) as path, in_process(tmp_path / "bench", access=here(SECRETS)) as opened:
        assert opened.watch.desk is not None
        opened.watch.desk = replace(opened.watch.desk, ask=partial(asked, at=path))
        await opened.client.post("/api/session", json=GIVEN["technician"])
        yield opened


async def test_the_network_is_shown_without_its_password_and_another_one_tried(station: Station) -> None:
    shown = await station.client.get("/api/kit/machine")
    assert shown.json()["ssid"] == "Old"
    assert (shown.json()["here"], shown.json()["country"], shown.json()["copies"]) == (True, "IE", [])
    assert "long enough" not in shown.text
    wanted = {"do": "network", "ssid": "New", "password": "long enough too", "country": "IE"}
    answer = await station.client.post("/api/kit/machine", json=wanted)
    assert answer.status_code == 200
    assert "tried for a minute" in answer.json()["told"]
    assert answer.json()["messages"], "the page says it in its own language"


async def test_a_passphrase_changes_and_travels_no_further_than_here(station: Station, system: System) -> None:
    words = "a new one for the teacher"
    answer = await station.client.post(
        "/api/kit/machine", json={"do": "settings", "teacher_passphrase": words, "name": "By the door"}
    )
    assert answer.status_code == 200, answer.text
    settings, _ = load_settings(system.boot / "station.toml")
    assert settings.bench.name == "By the door"
    assert await settings.access.secrets().right("teacher", words)
    assert words not in (system.boot / "station.toml").read_text()


@pytest.mark.parametrize(
    ("body", "status"),
    [
        ({"do": "settings", "teacher_passphrase": "short"}, 422),
        ({"do": "shell"}, 422),
        ({"do": "restart", "words": "id"}, 422),
        ({"do": "restore", "place": "card", "file": "../../etc/shadow"}, 409),
        ({"do": "restore", "place": "stick", "file": "none.backup"}, 409),
        ({"do": "update", "sha256": "0" * 8}, 409),
    ],
)
async def test_what_cannot_be_is_told(station: Station, body: dict[str, object], status: int) -> None:
    answer = await station.client.post("/api/kit/machine", json=body)
    assert answer.status_code == status
    assert answer.json()["detail"]
