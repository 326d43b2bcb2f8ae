"""What is not allowed, or not now, as an exception and as the reply it becomes."""

import math

from fastapi import Request

from station.server.problems import Problem, problem


class Refusal(Exception):  # noqa: N818 - an answer to a person, not a fault of the station
    """Not allowed, or not now; becomes a problem reply."""

    def __init__(self, status: int, code: str, detail: str, wait_s: float = 0.0) -> None:
        super().__init__(detail)
        self.status, self.code, self.wait_s = status, code, wait_s


def too_soon(code: str, why: str, wait_s: float) -> Refusal:
    """Return the refusal that says when to come again."""
    seconds = max(1, math.ceil(wait_s))
    return Refusal(429, code, f"{why} Wait {seconds} s, then try again.", wait_s)


def reply(refusal: Refusal) -> Problem:
    """Return the problem reply; `Retry-After` in whole seconds (RFC 9110, 10.2.3)."""
    answer = problem(refusal.status, refusal.code, str(refusal))
    if refusal.wait_s > 0.0:
        answer.headers["Retry-After"] = str(max(1, math.ceil(refusal.wait_s)))
    return answer


async def on_refusal(_: Request, refusal: Exception) -> Problem:
    """Answer a refusal that was raised."""
    assert isinstance(refusal, Refusal)  # noqa: S101 - registered for this class only
    return reply(refusal)
