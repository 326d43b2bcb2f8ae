"""The value that books give, to stand beside what the bench found, with its source in words."""

from typing import Any, Final

from station.chemistry.neutralisation import SCHOOL_VALUES, expected_enthalpy, neutralisation_enthalpy
from station.chemistry.pairs import Neutralisation
from station.chemistry.reagent import Kind, Reagent

Json = dict[str, Any]

WATER: Final = "CODATA Key Values (1989); Singh et al., Can. J. Chem. 54, 3315 (1976)"
IONISATION: Final = "Goldberg et al., J. Phys. Chem. Ref. Data 31, 231 (2002)"
CONCENTRATION: Final = "Silvester and Pitzer, J. Solution Chem. 7, 327 (1978); Parker, NSRDS-NBS 2 (1965)"
"""In short what `chemistry.neutralisation` and `chemistry.dilution` name in full."""


def accepted_neutralisation(
    pair: Neutralisation, acid_mol_dm3: float, alkali_mol_dm3: float, temperature_c: float
) -> Json | None:
    """Return enthalpy per mole of water (kJ/mol) at these concentrations, u, text and source; None where unknown."""
    try:
        here = expected_enthalpy(pair.acid, acid_mol_dm3, pair.alkali, alkali_mol_dm3, temperature_c)
        dilute = neutralisation_enthalpy(pair.acid, pair.alkali)
    except ValueError:
        return None
    text = (
        f"{_strength(pair)}: {here.enthalpy_kj_mol:.1f} kJ/mol at {temperature_c:.0f} °C and these concentrations, "
        f"{dilute.enthalpy_kj_mol:.1f} kJ/mol at 25 °C in very dilute solution."
    )
    return {
        "enthalpy_kj_mol": round(here.enthalpy_kj_mol, 2),
        "u": round(here.u_enthalpy_kj_mol, 2),
        "text": text + _in_schools(pair),
        "source": "; ".join((WATER, *((IONISATION,) if _ionises(pair) else ()), CONCENTRATION)),
    }


def accepted_solution(solid: Reagent) -> Json | None:
    """Return the enthalpy of dissolving one mole in much water at 25 °C; u is 0 where the source states none."""
    if solid.solution_enthalpy_kj_mol is None:
        return None
    return {
        "enthalpy_kj_mol": solid.solution_enthalpy_kj_mol,
        "u": solid.u_solution_enthalpy_kj_mol or 0.0,
        "text": f"{solid.name} in much water at 25 °C: {solid.solution_enthalpy_kj_mol:.1f} kJ/mol.",
        "source": "; ".join(solid.sources),
    }


def _ionises(pair: Neutralisation) -> bool:
    return bool(pair.acid.ionisations or pair.alkali.ionisations)


def _strength(pair: Neutralisation) -> str:
    acid = "Strong" if pair.acid.kind is Kind.STRONG_ACID else "Weak"
    alkali = "strong" if pair.alkali.kind is Kind.HYDROXIDE else "weak"
    return f"{acid} acid with {alkali} alkali"


def _in_schools(pair: Neutralisation) -> str:
    """What school books quote: for a strong acid with one proton the ions are the same whatever it is called."""
    strong = pair.acid.kind is Kind.STRONG_ACID and pair.acid.protons == 1
    name = "hydrochloric acid" if strong else pair.acid.name
    quoted = [each.enthalpy_kj_mol for each in SCHOOL_VALUES if each.acid == name]
    if not quoted or pair.alkali.kind is not Kind.HYDROXIDE:
        return ""
    if len(quoted) == 1:
        return f" School books give {quoted[0]:.1f} kJ/mol."
    return f" School books give {max(quoted):.1f} to {min(quoted):.1f} kJ/mol."
