"""What the settings say of this kit, and where the machine is looked at."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import Literal

from station.bench.onewire import KERNEL_TREE, PERIOD_S


@dataclass(frozen=True)
class Kit:
    """A kit as its settings have it.

    `panel` is None where the settings cannot be read. `addresses` are the page's, loopback last. `reads` is how
    often the probe is read, `period_s` how far apart in seconds. `root` is where this machine's /proc, /sys, /boot
    and /dev are looked at; `before_read` is called before each read (the virtual cup writes its tree there).
    """

    bench: str = "Bench"
    driver: Literal["one-wire", "virtual", "none"] = "one-wire"
    tree: Path = KERNEL_TREE
    probe_id: str | None = None
    panel: Literal["real", "mock", "none"] | None = "none"
    pins: Mapping[str, int] = field(default_factory=dict)
    folder: Path = Path("/var/lib/station")
    host: str = "0.0.0.0"  # noqa: S104 - any device on the lab network
    port: int = 8080
    addresses: tuple[str, ...] = ()
    reads: int = 30
    period_s: float = PERIOD_S
    root: Path = Path("/")
    before_read: Callable[[], None] = lambda: None

    def at(self, path: str) -> Path:
        """Return where this path of the machine is looked at."""
        return self.root / path.lstrip("/")


def text_of(path: Path) -> str | None:
    """Return what stands in a small file, without spaces and zeros at its ends; None if it cannot be read."""
    try:
        return path.read_text(encoding="utf-8", errors="replace").strip("\0 \n\t")
    except OSError:
        return None


def number_in(path: Path, base: int = 10) -> int | None:
    """Return the whole number that stands in a small file; None if there is none."""
    try:
        return int(text_of(path) or "", base)
    except ValueError:
        return None
