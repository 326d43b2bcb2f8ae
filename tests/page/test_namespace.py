"""A bench on a network of its own, seen from another: plain http from an address that is not loopback."""

import os
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import expect

from tests.cables import Cable, wired
from tests.page import conftest
from tests.page.conftest import OpenPage, Station, serve_settings
from tests.page.hands import asked, expect_total, press
from tests.page.test_acting import begin


@pytest.fixture
def lab() -> Iterator[tuple[str, Cable]]:
    """A namespace with a cable to this one."""
    name = f"bench{os.getpid()}"
    with wired(name, 1) as (cable,):
        yield name, cable


@pytest.fixture
def far_bench(lab: tuple[str, Cable], tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[Station]:
    """A station that knows no other network than the lab's."""
    inside = tmp_path / "station"
    inside.write_text(f'#!/bin/sh\nexec ip netns exec {lab[0]} {conftest.STATION} "$@"\n')
    inside.chmod(0o755)
    monkeypatch.setattr(conftest, "STATION", inside)
    settings = serve_settings(tmp_path, "0.0.0.0")
    station = Station("serve", "--config", str(settings))
    station.start()
    yield station
    station.stop()


@pytest.mark.fault("plain-http")
def test_another_device_on_the_labs_network_works_the_bench(
    lab: tuple[str, Cable], far_bench: Station, open_page: OpenPage
) -> None:
    assert lab[1].there in far_bench.url, "the station prints the address that others reach it by"
    page = open_page(far_bench)
    assert page.evaluate("isSecureContext") is False, "loopback would count as secure"
    begin(page)
    press(page, "portion_added", 1)
    asked(page, "portion_added", 2)
    expect_total(page, "4 cm³")
    page.goto(f"{far_bench.url}#record")
    expect(page.locator("main")).to_contain_text("nitric acid")
