"""The numbers at the end, of whatever kind the practical is. Runs in the worker's process."""

from collections.abc import Mapping, Sequence
from typing import Any

from station.practical.dataset import Known, RepeatData, from_question, questions_json
from station.practical.kinds.kind import part_of
from station.practical.kinds.portions.results import lines_alone
from station.practical.plan import Plan

Json = dict[str, Any]
NOTHING_KNOWN = Known()


def answer(question: Mapping[str, Any]) -> Json:
    """Return the results for a question as JSON values (`dataset.question_of`)."""
    return results(*from_question(question))


def results(plan: Plan | None, repeats: Sequence[RepeatData], known: Known = NOTHING_KNOWN) -> Json:
    """Return the results as JSON values: `repeats` one by one, then `mean` of the repeats.

    Without a plan there are straight lines alone.
    """
    of_kind = None if plan is None else part_of(plan.kind, "results").results
    found: Json = lines_alone(repeats) if of_kind is None else of_kind(plan, repeats, known)
    for one, repeat in zip(found["repeats"], repeats, strict=True):
        one.setdefault("questions", questions_json(repeat))
    return found
