"""Finds, in the source itself, the texts that the station may send to its page."""

import ast
import re
from collections.abc import Iterator, Sequence
from pathlib import Path

STATION = Path(__file__).parents[1] / "station"

EVERY_TEXT = (
    "practical/prompts.py",
    "practical/questions.py",
    "practical/guide*.py",
    "practical/judgement*.py",
    "practical/plausible.py",
    "practical/straight.py",
    "practical/results.py",
    "practical/heat.py",
    "practical/once.py",
    "practical/steps*.py",
    "practical/accepted.py",
    "practical/settling.py",
    "practical/procedure.py",
    "practical/rules.py",
    "practical/typed.py",
    "practical/group.py",
    "practical/staff.py",
    "practical/acts.py",
    "practical/csv_cells.py",
    "practical/readings_text.py",
    "practical/problems.py",
    "practical/plan_parts.py",
    "practical/predict*.py",
    "practical/prepare*.py",
    "chemistry/preparation.py",
    "chemistry/hazard*.py",
    "chemistry/heat.py",
    "chemistry/pairs.py",
    "bench/check/*.py",
    "command/check_link.py",
)
"""Files in which everything that reads like words is for people at the bench."""

SENTENCES = (
    "analysis/*.py",
    "practical/*.py",
    "server/*.py",
    "bench/loop.py",
    "bench/calculator.py",
    "record/journal.py",
    "room/link_state.py",
    "room/class_*.py",
    "room/watchers.py",
    "room/collector.py",
    "room/order_taker.py",
    "room/orders.py",
)
"""Files in which whole sentences are for people at the bench; other texts are keys, or faults of a caller."""

NOT_ON_THE_PAGE = {
    "practical/replay.py": "a replay is printed by the command line",
    "bench/check/journal_child.py": "its answers are judged, not shown",
    "bench/check/kit.py": "the settings' own defaults",
    "server/serve.py": "printed where the station is started",
    "server/reason.py": "a page of its own, which says its German itself",
}

NOT_WORDS = {
    r"own judgement|after own reading|at once|when shown": "values of the plan",
    r"set aside": "a status",
    r"Value error,": "taken off a message",
    r"[^ ]+ = [^=]*": "a formula with its values, where it has no words in it",
    r"(Ox|Flam|Skin|Eye|Acute|STOT|Aquatic|Respiratory)\b.*( \d[AB]?|\)|tract)": "categories of the regulation",
    r"water, long": "a family of categories",
    r".* \(\d{4}\).*": "a published source",
    r"Raspberry Pi|Linux|benchwarm #[^.]*|not installed|page (not )?built": "names and versions",
    r"SELECT .*": "a query",
    r"MB free|by the station at work": "parts of sentences that are known whole",
}
"""Texts that are no words for people, as patterns, and what they are."""

NAMES_FOR_A_FAULT = ("_positive", "number")
"""Functions that name a figure for a fault of the caller."""


class Texts(ast.NodeVisitor):
    """Collects the texts of a module as skeletons: `#` stands for each value."""

    def __init__(self) -> None:
        self.found: list[str] = []

    def visit_Expr(self, node: ast.Expr) -> None:
        if not isinstance(node.value, ast.Constant):  # else a docstring
            self.generic_visit(node)

    def visit_Call(self, node: ast.Call) -> None:
        if not (isinstance(node.func, ast.Name) and node.func.id in NAMES_FOR_A_FAULT):
            self.generic_visit(node)

    def generic_visit(self, node: ast.AST) -> None:
        if isinstance(node, ast.If | ast.For | ast.With | ast.FunctionDef | ast.Module):
            _join_additions(node)
        if isinstance(node, ast.expr):
            text = skeleton(node)
            if text is not None:
                # A value before or after a whole sentence is another sentence.
                text = re.sub("#+", "#", text).strip()
                self.found.append(re.sub(r"^# (?=[A-Z#])|(?<=[.?!]) #$", "", text))
                for part in ast.walk(node):
                    if isinstance(part, ast.FormattedValue):
                        self.visit(part.value)
                return
        super().generic_visit(node)


def skeleton(node: ast.expr) -> str | None:
    """Return the text of an expression with `#` for each value; None where it is no text."""
    if isinstance(node, ast.Constant):
        return re.sub(r"\{\w+\}", "#", node.value) if isinstance(node.value, str) else None
    if isinstance(node, ast.JoinedStr):
        return "".join(skeleton(part) or "" if isinstance(part, ast.Constant) else "#" for part in node.values)
    if isinstance(node, ast.BinOp) and isinstance(node.op, ast.Add):
        sides = skeleton(node.left), skeleton(node.right)
        if any(side is not None for side in sides):
            return "".join("#" if side is None else side for side in sides)
    return None


def _join_additions(block: ast.If | ast.For | ast.With | ast.FunctionDef | ast.Module) -> None:
    """Turn `text += a; text += b` into one addition."""
    joined: list[ast.stmt] = []
    for statement in block.body:
        before = joined[-1] if joined else None
        if (
            isinstance(statement, ast.AugAssign)
            and isinstance(before, ast.AugAssign)
            and ast.dump(statement.target) == ast.dump(before.target)
        ):
            before.value = ast.BinOp(before.value, ast.Add(), statement.value)
        else:
            joined.append(statement)
    block.body = joined


def _files(patterns: Sequence[str]) -> set[Path]:
    return {path for pattern in patterns for path in STATION.glob(pattern)}


def _reads_like_words(text: str) -> bool:
    words = re.findall(r"[A-Za-z][a-z']*", text)
    label = re.fullmatch(r"[A-Z][a-z]{2,}|No", text) is not None
    return label or (len(words) > 1 and " " in text and not re.fullmatch(r"[\w.#/-]+", text))


def _is_exempt(text: str) -> bool:
    if any(re.fullmatch(pattern, text) for pattern in NOT_WORDS):
        return " = " not in text or re.search("[a-z]{4,}", text) is None
    return False


def _is_sentence(text: str) -> bool:
    return re.match(r"[A-Z#]", text) is not None and text[-1:] in set(".?!") and _reads_like_words(text)


def texts() -> Iterator[tuple[str, str]]:
    """Yield the place and the skeleton of each text that may reach the page."""
    unseen = _files(tuple(NOT_ON_THE_PAGE))
    every = _files(EVERY_TEXT)
    for path in sorted((every | _files(SENTENCES)) - unseen):
        collector = Texts()
        collector.visit(ast.parse(path.read_text(encoding="utf-8")))
        wanted = _reads_like_words if path in every else _is_sentence
        for text in dict.fromkeys(collector.found):
            if wanted(text) and not _is_exempt(text):
                yield path.relative_to(STATION).as_posix(), text
