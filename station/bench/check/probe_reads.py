"""Reads the probe some times, or takes what a station at work has read, and judges failures, noise and time.

A second reader beside a station would spoil its readings: the kernel holds the bus for single commands only, not over
the 750 ms of a conversion (Linux w1_therm.c, convert_t: "Fixed delay" lets the bus go), so one reader starts a new
conversion inside the other's, and the other gets an old value. So beside a station its own samples are judged.
"""

import queue
import signal
import threading
import time
from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from pathlib import Path

from station.bench.check.finding import Kit
from station.bench.probes.probe import ANSWER_WITHIN_S
from station.bench.probes.scratchpad import judge_text

COLDEST_C, HOTTEST_C = -10.0, 110.0  # what a probe in a school laboratory can meet, boiling water included
HOPELESS = 5
"""So many failures from the start end the reading: the probe does not answer, and nobody need wait for more."""


@dataclass(frozen=True)
class Sample:
    """One read: a temperature in °C, or None and the kind of fault; the nine bytes and how long it took, if known."""

    temperature_c: float | None
    bad: str | None = None
    nine: bytes | None = None
    took_s: float | None = None


def read_probe(kit: Kit, w1_slave: Path) -> list[Sample]:
    """Return `kit.reads` reads, `kit.period_s` apart; fewer when the probe does not answer."""
    samples: list[Sample] = []
    for sample in _texts(kit, w1_slave):
        samples.append(_in_range(sample))
        if sample.bad == "no_answer" or (len(samples) == HOPELESS and all(each.bad for each in samples)):
            break
    return samples


def _texts(kit: Kit, w1_slave: Path) -> Iterator[Sample]:
    """Read in a thread of its own: a signal cuts a conversion short, and a read may hang for ever."""
    taken: queue.SimpleQueue[Sample | Exception] = queue.SimpleQueue()
    enough = threading.Event()

    def work() -> None:
        signal.pthread_sigmask(signal.SIG_BLOCK, signal.valid_signals())
        try:
            for sample in _timed(kit, w1_slave):
                taken.put(sample)
                if enough.wait(max(kit.period_s - (sample.took_s or 0.0), 0.0)):
                    return
        except Exception as error:
            taken.put(error)

    threading.Thread(target=work, name="check", daemon=True).start()
    try:
        for _ in range(kit.reads):
            told = taken.get(timeout=ANSWER_WITHIN_S + kit.period_s)
            if isinstance(told, Exception):
                raise told
            yield told
    except queue.Empty:
        yield Sample(None, "no_answer", took_s=ANSWER_WITHIN_S)
    finally:
        enough.set()


def _timed(kit: Kit, w1_slave: Path) -> Iterator[Sample]:
    near_c: float | None = None
    for _ in range(kit.reads):
        begun_s = time.monotonic()
        kit.before_read()
        sample = _read(w1_slave, near_c)
        yield replace(sample, took_s=time.monotonic() - begun_s)
        near_c = sample.temperature_c


def _read(w1_slave: Path, near_c: float | None) -> Sample:
    try:
        text = w1_slave.read_text(encoding="utf-8", errors="replace")
    except OSError:
        return Sample(None, "gone")
    judged = judge_text(text, near_c=near_c)
    nine = None if judged.bad else bytes.fromhex(text.split(":")[0])
    return Sample(judged.temperature_c, judged.bad, nine)


def _in_range(sample: Sample) -> Sample:
    if sample.temperature_c is None or COLDEST_C <= sample.temperature_c <= HOTTEST_C:
        return sample
    return replace(sample, temperature_c=None, bad="out_of_range", nine=None)


def failures_of(samples: Sequence[Sample]) -> Counter[str]:
    """Return how often each kind of fault was seen."""
    return Counter(sample.bad for sample in samples if sample.bad is not None)
