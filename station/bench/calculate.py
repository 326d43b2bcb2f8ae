"""The child process that computes: a question on standard input, the results on standard output, both JSON.

It alone loads numpy and scipy; whatever they cost is given back when it ends.
"""

import json
import os
import sys

# One thread is enough for fits of this size, and more would take the bench's own core from it.
os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")


def main() -> None:
    """Answer one question."""
    from station.practical.dataset import from_question  # noqa: PLC0415 - after the environment is set
    from station.practical.results import results  # noqa: PLC0415

    json.dump(results(*from_question(json.load(sys.stdin))), sys.stdout, allow_nan=False)


if __name__ == "__main__":
    main()
