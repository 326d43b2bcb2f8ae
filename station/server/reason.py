"""What is served where the bench's page would be while the station cannot start: the reason, and what was found.

No host name is refused here, since the settings that would name them may be what cannot be read. What is wrong in a
file is told without what is secret in it (`practical/problems.py`).
"""

import base64
import hashlib
import json
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from functools import partial
from html import escape
from http import HTTPStatus
from typing import Any

from starlette.datastructures import Headers
from starlette.types import Receive, Scope, Send

from station.server.door.guard import HEADERS
from station.server.door.reader import reader_language
from station.server.problems import problem
from station.words import in_language, say

AGAIN_S = 15
_ORDER = ("red", "amber", "unknown", "green")
_STYLE = """
body { font: 1.05rem/1.5 system-ui, sans-serif; max-width: 46rem; margin: 1.5rem auto; padding: 0 1rem; }
.reason { border-left: .4rem solid #b3261e; padding: .2rem 0 .2rem .8rem; font-size: 1.2rem; overflow-wrap: anywhere; }
ul { padding: 0; list-style: none; } li { margin-top: .7rem; overflow-wrap: anywhere; }
@media (prefers-color-scheme: dark) { body { background: #15181c; color: #eee; } }
"""
_SCRIPT = """
setInterval(async () => {
  try {
    const answer = await fetch("/api/state", { cache: "no-store" });
    if (answer.headers.get("etag") !== document.body.dataset.seen) location.reload();
  } catch { /* between two starts nobody answers */ }
}, 3000);
"""


def _digest(text: str) -> str:
    return base64.b64encode(hashlib.sha256(text.encode()).digest()).decode()


_POLICY = (
    f"default-src 'none'; style-src 'sha256-{_digest(_STYLE)}'; script-src 'sha256-{_digest(_SCRIPT)}'; "
    "connect-src 'self'; img-src data:; frame-ancestors 'none'; base-uri 'none'"
)


@dataclass
class Reason:
    """Why the station is not at work; `findings` as `station check --json` has them, None while it looks."""

    line: str
    findings: Sequence[Mapping[str, Any]] | None = field(default=None)


class ReasonApp:
    """Answers every path with the reason and status 503: as a page, or as a problem below /api."""

    def __init__(self, reason: Reason) -> None:
        self.reason = reason

    async def __call__(self, scope: Scope, _: Receive, send: Send) -> None:
        """Answer one request."""
        if scope["type"] != "http":
            return
        line, findings = self.reason.line, self._findings()
        seen = f'"{_digest(json.dumps([line, findings]))}"'
        if scope["path"].startswith("/api/"):
            answer = problem(503, "cannot_start", line, {"findings": findings})
            kind, body = "application/problem+json", bytes(answer.body)
        else:
            language = reader_language(Headers(scope=scope).get("accept-language", ""))
            kind, body = "text/html; charset=utf-8", page(line, findings, seen, language).encode()
        headers = {
            **HEADERS,
            "Content-Security-Policy": _POLICY,
            "Content-Type": kind,
            "Content-Length": str(len(body)),
            "Cache-Control": "no-store",
            "ETag": seen,
            "Retry-After": str(AGAIN_S),
        }
        sent = [(name.lower().encode(), value.encode()) for name, value in headers.items()]
        await send({"type": "http.response.start", "status": HTTPStatus.SERVICE_UNAVAILABLE, "headers": sent})
        await send({"type": "http.response.body", "body": b"" if scope["method"] == "HEAD" else body})

    def _findings(self) -> list[Mapping[str, Any]] | None:
        if self.reason.findings is None:
            return None
        return sorted(self.reason.findings, key=lambda each: _ORDER.index(each["colour"]))


def page(line: str, findings: Sequence[Mapping[str, Any]] | None, seen: str = "", language: str = "en") -> str:
    """Return the page in this language: one clear line, what to do, and all that was found, worst first.

    It loads itself anew once what the station says is no longer `seen`, so that nobody who reads it is disturbed.
    """
    told = partial(_told, language=language)
    if findings is None:
        rest = f"<p>{told(say('reason-page-looking'))}</p>"
    else:
        bad = [each for each in findings if each["colour"] in ("red", "amber")]
        others = [each for each in findings if each not in bad]
        rest = f"<h2>{told(say('reason-page-found'))}</h2>{_list(bad, told)}"
        rest += f"<details><summary>{told(say('reason-page-rest'))}</summary>{_list(others, told)}</details>"
    title = told(say("reason-page-title"))
    return f"""<!doctype html>
<html lang="{language}"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark"><link rel="icon" href="data:,">
<title>{title}</title><style>{_STYLE}</style></head>
<body data-seen="{escape(seen)}"><main><h1>{title}</h1>
<p class="reason">{told(line)}</p>
<p>{told(say("reason-page-mend"))}</p>
{rest}</main><script>{_SCRIPT}</script></body></html>
"""


def _told(message: str, language: str) -> str:
    """Return the words of a message in this language, as HTML."""
    return escape(in_language(message, language))


def _list(findings: Sequence[Mapping[str, Any]], told: Callable[[str], str]) -> str:
    return f"<ul>{''.join(_finding(each, told) for each in findings)}</ul>" if findings else ""


def _finding(finding: Mapping[str, Any], told: Callable[[str], str]) -> str:
    remedy = f"<br>→ {told(finding['remedy'])}" if finding["remedy"] else ""
    said = say("reason-page-finding", colour=finding["colour"], finding=finding["text"])
    return f"<li><b>{told(said)}</b>{remedy}</li>"
