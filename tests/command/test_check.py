"""`station check` as a technician types it: exit status, words, JSON, beside a station at work, and the lamps."""

import importlib.util
import json
import os
import shutil
import subprocess
import sys
import time
from pathlib import Path
from typing import Any

import pytest

from station.bench.check.finding import Finding
from station.bench.panel.panel import Panel
from station.bench.panel.signals import Signal
from station.command import settings as known
from station.command.check import check as module
from station.command.check.check import kit_of, run_checks
from station.command.main import main
from station.command.settings import Settings
from tests.bench.check.machine import Machine
from tests.bench.one_wire_rig import PROBE, PlainTree, good
from tests.command.child import RUN, Served

ROOT = Path(__file__).parents[2]


@pytest.fixture(autouse=True)
def elsewhere(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Work in an empty folder, with a home and a card of our own."""
    (tmp_path / "work").mkdir()
    monkeypatch.chdir(tmp_path / "work")
    monkeypatch.setenv("HOME", str(tmp_path / "home"))
    for name in ("XDG_DATA_HOME", "STATE_DIRECTORY"):
        monkeypatch.delenv(name, raising=False)
    monkeypatch.setattr(known, "BOOT_SETTINGS", tmp_path / "card" / "station.toml")
    monkeypatch.setattr(module, "SERVICE_FOLDER", tmp_path / "var" / "lib" / "station")


def checked(capsys: pytest.CaptureFixture[str], *words: str | Path) -> tuple[int, dict[str, Any]]:
    """Run it with --json; return the exit status, and the findings by name ("status" holds the whole's)."""
    status = main(["check", "--json", "--reads", "1", *map(str, words)])
    told = json.loads(capsys.readouterr().out)
    return status, {"status": told["status"], **{each["name"]: each for each in told["findings"]}}


def settings_file(folder: Path, text: str) -> Path:
    path = folder / "station.toml"
    path.parent.mkdir(exist_ok=True)
    path.write_text(text)
    return path


def test_it_works_without_a_settings_file(capsys: pytest.CaptureFixture[str]) -> None:
    """This machine has no probe, or one that is none of ours: either way each thing is looked at."""
    _, found = checked(capsys)
    assert found["settings"]["colour"] == "green"
    assert "no settings file" in found["settings"]["text"]
    names = {"bus", "pins", "storage", "free_space", "journal", "clock", "power", "network", "port", "versions"}
    assert names <= set(found)
    assert found["pins"]["colour"] == "green"


@pytest.mark.skipif(Path("/sys/bus/w1").exists(), reason="this machine has a one-wire bus")
def test_a_kit_without_a_bus_is_red_and_ends_with_status_2(capsys: pytest.CaptureFixture[str]) -> None:
    status, found = checked(capsys)
    assert (status, found["status"], found["bus"]["colour"]) == (2, "red", "red")


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("[probe]\ndriverr = 'virtual'", "[probe] driverr: unknown key"),
        ("[server\nport = 1", "not valid TOML"),
        ("plan = 'gone.toml'\n[probe]\ndriver = 'none'", "gone.toml: no such file"),
    ],
)
def test_settings_or_a_plan_that_cannot_be_read_are_a_red_line_among_the_others(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], text: str, words: str
) -> None:
    status, found = checked(capsys, "--config", settings_file(tmp_path, text))
    assert (status, found["status"]) == (2, "red")
    (red,) = [each for name in ("settings", "plan") if (each := found.get(name)) and each["colour"] == "red"]
    assert words in red["text"]
    assert red["remedy"]
    assert {"storage", "journal", "clock", "versions"} <= set(found)


def test_what_depends_on_settings_that_cannot_be_read_is_not_called_green(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    _, found = checked(capsys, "--config", settings_file(tmp_path, "[panel]\npins = 'reel'"))
    assert found["pins"]["colour"] == "unknown"


def test_a_named_file_that_is_missing_is_a_red_line_too(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    status, found = checked(capsys, "--config", tmp_path / "gone.toml")
    assert (status, found["settings"]["colour"]) == (2, "red")


@pytest.mark.parametrize(("colour", "status"), [("green", 0), ("unknown", 0), ("amber", 1), ("red", 2)])
def test_the_exit_status_is_the_worst_colour(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch, colour: Any, status: int
) -> None:
    monkeypatch.setattr(module, "check_kit", lambda kit: [Finding("tea", colour, "as found", "do this")])
    assert main(["check"]) == status
    told = capsys.readouterr().out.splitlines()
    assert told[0] == f"Bench: {('green', 'amber', 'red')[status]}"
    assert told[-2].split() == [colour, "tea", "as", "found"]
    assert told[-1].split() == ["→", "do", "this"]


def test_the_whole_kit_green(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A Pi as its files would be, with a real one-wire tree in the kernel's form: nothing amber, nothing unknown."""
    machine = Machine(tmp_path / "root")
    machine.is_a_pi()
    machine.write("run/systemd/timesync/synchronized", "")
    machine.write("sys/devices/platform/soc/soc:firmware/get_throttled", "0\n")
    tree = PlainTree(tmp_path / "root" / "sys/bus/w1/devices", "w1_bus_master1", PROBE)
    for name, text in (("ext_power", "1"), ("resolution", "12"), ("features", "3"), ("conv_time", "750")):
        (tree.w1_slave.parent / name).write_text(f"{text}\n")
    monkeypatch.setenv("PATH", "/nowhere")
    kit = machine.kit(addresses=("http://192.0.2.7:8080/",), reads=12)
    monkeypatch.setattr(module, "kit_of", lambda *_: kit)
    found = run_checks(Settings(), Path())
    assert {each.name: each.colour for each in found if each.colour != "green"} == {}
    assert len({each.name for each in found}) == len(found)
    assert all(each.remedy == "" or each.name == "probe_kind" for each in found)


@pytest.mark.skipif(shutil.which("umockdev-run") is None, reason="umockdev is not installed")
def test_on_the_kernels_own_path(tmp_path: Path) -> None:
    """The unchanged command, on /sys/bus/w1/devices as umockdev lays it over: two probes, of which one is set."""
    probes = (PROBE, "28-00000b5eca01")
    told = {"w1_slave": good(336), "ext_power": "1\n", "resolution": "9\n", "features": "0\n", "conv_time": "95\n"}
    lines = ["P: /devices/w1_bus_master1", "E: SUBSYSTEM=w1", "A: w1_master_slave_count=2\\n", ""]
    for each in probes:
        lines += [f"P: /devices/w1_bus_master1/{each}", "E: SUBSYSTEM=w1"]
        lines += [f"A: {name}={text}".replace("\n", "\\n") for name, text in told.items()]
        lines.append("")
    (tmp_path / "w1.umockdev").write_text("\n".join(lines))
    run = ["umockdev-run", "-d", str(tmp_path / "w1.umockdev"), "--", *RUN, "check", "--json", "--reads", "2"]
    unset = json.loads(subprocess.run(run, cwd=ROOT, capture_output=True, text=True, check=False).stdout)
    found = {each["name"]: each for each in unset["findings"]}
    assert found["probe"]["colour"] == "red"
    assert all(each in found["probe"]["text"] for each in probes)

    config = settings_file(tmp_path, f'[probe]\nid = "{PROBE}"')
    done = subprocess.run([*run, "--config", config], cwd=ROOT, capture_output=True, text=True, check=False)
    found = {each["name"]: each for each in json.loads(done.stdout)["findings"]}
    assert done.returncode == 2
    assert found["bus"]["values"]["masters"] == ["w1_bus_master1"]
    assert {name: found[name]["colour"] for name in ("probe", "probe_power", "probe_resolution", "probe_reads")} == {
        "probe": "green",
        "probe_power": "green",
        "probe_resolution": "red",
        "probe_reads": "green",
    }


def one_wire(tree: Path, port: int) -> str:
    return (
        f"[bench]\nname = 'Bench 7'\n[probe]\ntree = '{tree}'\n"
        f"[server]\nhost = '127.0.0.1'\nport = {port}\n[record]\nfolder = 'record'\n"
    )


@pytest.mark.fault("two-readers")
def test_beside_a_station_at_work_its_own_samples_are_judged(tmp_path: Path) -> None:
    """And the station does not notice."""
    tree = PlainTree(tmp_path / "devices")
    (tree.w1_slave.parent / "features").write_text("1\n")
    with Served(tmp_path, settings=one_wire(tree.folder, 0)) as station:
        while (station.state()["live"] or {}).get("temperature_c") is None:
            time.sleep(0.02)
        config = tmp_path / "beside.toml"
        config.write_text(one_wire(tree.folder, station.port))
        command = [*RUN, "check", "--json", "--config", str(config)]
        done = subprocess.run(command, cwd=ROOT, capture_output=True, text=True, check=False)
        state = station.state()
    found = {each["name"]: each for each in json.loads(done.stdout)["findings"]}
    assert found["probe_reads"]["colour"] == "green"
    assert "by the station at work failed" in found["probe_reads"]["text"]
    assert found["conversion_time"]["colour"] == "unknown"
    assert found["journal"]["colour"] == "green"
    assert found["port"]["text"] == f"a station serves Bench 7 on port {station.port}"
    assert state["fault"] is None


def test_neither_numpy_nor_scipy_nor_the_server_is_loaded(tmp_path: Path) -> None:
    code = (
        "import sys\nfrom station.command.main import main\n"
        f"main(['check', '--reads', '1', '--config', {str(settings_file(tmp_path, '[probe]'))!r}])\n"
        "print([name for name in ('numpy', 'scipy', 'fastapi', 'uvicorn', 'gpiozero') if name in sys.modules])"
    )
    done = subprocess.run([sys.executable, "-c", code], cwd=ROOT, capture_output=True, text=True, check=True)
    assert done.stdout.splitlines()[-1] == "[]"


class TestRecordFolder:
    """Typed by hand, it looks at the record of the service, not at one's own."""

    def test_the_services_folder_if_it_is_there(self, tmp_path: Path) -> None:
        module.SERVICE_FOLDER.mkdir(parents=True)
        assert kit_of(Settings(), Path()).folder == module.SERVICE_FOLDER

    def test_without_a_service_the_users_own(self, tmp_path: Path) -> None:
        assert kit_of(Settings(), Path()).folder == tmp_path / "home/.local/share/benchwarm"

    def test_within_the_service_its_own(self, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
        module.SERVICE_FOLDER.mkdir(parents=True)
        monkeypatch.setenv("STATE_DIRECTORY", str(tmp_path / "state"))
        assert kit_of(Settings(), Path()).folder == tmp_path / "state"

    def test_what_is_set_before_all(self, tmp_path: Path) -> None:
        module.SERVICE_FOLDER.mkdir(parents=True)
        settings = Settings.model_validate({"record": {"folder": "kept"}})
        assert kit_of(settings, tmp_path).folder == tmp_path / "kept"


class TestLamps:
    @pytest.fixture
    def shown(self, monkeypatch: pytest.MonkeyPatch) -> list[tuple[Signal, int]]:
        """What a panel of mock pins showed, and how many lamps were lit then; it is not kept up for 5 s."""
        shown: list[tuple[Signal, int]] = []
        tick = Panel.tick

        def look(panel: Panel, now_s: float) -> None:
            tick(panel, now_s)
            shown.append((panel.signal, sum(device.value for device in panel.hands.lamp_devices)))  # type: ignore[attr-defined]

        monkeypatch.setattr(Panel, "tick", look)
        monkeypatch.setattr(module, "LAMPS_S", 0.01)
        monkeypatch.setattr(module, "check_kit", lambda kit: [Finding("tea", "red", "")])
        return shown

    def test_the_worst_colour_is_shown(self, tmp_path: Path, shown: list[tuple[Signal, int]]) -> None:
        assert main(["check", "--lamps", "--config", str(settings_file(tmp_path, "[panel]\npins = 'mock'"))]) == 2
        assert shown[0] == (Signal.ATTENTION, 1)

    def test_without_a_panel_it_says_so_and_the_status_stays(
        self, shown: list[tuple[Signal, int]], capsys: pytest.CaptureFixture[str]
    ) -> None:
        assert main(["check", "--lamps"]) == 2
        assert "no lamps" in capsys.readouterr().err
        assert shown == []


@pytest.mark.skipif(importlib.util.find_spec("lgpio") is None, reason="lgpio is not installed")
@pytest.mark.skipif(any(Path("/dev").glob("gpiochip*")), reason="this machine has GPIO chips")
def test_the_real_lgpio_refuses_a_machine_without_pins(tmp_path: Path) -> None:
    """In a process of its own: lgpio starts a thread when it is imported."""
    config = settings_file(tmp_path, "[panel]\npins = 'real'\n[probe]\ndriver = 'none'")
    command = [*RUN, "check", "--json", "--lamps", "--config", str(config)]
    env = {**os.environ, "LG_WD": str(tmp_path)}
    done = subprocess.run(command, cwd=ROOT, capture_output=True, text=True, env=env, check=False)
    found = {each["name"]: each for each in json.loads(done.stdout)["findings"]}
    assert (done.returncode, found["pins"]["colour"]) == (2, "red")
    assert found["pins"]["text"] == "this machine has no GPIO pins"
    assert "no lamps: the panel cannot be used" in done.stderr


@pytest.mark.fault("no-names")
def test_the_qr_code_goes_beside_the_json(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    pytest.importorskip("segno")
    path = settings_file(tmp_path, "[server]\nhost = '192.0.2.7'\n[probe]\ndriver = 'none'")
    main(["check", "--json", "--qr", "--config", str(path)])
    told = capsys.readouterr()
    assert json.loads(told.out)["findings"]
    assert told.err.splitlines()[0] == "http://192.0.2.7:8080/"
    assert any(block in told.err for block in "▀▄█")


def test_without_segno_it_says_what_to_install(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setitem(sys.modules, "segno", None)
    main(["check", "--qr", "--config", str(settings_file(tmp_path, "[probe]\ndriver = 'none'"))])
    assert "pip install segno" in capsys.readouterr().err


def test_without_json_the_qr_code_stands_below_the_findings(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    pytest.importorskip("segno")
    main(["check", "--qr", "--config", str(settings_file(tmp_path, "[probe]\ndriver = 'none'"))])
    assert any(block in capsys.readouterr().out for block in "▀▄█")


@pytest.mark.parametrize("number", ["0", "-3", "1001", "many", "3.5", ""])
def test_a_number_of_reads_that_is_none_is_refused(number: str, capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit):
        main(["check", "--reads", number])
    assert "give a whole number from 1 to 1000" in capsys.readouterr().err


def test_it_says_how_long_it_takes_only_to_a_person(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(module, "check_kit", lambda kit: [])
    main(["check"])
    assert capsys.readouterr().err == ""
    monkeypatch.setattr("sys.stderr.isatty", lambda: True)
    main(["check", "--reads", "45"])
    assert "about 45 s" in capsys.readouterr().err


def test_the_versions_are_told_a_line_each(capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit) as ended:
        main(["--version"])
    assert ended.value.code == 0
    assert [line.split()[0] for line in capsys.readouterr().out.splitlines()][:2] == ["benchwarm", "Python"]


def test_the_help_names_every_option(capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit):
        main(["check", "--help"])
    told = capsys.readouterr().out
    assert all(option in told for option in ("--config", "--json", "--reads", "--qr", "--lamps"))
