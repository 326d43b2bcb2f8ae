"""What is refused at the door, and the headers of every reply: nothing from elsewhere, inline, or guessed."""

from collections.abc import MutableMapping
from typing import Any
from urllib.parse import urlsplit

from starlette.datastructures import Headers, MutableHeaders
from starlette.types import ASGIApp, Receive, Scope, Send

from station.server.problems import Problem, problem

LARGEST_BODY = 16_384
HEADERS = {
    "Content-Security-Policy": "default-src 'self'; img-src 'self' data:; frame-ancestors 'none'; base-uri 'none'; "
    "form-action 'self'; object-src 'none'",
    "X-Content-Type-Options": "nosniff",
    "Referrer-Policy": "no-referrer",
}
FOREVER = "public, max-age=31536000, immutable"


def refusal(method: str, headers: Headers) -> Problem | None:
    """Return why a request is not let in; None when it is. Who only looks is always let in.

    A page from elsewhere can make a browser post here, but not without its `Origin` (RFC 6454), and not
    with a JSON content type unless it first asks (Fetch standard), to which nothing here says yes.
    """
    if method in _LOOKING:
        return None
    origin = headers.get("origin")
    if origin is not None and urlsplit(origin).netloc.lower() != headers.get("host", "").lower():
        return problem(403, "other_origin", "Acts come from the station's own page only.")
    kind = headers.get("content-type", "").partition(";")[0].strip().lower()
    if kind != "application/json" and method in _SENDING:
        return problem(415, "not_json", "Send the body as application/json.")
    length = headers.get("content-length", "0")
    if length.isascii() and length.isdigit() and int(length[:18]) > LARGEST_BODY:
        return problem(413, "too_large", f"The body may have {LARGEST_BODY} bytes at most.")
    return None


class Guard:
    """Refuses, and adds the headers; built files carry their digest in their name and may be kept for ever."""

    def __init__(self, app: ASGIApp) -> None:
        self._app = app

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Serve one request."""
        if scope["type"] != "http":
            await self._app(scope, receive, send)
            return

        async def with_headers(message: MutableMapping[str, Any]) -> None:
            if message["type"] == "http.response.start":
                headers = MutableHeaders(scope=message)
                for name, value in HEADERS.items():
                    headers[name] = value
                if scope["path"].startswith("/page/") and message["status"] == 200:
                    headers["Cache-Control"] = FOREVER
                elif scope["path"].startswith("/api/"):
                    headers.setdefault("Cache-Control", "no-store")
            await send(message)

        refused = refusal(scope["method"], Headers(scope=scope))
        await (refused or self._app)(scope, receive, with_headers)


_LOOKING = frozenset({"GET", "HEAD", "OPTIONS"})
_SENDING = frozenset({"POST", "PUT", "PATCH"})
