"""A prediction in words: tables for a teacher, within 80 columns."""

from collections.abc import Iterable
from textwrap import wrap
from typing import Any

from station.practical.plan import OncePlan, Plan, PortionsPlan

Json = dict[str, Any]

COLUMNS = 80
READ_WITH = {
    "probe": "probe (1/16 °C), trace",
    "thermometer_0_1_c": "thermometer to 0.1 °C",
    "thermometer_1_c": "thermometer to 1 °C",
}
BAR = 30
ROWS_APART = 3
"""Of the curve of a practical that mixes once: a row each half minute."""


def prediction_in_words(answer: Json, plan: Plan) -> str:
    """Return the prediction as lines of text."""
    blocks = [_head(answer, plan)]
    if answer["curve"] is None:
        blocks.append(_folded([answer["refused"]["curve"]]))
    elif isinstance(plan, PortionsPlan):
        blocks += [_curve(answer), _methods(answer), _comparison(answer, plan)]
    else:
        blocks += [_once_curve(answer), _once_methods(answer)]
    blocks.append(_minutes(answer["minutes"]))
    if answer["warnings"]:
        blocks.append(["Mind:", *_folded(answer["warnings"], "- ")])
    blocks.append(["Assumed:", *_folded(answer["assumed"], "- ")])
    return "\n\n".join("\n".join(block) for block in blocks)


def _head(answer: Json, plan: Plan) -> list[str]:
    lines = [answer["practical"]]
    if isinstance(plan, OncePlan):
        return [*lines, *_folded([f"{plan.in_cup} in the cup, {plan.added} mixed in once."])]
    assert isinstance(plan, PortionsPlan)  # noqa: S101 - the other kind of plan
    acid, strength = answer["acid"], plan.alkali.concentration_mol_dm3
    lines += _folded(
        [
            f"{plan.in_cup}, {acid['concentration_mol_dm3']:.3g} mol/dm³ ({acid['basis']}); {plan.count} portions of "
            f"{plan.added}, {strength:g} mol/dm³."
        ]
    )
    if acid["range_mol_dm3"] is not None:
        low, high = acid["range_mol_dm3"]
        resolves = f"With three readings on each arm this plan resolves acids of {low:.3g} to {high:.3g} mol/dm³."
        lines += _folded([resolves])
    if acid["basis"] == "prepared by staff":
        lines += _folded(["Keep this page from the class: it tells what staff made up."])
    points = answer["points"]
    lines += _folded(
        [
            f"Expected end-point {answer['end_point_cm3']:.1f} cm³; readings on the arms: {points['before']} before, "
            f"{points['after']} after."
        ]
    )
    if answer["rise_c"] is not None:
        lines.append(f"Rise at the end-point {answer['rise_c']:.1f} °C from {answer['start_c']:.1f} °C.")
    return lines


def _curve(answer: Json) -> list[str]:
    rows = answer["curve"]
    least, most = (pick(row["temperature_c"] for row in rows) for pick in (min, max))
    lines = ["added/cm³  temperature/°C"]
    for row in rows:
        bar = "·" * round(BAR * (row["temperature_c"] - least) / max(most - least, 1e-9))
        lines.append(f"{row['volume_cm3']:9.2f}  {row['temperature_c']:14.2f}  {bar}".rstrip())
    return lines


HEAD = f"{'':<25}{'straight lines':>20}{'heat balance':>13}"
UNITS = f"{'':<25}{'bias':>10}{'±':>10}{'±':>13}"


def _methods(answer: Json) -> list[str]:
    lines = ["End-point of one repeat, cm³", HEAD, UNITS]
    return lines + [f"{READ_WITH[name]:<25}{_cells(found)}" for name, found in answer["methods"].items()]


def _comparison(answer: Json, plan: PortionsPlan) -> list[str]:
    lines = ["What weaker solutions cost and better glassware buys (probe, one repeat), cm³"]
    own = None if plan.portions.u_volume_cm3 is not None else plan.portions.glassware
    last = None
    for row in answer["comparison"]:
        if row["factor"] != last:
            last = row["factor"]
            lines += [
                "",
                f"acid {row['acid_mol_dm3']:.3g}, alkali {row['alkali_mol_dm3']:.3g} mol/dm³" + _rise(row["rise_c"]),
                f"{'':<20}{'1 sd':>5}{'straight lines':>20}{'heat balance':>13}",
                f"{'':<20}{'':>5}{'bias':>10}{'±':>10}{'±':>13}",
            ]
        mark = "*" if row["factor"] == 1.0 and row["glassware"] in (own, "as planned") else " "
        lines.append(f"{mark}{row['glassware']:<19}{row['u_portion_cm3']:>5.2f}{_cells(row)}")
    return [*lines, *(["* as in the plan"] if any(line.startswith("*") for line in lines) else [])]


def _rise(rise_c: float | None) -> str:
    return "" if rise_c is None else f": rise {rise_c:.1f} °C"


def _cells(found: Json) -> str:
    lines, heat = found["straight_lines"], found["heat_balance"]
    first = f"{'refuses':>20}" if lines is None else f"{lines['bias_cm3']:>+10.1f}{lines['u_end_point_cm3']:>10.1f}"
    return first + (f"{'refuses':>13}" if heat is None else f"{heat['u_end_point_cm3']:>13.2f}")


def _once_curve(answer: Json) -> list[str]:
    change = (
        f"Expected change {answer['change_c']:+.2f} °C from {answer['start_c']:.1f} °C; "
        f"{answer['enthalpy_kj_mol']:+.1f} kJ/mol ({answer['enthalpy_of']}, {answer['amount_mol']:.4f} mol)."
    )
    rows = [f"{row['time_s']:6.0f}  {row['temperature_c']:14.2f}" for row in answer["curve"][::ROWS_APART]]
    return [*_folded([change]), "", "time/s  temperature/°C", *rows]


def _once_methods(answer: Json) -> list[str]:
    lines = [f"{'One repeat':<20}{'bias/°C':>10}{'±/°C':>10}{'± kJ/mol':>12}"]
    for name in ("straight_lines", "heat_balance"):
        found, label = answer["methods"][name], name.replace("_", " ")
        if found is None:
            lines.append(f"{label:<20}{'refuses':>10}")
        else:
            cells = f"{found['bias_c']:>+10.2f}{found['u_change_c']:>10.2f}{found['u_enthalpy_kj_mol']:>12.1f}"
            lines.append(f"{label:<20}{cells}")
    return lines


def _minutes(found: Json) -> list[str]:
    parts = ", ".join(f"{name} {value:g}" for name, value in found.items() if name != "total" and value)
    return [f"About {found['total']:.0f} minutes at the bench ({parts})."]


def _folded(texts: Iterable[str], mark: str = "") -> list[str]:
    return [
        line
        for text in texts
        for line in wrap(text, COLUMNS, initial_indent=mark, subsequent_indent=" " * len(mark), break_long_words=False)
    ]
