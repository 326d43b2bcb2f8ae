"""The bench's network, from the file `network.toml` on the boot partition, at every start, through NetworkManager.

Run as root by station-network.service, with the system's own Python. What it did stands in `network-result.txt` beside
the file. A file with a mistake changes nothing: the network before stays.
"""

import os
import re
import subprocess
import sys
import tomllib
import uuid
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Final

FILE: Final = "network.toml"
RESULT: Final = "network-result.txt"
CONNECTION: Final = "benchwarm"
"""What NetworkManager calls the one Wi-Fi network that is this file's."""
KEYFILES: Final = Path("etc/NetworkManager/system-connections")
REACHED_WITHIN_S: Final = 60
LONGEST_BYTES: Final = 20_000


class NetworkError(ValueError):
    """A file that cannot be used; the message says what to change."""


@dataclass(frozen=True)
class Network:
    """What a network.toml asks for: a Wi-Fi network, or the cable alone (`ssid` is None)."""

    ssid: str | None = None
    password: str | None = None
    hidden: bool = False
    country: str | None = None

    @property
    def told(self) -> str:
        """What people call it."""
        return "the cable alone" if self.ssid is None else f'Wi-Fi "{self.ssid}"'


_KINDS: Final = {"ssid": str, "password": str, "hidden": bool, "country": str, "wired": bool}


def read(text: str) -> Network | None:
    """Return what the file asks for; None where it asks for nothing. Raises NetworkError."""
    try:
        values = tomllib.loads(text.removeprefix("\ufeff").replace("\r\n", "\n"))
    except tomllib.TOMLDecodeError as error:
        raise NetworkError(f"{FILE}: not valid TOML: {error}") from None
    for key, value in values.items():
        kind = _KINDS.get(key)
        if kind is None:
            raise NetworkError(f"{FILE}: {key}: not known; it has {', '.join(_KINDS)}")
        if type(value) is not kind:
            raise NetworkError(f"{FILE}: {key}: must be {'true or false' if kind is bool else 'text in quotes'}")
    return checked(values)


def checked(values: dict[str, Any]) -> Network | None:
    """Return what these values ask for; None where they ask for nothing. Raises NetworkError."""
    ssid, password, country = (values.get(key) for key in ("ssid", "password", "country"))
    if values.get("wired"):
        if ssid is not None:
            raise NetworkError(f"{FILE}: wired = true and ssid: one or the other")
        return Network(country=_country(country))
    if ssid is None:
        return None
    if not 1 <= len(ssid.encode()) <= 32 or not ssid.isprintable():
        raise NetworkError(f"{FILE}: ssid: 1 to 32 bytes of plain text")
    if password is not None and not (8 <= len(password.encode()) <= 63 and password.isprintable()):
        raise NetworkError(f"{FILE}: password: 8 to 63 characters; without the line for an open network")
    if country is None:
        raise NetworkError(f'{FILE}: country: Wi-Fi needs it, for example country = "IE"')
    return Network(ssid, password, values.get("hidden", False), _country(country))


def _country(code: str | None) -> str | None:
    if code is not None and not re.fullmatch("[A-Z]{2}", code):
        raise NetworkError(f'{FILE}: country: two capital letters (ISO 3166-1), for example "IE"')
    return code


def toml(network: Network) -> str:
    """Return the file that asks for this network."""
    if network.ssid is None:
        lines = ["wired = true"]
    else:
        lines = [f"ssid = {_quoted(network.ssid)}"]
        lines += [f"password = {_quoted(network.password)}"] if network.password is not None else []
        lines += ["hidden = true"] if network.hidden else []
    lines += [f"country = {_quoted(network.country)}"] if network.country is not None else []
    return "".join(f"{line}\n" for line in lines)


def _quoted(text: str) -> str:
    return '"' + text.replace("\\", "\\\\").replace('"', '\\"') + '"'


def keyfile(network: Network, name: str = CONNECTION) -> str:
    """Return NetworkManager's keyfile of a Wi-Fi network (nm-settings-keyfile(5)).

    A name that is not of letters, digits and blanks alone is written in bytes, as nmcli does; GLib's escapes for the
    rest.
    """
    if network.ssid is None:
        raise ValueError("the cable needs no file: NetworkManager takes it by itself")
    plain = re.fullmatch(r"[0-9A-Za-z_-]([0-9A-Za-z _-]*[0-9A-Za-z_-])?", network.ssid)
    ssid = network.ssid if plain else "".join(f"{byte};" for byte in network.ssid.encode())
    lines = ["[connection]", f"id={name}", f"uuid={uuid.uuid5(uuid.NAMESPACE_DNS, name)}", "type=wifi"]
    lines += ["autoconnect-priority=10", "", "[wifi]", "mode=infrastructure", f"ssid={ssid}"]
    lines += ["hidden=true"] if network.hidden else []
    if network.password is not None:
        escaped = network.password.replace("\\", "\\\\")
        escaped = "\\s" + escaped[1:] if escaped.startswith(" ") else escaped
        lines += ["", "[wifi-security]", "key-mgmt=wpa-psk", f"psk={escaped}"]
    lines += ["", "[ipv4]", "method=auto", "", "[ipv6]", "method=auto", ""]
    return "\n".join(lines)


# The system: its tools by their names, its files below a root, which is another folder only where this is tried.


Run = Callable[[Sequence[str]], int | None]
"""Runs a tool: its exit status, or None where the system does not have it."""


def run_tool(words: Sequence[str]) -> int | None:
    """Run one of the system's own tools; what it says is for the log."""
    try:
        done = subprocess.run(words, stdin=subprocess.DEVNULL, check=False, timeout=2 * REACHED_WITHIN_S)  # noqa: S603
        return done.returncode
    except FileNotFoundError:
        return None
    except subprocess.TimeoutExpired:
        return -1


def write(path: Path, text: str, mode: int = 0o600) -> None:
    """Let a file take its name once it is whole and written out; only root reads it, unless `mode` says otherwise."""
    part = path.with_name(f"{path.name}.part")
    part.unlink(missing_ok=True)
    handle = os.open(part, os.O_WRONLY | os.O_CREAT | os.O_EXCL, mode)
    with os.fdopen(handle, "w", encoding="utf-8", newline="\n") as file:
        file.write(text)
        file.flush()
        os.fsync(file.fileno())
    part.replace(path)
    folder = os.open(path.parent, os.O_RDONLY)
    try:
        os.fsync(folder)
    finally:
        os.close(folder)


def radio(network: Network, cmdline: Path, run: Run) -> list[str]:
    """Set the country by the system's own tool, unblock the radio and switch it on; return what to tell.

    raspi-config writes the country into cmdline.txt: where it stands there, that file is not written again.
    """
    if network.ssid is None:
        return ["radio: off"] if run(["nmcli", "radio", "wifi", "off"]) == 0 else ["AMBER: the radio is not off"]
    lines = []
    word = f"cfg80211.ieee80211_regdom={network.country}"
    known = cmdline.is_file() and word in cmdline.read_text(encoding="utf-8", errors="replace").split()
    if not known and run(["raspi-config", "nonint", "do_wifi_country", str(network.country)]) != 0:
        lines.append(f"AMBER: the system's tool (raspi-config) did not set the country {network.country}")
    unblocked = run(["rfkill", "unblock", "wifi"]) == 0
    on = run(["nmcli", "radio", "wifi", "on"]) == 0
    lines += [] if unblocked else ["AMBER: rfkill did not unblock the radio"]
    return [
        *lines,
        f"radio: country {network.country}, on" if on else "AMBER: NetworkManager did not switch the radio on",
    ]


def take(network: Network, root: Path, run: Run, name: str = CONNECTION) -> list[str]:
    """Give NetworkManager the network, or take it away for the cable; return what to tell."""
    path = root / KEYFILES / f"{name}.nmconnection"
    if network.ssid is None:
        if path.exists():
            run(["nmcli", "connection", "delete", "id", name])
            path.unlink(missing_ok=True)
        return ["network: the cable alone"]
    wanted = keyfile(network, name)
    if path.is_file() and path.read_text(encoding="utf-8") == wanted:
        return [f"network: {network.told}, as before"]
    path.parent.mkdir(parents=True, exist_ok=True)
    write(path, wanted)
    if run(["nmcli", "connection", "load", str(path)]) != 0:
        return [f"AMBER: NetworkManager did not take {network.told}; it reads it at its next start"]
    if run(["nmcli", "--wait", str(REACHED_WITHIN_S), "connection", "up", "id", name]) != 0:
        return [f"AMBER: {network.told} was not reached; it is tried again by itself"]
    return [f"network: {network.told}, reached"]


def apply(folder: Path, root: Path = Path("/"), run: Run = run_tool) -> list[str]:
    """Do what the file in this folder asks for; return what to tell. Raises NetworkError, OSError."""
    try:
        content = (folder / FILE).read_bytes()[:LONGEST_BYTES]
    except FileNotFoundError:
        return [f"network: no {FILE}, so it stays as it is"]
    try:
        network = read(content.decode("utf-8-sig"))
    except UnicodeDecodeError:
        raise NetworkError(f"{FILE}: not UTF-8 text; save the file as UTF-8") from None
    if network is None:
        return [f"network: {FILE} asks for nothing, so it stays as it is"]
    return [*radio(network, folder.parent / "cmdline.txt", run), *take(network, root, run)]


def main() -> int:
    """Apply the file of the folder named first; a second word is the folder that stands for the card's root."""
    folder, root = Path(sys.argv[1]), Path(sys.argv[2] if len(sys.argv) > 2 else "/")
    try:
        lines, status = apply(folder, root), 0
    except (NetworkError, OSError) as error:
        lines, status = [f"FAILED: {error}", "the network stays as it was"], 1
    text = "".join(f"{line}\n" for line in lines)
    sys.stdout.write(text)
    result = folder / RESULT
    if not result.is_file() or result.read_text(encoding="utf-8", errors="replace") != text:
        write(result, text)
    return status


if __name__ == "__main__":
    sys.exit(main())
