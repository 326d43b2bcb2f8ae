"""All about the probe, in order; and where the reads come from when a station is at work."""

import os
import time
from collections import Counter
from collections.abc import Mapping, Sequence
from math import sqrt
from pathlib import Path
from statistics import fmean, linear_regression, median

from station.bench.check.finding import Beside, Colour, Finding, Kit, number_in, text_of
from station.bench.check.probe_reads import Sample, failures_of, read_probe
from station.bench.clock import boot_id
from station.bench.probes.one_wire import KERNEL_TREE, PROBE_ID
from station.bench.probes.scratchpad import kind_of
from station.practical.events.bench import SampleTaken
from station.record.journal import JournalError, open_to_read, read_events, tail
from station.words import Message, join, say

# Judges what was read: failures, noise, conversion time, kind of chip. Pure.


MANY_PER_100 = 5.0  # above this a probe is of no use in a lesson; our choice
NOISY_C = 0.05  # two neighbouring steps of 1/16 °C in turn give 0.031 °C; our choice
MOVING_C = 0.5  # a probe that warms or cools more than this tells nothing of its noise
SLOW_S = 0.85  # 0.75 s is the data sheet's longest at 12 bits; the kernel's polling adds up to 0.1 s
UNMEASURED_C = 25.0  # what chips of family D show after power-on (C. Petrich, see probe_kind)
POLLED = 2  # bit of `features`: the kernel asks the chip whether it has finished

_REMEDIES = {
    "power_on": say("check-reads-supply"),
    "zeros": say("check-reads-data-ground"),
    "no_answer": say("check-reads-hangs"),
    "out_of_range": say("check-reads-half-plugged"),
    "jump": say("check-reads-half-plugged"),
    "gone": say("check-reads-left-bus"),
    "several": say("check-reads-unplug-others"),
    "other_probe": say("check-reads-own-probe"),
}
_REMEDY = say("check-reads-cable")


def reads(samples: Sequence[Sample], *, by_station: bool = False) -> Finding:
    """Return how many of 100 reads fail, of our own or of the station at work."""
    failures = failures_of(samples)
    bad, count = sum(failures.values()), len(samples)
    per_100 = 100 * bad / count
    values = {"reads": count, "failed": bad, "failed_per_100": round(per_100, 1), "kinds": dict(failures)}
    if not bad:
        # With a true rate p, no failure in n has probability (1 − p)^n; below 5 % the rate is ruled out.
        unseen = 100 * (1 - 0.05 ** (1 / count))
        values["not_ruled_out_per_100"] = round(unseen, 1)
        text = say(
            "check-reads-none-failed-station" if by_station else "check-reads-none-failed",
            count=count,
            unseen=f"{unseen:.0f}",
        )
        return Finding("probe_reads", "green", text, values=values)
    kinds = ", ".join(f"{kind} {times}" for kind, times in failures.most_common())
    colour: Colour = "red" if per_100 > MANY_PER_100 else "amber"
    text = say(
        "check-reads-failed-station" if by_station else "check-reads-failed",
        failed=bad,
        count=count,
        share=f"{per_100:.0f}",
        kinds_text=kinds,
    )
    return Finding("probe_reads", colour, text, _remedy(failures), values)


def _remedy(failures: Counter[str]) -> Message:
    return _REMEDIES.get(failures.most_common(1)[0][0], _REMEDY)


def noise(samples: Sequence[Sample]) -> Finding:
    """Return the spread of the readings about their own drift, one standard deviation in °C."""
    good_c = [sample.temperature_c for sample in samples if sample.temperature_c is not None]
    if len(good_c) < 10:
        return Finding("probe_noise", "unknown", say("check-noise-too-few"), values={"reads": len(good_c)})
    if set(good_c) == {UNMEASURED_C}:
        text = say("check-noise-all-alike", temperature_c=str(UNMEASURED_C))
        values = {"sd_c": 0.0, "mean_c": UNMEASURED_C}
        return Finding("probe_noise", "amber", text, say("check-noise-hold-probe"), values)
    slope, intercept = linear_regression(range(len(good_c)), good_c)
    residuals_c = [each - (intercept + slope * index) for index, each in enumerate(good_c)]
    sd_c = sqrt(sum(each**2 for each in residuals_c) / (len(good_c) - 2))
    moved_c = abs(slope) * (len(good_c) - 1)
    values = {"sd_c": round(sd_c, 4), "mean_c": round(fmean(good_c), 3), "moved_c": round(moved_c, 3)}
    text = say("check-noise", sd_c=f"{sd_c:.3f}", mean_c=f"{values['mean_c']:.2f}")
    if sd_c < NOISY_C:
        return Finding("probe_noise", "green", text, values=values)
    if moved_c > MOVING_C:
        text = say("check-noise-changing")
        return Finding("probe_noise", "unknown", text, say("check-noise-still-water"), values)
    text = say("check-noise-much", noise=text, most_c=str(NOISY_C))
    return Finding("probe_noise", "amber", text, say("check-noise-another-probe"), values)


def conversion(samples: Sequence[Sample], features: int | None, conv_time_ms: int | None) -> Finding:
    """Return whether the reads took as long as a conversion must."""
    times_s = [sample.took_s for sample in samples if sample.took_s is not None and sample.temperature_c is not None]
    values = {
        "features": features,
        "conv_time_ms": conv_time_ms,
        "read_s": round(median(times_s), 3) if times_s else None,
    }
    if not times_s:
        return Finding("conversion_time", "unknown", say("check-conversion-not-timed"), values=values)
    took_s = median(times_s)
    seconds = f"{took_s:.2f}"
    if (features or 0) & POLLED:
        if took_s <= SLOW_S:
            return Finding("conversion_time", "green", say("check-conversion", seconds=seconds), values=values)
        return Finding("conversion_time", "amber", say("check-conversion-slow", seconds=seconds), _REMEDY, values)
    if conv_time_ms is None:
        return Finding("conversion_time", "unknown", say("check-conversion-read", seconds=seconds), values=values)
    conversion_s = f"{conv_time_ms / 1000:.2f}"
    if took_s < 0.9 * conv_time_ms / 1000:
        text = say("check-conversion-early", seconds=seconds, conversion_s=conversion_s)
        return Finding("conversion_time", "amber", text, say("check-conversion-stop-others"), values)
    return Finding("conversion_time", "green", say("check-conversion-fixed", seconds=conversion_s), values=values)


def chip(probe_id: str, samples: Sequence[Sample]) -> Finding:
    """Return what speaks for a copy, and no more than that."""
    scratchpads = [sample.nine for sample in samples if sample.nine is not None]
    kind = kind_of(probe_id, scratchpads)
    values = {"against": list(kind.against), "scratchpads": len(scratchpads), "byte_6_tests": kind.byte_6_tests}
    if not kind.against:
        if not scratchpads:
            return Finding("probe_kind", "unknown", say("check-kind-number"), values=values)
        return Finding("probe_kind", "green", say("check-kind-nothing-against"), values=values)
    reasons = join(kind.against, "list-semicolon")
    if kind.off_the_sheet:
        text = say("check-kind-off-sheet", reasons=reasons)
        return Finding("probe_kind", "amber", text, say("check-kind-expect"), values)
    return Finding("probe_kind", "green", say("check-kind-copy", reasons=reasons), say("check-kind-offset"), values)


# Bus, probe, its three wires and its resolution: what the kernel's one-wire tree tells without a conversion.
#
# The files are those of the kernel's w1_therm driver (Documentation/ABI/testing/sysfs-driver-w1_therm). Older kernels
# than 5.8 have only `w1_slave`; then power and resolution cannot be told from here.


OVERLAY = "dtoverlay=w1-gpio"
READ_CONFIG, UNREAD_CONFIG = "boot/firmware/config.txt", "boot/config.txt"

CHECKED = 1
"""Bit of `features`: a power-on value after a conversion is an error (Linux w1_therm.c, W1_THERM_CHECK_RESULT)."""


def tree_of(kit: Kit) -> Path:
    """Return the one-wire tree; the kernel's own is looked at below the kit's root."""
    return kit.at(str(kit.tree)) if kit.tree == KERNEL_TREE else kit.tree


def ids_in(tree: Path) -> list[str]:
    """Return the names in the tree, sorted; none when it is not there."""
    try:
        return sorted(entry.name for entry in tree.iterdir())
    except OSError:
        return []


def bus(kit: Kit) -> Finding:
    """Return whether there is a bus at all."""
    tree = tree_of(kit)
    names = ids_in(tree)
    masters = [name for name in names if name.startswith("w1_bus_master")]
    values = {"tree": str(tree), "masters": masters}
    if masters:
        return Finding("bus", "green", say("check-bus-master", masters_name=", ".join(masters)), values=values)
    if kit.tree != KERNEL_TREE and names:
        return Finding("bus", "green", say("check-bus-other-tree", path=str(tree)), values=values)
    missing = say("check-bus-no-master" if tree.is_dir() else "check-bus-none", path=str(tree))
    if kit.tree != KERNEL_TREE:
        remedy = say("check-bus-make-tree", path=str(tree), kernel_path=str(KERNEL_TREE))
    else:
        remedy = _overlay_remedy(kit)
    return Finding("bus", "red", missing, remedy, values)


def _overlay_remedy(kit: Kit) -> Message:
    """Say which line goes where: an overlay is often written into the file that is no longer read."""
    if _has_overlay(kit.at(READ_CONFIG)):
        return say("check-bus-restart", overlay_text=OVERLAY, file=READ_CONFIG)
    if _has_overlay(kit.at(UNREAD_CONFIG)):
        return say("check-bus-move-line", overlay_text=OVERLAY, from_file=UNREAD_CONFIG, to_file=READ_CONFIG)
    line = say("check-bus-write-line", overlay_text=OVERLAY, file=READ_CONFIG)
    if kit.at(READ_CONFIG).exists():
        return line
    return say("check-bus-on-other-machine", advice=line)


def _has_overlay(path: Path) -> bool:
    return any(line.strip().startswith(OVERLAY) for line in (text_of(path) or "").splitlines())


def probe(kit: Kit) -> Finding:
    """Return whether the one probe that the station would read is there."""
    names = ids_in(tree_of(kit))
    found = [name for name in names if PROBE_ID.fullmatch(name)]
    ghosts = [name for name in names if name.startswith("00-")]
    values = {"found": found, "chosen": chosen(kit), "ghosts": len(ghosts)}
    if kit.probe_id is not None:
        return _named_probe(kit.probe_id, found, values)
    if len(found) == 1:
        return Finding("probe", "green", say("check-probe-one", probe_name=found[0]), values=values)
    if found:
        text = say("check-probe-several", count=len(found), probes_name=", ".join(found))
        return Finding("probe", "red", text, say("check-probe-set-id", probe_name=found[0]), values)
    if ghosts:
        text = say("check-probe-ghosts", count=len(ghosts))
        return Finding("probe", "red", text, say("check-probe-pull-up"), values)
    return Finding("probe", "red", say("check-probe-none"), say("check-probe-plug-and-wires"), values)


def _named_probe(probe_id: str, found: list[str], values: Mapping[str, object]) -> Finding:
    others = [each for each in found if each != probe_id]
    others_name = ", ".join(others)
    if probe_id in found:
        text = say("check-probe-as-set", probe_name=probe_id)
        if others:
            text = say("check-probe-as-set-others", probe_name=probe_id, others_name=others_name)
        return Finding("probe", "green", text, values=values)
    if others:
        text = say("check-probe-set-not-there", probe_name=probe_id, others_name=others_name)
        return Finding("probe", "red", text, say("check-probe-plug-or-set-id", probe_name=others[0]), values)
    text = say("check-probe-set-none-there", probe_name=probe_id)
    return Finding("probe", "red", text, say("check-probe-plug-and-wires"), values)


def chosen(kit: Kit) -> str | None:
    """Return the id of the probe that the station would read, if it is there."""
    found = [name for name in ids_in(tree_of(kit)) if PROBE_ID.fullmatch(name)]
    if kit.probe_id is not None:
        return kit.probe_id if kit.probe_id in found else None
    return found[0] if len(found) == 1 else None


def probe_power(kit: Kit, probe_id: str) -> Finding:
    """Return whether the probe has its own supply wire."""
    power = number_in(tree_of(kit) / probe_id / "ext_power")
    values = {"ext_power": power}
    if power == 1:
        return Finding("probe_power", "green", say("check-supply-contact"), values=values)
    if power == 0:
        return Finding("probe_power", "red", say("check-supply-no-contact"), say("check-supply-wire"), values)
    return Finding("probe_power", "unknown", say("check-supply-unknown"), values=values)


def probe_resolution(kit: Kit, probe_id: str) -> Finding:
    """Return whether the probe reads in steps of 1/16 °C."""
    folder = tree_of(kit) / probe_id
    bits = number_in(folder / "resolution")
    values = {"resolution_bits": bits}
    if bits is None or not 9 <= bits <= 14:
        return Finding("probe_resolution", "unknown", say("check-resolution-unknown"), values=values)
    step_c = f"{2.0 ** (8 - bits):g}"
    if bits >= 12:
        return Finding("probe_resolution", "green", say("check-resolution", bits=bits, step_c=step_c), values=values)
    text = say("check-resolution-only", bits=bits, step_c=step_c)
    remedy = say("check-resolution-set", advice=say("check-probe-copy-rules"), path=str(folder / "resolution"))
    return Finding("probe_resolution", "amber" if bits == 11 else "red", text, remedy, values)


def probe_guard(kit: Kit, probe_id: str) -> Finding:
    """Return whether the kernel itself refuses the readings of a probe that lost its power in a conversion."""
    features = number_in(tree_of(kit) / probe_id / "features")
    values = {"features": features}
    if features is None:
        return Finding("probe_guard", "unknown", say("check-guard-unknown"), values=values)
    if features & CHECKED:
        return Finding("probe_guard", "green", say("check-guard-yes"), values=values)
    return Finding("probe_guard", "amber", say("check-guard-no"), say("check-probe-copy-rules"), values)


FRESH_S = 10.0
"""A station's newest sample is at most this old."""


def probe_findings(kit: Kit, beside: Beside) -> list[Finding]:
    """Return the findings on bus and probe; each is left out where there is nothing to look at."""
    if kit.driver == "none":
        return [Finding("probe", "green", say("check-probe-not-wanted"))]
    if kit.driver == "virtual":
        return [Finding("probe", "amber", say("check-probe-virtual"), say("check-probe-set-driver"))]
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
    by_station = beside.at_work and not (features or 0) & POLLED
    if by_station:
        samples = samples_of_the_station(kit, beside)
    else:
        if not _may_read(folder / "w1_slave"):
            text = say("check-probe-not-readable")
            return [Finding("probe_reads", "unknown", text, say("check-again-with-sudo")), chip(probe_id, [])]
        samples = read_probe(kit, folder / "w1_slave")
    if not samples:
        text = say("check-reads-no-samples")
        return [Finding("probe_reads", "unknown", text, say("check-reads-stop-station")), chip(probe_id, [])]
    told = [reads(samples, by_station=by_station), noise(samples), conversion(samples, features, conv_time_ms)]
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
