"""What the station says to people: messages, in the languages whose catalogues lie in this folder.

A message is an identifier with values: ``say("portion-prompt", portion=5, volume_cm3="4.0")``. It *is* its English
text, and is said in another language by ``in_language``. The words stand in one Fluent file per language (en.ftl,
de.ftl, …); a file that is added adds a language, with no line of code changed.

Values: numbers of things as ``int`` (they choose singular and plural); measured numbers as text with a point, with
the places that they have (``f"{volume:.1f}"``), the language gives its decimal sign; other messages; names. Values
called ``name``, ``text``, ``typed``, ``path``, ``file``, ``version``, ``address``, ``date`` or ``time``, or whose
names end in one of these after an underscore, stay as they are.
"""

import functools
import json
from collections.abc import Iterable, Mapping
from dataclasses import fields, is_dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Any, Final, Self

from station.words.fluent import Catalogue, Value, entries
from station.words.plurals import plural_of

if TYPE_CHECKING:
    from pydantic import GetCoreSchemaHandler
    from pydantic_core import CoreSchema

__all__ = [
    "Message",
    "Value",
    "beside",
    "dumps",
    "in_language",
    "join",
    "languages",
    "loads",
    "members",
    "messages_in",
    "plain",
    "said",
    "say",
    "understood",
    "written",
]

FOLDER: Final = Path(__file__).parent
ENGLISH: Final = "en"


class Message(str):
    """An English text that knows its id and values. Without an id (""): words that no catalogue has."""

    __slots__ = ("id", "values")
    id: str
    values: dict[str, Value]

    def __new__(cls, text: str, of: str = "", values: Mapping[str, Value] | None = None) -> Self:
        """Take a text that is known already; ``say`` makes it from the catalogue."""
        message = super().__new__(cls, text)
        message.id = of
        message.values = dict(values or {})
        return message

    def __reduce__(self) -> tuple[type["Message"], tuple[str, str, dict[str, Value]]]:
        return type(self), (str.__str__(self), self.id, self.values)

    def __str__(self) -> str:
        """Itself: ``str(error)`` of ``ValueError(say(…))`` stays a message."""
        return self

    @classmethod
    def __get_pydantic_core_schema__(cls, _source: object, _handler: "GetCoreSchemaHandler") -> "CoreSchema":
        """Fields typed ``Message``: read from an object or a text, written as an object."""
        from pydantic_core import core_schema  # noqa: PLC0415 -- the lowest floor loads nothing heavy by itself

        return core_schema.no_info_plain_validator_function(
            said, serialization=core_schema.plain_serializer_function_ser_schema(written)
        )

    @classmethod
    def __get_pydantic_json_schema__(cls, _schema: "CoreSchema", _handler: object) -> dict[str, Any]:
        """Describe the object for OpenAPI."""
        text = {"type": "string"}
        properties = {"id": text, "values": {"type": "object"}, "text": text}
        return {"type": "object", "properties": properties, "required": list(properties)}


@functools.cache
def languages() -> tuple[str, ...]:
    """Codes of the languages that have a catalogue, English first."""
    found = sorted(path.stem for path in FOLDER.glob("*.ftl"))
    return tuple(sorted(found, key=lambda code: code != ENGLISH))


@functools.cache
def catalogue(language: str) -> Catalogue:
    """The entries of a language. Raises ``KeyError`` for one that has no catalogue."""
    if language not in languages():
        raise KeyError(language)
    found = entries((FOLDER / f"{language}.ftl").read_text(encoding="utf-8"))
    return Catalogue(language, found, found.get("language-decimal", "."), plural_of(language), {})


def say(message: str, /, **values: Value) -> Message:
    """Make a message. Raises ``KeyError`` when the English catalogue lacks it, or it lacks a value."""
    return Message(catalogue(ENGLISH).text(message, values, str), message, values)


def plain(text: str) -> Message:
    """Words that no catalogue has: typed by somebody, or read from an old record."""
    return text if isinstance(text, Message) else Message(text)


def join(parts: Iterable[str], by: str = "two-sentences") -> Message:
    """Put messages one after the other; ``by`` is a message with ``first`` and ``second``. Empty ones are left out."""
    kept = [part for part in parts if part]
    if not kept:
        return Message("")
    joined = plain(kept[-1])
    for part in reversed(kept[:-1]):
        joined = say(by, first=part, second=joined)
    return joined


def in_language(message: str, language: str) -> str:
    """The text in a language; its English where that language, or the text as a message, is not known."""
    if language == ENGLISH or not isinstance(message, Message) or not message.id:
        return str.__str__(message)
    try:
        return catalogue(language).text(message.id, message.values, lambda value: in_language(value, language))
    except (KeyError, ValueError):  # an entry, a value or a language lacks, or an entry is spoilt
        return str.__str__(message)


def written(message: str) -> dict[str, Any]:
    """A message as an object for JSON: ``id``, ``values`` and ``text`` in English."""
    if not isinstance(message, Message):
        message = Message(message)
    values = {name: written(value) if isinstance(value, Message) else value for name, value in message.values.items()}
    return {"id": message.id, "values": values, "text": str.__str__(message)}


def said(told: object) -> Message:
    """A message from its object, or from a bare text. Raises ``ValueError`` for anything else."""
    if isinstance(told, str):
        return plain(told)
    match told:
        case {"id": str(of), "values": dict(values), "text": str(text)}:
            return Message(text, of, {str(name): _value(value) for name, value in values.items()})
    raise ValueError("a message is a text, or an object with id, values and text")


def _value(told: object) -> Value:
    if isinstance(told, dict):
        return said(told)
    if isinstance(told, str | int | float):
        return told
    raise ValueError("a value of a message is a number, a text or a message")


def dumps(message: str) -> str:
    """A message as JSON, with its id and values."""
    return json.dumps(written(message), ensure_ascii=False)


def loads(text: str) -> Message:
    """A message from its JSON. Raises ``ValueError``."""
    return said(json.loads(text))


def members(told: object) -> dict[str, Any]:
    """The fields of a dataclass as the members of an object: ``default`` of ``json.dumps``. Raises ``TypeError``."""
    kind = type(told)
    if kind not in _FIELDS:
        if not is_dataclass(kind):
            raise TypeError(f"no value for JSON: {kind.__name__}")
        _FIELDS[kind] = tuple(each.name for each in fields(kind))
    return {name: getattr(told, name) for name in _FIELDS[kind]}


_FIELDS: Final[dict[type, tuple[str, ...]]] = {}


def messages_in(values: object) -> dict[str, Any]:
    """Id and values of every message in values for JSON, by its English text; lists of numbers are not looked at."""
    found: dict[str, Any] = {}
    left = [values]
    while left:
        match left.pop():
            case Message() as message:
                if message.id and message not in found:
                    found[str.__str__(message)] = {
                        name: part for name, part in written(message).items() if name != "text"
                    }
            case str() | int() | float() | None:
                pass
            case dict() as table:
                left.extend(table.values())
            case [int() | float(), *_]:
                pass
            case list() | tuple() as several:
                left.extend(several)
            case told if is_dataclass(told):
                left.extend(members(told).values())
    return found


def beside(answer: Mapping[str, object]) -> dict[str, Any]:
    """An answer for JSON with ``messages`` beside its own members: texts stay English, ids and values stand there."""
    return {**answer, "messages": messages_in(dict(answer))}


def understood(answer: dict[str, Any]) -> dict[str, Any]:
    """The answer that ``beside`` was given, after JSON: its texts are messages again."""
    known = {text: said({**of, "text": text}) for text, of in answer.get("messages", {}).items()}

    def again(value: Any) -> Any:
        match value:
            case str():
                return known.get(value, value)
            case dict():
                return {name: again(part) for name, part in value.items()}
            case [first, *_] if not isinstance(first, int | float):
                return [again(part) for part in value]
        return value

    return {name: again(part) for name, part in answer.items() if name != "messages"}
