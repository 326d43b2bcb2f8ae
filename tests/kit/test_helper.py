"""The helper: named requests only, over its real socket, with the station's real commands on a real record.

A folder stands for the card, so systemd, mounting and a real stick are left out; they were not tried. nmcli is the
script of tests/kit/test_network.py, since no NetworkManager runs here.
"""

import asyncio
import json
import socket
import tomllib
from collections.abc import AsyncIterator
from pathlib import Path
from typing import Any

import pytest
import tomli_w
from hypothesis import given
from hypothesis import strategies as st

from station.command.settings import load_settings
from station.kit.helper.asking import asked
from station.kit.helper.requests import read
from station.kit.helper.serve import serve
from station.kit.helper.settings import changed
from station.kit.helper.trial import LOOKS, TRIAL, VOLATILE
from station.kit.helper.work import BACKUPS, RECORD, STICK, Helper, Refused, System, only_stick
from station.kit.on_card import network
from station.practical import events as e
from station.record.journal import Journal, Moment, read_events
from station.server.door.secrets import hashed
from station.words import Message
from tests.conftest import PATIENCE_S
from tests.kit.helping import OLD, at_work, card_in

NEW = {"do": "network", "ssid": "New", "password": "long enough too", "country": "IE"}


@pytest.fixture
def system(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> System:
    return card_in(tmp_path, monkeypatch)


@pytest.fixture
async def at(system: System) -> AsyncIterator[str]:
    """The address of a helper at work."""
    async with at_work(system) as path:
        yield path


def record(system: System, count: int) -> None:
    journal = Journal(system.root / RECORD)
    moments = [Moment("boot", float(n), float(n), "2026-01-01T00:00:00Z", "none") for n in range(count)]
    journal.append([(each, e.SampleTaken(20.0)) for each in moments]).result()
    journal.close()


def events(system: System) -> int:
    return sum(1 for _ in read_events(system.root / RECORD))


async def ended(at: str) -> Message:
    """What became of the newest request, once it is no longer at work."""
    for _ in range(2000):
        answer = await asked({"do": "look"}, at)
        if not answer.found["at_work"]:
            return answer.told
        await asyncio.sleep(0.01)
    raise AssertionError("it does not end")


async def test_the_record_goes_to_the_stick_is_wiped_and_comes_back(system: System, at: str) -> None:
    record(system, 7)
    (system.root / STICK / "record-001.backup").write_text("of another bench")
    kept = await asked({"do": "backup"}, at)
    assert kept.done, kept.told
    assert kept.told.values["file"] == "record-002.backup"
    assert (system.root / STICK / "record-001.backup").read_text() == "of another bench"
    assert (await asked({"do": "wipe"}, at)).told.id == "helper-begun", "before the page goes away"
    await ended(at)
    assert not list((system.root / RECORD).glob("journal.sqlite3*"))
    back = await asked({"do": "restore", "place": "stick", "file": "record-002.backup"}, at)
    assert back.done, back.told
    await ended(at)
    assert events(system) == 7
    assert [each.name for each in (system.root / BACKUPS).iterdir()] == [], "no copy stays behind"


async def test_a_copy_of_the_card_comes_back_and_what_is_none_changes_nothing(system: System, at: str) -> None:
    record(system, 4)
    (system.root / BACKUPS / "record-1.backup").write_text("no backup")
    assert (await asked({"do": "look"}, at)).found["copies"] == ["record-1.backup"]
    assert (await asked({"do": "restore", "place": "card", "file": "record-1.backup"}, at)).done
    assert "not a backup" in await ended(at)
    assert events(system) == 4


@pytest.mark.parametrize(
    "request_",
    [
        {"do": "shell", "words": "id"},
        {"do": "restart", "then": "id"},
        {"do": "restore", "place": "card", "file": "../../etc/shadow"},
        {"do": "restore", "place": "/etc", "file": "a.backup"},
        {"do": "update", "sha256": "$(reboot)"},
        {"do": "settings", "teacher_passphrase_hash": 'x"\n[server]'},
        {"do": "network", "ssid": "a\nb", "country": "IE"},
        {"do": "network"},
        {"do": "backup", "x": "y" * 5000},
        [],
    ],
)
async def test_anything_but_the_named_requests_is_refused(system: System, at: str, request_: Any) -> None:
    answer = await asked(request_, at)
    assert not answer.done
    assert answer.told.id in ("helper-not-known", "helper-none")
    assert (await asked({"do": "look"}, at)).done, "and the helper is there for the next"


def test_no_password_stands_in_what_is_logged() -> None:
    assert "long enough too" not in repr(read(json.dumps(NEW).encode()))


async def tried(at: str, **other: Any) -> str:
    answer = await asked({**NEW, **other} if not other.get("wired") else {"do": "network", **other}, at)
    assert answer.done
    return (await ended(at)).id


def nmcli(system: System) -> list[str]:
    return (system.root / "nmcli.log").read_text().splitlines()


async def test_a_network_that_answers_for_a_minute_is_kept(system: System, at: str) -> None:
    assert await tried(at) == "helper-network-kept"
    found = network.read((system.boot / "benchwarm" / network.FILE).read_text())
    assert found == network.Network("New", "long enough too", country="IE")
    assert "ssid=New\n" in (system.root / network.KEYFILES / "benchwarm.nmconnection").read_text()
    assert sum("GENERAL.STATE" in line for line in nmcli(system)) == LOOKS
    assert f"connection delete id {TRIAL}" in nmcli(system)
    assert not list((system.root / VOLATILE).iterdir())


@pytest.mark.parametrize("fails_at", [0, 1, 5])
async def test_one_that_does_not_leaves_the_old_one(
    system: System, at: str, monkeypatch: pytest.MonkeyPatch, fails_at: int
) -> None:
    """Never up, gone at once, gone within the minute."""
    network.apply(system.boot / "benchwarm", system.root, lambda words: system.ask(words)[0])
    before = (system.root / network.KEYFILES / "benchwarm.nmconnection").read_text()
    monkeypatch.setenv("NMCLI_FAILS_AT", str(fails_at))
    assert await tried(at) == "helper-network-back"
    assert (system.boot / "benchwarm" / network.FILE).read_text() == OLD
    assert (system.root / network.KEYFILES / "benchwarm.nmconnection").read_text() == before
    assert nmcli(system)[-1] == "--wait 60 connection up id benchwarm"
    assert not list((system.root / VOLATILE).iterdir())


@pytest.mark.parametrize(("cable", "outcome"), [("connected", "kept"), ("unavailable", "back")])
async def test_the_cable_alone_needs_a_cable(
    system: System, at: str, monkeypatch: pytest.MonkeyPatch, cable: str, outcome: str
) -> None:
    monkeypatch.setenv("NMCLI_CABLE", cable)
    assert await tried(at, wired=True) == f"helper-network-{outcome}"
    assert ("radio wifi off" in nmcli(system)) == (outcome == "kept")


async def test_name_code_and_passphrase_reach_the_stations_settings(system: System, at: str) -> None:
    hash_ = hashed("teacher", "seven new words for the teacher")
    answer = await asked({"do": "settings", "name": 'By "the" door', "teacher_passphrase_hash": hash_}, at)
    assert answer.done, answer.told
    path = system.boot / "station.toml"
    settings, _ = load_settings(path)
    assert settings.bench.name == 'By "the" door'
    assert await settings.access.secrets().right("teacher", "seven new words for the teacher")
    assert path.read_text().startswith("# bench 3\n"), "what people wrote beside stays"


TABLES = st.dictionaries(
    st.sampled_from(["bench", "access", "page"]),
    st.dictionaries(st.sampled_from(["name", "bench_code_hash", "language"]), st.text(max_size=9), max_size=3),
)


@given(TABLES, st.text(max_size=12), st.booleans())
def test_one_value_changes_and_no_other(before: dict[str, dict[str, str]], name: str, spaced: bool) -> None:
    text = tomli_w.dumps(before)
    text = text.replace("[bench]\n", "  [bench] # ours\n# name = 'x'\n") if spaced else text
    after = tomllib.loads(changed(text, {("bench", "name"): name}))
    assert after == {**before, "bench": {**before.get("bench", {}), "name": name}}


@pytest.mark.parametrize("text", ['bench = { name = "x" }\n', 'bench.name = "x"\n', "[bench\n"])
def test_a_file_written_otherwise_is_left_to_people(text: str) -> None:
    with pytest.raises(ValueError, match=r"\w"):
        changed(text, {("bench", "name"): "y"})


def disk(tran: str, *parts: str | None) -> dict[str, Any]:
    children = [{"path": f"/dev/{tran}{n}", "fstype": fstype} for n, fstype in enumerate(parts, 1)]
    return {"path": f"/dev/{tran}", "type": "disk", "tran": tran, "fstype": None, "children": children}


def test_the_only_stick_is_taken_and_never_the_card() -> None:
    """As `lsblk --json -o PATH,TYPE,TRAN,FSTYPE,MOUNTPOINT` of util-linux 2.38 lists disks."""
    card = disk("mmc", "vfat", "ext4")
    assert only_stick(json.dumps({"blockdevices": [card, disk("usb", None, "vfat")]})) == "/dev/usb2"
    bare = {"path": "/dev/sda", "type": "disk", "tran": "usb", "fstype": "exfat"}
    assert only_stick(json.dumps({"blockdevices": [bare]})) == "/dev/sda"
    for listed, words in (
        ([card], "no-stick"),
        ([disk("usb", "vfat")] * 2, "several"),
        ([disk("usb", None)], "no-stick"),
    ):
        with pytest.raises(Refused) as error:
            only_stick(json.dumps({"blockdevices": listed}))
        assert words in error.value.args[0].id
    with pytest.raises(Refused):
        only_stick("")


async def test_without_a_helper_the_answer_says_so(tmp_path: Path) -> None:
    answer = await asked({"do": "restart"}, str(tmp_path / "nobody"))
    assert (answer.done, answer.told.id) == (False, "helper-none")


async def test_it_ends_when_nobody_asks(system: System, tmp_path: Path) -> None:
    with socket.socket(socket.AF_UNIX, socket.SOCK_STREAM) as bound:
        bound.bind(str(tmp_path / "s"))
        bound.listen()
        await asyncio.wait_for(serve(bound, Helper(system), idle_s=0.05), PATIENCE_S)
