"""A message is its English text, keeps its id and values, and is said in other languages."""

import copy
import json
import pickle
from pathlib import Path

import pytest
from pydantic import BaseModel, ValidationError

from station import words
from station.words import Message, dumps, in_language, join, languages, loads, plain, said, say, written


@pytest.fixture
def warm() -> Message:
    return say("prepare-add-solid", mass_g="4.05", reagent=say("reagent-citric-acid"))


def test_a_message_is_its_english_text(warm: Message) -> None:
    text = "Add 4.05 g of citric acid and stir until it has dissolved."
    assert warm == text
    assert hash(warm) == hash(text)
    assert {text: 1}[warm] == 1
    assert json.dumps({"text": warm}) == json.dumps({"text": text})
    assert type(f"{warm} x") is str
    assert (warm.id, warm.values) == ("prepare-add-solid", {"mass_g": "4.05", "reagent": "citric acid"})


def test_german_says_nested_messages_and_the_decimal_comma(warm: Message) -> None:
    assert in_language(warm, "de") == "4,05 g Citronensäure zugeben und rühren, bis alles gelöst ist."
    assert in_language(warm, "en") == warm


def test_names_keep_their_points() -> None:
    one = Message("", "list-comma", {"first": "1.5", "second": plain("1.5")})
    assert in_language(one, "de") == "1,5, 1,5"
    for name in ("name", "kit_version", "address", "file"):
        assert not words.catalogue("de").takes_decimal_sign(name)
    assert words.catalogue("de").takes_decimal_sign("renamed")


def test_copies_keep_id_and_values(warm: Message) -> None:
    for other in (copy.deepcopy(warm), pickle.loads(pickle.dumps(warm)), loads(dumps(warm)), said(written(warm))):
        assert isinstance(other, Message)
        assert (other, other.id, other.values) == (warm, warm.id, warm.values)
        assert in_language(other, "de") == in_language(warm, "de")


def test_the_text_of_an_error_is_the_message(warm: Message) -> None:
    told = str(ValueError(warm))
    assert isinstance(told, Message)
    assert told.id == warm.id


def test_an_unknown_id_shows_its_text() -> None:
    newer = loads('{"id": "of-a-later-version", "values": {"x": 1}, "text": "Do it."}')
    fewer = Message("Add it.", "prepare-add-solid", {})
    assert in_language(newer, "de") == "Do it."
    assert in_language(fewer, "de") == "Add it."
    assert in_language("typed by somebody", "de") == "typed by somebody"


def test_a_mistake_of_the_caller_is_told() -> None:
    with pytest.raises(KeyError, match="no-such-message"):
        say("no-such-message")
    with pytest.raises(KeyError, match="mass_g"):
        say("prepare-add-solid", reagent="x")


@pytest.mark.parametrize(
    "spoilt",
    ['{"id": 1, "values": {}, "text": "x"}', '{"id": "x", "text": "x"}', "[]", '{"id":"","values":{"a":[]},"text":""}'],
)
def test_what_is_no_message_is_refused(spoilt: str) -> None:
    with pytest.raises(ValueError, match="message"):
        loads(spoilt)


def test_sentences_are_joined_and_stay_parts(warm: Message) -> None:
    both = join(["", warm, say("prepare-label"), "Bench 5."])
    assert both == f"{warm} Close and label the bottle at once. Bench 5."
    assert in_language(both, "de").endswith("Die Flasche sofort verschließen und beschriften. Bench 5.")
    assert in_language(join(["a", "b", "c"], "list-or"), "de") == "a oder b oder c"
    assert join([]) == ""
    assert join([warm]) is warm


def test_fields_of_pydantic(warm: Message) -> None:
    class Answer(BaseModel):
        detail: str
        message: Message

    answer = Answer(detail=warm, message=warm)
    sent = json.loads(answer.model_dump_json())
    assert sent["detail"] == str.__str__(warm)
    assert sent["message"] == written(warm)
    back = Answer.model_validate(sent)
    assert (back.message, back.message.id) == (warm, warm.id)
    assert Answer.model_validate({"detail": "", "message": "old words"}).message == "old words"
    assert Answer.model_json_schema()["properties"]["message"]["required"] == ["id", "values", "text"]
    with pytest.raises(ValidationError):
        Answer.model_validate({"detail": "", "message": 5})


def test_a_file_in_the_folder_is_a_language(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, warm: Message) -> None:
    for code in ("en", "de"):
        (tmp_path / f"{code}.ftl").write_bytes((words.FOLDER / f"{code}.ftl").read_bytes())
    french = "language-name = Français\nlanguage-decimal = ,\nprepare-add-solid = Ajouter { $mass_g } g : { $reagent }."
    (tmp_path / "fr.ftl").write_text(french, encoding="utf-8")
    monkeypatch.setattr(words, "FOLDER", tmp_path)
    languages.cache_clear()
    words.catalogue.cache_clear()
    try:
        assert languages() == ("en", "de", "fr")
        assert in_language(warm, "fr") == "Ajouter 4,05 g : citric acid."
    finally:
        languages.cache_clear()
        words.catalogue.cache_clear()
