"""What one card needs on its boot partition, as files: first-boot configuration, settings, plan, installer.

The named release configures itself at its first boot by cloud-init: `meta-data`, `network-config` and `user-data`
on the boot partition (Raspberry Pi news of October 2025; cloud-init's NoCloud source; netplan's format for the
network). JSON is YAML, so nothing here can be indented wrongly. Not tried on a real card.
"""

import json
import os
import shutil
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from importlib.resources import files
from pathlib import Path
from secrets import token_hex
from typing import Any, Final

from station.kit.image import write_images
from station.kit.offer import SUMS, fetched, own_wheel, verified, write_sums
from station.kit.on_card import network
from station.kit.room import LINK_FILE, Drawn, laptop_files, room_card, toml_text
from station.kit.sheets import KitSecrets, drawn_for, labels_sheet, secrets_sheet
from station.kit.table import Kit, KitError, Kits
from station.practical.kinds import read_plan
from station.practical.plan import PlanError
from station.practical.safety import safe
from station.room.wire import PORT
from station.words import Message, in_language, languages, say

FOLDER = "benchwarm"
SCRIPTS = ("first-start.sh", "install.sh", "progress.py", "network.py")
"""Beside this file, or in `on_card`, those in Python."""
WORDS_FILE: Final = "words.json"
SSH_FILE: Final = "ssh"
"""Its being there lets install.sh switch ssh on; the key itself is the technician's in `user-data`."""
CABLE: Final = {"network": {"version": 2, "ethernets": {"eth0": {"dhcp4": True, "optional": True}}}}
"""What cloud-init does for the network, once, in netplan's words. Wi-Fi is network.toml's, at every start."""
UNITS = (
    "station-helper.service",
    "station-helper.socket",
    "station-install.service",
    "station-network.service",
    "station-progress.service",
    "station.service",
    "station-room.service",
    "station-backup.service",
    "station-backup.timer",
    "station-sysusers.conf",
    "station-tmpfiles.conf",
    "60-station-probe.rules",
)


def card_files(kits: Kits, kit: Kit, secrets: KitSecrets, plan: str | None, drawn: Drawn = ()) -> dict[str, str]:
    """Return the texts that go onto the card, by their path on its boot partition.

    `drawn` are all kits with what was drawn for each: the room's broker has to know the benches.
    """
    found = {
        # New for each run, so that a card written again configures itself again; made from nothing secret.
        "meta-data": f"instance-id: benchwarm-{kit.hostname}-{token_hex(6)}\nlocal-hostname: {kit.hostname}\n",
        "network-config": _json_yaml(CABLE),
        "user-data": f"#cloud-config\n{_json_yaml(user_data(kits, kit))}",
    }
    found[f"{FOLDER}/{network.FILE}"] = network_toml(kits, kit)
    if kits.ssh_key is not None:
        found[f"{FOLDER}/{SSH_FILE}"] = f"{kits.ssh_key}\n"
    for name in SCRIPTS:
        found[f"{FOLDER}/{name}"] = _script(name)
    found[f"{FOLDER}/{WORDS_FILE}"] = (
        json.dumps(progress_words(kits, room=kit.room), ensure_ascii=False, indent=1) + "\n"
    )
    found |= room_card(kits, secrets, drawn) if kit.room else _bench(kits, kit, secrets, plan)
    for name in UNITS:
        found[f"{FOLDER}/systemd/{name}"] = (systemd_folder() / name).read_text(encoding="utf-8")
    return found


def _bench(kits: Kits, kit: Kit, secrets: KitSecrets, plan: str | None) -> dict[str, str]:
    found = {"station.toml": settings_toml(kits, kit, secrets, with_plan=plan is not None)}
    if plan is not None:
        found["plan.toml"] = plan
    if kits.broker_host is not None:
        found[LINK_FILE] = f"{secrets.link_password}\n"
    return found


def _script(name: str) -> str:
    of = "station.kit.on_card" if name.endswith(".py") else "station.kit"
    return (files(of) / name).read_text(encoding="utf-8")


def progress_words(kits: Kits, *, room: bool) -> dict[str, dict[str, str]]:
    """Return what progress.py says, by language and key, the kit's language first: nothing else is there to say it."""
    steps = (
        say("progress-system"),
        say("progress-wheels"),
        say("progress-station"),
        say("progress-broker") if room else say("progress-panel"),
        say("progress-services"),
    )
    told = {
        "title": say("progress-title"),
        "waits": say("progress-waits"),
        "failed": say("progress-failed"),
        "failed-mend": say("progress-mend"),
        "done": say("progress-done"),
        "stay": say("progress-stay"),
    }
    for number, what in enumerate(steps, 1):
        told[str(number)] = say("progress-step", number=number, total=len(steps), what=what)
    order = [kits.speaks, *(each for each in languages() if each != kits.speaks)]
    return {language: {key: in_language(each, language) for key, each in told.items()} for language in order}


def user_data(kits: Kits, kit: Kit) -> dict[str, Any]:
    """Return the first-boot configuration: name, no password login, and the script that puts the installation in place.

    `runcmd` is marked as done before it has run, so a cut power would leave it undone; `bootcmd` runs at every start.
    """
    technician: dict[str, Any] = {"name": "technician", "shell": "/bin/bash", "lock_passwd": True}
    if kits.ssh_key is not None:
        technician |= {"ssh_authorized_keys": [kits.ssh_key], "sudo": "ALL=(ALL) NOPASSWD:ALL"}
    return {
        "hostname": kit.hostname,
        "manage_etc_hosts": True,
        "users": [technician],
        "ssh_pwauth": False,
        "package_update": False,
        "package_upgrade": False,
        "bootcmd": [["bash", f"/boot/firmware/{FOLDER}/first-start.sh"]],
    }


def network_toml(kits: Kits, kit: Kit) -> str:
    """Return the card's network.toml: the network that the table names, with words on how to change it."""
    chosen, country = kit.network or kits.network, kit.country or kits.country
    words = in_language(say("kit-network-file"), kits.speaks)
    head = "".join(f"# {line}\n" for line in words.splitlines())
    if chosen is None:
        return head
    return head + network.toml(network.Network(chosen.ssid, chosen.password, chosen.hidden, country))


def settings_toml(kits: Kits, kit: Kit, secrets: KitSecrets, *, with_plan: bool) -> str:
    """Return the card's `station.toml`; of codes and passphrases it holds only the hashes."""
    page = {"language": kits.language, "units": kits.units}
    tables: dict[str, Any] = {
        "plan": "plan.toml" if with_plan else None,
        "bench": {"name": in_language(kit.label, kits.speaks)},
        "probe": {"driver": "one-wire", "id": kit.probe_id},
        "panel": {"pins": kits.panel},
        "access": secrets.hashes(),
        "page": page,
    }
    if kits.broker_host is not None:
        tables["link"] = {
            "broker": f"mqtt://{kits.broker_host}:{PORT}",
            "user": kit.hostname,
            "password_file": LINK_FILE,
        }
    return toml_text(tables)


def systemd_folder() -> Path:
    """Return where the units are: in the installed package, or in the checkout."""
    inside = Path(str(files("station.kit"))) / "systemd"
    return inside if inside.is_dir() else Path(str(files("station"))).parent / "systemd"


def _json_yaml(values: Mapping[str, Any]) -> str:
    return json.dumps(values, indent=2, ensure_ascii=False) + "\n"


# One folder per card, the wheelhouse in each, and the two sheets beside them.


WHEELHOUSE, DEBS, LABELS, SECRETS = "wheelhouse", "debs", "labels.html", "codes-and-passphrases.html"


@dataclass(frozen=True)
class Made:
    """What was made: the cards' folders, the sheets, what is missing, and the SHA-256 of the wheels' list."""

    cards: tuple[Path, ...]
    images: tuple[Path, ...]
    sheets: tuple[Path, ...]
    amber: tuple[Message, ...]
    digest: str


@dataclass(frozen=True)
class Given:
    """What the technician has already: a wheel of lgpio, wheels of an earlier run, Mosquitto's packages, an image.

    `image_sha256` is the digest published beside the image.
    """

    lgpio_wheel: Path | None = None
    wheelhouse: Path | None = None
    debs: Path | None = None
    image: Path | None = None
    image_sha256: str | None = None


def make_kits(kits: Kits, base: Path, out: Path, given: Given = Given()) -> Made:
    """Write everything into `out`, which must be new or empty. Raises KitError; then nothing is left half done.

    `base` is the folder of the table, where its plan lies.
    """
    plan = _plan(kits, base)
    debs = _debs(kits, given.debs)
    _empty(out)
    try:
        wheels, digest = _wheels(kits, out, given.lgpio_wheel, given.wheelhouse)
        known = drawn_for(kits)
        drawn = known[: len(kits.kit)]
        cards = tuple(_card(kits, kit, secrets, plan, out, wheels, drawn) for kit, secrets in drawn)
        for card in (out / kit.hostname for kit in kits.kit if kit.room and debs):
            (card / FOLDER / DEBS).mkdir()
            for deb in debs:
                shutil.copy(deb, card / FOLDER / DEBS)
        for _, secrets in known[len(drawn) :]:
            _laptop(kits, out, secrets, drawn)
        sheets = (
            _private(out / LABELS, labels_sheet(drawn, kits.speaks, kits)),
            _private(out / SECRETS, secrets_sheet(known, kits.speaks)),
        )
        images = write_images(given.image, given.image_sha256, cards, out) if given.image is not None else ()
    except OSError as error:
        raise _not_written(out, error) from None
    return Made(cards, tuple(images), sheets, missing(kits, wheels), digest)


def _plan(kits: Kits, base: Path) -> str | None:
    if kits.plan is None:
        return None
    path = base / kits.plan
    try:
        text = path.read_text(encoding="utf-8-sig")
        safe(read_plan(text, str(path)))
    except OSError as error:
        raise KitError(say("kit-plan-cannot-be-read", path=str(path), reason=str(error.strerror))) from None
    except UnicodeDecodeError as error:
        raise KitError(say("file-problem", path=str(path), reason=str(error))) from None
    except PlanError as error:
        raise KitError(str(error)) from None
    return text


def _debs(kits: Kits, folder: Path | None) -> Sequence[Path]:
    """Return the packages for the room's card, looked at by name and first bytes. Raises KitError."""
    if folder is None:
        return ()
    if kits.room is None:
        raise KitError(say("debs-no-room"))
    found = sorted(folder.glob("*.deb"))
    for deb in found:
        with deb.open("rb") as file:
            if file.read(8) != b"!<arch>\n" or not deb.stem.endswith(("_arm64", "_all")):
                raise KitError(say("debs-other", path=str(deb)))
    if not any(deb.name.startswith("mosquitto_") for deb in found):
        raise KitError(say("debs-none", path=str(folder)))
    return found


def _empty(out: Path) -> None:
    try:
        out.mkdir(parents=True, exist_ok=True)
        if any(out.iterdir()):
            raise KitError(say("kit-folder-not-empty", path=str(out)))
    except OSError as error:
        raise _not_written(out, error) from None


def _not_written(out: Path, error: OSError) -> KitError:
    return KitError(say("file-cannot-be-written-folder", path=str(out), reason=str(error.strerror)))


def _wheels(kits: Kits, out: Path, lgpio_wheel: Path | None, given: Path | None) -> tuple[Path, str]:
    wheels = out / WHEELHOUSE
    wheels.mkdir()
    if given is not None:
        found = verified(given)
        spoilt = sorted(set(given.glob("*.whl")) - set(found))
        if spoilt or not found:
            raise KitError(say("kit-wheel-not-as-listed", path=str((spoilt or [given])[0]), file=SUMS))
        for wheel in found:
            shutil.copy(wheel, wheels)
    own = own_wheel(wheels)
    if given is None:
        fetched(own, wheels, kits.release)
    if not list(wheels.glob("pip-*.whl")):
        raise KitError(say("kit-no-pip-wheel", path=str(given)))
    if lgpio_wheel is not None:
        shutil.copy(lgpio_wheel, wheels)
    return wheels, write_sums(wheels)


def _laptop(kits: Kits, out: Path, secrets: KitSecrets, drawn: Drawn) -> None:
    """Write the folder of a room that is none of the kits."""
    for name, text in laptop_files(kits, secrets, drawn).items():
        (out / name).parent.mkdir(parents=True, exist_ok=True)
        _private(out / name, text)


def _card(kits: Kits, kit: Kit, secrets: KitSecrets, plan: str | None, out: Path, wheels: Path, drawn: Drawn) -> Path:
    card = out / kit.hostname
    for name, text in card_files(kits, kit, secrets, plan, drawn).items():
        target = card / name
        target.parent.mkdir(parents=True, exist_ok=True)
        _private(target, text)
    house = card / FOLDER / WHEELHOUSE
    house.mkdir(parents=True)
    for wheel in wheels.iterdir():
        try:
            os.link(wheel, house / wheel.name)  # fifteen cards, one copy on this disk
        except OSError:
            shutil.copy(wheel, house)
    return card


def _private(path: Path, text: str) -> Path:
    """Write what nobody else on this computer may read: passwords of the network and the broker, codes, hashes."""
    handle = os.open(path, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o600)
    with os.fdopen(handle, "w", encoding="utf-8", newline="\n") as file:
        file.write(text)
    return path


def missing(kits: Kits, wheels: Path) -> tuple[Message, ...]:
    """Return what the wheels lack for these cards, and what follows."""
    found: Sequence[Path] = list(wheels.glob("lgpio-*.whl"))
    if kits.panel == "real" and not found:
        return (say("kit-no-lgpio-wheel"),)
    return ()
