"""A plug pulled during the first start, anywhere: the next start installs the station, and nothing of it is half there.

The script's whole process group is killed, and what it had not yet written out to the card is emptied, as a cut power
does. tests/kit/test_first_start.py has the start that nobody disturbs.
"""

import os
import random
import signal
import subprocess
import time
from collections.abc import Iterator
from pathlib import Path

import pytest

from tests.conftest import PATIENCE_S
from tests.kit.cards import card_in, run_script

# Sourced by bash before the script: kills the group of processes before the command with this number.
PULL = """\
set -T
count=0
trap '[ $BASHPID = $$ ] && count=$((count + 1)) && [ $count -eq $CUT_AT ] && kill -9 0' DEBUG
"""


class Card:
    """A folder that stands for a bench's card."""

    def __init__(self, root: Path, made: Path) -> None:
        self.root, self.home = root, root / "opt" / "benchwarm"
        self.boot, self.environment = card_in(root, made / "bench-2")
        self.environment["BENCHWARM_PIP_OPTIONS"] += " --no-compile"  # a third of the time; the other file compiles
        self.environment["PYTHONDONTWRITEBYTECODE"] = "1"
        (self.boot / "config.txt").write_text("dtparam=audio=on\n")
        (self.boot / "cmdline.txt").write_text("console=tty1 root=PARTUUID=1-02 rootwait\n")

    def start(self) -> "subprocess.CompletedProcess[str]":
        return run_script(self.boot, self.environment)

    def begun(self, **more: str) -> "subprocess.Popen[bytes]":
        """The script alone, in a group of processes of its own."""
        return subprocess.Popen(
            ["bash", str(self.boot / "benchwarm" / "install.sh")],
            env=self.environment | more,
            stdout=subprocess.DEVNULL,
            stderr=subprocess.DEVNULL,
            start_new_session=True,
        )

    def lose_what_was_not_written(self) -> None:
        """Empty what has no final name yet, and the units until the marker is there: all is written out before it."""
        unsure = [each for each in self.root.rglob("*.part") if not each.is_symlink()]
        unsure += [self.root / "etc"] if not (self.home / "installed").exists() else []
        for place in unsure:
            for file in [place, *place.rglob("*")]:
                if file.is_file() and not file.is_symlink():
                    os.truncate(file, 0)

    def last_step(self) -> str:
        return (self.boot / "benchwarm" / "result.txt").read_text().splitlines()[-1]

    def files(self) -> dict[str, int]:
        """What is installed: length in bytes by path."""
        places = [self.home / ".venv", self.home / "releases", self.home / "wheelhouse", self.root / "etc"]
        return {
            str(file.relative_to(self.root)): file.lstat().st_size
            for place in places
            for file in [place, *place.rglob("*")]
            if file.is_symlink() or file.is_file()
        }

    def is_installed_like(self, whole: "Card") -> None:
        assert self.last_step() == "done"
        assert (self.home / "installed").read_text() == "done\n"
        assert self.files() == whole.files()
        assert (self.home / ".venv").readlink() == Path("releases/first")
        assert not [each.name for each in self.root.rglob("*.part")]
        assert (self.boot / "config.txt").read_text() == (
            "dtparam=audio=on\n\n[all]\ndtoverlay=w1-gpio\ngpio=17,22,23,27=op,dl\ndtparam=strict_gpiod\n"
        )
        assert (self.boot / "cmdline.txt").read_text() == (
            "console=tty1 root=PARTUUID=1-02 rootwait cgroup_enable=memory\n"
        )
        assert (self.boot / "station.toml").read_text() == (whole.boot / "station.toml").read_text()

    def marks(self, *below: str) -> dict[str, tuple[int, int, int]]:
        """Inode, time of change in ns and length of everything below a folder."""
        top = self.home.joinpath(*below)
        seen = {str(each): each.lstat() for each in [top, *top.rglob("*")]}
        return {path: (found.st_ino, found.st_mtime_ns, found.st_size) for path, found in seen.items()}


@pytest.fixture(scope="module")
def whole(made: Path, tmp_path_factory: pytest.TempPathFactory) -> Iterator[Card]:
    """A card whose first start nobody disturbed; no test changes it."""
    card = Card(tmp_path_factory.mktemp("one") / "whole", made)
    done = card.start()
    assert done.returncode == 0, done.stdout + done.stderr
    yield card


def same_length(whole: Card, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A place whose path is as long: paths are written into some of the installed files."""
    folder = tmp_path_factory.mktemp("two")
    name = "w" * (len(str(whole.root)) - len(str(folder)) - 1)
    return folder / name


@pytest.mark.fault("cut-first-start")
def test_a_cut_before_any_command_of_the_script_ends_installed(
    whole: Card, made: Path, tmp_path_factory: pytest.TempPathFactory, tmp_path: Path
) -> None:
    """One card that is cut at its first command, then at its second, and so on, until the script gets to its end."""
    card = Card(same_length(whole, tmp_path_factory), made)
    (tmp_path / "pull").write_text(PULL)
    cut_at, status = 0, -signal.SIGKILL
    steps = set()
    while status == -signal.SIGKILL:
        cut_at += 1
        with card.begun(BASH_ENV=str(tmp_path / "pull"), CUT_AT=str(cut_at)) as script:
            status = script.wait(5 * PATIENCE_S)
        if (card.boot / "benchwarm" / "result.txt").exists():
            steps.add(card.last_step().partition(":")[0])
        if status != 0:
            card.lose_what_was_not_written()
    assert status == 0
    assert {f"step {number} of 5" for number in (1, 2, 3, 4, 5)} <= steps, "the file told each of them while it ran"
    card.is_installed_like(whole)


@pytest.mark.fault("cut-first-start")
@pytest.mark.parametrize("seed", range(2))
def test_a_cut_at_any_moment_of_the_unpacking_ends_installed(
    whole: Card, made: Path, tmp_path_factory: pytest.TempPathFactory, seed: int
) -> None:
    card = Card(same_length(whole, tmp_path_factory), made)
    unpacked = sum(1 for each in (whole.home / "releases").rglob("*") if each.is_file())
    wanted = random.Random(seed).randrange(1, unpacked * 4 // 5)  # the rest leaves time to see it
    part = card.home / "releases" / "first.part"
    with card.begun() as script:
        while script.poll() is None and sum(1 for each in part.rglob("*") if each.is_file()) < wanted:
            time.sleep(0.005)
        assert script.poll() is None, "it was still at work"
        os.killpg(script.pid, signal.SIGKILL)
    assert card.last_step() == "step 3 of 5: station, some minutes"
    assert not (card.home / ".venv").is_symlink()
    card.lose_what_was_not_written()
    done = card.start()
    assert done.returncode == 0, done.stdout + done.stderr
    card.is_installed_like(whole)


def test_a_start_after_the_installation_changes_nothing(whole: Card) -> None:
    before = whole.marks()
    assert whole.start().returncode == 0
    with whole.begun() as script:
        assert script.wait(PATIENCE_S) == 0
    assert whole.marks() == before


@pytest.mark.fault("cut-first-start")
def test_without_the_marker_a_good_installation_is_not_touched_and_an_update_stays(
    made: Path, tmp_path_factory: pytest.TempPathFactory
) -> None:
    card = Card(tmp_path_factory.mktemp("three") / "card", made)
    assert card.start().returncode == 0
    before = card.marks("releases"), card.marks(".venv"), card.marks("wheelhouse")
    (card.home / "installed").unlink()
    assert card.start().returncode == 0
    assert (card.marks("releases"), card.marks(".venv"), card.marks("wheelhouse")) == before
    (card.home / "installed").unlink()
    (card.home / "releases" / "first").rename(card.home / "releases" / "0.9.0")
    (card.home / ".venv").unlink()
    (card.home / ".venv").symlink_to("releases/0.9.0")
    before = card.marks("releases"), card.marks(".venv"), card.marks("wheelhouse")
    assert card.start().returncode == 0
    assert (card.marks("releases"), card.marks(".venv"), card.marks("wheelhouse")) == before
    assert card.last_step() == "done"


def test_what_went_wrong_is_told_until_it_is_mended(made: Path, tmp_path: Path) -> None:
    card = Card(tmp_path / "card", made)
    (pip,) = (card.boot / "benchwarm" / "wheelhouse").glob("pip-*.whl")
    aside = pip.rename(tmp_path / pip.name)
    assert card.start().returncode == 1
    told = (card.boot / "benchwarm" / "result.txt").read_text()
    assert "FAILED: pip-" in told
    assert card.last_step() == "it is tried again at the next start"
    aside.rename(pip)
    assert card.start().returncode == 0
    assert "FAILED" not in (card.boot / "benchwarm" / "result.txt").read_text()
    assert card.last_step() == "done"
