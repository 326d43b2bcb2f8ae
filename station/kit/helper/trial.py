"""Another network, tried for a minute beside the one that is kept: whoever mistypes a password is not locked out.

The new one lies where NetworkManager forgets it at a restart (/run), and network.toml still has the old one: a plug
pulled in the trial brings the old one back.
"""

import time
from collections.abc import Callable, Sequence
from pathlib import Path
from typing import Final

from station.kit.on_card import network
from station.kit.on_card.network import Network

TRIAL: Final = "benchwarm-trial"
VOLATILE: Final = Path("run/NetworkManager/system-connections")
LOOKS, EVERY_S = 12, 5.0

Ask = Callable[[Sequence[str]], tuple[int | None, str]]
"""Runs a tool: its exit status (None: the system does not have it) and what it printed."""


class Trial:
    """Tries networks, one at a time."""

    def __init__(self, here: Path, root: Path, ask: Ask, pause: Callable[[float], None] = time.sleep) -> None:
        self.here, self.root, self._ask, self._pause = here, root, ask, pause

    def run(self, wanted: Network) -> bool:
        """Try it for a minute; return whether it is kept. What was there before is back otherwise."""
        cmdline, path = self.here.parent / "cmdline.txt", self.root / VOLATILE / f"{TRIAL}.nmconnection"
        if wanted.ssid is not None:
            network.radio(wanted, cmdline, self._run)
            path.parent.mkdir(parents=True, exist_ok=True)
            network.write(path, network.keyfile(wanted, TRIAL))
            begun = self._run(["nmcli", "connection", "load", str(path)]) == 0 and self._up(TRIAL)
        else:
            begun = True
        kept = begun and self._answers_for_a_minute(wanted)
        if kept:
            network.write(self.here / network.FILE, network.toml(wanted))
            network.apply(self.here, self.root, self._run)
        if wanted.ssid is not None:
            self._run(["nmcli", "connection", "delete", "id", TRIAL])
            path.unlink(missing_ok=True)
        if not kept:
            self._back()
        return kept

    def _answers_for_a_minute(self, wanted: Network) -> bool:
        """Whether NetworkManager has it connected, with an address, at every look."""
        for look in range(LOOKS):
            if look:
                self._pause(EVERY_S)
            if wanted.ssid is not None:
                _, told = self._ask(["nmcli", "-g", "GENERAL.STATE", "connection", "show", TRIAL])
                connected = told.strip() == "activated"
            else:
                _, told = self._ask(["nmcli", "-t", "-f", "TYPE,STATE", "device"])
                connected = "ethernet:connected" in told.splitlines()
            if not connected:
                return False
        return True

    def _back(self) -> None:
        try:
            before = network.read((self.here / network.FILE).read_text(encoding="utf-8-sig"))
        except (OSError, ValueError):
            before = None
        if before is not None:
            network.radio(before, self.here.parent / "cmdline.txt", self._run)
        if (self.root / network.KEYFILES / f"{network.CONNECTION}.nmconnection").exists():
            self._up(network.CONNECTION)

    def _up(self, name: str) -> bool:
        return self._run(["nmcli", "--wait", str(network.REACHED_WITHIN_S), "connection", "up", "id", name]) == 0

    def _run(self, words: Sequence[str]) -> int | None:
        return self._ask(words)[0]
