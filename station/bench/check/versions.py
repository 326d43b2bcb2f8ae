"""What is installed: the station, Python, the system, the board, and the libraries the station stands on."""

import platform
import sqlite3
from importlib.metadata import PackageNotFoundError, version

from station.bench.check.finding import Finding
from station.bench.check.kit import Kit, text_of

MAIN_DEPENDENCIES = ("w1thermsensor", "gpiozero", "lgpio", "fastapi", "uvicorn", "pydantic", "numpy", "scipy")


def installed() -> dict[str, str | None]:
    """Return the version of each main dependency; None where it is missing. Nothing is imported."""
    found: dict[str, str | None] = {}
    for name in MAIN_DEPENDENCIES:
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
    """Return what `station --version` says: package, Python, system and libraries, one line each."""
    libraries = ", ".join(f"{name} {number or 'not installed'}" for name, number in installed().items())
    return f"benchwarm {version('benchwarm')}\nPython {platform.python_version()}\n{system()}\n{libraries}"


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
