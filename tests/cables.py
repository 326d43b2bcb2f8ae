"""Networks of their own for tests: a namespace with cables to this one, skipped with the reason where there is none."""

import os
import shutil
import subprocess
from collections.abc import Iterator
from contextlib import contextmanager
from typing import NamedTuple

import pytest


class Cable(NamedTuple):
    """An interface here that leads into the namespace, its address, and the address at the other end."""

    name: str
    here: str
    there: str


def ip(*words: str) -> None:
    subprocess.run(["ip", *words], check=True, capture_output=True, text=True)


@contextmanager
def wired(namespace: str, count: int) -> Iterator[list[Cable]]:
    """Yield so many cables into a namespace of this name."""
    if shutil.which("ip") is None:
        pytest.skip("a network namespace needs iproute2")
    number = os.getpid()  # another run on this machine has other names and addresses
    network = f"10.{200 + number // 250 % 50}.{number % 250}"
    cables = [
        Cable(f"bw{number % 100_000}-{one}", f"{network}.{4 * one + 1}", f"{network}.{4 * one + 2}")
        for one in range(count)
    ]
    try:
        ip("netns", "add", namespace)
        ip("netns", "exec", namespace, "true")
        ip("-n", namespace, "link", "set", "lo", "up")
        for cable in cables:
            ip("link", "add", cable.name, "type", "veth", "peer", "name", f"{cable.name}x", "netns", namespace)
            ip("addr", "add", f"{cable.here}/30", "dev", cable.name)
            ip("link", "set", cable.name, "up")
            ip("-n", namespace, "addr", "add", f"{cable.there}/30", "dev", f"{cable.name}x")
            ip("-n", namespace, "link", "set", f"{cable.name}x", "up")
    except subprocess.CalledProcessError as error:
        subprocess.run(["ip", "netns", "delete", namespace], check=False, capture_output=True)
        pytest.skip(f"no network namespace can be made and wired here: {error.stderr.strip()}")
    try:
        yield cables
    finally:
        ip("netns", "delete", namespace)
