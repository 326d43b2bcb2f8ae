"""Codes from settings to cookies: the command that makes the lines, a station that keeps them to itself."""

import io
import subprocess
import sys
from pathlib import Path

import httpx
import pytest

from station.bench.panel.pins import PanelPins
from station.command import settings as module
from station.command.assembly import opened_access, opened_parts, watched_bench
from station.command.main import main
from station.command.settings import PanelSettings, ProbeSettings, Settings, load_plan, load_settings
from station.server.door.access import Refusal
from station.server.door.secrets import HOLDERS
from tests.command.child import SETTINGS, Served
from tests.conftest import PATIENCE_S
from tests.server.doors import CODE, GIVEN, SECRETS, TEACHER, TECHNICIAN

ACCESS = f"""
[access]
bench_code = "{CODE}"
teacher_passphrase_hash = "{SECRETS.teacher_passphrase_hash}"
technician_passphrase_hash = "{SECRETS.technician_passphrase_hash}"
names = ["kit7.school.example"]
"""


@pytest.fixture(autouse=True)
def elsewhere(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    monkeypatch.setattr(module, "BOOT_SETTINGS", tmp_path / "card" / "station.toml")


@pytest.mark.parametrize("holder", HOLDERS)
async def test_the_printed_line_stands_in_the_settings_and_fits(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], holder: str
) -> None:
    monkeypatch.setattr("sys.stdin", io.StringIO("Otter Lamp 7\n"))
    assert main(["passphrase", holder]) == 0
    line = capsys.readouterr().out
    assert "Otter" not in line
    (tmp_path / "station.toml").write_text(f"[access]\n{line}")
    secrets = load_settings(None)[0].access.secrets()
    for each in HOLDERS:
        assert await secrets.right(each, "Otter Lamp 7") == (each == holder)


@pytest.mark.parametrize("words", ["short", "", "x" * 201, "   nine   "])
def test_words_that_do_not_serve_are_one_line(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], words: str
) -> None:
    monkeypatch.setattr("sys.stdin", io.StringIO(words))
    assert main(["passphrase", "teacher"]) == 2
    told = capsys.readouterr()
    assert told.out == ""
    assert told.err == f"station passphrase: choose 10 to 200 characters (these are {len(words.strip())})\n"


def test_it_is_asked_for_twice_at_a_prompt(monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> None:
    typed = iter(["brass cedar", "brass ceder", "brass cedar", "brass cedar"])
    monkeypatch.setattr("getpass.getpass", lambda _: next(typed))
    monkeypatch.setattr("sys.stdin.isatty", lambda: True, raising=False)
    assert main(["passphrase"]) == 2
    assert "not the same" in capsys.readouterr().err
    assert main(["passphrase"]) == 0
    assert capsys.readouterr().out.startswith('teacher_passphrase_hash = "$argon2id$v=19$m=19456,')


@pytest.mark.parametrize(
    ("text", "words", "secret"),
    [
        (f'teacher_passphrase_hash = "{TEACHER}"', "teacher_passphrase_hash: not a hash", TEACHER),
        ("bench_code = 4711471147", "[access] bench_code: input should be a valid string", "4711471147"),
        ('bench_code = "4711"', "[access] bench_code: choose 6 to 200 characters", "4711"),
        (f'bench_code = "{CODE}"\nbench_code_hash = "{SECRETS.teacher_passphrase_hash}"', "not both", CODE),
        (f'technician_passphrase = "{TECHNICIAN}"', "technician_passphrase: unknown key", TECHNICIAN),
        ('names = ["http://kit7"]', "[access] names 1: ", "http"),
    ],
)
def test_what_is_wrong_is_told_without_the_secret(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], text: str, words: str, secret: str
) -> None:
    (tmp_path / "station.toml").write_text(f"[access]\n{text}")
    assert main(["serve"]) == 2
    told = capsys.readouterr().err
    assert words in told
    assert secret not in told
    assert told.count("\n") == 1


def test_settings_do_not_show_secrets(tmp_path: Path) -> None:
    (tmp_path / "station.toml").write_text(ACCESS)
    settings, _ = load_settings(None)
    shown = f"{settings!r} {settings} {settings.model_dump()} {settings.model_dump_json()}"
    assert CODE not in shown
    assert "argon2" not in shown
    assert settings.access.secrets() == SECRETS


@pytest.mark.fault("secrets")
def test_sessions_outlive_a_kill_and_no_secret_is_told_or_kept(tmp_path: Path) -> None:
    cookies: dict[str, dict[str, str]] = {}
    with Served(tmp_path, settings=SETTINGS + ACCESS) as station:
        assert station.act("begin", "k").status_code == 403
        for role, given in GIVEN.items():
            with httpx.Client(base_url=station.url, timeout=PATIENCE_S) as device:
                assert device.post("/api/session", json=given).status_code == 204
                cookies[role] = dict(device.cookies)
        wrong = station.client.post("/api/session", json={"role": "teacher", "passphrase": "guess guess guess"})
        assert wrong.status_code == 403
        station.process.kill()
        station.process.wait(timeout=PATIENCE_S)
        told = station.errors()
    with Served(tmp_path, settings=SETTINGS + ACCESS) as station:
        for role, known in cookies.items():
            with httpx.Client(base_url=station.url, timeout=PATIENCE_S, cookies=known) as device:
                assert device.get("/api/session").json()["role"] == role
        with httpx.Client(base_url=station.url, timeout=PATIENCE_S, cookies=cookies["bench"]) as device:
            assert device.post("/api/acts", json={"act": "begin", "key": "k"}).status_code == 200
        assert station.client.get("/api/state", headers={"host": "kit7.school.example"}).status_code == 200
        assert station.client.get("/api/state", headers={"host": "evil.example"}).status_code == 421
        assert station.terminate() == 0
        told += station.errors()
    kept = b"".join(each.read_bytes() for each in (tmp_path / "record").iterdir())
    secrets = [
        CODE,
        TEACHER,
        TECHNICIAN,
        "guess guess",
        "argon2",
        *(c for each in cookies.values() for c in each.values()),
    ]
    for secret in secrets:
        assert secret not in told
        assert secret.encode() not in kept
    assert told == ""


def test_without_codes_argon2_is_not_loaded() -> None:
    code = (
        "import sys; from station.command.serve import *; from station.command.settings import *; "
        "assert not [n for n in sys.modules if n.startswith('argon2')]"
    )
    subprocess.run([sys.executable, "-c", code], check=True)


async def test_holding_the_buttons_own_pin_lets_one_device_in(tmp_path: Path) -> None:
    settings = Settings(probe=ProbeSettings(driver="virtual"), panel=PanelSettings(pins="mock"))
    with opened_parts(settings, tmp_path / "record") as parts:
        access = opened_access(parts)
        bench = (await watched_bench(parts, load_plan(None))).bench
        pin = parts.panel.hands.factory.pin(PanelPins().button_gpio)  # type: ignore[attr-defined]
        with pytest.raises(Refusal):
            await access.recover("192.0.2.9")
        for tick in range(400):
            now_s = tick * 0.025
            pin.drive_low() if 1.0 <= now_s < 7.0 else pin.drive_high()
            bench.panel.tick(now_s)
        session = access.sessions.read(await access.recover("192.0.2.10"))
        assert session is not None
        assert session.role == "bench"
