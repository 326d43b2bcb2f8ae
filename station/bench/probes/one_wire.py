"""The reader: w1thermsensor on a one-wire tree, in one thread of its own with signals blocked.

A signal that reaches a thread inside a conversion cuts it short and the kernel then gives an empty text;
hence the blocked signals. Two readers of one tree disturb each other's conversions; hence one per tree.
The reader never invents, smooths or repeats a value, and never decides what a practical would believe.
"""

import os
import re
import signal
import threading
import time
from collections.abc import Callable
from pathlib import Path

from station.bench.clock import Clock
from station.bench.probes.probe import Deliver, ProbeError, ProbeReading, answer_within_s
from station.bench.probes.scratchpad import NEAR_S, judge_text, kind_of
from station.words import Message, say

# Loading kernel modules is the operating system's work (dtoverlay); w1thermsensor would try it at import.
os.environ["W1THERMSENSOR_NO_KERNEL_MODULE"] = "1"
from w1thermsensor import Sensor, W1ThermSensor, W1ThermSensorError

KERNEL_TREE = Path("/sys/bus/w1/devices")
PERIOD_S = 1.0
PROBE_ID = re.compile(r"28-[0-9a-f]{12}")
LONGEST_TEXT = 400
MOST_KINDS = 64
"""Different scratchpads that are kept to tell a copy by; a chip has 16 low digits, a noisy bus has no end of bytes."""

_trees: set[Path] = set()
_taking = threading.Lock()


def _take(tree: Path) -> None:
    with _taking:
        if tree in _trees:
            raise ProbeError(say("probe-read-twice"))
        _trees.add(tree)


class KeepingSensor(W1ThermSensor):  # type: ignore[misc]
    """A w1thermsensor that keeps the text of its newest read, so that a failure is known without another."""

    text: str | None = None

    def get_raw_sensor_strings(self) -> list[str]:
        """Read `w1_slave` once. Raises the library's NoSensorFoundError when it cannot be read."""
        self.text = None
        try:
            self.text = self.sensorpath.read_text(encoding="ascii", errors="replace")
        except OSError as error:
            raise W1ThermSensorError(str(error)) from error
        return self.text.splitlines() or [""]


class OneWireReader:
    """Reads one DS18B20, pinned to its id, about once a second of bench time.

    `tree` is the folder of one-wire devices, `probe_id` e.g. 28-0316a2795fee; without one the reader pins
    itself to the only probe it finds. `before_read(time_s)` is called right before each read (the virtual cup
    writes its tree there). Raises ProbeError when the id is not one of a DS18B20, or another reader is open.
    """

    def __init__(
        self,
        clock: Clock,
        tree: Path = KERNEL_TREE,
        probe_id: str | None = None,
        before_read: Callable[[float], None] | None = None,
        period_s: float = PERIOD_S,
    ) -> None:
        if probe_id is not None and not PROBE_ID.fullmatch(probe_id):
            raise ProbeError(say("probe-not-ds18b20", probe_name=repr(probe_id)))
        _take(tree)
        self._clock, self._tree, self._before = clock, tree, before_read
        self._period_s = period_s
        self._probe_id = probe_id
        self._sensor_class = type("TreeSensor", (KeepingSensor,), {"BASE_DIRECTORY": tree})
        self._good: tuple[float, float] | None = None
        self._counts: bool | None = None
        self._seen: dict[tuple[int, ...], bytes] = {}
        self._against: tuple[Message, ...] | None = None
        self._stop = threading.Event()
        self._closed = False
        self._thread: threading.Thread | None = None

    @property
    def probe_id(self) -> str | None:
        """The id that the reader is pinned to; None while no probe was seen."""
        return self._probe_id

    @property
    def against(self) -> tuple[Message, ...] | None:
        """What speaks against a genuine chip in what was read so far; None before the first good conversion."""
        return self._against

    def start(self, deliver: Deliver) -> None:
        """Begin to sample; `deliver` is called in the reader's thread."""
        self._thread = threading.Thread(target=self._run, args=(deliver,), name="probe", daemon=True)
        self._thread.start()

    def close(self) -> None:
        """Stop sampling: nothing more is delivered. A read that hangs is left to its daemon thread."""
        if self._closed:
            return
        self._closed = True
        self._stop.set()
        if self._thread is not None:
            self._thread.join(timeout=min(1.0, 2 * self._period_s / self._clock.speed))
        _trees.discard(self._tree)

    def read(self) -> ProbeReading:
        """Read once: one conversion, one text, one judgement. A read that fails itself is a bad one."""
        begun_s = time.monotonic()
        from_s = self._clock.at(begun_s)
        try:
            if self._before is not None:
                self._before(from_s)
            temperature_c, bad, text = self._judged(from_s)
        except Exception as error:  # a virtual cup on a full disk, say: the thread must live for the next read
            temperature_c, bad, text = None, "not_read", f"{type(error).__name__}: {error}"[:LONGEST_TEXT]
        ended_s = time.monotonic()
        took_s, to_s = ended_s - begun_s, self._clock.at(ended_s)
        at_s = round((from_s + to_s) / 2, 4)
        if took_s > answer_within_s(self._clock.speed):
            # Stamped at its end: whoever gave up waiting has already put down later moments than the middle.
            temperature_c, bad, at_s = None, "no_answer", to_s
        if temperature_c is not None:
            self._good = (at_s, temperature_c)
        return ProbeReading(at_s, temperature_c, bad, text if bad else None, took_s)

    def _judged(self, now_s: float) -> tuple[float | None, str | None, str | None]:
        sensor = self._sensor()
        if sensor is None:
            return self._missing()
        try:
            sensor.get_temperature()
        except (W1ThermSensorError, ValueError, IndexError):
            # The library knows that it failed; why, is told by the text that it kept.
            if sensor.text is None:
                return self._missing()
        text = sensor.text or ""
        near = self._good[1] if self._good and now_s - self._good[0] <= NEAR_S else None
        judged = judge_text(text, near_c=near, chip_counts=self._counts)
        if judged.bad is None:
            self._look_at(text)
        if judged.counts is not None:
            self._counts = judged.counts if self._counts is None else self._counts and judged.counts
        return judged.temperature_c, judged.bad, text[:LONGEST_TEXT]

    def _look_at(self, text: str) -> None:
        nine = bytes.fromhex(text.partition(":")[0])
        key = (nine[0] & 0x0F, *nine[4:8])
        if key not in self._seen and len(self._seen) < MOST_KINDS and self._probe_id is not None:
            self._seen[key] = nine
            self._against = kind_of(self._probe_id, tuple(self._seen.values())).against

    def _sensor(self) -> KeepingSensor | None:
        """Open the pinned probe; None when it is not there. Opened anew each time: a probe comes and goes."""
        if self._probe_id is None:
            found = probes_in(self._tree)
            if len(found) != 1:
                return None
            (self._probe_id,) = found
        try:
            sensor: KeepingSensor = self._sensor_class(Sensor.DS18B20, self._probe_id[3:])
        except (W1ThermSensorError, OSError):
            return None
        return sensor

    def _missing(self) -> tuple[None, str, str | None]:
        """Say why there is no probe to read: none, several to choose from, or another than the one it is pinned to."""
        found = probes_in(self._tree)
        if not found or self._probe_id in found:
            return None, "gone", None
        kind = "several" if self._probe_id is None and len(found) > 1 else "other_probe"
        return None, kind, ", ".join(found)[:LONGEST_TEXT]

    def _run(self, deliver: Deliver) -> None:
        signal.pthread_sigmask(signal.SIG_BLOCK, signal.valid_signals())
        due_s = self._clock.at(time.monotonic())
        while not self._stop.is_set():
            reading = self.read()
            if self._stop.is_set():
                return
            deliver(reading)
            now_s = self._clock.at(time.monotonic())
            # A probe catches up with its rate at once. A virtual cup's time may stand still: each sample has its own.
            late_s = -self._period_s / 2 if self._clock.waits else self._period_s
            due_s = max(due_s + self._period_s, now_s - late_s)
            self._clock.wait(self._stop, due_s - now_s)


def probes_in(tree: Path) -> list[str]:
    """Return the ids of the DS18B20 in the tree, sorted; ghosts of a floating data wire are none."""
    try:
        return sorted(entry.name for entry in tree.iterdir() if PROBE_ID.fullmatch(entry.name))
    except OSError:
        return []
