"""How far the clock can be trusted, and whether the supply is strong enough."""

import ctypes
import shutil
import subprocess
import time

from station.bench.check.finding import Finding
from station.bench.check.kit import Kit, number_in, text_of
from station.record.opening import FILE_NAME

SYNCHRONISED = "run/systemd/timesync/synchronized"
TIME_ERROR = 5  # adjtimex(2): the clock is not synchronised
RTC_NEAR_S = 60.0

UNDER_VOLTAGE, WAS_UNDER_VOLTAGE = 1 << 0, 1 << 16
SLOWED, WAS_SLOWED = 0b111 << 1, 0b111 << 17
"""Bits of `get_throttled` (Raspberry Pi documentation, vcgencmd): frequency capped, throttled, temperature limit."""

_SUPPLY = "take the supply made for this Pi and a short thick cable, nothing else on its USB sockets"


def clock(kit: Kit) -> Finding:
    """Return where the wall time comes from. Order and intervals of a record do not need it."""
    by_file, by_kernel = kit.at(SYNCHRONISED).exists(), _kernel_synchronised()
    rtc_off_s = _rtc_off_s(kit)
    behind_s = _behind_record_s(kit)
    values = {"timesyncd": by_file, "kernel": by_kernel, "rtc_off_s": rtc_off_s, "behind_record_s": behind_s}
    if behind_s > RTC_NEAR_S:
        text = f"the clock is {behind_s / 3600:.1f} h behind the newest entry of the record"
        return Finding(
            "clock", "amber", text, "connect the kit to a network with time once, or fit a clock module", values
        )
    if by_file or by_kernel:
        return Finding("clock", "green", "the clock is set from the network", values=values)
    if rtc_off_s is not None and abs(rtc_off_s) < RTC_NEAR_S:
        return Finding("clock", "green", "the clock is kept by a clock module", values=values)
    if by_kernel is None:
        return Finding("clock", "unknown", "this machine does not tell whether its clock is set", values=values)
    text = "nothing has set the clock: dates in the record are only labels; order and intervals are right all the same"
    return Finding("clock", "amber", text, "connect the kit to a network with time, or fit a clock module", values)


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
        return Finding("power", "red", "the supply is too weak: under-voltage now", _SUPPLY, values)
    if flags & WAS_UNDER_VOLTAGE:
        return Finding("power", "amber", "the supply was too weak since the Pi was started", _SUPPLY, values)
    if flags & (SLOWED | WAS_SLOWED):
        when = "now" if flags & SLOWED else "since the Pi was started"
        return Finding("power", "amber", f"the processor was slowed down ({when}): too hot", "give the box air", values)
    return Finding("power", "green", "no under-voltage since the Pi was started", values=values)


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
        text = "this machine does not tell whether its supply is strong enough"
        return Finding("power", "unknown", text, "" if not _is_pi(kit) else "check again with sudo", values)
    if alarm:
        return Finding("power", "red", "the supply is too weak: under-voltage now", _SUPPLY, values)
    return Finding("power", "green", "no under-voltage now; what was before is not told", values=values)


def _is_pi(kit: Kit) -> bool:
    return "Raspberry Pi" in (text_of(kit.at("proc/device-tree/model")) or "")
