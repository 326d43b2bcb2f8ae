"""Networks of their own: a bench whose cable is out for a whole lesson catches up; the others never notice."""

import os
import subprocess
import time
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import replace
from pathlib import Path

import pytest

from station.practical import events as e
from station.room import mqtt
from station.room.broker import PrivateBroker, _listens
from station.room.link import state as link_state
from station.room.link.link import Link
from station.room.wire import BrokerAddress
from tests.cables import Cable, ip, wired
from tests.conftest import PATIENCE_S, free_port
from tests.room.class_room import USERS, bench_at_work, collecting, running, until

LESSON_S = 45 * 60


@pytest.fixture
def cables() -> Iterator[tuple[str, list[Cable]]]:
    """A namespace for the broker with two cables to this one."""
    name = f"room{os.getpid()}"
    with wired(name, 2) as cables:
        yield name, cables


@contextmanager
def broker_inside(name: str, host: str, folder: Path) -> Iterator[PrivateBroker]:
    broker = PrivateBroker(folder, None, free_port())
    broker.add_users(USERS)
    broker._write_files()
    command = ["ip", "netns", "exec", name, "/usr/sbin/mosquitto", "-c", str(folder / "mosquitto.conf")]
    with subprocess.Popen(command) as process:
        try:
            until_s = time.monotonic() + PATIENCE_S
            while not _listens(replace(broker.address, host=host)) and time.monotonic() < until_s:
                time.sleep(0.02)
            yield broker
        finally:
            process.terminate()


@pytest.mark.fault("lesson-of-troubles")
async def test_a_bench_cut_off_for_a_lesson_catches_up(
    cables: tuple[str, list[Cable]], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(mqtt, "WITHIN_S", 4.0)
    name, (cut, whole) = cables
    with broker_inside(name, whole.there, tmp_path / "broker") as broker:
        at = {cable: BrokerAddress(cable.there, broker.address.port) for cable in (cut, whole)}
        broker_for_room = replace(broker.address, host=whole.there)
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
                ip("link", "set", cut.name, "down")
                for start_s in range(0, LESSON_S, 100):
                    await one.bench._keep(
                        [e.SampleTaken(20.0 + second % 64 / 16) for second in range(start_s, start_s + 100)]
                    )
                    await two.sample(20.0)
                await until(lambda: links[0].state.text == link_state.NO_BROKER)
                assert links[1].state.up
                assert links[0].state.waiting >= LESSON_S
                ip("link", "set", cut.name, "up")
                await until(lambda: all(link.state.up and link.state.waiting == 0 for link in links))
                assert list(room.store.events("bench-1")) == one.events()
                assert list(room.store.events("bench-2")) == two.events()
                assert room.troubles == {}


@pytest.mark.parametrize("refused", ["add", "exec", "link"])
def test_where_a_namespace_cannot_be_made_or_wired_the_reason_is_told(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, refused: str
) -> None:
    program = tmp_path / "ip"
    program.write_text(
        f'#!/bin/sh\n[ "$1" = {refused} ] || [ "$2" = {refused} ] || exit 0\necho not today >&2; exit 2\n'
    )
    program.chmod(0o755)
    monkeypatch.setenv("PATH", str(tmp_path), prepend=os.pathsep)
    with pytest.raises(pytest.skip.Exception, match="not today"), wired("nowhere", 1):
        pytest.fail("wired")
