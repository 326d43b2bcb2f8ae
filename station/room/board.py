"""The board: what each bench's events add up to, as tiles that a teacher takes in at a glance. Knows no broker.

Nothing on a tile is a result: the board may hang on the wall before results are shown.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from typing import Any

from station.practical import events as e
from station.practical.fold import fold
from station.practical.questions import open_questions
from station.practical.state import State
from station.room.pace import Pace, portions_done, usual_progress
from station.room.places import Places, arranged
from station.room.urgency import Around, Need, reasons

Tile = dict[str, Any]


@dataclass(frozen=True)
class Heard:
    """What came over the lossy way: the newest temperature in °C, and how long ago anything was heard, in s."""

    temperature_c: float | None
    age_s: float


@dataclass
class BenchNow:
    """One bench as its events leave it; `time_s` is its newest bench time, `began` the event of its practical."""

    journal: str = ""
    state: State = field(default_factory=State)
    seq: int = 0
    began: int = 0
    time_s: float = 0.0
    boot: str = ""
    unreadable: bool = False


@dataclass
class Board:
    """All benches. `take` their events in order; `tiles` says how each stands."""

    benches: dict[str, BenchNow] = field(default_factory=dict)
    names: dict[str, str] = field(default_factory=dict)
    pace: Pace = field(default_factory=Pace)
    places: Places = field(default_factory=Places)

    def take(self, bench: str, journal: str, happened: Iterable[e.Stamped]) -> None:
        """Take a bench's next events in; what does not fit together is noted and changes nothing else."""
        now = self.benches.get(bench)
        if now is None or now.journal != journal:  # a new card, or one that was wiped
            now = self.benches[bench] = BenchNow(journal)
        for stamped in happened:
            if stamped.seq <= now.seq:
                continue
            before = now.state
            try:
                now.state = fold(before, stamped)
            except (LookupError, ValueError, TypeError, AttributeError):
                now.unreadable = True
            else:
                if isinstance(stamped.event, e.PlanChosen):
                    now.unreadable, now.began = False, stamped.seq
                self.pace.learn(before, now.state, stamped.time_s)
            now.seq, now.boot, now.time_s = stamped.seq, stamped.boot, max(now.time_s, stamped.time_s)

    def tiles(self, now_s: float, heard: Mapping[str, Heard], troubles: Mapping[str, str]) -> dict[str, Tile]:
        """Return a tile for each bench that is known in any way, in the order of the places.

        `now_s` is the room's monotonic time.
        """
        known = {**self.benches, **{bench: BenchNow() for bench in (*heard, *troubles) if bench not in self.benches}}
        usual = usual_progress(_progress(each.state) for each in known.values() if each.state.chosen)
        tiles = {
            bench: self._tile(bench, each, usual, heard.get(bench), troubles.get(bench))
            for bench, each in known.items()
        }
        self.places = arranged(self.places, {bench: tile["need"] for bench, tile in tiles.items()}, now_s)
        return {bench: tiles[bench] for bench in self.places.order}

    def _tile(self, bench: str, now: BenchNow, usual: float, heard: Heard | None, trouble: str | None) -> Tile:
        state = now.state
        waits_s, usual_s = max(0.0, now.time_s - state.step_since_s), self.pace.usual_s(state.step)
        silent_s = None if heard is None else heard.age_s
        around = Around(waits_s, usual_s, silent_s, _progress(state), usual, trouble, now.unreadable)
        why = reasons(state, around)
        return {
            "bench": bench,
            "name": state.name or self.names.get(bench) or bench,
            "group": state.group,
            "plan": state.plan.name if state.chosen else None,
            "state": state.step.value if state.chosen else "unknown",
            "repeat": len(state.repeats),
            "repeats_planned": state.plan.repeats,
            "portion": state.poured,
            "portions_planned": state.plan.count,
            "progress": round(_progress(state), 3),
            "temperature_c": None if heard is None else heard.temperature_c,
            "age_s": None if heard is None else round(heard.age_s, 1),
            "waits_s": round(waits_s),
            "usual_s": None if usual_s is None else round(usual_s),
            "questions": [{"id": each["id"], "text": each["text"]} for each in open_questions(state)],
            "probe": "typed" if state.typed else state.probe,
            "silent": bool(state.silent),
            "results_shown": state.results_shown,
            "repeats": [{"repeat": each.repeat, "status": each.status} for each in state.repeats],
            "need": max((each.need for each in why), default=Need.FINE).value,
            "reasons": [each.to_json() for each in why],
        }


def _progress(state: State) -> float:
    return portions_done(state) / (state.plan.repeats * state.plan.count)
