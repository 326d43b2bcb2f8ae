"""Plans on the page: what can be chosen, what a plan promises as it is chosen, and the class's preparation.

Anybody may look and compute. What staff made up (`prepared_mol_dm3`) comes from staff and goes to staff alone.
"""

import asyncio
import math
import tomllib
from typing import Annotated, Any, Self

from fastapi import FastAPI, Request, Response
from pydantic import BaseModel, ConfigDict, Field, model_validator

from station.bench.calculation.prediction import STAFF_FIRST, Superseded
from station.bench.calculation.worker import CalculationFailed
from station.chemistry.preparation import GLASSWARE, Stock, is_weighed
from station.chemistry.reagents import REAGENTS, UnknownReagentError, find_reagent
from station.chemistry.safety import hydrates_of
from station.practical.kinds import READY_NAMES, PlanValues, plan_from, ready_plan
from station.practical.kinds.answers import Promise
from station.practical.plan import Concentration, Plan, PlanError
from station.practical.plan_check import check_plan
from station.practical.prepare.amounts import SCHOOLS_OWN, preparation
from station.practical.prepare.sheet import Sheet, sheet
from station.practical.problems import toml_values
from station.practical.safety import safe
from station.server.bench.contract import Choices, NamedPlan, PlanAnswer, Plans
from station.server.bench.watch import Watch
from station.server.door.access import Refusal
from station.server.door.limits import network_of
from station.server.door.requires import access_of, address_of, is_staff
from station.server.problems import problem
from station.words import say

Json = dict[str, Any]


class Chosen(BaseModel):
    """A plan as it stands on the page: its values, or the text of a plan.toml."""

    model_config = ConfigDict(extra="forbid", frozen=True)

    plan: dict[str, Any] | None = None
    plan_toml: Annotated[str, Field(max_length=12_000)] | None = None

    @model_validator(mode="after")
    def _is_one(self) -> Self:
        if (self.plan is None) == (self.plan_toml is None):
            raise ValueError(say("plan-send-plan"))
        return self

    def values(self) -> Json:
        """Return the plan's values. Raises Refusal for text that is no TOML."""
        if self.plan is not None:
            return self.plan
        try:
            return toml_values(self.plan_toml or "")
        except tomllib.TOMLDecodeError as error:
            raise Refusal(422, "no_toml", say("plan-no-plan-file", reason=str(error))) from None


class Asked(Chosen):
    """A plan to predict; `page` tells one page's questions from another's, `compare` asks for the long table too."""

    page: Annotated[str, Field(min_length=1, max_length=40)]
    compare: bool = False


def add_planning(app: FastAPI, watch: Watch) -> None:
    """Add the paths to the application."""

    @app.get("/api/plans")
    async def plans(request: Request) -> Plans:
        """The bench's plan, the plans that ship, and what can be chosen from."""
        staff = is_staff(request)
        ready: list[NamedPlan] = [
            {"name": name, "plan": shown_plan(ready_plan(name), staff=staff)} for name in READY_NAMES
        ]
        bench = shown_plan(watch.plan_of_staff() if staff else watch.bench.state.plan, staff=staff)
        return {"bench": bench, "ready": ready, **_CHOICES}

    @app.post("/api/plan")
    async def plan(chosen: Chosen, request: Request) -> PlanAnswer:
        """What can be said of a plan at once; problems stand beside their keys."""
        values = allowed(chosen, request)
        found = await asyncio.to_thread(check_plan, values)
        may_save = is_staff(request) or not access_of(request).secrets.has_staff
        return {**found, "values": _plain(values), "toml": found["toml"] if may_save else None}

    @app.post("/api/plan/prediction")
    async def prediction(asked: Asked, request: Request) -> Promise | Response:
        """Curve, rise, points, ± and warnings, as `station predict` gives them."""
        who = STAFF_FIRST if is_staff(request) else network_of(address_of(request))
        try:
            plan = safe(plan_from(allowed(asked, request)))
            return await watch.predictor.predict(plan, asked.page, who, compare=asked.compare)
        except PlanError as error:
            return problem(422, "bad_plan", error.refusal)
        except Superseded:
            return problem(409, "superseded", say("plan-another-asked"))
        except CalculationFailed as error:
            return problem(503, "not_predicted", say("plan-prediction-failed", reason=str(error)))


def _plain(values: Json) -> Json:
    """Return tables of keys with values that JSON has; a form shows no others."""
    tables = {key: value for key, value in values.items() if isinstance(value, dict)}
    return {
        **{key: _scalar(value) for key, value in values.items() if key not in tables},
        **{key: {inner: _scalar(value) for inner, value in table.items()} for key, table in tables.items()},
    }


def _scalar(value: Any) -> str | int | float | bool | None:
    if isinstance(value, float) and not math.isfinite(value):
        return None
    return value if value is None or isinstance(value, str | int | float) else str(value)


def allowed(chosen: Chosen, request: Request) -> Json:
    """Return the plan's values. Raises Refusal when it tells what staff made up, and no staff ask."""
    values = chosen.values()
    acid = values.get("acid")
    if isinstance(acid, dict) and acid.get("prepared_mol_dm3") is not None and not is_staff(request):
        raise Refusal(403, "staff_only", say("plan-sign-in-for-prepared"))
    return values


def shown_plan(plan: Plan, *, staff: bool) -> PlanValues:
    """Return a plan's values, without what staff keep to themselves unless staff ask."""
    return {**plan.model_dump(mode="json"), "title": plan.name} if staff else plan.public()


_CHOICES: Choices = {
    "reagents": [
        {
            "name": each.name,
            "formula": each.formula,
            "acid": each.is_acid,
            "alkali": each.is_alkali,
            "gas": each.gives_gas,
            "solid": is_weighed(each),
            "anhydrous": bool(hydrates_of(each)),
            "sparingly_soluble": each.sparingly_soluble,
            "solution_enthalpy_kj_mol": each.solution_enthalpy_kj_mol,
        }
        for each in REAGENTS
    ],
    "glassware": [{"name": each.name, "u_portion_cm3": each.u_portion_cm3} for each in GLASSWARE.values()],
}


# The preparation for a class, for the page: what `station prepare` gives.


ReagentName = Annotated[str, Field(max_length=80)]


class ToPrepare(Chosen):
    """A plan, for how many benches, and what the school's bottles say (mol/dm³) where it is not the usual."""

    benches: Annotated[int, Field(ge=1, le=100)]
    stocks: dict[ReagentName, Concentration] = Field(default_factory=dict, max_length=4)


def add_preparing(app: FastAPI) -> None:
    """Add the path to the application."""

    @app.post("/api/preparation")
    async def prepared(wanted: ToPrepare, request: Request) -> Sheet | Response:
        """The whole sheet; what staff made up only for staff."""
        values = allowed(wanted, request)
        try:
            return await asyncio.to_thread(_sheet, values, wanted)
        except PlanError as error:
            return problem(422, "bad_plan", error.refusal)
        except UnknownReagentError as error:
            return problem(422, "bad_plan", say("refusal-plan", reason=str(error)))


def _sheet(values: Json, wanted: ToPrepare) -> Sheet:
    """Return the sheet. Raises PlanError and UnknownReagentError."""
    stocks: dict[str, Stock] = {
        find_reagent(name).name: Stock(mol_dm3, SCHOOLS_OWN) for name, mol_dm3 in wanted.stocks.items()
    }
    return sheet(preparation(plan_from(values), wanted.benches, stocks))
