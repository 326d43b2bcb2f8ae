"""The calculation from the students' own reading, as a school writes it: a line works with what the line above shows.

Arithmetic alone, so that a station may do it without its calculating process.
"""

from dataclasses import dataclass, field
from typing import Final

from station.chemistry.figures import figures
from station.chemistry.pairs import Neutralisation
from station.practical.kinds.contract import OwnStep
from station.words import Message, say

WATER_J_G_C: Final = 4.18
"""What schools take for every dilute solution, with 1 g for each cm³ (AQA mark schemes)."""
PROBE_C: Final = 0.0625
"""The smallest step of the probe, as a school counts a division."""


@dataclass
class OwnSheet:
    """The lines so far; a line hands on the number that it shows."""

    steps: list[OwnStep] = field(default_factory=list)

    def line(self, text: Message, formula: str, working: str, value: float, unit: str, written: str = "") -> float:
        """Write one line down, its result in three or four figures unless it is `written` otherwise."""
        shown = written or figures(value)
        self.steps.append({"text": text, "formula": formula, "working": working, "written": shown, "unit": unit})
        return float(shown)

    def amount(self, reagent: str, mol_dm3: float, cm3: float) -> float:
        """Write down the amount in a volume of solution (mol)."""
        working = f"n = {figures(mol_dm3)} mol/dm³ × {figures(cm3)} cm³ ÷ 1000"
        return self.line(say("step-amount", reagent=reagent), "n = c V", working, mol_dm3 * cm3 / 1000, "mol")

    def water(self, pair: Neutralisation, alkali_mol: float) -> float:
        """Write down the amount of water that so much alkali forms (mol)."""
        times = "" if pair.alkali_hydroxides == 1 else f"{pair.alkali_hydroxides} × "
        return self.line(
            say("step-water-formed"),
            f"n(H₂O) = {times}n({pair.alkali.formula})",
            f"n(H₂O) = {times}{figures(alkali_mol)} mol",
            pair.alkali_hydroxides * alkali_mol,
            "mol",
        )

    def heat(self, mass_g: float, change_c: float) -> float:
        """Write down the heat given out (J); negative where it was taken in."""
        return self.line(
            say("step-heat-liquid"),
            "q = m c ΔT",
            f"q = {figures(mass_g)} g × {WATER_J_G_C} J/(g °C) × {degrees(change_c)} °C",
            mass_g * WATER_J_G_C * change_c,
            "J",
        )

    def enthalpy(self, heat_j: float, amount_mol: float, of: str) -> None:
        """Write down the enthalpy change per mole, in three figures."""
        value = -heat_j / amount_mol / 1000
        self.line(
            say("step-enthalpy", of=of),
            "ΔH = -q ÷ n ÷ 1000",
            f"ΔH = -({figures(heat_j)} J) ÷ {figures(amount_mol)} mol ÷ 1000",
            value,
            "kJ/mol",
            f"{'+' if value > 0 else ''}{figures(value, 3, 3)}",
        )

    def percentage(self, division_c: float, change_c: float) -> None:
        """Write down the percentage uncertainty of a change, half a division for each of two readings."""
        percent = abs(division_c / change_c) * 100
        self.line(
            say("step-percentage-school"),
            say("formula-percentage"),
            f"% = {division_c:g} °C ÷ {degrees(abs(change_c))} °C × 100",
            percent,
            "%",
            percentage(percent),
        )


def percentage(percent: float) -> str:
    """Write a percentage uncertainty to two figures, and at most one decimal."""
    return f"{percent:.1f}" if percent < 10 else f"{percent:.0f}"


def degrees(temperature_c: float) -> str:
    """Write a temperature to the hundredth that the station tells."""
    return f"{temperature_c:.2f}"
