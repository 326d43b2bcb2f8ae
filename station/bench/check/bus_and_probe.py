"""Bus, probe, its three wires and its resolution: what the kernel's one-wire tree tells without a conversion.

The files are those of the kernel's w1_therm driver (Documentation/ABI/testing/sysfs-driver-w1_therm). Older kernels
than 5.8 have only `w1_slave`; then power and resolution cannot be told from here.
"""

from collections.abc import Mapping
from pathlib import Path

from station.bench.check.finding import Finding
from station.bench.check.kit import Kit, number_in, text_of
from station.bench.onewire import KERNEL_TREE, PROBE_ID

OVERLAY = "dtoverlay=w1-gpio"
READ_CONFIG, UNREAD_CONFIG = "boot/firmware/config.txt", "boot/config.txt"

CHECKED = 1
"""Bit of `features`: a power-on value after a conversion is an error (Linux w1_therm.c, W1_THERM_CHECK_RESULT)."""

_RULE = "copy 60-station-probe.rules to /etc/udev/rules.d and plug the probe in again"
_PLUG = "check its plug and its three wires; the kernel sees a plugged probe within 15 s"


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
        return Finding("bus", "green", f"one-wire bus master {', '.join(masters)}", values=values)
    if kit.tree != KERNEL_TREE and names:
        return Finding("bus", "green", f"a one-wire tree at {tree}, which is not the kernel's", values=values)
    missing = "no one-wire bus" if not tree.is_dir() else "no bus master on the one-wire bus"
    if kit.tree != KERNEL_TREE:
        remedy = f"make {tree} or take probe.tree out of station.toml: the kernel's tree is {KERNEL_TREE}"
    else:
        remedy = _overlay_remedy(kit)
    return Finding("bus", "red", f"{missing} ({tree})", remedy, values)


def _overlay_remedy(kit: Kit) -> str:
    """Say which line goes where: an overlay is often written into the file that is no longer read."""
    if _has_overlay(kit.at(READ_CONFIG)):
        return f"{OVERLAY} stands in /{READ_CONFIG}: restart the Pi; if that is no help, put the line below [all]"
    if _has_overlay(kit.at(UNREAD_CONFIG)):
        return f"move the line {OVERLAY} from /{UNREAD_CONFIG}, which is not read, to /{READ_CONFIG} and restart the Pi"
    line = f"write the line {OVERLAY} below [all] in /{READ_CONFIG} and restart the Pi"
    if kit.at(READ_CONFIG).exists():
        return line
    return f'on a Raspberry Pi {line}; on another machine set driver = "none" below [probe] in station.toml'


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
        return Finding("probe", "green", f"one probe, {found[0]}", values=values)
    if found:
        ids = ", ".join(found)
        remedy = f'set probe.id in station.toml to the one in the cup, such as id = "{found[0]}", or unplug the others'
        return Finding("probe", "red", f"{len(found)} probes, and the settings do not say which: {ids}", remedy, values)
    if ghosts:
        remedy = "put 4.7 kΩ from the data wire to 3.3 V, and look for a broken data wire"
        return Finding(
            "probe", "red", f"no probe, but {len(ghosts)} ghosts (00-…): the data wire floats", remedy, values
        )
    return Finding("probe", "red", "no probe on the bus", _PLUG, values)


def _named_probe(probe_id: str, found: list[str], values: Mapping[str, object]) -> Finding:
    others = [each for each in found if each != probe_id]
    if probe_id in found:
        rest = f"; {', '.join(others)} is not read" if others else ""
        return Finding("probe", "green", f"{probe_id}, as set{rest}", values=values)
    if others:
        remedy = f'plug that probe in, or set id = "{others[0]}" below [probe] in station.toml'
        return Finding("probe", "red", f"{probe_id} is set but not there; there is {', '.join(others)}", remedy, values)
    return Finding("probe", "red", f"{probe_id} is set but not there, nor any other", _PLUG, values)


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
        return Finding("probe_power", "green", "the probe's supply wire has contact", values=values)
    if power == 0:
        remedy = "wire VDD (often red) to 3.3 V on position 1; with two wires it reads 85 °C sooner or later"
        return Finding("probe_power", "red", "the probe's supply wire has no contact", remedy, values)
    return Finding(
        "probe_power", "unknown", "this kernel does not tell whether the supply wire has contact", values=values
    )


def probe_resolution(kit: Kit, probe_id: str) -> Finding:
    """Return whether the probe reads in steps of 1/16 °C."""
    folder = tree_of(kit) / probe_id
    bits = number_in(folder / "resolution")
    values = {"resolution_bits": bits}
    if bits is None or not 9 <= bits <= 14:
        return Finding("probe_resolution", "unknown", "this kernel does not tell the probe's resolution", values=values)
    step_c = 2.0 ** (8 - bits)
    text = f"{bits} bits, steps of {step_c:g} °C"
    if bits >= 12:
        return Finding("probe_resolution", "green", text, values=values)
    remedy = f"{_RULE}; until then: echo 12 | sudo tee {folder / 'resolution'}"
    return Finding("probe_resolution", "amber" if bits == 11 else "red", f"only {text}", remedy, values)


def probe_guard(kit: Kit, probe_id: str) -> Finding:
    """Return whether the kernel itself refuses the readings of a probe that lost its power in a conversion."""
    features = number_in(tree_of(kit) / probe_id / "features")
    values = {"features": features}
    if features is None:
        return Finding("probe_guard", "unknown", "this kernel does not check conversions itself", values=values)
    if features & CHECKED:
        return Finding("probe_guard", "green", "the kernel refuses 85 °C of a probe that lost its power", values=values)
    text = "the kernel does not refuse 85 °C of a probe that lost its power; the station still does"
    return Finding("probe_guard", "amber", text, _RULE, values)
