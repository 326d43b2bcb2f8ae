"""Reads TOML from wherever it comes: files of any editor, and text that was sent to trip the station up."""

import tomllib
from typing import Any


def toml_values(text: str) -> dict[str, Any]:
    """Return the values; a byte order mark and Windows' line ends are taken as they come.

    Raises tomllib.TOMLDecodeError, also for what is nested so deeply that the library gives up.
    """
    try:
        return tomllib.loads(text.removeprefix("\ufeff").replace("\r\n", "\n"))
    except RecursionError:
        raise tomllib.TOMLDecodeError("nested too deeply") from None
