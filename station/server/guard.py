"""What is refused at the door, and the headers of every reply: nothing from elsewhere, inline, or guessed."""

from collections.abc import MutableMapping
from typing import Any
from urllib.parse import urlsplit

from starlette.datastructures import Headers, MutableHeaders
from starlette.responses import PlainTextResponse, Response
from starlette.types import ASGIApp, Receive, Scope, Send

from station.server.access import Access
from station.server.access_network import network_of
from station.server.access_rate import WEIGHTS
from station.server.access_refusal import reply, too_soon
from station.server.problems import Problem, problem

LARGEST_BODY = 16_384
HEADERS = {
    "Content-Security-Policy": "default-src 'self'; img-src 'self' data:; frame-ancestors 'none'; base-uri 'none'; "
    "form-action 'self'; object-src 'none'",
    "X-Content-Type-Options": "nosniff",
    "Referrer-Policy": "no-referrer",
    "Cross-Origin-Resource-Policy": "same-origin",
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

    def __init__(self, app: ASGIApp, access: Access) -> None:
        self._app, self._access = app, access

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

        headers = Headers(scope=scope)
        refused = self._elsewhere(scope, headers) or refusal(scope["method"], headers) or self._too_many(scope)
        await (refused or self._app)(scope, receive, with_headers)

    def _elsewhere(self, scope: Scope, headers: Headers) -> Response | None:
        """Refuse what is not meant for this station; who only looks too: another site could read what is shown."""
        hosts = headers.getlist("host")
        if len(hosts) == 1 and self._access.hosts.allows(hosts[0]):
            return None
        if scope["method"] == "GET" and not scope["path"].startswith("/api/"):
            return PlainTextResponse(f"{_OTHER_HOST}\n", 421)
        return problem(421, "other_host", _OTHER_HOST)

    def _too_many(self, scope: Scope) -> Problem | None:
        looks = scope["method"] in _LOOKING
        rate = self._access.looks if looks else self._access.rate
        client = scope.get("client")
        weight = WEIGHTS.get(scope["path"], 1) if looks else 1
        wait_s = rate.wait_s(network_of(client[0] if client else ""), self._access.monotonic(), weight)
        if wait_s <= 0.0:
            return None
        code = "too_many_looks" if looks else "too_many_acts"
        return reply(too_soon(code, "That was too much at once.", wait_s))


_OTHER_HOST = (
    "This bench does not answer to the name in the address bar. Open it by the address on its label or screen. "
    "If the name is right, add it to names under [access] in station.toml."
)
_LOOKING = frozenset({"GET", "HEAD", "OPTIONS"})
_SENDING = frozenset({"POST", "PUT", "PATCH"})
