"""Genuine or a copy, against the chips that C. Petrich describes (github.com/cpetrich/counterfeit_DS18B20, 2019).

ROMs and scratchpads are the examples of that study, and captured conversions that have been published; bytes in the
order of the wire. The kernel names a chip by its number with the last byte first.
"""

import pytest

from station.bench.check.probe import chip
from station.bench.check.probe_reads import Sample
from station.bench.probes.scratchpad import crc8, kind_of


def name_of(rom: str) -> str:
    """The kernel's name for a ROM (Linux w1.c: family, then the 48-bit number in hexadecimal)."""
    wire = bytes.fromhex(rom.replace("-", ""))
    assert crc8(wire[:7]) == wire[7]
    return f"{wire[0]:02x}-{wire[6:0:-1].hex()}"


def nine(text: str) -> bytes:
    wire = bytes.fromhex(text)
    assert crc8(wire[:8]) == wire[8]
    return wire


GENUINE = name_of("28-13-9B-BB-0B-00-00-1F")
COPIES = {
    "B1": "28-AA-3C-61-55-14-01-F0",
    "B1, another": "28-AB-9C-B1-33-14-01-81",
    "B2": "28-FF-7C-5A-61-16-04-EE",
    "C": "28-FF-64-1D-CD-96-F2-01",
    "D1": "28-1C-BC-46-92-10-02-88",
    "D1, another": "28-90-FE-79-97-00-03-20",
    "D2": "28-24-1D-77-91-04-02-CE",
    "E": "28-9E-9C-1F-00-00-80-04",
}
COUNTING = [
    "4b 01 4b 46 7f ff 05 10 e1",
    "4d 01 4b 46 7f ff 03 10 d8",
    "79 01 4b 46 7f ff 07 10 0a",
    "50 01 4b 46 7f ff 10 10 49",
]
CONSTANT = ["3c 01 4b 46 7f ff 0c 10 36", "03 01 4b 46 7f ff 0c 10 30", "51 01 4b 46 7f ff 0c 10 ab"]
OFF_THE_SHEET = ["5a 01 55 05 7f a5 a5 66 c3", "5e 01 ff ff 7f ff ff ff 52", "3d 02 55 05 7f a5 81 66 4f"]


def read(texts: list[str]) -> list[Sample]:
    return [Sample(20.0, nine=nine(text)) for text in texts]


def test_a_genuine_chip_is_not_spoken_against_and_not_vouched_for() -> None:
    found = chip(GENUINE, read(COUNTING))
    assert (found.colour, found.values["against"]) == ("green", [])
    assert "does not prove" in found.text
    assert found.values["byte_6_tests"] == 4


@pytest.mark.fault("copies")
@pytest.mark.parametrize("rom", list(COPIES.values()), ids=list(COPIES))
def test_a_number_outside_the_makers_pattern_is_a_copys(rom: str) -> None:
    found = chip(name_of(rom), [])
    assert "a copy" in found.text
    assert len(found.values["against"]) == 1


def test_the_number_alone_does_not_make_it_genuine() -> None:
    assert chip(GENUINE, []).colour == "unknown"


def test_a_byte_6_that_does_not_count_is_a_copys() -> None:
    assert kind_of(GENUINE, [nine(text) for text in CONSTANT]).against == (
        "byte 6 does not count with the temperature",
    )


@pytest.mark.parametrize("byte_6", [0x00, 0x20])
def test_a_byte_6_that_no_genuine_chip_has_is_a_copys(byte_6: int) -> None:
    """At 20.0 °C both would add up; the study has 0 < byte 6 <= 10 (hexadecimal)."""
    eight = bytes((0x40, 0x01, 0x4B, 0x46, 0x7F, 0xFF, byte_6, 0x10))
    assert kind_of(GENUINE, [bytes((*eight, crc8(eight)))]).against


def test_one_temperature_may_fit_a_constant_byte_by_chance() -> None:
    """Low digit 4 and byte 6 = 0c add up: such a copy is not noticed in still water, and the figure says so."""
    kind = kind_of(GENUINE, [nine("64 00 4b 46 7f ff 0c 10 3c")] * 30)
    assert kind.against == ()
    assert kind.byte_6_tests == 1


@pytest.mark.parametrize("text", OFF_THE_SHEET)
def test_reserved_bytes_off_the_data_sheet_are_amber(text: str) -> None:
    found = chip(GENUINE, read([text]))
    assert found.colour == "amber"
    assert "off the data sheet" in found.text
    assert "ice" in found.remedy


def test_a_copy_that_keeps_to_the_data_sheet_is_no_reason_to_wait() -> None:
    found = chip(name_of(COPIES["B2"]), read(CONSTANT))
    assert found.colour == "green"
    assert len(found.values["against"]) == 2


def test_fewer_bits_say_nothing_of_byte_6() -> None:
    """At 9 bits the counter is another's business; the study gives the relation for 12 bits only."""
    eight = bytes.fromhex("48 01 4b 46 1f ff 0c 10")
    assert kind_of(GENUINE, [bytes((*eight, crc8(eight)))]).against == ()
