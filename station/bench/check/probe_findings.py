"""All about the probe, in order; and where the reads come from when a station is at work."""

import os
import time
from pathlib import Path

from station.bench.check.beside import Beside
from station.bench.check.bus_and_probe import bus, chosen, probe, probe_guard, probe_power, probe_resolution, tree_of
from station.bench.check.finding import Finding
from station.bench.check.kit import Kit, number_in
from station.bench.check.probe_judged import POLLED, chip, conversion, noise, reads
from station.bench.check.probe_reads import Sample, read_probe
from station.bench.clock import boot_id
from station.practical.events import SampleTaken
from station.record.journal import JournalError, read_events
from station.record.opening import open_to_read, tail

FRESH_S = 10.0
"""A station's newest sample is at most this old."""


def probe_findings(kit: Kit, beside: Beside) -> list[Finding]:
    """Return the findings on bus and probe; each is left out where there is nothing to look at."""
    if kit.driver == "none":
        return [Finding("probe", "green", "no probe is wanted: temperatures are typed from a thermometer")]
    if kit.driver == "virtual":
        remedy = 'for a lesson, set driver = "one-wire" below [probe] in station.toml'
        return [Finding("probe", "amber", "the settings choose the virtual cup: no probe is read", remedy)]
    found = bus(kit)
    if found.colour == "red":
        return [found]
    probe_id = chosen(kit)
    if probe_id is None:
        return [found, probe(kit)]
    told = [each(kit, probe_id) for each in (probe_power, probe_resolution, probe_guard)]
    return [found, probe(kit), *told, *_read(kit, beside, probe_id)]


def _read(kit: Kit, beside: Beside, probe_id: str) -> list[Finding]:
    folder = tree_of(kit) / probe_id
    features, conv_time_ms = number_in(folder / "features"), number_in(folder / "conv_time")
    # Where the kernel polls, it holds the bus over the whole conversion, and a second reader only waits.
    if not beside.at_work or (features or 0) & POLLED:
        if not _may_read(folder / "w1_slave"):
            text = "the probe may not be read by this user"
            return [Finding("probe_reads", "unknown", text, "check again with sudo"), chip(probe_id, [])]
        samples, source = read_probe(kit, folder / "w1_slave"), ""
    else:
        samples, source = samples_of_the_station(kit, beside), " by the station at work"
    if not samples:
        text = "the station at work has no samples to be seen from here, and a second reader would spoil its readings"
        return [Finding("probe_reads", "unknown", text, "stop the station, then check again"), chip(probe_id, [])]
    told = [reads(samples, source), noise(samples), conversion(samples, features, conv_time_ms)]
    return [*told, chip(probe_id, samples)]


def _may_read(w1_slave: Path) -> bool:
    """Whether we may; the station's udev rule lets nobody else read."""
    return os.access(w1_slave, os.R_OK) or not w1_slave.exists()


def samples_of_the_station(kit: Kit, beside: Beside) -> list[Sample]:
    """Return the newest samples of a station at work; none when they cannot be read or are old."""
    if beside.record_pid is None:
        return []
    try:
        newest = list(read_events(kit.folder, max(_last_seq(kit.folder) - 4 * kit.reads, 0), [SampleTaken.kind]))
    except JournalError:
        return []
    if not newest or newest[-1].boot != boot_id() or time.monotonic() - newest[-1].monotonic_s > FRESH_S:
        return []
    events = (each.event for each in newest[-kit.reads :])
    return [Sample(event.temperature_c, event.bad) for event in events if isinstance(event, SampleTaken)]


def _last_seq(folder: Path) -> int:
    connection = open_to_read(folder)
    try:
        return tail(connection)[0]
    finally:
        connection.close()
