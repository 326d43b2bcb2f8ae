"""Says a line to whoever listens to a station at work: that nobody does, or cannot, ends no practical."""

import os
import sys
from typing import TextIO


def say(line: str, to: TextIO | None = None) -> None:
    """Print a line at once, on standard output unless another stream is named."""
    stream = sys.stdout if to is None else to
    try:
        print(line, file=stream, flush=True)
    except OSError:  # a full disk, a pipe that was closed: the rest goes nowhere, at the end of the process too
        os.dup2(os.open(os.devnull, os.O_WRONLY), stream.fileno())
