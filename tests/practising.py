"""A person at a practice cup, as a program: what hands and presses a whole practice needs, over HTTP alone."""

import time
from dataclasses import dataclass, field
from typing import Any

import httpx

from station.practical.set_up import SET_UP_ACTS


@dataclass
class Practiser:
    """Obeys the instruction of the cup at this address, a step at each call; `missed` portions are not poured."""

    client: httpx.Client
    page: str
    missed: frozenset[tuple[int, int]] = frozenset()
    drawn_cm3: float = 0.0
    poured_cm3: float = 0.0
    seen: dict[str, Any] | None = None
    """What the stream told last, where somebody listens to it."""
    poured: set[tuple[int, int]] = field(default_factory=set)

    @classmethod
    def come(cls, client: httpx.Client, **known: Any) -> "Practiser":
        """Come to the hall and be led to a cup."""
        found = client.get("/practise", follow_redirects=True)
        found.raise_for_status()
        return cls(client, found.url.path, **known)

    @property
    def api(self) -> str:
        return f"/api{self.page}"

    def state(self) -> dict[str, Any]:
        answer: dict[str, Any] = self.client.get(f"{self.api}/state").json()
        return answer

    def hand(self, hand: str, **how: Any) -> dict[str, Any]:
        """Do something with the virtual cup."""
        answer = self.client.post(f"{self.api}/hands", json={"hand": hand, **how})
        answer.raise_for_status()
        made: dict[str, Any] = answer.json()
        return made

    def act(self, **act: Any) -> httpx.Response:
        """Tell the station something."""
        return self.client.post(f"{self.api}/acts", json={"key": f"p {time.monotonic_ns()}", **act})

    def pour(self, volume_cm3: float) -> None:
        """Draw up so much, and push it into the cup."""
        self.drawn_cm3 += volume_cm3
        self.hand("ware", drawn_cm3=self.drawn_cm3, poured_cm3=self.poured_cm3)
        self.poured_cm3 += volume_cm3
        self.hand("ware", drawn_cm3=self.drawn_cm3, poured_cm3=self.poured_cm3)

    def step(self, state: dict[str, Any]) -> None:
        """Do what the instruction asks for, if it asks for anything now."""
        act = state["instruction"]["act"]
        if act == "alkali_temperature":
            self.act(act="alkali_left_out")
        elif act in SET_UP_ACTS:
            self.act(act=act)
        elif act in ("begin", "rinsed"):
            self.hand("probe", place="out")
            self.hand("fill")
            self.hand("probe", place="cup")
            self.hand("lid", on=True)
            self.hand("stir")
            self.act(act=act)
        elif act == "portion_added":
            which = state["repeat"], state["portion"] + 1
            if which not in self.missed | self.poured:
                self.pour(state["plan"]["portions"]["volume_cm3"])
                self.poured.add(which)
            self.act(act=act, portion=which[1])
            self.hand("stir")
            self.hand("lid", on=True)
