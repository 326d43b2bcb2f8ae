"""The private Mosquitto: it says what is wrong, lets further benches in, and its files are nobody else's."""

import socket
import stat
import subprocess
from pathlib import Path

import pytest

from station.room import mqtt
from station.room.address import BrokerAddress
from station.room.broker import acl_text, new_password, password_line, with_passwords
from station.room.mqtt import BrokerLost, connected
from station.room.private_broker import BrokerError, PrivateBroker
from tests.room.class_room import until


async def lets_in(broker: PrivateBroker, user: str, password: str) -> bool:
    address = BrokerAddress(broker.address.host, broker.address.port, user, password)
    try:
        async with connected(address, f"{user}-x", lambda *_: None):
            return True
    except BrokerLost:
        return False


def open_files() -> int:
    return len(list(Path("/proc/self/fd").iterdir()))


async def test_further_benches_are_let_in_while_it_is_at_work(broker: PrivateBroker) -> None:
    assert not await lets_in(broker, "late", "word")
    broker.add_users({"late": "word"})
    for _ in range(50):
        if await lets_in(broker, "late", "word"):
            break
    assert await lets_in(broker, "late", "word")
    assert await lets_in(broker, "bench-1", "password-1")
    broker.add_users({"late": "another"})
    for _ in range(50):
        if await lets_in(broker, "late", "another"):
            break
    assert not await lets_in(broker, "late", "word")


def test_its_files_are_for_nobody_else(broker: PrivateBroker) -> None:
    assert stat.S_IMODE(broker.folder.stat().st_mode) == 0o700
    for name in ("passwords", "acl", "mosquitto.conf"):
        assert stat.S_IMODE((broker.folder / name).stat().st_mode) == 0o600
    assert "password-1" not in (broker.folder / "passwords").read_text()


def test_a_port_that_is_taken_is_told(tmp_path: Path) -> None:
    with socket.socket() as other:
        other.bind(("127.0.0.1", 0))
        other.listen()
        broker = PrivateBroker(tmp_path, "127.0.0.1", other.getsockname()[1])
        with pytest.raises(BrokerError, match="is another broker at work"):
            broker.start()
        broker.stop()


def test_without_mosquitto_it_is_told_what_to_install(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("station.room.private_broker._ALSO_HERE", "/nowhere")
    monkeypatch.setenv("PATH", "/nowhere")
    with pytest.raises(BrokerError, match="sudo apt install mosquitto"):
        PrivateBroker(tmp_path, "127.0.0.1", 0).start()


async def test_one_that_was_killed_is_gone_until_it_is_started_again(tmp_path: Path) -> None:
    broker = PrivateBroker(tmp_path, "127.0.0.1", 0)
    broker.start()
    first, password = broker.pid, broker.address.password or ""
    broker.stop()
    broker.stop()
    assert broker.pid is None
    broker.start()
    assert broker.pid != first
    assert await lets_in(broker, "room", password)
    broker.stop()
    await until(lambda: broker.pid is None)


def test_the_line_of_a_password_is_what_mosquittos_own_program_writes(tmp_path: Path) -> None:
    """Same form: user, $7$, rounds, a salt of 12 bytes, a hash of 64 (its own program chooses another salt)."""
    file = tmp_path / "passwords"
    file.write_text("bench-1:word\n")
    subprocess.run(["mosquitto_passwd", "-U", str(file)], check=True, capture_output=True)
    theirs, ours = file.read_text().strip().split("$"), password_line("bench-1", "word").strip().split("$")
    assert [theirs[0], theirs[1], theirs[2]] == [ours[0], ours[1], ours[2]]
    assert [len(each) for each in theirs[3:]] == [len(each) for each in ours[3:]]


def test_users_keep_their_lines_and_a_new_password_takes_the_place_of_the_old() -> None:
    both = with_passwords("", {"a": "1", "b": "2"})
    changed = with_passwords(both, {"b": "3"})
    assert changed.splitlines()[0] == both.splitlines()[0]
    assert len(changed.splitlines()) == 2
    assert changed.splitlines()[1] != both.splitlines()[1]
    with pytest.raises(ValueError, match="cannot be a user"):
        password_line("a:b", "x")


def test_the_rules_go_by_user_and_passwords_are_long() -> None:
    assert "%c" not in acl_text()
    assert all("%u" in line for line in acl_text().splitlines() if line.startswith("pattern"))
    assert len({new_password() for _ in range(100)}) == 100
    assert len(new_password()) >= 20


@pytest.mark.parametrize("host", ["127.0.0.1", "no-such-host.invalid", "a" * 70 + ".invalid"])
async def test_an_address_where_nobody_is_is_told(host: str) -> None:
    with pytest.raises(BrokerLost) as caught:
        async with connected(BrokerAddress(host, 9, "bench-1", "x"), "x", lambda *_: None):
            pytest.fail("connected")
    assert str(caught.value)
    assert not caught.value.refused


async def test_a_broker_that_says_nothing_leaves_nothing_open(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(mqtt, "WITHIN_S", 0.1)
    with socket.socket() as silent:
        silent.bind(("127.0.0.1", 0))
        silent.listen()
        port, before = silent.getsockname()[1], open_files()
        for _ in range(5):
            with pytest.raises(BrokerLost, match="no answer"):
                async with connected(BrokerAddress("127.0.0.1", port, "u", "p"), "x", lambda *_: None):
                    pytest.fail("connected")
        assert open_files() == before
