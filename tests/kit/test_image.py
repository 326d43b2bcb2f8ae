"""Images of cards: a real partition table, real FAT, read by other tools than those that wrote it.

The base is made as the official image is laid out: a FAT boot partition, then a Linux one. It is no system that boots.
"""

import hashlib
import lzma
import subprocess
from pathlib import Path

import pytest

from station.command.main import main
from station.kit.card import FOLDER, Given, make_kits
from station.kit.image import Partition, boot_partition, write_images
from station.kit.table import KitError, kits_from
from tests.kit.cards import TABLE

MIB = 1 << 20
BOOT, ROOT = Partition(8 * MIB, 64 * MIB), Partition(72 * MIB, 8 * MIB)
ORIGINAL = {
    "config.txt": "dtparam=audio=on\n",
    "cmdline.txt": "console=tty1 root=PARTUUID=1-02 rootwait\n",
    "user-data": "#cloud-config\n# nothing\n",
    "meta-data": "",
    "kernel8.img": "kernel" * 1000,
}


def made_image(path: Path, names: dict[str, str], kind: str = "c") -> Path:
    with path.open("wb") as file:
        file.truncate(ROOT.start + ROOT.length)
    table = f"label: dos\nstart=8MiB, size=64MiB, type={kind}\nstart=72MiB, size=8MiB, type=83\n"
    subprocess.run(["sfdisk", "--quiet", str(path)], input=table, text=True, check=True)
    subprocess.run(
        [
            "mkfs.vfat",
            "-F",
            "32",
            "-s",
            "1",
            "-n",
            "bootfs",
            "--offset",
            str(BOOT.start // 512),
            str(path),
            str(BOOT.length // 1024),
        ],
        check=True,
        capture_output=True,
    )
    for name, text in names.items():
        source = path.with_name("source")
        source.write_text(text)
        subprocess.run(["mcopy", "-i", f"{path}@@{BOOT.start}", str(source), f"::/{name}"], check=True)
    with path.open("r+b") as file:  # the second partition: anything that would be seen to change
        file.seek(ROOT.start)
        file.write(hashlib.shake_256(b"root").digest(ROOT.length))
    return path


@pytest.fixture(scope="module")
def base(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return made_image(tmp_path_factory.mktemp("base") / "official.img", ORIGINAL)


def out_of(image: Path, name: str) -> bytes:
    return subprocess.run(
        ["mtype", "-i", f"{image}@@{BOOT.start}", f"::/{name}"], check=True, capture_output=True
    ).stdout


@pytest.fixture(scope="module")
def packed(base: Path) -> Path:
    path = base.with_name("official.img.xz")
    path.write_bytes(lzma.compress(base.read_bytes(), preset=0))
    return path


@pytest.mark.parametrize("how", ["plain", "packed"])
def test_an_image_has_the_cards_files_and_is_the_official_one_otherwise(
    base: Path, packed: Path, house: Path, tmp_path: Path, how: str
) -> None:
    given = base if how == "plain" else packed
    digest = hashlib.sha256(given.read_bytes()).hexdigest()
    out = tmp_path / "cards"
    result = make_kits(kits_from(TABLE, ""), out, out, Given(wheelhouse=house, image=given, image_sha256=digest))
    assert [each.name for each in result.images] == ["bench-1.img", "bench-2.img", "room.img"]
    assert not [each.name for each in out.iterdir() if each.name.startswith(".") or each.suffix == ".part"]
    for image in result.images:
        assert image.stat().st_mode & 0o077 == 0, "it holds passwords and hashes"
        whole, before = image.read_bytes(), base.read_bytes()
        assert len(whole) == len(before)
        assert whole[: BOOT.start] == before[: BOOT.start], "the partition table"
        assert whole[ROOT.start :] == before[ROOT.start :], "the system"
        (tmp_path / "boot").write_bytes(whole[BOOT.start : BOOT.start + BOOT.length])
        sound = subprocess.run(["fsck.vfat", "-n", str(tmp_path / "boot")], capture_output=True, text=True, check=False)
        assert sound.returncode == 0, sound.stdout
        card = out / image.stem
        for file in (each for each in card.rglob("*") if each.is_file()):
            assert out_of(image, str(file.relative_to(card))) == file.read_bytes()
        assert out_of(image, "kernel8.img").decode() == ORIGINAL["kernel8.img"]
        assert out_of(image, "config.txt").decode() == ORIGINAL["config.txt"], "the first start changes it"


@pytest.mark.parametrize("without", ["user-data", "config.txt"])
def test_another_system_is_refused(tmp_path: Path, without: str) -> None:
    names = {name: text for name, text in ORIGINAL.items() if name != without}
    image = made_image(tmp_path / "other.img", names)
    with pytest.raises(KitError, match=f"no {without}"):
        write_images(image, None, [], tmp_path)


@pytest.mark.parametrize("content", [b"", b"\0" * 4096, b"no image" * 600])
def test_what_is_no_image_is_refused(tmp_path: Path, content: bytes) -> None:
    (tmp_path / "base.img").write_bytes(content)
    with pytest.raises(KitError, match="no image with a FAT boot partition"):
        boot_partition(tmp_path / "base.img")


def test_a_download_that_broke_off_is_told(packed: Path, tmp_path: Path) -> None:
    content = packed.read_bytes()
    (tmp_path / "half.img.xz").write_bytes(content[: len(content) // 2])
    with pytest.raises(KitError, match="cannot be unpacked"):
        write_images(tmp_path / "half.img.xz", None, [], tmp_path)
    with pytest.raises(KitError, match="not as named"):
        write_images(packed, "0" * 64, [], tmp_path)
    assert [each.name for each in tmp_path.iterdir()] == ["half.img.xz"]


def test_a_card_that_does_not_fit_is_told(base: Path, tmp_path: Path) -> None:
    card = tmp_path / "bench-1"
    card.mkdir()
    (card / "large").write_bytes(b"x" * BOOT.length)
    with pytest.raises(KitError, match="not written"):
        write_images(base, None, [card], tmp_path)
    assert not (tmp_path / "bench-1.img").exists()


def debs(folder: Path, *names: str, content: bytes = b"!<arch>\ndebian-binary") -> Path:
    folder.mkdir()
    for name in names:
        (folder / name).write_bytes(content)
    return folder


def test_mosquittos_packages_go_onto_the_rooms_card_alone(house: Path, tmp_path: Path) -> None:
    names = {"mosquitto_2.0.21-1_arm64.deb", "libcjson1_1.7.18-3_arm64.deb", "adduser_3.152_all.deb"}
    out = tmp_path / "cards"
    make_kits(kits_from(TABLE, ""), out, out, Given(wheelhouse=house, debs=debs(tmp_path / "debs", *names)))
    assert {each.name for each in (out / "room" / FOLDER / "debs").iterdir()} == names
    assert not (out / "bench-1" / FOLDER / "debs").exists()


@pytest.mark.parametrize(
    ("names", "content", "words"),
    [
        (("libcjson1_1.7.18-3_arm64.deb",), b"!<arch>\n", "no package of Mosquitto"),
        (("mosquitto_2.0.21-1_amd64.deb",), b"!<arch>\n", "not a package for arm64"),
        (("mosquitto_2.0.21-1_arm64.deb",), b"<html>", "not a package for arm64"),
        ((), b"", "no package of Mosquitto"),
    ],
)
def test_other_packages_are_refused(tmp_path: Path, names: tuple[str, ...], content: bytes, words: str) -> None:
    folder = debs(tmp_path / "debs", *names, content=content)
    with pytest.raises(KitError, match=words):
        make_kits(kits_from(TABLE, ""), tmp_path, tmp_path / "out", Given(debs=folder))
    assert not (tmp_path / "out").exists()


def test_the_command_tells_of_the_images(
    base: Path, house: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (tmp_path / "kits.toml").write_text("[[kit]]\nnumber = 1\n")
    words = ["kit", str(tmp_path / "kits.toml"), "--out", str(tmp_path / "out"), "--wheelhouse", str(house)]
    assert main([*words, "--image", str(base)]) == 0
    assert "Complete images, one for each card" in capsys.readouterr().out
    assert (tmp_path / "out" / "bench-1.img").is_file()
