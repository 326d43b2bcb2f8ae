"""The private Mosquitto: it says what is wrong, lets further benches in, and its files are nobody else's."""

import asyncio
import resource
import socket
import stat
import subprocess
from collections.abc import Iterator
from concurrent.futures import ThreadPoolExecutor
from contextlib import ExitStack, contextmanager
from pathlib import Path

import pytest

from station.room import mqtt, wire
from station.room.broker import BrokerError, PrivateBroker, acl_text, new_password, password_line, with_passwords
from station.room.mqtt import BrokerLost, Publication, connected
from station.room.wire import BrokerAddress
from tests.conftest import PATIENCE_S, free_port
from tests.room.class_room import broker_in, until


async def lets_in(broker: PrivateBroker, user: str, password: str) -> bool:
    address = BrokerAddress(broker.address.host, broker.address.port, user, password)
    try:
        async with connected(address, lambda *_: None):
            return True
    except BrokerLost:
        return False


async def let_in(broker: PrivateBroker, user: str, password: str) -> None:
    """Wait until the broker has read its files again."""
    async with asyncio.timeout(PATIENCE_S):
        while not await lets_in(broker, user, password):
            pass


def open_files() -> int:
    return len(list(Path("/proc/self/fd").iterdir()))


async def test_further_benches_are_let_in_while_it_is_at_work(broker: PrivateBroker) -> None:
    assert not await lets_in(broker, "late", "word")
    broker.add_users({"late": "word"})
    await let_in(broker, "late", "word")
    assert await lets_in(broker, "bench-1", "password-1")
    broker.add_users({"late": "another"})
    await let_in(broker, "late", "another")
    assert not await lets_in(broker, "late", "word")


@pytest.mark.fault("users-at-once")
def test_users_that_are_added_at_once_are_all_there(tmp_path: Path) -> None:
    users = [f"rehearsal-{number}" for number in range(1, 61)]
    brokers = [PrivateBroker(tmp_path, "127.0.0.1", free_port()) for _ in range(2)]
    with ThreadPoolExecutor(12) as at_once:
        added = [at_once.submit(brokers[n % 2].add_users, {user: user}) for n, user in enumerate(users)]
    for each in added:
        each.result()
    kept = (tmp_path / "passwords").read_text().splitlines()
    assert sorted(line.partition(":")[0] for line in kept) == sorted(users)


@contextmanager
def idle(port: int, count: int) -> Iterator[None]:
    """So many connections that say nothing."""
    with ExitStack() as stack:
        for _ in range(count):
            stack.enter_context(socket.create_connection(("127.0.0.1", port), timeout=PATIENCE_S))
        yield


@contextmanager
def open_files_at_most(soft: int, needed: int) -> Iterator[None]:
    """So few may be open for whoever is started here, whatever this process may have afterwards."""
    before, most = resource.getrlimit(resource.RLIMIT_NOFILE)
    if most != resource.RLIM_INFINITY and most < needed:
        pytest.skip(f"needs {needed} open files; this system lets a process have {most}")
    resource.setrlimit(resource.RLIMIT_NOFILE, (soft, most))
    try:
        yield
    finally:
        resource.setrlimit(resource.RLIMIT_NOFILE, (max(before, needed), most))


@pytest.mark.fault("idle-connections")
async def test_idle_connections_beyond_the_usual_limit_of_files_keep_nobody_off(tmp_path: Path) -> None:
    broker = PrivateBroker(tmp_path, "127.0.0.1", free_port())
    broker.add_users({"bench-1": "password-1"})
    with open_files_at_most(1024, 2500):
        broker.start()
    try:
        with idle(broker.address.port, 1100):
            assert await lets_in(broker, "bench-1", "password-1")
    finally:
        broker.stop()


@pytest.mark.fault("idle-connections")
async def test_who_holds_all_connections_keeps_off_neither_the_room_nor_who_is_on(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("station.room.broker.FILES", 100)
    heard: list[str] = []
    with broker_in(tmp_path) as broker:
        bench = BrokerAddress("127.0.0.1", broker.address.port, "bench-1", "password-1")
        async with connected(bench, lambda *_: None) as client:
            with idle(broker.address.port, 150):
                assert not await lets_in(broker, "bench-2", "password-2")
                async with connected(broker.room_address, lambda topic, *_: heard.append(topic)) as room:
                    await room.subscribe({f"{wire.PREFIX}/#": 1})
                    await client.publish(wire.topic("bench-1", wire.LIVE), b"{}", qos=1)
                    await until(lambda: heard == ["benchwarm/1/bench-1/live"])


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
    monkeypatch.setattr("station.room.broker._ALSO_HERE", "/nowhere")
    monkeypatch.setenv("PATH", "/nowhere")
    with pytest.raises(BrokerError, match="sudo apt install mosquitto"):
        PrivateBroker(tmp_path, "127.0.0.1", free_port()).start()


async def test_one_that_was_killed_is_gone_until_it_is_started_again(tmp_path: Path) -> None:
    broker = PrivateBroker(tmp_path, "127.0.0.1", free_port())
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
        async with connected(BrokerAddress(host, 9, "bench-1", "x"), lambda *_: None):
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
                async with connected(BrokerAddress("127.0.0.1", port, "u", "p"), lambda *_: None):
                    pytest.fail("connected")
        assert open_files() == before


async def test_the_will_of_a_connection_that_hangs_is_said_before_the_next_one_speaks(broker: PrivateBroker) -> None:
    """Both have one client id. Said later, the will would be kept in place of what the bench says of itself now."""
    address, told = broker.address, wire.topic("bench-8", wire.HERE)
    will, identifier = Publication(told, b"gone", qos=1, retain=True), mqtt.new_identifier()
    async with (
        connected(address, lambda *_: None, will, identifier) as hanging,
        connected(address, lambda *_: None, will, identifier) as client,
    ):
        await client.publish(told, b"here", qos=1, retain=True)
        with pytest.raises(BrokerLost):
            await asyncio.wait_for(hanging.lost(), PATIENCE_S)
        heard: list[bytes] = []
        async with connected(address, lambda _, payload, __: heard.append(payload)) as looking:
            await looking.subscribe({told: 1})
            await until(lambda: heard)
        assert heard == [b"here"]
        await client.publish(told, b"", qos=1, retain=True)
