"""Spoils bytes as cables, cards, editors and bored people do, from a seeded chance: any input can be made again."""

from collections.abc import Callable, Sequence
from random import Random

SPLICED = (
    b"", b"\0", b"\n", b"\r\n", b'"', b"'", b",", b";", b"=", b"[", b"]", b"{", b"}", b"#", b"\\", b"\\u202e", b"\xff",
    b"\xef\xbb\xbf", b"\xf0\x9f\xa7\xaa", b"null", b"true", b"NaN", b"1e400", b"-1e-400", b"-0", b"1" * 40, b"0x10",
    b"[" * 400, b'{"a":' * 400, b"\xd9\xa3", b"<img src=x onerror=alert(1)>", b"=HYPERLINK(1)", b"../../etc", b"%00",
    b"9999999999999999999", b"1979-05-27", b"inf", b"''' ", b"\t", b"\x1b[2J", b"\xed\xa0\x80",
)  # fmt: skip


def mutated(seeds: Sequence[bytes], chance: Random, most: int = 6) -> bytes:
    """Return one of the seeds, spoilt in one to `most` places; at times nothing but noise."""
    if chance.random() < 0.02:
        return chance.randbytes(chance.randrange(400))
    spoilt = bytearray(chance.choice(seeds))
    for _ in range(chance.randint(1, most)):
        chance.choice(_WAYS)(spoilt, seeds, chance)
    return bytes(spoilt)


def _place(spoilt: bytearray, chance: Random) -> tuple[int, int]:
    begin = chance.randrange(len(spoilt) + 1)
    return begin, min(begin + chance.choice((0, 1, 1, 2, 4, 8, 32)), len(spoilt))


def _flip(spoilt: bytearray, _: Sequence[bytes], chance: Random) -> None:
    if spoilt:
        spoilt[chance.randrange(len(spoilt))] ^= 1 << chance.randrange(8)


def _cut(spoilt: bytearray, _: Sequence[bytes], chance: Random) -> None:
    begin, end = _place(spoilt, chance)
    del spoilt[begin:end]


def _end(spoilt: bytearray, _: Sequence[bytes], chance: Random) -> None:
    del spoilt[chance.randrange(len(spoilt) + 1) :]


def _splice(spoilt: bytearray, _: Sequence[bytes], chance: Random) -> None:
    begin, end = _place(spoilt, chance)
    spoilt[begin:end] = chance.choice(SPLICED)


def _repeat(spoilt: bytearray, _: Sequence[bytes], chance: Random) -> None:
    begin, end = _place(spoilt, chance)
    spoilt[begin:begin] = spoilt[begin:end] * chance.choice((1, 2, 40))


def _swap_line(spoilt: bytearray, seeds: Sequence[bytes], chance: Random) -> None:
    lines, others = spoilt.split(b"\n"), chance.choice(seeds).split(b"\n")
    lines[chance.randrange(len(lines))] = bytearray(chance.choice(others))
    spoilt[:] = b"\n".join(lines)


def _digit(spoilt: bytearray, _: Sequence[bytes], chance: Random) -> None:
    digits = [place for place, byte in enumerate(spoilt) if 48 <= byte <= 57]
    if digits:
        spoilt[chance.choice(digits)] = chance.choice(b"0123456789-.eE+")


_WAYS: tuple[Callable[[bytearray, Sequence[bytes], Random], None], ...] = (
    _flip, _cut, _end, _splice, _splice, _repeat, _swap_line, _digit, _digit,
)  # fmt: skip


def spoilt_card(file: bytes, chance: Random, page_bytes: int = 4096) -> bytes:
    """Return a file as a card gives it back after its power was cut: zeroed, old, torn, shifted or missing pages."""
    spoilt = bytearray(file)
    for _ in range(chance.randint(1, 3)):
        page = chance.randrange(max(len(spoilt) // page_bytes, 1)) * page_bytes
        whole = slice(page, page + page_bytes)
        torn = slice(page + 512 * chance.randrange(8), page + page_bytes)
        way = chance.randrange(7)
        if way == 0:
            spoilt[whole] = bytes(len(spoilt[whole]))
        elif way == 1:
            spoilt[torn] = bytes(len(spoilt[torn]))
        elif way == 2:
            spoilt[torn] = b"\xff" * len(spoilt[torn])
        elif way == 3:
            spoilt[torn] = chance.randbytes(len(spoilt[torn]))
        elif way == 4:
            del spoilt[chance.randrange(len(spoilt) + 1) :]
        elif way == 5:
            other = chance.randrange(max(len(spoilt) // page_bytes, 1)) * page_bytes
            spoilt[torn] = spoilt[other + torn.start - page : other + page_bytes].ljust(len(spoilt[torn]), b"\0")
        else:
            _flip(spoilt, (), chance)
    return bytes(spoilt)
