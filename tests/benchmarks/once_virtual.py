"""Virtual cups of plans that mix once, read by probe and by thermometer, through a bench's own results.

The cup is the station's own (`station.bench.virtual`); it shares no code with the analysis. What a stated uncertainty
speaks of is drawn, so that intervals and truth are of the same thing: heat capacities (cup, solution, solid), volumes,
the balance, the temperature of what is added, the wall, the room's drift, the stem. Loss and lags are the cup's own.
"""

from __future__ import annotations

import math
import random
from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Any

from station.analysis.heat.inputs import Estimate
from station.analysis.once.inputs import STEM_SHARE
from station.bench.virtual.cup import CupParameters, nitric_acid_and_potassium_hydroxide, of_plan
from station.bench.virtual.world import World
from station.practical.dataset import Known, RepeatData
from station.practical.kinds import READY_NAMES, plan_from, ready_plan
from station.practical.kinds.once.contents import U_MASS_G, U_SOLID, U_VOLUME_CM3, contents_of
from station.practical.kinds.once.mixture import mixture_of
from station.practical.kinds.once.plan import OncePlan
from station.practical.kinds.once.results import U_SAME_C
from station.practical.results import results

PROBE_S, THERMOMETER_S, DIVISION_C = 0.93, 30.0, 0.1
EYE_C = 0.03
"""How well an eye tells tenths: an estimate."""
SETTLED_C = 1.0
"""How far from the room what is in the cup is when it begins: an estimate of ours."""
WALL_S = 15.0
"""A foam wall of some millimetres warms in 5 to 40 s: an estimate from its thickness and diffusivity."""
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


def cups(plan: OncePlan, count: int, *, first: int = 0, wait_s: float = 0.0, late_s: float = 0.0) -> Iterator[CupRun]:
    """Yield cups of this plan from the seed `first` on: mixed `wait_s` late, the press `late_s` after that."""
    for seed in range(first, first + count):
        draw = random.Random(f"once {plan.name} {seed} {wait_s} {late_s}")
        yield _measured(plan, _drawn(plan, seed, draw), draw, (wait_s, late_s))


@dataclass(frozen=True)
class _Bench:
    """A cup with what is really in it, and two instruments that lose some of their excess along the stem."""

    cup: CupParameters
    around_j_k: float
    told: dict[str, Any]
    taken: float
    stem_shares: tuple[float, float]
    thermometer_s: float


def _drawn(plan: OncePlan, seed: int, draw: random.Random) -> _Bench:
    """What the statement of uncertainty speaks of is drawn, each as it says: see `analysis.once.inputs`."""
    usual, contents = of_plan(nitric_acid_and_potassium_hydroxide(seed), plan), contents_of(plan)
    around_j_k = max(draw.gauss(plan.cup.heat_capacity_j_k, plan.cup.u_heat_capacity_j_k), 1.0)
    solid = plan.addition.mass_g is not None
    shown = plan.portion_amount + draw.uniform(-0.05, 0.05) if solid else plan.portion_amount
    taken = draw.gauss(round(shown, 2), U_MASS_G) if solid else draw.gauss(shown, U_VOLUME_CM3)
    liquid_cm3 = draw.gauss(plan.liquid.volume_cm3, U_VOLUME_CM3)
    # Of the contents only the heat capacity of the solution: that of the volumes is drawn with these.
    added_j = usual.alkali_heat_capacity_j_cm3_k * (1.0 + (U_SOLID * draw.gauss(0.0, 1.0) if solid else 0.0))
    factor = 1.0 + mixture_of(plan).u_relative * draw.gauss(0.0, 1.0)
    liquid_j = (factor * contents.all_j_k.value - added_j * plan.portion_amount) / plan.liquid.volume_cm3
    room_c = usual.room_temperature_c
    start_c = room_c + draw.gauss(0.0, SETTLED_C)
    wall = _share(draw, Estimate(0.5, 0.3))
    cup = replace(
        usual,
        acid_volume_cm3=liquid_cm3,
        acid_temperature_c=start_c,
        alkali_temperature_c=start_c + draw.gauss(0.0, U_SAME_C if solid else 0.5),
        acid_heat_capacity_j_cm3_k=liquid_j,
        alkali_heat_capacity_j_cm3_k=added_j * (1.0 if solid else factor),
        wall_heat_capacity_j_k=wall * around_j_k,
        cup_heat_capacity_j_k=0.5 * (1.0 - wall) * around_j_k,
        probe_heat_capacity_j_k=0.5 * (1.0 - wall) * around_j_k,
        wall_warming_s=WALL_S * math.exp(draw.gauss(0.0, 0.5)),
        room_drift_c_h=3600.0 * draw.gauss(0.0, 0.001),
        mixing_s=draw.uniform(1.0, 5.0),
        dissolving_s=usual.dissolving_s and draw.uniform(5.0, 20.0),
    )
    stems = _share(draw, STEM_SHARE, least=0.0), _share(draw, STEM_SHARE, least=0.0)
    told = {"mass_g": round(shown, 2), "places": 2} if solid else {}
    return _Bench(cup, around_j_k, told, taken, stems, draw.uniform(3.0, 12.0))


def _share(draw: random.Random, about: Estimate, least: float = 0.05) -> float:
    return min(max(draw.gauss(about.value, about.u), least), 1.0 - least)


def _measured(plan: OncePlan, bench: _Bench, draw: random.Random, late: tuple[float, float]) -> CupRun:
    wait_s, late_s = late
    cup, taken = bench.cup, bench.taken
    world = World(cup, draw.randrange(1 << 30))
    mixed_s = plan.timing.before_s + draw.uniform(3.0, 14.0) + wait_s
    press_s = mixed_s + 1.5 + draw.gauss(1.0, 1.2) + late_s
    end_s = press_s + plan.timing.after_s
    probe: list[tuple[float, float]] = []
    by_eye: list[tuple[float, float]] = []
    felt_c = world.true_temperature_c + draw.uniform(0.0, 1.0)
    met_c, poured, next_s, step_s = 0.0, False, 0.0, PROBE_S / 2.0
    time_s = 0.0
    while time_s < end_s:
        time_s += step_s
        if not poured and time_s >= mixed_s:
            world.advance(mixed_s)
            met_c, poured = world.true_temperature_c, True
            world.pour(taken, 3.0)
        world.advance(time_s)
        felt_c += (world.true_temperature_c - felt_c) * (1.0 - math.exp(-step_s / bench.thermometer_s))
        room_c = world.room_temperature_c
        if round(time_s / step_s) % 2 == 0:
            shown_c = _along(bench.stem_shares[0], world.probe_temperature_c, room_c)
            noisy_c = shown_c + draw.gauss(0.0, cup.probe_noise_c)
            probe.append((round(time_s, 3), math.floor(noisy_c / cup.probe_step_c + 0.5) * cup.probe_step_c))
        if time_s >= next_s:
            level_c = _along(bench.stem_shares[1], felt_c, room_c)
            read_c = round((level_c + draw.gauss(0.0, EYE_C)) / DIVISION_C) * DIVISION_C
            by_eye.append((next_s, round(read_c, 1)))
            next_s += THERMOMETER_S
    enthalpy = cup.enthalpy_kj_mol
    mol = min(
        taken * cup.alkali_concentration_mol_dm3 / 1000.0,
        taken if cup.dissolving_s else cup.acid_volume_cm3 * cup.acid_concentration_mol_dm3 / 1000.0,
    )
    inside = cup.acid_volume_cm3 * cup.acid_heat_capacity_j_cm3_k + taken * cup.alkali_heat_capacity_j_cm3_k
    brought_j = taken * cup.alkali_heat_capacity_j_cm3_k * (cup.alkali_temperature_c - met_c)
    change_c = (-1000.0 * enthalpy * mol + brought_j) / (inside + bench.around_j_k)
    known = Known(cup.alkali_temperature_c + draw.gauss(0.0, 0.1), 0.1) if plan.portion_cm3 else Known()
    pour = (press_s, plan.portion_cm3, False)
    found = {}
    for name, rows, division_c in (("probe", probe, None), ("thermometer", by_eye, DIVISION_C)):
        repeat = RepeatData(1, (), tuple(rows), (pour,), division_c=division_c, **bench.told)
        found[name] = results(plan, [repeat], known)["mean"]
    return CupRun(change_c, enthalpy, found)


def _along(share: float, temperature_c: float, room_c: float) -> float:
    """What an instrument shows that loses this share of its excess over the room along its stem."""
    return temperature_c - share * (temperature_c - room_c)
