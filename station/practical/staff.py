"""What a teacher or technician may do to a bench, in whatever state the practical is."""

from collections.abc import Callable
from typing import Annotated, Any, Literal

from pydantic import AfterValidator, BaseModel, ConfigDict, Field

from station.chemistry.safety import STRONG_MOL_DM3
from station.practical import events as e
from station.practical.acts import PLAIN_TEXT, ActRefused
from station.practical.checks.acts import (
    CheckKind,
    CheckValues,
    StepName,
    check_begin_events,
    check_discard_events,
    check_save_events,
    check_step_events,
    check_withdraw_events,
)
from station.practical.checks.register import fold_probes, in_use_events, tally_events
from station.practical.group import call_over_events
from station.practical.kinds import plan_from, read_plan
from station.practical.plan import Concentration, Plan, PlanError
from station.practical.problems import in_words
from station.practical.rules import counts_again, going_on
from station.practical.safety import safe, strong_solutions
from station.practical.state import State, Step
from station.words import say

StaffName = Literal[
    "set_aside",
    "restore",
    "pause",
    "resume",
    "quiet",
    "rename",
    "show_results",
    "call_over",
    "choose_plan",
    "check_begin",
    "check_step",
    "check_save",
    "check_discard",
    "check_withdraw",
]


def _plain(text: str) -> str:
    # Controls and direction marks would let one name rearrange the projector's page.
    text = text.strip()
    if not text or not text.isprintable():
        raise ValueError(say("problem-plain-text"))
    return text


class StaffAct(BaseModel):
    """One act of staff. Whether it comes from staff is the server's to know; `by` is what it found."""

    model_config = ConfigDict(extra="forbid", frozen=True)

    act: StaffName
    key: Annotated[str, Field(min_length=1, max_length=80), AfterValidator(_plain)] | None = None
    repeat: Annotated[int, Field(ge=1, le=1000)] | None = None
    reason: Annotated[str, Field(min_length=1, max_length=200), AfterValidator(_plain), in_words(PLAIN_TEXT)] | None = (
        None
    )
    silent: bool | None = None
    shown: bool | None = None
    prepared_mol_dm3: Concentration | None = None
    plan: dict[str, Any] | None = None
    plan_toml: Annotated[str, Field(max_length=12_000)] | None = None
    confirmed: bool = False
    name: Annotated[str, Field(min_length=1, max_length=24), AfterValidator(_plain), in_words(PLAIN_TEXT)] | None = None
    check: CheckKind | None = None
    step: StepName | None = None
    values: CheckValues = CheckValues()
    number: Annotated[int, Field(ge=1, le=100_000)] | None = None
    by: Literal["teacher", "technician"] = "teacher"


def staff_events(state: State, act: StaffAct, time_s: float) -> tuple[e.Event, ...]:
    """Return the events that an act of staff leads to; none when its key was seen before. Raises ActRefused."""
    if act.key is not None and act.key in state.keys:
        return ()
    if act.act.startswith("check_"):
        return _check(state, act, time_s)
    return _OF_PRACTICAL[act.act](state, act)


def _check(state: State, act: StaffAct, time_s: float) -> tuple[e.Event, ...]:
    if act.act == "check_begin":
        return check_begin_events(state, act.check, act.values, act.by, act.key)
    if act.act == "check_step":
        return check_step_events(state, act.step, act.values, time_s, act.key)
    if act.act == "check_save":
        return check_save_events(state, act.values, act.by, act.key)
    if act.act == "check_discard":
        return check_discard_events(state, act.by, act.key)
    return check_withdraw_events(state, act.number, act.by, act.key)


def _rename(_: State, act: StaffAct) -> tuple[e.Event, ...]:
    return (e.BenchRenamed(act.name, act.by, act.key),)


def _quiet(_: State, act: StaffAct) -> tuple[e.Event, ...]:
    if act.silent is None:
        raise ActRefused("not_understood", say("refusal-say-silent"))
    return (e.Quieted(act.silent, act.by, act.key),)


def _show_results(state: State, act: StaffAct) -> tuple[e.Event, ...]:
    """What the bottle was made up to stands in the record from here on, so it goes with results that are seen."""
    if act.shown is None:
        raise ActRefused("not_understood", say("refusal-say-shown"))
    if act.prepared_mol_dm3 is not None:
        if not act.shown:
            raise ActRefused("not_understood", say("refusal-prepared-with-results"))
        if not any(each.to_find for each in state.plan.ingredients):
            raise ActRefused("not_now", say("refusal-nothing-prepared"))
    return (e.ResultsShown(act.shown, act.by, act.key, act.prepared_mol_dm3),)


def _choose_plan(state: State, act: StaffAct) -> tuple[e.Event, ...]:
    """A new practical begins; what was recorded stays in the journal."""
    if act.plan is None and act.plan_toml is None:
        raise ActRefused("no_plan", say("refusal-give-plan"))
    if state.running is not None:
        raise ActRefused("under_way", say("refusal-repeat-under-way-staff"))
    if state.probes.check is not None:
        raise ActRefused("check_under_way", say("refusal-check-under-way"))
    plan = chosen_plan(act)
    strong = strong_solutions(plan)
    if strong and not act.confirmed:
        named, mol_dm3 = max(strong, key=lambda each: each[1])
        raise ActRefused(
            "not_confirmed",
            say("refusal-confirm-strong", limit_mol_dm3=f"{STRONG_MOL_DM3}", reagent=named, mol_dm3=f"{mol_dm3:g}"),
        )
    chosen = e.PlanChosen(plan.without_prepared().model_dump(mode="json"), act.by, act.key, set_up=True)
    return plan_events(state, chosen)


def plan_events(state: State, chosen: e.PlanChosen) -> tuple[e.Event, ...]:
    """Return a plan's choice with what goes with it: tallies of the probes before, the correction in use after."""
    after = fold_probes(state.probes, e.Stamped(0, "", 0.0, 0.0, "", "", chosen))
    return (*tally_events(state.probes), chosen, *in_use_events(after))


def chosen_plan(act: StaffAct) -> Plan:
    """Return the plan that the act chooses, as staff gave it. Raises ActRefused."""
    try:
        return safe(plan_from(act.plan) if act.plan is not None else read_plan(act.plan_toml or "", "plan"))
    except PlanError as error:
        raise ActRefused("bad_plan", error.refusal) from None


def _pause(state: State, act: StaffAct) -> tuple[e.Event, ...]:
    """A pause of the group's own becomes one of staff."""
    if state.held:
        raise ActRefused("not_now", say("refusal-paused-already"))
    if state.step in (Step.READY, Step.ALKALI, Step.DONE):
        raise ActRefused("not_now", say("refusal-nothing-to-pause"))
    return (e.Paused(act.key, act.by),)


def _resume(state: State, act: StaffAct) -> tuple[e.Event, ...]:
    if state.step is not Step.PAUSED:
        raise ActRefused("not_now", say("refusal-not-paused"))
    return going_on(state, act.key)


def _call_over(state: State, act: StaffAct) -> tuple[e.Event, ...]:
    return call_over_events(state, act.by, act.key)


def _of_repeat(state: State, act: StaffAct) -> tuple[e.Event, ...]:
    """Set a repeat aside, or let it count again."""
    if act.repeat is None:
        raise ActRefused("no_repeat", say("refusal-say-which-repeat"))
    if act.repeat > len(state.repeats):
        raise ActRefused("wrong_repeat", say("refusal-no-repeat", repeat=act.repeat))
    if act.act == "restore":
        return counts_again(state, state.repeats[act.repeat - 1], act.key)
    if act.reason is None:
        raise ActRefused("no_reason", say("refusal-say-why-set-aside"))
    if not state.repeats[act.repeat - 1].counts:
        raise ActRefused("already_aside", say("refusal-set-aside-already", repeat=act.repeat))
    return (e.RepeatSetAside(act.repeat, act.reason, act.key),)


_OF_PRACTICAL: dict[str, Callable[[State, StaffAct], tuple[e.Event, ...]]] = {
    "set_aside": _of_repeat,
    "restore": _of_repeat,
    "pause": _pause,
    "resume": _resume,
    "quiet": _quiet,
    "rename": _rename,
    "show_results": _show_results,
    "call_over": _call_over,
    "choose_plan": _choose_plan,
}
