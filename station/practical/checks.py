"""Acts of staff that check a probe or a cup: begin, take a step, save or discard, withdraw."""

from dataclasses import replace
from typing import Annotated, Any, Literal

from pydantic import AfterValidator, BaseModel, ConfigDict, Field

from station.practical import events as e
from station.practical.acts import ActRefused
from station.practical.checks_found import known_point
from station.practical.checks_run import FIRST_STEP, STEPS, CupRefused, found_after, standing
from station.practical.probes import Check, CheckStep, Probes, fold_probes, in_use_events
from station.practical.state import State, Step

CheckKind = Literal["ice", "boiling", "comparison", "dip", "cup"]
StepName = Literal["in", "hung", "in_added", "filled", "poured", "weighed", "compared", "comparison_undone"]

Mass = Annotated[float, Field(gt=0, le=1000, allow_inf_nan=False)]
Uncertainty = Annotated[float, Field(gt=0, le=10, allow_inf_nan=False)]


def _plain(text: str) -> str:
    text = text.strip()
    if not text or not text.isprintable():
        raise ValueError("must be plain text without control characters")
    return text


class CheckValues(BaseModel):
    """What is typed in a check; which of it is wanted depends on the check and the step."""

    model_config = ConfigDict(extra="forbid", frozen=True)

    water: Literal["distilled", "tap"] | None = None
    pressure_kpa: Annotated[float, Field(ge=0, le=2000, allow_inf_nan=False)] | None = None
    u_pressure_kpa: Uncertainty | None = None
    altitude_m: Annotated[float, Field(ge=-430, le=5000, allow_inf_nan=False)] | None = None
    reference_c: Annotated[float, Field(ge=-5, le=110, allow_inf_nan=False)] | None = None
    u_reference_c: Uncertainty | None = None
    warm_g: Mass | None = None
    added_g: Mass | None = None
    u_mass_g: Uncertainty | None = None
    label: Annotated[str, Field(min_length=1, max_length=40), AfterValidator(_plain)] | None = None

    def given(self) -> dict[str, Any]:
        """Return what was typed."""
        return self.model_dump(exclude_none=True)


def check_begin_events(
    state: State, kind: CheckKind | None, values: CheckValues, by: str, key: str | None
) -> tuple[e.Event, ...]:
    """Begin a check. Raises ActRefused."""
    if kind is None:
        raise ActRefused("not_understood", "Say in check which check is meant.")
    if state.running is not None:
        raise ActRefused("under_way", "A repeat is under way on this bench: finish it first.")
    if state.step is Step.ALKALI:
        raise ActRefused("under_way", "The probe is taking a temperature: wait for it, or begin the practical.")
    if state.probes.check is not None:
        raise ActRefused("check_under_way", "A check is under way already: save or discard it first.")
    if not state.has_probe:
        raise ActRefused("no_probe", "This bench has no probe to check.")
    if kind == "boiling" and (values.pressure_kpa is None) == (values.altitude_m is None):
        raise ActRefused("no_pressure", "Type the air pressure, or else the altitude of this place.")
    if kind in ("ice", "boiling"):
        try:
            known_point(kind, values.given())
        except ValueError as error:
            raise ActRefused("bad_pressure", f"This cannot be: {error}.") from None
    return (e.ProbeCheckBegun(kind, state.probes.probe_id, values.given(), by, key),)


def check_step_events(
    state: State, step: StepName | None, values: CheckValues, time_s: float, key: str | None
) -> tuple[e.Event, ...]:
    """Take a step of the check under way. Raises ActRefused."""
    check, now = _under_way(state), None
    now = standing(check, time_s)
    possible = STEPS.get(now.phase, ())
    if step not in possible or (now.phase == "prepare" and step != FIRST_STEP[check.check]):
        raise ActRefused("not_now", "That step does not come now.")
    if step == "weighed" and check.check != "cup":
        raise ActRefused("not_now", "That step does not come now.")
    typed = values.given()
    if step == "compared":
        if values.reference_c is None:
            raise ActRefused("no_reference", "Type what the reference thermometer says.")
        if not now.rest.steady:
            raise ActRefused("not_steady", "The probe is not at rest yet: stir, wait, and read both again.")
        typed |= {"probe_c": round(now.rest.temperature_c or 0.0, 4), "u_probe_c": round(now.rest.u_c or 0.0, 4)}
    if step == "weighed" and (values.warm_g is None or values.added_g is None):
        raise ActRefused("no_mass", "Type both masses: of the warm water, and of the water that was added.")
    event = e.ProbeCheckStep(step, typed, key)
    after = replace(check, steps=(*check.steps, CheckStep(step, typed, time_s)), found=None)
    try:
        return (event, *found_after(state.probes, after))
    except CupRefused as refusal:
        raise ActRefused("no_result", str(refusal)) from None


def check_save_events(state: State, values: CheckValues, by: str, key: str | None) -> tuple[e.Event, ...]:
    """Save what the check under way has found; from then on it is used. Raises ActRefused."""
    check, probes = _under_way(state), state.probes
    if check.found is None:
        raise ActRefused("nothing_found", "The check has found nothing yet: go on, or discard it.")
    if check.check == "cup":
        label = values.label or check.values.get("label")
        if label is None:
            raise ActRefused("no_label", "Give the cup a label, so that you know it again.")
        return (e.CupTested(label, check.probe_id, check.found, by, key),)
    found = {**check.values, **check.found}
    return _with_use(probes, e.ProbeChecked(check.check, len(probes.checks) + 1, check.probe_id, found, by, key))


def check_discard_events(state: State, by: str, key: str | None) -> tuple[e.Event, ...]:
    """Give the check under way up. Raises ActRefused."""
    _under_way(state)
    return (e.ProbeCheckDiscarded("discarded", by, key),)


def check_withdraw_events(state: State, number: int | None, by: str, key: str | None) -> tuple[e.Event, ...]:
    """Take a saved check back. Raises ActRefused."""
    if state.running is not None:
        raise ActRefused("under_way", "A repeat is under way on this bench: finish it first.")
    if not any(each.number == number and not each.withdrawn for each in state.probes.checks):
        raise ActRefused("no_such_check", "There is no such check, or it was withdrawn already.")
    return _with_use(state.probes, e.ProbeCheckWithdrawn(number or 0, by, key))


def _with_use(probes: Probes, event: e.Event) -> tuple[e.Event, ...]:
    after = fold_probes(probes, e.Stamped(0, "", 0.0, 0.0, "", "", event))
    return (event, *in_use_events(after))


def _under_way(state: State) -> Check:
    if state.probes.check is None:
        raise ActRefused("no_check", "No check is under way.")
    return state.probes.check
