"""How far the clock can be trusted, and whether the supply is strong enough."""

import ctypes
import platform
import re
import shutil
import sqlite3
import subprocess
import time
from collections.abc import Iterable
from importlib.metadata import PackageNotFoundError, requires, version
from pathlib import Path

from station.bench.check.finding import Finding, Kit, number_in, text_of
from station.record.journal import FILE_NAME
from station.words import Message, join, say

# What is installed: the station, Python, the system, the board, and the libraries the station stands on.


MAIN_DEPENDENCIES = ("w1thermsensor", "gpiozero", "lgpio", "fastapi", "uvicorn", "pydantic", "numpy", "scipy")

PAGE = Path(__file__).parents[2] / "page" / "index.html"
BOARD = Path("/proc/device-tree/model")


def installed(names: Iterable[str] = MAIN_DEPENDENCIES) -> dict[str, str | None]:
    """Return the version of each of these; None where it is missing. Nothing is imported."""
    found: dict[str, str | None] = {}
    for name in names:
        try:
            found[name] = version(name)
        except PackageNotFoundError:
            found[name] = None
    return {**found, "sqlite": sqlite3.sqlite_version}


def system() -> str:
    """Return the operating system and its kernel."""
    try:
        name = platform.freedesktop_os_release().get("PRETTY_NAME", "Linux")
    except OSError:
        name = "Linux"
    return f"{name}, {platform.system()} {platform.release()}, {platform.machine()}"


def told() -> Message:
    """Return what `station --version` says, all that a report needs: package, Python, system and board, libraries."""
    own = [re.split(r"[^A-Za-z0-9_-]", each)[0] for each in requires("benchwarm") or [] if "extra ==" not in each]
    libraries = [
        say("versions-library", library_name=name, version=number or say("versions-not-installed"))
        for name, number in installed(dict.fromkeys([*MAIN_DEPENDENCIES, *own])).items()
    ]
    board = text_of(BOARD)
    page = say("versions-page-built" if PAGE.is_file() else "versions-page-not-built")
    lines = (
        say("versions-station", version=version("benchwarm"), page=page),
        say("versions-library", library_name="Python", version=platform.python_version()),
        f"{system()}, {board}" if board else system(),
        join(libraries, "list-comma"),
    )
    return join(lines, "versions-lines")


def versions(kit: Kit) -> Finding:
    """Return all versions, and whether this board is one that the station is for."""
    board = text_of(kit.at("proc/device-tree/model"))
    values = {
        "station": version("benchwarm"),
        "python": platform.python_version(),
        "system": system(),
        "kernel": platform.release(),
        "board": board,
        **installed(),
    }
    text = say(
        "check-versions",
        station_version=version("benchwarm"),
        python_version=platform.python_version(),
        system_name=system(),
    )
    if not board:
        return Finding("versions", "unknown", say("check-versions-no-pi", versions=text), values=values)
    if not _is_pi(kit):
        other = say("check-versions-other-board", versions=text, board_name=board)
        return Finding("versions", "unknown", other, values=values)
    if platform.machine() in ("armv6l", "armv7l"):
        old = say("check-versions-32-bit", versions=text, board_name=board)
        return Finding("versions", "amber", old, say("check-versions-64-bit"), values)
    return Finding("versions", "green", say("check-versions-board", versions=text, board_name=board), values=values)


SYNCHRONISED = "run/systemd/timesync/synchronized"
TIME_ERROR = 5  # adjtimex(2): the clock is not synchronised
RTC_NEAR_S = 60.0

UNDER_VOLTAGE, WAS_UNDER_VOLTAGE = 1 << 0, 1 << 16
SLOWED, WAS_SLOWED = 0b111 << 1, 0b111 << 17
"""Bits of `get_throttled` (Raspberry Pi documentation, vcgencmd): frequency capped, throttled, temperature limit."""


def clock(kit: Kit) -> Finding:
    """Return where the wall time comes from. Order and intervals of a record do not need it."""
    by_file, by_kernel = kit.at(SYNCHRONISED).exists(), _kernel_synchronised()
    rtc_off_s = _rtc_off_s(kit)
    behind_s = _behind_record_s(kit)
    values = {"timesyncd": by_file, "kernel": by_kernel, "rtc_off_s": rtc_off_s, "behind_record_s": behind_s}
    if behind_s > RTC_NEAR_S:
        text = say("check-clock-behind", hours=f"{behind_s / 3600:.1f}")
        return Finding("clock", "amber", text, say("check-clock-connect-once"), values)
    if by_file or by_kernel:
        return Finding("clock", "green", say("check-clock-network"), values=values)
    if rtc_off_s is not None and abs(rtc_off_s) < RTC_NEAR_S:
        return Finding("clock", "green", say("check-clock-module"), values=values)
    if by_kernel is None:
        return Finding("clock", "unknown", say("check-clock-unknown"), values=values)
    return Finding("clock", "amber", say("check-clock-not-set"), say("check-clock-connect"), values)


class _Timex(ctypes.Structure):
    """`struct timex` of adjtimex(2) as far as its status, and room for the rest."""

    _fields_ = (
        ("modes", ctypes.c_uint),
        ("offset", ctypes.c_long),
        ("freq", ctypes.c_long),
        ("maxerror", ctypes.c_long),
        ("esterror", ctypes.c_long),
        ("status", ctypes.c_int),
        ("rest", ctypes.c_char * 256),
    )


def _kernel_synchronised() -> bool | None:
    """Ask the kernel, which chrony and ntpd tell as well; None where that is not allowed (ProtectClock=)."""
    try:
        state = ctypes.CDLL(None).adjtimex(ctypes.byref(_Timex()))  # modes 0: only look
    except (OSError, AttributeError):
        return None
    return None if state < 0 else state != TIME_ERROR


def _rtc_off_s(kit: Kit) -> float | None:
    since = number_in(kit.at("sys/class/rtc/rtc0/since_epoch"))
    return None if since is None else round(since - time.time(), 1)


def _behind_record_s(kit: Kit) -> float:
    try:
        return round(max((kit.folder / FILE_NAME).stat().st_mtime - time.time(), 0.0), 1)
    except OSError:
        return 0.0


def power(kit: Kit) -> Finding:
    """Return what the firmware says of the supply: now, and since the Pi was started."""
    flags = _flags(kit)
    if flags is None:
        return _by_alarm(kit)
    values = {"throttled": f"0x{flags:x}"}
    if flags & UNDER_VOLTAGE:
        return Finding("power", "red", say("check-power-weak-now"), say("check-power-supply"), values)
    if flags & WAS_UNDER_VOLTAGE:
        return Finding("power", "amber", say("check-power-was-weak"), say("check-power-supply"), values)
    if flags & (SLOWED | WAS_SLOWED):
        text = say("check-power-hot-now" if flags & SLOWED else "check-power-was-hot")
        return Finding("power", "amber", text, say("check-power-air"), values)
    return Finding("power", "green", say("check-power-good"), values=values)


def _flags(kit: Kit) -> int | None:
    tool = shutil.which("vcgencmd")
    if tool:
        try:
            asked = [tool, "get_throttled"]
            out = subprocess.run(asked, capture_output=True, text=True, timeout=2.0, check=False).stdout  # noqa: S603
            return int(out.strip().partition("=")[2], 16)  # throttled=0x50000
        except (OSError, ValueError, subprocess.TimeoutExpired):
            pass  # only who is in the group "video" may ask
    if _alarm(kit) is not None:
        return None
    # The kernel complains in its log about whoever reads this one, so it is the last.
    found = sorted(kit.at("sys/devices/platform").glob("soc*/soc*firmware/get_throttled"))
    return number_in(found[0], 16) if found else None


def _alarm(kit: Kit) -> int | None:
    """Return the alarm of the kernel's driver (Documentation/hwmon/raspberrypi-hwmon), renewed every 2 s."""
    for chip in sorted(kit.at("sys/class/hwmon").glob("hwmon*")):
        if text_of(chip / "name") == "rpi_volt":
            return number_in(chip / "in0_lcrit_alarm")
    return None


def _by_alarm(kit: Kit) -> Finding:
    alarm = _alarm(kit)
    values = {"in0_lcrit_alarm": alarm}
    if alarm is None:
        remedy = say("check-again-with-sudo") if _is_pi(kit) else ""
        return Finding("power", "unknown", say("check-power-unknown"), remedy, values)
    if alarm:
        return Finding("power", "red", say("check-power-weak-now"), say("check-power-supply"), values)
    return Finding("power", "green", say("check-power-good-now"), values=values)


def _is_pi(kit: Kit) -> bool:
    return "Raspberry Pi" in (text_of(kit.at("proc/device-tree/model")) or "")
