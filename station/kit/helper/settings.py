"""Values changed in a station.toml that people write by hand: their lines and comments stay."""

import re
import tomllib
from collections.abc import Mapping
from typing import Any

import tomli_w


def changed(text: str, changes: Mapping[tuple[str, str], str]) -> str:
    """Return the text with these values, by table and key. Raises ValueError where it cannot be changed so."""
    wanted = _parsed(text)
    for (table, key), value in changes.items():
        wanted.setdefault(table, {})[key] = value
        text = _with(text, table, f"{key} = {tomli_w.dumps({'x': value}).partition('= ')[2].rstrip()}", key)
    if _parsed(text) != wanted:
        raise ValueError("written in a way that only people change")
    return text


def _parsed(text: str) -> dict[str, Any]:
    try:
        return tomllib.loads(text)
    except tomllib.TOMLDecodeError as error:
        raise ValueError(str(error)) from None


def _with(text: str, table: str, line: str, key: str) -> str:
    lines = text.split("\n")
    head = next((at for at, each in enumerate(lines) if re.fullmatch(rf"\s*\[{table}\]\s*(#.*)?", each)), None)
    if head is None:
        return f"{text.rstrip(chr(10))}\n\n[{table}]\n{line}\n".lstrip("\n")
    end = next((at for at in range(head + 1, len(lines)) if re.match(r"\s*\[", lines[at])), len(lines))
    there = next((at for at in range(head + 1, end) if re.match(rf"\s*{key}\s*=", lines[at])), None)
    if there is None:
        lines.insert(head + 1, line)
    else:
        lines[there] = line
    return "\n".join(lines)
