"""One Mosquitto for a module's tests."""

from collections.abc import Iterator

import pytest

from station.room import collector
from station.room.broker import PrivateBroker
from station.room.link import link
from tests.room.class_room import broker_in


@pytest.fixture(scope="module")
def broker(tmp_path_factory: pytest.TempPathFactory) -> Iterator[PrivateBroker]:
    with broker_in(tmp_path_factory.mktemp("broker")) as broker:
        yield broker


@pytest.fixture(autouse=True)
def impatient(monkeypatch: pytest.MonkeyPatch) -> None:
    """Nobody in a test waits as long as in a school."""
    monkeypatch.setattr(link, "RECONNECT_S", (0.05, 0.3))
    monkeypatch.setattr(link, "ANSWER_WITHIN_S", (0.5, 1.0))
    monkeypatch.setattr(link, "SAMPLES_S", 0.1)
    monkeypatch.setattr(link, "PACE_S", 0.01)
    monkeypatch.setattr(collector, "RETRY_S", (0.05, 0.2))
