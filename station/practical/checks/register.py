"""The probe register, the correction in use and the check under way: a fold of its own over the same events."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field, fields, replace
from typing import Any

from station.analysis.probe.correction import Correction, CorrectionRefused, through_two
from station.practical import events as e
from station.practical.events.bench import CheckKind

CHECK_KEEPS_S = 1500.0
"""How much of the trace of a check is kept."""


@dataclass(frozen=True)
class InUse:
    """The correction that is added to what a probe says, and where it comes from.

    `check` is its kind, `number` the check's; `wall` and `clock` say when that was, as far as the clock was right.
    """

    probe_id: str | None
    correction: Correction
    check: str
    number: int | None
    wall: str
    clock: str


@dataclass(frozen=True)
class Checked:
    """A saved check of a probe."""

    number: int
    check: CheckKind
    probe_id: str | None
    values: Mapping[str, Any]
    wall: str
    clock: str
    withdrawn: bool = False

    @property
    def correction(self) -> Correction | None:
        """The correction that it found, if it was for one."""
        found = self.values.get("correction")
        return None if found is None else correction_from(found)


@dataclass(frozen=True)
class Cup:
    """A saved cup test."""

    label: str
    values: Mapping[str, Any]
    wall: str
    clock: str


@dataclass(frozen=True)
class Tally:
    """Samples of a probe and how many of them were bad, by kind."""

    samples: int = 0
    bad: Mapping[str, int] = field(default_factory=dict)

    def with_sample(self, bad: str | None) -> "Tally":
        """Return the tally with one more sample, of this kind of fault if any."""
        return self.with_more(1, {bad: 1}) if bad is not None else Tally(self.samples + 1, self.bad)

    def with_more(self, samples: int, bad: Mapping[str, int]) -> "Tally":
        """Return the tally with these added."""
        kinds = {*self.bad, *bad}
        return Tally(self.samples + samples, {kind: self.bad.get(kind, 0) + bad.get(kind, 0) for kind in sorted(kinds)})


@dataclass(frozen=True)
class Entry:
    """A probe in the register. `fresh` counts since the newest tally, `counted` up to it."""

    probe_id: str
    against: tuple[str, ...] | None = None
    counted: Tally = Tally()
    fresh: Tally = Tally()

    @property
    def tally(self) -> Tally:
        """All its samples."""
        return self.counted.with_more(self.fresh.samples, self.fresh.bad)


@dataclass(frozen=True)
class CheckStep:
    """A step that was done in a check, and when."""

    step: str
    values: Mapping[str, Any]
    time_s: float


@dataclass(frozen=True)
class Check:
    """The check under way. Its samples (time_s, temperature_c or None) are as the probe said them."""

    check: CheckKind
    probe_id: str | None
    values: Mapping[str, Any]
    begun_s: float
    by: str
    steps: tuple[CheckStep, ...] = ()
    samples: tuple[tuple[float, float | None], ...] = ()
    found: Mapping[str, Any] | None = None

    def step(self, name: str) -> CheckStep | None:
        """Return the newest step of this name."""
        return next((each for each in reversed(self.steps) if each.step == name), None)


@dataclass(frozen=True)
class Probes:
    """All of it."""

    probe_id: str | None = None
    in_use: InUse | None = None
    entries: tuple[Entry, ...] = ()
    checks: tuple[Checked, ...] = ()
    cups: tuple[Cup, ...] = ()
    check: Check | None = None

    def corrected(self, probe_c: float) -> tuple[float, float]:
        """Return the temperature and the correction in it, for what the probe in use says."""
        if self.in_use is None:
            return probe_c, 0.0
        correction_c = round(self.in_use.correction.of(probe_c), 4)
        return round(probe_c + correction_c, 4), correction_c

    def entry(self, probe_id: str) -> Entry:
        """Return a probe's entry, a new one where it has none."""
        return next((each for each in self.entries if each.probe_id == probe_id), Entry(probe_id))

    def with_entry(self, changed: Entry) -> "Probes":
        """Return the register with this entry in place of the probe's old one."""
        if any(each.probe_id == changed.probe_id for each in self.entries):
            kept = (changed if each.probe_id == changed.probe_id else each for each in self.entries)
            return replace(self, entries=tuple(kept))
        return replace(self, entries=(*self.entries, changed))

    def of(self, probe_id: str | None, *kinds: str) -> Checked | None:
        """Return a probe's newest check of these kinds that was not withdrawn."""
        sound = (each for each in reversed(self.checks) if each.check in kinds and not each.withdrawn)
        return next((each for each in sound if each.probe_id == probe_id), None)

    def best(self) -> InUse | None:
        """Return the correction that is to be used for the probe at work; None where nothing was found.

        The newest line of comparisons; else the line through ice and boiling point; else the ice point's offset.
        A boiling point alone is too far from where a practical is.
        """
        if self.probe_id is None:
            return None
        line, ice, boiling = (self.of(self.probe_id, kind) for kind in ("comparison", "ice", "boiling"))
        if line is not None and line.correction is not None:
            return InUse(self.probe_id, line.correction, line.check, line.number, line.wall, line.clock)
        if ice is None or ice.correction is None:
            return None
        if boiling is not None and boiling.correction is not None:
            newer = max(ice, boiling, key=lambda each: each.number)
            try:
                both = through_two(ice.correction, boiling.correction)
            except CorrectionRefused:
                both = None
            if both is not None:
                return InUse(self.probe_id, both, "ice and boiling", newer.number, newer.wall, newer.clock)
        return InUse(self.probe_id, ice.correction, ice.check, ice.number, ice.wall, ice.clock)


def correction_from(values: Mapping[str, Any]) -> Correction:
    """Return the correction of its JSON values; keys of a newer station are left alone."""
    names = {each.name for each in fields(Correction)}
    return Correction(**{name: value for name, value in values.items() if name in names})


def in_use_events(probes: Probes) -> tuple[e.Event, ...]:
    """Return the event that makes the right correction the one in use; none when it is."""
    best = probes.best()
    if best == probes.in_use:
        return ()
    if best is None:
        return (e.ProbeInUse(probes.probe_id),)
    body = {each.name: getattr(best.correction, each.name) for each in fields(Correction)}
    return (e.ProbeInUse(best.probe_id, body, best.check, best.number, best.wall or None, best.clock or None),)


def looked_events(probes: Probes, probe_id: str, against: Sequence[str]) -> tuple[e.Event, ...]:
    """Return what follows once this probe was seen so: a check of another probe is over, its own correction is used."""
    looked = e.ProbeLookedAt(probe_id, list(against))
    events: tuple[e.Event, ...] = (looked,)
    if probes.check is not None and probes.check.probe_id not in (None, probe_id):
        events = (e.ProbeCheckDiscarded("another probe"), looked)
    after = fold_probes(probes, e.Stamped(0, "", 0.0, 0.0, "", "", looked))
    return (*events, *in_use_events(after))


def tally_events(probes: Probes) -> tuple[e.Event, ...]:
    """Return the tallies that are due before a new practical begins."""
    due = (each for each in probes.entries if each.fresh.samples)
    return tuple(e.ProbeTallied(each.probe_id, each.fresh.samples, dict(each.fresh.bad)) for each in due)


def fold_probes(probes: Probes, stamped: e.Stamped) -> Probes:
    """Return the register after this event; the very same when it says nothing of probes."""
    change = _CHANGES.get(type(stamped.event))
    return probes if change is None else change(probes, stamped.event, stamped)


def _sample(probes: Probes, event: e.SampleTaken, stamped: e.Stamped) -> Probes:
    if probes.probe_id is not None:
        entry = probes.entry(probes.probe_id)
        # What the gate refused was read well: right after a check a hot probe is no fault.
        fresh = entry.fresh.with_sample(None if event.rejected_c is not None else event.bad)
        probes = probes.with_entry(Entry(entry.probe_id, entry.against, entry.counted, fresh))
    check = probes.check
    if check is None:
        return probes
    kept = tuple(each for each in check.samples if each[0] > stamped.time_s - CHECK_KEEPS_S)
    return replace(probes, check=replace(check, samples=(*kept, (stamped.time_s, event.temperature_c))))


def _started(probes: Probes, event: e.StationStarted, _: e.Stamped) -> Probes:
    return replace(probes, probe_id=event.probe_id)


def _plan_chosen(probes: Probes, _: e.PlanChosen, __: e.Stamped) -> Probes:
    """A practical begins: which correction it uses is said anew, so that its own events tell all of it."""
    return replace(probes, in_use=None, check=None)


def _looked_at(probes: Probes, event: e.ProbeLookedAt, _: e.Stamped) -> Probes:
    changed = replace(probes.entry(event.probe_id), against=tuple(event.against))
    return replace(probes.with_entry(changed), probe_id=event.probe_id)


def _tallied(probes: Probes, event: e.ProbeTallied, _: e.Stamped) -> Probes:
    entry = probes.entry(event.probe_id)
    counted = entry.counted.with_more(event.samples, event.bad)
    return probes.with_entry(replace(entry, counted=counted, fresh=Tally()))


def _in_use(probes: Probes, event: e.ProbeInUse, stamped: e.Stamped) -> Probes:
    if event.correction is None:
        return replace(probes, in_use=None, probe_id=event.probe_id)
    in_use = InUse(
        event.probe_id,
        correction_from(event.correction),
        event.check or "",
        event.number,
        event.checked_wall or stamped.wall,
        event.checked_clock or stamped.clock,
    )
    return replace(probes, in_use=in_use, probe_id=event.probe_id)


def _begun(probes: Probes, event: e.ProbeCheckBegun, stamped: e.Stamped) -> Probes:
    check = Check(event.check, event.probe_id, event.values, stamped.time_s, event.by)
    return replace(probes, check=check)


def _step(probes: Probes, event: e.ProbeCheckStep, stamped: e.Stamped) -> Probes:
    if probes.check is None:
        return probes
    step = CheckStep(event.step, event.values, stamped.time_s)
    # What was found is found anew from all steps.
    return replace(probes, check=replace(probes.check, steps=(*probes.check.steps, step), found=None))


def _found(probes: Probes, event: e.ProbeCheckFound, _: e.Stamped) -> Probes:
    return probes if probes.check is None else replace(probes, check=replace(probes.check, found=event.values))


def _discarded(probes: Probes, _: e.ProbeCheckDiscarded, __: e.Stamped) -> Probes:
    return replace(probes, check=None)


def _checked(probes: Probes, event: e.ProbeChecked, stamped: e.Stamped) -> Probes:
    checked = Checked(event.number, event.check, event.probe_id, event.values, stamped.wall, stamped.clock)
    if event.probe_id is not None:
        probes = probes.with_entry(probes.entry(event.probe_id))
    return replace(probes, checks=(*probes.checks, checked), check=None)


def _withdrawn(probes: Probes, event: e.ProbeCheckWithdrawn, _: e.Stamped) -> Probes:
    kept = (replace(each, withdrawn=each.withdrawn or each.number == event.number) for each in probes.checks)
    return replace(probes, checks=tuple(kept))


def _cup_tested(probes: Probes, event: e.CupTested, stamped: e.Stamped) -> Probes:
    cup = Cup(event.label, event.values, stamped.wall, stamped.clock)
    return replace(probes, cups=(*probes.cups, cup), check=None)


_CHANGES: dict[type[e.Event], Callable[[Probes, Any, e.Stamped], Probes]] = {
    e.SampleTaken: _sample,
    e.StationStarted: _started,
    e.PlanChosen: _plan_chosen,
    e.ProbeLookedAt: _looked_at,
    e.ProbeTallied: _tallied,
    e.ProbeInUse: _in_use,
    e.ProbeCheckBegun: _begun,
    e.ProbeCheckStep: _step,
    e.ProbeCheckFound: _found,
    e.ProbeCheckDiscarded: _discarded,
    e.ProbeChecked: _checked,
    e.ProbeCheckWithdrawn: _withdrawn,
    e.CupTested: _cup_tested,
}

LASTING = (
    e.StationStarted.kind,
    e.ProbeLookedAt.kind,
    e.ProbeTallied.kind,
    e.ProbeChecked.kind,
    e.ProbeCheckWithdrawn.kind,
    e.CupTested.kind,
)
"""Kinds of events that the register of the practicals before is made of."""
