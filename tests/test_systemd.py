"""The unit: valid, hardened, waiting for no network, and with nothing that cuts off the probe, the pins or the page.

systemd's own tools judge it offline (Debian's package systemd); nothing here needs systemd to run.
"""

import importlib.util
import os
import re
import shutil
import socket
import subprocess
import sys
from importlib.metadata import distributions
from pathlib import Path

import pytest

from station.bench import watchdog
from station.command.check.room import BOOT_SETTINGS, SERVICE_FOLDER
from station.kit.card import FOLDER, SCRIPTS
from station.kit.helper.requests import SOCKET
from station.record.journal import FILE_NAME, Journal
from station.room.store.database import FILE_NAME as ROOM_FILE
from station.room.store.store import RoomStore
from tests.conftest import PATIENCE_S, free_port

ROOT = Path(__file__).parents[1]
UNIT = ROOT / "systemd" / "station.service"
SYSUSERS = ROOT / "systemd" / "station-sysusers.conf"

UNITS = sorted(each for each in UNIT.parent.iterdir() if each.suffix in (".service", ".timer", ".socket"))
INSTALL = UNIT.parent / "station-install.service"
# It has to write into the system, and runs nothing but the card's own script, until that is done.
SANDBOXED = [each for each in UNITS if each.suffix == ".service" and each != INSTALL]
RULES = UNIT.parent / "60-station-probe.rules"
TMPFILES = UNIT.parent / "station-tmpfiles.conf"

EXPOSURE_LIMIT = 2.5
EXPOSED_MORE = {"station-helper.service": 3.5}
"""Root that mounts, updates and stops services: what it never needs is shut (station/manual/security.md lists it)."""

needs_systemd = pytest.mark.skipif(shutil.which("systemd-analyze") is None, reason="systemd-analyze is not installed")


def settings(text: str) -> dict[str, list[str]]:
    """Every `Key=value` of the unit, in order; systemd lets a key come several times."""
    found: dict[str, list[str]] = {}
    for key, value in re.findall(r"^(\w+)=(.*)$", text, re.MULTILINE):
        found.setdefault(key, []).append(value)
    return found


KEYS = settings(UNIT.read_text())


def words(key: str) -> list[str]:
    return " ".join(KEYS.get(key, [])).split()


def cut_off(keys: dict[str, list[str]]) -> list[str]:
    """Name each option that would cut the station off from a sense, and which sense."""
    named = []

    def on(key: str) -> bool:
        return keys.get(key, ["no"])[-1] not in ("no", "false", "0", "off", "")

    allowed = " ".join(keys.get("DeviceAllow", []))
    families = " ".join(keys.get("RestrictAddressFamilies", ["AF_INET AF_INET6 AF_UNIX"]))
    limits_devices = bool(allowed) or on("ProtectClock") or keys.get("DevicePolicy", ["auto"])[-1] != "auto"
    if on("PrivateDevices"):
        named.append("PrivateDevices hides /dev/gpiochip*: no lamps, buzzer, button")
    if limits_devices and "char-gpiochip rw" not in allowed:
        named.append("DevicePolicy, DeviceAllow or ProtectClock without char-gpiochip rw: no lamps, buzzer, button")
    if keys.get("ProcSubset", ["all"])[-1] == "pid":
        named.append("ProcSubset=pid hides /proc/device-tree: gpiozero cannot tell which Pi this is")
    hidden = " ".join(" ".join(keys.get(k, [])) for k in ("InaccessiblePaths", "TemporaryFileSystem"))
    if re.search(r"/sys(/bus(/w1)?|/devices)?(\s|$|:)", hidden):
        named.append("InaccessiblePaths or TemporaryFileSystem over /sys: no probe")
    if on("RootDirectory") or on("RootImage"):
        named.append("RootDirectory or RootImage: no /sys, no probe")
    if on("PrivateNetwork") or "any" in " ".join(keys.get("IPAddressDeny", [])):
        named.append("PrivateNetwork or IPAddressDeny=any: no page")
    if "AF_INET" not in families.split() or "AF_INET6" not in families.split():
        named.append("RestrictAddressFamilies without AF_INET and AF_INET6: no page")
    if "AF_UNIX" not in families.split():
        named.append("RestrictAddressFamilies without AF_UNIX: no READY=1, no watchdog")
    if "gpio" not in " ".join(keys.get("SupplementaryGroups", [])).split():
        named.append("SupplementaryGroups without gpio: /dev/gpiochip* may not be opened")
    return named


def test_nothing_cuts_off_probe_pins_or_page() -> None:
    assert cut_off(KEYS) == []


@pytest.mark.parametrize(
    ("key", "value", "sense"),
    [
        ("PrivateDevices", "yes", "PrivateDevices hides /dev/gpiochip"),
        ("DeviceAllow", "", "without char-gpiochip rw"),
        ("DeviceAllow", "char-gpiochip r", "without char-gpiochip rw"),
        ("ProcSubset", "pid", "cannot tell which Pi"),
        ("InaccessiblePaths", "/sys", "no probe"),
        ("InaccessiblePaths", "-/sys/bus/w1 /boot", "no probe"),
        ("TemporaryFileSystem", "/sys:ro", "no probe"),
        ("RootDirectory", "/opt/benchwarm", "no probe"),
        ("PrivateNetwork", "yes", "no page"),
        ("IPAddressDeny", "any", "no page"),
        ("RestrictAddressFamilies", "AF_UNIX", "no page"),
        ("RestrictAddressFamilies", "AF_INET AF_INET6", "no watchdog"),
        ("SupplementaryGroups", "", "without gpio"),
    ],
)
def test_each_option_that_would_is_named(key: str, value: str, sense: str) -> None:
    (named,) = cut_off({**KEYS, key: [value]})
    assert sense in named


def test_clock_protection_alone_would_close_the_pins() -> None:
    """ProtectClock= implies DeviceAllow=char-rtc r, which shuts every other device (systemd.exec(5))."""
    keys = {k: v for k, v in KEYS.items() if k not in ("DeviceAllow", "DevicePolicy")}
    assert any("ProtectClock" in named for named in cut_off(keys))


@pytest.mark.fault("no-network")
@pytest.mark.parametrize("key", ["After", "Before", "Wants", "Requires", "BindsTo", "Requisite", "PartOf", "WantedBy"])
def test_waits_for_no_network(key: str) -> None:
    """Waiting for the network blocks the start for up to minutes where there is none."""
    assert not [word for word in words(key) if "network" in word or "dhcp" in word or "wait-online" in word]


def test_needs_no_other_unit_to_start() -> None:
    assert not words("Requires") + words("BindsTo") + words("Requisite") + words("RequiresMountsFor")


def test_comes_back_after_anything_and_says_why_it_cannot_start() -> None:
    assert KEYS["ExecStart"] == ["/opt/benchwarm/.venv/bin/station serve --explain"]
    assert KEYS["Restart"] == ["always"]
    assert KEYS["StartLimitIntervalSec"] == ["0"]
    assert "RestartPreventExitStatus" not in KEYS
    assert float(KEYS["RestartSec"][-1]) <= 5


@pytest.mark.fault("lgpio-folder")
def test_lgpio_may_write_where_the_unit_works() -> None:
    """lgpio makes a pipe in LG_WD and reads it from the working folder (gpiozero issue 1106)."""
    folder = f"%t/{KEYS['RuntimeDirectory'][-1]}"
    assert KEYS["WorkingDirectory"] == [folder]
    assert f"LG_WD={folder}" in words("Environment")
    assert "GPIOZERO_PIN_FACTORY=lgpio" in words("Environment")


@pytest.mark.fault("pins-after-the-end")
def test_lamps_and_buzzer_go_off_also_after_a_kill() -> None:
    (stop,) = KEYS["ExecStopPost"]
    module = stop.rsplit("-m ", 1)[-1]
    assert stop.startswith("-/opt/benchwarm/.venv/bin/python ")
    assert importlib.util.find_spec(module) is not None


def test_memory_is_limited_and_a_killed_fit_does_not_end_the_bench() -> None:
    """120 MB for the daemon, about 200 MB for a fit with scipy; the smallest supported board has 512 MB."""
    assert 300 <= int(KEYS["MemoryMax"][-1].removesuffix("M")) <= 420
    assert KEYS["OOMPolicy"] == ["continue"]


def test_the_user_exists_and_is_in_the_group() -> None:
    text = SYSUSERS.read_text()
    user = KEYS["User"][-1]
    assert re.search(rf"^u {user} - .* /var/lib/{KEYS['StateDirectory'][-1]}$", text, re.MULTILINE)
    for group in words("SupplementaryGroups"):
        assert re.search(rf"^m {user} {group}$", text, re.MULTILINE)


@needs_systemd
@pytest.mark.parametrize("unit", UNITS, ids=lambda unit: unit.name)
def test_verify_is_clean(unit: Path, tmp_path: Path) -> None:
    """`systemd-analyze verify` wants the programs to exist, so they are stood in for."""
    for other in UNITS:  # a timer wants the service it starts
        _stood_in(other, tmp_path)
    command = ["systemd-analyze", "verify", str(tmp_path / unit.name)]
    done = subprocess.run(command, capture_output=True, text=True, check=False)
    assert (done.returncode, done.stdout, done.stderr) == (0, "", "")


def _stood_in(unit: Path, tmp_path: Path) -> None:
    text = unit.read_text()
    for program in set(re.findall(r"/opt/benchwarm/\S+/\S+|/usr/bin/python3", text)):
        stand_in = tmp_path / Path(program).name
        stand_in.write_text("#!/bin/sh\n")
        stand_in.chmod(0o755)
        text = text.replace(program, str(stand_in))
    (tmp_path / unit.name).write_text(text)


@pytest.mark.fault("heavy-work")
def test_a_fit_may_step_back_behind_the_sampling() -> None:
    """Raising one's own niceness needs no privilege, but the call is in @resources, which is denied."""
    assert KEYS["SystemCallFilter"][-1] == "setpriority"


def test_the_installation_runs_until_it_is_done_and_may_take_its_time() -> None:
    """After cloud-init, since it may end with a restart; cloud-init's end waits for multi-user.target."""
    keys = settings(INSTALL.read_text())
    assert keys["ConditionPathExists"] == ["!/opt/benchwarm/installed"]
    assert (keys["Type"], keys["TimeoutStartSec"]) == (["oneshot"], ["infinity"])
    assert keys["After"] == ["multi-user.target cloud-final.service station-network.service"]
    assert keys["WantedBy"] == ["multi-user.target"]
    script = (ROOT / "station" / "kit" / "install.sh").read_text()
    assert 'done_marker="$home/installed"' in script


@needs_systemd
@pytest.mark.parametrize("unit", SANDBOXED, ids=lambda unit: unit.name)
def test_exposure_is_within_the_limit(unit: Path) -> None:
    threshold = str(round(EXPOSED_MORE.get(unit.name, EXPOSURE_LIMIT) * 10))
    command = ["systemd-analyze", "security", "--offline=true", "--no-pager", f"--threshold={threshold}", str(unit)]
    done = subprocess.run(command, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stdout[-400:]
    assert "Overall exposure level" in done.stdout


@pytest.mark.skipif(shutil.which("systemd-sysusers") is None, reason="systemd-sysusers is not installed")
def test_sysusers_makes_the_user(tmp_path: Path) -> None:
    etc = tmp_path / "etc"
    etc.mkdir()
    (etc / "group").write_text("gpio:x:986:\n")
    command = ["systemd-sysusers", f"--root={tmp_path}", str(SYSUSERS)]
    done = subprocess.run(command, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
    assert re.search(r"^station:.*:/var/lib/station:", (etc / "passwd").read_text(), re.MULTILINE)
    assert re.search(r"^gpio:x:986:station$", (etc / "group").read_text(), re.MULTILINE)


def test_the_backup_may_read_the_record_and_write_its_copies() -> None:
    """And reaches nothing else: no network, no devices."""
    keys = settings((UNIT.parent / "station-backup.service").read_text())
    (place,) = re.findall(r"^d (\S+) 0700 (?:station station)", TMPFILES.read_text(), re.MULTILINE)
    folder = f"/var/lib/{KEYS['StateDirectory'][-1]}"
    assert keys["ReadWritePaths"] == [f"-{folder} -{SERVICE_FOLDER.parent} {place}"]
    assert keys["ConditionPathExists"] == [f"|{folder}/{FILE_NAME}", f"|{SERVICE_FOLDER}/{ROOM_FILE}"]
    bench, room = keys["ExecStart"]
    assert f"--record {folder} " in bench
    assert f"--room {SERVICE_FOLDER} " in room
    assert all(f'"{place}/' in line for line in (bench, room))
    assert (keys["PrivateNetwork"], keys["PrivateDevices"]) == (["yes"], ["yes"])


@pytest.mark.parametrize("kept", ["record", "room"])
def test_the_backup_commands_of_the_unit_make_a_copy_of_what_is_there(tmp_path: Path, kept: str) -> None:
    """The unit's own words, with the specifiers that systemd resolves ($$ and %%), run by a real shell."""
    if kept == "record":
        Journal(tmp_path / "record").close()
    else:
        RoomStore(tmp_path / "room").close()
    (tmp_path / "copies").mkdir()
    program = f"{sys.executable} -c 'from station.command.main import run; run()'"
    for line in settings((UNIT.parent / "station-backup.service").read_text())["ExecStart"]:
        script = line.partition("'")[2].rpartition("'")[0].replace("$$", "$").replace("%%", "%")
        for there, here in (
            ("/opt/benchwarm/.venv/bin/station", program),
            (str(SERVICE_FOLDER), str(tmp_path / "room")),
            ("/var/lib/station", str(tmp_path / "record")),
            ("/var/backups/station", str(tmp_path / "copies")),
        ):
            script = script.replace(there, here)
        done = subprocess.run(["/bin/sh", "-c", script], cwd=ROOT, capture_output=True, text=True, check=False)
        assert done.returncode == 0, done.stderr
    (copy,) = (tmp_path / "copies").iterdir()
    assert re.fullmatch(kept + r"-[1-7]\.backup", copy.name)


@pytest.mark.fault("kernel-check-off")
def test_every_attach_of_a_probe_sets_resolution_check_and_group() -> None:
    rules = [line for line in RULES.read_text().splitlines() if line and not line.startswith("#")]
    assert all(line.startswith('ACTION=="add", SUBSYSTEM=="w1", KERNEL=="28-*", ') for line in rules)
    written = dict(re.findall(r'ATTR\{(\w+)\}="([^"]*)"', " ".join(rules)))
    assert written == {"features": "1", "resolution": "12"}
    assert f"/bin/chgrp {KEYS['Group'][-1]} /sys%p/w1_slave" in " ".join(rules)


@pytest.mark.skipif(shutil.which("systemd-tmpfiles") is None, reason="systemd-tmpfiles is not installed")
def test_tmpfiles_makes_the_folder_of_the_backups(tmp_path: Path) -> None:
    (tmp_path / "etc").mkdir()
    (tmp_path / "etc" / "passwd").write_text("station:x:987:987::/var/lib/station:/usr/sbin/nologin\n")
    (tmp_path / "etc" / "group").write_text("station:x:987:\n")
    command = ["systemd-tmpfiles", f"--root={tmp_path}", "--create", str(TMPFILES)]
    done = subprocess.run(command, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
    made = (tmp_path / "var" / "backups" / "station").stat()
    assert oct(made.st_mode & 0o777) == "0o700"


def told_to_systemd(folder: Path, *words: str) -> set[bytes]:
    """Run this command until it has sent three messages to systemd's socket, and return them."""
    with socket.socket(socket.AF_UNIX, socket.SOCK_DGRAM) as systemd:
        systemd.bind(str(folder / "notify"))
        systemd.settimeout(PATIENCE_S)
        env = {**os.environ, "NOTIFY_SOCKET": str(folder / "notify")}
        command = [sys.executable, "-c", "from station.command.main import run; run()", *words]
        with subprocess.Popen(command, cwd=ROOT, env=env) as station:
            try:
                return {systemd.recv(256) for _ in range(3)}
            finally:
                station.terminate()
                station.wait(PATIENCE_S)


@pytest.mark.fault("station-hangs")
@pytest.mark.skipif(not list(distributions(name="benchwarm")), reason="the package is not installed")
def test_the_station_says_ready_and_feeds_the_watchdog(tmp_path: Path) -> None:
    """Type=notify means that a station which does not say so is killed: so it must."""
    port = free_port()
    (tmp_path / "station.toml").write_text(
        f'[probe]\ndriver = "virtual"\n[panel]\npins = "none"\n[server]\nhost = "127.0.0.1"\nport = {port}\n'
        f'[record]\nfolder = "{tmp_path / "record"}"\n'
    )
    heard = told_to_systemd(tmp_path, "serve", "--config", str(tmp_path / "station.toml"))
    assert {b"READY=1", b"WATCHDOG=1"} <= heard


def test_the_room_waits_for_no_network_and_comes_back_after_anything_but_wrong_settings() -> None:
    keys = settings((UNIT.parent / "station-room.service").read_text())
    for key in ("After", "Wants", "Requires", "BindsTo"):
        assert "network" not in " ".join(keys.get(key, [])).replace("mosquitto", "")
    assert not keys.keys() & {"Requires", "BindsTo", "Requisite"}, "it starts without Mosquitto, and says so"
    assert (keys["Restart"], keys["RestartPreventExitStatus"]) == (["always"], ["2"])
    assert keys["ExecStart"] == [f"/opt/benchwarm/.venv/bin/station room --config {BOOT_SETTINGS}"]
    assert Path("/var/lib", keys["StateDirectory"][-1], "room") == SERVICE_FOLDER
    assert keys["User"] == KEYS["User"], "the user that station-sysusers.conf makes"
    assert float(keys["WatchdogSec"][-1]) >= 10 * watchdog.FEED_S, "a busy moment is not yet a hang"


@pytest.mark.fault("station-hangs")
def test_the_room_says_ready_and_feeds_the_watchdog(tmp_path: Path) -> None:
    (tmp_path / "room.toml").write_text(
        f'[room]\nfolder = "record"\nbroker = "mqtt://127.0.0.1:{free_port()}"\n'
        f'[server]\nhost = "127.0.0.1"\nport = {free_port()}\n'
    )
    assert {b"READY=1", b"WATCHDOG=1"} <= told_to_systemd(tmp_path, "room", "--config", str(tmp_path / "room.toml"))


def test_the_helper_is_reached_by_the_stations_user_alone_and_by_nothing_from_outside() -> None:
    bound = settings((UNIT.parent / "station-helper.socket").read_text())
    assert bound["ListenStream"] == [SOCKET]
    assert (bound["SocketUser"], bound["SocketGroup"], bound["SocketMode"]) == (["root"], KEYS["Group"], ["0660"])
    keys = settings((UNIT.parent / "station-helper.service").read_text())
    assert (keys["IPAddressDeny"], keys["IPAddressAllow"]) == (["any"], ["localhost"]), "an update looks at the page"
    module = keys["ExecStart"][-1].rpartition(" -m ")[2]
    assert importlib.util.find_spec(module) is not None
    assert "User" not in keys


def test_the_page_of_the_installation_gives_way_to_bench_and_room() -> None:
    """Stopped before they start, since they conflict and are ordered; not started once the card is installed."""
    keys = settings((UNIT.parent / "station-progress.service").read_text())
    assert keys["Conflicts"] == keys["Before"] == ["station.service station-room.service"]
    assert keys["ConditionPathExists"] == ["!/opt/benchwarm/installed"]
    assert "WantedBy" not in keys, "first-start.sh starts it, and a start with the bench at work does not"
    folder, _, file = keys["ExecStart"][-1].rpartition(" ")[2].rpartition("/")
    assert (folder, file in SCRIPTS) == (f"/boot/firmware/{FOLDER}", True)
