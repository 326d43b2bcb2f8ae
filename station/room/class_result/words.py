"""What the class result means, in sentences: on the page, on paper and at the end of a rehearsal. Loads no numpy."""

import math
from collections.abc import Sequence

from typing_extensions import TypedDict

from station.practical.kinds.kind import METHOD_NAMES
from station.room.contract import ClassResult, PooledShown, Quantity
from station.words import Message, say

AGREE = 0.05


# The answer to the plan's question, and two plain sentences: how far the benches lie apart, and why the lines differ.


class Answered(TypedDict):
    """What stands first."""

    answer: Message | None
    plain: list[Message]


def answer_of(result: ClassResult, taking_part: int) -> Answered:
    """Return the answer in one sentence, and what it is worth in plain ones."""
    asked = next((each for each in result["quantities"] if each["quantity"] == result["asks"]), None)
    if asked is None or not asked["values"]:
        return {"answer": None, "plain": []}
    made, unit = asked["pooled"], asked["unit"]
    if made is None:
        (only,) = asked["values"]
        value, u = with_u(only["value"], only["u"])
        return {"answer": say("class-answer-one", value=value, u=u, unit=unit, all=taking_part), "plain": []}
    mean, u = with_u(made["mean"], made["u"])
    answer = say("class-answer", mean=mean, u=u, unit=unit, count=made["count"], all=taking_part)
    return {"answer": answer, "plain": [_spread(made, unit), *_lines(result["quantities"])]}


def _spread(made: PooledShown, unit: str) -> Message:
    sd, own_u = with_u(made["sd"], made["sd"])[0], with_u(made["own_u"], made["sd"])[0]
    agree = made["between"] == 0.0 or made["p"] >= AGREE
    return say("class-spread", sd=sd, own_u=own_u, unit=unit, agree="yes" if agree else "no")


def _lines(quantities: Sequence[Quantity]) -> Sequence[Message]:
    """Why the straight lines give another end-point, and by how much in per cent."""
    made = {each["method"]: each["pooled"] for each in quantities if each["quantity"] == "end_point_cm3"}
    heat, lines = made.get("heat_balance"), made.get("straight_lines")
    if heat is None or lines is None:
        return ()
    percent = 100.0 * (lines["mean"] / heat["mean"] - 1.0)
    side = "lower" if percent < 0.0 else "higher"
    return (say("class-lines", percent=f"{abs(percent):.0f}", side=side),)


def with_u(value: float, u: float) -> tuple[str, str]:
    """Return a value and its u to the place of the second figure of u where that begins with 1, else of the first."""
    places = 0 if u <= 0.0 or not math.isfinite(u) else -math.floor(math.log10(u))
    if u > 0.0 and round(u * 10.0**places) == 1:
        places += 1
    return f"{value:.{max(places, 0)}f}", f"{u:.{max(places, 0)}f}"


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
    sign, places = "+" if quantity["signed"] else "", f".{quantity['places']}f"
    return say(
        "class-mean",
        quantity=quantity["name"],
        method=METHOD_NAMES[quantity["method"]],
        mean=f"{made['mean']:{sign}{places}}",
        u=f"{made['u']:{places}}",
        unit=quantity["unit"],
        count=made["count"],
        low=f"{made['low']:{sign}{places}}",
        high=f"{made['high']:{sign}{places}}",
    )


def _meaning(quantity: Quantity, made: PooledShown) -> Sequence[Message]:
    unit = quantity["unit"]
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
    made, unit = quantity.get("without"), quantity["unit"]
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
