"""From the state to what the analysis needs, and through JSON to the worker and back."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import asdict, dataclass, replace
from math import hypot
from typing import Any, Final, Self

from station.analysis.probe.correction import U_ELSEWHERE, UNCHECKED_C
from station.chemistry.neutralisation import (
    SCHOOL_VALUES,
    expected_enthalpy,
    mixing_enthalpy,
    neutralisation_enthalpy,
    solution_enthalpy,
)
from station.chemistry.pairs import Neutralisation
from station.chemistry.reagent import Kind, Reagent
from station.practical.checks.correction import ProbeUsed, alike, changed_note, differing_note, used_in, used_json
from station.practical.kinds import plan_from
from station.practical.plan import Plan
from station.practical.state import Repeat, State
from station.words import Message, join, plain, said, say, written


@dataclass(frozen=True)
class ReadingRow:
    """A reading that counts: portion number (0: the start), total added in cm³, temperature in °C."""

    portion: int
    volume_cm3: float
    temperature_c: float


@dataclass(frozen=True)
class RepeatData:
    """One repeat as the analysis sees it: readings, and the trace and pours where there is one.

    `ended` is False for a repeat under way: its numbers are shown, and kept out of a mean with ended ones.
    `samples` are (time_s, temperature_c), good ones only; `pours` are (time_s of the press, volume_cm3,
    unsure); `read_s` (portion, time_s of its reading); times since the repeat's start. `probe` says what was added to
    what the probe said (None: nothing is known of that, or no probe was used). `division_c`: the samples were read off
    a thermometer of such divisions. `mass_g` and `places`: what was truly added at once, and its decimals as typed.
    `cup`: which of the plan's cups it is, where that is told.
    `questions` (portion, 0: the start, and code) were asked, and nobody answered: these readings are left out already.
    `of_file`: nobody was there to be asked, so what the fit itself finds is asked as well; `was_asked`: a station has
    asked, and the file says so.
    """

    repeat: int
    readings: tuple[ReadingRow, ...]
    samples: tuple[tuple[float, float], ...] = ()
    pours: tuple[tuple[float, float, bool], ...] = ()
    ended: bool = True
    read_s: tuple[tuple[int, float], ...] = ()
    probe: ProbeUsed | None = None
    division_c: float | None = None
    mass_g: float | None = None
    places: int | None = None
    cup: int | None = None
    questions: tuple[tuple[int, str], ...] = ()
    of_file: bool = False
    was_asked: bool = False

    def in_doubt(self, portion: int, code: str) -> Self:
        """Return the same with this portion asked about and nobody to answer: who knows what went in."""
        return replace(
            self,
            readings=tuple(row for row in self.readings if row.portion != portion),
            pours=tuple(
                (time_s, volume_cm3, unsure or number == portion)
                for number, (time_s, volume_cm3, unsure) in enumerate(self.pours, 1)
            ),
            questions=(*self.questions, (portion, code)),
        )


def questions_json(repeat: RepeatData) -> list[dict[str, Any]]:
    """Return the questions that nobody has answered, as results have them."""
    return [{"portion": portion, "code": code} for portion, code in repeat.questions]


@dataclass(frozen=True)
class Known:
    """What was measured beside the trace: the temperature of what is added, in °C, if it was.

    `alkali_typed` says that another thermometer measured it: then the probe's own `u_probe_c` does not cancel in the
    difference to the cup. `u_slope` is the relative u of every difference that the probe measures.
    """

    alkali_c: float | None = None
    alkali_u_c: float | None = None
    alkali_typed: bool = False
    u_probe_c: float = 0.0
    u_slope: float = 0.0


def repeat_data(repeat: Repeat) -> RepeatData:
    """Return what the analysis sees of a repeat: readings that nobody doubts, the trace, the pours.

    Where readings were typed there is no trace to speak of: the probe was missing or failing.
    """
    typed = any(reading.typed for reading in repeat.readings)
    by_clock, added = repeat.clocked, repeat.portions[0] if repeat.portions else None
    return RepeatData(
        repeat.repeat,
        tuple(
            ReadingRow(reading.portion, repeat.added_cm3(reading.portion), reading.temperature_c)
            for reading in sorted(repeat.readings, key=lambda each: each.portion)
            if reading.temperature_c is not None and not repeat.unsure(reading.portion)
        ),
        tuple((each.at_s, each.temperature_c) for each in by_clock)
        if by_clock
        else tuple(
            (round(each.time_s - repeat.begun_s, 3), each.temperature_c)
            for each in sorted(repeat.samples, key=lambda each: each.time_s)
            if each.temperature_c is not None and not typed
        ),
        tuple(
            (round(each.time_s - repeat.begun_s, 3), each.volume_cm3, repeat.unsure_volume(each.portion))
            for each in repeat.portions
        ),
        repeat.status == "ended",
        tuple((each.portion, round(each.time_s - repeat.begun_s, 3)) for each in repeat.readings),
        None if by_clock else used_in(repeat),
        max((each.division_c for each in by_clock), default=None),
        None if added is None else added.mass_g,
        None if added is None else added.places,
        repeat.cup,
        repeat.asked,
    )


@dataclass(frozen=True)
class Basis:
    """All that results depend on, as the state holds it: a question is made of nothing else.

    Its parts are unchangeable and mostly the very same from one sample to the next, so that two compare at once.
    """

    plan: Plan
    alkali_c: float | None
    alkali_u_c: float | None
    alkali_typed: bool
    repeats: tuple[Repeat, ...]

    @classmethod
    def of(cls, state: State, repeats: Iterable[Repeat]) -> Self:
        """Return the basis of results of these repeats."""
        told = tuple(repeats)
        alkali = (state.alkali_c, state.alkali_u_c, state.alkali_typed) if told else (None, None, False)
        return cls(state.plan, *alkali, told)


def basis_of(state: State) -> Basis:
    """Return what a bench's results depend on: the repeats that count, the one under way up to its newest reading.

    What came after that reading is no result yet: neither each sample nor each pour asks for a calculation.
    """
    begun = (repeat for repeat in state.counted if repeat.status != "running" or repeat.readings)
    return Basis.of(state, (_as_read(repeat) if repeat.status == "running" else repeat for repeat in begun))


def _as_read(repeat: Repeat) -> Repeat:
    newest, until_s = max(each.portion for each in repeat.readings), max(each.time_s for each in repeat.readings)
    return replace(
        repeat,
        portions=tuple(each for each in repeat.portions if each.portion <= newest),
        samples=tuple(each for each in repeat.samples if each.time_s <= until_s),
        clocked=tuple(each for each in repeat.clocked if repeat.begun_s + each.at_s <= until_s),
    )


def question_for(state: State) -> dict[str, Any]:
    """Return the JSON question about a state."""
    return question_of(basis_of(state))


def question_of(basis: Basis) -> dict[str, Any]:
    """Return the JSON question that the worker answers."""
    data = [repeat_data(repeat) for repeat in basis.repeats]
    return {
        "plan": basis.plan.model_dump(mode="json"),
        "alkali_c": basis.alkali_c,
        "alkali_u_c": basis.alkali_u_c,
        "alkali_typed": basis.alkali_typed,
        "repeats": [
            {
                "repeat": each.repeat,
                "readings": [[row.portion, row.volume_cm3, row.temperature_c] for row in each.readings],
                "samples": each.samples,
                "pours": each.pours,
                "ended": each.ended,
                "read_s": each.read_s,
                "division_c": each.division_c,
                "mass_g": each.mass_g,
                "places": each.places,
                "cup": each.cup,
                "questions": each.questions,
                "probe": None if each.probe is None else {**asdict(each.probe), "day": written(each.probe.day)},
            }
            for each in data
        ],
    }


def from_question(question: Mapping[str, Any]) -> tuple[Plan, Sequence[RepeatData], Known]:
    """Return plan, repeats and what else is known of such a question."""
    repeats = [
        RepeatData(
            each["repeat"],
            tuple(ReadingRow(*row) for row in each["readings"]),
            tuple((time_s, temperature_c) for time_s, temperature_c in each["samples"]),
            tuple((time_s, volume_cm3, unsure) for time_s, volume_cm3, unsure in each["pours"]),
            each["ended"],
            tuple((portion, time_s) for portion, time_s in each["read_s"]),
            None if each["probe"] is None else ProbeUsed(**{**each["probe"], "day": said(each["probe"]["day"])}),
            each.get("division_c"),
            each.get("mass_g"),
            each.get("places"),
            each.get("cup"),
            tuple((portion, code) for portion, code in each.get("questions", ())),
        )
        for each in question["repeats"]
    ]
    known = Known(question["alkali_c"], question["alkali_u_c"], question["alkali_typed"])
    return plan_from(question["plan"]), repeats, known


# The mean curve of a practical: readings of the same portion number over the repeats.


def mean_rows(repeats: Sequence[RepeatData]) -> tuple[ReadingRow, ...]:
    """Return the mean curve over the repeats: readings of the same portion number together."""
    rows: dict[int, list[ReadingRow]] = {}
    for repeat in repeats:
        for row in repeat.readings:
            rows.setdefault(row.portion, []).append(row)
    return tuple(
        ReadingRow(
            portion,
            sum(row.volume_cm3 for row in same) / len(same),
            sum(row.temperature_c for row in same) / len(same),
        )
        for portion, same in sorted(rows.items())
    )


# The value that books give, to stand beside what the bench found, with its source in words.


Json = dict[str, Any]

WATER: Final = "CODATA Key Values (1989); Singh et al., Can. J. Chem. 54, 3315 (1976)"
IONISATION: Final = "Goldberg et al., J. Phys. Chem. Ref. Data 31, 231 (2002)"
CONCENTRATION: Final = "Silvester and Pitzer, J. Solution Chem. 7, 327 (1978); Parker, NSRDS-NBS 2 (1965)"
"""In short what `chemistry.neutralisation` and `chemistry.dilution` name in full."""


def accepted_neutralisation(
    pair: Neutralisation,
    acid_mol_dm3: float,
    alkali_mol_dm3: float,
    temperature_c: float,
    volumes_cm3: tuple[float, float] | None = None,
) -> Json | None:
    """Return enthalpy per mole of water (kJ/mol) at these concentrations, u, text and source; None where unknown.

    `volumes_cm3` of acid and alkali that are poured together; None: of each just enough.
    """
    try:
        if volumes_cm3 is None:
            here = expected_enthalpy(pair.acid, acid_mol_dm3, pair.alkali, alkali_mol_dm3, temperature_c)
        else:
            acid_cm3, alkali_cm3 = volumes_cm3
            acid, alkali = (pair.acid, acid_mol_dm3, acid_cm3), (pair.alkali, alkali_mol_dm3, alkali_cm3)
            here = mixing_enthalpy(*acid, *alkali, temperature_c)
        dilute = neutralisation_enthalpy(pair.acid, pair.alkali)
    except ValueError:
        return None
    text = say(
        "accepted-neutralisation",
        strength=_strength(pair),
        here_kj_mol=f"{here.enthalpy_kj_mol:.1f}",
        temperature_c=f"{temperature_c:.0f}",
        dilute_kj_mol=f"{dilute.enthalpy_kj_mol:.1f}",
    )
    return {
        "enthalpy_kj_mol": round(here.enthalpy_kj_mol, 2),
        "u": round(here.u_enthalpy_kj_mol, 2),
        "text": join([text, _in_schools(pair)]),
        "source": "; ".join((WATER, *((IONISATION,) if _ionises(pair) else ()), CONCENTRATION)),
    }


def accepted_solution(solid: Reagent, solid_g: float, water_g: float) -> Json | None:
    """Return the enthalpy of dissolving one mole in so much water at 25 °C, u, text and source; None where unknown."""
    much, here = solid.solution_enthalpy_kj_mol, solution_enthalpy(solid, solid_g, water_g)
    if much is None or here is None:
        return None
    differs = abs(here.enthalpy_kj_mol - much) >= LEAST_KJ_MOL
    text = say("accepted-solution", reagent=solid.weighed_name, enthalpy_kj_mol=f"{much:+.1f}")
    if differs:
        text = join([text, say("accepted-in-this-water", enthalpy_kj_mol=f"{here.enthalpy_kj_mol:+.1f}")])
    return {
        "enthalpy_kj_mol": round(here.enthalpy_kj_mol, 2),
        "u": round(here.u_enthalpy_kj_mol, 2),
        "text": text,
        "source": "; ".join((*solid.sources, *((CONCENTRATION,) if differs else ()))),
    }


LEAST_KJ_MOL: Final = 0.05
"""What concentration must change to be told."""


def _ionises(pair: Neutralisation) -> bool:
    return bool(pair.acid.ionisations or pair.alkali.ionisations)


def _strength(pair: Neutralisation) -> Message:
    acid = "strong" if pair.acid.kind is Kind.STRONG_ACID else "weak"
    alkali = "strong" if pair.alkali.kind is Kind.HYDROXIDE else "weak"
    return say("strength-pair", acid=acid, alkali=alkali)


def _in_schools(pair: Neutralisation) -> Message:
    """What school books quote: for a strong acid with one proton the ions are the same whatever it is called."""
    strong = pair.acid.kind is Kind.STRONG_ACID and pair.acid.protons == 1
    formula = "HCl" if strong else pair.acid.formula
    quoted = [each.enthalpy_kj_mol for each in SCHOOL_VALUES if each.acid == formula]
    if not quoted or pair.alkali.kind is not Kind.HYDROXIDE:
        return plain("")
    if len(quoted) == 1:
        return say("accepted-school-one", enthalpy_kj_mol=f"{quoted[0]:.1f}")
    return say("accepted-school-range", from_kj_mol=f"{max(quoted):.1f}", to_kj_mol=f"{min(quoted):.1f}")


# The probe's share of the results: its correction, and its u in temperatures that are no differences.


UNTOLD = ProbeUsed(None, "", 20.0, 0.0, UNCHECKED_C, U_ELSEWHERE, told=False)


def probe_of(repeat: RepeatData) -> ProbeUsed | None:
    """Return what corrected a repeat; None where its temperatures are not a probe's."""
    if not repeat.samples or repeat.division_c is not None:
        return None
    return repeat.probe or UNTOLD


def mean_probe(repeats: Sequence[RepeatData]) -> tuple[ProbeUsed | None, list[str]]:
    """Return what corrected the newest of these repeats, and a warning when they were not corrected alike."""
    used = [each for each in (probe_of(repeat) for repeat in repeats) if each is not None]
    return (used[-1] if used else None), ([] if alike(used) else [differing_note()])


def with_probe(found: Json, used: ProbeUsed | None) -> Json:
    """Return a result with what is known of the probe in it; the crossing's temperature gets its u as well."""
    if used is None:
        return found
    lines = found.get("straight_lines")
    if lines and lines.get("u_temperature_c") is not None:
        lines["u_temperature_c"] = hypot(lines["u_temperature_c"], used.u_c)
    if used.changed and "repeat" in found:
        found["notes"] = [*found["notes"], changed_note(found["repeat"])]
    found["probe"] = used_json(used)
    return found
