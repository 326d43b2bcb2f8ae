"""A rehearsal: whole stations over the real broker into a real room, and an end with the class result."""

import json
import os
import signal
import socket
import subprocess
import time
import urllib.request
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

import pytest

from station.command.main import main
from station.command.rehearsal import TROUBLES, rehearsing
from tests.command.child import RUN


@contextmanager
def rehearsal(folder: Path, *arguments: str) -> Iterator[tuple[subprocess.Popen[str], str]]:
    """A rehearsal in its own process, and the address that it printed."""
    env = {**os.environ, "TMPDIR": str(folder)}
    process = subprocess.Popen(
        [*RUN, "rehearse", *arguments], stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True, env=env, cwd=folder
    )
    try:
        assert process.stdout is not None
        line = process.stdout.readline()
        assert line.startswith("Open http://127.0.0.1:"), line + process.communicate(timeout=20)[1]
        yield process, line.split()[1].removesuffix("room")
    finally:
        if process.poll() is None:
            process.send_signal(signal.SIGTERM)
        process.communicate(timeout=30)


def asked(url: str) -> Any:
    with urllib.request.urlopen(url, timeout=10) as reply:
        return json.loads(reply.read())


def test_a_rehearsal_fills_a_room_of_its_own_and_ends_with_the_class_result(tmp_path: Path) -> None:
    with rehearsal(tmp_path, "--benches", "3", "--minutes", "3", "--speed", "60") as (process, url):
        end, begun = time.monotonic() + 30, 0
        while begun < 3 and time.monotonic() < end:
            tiles = asked(f"{url}api/room")["tiles"].values()
            begun = sum(tile["repeat"] == 1 and tile["temperature_c"] is not None for tile in tiles)
            time.sleep(0.1)
        assert begun == 3, "every bench is heard, with its temperature"
        assert {tile["name"] for tile in tiles} == {"Bench 1", "Bench 2", "Bench 3"}
        assert asked(f"{url}api/room")["lesson"]["label"] == "Rehearsal"
        out, err = process.communicate(timeout=60)
    assert process.returncode == 0, err
    assert out.strip().endswith("No bench has ended a repeat yet.")
    left = [each.name for each in tmp_path.iterdir()]
    assert not [name for name in left if name.startswith(("benchwarm-room", "benchwarm-rehearsal"))], left


def test_two_of_the_first_three_benches_get_into_trouble() -> None:
    benches = rehearsing(3)
    assert [bool(each["faults"] or each["habits"].get("stalled")) for each in benches] == [False, True, True]
    many = rehearsing(2 * len(TROUBLES))
    assert len({each["user"] for each in many}) == len(many)
    assert many[:3] == benches, "the same benches whatever their number"


@pytest.mark.parametrize(
    "arguments", [["--benches", "0"], ["--benches", "x"], ["--speed", "0"], ["--minutes", "-1"], ["--benches", "1000"]]
)
def test_what_cannot_be_rehearsed_is_one_line(arguments: list[str], capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit) as ended:
        main(["rehearse", *arguments])
    assert ended.value.code == 2
    assert "choose" in capsys.readouterr().err


def test_a_room_says_in_one_line_what_it_cannot_use(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    config = tmp_path / "room.toml"
    for text, words in (
        ('[room]\nbroker = "http://x"', "is no address of a broker"),
        ("[room]\ncolour = 1", "[room] colour: unknown key"),
        ('[room]\nbroker = "mqtt://127.0.0.1"\npassword_file = "none"', "the password cannot be read"),
    ):
        config.write_text(text)
        assert main(["room", "--config", str(config)]) == 2
        assert words in capsys.readouterr().err


def test_a_room_whose_port_is_taken_says_so(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    with socket.socket() as taken:
        taken.bind(("127.0.0.1", 0))
        taken.listen()
        (tmp_path / "room.toml").write_text(
            f'[room]\nfolder = "r"\nport = 0\nhost = "127.0.0.1"\n'
            f'[server]\nhost = "127.0.0.1"\nport = {taken.getsockname()[1]}\n'
        )
        assert main(["room", "--config", str(tmp_path / "room.toml")]) == 3
    assert "cannot listen" in capsys.readouterr().err
