"""The rules of the table: what each act at the bench leads to, or why it is refused."""

from typing import TypeAlias

from station.practical import events as e
from station.practical.acts import Act, ActRefused
from station.practical.settling import after_settled, reading_as_it_is
from station.practical.state import Repeat, State, Step
from station.practical.typed import sure_mass_g, sure_volume_cm3
from station.words import say

Events: TypeAlias = tuple[e.Event, ...]

MOST_REPEATS = 50
"""Repeats of one practical, those set aside too: every screen is sent all of them. A plan has ten at most."""


def begin(state: State, act: Act, _: float) -> Events:
    """Begin the first repeat."""
    return _begun(state, act)


def alkali_temperature(state: State, act: Act, _: float) -> Events:
    """Take the alkali's temperature: typed, or by dipping the probe."""
    if act.temperature_c is not None:
        # Half a division of a thermometer read to 1 °C, as a rectangular limit (GUM 4.3.7).
        return (e.AlkaliMeasured(act.temperature_c, 0.29, "typed", act.key),)
    if state.typed:
        raise ActRefused("no_probe", say("refusal-type-alkali"))
    return (e.AlkaliDipBegun(act.key),)


def alkali_typed(state: State, act: Act, time_s: float) -> Events:
    """Take a typed temperature while the probe is dipped."""
    if act.temperature_c is None:
        raise ActRefused("under_way", say("refusal-alkali-being-taken"))
    return alkali_temperature(state, act, time_s)


def added(state: State, act: Act, time_s: float) -> Events:
    """A portion that was poured is a fact, whether it was asked for or not."""
    repeat, portion = _running(state), _meant(act)
    expected = state.poured + 1
    if portion < expected:
        raise ActRefused("already_in", say("refusal-portion-already-in", portion=portion))
    if portion > expected:
        raise ActRefused("wrong_portion", say("refusal-portion-comes-next", expected=expected, portion=portion))
    if portion > state.plan.count:
        raise ActRefused("wrong_portion", say("refusal-plan-ends", portion=state.plan.count))
    # By their own judgement students may add without reading: nothing is early, and nothing is read for them.
    early = state.prompted != portion and not state.plan.own_judgement
    volume_cm3 = state.cup_plan.portion_cm3 if act.volume_cm3 is None else sure_volume_cm3(state, repeat, portion, act)
    mass_g = None if act.mass_g is None else sure_mass_g(state, act)
    added = e.PortionAdded(repeat.repeat, portion, volume_cm3, early, act.by, act.key, mass_g, act.places)
    # Where nothing has to settle there is a temperature before, whoever decided.
    before = reading_as_it_is(repeat, portion - 1, time_s) if early or not state.plan.settles else ()
    woken = (e.Resumed(),) if state.step is Step.PAUSED and not state.held else ()
    return (*woken, *before, added)


def undone(state: State, act: Act, _: float) -> Events:
    """Take the newest portion back."""
    repeat, portion = _running(state), _meant(act)
    if state.poured == 0:
        raise ActRefused("wrong_portion", say("refusal-nothing-to-take-back"))
    if portion != state.poured:
        raise ActRefused("wrong_portion", say("refusal-only-newest", portion=state.poured))
    return (e.PortionUndone(repeat.repeat, portion, act.key),)


def volume(state: State, act: Act, _: float) -> Events:
    """Correct a portion's volume."""
    repeat, portion = _with_portion(state, act), _meant(act)
    if act.mass_g is not None:
        mass_g = sure_mass_g(state, act)
        return (e.PortionVolumeCorrected(repeat.repeat, portion, 0.0, act.key, mass_g, act.places),)
    volume_cm3 = sure_volume_cm3(state, repeat, portion, act)
    return (e.PortionVolumeCorrected(repeat.repeat, portion, volume_cm3, act.key, None, act.places),)


def unsure(state: State, act: Act, _: float) -> Events:
    """Doubt a portion."""
    return (e.PortionUnsure(_with_portion(state, act).repeat, _meant(act), act.key, act.reason),)


def sure(state: State, act: Act, _: float) -> Events:
    """Take a doubt back."""
    start = _meant_repeat(state, act) if act.portion == 0 else None
    repeat, portion = start or _with_portion(state, act), _meant(act)
    if not repeat.unsure(portion):
        raise ActRefused("not_in_doubt", say("refusal-not-in-doubt", portion=portion, repeat=repeat.repeat))
    return (e.PortionSure(repeat.repeat, portion, act.key),)


def set_aside(state: State, act: Act, _: float) -> Events:
    """Set an ended repeat aside."""
    repeat = _meant_repeat(state, act)
    if not repeat.counts:
        raise ActRefused("already_aside", say("refusal-set-aside-already", repeat=repeat.repeat))
    if act.reason is None:
        raise ActRefused("no_reason", say("refusal-say-why-set-aside"))
    return (e.RepeatSetAside(repeat.repeat, act.reason, act.key),)


def restored(state: State, act: Act, _: float) -> Events:
    """Let a repeat that was set aside count again."""
    return counts_again(state, _meant_repeat(state, act), act.key)


def counts_again(state: State, repeat: Repeat, key: str | None) -> Events:
    """Return what follows when this repeat counts again. Raises ActRefused."""
    if not repeat.restorable:
        raise ActRefused("not_aside", say("refusal-not-set-aside", repeat=repeat.repeat))
    done = [*(each.cup for each in state.counted), repeat.cup]
    enough = state.step is Step.RINSE and state.plan.is_complete(done)
    return (e.RepeatRestored(repeat.repeat, key), *((e.PracticalEnded(),) if enough else ()))


def rinsed(state: State, act: Act, _: float) -> Events:
    """Begin the next repeat."""
    return _begun(state, act)


def one_more(state: State, act: Act, _: float) -> Events:
    """Set the cup up for another repeat than planned; what was done stays as it is until that begins."""
    _room_for_one(state)
    return (e.RepeatAsked(act.key),)


def restarted(state: State, act: Act, _: float) -> Events:
    """Set the repeat aside that is or was under way, and begin it again."""
    repeat = state.current
    if repeat is None or not repeat.counts:
        raise ActRefused("not_now", say("refusal-nothing-to-start-again"))
    if act.reason is None:
        raise ActRefused("no_reason", say("refusal-say-why-start-again"))
    return (e.RepeatSetAside(repeat.repeat, act.reason, act.key),)


def pause(_: State, act: Act, __: float) -> Events:
    """Wait."""
    return (e.Paused(act.key),)


def resume(state: State, act: Act, _: float) -> Events:
    """Go on. Only staff end a pause of theirs."""
    _not_held(state)
    return going_on(state, act.key)


def going_on(state: State, key: str | None) -> Events:
    """Go on, and say what has become due meanwhile."""
    return (e.Resumed(key), *(after_settled(state) if state.resume_to is Step.SETTLE else ()))


def finish(state: State, act: Act, time_s: float) -> Events:
    """End with what there is: the newest portion keeps the temperature it has."""
    _not_held(state)
    repeat = state.running
    if repeat is None:
        # One more than planned was asked for, and is left out after all: nothing planned is missing.
        return (e.PracticalEnded(not state.complete, act.key),)
    read = any(reading.portion == state.poured for reading in repeat.readings)
    last = () if read else reading_as_it_is(repeat, state.poured, time_s)
    return (*last, e.RepeatEnded(repeat.repeat), e.PracticalEnded(True, act.key))


def finish_undone(state: State, act: Act, _: float) -> Events:
    """Go on after the end, as long as nothing was read off what there was: a repeat that was broken off, or another."""
    if state.own_reading is not None:
        raise ActRefused("not_now", say("refusal-finish-stands"))
    return (e.FinishUndone(act.key),)


def may_go_on(state: State) -> bool:
    """Whether there is an early finish to take back."""
    return state.step is Step.DONE and state.ended_early and state.own_reading is None


def _room_for_one(state: State) -> None:
    if len(state.repeats) >= MOST_REPEATS:
        raise ActRefused("too_many_repeats", say("refusal-repeats-enough", count=MOST_REPEATS))


def _begun(state: State, act: Act) -> Events:
    _room_for_one(state)
    return (e.RepeatBegun(len(state.repeats) + 1, act.key, state.cup),)


def _not_held(state: State) -> None:
    if state.held:
        raise ActRefused("paused_by_staff", say("refusal-paused-by", role=state.paused_by or ""))


def _running(state: State) -> Repeat:
    if state.running is None:
        raise ActRefused("not_now", say("refusal-no-repeat-under-way"))
    return state.running


def _meant(act: Act) -> int:
    if act.portion is None:
        raise ActRefused("no_portion", say("refusal-say-which-portion"))
    return act.portion


def _meant_repeat(state: State, act: Act) -> Repeat:
    number = act.repeat or len(state.repeats)
    if not 1 <= number <= len(state.repeats):
        raise ActRefused("wrong_repeat", say("refusal-no-repeat", repeat=number))
    return state.repeats[number - 1]


def _with_portion(state: State, act: Act) -> Repeat:
    repeat, portion = _meant_repeat(state, act), _meant(act)
    if not any(each.portion == portion for each in repeat.portions):
        raise ActRefused("wrong_portion", say("refusal-portion-not-added", portion=portion, repeat=repeat.repeat))
    return repeat
