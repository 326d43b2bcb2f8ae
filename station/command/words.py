"""Results in words, for a person at a terminal."""

from collections.abc import Mapping
from typing import Any, Final

from station.practical.kinds.kind import METHOD_NAMES, quantities
from station.practical.questions import QUESTIONS
from station.practical.state import LEAVES_OUT
from station.words import Message, join, say
from station.words.speaking import spoken

_IN_WORDS: Final = frozenset({"change_c", "end_point_cm3", "enthalpy_kj_mol", "acid_mol_dm3"})
"""Quantities that have a sentence of their own."""


def results_in_words(answer: dict[str, Any]) -> str:
    """Return the results of a practical as a few lines."""
    lines: list[str] = []
    for each in answer["repeats"]:
        lines += _block(say("result-repeat", repeat=each["repeat"]), each)
    return "\n".join(lines + _block(say("result-mean-of-repeats"), answer["mean"]))


def _block(name: Message, result: dict[str, Any]) -> list[str]:
    methods = [method for method in METHOD_NAMES if method in result]
    names = {method: spoken(METHOD_NAMES[method]) for method in methods}
    width = max([15, *map(len, names.values())])
    found = [f"  {names[method]:<{width}} {spoken(method_in_words(method, result))}" for method in methods]
    probe = [result["probe"]["text"]] if "probe" in result else []
    asked = [_unanswered(**each) for each in result.get("questions", [])]
    return [spoken(name), *found, *(f"  {spoken(each)}" for each in (*probe, *asked, *result.get("notes", [])))]


def _unanswered(portion: int, code: str) -> Message:
    """A question that nobody has answered, and whether its reading is left out meanwhile."""
    question = QUESTIONS[code].about(portion)
    return say("question-leaves-out" if code in LEAVES_OUT else "question-asks", question=question)


def method_in_words(method: str, result: Mapping[str, Any]) -> Message:
    """Return the result by one method in a line, or why there is none."""
    found = result[method]
    if found is None:
        return say("result-none", reason=result["refused"].get(method, say("result-no-reason")))
    if "change_c" in found:
        low, high = found["interval_95_c"]
        first = say(
            "result-change",
            change_c=f"{found['change_c']:+.2f}",
            u_c=f"{found['u_change_c']:.2f}",
            low_c=f"{low:+.2f}",
            high_c=f"{high:+.2f}",
            way="in" if found["heat_j"] < 0 else "out",
            heat_j=f"{abs(found['heat_j']):.0f}",
            u_heat_j=f"{found['u_heat_j']:.0f}",
        )
    else:
        low, high = found["interval_95_cm3"]
        first = say(
            "result-end-point",
            end_point_cm3=f"{found['end_point_cm3']:.2f}",
            u_cm3=f"{found['u_end_point_cm3']:.2f}",
            low_cm3=f"{low:.2f}",
            high_cm3=f"{high:.2f}",
        )
    if found.get("label"):
        first = join([first, found["label"]], "list-comma")
    more = []
    if found.get("enthalpy_kj_mol") is not None:
        enthalpy, u_enthalpy = f"{found['enthalpy_kj_mol']:+.1f}", f"{found['u_enthalpy_kj_mol']:.1f}"
        values, of = {"enthalpy_kj_mol": enthalpy, "u_kj_mol": u_enthalpy}, found.get("enthalpy_of")
        more.append(say("result-enthalpy", **values) if of is None else say("result-enthalpy-of", of=of, **values))
    if found.get("acid_mol_dm3") is not None:
        acid, u_acid = f"{found['acid_mol_dm3']:.4f}", f"{found['u_acid_mol_dm3']:.4f}"
        more.append(say("result-acid", acid_mol_dm3=acid, u_mol_dm3=u_acid))
    for each in quantities().values():
        if each.key not in _IN_WORDS and found.get(each.key) is not None:
            sign, places = "+" if each.signed else "", f".{each.places}f"
            value, u = f"{found[each.key]:{sign}{places}}", f"{found[f'u_{each.key}']:{places}}"
            more.append(say("result-quantity", quantity=each.name, value=value, u=u, unit=each.unit))
    return join([first, *more], "list-semicolon")
