"""The child process that predicts: a plan's values on standard input, the prediction on standard output, both JSON.

A plan that cannot be a practical is answered too: `refused` with `where` and `text`.
"""

import json
import os
import sys

# As in bench/calculate.py.
os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")


def main() -> None:
    """Answer one question."""
    from station.practical.plan import PlanError, plan_from  # noqa: PLC0415 - after the environment is set
    from station.practical.predict import predict  # noqa: PLC0415

    question = json.load(sys.stdin)
    try:
        answer = predict(plan_from(question["plan"]), compare=question["compare"])
    except PlanError as error:
        answer = {"refused_plan": {"where": list(error.where), "text": str(error)}}
    json.dump(answer, sys.stdout, allow_nan=False)


if __name__ == "__main__":
    main()
