"""Which plural word a number takes, by language: the categories of Unicode CLDR for plain numbers.

A language that is not listed takes `one` for 1 and `other` for the rest, as English and German do.
"""

from collections.abc import Callable
from types import MappingProxyType
from typing import Final


def _one_is_one(value: float, places: int) -> str:
    return "one" if value == 1 and not places else "other"


def _below_two(value: float, _places: int) -> str:
    return "one" if 0 <= value < 2 else "other"


def _danish(value: float, _places: int) -> str:
    return "one" if 0 < value < 2 else "other"


def _no_forms(_value: float, _places: int) -> str:
    return "other"


def _by_value(value: float, _places: int) -> str:
    return "one" if value == 1 else "other"


def _czech(value: float, places: int) -> str:
    if places:
        return "many"
    return "one" if value == 1 else "few" if value in {2, 3, 4} else "other"


def _polish(value: float, places: int) -> str:
    if places:
        return "other"
    if value == 1:
        return "one"
    return "few" if value % 10 in {2, 3, 4} and value % 100 not in {12, 13, 14} else "many"


def _east_slavic(value: float, places: int) -> str:
    if places:
        return "other"
    if value % 10 == 1 and value % 100 != 11:
        return "one"
    return "few" if value % 10 in {2, 3, 4} and value % 100 not in {12, 13, 14} else "many"


_RULES: Final = MappingProxyType(
    {
        **dict.fromkeys(("fr", "pt"), _below_two),
        "da": _danish,
        **dict.fromkeys(("ja", "zh", "ko", "vi", "th", "id"), _no_forms),
        **dict.fromkeys(("tr", "el", "hu", "bg", "nb", "no", "es"), _by_value),
        **dict.fromkeys(("cs", "sk"), _czech),
        "pl": _polish,
        **dict.fromkeys(("ru", "uk"), _east_slavic),
    }
)
"""French and others say `many` for whole millions; the station counts nothing that far."""


def plural_of(language: str) -> Callable[[float, int], str]:
    """The rule of a language: from a number and how many decimal places it is written with to its category."""
    return _RULES.get(language.partition("-")[0], _one_is_one)
