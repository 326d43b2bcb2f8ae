"""What goes onto a card: settings that the station reads, YAML that others read, hashes and never the words."""

import asyncio
import json
import re
from pathlib import Path

import pytest
import tomli_w

from station.command.room.settings import load_room_settings
from station.command.settings import load_settings
from station.kit.card import SSH_FILE, UNITS, card_files, network_toml, user_data
from station.kit.on_card.network import Network, read
from station.kit.sheets import CODE_LETTERS, KitSecrets, address, labels_sheet, new_secrets, secrets_sheet
from station.kit.table import Kits, kits_from
from tests.records import PLAN_TEXT

KITS = kits_from(
    'country = "IE"\nlanguage = "de"\nnetwork = { ssid = "Lab: 4\\"", password = "pass: #word" }\n'
    '[[kit]]\nnumber = 3\nname = "Bench <3> \\"left\\""\n[[kit]]\nnumber = 12\n',
    "kits.toml",
)


@pytest.fixture(scope="module")
def secrets() -> KitSecrets:
    return new_secrets()


@pytest.fixture(scope="module")
def files(secrets: KitSecrets) -> dict[str, str]:
    return card_files(KITS, KITS.kit[0], secrets, PLAN_TEXT)


def test_the_station_reads_its_settings(files: dict[str, str], secrets: KitSecrets, tmp_path: Path) -> None:
    (tmp_path / "station.toml").write_text(files["station.toml"], encoding="utf-8")
    settings, _ = load_settings(tmp_path / "station.toml")
    assert settings.bench.name == 'Bench <3> "left"'
    assert (settings.panel.pins, settings.page.language, str(settings.plan)) == ("real", "de", "plan.toml")
    access = settings.access.secrets()
    for holder, words in (("bench", secrets.bench_code), ("teacher", secrets.teacher_passphrase)):
        assert asyncio.run(access.right(holder, words))  # type: ignore[arg-type]
        assert not asyncio.run(access.right(holder, "other words"))  # type: ignore[arg-type]


@pytest.mark.parametrize("name", ["Bench 🧪", "台 № 5", "C:\\new", "a # b = c", 'it\'s "7"', "𝛥ϑ?"])
def test_any_name_of_a_bench_reaches_its_settings(name: str, secrets: KitSecrets, tmp_path: Path) -> None:
    table = tomli_w.dumps({"kit": [{"number": 7, "name": name}, {"number": 8, "name": f"{name} 2", "room": True}]})
    kits = kits_from(table, "kits.toml")
    bench, room = (card_files(kits, kit, secrets, None, [(each, secrets) for each in kits.kit]) for kit in kits.kit)
    (tmp_path / "station.toml").write_text(bench["station.toml"], encoding="utf-8")
    (tmp_path / "room.toml").write_text(room["room.toml"], encoding="utf-8")
    settings, _ = load_settings(tmp_path / "station.toml")
    assert (settings.bench.name, settings.link.user) == (name, "bench-7")
    assert load_room_settings(tmp_path / "room.toml")[0].room.name == f"{name} 2"
    assert "local-hostname: bench-7\n" in bench["meta-data"]


@pytest.mark.fault("secrets")
def test_no_word_that_opens_anything_is_on_the_card(files: dict[str, str], secrets: KitSecrets) -> None:
    text = "\n".join(files.values())
    for words in (secrets.bench_code, secrets.teacher_passphrase, secrets.technician_passphrase):
        assert words not in text
        assert words.replace("-", "") not in text


def test_the_network_is_written_as_it_is_called(files: dict[str, str]) -> None:
    """Wi-Fi stands in one place, network.toml; cloud-init knows the cable alone, in netplan's format."""
    found = read(files["benchwarm/network.toml"])
    assert found == Network(ssid='Lab: 4"', password="pass: #word", country="IE")
    assert json.loads(files["network-config"])["network"].keys() == {"version", "ethernets"}
    assert json.loads(files["network-config"])["network"]["ethernets"]["eth0"]["optional"], "the boot waits for none"
    assert "pass: #word" not in "".join(text for name, text in files.items() if name != "benchwarm/network.toml")


def test_the_first_boot_runs_one_script_and_opens_no_door(files: dict[str, str]) -> None:
    head, _, body = files["user-data"].partition("\n")
    assert head == "#cloud-config"
    data = json.loads(body)
    assert data == user_data(KITS, KITS.kit[0])
    # Not "runcmd": cloud-init marks that as done before it has run, and does not run it again.
    assert data["bootcmd"] == [["bash", "/boot/firmware/benchwarm/first-start.sh"]]
    assert "runcmd" not in data
    assert data["ssh_pwauth"] is False
    assert data["users"] == [{"name": "technician", "shell": "/bin/bash", "lock_passwd": True}]
    assert {"benchwarm/first-start.sh", "benchwarm/install.sh"} <= set(files)


def test_every_unit_is_on_the_card(files: dict[str, str]) -> None:
    root = Path(__file__).parents[2] / "systemd"
    assert {each.name for each in root.iterdir()} == set(UNITS)
    for name in UNITS:
        assert files[f"benchwarm/systemd/{name}"] == (root / name).read_text(encoding="utf-8")


def test_each_kit_has_its_own_words() -> None:
    drawn = [new_secrets() for _ in range(200)]
    words = [each for kit in drawn for each in (kit.bench_code, kit.teacher_passphrase, kit.technician_passphrase)]
    assert len(set(words)) == 600
    assert all(re.fullmatch(rf"[{CODE_LETTERS}]{{4}}-[{CODE_LETTERS}]{{4}}", each.bench_code) for each in drawn)


def test_a_card_written_again_configures_itself_again(secrets: KitSecrets) -> None:
    """cloud-init acts once for each instance-id."""
    ids = {card_files(KITS, KITS.kit[0], each, None)["meta-data"] for each in (secrets, secrets)}
    assert len(ids) == 2


def test_the_label_says_where_and_the_other_sheet_what_opens(secrets: KitSecrets) -> None:
    labels, sheet = labels_sheet([(KITS.kit[0], secrets)]), secrets_sheet([(KITS.kit[0], secrets)])
    assert address(KITS.kit[0]) == "http://bench-3.local:8080/"
    assert "Bench &lt;3&gt; &quot;left&quot;" in labels
    assert secrets.bench_code in labels
    assert secrets.teacher_passphrase not in labels
    assert {secrets.bench_code, secrets.technician_passphrase} <= set(re.findall(r">([^<]+)<", sheet))


def test_without_wifi_there_is_the_cable() -> None:
    kits: Kits = kits_from("[[kit]]\nnumber = 1\n", "kits.toml")
    text = network_toml(kits, kits.kit[0])
    assert read(text) is None
    assert all(line.startswith("#") for line in text.splitlines())


def test_with_a_key_the_technician_may_sign_in_and_without_one_nobody(files: dict[str, str]) -> None:
    key = "ssh-ed25519 AAAAC3NzaC1lZDI1NTE5AAAAIOWN technician"
    kits = kits_from(f'ssh_key = "{key}"\n[[kit]]\nnumber = 1\n', "kits.toml")
    with_key = card_files(kits, kits.kit[0], new_secrets(), None)
    (technician,) = json.loads(with_key["user-data"].partition("\n")[2])["users"]
    assert technician["ssh_authorized_keys"] == [key]
    assert technician["sudo"] == "ALL=(ALL) NOPASSWD:ALL"
    assert technician["lock_passwd"], "by key alone"
    assert f"benchwarm/{SSH_FILE}" in with_key
    assert f"benchwarm/{SSH_FILE}" not in files
