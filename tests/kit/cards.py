"""A card that was made, in a folder that stands for it, and its first start: the real script, pip and environment."""

import os
import subprocess
import sys
from pathlib import Path

from tests.conftest import PATIENCE_S

TABLE = '[[kit]]\nnumber = 1\n[[kit]]\nnumber = 2\nname = "By the door"\n[[kit]]\nnumber = 3\nroom = true\n'


def card_in(root: Path, made: Path) -> tuple[Path, dict[str, str]]:
    """Copy what was made into a folder that stands for the card; return its boot partition and the environment."""
    boot = root / "boot" / "firmware"
    boot.parent.mkdir(parents=True)
    subprocess.run(["cp", "-r", str(made), str(boot)], check=True)
    return boot, {
        "PATH": os.environ["PATH"],
        "HOME": str(root.parent),
        "BENCHWARM_ROOT": str(root),
        "BENCHWARM_PYTHON": str(Path(sys.base_prefix) / "bin" / "python3"),
        "BENCHWARM_PIP_OPTIONS": "--no-deps",
        "https_proxy": "http://127.0.0.1:9",
        "http_proxy": "http://127.0.0.1:9",
    }


def run_script(boot: Path, environment: dict[str, str]) -> "subprocess.CompletedProcess[str]":
    script = ["bash", str(boot / "benchwarm" / "first-start.sh")]
    return subprocess.run(script, env=environment, capture_output=True, text=True, check=False, timeout=5 * PATIENCE_S)


def first_start(boot: Path, environment: dict[str, str]) -> None:
    done = run_script(boot, environment)
    assert done.returncode == 0, done.stdout + done.stderr
