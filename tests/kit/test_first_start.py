"""From a table to a station that runs: the folder of a card, and its first-boot script in a folder that stands for it.

What the station needs beside itself is what is installed here; tests/kit/arm64.sh does it with the cards' own wheels.
"""

import os
import subprocess
import sys
import sysconfig
from importlib.metadata import distribution
from pathlib import Path

import pytest

from station.kit.folders import make_kits
from station.kit.table import KitError, kits_from, read_kits
from station.kit.wheelhouse import repacked

TABLE = '[[kit]]\nnumber = 1\n[[kit]]\nnumber = 2\nname = "By the door"\n'


@pytest.fixture(scope="module")
def house(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The wheels of an earlier run; of what the station needs only pip is in it, the rest is installed here."""
    folder = tmp_path_factory.mktemp("wheels")
    repacked(distribution("pip"), folder)
    return folder


@pytest.fixture(scope="module")
def made(house: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    out = tmp_path_factory.mktemp("kits") / "cards"
    result = make_kits(kits_from(TABLE, "kits.toml"), out, out, wheelhouse=house)
    assert [card.name for card in result.cards] == ["bench-1", "bench-2"]
    assert "lgpio" in " ".join(result.amber)
    return out


def test_sheets_are_for_nobody_else_on_this_computer(made: Path) -> None:
    for name in ("labels.html", "codes-and-passphrases.html"):
        assert oct((made / name).stat().st_mode & 0o777) == "0o600"


def test_the_first_boot_installs_the_station_without_a_network(made: Path, tmp_path: Path) -> None:
    """The real script, the real pip, a real environment; only `systemctl` and its like are left out."""
    root = tmp_path / "card"
    boot = root / "boot" / "firmware"
    boot.parent.mkdir(parents=True)
    subprocess.run(["cp", "-r", str(made / "bench-2"), str(boot)], check=True)
    (boot / "config.txt").write_text("dtparam=audio=on\n")
    environment = {
        "PATH": os.environ["PATH"],
        "HOME": str(tmp_path),
        "BENCHWARM_ROOT": str(root),
        "BENCHWARM_PYTHON": str(Path(sys.base_prefix) / "bin" / "python3"),
        "BENCHWARM_PIP_OPTIONS": "--no-deps",
        "https_proxy": "http://127.0.0.1:9",
        "http_proxy": "http://127.0.0.1:9",
    }
    script = ["bash", str(boot / "benchwarm" / "first-start.sh")]
    for _ in range(2):  # a plug pulled half way through means that it runs again
        done = subprocess.run(script, env=environment, capture_output=True, text=True, check=False, timeout=300)
        assert done.returncode == 0, done.stdout + done.stderr
    result = (boot / "benchwarm" / "result.txt").read_text()
    assert result.splitlines()[-1] == "done"
    assert (boot / "config.txt").read_text().count("dtoverlay=w1-gpio") == 1
    assert (root / "etc" / "systemd" / "system" / "station.service").is_file()
    environment["PYTHONPATH"] = sysconfig.get_path("purelib")  # only now: pip would think that all is installed
    station = root / "opt" / "benchwarm" / ".venv" / "bin" / "station"
    told = subprocess.run([station, "--version"], env=environment, capture_output=True, text=True, check=False)
    assert told.stdout.startswith("benchwarm ")
    where = "import station.kit, sys; sys.stdout.write(station.kit.__file__)"
    python = [str(station.with_name("python")), "-P", "-c", where]
    told = subprocess.run(python, env=environment, capture_output=True, text=True, check=False)
    assert told.stdout.startswith(str(root)), "it is the card's own copy that runs"


def test_a_folder_that_is_not_empty_is_left_alone(tmp_path: Path) -> None:
    (tmp_path / "something").write_text("mine")
    with pytest.raises(KitError, match="not empty"):
        make_kits(kits_from(TABLE, "kits.toml"), tmp_path, tmp_path)
    assert [each.name for each in tmp_path.iterdir()] == ["something"]


@pytest.mark.parametrize(
    ("plan", "words"), [(None, "cannot be read"), ("[acid]\nname = 3", "plan.toml"), ("\udcff", "plan.toml")]
)
def test_a_plan_that_cannot_be_used_is_told_before_anything_is_made(
    tmp_path: Path, plan: str | None, words: str
) -> None:
    (tmp_path / "kits.toml").write_text(f'plan = "plan.toml"\n{TABLE}')
    if plan is not None:
        (tmp_path / "plan.toml").write_bytes(plan.encode("utf-8", "surrogateescape"))
    with pytest.raises(KitError, match=words):
        make_kits(read_kits(tmp_path / "kits.toml"), tmp_path, tmp_path / "out")
    assert not (tmp_path / "out").exists()
