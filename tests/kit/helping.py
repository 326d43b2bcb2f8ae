"""A helper at work on a folder that stands for a bench's card, with a script in the place of nmcli."""

import asyncio
import socket
import sys
from collections.abc import AsyncIterator
from contextlib import asynccontextmanager
from pathlib import Path

import pytest

from station.kit.card import settings_toml
from station.kit.helper.serve import serve
from station.kit.helper.work import BACKUPS, RECORD, STICK, Helper, System
from station.kit.on_card import network
from station.kit.sheets import new_secrets
from station.kit.table import kits_from
from tests.conftest import PATIENCE_S

STATION = (sys.executable, "-c", "from station.command.main import run; run()")
OLD = 'ssid = "Old"\npassword = "long enough"\ncountry = "IE"\n'
RECORDER = """#!/bin/sh
printf '%s\\n' "$*" >> "$NMCLI_LOG"
looks=$(grep -c GENERAL.STATE "$NMCLI_LOG")
case "$*" in
  *"up id benchwarm-trial"*) [ "$NMCLI_FAILS_AT" != 0 ] || exit 4 ;;
  *GENERAL.STATE*) if [ "$looks" -ge "$NMCLI_FAILS_AT" ]; then echo deactivating; else echo activated; fi ;;
  *TYPE,STATE*) echo "ethernet:$NMCLI_CABLE" ;;
esac
"""


def card_in(folder: Path, monkeypatch: pytest.MonkeyPatch) -> System:
    """Make the folder; nmcli answers as NMCLI_FAILS_AT (the look that fails) and NMCLI_CABLE say."""
    for place in (RECORD, BACKUPS, STICK, Path("boot/firmware/benchwarm"), Path("bin"), network.KEYFILES):
        (folder / place).mkdir(parents=True)
    kits = kits_from("[[kit]]\nnumber = 3\n", "kits.toml")
    text = settings_toml(kits, kits.kit[0], new_secrets(), with_plan=False)
    (folder / "boot" / "firmware" / "station.toml").write_text(f"# bench 3\n{text}")
    (folder / "boot" / "firmware" / "cmdline.txt").write_text("cfg80211.ieee80211_regdom=IE\n")
    (folder / "boot" / "firmware" / "benchwarm" / network.FILE).write_text(OLD)
    tool = folder / "bin" / "nmcli"
    tool.write_text(RECORDER)
    tool.chmod(0o755)
    monkeypatch.setenv("PATH", f"{tool.parent}:/usr/bin:/bin")
    monkeypatch.setenv("NMCLI_LOG", str(folder / "nmcli.log"))
    monkeypatch.setenv("NMCLI_FAILS_AT", "99")
    monkeypatch.setenv("NMCLI_CABLE", "connected")
    return System(root=folder, station=STATION, pause=lambda _: None)


@asynccontextmanager
async def at_work(system: System) -> AsyncIterator[str]:
    """The address of a helper at work on this card."""
    path = str(system.root / "s")
    with socket.socket(socket.AF_UNIX, socket.SOCK_STREAM) as bound:
        bound.bind(path)
        bound.listen()
        task = asyncio.create_task(serve(bound, Helper(system), idle_s=PATIENCE_S))
        yield path
        task.cancel()
        await asyncio.wait({task})
