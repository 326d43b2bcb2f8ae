"""What the preparation says in the terminal and on paper alike."""

from typing import Any

Json = dict[str, Any]


def hazards(label: Json) -> str:
    """Return signal word and hazard statements with their codes, or that there are none."""
    if not label["classified"]:
        return "Not classified as hazardous at this concentration; the usual cautions hold."
    signal = f"{label['signal']}: " if label["signal"] else ""
    return signal + "; ".join(f"{each['text']} ({each['code']})" for each in label["hazards"]) + "."


def solution_head(each: Json) -> str:
    """Return what to make and from what."""
    amount = f"{each['mass_g']:g} g" if each["mass_g"] is not None else f"{each['stock_cm3']:g} cm³"
    return (
        f"{each['name'].capitalize()}, {each['concentration_mol_dm3']:g} mol/dm³: make {each['make_cm3']:g} cm³ "
        f"from {amount} ({each['from']})"
    )


def solution_lines(each: Json) -> list[str]:
    """Return the stock's hazards, the steps, and what to mind with the labels."""
    lines = [f"The stock: {hazards(each['stock_label'])}", *each["steps"], f"Label: {hazards(each['label'])}"]
    if each["near_edge"]:
        lines.append("It is within 5 % of a limit of the regulation: the stricter class is shown.")
    if each["secret"]:
        lines.append("The class is to find its concentration: do not write it on the students' bottles.")
    return lines


def unknown_lines(each: Json, range_mol_dm3: list[float] | None) -> list[str]:
    """Return what can be said of a solution whose concentration the plan keeps to itself."""
    lines = [f"{each['make_cm3']:g} cm³ are needed. The plan does not say its concentration."]
    if range_mol_dm3 is not None:
        low, high = range_mol_dm3
        lines.append(f"This plan can resolve {low:.3g} to {high:.3g} mol/dm³.")
    return lines


def solid_line(each: Json) -> str:
    """Return what to weigh out."""
    return f"{each['count']} times {each['each_g']:g} g; have {each['total_g']:g} g ready."


def left_line(table: Json) -> str:
    """Return what is left of a lesson, or how much it is too long and what would fit."""
    left_min = table["left_min"]
    if left_min >= 0:
        return f"{left_min:.0f} minutes are left."
    fits = table["repeats_that_fit"]
    return f"{-left_min:.0f} minutes too long. With {fits} of the repeats it may fit; else share them."


def laid_out(answer: Json) -> list[str]:
    """Return the glassware, counted."""
    return [f"{each['all']} × {each['item']}" for each in answer["glassware"]]
