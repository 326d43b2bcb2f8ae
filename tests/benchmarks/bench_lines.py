"""Straight lines: how good the split rule is, what the ± covers, how fast it is.

Run: OPENBLAS_NUM_THREADS=1 python tests/benchmarks/bench_lines.py [samples]
Cups here: 25 cm³ of acid, end-point 18-30 cm³, cup 5 J/K, alkali up to 1 °C colder or 0.5 °C warmer than the
acid, 1 % of the rise lost between portions. "exact lines" are bent lines with normal scatter.
"""

import sys
import time
import warnings
from collections.abc import Callable
from pathlib import Path

import numpy as np

sys.path.insert(0, str(Path(__file__).parents[2]))
from station.analysis.lines.crossing import fit_lines
from station.analysis.lines.fit import LinesRefused, cross, fit_line
from station.analysis.lines.split import suspects
from station.analysis.lines.uncertainty import IdealCup, end_point_behind_cm3, predicted_bias_cm3
from station.analysis.pooling import pool
from station.analysis.repeats import summarise

Random = np.random.Generator
Cut = tuple[int, int] | None
Drawn = tuple[np.ndarray, np.ndarray, float]
Scene = Callable[[Random], Drawn]
FITTED = IdealCup(25.0, 4.05, 4.05, 5.0)


def exact_lines(sd_c: float, top_c: float = 0.0, width_cm3: float = 0.0) -> Scene:
    def draw(random: Random) -> Drawn:
        x, end = np.arange(0, 50.1, 5.0), random.uniform(20, 30)
        past = np.maximum(x - end, 0)
        if width_cm3:
            past = width_cm3 * np.logaddexp(0, (x - end) / width_cm3)
        y = 20 + 0.3 * x - 0.42 * past + random.normal(0, sd_c, x.size)
        y[np.argmin(np.abs(x - end))] += top_c
        return x, y, end

    return draw


def cups(sd_c: float, step_c: float, portion: float = 5.0, rise_c: float = 7.0, portion_sd: float = 0.0) -> Scene:
    def draw(random: Random) -> Drawn:
        x, end = np.arange(0, 45.1, portion), float(random.uniform(18, 30))
        poured = np.concatenate(([0.0], portion + random.normal(0, portion_sd, x.size - 1)))
        alkali_c, heat = random.uniform(-1, 0.5), rise_c * (4.05 * (25 + end) + 5) / end
        level, total, warm = np.zeros(x.size), 0.0, 0.0
        for i in range(1, x.size):
            j_k = 4.05 * (25 + total) + 5
            reacted = min(total + poured[i], end) - min(total, end)
            warm = (j_k * warm + heat * reacted + 4.05 * poured[i] * alkali_c) / (j_k + 4.05 * poured[i]) * 0.99
            total += poured[i]
            level[i] = warm
        y = 20 + level + random.normal(0, sd_c, x.size)
        return x, np.round(y / step_c) * step_c, end

    return draw


def by_rule(x: np.ndarray, y: np.ndarray) -> Cut:
    result = fit_lines(x, y)
    return result.before.points[-1] + 1, result.after.points[0]


def by_least_squares(x: np.ndarray, y: np.ndarray) -> Cut:
    """The cut of least squares alone among those whose lines cross in the gap: what joined lines do."""
    best: tuple[float, int] | None = None
    for cut in range(3, x.size - 2):
        first, last = fit_line(x[:cut], y[:cut]), fit_line(x[cut:], y[cut:])
        inside = first.slope != last.slope and x[cut - 1] <= cross(first, last).x <= x[cut]
        if inside and (best is None or first.sse + last.sse < best[0]):
            best = first.sse + last.sse, cut
    return (best[1], best[1]) if best else None


def without_top(x: np.ndarray, y: np.ndarray) -> Cut:
    top = int(np.argmax(y))
    return (top, top + 1) if 3 <= top <= x.size - 4 else None


def top_rises(x: np.ndarray, y: np.ndarray) -> Cut:
    top = int(np.argmax(y)) + 1
    return (top, top) if 3 <= top <= x.size - 3 else None


RULES = {
    "rule of the station": by_rule,
    "least squares alone": by_least_squares,
    "top on neither": without_top,
    "top on rising arm": top_rises,
}
SCENES = {
    "exact lines, sd 0.05 °C": exact_lines(0.05),
    "exact lines, sd 0.2 °C": exact_lines(0.2),
    "exact lines, sd 0.5 °C": exact_lines(0.5),
    "exact lines, top read 0.5 °C high": exact_lines(0.05, 0.5),
    "exact lines, top read 0.3 °C low": exact_lines(0.05, -0.3),
    "exact lines, corner rounded over 2 cm³": exact_lines(0.05, 0.0, 2.0),
    "cup, sd 0.03 °C, step 0.0625 °C": cups(0.03, 0.0625),
    "cup, thermometer read to 1 °C": cups(0.2, 1.0),
    "cup, portions of 2.5 cm³": cups(0.05, 0.0625, 2.5),
    "cup, portions sd 0.3 cm³": cups(0.03, 0.0625, 5.0, 7.0, 0.3),
    "cup, rise of 2 °C": cups(0.05, 0.0625, 5.0, 2.0),
}


def table(samples: int) -> None:
    print(f"{'scene':40s} {'rule':21s}   bias    rms  covered  refused    (cm³; {samples} each)")
    for scene, draw in SCENES.items():
        for name, rule in RULES.items():
            random, errors, covered = np.random.default_rng(1), [], 0
            for _ in range(samples):
                x, y, end = draw(random)
                try:
                    cut = rule(x, y)
                    found = cut and cross(fit_line(x[: cut[0]], y[: cut[0]]), fit_line(x[cut[1] :], y[cut[1] :]))
                except LinesRefused:
                    continue
                if found and found.interval:
                    errors.append(found.x - end)
                    covered += found.interval[0] <= end <= found.interval[1]
            error, kept = np.array(errors), len(errors)
            rms = np.sqrt(np.mean(error**2))
            numbers = f"{error.mean():+6.2f} {rms:6.2f} {covered / kept:7.1%} {1 - kept / samples:8.1%}"
            print(f"{scene:40s} {name:21s} {numbers}")


def bias_table(samples: int) -> None:
    print("\npredicted bias against what happened, and the end-point sought behind the crossing (cm³)")
    for scene in ("cup, sd 0.03 °C, step 0.0625 °C", "cup, portions of 2.5 cm³"):
        random, happened, predicted, behind = np.random.default_rng(2), [], [], []
        for _ in range(samples):
            x, y, end = SCENES[scene](random)
            result = fit_lines(x, y)
            arms = result.before.points, result.after.points
            happened.append(result.end_point_cm3 - end)
            predicted.append(predicted_bias_cm3(x, end, FITTED, arms))
            sought = end_point_behind_cm3(result.end_point_cm3, x, FITTED, arms)
            behind.append(np.nan if sought is None else sought - end)
        gap = np.array(happened) - np.array(predicted)
        print(
            f"{scene:40s} happened {np.mean(happened):+.2f}  predicted {np.mean(predicted):+.2f}  "
            f"difference sd {gap.std():.2f}  behind: bias {np.nanmean(behind):+.2f} "
            f"rms {np.sqrt(np.nanmean(np.square(behind))):.2f} none {np.isnan(behind).mean():.1%}"
        )


def negatives(samples: int) -> None:
    random, x = np.random.default_rng(3), np.arange(0, 45.1, 5.0)
    print("\nno end-point in the readings, yet one given (aim: at most the 5 % of the interval)")
    for name, slope in (("level, only scatter", 0.0), ("a straight rise with scatter", 0.05)):
        given = 0
        for _ in range(samples):
            try:
                fit_lines(x, slope * x + random.normal(0, 0.5, x.size))
                given += 1
            except LinesRefused:
                pass
        print(f"  {name:40s} {given / samples:.1%}")
    print("readings flagged in a fit where nothing is wrong (1 % test)")
    for scene in ("exact lines, sd 0.05 °C", "cup, sd 0.03 °C, step 0.0625 °C", "cup, portions of 2.5 cm³"):
        flagged = 0
        for _ in range(samples):
            x, y, _ = SCENES[scene](random)
            result = fit_lines(x, y)
            flagged += bool(suspects(x, y, (result.before.points, result.after.points), step_c=0.0625))
        print(f"  {scene:40s} {flagged / samples:.1%}")


def means(samples: int) -> None:
    print("\n95 % intervals of means: covered")
    random = np.random.default_rng(4)
    for count in (2, 3, 5):
        for true, claimed in ((0.3, 0.3), (0.6, 0.3)):
            hits = 0
            for _ in range(samples):
                low, high = summarise(25 + random.normal(0, true, count), [claimed] * count).interval_95
                hits += low <= 25 <= high
            print(f"  {count} repeats, sd {true}, own u {claimed}: {hits / samples:.1%}")
    for count in (3, 8, 15):
        for tau in (0.0, 0.5):
            u = random.uniform(0.1, 0.6, (samples, count))
            y = 25 + random.normal(0, tau, u.shape) + random.normal(0, 1, u.shape) * u
            pools = [pool(a, b) for a, b in zip(y, u, strict=True)]
            shares = [
                np.mean([low <= 25 <= high for low, high in intervals])
                for intervals in (
                    [p.fixed.interval_95 for p in pools],
                    [p.random.interval_95 for p in pools],
                    [p.hartung_knapp.interval_95 for p in pools],
                )
            ]
            print(f"  {count} benches, tau {tau}: fixed {shares[0]:.1%} random {shares[1]:.1%} t {shares[2]:.1%}")


def speed() -> None:
    print("\ntime of one fit_lines (best of 5 rounds)")
    random = np.random.default_rng(5)
    for portion in (5.0, 2.5, 1.0):
        x, y, _ = cups(0.05, 0.0625, portion)(random)
        best = np.inf
        for _ in range(5):
            start = time.perf_counter()
            for _ in range(200):
                fit_lines(x, y)
            best = min(best, (time.perf_counter() - start) / 200)
        print(f"  {x.size:3d} readings: {best * 1e3:.3f} ms")


def against_pwlf(samples: int) -> None:
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        import pwlf  # noqa: PLC0415 - only here, and noisy
    print("\nagainst pwlf's own search for the best join")
    for scene in ("exact lines, sd 0.05 °C", "exact lines, sd 0.2 °C", "cup, sd 0.03 °C, step 0.0625 °C"):
        random, same, distances = np.random.default_rng(6), 0, []
        for seed in range(samples):
            x, y, _ = SCENES[scene](random)
            result = fit_lines(x, y)
            join = float(pwlf.PiecewiseLinFit(x, y, seed=seed).fitfast(2, pop=8)[1])
            if not result.left_out and x[result.before.points[-1]] < join < x[result.after.points[0]]:
                same += 1
                distances.append(abs(join - result.end_point_cm3))
        print(f"  {scene:40s} same split {same / samples:.0%}, there furthest apart {max(distances):.1e} cm³")


if __name__ == "__main__":
    number = int(sys.argv[1]) if len(sys.argv) > 1 else 1000
    table(number)
    bias_table(min(number, 300))
    negatives(number)
    means(2 * number)
    speed()
    against_pwlf(min(number, 100))
