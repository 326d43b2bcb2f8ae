"""Virtual cups of plans that mix once, read by probe and by thermometer, through a bench's own results.

The cup is the station's own (`station.bench.virtual`); it shares no code with the analysis. The heat capacity of cup,
wall and probe is drawn from what a plan says of its cup (5 ± 3 J/K), so that intervals can be judged.
"""

from __future__ import annotations

import random
from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Any

from station.bench.virtual.cup import CupParameters, nitric_acid_and_potassium_hydroxide, of_plan
from station.bench.virtual.world import World
from station.practical.dataset import Known, RepeatData
from station.practical.kinds import READY_NAMES, plan_from, ready_plan
from station.practical.kinds.once.plan import OncePlan
from station.practical.results import results

PROBE_S, THERMOMETER_S, DIVISION_C = 0.93, 30.0, 0.1
EYE_C = 0.03
"""How well an eye tells tenths: an estimate."""
LATE_S = 30.0
SLOW_S = 1800.0


def _plan(liquid: tuple[float, str, float | None], addition: dict[str, Any]) -> OncePlan:
    cm3, name, mol_dm3 = liquid
    in_cup = {"name": name, "volume_cm3": cm3, **({} if mol_dm3 is None else {"concentration_mol_dm3": mol_dm3})}
    plan = plan_from({"kind": "once", "liquid": in_cup, "addition": addition})
    assert isinstance(plan, OncePlan)
    return plan


def _poured(name: str, cm3: float, mol_dm3: float) -> dict[str, Any]:
    return {"name": name, "volume_cm3": cm3, "concentration_mol_dm3": mol_dm3}


def plans() -> dict[str, OncePlan]:
    """Every shipped plan that mixes once, and six more reagents."""
    shipped = {name: ready_plan(name) for name in READY_NAMES}
    water = 50.0, "water", None
    return {
        **{name: plan for name, plan in shipped.items() if isinstance(plan, OncePlan)},
        "potassium chloride": _plan(water, {"name": "potassium chloride", "mass_g": 4.0}),
        "ammonium chloride": _plan(water, {"name": "ammonium chloride", "mass_g": 3.0}),
        "potassium nitrate": _plan(water, {"name": "potassium nitrate", "mass_g": 3.0}),
        "sodium carbonate": _plan(water, {"name": "sodium carbonate", "mass_g": 4.0}),
        "hydrochloric acid": _plan((25.0, "hydrochloric acid", 1.0), _poured("sodium hydroxide", 25.0, 1.0)),
        "sulfuric acid": _plan((50.0, "potassium hydroxide", 0.4), _poured("sulfuric acid", 30.0, 0.4)),
    }


@dataclass(frozen=True)
class CupRun:
    """One cup: what is true of it, and what each instrument's results say (None: refused)."""

    change_c: float
    enthalpy_kj_mol: float
    of_instrument: dict[str, dict[str, Any] | None]


def cups(plan: OncePlan, count: int, *, wait_s: float = 0.0, late_s: float = 0.0) -> Iterator[CupRun]:
    """Yield cups of this plan: mixed `wait_s` after the usual moment, the press `late_s` after that."""
    for seed in range(count):
        yield _run(plan, seed, wait_s, late_s)


def _run(plan: OncePlan, seed: int, wait_s: float, late_s: float) -> CupRun:
    draw = random.Random(f"once {plan.name} {seed} {wait_s} {late_s}")
    around = max(draw.gauss(plan.cup.heat_capacity_j_k, plan.cup.u_heat_capacity_j_k), 1.0)
    cup = of_plan(nitric_acid_and_potassium_hydroxide(seed), plan)
    cup = replace(
        cup,
        cup_heat_capacity_j_k=0.2 * around,
        wall_heat_capacity_j_k=0.55 * around,
        probe_heat_capacity_j_k=0.25 * around,
        dissolving_s=cup.dissolving_s and draw.uniform(5.0, 20.0),
    )
    return _measured(plan, cup, draw, around, (wait_s, late_s))


def _measured(
    plan: OncePlan, cup: CupParameters, draw: random.Random, around_j_k: float, late: tuple[float, float]
) -> CupRun:
    wait_s, late_s = late
    world = World(cup, draw.randrange(1 << 30))
    mixed_s = plan.timing.before_s + draw.uniform(3.0, 14.0) + wait_s
    press_s = mixed_s + 1.5 + draw.gauss(1.0, 1.2) + late_s
    end_s = press_s + plan.timing.after_s
    taken = draw.gauss(plan.portion_amount, 0.3 if plan.portion_cm3 else 0.02)
    probe: list[tuple[float, float]] = []
    by_eye: list[tuple[float, float]] = []
    lag_s, felt_c = draw.uniform(3.0, 12.0), world.true_temperature_c + draw.uniform(0.0, 1.0)
    met_c, poured, next_s, step_s = 0.0, False, 0.0, PROBE_S / 2.0
    time_s = 0.0
    while time_s < end_s:
        time_s += step_s
        if not poured and time_s >= mixed_s:
            world.advance(mixed_s)
            met_c, poured = world.true_temperature_c, True
            world.pour(taken, 3.0)
        world.advance(time_s)
        felt_c += (world.true_temperature_c - felt_c) * step_s / lag_s
        if round(time_s / step_s) % 2 == 0:
            probe.append((round(time_s, 3), world.reading_c()))
        if time_s >= next_s:
            read_c = round((felt_c + draw.gauss(0.0, EYE_C)) / DIVISION_C) * DIVISION_C
            by_eye.append((next_s, round(read_c, 1)))
            next_s += THERMOMETER_S
    enthalpy = cup.enthalpy_kj_mol
    mol = min(
        taken * cup.alkali_concentration_mol_dm3 / 1000.0,
        taken if cup.dissolving_s else cup.acid_volume_cm3 * cup.acid_concentration_mol_dm3 / 1000.0,
    )
    inside = cup.acid_volume_cm3 * cup.acid_heat_capacity_j_cm3_k + taken * cup.alkali_heat_capacity_j_cm3_k
    brought_j = taken * cup.alkali_heat_capacity_j_cm3_k * (cup.alkali_temperature_c - met_c)
    change_c = (-1000.0 * enthalpy * mol + brought_j) / (inside + around_j_k)
    told = {"mass_g": round(taken, 2), "places": 2} if plan.portion_g else {}
    known = Known(cup.alkali_temperature_c + draw.gauss(0.0, 0.1), 0.1) if plan.portion_cm3 else Known()
    pour = (press_s, plan.portion_cm3, False)
    found = {}
    for name, rows, division_c in (("probe", probe, None), ("thermometer", by_eye, DIVISION_C)):
        repeat = RepeatData(1, (), tuple(rows), (pour,), division_c=division_c, **told)  # type: ignore[arg-type]
        found[name] = results(plan, [repeat], known)["mean"]
    return CupRun(change_c, enthalpy, found)
