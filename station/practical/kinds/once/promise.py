"""A prediction of one mixing in words: tables for a teacher, within 80 columns."""

from collections.abc import Iterator
from typing import Any

from station.practical.kinds.kind import METHOD_NAMES
from station.practical.kinds.once.plan import OncePlan
from station.words import say
from station.words.speaking import figure, spoken

Json = dict[str, Any]

ROWS_APART = 3
"""A row of the curve each half minute."""


def promise(plan: OncePlan, answer: Json) -> Iterator[list[str]]:
    """Yield blocks of lines: what is mixed, then, where the curve can be told, curve and methods."""
    yield [spoken(say("predict-mixed-once", in_cup=plan.in_cup, added=plan.added))]
    if answer["curve"] is not None:
        yield from (_curve(answer), _methods(answer))


def _curve(answer: Json) -> list[str]:
    change = say(
        "predict-change",
        change_c=f"{answer['change_c']:+.2f}",
        start_c=f"{answer['start_c']:.1f}",
        enthalpy_kj_mol=f"{answer['enthalpy_kj_mol']:+.1f}",
        of=answer["enthalpy_of"],
        amount_mol=f"{answer['amount_mol']:.4f}",
    )
    time, celsius = spoken(say("predict-head-time")), spoken(say("predict-head-temperature"))
    left, right = max(6, len(time)), max(14, len(celsius))
    rows = [
        f"{row['time_s']:{left}.0f}  {_shown(row['temperature_c'], '.2f'):>{right}}"
        for row in answer["curve"][::ROWS_APART]
    ]
    return [spoken(change), "", f"{time:>{left}}  {celsius:>{right}}", *rows]


def _methods(answer: Json) -> list[str]:
    bias, refuses = spoken(say("predict-bias-c")), spoken(say("predict-refuses"))
    width = max(10, len(bias) + 2, len(refuses) + 2)
    lines = [f"{spoken(say('predict-one-repeat')):<20}{bias:>{width}}{'±/°C':>10}{'± kJ/mol':>12}"]
    for name, label in METHOD_NAMES.items():
        found = answer["methods"][name]
        if found is None:
            lines.append(f"{spoken(label):<20}{refuses:>{width}}")
        else:
            bias_c, u_c = _shown(found["bias_c"], "+.2f"), _shown(found["u_change_c"], ".2f")
            u_kj_mol = _shown(found["u_enthalpy_kj_mol"], ".1f")
            lines.append(f"{spoken(label):<20}{bias_c:>{width}}{u_c:>10}{u_kj_mol:>12}")
    return lines


def _shown(value: float, places: str) -> str:
    return figure(f"{value:{places}}")
