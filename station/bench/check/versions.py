"""What is installed: the station, Python, the system, the board, and the libraries the station stands on."""

import platform
import re
import sqlite3
from collections.abc import Iterable
from importlib.metadata import PackageNotFoundError, requires, version
from pathlib import Path

from station.bench.check.finding import Finding
from station.bench.check.kit import Kit, text_of

MAIN_DEPENDENCIES = ("w1thermsensor", "gpiozero", "lgpio", "fastapi", "uvicorn", "pydantic", "numpy", "scipy")
BELOW_THEM = ("starlette", "h11")
"""What answers requests under FastAPI and uvicorn."""

PAGE = Path(__file__).parents[2] / "page" / "index.html"
BOARD = Path("/proc/device-tree/model")


def installed(names: Iterable[str] = MAIN_DEPENDENCIES) -> dict[str, str | None]:
    """Return the version of each of these; None where it is missing. Nothing is imported."""
    found: dict[str, str | None] = {}
    for name in names:
        try:
            found[name] = version(name)
        except PackageNotFoundError:
            found[name] = None
    return {**found, "sqlite": sqlite3.sqlite_version}


def system() -> str:
    """Return the operating system and its kernel."""
    try:
        name = platform.freedesktop_os_release().get("PRETTY_NAME", "Linux")
    except OSError:
        name = "Linux"
    return f"{name}, {platform.system()} {platform.release()}, {platform.machine()}"


def told() -> str:
    """Return what `station --version` says, all that a report needs: package, Python, system and board, libraries."""
    own = [re.split(r"[^A-Za-z0-9_-]", each)[0] for each in requires("benchwarm") or [] if "extra ==" not in each]
    libraries = ", ".join(
        f"{name} {number or 'not installed'}"
        for name, number in installed(dict.fromkeys([*MAIN_DEPENDENCIES, *own, *BELOW_THEM])).items()
    )
    page = "page built" if PAGE.is_file() else "page not built"
    board = text_of(BOARD)
    machine = f"{system()}, {board}" if board else system()
    return f"benchwarm {version('benchwarm')}, {page}\nPython {platform.python_version()}\n{machine}\n{libraries}"


def versions(kit: Kit) -> Finding:
    """Return all versions, and whether this board is one that the station is for."""
    board = text_of(kit.at("proc/device-tree/model"))
    values = {
        "station": version("benchwarm"),
        "python": platform.python_version(),
        "system": system(),
        "kernel": platform.release(),
        "board": board,
        **installed(),
    }
    text = f"station {values['station']}, Python {values['python']}, {values['system']}"
    if board is None or "Raspberry Pi" not in board:
        return Finding(
            "versions", "unknown", f"{text}; not a Raspberry Pi{f' ({board})' if board else ''}", values=values
        )
    if platform.machine() in ("armv6l", "armv7l"):
        remedy = "write the 64-bit Raspberry Pi OS Lite to the card"
        return Finding("versions", "amber", f"{text}, {board}: a 32-bit system", remedy, values)
    return Finding("versions", "green", f"{text}, {board}", values=values)
