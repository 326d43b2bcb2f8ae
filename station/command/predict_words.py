"""A prediction in words: tables for a teacher, within 80 columns."""

from collections.abc import Iterable
from itertools import chain
from textwrap import wrap
from typing import Any

from station.practical.kinds.kind import kind_of
from station.practical.plan import Plan
from station.words import join, say
from station.words.speaking import spoken

Json = dict[str, Any]

COLUMNS = 80


def prediction_in_words(answer: Json, plan: Plan) -> str:
    """Return the prediction as lines of text."""
    blocks = [[spoken(answer["practical"])]]
    if answer["warnings"]:
        blocks.append([spoken(say("predict-mind")), *_folded((each["text"] for each in answer["warnings"]), "- ")])
    head, *more = ([*chain.from_iterable(map(_fitting, block))] for block in kind_of(plan).promise(plan, answer))
    blocks.append(head)
    blocks += more if answer["curve"] is not None else [_folded([answer["refused"]["curve"]])]
    blocks.append(_minutes(answer["minutes"]))
    blocks.append([spoken(say("predict-assumed")), *_folded(answer["assumed"], "- ")])
    return "\n\n".join("\n".join(block) for block in blocks)


def _minutes(found: Json) -> list[str]:
    parts = [
        say("predict-part", part=name, minutes=f"{value:g}")
        for name, value in found.items()
        if name != "total" and value
    ]
    told = say("predict-about-minutes", minutes=f"{found['total']:.0f}", parts_text=join(parts, "list-comma"))
    return [spoken(told)]


def _folded(messages: Iterable[str], mark: str = "") -> list[str]:
    deeper = " " * len(mark)
    return [
        line
        for message in messages
        for line in wrap(
            spoken(message), COLUMNS, initial_indent=mark, subsequent_indent=deeper, break_long_words=False
        )
    ]


def _fitting(line: str) -> list[str]:
    """Fold a sentence; a row of a table is no longer than a line."""
    return [line] if len(line) <= COLUMNS else _folded([line])
