"""From a scene to what the heat balance is told about it."""

from __future__ import annotations

from station.analysis.heat.inputs import Estimate, HeatSetup, Pour, Trace
from tests.benchmarks.scenes import Scene


def trace_of(scene: Scene) -> Trace:
    """The samples."""
    return Trace(scene.time_s, scene.temperature_c)


def pours_of(scene: Scene) -> list[Pour]:
    """The presses and the plan's volumes."""
    return [Pour(p.press_s, p.nominal_cm3, scene.u_volume_cm3) for p in scene.pours]


def setup_of(scene: Scene, know_cup: bool = False) -> HeatSetup:
    """What the class knows; with ``know_cup`` also the cup's heat capacity, from a cup test."""
    acid, alkali, product = scene.heat_capacities_j_cm3_k
    warm, room = scene.measured_alkali_c, scene.measured_room_c
    return HeatSetup(
        Estimate(scene.acid_nominal_cm3, scene.u_acid_cm3),
        acid,
        alkali,
        product,
        alkali_mol_dm3=Estimate(scene.alkali_mol_dm3, 0.0),
        cup_j_k=Estimate(scene.true_cup_j_k, 0.3) if know_cup else Estimate(5.0, 3.0),
        alkali_c=None if warm is None else Estimate(warm, 0.2),
        room_c=None if room is None else Estimate(room, 0.5),
    )
