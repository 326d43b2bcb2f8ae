"""Glassware that portions are measured with, and the standard uncertainty of one portion.

Tolerances: ASTM E1272 (measuring cylinders), ISO 385 (burettes), ISO 835 (graduated pipettes), read as
rectangular limits (u = a/√3, GUM 4.3.7). What a school class adds by reading and draining is common
practice, no source; a plan can always state its own `u_volume_cm3`.
"""

from dataclasses import dataclass


@dataclass(frozen=True)
class Glassware:
    """One way of measuring a portion; `u_portion_cm3` is one standard deviation of one portion in cm³."""

    name: str
    u_portion_cm3: float
    source: str


GLASSWARE: dict[str, Glassware] = {
    ware.name: ware
    for ware in (
        Glassware("measuring cylinder", 0.3, "10 cm³ class B ±0.2 (ASTM E1272), with reading and draining"),
        Glassware("graduated pipette", 0.06, "10 cm³ class B ±0.1 (ISO 835), a/√3"),
        Glassware("syringe", 0.1, "common practice, no source"),
        Glassware("burette", 0.05, "two readings of a 50 cm³ class B burette, ±0.1 (ISO 385) over the whole scale"),
        Glassware("balance", 0.02, "portions weighed to 0.01 g, with drops left behind: common practice, no source"),
    )
}
DEFAULT_U_PORTION_CM3 = 0.1


def u_portion_cm3(name: str | None) -> float:
    """Return the standard uncertainty (cm³) of one portion measured with the named glassware.

    Raises ValueError naming what is known when the name is not in the table.
    """
    if name is None:
        return DEFAULT_U_PORTION_CM3
    ware = GLASSWARE.get(name.strip().lower())
    if ware is None:
        raise ValueError(f"unknown glassware {name!r}; known: {', '.join(GLASSWARE)}")
    return ware.u_portion_cm3
