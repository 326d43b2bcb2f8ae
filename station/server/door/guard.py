"""What is refused at the door, and the headers of every reply: nothing from elsewhere, inline, or guessed."""

from collections.abc import MutableMapping
from typing import Any

from starlette.datastructures import Headers, MutableHeaders
from starlette.requests import HTTPConnection
from starlette.responses import PlainTextResponse, Response
from starlette.types import ASGIApp, Receive, Scope, Send

from station.server.door.access import STAFF, Access, reply, too_soon
from station.server.door.limits import network_of, weight_of
from station.server.door.reader import reader_language
from station.server.problems import Problem, problem
from station.words import in_language, say

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
    # Without a parser, which could fail on what is none: scheme, "://", host and port is all that an origin has.
    scheme, _, place = (origin or "").lower().partition("://")
    if origin is not None and (scheme not in ("http", "https") or place != headers.get("host", "").lower()):
        return problem(403, "other_origin", say("server-own-page-only"))
    kind = headers.get("content-type", "").partition(";")[0].strip().lower()
    if kind != "application/json" and method in _SENDING:
        return problem(415, "not_json", say("server-send-json"))
    length = headers.get("content-length", "0")
    if length.isascii() and length.isdigit() and int(length[:18]) > LARGEST_BODY:
        return problem(413, "too_large", say("server-body-too-long", count=LARGEST_BODY))
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
        # Counted first: who is refused all the time is slowed like anybody else.
        refused = self._too_many(scope) or self._elsewhere(scope, headers) or refusal(scope["method"], headers)
        await (refused or self._app)(scope, receive, with_headers)

    def _elsewhere(self, scope: Scope, headers: Headers) -> Response | None:
        """Refuse what is not meant for this station; who only looks too: another site could read what is shown."""
        hosts = headers.getlist("host")
        if len(hosts) == 1 and self._access.hosts.allows(hosts[0]):
            return None
        if scope["method"] == "GET" and not scope["path"].startswith("/api/"):
            language = reader_language(headers.get("accept-language", ""))
            return PlainTextResponse(in_language(_OTHER_HOST, language) + "\n", 421, {"Content-Language": language})
        return problem(421, "other_host", _OTHER_HOST)

    def _too_many(self, scope: Scope) -> Problem | None:
        """Refuse who asks too much; staff are counted by themselves, whoever else is behind their address."""
        looks = scope["method"] in _LOOKING
        rate = self._access.looks if looks else self._access.rate
        client = scope.get("client")
        address = client[0] if client else ""
        cookie = HTTPConnection(scope).cookies.get(self._access.sessions.cookie_name)
        lane = network_of(address) + (" staff" if self._access.role(cookie, address) in STAFF else "")
        wait_s = rate.wait_s(lane, self._access.monotonic(), weight_of(scope["path"]) if looks else 1)
        if wait_s <= 0.0:
            return None
        code = "too_many_looks" if looks else "too_many_acts"
        return reply(too_soon(code, say("server-too-much-at-once"), wait_s))


_OTHER_HOST = say("server-unknown-host")
_LOOKING = frozenset({"GET", "HEAD", "OPTIONS"})
_SENDING = frozenset({"POST", "PUT", "PATCH"})
