"""Networks of their own: a bench whose cable is out for a whole lesson catches up; the others never notice."""

import os
import shutil
import subprocess
import time
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import replace
from pathlib import Path

import pytest

from station.practical import events as e
from station.room import link_state, mqtt
from station.room.address import BrokerAddress
from station.room.link import Link
from station.room.private_broker import PrivateBroker, _listens
from tests.room.class_room import USERS, bench_at_work, collecting, running, until

LESSON_S = 45 * 60


def ip(*words: str) -> None:
    subprocess.run(["ip", *words], check=True, capture_output=True)


@pytest.fixture
def cables() -> Iterator[tuple[str, list[str]]]:
    """A namespace for the broker with two cables to this one; skips where it may not be made."""
    name = f"room{os.getpid()}"
    if shutil.which("ip") is None:
        pytest.skip("a network namespace needs iproute2")
    try:
        ip("netns", "add", name)
    except subprocess.CalledProcessError:
        pytest.skip("only root may make a network namespace")
    try:
        near = [f"br{os.getpid() % 10000}{end}" for end in "ab"]
        for number, cable in enumerate(near, 1):
            ip("link", "add", cable, "type", "veth", "peer", "name", f"{cable}x", "netns", name)
            ip("addr", "add", f"10.214.{number}.1/24", "dev", cable)
            ip("link", "set", cable, "up")
            ip("-n", name, "addr", "add", f"10.214.{number}.2/24", "dev", f"{cable}x")
            ip("-n", name, "link", "set", f"{cable}x", "up")
        yield name, near
    finally:
        ip("netns", "delete", name)


@contextmanager
def broker_inside(name: str, folder: Path) -> Iterator[PrivateBroker]:
    broker = PrivateBroker(folder, None, 0)
    broker.add_users(USERS)
    broker._write_files()
    command = ["ip", "netns", "exec", name, "/usr/sbin/mosquitto", "-c", str(folder / "mosquitto.conf")]
    with subprocess.Popen(command) as process:
        try:
            until_s = time.monotonic() + 10.0
            while not _listens(replace(broker.address, host="10.214.2.2")) and time.monotonic() < until_s:
                time.sleep(0.02)
            yield broker
        finally:
            process.terminate()


async def test_a_bench_cut_off_for_a_lesson_catches_up(
    cables: tuple[str, list[str]], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(mqtt, "WITHIN_S", 1.5)
    name, (cut, whole) = cables
    with broker_inside(name, tmp_path / "broker") as broker:
        at = {
            cable: BrokerAddress(f"10.214.{number}.2", broker.address.port) for number, cable in ((1, cut), (2, whole))
        }
        broker_for_room = replace(broker.address, host=at[whole].host)
        async with (
            collecting(tmp_path / "room", broker, broker_for_room) as room,
            bench_at_work(tmp_path / "one") as one,
            bench_at_work(tmp_path / "two") as two,
        ):
            links = [
                Link(bench.bench, user, replace(at[cable], user=user, password=USERS[user]))
                for bench, user, cable in ((one, "bench-1", cut), (two, "bench-2", whole))
            ]
            async with running(links[0].run()), running(links[1].run()):
                await until(lambda: all(link.state.up for link in links))
                ip("link", "set", cut, "down")
                for start_s in range(0, LESSON_S, 100):
                    await one.bench._keep(
                        [e.SampleTaken(20.0 + second % 64 / 16) for second in range(start_s, start_s + 100)]
                    )
                    await two.sample(20.0)
                await until(lambda: links[0].state.text == link_state.NO_BROKER)
                assert links[1].state.up
                assert links[0].state.waiting >= LESSON_S
                ip("link", "set", cut, "up")
                await until(lambda: all(link.state.up and link.state.waiting == 0 for link in links))
                assert list(room.store.events("bench-1")) == one.events()
                assert list(room.store.events("bench-2")) == two.events()
                assert room.troubles == {}
