"""What the warm worker costs: a first answer, each after it beside the fit alone, its memory while it idles.

Run: OPENBLAS_NUM_THREADS=1 python -m tests.benchmarks.bench_worker [answers of each kind, default 15]
The fit alone is the same function on the same question in this process, in turns with the worker's answers and as
nice as it; the times are medians.
"""

import asyncio
import os
import statistics
import sys
import time
from collections.abc import Callable
from typing import Any

from station.bench.calculation.worker import WORKERS, answered, nice
from station.practical.dataset import question_for
from station.practical.fold import fold_all
from station.practical.kinds import read_plan
from tests.benchmarks.bench_station import line, resident_mb
from tests.records import PLAN_TEXT
from tests.room.lesson_in_jumps import events_of

BOUND_MS = 100.0
Answer = Callable[[dict[str, Any]], Any]


async def main(count: int) -> None:
    """Print the figures; the worker starts first, so that this process is made as nice as it only then."""
    print(f"load average before: {os.getloadavg()[0]:.1f} on {os.cpu_count()} cores")
    plan = read_plan(PLAN_TEXT)
    kinds: dict[str, dict[str, Any]] = {
        "results": question_for(fold_all(events_of(1, plan=plan))),
        "prediction": {"plan": plan.model_dump(mode="json"), "compare": False},
    }
    for kind, question in kinds.items():
        begun_s = time.perf_counter()
        await answered(kind, question)
        line(f"{kind}: first answer, from nothing", 1000 * (time.perf_counter() - begun_s), "ms", None)
    os.nice(10 if nice() else 0)
    from station.practical.predict import answer as prediction  # noqa: PLC0415 - it loads numpy, as the worker did
    from station.practical.results import answer as results  # noqa: PLC0415

    alone: dict[str, Answer] = {"results": results, "prediction": prediction}
    for kind, question in kinds.items():
        alone[kind](question)
        warm_ms, fit_ms = [], []
        for _ in range(count):
            begun_s = time.perf_counter()
            await answered(kind, question)
            between_s = time.perf_counter()
            alone[kind](question)
            warm_ms.append(1000 * (between_s - begun_s))
            fit_ms.append(1000 * (time.perf_counter() - between_s))
        warm, fit = statistics.median(warm_ms), statistics.median(fit_ms)
        line(f"{kind}: computed alone", fit, "ms", None)
        line(f"{kind}: answer of the warm worker", warm, "ms", fit + BOUND_MS)
        line(f"{kind}: their ratio", warm / fit, "", None)
    for turn, worker in WORKERS.items():
        assert worker.process is not None
        line(f"resident memory of the worker, {turn}", resident_mb(worker.process.pid), "MB", None)


if __name__ == "__main__":
    asyncio.run(main(int(sys.argv[1]) if len(sys.argv) > 1 else 15))
