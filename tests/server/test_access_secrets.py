"""Codes and passphrases: argon2id within 19 MiB, one check at a time, nothing shown."""

import asyncio
import threading
import time

import pytest
from argon2 import PasswordHasher, Type, extract_parameters
from hypothesis import given
from hypothesis import strategies as st

from station.server.door import secrets as access_secrets
from station.server.door.secrets import HOLDERS, Holder, Secrets, checked_hash, hashed, plain
from tests.server.doors import CODE, HASHED, SECRETS, TEACHER, TECHNICIAN


@pytest.mark.parametrize("secrets", [SECRETS, HASHED])
async def test_the_right_words_are_right_and_others_are_not(secrets: Secrets) -> None:
    right: dict[Holder, str] = {"bench": CODE, "teacher": TEACHER, "technician": TECHNICIAN}
    for holder in HOLDERS:
        for whose, words in right.items():
            assert await secrets.right(holder, words) == (holder == whose)
        for wrong in ("", " ", right[holder][:-1], right[holder] + "x", "x" * 16_000, "\x00", "\ud800", "pässword"):
            assert not await secrets.right(holder, wrong)


@pytest.mark.parametrize("secrets", [SECRETS, HASHED])
@pytest.mark.parametrize("typed", ["K7M-4QX", "k7m4qx", " k7m 4qx ", "K7m–4QX".replace("–", "-"), "ｋ７ｍ４ｑｘ"])
async def test_a_code_is_typed_in_any_case_and_grouping(secrets: Secrets, typed: str) -> None:
    assert await secrets.right("bench", typed)


async def test_a_passphrase_is_the_same_however_the_keyboard_composes_it() -> None:
    kept = hashed("teacher", "Ka\u0308sekuchen")  # a, then a combining diaeresis
    assert await Secrets(teacher_passphrase_hash=kept).right("teacher", "K\u00e4sekuchen")
    assert not await Secrets(teacher_passphrase_hash=kept).right("teacher", "k\u00e4sekuchen")


async def test_a_holder_without_a_secret_is_refused_after_as_long_a_check(monkeypatch: pytest.MonkeyPatch) -> None:
    checked: list[str] = []
    real = access_secrets._fits

    def noted(kept: str, words: str) -> bool:
        checked.append(kept)
        return real(kept, words)

    monkeypatch.setattr(access_secrets, "_fits", noted)
    nothing = Secrets()
    for holder in HOLDERS:
        assert not await nothing.right(holder, "")
    assert [extract_parameters(each).memory_cost for each in checked] == [19_456] * 3


async def test_what_nobody_holds_is_never_right(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(access_secrets, "_fits", lambda _, __: True)
    assert not [holder for holder in HOLDERS if await Secrets().right(holder, "")]
    assert await SECRETS.right("teacher", "")


def test_a_hash_is_argon2id_with_at_most_19_mib_and_one_lane() -> None:
    """RFC 9106 for the type; memory and passes as the OWASP Password Storage Cheat Sheet names them."""
    parameters = extract_parameters(hashed("technician", TECHNICIAN))
    assert parameters.type is Type.ID
    assert parameters.memory_cost == 19 * 1024
    assert (parameters.time_cost, parameters.parallelism) == (2, 1)
    assert hashed("teacher", TEACHER) != hashed("teacher", TEACHER), "salted"


async def test_one_check_at_a_time_in_a_thread_that_gives_way(monkeypatch: pytest.MonkeyPatch) -> None:
    running, most, names = 0, 0, set()
    real = access_secrets._fits

    def counted(kept: str, words: str) -> bool:
        nonlocal running, most
        running += 1
        most = max(most, running)
        names.add(threading.current_thread().name)
        time.sleep(0.002)  # so that a second thread would meet it
        fits = real(kept, words)
        running -= 1
        return fits

    monkeypatch.setattr(access_secrets, "_fits", counted)
    tries = [SECRETS.right("teacher", f"guess {k}") for k in range(10)] + [HASHED.right("bench", CODE)]
    assert (await asyncio.gather(*tries))[-1]
    assert most == 1
    assert len(names) == 1
    assert threading.current_thread().name not in names


def test_a_hash_that_would_cost_too_much_or_is_none_is_refused_without_showing_it() -> None:
    for text in (
        TEACHER,
        "",
        PasswordHasher(2, 19_457, 1).hash("x"),
        PasswordHasher(5, 64, 1).hash("x"),
        PasswordHasher(1, 64, 2).hash("x"),
        PasswordHasher(1, 8, 1, type=Type.I).hash("x"),
        hashed("teacher", TEACHER)[:-1],
        hashed("teacher", TEACHER) + "\n",
        f'teacher_passphrase_hash = "{hashed("teacher", TEACHER)}"',
        "$2b$12$" + "a" * 53,
    ):
        with pytest.raises(ValueError, match="hash") as refused:
            checked_hash(text)
        assert not text or text not in str(refused.value)
    assert checked_hash(hashed("teacher", TEACHER))


@pytest.mark.parametrize(("holder", "words"), [("bench", "12345"), ("bench", "1-2-3-4-5"), ("teacher", "ninechars")])
def test_what_is_too_short_is_refused(holder: Holder, words: str) -> None:
    with pytest.raises(ValueError, match="choose"):
        hashed(holder, words)


def test_secrets_do_not_show_themselves() -> None:
    shown = repr(SECRETS) + repr(HASHED) + str(SECRETS)
    assert not any(each and each in shown for each in vars(SECRETS).values())


@given(st.text())
def test_any_text_can_be_compared(words: str) -> None:
    for holder in HOLDERS:
        plain(holder, words).encode()


@given(st.text("abcdefghijkmnpqrstuvwxyz23456789", min_size=6, max_size=12), st.integers(1, 5), st.sampled_from(" -"))
def test_grouping_and_case_of_a_code_do_not_matter(code: str, at: int, between: str) -> None:
    assert plain("bench", f"{code[:at]}{between}{code[at:]}".upper()) == code
