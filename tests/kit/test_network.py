"""The network from a file on the boot partition: read, checked, given to NetworkManager.

Only nmcli is a stand-in, since no NetworkManager runs here: a script on PATH that writes down how it was called. The
password, and the name in bytes, are expected as `nmcli --offline connection add` of NetworkManager 1.42 printed them
(run by hand). raspi-config and rfkill are not here, and what is told then is looked at.
"""

import configparser
import re
import subprocess
import sys
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from station.kit.on_card import network
from station.kit.on_card.network import Network, NetworkError, keyfile, read, toml
from tests.conftest import PATIENCE_S

RECORDER = """#!/bin/sh
printf '%s\\n' "$*" >> "$NMCLI_LOG"
case " $* " in *" $NMCLI_FAILS "*) exit 4 ;; esac
"""
LAB = 'ssid = "Lab 2"\npassword = "long enough"\ncountry = "IE"\n'


class Card:
    """A folder that stands for the card, and what nmcli was asked."""

    def __init__(self, folder: Path) -> None:
        self.boot = folder / "boot" / "firmware"
        self.root, self.here, self.log = folder, self.boot / "benchwarm", folder / "nmcli.log"
        self.here.mkdir(parents=True)
        tool = folder / "bin" / "nmcli"
        tool.parent.mkdir()
        tool.write_text(RECORDER)
        tool.chmod(0o755)
        (self.boot / "cmdline.txt").write_text("console=tty1 cfg80211.ieee80211_regdom=IE\n")
        self.path = folder / network.KEYFILES / "benchwarm.nmconnection"

    def start(self, text: str | None, fails: str = "nothing") -> "subprocess.CompletedProcess[str]":
        """One start of the card with this network.toml: the script as the unit runs it."""
        self.log.write_text("")
        if text is not None:
            (self.here / network.FILE).write_text(text)
        return subprocess.run(
            [sys.executable, "-I", network.__file__, str(self.here), str(self.root)],
            env={"PATH": str(self.root / "bin") + ":/usr/bin:/bin", "NMCLI_LOG": str(self.log), "NMCLI_FAILS": fails},
            capture_output=True,
            text=True,
            check=False,
            timeout=PATIENCE_S,
        )

    @property
    def asked(self) -> list[str]:
        return self.log.read_text().splitlines()

    @property
    def told(self) -> list[str]:
        return (self.here / network.RESULT).read_text().splitlines()


@pytest.fixture
def card(tmp_path: Path) -> Card:
    return Card(tmp_path)


def test_the_file_reaches_networkmanager_once_and_the_radio_at_every_start(card: Card) -> None:
    assert card.start(LAB).returncode == 0
    assert card.asked == [
        "radio wifi on",
        f"connection load {card.path}",
        "--wait 60 connection up id benchwarm",
    ]
    assert card.path.stat().st_mode & 0o777 == 0o600, "NetworkManager refuses what others may read"
    assert card.told[-1] == 'network: Wi-Fi "Lab 2", reached'
    assert "radio: country IE, on" in card.told
    card.start(None)
    assert card.asked == ["radio wifi on"]
    assert card.told[-1] == 'network: Wi-Fi "Lab 2", as before'


def test_a_changed_file_takes_the_place_of_the_network_before(card: Card) -> None:
    card.start(LAB)
    card.start('ssid = "Hall"\ncountry = "FR"\nhidden = true\n')
    found = configparser.ConfigParser()
    found.read(card.path)
    assert found["wifi"]["ssid"] == "Hall"
    assert found["wifi"]["hidden"] == "true"
    assert "wifi-security" not in found
    assert [each.name for each in card.path.parent.iterdir()] == ["benchwarm.nmconnection"]
    assert card.asked[-1] == "--wait 60 connection up id benchwarm"


def test_the_cable_alone_takes_the_wi_fi_away(card: Card) -> None:
    card.start(LAB)
    assert card.start("wired = true\n").returncode == 0
    assert card.asked == ["radio wifi off", "connection delete id benchwarm"]
    assert not card.path.exists()
    assert card.told == ["radio: off", "network: the cable alone"]


def test_a_country_that_the_system_does_not_have_yet_is_set_by_its_own_tool(card: Card) -> None:
    """raspi-config is not here: that it is asked for, and how, is seen by what is run."""
    asked: list[tuple[str, ...]] = []

    def run(words: object) -> int:
        asked.append(tuple(words))  # type: ignore[arg-type]
        return 0

    wanted = Network("Lab", "long enough", country="DE")
    lines = network.radio(wanted, card.boot / "cmdline.txt", run)
    assert asked == [
        ("raspi-config", "nonint", "do_wifi_country", "DE"),
        ("rfkill", "unblock", "wifi"),
        ("nmcli", "radio", "wifi", "on"),
    ]
    assert lines == ["radio: country DE, on"]
    card.start(LAB.replace("IE", "DE"))
    assert "AMBER: the system's tool (raspi-config) did not set the country DE" in card.told


@pytest.mark.parametrize(("fails", "words"), [("load", "did not take"), ("up", "was not reached"), ("on", "radio on")])
def test_what_did_not_go_well_is_told_and_tried_again(card: Card, fails: str, words: str) -> None:
    assert card.start(LAB, fails).returncode == 0
    assert any(line.startswith("AMBER") and words in line for line in card.told)
    assert card.path.exists(), "NetworkManager goes on trying"


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("ssid = ", "not valid TOML"),
        ('ssid = "Lab"\n', "country: Wi-Fi needs it"),
        ('ssid = "Lab"\ncountry = "ie"\n', "two capital letters"),
        ('ssid = "Lab"\npassword = "short"\ncountry = "IE"\n', "password: 8 to 63"),
        ('sid = "Lab"\n', "sid: not known"),
        ("wired = 1\n", "wired: must be true or false"),
        (f"wired = true\n{LAB}", "one or the other"),
        (f'ssid = "{"ä" * 17}"\ncountry = "IE"\n', "1 to 32 bytes"),
    ],
)
def test_a_mistake_changes_nothing_and_is_told(card: Card, text: str, words: str) -> None:
    card.start(LAB)
    before = card.path.read_text()
    assert card.start(text).returncode == 1
    assert card.path.read_text() == before
    assert card.asked == []
    assert words in card.told[0]
    assert card.told[0].startswith("FAILED: network.toml: ")
    assert "long enough" not in "".join(card.told), "no password in what is told"


@pytest.mark.parametrize("text", [None, "# nothing\n", 'country = "IE"\n'])
def test_without_a_wish_nothing_is_changed(card: Card, text: str | None) -> None:
    assert card.start(text).returncode == 0
    assert card.asked == []
    assert not card.path.exists()


def test_a_file_as_an_editor_of_windows_writes_it(card: Card) -> None:
    assert card.start("\ufeff" + LAB.replace("\n", "\r\n")).returncode == 0
    assert "ssid=Lab 2\n" in card.path.read_text()


@pytest.mark.parametrize(
    ("ssid", "written"),
    [
        ("Lab 2", "Lab 2"),
        ("Läb;", "76;195;164;98;59;"),
        (" x", "32;120;"),
    ],
)
def test_a_name_beyond_letters_is_written_in_bytes(ssid: str, written: str) -> None:
    assert f"\nssid={written}\n" in keyfile(Network(ssid, country="IE"))


def test_a_password_as_nmcli_writes_it() -> None:
    assert '\npsk=\\sp\\\\a;#" xyz \n' in keyfile(Network("Lab", ' p\\a;#" xyz ', country="IE"))


NAMES = st.text(st.characters(categories=("L", "N", "P", "S", "Zs")), min_size=1, max_size=32).filter(
    lambda text: text.isprintable() and len(text.encode()) <= 32
)
WORDS = st.text(st.characters(min_codepoint=32, max_codepoint=126), min_size=8, max_size=63)


@given(NAMES, st.none() | WORDS, st.booleans())
def test_what_is_written_is_what_is_read(ssid: str, password: str | None, hidden: bool) -> None:
    wanted = Network(ssid, password, hidden, "IE")
    assert read(toml(wanted)) == wanted
    text = keyfile(wanted)
    (line,) = [line for line in text.splitlines() if line.startswith("ssid=")]
    value = line.removeprefix("ssid=")
    shown = bytes(int(each) for each in value.split(";")[:-1]).decode() if value.endswith(";") else value
    assert shown == ssid
    if password is not None:
        (line,) = [line for line in text.splitlines() if line.startswith("psk=")]
        assert unescaped(line.removeprefix("psk=")) == password


def unescaped(value: str) -> str:
    r"""What GLib makes of a value: \s is a blank, \\ a backslash (desktop entry specification)."""
    return re.sub(r"\\(.)", lambda found: " " if found[1] == "s" else found[1], value)


def test_the_cable_needs_no_keyfile() -> None:
    with pytest.raises(ValueError, match="by itself"):
        keyfile(Network())


def test_a_mistake_is_an_error_of_its_own() -> None:
    with pytest.raises(NetworkError):
        read("wired = 0")
