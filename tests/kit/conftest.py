"""Cards that were made from a table, once for each file of tests."""

from importlib.metadata import distribution
from pathlib import Path

import pytest

from station.kit.card import Given, make_kits
from station.kit.offer import repacked, write_sums
from station.kit.table import kits_from
from tests.kit.cards import TABLE


@pytest.fixture(scope="module")
def house(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The wheels of an earlier run; of what the station needs only pip is in it, the rest is installed here."""
    folder = tmp_path_factory.mktemp("wheels")
    repacked(distribution("pip"), folder)
    write_sums(folder)
    return folder


@pytest.fixture(scope="module")
def made(house: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    out = tmp_path_factory.mktemp("kits") / "cards"
    result = make_kits(kits_from(TABLE, "kits.toml"), out, out, Given(wheelhouse=house))
    assert [card.name for card in result.cards] == ["bench-1", "bench-2", "room"]
    assert "lgpio" in " ".join(result.amber)
    return out
