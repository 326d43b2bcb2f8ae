"""On demand, some minutes: updates in a folder that stands for /opt/benchwarm, with real environments, wheels and pip
without a network, and a real station that is started anew as systemd would.

    nice .venv-test/bin/pytest -q -s tests/kit/update_for_real.py

It is not collected by itself. The wheels of what the station needs are fetched once, by pip, before the network is cut.
"""

import os
import signal
import socket
import subprocess
import sys
import time
from collections.abc import Iterator
from pathlib import Path

import pytest

from station.command import update as module
from station.command.terminal import CommandError
from station.command.update import Service, go_back, update
from station.kit import releases
from station.kit.offer import write_sums
from station.kit.table import KitError
from station.kit.trial import answers
from tests.kit.wheels import Change, as_version, own

SERVE = "station/command/serve.py"


def breaks_on_a_real_port(files: dict[str, bytes]) -> None:
    """Well in the trial, on a free port; broken at the bench: only the way back helps."""
    files[SERVE] = files[SERVE].replace(b"async def _work(", b"async def _work_(", 1) + (
        b"\n\nasync def _work(parts, *words, **more):  # type: ignore\n"
        b"    if parts.settings.server.port:\n        raise SystemExit(9)\n"
        b"    await _work_(parts, *words, **more)\n"
    )


def breaks_at_once(files: dict[str, bytes]) -> None:
    files[SERVE] += b"\nraise RuntimeError('spoilt')\n"


def sees_red(files: dict[str, bytes]) -> None:
    path = "station/bench/check/machine.py"
    files[path] = files[path].replace(b'return Finding("versions", "green"', b'return Finding("versions", "red"')
    files[path] = files[path].replace(b'"versions", "unknown"', b'"versions", "red"')


class Bench:
    """The home of the releases, and the station that runs the current one."""

    def __init__(self, folder: Path, wheelhouse: Path) -> None:
        self.home, self.wheelhouse, self.config = folder / "opt", wheelhouse, folder / "station.toml"
        self.record = folder / "record"
        with socket.socket() as free:
            free.bind(("127.0.0.1", 0))
            self.url = f"http://127.0.0.1:{free.getsockname()[1]}/"
        self.config.write_text(
            f'bench.name = "Bench 7"\nprobe.driver = "virtual"\nserver.host = "127.0.0.1"\n'
            f"server.port = {self.url.rpartition(':')[2].strip('/')}\nrecord.folder = '{self.record}'\n"
        )
        self._station: subprocess.Popen[bytes] | None = None

    def restart(self) -> bool:
        self.stop()
        command = [str(self.home / ".venv" / "bin" / "station"), "serve", "--explain", "--config", str(self.config)]
        self._station = subprocess.Popen(command)
        return True

    def stop(self) -> None:
        if self._station is not None:
            self._station.send_signal(signal.SIGTERM)
            self._station.wait(30)

    @property
    def service(self) -> Service:
        return Service(self.restart, self.url)

    def offered(self, version: str, change: Change = lambda _: None) -> tuple[Path, str]:
        """A folder as on a stick: the station's wheel under this version, and nothing else that is new."""
        stick = self.home.parent / f"stick-{version}"
        stick.mkdir()
        as_version(next(self.wheelhouse.glob("benchwarm-*.whl")), version, stick, change)
        return stick, write_sums(stick)

    def version(self) -> str:
        command = [str(self.home / ".venv" / "bin" / "station"), "--version"]
        return subprocess.run(command, capture_output=True, text=True, check=True).stdout.split()[1].rstrip(",")

    def update(self, version: str, change: Change = lambda _: None) -> int:
        stick, digest = self.offered(version, change)
        return update(self.home, stick, digest[:16], self.service, self.config, self.record)


@pytest.fixture(scope="module")
def bench(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Bench]:
    folder = tmp_path_factory.mktemp("update")
    house = folder / "wheelhouse"
    house.mkdir()
    wheel = own(house)
    base = getattr(sys, "_base_executable", sys.executable)
    subprocess.run([sys.executable, "-m", "pip", "download", "-q", "-d", house, wheel, "pip"], check=True)
    os.environ |= {"https_proxy": "http://127.0.0.1:9", "http_proxy": "http://127.0.0.1:9", "PYTHONPATH": ""}
    found = Bench(folder, house)
    # As the first start of a card lays it out (first-start.sh).
    subprocess.run([base, "-m", "venv", "--without-pip", found.home / "releases" / "first"], check=True)
    python = found.home / "releases" / "first" / "bin" / "python"
    pip = next(house.glob("pip-*.whl")) / "pip"
    subprocess.run([python, pip, "install", "-q", "--no-index", "--find-links", house, "benchwarm"], check=True)
    (found.home / ".venv").symlink_to("releases/first")
    releases.keep_wheels(found.home, house)
    assert found.service.comes_up()
    yield found
    found.stop()


def test_a_good_version_takes_over_and_the_practical_goes_on(bench: Bench) -> None:
    before = answers(bench.url)
    begun_s = time.monotonic()
    assert bench.update("0.8.1") == 0
    print(f"update took {time.monotonic() - begun_s:.0f} s")
    assert bench.version() == "0.8.1"
    after = answers(bench.url)
    assert before is not None and after is not None
    assert after["seq"] > before["seq"] and after["boot"] == before["boot"]
    assert any((bench.home / "wheelhouse").glob("benchwarm-0.8.1-*.whl"))


@pytest.mark.parametrize(
    ("version", "change", "words"),
    [("0.8.2", breaks_at_once, "does not start"), ("0.8.3", sees_red, "check finds what the old one's")],
)
def test_a_version_that_is_not_fit_is_never_switched_to(bench: Bench, version: str, change: Change, words: str) -> None:
    state = answers(bench.url)
    with pytest.raises(KitError, match=words):
        bench.update(version, change)
    assert bench.version() == "0.8.1"
    after = answers(bench.url)
    assert state is not None and after is not None and after["seq"] > state["seq"], "it was never disturbed"
    assert not (bench.home / "releases" / version).exists()


def test_a_version_that_does_not_come_up_is_rolled_back(bench: Bench, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(module, "UP_WITHIN_S", 8.0)
    monkeypatch.setattr(Service.comes_up, "__defaults__", (8.0,))
    with pytest.raises(CommandError, match=r"0.8.4 did not come up .*; 0.8.1 is at work again"):
        bench.update("0.8.4", breaks_on_a_real_port)
    assert bench.version() == "0.8.1"
    assert answers(bench.url) is not None


def test_the_technician_goes_back(bench: Bench) -> None:
    assert bench.update("0.8.5") == 0
    assert go_back(bench.home, bench.service) == 0
    assert bench.version() == "0.8.1"
    assert {each.name for each in (bench.home / "releases").iterdir()} == {"0.8.1", "0.8.5"}
