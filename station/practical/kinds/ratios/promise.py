"""A prediction of mixing ratios in words: tables for a teacher, within 80 columns."""

from collections.abc import Iterator
from typing import Any

from station.practical.kinds.kind import METHOD_NAMES
from station.practical.kinds.ratios.plan import RatiosPlan
from station.practical.plan import number
from station.words import say
from station.words.speaking import figure, spoken

Json = dict[str, Any]


def promise(plan: RatiosPlan, answer: Json) -> Iterator[list[str]]:
    """Yield blocks of lines: what is mixed and found, then, where the rises can be told, rises and methods."""
    yield _head(plan, answer)
    if answer["curve"] is not None:
        yield from (_rises(answer), _methods(answer))


def _head(plan: RatiosPlan, answer: Json) -> list[str]:
    volumes = plan.mixtures.alkali_cm3
    told = [
        say(
            "predict-ratios",
            count=plan.mixtures.count,
            total_cm3=number(plan.mixtures.total_cm3),
            acid=plan.acid.name,
            acid_mol_dm3=f"{plan.acid.concentration_mol_dm3:g}",
            alkali=plan.alkali.name,
            alkali_mol_dm3=f"{plan.alkali.concentration_mol_dm3:g}",
            from_cm3=number(volumes[0]),
            to_cm3=number(volumes[-1]),
        ),
        say(
            "predict-ratio",
            end_point_cm3=f"{answer['end_point_cm3']:.1f}",
            ratio=f"{answer['alkali_per_acid']:.3g}",
        ),
    ]
    if answer["rise_c"] is not None:
        told.append(say("predict-ratios-rise", rise_c=f"{answer['rise_c']:.1f}", start_c=f"{answer['start_c']:.1f}"))
    return [spoken(each) for each in told]


def _rises(answer: Json) -> list[str]:
    named = say("predict-head-alkali"), say("predict-head-share"), say("predict-head-rise")
    heads = [spoken(each) for each in named]
    widths = [max(9, len(each)) for each in heads]
    lines = ["  ".join(f"{head:>{width}}" for head, width in zip(heads, widths, strict=True))]
    for row in answer["curve"]:
        cells = (f"{row['volume_cm3']:.1f}", f"{row['fraction']:.2f}", f"{row['rise_c']:.2f}")
        lines.append("  ".join(f"{figure(cell):>{width}}" for cell, width in zip(cells, widths, strict=True)))
    return lines


def _methods(answer: Json) -> list[str]:
    bias, refuses = spoken(say("predict-bias-ratio")), spoken(say("predict-refuses"))
    width = max(12, len(bias) + 2, len(refuses) + 2)
    lines = [f"{spoken(say('predict-head-ratio')):<24}{bias:>{width}}{'±':>10}{'±/cm³':>10}"]
    for name, label in METHOD_NAMES.items():
        found = answer["methods"][name]
        if found is None:
            lines.append(f"{spoken(label):<24}{refuses:>{width}}")
            continue
        cells = (f"{found['bias_ratio']:+.3f}", f"{found['u_alkali_per_acid']:.3f}", f"{found['u_end_point_cm3']:.2f}")
        shown = [figure(cell) for cell in cells]
        lines.append(f"{spoken(label):<24}{shown[0]:>{width}}{shown[1]:>10}{shown[2]:>10}")
    return lines
