"""The addresses under which other devices find the page: numbers first, since names are not reliable in schools."""

import socket
from pathlib import Path


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
