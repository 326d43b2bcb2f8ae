"""From a table to a station that runs: the folder of a card, and its first-boot script in a folder that stands for it.

What the station needs beside itself is what is installed here; tests/kit/arm64.sh does it with the cards' own wheels.
"""

import os
import re
import subprocess
import sys
from collections.abc import Callable
from importlib.metadata import distribution
from pathlib import Path

import pytest

from station.kit.card import Given, make_kits
from station.kit.offer import SUMS
from station.kit.table import KitError, kits_from, read_kits
from tests.kit.cards import TABLE, card_in, first_start, run_script
from tests.kit.wheels import as_version

HARDWARE = Path(__file__).parents[2] / "hardware.md"


@pytest.mark.fault("other-users")
def test_what_a_kit_has_in_words_is_for_nobody_else_on_this_computer(made: Path) -> None:
    others = 0o077
    texts = [each for each in made.rglob("*") if each.is_file() and "wheelhouse" not in each.parts]
    assert {"labels.html", "codes-and-passphrases.html", "network-config", "link-password", "benchwarm.passwords"} <= {
        each.name for each in texts
    }
    assert [each for each in texts if each.stat().st_mode & others] == []


def test_the_passwords_of_a_laptops_room_are_for_nobody_else_either(house: Path, tmp_path: Path) -> None:
    make_kits(
        kits_from('broker = "laptop.local"\n[[kit]]\nnumber = 1\n', ""),
        tmp_path,
        tmp_path / "out",
        Given(wheelhouse=house),
    )
    texts = [each for each in (tmp_path / "out" / "room").rglob("*") if each.is_file()]
    assert len(texts) == 3
    assert {each.stat().st_mode & 0o777 for each in texts} == {0o600}


def unlisted(house: Path) -> str:
    """A newer station that nobody listed: pip would take the newest it is offered."""
    (wheel,) = house.glob("benchwarm-*.whl")
    as_version(wheel, "99.0.0", house)
    return "installed: "


def spoilt(house: Path) -> str:
    (wheel,) = house.glob("pip-*.whl")
    content = bytearray(wheel.read_bytes())
    content[len(content) // 2] ^= 1
    wheel.unlink()  # a link to the one of all cards
    wheel.write_bytes(content)
    return "FAILED: a wheel is not as SHA256SUMS has it"


def missing(house: Path) -> str:
    next(house.glob("pip-*.whl")).unlink()
    return "is missing: copy the whole folder"


def without_list(house: Path) -> str:
    (house / SUMS).unlink()
    return "FAILED: the wheelhouse has no SHA256SUMS"


def leaves(house: Path) -> str:
    (house / SUMS).unlink()
    (house / SUMS).write_text(f"{'0' * 64}  ../../station.toml\n")
    return "FAILED: the wheelhouse's SHA256SUMS is spoilt"


@pytest.mark.fault("unlisted-wheels")
@pytest.mark.parametrize("spoil", [unlisted, spoilt, missing, without_list, leaves])
def test_pip_is_offered_only_wheels_that_are_as_their_list_has_them(
    made: Path, tmp_path: Path, spoil: Callable[[Path], str]
) -> None:
    root = tmp_path / "card"
    boot, environment = card_in(root, made / "bench-2")
    words = spoil(boot / "benchwarm" / "wheelhouse")
    done = run_script(boot, environment)
    assert words in done.stdout
    assert not list((root / "opt").rglob("benchwarm-99.0.0*"))  # neither installed nor kept for the next cards
    assert (done.returncode == 0) == (spoil is unlisted)
    assert (root / "opt" / "benchwarm" / ".venv").exists() == (spoil is unlisted)


def test_the_first_boot_installs_the_station_without_a_network(made: Path, tmp_path: Path) -> None:
    """The real script, the real pip, a real environment; only `systemctl` and its like are left out."""
    root = tmp_path / "card"
    boot, environment = card_in(root, made / "bench-2")
    (boot / "config.txt").write_text("dtparam=audio=on\n")
    (boot / "cmdline.txt").write_text("console=tty1 rootwait  \n")
    for _ in range(2):  # a plug pulled half way through means that it runs again
        first_start(boot, environment)
    result = (boot / "benchwarm" / "result.txt").read_text()
    assert result.splitlines()[-1] == "done"
    wanted = re.search(r"```\n(dtoverlay.*?)```", HARDWARE.read_text(), re.DOTALL)
    assert wanted is not None
    assert (boot / "config.txt").read_text() == f"dtparam=audio=on\n\n[all]\n{wanted[1]}", "as hardware.md promises"
    (line,) = (boot / "cmdline.txt").read_text().splitlines()
    assert line == "console=tty1 rootwait cgroup_enable=memory", "one line, or the kernel does not see it"
    assert (root / "etc" / "systemd" / "system" / "station.service").is_file()
    release = root / "opt" / "benchwarm" / "releases" / "first"
    assert [each for each in release.rglob("*") if each.is_file() and b"releases/first.part" in each.read_bytes()] == []
    # Only now: pip would think that all is installed.
    environment["PYTHONPATH"] = os.pathsep.join(each for each in sys.path if each.endswith("-packages"))
    station = root / "opt" / "benchwarm" / ".venv" / "bin" / "station"
    told = subprocess.run([station, "--version"], env=environment, capture_output=True, text=True, check=False)
    assert told.stdout.startswith("benchwarm ")
    where = "import station.kit, sys; sys.stdout.write(station.kit.__file__)"
    python = [str(station.with_name("python")), "-P", "-c", where]
    told = subprocess.run(python, env=environment, capture_output=True, text=True, check=False)
    assert told.stdout.startswith(str(root)), "it is the card's own copy that runs"


def test_lgpio_that_the_system_has_counts(made: Path, tmp_path: Path) -> None:
    """The real lgpio, found as a system's package would be."""
    system = tmp_path / "system"
    system.mkdir()
    for file in distribution("lgpio").files or ():
        if len(file.parts) == 1:
            (system / file.name).write_bytes(Path(str(file.locate())).read_bytes())
    boot, environment = card_in(tmp_path / "card", made / "bench-1")
    first_start(boot, {**environment, "PYTHONPATH": str(system)})
    assert "AMBER" not in (boot / "benchwarm" / "result.txt").read_text()
    assert 'pins = "real"' in (boot / "station.toml").read_text()
    assert not list((tmp_path / "card").rglob(".lgd-nfy*"))


def test_without_lgpio_the_panel_is_off_and_the_file_says_so(made: Path, tmp_path: Path) -> None:
    boot, environment = card_in(tmp_path / "card", made / "bench-1")
    before = (boot / "station.toml").read_text()
    first_start(boot, environment)
    assert "AMBER: no lgpio" in (boot / "benchwarm" / "result.txt").read_text()
    assert (boot / "station.toml").read_text() == before.replace('pins = "real"', 'pins = "none"') != before


def test_the_rooms_first_boot_puts_mosquittos_files_in_place(made: Path, tmp_path: Path) -> None:
    boot, environment = card_in(tmp_path / "card", made / "room")
    first_start(boot, environment)
    etc = tmp_path / "card" / "etc"
    for there, name in (
        ("mosquitto/conf.d/benchwarm.conf", "benchwarm.conf"),
        ("mosquitto/benchwarm.passwords", "benchwarm.passwords"),
        ("mosquitto/benchwarm.acl", "benchwarm.acl"),
        ("systemd/system/mosquitto.service.d/benchwarm.conf", "service.conf"),
    ):
        assert (etc / there).read_text() == (boot / "benchwarm" / "mosquitto" / name).read_text()


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
