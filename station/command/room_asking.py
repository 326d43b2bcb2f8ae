"""Asking a room over HTTP, from this machine."""

import json
from dataclasses import dataclass
from typing import Any
from urllib.error import HTTPError, URLError
from urllib.request import ProxyHandler, Request, build_opener

_OPENER = build_opener(ProxyHandler({}))  # a school's proxy has no part in this


@dataclass(frozen=True)
class Answer:
    """Status and JSON body."""

    status: int
    body: dict[str, Any]


def ask(url: str, body: dict[str, Any] | None = None, within_s: float = 10.0) -> Answer | None:
    """GET, or POST a body; None when nobody answers, or not with JSON."""
    content = None if body is None else json.dumps(body).encode()
    request = Request(url, content, {"Content-Type": "application/json"})  # noqa: S310 - http, to this machine
    try:
        with _OPENER.open(request, timeout=within_s) as reply:
            return Answer(reply.status, json.loads(reply.read()))
    except HTTPError as error:
        return Answer(error.code, _json(error.read()))
    except (URLError, OSError, ValueError):
        return None


def _json(text: bytes) -> dict[str, Any]:
    try:
        found = json.loads(text)
    except ValueError:
        return {}
    return found if isinstance(found, dict) else {}
