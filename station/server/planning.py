"""Plans on the page: what can be chosen, what a plan promises as it is chosen, and the class's preparation.

Anybody may look and compute. What staff made up (`prepared_mol_dm3`) comes from staff and goes to staff alone.
"""

import asyncio
import math
import tomllib
from typing import Annotated, Any, Self

from fastapi import FastAPI, Request
from pydantic import BaseModel, ConfigDict, Field, model_validator

from station.bench.calculator import CalculationFailed
from station.bench.predictor import Superseded
from station.chemistry.glassware import GLASSWARE
from station.chemistry.reagents import REAGENTS
from station.practical.plan import Plan, PlanError, plan_from
from station.practical.plan_check import check_plan
from station.practical.toml_text import toml_values
from station.server.access import STAFF
from station.server.access_refusal import Refusal
from station.server.access_requires import access_of, role_now
from station.server.problems import problem
from station.server.ready_plans import READY_NAMES, ready_plan
from station.server.watch import Watch

Json = dict[str, Any]


class Chosen(BaseModel):
    """A plan as it stands on the page: its values, or the text of a plan.toml."""

    model_config = ConfigDict(extra="forbid", frozen=True)

    plan: dict[str, Any] | None = None
    plan_toml: Annotated[str, Field(max_length=12_000)] | None = None

    @model_validator(mode="after")
    def _is_one(self) -> Self:
        if (self.plan is None) == (self.plan_toml is None):
            raise ValueError("send plan or plan_toml")
        return self

    def values(self) -> Json:
        """Return the plan's values. Raises Refusal for text that is no TOML."""
        if self.plan is not None:
            return self.plan
        try:
            return toml_values(self.plan_toml or "")
        except tomllib.TOMLDecodeError as error:
            raise Refusal(422, "no_toml", f"This is no plan file: {error}.") from None


class Asked(Chosen):
    """A plan to predict; `page` tells one page's questions from another's, `compare` asks for the long table too."""

    page: Annotated[str, Field(min_length=1, max_length=40)]
    compare: bool = False


def add_planning(app: FastAPI, watch: Watch) -> None:
    """Add the paths to the application."""

    @app.get("/api/plans")
    async def plans(request: Request) -> Json:
        """The bench's plan, the plans that ship, and what can be chosen from."""
        staff = is_staff(request)
        ready = [{"name": name, "plan": shown_plan(ready_plan(name), staff=staff)} for name in READY_NAMES]
        bench = shown_plan(watch.plan_of_staff() if staff else watch.bench.state.plan, staff=staff)
        return {"bench": bench, "ready": ready, **_CHOICES}

    @app.post("/api/plan")
    async def plan(chosen: Chosen, request: Request) -> Json:
        """What can be said of a plan at once; problems stand beside their keys."""
        values = allowed(chosen, request)
        found = await asyncio.to_thread(check_plan, values)
        may_save = is_staff(request) or not access_of(request).secrets.has_staff
        return {**found, "values": _plain(values), "toml": found["toml"] if may_save else None}

    @app.post("/api/plan/prediction")
    async def prediction(asked: Asked, request: Request) -> Any:
        """Curve, rise, points, ± and warnings, as `station predict` gives them."""
        try:
            return await watch.predictor.predict(plan_from(allowed(asked, request)), asked.page, compare=asked.compare)
        except PlanError as error:
            return problem(422, "bad_plan", f"This plan cannot be used: {error}.")
        except Superseded:
            return problem(409, "superseded", "Another plan was asked for meanwhile.")
        except CalculationFailed as error:
            return problem(503, "not_predicted", f"The prediction failed: {error}. Try again.")


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


def is_staff(request: Request) -> bool:
    """Whether staff ask."""
    return role_now(request) in STAFF


def allowed(chosen: Chosen, request: Request) -> Json:
    """Return the plan's values. Raises Refusal when it tells what staff made up, and no staff ask."""
    values = chosen.values()
    acid = values.get("acid")
    if isinstance(acid, dict) and acid.get("prepared_mol_dm3") is not None and not is_staff(request):
        raise Refusal(403, "staff_only", "What staff made up is for staff: sign in, or leave prepared_mol_dm3 out.")
    return values


def shown_plan(plan: Plan, *, staff: bool) -> Json:
    """Return a plan's values, without what staff keep to themselves unless staff ask."""
    return {**plan.model_dump(mode="json"), "title": plan.name} if staff else plan.public()


_CHOICES: Json = {
    "reagents": [
        {
            "name": each.name,
            "formula": each.formula,
            "acid": each.is_acid,
            "alkali": each.is_alkali,
            "gas": each.gives_gas,
            "sparingly_soluble": each.sparingly_soluble,
            "solution_enthalpy_kj_mol": each.solution_enthalpy_kj_mol,
        }
        for each in REAGENTS
    ],
    "glassware": [{"name": each.name, "u_portion_cm3": each.u_portion_cm3} for each in GLASSWARE.values()],
}
