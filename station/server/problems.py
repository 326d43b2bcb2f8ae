"""One shape for every error: RFC 9457 problem details."""

from collections.abc import Mapping
from typing import Any

from fastapi import Request
from fastapi.exceptions import RequestValidationError
from fastapi.responses import JSONResponse
from starlette.exceptions import HTTPException

from station.practical.problems import problem_line_of

TITLES = {
    400: "The request cannot be understood",
    403: "Not from this page",
    404: "There is nothing here",
    405: "That is not how to ask here",
    409: "Not possible now",
    413: "Too much at once",
    415: "Send JSON",
    422: "Not understood",
    503: "The record cannot be written",
}


class Problem(JSONResponse):
    """A problem reply."""

    media_type = "application/problem+json"


def problem(status: int, code: str, detail: str, extra: Mapping[str, Any] | None = None) -> Problem:
    """Return a problem reply; `code` is for programs, `detail` for people."""
    title = TITLES.get(status, "It did not work")
    body = {"type": "about:blank", "title": title, "status": status, "code": code, "detail": detail}
    return Problem({**body, **(extra or {})}, status)


async def on_invalid(_: Request, error: Exception) -> Problem:
    """Answer a body or query that does not fit."""
    errors = error.errors() if isinstance(error, RequestValidationError) else []
    if errors and errors[0]["type"] == "json_invalid":
        return problem(422, "not_json", "The body is not valid JSON.")
    return problem(422, "not_understood", problem_line_of(errors) if errors else str(error))


async def on_http(_: Request, error: Exception) -> Problem:
    """Answer what the framework refuses by itself (no such path, wrong method)."""
    if not isinstance(error, HTTPException):
        return await on_crash(_, error)
    return problem(error.status_code, "refused", str(error.detail))


async def on_crash(_: Request, __: Exception) -> Problem:
    """Answer our own fault without its insides."""
    return problem(500, "station_fault", "The station made a mistake. Nothing that was confirmed is lost.")
