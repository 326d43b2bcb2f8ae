"""A cup of acid on a bench, as physics in small steps.

Two halves of liquid, upper and lower, exchange liquid while somebody stirs. Each half keeps its amounts
(acid solution, alkali solution, moles of acid left over) and its heat; acid and base that meet react at once
and give their heat to the half they met in. Alkali falls into the upper half at its own temperature, the
probe stands in the lower one. The wall warms slowly, heat goes to the room through it and from the surface,
and the probe takes its own share. Nothing here is fitted or solved in closed form, so that an analysis can be
tried on it.
"""

import math
import random
from collections import deque
from copy import copy
from dataclasses import dataclass

from station.bench.virtual.cup import CupParameters

STEP_S = 0.05
STILL_MIXING_S = 45.0
"""In a cup that nobody stirs only the pour itself and convection mix: engineering judgement, no source."""
OPEN_LOSS = 5.0
"""So many times as much heat leaves an open surface, mostly by evaporation: engineering judgement, no source."""


@dataclass(slots=True)
class _Parcel:
    """Some liquid: volumes in cm³, acid left over in mol (negative: base), heat in J above 0 °C."""

    acid_cm3: float = 0.0
    alkali_cm3: float = 0.0
    excess_acid_mol: float = 0.0
    heat_j: float = 0.0

    @property
    def volume_cm3(self) -> float:
        return self.acid_cm3 + self.alkali_cm3


class _Half(_Parcel):
    """One half of the cup with its part of the heat capacity that follows at once."""

    __slots__ = ("_acid_j_cm3_k", "_alkali_j_cm3_k", "_cup_j_k", "_parameters")

    def __init__(self, parameters: CupParameters, acid_cm3: float, temperature_c: float) -> None:
        super().__init__(acid_cm3, 0.0, acid_cm3 * parameters.acid_concentration_mol_dm3 / 1000.0, 0.0)
        self._parameters = parameters
        self._acid_j_cm3_k = parameters.acid_heat_capacity_j_cm3_k
        self._alkali_j_cm3_k = parameters.alkali_heat_capacity_j_cm3_k
        self._cup_j_k = 0.5 * parameters.cup_heat_capacity_j_k
        self.heat_j = self.heat_capacity_j_k * temperature_c

    @property
    def liquid_heat_capacity_j_k(self) -> float:
        return self.acid_cm3 * self._acid_j_cm3_k + self.alkali_cm3 * self._alkali_j_cm3_k

    @property
    def heat_capacity_j_k(self) -> float:
        return self.liquid_heat_capacity_j_k + self._cup_j_k

    @property
    def temperature_c(self) -> float:
        return self.heat_j / self.heat_capacity_j_k

    def take(self, volume_cm3: float) -> _Parcel:
        """Liquid of this half leaves it, at its temperature."""
        part = volume_cm3 / (self.acid_cm3 + self.alkali_cm3)
        liquid_j_k = self.acid_cm3 * self._acid_j_cm3_k + self.alkali_cm3 * self._alkali_j_cm3_k
        heat_j = part * liquid_j_k * (self.heat_j / (liquid_j_k + self._cup_j_k))
        parcel = _Parcel(part * self.acid_cm3, part * self.alkali_cm3, part * self.excess_acid_mol, heat_j)
        self.acid_cm3 -= parcel.acid_cm3
        self.alkali_cm3 -= parcel.alkali_cm3
        self.excess_acid_mol -= parcel.excess_acid_mol
        self.heat_j -= heat_j
        return parcel

    def lose_alkali(self, volume_cm3: float) -> None:
        """So much alkali never came: its volume, its base, its own heat and what it gave out by reacting are gone."""
        p = self._parameters
        if p.dissolving_s > 0.0:  # a solid: its heat is settled with what has dissolved of it
            self.alkali_cm3 -= volume_cm3
            self.heat_j -= volume_cm3 * p.alkali_heat_capacity_j_cm3_k * p.alkali_temperature_c
            return
        base_mol = self.alkali_cm3 * p.alkali_concentration_mol_dm3 / 1000.0
        lost_mol = volume_cm3 * p.alkali_concentration_mol_dm3 / 1000.0
        acid_mol = self.excess_acid_mol + base_mol
        water_mol = min(acid_mol, base_mol) - min(acid_mol, base_mol - lost_mol)
        self.alkali_cm3 -= volume_cm3
        self.excess_acid_mol += lost_mol
        self.heat_j -= volume_cm3 * p.alkali_heat_capacity_j_cm3_k * p.alkali_temperature_c
        self.heat_j += water_mol * p.enthalpy_kj_mol * 1000.0

    def add(self, parcel: _Parcel) -> None:
        """Liquid comes in; what can react, reacts."""
        self.acid_cm3 += parcel.acid_cm3
        self.alkali_cm3 += parcel.alkali_cm3
        before_mol = abs(self.excess_acid_mol) + abs(parcel.excess_acid_mol)
        self.excess_acid_mol += parcel.excess_acid_mol
        water_mol = 0.5 * (before_mol - abs(self.excess_acid_mol))
        self.heat_j += parcel.heat_j - water_mol * self._parameters.enthalpy_kj_mol * 1000.0


class World:
    """The bench of one group: `advance` moves time on, the other methods are the hands on the cup.

    Everything the hands do happens at `time_s`, the moment reached. Time goes in steps of `STEP_S` on a fixed
    grid, so what happens does not depend on how often `advance` is called.
    """

    def __init__(self, parameters: CupParameters, seed: int = 0, start_s: float = 0.0) -> None:
        self.parameters = parameters
        self._random = random.Random(f"world {seed}")  # noqa: S311  (a simulation, not a secret)
        self._start_s = start_s
        self._steps = 0
        self._stirred_part, self._still_part = (
            1.0 - math.exp(-STEP_S / s) for s in (parameters.mixing_s, STILL_MIXING_S)
        )
        self._stirred_until_s, self._lid_on = math.inf, True
        self._wall_part = 1.0 - math.exp(-STEP_S / parameters.wall_warming_s)
        self._probe_parts = [1.0 - math.exp(-STEP_S / s) for s in (parameters.probe_fast_s, parameters.probe_slow_s)]
        self._probe_shares = [parameters.probe_fast_share, 1.0 - parameters.probe_fast_share]
        self._probe_c = [parameters.probe_start_c, parameters.probe_start_c]
        self._bath_c: float | None = None
        self._reading: tuple[int, float] | None = None
        self._undissolved_mol = 0.0
        self.refill()

    def copied(self) -> "World":
        """Return a world of its own that goes on from here as this one would."""
        other = copy(self)
        other._random = random.Random(0)  # noqa: S311
        other._random.setstate(self._random.getstate())
        other._upper, other._lower = copy(self._upper), copy(self._lower)
        other._pours = deque([list(each) for each in self._pours])
        other._probe_c, other._poured_cm3 = list(self._probe_c), list(self._poured_cm3)
        return other

    @property
    def time_s(self) -> float:
        """The moment the world has reached, bench seconds."""
        return self._start_s + self._steps * STEP_S

    @property
    def volume_cm3(self) -> float:
        """The liquid now in the cup."""
        return self._upper.volume_cm3 + self._lower.volume_cm3

    @property
    def still_to_flow_cm3(self) -> float:
        """What of the pours has not reached the cup yet."""
        return sum(volume_cm3 for volume_cm3, _ in self._pours)

    @property
    def end_point_cm3(self) -> float:
        """The alkali that neutralises the acid that was put into this cup, cm³."""
        p = self.parameters
        return self._acid_cm3 * p.acid_concentration_mol_dm3 / p.alkali_concentration_mol_dm3

    @property
    def room_temperature_c(self) -> float:
        """The room, drifting."""
        hours = (self.time_s - self._start_s) / 3600.0
        return self.parameters.room_temperature_c + self.parameters.room_drift_c_h * hours

    @property
    def true_temperature_c(self) -> float:
        """The liquid's temperature, as if it were mixed this moment."""
        return (self._upper.heat_j + self._lower.heat_j) / self.heat_capacity_j_k

    @property
    def heat_capacity_j_k(self) -> float:
        """What the liquid and the part of the cup that follows it at once take up, J/K."""
        return self._upper.heat_capacity_j_k + self._lower.heat_capacity_j_k

    @property
    def probe_temperature_c(self) -> float:
        """What the probe would report without noise and steps."""
        return sum(share * c for share, c in zip(self._probe_shares, self._probe_c, strict=True))

    def reading_c(self) -> float:
        """What the probe reports: with noise, rounded to its step. The same moment gives the same reading."""
        if self._reading is None or self._reading[0] != self._steps:
            p = self.parameters
            noisy_c = self.probe_temperature_c + self._random.gauss(0.0, p.probe_noise_c)
            self._reading = (self._steps, math.floor(noisy_c / p.probe_step_c + 0.5) * p.probe_step_c)
        return self._reading[1]

    def pour(self, volume_cm3: float, duration_s: float | None = None) -> None:
        """Alkali starts to flow now, for `duration_s` or at the usual pour rate."""
        if volume_cm3 <= 0.0 or (duration_s is not None and duration_s <= 0.0):
            raise ValueError("A pour needs a volume and a duration above zero.")
        rate = self.parameters.pour_rate_cm3_s if duration_s is None else volume_cm3 / duration_s
        self._pours.append([volume_cm3, rate])
        self._poured_cm3.append(volume_cm3)

    def take_back_pour(self) -> None:
        """The newest pour was none: what of it has not flowed does not, what has is out again with the heat it gave.

        Only the little that this heat lost to the room meanwhile stays lost. Nothing happens to a cup without a pour.
        """
        volume_cm3 = self._poured_cm3.pop() if self._poured_cm3 else 0.0
        if volume_cm3 and self._pours:
            volume_cm3 -= self._pours.pop()[0]
        in_cup_cm3 = self._upper.alkali_cm3 + self._lower.alkali_cm3
        if self.parameters.dissolving_s > 0.0:
            self._take_solid_back(volume_cm3)
        for half in (self._upper, self._lower):
            half.lose_alkali(min(volume_cm3 / in_cup_cm3, 1.0) * half.alkali_cm3 if in_cup_cm3 else 0.0)

    def _take_solid_back(self, amount_g: float) -> None:
        """What of it has dissolved is out again with the heat that it gave."""
        p = self.parameters
        amount_mol = amount_g * p.alkali_concentration_mol_dm3 / 1000.0
        whole_mol, self._undissolved_mol = self._undissolved_mol, 0.0
        self._lower.heat_j += max(amount_mol - whole_mol, 0.0) * p.enthalpy_kj_mol * 1000.0

    def refill(self, acid_volume_cm3: float | None = None, parameters: CupParameters | None = None) -> None:
        """The cup is emptied, rinsed, and gets fresh acid; the probe keeps its temperature.

        `parameters` are of other reagents in the same cup: from here on they are poured.
        """
        self.parameters = p = parameters or self.parameters
        self._acid_cm3 = p.acid_volume_cm3 if acid_volume_cm3 is None else acid_volume_cm3
        if self._acid_cm3 <= 0.0:
            raise ValueError("A refill needs a volume above zero.")
        self._upper, self._lower = (_Half(p, self._acid_cm3 / 2, p.acid_temperature_c) for _ in range(2))
        self._wall_c = self.room_temperature_c
        self._undissolved_mol = 0.0
        self._pours: deque[list[float]] = deque()
        self._poured_cm3: list[float] = []
        self.lost_by_open_lid_j = 0.0
        """What the surface lost because the lid was off, since the cup was filled."""

    def fill_with_water(self, volume_cm3: float, temperature_c: float) -> None:
        """The cup is emptied and gets so much water in place of acid; what is poured to it then does not react."""
        self.refill(volume_cm3)
        self._upper, self._lower = (_Half(self.parameters, volume_cm3 / 2, temperature_c) for _ in range(2))
        for half in (self._upper, self._lower):
            half.excess_acid_mol = 0.0

    def spill(self, volume_cm3: float) -> None:
        """The cup tips: so much of what is in it is lost (at most 90 %)."""
        part = min(volume_cm3 / self.volume_cm3, 0.9)
        for half in (self._upper, self._lower):
            half.take(part * half.volume_cm3)

    def dip_in_alkali(self) -> None:
        """The rinsed, wiped probe goes into the bottle of alkali."""
        self.hold_in(self.parameters.alkali_temperature_c)

    def stir(self, duration_s: float) -> None:
        """Somebody stirs from now on for so long, and then no more: until this is first called, all the time."""
        self._stirred_until_s = self.time_s + duration_s

    @property
    def stirred_for_s(self) -> float:
        """How much longer somebody stirs."""
        return max(self._stirred_until_s - self.time_s, 0.0)

    def put_lid(self, on: bool) -> None:
        """The lid goes on the cup, or is lifted: until this is first called it is on."""
        self._lid_on = on

    def hold_in(self, temperature_c: float) -> None:
        """The probe is held in much liquid, or air, of this temperature."""
        self._bath_c = temperature_c

    def back_in_cup(self) -> None:
        """The probe goes back into the cup."""
        self._bath_c = None

    def advance(self, to_time_s: float) -> None:
        """Time goes on to `to_time_s` (a time already past changes nothing)."""
        steps = math.floor((to_time_s - self._start_s) / STEP_S + 1e-6)
        while self._steps < steps:
            self._flow()
            self._dissolve()
            self._mix()
            self._exchange_heat()
            self._steps += 1

    def _flow(self) -> None:
        if not self._pours:
            return
        p, pour = self.parameters, self._pours[0]
        volume_cm3 = min(pour[0], pour[1] * STEP_S)
        pour[0] -= volume_cm3
        if pour[0] <= 1e-9:
            self._pours.popleft()
        base_mol = volume_cm3 * p.alkali_concentration_mol_dm3 / 1000.0
        heat_j = volume_cm3 * p.alkali_heat_capacity_j_cm3_k * p.alkali_temperature_c
        if p.dissolving_s > 0.0:
            self._undissolved_mol += base_mol
            base_mol = 0.0
        self._upper.add(_Parcel(0.0, volume_cm3, -base_mol, heat_j))

    def _dissolve(self) -> None:
        """Grains lie at the bottom: what dissolves takes its heat from the lower half, or gives it to it."""
        p = self.parameters
        if self._undissolved_mol <= 0.0:
            return
        gone_mol = self._undissolved_mol * (1.0 - math.exp(-STEP_S / p.dissolving_s))
        self._undissolved_mol -= gone_mol
        self._lower.heat_j -= gone_mol * p.enthalpy_kj_mol * 1000.0

    def _mix(self) -> None:
        """As much goes up as comes down, after the halves are level again."""
        upper, lower = self._upper, self._lower
        upper_cm3, lower_cm3 = upper.acid_cm3 + upper.alkali_cm3, lower.acid_cm3 + lower.alkali_cm3
        level_cm3 = 0.5 * (upper_cm3 - lower_cm3)
        mixed_part = self._stirred_part if self.time_s < self._stirred_until_s else self._still_part
        swap_cm3 = 0.25 * (upper_cm3 + lower_cm3) * mixed_part
        down, up = upper.take(swap_cm3 + max(level_cm3, 0.0)), lower.take(swap_cm3 + max(-level_cm3, 0.0))
        lower.add(down)
        upper.add(up)

    def _exchange_heat(self) -> None:
        p, room_c = self.parameters, self.room_temperature_c
        upper, lower = self._upper, self._lower
        upper_j_k, lower_j_k = upper.heat_capacity_j_k, lower.heat_capacity_j_k
        surface_w = p.loss_w_k * p.surface_share * (upper.heat_j / upper_j_k - room_c)
        if not self._lid_on:
            surface_w *= OPEN_LOSS
            self.lost_by_open_lid_j += surface_w * (1.0 - 1.0 / OPEN_LOSS) * STEP_S
        upper.heat_j -= surface_w * STEP_S
        # the wall takes from both halves; through it the rest of the loss goes
        for half, half_j_k in ((upper, upper_j_k), (lower, lower_j_k)):
            half_c = half.heat_j / half_j_k
            to_wall_j = 0.5 * p.wall_heat_capacity_j_k * self._wall_part * (half_c - self._wall_c)
            through_j = 0.5 * p.loss_w_k * (1.0 - p.surface_share) * (half_c - room_c) * STEP_S
            half.heat_j -= to_wall_j + through_j
            if p.wall_heat_capacity_j_k > 0.0:
                self._wall_c += to_wall_j / p.wall_heat_capacity_j_k
        around_c = lower.heat_j / lower_j_k if self._bath_c is None else self._bath_c
        for body, part in enumerate(self._probe_parts):
            warmed_c = part * (around_c - self._probe_c[body])
            self._probe_c[body] += warmed_c
            if self._bath_c is None:
                lower.heat_j -= self._probe_shares[body] * p.probe_heat_capacity_j_k * warmed_c
