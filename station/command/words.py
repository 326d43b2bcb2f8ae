"""Results in words, for a person at a terminal."""

from typing import Any


def results_in_words(answer: dict[str, Any]) -> str:
    """Return the results of a practical as a few lines."""
    lines: list[str] = []
    for each in answer["repeats"]:
        lines += _block(f"repeat {each['repeat']}", each)
    return "\n".join(lines + _block("mean of the repeats", answer["mean"]))


def _block(name: str, result: dict[str, Any]) -> list[str]:
    methods = [method for method in ("straight_lines", "heat_balance") if method in result]
    found = [f"  {method.replace('_', ' '):<15} {_method(method, result)}" for method in methods]
    probe = [f"  {result['probe']['text']}"] if "probe" in result else []
    return [name, *found, *probe, *(f"  {note}" for note in result.get("notes", []))]


def _method(method: str, result: dict[str, Any]) -> str:
    found = result[method]
    if found is None:
        return f"no result: {result['refused'].get(method, 'no reason was given')}"
    if "change_c" in found:
        low, high = found["interval_95_c"]
        words = f"{found['change_c']:+.2f} ± {found['u_change_c']:.2f} °C (95 %: {low:+.2f} to {high:+.2f} °C)"
        words += f"; heat {found['heat_j']:.0f} ± {found['u_heat_j']:.0f} J"
    else:
        low, high = found["interval_95_cm3"]
        end_point_cm3, u_cm3 = found["end_point_cm3"], found["u_end_point_cm3"]
        words = f"{end_point_cm3:.2f} ± {u_cm3:.2f} cm³ (95 %: {low:.2f} to {high:.2f} cm³)"
    if found.get("label"):
        words += f", {found['label']}"
    if found.get("enthalpy_kj_mol") is not None:
        words += f"; {found['enthalpy_kj_mol']:.1f} ± {found['u_enthalpy_kj_mol']:.1f} kJ/mol"
    if found.get("acid_mol_dm3") is not None:
        words += f"; acid {found['acid_mol_dm3']:.4f} ± {found['u_acid_mol_dm3']:.4f} mol/dm³"
    return words
