"""`station room --new-bench`: what it prints lets a bench in, also while the room is at work."""

import asyncio
import tomllib
from pathlib import Path

import pytest

from station.command.main import main
from station.command.room.room import BROKER_FOLDER
from station.command.settings import LinkSettings
from station.room.broker import PrivateBroker
from station.room.link.link import Link
from station.room.wire import BrokerAddress
from tests.conftest import free_port
from tests.room.class_room import bench_at_work, collecting, running, until


def settings_of(folder: Path, port: int, more: str = "") -> Path:
    path = folder / "room.toml"
    path.write_text(f'[room]\nfolder = "record"\nhost = "127.0.0.1"\nport = {port}\n{more}', encoding="utf-8")
    return path


def link_for(name: str, settings: Path, capsys: pytest.CaptureFixture[str]) -> LinkSettings:
    assert main(["room", "--config", str(settings), "--new-bench", name]) == 0
    return LinkSettings.model_validate(tomllib.loads(capsys.readouterr().out)["link"])


async def test_a_bench_is_let_in_while_the_room_is_at_work(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    port = free_port()
    broker = PrivateBroker(tmp_path / "record" / BROKER_FOLDER, "127.0.0.1", port)
    broker.start()
    async with running(broker.run()), bench_at_work(tmp_path / "bench") as at_work:
        link = await asyncio.to_thread(link_for, "Bench 3, by the door", settings_of(tmp_path, port), capsys)
        assert (link.broker, link.user) == (f"mqtt://127.0.0.1:{port}", "bench-3-by-the-door")
        assert link.password is not None
        assert len(link.password) >= 20
        broker_address = BrokerAddress.read(link.broker or "", link.user)
        to_room = Link(at_work.bench, "Bench 3", BrokerAddress(broker_address.host, port, link.user, link.password))
        async with collecting(tmp_path / "room", broker, broker.room_address), running(to_room.run()):
            await until(lambda: to_room.state.up)


def test_a_second_one_gets_a_password_of_its_own(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    settings = settings_of(tmp_path, 1883)
    one, other = link_for("bench-1", settings, capsys), link_for("bench-2", settings, capsys)
    assert one.password != other.password
    lines = (tmp_path / "record" / BROKER_FOLDER / "passwords").read_text().splitlines()
    assert [line.partition(":")[0] for line in lines] == ["bench-1", "bench-2"]


def test_a_name_that_is_taken_keeps_its_password_unless_a_new_one_is_wanted(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    settings = settings_of(tmp_path, 1883)
    first = link_for("bench-1", settings, capsys)
    kept = (tmp_path / "record" / BROKER_FOLDER / "passwords").read_text()
    assert main(["room", "--config", str(settings), "--new-bench", "Bench 1"]) == 2
    told = capsys.readouterr()
    assert told.out == ""
    assert told.err.count("\n") == 1
    assert "bench-1 is let in already" in told.err
    assert (tmp_path / "record" / BROKER_FOLDER / "passwords").read_text() == kept
    assert main(["room", "--config", str(settings), "--new-bench", "bench-1", "--new-password"]) == 0
    again = LinkSettings.model_validate(tomllib.loads(capsys.readouterr().out)["link"])
    assert (again.user, again.password == first.password) == ("bench-1", False)


def test_a_rooms_prefix_is_part_of_the_users_name(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    settings = settings_of(tmp_path, 1883, 'prefix = "b12"\n')
    assert link_for("Bench 1", settings, capsys).user == "b12-bench-1"


@pytest.mark.parametrize(("name", "more"), [("…", ""), ("room", ""), ("bench-1", 'broker = "mqtt://192.0.2.1"\n')])
def test_what_is_no_name_and_a_room_with_another_broker_let_nobody_in(
    tmp_path: Path, name: str, more: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["room", "--config", str(settings_of(tmp_path, 1883, more)), "--new-bench", name]) == 2
    assert capsys.readouterr().out == ""


def test_a_password_stands_in_one_place() -> None:
    with pytest.raises(ValueError, match="not in both"):
        LinkSettings(broker="mqtt://192.0.2.1", user="bench-1", password="a", password_file=Path("b"))
