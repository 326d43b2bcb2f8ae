"""What the pre-flight found: a colour with words, and what to do next. Pure."""

import http.client
import json
import os
from collections.abc import Callable, Iterable, Mapping
from dataclasses import asdict, dataclass, field
from pathlib import Path
from typing import Any, Final, Literal, NotRequired, cast

from typing_extensions import TypedDict

from station.bench.panel.signals import Signal
from station.bench.probes.one_wire import KERNEL_TREE, PERIOD_S
from station.record.journal import LOCK_NAME
from station.words import beside

# What the settings say of this kit, and where the machine is looked at.


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


# Is a station at work on this machine? Found without touching what it holds.
#
# The record's lock is looked up in the kernel's list (proc(5), /proc/locks), not tried: a station that starts in that
# very moment would find it taken. The page is asked for its state, as any phone does.


WITHIN_S = 2.0
LARGEST_ANSWER = 4_000_000
LISTENING = "0A"  # TCP_LISTEN in /proc/net/tcp (proc(5))
ANY = ("0.0.0.0", "::", "")  # noqa: S104 - compared, not bound


@dataclass(frozen=True)
class Beside:
    """Who keeps this kit's record now (process id), who serves its page (bench name), and whether its port is taken."""

    record_pid: int | None = None
    page_bench: str | None = None
    port_taken: bool = False

    @property
    def at_work(self) -> bool:
        """Whether a station is at work: then the probe and the record are its."""
        return self.record_pid is not None or self.page_bench is not None


def look_beside(kit: Kit) -> Beside:
    """Return who is at work beside us."""
    taken = _port_taken(kit)
    return Beside(_record_holder(kit), _page_bench(kit) if taken else None, taken)


def _record_holder(kit: Kit) -> int | None:
    try:
        lock = (kit.folder / LOCK_NAME).stat()
    except OSError:
        return None
    inode = f"{os.major(lock.st_dev):02x}:{os.minor(lock.st_dev):02x}:{lock.st_ino}"
    for line in (text_of(kit.at("proc/locks")) or "").splitlines():
        words = line.split()  # 1: FLOCK  ADVISORY  WRITE 712 fe:00:265 0 EOF; with -> in front: who waits
        if words[1:2] == ["FLOCK"] and words[5:6] == [inode]:
            return int(words[4])
    return None


def _port_taken(kit: Kit) -> bool:
    if kit.port == 0:
        return False
    for name in ("tcp", "tcp6"):
        for line in (text_of(kit.at(f"proc/net/{name}")) or "").splitlines()[1:]:
            words = line.split()  # sl, local address, remote address, state …
            if words[3:4] == [LISTENING] and int(words[1].rpartition(":")[2], 16) == kit.port:
                return True
    return False


def _page_bench(kit: Kit) -> str | None:
    host = "127.0.0.1" if kit.host in ANY else kit.host
    connection = http.client.HTTPConnection(host, kit.port, timeout=WITHIN_S)
    try:
        connection.request("GET", "/api/state")
        state = json.loads(connection.getresponse().read(LARGEST_ANSWER))
        return str(state["bench"]["name"])
    except (OSError, http.client.HTTPException, ValueError, LookupError, TypeError):
        return None
    finally:
        connection.close()


Colour = Literal["green", "amber", "red", "unknown"]
Status = Literal["green", "amber", "red"]

EXIT_STATUS: Final[Mapping[Status, int]] = {"green": 0, "amber": 1, "red": 2}

_SIGNALS: Final[Mapping[Status, Signal]] = {
    "green": Signal.DONE,
    "amber": Signal.WAIT,
    "red": Signal.ATTENTION,
}


@dataclass(frozen=True)
class Finding:
    """One thing looked at. `unknown`: it cannot be told on this machine, and counts neither for nor against it.

    `text` says what was found, `remedy` what to do next ("" when nothing is to do), `values` the figures with
    their units in the keys, for scripts.
    """

    name: str
    colour: Colour
    text: str
    remedy: str = ""
    values: Mapping[str, Any] = field(default_factory=dict)


def status_of(findings: Iterable[Finding]) -> Status:
    """Return the worst colour; what is unknown does not count."""
    colours = {finding.colour for finding in findings}
    if "red" in colours:
        return "red"
    return "amber" if "amber" in colours else "green"


class FindingShown(TypedDict):
    """A finding as answers have it."""

    name: str
    colour: Colour
    text: str
    remedy: str
    values: dict[str, Any]


class FindingsShown(TypedDict):
    """What the pre-flight finds; `status` is the worst colour. Texts are English.

    `messages` has the id and values of each text, by the text.
    """

    status: Status
    findings: list[FindingShown]
    messages: NotRequired[dict[str, Any]]


def as_json(findings: Iterable[Finding]) -> FindingsShown:
    """Return the JSON form."""
    found = list(findings)
    told = beside({"status": status_of(found), "findings": [asdict(each) for each in found]})
    return cast(FindingsShown, told)


def panel_signal(status: Status) -> Signal:
    """Return what the lamps show for it: act steady, wait slow and even, or attention fast."""
    return _SIGNALS[status]
