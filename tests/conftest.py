"""For all tests: how long is waited, which ports are free, where temporary files lie, in which order folders run."""

import os
import random
import shutil
import socket
import tempfile
from contextlib import ExitStack
from pathlib import Path

import pytest
from hypothesis import settings

PATIENCE_S = 120.0
"""How long a test waits for what must come: a busy machine is slow, and only what never comes is a failure."""

settings.register_profile("station", deadline=None)
settings.load_profile("station")

PORTS = range(10_100, 32_000)
"""Above the ports that a browser refuses (Fetch standard, 2.9: up to 10080), below those that the kernel gives to
connections on their way out (ip_local_port_range, ip(7))."""
_kept = ExitStack()


def free_port() -> int:
    """Return a port for a process that is about to listen: no other test on this machine is given the same one."""
    while True:
        port, name = random.choice(PORTS), socket.socket(socket.AF_UNIX)
        try:
            name.bind(f"\0benchwarm test port {port}")  # held for as long as this process lives (unix(7), abstract)
            with socket.socket() as probe:
                probe.bind(("", port))
        except OSError:
            name.close()
            continue
        _kept.enter_context(name)
        return port


PAGE = Path(__file__).parent / "page"


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Run the tests in a browser last: Playwright's own event loop stays open in the main thread."""
    items.sort(key=lambda item: PAGE in item.path.parents)


def pytest_configure(config: pytest.Config) -> None:
    """Keep the temporary files of this process apart: stations of other runs would take their turns for fits here."""
    folder = tempfile.mkdtemp(prefix="benchwarm-tests-")
    Path(folder).chmod(0o711)  # a test that becomes another user may still enter its own folder
    os.environ["TMPDIR"] = tempfile.tempdir = folder
    config.add_cleanup(lambda: shutil.rmtree(folder, ignore_errors=True))
    config.add_cleanup(_kept.close)
