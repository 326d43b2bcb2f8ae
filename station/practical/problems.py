"""Turns a validation error into one line a person can act on."""

from collections.abc import Mapping, Sequence
from typing import Any

from pydantic import ValidationError


def problem_line(error: ValidationError) -> str:
    """Return the first problem as `[table] key: what is wrong (got …)`, and how many more there are."""
    return problem_line_of([dict(each) for each in error.errors(include_url=False)])


def problem_line_of(errors: Sequence[Mapping[str, Any]]) -> str:
    """Return the same for a list of pydantic's error dictionaries; the part `body` of a request is left out."""
    first, *rest = errors
    location = [_cut(str(part)) for part in first["loc"] if part != "body"]
    *tables, key = location or ["file"]
    place = f"[{'.'.join(tables)}] {key}" if tables else key
    kind, message = first["type"], str(first["msg"]).removeprefix("Value error, ")
    if kind == "extra_forbidden":
        text = f"{place}: unknown key; remove it or check its spelling"
    elif kind == "missing":
        text = f"{place}: missing; add it"
    elif not location:
        text = message
    else:
        text = f"{place}: {message[:1].lower()}{message[1:]} (got {_shortened(first['input'])})"
    return text + (f" (and {len(rest)} more)" if rest else "")


def _shortened(value: object) -> str:
    """Tables and lists are only named: a password may stand in one that was put in the wrong place."""
    if isinstance(value, Mapping):
        return "a table"
    return "a list" if isinstance(value, list | tuple) else _cut(repr(value))


def _cut(text: str) -> str:
    return text if len(text) <= 60 else text[:57] + "…"
