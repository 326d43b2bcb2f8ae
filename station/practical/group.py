"""What the group may say in whatever state the practical is: its label, notes, its own end-point, another's set."""

import itertools
from collections.abc import Callable

from station.practical import events as e
from station.practical.acts import Act, ActRefused, OwnLine
from station.practical.events.cup import PlacedLine
from station.practical.readings_text import readings_from_text
from station.practical.state import State, Step
from station.practical.typed import check_own_change, check_own_volume
from station.words import say

Events = tuple[e.Event, ...]
MOST_NOTES = 50
MOST_READINGS = 200
"""Of another group, in all its repeats: three of sixty portions, the most that a plan has."""


def group_events(_: State, act: Act) -> Events:
    """Give the group a label, or take it away."""
    label = (act.label or "").strip()
    return (e.GroupNamed(label or None, act.key),)


def note_events(state: State, act: Act) -> Events:
    """Keep a note. Raises ActRefused without a text, or when there are very many."""
    if act.text is None or not act.text.strip():
        raise ActRefused("no_text", say("refusal-write-note"))
    if len(state.notes) >= MOST_NOTES:
        raise ActRefused("too_many_notes", say("refusal-notes-enough", count=MOST_NOTES))
    return (e.NoteWritten(len(state.notes) + 1, act.text.strip(), act.repeat, act.portion, act.key),)


def note_withdrawn_events(state: State, act: Act) -> Events:
    """Take a note back."""
    if not any(each.id == act.note and not each.withdrawn for each in state.notes):
        raise ActRefused("no_such_note", say("refusal-no-such-note"))
    return (e.NoteWithdrawn(act.note or 0, act.key),)


def own_reading_events(state: State, act: Act) -> Events:
    """Commit to what was read off the own lines, or say why nothing could be; final once the results are seen."""
    if state.step is not Step.DONE:
        raise ActRefused("not_now", say("refusal-finish-first"))
    if not state.has_curve:
        raise ActRefused("no_readings", say("refusal-nothing-to-read"))
    if state.own_reading is not None and state.results_shown:
        raise ActRefused("already_read", say("refusal-own-reading-stands"))
    if act.reason is None and act.end_point_cm3 is None and act.change_c is None:
        raise ActRefused("no_reason", say("refusal-say-why-not-read"))
    if act.reason is None and not state.past_turn:
        raise ActRefused("no_turn", say("refusal-not-turned-yet"))
    check_own_volume(state, act)
    check_own_change(state, act)
    before, after = _placed(act.before), _placed(act.after)
    return (e.EndPointRead(act.end_point_cm3, act.change_c, before, after, act.key, act.reason),)


def _placed(line: OwnLine | None) -> PlacedLine | None:
    return None if line is None else {"slope_c_cm3": line.slope_c_cm3, "intercept_c": line.intercept_c}


def may_sketch(state: State) -> bool:
    """Whether the expected curve can be drawn, or drawn anew: until the first portion is in."""
    return state.plan.sketches and state.adopted is None and not any(each.portions for each in state.repeats)


def sketch_events(state: State, act: Act) -> Events:
    """Keep the curve that the group expects. Raises ActRefused once there is a portion, or without a curve."""
    if not may_sketch(state):
        raise ActRefused("not_now", say("refusal-sketch-not-now"))
    points = act.points or []
    if len(points) < 2 or any(here[0] >= after[0] for here, after in itertools.pairwise(points)):
        raise ActRefused("no_sketch", say("refusal-sketch-empty"))
    return (e.CurveSketched([list(each) for each in points], act.key),)


def adopt_events(state: State, act: Act) -> Events:
    """Work on another group's readings; the own ones stay in the record."""
    if state.running is not None:
        raise ActRefused("under_way", say("refusal-finish-repeat"))
    if not state.plan.adopts:
        raise ActRefused("not_here", say("refusal-adopt-portions-only"))
    label = (act.label or "").strip()
    if not label:
        raise ActRefused("no_label", say("refusal-adopt-label"))
    if not act.csv:
        raise ActRefused("no_readings", say("refusal-adopt-choose-file"))
    try:
        repeats = readings_from_text(act.csv)
    except ValueError as error:
        raise ActRefused("bad_readings", say("refusal-adopt-unusable", reason=str(error))) from None
    count = sum(len(each.readings) for each in repeats)
    if count > MOST_READINGS:
        raise ActRefused("too_many_readings", say("refusal-adopt-too-many", count=count, most=MOST_READINGS))
    rows = [(float(each.repeat), row.volume_cm3, row.temperature_c) for each in repeats for row in each.readings]
    return (e.SetAdopted(label, rows, act.key),)


def adopt_returned_events(state: State, act: Act) -> Events:
    """Work on the own readings again."""
    if state.adopted is None:
        raise ActRefused("not_now", say("refusal-nothing-adopted"))
    return (e.SetReturned(act.key),)


def call_events(state: State, act: Act) -> Events:
    """Ask for the teacher, or say that nobody need come any more."""
    if act.act == "call_over":
        return call_over_events(state, None, act.key)
    if state.called_s is not None:
        raise ActRefused("not_now", say("refusal-called-already"))
    return (e.TeacherCalled(act.key),)


def call_over_events(state: State, by: str | None, key: str | None) -> Events:
    """Return the end of a call for the teacher; `by` is staff's role, None the group."""
    if state.called_s is None:
        raise ActRefused("not_now", say("refusal-not-called"))
    return (e.CallEnded(by, key),)


ANYWHERE: dict[str, Callable[[State, Act], Events]] = {
    "group": group_events,
    "note": note_events,
    "note_withdrawn": note_withdrawn_events,
    "own_reading": own_reading_events,
    "sketch": sketch_events,
    "adopt": adopt_events,
    "adopt_returned": adopt_returned_events,
    "call_teacher": call_events,
    "call_over": call_events,
}
"""Acts that no state forbids by itself; each refuses what makes no sense."""


def possible_anywhere(state: State) -> tuple[str, ...]:
    """Return which of these acts make sense now."""
    open_ = ["group", "note"]
    if any(not each.withdrawn for each in state.notes):
        open_.append("note_withdrawn")
    if state.step is Step.DONE and state.has_curve and not (state.results_shown and state.own_reading is not None):
        open_.append("own_reading")
    if may_sketch(state):
        open_.append("sketch")
    if state.running is None and state.plan.adopts:
        open_.append("adopt")
    if state.adopted is not None:
        open_.append("adopt_returned")
    open_.append("call_teacher" if state.called_s is None else "call_over")
    return tuple(open_)
