"""What a reagent's label says, as a weighed substance or as a solution of some concentration (CLP, GHS).

The limits stand in ``hazards_table``; molar concentrations become mass percent by the density of the solution at
20 °C. Labels follow Articles 26 and 27 of Regulation (EC) No 1272/2008: what a graver statement or pictogram says
already is not said again. A label helps a risk assessment and does not replace it.
"""

from dataclasses import dataclass
from types import MappingProxyType
from typing import Final, Literal, NamedTuple

from station.chemistry.reagent import Reagent
from station.chemistry.reagents import find_reagent
from station.chemistry.solutions import mass_fraction
from station.words import Message, say

# Hazard classes of the reagents under Regulation (EC) No 1272/2008 (CLP), and the limits that hold in solution.
#
# Limits are mass percent of the dissolved substance without water of crystallisation. Each entry says where it comes
# from, and in a comment how far it was checked: "seen" means that the figure was seen in public copies of the entry or
# in data sheets that quote it, "from memory" that it was not. The consolidated text of Annex VI itself was not at hand.
# May be corrosive to metals (H290) is no part of Annex VI: suppliers say it; here the bottle that is stored does.


class Category(NamedTuple):
    """A hazard class and category: its family (skin, eye …), statement, pictogram and signal word (Annex I, III)."""

    family: str
    code: str
    text: Message
    pictogram: str | None = None
    signal: Literal["danger", "warning"] | None = None


CATEGORIES: Final = MappingProxyType(
    {
        "Ox. Liq. 3": Category("fire", "H272", say("hazard-h272"), "GHS03", "warning"),
        "Ox. Sol. 3": Category("fire", "H272", say("hazard-h272"), "GHS03", "warning"),
        "Met. Corr. 1": Category("metals", "H290", say("hazard-h290"), "GHS05", "warning"),
        "Flam. Liq. 3": Category("flammable", "H226", say("hazard-h226"), "GHS02", "warning"),
        "Acute Tox. 4 (oral)": Category("oral", "H302", say("hazard-h302"), "GHS07", "warning"),
        "Acute Tox. 4 (dermal)": Category("dermal", "H312", say("hazard-h312"), "GHS07", "warning"),
        "Skin Corr. 1A": Category("skin", "H314", say("hazard-h314"), "GHS05", "danger"),
        "Skin Corr. 1B": Category("skin", "H314", say("hazard-h314"), "GHS05", "danger"),
        "Skin Irrit. 2": Category("skin", "H315", say("hazard-h315"), "GHS07", "warning"),
        "Eye Dam. 1": Category("eye", "H318", say("hazard-h318"), "GHS05", "danger"),
        "Eye Irrit. 2": Category("eye", "H319", say("hazard-h319"), "GHS07", "warning"),
        "Acute Tox. 3 (inhalation)": Category("inhaled", "H331", say("hazard-h331"), "GHS06", "danger"),
        "Acute Tox. 4 (inhalation)": Category("inhaled", "H332", say("hazard-h332"), "GHS07", "warning"),
        "STOT SE 3": Category("airways", "H335", say("hazard-h335"), "GHS07", "warning"),
        "Respiratory tract": Category("tract", "EUH071", say("hazard-euh071")),
        "Aquatic Acute 1": Category("water", "H400", say("hazard-h400"), "GHS09", "warning"),
        "Aquatic Chronic 1": Category("water, long", "H410", say("hazard-h410"), "GHS09", "warning"),
        "Aquatic Chronic 2": Category("water, long", "H411", say("hazard-h411"), "GHS09"),
        "Aquatic Chronic 3": Category("water, long", "H412", say("hazard-h412")),
    }
)
"""In a family the graver category stands first. Texts: Annex III of the regulation."""

Limits = tuple[tuple[float, str], ...]
"""(mass percent from which it holds, category)."""

GENERIC: Final[MappingProxyType[str, Limits]] = MappingProxyType(
    {
        # Annex I, Tables 3.2.3 and 3.3.3 (seen: 5 % skin corrosion, 3 % eye damage, 1 % relevant ingredients).
        "Skin Corr. 1A": ((5, "Skin Corr. 1A"), (1, "Skin Irrit. 2"), (3, "Eye Dam. 1"), (1, "Eye Irrit. 2")),
        "Skin Corr. 1B": ((5, "Skin Corr. 1B"), (1, "Skin Irrit. 2"), (3, "Eye Dam. 1"), (1, "Eye Irrit. 2")),
        "Skin Irrit. 2": ((10, "Skin Irrit. 2"),),
        "Eye Dam. 1": ((3, "Eye Dam. 1"), (1, "Eye Irrit. 2")),
        "Eye Irrit. 2": ((10, "Eye Irrit. 2"),),
        "STOT SE 3": ((20, "STOT SE 3"),),  # Annex I, 3.8.3.4.5; from memory
        # Annex I, 3.1.3.6 with the converted estimates of Table 3.1.2: 500, 1100 mg/kg and 1.5 mg/l; from memory.
        "Acute Tox. 4 (oral)": ((25, "Acute Tox. 4 (oral)"),),
        "Acute Tox. 4 (dermal)": ((55, "Acute Tox. 4 (dermal)"),),
        "Acute Tox. 4 (inhalation)": ((30, "Acute Tox. 4 (inhalation)"),),
        "Aquatic Acute 1": ((25, "Aquatic Acute 1"),),  # Annex I, Table 4.1.1, M = 1; from memory
    }
)
"""What one ingredient of that category makes of the mixture. What is not here (a solid oxidiser) ends in solution."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Entry:
    """One reagent: categories of the substance itself, limits that replace the generic ones of their family, source.

    ``as_hydroxide``: a strong alkali without limits of its own is also held against sodium hydroxide's at the same
    concentration of hydroxide, because per mass percent the generic ones are laxer.
    """

    substance: tuple[str, ...] = ()
    limits: Limits = ()
    source: Message
    as_hydroxide: bool = False


CLP: Final = say("source-clp")
SUPPLIERS: Final = say("source-suppliers-limits")
NOT_CLASSIFIED: Final = say("source-suppliers")


def annex_vi(index: str) -> Message:
    """The entry of Table 3 with that index number."""
    return say("source-annex-vi", regulation=CLP, index=index)


_CAUSTIC: Final[Limits] = (
    (5, "Skin Corr. 1A"),
    (2, "Skin Corr. 1B"),
    (0.5, "Skin Irrit. 2"),
    (2, "Eye Dam. 1"),
    (0.5, "Eye Irrit. 2"),
)
_COPPER: Final[Limits] = ((2.5, "Aquatic Chronic 1"), (0.25, "Aquatic Chronic 2"), (0.025, "Aquatic Chronic 3"))
"""Annex I, Table 4.1.2 with M = 10, which is from memory."""
_CITRIC: Final = Entry(substance=("Eye Irrit. 2", "STOT SE 3"), source=annex_vi("607-750-00-3"))  # seen, index no. not
_OXALIC: Final = Entry(  # seen: H302, H312 as in the entry, H318 by suppliers
    substance=("Acute Tox. 4 (oral)", "Acute Tox. 4 (dermal)", "Eye Dam. 1"),
    source=say("source-and-suppliers", source=annex_vi("607-006-00-8")),
)
_NITRATE: Final = Entry(substance=("Ox. Sol. 3", "Eye Irrit. 2"), source=SUPPLIERS)
_LITHIUM_HYDROXIDE: Final = Entry(  # seen
    substance=("Skin Corr. 1B", "Acute Tox. 4 (oral)"), source=SUPPLIERS, as_hydroxide=True
)
_BARIUM_HYDROXIDE: Final = Entry(  # H302 and H332 of barium salts, H314 of suppliers: from memory
    substance=("Skin Corr. 1B", "Acute Tox. 4 (oral)", "Acute Tox. 4 (inhalation)"),
    source=say("source-and-suppliers", source=annex_vi("056-002-00-7")),
    as_hydroxide=True,
)
_SODIUM_CARBONATE: Final = Entry(substance=("Eye Irrit. 2",), source=annex_vi("011-005-00-2"))  # seen, index no. not
_CALCIUM_CHLORIDE: Final = Entry(substance=("Eye Irrit. 2",), source=annex_vi("017-013-00-2"))  # seen, index no. not
_HARMLESS: Final = Entry(source=NOT_CLASSIFIED)

HAZARDS: Final[MappingProxyType[str, Entry]] = MappingProxyType(
    {
        "reagent-hydrochloric-acid": Entry(  # seen
            substance=("Skin Corr. 1B", "STOT SE 3"),
            limits=(
                (25, "Skin Corr. 1B"),
                (10, "Skin Irrit. 2"),
                (25, "Eye Dam. 1"),
                (10, "Eye Irrit. 2"),
                (10, "STOT SE 3"),
            ),
            source=annex_vi("017-002-01-X"),
        ),
        "reagent-nitric-acid": Entry(
            substance=("Skin Corr. 1A", "Ox. Liq. 3", "Acute Tox. 3 (inhalation)", "Respiratory tract"),
            limits=(
                # Seen: corrosion from 5 and 20 %, oxidiser from 65 %. The entry leaves irritation and eyes open: there
                # the generic limits hold (1 and 3 %), as school advice in England and Germany has it too.
                (20, "Skin Corr. 1A"),
                (5, "Skin Corr. 1B"),
                (1, "Skin Irrit. 2"),
                (65, "Ox. Liq. 3"),
                # Seen: 13 and 26 %, from an estimate of 2.65 mg/l of vapour by Annex I, 3.1.3.6.
                (26.5, "Acute Tox. 3 (inhalation)"),
                (13.25, "Acute Tox. 4 (inhalation)"),
                (13.25, "Respiratory tract"),
            ),
            source=say("source-and-annex-i", source=annex_vi("007-030-00-3")),
        ),
        "reagent-sulfuric-acid": Entry(  # seen
            substance=("Skin Corr. 1A",),
            limits=((15, "Skin Corr. 1A"), (5, "Skin Irrit. 2"), (15, "Eye Dam. 1"), (5, "Eye Irrit. 2")),
            source=annex_vi("016-020-00-8"),
        ),
        "reagent-ethanoic-acid": Entry(  # seen; flammable from 80 %: from memory
            substance=("Skin Corr. 1A", "Flam. Liq. 3"),
            limits=(
                (90, "Skin Corr. 1A"),
                (25, "Skin Corr. 1B"),
                (10, "Skin Irrit. 2"),
                (25, "Eye Dam. 1"),
                (10, "Eye Irrit. 2"),
                (80, "Flam. Liq. 3"),
            ),
            source=annex_vi("607-002-00-6"),
        ),
        "reagent-citric-acid": _CITRIC,
        "reagent-citric-acid-monohydrate": _CITRIC,
        "reagent-ethanedioic-acid": _OXALIC,
        "reagent-ethanedioic-acid-dihydrate": _OXALIC,
        "reagent-tartaric-acid": Entry(substance=("Eye Dam. 1",), source=SUPPLIERS),  # seen
        "reagent-phosphoric-acid": Entry(  # seen as the same limits of Directive 67/548/EEC, Annex I
            substance=("Skin Corr. 1B",),
            limits=((25, "Skin Corr. 1B"), (10, "Skin Irrit. 2"), (25, "Eye Dam. 1"), (10, "Eye Irrit. 2")),
            source=annex_vi("015-011-00-6"),
        ),
        "reagent-sodium-hydroxide": Entry(  # seen
            substance=("Skin Corr. 1A",), limits=_CAUSTIC, source=annex_vi("011-002-00-6")
        ),
        "reagent-potassium-hydroxide": Entry(  # seen
            substance=("Skin Corr. 1A", "Acute Tox. 4 (oral)"), limits=_CAUSTIC, source=annex_vi("019-002-00-8")
        ),
        "reagent-lithium-hydroxide": _LITHIUM_HYDROXIDE,
        "reagent-lithium-hydroxide-monohydrate": _LITHIUM_HYDROXIDE,
        # Seen: corrosive and H335 from 5 %; that nothing else has a limit of its own: from memory.
        "reagent-ammonia": Entry(
            substance=("Skin Corr. 1B", "STOT SE 3", "Aquatic Acute 1"),
            limits=((5, "STOT SE 3"),),
            source=annex_vi("007-001-01-2"),
        ),
        "reagent-calcium-hydroxide": Entry(  # seen
            substance=("Skin Irrit. 2", "Eye Dam. 1", "STOT SE 3"), source=SUPPLIERS, as_hydroxide=True
        ),
        "reagent-barium-hydroxide": _BARIUM_HYDROXIDE,
        "reagent-barium-hydroxide-octahydrate": _BARIUM_HYDROXIDE,
        "reagent-sodium-carbonate": _SODIUM_CARBONATE,
        "reagent-sodium-carbonate-decahydrate": _SODIUM_CARBONATE,
        "reagent-potassium-carbonate": Entry(  # seen
            substance=("Skin Irrit. 2", "Eye Irrit. 2", "STOT SE 3"), source=SUPPLIERS
        ),
        "reagent-calcium-carbonate": _HARMLESS,
        "reagent-sodium-hydrogencarbonate": _HARMLESS,
        "reagent-potassium-hydrogencarbonate": _HARMLESS,
        "reagent-ammonium-nitrate": _NITRATE,  # seen
        "reagent-ammonium-chloride": Entry(  # seen; index number from memory
            substance=("Acute Tox. 4 (oral)", "Eye Irrit. 2"), source=annex_vi("017-014-00-8")
        ),
        "reagent-potassium-nitrate": _NITRATE,  # seen
        "reagent-potassium-chloride": _HARMLESS,
        "reagent-sodium-nitrate": _NITRATE,  # from memory
        "reagent-sodium-chloride": _HARMLESS,
        "reagent-sodium-ethanoate": _HARMLESS,
        "reagent-sodium-ethanoate-trihydrate": _HARMLESS,
        "reagent-lithium-chloride": Entry(  # seen
            substance=("Acute Tox. 4 (oral)", "Skin Irrit. 2", "Eye Irrit. 2"), source=SUPPLIERS
        ),
        "reagent-ammonium-sulfate": _HARMLESS,
        "reagent-calcium-chloride": _CALCIUM_CHLORIDE,
        "reagent-calcium-chloride-dihydrate": _CALCIUM_CHLORIDE,
        "reagent-calcium-chloride-hexahydrate": _CALCIUM_CHLORIDE,
        "reagent-magnesium-sulfate": _HARMLESS,
        "reagent-magnesium-sulfate-heptahydrate": _HARMLESS,
        "reagent-copper-ii-sulfate": Entry(
            # Seen: H302, H315, H410. H318 is the blue solid's, whose solution is the same: kept on the safe side.
            substance=("Acute Tox. 4 (oral)", "Skin Irrit. 2", "Eye Dam. 1", "Aquatic Chronic 1"),
            limits=_COPPER,
            source=say("source-and-suppliers", source=annex_vi("029-004-00-0")),  # index number from memory
        ),
        "reagent-copper-ii-sulfate-pentahydrate": Entry(  # seen: H318; that H315 is not the blue solid's: from memory
            substance=("Acute Tox. 4 (oral)", "Eye Dam. 1", "Aquatic Chronic 1"),
            limits=_COPPER,
            source=annex_vi("029-023-00-4"),
        ),
        "reagent-urea": _HARMLESS,
    }
)
"""By the `id` of the reagent's name. That salts without an entry are not classified is from memory."""


METALS_MOL_DM3: Final = 0.1
"""From here on a stored solution of these says H290, on the safe side of what suppliers' data sheets have.

Seen: hydrochloric acid 0.1 mol/dm³ (2012), sulfuric acid 0.25 mol/dm³ (2015), nitric acid 1 % (2015) and 65 % (which
names CLP); sodium hydroxide from 18 % (2020), weaker from memory; phosphoric acid and potassium hydroxide from memory.
"""
METALS: Final = frozenset(
    {
        "reagent-hydrochloric-acid",
        "reagent-nitric-acid",
        "reagent-sulfuric-acid",
        "reagent-phosphoric-acid",
        "reagent-sodium-hydroxide",
        "reagent-potassium-hydroxide",
    }
)
"""By the `id` of the reagent's name."""


class Statement(NamedTuple):
    """A hazard statement: code and text."""

    code: str
    text: Message


@dataclass(frozen=True, slots=True)
class Label:
    """Categories, statements, pictogram codes and signal word; all empty when it is not classified.

    ``mass_percent`` is that of the solution, None for the substance itself. ``source`` names the classification.
    """

    categories: tuple[str, ...]
    statements: tuple[Statement, ...]
    pictograms: tuple[str, ...]
    signal: Message | None
    mass_percent: float | None
    source: Message

    @property
    def is_classified(self) -> bool:
        """Whether any statement applies."""
        return bool(self.statements)


_SIGNALS: Final = MappingProxyType({"danger": say("signal-danger"), "warning": say("signal-warning")})
"""Signal words, the graver first."""
_SKIN_AND_EYE: Final = frozenset({"skin", "eye"})


def substance_label(reagent: Reagent) -> Label:
    """Label of the reagent as it is weighed."""
    entry = HAZARDS[reagent.name.id]
    burns = any(CATEGORIES[each].code == "H314" for each in entry.substance)
    # What burns the skin counts as damaging the eyes (Annex I, 3.3).
    return _label((*entry.substance, *(("Eye Dam. 1",) if burns else ())), None, entry.source)


def solution_label(reagent: Reagent, concentration_mol_dm3: float) -> Label:
    """Label of a solution in water.

    A concentration that no solution can have gets the label of the substance (a strong alkali: at least sodium
    hydroxide's). Raises ``ValueError`` when it is not above 0 mol/dm³.
    """
    if not concentration_mol_dm3 > 0:
        raise ValueError(say("problem-concentration-not-above-0", mol_dm3=concentration_mol_dm3))
    entry = HAZARDS[reagent.name.id]
    percent: float | None = None
    try:
        percent = 100 * mass_fraction(reagent, concentration_mol_dm3)
        reached = _reached(_limits(entry), percent)
    except ValueError:
        reached = set(substance_label(reagent).categories)
    if entry.as_hydroxide:
        reached |= _as_sodium_hydroxide(reagent.hydroxides * concentration_mol_dm3)
    return _label(tuple(reached), percent, entry.source)


def stored_label(reagent: Reagent, concentration_mol_dm3: float, handed_out: Label | None = None) -> Label:
    """Label of a solution in the bottle in which it is stored: what it does to metal is said too.

    `handed_out` is the label on bottles for the benches, where that is stricter than the concentration's own.
    """
    label = handed_out or solution_label(reagent, concentration_mol_dm3)
    if reagent.name.id not in METALS or concentration_mol_dm3 < METALS_MOL_DM3:
        return label
    source = say("source-and-suppliers", source=label.source)
    return _label((*label.categories, "Met. Corr. 1"), label.mass_percent, source)


def _as_sodium_hydroxide(hydroxide_mol_dm3: float) -> set[str]:
    sodium_hydroxide = find_reagent("sodium hydroxide")
    try:
        return set(solution_label(sodium_hydroxide, hydroxide_mol_dm3).categories)
    except ValueError:
        return set(substance_label(sodium_hydroxide).categories)


def _limits(entry: Entry) -> Limits:
    """The entry's own limits, and the generic ones of the families that it leaves open."""
    own = {CATEGORIES[category].family for _, category in entry.limits}
    generic = [limit for category in entry.substance for limit in GENERIC.get(category, ())]
    return (*entry.limits, *(limit for limit in generic if CATEGORIES[limit[1]].family not in own))


_ROUNDING: Final = 1e-9


def _reached(limits: Limits, percent: float) -> set[str]:
    return {category for limit, category in limits if percent >= limit - _ROUNDING}


def _label(categories: tuple[str, ...], percent: float | None, source: Message) -> Label:
    gravest: dict[str, str] = {}
    for name, category in CATEGORIES.items():
        if name in categories:
            gravest.setdefault(category.family, name)
    kept = [CATEGORIES[name] for name in gravest.values()]
    codes = {each.code for each in kept}
    said = [each for each in kept if not _is_said_by(each.code, codes)]
    signals = {each.signal for each in said}
    return Label(
        tuple(gravest.values()),
        tuple(Statement(each.code, each.text) for each in said),
        _pictograms(said),
        next((word for signal, word in _SIGNALS.items() if signal in signals), None),
        percent,
        source,
    )


def _is_said_by(code: str, codes: set[str]) -> bool:
    """Whether a graver statement covers this one: burns the eyes, long lasting harm the short one."""
    return (code in {"H318", say("hazard-h318")} and "H314" in codes) or (code == "H400" and "H410" in codes)


def _pictograms(said: list[Category]) -> tuple[str, ...]:
    """Codes in order; the exclamation mark yields to the skull, and for skin and eyes to corrosion (Article 26)."""
    codes = {each.pictogram for each in said if each.pictogram}
    burns = any(each.pictogram == "GHS05" and each.family in _SKIN_AND_EYE for each in said)
    if burns and all(each.family in _SKIN_AND_EYE for each in said if each.pictogram == "GHS07"):
        codes.discard("GHS07")
    if "GHS06" in codes:
        codes.discard("GHS07")
    return tuple(sorted(codes))
