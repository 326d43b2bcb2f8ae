"""Bytes and text of the virtual DS18B20 against data sheet, application note and captured texts."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from station.bench.virtual.tree import count_of, crc8, kernel_text, millidegrees, raw_of, scratchpad

# Maxim Integrated, DS18B20 data sheet (042208), table "Temperature/Data Relationship".
DATA_SHEET = [
    (125.0, 0x07D0), (85.0, 0x0550), (25.0625, 0x0191), (10.125, 0x00A2), (0.5, 0x0008),
    (0.0, 0x0000), (-0.5, 0xFFF8), (-10.125, 0xFF5E), (-25.0625, 0xFE6F), (-55.0, 0xFC90),
]  # fmt: skip

# Captured scratchpads of chips with the count in byte 6 (public issue threads and READMEs), with the kernel's t=.
CAPTURED = [
    ("70 01 4b 46 7f ff 10 10 e1", 23000),
    ("4b 01 4b 46 7f ff 05 10 e1", 20687),
    ("4d 01 4b 46 7f ff 03 10 d8", 20812),
    ("50 01 4b 46 7f ff 10 10 49", 21000),
    ("94 01 4b 46 7f ff 0c 10 26", 25250),
    ("79 01 4b 46 7f ff 07 10 0a", 23562),
]

raws = st.integers(-880, 2000)


@pytest.mark.parametrize(("temperature_c", "data"), DATA_SHEET)
def test_the_data_sheet_table_is_written(temperature_c: float, data: int) -> None:
    nine = scratchpad(count_of(temperature_c))
    assert nine[0] | nine[1] << 8 == data


@pytest.mark.parametrize(("raw", "thousandths"), [(1, 62), (-1, -62), (3, 187), (-3, -187), (401, 25062)])
def test_thousandths_are_cut_off_towards_zero(raw: int, thousandths: int) -> None:
    """Integer division of C, as Linux w1_therm does it."""
    assert millidegrees(raw) == thousandths


def test_crc_of_application_note_27() -> None:
    """Maxim Application Note 27, example 2: family 02 first, the CRC is A2 and the whole leaves 0."""
    rom = bytes.fromhex("02 1c b8 01 00 00 00")
    assert crc8(rom) == 0xA2
    assert crc8(rom + b"\xa2") == 0


def test_crc_of_the_common_check_string() -> None:
    """CRC-8/MAXIM-DOW in the catalogue of parametrised CRC algorithms: check 0xA1."""
    assert crc8(b"123456789") == 0xA1


@pytest.mark.parametrize(("captured", "thousandths"), CAPTURED)
def test_captured_scratchpads_are_made_byte_for_byte(captured: str, thousandths: int) -> None:
    nine = bytes.fromhex(captured)
    assert scratchpad(raw_of(nine)) == nine
    assert kernel_text(nine) == f"{captured} : crc={captured[-2:]} YES\n{captured} t={thousandths}\n"


def test_the_captured_power_on_value_is_made_byte_for_byte() -> None:
    """From a Linux mailing list report of a bogus 85 °C, April 2023."""
    assert scratchpad(0x0550, byte_6=0x0C) == bytes.fromhex("50 05 4b 46 7f ff 0c 10 1c")


def test_a_genuine_85_differs_from_a_power_on_value() -> None:
    assert scratchpad(0x0550)[6] == 0x10


def test_a_captured_failure_is_written_as_the_kernel_writes_it() -> None:
    """A bus stuck high, captured on a Raspberry Pi: the second line has the last good bytes and the bad t=."""
    text = kernel_text(b"\xff" * 9, bytes.fromhex("46 01 4b 46 7f ff 0a 10 85"))
    assert text == "ff ff ff ff ff ff ff ff ff : crc=c9 NO\n46 01 4b 46 7f ff 0a 10 85 t=-62\n"


@pytest.mark.parametrize(
    ("bits", "config", "crc"), [(9, 0x1F, 0x8C), (10, 0x3F, 0xFC), (11, 0x5F, 0x6C), (12, 0x7F, 0x1C)]
)
def test_the_configuration_byte_tells_the_resolution(bits: int, config: int, crc: int) -> None:
    """DS18B20 data sheet, "Thermometer Resolution Configuration"; the CRCs follow from the bytes."""
    nine = scratchpad(0x0550, bits=bits, byte_6=0x0C)
    assert (nine[4], nine[8]) == (config, crc)


@given(st.floats(-55.0, 125.0), st.integers(9, 12))
def test_a_temperature_is_rounded_to_the_nearest_step(temperature_c: float, bits: int) -> None:
    step_c = 0.5 / 2 ** (bits - 9)
    raw = count_of(temperature_c, bits=bits)
    assert abs(raw / 16 - temperature_c) <= step_c / 2 + 1e-9
    assert raw / 16 % step_c == 0.0


@given(raws, st.integers(0, 71))
def test_every_flipped_bit_is_caught_by_the_crc(raw: int, bit: int) -> None:
    broken = bytearray(scratchpad(raw))
    broken[bit // 8] ^= 1 << bit % 8
    assert " NO\n" in kernel_text(bytes(broken))


@given(raws)
def test_bytes_and_text_come_back(raw: int) -> None:
    nine = scratchpad(raw)
    assert raw_of(nine) == raw
    first, second = kernel_text(nine).splitlines()
    assert bytes.fromhex(first.split(" : ")[0]) == bytes.fromhex(second.split(" t=")[0]) == nine
    assert round(int(second.split("t=")[1]) * 16 / 1000) == raw


@pytest.mark.parametrize("temperature_c", [-55.1, 125.1, float("nan"), float("inf")])
def test_what_a_probe_cannot_report_is_refused(temperature_c: float) -> None:
    with pytest.raises(ValueError, match="reports"):
        count_of(temperature_c)


def test_impossible_bytes_are_refused() -> None:
    with pytest.raises(ValueError, match="16 bits"):
        scratchpad(0x8000)
    with pytest.raises(ValueError, match="9 to 12"):
        scratchpad(0, bits=13)
