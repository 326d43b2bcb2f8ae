"""`station serve` with a one-wire probe: another process changes what the probe says, and a practical is driven.

Once on a plain folder that `probe.tree` names, once on the kernel's own path under umockdev. The station samples
about once a second of real time, so the portions are pressed before they are asked for, which is allowed.
"""

import csv
import os
import shutil
import signal
import subprocess
import sys
import time
from collections.abc import Callable, Iterator
from itertools import groupby, pairwise
from pathlib import Path
from statistics import median
from typing import Any

import httpx
import pytest

from tests.bench.one_wire_rig import PROBE, good
from tests.bench.test_umockdev import DEVICES
from tests.conftest import PATIENCE_S

ROOT = Path(__file__).parents[2]
RUN = [sys.executable, "-c", "from station.command.main import run; run()"]

PLAN = """\
repeats = 1
[acid]
name = "nitric acid"
volume_cm3 = 20
[alkali]
name = "potassium hydroxide"
concentration_mol_dm3 = 0.5
[portions]
volume_cm3 = 3
count = 3
"""


class Station:
    """A station in a process of its own; `w1_slave` is what its probe says."""

    def __init__(self, process: "subprocess.Popen[str]", w1_slave: Path, record: Path) -> None:
        assert process.stdout is not None
        line = process.stdout.readline()
        assert line.startswith("Bench 7: http://127.0.0.1:"), line
        self.process, self._w1_slave, self.record = process, w1_slave, record
        patient = httpx.HTTPTransport(retries=5, trust_env=False)  # the address is told just before it is served
        self._client = httpx.Client(base_url=line.split()[-1], timeout=PATIENCE_S, transport=patient)

    def close(self) -> None:
        self._client.close()

    def probe_says(self, text: str) -> None:
        unseen = self._w1_slave.with_name("unseen")
        unseen.write_text(text)
        unseen.replace(self._w1_slave)

    def state(self) -> dict[str, Any]:
        shown: dict[str, Any] = self._client.get("/api/state").raise_for_status().json()
        return shown

    def until(self, happens: Callable[[dict[str, Any]], bool], at_most_s: float = PATIENCE_S) -> dict[str, Any]:
        give_up_s = time.monotonic() + at_most_s
        while not happens(state := self.state()):
            assert time.monotonic() < give_up_s, state
            time.sleep(0.05)
        return state

    def sees(self, temperature_c: float | None, bad: str | None = None) -> None:
        self.until(lambda state: live_of(state) == (temperature_c, bad))

    def act(self, name: str, **values: Any) -> dict[str, Any]:
        body = {"act": name, "key": f"{name} {values}", **values}
        answer: dict[str, Any] = self._client.post("/api/acts", json=body).raise_for_status().json()
        return answer

    def stop(self) -> int:
        self.process.send_signal(signal.SIGTERM)
        return self.process.wait(PATIENCE_S)


def live_of(state: dict[str, Any]) -> tuple[float | None, str | None]:
    live = state["live"] or {"temperature_c": None, "bad": "nothing yet"}
    return live["temperature_c"], live["bad"]


def settings(folder: Path, tree: Path | None) -> Path:
    (folder / "plan.toml").write_text(PLAN)
    path = folder / "station.toml"
    path.write_text(
        'plan = "plan.toml"\n[bench]\nname = "Bench 7"\n[probe]\ndriver = "one-wire"\n'
        + (f"tree = '{tree}'\n" if tree else "")
        + '[server]\nhost = "127.0.0.1"\nport = 0\n[record]\nfolder = "record"\n'
    )
    return path


@pytest.fixture
def on_a_plain_tree(tmp_path: Path) -> Iterator[Station]:
    w1_slave = tmp_path / "devices" / PROBE / "w1_slave"
    w1_slave.parent.mkdir(parents=True)
    w1_slave.write_text(good(336))
    command = [*RUN, "serve", "--config", str(settings(tmp_path, tmp_path / "devices"))]
    with subprocess.Popen(command, cwd=ROOT, text=True, stdout=subprocess.PIPE, start_new_session=True) as process:
        yield from opened(process, w1_slave, tmp_path / "record")


@pytest.fixture
def under_umockdev(tmp_path: Path) -> Iterator[Station]:
    if shutil.which("umockdev-run") is None:
        pytest.skip("umockdev is not installed")
    (tmp_path / "w1.umockdev").write_text(DEVICES)
    run = ["umockdev-run", "-d", str(tmp_path / "w1.umockdev"), "--", "sh", "-c", 'echo "$UMOCKDEV_DIR"; exec "$@"']
    command = [*run, "sh", *RUN, "serve", "--config", str(settings(tmp_path, None))]
    with subprocess.Popen(command, cwd=ROOT, text=True, stdout=subprocess.PIPE, start_new_session=True) as process:
        assert process.stdout is not None
        root = Path(process.stdout.readline().strip())
        w1_slave = root / "sys/devices/w1_bus_master1" / PROBE / "w1_slave"
        w1_slave.write_text(good(336))
        yield from opened(process, w1_slave, tmp_path / "record")


def opened(process: "subprocess.Popen[str]", w1_slave: Path, record: Path) -> Iterator[Station]:
    try:
        station = Station(process, w1_slave, record)
        yield station
        station.close()
    finally:
        if process.poll() is None:  # the whole session: umockdev-run would leave the station behind
            os.killpg(process.pid, signal.SIGKILL)


@pytest.mark.parametrize("where", ["on_a_plain_tree", "under_umockdev"])
def test_a_practical_on_a_one_wire_probe(where: str, request: pytest.FixtureRequest) -> None:
    station: Station = request.getfixturevalue(where)
    station.sees(21.0)
    assert station.act("begin")["state"]["state"] == "start"
    since = station.state()["seq"]
    station.until(lambda state: state["seq"] >= since + 2)  # two samples of the start

    for portion, raw in ((1, 364), (2, 392)):
        answer = station.act("portion_added", portion=portion)
        assert answer["accepted"] and answer["state"]["portion"] == portion
        station.probe_says(good(raw))
        station.sees(raw / 16)
    station.probe_says("")  # pulled, and put back
    station.sees(None, "empty")
    station.act("portion_added", portion=3)
    station.probe_says(good(384))
    station.sees(24.0)

    ended = station.act("finish")["state"]
    assert (ended["state"], ended["ended_early"]) == ("done", True)
    assert [(each["portion"], each["temperature_c"], each["settled"]) for each in ended["repeats"][0]["readings"]] == [
        (0, 21.0, False),
        (1, 22.75, False),
        (2, 24.5, False),
        (3, 24.0, False),
    ]
    assert station.stop() == 0
    check_export(station.record)


def check_export(record: Path) -> None:
    """The record as CSV: samples and portions in their order, the bad reading left out."""
    out = record.parent / "record.csv"
    done = subprocess.run(
        [*RUN, "export", "--record", str(record), "--out", str(out)],
        cwd=ROOT,
        capture_output=True,
        text=True,
        timeout=PATIENCE_S,
        check=False,
    )
    assert (done.returncode, done.stdout, done.stderr) == (0, "", "")
    header, *rows = csv.reader(out.read_text().splitlines())
    assert header == ["repeat", "time_s", "temperature_c", "portion_cm3"]
    assert {row[0] for row in rows} == {"1"}
    times = [float(row[1]) for row in rows]
    assert times == sorted(times) and times[0] >= 0.0
    order = [key for key, _ in groupby(f"{row[2] or '-'} {row[3] or '-'}" for row in rows)]
    assert order == ["21.0000 -", "- 3", "22.7500 -", "- 3", "24.5000 -", "- 3", "24.0000 -"]
    gaps = [after - before for before, after in pairwise(float(row[1]) for row in rows if row[2])]
    assert median(gaps) > 0.9, "a busy machine samples later, never faster"
