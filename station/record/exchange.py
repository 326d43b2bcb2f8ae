"""Files that leave the record: CSV as RFC 4180 with a dot, units in the headers."""

import csv
import io
from pathlib import Path

from station.practical.events import PlanChosen
from station.practical.fold import fold_all
from station.practical.state import Repeat
from station.record.journal import read_events

RECORD_HEADER = ("repeat", "time_s", "temperature_c", "portion_cm3")
READINGS_HEADER = ("repeat", "volume_cm3", "temperature_c")


def record_csv(folder: Path) -> str:
    """Return the samples of the newest practical: a sample row has a temperature, a portion row a volume.

    Times start afresh in each repeat. Bad samples have neither and are left out; so is a repeat that was set
    aside and a portion that was taken back. Raises JournalError when there is no record.
    """
    chosen = [each.seq for each in read_events(folder, kinds=(PlanChosen.kind,))]
    state = fold_all(read_events(folder, after=chosen[-1] - 1 if chosen else 0))
    out = io.StringIO()
    writer = csv.writer(out)
    writer.writerow(RECORD_HEADER)
    for repeat in state.counted:
        writer.writerows(_rows(repeat))
    return out.getvalue()


def _rows(repeat: Repeat) -> list[tuple[str, str, str, str]]:
    rows = [
        (sample.time_s - repeat.begun_s, f"{sample.temperature_c:.4f}", "")
        for sample in repeat.samples
        if sample.temperature_c is not None and sample.time_s >= repeat.begun_s
    ]
    rows += [(each.time_s - repeat.begun_s, "", f"{each.volume_cm3:g}") for each in repeat.portions]
    rows.sort(key=lambda row: row[0])
    return [(str(repeat.repeat), f"{time_s:.3f}", celsius, volume) for time_s, celsius, volume in rows]
