"""A kind of practical is one package: nobody outside `practical/kinds` tells kinds apart."""

import ast
import re
from collections.abc import Iterator
from pathlib import Path

import pytest

import station
from station.practical.kinds import KINDS
from station.practical.kinds.kind import kind_named, part_of

ROOM = Path(station.__file__).parent
OWN = ROOM / "practical" / "kinds"
MODELS = {model.__name__ for model in KINDS.values()}
OF_A_KIND = re.compile(rf"station\.practical\.kinds\.({'|'.join(KINDS)})\b")
KEPT = {"practical/results.py": {"portions.results"}}
"""What readings without a plan give is what portions give without one."""


def telling(tree: ast.AST) -> Iterator[tuple[int, str]]:
    """Yield line and words of what tells kinds apart: their models, their packages, comparisons with their codes."""
    for node in ast.walk(tree):
        match node:
            case ast.Name(id=name) | ast.Attribute(attr=name) if name in MODELS:
                yield node.lineno, name
            case ast.alias(name=name) if name in MODELS:
                yield node.lineno, name
            case ast.ImportFrom(module=str(module)) if OF_A_KIND.match(module):
                yield node.lineno, module.removeprefix("station.practical.kinds.")
            case ast.Compare():
                sides = [node.left, *node.comparators]
                if any(asks_a_kind(each) for each in sides) and any(is_code(each) for each in sides):
                    yield node.lineno, ast.unparse(node)
            case ast.Match() if asks_a_kind(node.subject) and any(is_code(each.pattern) for each in node.cases):
                yield node.lineno, ast.unparse(node.subject)


def asks_a_kind(side: ast.expr) -> bool:
    return "kind" in ast.unparse(side)


def is_code(side: ast.AST) -> bool:
    return any(isinstance(each, ast.Constant) and each.value in KINDS for each in ast.walk(side))


def test_nobody_outside_asks_which_kind_a_practical_is() -> None:
    outside = [path for path in ROOM.rglob("*.py") if OWN not in path.parents]
    assert len(outside) > 200
    found = [
        f"{name}:{line}: {words}"
        for path in outside
        for name in [path.relative_to(ROOM).as_posix()]
        for line, words in telling(ast.parse(path.read_text(encoding="utf-8")))
        if words not in KEPT.get(name, ())
    ]
    assert found == []


@pytest.mark.parametrize(
    "text",
    [
        "isinstance(plan, OncePlan)",
        "from station.practical.kinds.once.plan import Addition",
        "plan.kind == 'portions'",
        "'once' != shown['kind']",
        "plan.kind in ('once', 'ratios')",
        "match plan.kind:\n    case 'once':\n        pass",
    ],
)
def test_telling_kinds_apart_is_seen(text: str) -> None:
    assert list(telling(ast.parse(text)))


@pytest.mark.parametrize("code", KINDS)
def test_a_kind_has_all_its_parts(code: str) -> None:
    assert KINDS[code].model_fields["kind"].annotation.__args__ == (code,)  # type: ignore[union-attr]
    assert kind_named(code).class_quantities
    assert callable(part_of(code, "results").results) and callable(part_of(code, "prediction").predict)
