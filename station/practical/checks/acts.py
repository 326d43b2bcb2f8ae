"""Acts of staff that check a probe or a cup: begin, take a step, save or discard, withdraw."""

from dataclasses import replace
from typing import Annotated, Any, Literal

from pydantic import AfterValidator, BaseModel, ConfigDict, Field

from station.analysis.probe.cup_test import CupRefused
from station.practical import events as e
from station.practical.acts import ActRefused
from station.practical.checks.register import Check, CheckStep, Probes, fold_probes, in_use_events
from station.practical.checks.run import COMPARED_C, FIRST_STEP, STEPS, found_after, known_point, standing
from station.practical.problems import in_words
from station.practical.state import State, Step
from station.words import say

CheckKind = Literal["ice", "boiling", "comparison", "dip", "cup"]
StepName = Literal["in", "hung", "in_added", "filled", "poured", "weighed", "compared", "comparison_undone"]

Mass = Annotated[float, Field(ge=0.01, le=1000, allow_inf_nan=False), in_words(say("refusal-type-mass"))]
Uncertainty = Annotated[float, Field(ge=0.0001, le=10, allow_inf_nan=False), in_words(say("refusal-type-plus-minus"))]


def _plain(text: str) -> str:
    text = text.strip()
    if not text or not text.isprintable():
        raise ValueError(say("problem-plain-text"))
    return text


class CheckValues(BaseModel):
    """What is typed in a check; which of it is wanted depends on the check and the step."""

    model_config = ConfigDict(extra="forbid", frozen=True)

    water: Literal["distilled", "tap"] | None = None
    pressure_kpa: (
        Annotated[
            float,
            Field(ge=0, le=2000, allow_inf_nan=False),
            in_words(say("refusal-type-air-pressure")),
        ]
        | None
    ) = None
    u_pressure_kpa: Uncertainty | None = None
    altitude_m: (
        Annotated[
            float,
            Field(ge=-430, le=5000, allow_inf_nan=False),
            in_words(say("refusal-type-altitude")),
        ]
        | None
    ) = None
    reference_c: (
        Annotated[
            float,
            Field(ge=-5, le=110, allow_inf_nan=False),
            in_words(say("refusal-type-check-temperature")),
        ]
        | None
    ) = None
    u_reference_c: Uncertainty | None = None
    warm_g: Mass | None = None
    added_g: Mass | None = None
    u_mass_g: Uncertainty | None = None
    label: (
        Annotated[
            str,
            Field(min_length=1, max_length=40),
            AfterValidator(_plain),
            in_words(say("refusal-cup-label")),
        ]
        | None
    ) = None

    def given(self) -> dict[str, Any]:
        """Return what was typed."""
        return self.model_dump(exclude_none=True)


def check_begin_events(
    state: State, kind: CheckKind | None, values: CheckValues, by: str, key: str | None
) -> tuple[e.Event, ...]:
    """Begin a check. Raises ActRefused."""
    if kind is None:
        raise ActRefused("not_understood", say("refusal-say-which-check"))
    if state.running is not None:
        raise ActRefused("under_way", say("refusal-repeat-under-way"))
    if state.step is Step.ALKALI:
        raise ActRefused("under_way", say("refusal-probe-takes-temperature"))
    if state.probes.check is not None:
        raise ActRefused("check_under_way", say("refusal-check-under-way"))
    if not state.has_probe:
        raise ActRefused("no_probe", say("refusal-no-probe-to-check"))
    if kind == "boiling" and (values.pressure_kpa is None) == (values.altitude_m is None):
        raise ActRefused("no_pressure", say("refusal-type-pressure-or-altitude"))
    if kind in ("ice", "boiling"):
        try:
            known_point(kind, values.given())
        except ValueError as error:
            raise ActRefused("bad_pressure", say("refusal-cannot-be", reason=str(error))) from None
    return (e.ProbeCheckBegun(kind, state.probes.probe_id, values.given(), by, key),)


def check_step_events(
    state: State, step: StepName | None, values: CheckValues, time_s: float, key: str | None
) -> tuple[e.Event, ...]:
    """Take a step of the check under way. Raises ActRefused."""
    check, now = _under_way(state), None
    now = standing(check, time_s)
    possible = STEPS.get(now.phase, ())
    if step not in possible or (now.phase == "prepare" and step != FIRST_STEP[check.check]):
        raise ActRefused("not_now", say("refusal-step-not-now"))
    if step == "weighed" and check.check != "cup":
        raise ActRefused("not_now", say("refusal-step-not-now"))
    typed = values.given()
    if step == "compared":
        if values.reference_c is None:
            raise ActRefused("no_reference", say("refusal-type-reference"))
        _require_compared_range(values.reference_c)
        if not now.rest.steady or now.rest.temperature_c is None:
            raise ActRefused("not_steady", say("refusal-probe-not-at-rest"))
        _require_compared_range(now.rest.temperature_c)
        typed |= {"probe_c": round(now.rest.temperature_c, 4), "u_probe_c": round(now.rest.u_c or 0.0, 4)}
    if step == "weighed" and (values.warm_g is None or values.added_g is None):
        raise ActRefused("no_mass", say("refusal-type-both-masses"))
    event = e.ProbeCheckStep(step, typed, key)
    after = replace(check, steps=(*check.steps, CheckStep(step, typed, time_s)), found=None)
    try:
        return (event, *found_after(state.probes, after))
    except CupRefused as refusal:
        raise ActRefused("no_result", refusal.reason) from None


def _require_compared_range(celsius: float) -> None:
    least_c, most_c = COMPARED_C
    if not least_c <= celsius <= most_c:
        raise ActRefused(
            "out_of_range", say("refusal-compare-between", least_c=f"{least_c:.0f}", most_c=f"{most_c:.0f}")
        )


def check_save_events(state: State, values: CheckValues, by: str, key: str | None) -> tuple[e.Event, ...]:
    """Save what the check under way has found; from then on it is used. Raises ActRefused."""
    check, probes = _under_way(state), state.probes
    if check.found is None:
        raise ActRefused("nothing_found", say("refusal-check-found-nothing"))
    if check.check == "cup":
        label = values.label or check.values.get("label")
        if label is None:
            raise ActRefused("no_label", say("refusal-cup-needs-label"))
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
        raise ActRefused("under_way", say("refusal-repeat-under-way"))
    if not any(each.number == number and not each.withdrawn for each in state.probes.checks):
        raise ActRefused("no_such_check", say("refusal-no-such-check"))
    return _with_use(state.probes, e.ProbeCheckWithdrawn(number or 0, by, key))


def _with_use(probes: Probes, event: e.Event) -> tuple[e.Event, ...]:
    after = fold_probes(probes, e.Stamped(0, "", 0.0, 0.0, "", "", event))
    return (event, *in_use_events(after))


def _under_way(state: State) -> Check:
    if state.probes.check is None:
        raise ActRefused("no_check", say("refusal-no-check-under-way"))
    return state.probes.check
