"""A practical that is over, for the pages that come after it: 10 portions, 3 repeats, a corrected volume, a doubt."""

import shutil
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from tests.page.conftest import Station, once_a_run, serve_settings, work

PLAN = """
title = "How strong is the nitric acid?"
repeats = 3
results = "after own reading"
[acid]
name = "nitric acid"
volume_cm3 = 25.0
[alkali]
name = "potassium hydroxide"
concentration_mol_dm3 = 0.400
[portions]
volume_cm3 = 4.0
count = 10
"""
ALKALI_C, ALKALI_U_C = 21.0, 0.29
NOTE = "=2+3 the lid was off for a moment"


@contextmanager
def finished(folder: Path) -> Iterator[Station]:
    """Yield a station whose practical is over, and whose own reading is still to come.

    The practical is worked through once for all tests of a run; each station goes on from a copy of its record.
    """
    kept = once_a_run(folder, "finished", _worked_through)
    shutil.copytree(kept / "record", folder / "record")
    with _serving(folder, speed=1.0) as station:
        yield station


def _worked_through(folder: Path) -> None:
    with _serving(folder, speed=100.0) as station:
        station.act(act="group", label="Group 4").raise_for_status()
        station.act(act="alkali_temperature", temperature_c=ALKALI_C).raise_for_status()
        for repeat in (1, 2, 3):
            work(station, until="rinse" if repeat < 3 else "done", repeat=repeat)
        station.act(act="portion_volume", repeat=1, portion=10, volume_cm3=4.5).raise_for_status()
        station.act(act="portion_unsure", repeat=2, portion=3, reason="spilled").raise_for_status()
        station.act(act="note", text=NOTE, repeat=2, portion=3).raise_for_status()


@contextmanager
def _serving(folder: Path, *, speed: float) -> Iterator[Station]:
    station = Station("serve", "--config", str(serve_settings(folder, "127.0.0.1", speed=speed, plan=PLAN)))
    station.start()
    try:
        yield station
    finally:
        station.stop()
