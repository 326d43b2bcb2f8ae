"""The child process of the class result: a question on standard input, the answer on standard output, both JSON.

The question holds, for each bench, either its `question` or the `result` of one that was answered before.
"""

import json
import os
import sys
from typing import Any

os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")


def main() -> None:
    """Answer one question."""
    json.dump(answer(json.load(sys.stdin)), sys.stdout, allow_nan=False)


def answer(asked: dict[str, Any]) -> dict[str, Any]:
    """Return the result of each bench, and the class's."""
    from station.room.class_result import bench_result, class_result  # noqa: PLC0415 - after the environment is set

    benches: dict[str, dict[str, Any]] = {}
    results: dict[str, dict[str, Any]] = {}
    for bench, each in asked["benches"].items():
        results[bench] = each["result"] if "result" in each else bench_result(each["question"])
        benches[bench] = {**results[bench], "name": each["name"], **each["facts"]}
    return {"benches": results, "class": class_result(benches)}


if __name__ == "__main__":
    main()
