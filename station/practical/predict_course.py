"""From a plan to the course of one repeat that the analysis predicts."""

from station.analysis.heat_inputs import HeatRefused
from station.analysis.predict import Course
from station.chemistry.neutralisation import expected_enthalpy
from station.chemistry.pairs import Neutralisation
from station.practical.dataset import Known
from station.practical.heat import U_ALKALI_C, heat_setup
from station.practical.plan import Plan, PortionsPlan
from station.practical.predict_minutes import POUR_S, START_S, WAIT_S

USUAL_ROOM_C = 20.0


def usual_start_c(plan: Plan) -> float:
    """The temperature in the cup at the start: the room's, 20 °C when the plan does not say."""
    room_c = plan.surroundings.room_c
    return USUAL_ROOM_C if room_c is None else room_c


def course_of(plan: PortionsPlan, pair: Neutralisation, acid_mol_dm3: float) -> Course:
    """Return the course. Raises HeatRefused with the reason when the heat of this pair cannot be told.

    The alkali is taken to be as warm as the acid unless the plan says otherwise, and to be measured before.
    """
    begin_c = usual_start_c(plan)
    alkali_c = plan.alkali.temperature_c
    known = Known(begin_c if alkali_c is None else alkali_c, U_ALKALI_C)
    enthalpy = enthalpy_kj_mol(plan, pair, acid_mol_dm3, begin_c)
    alkali_mol_dm3 = plan.alkali.concentration_mol_dm3
    return Course(
        setup=heat_setup(plan, pair, acid_mol_dm3, known, None),
        end_point_cm3=acid_mol_dm3 * plan.acid.volume_cm3 / (alkali_mol_dm3 * pair.acid_per_alkali),
        # kJ/mol times mol/dm³ is J/cm³.
        heat_j_cm3=-enthalpy * alkali_mol_dm3 * pair.alkali_hydroxides,
        start_c=begin_c,
        portion_cm3=plan.portion_cm3,
        count=plan.count,
        u_portion_cm3=plan.portions.u_cm3,
        base_s=START_S,
        wait_s=WAIT_S[plan.pace],
        pour_s=POUR_S,
    )


def enthalpy_kj_mol(plan: PortionsPlan, pair: Neutralisation, acid_mol_dm3: float, temperature_c: float) -> float:
    """Return the enthalpy per mole of water formed; of an acid with several steps the mean of them."""
    alkali_mol_dm3 = plan.alkali.concentration_mol_dm3
    try:
        return expected_enthalpy(pair.acid, acid_mol_dm3, pair.alkali, alkali_mol_dm3, temperature_c).enthalpy_kj_mol
    except ValueError as error:
        raise HeatRefused("no_enthalpy", f"No curve can be predicted: {error}.") from None


def scaled(plan: PortionsPlan, factor: float, glassware: str | None) -> PortionsPlan:
    """Return the plan with both solutions at ``factor`` of their strength, portions measured with other glassware."""
    acid, alkali, portions = plan.acid, plan.alkali, plan.portions
    measured = {} if glassware is None else {"glassware": glassware, "u_volume_cm3": None}
    return plan.model_copy(
        update={
            "acid": acid.model_copy(
                update={
                    "concentration_mol_dm3": _times(acid.concentration_mol_dm3, factor),
                    "prepared_mol_dm3": _times(acid.prepared_mol_dm3, factor),
                }
            ),
            "alkali": alkali.model_copy(update={"concentration_mol_dm3": alkali.concentration_mol_dm3 * factor}),
            "portions": portions.model_copy(update=measured),
        }
    )


def _times(value: float | None, factor: float) -> float | None:
    return None if value is None else value * factor
