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

from station.command.assembly import SCRATCH
from station.command.main import main
from station.command.rehearse.rehearse import TROUBLES, rehearsing
from tests.command.child import RUN
from tests.conftest import PATIENCE_S, free_port
from tests.server.doors import HASHED, TEACHER, TECHNICIAN


@contextmanager
def rehearsal(folder: Path, *arguments: str) -> Iterator[tuple[subprocess.Popen[str], str]]:
    """A rehearsal in its own process, and the address that it printed."""
    env = {**os.environ, "TMPDIR": str(folder)}
    process = subprocess.Popen(
        [*RUN, "rehearse", *arguments],
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
        env=env,
        cwd=folder,
        start_new_session=True,
    )
    try:
        assert process.stdout is not None
        line = process.stdout.readline()
        assert line.startswith("Open http://127.0.0.1:"), line + process.communicate(timeout=PATIENCE_S)[1]
        yield process, line.split()[1].removesuffix("room")
    finally:
        if process.poll() is None:
            process.send_signal(signal.SIGTERM)
        process.communicate(timeout=PATIENCE_S)


def asked(url: str) -> Any:
    with urllib.request.urlopen(url, timeout=PATIENCE_S) as reply:
        return json.loads(reply.read())


def test_a_rehearsal_fills_a_room_of_its_own_and_ends_with_the_class_result(tmp_path: Path) -> None:
    with rehearsal(tmp_path, "--benches", "3", "--minutes", "4", "--speed", "16") as (process, url):
        end, begun = time.monotonic() + PATIENCE_S, 0
        while begun < 3 and time.monotonic() < end:
            tiles = asked(f"{url}api/room")["tiles"].values()
            begun = sum(tile["repeat"] == 1 and tile["temperature_c"] is not None for tile in tiles)
            time.sleep(0.1)
        assert begun == 3, "every bench is heard, with its temperature"
        assert {tile["name"] for tile in tiles} == {"Bench 1", "Bench 2", "Bench 3"}
        assert asked(f"{url}api/room")["lesson"]["label"] == "Rehearsal"
        out, err = process.communicate(timeout=PATIENCE_S)
    assert process.returncode == 0, err
    assert out.strip().endswith("No bench has ended a repeat yet.")
    left = [each.name for each in tmp_path.iterdir()]
    assert not [name for name in left if name.startswith(("benchwarm-room", SCRATCH))], left


def room_settings(folder: Path, port: int = 0, access: str = "") -> Path:
    """Settings of a room on this machine alone, at this port or a free one."""
    path = folder / "room.toml"
    path.write_text(
        f'[room]\nfolder = "room"\nport = 0\nhost = "127.0.0.1"\n'
        f'[server]\nhost = "127.0.0.1"\nport = {port or free_port()}\n{access}'
    )
    return path


def lines_until(process: subprocess.Popen[str], words: str) -> list[str]:
    """Read what is printed up to and with the line that holds these words."""
    assert process.stdout is not None
    found: list[str] = []
    while not found or words not in found[-1]:
        found.append(process.stdout.readline())
        assert found[-1], f"it ended before {words!r}: {found}"
    return found


def test_the_class_result_stays_to_be_read_until_ctrl_c(tmp_path: Path) -> None:
    with rehearsal(tmp_path, "--benches", "1", "--speed", "200") as (process, url):
        told = lines_until(process, "Ctrl-C")
        assert any("All benches have finished." in line for line in told)
        shown = asked(f"{url}api/room/class")
        answer = [shown["result"]["answer"], *shown["result"]["plain"]]
        assert [line.strip() for line in told if line.strip() in answer] == answer
        assert process.poll() is None
        os.killpg(process.pid, signal.SIGINT)  # as a terminal does: to all of them
        out, err = process.communicate(timeout=PATIENCE_S)
    assert process.returncode == 0, err
    assert "Traceback" not in err
    assert out == "", "the class result is told once"


def test_with_minutes_it_ends_after_them_though_the_benches_have_long_finished(tmp_path: Path) -> None:
    with rehearsal(tmp_path, "--benches", "1", "--speed", "200", "--minutes", "80") as (process, _):
        out, err = process.communicate(timeout=5 * PATIENCE_S)
    assert process.returncode == 0, err
    assert out.count("One bench so far") + out.count("No bench has ended a repeat yet.") == 1
    assert ("All benches have finished." in out) == ("The room stays open" in out)


def test_a_room_of_its_own_is_where_the_settings_say(tmp_path: Path) -> None:
    port = free_port()
    config = str(room_settings(tmp_path, port))
    arguments = ("--config", config, "--benches", "1", "--minutes", "1", "--speed", "60")
    with rehearsal(tmp_path, *arguments) as (process, url):
        assert url == f"http://127.0.0.1:{port}/"
        assert process.wait(PATIENCE_S) == 0


def test_beside_a_room_with_a_passphrase_it_is_given_in_a_file(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    hashed = (HASHED.teacher_passphrase_hash, HASHED.technician_passphrase_hash)
    access = '[access]\nteacher_passphrase_hash = "{}"\ntechnician_passphrase_hash = "{}"\n'.format(*hashed)
    config, words = str(room_settings(tmp_path, access=access)), tmp_path / "words"
    beside = ["--config", config, "--benches", "1", "--minutes", "1", "--speed", "60"]
    room = subprocess.Popen([*RUN, "room", "--config", config], stdout=subprocess.PIPE, text=True)
    try:
        assert room.stdout is not None
        url = room.stdout.readline().removeprefix("Room: ").strip()
        assert main(["rehearse", *beside]) == 2
        assert "add --passphrase-file FILE" in capsys.readouterr().err
        assert main(["rehearse", *beside, "--passphrase-file", str(words)]) == 2
        assert "the passphrase cannot be read" in capsys.readouterr().err
        words.write_text("not this one, but another\n")
        assert main(["rehearse", *beside, "--passphrase-file", str(words)]) == 2
        told = capsys.readouterr().err
        assert "does not accept this passphrase" in told
        assert "another" not in told
        for right in (TEACHER, TECHNICIAN):
            words.write_text(f"{right}\n")
            with rehearsal(tmp_path, *beside, "--passphrase-file", str(words)) as (process, here):
                assert here == url
                _, err = process.communicate(timeout=PATIENCE_S)
                assert process.returncode == 0, err
        assert room.poll() is None
    finally:
        room.terminate()
        room.communicate(timeout=PATIENCE_S)


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
