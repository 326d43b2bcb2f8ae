"""What is looked at before anything is installed, and how releases lie side by side.

tests/kit/update_for_real.py installs, switches and goes back with real environments and a real station, on demand.
"""

import os
import stat
import zipfile
from pathlib import Path

import pytest

from station.command import update as module
from station.command.main import main
from station.command.terminal import CommandError
from station.kit import releases
from station.kit.offer import SUMS, checked_wheel, taken, verified, write_sums
from station.kit.table import KitError
from station.kit.trial import tried
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
    assert not offer.is_named("0" * 64) and not offer.is_named(f"{offer.digest}0")


def test_a_single_wheel_names_itself(stick: Path, copy: Path) -> None:
    (line,) = (line for line in (stick / SUMS).read_text().splitlines() if line.endswith(NAME))
    assert line == f"{taken(stick / NAME, copy).digest}  {NAME}"


def spoil_byte(stick: Path) -> None:
    content = bytearray((stick / NAME).read_bytes())
    content[40] ^= 1
    (stick / NAME).write_bytes(content)


def endless(stick: Path) -> None:
    """To copy it would fill the card."""
    (stick / NAME).unlink()
    (stick / NAME).symlink_to("/dev/zero")


def endless_list(stick: Path) -> None:
    (stick / SUMS).unlink()
    (stick / SUMS).symlink_to("/dev/zero")


def linked(stick: Path) -> None:
    (stick / NAME).rename(stick.parent / NAME)
    (stick / NAME).symlink_to(stick.parent / NAME)


def pipe(stick: Path) -> None:
    """To open it would wait for ever."""
    (stick / NAME).unlink()
    os.mkfifo(stick / NAME)


def another_wheel(stick: Path) -> None:
    (stick / "extra-1.0-py3-none-any.whl").write_bytes(b"PK")


@pytest.mark.fault("unlisted-wheels")
@pytest.mark.parametrize(
    ("spoil", "words"),
    [
        (spoil_byte, f"{NAME}: not as {SUMS} has it"),
        (endless, f"{NAME}: a link; take the file itself"),
        (endless_list, f"{SUMS}: a link"),
        (linked, f"{NAME}: a link"),
        (pipe, f"{NAME}: not a file"),
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
    assert NAME not in {each.name for each in copy.iterdir() if each.stat().st_size > 1 << 20}


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


@pytest.mark.fault("cut-update")
def test_a_roll_back_leaves_both_links_where_they_led(home: Path) -> None:
    first, second, third = (home / "releases" / name for name in ("first", "0.2.0", "0.3.0"))
    releases.switch(home, second)
    before = releases.current(home), releases.earlier(home)
    assert before == (second, first)
    releases.switch(home, third)
    releases.restore(home, *before)
    assert (releases.current(home), releases.previous(home)) == before


@pytest.mark.fault("cut-update")
def test_a_roll_back_of_the_first_update_leaves_no_earlier_release(home: Path) -> None:
    assert releases.earlier(home) is None
    before = releases.current(home)
    releases.switch(home, home / "releases" / "0.2.0")
    releases.restore(home, before, None)
    assert (releases.current(home), releases.earlier(home)) == (before, None)
    assert not (home / "previous").is_symlink()


@pytest.mark.fault("cut-update")
def test_an_update_that_does_not_come_up_leaves_links_and_wheels_as_they_were(
    home: Path, stick: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The service says at once that it did not start; installing and trying for real: update_for_real.py."""
    releases.switch(home, home / "releases" / "0.2.0")
    older = tmp_path / "older"
    older.mkdir()
    packed_as(older / "benchwarm-0.2.0-py3-none-any.whl", INFO, FILES)
    releases.keep_wheels(home, older)
    (home / "releases" / "9.8.7" / "bin").mkdir(parents=True)  # what an update left whose power was cut
    (home / ".update-x").mkdir()
    kept = sorted((home / "wheelhouse").iterdir())
    restarted: list[str] = []

    def made(home: Path, version: str, wheels: Path, options: object = ()) -> Path:
        station = home / "releases" / version / "bin" / "station"
        assert not station.parent.exists(), "the half-made one was thrown away"
        station.parent.mkdir(parents=True)
        station.touch()
        return station.parents[1]

    def restart() -> bool:
        restarted.append(releases.current(home).name)
        return False

    monkeypatch.setattr(releases, "installed", made)
    monkeypatch.setattr(module, "tried", lambda *_: None)
    digest = write_sums(stick)
    with pytest.raises(CommandError, match=r"9\.8\.7 did not come up"):
        module.update(home, stick, digest, module.Service(restart, None), None, tmp_path / "record")
    assert restarted == ["9.8.7", "0.2.0"]
    assert (releases.current(home).name, releases.previous(home).name) == ("0.2.0", "first")
    assert sorted((home / "wheelhouse").iterdir()) == kept
    assert not (home / "releases" / "9.8.7").exists()
    assert not list(home.glob(".update-*"))


@pytest.mark.fault("cut-update")
def test_an_earlier_version_that_does_not_come_up_is_left_again(home: Path) -> None:
    releases.switch(home, home / "releases" / "0.2.0")
    restarted: list[str] = []

    def restart() -> bool:
        restarted.append(releases.current(home).name)
        return restarted[-1] == "0.2.0"

    with pytest.raises(CommandError, match=r"first did not come up .*; 0\.2\.0 is at work again"):
        module.go_back(home, module.Service(restart, None))
    assert restarted == ["first", "0.2.0"]
    assert (releases.current(home).name, releases.previous(home).name) == ("0.2.0", "first")


def test_why_a_version_does_not_start_is_told(tmp_path: Path) -> None:
    """A program that ends with a traceback says the reason in its last line, on stderr."""
    station = tmp_path / "release" / "bin" / "station"
    station.parent.mkdir(parents=True)
    station.write_text("#!/bin/sh\nexec python3 -c 'raise RuntimeError(\"spoilt here\")'\n")
    station.chmod(0o755)
    with pytest.raises(KitError, match="does not start: RuntimeError: spoilt here"):
        tried(tmp_path / "release", "9.8.7", tmp_path, None, tmp_path)


def test_the_newest_wheels_are_kept_once_each(home: Path, stick: Path) -> None:
    releases.keep_wheels(home, stick)
    newer = "benchwarm-9.9.0-py3-none-any.whl"
    (stick / NAME).rename(stick / newer)
    releases.keep_wheels(home, stick)
    kept = {each.name for each in (home / "wheelhouse").iterdir()}
    assert newer in kept and NAME not in kept
    assert newer in (home / "wheelhouse" / SUMS).read_text()


@pytest.mark.fault("unlisted-wheels")
def test_wheels_that_are_not_as_their_list_has_them_are_offered_to_nobody(home: Path, stick: Path) -> None:
    assert [each.name for each in verified(stick)] == sorted(each.name for each in stick.glob("*.whl"))
    (stick / "extra-1.0-py3-none-any.whl").write_bytes(b"PK")
    spoil_byte(stick)
    assert [each.name.partition("-")[0] for each in verified(stick)] == ["pip"]
    releases.keep_wheels(home, stick)
    (pip,) = (home / "wheelhouse").glob("pip-*.whl")
    pip.write_bytes(b"PK")
    with pytest.raises(KitError, match="no pip wheel, here or from earlier"):
        releases.installed(home, "9.8.7", stick.parent / "copy")
    (stick / SUMS).unlink()
    assert verified(stick) == []


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
        ([str(stick), "--sha256", digest[:15]], "15 digits are too few to be sure; give the first 16, or all"),
        ([str(stick), "--sha256", ""], "0 digits are too few"),
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
