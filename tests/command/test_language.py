"""What commands print is in the language of the settings, where they choose one; English otherwise."""

import asyncio
import io
import json
import os
import zipfile
from collections.abc import Iterator
from pathlib import Path
from threading import Thread

import pytest

from station import words
from station.command import settings as module
from station.command.check.room import check_room
from station.command.desk import looked
from station.command.main import main
from station.command.settings import load_settings
from station.command.terminal import CommandError, language_in
from station.kit.on_page import made_on_page
from station.kit.table import KitError, kits_from
from station.words import Message, catalogue, in_language, languages, say
from station.words.speaking import spoken
from tests.records import PLAN_TEXT, record

GERMAN = '[page]\nlanguage = "de"\n'


@pytest.fixture(autouse=True)
def elsewhere(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Work in an empty folder, with an empty home and a card of our own."""
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("HOME", str(tmp_path))
    for name in ("XDG_DATA_HOME", "STATE_DIRECTORY"):
        monkeypatch.delenv(name, raising=False)
    monkeypatch.setattr(module, "BOOT_SETTINGS", tmp_path / "card" / "station.toml")
    Path("plan.toml").write_text(PLAN_TEXT, encoding="utf-8")


@pytest.fixture
def german() -> None:
    Path("station.toml").write_text(GERMAN, encoding="utf-8")


def printed(capsys: pytest.CaptureFixture[str], *arguments: str, status: int = 0) -> str:
    assert main(arguments) == status
    said = capsys.readouterr()
    return said.err if status else said.out


def test_english_without_a_setting(capsys: pytest.CaptureFixture[str]) -> None:
    assert "Expected end-point" in printed(capsys, "predict", "plan.toml")
    assert "no such file; check the name" in printed(capsys, "predict", "none.toml", status=2)


@pytest.mark.usefixtures("german")
def test_a_prediction_and_what_is_wrong_with_one(capsys: pytest.CaptureFixture[str]) -> None:
    said = printed(capsys, "predict", "plan.toml")
    assert "Erwarteter Äquivalenzpunkt" in said
    assert "zugegeben/cm³   Temperatur/°C\n" in said
    assert "Bürette " in said
    assert "end-point" not in said
    assert ".0" not in said, "German has a comma"
    assert max(len(line) for line in said.splitlines()) <= 80
    assert printed(capsys, "predict", "none.toml", status=2) == (
        "station predict: none.toml: keine solche Datei; prüfe den Namen\n"
    )


@pytest.mark.usefixtures("german")
def test_what_programs_read_stays_as_it_is(capsys: pytest.CaptureFixture[str]) -> None:
    told = json.loads(printed(capsys, "predict", "plan.toml", "--json"))
    assert told["assumed"][-1] == "Concentrations are exact; ± is one standard uncertainty of one repeat."


@pytest.mark.usefixtures("german")
def test_a_preparation_on_the_terminal_and_on_paper(capsys: pytest.CaptureFixture[str]) -> None:
    said = printed(capsys, "prepare", "plan.toml", "--benches", "12")
    assert "12 Plätze\n" in said
    assert "Bereitstellen\n" in said
    assert printed(capsys, "prepare", "plan.toml", "--benches", "12", "--out", "sheet.html") == (
        "sheet.html: Vorbereitung für 12 Plätze, zum Drucken.\n"
    )
    page = Path("sheet.html").read_text(encoding="utf-8")
    assert '<html lang="de">' in page
    assert "<h2>Bereitstellen</h2>" in page


@pytest.mark.usefixtures("german")
def test_results_and_decisions(capsys: pytest.CaptureFixture[str]) -> None:
    Path("record.csv").write_text(record(seed=5).csv, encoding="utf-8")
    said = printed(capsys, "analyse", "record.csv")
    assert said.startswith("Durchgang 1\n  Geraden         ")
    assert ", nur Streuung" in said
    assert "kein Ergebnis: " in said
    assert "Durchgang 1      0,0 s  Durchgang begonnen\n" in printed(capsys, "replay", "record.csv")


def test_a_check_in_the_language_of_the_settings_it_is_for(capsys: pytest.CaptureFixture[str]) -> None:
    Path("named.toml").write_text(f'{GERMAN}[probe]\ndriver = "none"\n[nonsense]\n', encoding="utf-8")
    said = printed_check(capsys, "--config", "named.toml")
    assert said.startswith("Platz: rot\nrot       settings          named.toml: nonsense: unbekannter Schlüssel")
    Path("room.toml").write_text(f"{GERMAN}[room]\n", encoding="utf-8")
    assert printed_check(capsys, "--config", "room.toml").startswith("Raum: ")
    told = json.loads(printed_check(capsys, "--config", "named.toml", "--json"))
    assert told["findings"][0]["text"].startswith("named.toml: nonsense: unknown key")


def printed_check(capsys: pytest.CaptureFixture[str], *more: str) -> str:
    main(["check", "--reads", "1", *more])
    return capsys.readouterr().out


def test_a_check_for_the_page_keeps_its_messages() -> None:
    Path("station.toml").write_text('[probe]\ndriver = "none"\n', encoding="utf-8")
    found = asyncio.run(looked(Path("station.toml"), 1))
    text = next(each["text"] for each in found["findings"] if each["name"] == "link")
    assert isinstance(text, Message)
    assert in_language(text, "de") == "kein Raum eingestellt: der Platz arbeitet allein"
    assert "messages" not in found


def test_a_room_that_is_not_let_in_has_words_of_its_own() -> None:
    settings = '[room]\nbroker = "mqtt://127.0.0.1:1"\npassword_file = "none"\n'
    Path("room.toml").write_text(settings, encoding="utf-8")
    broker = next(each for each in check_room(Path("room.toml"))[1] if each.name == "broker")
    assert broker.colour == "red"
    assert in_language(broker.remedy, "de") == (
        "die Datei mit dem Kennwort dort ablegen, wie station kit sie erstellt hat"
    )


@pytest.mark.usefixtures("german")
def test_what_is_wrong_with_an_export(capsys: pytest.CaptureFixture[str]) -> None:
    assert printed(capsys, "export", "--xlsx", status=2) == (
        "station export: eine Tabelle ist nichts für ein Terminal: nenne ihre Datei mit --out DATEI.xlsx\n"
    )


def test_a_kit_speaks_as_its_table_says() -> None:
    text = 'language = "de"\n[[kit]]\nnumber = 4\n[[kit]]\nnumber = 5\nroom = true\n'
    made = zipfile.ZipFile(io.BytesIO(b"".join(made_on_page(text, None, None))))
    read_me, labels, codes, settings, room = (
        made.read(name).decode()
        for name in (
            "READ-ME-FIRST.txt",
            "labels.html",
            "codes-and-passphrases.html",
            "bench-4/station.toml",
            "room/room.toml",
        )
    )
    assert read_me.startswith("Für jeden Platz:\r\n1. Raspberry Pi OS Lite")
    assert "Diese Station hat die Wheels nicht mehr" in read_me
    assert '<html lang="de">' in labels
    assert "<h2>Platz 4</h2>" in labels
    assert "Passwortsatz der Lehrkraft" in codes
    assert 'name = "Platz 4"' in settings
    assert 'name = "Raum"' in room


def test_what_is_wrong_with_a_table_of_kits_is_said_in_its_language(capsys: pytest.CaptureFixture[str]) -> None:
    twice = 'language = "de"\n[[kit]]\nnumber = 4\nname = "Platz 5"\n[[kit]]\nnumber = 5\n'
    Path("kits.toml").write_text(twice, encoding="utf-8")
    assert printed(capsys, "kit", "kits.toml", "--out", "out", status=2) == (
        "station kit: kits.toml: Zeile 4: [[kit]] name platz 5 gibt es zweimal: jeder Platz braucht seinen eigenen\n"
    )


@pytest.fixture
def further(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[str]:
    """A catalogue more: German under another code."""
    folder = tmp_path / "words"
    folder.mkdir()
    for code, of in (("en", "en"), ("de", "de"), ("gsw", "de")):
        (folder / f"{code}.ftl").write_bytes((words.FOLDER / f"{of}.ftl").read_bytes())
    monkeypatch.setattr(words, "FOLDER", folder)
    languages.cache_clear()
    catalogue.cache_clear()
    yield "gsw"
    monkeypatch.undo()
    languages.cache_clear()
    catalogue.cache_clear()


def test_a_further_catalogue_is_a_further_language(further: str, capsys: pytest.CaptureFixture[str]) -> None:
    Path("station.toml").write_text(f'page.language = "{further}"\n', encoding="utf-8")
    assert load_settings(None)[0].page.language == further
    assert kits_from(f'language = "{further}"\n[[kit]]\nnumber = 1\n', "kits.toml").speaks == further
    assert "keine solche Datei; prüfe den Namen" in printed(capsys, "predict", "none.toml", status=2)


def test_a_language_without_a_catalogue_is_refused_with_those_that_there_are() -> None:
    told = f"language: the station has no words in this language; it has {', '.join(languages())} (got 'tlh')"
    Path("station.toml").write_text('page.language = "tlh"\n', encoding="utf-8")
    with pytest.raises(CommandError) as of_settings:
        load_settings(None)
    assert str(of_settings.value) == f"station.toml: [page] {told}"
    with pytest.raises(KitError) as of_kits:
        kits_from('language = "tlh"\n[[kit]]\nnumber = 1\n', "kits.toml")
    assert str(of_kits.value) == f"kits.toml: line 1: {told}"


@pytest.mark.parametrize(
    "text", ["", "page = 3", "[page]", "page.language = 3", 'page.language = "tlh"', 'page.language = "de', "\0", "ä"]
)
def test_settings_that_choose_no_language_are_english(text: str) -> None:
    Path("any.toml").write_text(text, encoding="utf-16" if text == "ä" else "utf-8")
    assert language_in(Path("any.toml"), "page") == "en"


def test_a_pipe_is_left_to_the_command_that_reads_it() -> None:
    os.mkfifo("pipe")
    assert language_in(Path("pipe"), "page") == "en"
    Thread(target=Path("pipe").write_text, args=('bench.name = "7"',)).start()
    assert load_settings(Path("pipe"))[0].bench.name == "7"


def test_an_error_is_one_line_in_every_language() -> None:
    error = CommandError(say("file-problem", path="a\nb", reason=say("file-no-such", path="c\n\n d")))
    message = error.args[0]
    assert str(error) == "a b: c d: no such file; check the name"
    assert in_language(message, "de") == "a b: c d: keine solche Datei; prüfe den Namen"
    assert str(CommandError("of a\nlibrary")) == "of a library"


@pytest.mark.usefixtures("german")
def test_the_language_lasts_as_long_as_the_command(capsys: pytest.CaptureFixture[str]) -> None:
    printed(capsys, "predict", "none.toml", status=2)
    assert spoken(say("told-start")) == "start"
