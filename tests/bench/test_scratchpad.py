"""The judgement of a kernel text, against data sheet, application note, kernel documentation and captured texts.

Captured texts are those of real probes as their owners published them: Linux mailing lists, question-and-answer
sites, tutorials, issue threads and READMEs. Only bytes and numbers are used.
"""

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from station.bench.probes.scratchpad import Judged, crc8, judge_text
from station.bench.virtual.tree import kernel_text, millidegrees, scratchpad

KINDS = {"empty", "garbled", "zeros", "crc", "power_on"}
HIGH = "ff ff ff ff ff ff ff ff ff"
LOW = "00 00 00 00 00 00 00 00 00"
POWER_ON = "50 05 4b 46 7f ff 0c 10 1c"

# Maxim Integrated, DS18B20 data sheet (REV 042208), table "Temperature/Data Relationship".
DATA_SHEET = [
    (125.0, 0x07D0), (85.0, 0x0550), (25.0625, 0x0191), (10.125, 0x00A2), (0.5, 0x0008),
    (0.0, 0x0000), (-0.5, 0xFFF8), (-10.125, 0xFF5E), (-25.0625, 0xFE6F), (-55.0, 0xFC90),
]  # fmt: skip

# Nine bytes and the kernel's t= beside them: genuine chips and clones, 9 and 12 bits.
CAPTURED = """
9c 04 55 05 7f a5 a5 66 42 73750
5a 01 55 05 7f a5 a5 66 c3 21625
29 01 55 05 7f a5 a5 66 b3 18562
e8 00 55 05 7f a5 a5 66 16 14500
84 01 55 05 7f a5 a5 66 f5 24250
33 01 55 05 7f a5 a5 66 4b 19187
71 01 55 05 7f a5 a5 66 84 23062
70 01 4b 46 7f ff 10 10 e1 23000
3c 01 4b 46 7f ff 0c 10 36 19750
03 01 4b 46 7f ff 0c 10 30 16187
51 01 4b 46 7f ff 0c 10 ab 21062
64 00 4b 46 7f ff 0c 10 3c 6250
e1 ff 4b 46 7f ff 0c 10 fe -1937
93 01 7f 80 7f ff 0d 10 bd 25187
d1 01 4b 46 7f ff 0c 10 39 29062
d5 01 4b 46 7f ff 0c 10 2c 29312
90 01 4b 46 7f ff 0c 10 33 25000
4b 01 4b 46 7f ff 05 10 e1 20687
5e 01 ff ff 7f ff ff ff 52 21875
8d 01 4b 46 7f ff 03 10 03 24812
3d 02 55 05 7f a5 81 66 4f 35812
0c 02 55 05 7f a5 a5 66 0a 32750
b8 01 55 05 7f a5 a5 66 36 27500
bd 03 55 05 7f a5 a5 66 1a 59812
4d 01 4b 46 7f ff 03 10 d8 20812
50 01 4b 46 7f ff 10 10 49 21000
ba 01 4b 46 7f ff 0c 10 37 27625
94 01 4b 46 7f ff 0c 10 26 25250
97 01 4b 46 7f ff 0c 10 e3 25437
79 01 4b 46 7f ff 07 10 0a 23562
d8 01 00 04 1f ff 08 10 1c 29500
"""

# Published as good, with YES, yet the bytes do not give the CRC: made or mended by hand.
WRONG_CRC = """
6d 01 55 05 7f a5 a5 66 3e 22812
6a 01 4b 46 7f ff 0c 10 3a 22625
a1 01 4b 46 7f ff 0c 10 5c 26062
6a fe 4b 46 7f ff 0c 10 3f -5625
73 01 4b 46 7f ff 0c 10 1c 23187
50 01 4b 46 7f ff 0c 10 1c 21000
50 01 4b 46 7f ff 0c 10 1c 21250
ff ff ff ff ff ff ff ff ff -62
"""


def rows(table: str) -> list[tuple[str, int]]:
    return [(line[:26], int(line[27:])) for line in table.strip().splitlines()]


def text_of(nine: str, t: int, *, crc: str | None = None, verdict: str = "YES", retained: str | None = None) -> str:
    """The form of `w1_slave`: Linux, Documentation/w1/slaves/w1_therm.rst."""
    return f"{nine} : crc={crc or nine[-2:]} {verdict}\n{retained or nine} t={t}\n"


def remainder(data: bytes) -> int:
    """Long division by x⁸+x⁵+x⁴+1, bits in the order of the wire: the CRC by its definition."""
    bits = [byte >> place & 1 for byte in data for place in range(8)] + [0] * 8
    for at in range(len(bits) - 8):
        if bits[at]:
            for power in (8, 5, 4, 0):
                bits[at + 8 - power] ^= 1
    return sum(bit << place for place, bit in enumerate(bits[-8:]))


@pytest.mark.parametrize(("temperature_c", "data"), DATA_SHEET)
def test_the_data_sheet_table_is_read(temperature_c: float, data: int) -> None:
    low, high = data & 0xFF, data >> 8
    eight = bytes((low, high, 0x4B, 0x46, 0x7F, 0xFF, 0x10 - (low & 0x0F), 0x10))
    nine = (eight + bytes((remainder(eight),))).hex(" ")
    assert judge_text(text_of(nine, 0)) == Judged(temperature_c, None, True)


def test_crc_of_application_note_27() -> None:
    """Maxim application note 27, example 2: ROM A2 00 00 00 01 B8 1C 02, family first on the wire."""
    rom = bytes.fromhex("02 1c b8 01 00 00 00")
    assert crc8(rom) == 0xA2
    assert crc8(rom + b"\xa2") == 0
    assert crc8(rom[::-1]) == 0x0B  # the wrong order does not give it


@pytest.mark.parametrize("rom", ["28DC6674050000B9", "28B143FE04000073", "28FFB24C74160420", "28FF16E67316059A"])
def test_crc_of_roms_seen_in_the_wild(rom: str) -> None:
    assert crc8(bytes.fromhex(rom)[:7]) == bytes.fromhex(rom)[7]


def test_crc_check_value() -> None:
    """CRC-8/MAXIM-DOW in the catalogue of parametrised CRC algorithms: check 0xA1."""
    assert crc8(b"123456789") == 0xA1


@given(st.binary(max_size=9))
def test_crc_is_the_remainder_of_its_polynomial(data: bytes) -> None:
    assert crc8(data) == remainder(data)


@pytest.mark.parametrize(("nine", "t"), rows(CAPTURED))
def test_a_captured_text_reads_as_the_kernel_read_it(nine: str, t: int) -> None:
    judged = judge_text(text_of(nine, t))
    assert judged.bad is None
    assert judged.temperature_c is not None
    assert judged.temperature_c == round(t * 16 / 1000) / 16


@pytest.mark.parametrize(("nine", "t"), rows(WRONG_CRC))
def test_a_yes_is_not_believed_without_its_crc(nine: str, t: int) -> None:
    assert judge_text(text_of(nine, t)) == Judged(None, "crc")


@pytest.mark.parametrize(
    "text",
    [
        text_of(HIGH, -62, crc="c9", verdict="NO", retained="46 01 4b 46 7f ff 0a 10 85"),  # captured: bus stuck high
        text_of("54 01 4b 46 7f ff 10 10 49", 21250, crc="5c", verdict="NO"),
        text_of("50 01 4b 46 7f ff 10 10 49", 21000, verdict="NO"),  # the kernel's NO stands, whatever the bytes
    ],
)
def test_a_literal_no(text: str) -> None:
    assert judge_text(text) == Judged(None, "crc")


@pytest.mark.fault("bad-answer")
@pytest.mark.parametrize("verdict", ["YES", "NO"])
def test_nine_zeros_have_a_right_crc_and_are_no_temperature(verdict: str) -> None:
    """The data wire shorted to ground; CRC-8 of zeros is 0."""
    assert crc8(bytes(9)) == 0
    assert judge_text(text_of(LOW, 0, verdict=verdict)) == Judged(None, "zeros")


@pytest.mark.parametrize("text", ["", "\n", " \n \n"])
def test_nothing_is_empty(text: str) -> None:
    """Today's kernels after failed tries, a pulled probe or a signal (Linux, drivers/w1/slaves/w1_therm.c)."""
    assert judge_text(text) == Judged(None, "empty")


@pytest.mark.parametrize(
    "text",
    [
        "50 01 4b 46 7f ff 10 10 49 : crc=49 YES\n",  # one line only
        "50 01 4b 46 7f ff 10 10 49 : crc=49 YES\n50 01 4b 46",  # cut off
        "8d 01 4d 7f ff 03 10 03 : crc=03 YES\n8d 01 4b 46 ff 03 10 03 t=24812\n",  # as pasted: a byte is missing
        "50 01 4b 46 7f ff 10 10 49 : crc=49 YES\n50 01 4b 46 7f ff 10 10 49 t=?\n",
        "xy 0z ~~ 46 7f ff 0c 10 qq : crc=qq YES\nxy 0z ~~ 46 7f ff 0c 10 qq t=?\n",
        "50 01 4b 46 7f ff 10 10 49 : crc=49 MAYBE\n50 01 4b 46 7f ff 10 10 49 t=21000\n",
        text_of("50 01 4b 46 7f ff 10 10 49", 21000, retained="4b 01 4b 46 7f ff 05 10 e1"),  # two reads in one
        "21000\n",  # another file of the same driver
        "\x00" * 64,
        "\N{REPLACEMENT CHARACTER}" * 64,
    ],
)
def test_a_text_that_is_not_the_kernels(text: str) -> None:
    assert judge_text(text) == Judged(None, "garbled")


@pytest.mark.parametrize(
    ("nine", "wrong_t", "temperature_c"),
    [("ff ff 4b 46 7f ff 01 10 9a", 4095937, -0.0625), ("5e ff 4b 46 7f ff 02 10 b6", 4085875, -10.125)],
)
def test_the_kernels_that_lost_the_sign(nine: str, wrong_t: int, temperature_c: float) -> None:
    """Linux 5.10 before "w1_therm: Fix conversion result for negative temperatures" (January 2021): unsigned t=."""
    assert judge_text(text_of(nine, wrong_t)).temperature_c == temperature_c


@pytest.mark.parametrize(
    ("nine", "t", "temperature_c"),
    [("42 01 55 05 7f a5 a5 66 bd", 20000, 20.125), ("84 01 55 00 3f ff 3f 10 d7", 114250, 24.25)],
)
def test_the_bytes_count_not_the_t_beside_them(nine: str, t: int, temperature_c: float) -> None:
    assert judge_text(text_of(nine, t)).temperature_c == temperature_c


@pytest.mark.fault("low-resolution")
@pytest.mark.parametrize(("bits", "step_c"), [(9, 0.5), (10, 0.25), (11, 0.125), (12, 0.0625)])
@pytest.mark.parametrize("raw", [0x0191, 0x0157, 0x0000, -1, -162])
def test_undefined_bits_are_left_out(bits: int, step_c: float, raw: int) -> None:
    """DS18B20 data sheet: bits 0 to 2 are undefined at 9 bits, 0 and 1 at 10, 0 at 11."""
    judged = judge_text(kernel_text(scratchpad(raw, bits=bits)))
    assert judged.temperature_c == raw / 16 // step_c * step_c


def test_a_chip_with_more_bits_has_none_undefined() -> None:
    """Config bit 7: a GX20MH01 with 13 or 14 bits (Linux w1_therm since 5.10); as "9 bits" 0.4375 °C would be lost."""
    assert judge_text(text_of("57 01 4b 46 9f ff 09 10 8e", 21437)).temperature_c == 21.4375


def test_the_power_on_value() -> None:
    """85 °C as reported on the Linux mailing list in April 2023: valid CRC, nothing measured."""
    assert judge_text(text_of(POWER_ON, 85000)) == Judged(None, "power_on")


@pytest.mark.fault("supply-wire-open")
def test_too_little_power() -> None:
    """127.94 °C: with byte 6 at 0x0c no conversion succeeded (Linux, w1_therm.rst, `features`)."""
    assert judge_text(text_of("ff 07 4b 46 7f ff 0c 10 a6", 127937)) == Judged(None, "power_on")
    # With a byte 6 that counts it was measured: whether a cup can have it is not the reader's question.
    assert judge_text(text_of("ff 07 4b 46 7f ff 01 10 2f", 127937)).temperature_c == 127.9375


def test_a_genuine_85_shows_in_byte_6() -> None:
    """A genuine chip counts 0x10 there after a conversion whose low four bits are 0, and 0x0c before any."""
    assert judge_text(text_of("50 05 4b 46 7f ff 10 10 bd", 85000)).temperature_c == 85.0


@pytest.mark.parametrize("nine", [POWER_ON, "50 05 55 05 7f a5 a5 66 9b", "50 05 ff ff 7f ff ff ff 1f"])
@pytest.mark.parametrize(
    ("near_c", "counts", "measured"),
    [
        (84.5, False, True),  # a clone, and the neighbour is as hot
        (88.0, False, True),
        (88.0625, False, False),
        (21.0, False, False),
        (None, False, False),
        (None, None, False),
        (84.5, True, False),  # a chip whose byte 6 counts would have counted
    ],
)
def test_85_of_a_clone_is_told_by_its_neighbour(
    nine: str, near_c: float | None, counts: bool | None, measured: bool
) -> None:
    judged = judge_text(text_of(nine, 85000), near_c=near_c, chip_counts=counts)
    assert judged.temperature_c == (85.0 if measured else None)
    assert judged.bad == (None if measured else "power_on")


def test_temperatures_beyond_a_cup_are_passed_on() -> None:
    """−109.9375 °C of a half-pulled plug (w1thermsensor issue 114): the range is the practical's to judge."""
    nine = scratchpad(round(-109.9375 * 16))
    assert judge_text(kernel_text(nine)).temperature_c == -109.9375


@given(st.text())
@example("\x1c")
@example("00 00 00 00 00 00 00 00 00 : crc=00 YES\r\n00 00 00 00 00 00 00 00 00 t=\N{ARABIC-INDIC DIGIT ONE}")
def test_no_text_raises(text: str) -> None:
    judged = judge_text(text)
    assert (judged.temperature_c is None) == (judged.bad in KINDS)


@given(st.binary(max_size=200))
def test_no_bytes_raise(content: bytes) -> None:
    judged = judge_text(content.decode("ascii", errors="replace"))
    assert (judged.temperature_c is None) == (judged.bad in KINDS)


@given(st.binary(min_size=9, max_size=9), st.sampled_from(["YES", "NO"]), st.integers())
def test_no_temperature_without_a_right_crc(nine: bytes, verdict: str, t: int) -> None:
    judged = judge_text(text_of(nine.hex(" "), t, verdict=verdict))
    if verdict == "NO" or remainder(nine[:8]) != nine[8]:
        assert judged.temperature_c is None


@given(st.integers(-880, 2000), st.sets(st.integers(0, 71), min_size=1, max_size=2))
def test_one_or_two_flipped_bits_never_give_a_temperature(raw: int, flipped: set[int]) -> None:
    """A CRC of this polynomial finds every one and two wrong bits in 72 (application note 27)."""
    nine = bytearray(scratchpad(raw))
    for bit in flipped:
        nine[bit // 8] ^= 1 << bit % 8
    assert judge_text(text_of(bytes(nine).hex(" "), millidegrees(raw))).bad in {"crc", "zeros"}


@given(st.integers(-880, 2000).filter(lambda raw: raw != 0x0550), st.sampled_from([9, 10, 11, 12]))
def test_what_is_written_is_read(raw: int, bits: int) -> None:
    below = raw >> 12 - bits << 12 - bits
    assert judge_text(kernel_text(scratchpad(below, bits=bits))).temperature_c == below / 16
