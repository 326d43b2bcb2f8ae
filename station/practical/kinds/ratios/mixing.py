"""A mixture as one mixing of two liquids, which is what measures its rise of temperature."""

from station.practical.dataset import RepeatData
from station.practical.kinds.kind import Mixture
from station.practical.kinds.once.mixture import mixture_with_heat
from station.practical.kinds.once.plan import Addition, Liquid, OncePlan, Timing
from station.practical.kinds.ratios.plan import RatiosPlan


def once_of(plan: RatiosPlan, cup: int) -> OncePlan:
    """Return the plan of mixing this mixture once."""
    alone = plan.of_cup(cup)
    acid, alkali = alone.ingredients
    return OncePlan(
        kind="once",
        liquid=Liquid(
            name=acid.name,
            volume_cm3=acid.volume_cm3,
            u_volume_cm3=plan.mixtures.u_volume_cm3,
            concentration_mol_dm3=acid.mol_dm3,
        ),
        addition=Addition(
            name=alkali.name,
            volume_cm3=alkali.volume_cm3,
            u_volume_cm3=plan.mixtures.u_volume_cm3,
            concentration_mol_dm3=alkali.mol_dm3,
            temperature_c=plan.alkali.temperature_c,
        ),
        timing=Timing(before_s=plan.timing.before_s, after_s=plan.timing.after_s),
        cup=plan.cup,
        surroundings=plan.surroundings,
    )


def cup_of(plan: RatiosPlan, repeat: RepeatData) -> int:
    """Return which mixture a repeat was: as it was told, else the one whose volume of alkali is nearest."""
    if repeat.cup is not None or not repeat.pours:
        return repeat.cup or 1
    poured_cm3 = repeat.pours[0][1]
    volumes = plan.mixtures.alkali_cm3
    return 1 + min(range(len(volumes)), key=lambda place: abs(volumes[place] - poured_cm3))


def mixture_with_most_heat(plan: RatiosPlan) -> Mixture | None:
    """Return what reacts in the mixture in which most does; of a plan of one cup, in that."""
    return mixture_with_heat(once_of(plan.every_cup[0], 1))
