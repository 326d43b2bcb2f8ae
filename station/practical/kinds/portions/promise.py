"""A prediction of portions in words: tables for a teacher, within 80 columns."""

from collections.abc import Iterator
from typing import Any, Final

from station.chemistry.preparation import glassware_of
from station.practical.kinds.kind import METHOD_NAMES
from station.practical.kinds.portions.plan import OWN, PortionsPlan
from station.words import Message, say
from station.words.speaking import figure, spoken

Json = dict[str, Any]
Widths = tuple[int, ...]

READ_WITH: Final = {
    "probe": say("predict-probe"),
    "thermometer_0_1_c": say("predict-thermometer-0-1"),
    "thermometer_1_c": say("predict-thermometer-1"),
}
BAR = 30
LINES, HEAT = METHOD_NAMES["straight_lines"], METHOD_NAMES["heat_balance"]


def promise(plan: PortionsPlan, answer: Json) -> Iterator[list[str]]:
    """Yield blocks of lines: what is mixed and found, then, where the curve can be told, curve and methods."""
    yield _head(answer, plan)
    if answer["curve"] is not None:
        yield from (_curve(answer), _methods(answer), _comparison(answer, plan))


def _head(answer: Json, plan: PortionsPlan) -> list[str]:
    acid, points = answer["acid"], answer["points"]
    told = [
        say(
            "predict-portions",
            in_cup=plan.in_cup,
            acid_mol_dm3=f"{acid['concentration_mol_dm3']:.3g}",
            basis=acid["basis"],
            count=plan.count,
            added=plan.added,
            alkali_mol_dm3=f"{plan.alkali.concentration_mol_dm3:g}",
        )
    ]
    if acid["range_mol_dm3"] is not None:
        low, high = acid["range_mol_dm3"]
        told.append(say("predict-resolves", least_mol_dm3=f"{low:.3g}", most_mol_dm3=f"{high:.3g}"))
    if plan.acid.concentration_mol_dm3 is None and plan.acid.prepared_mol_dm3 is not None:
        told.append(say("predict-keep-from-class"))
    told.append(
        say(
            "predict-end-point",
            end_point_cm3=f"{answer['end_point_cm3']:.1f}",
            before=points["before"],
            after=points["after"],
        )
    )
    if answer["rise_c"] is not None:
        told.append(say("predict-rise", rise_c=f"{answer['rise_c']:.1f}", start_c=f"{answer['start_c']:.1f}"))
    return [spoken(each) for each in told]


def _curve(answer: Json) -> list[str]:
    rows = answer["curve"]
    least, most = (pick(row["temperature_c"] for row in rows) for pick in (min, max))
    added, celsius = spoken(say("predict-head-added")), spoken(say("predict-head-temperature"))
    left, right = max(9, len(added)), max(14, len(celsius))
    lines = [f"{added:>{left}}  {celsius:>{right}}"]
    for row in rows:
        bar = "·" * round(BAR * (row["temperature_c"] - least) / max(most - least, 1e-9))
        cells = f"{_shown(row['volume_cm3'], '.2f'):>{left}}  {_shown(row['temperature_c'], '.2f'):>{right}}"
        lines.append(f"{cells}  {bar}".rstrip())
    return lines


def _methods(answer: Json) -> list[str]:
    widths = _widths()
    lines = [*[spoken(say("predict-head-end-point"))], *_heads(" " * 25, widths)]
    return lines + [
        f"{spoken(READ_WITH[name]):<25}{_cells(found, widths)}" for name, found in answer["methods"].items()
    ]


def _comparison(answer: Json, plan: PortionsPlan) -> list[str]:
    lines, widths, last, own = [spoken(say("predict-head-comparison"))], _widths(), None, False
    sd = spoken(say("predict-one-sd"))
    sd_width = max(5, len(sd) + 1)
    for row in answer["comparison"]:
        if row["factor"] != last:
            last = row["factor"]
            lines += ["", _strengths(row), *_heads(f"{'':<20}{sd:>{sd_width}}", widths)]
        as_planned = row["factor"] == 1.0 and _is_own(row["glassware"], plan)
        own = own or as_planned
        u_cm3 = _shown(row["u_portion_cm3"], ".2f")
        ware = f"{'*' if as_planned else ' '}{spoken(row['glassware']):<19}"
        lines.append(f"{ware}{u_cm3:>{sd_width}}{_cells(row, widths)}")
    return [*lines, *([spoken(say("predict-as-in-plan"))] if own else [])]


def _is_own(glassware: Message, plan: PortionsPlan) -> bool:
    """Whether the portions of the plan itself are measured so."""
    named = plan.portions.glassware
    if plan.portions.u_volume_cm3 is not None or named is None:
        return glassware.id == OWN.id
    return glassware.id == glassware_of(named).name.id


def _strengths(row: Json) -> str:
    acid_mol_dm3, alkali_mol_dm3 = f"{row['acid_mol_dm3']:.3g}", f"{row['alkali_mol_dm3']:.3g}"
    if row["rise_c"] is None:
        return spoken(say("predict-strengths", acid_mol_dm3=acid_mol_dm3, alkali_mol_dm3=alkali_mol_dm3))
    rise_c = f"{row['rise_c']:.1f}"
    return spoken(
        say("predict-strengths-rise", acid_mol_dm3=acid_mol_dm3, alkali_mol_dm3=alkali_mol_dm3, rise_c=rise_c)
    )


def _widths() -> Widths:
    """Return how wide the columns are: ± with bias of straight lines, ± of the heat balance."""
    bias, refuses = len(spoken(say("predict-bias"))), len(spoken(say("predict-refuses")))
    lines = max(20, len(spoken(LINES)) + 2, refuses + 2, 2 * (bias + 2))
    return lines, max(13, len(spoken(HEAT)) + 1, refuses + 1)


def _heads(first: str, widths: Widths) -> list[str]:
    lines, heat = widths
    return [
        f"{first}{spoken(LINES):>{lines}}{spoken(HEAT):>{heat}}",
        f"{'':<{len(first)}}{spoken(say('predict-bias')):>{lines - 10}}{'±':>10}{'±':>{heat}}",
    ]


def _cells(found: Json, widths: Widths) -> str:
    lines, heat = found["straight_lines"], found["heat_balance"]
    refuses = spoken(say("predict-refuses"))
    if lines is None:
        first = f"{refuses:>{widths[0]}}"
    else:
        bias, u_cm3 = _shown(lines["bias_cm3"], "+.1f"), _shown(lines["u_end_point_cm3"], ".1f")
        first = f"{bias:>{widths[0] - 10}}{u_cm3:>10}"
    return f"{first}{refuses if heat is None else _shown(heat['u_end_point_cm3'], '.2f'):>{widths[1]}}"


def _shown(value: float, places: str) -> str:
    return figure(f"{value:{places}}")
