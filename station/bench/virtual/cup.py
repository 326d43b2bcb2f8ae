"""What a virtual cup is made of: reagents, cup, room, stirring and probe, with plausible figures.

The figures are a disposable foam cup, a pipette of acid, a plastic syringe of alkali and a steel-sheathed DS18B20.
Where a published source exists it is named; the rest is engineering judgement.
"""

import random
from dataclasses import dataclass, fields, replace

from station.chemistry.pairs import WrongPairError, neutralisation_steps
from station.practical.kinds.kind import Mixture, kind_of
from station.practical.plan import Plan
from station.words import say

# Allowed to be zero or negative; every other figure must be above zero.
_MAY_BE_ZERO = {
    "cup_heat_capacity_j_k", "wall_heat_capacity_j_k", "probe_heat_capacity_j_k", "loss_w_k", "probe_noise_c",
    "dissolving_s",
}  # fmt: skip
_ANY_SIGN = {
    "acid_temperature_c",
    "alkali_temperature_c",
    "room_temperature_c",
    "room_drift_c_h",
    "probe_start_c",
}
_SHARES = {"surface_share", "probe_fast_share"}


@dataclass(frozen=True)
class CupParameters:
    """One virtual bench; units stand in the names.

    `enthalpy_kj_mol` is the enthalpy change per mole of water formed, negative as it gives heat out. The
    default is that of strong acid and strong base near 22 °C: −55.8 at 25 °C from the CODATA Key Values of
    Cox, Wagman and Medvedev (1989), carried to 22 °C with the heat capacity change of Singh, Woolley, McCurdy
    and Hepler, Can. J. Chem. 54, 3315 (1976).

    `cup_heat_capacity_j_k` follows the liquid at once, `wall_heat_capacity_j_k` with `wall_warming_s`.
    The probe reads `probe_fast_share` of its way with `probe_fast_s` and the rest with `probe_slow_s`.
    `mixing_s` is the time constant in which a difference between upper and lower half of the cup dies.
    The concentrations count the hydrogen ions that the acid gives away to this alkali, and the hydroxide ions.
    A solid is poured too, 1 g as 1 cm³: with `dissolving_s` above zero what is poured does not react but dissolves, in
    this time constant, and its `enthalpy_kj_mol` is per mole of it.

    Raises ValueError when a figure is impossible.
    """

    acid_volume_cm3: float = 25.0
    acid_concentration_mol_dm3: float = 0.4
    acid_temperature_c: float = 21.0
    alkali_concentration_mol_dm3: float = 0.4
    alkali_temperature_c: float = 21.0
    enthalpy_kj_mol: float = -56.5
    acid_heat_capacity_j_cm3_k: float = 4.11
    alkali_heat_capacity_j_cm3_k: float = 4.12
    cup_heat_capacity_j_k: float = 2.0
    wall_heat_capacity_j_k: float = 5.0
    wall_warming_s: float = 12.0
    loss_w_k: float = 0.10
    surface_share: float = 0.5
    room_temperature_c: float = 21.0
    room_drift_c_h: float = 0.3
    mixing_s: float = 2.0
    pour_rate_cm3_s: float = 1.5
    probe_heat_capacity_j_k: float = 2.0
    probe_fast_s: float = 3.5
    probe_slow_s: float = 10.0
    probe_fast_share: float = 0.7
    probe_start_c: float = 22.0
    probe_noise_c: float = 0.02
    probe_step_c: float = 0.0625
    dissolving_s: float = 0.0

    def __post_init__(self) -> None:
        for field in fields(self):
            name, value = field.name, float(getattr(self, field.name))
            if name == "enthalpy_kj_mol" or name in _ANY_SIGN:
                good, wanted = abs(value) < 1e4, say("virtual-ordinary-number")
            elif name in _SHARES:
                good, wanted = 0.0 <= value <= 1.0, say("virtual-between-0-and-1")
            elif name in _MAY_BE_ZERO:
                good, wanted = 0.0 <= value < 1e6, say("virtual-zero-or-more")
            else:
                good, wanted = 0.0 < value < 1e6, say("virtual-above-zero")
            if not good:
                raise ValueError(say("virtual-must-be", field_name=name, value=str(value), wanted=wanted))

    @property
    def end_point_cm3(self) -> float:
        """The alkali that neutralises one full cup of acid, cm³."""
        return self.acid_volume_cm3 * self.acid_concentration_mol_dm3 / self.alkali_concentration_mol_dm3


def nitric_acid_and_potassium_hydroxide(seed: int) -> CupParameters:
    """Nitric acid, 25 cm³ of about 0.4 mol/dm³, with potassium hydroxide 0.400 mol/dm³.

    The seed draws what a class does not know: the acid within ±6 %, the temperatures of room and reagents,
    the loss of the cup and the swiftness of the probe.
    """
    draw = random.Random(f"bench {seed}")  # noqa: S311  (a simulation, not a secret)
    room_c = draw.uniform(19.5, 22.5)
    return CupParameters(
        acid_concentration_mol_dm3=0.4 * draw.uniform(0.94, 1.06),
        acid_temperature_c=room_c + draw.uniform(-0.4, 0.4),
        alkali_temperature_c=room_c + draw.uniform(-0.5, 0.5),
        room_temperature_c=room_c,
        room_drift_c_h=draw.uniform(-0.5, 0.8),
        loss_w_k=draw.uniform(0.07, 0.13),
        probe_fast_s=draw.uniform(3.0, 4.0),
        probe_slow_s=draw.uniform(9.0, 11.0),
        probe_start_c=room_c + draw.uniform(0.5, 2.0),
    )


PLANNED_CM3 = 40.0
"""The alkali that is poured in all where nothing else is planned: the seed's end-point is a share of it."""


def of_plan(drawn: CupParameters, plan: Plan, acid_mol_dm3: float | None = None) -> CupParameters:
    """Return the cup with the plan's reagents, the rest as the seed drew it.

    The acid is the one that staff made up or that the class knows: all benches have one bottle, nothing is drawn then.
    A plan that tells neither gets `acid_mol_dm3`, or else an end-point at the share of the planned volume where the
    seed's would be of PLANNED_CM3. What cannot be poured in portions leaves the cup as it is.
    """
    acid, alkali = plan.ingredients
    mixture = kind_of(plan).mixture(plan)
    if mixture is not None:
        return _mixed_once(drawn, plan, mixture)
    if plan.pours_once or acid.reagent is None or alkali.reagent is None or alkali.mol_dm3 is None:
        return drawn
    try:
        pair = neutralisation_steps(acid.reagent, alkali.reagent)
    except WrongPairError:
        return drawn
    made_up, ions = acid.told_mol_dm3 or acid_mol_dm3, alkali.mol_dm3 * pair.alkali_hydroxides
    end_point_cm3 = drawn.end_point_cm3 / PLANNED_CM3 * alkali.volume_cm3
    if made_up is not None:
        end_point_cm3 = acid.volume_cm3 * made_up / (alkali.mol_dm3 * pair.acid_per_alkali)
    return replace(
        drawn,
        acid_volume_cm3=acid.volume_cm3,
        acid_concentration_mol_dm3=end_point_cm3 * ions / acid.volume_cm3,
        alkali_concentration_mol_dm3=ions,
    )


DISSOLVING_S = 10.0
"""Fine crystals in stirred water: engineering judgement, no source."""
NO_ACID_MOL_DM3 = 1e-9


def _mixed_once(drawn: CupParameters, plan: Plan, mixture: Mixture) -> CupParameters:
    """The cup into which all is put at once: as much heat as books give for these amounts, in what holds it."""
    liquid, added = plan.ingredients
    amount = added.mass_g or added.volume_cm3
    both = drawn.acid_temperature_c
    cup = replace(
        drawn,
        acid_volume_cm3=liquid.volume_cm3,
        acid_heat_capacity_j_cm3_k=(mixture.all_j_k - mixture.added_j_k) / liquid.volume_cm3,
        alkali_heat_capacity_j_cm3_k=mixture.added_j_k / amount,
        alkali_temperature_c=both if added.mass_g else drawn.alkali_temperature_c,
        enthalpy_kj_mol=mixture.enthalpy_kj_mol or 0.0,
        pour_rate_cm3_s=amount / POUR_ALL_S,
    )
    if mixture.dissolves:
        per_g = 1000.0 * (mixture.amount_mol or 0.0) / amount
        return replace(
            cup,
            acid_concentration_mol_dm3=NO_ACID_MOL_DM3,
            alkali_concentration_mol_dm3=per_g,
            dissolving_s=DISSOLVING_S,
        )
    one, other = liquid.reagent, added.reagent
    if one is None or other is None:
        return drawn
    pair = neutralisation_steps(*((one, other) if one.is_acid else (other, one)))
    of_liquid, of_added = pair.acid_protons, pair.alkali_hydroxides
    if not one.is_acid:
        of_liquid, of_added = of_added, of_liquid
    return replace(
        cup,
        acid_concentration_mol_dm3=(liquid.mol_dm3 or 0.0) * of_liquid,
        alkali_concentration_mol_dm3=(added.mol_dm3 or 0.0) * of_added,
    )


POUR_ALL_S = 3.0
"""All at once, from a cylinder or a weighing boat: engineering judgement, no source."""

SCENARIOS = {"nitric-acid-potassium-hydroxide": nitric_acid_and_potassium_hydroxide}
