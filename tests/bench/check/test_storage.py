"""Is the record kept? On real mounts where that may be done, and on the texts that a Pi's kernel gives."""

import os
import subprocess
import sys
import tempfile
from collections.abc import Iterator
from pathlib import Path
from types import SimpleNamespace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from station.bench.check.finding import Kit
from station.bench.check.storage import (
    ENOUGH_MB,
    LEAST_MB,
    free_space,
    kept_in_memory,
    lost_with_power,
    mount_of,
    mounts_in,
    storage,
)
from tests.bench.check.machine import MOUNTS, Machine
from tests.record.cards import small_card

ROOT = Path(__file__).parents[3]

# As Raspberry Pi OS has it since Debian 12, with overlayroot=tmpfs (raspberrypi/bookworm-feedback issue 137).
OVERLAYROOT = """\
24 1 0:27 / / rw,relatime shared:1 - overlay overlayroot rw,lowerdir=/media/root-ro,upperdir=/media/root-rw/overlay,workdir=/media/root-rw/overlay-workdir/_
25 24 179:2 / /media/root-ro ro,relatime shared:2 - ext4 /dev/mmcblk0p2 ro
26 24 0:26 / /media/root-rw rw,relatime shared:3 - tmpfs tmpfs-root rw
27 24 0:28 / /data rw,relatime shared:4 - overlay /media/root-ro/data rw,lowerdir=/media/root-ro/data,upperdir=/media/root-rw/overlay/data,workdir=/media/root-rw/overlay-workdir/data
28 24 179:3 / /kept rw,relatime shared:5 - ext4 /dev/mmcblk0p3 rw
"""  # noqa: E501 - the kernel's lines
# As raspi-config's own script had it before: what is below is mounted out of sight (RPi-Distro/raspi-config issue 100).
HIDDEN = (
    "24 1 0:27 / / rw,relatime shared:1 - overlay overlay rw,lowerdir=/lower,upperdir=/upper/data,workdir=/upper/work\n"
)


def lost(text: str, path: str) -> bool:
    mounts = mounts_in(text)
    mount = mount_of(path, mounts)
    assert mount is not None
    return lost_with_power(mount, mounts)


@pytest.mark.parametrize(
    ("text", "path", "gone"),
    [
        (MOUNTS, "/var/lib/station", False),
        (MOUNTS, "/run/station", True),
        (MOUNTS, "/runner/station", False),
        (MOUNTS, "/boot/firmware/record", False),
        (OVERLAYROOT, "/var/lib/station", True),
        (OVERLAYROOT, "/data/station", True),
        (OVERLAYROOT, "/kept/station", False),
        (HIDDEN, "/var/lib/station", True),
        (MOUNTS + "70 28 254:0 / /var/log rw - ext4 /dev/zram1 rw\n", "/var/log/station", True),
        (MOUNTS + "70 28 0:44 / /var rw - tmpfs tmpfs rw\n", "/var/lib/station", True),
        (
            MOUNTS + "70 28 0:44 / /var rw - tmpfs tmpfs rw\n71 70 179:3 / /var rw - ext4 /dev/mmcblk0p3 rw\n",
            "/var/x",
            False,
        ),
    ],
)
def test_what_is_gone_at_power_off(text: str, path: str, gone: bool) -> None:
    assert lost(text, path) is gone


def test_a_mount_point_with_a_space_is_found() -> None:
    r"""The kernel writes a space as \040 (proc(5))."""
    (mount,) = mounts_in(r"70 28 8:1 / /mnt/my\040stick rw - ext4 /dev/sda1 rw")
    assert mount_of("/mnt/my stick/record", [mount]) is mount


def test_a_line_that_is_none_of_the_kernels_is_passed_over() -> None:
    assert mounts_in("\nspilt tea\n1 2 3 - x\n") == []


@given(st.text(alphabet="/ -\\0127abc=,\n"), st.text(alphabet="/abc", min_size=1))
def test_no_text_breaks_the_list(text: str, path: str) -> None:
    mounts = mounts_in(f"{text}\n{MOUNTS}")
    assert mounts[-5:] == mounts_in(MOUNTS)
    assert mount_of(f"/{path}", mounts) is not None


def test_the_card_itself_is_green(machine: Machine) -> None:
    (machine.root / "record").mkdir()
    found = storage(machine.kit())
    assert found.colour == "green"
    assert found.values["device"] == "/dev/mmcblk0p2"
    assert list((machine.root / "record").iterdir()) == []  # what was tried is gone


def test_a_folder_that_is_not_there_yet_is_asked_for_and_not_made(machine: Machine) -> None:
    found = storage(machine.kit(folder=machine.root / "a" / "b"))
    assert (found.colour, found.values["exists"]) == ("green", False)
    assert not (machine.root / "a").exists()


def test_the_overlay_of_the_image_is_red_and_says_where_to_switch_it_off(machine: Machine) -> None:
    machine.write("proc/self/mountinfo", OVERLAYROOT)
    found = storage(machine.kit())
    assert found.colour == "red"
    assert "gone at power-off" in found.text
    assert "raspi-config" in found.remedy


def test_a_boot_partition_survives_no_pulled_plug(machine: Machine) -> None:
    machine.write("proc/self/mountinfo", f"28 1 179:1 / {machine.root} rw - vfat /dev/mmcblk0p1 rw\n")
    assert storage(machine.kit()).colour == "amber"


def test_another_machines_folder_is_not_for_a_record(machine: Machine) -> None:
    machine.write("proc/self/mountinfo", f"28 1 0:50 / {machine.root} rw - nfs4 server:/home rw\n")
    found = storage(machine.kit())
    assert found.colour == "amber"
    assert "another machine" in found.text


@pytest.mark.fault("read-only-card")
@pytest.mark.parametrize("options", [("ro", "rw"), ("rw", "ro")])
def test_a_file_system_that_fell_to_read_only_is_red(machine: Machine, options: tuple[str, str]) -> None:
    """ext4 does after an error (mount option errors=remount-ro)."""
    line = f"28 1 179:2 / / {options[0]},noatime shared:1 - ext4 /dev/mmcblk0p2 {options[1]}\n"
    machine.write("proc/self/mountinfo", line)
    found = storage(machine.kit())
    assert found.colour == "red"
    assert "read-only" in found.text


def test_a_card_that_locked_itself_is_red(machine: Machine) -> None:
    machine.write("sys/class/block/mmcblk0p2/ro", "1\n")
    assert storage(machine.kit()).colour == "red"


def test_without_the_kernels_list_nothing_can_be_told(machine: Machine) -> None:
    machine.write("proc/self/mountinfo", "")
    assert storage(machine.kit()).colour == "unknown"


def test_a_file_in_the_folders_place_is_red(machine: Machine) -> None:
    machine.write("record", "a file")
    found = storage(machine.kit(folder=machine.root / "record" / "deeper"))
    assert found.colour == "red"
    assert "is a file" in found.text


@pytest.mark.parametrize(("free_mb", "colour"), [(ENOUGH_MB, "green"), (ENOUGH_MB - 1, "amber"), (LEAST_MB - 1, "red")])
def test_free_space(machine: Machine, monkeypatch: pytest.MonkeyPatch, free_mb: int, colour: str) -> None:
    monkeypatch.setattr(
        "station.bench.check.storage.shutil.disk_usage", lambda path: SimpleNamespace(free=free_mb * 1e6)
    )
    found = free_space(machine.kit())
    assert (found.colour, found.values["free_mb"]) == (colour, free_mb)
    assert (found.remedy == "") is (colour == "green")


def here(folder: Path) -> Kit:
    return Kit(folder=folder)


class TestRealMounts:
    """On this machine's own kernel; skipped where nobody may mount."""

    def test_a_tmpfs_is_red(self) -> None:
        with small_card() as card:
            assert storage(here(card)).colour == "red"
            assert kept_in_memory(card / "record")
            assert free_space(here(card)).colour == "red"  # 256 kB

    @pytest.fixture
    def mounted(self, tmp_path: Path) -> Iterator[Path]:
        for name in ("lower", "upper", "work", "point"):
            (tmp_path / name).mkdir()
        yield tmp_path
        subprocess.run(["umount", "--lazy", str(tmp_path / "point")], check=False, capture_output=True)

    def mount(self, *words: str | Path) -> None:
        if subprocess.run(["mount", *map(str, words)], check=False, capture_output=True).returncode:
            pytest.skip("only root may mount, and not everywhere")

    def overlay(self, upper: Path, work: Path, folder: Path) -> None:
        options = f"lowerdir={folder / 'lower'},upperdir={upper},workdir={work}"
        self.mount("-t", "overlay", "overlay", "-o", options, folder / "point")

    @pytest.mark.fault("record-in-memory")
    def test_an_overlay_in_memory_is_red(self, mounted: Path) -> None:
        with small_card(1024) as memory:
            for name in ("upper", "work"):
                (memory / name).mkdir()
            self.overlay(memory / "upper", memory / "work", mounted)
            found = storage(here(mounted / "point"))
            assert kept_in_memory(mounted / "point")
            subprocess.run(["umount", str(mounted / "point")], check=True)
        assert (found.colour, found.values["file_system"]) == ("red", "overlay")

    def test_an_overlay_on_a_disk_is_as_good_as_the_disk(self, mounted: Path) -> None:
        below = storage(here(mounted / "lower"))
        if below.colour != "green":
            pytest.skip(f"the temporary folder is not on a disk: {below.text}")
        self.overlay(mounted / "upper", mounted / "work", mounted)
        assert storage(here(mounted / "point")).colour == "green"
        assert not kept_in_memory(mounted / "point")

    @pytest.mark.fault("read-only-card")
    def test_a_read_only_mount_is_red(self, mounted: Path) -> None:
        self.mount("--bind", mounted / "lower", mounted / "point")
        self.mount("-o", "remount,bind,ro", mounted / "point")
        found = storage(here(mounted / "point"))
        assert found.colour == "red"
        assert ("read-only" in found.text) or ("memory" in found.text)


NOBODY = 65534
AS_NOBODY = """
import os, sys
from pathlib import Path
from station.bench.check.finding import Kit
from station.bench.check.storage import storage
os.setgid(int(sys.argv[1]))
os.setuid(int(sys.argv[1]))
print(storage(Kit(folder=Path(sys.argv[2]))).colour)
"""


@pytest.mark.skipif(os.geteuid() != 0, reason="only root may become another user")
@pytest.mark.parametrize(
    ("owner", "mode", "colour"), [(NOBODY, 0o555, "red"), (0, 0o755, "unknown"), (NOBODY, 0o755, "green")]
)
@pytest.mark.parametrize("name", [".", "not/there/yet"])
def test_as_a_user_without_rights(owner: int, mode: int, colour: str, name: str) -> None:
    """In a process of its own, since rights are the process's; and where that user may enter."""
    with tempfile.TemporaryDirectory(prefix="benchwarm-rights-") as folder:
        os.chown(folder, owner, owner)
        Path(folder).chmod(mode)
        if storage(here(Path(folder))).colour != "green":
            pytest.skip("the temporary folder is not on a disk")
        command = [sys.executable, "-c", AS_NOBODY, str(NOBODY), f"{folder}/{name}"]
        done = subprocess.run(command, cwd=ROOT, capture_output=True, text=True, check=True)
        assert done.stdout.strip() == colour
