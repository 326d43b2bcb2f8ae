"""The table of reagents and the one way to look a reagent up by what a teacher calls it."""

import difflib
import re
import unicodedata
from types import MappingProxyType
from typing import Final

from station.chemistry.acids import ACID_TABLE
from station.chemistry.alkalis import ALKALI_TABLE
from station.chemistry.reagent import Ion, Ionisation, Kind, Reagent
from station.chemistry.salts import SALT_TABLE
from station.words import Message, join, say

__all__ = ["REAGENTS", "Ion", "Ionisation", "Kind", "Reagent", "UnknownReagentError", "find_reagent"]

REAGENTS: Final[tuple[Reagent, ...]] = (*ACID_TABLE, *ALKALI_TABLE, *SALT_TABLE)
"""All reagents the station knows: acids, alkalis, then salts."""


class UnknownReagentError(LookupError):
    """No reagent of that name is in the table; the message says which are."""


def find_reagent(name: str) -> Reagent:
    """Find a reagent by name, common other name or formula, whatever the case and spelling of sulf-/sulph-.

    Raises ``UnknownReagentError`` with the nearest names and the whole list.
    """
    found = _INDEX.get(_key(name))
    if found is None:
        raise UnknownReagentError(_unknown(name))
    return found


def _key(name: str) -> str:
    """Fold what does not tell two reagents apart: case, spacing, hyphens, sulph/sulf, subscripts, (aq)."""
    folded = unicodedata.normalize("NFKC", name).casefold().replace("sulph", "sulf")
    folded = re.sub(r"\((aq|s|l)\)$", "", folded.strip())
    folded = re.sub(r"^(dilute|concentrated)\s+|\s+solution$", "", folded.strip())
    return re.sub(r"[\s\-_·.*•]+", "", folded)


LONGEST_NAME: Final = 40
"""More letters of an unknown name are not repeated: no reagent has as many."""


def _unknown(name: str) -> Message:
    near = difflib.get_close_matches(_key(name), _INDEX, n=3, cutoff=0.7)
    hint = join(dict.fromkeys(_INDEX[key].name for key in near), "list-or")
    known = join((reagent.name for reagent in REAGENTS if "·" not in reagent.formula), "list-comma")
    typed = repr(name if len(name) <= LONGEST_NAME else f"{name[:LONGEST_NAME]}…")
    if hint:
        return say("problem-unknown-reagent-hint", typed=typed, hint=hint, known=known)
    return say("problem-unknown-reagent", typed=typed, known=known)


def _index() -> MappingProxyType[str, Reagent]:
    index: dict[str, Reagent] = {}
    for reagent in REAGENTS:
        for label in (reagent.name, reagent.formula, *reagent.aliases):
            if index.setdefault(_key(label), reagent) is not reagent:
                raise ValueError(f"{label!r} names two reagents")
    return MappingProxyType(index)


_INDEX: Final = _index()
