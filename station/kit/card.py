"""What one card needs on its boot partition, as files: first-boot configuration, settings, plan, installer.

The named release configures itself at its first boot by cloud-init: `meta-data`, `network-config` and `user-data`
on the boot partition (Raspberry Pi news of October 2025; cloud-init's NoCloud source; netplan's format for the
network). JSON is YAML, so nothing here can be indented wrongly. Not tried on a real card.
"""

import json
from collections.abc import Mapping
from importlib.resources import files
from pathlib import Path
from secrets import token_hex
from typing import Any

from station.kit.room import LINK_FILE, Drawn, room_card, toml_tables
from station.kit.table import Kit, Kits
from station.kit.words import KitSecrets
from station.room.address import PORT

FOLDER = "benchwarm"
UNITS = (
    "station.service",
    "station-room.service",
    "station-backup.service",
    "station-backup.timer",
    "station-sysusers.conf",
    "station-tmpfiles.conf",
    "60-station-probe.rules",
)
MODE = 0o644


def card_files(kits: Kits, kit: Kit, secrets: KitSecrets, plan: str | None, drawn: Drawn = ()) -> dict[str, str]:
    """Return the texts that go onto the card, by their path on its boot partition.

    `drawn` are all kits with what was drawn for each: the room's broker has to know the benches.
    """
    found = {
        # New for each run, so that a card written again configures itself again; made from nothing secret.
        "meta-data": f"instance-id: benchwarm-{kit.hostname}-{token_hex(6)}\nlocal-hostname: {kit.hostname}\n",
        "network-config": _json_yaml(network_config(kits, kit)),
        "user-data": f"#cloud-config\n{_json_yaml(user_data(kits, kit))}",
        f"{FOLDER}/first-start.sh": (files("station.kit") / "first-start.sh").read_text(encoding="utf-8"),
    }
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


def user_data(kits: Kits, kit: Kit) -> dict[str, Any]:
    """Return the first-boot configuration: name, no password login, and the one script that does the rest."""
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
        "runcmd": [["bash", f"/boot/firmware/{FOLDER}/first-start.sh"]],
    }


def network_config(kits: Kits, kit: Kit) -> dict[str, Any]:
    """Return the network in netplan's words: cable always, Wi-Fi where one is named; the boot waits for neither."""
    found: dict[str, Any] = {"version": 2, "ethernets": {"eth0": {"dhcp4": True, "optional": True}}}
    network = kit.network or kits.network
    if network is not None:
        point: dict[str, Any] = {"hidden": True} if network.hidden else {}
        if network.password is not None:
            point["password"] = network.password
        wifi = {"dhcp4": True, "optional": True, "access-points": {network.ssid: point}}
        found["wifis"] = {"wlan0": {**wifi, "regulatory-domain": kit.country or kits.country}}
    return {"network": found}


def settings_toml(kits: Kits, kit: Kit, secrets: KitSecrets, *, with_plan: bool) -> str:
    """Return the card's `station.toml`; of codes and passphrases it holds only the hashes."""
    page = {"language": kits.language, "units": kits.units}
    tables: dict[str, Mapping[str, str | None]] = {
        "bench": {"name": kit.label},
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
    return ('plan = "plan.toml"\n' if with_plan else "") + toml_tables(tables)


def systemd_folder() -> Path:
    """Return where the units are: in the installed package, or in the checkout."""
    inside = Path(str(files("station.kit"))) / "systemd"
    return inside if inside.is_dir() else Path(str(files("station"))).parent / "systemd"


def _json_yaml(values: Mapping[str, Any]) -> str:
    return json.dumps(values, indent=2, ensure_ascii=False) + "\n"
