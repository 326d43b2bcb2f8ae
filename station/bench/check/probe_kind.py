"""Genuine or a copy? Only as sure as what can be read allows. Pure.

What tells them apart: C. Petrich, "Your DS18B20 temperature sensor is likely a fake, counterfeit, clone…" (2019,
github.com/cpetrich/counterfeit_DS18B20): of over 500 steel-sheathed probes none was genuine. A chip that fails one of
these is none of Maxim's; one that passes all may still be a copy. The data sheet has bytes 5 and 7 as FF and 10.
"""

from collections.abc import Sequence
from dataclasses import dataclass

GENUINE_ID = "28-0000"
"""The kernel writes the number's last byte first: Petrich's 28-xx-xx-xx-xx-00-00-crc."""

TWELVE_BITS = 0x7F


@dataclass(frozen=True)
class Kind:
    """What speaks against a genuine chip, and whether the data sheet itself is contradicted.

    `byte_6_tests`: with how many different low digits the temperature was seen, of 16. With one only, one copy in
    16 passes that test by chance.
    """

    against: tuple[str, ...]
    off_the_sheet: bool
    byte_6_tests: int


def kind_of(probe_id: str, scratchpads: Sequence[bytes]) -> Kind:
    """Return what its id and the nine bytes of its good conversions tell."""
    against = []
    if not probe_id.startswith(GENUINE_ID):
        against.append(f"its number is not of the maker's pattern ({GENUINE_ID}…)")
    reserved = sorted({f"{nine[5]:02x} … {nine[7]:02x}" for nine in scratchpads if (nine[5], nine[7]) != (0xFF, 0x10)})
    if reserved:
        against.append(f"its reserved bytes are {' and '.join(reserved)}, not ff … 10 as in the data sheet")
    full = [nine for nine in scratchpads if nine[4] == TWELVE_BITS]
    if any(not _counts(nine) for nine in full):
        against.append("byte 6 does not count with the temperature")
    return Kind(tuple(against), bool(reserved), len({nine[0] & 0x0F for nine in full}))


def _counts(nine: bytes) -> bool:
    return 0 < nine[6] <= 0x10 and (nine[0] + nine[6]) & 0x0F == 0
