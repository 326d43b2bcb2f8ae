"""A station that cannot start serves the reason at its address, and comes up by itself once the cause is mended."""

import asyncio
import os
import signal
import socket
import subprocess
import time
from collections.abc import Iterator
from contextlib import ExitStack, contextmanager
from pathlib import Path
from typing import Any

import httpx
import pytest

from station.bench.panel.panel import Panel, open_panel
from station.command import explain
from station.server.reason import Reason, ReasonApp, page
from station.server.serve import MOST_OF_ONE
from station.words import say
from tests.command.child import RUN
from tests.conftest import PATIENCE_S, free_port
from tests.server.test_crowd import established

GERMAN = {"accept-language": "de-DE,de;q=0.9,en;q=0.5"}
GOOD = """\
plan = "plan.toml"
[bench]
name = "Bench 7"
[probe]
driver = "virtual"
[server]
host = "127.0.0.1"
port = {port}
[record]
folder = "record"
[access]
bench_code = "OTTER-LAMP"
"""
PLAN = """\
[acid]
name = "nitric acid"
volume_cm3 = 20
prepared_mol_dm3 = {prepared}
[alkali]
name = "potassium hydroxide"
concentration_mol_dm3 = 0.5
[portions]
volume_cm3 = 3
count = 3
"""


@contextmanager
def explaining(folder: Path, *words: str) -> Iterator[tuple["subprocess.Popen[str]", socket.socket]]:
    """`station serve --explain` as systemd runs it, and the socket on which it tells how it is."""
    with socket.socket(socket.AF_UNIX, socket.SOCK_DGRAM) as systemd:
        systemd.bind(str(folder / "notify"))
        systemd.settimeout(PATIENCE_S)
        command = [*RUN, "serve", "--config", str(folder / "station.toml"), *words]
        env = {**os.environ, "NOTIFY_SOCKET": str(folder / "notify"), "TMPDIR": str(folder)}
        with subprocess.Popen(command, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True, env=env) as process:
            try:
                yield process, systemd
            finally:
                if process.poll() is None:
                    process.kill()


def asked(url: str, wanted: int, at_most_s: float = PATIENCE_S) -> httpx.Response:
    """What the station answers once it answers so."""
    until = time.monotonic() + at_most_s
    while True:
        try:
            answer = httpx.get(url, timeout=PATIENCE_S)
            if answer.status_code == wanted:
                return answer
        except httpx.TransportError:
            pass
        assert time.monotonic() < until
        time.sleep(0.1)


def heard(systemd: socket.socket, wanted: bytes) -> None:
    while systemd.recv(512) != wanted:
        pass


def test_the_reason_is_served_until_the_cause_is_mended(tmp_path: Path) -> None:
    """First the settings, then the plan, then the record's folder: each with its own line; no secret in any."""
    port = free_port()
    settings, plan = tmp_path / "station.toml", tmp_path / "plan.toml"
    settings.write_text(GOOD.format(port=port) + 'teacher_passphrase_hash = "Secret Otter"\n')
    plan.write_text(PLAN.format(prepared="'(about) 0,412 (made up)'"))
    (tmp_path / "record").write_text("in the way")
    url = f"http://127.0.0.1:{port}"
    with explaining(tmp_path, "--explain") as (station, systemd):
        heard(systemd, b"READY=1")
        heard(systemd, b"WATCHDOG=1")
        shown = asked(f"{url}/anything", 503).text
        assert "station.toml: [access] teacher_passphrase_hash" in shown
        settings.write_text(GOOD.format(port=port))
        told = problem_with(url, "plan.toml: [acid] prepared_mol_dm3", looked=True)
        plan.write_text(PLAN.format(prepared="0.412"))
        told += problem_with(url, str(tmp_path / "record"))
        (tmp_path / "record").unlink()
        settings.write_text(GOOD.format(port=port) + "\n")
        assert asked(f"{url}/api/state", 200).json()["bench"]["name"] == "Bench 7"
        heard(systemd, b"STATUS=")  # what `systemctl status` told of the reason goes away
        for secret in ("Secret Otter", "OTTER-LAMP", "0,412", "0.412"):
            assert secret not in shown + told
        station.send_signal(signal.SIGTERM)
        assert station.wait(PATIENCE_S) == 0


def problem_with(url: str, words: str, *, looked: bool = False) -> str:
    """The problem below /api once it is about this, perhaps with the findings of the check."""
    until = time.monotonic() + PATIENCE_S
    while True:
        answer = asked(f"{url}/api/state", 503)
        problem: dict[str, Any] = answer.json()
        if words in problem["detail"] and (problem["findings"] or not looked):
            break
        assert time.monotonic() < until, problem
        time.sleep(0.1)
    assert answer.headers["content-type"] == "application/problem+json"
    assert problem["code"] == "cannot_start"
    named = [each["name"] for each in problem["findings"] or []]
    assert "versions" in named or not looked
    assert "port" not in named, "it is the page itself that listens there"
    return answer.text


def test_it_ends_when_it_is_told_to(tmp_path: Path) -> None:
    (tmp_path / "station.toml").write_text(
        f'[server]\nhost = "127.0.0.1"\nport = {free_port()}\n[probe]\ndriver = "x"\n'
    )
    with explaining(tmp_path, "--explain") as (station, systemd):
        heard(systemd, b"READY=1")
        station.send_signal(signal.SIGTERM)
        assert station.wait(PATIENCE_S) == 0


def test_where_its_port_is_taken_the_line_and_the_status_are_those_of_the_cause(tmp_path: Path) -> None:
    with socket.socket() as other:
        other.bind(("127.0.0.1", 0))
        other.listen()
        (tmp_path / "station.toml").write_text(
            f'[server]\nhost = "127.0.0.1"\nport = {other.getsockname()[1]}\n[probe]\ndriver = "x"\n'
        )
        with explaining(tmp_path, "--explain") as (station, _):
            told = station.communicate(timeout=PATIENCE_S)
    assert station.returncode == 2
    assert "[probe] driver" in told[1]
    assert len(told[1].splitlines()) == 1


async def test_the_attention_lamp_tells_it_where_there_is_one(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    opened: list[Panel] = []

    def open_one(*words: Any, **more: Any) -> Panel:
        opened.append(open_panel(*words, **more))
        return opened[-1]

    monkeypatch.setattr(explain, "open_panel", open_one)
    settings = tmp_path / "station.toml"
    settings.write_text('plan = "missing.toml"\npanel.pins = "mock"\n')
    shown = asyncio.create_task(explain._attention(settings))
    async with asyncio.timeout(PATIENCE_S):
        while not (opened and opened[0].lit.attention):  # noqa: ASYNC110 - the panel's next tick
            await asyncio.sleep(0.005)
    shown.cancel()
    await asyncio.wait([shown])
    assert not any(opened[0].lit), "the pins are free for the next attempt"
    settings.write_text("panel = 3\n")
    await explain._attention(settings)  # nothing to show it with


def test_what_is_served_has_no_markup_of_the_reasons_own() -> None:
    found = {"name": "x", "colour": "red", "text": "<b>", "remedy": "<i>", "values": {}}
    shown = page("<script>alert(1)</script>", [found])
    assert "<script>alert" not in shown
    assert "red: &lt;b&gt;" in shown


async def test_the_page_is_in_the_readers_language() -> None:
    found = {"name": "x", "colour": "unknown", "text": say("room-no-address"), "remedy": say("link-broker-refuses")}
    reason = Reason(say("server-cannot-listen", host_address="10.0.0.1", port=80, reason="in use"), [found])
    async with httpx.AsyncClient(transport=httpx.ASGITransport(ReasonApp(reason)), base_url="http://x") as client:
        english, german = (await client.get("/")).text, (await client.get("/", headers=GERMAN)).text
        told = (await client.get("/api/state", headers=GERMAN)).json()
    assert "<h1>The station cannot start</h1>" in english
    assert "tries again by itself within half a minute" in english
    assert "<b>unknown: This room has no address that benches can reach.</b>" in english
    assert '<html lang="de">' in german
    assert "<h1>Die Station kann nicht starten</h1>" in german
    assert "an 10.0.0.1, Port 80, lässt sich nicht lauschen: in use; wähle einen anderen server.port" in german
    assert "<b>unbekannt: Dieser Raum kennt seine Adresse nicht.</b><br>→ Der Broker des Raums lässt" in german
    assert (told["detail"], told["id"]) == (str(reason.line), "server-cannot-listen")


async def test_worst_comes_first() -> None:
    colours = ["green", "unknown", "red", "amber"]
    reason = Reason("why", [{"name": "x", "colour": each, "text": each, "remedy": ""} for each in colours])
    async with httpx.AsyncClient(transport=httpx.ASGITransport(ReasonApp(reason)), base_url="http://x") as client:
        found = (await client.get("/api/kit")).json()["findings"]
        assert [each["colour"] for each in found] == ["red", "amber", "unknown", "green"]
        assert (await client.head("/")).content == b""


def test_a_crowd_does_not_keep_others_from_the_reason_nor_fill_the_log(tmp_path: Path) -> None:
    (tmp_path / "station.toml").write_text(GOOD.format(port=(port := free_port())))
    with explaining(tmp_path, "--explain") as (process, _), ExitStack() as crowd:
        assert process.stdout is not None
        assert "says why" in process.stdout.readline()
        for number in range(MOST_OF_ONE + 60):
            client = crowd.enter_context(socket.socket())
            client.bind(("127.0.0.2", 0))
            client.connect(("127.0.0.1", port))
            if number % 4 == 0:
                client.sendall(b"\0 no request\r\n\r\n")
        assert httpx.get(f"http://127.0.0.1:{port}/", timeout=PATIENCE_S).status_code == 503
        assert established(port) <= MOST_OF_ONE + 1
        process.send_signal(signal.SIGTERM)
        assert process.wait(timeout=PATIENCE_S) == 0
        assert process.stderr is not None
        assert process.stderr.read().count("\n") == 1, "the reason, once"
