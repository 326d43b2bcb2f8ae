"""The names under which a station may be asked for: its own as they are now, and nobody else's."""

import ipaddress
import json
import socket
import subprocess

import pytest
from hypothesis import given
from hypothesis import strategies as st

from station.server.door.hosts import READ_AGAIN_S, Hosts, name_in, own_names
from tests.server.doors import Hand

KNOWN = {"localhost", "bench7", "bench7.local", "192.0.2.7", "fe80::1", "2001:db8::7"}


def hosts(*names: str) -> Hosts:
    return Hosts(names, lambda: KNOWN, Hand())


@pytest.mark.parametrize(
    "host",
    [
        "localhost", "localhost:8080", "LocalHost:8080", "localhost.", "bench7.local:8080", "192.0.2.7", "192.0.2.7:80",
        "127.0.0.1:8080", "127.0.0.2", "[::1]:8080", "[fe80::1]", "[2001:DB8:0::7]:8080", "kit7.school.example:8080",
        "localhost:",
    ],
)  # fmt: skip
def test_own_names_and_addresses_are_let_in(host: str) -> None:
    assert hosts("Kit7.school.example.").allows(host)


@pytest.mark.parametrize(
    "host",
    [
        "", ":8080", "evil.example", "evil.example:8080", "localhost.evil.example", "evil-localhost", "bench7.local.x",
        "192.0.2.70", "192.0.2.7.evil.example", "10.0.0.1", "0.0.0.0", "[2001:db8::8]", "[::2]:8080", "fe80::1",
        "[192.0.2.7]", "[fe80::1%eth0]", "[::1", "::1]", "[]", "localhost:80:80", "localhost:x", "localhost:999999",
        "user@localhost", "localhost@evil.example", "localhost/x", "localhost\\evil.example", "localhost evil.example",
        " localhost", "localhost\t", "localhost,evil.example", "127.1", "0x7f.0.0.1", "2130706433", "127.0.0.1.", "..",
        "ｌocalhost", "localhost\u0000", "bench７", "n" * 300,
    ],
)  # fmt: skip
def test_everything_else_is_not(host: str) -> None:
    assert hosts().allows(host) == (host == "127.0.0.1.")  # a final dot names the root: RFC 3986, 3.2.2


@given(st.text(max_size=60) | st.binary(max_size=60).map(lambda raw: raw.decode("latin-1")))
def test_whatever_arrives_is_judged_and_never_taken_for_another_name(host: str) -> None:
    name = name_in(host)
    if name is None:
        assert not hosts().allows(host)
        return
    assert host.lower().lstrip("[").startswith(name[:1])
    if hosts().allows(host):
        assert name in KNOWN or ipaddress.ip_address(name).is_loopback


@given(st.ip_addresses(v=6), st.integers(0, 65535))
def test_an_address_is_one_however_it_is_written(address: ipaddress.IPv6Address, port: int) -> None:
    assert name_in(f"[{address.exploded}]:{port}") == name_in(f"[{address}]") == str(address)


def test_a_new_address_is_known_within_a_second_and_unknown_names_cost_little() -> None:
    read, clock, known = 0, Hand(), {"192.0.2.7"}

    def count() -> set[str]:
        nonlocal read
        read += 1
        return set(known)

    door = Hosts((), count, clock)
    assert (door.allows("192.0.2.7"), read) == (True, 1)
    known.symmetric_difference_update({"192.0.2.7", "192.0.2.99"})  # the lease changed
    assert not any(door.allows(f"n{k}.evil.example") for k in range(1000))
    assert read == 1
    clock.now_s += READ_AGAIN_S
    assert door.allows("192.0.2.99")
    assert not door.allows("192.0.2.7")
    assert not any(door.allows(f"n{k}.evil.example") for k in range(1000))
    assert read == 2


def test_what_this_machine_is_called_is_what_the_kernel_says() -> None:
    told = subprocess.run(["ip", "-j", "address"], capture_output=True, check=True)
    rows = [row for link in json.loads(told.stdout) for row in link["addr_info"]]
    up = {row["local"] for row in rows if not row["local"].startswith("127.") and not row.get("tentative")}
    names = own_names()
    assert up <= names
    assert {"localhost", socket.gethostname().lower()} <= names
    assert all(name_in(f"[{name}]" if ":" in name else name) == name for name in names)
