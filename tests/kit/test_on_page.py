"""Cards made by a running station: the folders that `station kit` makes, in one zip; mistakes told as it tells them."""

import io
import re
import tomllib
import zipfile
from pathlib import Path

import pytest

from station.kit.card import SCRIPTS, UNITS, WORDS_FILE
from station.kit.on_card import network
from station.kit.on_page import EVERY_CARD, NO_WHEELS, made_on_page, wheelhouse_here
from station.kit.table import KitError
from station.server.door.secrets import LONGEST
from tests.records import PLAN_TEXT

TABLE = 'country = "IE"\n[[kit]]\nnumber = 1\n[[kit]]\nnumber = 2\nname = "By the door"\n'
FOR_WINDOWS = "\ufeff" + TABLE.replace("\n", "\r\n")


def unzipped(content: bytes) -> dict[str, bytes]:
    with zipfile.ZipFile(io.BytesIO(content)) as zipped:
        assert zipped.testzip() is None
        return {name: zipped.read(name) for name in zipped.namelist()}


@pytest.fixture(scope="module")
def house(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Wheels by their names: what is in them is not looked at here."""
    folder = tmp_path_factory.mktemp("house")
    for name in ("pip-25.0-py3-none-any.whl", "benchwarm-0.1.0-py3-none-any.whl"):
        (folder / name).write_bytes(name.encode() * 1000)
    return folder


@pytest.fixture(scope="module")
def made(house: Path) -> dict[str, bytes]:
    return unzipped(b"".join(made_on_page(FOR_WINDOWS, "\ufeff" + PLAN_TEXT.replace("\n", "\r\n"), house)))


def test_each_card_has_its_folder_and_the_wheels_are_there_once(made: dict[str, bytes]) -> None:
    expected = {"meta-data", "network-config", "user-data", "station.toml", "plan.toml"}
    expected |= {f"benchwarm/{name}" for name in SCRIPTS} | {f"benchwarm/systemd/{name}" for name in UNITS}
    expected.add(f"benchwarm/{WORDS_FILE}")
    expected.add(f"benchwarm/{network.FILE}")
    for bench in ("bench-1", "bench-2"):
        assert {name.removeprefix(f"{bench}/") for name in made if name.startswith(f"{bench}/")} == expected
    wheels = {name for name in made if name.endswith(".whl")}
    assert wheels == {
        f"{EVERY_CARD}/benchwarm/wheelhouse/{name}"
        for name in ("pip-25.0-py3-none-any.whl", "benchwarm-0.1.0-py3-none-any.whl")
    }
    assert made["READ-ME-FIRST.txt"].count(b"\r\n") > 5
    assert NO_WHEELS.encode() not in made["READ-ME-FIRST.txt"]
    assert b"No lgpio wheel" in made["READ-ME-FIRST.txt"]


def test_the_sheets_fit_the_cards_and_the_cards_hold_only_hashes(made: dict[str, bytes]) -> None:
    words = re.findall(r"class=['\"]code['\"]>([^<]+)<", made["codes-and-passphrases.html"].decode())
    assert len(words) == 4, "two codes, and the passphrases of the whole set"
    cards = b"".join(content for name, content in made.items() if name.startswith("bench-")).decode()
    assert not any(each in cards for each in words)
    assert all(len(each) <= LONGEST for each in words)
    for bench in ("bench-1", "bench-2"):
        access = tomllib.loads(made[f"{bench}/station.toml"].decode())["access"]
        assert all(value.startswith("$argon2id$") for value in access.values())
    assert "By the door" in made["labels.html"].decode()


def test_without_wheels_it_says_what_follows() -> None:
    made = unzipped(b"".join(made_on_page(TABLE, None, None)))
    assert NO_WHEELS.encode() in made["READ-ME-FIRST.txt"]
    assert not [name for name in made if name.endswith(".whl")]


@pytest.mark.parametrize(
    ("table", "plan", "words"),
    [
        (TABLE.replace("number = 2", "nubmer = 2"), None, r"kits.toml: line 4: .*kit.*number: missing"),
        ("country", None, "kits.toml: not valid TOML"),
        (TABLE.replace("number = 2", "number = 1"), None, "kits.toml: line 5: .*twice"),
        ('plan = "p.toml"\n' + TABLE, None, r"kits.toml: line 1: it names the plan p.toml; choose that file as well"),
        (TABLE, "[acid]\nname = 3\n", r"plan.toml: "),
        (TABLE, "\x00", r"plan.toml: "),
    ],
)
def test_mistakes_are_told_before_anything_is_made(table: str, plan: str | None, words: str) -> None:
    with pytest.raises(KitError, match=words):
        made_on_page(table, plan, None)


def test_the_wheels_are_where_the_newest_installation_came_from(house: Path, tmp_path: Path) -> None:
    assert wheelhouse_here(house) == house
    (tmp_path / "pip-25.0-py3-none-any.whl").touch()
    assert wheelhouse_here(tmp_path) is None
    assert wheelhouse_here(tmp_path / "no") is None
