"""One shape for every error: RFC 9457 problem details."""

from collections.abc import Mapping
from http import HTTPStatus
from typing import Any

from fastapi import Request
from fastapi.exceptions import RequestValidationError
from fastapi.responses import JSONResponse
from starlette.exceptions import HTTPException

from station.practical.problems import problem_line_of
from station.server.streaming import compact
from station.words import Message, beside, say, written

_SCHEMA = {
    "type": "object",
    "required": ["type", "title", "status", "detail", "code"],
    "properties": {
        "type": {"type": "string", "const": "about:blank"},
        "title": {"type": "string"},
        "status": {"type": "integer"},
        "detail": {"type": "string", "description": "what a person can do"},
        "code": {"type": "string", "description": "for programs"},
        "id": {"type": "string", "description": "of the message in `detail`, where the station made it"},
        "values": {"type": "object", "description": "the message's: numbers, texts, and messages of their own"},
        "messages": {"type": "object", "description": "id and values of each text that is a message, by the text"},
        "state": {"type": "object", "description": "with 409: the state as GET /api/state gives it"},
    },
}
PROBLEMS: dict[int | str, dict[str, Any]] = {
    status: {
        "description": "A problem (RFC 9457)",
        "content": {"application/problem+json": {"schema": _SCHEMA}},
    }
    for status in ("4XX", "5XX")
}
"""What the OpenAPI document says of every error."""


class Problem(JSONResponse):
    """A problem reply."""

    media_type = "application/problem+json"

    def render(self, content: Any) -> bytes:
        """Return the body."""
        return compact(content).encode()


def problem(status: int, code: str, detail: str, extra: Mapping[str, Any] | None = None) -> Problem:
    """Return a problem reply; `code` is for programs, `detail` for people.

    With the type `about:blank` the title is the status's own phrase (RFC 9457, 4.2.1).
    """
    title = HTTPStatus(status).phrase
    body = {"type": "about:blank", "title": title, "status": status, "code": code, "detail": detail}
    return Problem(beside({**body, **_message(detail), **(extra or {})}), status)


def _message(detail: str) -> dict[str, Any]:
    """Return `id` and `values` of a message that the catalogues have; nothing for any other text."""
    if not isinstance(detail, Message) or not detail.id:
        return {}
    told = written(detail)
    return {"id": told["id"], "values": told["values"]}


async def on_invalid(request: Request, error: Exception) -> Problem:
    """Answer a body or query that does not fit."""
    errors = error.errors() if isinstance(error, RequestValidationError) else []
    if request.url.path == "/api/session":  # what did not fit may be a passphrase: it is not repeated
        return problem(422, "not_understood", say("server-send-code-as-text"))
    if errors and errors[0]["type"] == "json_invalid":
        return problem(422, "not_json", say("server-not-json"))
    return problem(422, "not_understood", problem_line_of(errors) if errors else str(error))


async def on_http(_: Request, error: Exception) -> Problem:
    """Answer what the framework refuses by itself (no such path, wrong method)."""
    if not isinstance(error, HTTPException):
        return await on_crash(_, error)
    reply = problem(error.status_code, "refused", str(error.detail))
    reply.headers.update(error.headers or {})  # what a method may be used instead: RFC 9110, 15.5.6
    return reply


async def on_crash(_: Request, __: Exception) -> Problem:
    """Answer our own fault without its insides."""
    return problem(500, "station_fault", say("server-made-a-mistake"))
