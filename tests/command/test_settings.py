"""Settings: where they are looked for, what every key is by default, and one clear line for what is wrong."""

import socket
from pathlib import Path

import pytest

from station.command import settings as module
from station.command.main import main
from station.command.settings import default_record_folder, load_plan, load_settings, record_folder
from station.command.terminal import EXIT_ADDRESS, EXIT_RECORD, EXIT_USAGE, CommandError
from station.practical.kinds import ready_plan
from station.practical.safety import hazards_of
from station.practical.state import State
from station.record.journal import Journal
from tests.record.cards import small_card
from tests.records import PLAN_TEXT


@pytest.fixture(autouse=True)
def elsewhere(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Work in an empty folder, with an empty home and a card of our own."""
    (tmp_path / "work").mkdir()
    (tmp_path / "home").mkdir()
    monkeypatch.chdir(tmp_path / "work")
    monkeypatch.setenv("HOME", str(tmp_path / "home"))
    for name in ("XDG_DATA_HOME", "STATE_DIRECTORY"):
        monkeypatch.delenv(name, raising=False)
    monkeypatch.setattr(module, "BOOT_SETTINGS", tmp_path / "card" / "station.toml")


def written(path: Path, text: str | bytes) -> Path:
    path.parent.mkdir(exist_ok=True)
    path.write_bytes(text if isinstance(text, bytes) else text.encode())
    return path


def test_without_any_file_the_defaults_stand(tmp_path: Path) -> None:
    settings, base = load_settings(None)
    assert settings.probe.driver == "one-wire"
    assert settings.probe.tree == Path("/sys/bus/w1/devices")
    assert settings.probe.id is None
    assert settings.panel.pins == "none"
    assert (settings.server.host, settings.server.port) == ("0.0.0.0", 8080)
    assert settings.plan is None
    assert record_folder(settings, base) == tmp_path / "home" / ".local" / "share" / "benchwarm"


def test_the_card_comes_before_the_working_folder_and_a_named_file_before_both(tmp_path: Path) -> None:
    written(tmp_path / "work" / "station.toml", 'bench.name = "working folder"')
    assert load_settings(None)[0].bench.name == "working folder"
    written(module.BOOT_SETTINGS, 'bench.name = "card"')
    settings, base = load_settings(None)
    assert (settings.bench.name, base) == ("card", module.BOOT_SETTINGS.parent)
    named = written(tmp_path / "named" / "any.toml", 'bench.name = "named"')
    assert load_settings(named)[0].bench.name == "named"


def test_every_key_of_the_contract_is_read(tmp_path: Path) -> None:
    path = written(
        tmp_path / "station.toml",
        """
        plan = "plans/nitric.toml"
        [bench]
        name = "Bench 7"
        [probe]
        driver = "virtual"
        tree = "/tmp/tree"
        id = "28-0316a2795fee"
        [panel]
        pins = "mock"
        [server]
        host = "127.0.0.1"
        port = 0
        [record]
        folder = "kept"
        """,
    )
    settings, base = load_settings(path)
    assert settings.model_dump(mode="json", include={"bench", "probe", "server", "record", "plan"}) == {
        "bench": {"name": "Bench 7"},
        "probe": {"driver": "virtual", "tree": "/tmp/tree", "id": "28-0316a2795fee"},
        "server": {"host": "127.0.0.1", "port": 0},
        "record": {"folder": "kept"},
        "plan": "plans/nitric.toml",
    }
    assert settings.panel.pins == "mock"
    assert record_folder(settings, base) == tmp_path / "kept"


def test_a_file_from_a_windows_editor_is_read(tmp_path: Path) -> None:
    """A byte order mark and CRLF: what a technician's laptop writes on the card."""
    path = written(tmp_path / "station.toml", b'\xef\xbb\xbf[bench]\r\nname = "B\xc3\xa4nk 7"\r\n')
    assert load_settings(path)[0].bench.name == "Bänk 7"


def test_the_record_goes_where_the_service_or_the_user_keeps_data(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path / "data"))
    assert default_record_folder() == tmp_path / "data" / "benchwarm"
    monkeypatch.setenv("STATE_DIRECTORY", "/var/lib/station:/other")  # systemd.exec(5)
    assert default_record_folder() == Path("/var/lib/station")


def one_line(capsys: pytest.CaptureFixture[str]) -> str:
    """Return the one line that was said on standard error; nothing stands on standard output."""
    told = capsys.readouterr()
    assert told.out == ""
    assert told.err.endswith("\n")
    assert told.err.count("\n") == 1
    return told.err


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("colour = 1", "colour: unknown key"),
        ("[probe]\ndriverr = 'virtual'", "[probe] driverr: unknown key; remove it or check its spelling"),
        ("[probes]\ndriver = 'virtual'", "probes: unknown key"),
        ("[probe]\ndriver = 'no'", "[probe] driver: input should be 'one-wire', 'virtual' or 'none' (got 'no')"),
        ("[probe]\nid = '10-000802824e58'", "[probe] id: "),
        ("[panel]\npins = true", "[panel] pins: "),
        ("[server]\nport = 65536", "[server] port: "),
        ("[server]\nport = -1", "[server] port: "),
        ("[server]\nport = 80.5", "[server] port: "),
        ("[server]\nport = 'http'", "[server] port: "),
        ("[server]\nhost = ''", "[server] host: "),
        ("[bench]\nname = ''", "[bench] name: "),
        ("[bench]\nname = 'a\\u202eb'".replace("'", '"'), "[bench] name: must be plain text"),
        ("[bench]\nname = '" + "n" * 200 + "'", "[bench] name: "),
        ("[virtual]\nspeed = 0", "[virtual] speed: "),
        ("[virtual]\nspeed = nan", "[virtual] speed: "),
        ("[virtual]\nspeed = inf", "[virtual] speed: "),
        ("[record]\nfolder = 3", "[record] folder: "),
        ("plan = 7", "plan: "),
        ("plan = 'gone.toml'", "gone.toml: no such file; check the name"),
        ("probe = 3", "probe: "),
        ("[server]\nport = 1\nspeed = 2\n[bench]\ncolour = 1", "(and 1 more)"),
        ("[server\nport = 1", "not valid TOML"),
        ("[server]\nport = 1\nport = 2", "not valid TOML"),
    ],
)
def test_what_is_wrong_in_the_file_is_one_line_and_exit_status_2(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], text: str, words: str
) -> None:
    path = written(tmp_path / "station.toml", text)
    assert main(["serve", "--config", str(path)]) == EXIT_USAGE == 2
    line = one_line(capsys)
    assert words in line
    assert line.startswith("station serve: ")
    assert str(tmp_path) in line
    assert not (tmp_path / "home" / ".local").exists()  # nothing was begun


@pytest.mark.parametrize(
    ("content", "words"),
    [
        (b'bench.name = "\xff"', "not UTF-8 text (byte 14); save it as UTF-8"),
        ("bench.name = 'B'".encode("utf-16"), "not UTF-8 text (byte 0)"),
        (b"#" * 1_000_001, "larger than 1 MB; is it the right file?"),
        (b"\x00", "not valid TOML"),
    ],
)
def test_a_file_that_is_no_text_is_one_line_and_exit_status_2(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], content: bytes, words: str
) -> None:
    path = written(tmp_path / "station.toml", content)
    assert main(["serve", "--config", str(path)]) == 2
    assert words in one_line(capsys)


def test_a_named_file_that_is_missing_or_a_folder_is_one_line(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["serve", "--config", str(tmp_path / "gone.toml")]) == 2
    assert "gone.toml: no such file; check the name" in one_line(capsys)
    assert main(["serve", "--config", str(tmp_path)]) == 2
    assert "cannot be read: Is a directory" in one_line(capsys)


def test_a_bad_plan_is_one_line_that_names_its_file(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    written(tmp_path / "plan.toml", '[acid]\nname = "nitric acid"\nvolume_cm3 = -1')
    path = written(tmp_path / "station.toml", 'plan = "plan.toml"')
    assert main(["serve", "--config", str(path)]) == 2
    assert "plan.toml: " in one_line(capsys)


def test_a_plan_that_leads_into_danger_is_one_line_that_names_its_file(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    text = PLAN_TEXT.replace('"potassium hydroxide"', '"sodium carbonate"')
    written(tmp_path / "plan.toml", text)
    path = written(tmp_path / "station.toml", 'plan = "plan.toml"')
    assert main(["serve", "--config", str(path)]) == 2
    assert "plan.toml: Carbon dioxide leaves a mixture of nitric acid and sodium carbonate" in one_line(capsys)


def test_bad_faults_of_the_virtual_cup_are_one_line(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    text = '[probe]\ndriver = "virtual"\n[virtual]\nfaults = "sulks at noon"\n[record]\nfolder = "r"'
    assert main(["serve", "--config", str(written(tmp_path / "station.toml", text))]) == 2
    assert "sulks" in one_line(capsys)


VIRTUAL = '[probe]\ndriver = "virtual"\n[record]\nfolder = "r"\n[server]\n'


def test_an_address_that_is_taken_says_so(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    with socket.socket() as other:
        other.bind(("127.0.0.1", 0))
        other.listen()
        text = f'{VIRTUAL}host = "127.0.0.1"\nport = {other.getsockname()[1]}'
        assert main(["serve", "--config", str(written(tmp_path / "station.toml", text))]) == EXIT_ADDRESS
    assert "choose another server.port" in one_line(capsys)


@pytest.mark.parametrize("host", ["203.0.113.7", "999.1.1.1", "n" * 70, "a..b", "\\u0000"])
def test_a_host_that_is_not_ours_says_so(tmp_path: Path, capsys: pytest.CaptureFixture[str], host: str) -> None:
    path = written(tmp_path / "station.toml", f'{VIRTUAL}host = "{host}"\nport = 0')
    assert main(["serve", "--config", str(path)]) == EXIT_ADDRESS
    assert "cannot listen on" in one_line(capsys)


def test_a_record_that_cannot_be_opened_says_so(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    written(tmp_path / "r", "a file")
    path = written(tmp_path / "station.toml", f'{VIRTUAL}host = "127.0.0.1"\nport = 0')
    assert main(["serve", "--config", str(path)]) == EXIT_RECORD
    assert "make its folder writable or choose another" in one_line(capsys)


@pytest.mark.fault("card-full")
def test_a_card_that_is_full_at_the_start_says_so(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    with small_card() as card:
        Journal(card).close()
        with pytest.raises(OSError, match="space"), (card / "ballast").open("wb") as file:
            while True:
                file.write(b"x" * 4096)
                file.flush()
        text = VIRTUAL.replace('"r"', f'"{card}"') + 'host = "127.0.0.1"\nport = 0'
        assert main(["serve", "--config", str(written(tmp_path / "station.toml", text))]) == EXIT_RECORD
    assert "disk" in one_line(capsys)


def test_exporting_what_is_not_there_says_so(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["export", "--record", str(tmp_path)]) == EXIT_RECORD
    assert "no record here; name the record's folder with --record" in one_line(capsys)


@pytest.mark.parametrize(
    "arguments",
    [
        [],
        ["boil"],
        ["serve", "--colour"],
        ["demo", "--speed", "0"],
        ["demo", "--speed", "quick"],
        ["demo", "--port", "x"],
    ],
)
def test_a_wrong_argument_ends_with_status_2(arguments: list[str], capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit) as ended:
        main(arguments)
    assert ended.value.code == 2
    assert "_" not in capsys.readouterr().err.splitlines()[-1]  # no name of ours, but what to choose


@pytest.mark.parametrize("arguments", [["--version"], ["--help"], ["demo", "--help"], ["export", "--help"]])
def test_help_ends_with_status_0(arguments: list[str], capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit) as ended:
        main(arguments)
    assert ended.value.code == 0
    assert capsys.readouterr().out


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ('[link]\nbroker = "room.local"\nuser = "bench-1"', "write it like"),
        ('[link]\nbroker = "mqtt://room.local"', r"\[link\] user: missing; add the name .* knows this bench$"),
        ('[link]\nbroker = "mqtt://room.local"\nuser = "a/+"', r"\[link\] user: letters, digits.* \(got 'a/\+'\)$"),
        ('[access]\nbench_code = "otter lamp"\nbench_code_hash = "$argon2id$x"', r"\(got: not shown\)$"),
    ],
)
def test_a_link_or_an_access_that_cannot_be_is_one_line(tmp_path: Path, text: str, words: str) -> None:
    (tmp_path / "station.toml").write_text(text)
    with pytest.raises(CommandError, match=words) as caught:
        load_settings(tmp_path / "station.toml")
    assert "\n" not in str(caught.value)


def test_without_a_plan_it_is_the_one_that_ships_and_nothing_in_it_burns() -> None:
    """0.4 mol/dm³: sodium hydroxide irritates (1.6 % by mass), potassium hydroxide would burn (2.2 %; CLP)."""
    plan = load_plan(None)
    assert plan == ready_plan("neutralisation")
    codes = {hazard["code"] for each in hazards_of(plan) for hazard in each["label"]["hazards"]}
    assert {"H315", "H319"} <= codes <= {"H290", "H315", "H319"}
    assert State().plan == plan.without_prepared() != plan


def test_the_password_of_the_link_lies_beside_the_settings(tmp_path: Path) -> None:
    text = '[link]\nbroker = "mqtt://room.local"\nuser = "bench-1"\npassword_file = "link-password"'
    (tmp_path / "station.toml").write_text(text)
    settings, _ = load_settings(tmp_path / "station.toml")
    assert settings.link.password_file == tmp_path / "link-password"
