"""A practical that is over, for the pages that come after it: 10 portions, 3 repeats, a corrected volume, a doubt."""

from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from tests.page.conftest import Station, serve_settings, work

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
def finished(folder: Path, *, speed: float = 50.0) -> Iterator[Station]:
    """Yield a station whose practical is over, and whose own reading is still to come."""
    station = Station("serve", "--config", str(serve_settings(folder, "127.0.0.1", speed=speed, plan=PLAN)))
    station.start()
    try:
        station.act(act="group", label="Group 4").raise_for_status()
        station.act(act="alkali_temperature", temperature_c=ALKALI_C).raise_for_status()
        for repeat in (1, 2, 3):
            work(station, until="rinse" if repeat < 3 else "done", repeat=repeat)
        station.act(act="portion_volume", repeat=1, portion=10, volume_cm3=4.5).raise_for_status()
        station.act(act="portion_unsure", repeat=2, portion=3, reason="spilled").raise_for_status()
        station.act(act="note", text=NOTE, repeat=2, portion=3).raise_for_status()
        yield station
    finally:
        station.stop()
