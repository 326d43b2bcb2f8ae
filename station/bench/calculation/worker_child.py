"""The worker's process: a question a line on standard input, its answer a line on standard output, both JSON.

It alone loads numpy and scipy, with the first question that needs them. It ends when its standard input does, or when
nothing is asked for as many seconds as its argument says: whatever they cost is given back then.
"""

import json
import os
import select
import sys
from importlib import import_module
from typing import Any, Final, NamedTuple

from station.words import beside, understood


class Kind(NamedTuple):
    """Questions of one kind: whose turn they wait for, and the module whose `answer` takes one."""

    turn: str
    module: str


KINDS: Final = {
    "results": Kind("calculation", "station.practical.results"),
    "prediction": Kind("prediction", "station.practical.predict"),
    "class_result": Kind("calculation", "station.room.class_result.result"),
}


def main() -> None:
    """Answer until nobody asks any more."""
    # One thread is enough for fits of this size, and more would take the bench's own core from it.
    os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")
    idle_s = float(sys.argv[1])
    while select.select([sys.stdin], [], [], idle_s)[0] and (line := sys.stdin.readline()):
        sys.stdout.write(answered(**json.loads(line)) + "\n")
        sys.stdout.flush()


def answered(asked: str, question: dict[str, Any]) -> str:
    """Return what was asked with its `answer`, or with the fault for which it has `failed`."""
    try:
        answer = import_module(KINDS[asked].module).answer(understood(question))
        return json.dumps({"asked": asked, "answer": beside(answer)}, allow_nan=False)
    except Exception as error:
        fault = f"{type(error).__name__}: {error}".splitlines()[0][:200]
        return json.dumps({"asked": asked, "failed": fault})


if __name__ == "__main__":
    main()
