"""Judges what was read: failures, noise, conversion time, kind of chip. Pure."""

from collections import Counter
from collections.abc import Sequence
from math import sqrt
from statistics import fmean, linear_regression, median

from station.bench.check.finding import Colour, Finding
from station.bench.check.probe_kind import kind_of
from station.bench.check.probe_reads import Sample, failures_of

MANY_PER_100 = 5.0  # above this a probe is of no use in a lesson; our choice
NOISY_C = 0.05  # two neighbouring steps of 1/16 °C in turn give 0.031 °C; our choice
MOVING_C = 0.5  # a probe that warms or cools more than this tells nothing of its noise
SLOW_S = 0.85  # 0.75 s is the data sheet's longest at 12 bits; the kernel's polling adds up to 0.1 s
UNMEASURED_C = 25.0  # what chips of family D show after power-on (C. Petrich, see probe_kind)
POLLED = 2  # bit of `features`: the kernel asks the chip whether it has finished

_REMEDIES = {
    "power_on": "the supply wire (VDD) loses contact: look at plug and solder joints, and at the Pi's supply",
    "zeros": "the data wire touches ground: look at plug and solder joints",
    "no_answer": "unplug the probe and plug it in again; if it still hangs, cut the kit's power for 10 s",
    "out_of_range": "a half-plugged wire reads like this: look at plug and solder joints",
    "jump": "a half-plugged wire reads like this: look at plug and solder joints",
    "gone": "the probe left the bus: look at plug and cable",
    "several": "unplug all probes but one, or set probe.id in station.toml",
    "other_probe": "plug in the bench's own probe, or change probe.id in station.toml and restart the station",
}
_REMEDY = "shorter cable, 4.7 kΩ (long cable: 2.2 kΩ) from data to 3.3 V, another probe; then check again"


def reads(samples: Sequence[Sample], source: str) -> Finding:
    """Return how many of 100 reads fail. `source` says whose reads they are."""
    failures = failures_of(samples)
    bad, count = sum(failures.values()), len(samples)
    per_100 = 100 * bad / count
    values = {"reads": count, "failed": bad, "failed_per_100": round(per_100, 1), "kinds": dict(failures)}
    if not bad:
        # With a true rate p, no failure in n has probability (1 − p)^n; below 5 % the rate is ruled out.
        unseen = 100 * (1 - 0.05 ** (1 / count))
        values["not_ruled_out_per_100"] = round(unseen, 1)
        text = f"none of {count} reads{source} failed; up to {unseen:.0f} in 100 could still (95 %)"
        return Finding("probe_reads", "green", text, values=values)
    kinds = ", ".join(f"{kind} {times}" for kind, times in failures.most_common())
    colour: Colour = "red" if per_100 > MANY_PER_100 else "amber"
    text = f"{bad} of {count} reads{source} failed, {per_100:.0f} in 100 ({kinds})"
    return Finding("probe_reads", colour, text, _remedy(failures), values)


def _remedy(failures: Counter[str]) -> str:
    return _REMEDIES.get(failures.most_common(1)[0][0], _REMEDY)


def noise(samples: Sequence[Sample]) -> Finding:
    """Return the spread of the readings about their own drift, one standard deviation in °C."""
    good_c = [sample.temperature_c for sample in samples if sample.temperature_c is not None]
    if len(good_c) < 10:
        return Finding("probe_noise", "unknown", "too few good reads to tell the noise", values={"reads": len(good_c)})
    if set(good_c) == {UNMEASURED_C}:
        text = f"every read is {UNMEASURED_C} °C exactly, which some copies give before they have measured"
        remedy = "hold the probe in your hand and check again: it must rise"
        return Finding("probe_noise", "amber", text, remedy, {"sd_c": 0.0, "mean_c": UNMEASURED_C})
    slope, intercept = linear_regression(range(len(good_c)), good_c)
    residuals_c = [each - (intercept + slope * index) for index, each in enumerate(good_c)]
    sd_c = sqrt(sum(each**2 for each in residuals_c) / (len(good_c) - 2))
    moved_c = abs(slope) * (len(good_c) - 1)
    values = {"sd_c": round(sd_c, 4), "mean_c": round(fmean(good_c), 3), "moved_c": round(moved_c, 3)}
    text = f"noise {sd_c:.3f} °C (sd) at {values['mean_c']:.2f} °C"
    if sd_c < NOISY_C:
        return Finding("probe_noise", "green", text, values=values)
    if moved_c > MOVING_C:
        text = "the temperature was changing, so its noise cannot be told"
        return Finding(
            "probe_noise", "unknown", text, "leave the probe in still water for a minute, then check again", values
        )
    remedy = "leave the probe in still water and check again; if the noise stays, another probe"
    return Finding("probe_noise", "amber", f"{text}, more than {NOISY_C} °C", remedy, values)


def conversion(samples: Sequence[Sample], features: int | None, conv_time_ms: int | None) -> Finding:
    """Return whether the reads took as long as a conversion must."""
    times_s = [sample.took_s for sample in samples if sample.took_s is not None and sample.temperature_c is not None]
    values = {
        "features": features,
        "conv_time_ms": conv_time_ms,
        "read_s": round(median(times_s), 3) if times_s else None,
    }
    if not times_s:
        return Finding("conversion_time", "unknown", "no read of our own, so no conversion was timed", values=values)
    took_s = median(times_s)
    if (features or 0) & POLLED:
        if took_s <= SLOW_S:
            return Finding("conversion_time", "green", f"the chip answers after {took_s:.2f} s", values=values)
        text = f"the chip answers after {took_s:.2f} s; the data sheet allows 0.75 s"
        return Finding("conversion_time", "amber", text, _REMEDY, values)
    if conv_time_ms is None:
        return Finding(
            "conversion_time", "unknown", f"a read takes {took_s:.2f} s; this kernel tells no more", values=values
        )
    if took_s < 0.9 * conv_time_ms / 1000:
        text = (
            f"reads come back after {took_s:.2f} s, before the conversion of {conv_time_ms / 1000:.2f} s can have ended"
        )
        return Finding(
            "conversion_time", "amber", text, "stop every other program that reads the probe; then check again", values
        )
    text = f"the kernel waits a fixed {conv_time_ms / 1000:.2f} s, so the chip's own time cannot be told"
    return Finding("conversion_time", "green", text, values=values)


def chip(probe_id: str, samples: Sequence[Sample]) -> Finding:
    """Return what speaks for a copy, and no more than that."""
    scratchpads = [sample.nine for sample in samples if sample.nine is not None]
    kind = kind_of(probe_id, scratchpads)
    values = {"against": list(kind.against), "scratchpads": len(scratchpads), "byte_6_tests": kind.byte_6_tests}
    if not kind.against:
        if not scratchpads:
            text = "its number is of the maker's pattern; its bytes were not looked at"
            return Finding("probe_kind", "unknown", text, values=values)
        text = "nothing read here speaks against a genuine DS18B20, which is no proof of one"
        return Finding("probe_kind", "green", text, values=values)
    reasons = "; ".join(kind.against)
    if kind.off_the_sheet:
        text = f"a copy that is off the data sheet: {reasons}"
        return Finding(
            "probe_kind", "amber", text, "expect noise and offset: check it in ice water, or take another", values
        )
    text = f"a copy, as most steel-sheathed probes are: {reasons}. Copies can be good: noise and failures tell"
    return Finding("probe_kind", "green", text, "check its offset in ice water once", values)
