"""What the class result means, in sentences: on the page, on paper and at the end of a rehearsal. Loads no numpy."""

from collections.abc import Sequence

from station.room.contract import ClassResult, PooledShown, Quantity
from station.words import Message, say

UNITS = {"end_point_cm3": "cm³", "enthalpy_kj_mol": "kJ/mol", "change_c": "°C"}
NAMES = {
    "end_point_cm3": say("quantity-end-point"),
    "enthalpy_kj_mol": say("quantity-enthalpy"),
    "change_c": say("quantity-temperature-change"),
}
METHODS = {"heat_balance": say("method-heat-balance"), "straight_lines": say("method-straight-lines")}

AGREE = 0.05


def said_of(answer: ClassResult) -> list[Message]:
    """Return the sentences about a class result, the most important first."""
    found = [(each, each["pooled"]) for each in answer["quantities"] if each["pooled"] is not None]
    if not answer["benches"]:
        return [say("class-no-repeat-yet")]
    if not found:
        return [say("class-one-bench")]
    sentences = [_mean(*each) for each in found]
    sentences += _meaning(*found[0])
    sentences += _without_words(found[0][0], len(answer["anomalies"]))
    sentences += _methods(found)
    if answer["other_plans"]:
        sentences.append(say("class-other-plans"))
    return sentences


def _mean(quantity: Quantity, made: PooledShown) -> Message:
    form = ".2f" if quantity["quantity"] == "end_point_cm3" else "+.2f"  # a change has its sign
    return say(
        "class-mean",
        quantity=NAMES[quantity["quantity"]],
        method=METHODS[quantity["method"]],
        mean=f"{made['mean']:{form}}",
        u=f"{made['u']:.2f}",
        unit=UNITS[quantity["quantity"]],
        count=made["count"],
        low=f"{made['low']:{form}}",
        high=f"{made['high']:{form}}",
    )


def _meaning(quantity: Quantity, made: PooledShown) -> Sequence[Message]:
    unit = UNITS[quantity["quantity"]]
    explained = say("class-meaning", sd=f"{made['sd']:.2f}", own_u=f"{made['own_u']:.2f}", unit=unit)
    between = f"{made['between']:.2f}"
    if made["between"] == 0.0:
        verdict = say("class-agree")
    elif made["p"] >= AGREE:
        verdict = say("class-chance", between=between, unit=unit, p=f"{made['p']:.2f}")
    else:
        verdict = say("class-differ", between=between, unit=unit, p=_p(made["p"]))
    return explained, verdict


def _without_words(quantity: Quantity, odd: int) -> Sequence[Message]:
    made, unit = quantity.get("without"), UNITS[quantity["quantity"]]
    if made is None:
        return ()
    mean, u = f"{made['mean']:.2f}", f"{made['u']:.2f}"
    return (say("class-without", count=odd, mean=mean, u=u, unit=unit),)


def _methods(found: Sequence[tuple[Quantity, PooledShown]]) -> Sequence[Message]:
    by = {each["method"]: made for each, made in found if each["quantity"] == "end_point_cm3"}
    if len(by) < 2:
        return ()
    apart = by["straight_lines"]["mean"] - by["heat_balance"]["mean"]
    side = "below" if apart < 0.0 else "above"
    return (say("class-methods", apart_cm3=f"{abs(apart):.2f}", side=side),)


def _p(p: float) -> str:
    return f"{p:.3f}" if p >= 0.001 else say("class-p-least")
