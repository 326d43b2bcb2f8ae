"""The board: what each bench's events add up to, as tiles that a teacher takes in at a glance. Knows no broker.

Nothing on a tile is a result: the board may hang on the wall before results are shown.
"""

from collections import deque
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from statistics import median

from station.practical import events as e
from station.practical.fold import fold
from station.practical.questions import open_questions
from station.practical.state import State, Step
from station.room.bench_time import Pacer
from station.room.contract import Tile
from station.room.curves import Curve, changes_of, curve_of, curve_to, grown, odd_of
from station.room.needs import Around, Need, Strip, reasons
from station.room.places import seated

# How long the class takes for each step, and how far it has come: what one bench is held against.


REMEMBERED = 300
ENOUGH = 5
USUAL_S = {Step.START: 60.0, Step.POUR: 20.0, Step.SETTLE: 50.0, Step.RINSE: 90.0}
"""Before the class has shown it: engineering judgement, no source."""


@dataclass
class Pace:
    """The newest durations of each step over all benches, in bench seconds."""

    _lasted_s: dict[Step, deque[float]] = field(default_factory=dict)

    def learn(self, before: State, after: State, time_s: float) -> None:
        """Take note of a step that ended at this bench time."""
        if after.step is before.step or before.step not in USUAL_S or after.step is Step.PAUSED:
            return
        lasted = self._lasted_s.setdefault(before.step, deque(maxlen=REMEMBERED))
        lasted.append(max(0.0, time_s - before.step_since_s))

    def usual_s(self, step: Step) -> float | None:
        """Return how long this step usually takes, in s; None where nothing is usual."""
        known = self._lasted_s.get(step, ())
        return median(known) if len(known) >= ENOUGH else USUAL_S.get(step)


def portions_done(state: State) -> int:
    """Return how many portions of the whole practical are in; all of them once it is done."""
    planned = state.plan.cups * state.plan.count
    if state.step is Step.DONE:
        return planned
    counted = [repeat for repeat in state.repeats if repeat.counts]
    return min(planned, sum(min(len(repeat.portions), state.plan.count) for repeat in counted))


def usual_progress(shares: Iterable[float]) -> float:
    """Return the class's progress: the median of the benches' shares of their practicals; 0 without any."""
    known = list(shares)
    return median(known) if known else 0.0


@dataclass(frozen=True)
class Heard:
    """What came over the lossy way: the newest temperature in °C, and how long ago anything was heard, in s."""

    temperature_c: float | None
    age_s: float


@dataclass
class BenchNow:
    """One bench as its events leave it; `time_s` is its newest bench time, `began` the event of its practical.

    `clock` says how its time goes on between events.
    """

    journal: str = ""
    state: State = field(default_factory=State)
    seq: int = 0
    began: int = 0
    time_s: float = 0.0
    boot: str = ""
    unreadable: bool = False
    clock: Pacer = field(default_factory=Pacer)
    _drawn: tuple[object, Curve] = (None, ())

    def curve(self) -> Curve:
        """Return the curve so far; drawn anew only when it has grown."""
        key = grown(self.state)
        if self._drawn[0] != key:
            self._drawn = (key, curve_of(self.state))
        return self._drawn[1]


@dataclass
class Board:
    """All benches. `take` their events in order; `tiles` says how each stands, `needing` who needs somebody.

    `places` are those that are kept; who has none is given one at the first look. `boot` is this machine's own: a bench
    in it has the room's very clock.
    """

    boot: str = ""
    benches: dict[str, BenchNow] = field(default_factory=dict)
    names: dict[str, str] = field(default_factory=dict)
    pace: Pace = field(default_factory=Pace)
    places: dict[str, int] = field(default_factory=dict)
    _strip: Strip = field(default_factory=Strip)
    _odd: tuple[dict[str, tuple[float, ...]], set[str]] = field(default_factory=lambda: ({}, set()))

    def take(self, bench: str, journal: str, happened: Iterable[e.Stamped], now_s: float | None = None) -> None:
        """Take a bench's next events in; what does not fit together is noted and changes nothing else.

        `now_s`: when they came, by the room's monotonic clock; None for what was kept before.
        """
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
            now.clock.learn(stamped, now_s, same_clock=stamped.boot == self.boot)
            now.seq, now.boot, now.time_s = stamped.seq, stamped.boot, max(now.time_s, stamped.time_s)

    def tiles(self, now_s: float, heard: Mapping[str, Heard], troubles: Mapping[str, str]) -> dict[str, Tile]:
        """Return a tile for each bench that was heard or is in trouble, in the order of their places.

        `now_s` is the room's monotonic time. Where nobody was heard, all that are known have one.
        """
        present = {*heard, *troubles} or set(self.benches)
        known = {bench: self.benches.get(bench) or BenchNow() for bench in present}
        self.places.update(seated(self.places, known))
        progress = {bench: _progress(each.state) for bench, each in known.items()}
        usual = usual_progress(progress[bench] for bench, each in known.items() if each.state.chosen)
        changes = {bench: found for bench, each in known.items() if (found := changes_of(each.state)) is not None}
        if changes != self._odd[0]:
            self._odd = (changes, odd_of(changes))
        odd = self._odd[1]
        tiles = {}
        for bench in sorted(known, key=self.places.__getitem__):
            around = (now_s, progress[bench], usual, bench in odd)
            tiles[bench] = self._tile(bench, known[bench], around, heard.get(bench), troubles.get(bench))
        return tiles

    def needing(self, tiles: Mapping[str, Tile]) -> tuple[str, ...]:
        """Return who of these needs somebody, the newest last."""
        return self._strip.now({bench: tile["need"] for bench, tile in tiles.items()})

    def _tile(
        self,
        bench: str,
        now: BenchNow,
        around: tuple[float, float, float, bool],
        heard: Heard | None,
        trouble: str | None,
    ) -> Tile:
        state, (now_s, progress, usual, odd) = now.state, around
        time_s = max(now.time_s, now.clock.time_s(now_s))
        waits_s, usual_s = max(0.0, time_s - state.step_since_s), self.pace.usual_s(state.step)
        silent_s = None if heard is None else heard.age_s
        known = Around(waits_s, usual_s, silent_s, progress, usual, trouble, now.unreadable, odd)
        why = reasons(state, known)
        return {
            "bench": bench,
            "place": self.places[bench],
            "name": state.name or self.names.get(bench) or bench,
            "group": state.group,
            "plan": state.plan.name if state.chosen else None,
            "state": state.step if state.chosen else "unknown",
            "repeat": state.repeat_of_planned,
            "repeats_planned": state.plan.cups,
            "portion": state.poured,
            "portions_planned": state.plan.count,
            "progress": round(progress, 3),
            "temperature_c": None if heard is None else heard.temperature_c,
            "age_s": None if heard is None else round(heard.age_s, 1),
            "waits_s": round(waits_s, 2),
            "usual_s": None if usual_s is None else round(usual_s),
            "speed": round(now.clock.speed, 2),
            "held": state.held,
            "called": state.called_s is not None,
            "curve": list(now.curve()),
            "curve_to": curve_to(state),
            "questions": [{"id": each["id"], "text": each["text"]} for each in open_questions(state)],
            "probe": "typed" if state.typed else state.probe,
            "silent": bool(state.silent),
            "results_shown": state.results_shown,
            "repeats": [
                {"repeat": each.repeat, "status": each.status, "restorable": each.restorable} for each in state.repeats
            ],
            "need": max((each.need for each in why), default=Need.FINE).value,
            "reasons": [each.shown() for each in why],
        }


def _progress(state: State) -> float:
    return portions_done(state) / (state.plan.cups * state.plan.count)
