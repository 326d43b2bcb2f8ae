"""What a table with a room gives: a password for each bench, hashes for the room, a Mosquitto that takes them."""

import asyncio
import re
import socket
import subprocess
import time
import tomllib
from collections.abc import Iterator
from contextlib import contextmanager
from html import escape
from pathlib import Path

import pytest
from argon2 import PasswordHasher

from station.command.room.settings import load_room_settings
from station.command.settings import load_settings
from station.kit.card import card_files
from station.kit.room import Drawn, laptop_files
from station.kit.sheets import drawn_for as drawn_of
from station.kit.sheets import labels_sheet, new_secrets, secrets_sheet
from station.kit.table import KitError, Kits, kits_from
from station.room.broker import PrivateBroker, _free_ports
from station.room.mqtt import BrokerLost, connected
from station.room.wire import BrokerAddress
from tests.conftest import PATIENCE_S, free_port

ROOM = kits_from("[[kit]]\nnumber = 1\n[[kit]]\nnumber = 2\n[[kit]]\nnumber = 3\nroom = true\n", "kits.toml")
LAPTOP = kits_from('broker = "laptop.local"\n[[kit]]\nnumber = 1\n[[kit]]\nnumber = 2\n', "kits.toml")


def drawn_for(kits: Kits) -> Drawn:
    return [(kit, new_secrets()) for kit in kits.kit]


@pytest.fixture(scope="module")
def drawn() -> Drawn:
    return drawn_for(ROOM)


def cards(kits: Kits, drawn: Drawn) -> dict[str, dict[str, str]]:
    return {kit.hostname: card_files(kits, kit, secrets, None, drawn) for kit, secrets in drawn}


def test_a_bench_finds_the_room_and_has_a_password_of_its_own(drawn: Drawn, tmp_path: Path) -> None:
    made = cards(ROOM, drawn)
    for name in ("station.toml", "link-password"):
        (tmp_path / name).write_text(made["bench-2"][name])
    settings, _ = load_settings(tmp_path / "station.toml")
    link = settings.link
    assert (link.broker, link.user) == ("mqtt://room.local:1883", "bench-2")
    assert link.password_file == tmp_path / "link-password"
    password = BrokerAddress.read(str(link.broker), link.user, link.password_file).password
    assert password == drawn[1][1].link_password
    assert not [name for name in made["bench-2"] if "mosquitto" in name or name == "room.toml"]


def test_a_password_lies_on_one_card_only_and_on_no_sheet(drawn: Drawn) -> None:
    made = cards(ROOM, drawn)
    for kit, secrets in drawn:
        holders = [name for name, files in made.items() if secrets.link_password in "\n".join(files.values())]
        assert holders == [kit.hostname]
    assert len({secrets.link_password for _, secrets in drawn}) == 3
    for sheet in (labels_sheet(drawn), secrets_sheet(drawn)):
        assert drawn[0][1].link_password not in sheet
    assert "http://room.local:8080/" in labels_sheet(drawn)


def test_without_a_room_there_is_no_link() -> None:
    kits = kits_from("[[kit]]\nnumber = 1\n", "kits.toml")
    files = card_files(kits, kits.kit[0], new_secrets(), None)
    assert "link" not in files["station.toml"]
    assert "link-password" not in files


def test_the_room_reads_its_settings(drawn: Drawn, tmp_path: Path) -> None:
    (tmp_path / "room.toml").write_text(cards(ROOM, drawn)["room"]["room.toml"])
    settings, base = load_room_settings(tmp_path / "room.toml")
    assert (settings.room.name, settings.room.broker, base) == ("Room", "mqtt://127.0.0.1:1884", tmp_path)
    assert asyncio.run(settings.access.secrets().right("teacher", drawn[2][1].teacher_passphrase))
    assert "station.toml" not in cards(ROOM, drawn)["room"]


@contextmanager
def system_mosquitto(folder: Path, files: dict[str, str]) -> Iterator[tuple[int, int]]:
    """Mosquitto as Debian's service runs it, its files in a folder that stands for /etc/mosquitto.

    Yields the port of the benches and that of the room.
    """
    port, room_port = _free_ports(2)
    (folder / "conf.d").mkdir()
    for name in ("benchwarm.passwords", "benchwarm.acl"):
        (folder / name).write_text(files[f"benchwarm/mosquitto/{name}"])
    text = files["benchwarm/mosquitto/benchwarm.conf"].replace("/etc/mosquitto/", f"{folder}/")
    text = text.replace("listener 1883", f"listener {port} 127.0.0.1").replace("listener 1884", f"listener {room_port}")
    (folder / "conf.d" / "benchwarm.conf").write_text(text)
    # The lines of Debian's own file, with the paths of this folder.
    (folder / "mosquitto.conf").write_text(
        f"pid_file {folder}/pid\npersistence true\npersistence_location {folder}/\nlog_dest file {folder}/log\n"
        f"user root\ninclude_dir {folder}/conf.d\n"
    )
    with subprocess.Popen(["/usr/sbin/mosquitto", "-c", str(folder / "mosquitto.conf")]) as process:
        try:
            until_s = time.monotonic() + PATIENCE_S
            while time.monotonic() < until_s:
                with socket.socket() as probe:
                    if probe.connect_ex(("127.0.0.1", port)) == 0:
                        break
                assert process.poll() is None, (folder / "log").read_text()
                time.sleep(0.02)
            yield port, room_port
        finally:
            process.terminate()


async def lets_in(port: int, user: str, password: str) -> bool:
    try:
        async with connected(BrokerAddress("127.0.0.1", port, user, password), lambda *_: None):
            return True
    except BrokerLost as error:
        assert error.refused
        return False


def test_one_passphrase_each_for_the_whole_set_made_or_chosen_or_each_kits_own() -> None:
    table = "[[kit]]\nnumber = 1\n[[kit]]\nnumber = 2\n"
    chosen = 'broker = "10.0.0.2"\nteacher_passphrase = "seven <b>green</b> cups"\n'
    for words, teachers, technicians in (("", 1, 1), (chosen, 1, 1), ("own_passphrases = true\n", 2, 2)):
        known = drawn_of(kits_from(words + table, "kits.toml"))
        assert len({of.teacher_passphrase for _, of in known}) == teachers
        assert len({of.technician_passphrase for _, of in known}) == technicians
        assert len({of.bench_code for _, of in known}) == len({of.link_password for _, of in known}) == len(known)
        sheet = secrets_sheet(known)
        shared = teachers == 1
        assert sheet.count("<th>") == (2 if shared else 4)
        for kit, of in known:
            assert sheet.count(escape(of.teacher_passphrase)) == 1, "once, wherever it stands"
            assert kit.room or of.bench_code in sheet
    assert [kit.room for kit, _ in drawn_of(kits_from(chosen + table, "kits.toml"))] == [False, False, True]


def test_a_chosen_passphrase_opens_every_kit_and_the_laptop() -> None:
    kits = kits_from('broker = "10.0.0.2"\nteacher_passphrase = "seven green cups"\n[[kit]]\nnumber = 1\n', "kits.toml")
    for _, of in drawn_of(kits):
        hashes = of.hashes()
        assert PasswordHasher().verify(hashes["teacher_passphrase_hash"], "seven green cups")


def test_a_prefix_is_in_addresses_users_labels_and_the_rooms_settings() -> None:
    kits = kits_from('prefix = "b12"\n[[kit]]\nnumber = 1\n[[kit]]\nnumber = 3\nroom = true\n', "kits.toml")
    drawn = drawn_of(kits)
    made = {kit.hostname: card_files(kits, kit, secrets, None, drawn) for kit, secrets in drawn}
    assert set(made) == {"b12-bench-1", "b12-room"}
    link = tomllib.loads(made["b12-bench-1"]["station.toml"])["link"]
    assert (link["broker"], link["user"]) == ("mqtt://b12-room.local:1883", "b12-bench-1")
    assert "\nb12-bench-1:$7$" in "\n" + made["b12-room"]["benchwarm/mosquitto/benchwarm.passwords"]
    assert tomllib.loads(made["b12-room"]["room.toml"])["room"]["prefix"] == "b12"
    labels = labels_sheet(drawn)
    assert "Bench 1 · b12" in labels
    assert "http://b12-bench-1.local:8080/" in labels


def test_a_label_tells_number_wifi_probe_and_lamps_and_no_password() -> None:
    kits = kits_from(
        'country = "IE"\nnetwork = { ssid = "Lab <2>", password = "long enough" }\n'
        '[[kit]]\nnumber = 7\nname = "Door"\nprobe_id = "28-0316a2795fee"\n[[kit]]\nnumber = 8\nroom = true\n',
        "kits.toml",
    )
    labels = labels_sheet(drawn_of(kits), kits.speaks, kits)
    bench, room = labels.split('<div class="label">')[1:]
    for words in ("Door", "Kit number 7", "Wi-Fi: Lab &lt;2&gt;", "Probe 28-0316a2795fee", "green: your turn"):
        assert words in bench
    assert "green" not in room
    assert "long enough" not in labels


async def test_debians_mosquitto_takes_the_files_of_the_room(drawn: Drawn, tmp_path: Path) -> None:
    made = cards(ROOM, drawn)
    with system_mosquitto(tmp_path, made["room"]) as (port, room_port):
        for kit, secrets in drawn:
            assert await lets_in(port, kit.hostname, secrets.link_password)
            assert not await lets_in(port, kit.hostname, drawn[0][1].teacher_passphrase)
        room = drawn[2][1].link_password
        assert await lets_in(room_port, "room", room)
        assert not await lets_in(room_port, "room", drawn[0][1].link_password)


def test_mosquittos_service_may_have_as_many_files_as_its_settings_count_on(drawn: Drawn) -> None:
    files = cards(ROOM, drawn)["room"]
    limit = int(re.findall(r"^LimitNOFILE=(\d+)$", files["benchwarm/mosquitto/service.conf"], re.MULTILINE)[0])
    connections = re.findall(r"^max_connections (\d+)$", files["benchwarm/mosquitto/benchwarm.conf"], re.MULTILINE)
    assert len(connections) == 2
    assert 1100 < sum(map(int, connections)) < limit - 20
    unit = (Path(__file__).parents[2] / "systemd" / "station-room.service").read_text()
    assert f"\nLimitNOFILE={limit}\n" in unit, "the private broker is the room's child"


async def test_a_laptop_is_the_room_with_the_files_made_for_it(tmp_path: Path) -> None:
    drawn = drawn_for(LAPTOP)
    for name, text in laptop_files(LAPTOP, new_secrets(), drawn).items():
        (tmp_path / name).parent.mkdir(parents=True, exist_ok=True)
        (tmp_path / name).write_text(text)
    settings, base = load_room_settings(tmp_path / "room" / "room.toml")
    assert settings.room.broker is None
    assert settings.room.folder is not None
    broker = PrivateBroker(base / settings.room.folder / "broker", "127.0.0.1", free_port())
    broker.start()
    try:
        assert await lets_in(broker.address.port, "bench-2", drawn[1][1].link_password)
        assert not await lets_in(broker.address.port, "bench-1", drawn[1][1].link_password)
    finally:
        broker.stop()
    assert "mqtt://laptop.local:1883" in cards(LAPTOP, drawn)["bench-1"]["station.toml"]


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("[[kit]]\nnumber = 1\nroom = true\n[[kit]]\nnumber = 2\nroom = true\nname = 'B'", "there is one room"),
        ('broker = "mqtt://room"\n[[kit]]\nnumber = 1', "line 1: broker"),
        ('broker = "a b"\n[[kit]]\nnumber = 1', "line 1: broker"),
    ],
)
def test_what_cannot_be_is_told(text: str, words: str) -> None:
    with pytest.raises(KitError, match=re.escape(words)):
        kits_from(text, "kits.toml")
