"""`station check` knows the kit that is the room, and does not look for a probe there."""

import json
from pathlib import Path

import pytest

from station.command.main import main
from tests.room.class_room import broker_in


def told(capsys: pytest.CaptureFixture[str], path: Path) -> dict[str, dict[str, str]]:
    main(["check", "--json", "--config", str(path)])
    found = json.loads(capsys.readouterr().out)["findings"]
    return {each["name"]: each for each in found}


def test_the_room_is_looked_at_in_place_of_a_bench(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    room, password = tmp_path / "room.toml", tmp_path / "link-password"
    with broker_in(tmp_path / "broker") as broker:
        room.write_text(
            f'[room]\nbroker = "{broker.address}"\npassword_file = "link-password"\nfolder = "record"\n'
            '[server]\nhost = "127.0.0.1"\nport = 9\n'
        )
        password.write_text(broker.address.password or "")
        found = told(capsys, room)
        assert "probe" not in found
        assert {"storage", "clock", "network", "versions"} <= set(found)
        assert (found["broker"]["colour"], found["room"]["colour"]) == ("green", "amber")
        password.write_text("wrong")
        wrong = told(capsys, room)["broker"]
        assert (wrong["colour"], "does not let the room in" in wrong["text"]) == ("red", True)


def test_settings_of_a_room_that_cannot_be_read_are_a_red_line(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (tmp_path / "room.toml").write_text('[room]\nbroker = "somewhere"')
    assert told(capsys, tmp_path / "room.toml")["settings"]["colour"] == "red"
