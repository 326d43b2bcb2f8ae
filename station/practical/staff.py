"""What a teacher or technician may do to a bench, in whatever state the practical is."""

from typing import Annotated, Any, Literal

from pydantic import AfterValidator, BaseModel, ConfigDict, Field

from station.practical import events as e
from station.practical.acts import ActRefused
from station.practical.checks import (
    CheckKind,
    CheckValues,
    StepName,
    check_begin_events,
    check_discard_events,
    check_save_events,
    check_step_events,
    check_withdraw_events,
)
from station.practical.plan import Plan, PlanError, plan_from, read_plan
from station.practical.probes import fold_probes, in_use_events, tally_events
from station.practical.state import State
from station.practical.strong import STRONG_MOL_DM3, strong_solutions

StaffName = Literal[
    "set_aside",
    "quiet",
    "rename",
    "show_results",
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
        raise ValueError("must be plain text without control characters")
    return text


class StaffAct(BaseModel):
    """One act of staff. Whether it comes from staff is the server's to know; `by` is what it found."""

    model_config = ConfigDict(extra="forbid", frozen=True)

    act: StaffName
    key: Annotated[str, Field(min_length=1, max_length=80), AfterValidator(_plain)] | None = None
    repeat: Annotated[int, Field(ge=1, le=1000)] | None = None
    reason: Annotated[str, Field(min_length=1, max_length=200), AfterValidator(_plain)] | None = None
    silent: bool | None = None
    shown: bool | None = None
    plan: dict[str, Any] | None = None
    plan_toml: Annotated[str, Field(max_length=12_000)] | None = None
    confirmed: bool = False
    name: Annotated[str, Field(min_length=1, max_length=24), AfterValidator(_plain)] | None = None
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
    return _of_practical(state, act)


def _of_practical(state: State, act: StaffAct) -> tuple[e.Event, ...]:
    if act.act == "set_aside":
        return _set_aside(state, act)
    if act.act == "rename":
        return (e.BenchRenamed(act.name, act.by, act.key),)
    if act.act == "show_results":
        return _show_results(act)
    if act.act == "choose_plan":
        return _choose_plan(state, act)
    if act.silent is None:
        raise ActRefused("not_understood", "Say in silent whether the buzzer is to be silent: true or false.")
    return (e.Quieted(act.silent, act.by, act.key),)


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


def _show_results(act: StaffAct) -> tuple[e.Event, ...]:
    if act.shown is None:
        raise ActRefused("not_understood", "Say in shown whether the results are to be seen: true or false.")
    return (e.ResultsShown(act.shown, act.by, act.key),)


def _choose_plan(state: State, act: StaffAct) -> tuple[e.Event, ...]:
    """A new practical begins; what was recorded stays in the journal."""
    if act.plan is None and act.plan_toml is None:
        raise ActRefused("no_plan", "Give the plan's values in plan, or its text in plan_toml.")
    if state.running is not None:
        raise ActRefused("under_way", "A repeat is under way on this bench: finish the practical first.")
    if state.probes.check is not None:
        raise ActRefused("check_under_way", "A check is under way already: save or discard it first.")
    plan = chosen_plan(act)
    strong = strong_solutions(plan)
    if strong and not act.confirmed:
        named, mol_dm3 = max(strong, key=lambda each: each[1])
        raise ActRefused(
            "not_confirmed",
            f"Above {STRONG_MOL_DM3} mol/dm³: {named} ({mol_dm3:g} mol/dm³). Confirm it on the page /plan against "
            "the school's risk assessment, or weaken it.",
        )
    chosen = e.PlanChosen(plan.without_prepared().model_dump(mode="json"), act.by, act.key)
    return plan_events(state, chosen)


def plan_events(state: State, chosen: e.PlanChosen) -> tuple[e.Event, ...]:
    """Return a plan's choice with what goes with it: tallies of the probes before, the correction in use after."""
    after = fold_probes(state.probes, e.Stamped(0, "", 0.0, 0.0, "", "", chosen))
    return (*tally_events(state.probes), chosen, *in_use_events(after))


def chosen_plan(act: StaffAct) -> Plan:
    """Return the plan that the act chooses, as staff gave it. Raises ActRefused."""
    try:
        return plan_from(act.plan) if act.plan is not None else read_plan(act.plan_toml or "", "plan")
    except PlanError as error:
        raise ActRefused("bad_plan", f"This plan cannot be used: {error}.") from None


def _set_aside(state: State, act: StaffAct) -> tuple[e.Event, ...]:
    if act.repeat is None:
        raise ActRefused("no_repeat", "Say which repeat is meant, in repeat.")
    if act.repeat > len(state.repeats):
        raise ActRefused("wrong_repeat", f"There is no repeat {act.repeat}.")
    if act.reason is None:
        raise ActRefused("no_reason", "Say why the repeat is set aside, in reason.")
    if not state.repeats[act.repeat - 1].counts:
        raise ActRefused("already_aside", f"Repeat {act.repeat} has been set aside already.")
    return (e.RepeatSetAside(act.repeat, act.reason, act.key),)
