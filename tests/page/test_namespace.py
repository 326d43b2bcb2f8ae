"""A bench on a network of its own, seen from another: plain http from an address that is not loopback."""

import os
import shutil
import subprocess
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import expect

from tests.page import conftest
from tests.page.conftest import OpenPage, Station, serve_settings
from tests.page.hands import asked, press, total
from tests.page.test_acting import begin

BENCH, HERE = "10.213.7.2", "10.213.7.1"


def ip(*words: str) -> None:
    subprocess.run(["ip", *words], check=True, capture_output=True)


@pytest.fixture
def lab() -> Iterator[str]:
    """A network namespace with a cable to this one; skips where it may not be made."""
    name, near, far = f"bench{os.getpid()}", f"bw{os.getpid() % 10000}a", f"bw{os.getpid() % 10000}b"
    if shutil.which("ip") is None:
        pytest.skip("a network namespace needs iproute2")
    try:
        ip("netns", "add", name)
    except subprocess.CalledProcessError:
        pytest.skip("only root may make a network namespace")
    try:
        ip("link", "add", near, "type", "veth", "peer", "name", far, "netns", name)
        ip("addr", "add", f"{HERE}/24", "dev", near)
        ip("link", "set", near, "up")
        ip("-n", name, "addr", "add", f"{BENCH}/24", "dev", far)
        ip("-n", name, "link", "set", far, "up")
        ip("-n", name, "link", "set", "lo", "up")
        yield name
    finally:
        ip("netns", "delete", name)


@pytest.fixture
def far_bench(lab: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[Station]:
    """A station that knows no other network than the lab's."""
    inside = tmp_path / "station"
    inside.write_text(f'#!/bin/sh\nexec ip netns exec {lab} {conftest.STATION} "$@"\n')
    inside.chmod(0o755)
    monkeypatch.setattr(conftest, "STATION", inside)
    settings = serve_settings(tmp_path, "0.0.0.0")
    station = Station("serve", "--config", str(settings))
    station.start()
    yield station
    station.stop()


def test_another_device_on_the_labs_network_works_the_bench(far_bench: Station, open_page: OpenPage) -> None:
    assert BENCH in far_bench.url, "the station prints the address that others reach it by"
    page = open_page(far_bench)
    assert page.evaluate("isSecureContext") is False, "loopback would count as secure"
    begin(page)
    press(page, "portion_added", 1)
    asked(page, "portion_added", 2)
    assert total(page) == "4 cm³"
    page.goto(f"{far_bench.url}#record")
    expect(page.locator("main")).to_contain_text("nitric acid")
