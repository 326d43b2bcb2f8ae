"""The nine bytes of a DS18B20 and the text that the Linux kernel makes of them.

Sources: Maxim Integrated, DS18B20 data sheet (temperature/data relationship, memory map, configuration
register) and Application Note 27 (CRC-8); Linux, drivers/w1/slaves/w1_therm.c (form of `w1_slave`). That
byte 6 of a genuine chip is 0x10 less the low nibble of byte 0 shows in captured scratchpads
(e.g. `4b 01 4b 46 7f ff 05 10 e1`), and that it is 0x0c before the first conversion stands in the data sheet.
"""

import math
from collections.abc import Sequence

LOWEST_C, HIGHEST_C = -55.0, 125.0
CONFIG_BYTE = {9: 0x1F, 10: 0x3F, 11: 0x5F, 12: 0x7F}
CONVERSION_MS = {9: 95, 10: 190, 11: 375, 12: 750}  # the kernel's defaults
ALARM_BYTES = (0x4B, 0x46)  # +75 and +70, as delivered
NOT_CONVERTED = 0x0C


def crc8(data: Sequence[int]) -> int:
    """The one-wire CRC: X⁸+X⁵+X⁴+1, least significant bit first, start 0."""
    crc = 0
    for byte in data:
        crc ^= byte
        for _ in range(8):
            crc = (crc >> 1) ^ 0x8C if crc & 1 else crc >> 1
    return crc


def scratchpad(raw: int, *, bits: int = 12, byte_6: int | None = None) -> bytes:
    """The nine bytes for a signed 16-bit count of 1/16 °C.

    `byte_6` is that of a genuine chip after a conversion unless given. Raises ValueError for a count that
    16 bits cannot hold or a resolution outside 9 to 12 bits.
    """
    if bits not in CONFIG_BYTE:
        raise ValueError(f"A DS18B20 has 9 to 12 bits, not {bits}.")
    if not -0x8000 <= raw <= 0x7FFF:
        raise ValueError(f"A count of {raw} does not fit into 16 bits.")
    low, high = raw.to_bytes(2, "little", signed=True)
    remainder = 0x10 - (low & 0x0F) if byte_6 is None else byte_6
    eight = bytes((low, high, *ALARM_BYTES, CONFIG_BYTE[bits], 0xFF, remainder, 0x10))
    return eight + bytes((crc8(eight),))


def count_of(temperature_c: float, *, bits: int = 12) -> int:
    """The count of 1/16 °C for a temperature, rounded to a step of the resolution.

    Raises ValueError for a temperature that the probe cannot report.
    """
    if not LOWEST_C <= temperature_c <= HIGHEST_C:
        raise ValueError(f"A DS18B20 reports {LOWEST_C:g} to {HIGHEST_C:g} °C, not {temperature_c} °C.")
    coarse = 1 << (12 - bits)
    return math.floor(temperature_c * 16 / coarse + 0.5) * coarse


def millidegrees(raw: int) -> int:
    """The kernel's `t=`: thousandths of a degree, cut off towards zero."""
    whole = abs(raw) * 1000 // 16
    return whole if raw >= 0 else -whole


def raw_of(nine: bytes) -> int:
    """The signed count in bytes 0 and 1."""
    return int.from_bytes(nine[:2], "little", signed=True)


def kernel_text(nine: bytes, last_good: bytes | None = None) -> str:
    """The two lines of `w1_slave`.

    With a wrong CRC the first line ends in NO, and the second repeats the last good bytes (zeros if there
    were none) beside the `t=` of the bad ones, as the kernel does.
    """
    crc = crc8(nine[:8])
    good = crc == nine[8]
    second = nine if good else (last_good or bytes(9))
    first_line = f"{_spaced(nine)} : crc={crc:02x} {'YES' if good else 'NO'}\n"
    return f"{first_line}{_spaced(second)} t={millidegrees(raw_of(nine))}\n"


def _spaced(data: bytes) -> str:
    return data.hex(" ")
