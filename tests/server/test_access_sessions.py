"""Cookies: valid here, for what they say, for as long as they may; not when forged, foreign, ended or too old."""

import json
import os
import stat
import time
from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from station.server.door.secrets import HOLDERS, Holder, Secrets
from station.server.door.sessions import BENCH_S, FILE_NAME, MOST_ENDED, STAFF_S, Sessions, machine_number
from tests.server.doors import HASHED, SECRETS, Hand


def sessions(
    folder: Path | None = None,
    settings: Secrets = SECRETS,
    machine: str = "pi 7",
    boot: str = "boot a",
    clock: Hand | None = None,
) -> Sessions:
    return Sessions(settings, folder, own_number=machine, boot=boot, monotonic=clock or Hand())


@pytest.mark.parametrize("role", HOLDERS)
def test_a_cookie_says_the_role_it_was_issued_for(role: Holder) -> None:
    known = sessions()
    session = known.read(known.issue(role))
    assert session is not None
    assert session.role == role


def test_a_session_outlives_the_process(tmp_path: Path) -> None:
    cookie = sessions(tmp_path).issue("teacher")
    again = sessions(tmp_path, clock=Hand(1500.0))
    assert again.read(cookie) is not None
    assert again.cookie_name == sessions(tmp_path).cookie_name


@pytest.mark.fault("cookies")
def test_a_cookie_of_another_bench_is_worth_nothing(tmp_path: Path) -> None:
    cookie = sessions(tmp_path / "a").issue("technician")
    assert sessions(tmp_path / "b").read(cookie) is None
    assert sessions(tmp_path / "a").read(cookie) is not None


def test_a_copied_card_does_not_let_the_first_benchs_devices_in(tmp_path: Path) -> None:
    first = sessions(tmp_path)
    cookie = first.issue("bench")
    second = sessions(tmp_path, machine="pi 8")
    assert second.read(cookie) is None
    assert second.cookie_name != first.cookie_name


@pytest.mark.parametrize(
    ("settings", "ended"),
    [
        (replace(SECRETS, bench_code="ANOTHER 1"), {"bench"}),
        (replace(SECRETS, teacher_passphrase_hash=HASHED.bench_code_hash), {"teacher"}),
        (replace(SECRETS, technician_passphrase_hash=None), {"technician"}),
        (SECRETS, set()),
    ],
)
def test_a_changed_code_or_passphrase_ends_the_sessions_of_the_old_one(
    tmp_path: Path, settings: Secrets, ended: set[str]
) -> None:
    before = sessions(tmp_path)
    cookies = {role: before.issue(role) for role in HOLDERS}
    after = sessions(tmp_path, settings)
    assert {role for role, cookie in cookies.items() if after.read(cookie) is None} == ended


@pytest.mark.fault("cookies")
@pytest.mark.parametrize("index", range(110))
def test_a_changed_character_anywhere_spoils_it(index: int) -> None:
    known = sessions()
    cookie = known.issue("bench")
    index %= len(cookie)
    for other in "0a.-A9 \u00e9":
        if cookie[index] != other:
            assert known.read(cookie[:index] + other + cookie[index + 1 :]) is None


@pytest.mark.parametrize("role", ["teacher", "technician", "looker", "root", ""])
def test_a_role_cannot_be_raised(role: str) -> None:
    known = sessions()
    _, rest = known.issue("bench").split(".", 1)
    assert known.read(f"{role}.{rest}") is None


@given(st.text(max_size=300) | st.binary(max_size=300).map(lambda raw: raw.decode("latin-1")))
@example("")
@example("bench.1.1." + "0" * 16 + "." + "0" * 64)
@example("bench.\u0661.1." + "0" * 16 + "." + "0" * 64)
@example("teacher." + "9" * 9 + "." + "9" * 12 + "." + "f" * 16 + "." + "f" * 64)
def test_whatever_bytes_arrive_are_no_session(cookie: str) -> None:
    known = sessions()
    assert known.read(cookie) is None
    assert known.read(known.issue("bench") + cookie[:1]) is None or not cookie


def test_no_cookie_is_no_session() -> None:
    assert sessions().read(None) is None


@pytest.mark.parametrize(("role", "lasts_s"), [("bench", BENCH_S), ("teacher", STAFF_S), ("technician", STAFF_S)])
def test_a_session_ends_by_the_monotonic_clock(role: Holder, lasts_s: int, monkeypatch: pytest.MonkeyPatch) -> None:
    clock = Hand()
    known = sessions(clock=clock)
    cookie = known.issue(role)
    for jump_s in (-31_536_000.0, 31_536_000.0):
        wall = time.time() + jump_s
        monkeypatch.setattr(time, "time", lambda wall=wall: wall)
        assert known.read(cookie) is not None
    clock.now_s += lasts_s - 1
    assert known.read(cookie) is not None
    clock.now_s += 2
    assert known.read(cookie) is None
    clock.now_s = 0.0  # a clock that went back, which it never does, opens nothing
    assert known.read(cookie) is None


def test_one_loss_of_power_keeps_the_benchs_devices_and_no_staff(tmp_path: Path) -> None:
    before = sessions(tmp_path)
    cookies = {role: before.issue(role) for role in HOLDERS}
    after = sessions(tmp_path, boot="boot b", clock=Hand(20.0))
    assert [role for role, cookie in cookies.items() if after.read(cookie) is not None] == ["bench"]
    assert sessions(tmp_path, boot="boot b", clock=Hand(BENCH_S + 1.0)).read(cookies["bench"]) is None
    assert sessions(tmp_path, boot="boot c", clock=Hand(20.0)).read(cookies["bench"]) is None


def test_one_session_is_ended_also_over_a_restart(tmp_path: Path) -> None:
    known = sessions(tmp_path)
    mine, other = known.issue("teacher"), known.issue("teacher")
    session = known.read(mine)
    assert session is not None
    known.end(session)
    known.keep()
    for each in (known, sessions(tmp_path)):
        assert each.read(mine) is None
        assert each.read(other) is not None


def test_all_sessions_are_ended_at_once_also_over_a_restart(tmp_path: Path) -> None:
    known = sessions(tmp_path)
    cookies = [known.issue(role) for role in HOLDERS for _ in range(20)]
    known.end_all()
    known.keep()
    for each in (known, sessions(tmp_path)):
        assert not any(each.read(cookie) for cookie in cookies)
        assert each.read(each.issue("bench")) is not None


def test_those_who_know_one_code_cannot_bring_another_roles_ended_session_back() -> None:
    known = sessions()
    stolen = known.issue("teacher")
    session = known.read(stolen)
    assert session is not None
    known.end(session)
    for _ in range(2 * MOST_ENDED):
        own = known.read(known.issue("bench"))
        assert own is not None
        known.end(own)
    assert known.read(stolen) is None


def test_the_key_is_for_this_user_only_and_says_nothing_of_codes(tmp_path: Path) -> None:
    known = sessions(tmp_path / "record")
    known.end_all()
    known.keep()
    assert [each.name for each in (tmp_path / "record").iterdir()] == [FILE_NAME]
    file = tmp_path / "record" / FILE_NAME
    assert stat.S_IMODE(file.stat().st_mode) == 0o600
    assert set(json.loads(file.read_text())) == {"key", "boot", "boots", "ended"}


@pytest.mark.parametrize(
    "text", ["", "{", "[]", "null", '{"key": "00"}', '{"key": 1, "boot": "b", "boots": 1, "ended": {}}', "\ufffd" * 99]
)
def test_a_spoilt_file_is_begun_anew(tmp_path: Path, text: str) -> None:
    cookie = sessions(tmp_path).issue("bench")
    (tmp_path / FILE_NAME).write_text(text)
    again = sessions(tmp_path)
    assert again.read(cookie) is None
    assert again.read(again.issue("bench")) is not None
    assert sessions(tmp_path).read(again.issue("bench")) is not None


def test_a_key_that_others_could_read_is_not_used(tmp_path: Path) -> None:
    cookie = sessions(tmp_path).issue("bench")
    (tmp_path / FILE_NAME).chmod(0o644)
    assert sessions(tmp_path).read(cookie) is None
    assert stat.S_IMODE((tmp_path / FILE_NAME).stat().st_mode) == 0o600


def test_a_folder_that_cannot_be_written_gives_sessions_for_this_process(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("no folder")
    known = sessions(tmp_path / "file")
    assert known.read(known.issue("bench")) is not None


def test_a_draft_that_a_kill_left_is_no_obstacle(tmp_path: Path) -> None:
    (tmp_path / FILE_NAME).with_suffix(".draft").write_text("half a fi")
    cookie = sessions(tmp_path).issue("bench")
    assert sessions(tmp_path).read(cookie) is not None


def test_this_machine_has_a_number() -> None:
    assert machine_number() == machine_number()
    if os.path.exists("/etc/machine-id"):  # noqa: PTH110
        assert machine_number()
