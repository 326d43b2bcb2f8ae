"""The preparation for a class, for the page: what `station prepare` gives."""

import asyncio
from typing import Annotated, Any

from fastapi import FastAPI, Request
from pydantic import Field

from station.chemistry.preparation import Stock
from station.chemistry.reagents import UnknownReagentError, find_reagent
from station.practical.plan import PlanError, plan_from
from station.practical.prepare import SCHOOLS_OWN, preparation
from station.practical.prepare_words import sheet
from station.server.planning import Chosen, allowed
from station.server.problems import problem

Json = dict[str, Any]
Strength = Annotated[float, Field(gt=0, le=20, allow_inf_nan=False)]


class ToPrepare(Chosen):
    """A plan, for how many benches, and what the school's bottles say (mol/dm³) where it is not the usual."""

    benches: Annotated[int, Field(ge=1, le=100)]
    stocks: dict[str, Strength] = Field(default_factory=dict, max_length=4)


def add_preparing(app: FastAPI) -> None:
    """Add the path to the application."""

    @app.post("/api/preparation")
    async def prepared(wanted: ToPrepare, request: Request) -> Any:
        """The whole sheet; what staff made up only for staff."""
        values = allowed(wanted, request)
        try:
            return await asyncio.to_thread(_sheet, values, wanted)
        except (PlanError, UnknownReagentError) as error:
            return problem(422, "bad_plan", f"This plan cannot be used: {error}.")


def _sheet(values: Json, wanted: ToPrepare) -> Json:
    """Return the sheet. Raises PlanError and UnknownReagentError."""
    stocks = {find_reagent(name).name: Stock(mol_dm3, SCHOOLS_OWN) for name, mol_dm3 in wanted.stocks.items()}
    return sheet(preparation(plan_from(values), wanted.benches, stocks))
