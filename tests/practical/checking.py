"""Drives checks of a probe through the procedure, second by second."""

import math
from collections.abc import Callable
from random import Random
from typing import Any

from station.practical import events as e
from station.practical.procedure import advance
from station.practical.staff import StaffAct
from tests.practical.walk import Walk

PROBE = "28-0316a2795fee"


class Checking(Walk):
    """A bench with a probe that says what the test makes of the time."""

    def __init__(self, probe_id: str | None = PROBE, **plan: Any) -> None:
        super().__init__(**plan)
        self._draw = Random(1)
        self.keep([e.StationStarted("0", "one-wire", probe_id, "none")])

    def staff(self, act: str, **values: Any) -> list[e.Event]:
        made = StaffAct.model_validate({"act": act, "by": "technician", **values})
        return self.keep(list(advance(self.state, made, self.time_s)))

    def run(self, seconds: int, said_c: Callable[[float], float]) -> list[e.Event]:
        """Feed what the probe says `said_c(seconds since now)`, with noise, on its grid; return all but the samples."""
        begun_s, found = self.time_s, []
        for _ in range(seconds):
            celsius = said_c(self.time_s + 1.0 - begun_s) + self._draw.gauss(0.0, 0.02)
            happened = self.sample(math.floor(celsius * 16 + 0.5) / 16)
            found += [each for each in happened if not isinstance(each, e.SampleTaken)]
        return found

    def check(self, kind: str, **values: Any) -> None:
        self.staff("check_begin", check=kind, values=values)

    def step(self, name: str, **values: Any) -> list[e.Event]:  # type: ignore[override]
        return self.staff("check_step", step=name, values=values)

    def ice(self, offset_c: float) -> None:
        """A whole ice point of a probe that reads so much too high."""
        self.check("ice", water="distilled")
        self.step("in")
        self.run(90, lambda _: offset_c)
        self.staff("check_save")
