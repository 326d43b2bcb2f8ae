"""What was found, for a spreadsheet: both methods side by side with u and interval, and the steps to the numbers."""

from collections.abc import Iterator, Mapping
from typing import Any

from station.practical.state import OwnReading, State
from station.record.spreadsheet_cells import Cell, Row, Sheet

Json = Mapping[str, Any]

METHODS = {"straight_lines": "straight lines", "heat_balance": "heat balance"}
_QUANTITIES = (
    ("end-point", "end_point_cm3", "interval_95_cm3", "cm³"),
    ("temperature at the end-point", "temperature_c", None, "°C"),
    ("expected shift of raw lines", "predicted_bias_cm3", None, "cm³"),
    ("change of temperature", "change_c", "interval_95_c", "°C"),
    ("heat given out", "heat_j", None, "J"),
    ("enthalpy change per mole", "enthalpy_kj_mol", None, "kJ/mol"),
    ("concentration of the acid", "acid_mol_dm3", None, "mol/dm³"),
)
_COLUMNS = (
    ("of", 12),
    ("method", 16),
    ("quantity", 30),
    ("value", 12),
    ("standard uncertainty", 12),
    ("95 % from", 12),
    ("95 % to", 12),
    ("unit", 10),
    ("in words", 60),
)
_STEPS = (
    ("of", 12),
    ("method", 16),
    ("step", 44),
    ("formula", 34),
    ("working", 44),
    ("value", 14),
    ("standard uncertainty", 12),
    ("unit", 12),
)


def result_sheets(state: State, result: Json) -> Iterator[Sheet]:
    """Yield the results and, where there are any, the steps that led to them."""
    yield Sheet("Results", _COLUMNS, _rows(state.own_reading, result))
    steps = list(_steps(result))
    if steps:
        yield Sheet("Steps", _STEPS, steps)


def _parts(result: Json) -> Iterator[tuple[str, Json]]:
    yield "mean", result
    for each in result.get("repeats") or ():
        yield f"repeat {each['repeat']}", each


def _rows(own: OwnReading | None, result: Json) -> Iterator[Row]:
    if own is not None:
        yield from _own(own)
    for of, part in _parts(result):
        for method, name in METHODS.items():
            found = part.get(method)
            if found:
                yield from _found(of, name, found)
            else:
                why = (part.get("refused") or {}).get(method, "")
                yield of, name, "no result", None, None, None, None, None, why
        for note in part.get("notes") or ():
            yield of, None, "worth a thought", None, None, None, None, None, note
    accepted = result.get("accepted")
    if accepted:
        words = "; ".join(each for each in (accepted.get("text"), accepted.get("source")) if each)
        row: Row = (
            "accepted",
            None,
            "enthalpy change per mole",
            accepted.get("enthalpy_kj_mol"),
            accepted.get("u"),
            None,
            None,
            "kJ/mol",
            words,
        )
        yield row


def _own(own: OwnReading) -> Iterator[Row]:
    if own.change_c is not None:
        yield "own lines", None, "change of temperature", own.change_c, None, None, None, "°C"
    else:
        words = None if own.end_point_cm3 is not None else "nothing could be read"
        yield "own lines", None, "end-point", own.end_point_cm3, None, None, None, "cm³", words


def _found(of: str, method: str, found: Json) -> Iterator[Row]:
    for quantity, key, interval, unit in _QUANTITIES:
        value = found.get(key)
        if value is None:
            continue
        low, high = found.get(interval) or (None, None) if interval else (None, None)
        yield of, method, quantity, value, found.get(f"u_{key}"), low, high, unit


def _steps(result: Json) -> Iterator[Row]:
    for of, part in _parts(result):
        for method, name in METHODS.items():
            for step in (part.get("steps") or {}).get(method) or ():
                texts: list[Cell] = [step.get(key) for key in ("text", "formula", "working")]
                yield (of, name, *texts, step.get("value"), step.get("u"), step.get("unit"))
