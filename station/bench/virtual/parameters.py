"""What a virtual cup is made of: reagents, cup, room, stirring and probe, with plausible figures.

The figures are a disposable foam cup, a pipette of acid, a plastic syringe of alkali and a steel-sheathed
DS18B20. Where a published source exists it is named; the rest is engineering judgement.
"""

import random
from dataclasses import dataclass, fields

# Allowed to be zero or negative; every other figure must be above zero.
_MAY_BE_ZERO = {
    "cup_heat_capacity_j_k", "wall_heat_capacity_j_k", "probe_heat_capacity_j_k", "loss_w_k", "probe_noise_c",
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

    def __post_init__(self) -> None:
        for field in fields(self):
            name, value = field.name, float(getattr(self, field.name))
            if name == "enthalpy_kj_mol" or name in _ANY_SIGN:
                good, wanted = abs(value) < 1e4, "an ordinary number"
            elif name in _SHARES:
                good, wanted = 0.0 <= value <= 1.0, "between 0 and 1"
            elif name in _MAY_BE_ZERO:
                good, wanted = 0.0 <= value < 1e6, "zero or more"
            else:
                good, wanted = 0.0 < value < 1e6, "above zero"
            if not good:
                raise ValueError(f"{name} is {value}: it must be {wanted}.")

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


SCENARIOS = {"nitric acid and potassium hydroxide": nitric_acid_and_potassium_hydroxide}
