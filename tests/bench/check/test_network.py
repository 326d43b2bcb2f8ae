"""Addresses that another device can use, and a port that is ours."""

import os
import socket
from collections.abc import Iterator
from http.server import BaseHTTPRequestHandler, HTTPServer
from pathlib import Path
from threading import Thread

import pytest

from station.bench.check import finding as module
from station.bench.check.finding import Beside, Kit, look_beside
from station.bench.check.network import network, port
from station.record.journal import Journal
from tests.bench.check.machine import TCP_HEAD, Machine

LOOPBACK = "http://127.0.0.1:8080/"


@pytest.mark.fault("no-names")
@pytest.mark.parametrize(
    ("addresses", "colour", "words"),
    [
        (("http://192.0.2.7:8080/", LOOPBACK), "green", "http://192.0.2.7:8080/"),
        (("http://bench7.example:8080/",), "green", "bench7.example"),
        (("http://[2001:db8::7]:8080/",), "green", "2001:db8::7"),
        (("http://169.254.9.9:8080/", LOOPBACK), "amber", "no network gave this kit an address"),
        (("http://169.254.9.9:8080/", "http://192.0.2.7:8080/"), "green", "http://192.0.2.7:8080/"),
        ((LOOPBACK,), "amber", "no network"),
        ((), "amber", "no network"),
    ],
)
def test_the_pages_addresses(machine: Machine, addresses: tuple[str, ...], colour: str, words: str) -> None:
    """Link-local addresses are those that a machine gives itself (RFC 3927)."""
    found = network(machine.kit(addresses=addresses))
    assert found.colour == colour
    assert words in found.text


def test_a_page_for_this_machine_only_says_which_setting(machine: Machine) -> None:
    found = network(machine.kit(host="127.0.0.1", addresses=(LOOPBACK,)))
    assert found.colour == "amber"
    assert "server.host = 127.0.0.1" in found.text


@pytest.mark.fault("wifi-off")
@pytest.mark.parametrize(
    ("kind", "soft", "hard", "off"),
    [("wlan", "1", "0", True), ("wlan", "0", "1", True), ("wlan", "0", "0", False), ("bluetooth", "1", "0", False)],
)
def test_blocked_wifi_is_told(machine: Machine, kind: str, soft: str, hard: str, off: bool) -> None:
    """Without a country Raspberry Pi OS keeps Wi-Fi blocked (raspberrypi/documentation issue 2487)."""
    for name, text in (("type", kind), ("soft", soft), ("hard", hard)):
        machine.write(f"sys/class/rfkill/rfkill0/{name}", f"{text}\n")
    assert ("country" in network(machine.kit(addresses=(LOOPBACK,))).remedy) is off


@pytest.mark.parametrize(
    ("settings", "beside", "colour"),
    [
        ({}, Beside(), "green"),
        ({}, Beside(712, "Bench 7", True), "green"),
        ({}, Beside(None, "Bench 7", True), "green"),
        ({}, Beside(None, None, True), "red"),
        ({}, Beside(712, None, False), "amber"),
        ({"port": 0}, Beside(), "amber"),
    ],
)
def test_the_port(machine: Machine, settings: dict[str, int], beside: Beside, colour: str) -> None:
    found = port(machine.kit(**settings), beside)
    assert found.colour == colour
    assert (found.remedy == "") is (colour == "green")


class TestBeside:
    def test_nobody_is_at_work(self, machine: Machine) -> None:
        assert look_beside(machine.kit()) == Beside()

    def test_who_holds_the_record_is_found_without_touching_its_lock(self, tmp_path: Path) -> None:
        """In the real kernel's list of locks."""
        record = Journal(tmp_path / "record")
        try:
            assert look_beside(Kit(folder=tmp_path / "record", port=0)).record_pid == os.getpid()
        finally:
            record.close()
        assert look_beside(Kit(folder=tmp_path / "record", port=0)) == Beside()

    @pytest.mark.parametrize(
        ("line", "taken"),
        [
            ("   0: 00000000:1F90 00000000:0000 0A 00000000:00000000 00:00000000 00000000   996        0 9412", True),
            ("   0: 0100007F:1F90 00000000:0000 0A 00000000:00000000 00:00000000 00000000   996        0 9412", True),
            ("   1: 0700000A:1F90 0100000A:C350 01 00000000:00000000 00:00000000 00000000   996        0 9412", False),
            ("   0: 00000000:0016 00000000:0000 0A 00000000:00000000 00:00000000 00000000     0        0 8001", False),
        ],
    )
    def test_who_listens_is_read_from_the_kernels_table(self, machine: Machine, line: str, taken: bool) -> None:
        """proc(5), /proc/net/tcp: 1F90 is 8080, state 0A listens, 01 is a connection."""
        machine.write("proc/net/tcp", f"{TCP_HEAD}{line}\n")
        assert look_beside(machine.kit(host="127.0.0.2")).port_taken is taken

    @pytest.fixture
    def other(self) -> Iterator[int]:
        """Another program's page."""

        class Page(BaseHTTPRequestHandler):
            def do_GET(self) -> None:
                self.send_response(200)
                self.end_headers()
                self.wfile.write(b'{"seq": 3}' if self.path == "/api/state" else b"")

            def log_message(self, format: str, *args: object) -> None:  # noqa: A002
                pass

        with HTTPServer(("127.0.0.1", 0), Page) as server:
            Thread(target=server.serve_forever, daemon=True).start()
            yield server.server_port
            server.shutdown()

    def test_another_programs_page_is_not_a_station(self, other: int) -> None:
        assert look_beside(Kit(folder=Path("/nowhere"), host="127.0.0.1", port=other)) == Beside(port_taken=True)

    def test_a_program_that_says_nothing_is_not_waited_for(self, monkeypatch: pytest.MonkeyPatch) -> None:
        monkeypatch.setattr(module, "WITHIN_S", 0.05)
        with socket.create_server(("127.0.0.1", 0)) as mute:
            number = mute.getsockname()[1]
            assert look_beside(Kit(folder=Path("/nowhere"), host="127.0.0.1", port=number)) == Beside(port_taken=True)
