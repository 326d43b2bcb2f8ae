"""What is looked at before anything is installed, and how releases lie side by side.

tests/kit/update_for_real.py installs, switches and goes back with real environments and a real station, on demand.
"""

import stat
import zipfile
from pathlib import Path

import pytest

from station.command.main import main
from station.kit import releases
from station.kit.offer import SUMS, checked_wheel, taken, write_sums
from station.kit.table import KitError
from tests.kit.wheels import packed_as, pip_wheel

INFO = "benchwarm-9.8.7.dist-info"
NAME = "benchwarm-9.8.7-py3-none-any.whl"
FILES = {"station/x.py": b"pass\n", f"{INFO}/METADATA": b"Metadata-Version: 2.4\nName: benchwarm\nVersion: 9.8.7\n"}


@pytest.fixture
def stick(tmp_path: Path) -> Path:
    """A folder with a small wheel of the station and a real one of pip, and their list."""
    folder = tmp_path / "stick"
    folder.mkdir()
    packed_as(folder / NAME, INFO, FILES)
    pip_wheel(folder)
    write_sums(folder)
    return folder


@pytest.fixture
def copy(tmp_path: Path) -> Path:
    folder = tmp_path / "copy"
    folder.mkdir()
    return folder


def test_a_whole_wheelhouse_is_taken_and_its_list_names_it(stick: Path, copy: Path) -> None:
    offer = taken(stick, copy)
    assert offer.version == "9.8.7"
    assert {each.name for each in copy.iterdir()} == {each.name for each in stick.iterdir()}
    assert offer.digest == write_sums(stick), "it is the list's own"
    assert offer.is_named(offer.digest) and offer.is_named(f" {offer.digest[:16].upper()}\n")
    assert not offer.is_named(offer.digest[:15]) and not offer.is_named("0" * 64) and not offer.is_named("")


def test_a_single_wheel_names_itself(stick: Path, copy: Path) -> None:
    (line,) = (line for line in (stick / SUMS).read_text().splitlines() if line.endswith(NAME))
    assert line == f"{taken(stick / NAME, copy).digest}  {NAME}"


def spoil_byte(stick: Path) -> None:
    content = bytearray((stick / NAME).read_bytes())
    content[40] ^= 1
    (stick / NAME).write_bytes(content)


def another_wheel(stick: Path) -> None:
    (stick / "extra-1.0-py3-none-any.whl").write_bytes(b"PK")


@pytest.mark.parametrize(
    ("spoil", "words"),
    [
        (spoil_byte, f"{NAME}: not as {SUMS} has it"),
        (another_wheel, "extra-1.0-py3-none-any.whl: not as"),
        (lambda stick: (stick / NAME).unlink(), "is in SHA256SUMS but not there"),
        (lambda stick: (stick / SUMS).unlink(), "no SHA256SUMS in it"),
        (lambda stick: (stick / SUMS).write_text("0" * 64 + "  ../../etc/x.whl\n"), "line 1 is not a digest"),
        (lambda stick: (stick / SUMS).write_text("\x00\xff"), "line 1 is not a digest"),
    ],
)
def test_what_is_not_as_its_list_says_is_refused(stick: Path, copy: Path, spoil, words: str) -> None:  # type: ignore[no-untyped-def]
    spoil(stick)
    with pytest.raises(KitError, match=words):
        taken(stick, copy)


@pytest.mark.parametrize(
    ("files", "record", "words"),
    [
        ({"../x.py": b""}, None, "would not stay in its folder"),
        ({"/etc/x": b""}, None, "would not stay in its folder"),
        ({"a\\..\\b": b""}, None, "would not stay in its folder"),
        ({"station/X.py": b""}, None, "a file comes twice"),
        ({}, f"station/x.py,sha256=AAAA,5\n{INFO}/RECORD,,\n", "is not as its RECORD has it"),
        ({"station/more.py": b""}, f"{INFO}/RECORD,,\n", "is not as its RECORD has it"),
        ({f"{INFO}/METADATA": b"Name: benchwarm\nVersion: 1\n"}, None, "inside it says benchwarm 1"),
        ({f"{INFO}/METADATA": b"Name: other\nVersion: 9.8.7\n"}, None, "inside it says other 9.8.7"),
    ],
)
def test_a_wheel_that_is_not_what_it_says_is_refused(
    tmp_path: Path, files: dict[str, bytes], record: str | None, words: str
) -> None:
    wheel = packed_as(tmp_path / NAME, INFO, {**FILES, **files}, record)
    with pytest.raises(KitError, match=words):
        checked_wheel(wheel)


def test_a_link_or_half_a_file_in_a_wheel_is_refused(tmp_path: Path) -> None:
    wheel = tmp_path / NAME
    with zipfile.ZipFile(wheel, "w") as packed:
        entry = zipfile.ZipInfo("station/link")
        entry.external_attr = (stat.S_IFLNK | 0o777) << 16
        packed.writestr(entry, "/etc/passwd")
    with pytest.raises(KitError, match="would not stay"):
        checked_wheel(wheel)
    whole = packed_as(tmp_path / NAME, INFO, FILES).read_bytes()
    for content in (whole[: len(whole) // 2], b""):
        wheel.write_bytes(content)
        with pytest.raises(KitError, match="not a whole wheel"):
            checked_wheel(wheel)
    with pytest.raises(KitError, match="not the name of a wheel"):
        checked_wheel(tmp_path / "benchwarm.whl")


@pytest.fixture
def home(tmp_path: Path) -> Path:
    """Three releases laid out as on a card; the first is current."""
    for name in ("first", "0.2.0", "0.3.0"):
        station = tmp_path / "home" / "releases" / name / "bin" / "station"
        station.parent.mkdir(parents=True)
        station.touch()
    (tmp_path / "home" / ".venv").symlink_to("releases/first")
    return tmp_path / "home"


def test_releases_are_switched_by_a_link_and_the_one_before_is_kept(home: Path) -> None:
    first, second, third = (home / "releases" / name for name in ("first", "0.2.0", "0.3.0"))
    with pytest.raises(KitError, match="no earlier release"):
        releases.previous(home)
    releases.switch(home, second)
    assert (releases.current(home), releases.previous(home)) == (second, first)
    releases.switch(home, third)
    releases.switch(home, third)  # the same again forgets nothing
    assert (releases.current(home), releases.previous(home)) == (third, second)
    releases.clear(home)
    assert {each.name for each in (home / "releases").iterdir()} == {"0.2.0", "0.3.0"}
    assert (home / ".venv").readlink() == Path("releases/0.3.0"), "relative: a card may be looked at elsewhere"


def test_the_newest_wheels_are_kept_once_each(home: Path, stick: Path) -> None:
    releases.keep_wheels(home, stick)
    newer = "benchwarm-9.9.0-py3-none-any.whl"
    (stick / NAME).rename(stick / newer)
    releases.keep_wheels(home, stick)
    kept = {each.name for each in (home / "wheelhouse").iterdir()}
    assert newer in kept and NAME not in kept
    assert newer in (home / "wheelhouse" / SUMS).read_text()


def test_what_stands_in_the_way_is_one_line(
    home: Path, stick: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    config = tmp_path / "station.toml"
    config.write_text(f'record.folder = "{tmp_path / "record"}"\nserver.port = 1\n')
    common = ["--home", str(home), "--config", str(config)]
    before = sorted(home.rglob("*"))
    digest = write_sums(stick)
    for words, told in (
        ([], "name a wheel or a folder"),
        ([str(stick), "--back"], "name a wheel or a folder"),
        (["--back"], "no earlier release"),
        ([str(stick)], f"SHA-256 {digest}: nothing is installed yet"),
        ([str(stick), "--sha256", "f" * 64], "another SHA-256"),
        ([str(tmp_path / "nothing")], "check the name, and whether the stick is mounted"),
        ([str(stick / SUMS)], "not the name of a wheel"),
    ):
        assert main(["update", *words, *common]) == 2, words
        error = capsys.readouterr().err
        assert told in error and error.count("\n") == 1, error
    assert sorted(home.rglob("*")) == before
    (home / ".venv").unlink()
    (home / ".venv").mkdir()
    assert main(["update", str(stick), *common]) == 2
    assert "not a link into releases" in capsys.readouterr().err
