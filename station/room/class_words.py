"""What the class result means, in sentences: on the page, on paper and at the end of a rehearsal."""

from collections.abc import Sequence
from typing import Any

from station.room.class_anomalies import METHODS, NAMES, UNITS

Json = dict[str, Any]

AGREE = 0.05


def said_of(answer: Json) -> list[str]:
    """Return the sentences about a class result, the most important first."""
    found = [each for each in answer["quantities"] if each["pooled"] is not None]
    if not answer["benches"]:
        return ["No bench has ended a repeat yet."]
    if not found:
        return ["One bench alone has a result: a class mean needs two."]
    sentences = [_mean(each) for each in found]
    sentences += _meaning(found[0])
    sentences += _without(found[0], answer["anomalies"])
    sentences += _methods(found)
    if answer["other_plans"]:
        sentences.append("Benches with another plan than most are listed and not in the mean.")
    return sentences


def _mean(quantity: Json) -> str:
    made, unit = quantity["pooled"], UNITS[quantity["quantity"]]
    name, method = NAMES[quantity["quantity"]], METHODS[quantity["method"]]
    return (
        f"Class {name} by {method}: {made['mean']:.2f} ± {made['u']:.2f} {unit}, from {made['count']} benches; "
        f"with 95 % confidence the class's mean lies between {made['low']:.2f} and {made['high']:.2f} {unit}."
    )


def _meaning(quantity: Json) -> Sequence[str]:
    made, unit = quantity["pooled"], UNITS[quantity["quantity"]]
    explained = (
        f"The ± is of the class's mean, not of one bench: single benches spread by {made['sd']:.2f} {unit} (one "
        f"standard deviation); their own uncertainties alone would give {made['own_u']:.2f} {unit}."
    )
    if made["between"] == 0.0:
        verdict = "The benches agree within their own uncertainties: nothing more than those need separate them."
    elif made["p"] >= AGREE:
        verdict = (
            f"A spread between benches of {made['between']:.2f} {unit} fits best, but chance alone could give as much "
            f"(p = {made['p']:.2f}); it is in the ±."
        )
    else:
        verdict = (
            f"The benches differ by {made['between']:.2f} {unit} beyond their own uncertainties (p = {_p(made['p'])}): "
            "something differs from bench to bench that no bench can see by itself, such as how portions are measured "
            "or a slip; it is in the ±."
        )
    return explained, verdict


def _without(quantity: Json, odd: Sequence[Json]) -> Sequence[str]:
    made, unit = quantity["without"], UNITS[quantity["quantity"]]
    if made is None:
        return ()
    return (
        f"Without the benches that stand off ({len(odd)}) the mean would be {made['mean']:.2f} ± {made['u']:.2f} "
        f"{unit}. Nothing is left out by itself: a person sets a repeat aside, with a reason.",
    )


def _methods(found: Sequence[Json]) -> Sequence[str]:
    by = {each["method"]: each["pooled"] for each in found if each["quantity"] == "end_point_cm3"}
    if len(by) < 2:
        return ()
    apart = by["straight_lines"]["mean"] - by["heat_balance"]["mean"]
    way = "below" if apart < 0.0 else "above"
    return (
        f"The straight lines cross {abs(apart):.2f} cm³ {way} the heat balance: each portion warms more liquid, which "
        "bends the rising line, and no number of benches averages that away.",
    )


def _p(p: float) -> str:
    return f"{p:.3f}" if p >= 0.001 else "0.001 or less"
