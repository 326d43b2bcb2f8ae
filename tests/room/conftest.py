"""One Mosquitto for a module's tests."""

from collections.abc import Iterator

import pytest

from station.room.private_broker import PrivateBroker
from tests.room.class_room import broker_in


@pytest.fixture(scope="module")
def broker(tmp_path_factory: pytest.TempPathFactory) -> Iterator[PrivateBroker]:
    with broker_in(tmp_path_factory.mktemp("broker")) as broker:
        yield broker
