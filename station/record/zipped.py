"""A zip file that is made while it is sent: what was taken from it is never held again."""

import time
import zipfile
from collections.abc import Iterable, Iterator

PACKED = (".whl", ".xlsx")
"""Endings of what is packed already."""


class Zipped:
    """Takes files and gives the bytes of the zip piece by piece (ZIP application note, with data descriptors)."""

    def __init__(self) -> None:
        self._sink = _Sink()
        self._zip = zipfile.ZipFile(self._sink, "w")  # type: ignore[call-overload]

    def file(self, name: str, pieces: Iterable[bytes]) -> Iterator[bytes]:
        """Yield what the zip grows by with this file."""
        entry = zipfile.ZipInfo(name, max(time.localtime()[:6], (1980, 1, 1, 0, 0, 0)))
        entry.compress_type = zipfile.ZIP_STORED if name.endswith(PACKED) else zipfile.ZIP_DEFLATED
        entry.external_attr = 0o600 << 16
        with self._zip.open(entry, "w") as file:
            for piece in pieces:
                file.write(piece)
                yield self._sink.taken()
        yield self._sink.taken()

    def end(self) -> bytes:
        """Return the rest, after which the zip is whole."""
        self._zip.close()
        return self._sink.taken()


class _Sink:
    """What is written and not yet taken; it cannot seek, and zipfile then writes what a stream needs."""

    def __init__(self) -> None:
        self._held = bytearray()

    def write(self, content: bytes) -> int:
        self._held += content
        return len(content)

    def flush(self) -> None:
        """Nothing is held back."""

    def taken(self) -> bytes:
        content = bytes(self._held)
        self._held.clear()
        return content
