"""A small file system of its own, as a card that is nearly full."""

import subprocess
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest


@contextmanager
def small_card(size_kb: int = 256) -> Iterator[Path]:
    """Mount it, and unmount it at the end; skips the test where that may not be done."""
    with tempfile.TemporaryDirectory(prefix="benchwarm-card-") as card:
        mount = ["mount", "-t", "tmpfs", "-o", f"size={size_kb}k", "card", card]
        if subprocess.run(mount, check=False, capture_output=True).returncode:
            pytest.skip("a full card is tried on a small tmpfs, and only root may mount one")
        try:
            yield Path(card)
        finally:
            subprocess.run(["umount", "--lazy", card], check=True)  # a failed test may hold it
