"""Judges the text of one read of a DS18B20: a temperature, or the kind of fault. Pure.

The nine bytes of the scratchpad tell: temperature, alarm limits, configuration, reserved bytes, CRC (Maxim
DS18B20 datasheet). The `t=` that the kernel adds is not used: some kernels of 2020 gave negative temperatures
the wrong sign there, while the bytes were right.
"""

import re
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from station.words import Message, join, say

# Genuine or a copy? Only as sure as what can be read allows. Pure.
#
# What tells them apart: C. Petrich, "Your DS18B20 temperature sensor is likely a fake, counterfeit, clone…" (2019,
# github.com/cpetrich/counterfeit_DS18B20): of over 500 steel-sheathed probes none was genuine. A chip that fails one of
# these is none of Maxim's; one that passes all may still be a copy. The data sheet has bytes 5 and 7 as FF and 10.


GENUINE_ID = "28-0000"
"""The kernel writes the number's last byte first: Petrich's 28-xx-xx-xx-xx-00-00-crc."""

TWELVE_BITS = 0x7F


@dataclass(frozen=True)
class Kind:
    """What speaks against a genuine chip, and whether the data sheet itself is contradicted.

    `byte_6_tests`: with how many different low digits the temperature was seen, of 16. With one only, one copy in
    16 passes that test by chance.
    """

    against: tuple[Message, ...]
    off_the_sheet: bool
    byte_6_tests: int


def kind_of(probe_id: str, scratchpads: Sequence[bytes]) -> Kind:
    """Return what its id and the nine bytes of its good conversions tell."""
    against = []
    if not probe_id.startswith(GENUINE_ID):
        against.append(say("check-kind-no-pattern", pattern_text=GENUINE_ID))
    reserved = sorted({f"{nine[5]:02x} … {nine[7]:02x}" for nine in scratchpads if (nine[5], nine[7]) != (0xFF, 0x10)})
    if reserved:
        against.append(say("check-kind-reserved", bytes_text=join(reserved, "list-and")))
    full = [nine for nine in scratchpads if nine[4] == TWELVE_BITS]
    if any(not _counts(nine) for nine in full):
        against.append(say("check-kind-byte-6"))
    return Kind(tuple(against), bool(reserved), len({nine[0] & 0x0F for nine in full}))


def _counts(nine: bytes) -> bool:
    return 0 < nine[6] <= 0x10 and (nine[0] + nine[6]) & 0x0F == 0


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
