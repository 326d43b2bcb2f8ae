"""The names and addresses under which this station may be asked for.

A page from elsewhere can point its own name at this station's address (DNS rebinding); the browser then takes both
for one site, and only the `Host` of the request still tells them apart. So what is not a name of ours is refused.
"""

import ipaddress
import re
import socket
import time
from collections.abc import Callable, Iterable
from pathlib import Path

# The addresses under which other devices find the page: numbers first, since names are not reliable in schools.


def addresses(host: str, port: int) -> list[str]:
    """Return the page's addresses for a socket bound to `host`; loopback last."""
    if host not in {"0.0.0.0", "::", ""}:  # noqa: S104 - compared, not bound
        return [f"http://{f'[{host}]' if ':' in host else host}:{port}/"]
    return [f"http://{each}:{port}/" for each in (*own_addresses(), "127.0.0.1")]


def own_addresses() -> list[str]:
    """Return this machine's IPv4 addresses other than loopback, as the kernel's routing table knows them."""
    try:
        text = Path("/proc/net/fib_trie").read_text()
    except OSError:
        return []
    found: list[str] = []
    before = ""
    for line in text.splitlines():
        if "/32 host LOCAL" in line:
            address = before.rsplit(maxsplit=1)[-1]
            if not address.startswith("127.") and address not in found:
                socket.inet_aton(address)
                found.append(address)
        before = line
    return found


READ_AGAIN_S = 1.0
"""Own addresses are read anew at most this often, and only when an unknown name arrives."""

_IF_INET6 = Path("/proc/net/if_inet6")


class Hosts:
    """Own addresses as the interfaces have them now, `localhost`, the machine's name, and names from the settings."""

    def __init__(
        self,
        names: Iterable[str] = (),
        read: Callable[[], Iterable[str]] | None = None,
        monotonic: Callable[[], float] = time.monotonic,
    ) -> None:
        self._named = frozenset(name.lower().rstrip(".") for name in names)
        self._read = read or own_names
        self._monotonic = monotonic
        self._known = frozenset(self._read())
        self._read_s = monotonic()

    def allows(self, host: str) -> bool:
        """Whether a request with this `Host` is meant for this station."""
        name = name_in(host)
        if name is None:
            return False
        return self._knows(name) or (self._read_again() and self._knows(name))

    def _knows(self, name: str) -> bool:
        return name in self._named or name in self._known or _is_loopback(name)

    def _read_again(self) -> bool:
        now_s = self._monotonic()
        if now_s - self._read_s < READ_AGAIN_S:
            return False
        self._known, self._read_s = frozenset(self._read()), now_s
        return True


def name_in(host: str) -> str | None:
    """Return the name or address in a `Host` (RFC 9110, 7.2), lower case and without port; None when it is none."""
    found = _HOST.fullmatch(host)
    if found is None:
        return None
    if found["ipv6"] is None:
        return found["name"].lower().removesuffix(".") or None
    try:
        return str(ipaddress.IPv6Address(found["ipv6"]))
    except ValueError:
        return None


def own_names() -> set[str]:
    """Return what this machine is called now: `localhost`, its own name, and the addresses of its interfaces."""
    machine = socket.gethostname().lower().rstrip(".")
    short = machine.partition(".")[0]
    return {"localhost", machine, short, f"{short}.local", *own_addresses(), *own_ipv6_addresses()} - {"", ".local"}


def own_ipv6_addresses() -> set[str]:
    """Return this machine's IPv6 addresses as the kernel lists them (proc(5): 32 hexadecimal digits come first)."""
    try:
        lines = _IF_INET6.read_text().splitlines()
    except OSError:
        return set()  # no IPv6
    return {str(ipaddress.IPv6Address(int(line.split()[0], 16))) for line in lines if line.strip()}


def _is_loopback(name: str) -> bool:
    try:
        return ipaddress.ip_address(name).is_loopback
    except ValueError:
        return False


_HOST = re.compile(r"(?:\[(?P<ipv6>[0-9A-Fa-f:.]+)\]|(?P<name>[A-Za-z0-9._-]{1,254}))(?::[0-9]{0,5})?")
"""Names are of letters, digits, hyphens and (in schools) underscores; at most 253 characters (RFC 1035, 2.3.4)."""
