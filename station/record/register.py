"""What of a record is about probes and cups, not about a class: it outlasts a wipe."""

from functools import reduce
from pathlib import Path

from station.practical import events as e
from station.practical.probes import LASTING, Probes, fold_probes, tally_events
from station.record.journal import Journal, JournalError, Moment, read_events

KEPT = tuple(kind for kind in LASTING if kind != e.StationStarted.kind)


def register_of(folder: Path) -> list[tuple[Moment, e.Event]]:
    """Return the events of the probe register with their moments; none when nothing was checked or it is unreadable."""
    try:
        happened = list(read_events(folder, kinds=KEPT))
        if not any(isinstance(each.event, e.ProbeChecked | e.CupTested) for each in happened):
            return []
        tallied = _newest_tally(happened)
        before = (each for each in read_events(folder, kinds=LASTING) if each.seq <= tallied)
        at_work = reduce(fold_probes, before, Probes()).probe_id
        probes = reduce(fold_probes, read_events(folder, after=tallied), Probes(at_work))
    except JournalError:
        return []
    kept = [(Moment(each.boot, each.monotonic_s, each.time_s, each.wall, each.clock), each.event) for each in happened]
    return [*kept, *((kept[-1][0], tally) for tally in tally_events(probes))]


def keep_register(folder: Path, kept: list[tuple[Moment, e.Event]]) -> None:
    """Begin a record with these events alone. Raises JournalError."""
    journal = Journal(folder)
    try:
        journal.append(kept).result()
    finally:
        journal.close()


def _newest_tally(happened: list[e.Stamped]) -> int:
    """The samples after the newest tally have not been counted yet."""
    return max((each.seq for each in happened if isinstance(each.event, e.ProbeTallied)), default=0)
