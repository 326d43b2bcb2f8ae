"""Is a station at work on this machine? Found without touching what it holds.

The record's lock is looked up in the kernel's list (proc(5), /proc/locks), not tried: a station that starts in that
very moment would find it taken. The page is asked for its state, as any phone does.
"""

import http.client
import json
import os
from dataclasses import dataclass

from station.bench.check.kit import Kit, text_of
from station.record.opening import LOCK_NAME

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
