"""Tell systemd that the station is up, and that samples are still coming (the sd_notify datagram protocol).

Outside systemd, with no `NOTIFY_SOCKET`, all of it does nothing.
"""

import asyncio
import os
import socket

FEED_S, FRESH_S = 1.0, 10.0
"""A sample older than this, good or bad, means that the reader hangs: systemd is no longer fed and starts us anew."""


def notify(message: str) -> bool:
    """Send one message, for example "READY=1"; True when it was sent (sd_notify(3): a path or an @abstract name)."""
    address = os.environ.get("NOTIFY_SOCKET", "")
    if not address:
        return False
    if address.startswith("@"):
        address = "\0" + address[1:]
    with socket.socket(socket.AF_UNIX, socket.SOCK_DGRAM | socket.SOCK_CLOEXEC) as channel:
        channel.setblocking(False)  # a busy systemd must not hold the bench up
        try:
            channel.sendto(message.encode(), address)
        except OSError:
            return False
    return True


def ready() -> bool:
    """Say that the page is being served."""
    return notify("READY=1")


def stopping() -> bool:
    """Say that the station is shutting down."""
    return notify("STOPPING=1")


async def keep_fed() -> None:
    """Feed the watchdog once a second, where all that is asked is that the event loop, and so the page, lives."""
    while True:
        notify("WATCHDOG=1")
        await asyncio.sleep(FEED_S)


def feed(sample_age_s: float) -> bool:
    """Feed the watchdog, if the newest sample is fresh; call it about once a second from the supervising loop.

    `sample_age_s` is the age of the newest sample of any kind (before the first, the time since the start): a bad
    sample proves the reader alive, and a missing probe is not cured by a restart.
    """
    return sample_age_s <= FRESH_S and notify("WATCHDOG=1")
