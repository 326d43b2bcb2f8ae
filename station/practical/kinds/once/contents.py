"""What is in the cup of one repeat that mixed once, with uncertainties: from the plan, and what was truly taken."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from station.chemistry.heat import Measured, Number, Sheet, Step, number, put, water_formed
from station.chemistry.pairs import neutralisation_steps
from station.chemistry.reagents import find_reagent
from station.practical.dataset import RepeatData
from station.practical.kinds.once.mixture import acid_and_alkali, mixture_of
from station.practical.kinds.once.plan import OncePlan
from station.words import Message, plain, say

U_VOLUME_CM3: Final = 0.3
"""A 50 cm³ measuring cylinder, class A: ±0.5 cm³ (ASTM E1272 gives 0.25 to 0.50), rectangular."""
U_MASS_G: Final = 0.01
"""Two readings of a 0.01 g balance: common practice, no source; of another, one step of its last digit."""
U_SOLID: Final = 1 / 3
"""Of the heat capacity of a solid, relative."""
NOTHING_TO_NOTE: Final = plain("")


@dataclass(frozen=True)
class Contents:
    """Heat capacities in J/K of all in the cup and of the added part, the amount that reacts (mol, or None).

    `added_text` is the added mass or volume as it was typed: 4.0 g stays 4.0 g in every line.
    """

    all_j_k: Measured
    added_j_k: Measured
    amount_mol: Measured | None
    of_what: Message
    added_text: str
    note: Message = NOTHING_TO_NOTE
    amount_steps: tuple[Step, ...] = ()


def taken(plan: OncePlan, repeat: RepeatData) -> OncePlan:
    """Return the plan with the mass or volume that this repeat truly took."""
    addition = plan.addition
    if addition.mass_g is not None and repeat.mass_g is not None:
        u_mass_g = addition.u_mass_g if repeat.places is None else 10.0**-repeat.places
        changed = addition.model_copy(update={"mass_g": repeat.mass_g, "u_mass_g": u_mass_g})
    elif addition.mass_g is None and repeat.pours and repeat.pours[0][1] > 0.0:
        changed = addition.model_copy(update={"volume_cm3": repeat.pours[0][1]})
    else:
        return plan
    return plan.model_copy(update={"addition": changed})


def contents_of(plan: OncePlan, places: int | None = None) -> Contents:
    """Return what the cup holds after mixing, and how much of it reacts. Raises ValueError for what cannot be mixed.

    `places` are the decimals with which the added amount was typed.
    """
    mixed, addition = mixture_of(plan), plan.addition
    found = find_reagent(addition.name)
    amount = plan.portion_cm3 if addition.mass_g is None else addition.mass_g
    text = put(amount) if places is None else f"{amount:.{places}f}"
    if addition.mass_g is not None:
        return _dissolved(plan, addition.mass_g, text)
    all_j_k = _within(mixed.all_j_k, mixed.u_relative)
    added_j_k = _within(mixed.added_j_k, 0.02 if mixed.why else 0.01)
    if plan.liquid.is_water:
        return Contents(all_j_k, added_j_k, None, found.name, text)
    if mixed.amount_mol is None:
        return Contents(all_j_k, added_j_k, None, say("of-reaction"), text, mixed.why or NOTHING_TO_NOTE)
    acid, alkali = acid_and_alkali(plan)
    u_liquid, u_added = plan.liquid.u_volume_cm3 or U_VOLUME_CM3, addition.u_volume_cm3 or U_VOLUME_CM3
    u_acid, u_alkali = (u_liquid, u_added) if find_reagent(plan.liquid.name).is_acid else (u_added, u_liquid)
    water = water_formed(
        neutralisation_steps(acid[0], alkali[0]),
        Measured(acid[1]),
        Measured(acid[2], u_acid),
        Measured(alkali[1]),
        Measured(alkali[2], u_alkali),
    )
    return Contents(
        all_j_k,
        added_j_k,
        Measured(water.value, water.u),
        say("of-water-formed"),
        text,
        amount_steps=water.steps,
    )


def _dissolved(plan: OncePlan, mass_g: float, text: str) -> Contents:
    solid, mixed = find_reagent(plan.addition.name), mixture_of(plan)
    u_mass_g = plan.addition.u_mass_g or U_MASS_G
    u_liquid = (plan.liquid.u_volume_cm3 or U_VOLUME_CM3) / plan.liquid.volume_cm3
    note = NOTHING_TO_NOTE if plan.liquid.is_water else say("once-counted-as-water", reagent=plan.liquid.name)
    return Contents(
        _within(mixed.all_j_k, (mixed.u_relative**2 + u_liquid**2) ** 0.5),
        _within(mixed.added_j_k, U_SOLID),
        Measured(mass_g / solid.molar_mass_g_mol, u_mass_g / solid.molar_mass_g_mol),
        say("of-dissolved", reagent=solid.weighed_name),
        text,
        note,
        _amount_of_solid(solid.weighed_name, Measured(mass_g, u_mass_g), text, solid.molar_mass_g_mol),
    )


def _amount_of_solid(name: Message, mass_g: Measured, text: str, molar_mass_g_mol: float) -> tuple[Step, ...]:
    """The line from a mass to an amount."""
    sheet = Sheet()
    mass: Number = number(mass_g, "the mass")
    sheet.line(
        say("step-amount", reagent=name),
        "n = m ÷ M",
        f"n = {text} g ÷ {put(molar_mass_g_mol)} g/mol",
        mass / molar_mass_g_mol,
        "mol",
    )
    return tuple(sheet.steps)


def _within(value: float, relative: float) -> Measured:
    return Measured(value, value * relative)
