"""Judges the text of one read of a DS18B20: a temperature, or the kind of fault. Pure.

The nine bytes of the scratchpad tell: temperature, alarm limits, configuration, reserved bytes, CRC (Maxim
DS18B20 datasheet). The `t=` that the kernel adds is not used: some kernels of 2020 gave negative temperatures
the wrong sign there, while the bytes were right.
"""

import re
from dataclasses import dataclass
from typing import Final

POWER_ON_RAW: Final = 0x0550  # 85.0 °C, the value before the first conversion
LOW_POWER_RAW: Final = 0x07FF  # 127.94 °C, a conversion without enough power
NOT_CONVERTED: Final = 0x0C  # byte 6 of a genuine chip that has not converted since power-on
NEAR_C, NEAR_S = 3.0, 5.0

MORE_BITS: Final = 0x80  # in byte 4: a GX20MH01 with 13 or 14 bits (Linux w1_therm since 5.10)

_LINE = re.compile(r"((?:[0-9a-f]{2} ){9})\s*: crc=([0-9a-f]{2}) (YES|NO)")
_REPEATED = re.compile(r"((?:[0-9a-f]{2} ){9})\s*t=-?[0-9]+")


@dataclass(frozen=True)
class Judged:
    """A temperature in °C, or None and the kind: empty, garbled, zeros, crc, power_on.

    `counts` tells whether byte 6 counted as a genuine chip's does (None when nothing can be told).
    """

    temperature_c: float | None
    bad: str | None = None
    counts: bool | None = None


def crc8(data: bytes) -> int:
    """Return the one-wire CRC-8 (x⁸+x⁵+x⁴+1, reflected; Maxim application note 27)."""
    crc = 0
    for byte in data:
        crc ^= byte
        for _ in range(8):
            crc = (crc >> 1) ^ 0x8C if crc & 1 else crc >> 1
    return crc


def judge_text(text: str, *, near_c: float | None = None, chip_counts: bool | None = None) -> Judged:
    """Return what this text of `w1_slave` says.

    `near_c` is the good temperature just before (None: none within some seconds); `chip_counts` whether this
    probe's byte 6 was seen to count as a genuine one's. Both only tell a true 85.0 °C from the power-on value.
    """
    nine, bad = _checked(text)
    if nine is None:
        return Judged(None, bad)
    raw = int.from_bytes(nine[:2], "little", signed=True)
    counts = nine[6] == 0x10 - (raw & 0x0F)
    if _not_measured(raw, nine[6], near_c, chip_counts):
        return Judged(None, "power_on")
    undefined_bits = 0 if nine[4] & MORE_BITS else 3 - ((nine[4] >> 5) & 0x03)
    return Judged((raw >> undefined_bits << undefined_bits) / 16, None, counts)


def _checked(text: str) -> tuple[bytes | None, str | None]:
    """Return the nine bytes when the text is the kernel's and their CRC is right, else the kind of fault."""
    lines = text.splitlines()
    if not text.strip():
        return None, "empty"
    first = _LINE.fullmatch(lines[0].strip())
    second = _REPEATED.fullmatch(lines[1].strip()) if len(lines) > 1 else None
    if first is None or second is None:
        return None, "garbled"
    nine = bytes.fromhex(first.group(1))
    if not any(nine):
        return None, "zeros"
    if first.group(3) == "NO" or crc8(nine[:8]) != nine[8]:
        return None, "crc"
    # After a YES the kernel prints the same bytes again.
    return (nine, None) if second.group(1) == first.group(1) else (None, "garbled")


def _not_measured(raw: int, byte6: int, near_c: float | None, chip_counts: bool | None) -> bool:
    if raw == LOW_POWER_RAW:
        return byte6 == NOT_CONVERTED
    if raw != POWER_ON_RAW:
        return False
    if byte6 == 0x10:  # a genuine chip that converted 85.0 counts 16 here
        return False
    near = near_c is not None and abs(near_c - raw / 16) <= NEAR_C
    # A chip whose byte 6 counts would have counted; of another only the neighbours can tell.
    return chip_counts is True or not near
