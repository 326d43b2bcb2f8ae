"""Cups mixed once, unlike the fitted model: two zones, wall in layers to the outside, pours, dissolving grains.

Integrated step by step (classical Runge–Kutta), many scenes at once. Shares no code with station.analysis. Every
spread is an invention of ours.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

Array = NDArray[np.float64]
DT_S = 0.1
STEP_C = 0.0625
LAYERS = 4
GRADES = 5  # of grain size
VAPOUR_J_G = 2450.0

FAMILIES = (
    "calm", "dilute", "strong", "endothermic", "slow_dissolving", "slow_reaction", "slow_wall", "long_pour",
    "careless_press", "drifting_room", "slow_probe", "other_probe", "gaps", "cold_added", "evaporating", "short",
    "poor_stirring", "mixed",
)  # fmt: skip


@dataclass(frozen=True)
class OnceScene:
    """One trace and its truth. ``true_heat_j`` is the heat given out at the temperature on mixing; ``true_cup_j_k``
    what a cup test in this cup finds; ``true_change_c`` the change of a cup without loss.
    """

    family: str
    time_s: Array
    temperature_c: Array
    mixed_at_s: float
    true_mixed_s: float
    true_heat_j: float
    true_change_c: float
    true_cup_j_k: float
    contents_j_k: float  # as told to the class, 0.2 % (1 sd) from the truth
    added_j_k: float
    true_added_c: float
    measured_added_c: float
    measured_room_c: float | None
    solid: bool


def _draw(rng: np.random.Generator, family: str) -> dict[str, float]:
    u, n = rng.uniform, rng.standard_normal
    solid = family in ("endothermic", "slow_dissolving") or (family == "mixed" and rng.random() < 0.5)
    pick = family if family != "mixed" else ""
    some = set(rng.choice(FAMILIES[6:17], size=4, replace=False)) if family == "mixed" else {pick}
    volume = float(rng.choice([50.0, 60.0, 100.0]))
    change = u(2.0, 7.0) * (-1.0 if solid and rng.random() < 0.7 else 1.0)
    change = {"dilute": u(0.8, 1.6), "strong": u(7.0, 12.0), "endothermic": -u(1.5, 8.0)}.get(pick, change)
    contents = volume * u(4.0, 4.18)
    added = volume * (u(0.05, 0.15) * 1.3 if solid else u(0.4, 0.5) * 4.1)
    room, slow = u(17.0, 25.0), "slow_wall" in some
    probe_factor = 1.7 if "slow_probe" in some else 1.0
    wall, probe_j_k = u(3.0, 10.0) if slow else u(2.0, 7.0), u(0.8, 2.5)
    mixed = u(150.0, 240.0)
    press = {True: u(-6.0, 8.0), False: 1.0 + 1.5 * n()}["careless_press" in some]
    return {
        "solid": float(solid), "contents_j_k": contents, "added_j_k": added, "change_c": change,
        "start_c": room + u(-1.0, 1.0), "room_c": room, "mixed_s": mixed, "press_s": mixed + press,
        "added_c": room + (-u(1.0, 5.0) if "cold_added" in some else u(-0.7, 0.7)),
        "room_drift_c_s": u(-0.1, 0.1) / 60.0 if "drifting_room" in some else u(-0.01, 0.01) / 60.0,
        "room_swing_c": u(0.0, 0.3), "room_period_s": u(120.0, 600.0), "humidity": u(0.3, 0.7),
        "pour_s": u(4.0, 10.0) if "long_pour" in some else u(1.0, 3.5),
        "grain_s": {"slow_dissolving": u(40.0, 120.0)}.get(pick, u(10.0, 40.0)) if solid else 0.0,
        "grain_spread": u(0.1, 0.5),
        "reaction_s": u(15.0, 40.0) if "slow_reaction" in some and not solid else 0.3,
        "side_share": u(0.1, 0.3) if "poor_stirring" in some else u(0.05, 0.15),
        "side_s": u(4.0, 12.0) if "poor_stirring" in some else u(1.0, 3.0),
        "open_w_k": u(0.03, 0.12), "out_w_k": u(0.02, 0.1),
        "evaporation": (u(0.2, 0.5) if "evaporating" in some else u(0.0, 0.15)) * 6e-4,
        "wall_j_k": wall, "wall_s": u(70.0, 250.0) if slow else u(15.0, 50.0), "probe_j_k": probe_j_k,
        "wall_offset_c": 0.4 * n(), "probe_offset_c": u(-1.5, 1.5), "stem_share": u(0.0, 0.01),
        "lag1_s": 4.5 * np.exp(0.3 * n()) * probe_factor, "lag2_s": 18.0 * np.exp(0.25 * n()) * probe_factor,
        "lag_share": float(np.clip(0.55 + 0.12 * n(), 0.2, 0.9)),
        "chain": float("other_probe" in some), "gaps": float("gaps" in some),
        "end_s": mixed + (u(150.0, 240.0) if "short" in some else u(360.0, 600.0)),
        "noise_c": float(rng.choice([0.0, 0.01, 0.02, 0.03])), "period_s": u(0.9, 1.2), "offset_c": u(-0.4, 0.4),
        "told_added_c": 0.2 * n(), "told_contents": 1.0 + 0.002 * n(),
        "told_room_c": 0.4 * n() if rng.random() < 0.7 else np.nan,
    }  # fmt: skip


def _vapour_kpa(t: Array) -> Array:
    return np.asarray(0.6112 * np.exp(17.62 * t / (243.12 + t)))


def cup_test_j_k(contents_j_k: float, p: dict[str, float]) -> float:
    """Heat capacity of wall and probe that lines drawn in this cup find: layers weighted by the slow mode squared."""
    film = p["wall_j_k"] * LAYERS / p["wall_s"]
    links = np.array([2.0 * film, *[film] * (LAYERS - 1)])
    caps = np.array([contents_j_k + p["probe_j_k"], *[p["wall_j_k"] / LAYERS] * LAYERS])
    matrix = np.zeros((LAYERS + 1, LAYERS + 1))
    for k, link in enumerate(links):
        matrix[k : k + 2, k : k + 2] += link * np.array([[1.0, -1.0], [-1.0, 1.0]])
    matrix[0, 0] += p["open_w_k"]
    matrix[-1, -1] += p["out_w_k"]
    root = np.sqrt(caps)
    shape = np.linalg.eigh(matrix / np.outer(root, root))[1][:, 0] / root
    weights = (shape / shape[0]) ** 2
    return float(p["probe_j_k"] + (caps[1:] * weights[1:]).sum())


class _Tank:
    """Rates of change for a batch of scenes.

    States: liquid, side zone, what is left of a middling grain's size (below 0 when it has gone), heat not yet given
    out by the reaction (J), four layers of wall, three nodes of the probe.
    """

    def __init__(self, p: dict[str, Array], heat_j: Array) -> None:
        self.p, self.heat_j = p, heat_j
        self.sizes = np.exp(np.linspace(-1.5, 1.5, GRADES)[:, None] * p["grain_spread"])
        weights = self.sizes**3 * np.exp(-0.5 * np.linspace(-1.5, 1.5, GRADES)[:, None] ** 2)
        self.weights = weights / weights.sum(axis=0)

    def begin(self) -> Array:
        p = self.p
        wall = [p["start_c"] + p["wall_offset_c"] * (k + 1) / LAYERS for k in range(LAYERS)]
        probe = p["start_c"] + p["probe_offset_c"]
        one = np.ones_like(probe)
        return np.stack([p["start_c"], p["start_c"], one, 0.0 * one, *wall, probe, probe, probe])

    def rate(self, t: float, x: Array) -> Array:
        p, out = self.p, np.zeros_like(x)
        main, side, grain, waiting = x[:4]
        walls, nodes = x[4 : 4 + LAYERS], x[4 + LAYERS :]
        phase = (t - p["mixed_s"]) / p["pour_s"] + 0.5
        inside = (phase > 0.0) & (phase < 1.0)
        flow = np.where(inside, (1.0 - np.cos(2.0 * np.pi * phase)) / p["pour_s"], 0.0)
        poured = np.clip(phase, 0.0, 1.0)
        poured = poured - np.sin(2.0 * np.pi * poured) / (2.0 * np.pi)
        capacity = p["contents_j_k"] - p["added_j_k"] * (1.0 - poured)
        room = p["room_c"] + p["room_drift_c_s"] * t + p["room_swing_c"] * np.sin(2 * np.pi * t / p["room_period_s"])
        solid = p["solid"] > 0.0
        # Grains dissolve from their surface: their size shrinks evenly; the heat goes with the volume.
        dissolving = np.where(solid & (phase > 0.5), 1.0 / np.maximum(p["grain_s"], 1.0), 0.0)
        left = np.maximum(1.0 - (1.0 - grain) / self.sizes, 0.0)
        from_grains = self.heat_j * (3.0 * left**2 / self.sizes * self.weights).sum(axis=0) * dissolving
        reacting = waiting / p["reaction_s"]
        heating = np.where(solid, from_grains, reacting) + flow * p["added_j_k"] * (p["added_c"] - main)
        dry = np.maximum(_vapour_kpa(main) - p["humidity"] * _vapour_kpa(room), -1.0)
        lost = p["open_w_k"] * (main - room) + p["evaporation"] * VAPOUR_J_G * dry
        film = p["wall_j_k"] * LAYERS / p["wall_s"]
        into_wall = 2.0 * film * (main - walls[0])
        into_probe = p["probe_j_k"] / p["lag1_s"] * (main - nodes[0])
        share = p["side_share"]
        exchange = share * capacity * (main - side) / p["side_s"]
        out[0] = (heating - lost - into_wall - into_probe - exchange) / (capacity * (1.0 - share))
        # The side zone keeps its share of the growing volume: what it gains comes from the main one.
        out[1] = exchange / (capacity * share) + flow * p["added_j_k"] * (main - side) / capacity
        out[2] = -dissolving
        out[3] = np.where(solid, 0.0, self.heat_j * flow) - reacting
        between = film * (walls[:-1] - walls[1:])
        layer = p["wall_j_k"] / LAYERS
        gains = np.concatenate([into_wall[None], between, (p["out_w_k"] * (walls[-1] - room))[None]])
        out[4 : 4 + LAYERS] = (gains[:-1] - gains[1:]) / layer
        seen = main + p["stem_share"] * (room - main)
        chain = p["chain"] > 0.0
        out[4 + LAYERS] = (seen - nodes[0]) / p["lag1_s"]
        out[5 + LAYERS] = np.where(chain, 3.0 * (nodes[0] - nodes[1]), seen - nodes[1]) / p["lag2_s"]
        out[6 + LAYERS] = np.where(chain, (nodes[0] - nodes[2]) / p["lag2_s"], 0.0)
        return out

    def reading(self, x: Array) -> Array:
        share, chain = self.p["lag_share"], self.p["chain"] > 0.0
        n0, n1, n2 = x[4 + LAYERS :]
        return np.asarray(np.where(chain, share * n1 + (1.0 - share) * n2, share * n0 + (1.0 - share) * n1))


def _heats(p: dict[str, Array]) -> tuple[Array, Array]:
    """Cup's heat capacity as a cup test finds it, and the heat that gives the drawn change."""
    count = len(p["change_c"])
    cups = np.array(
        [cup_test_j_k(float(p["contents_j_k"][k]), {n: float(v[k]) for n, v in p.items()}) for k in range(count)]
    )
    return cups, (p["contents_j_k"] + cups) * p["change_c"]


def _readings(rng: np.random.Generator, p: dict[str, float], grid: Array, sensor: Array) -> tuple[Array, Array]:
    time_s = np.cumsum(np.maximum(p["period_s"] + 0.05 * rng.standard_normal(900), 0.3))
    time_s = time_s[time_s < p["end_s"]]
    felt = np.interp(time_s, grid, sensor) + p["offset_c"] + p["noise_c"] * rng.standard_normal(len(time_s))
    reading = np.round(felt / STEP_C) * STEP_C
    stale, missing = (0.03, 0.08) if p["gaps"] else (0.003, 0.01)
    for k in np.flatnonzero(rng.random(len(time_s)) < stale):
        reading[k] = reading[max(k - 1, 0)]
    keep = rng.random(len(time_s)) >= missing
    if p["gaps"]:
        begin = p["mixed_s"] + rng.uniform(-60.0, 120.0)
        keep &= (time_s < begin) | (time_s > begin + rng.uniform(5.0, 20.0))
    return time_s[keep], reading[keep]


def make_once(family: str, count: int, seed: int = 1) -> list[OnceScene]:
    """``count`` scenes of a family, the same for the same seed."""
    if family not in FAMILIES:
        raise ValueError(f"no family {family!r}: one of {', '.join(FAMILIES)}")
    rng = np.random.default_rng([seed, FAMILIES.index(family)])
    drawn = [_draw(rng, family) for _ in range(count)]
    p = {name: np.array([d[name] for d in drawn]) for name in drawn[0]}
    cups, total = _heats(p)
    heat_j = total  # given out at the temperature on mixing; what the added part brings comes on top
    tank = _Tank(p, heat_j)
    x = tank.begin()
    steps = int(np.ceil(p["end_s"].max() / DT_S))
    sensor, main = np.empty((steps + 1, count)), np.empty((steps + 1, count))
    sensor[0], main[0] = tank.reading(x), x[0]
    for k in range(steps):
        t, h = k * DT_S, DT_S
        a = tank.rate(t, x)
        b = tank.rate(t + h / 2, x + h / 2 * a)
        c = tank.rate(t + h / 2, x + h / 2 * b)
        x = x + h / 6 * (a + 2 * b + 2 * c + tank.rate(t + h, x + h * c))
        sensor[k + 1], main[k + 1] = tank.reading(x), x[0]
    grid: Array = np.arange(steps + 1, dtype=np.float64) * DT_S
    scenes = []
    for k, d in enumerate(drawn):
        time_s, reading = _readings(rng, d, grid, sensor[:, k])
        met = float(np.interp(d["mixed_s"] - d["pour_s"] / 2, grid, main[:, k]))
        brought = d["added_j_k"] * (d["added_c"] - met)
        scenes.append(
            OnceScene(
                family=family,
                time_s=time_s,
                temperature_c=reading,
                mixed_at_s=d["press_s"],
                true_mixed_s=d["mixed_s"],
                true_heat_j=float(heat_j[k]),
                true_change_c=float((heat_j[k] + brought) / (d["contents_j_k"] + cups[k])),
                true_cup_j_k=float(cups[k]),
                contents_j_k=d["contents_j_k"] * d["told_contents"],
                added_j_k=d["added_j_k"],
                true_added_c=d["added_c"] + d["offset_c"],
                measured_added_c=d["added_c"] + d["offset_c"] + d["told_added_c"],
                measured_room_c=None if np.isnan(d["told_room_c"]) else d["room_c"] + d["offset_c"] + d["told_room_c"],
                solid=bool(d["solid"]),
            )
        )
    return scenes
