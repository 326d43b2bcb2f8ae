"""Turns a validation error into one line a person can act on, without anything that is secret."""

import tomllib
from collections.abc import Mapping, Sequence
from typing import Any, Final

from pydantic import ValidationError, WrapValidator
from pydantic_core import PydanticCustomError

from station.words import Message, plain, say

# Reads TOML from wherever it comes: files of any editor, and text that was sent to trip the station up.


DEEPEST: Final = 20
"""Tables in tables beyond all that is written here."""


def toml_values(text: str) -> dict[str, Any]:
    """Return the values; a byte order mark and Windows' line ends are taken as they come.

    Raises tomllib.TOMLDecodeError, also for what is nested so deeply, or has so long a number, that a library gives up.
    """
    try:
        values = tomllib.loads(text.removeprefix("\ufeff").replace("\r\n", "\n"))
    except tomllib.TOMLDecodeError:
        raise
    except ValueError:
        raise tomllib.TOMLDecodeError(say("problem-number-too-long")) from None
    except RecursionError:
        raise tomllib.TOMLDecodeError(say("problem-nested-too-deeply")) from None
    if is_deep(values):
        raise tomllib.TOMLDecodeError(say("problem-nested-too-deeply"))
    return values


def is_deep(values: Any) -> bool:
    """Whether tables lie in tables beyond measure: what one reader manages could be too much for the next."""
    level: list[Any] = [values]
    for _ in range(DEEPEST):
        inner = (each.values() if isinstance(each, dict) else each for each in level)
        level = [value for part in inner for value in part if isinstance(value, dict | list)]
        if not level:
            return False
    return True


class TableProblem(ValueError):  # noqa: N818 - a person's plan is wrong, no program
    """What stands together in a table does not fit; the message names the table itself."""


_IN_WORDS = "in_words"


def in_words(sentence: str) -> WrapValidator:
    """Return the validator that answers whatever does not fit with this sentence, which names no key."""

    def checked(value: Any, fits: Any) -> Any:
        try:
            return fits(value)
        except ValidationError:
            raise PydanticCustomError(_IN_WORDS, "{sentence}", {"sentence": sentence}) from None

    return WrapValidator(checked)


SECRET = {"access", "password", "prepared_mol_dm3"}
"""Tables and keys whose values are never repeated: the line ends in a log, on a terminal, on the page of a bench."""


def problem_line(error: ValidationError) -> Message:
    """Return the first problem as `[table] key: what is wrong (got …)`, and how many more there are."""
    return problem_line_of([dict(each) for each in error.errors(include_url=False)])


def problem_line_of(errors: Sequence[Mapping[str, Any]]) -> Message:
    """Return the same for a list of pydantic's error dictionaries; the part `body` of a request is left out."""
    first, *rest = errors
    line = _line_of(first)
    return say("more-problems", first=line, count=len(rest)) if rest else line


def _line_of(problem: Mapping[str, Any]) -> Message:
    kind, location = problem["type"], _location(problem["loc"])
    *tables, key = location or ["file"]
    place = f"[{'.'.join(tables)}] {key}" if tables else key
    if kind in _OF_KEYS:
        return say(_OF_KEYS[kind], key_name=place)
    said = own_words(problem) or _input_words(problem)
    if not location or kind == _IN_WORDS:
        return said
    if kind == "value_error" and isinstance(problem["input"], Mapping):  # about what stands together in a table
        names_itself = isinstance(problem["ctx"]["error"], TableProblem)
        return said if names_itself else say("problem-of-table", table_name=".".join(location), said=said)
    if SECRET & set(problem["loc"]):
        return say("problem-got-hidden", key_name=place, said=said)
    return say("problem-got", key_name=place, said=said, got_typed=_shortened(problem["input"]))


def own_words(problem: Mapping[str, Any]) -> Message | None:
    """Return what a validator of the station said of a value; None for one of pydantic's own."""
    match problem:
        case {"type": "value_error", "ctx": {"error": error}}:
            return plain(str(error))
        case {"type": "in_words", "ctx": {"sentence": str(sentence)}}:
            return plain(sentence)
    return None


_OF_KEYS: Final = {"extra_forbidden": "problem-unknown-key", "missing": "problem-missing"}
_LIMITS: Final = {
    "greater_than": ("input-greater-than", "gt"),
    "greater_than_equal": ("input-greater-than-equal", "ge"),
    "less_than": ("input-less-than", "lt"),
    "less_than_equal": ("input-less-than-equal", "le"),
}
_LENGTHS: Final = {
    "string_too_short": ("input-string-too-short", "min_length"),
    "string_too_long": ("input-string-too-long", "max_length"),
}
_INPUTS: Final = {
    "finite_number": "input-finite-number",
    "float_type": "input-float-type",
    "float_parsing": "input-float-parsing",
    "int_type": "input-int-type",
    "int_parsing": "input-int-parsing",
    "int_from_float": "input-int-from-float",
    "string_type": "input-string-type",
    "bool_type": "input-bool-type",
    "bool_parsing": "input-bool-parsing",
    "model_type": "input-model-type",
    "list_type": "input-list-type",
    "tuple_type": "input-tuple-type",
    "dict_type": "input-dict-type",
}
SAYS: Final = (
    *_OF_KEYS.values(),
    *(each for each, _ in (*_LIMITS.values(), *_LENGTHS.values())),
    *_INPUTS.values(),
)


def _input_words(problem: Mapping[str, Any]) -> Message:
    """Return what pydantic has to say, as a message where the catalogue has it."""
    kind, context = problem["type"], problem.get("ctx", {})
    if kind in _LIMITS:
        of, key = _LIMITS[kind]
        limit = context[key]
        return say(of, limit=f"{limit:.12g}" if isinstance(limit, float) else str(limit))
    if kind in _LENGTHS:
        of, key = _LENGTHS[kind]
        return say(of, count=int(context[key]))
    if kind in _INPUTS:
        return say(_INPUTS[kind])
    if kind == "literal_error":
        return say("input-literal-error", choices_text=context["expected"])
    if kind == "string_pattern_mismatch":
        return say("input-string-pattern-mismatch", pattern_text=context["pattern"])
    of_pydantic = str(problem["msg"])
    return plain(f"{of_pydantic[:1].lower()}{of_pydantic[1:]}" if _location(problem["loc"]) else of_pydantic)


def _location(parts: Sequence[int | str]) -> list[str]:
    """Return the keys; what stands in a list is counted as people count, from 1."""
    named: list[str] = []
    for part in parts:
        if isinstance(part, int) and named:
            named[-1] += f" {part + 1}"
        elif part != "body":
            named.append(_cut(str(part)))
    return named


def _shortened(value: object) -> str:
    """Tables and lists are only named: a password may stand in one that was put in the wrong place."""
    if isinstance(value, Mapping):
        return say("input-table")
    return say("input-list") if isinstance(value, list | tuple) else _cut(repr(value))


def _cut(text: str) -> str:
    return text if len(text) <= 60 else text[:57] + "…"
