"""A one-wire tree written by hand, the reader on it, and time that moves only when told."""

from collections.abc import Iterator
from pathlib import Path

import pytest

from station.bench.clock import Clock
from station.bench.probes import one_wire
from station.bench.probes.one_wire import OneWireReader
from tests.bench.one_wire_rig import PROBE, Hand, Opened, PlainTree


@pytest.fixture
def tree(tmp_path: Path) -> PlainTree:
    return PlainTree(tmp_path / "devices")


@pytest.fixture
def hand(monkeypatch: pytest.MonkeyPatch) -> Hand:
    hand = Hand()
    monkeypatch.setattr(one_wire, "time", hand)
    return hand


@pytest.fixture
def opened(tree: PlainTree) -> Iterator[Opened]:
    """Opens readers of the tree at bench time = monotonic time, and closes them at the end."""
    readers: list[OneWireReader] = []

    def open_reader(probe_id: str | None = PROBE, speed: float = 1.0, **others: object) -> OneWireReader:
        clock = Clock(0.0, speed=speed)
        readers.append(OneWireReader(clock, tree.folder, probe_id, **others))  # type: ignore[arg-type]
        return readers[-1]

    yield open_reader
    for reader in readers:
        reader.close()
