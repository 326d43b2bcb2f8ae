"""Lamps and buzzer off after a station was killed: `python -m station.bench.panel_off`, run by the unit.

A killed process cannot drive its pins low, and Raspberry Pi's kernels leave a released output as it was driven
(raspberrypi/linux pull request 6117). So the station notes its outputs in the unit's runtime folder and this, run once
it is gone, drives them low. Without that note no pin was ours, and none is touched.
"""

import os
import sys
from pathlib import Path

from station.bench.panel.lgpio_pins import OUTPUTS_NOTE, drive_low
from station.bench.panel.pins import PanelUnavailable


def noted_outputs(folder: Path) -> tuple[int, ...]:
    """Read the pins a station noted in its runtime folder; none when it drove none."""
    try:
        return tuple(int(word) for word in (folder / OUTPUTS_NOTE).read_text().split())
    except (FileNotFoundError, ValueError):
        return ()


def main() -> int:
    """Drive the noted pins low. Exit status 1, with the reason on stderr, when they cannot be reached."""
    outputs = noted_outputs(Path(os.environ.get("RUNTIME_DIRECTORY", "/run/station")))
    if not outputs:
        return 0
    try:
        drive_low(outputs)
    except PanelUnavailable as error:
        sys.stderr.write(f"{error}\n")
        return 1
    return 0


if __name__ == "__main__":
    sys.exit(main())
