"""Which readings a practical believes: range and rate. The reader knows nothing of this.

A wet probe in a cup stays between −5 and 60 °C. A steel-sheathed probe plunged from air into water was seen
to move at 2.6 °C/s at most; 3 °C/s on top of 1 °C is beyond what a pour can do. A jump is believed once a
second fresh conversion agrees with it: a probe that was put back may truly be elsewhere, while a power-on
leftover is gone by the next conversion.
"""

from dataclasses import replace

from station.practical.state import Gate, Sample

LOWEST_C, HIGHEST_C = -5.0, 60.0
STEP_C, RATE_C_S = 1.0, 3.0
CHECK_HIGHEST_C, CHECK_RATE_C_S = 110.0, 30.0
"""While a probe is checked: boiling water, and a bare probe that is plunged into it."""
GAP_S = 5.0


def judge_sample(gate: Gate, time_s: float, temperature_c: float, *, of_check: bool = False) -> tuple[str | None, Gate]:
    """Return the kind of fault (None when believed) and what the gate remembers next.

    `temperature_c` is what the probe said; `of_check` says that the probe is being checked. The very first reading
    is believed; after a gap of more than 5 s the first one counts as a jump until the next agrees with it.
    """
    if not LOWEST_C <= temperature_c <= (CHECK_HIGHEST_C if of_check else HIGHEST_C):
        return "out_of_range", gate
    sample = Sample(time_s, temperature_c)
    if gate == Gate():
        return None, Gate(good=sample)
    for known in (gate.good, gate.candidate):
        if known is not None and _reachable(known, sample, CHECK_RATE_C_S if of_check else RATE_C_S):
            return None, Gate(good=sample)
    return "jump", replace(gate, candidate=sample)


def _reachable(known: Sample, sample: Sample, rate_c_s: float) -> bool:
    passed_s = sample.time_s - known.time_s
    if passed_s > GAP_S or known.said_c is None or sample.said_c is None:
        return False
    return abs(sample.said_c - known.said_c) <= STEP_C + rate_c_s * max(passed_s, 0.0)
