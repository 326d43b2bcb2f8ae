"""Hazard classes of the reagents under Regulation (EC) No 1272/2008 (CLP), and the limits that hold in solution.

Limits are mass percent of the dissolved substance without water of crystallisation. Each entry says where it comes
from, and in a comment how far it was checked: "seen" means that the figure was seen in public copies of the entry or
in data sheets that quote it, "from memory" that it was not. The consolidated text of Annex VI itself was not at hand.
May be corrosive to metals (H290) is left out: Annex VI has no limits for it, and suppliers disagree.
"""

from dataclasses import dataclass
from types import MappingProxyType
from typing import Final, NamedTuple


class Category(NamedTuple):
    """A hazard class and category: its family (skin, eye …), statement, pictogram and signal word (Annex I, III)."""

    family: str
    code: str
    text: str
    pictogram: str | None = None
    signal: str | None = None


CATEGORIES: Final = MappingProxyType(
    {
        "Ox. Liq. 3": Category("fire", "H272", "May intensify fire; oxidiser", "GHS03", "Warning"),
        "Ox. Sol. 3": Category("fire", "H272", "May intensify fire; oxidiser", "GHS03", "Warning"),
        "Flam. Liq. 3": Category("flammable", "H226", "Flammable liquid and vapour", "GHS02", "Warning"),
        "Acute Tox. 4 (oral)": Category("oral", "H302", "Harmful if swallowed", "GHS07", "Warning"),
        "Acute Tox. 4 (dermal)": Category("dermal", "H312", "Harmful in contact with skin", "GHS07", "Warning"),
        "Skin Corr. 1A": Category("skin", "H314", "Causes severe skin burns and eye damage", "GHS05", "Danger"),
        "Skin Corr. 1B": Category("skin", "H314", "Causes severe skin burns and eye damage", "GHS05", "Danger"),
        "Skin Irrit. 2": Category("skin", "H315", "Causes skin irritation", "GHS07", "Warning"),
        "Eye Dam. 1": Category("eye", "H318", "Causes serious eye damage", "GHS05", "Danger"),
        "Eye Irrit. 2": Category("eye", "H319", "Causes serious eye irritation", "GHS07", "Warning"),
        "Acute Tox. 3 (inhalation)": Category("inhaled", "H331", "Toxic if inhaled", "GHS06", "Danger"),
        "Acute Tox. 4 (inhalation)": Category("inhaled", "H332", "Harmful if inhaled", "GHS07", "Warning"),
        "STOT SE 3": Category("airways", "H335", "May cause respiratory irritation", "GHS07", "Warning"),
        "Respiratory tract": Category("tract", "EUH071", "Corrosive to the respiratory tract"),
        "Aquatic Acute 1": Category("water", "H400", "Very toxic to aquatic life", "GHS09", "Warning"),
        "Aquatic Chronic 1": Category(
            "water, long", "H410", "Very toxic to aquatic life with long lasting effects", "GHS09", "Warning"
        ),
        "Aquatic Chronic 2": Category(
            "water, long", "H411", "Toxic to aquatic life with long lasting effects", "GHS09"
        ),
        "Aquatic Chronic 3": Category("water, long", "H412", "Harmful to aquatic life with long lasting effects"),
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
    source: str
    as_hydroxide: bool = False


CLP: Final = "Regulation (EC) No 1272/2008 (CLP)"
SUPPLIERS: Final = "classification by suppliers, limits of CLP, Annex I"
NOT_CLASSIFIED: Final = "classification by suppliers"


def annex_vi(index: str) -> str:
    """The entry of Table 3 with that index number."""
    return f"{CLP}, Annex VI, {index}"


_CAUSTIC: Final[Limits] = (
    (5, "Skin Corr. 1A"),
    (2, "Skin Corr. 1B"),
    (0.5, "Skin Irrit. 2"),
    (2, "Eye Dam. 1"),
    (0.5, "Eye Irrit. 2"),
)
_CITRIC: Final = Entry(substance=("Eye Irrit. 2", "STOT SE 3"), source=annex_vi("607-750-00-3"))  # seen, index no. not
_OXALIC: Final = Entry(  # seen: H302, H312 as in the entry, H318 by suppliers
    substance=("Acute Tox. 4 (oral)", "Acute Tox. 4 (dermal)", "Eye Dam. 1"),
    source=f"{annex_vi('607-006-00-8')}, and suppliers",
)
_NITRATE: Final = Entry(substance=("Ox. Sol. 3", "Eye Irrit. 2"), source=SUPPLIERS)
_HARMLESS: Final = Entry(source=NOT_CLASSIFIED)

HAZARDS: Final[MappingProxyType[str, Entry]] = MappingProxyType(
    {
        "hydrochloric acid": Entry(  # seen
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
        "nitric acid": Entry(
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
            source=f"{annex_vi('007-030-00-3')}, and Annex I",
        ),
        "sulfuric acid": Entry(  # seen
            substance=("Skin Corr. 1A",),
            limits=((15, "Skin Corr. 1A"), (5, "Skin Irrit. 2"), (15, "Eye Dam. 1"), (5, "Eye Irrit. 2")),
            source=annex_vi("016-020-00-8"),
        ),
        "ethanoic acid": Entry(  # seen; flammable from 80 %: from memory
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
        "citric acid": _CITRIC,
        "citric acid monohydrate": _CITRIC,
        "ethanedioic acid": _OXALIC,
        "ethanedioic acid dihydrate": _OXALIC,
        "tartaric acid": Entry(substance=("Eye Dam. 1",), source=SUPPLIERS),  # seen
        "phosphoric acid": Entry(  # seen as the same limits of Directive 67/548/EEC, Annex I
            substance=("Skin Corr. 1B",),
            limits=((25, "Skin Corr. 1B"), (10, "Skin Irrit. 2"), (25, "Eye Dam. 1"), (10, "Eye Irrit. 2")),
            source=annex_vi("015-011-00-6"),
        ),
        "sodium hydroxide": Entry(  # seen
            substance=("Skin Corr. 1A",), limits=_CAUSTIC, source=annex_vi("011-002-00-6")
        ),
        "potassium hydroxide": Entry(  # seen
            substance=("Skin Corr. 1A", "Acute Tox. 4 (oral)"), limits=_CAUSTIC, source=annex_vi("019-002-00-8")
        ),
        "lithium hydroxide": Entry(  # seen
            substance=("Skin Corr. 1B", "Acute Tox. 4 (oral)"), source=SUPPLIERS, as_hydroxide=True
        ),
        "ammonia": Entry(  # seen: corrosive and H335 from 5 %; that nothing else has a limit of its own: from memory
            substance=("Skin Corr. 1B", "STOT SE 3", "Aquatic Acute 1"),
            limits=((5, "STOT SE 3"),),
            source=annex_vi("007-001-01-2"),
        ),
        "calcium hydroxide": Entry(  # seen
            substance=("Skin Irrit. 2", "Eye Dam. 1", "STOT SE 3"), source=SUPPLIERS, as_hydroxide=True
        ),
        "barium hydroxide": Entry(  # H302 and H332 of barium salts, H314 of suppliers: from memory
            substance=("Skin Corr. 1B", "Acute Tox. 4 (oral)", "Acute Tox. 4 (inhalation)"),
            source=f"{annex_vi('056-002-00-7')}, and suppliers",
            as_hydroxide=True,
        ),
        "sodium carbonate": Entry(substance=("Eye Irrit. 2",), source=annex_vi("011-005-00-2")),  # seen, index no. not
        "potassium carbonate": Entry(  # seen
            substance=("Skin Irrit. 2", "Eye Irrit. 2", "STOT SE 3"), source=SUPPLIERS
        ),
        "calcium carbonate": _HARMLESS,
        "sodium hydrogencarbonate": _HARMLESS,
        "potassium hydrogencarbonate": _HARMLESS,
        "ammonium nitrate": _NITRATE,  # seen
        "ammonium chloride": Entry(  # seen; index number from memory
            substance=("Acute Tox. 4 (oral)", "Eye Irrit. 2"), source=annex_vi("017-014-00-8")
        ),
        "potassium nitrate": _NITRATE,  # seen
        "potassium chloride": _HARMLESS,
        "sodium nitrate": _NITRATE,  # from memory
        "sodium chloride": _HARMLESS,
        "sodium ethanoate": _HARMLESS,
        "sodium ethanoate trihydrate": _HARMLESS,
        "lithium chloride": Entry(  # seen
            substance=("Acute Tox. 4 (oral)", "Skin Irrit. 2", "Eye Irrit. 2"), source=SUPPLIERS
        ),
        "ammonium sulfate": _HARMLESS,
        "calcium chloride": Entry(substance=("Eye Irrit. 2",), source=annex_vi("017-013-00-2")),  # seen, index no. not
        "magnesium sulfate": _HARMLESS,
        "copper(II) sulfate": Entry(
            # Seen: H302, H315, H410 of the white solid, H318 of the blue one, whose solution is the same.
            substance=("Acute Tox. 4 (oral)", "Skin Irrit. 2", "Eye Dam. 1", "Aquatic Chronic 1"),
            # Annex I, Table 4.1.2 with M = 10, which is from memory.
            limits=((2.5, "Aquatic Chronic 1"), (0.25, "Aquatic Chronic 2"), (0.025, "Aquatic Chronic 3")),
            source=f"{annex_vi('029-023-00-4')}, and suppliers",
        ),
        "urea": _HARMLESS,
    }
)
"""By the reagent's name. That salts without an entry are not classified is from memory."""
