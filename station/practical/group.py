"""What the group may say in whatever state the practical is: its label, notes, its own end-point, another's set."""

from collections.abc import Callable

from station.practical import events as e
from station.practical.acts import Act, ActRefused
from station.practical.readings_text import readings_from_text
from station.practical.state import State, Step

Events = tuple[e.Event, ...]
MOST_NOTES = 50


def group_events(_: State, act: Act) -> Events:
    """Give the group a label, or take it away."""
    label = (act.label or "").strip()
    return (e.GroupNamed(label or None, act.key),)


def note_events(state: State, act: Act) -> Events:
    """Keep a note. Raises ActRefused without a text, or when there are very many."""
    if act.text is None or not act.text.strip():
        raise ActRefused("no_text", "Write the note in text.")
    if len(state.notes) >= MOST_NOTES:
        raise ActRefused("too_many_notes", f"There are {MOST_NOTES} notes already.")
    return (e.NoteWritten(len(state.notes) + 1, act.text.strip(), act.repeat, act.portion, act.key),)


def note_withdrawn_events(state: State, act: Act) -> Events:
    """Take a note back."""
    if not any(each.id == act.note and not each.withdrawn for each in state.notes):
        raise ActRefused("no_such_note", "There is no such note, or it was withdrawn already.")
    return (e.NoteWithdrawn(act.note or 0, act.key),)


def own_reading_events(state: State, act: Act) -> Events:
    """Commit to what was read off the own lines; final once the results are seen."""
    if state.step is not Step.DONE:
        raise ActRefused("not_now", "First finish the practical, then read your own lines.")
    if state.own_reading is not None and state.results_shown:
        raise ActRefused("already_read", "Your own reading stands: the results have been shown.")
    lines = [None if line is None else line.model_dump() for line in (act.before, act.after)]
    return (e.EndPointRead(act.end_point_cm3, act.change_c, lines[0], lines[1], act.key),)


def adopt_events(state: State, act: Act) -> Events:
    """Work on another group's readings; the own ones stay in the record."""
    if state.running is not None:
        raise ActRefused("under_way", "Finish the repeat under way first.")
    if state.plan.kind != "portions":
        raise ActRefused("not_here", "Only the readings of a practical with portions can be taken over.")
    label = (act.label or "").strip()
    if not label:
        raise ActRefused("no_label", "Say whose readings they are, in label: for example the other bench's name.")
    if not act.csv:
        raise ActRefused("no_readings", "Choose the other bench's readings file.")
    try:
        repeats = readings_from_text(act.csv)
    except ValueError as error:
        raise ActRefused("bad_readings", f"These readings cannot be used: {error}.") from None
    rows = [(float(each.repeat), row.volume_cm3, row.temperature_c) for each in repeats for row in each.readings]
    return (e.SetAdopted(label, rows, act.key),)


def adopt_returned_events(state: State, act: Act) -> Events:
    """Work on the own readings again."""
    if state.adopted is None:
        raise ActRefused("not_now", "No other group's readings are in use.")
    return (e.SetReturned(act.key),)


ANYWHERE: dict[str, Callable[[State, Act], Events]] = {
    "group": group_events,
    "note": note_events,
    "note_withdrawn": note_withdrawn_events,
    "own_reading": own_reading_events,
    "adopt": adopt_events,
    "adopt_returned": adopt_returned_events,
}
"""Acts that no state forbids by itself; each refuses what makes no sense."""


def possible_anywhere(state: State) -> tuple[str, ...]:
    """Return which of these acts make sense now."""
    open_ = ["group", "note"]
    if any(not each.withdrawn for each in state.notes):
        open_.append("note_withdrawn")
    if state.step is Step.DONE and not (state.results_shown and state.own_reading is not None):
        open_.append("own_reading")
    if state.running is None and state.plan.kind == "portions":
        open_.append("adopt")
    if state.adopted is not None:
        open_.append("adopt_returned")
    return tuple(open_)
