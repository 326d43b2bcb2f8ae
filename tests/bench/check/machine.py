"""A machine to look at: files in the places and forms of the kernel's, below a folder of the test's own."""

from pathlib import Path
from typing import Any

from station.bench.check.finding import Kit

MOUNTS = """\
22 28 0:20 / /sys rw,nosuid,nodev,noexec,relatime shared:7 - sysfs sysfs rw
23 28 0:21 / /proc rw,relatime shared:14 - proc proc rw
28 1 179:2 / / rw,noatime shared:1 - ext4 /dev/mmcblk0p2 rw
26 28 0:23 / /run rw,nosuid,nodev shared:12 - tmpfs tmpfs rw,size=182520k,nr_inodes=819200,mode=755
60 28 179:1 / /boot/firmware rw,relatime shared:31 - vfat /dev/mmcblk0p1 rw,fmask=0022,errors=remount-ro
"""

TCP_HEAD = "  sl  local_address rem_address   st tx_queue rx_queue tr tm->when retrnsmt   uid  timeout inode\n"


class Machine:
    """Writes what /proc, /sys, /boot and /run would hold; what is not written is not there."""

    def __init__(self, root: Path) -> None:
        self.root = root
        self.write("proc/self/mountinfo", MOUNTS)

    def write(self, path: str, text: str) -> Path:
        place = self.root / path.lstrip("/")
        place.parent.mkdir(parents=True, exist_ok=True)
        place.write_text(text)
        return place

    def is_a_pi(self, model: str = "Raspberry Pi 4 Model B Rev 1.5") -> None:
        """The device tree's strings end in a zero byte."""
        self.write("proc/device-tree/model", f"{model}\0")

    def kit(self, **settings: Any) -> Kit:
        return Kit(**{"root": self.root, "period_s": 0.0, "folder": self.root / "record", **settings})
