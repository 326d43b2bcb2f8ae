"""What is served where the bench's page would be while the station cannot start: the reason, and what was found.

No host name is refused here, since the settings that would name them may be what cannot be read; and nothing is
shown that is secret.
"""

import base64
import hashlib
import json
import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from html import escape
from http import HTTPStatus
from typing import Any

from starlette.types import Receive, Scope, Send

from station.server.guard import HEADERS
from station.server.problems import problem

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


def public(line: str) -> str:
    """Return the line without a value that students must not see before the results: what staff made up."""
    return re.sub(r"(prepared_mol_dm3\b[^(]*)\(got [^()]*\)", r"\1(got: not shown)", line)


class ReasonApp:
    """Answers every path with the reason and status 503: as a page, or as a problem below /api."""

    def __init__(self, reason: Reason) -> None:
        self.reason = reason

    async def __call__(self, scope: Scope, _: Receive, send: Send) -> None:
        """Answer one request."""
        if scope["type"] != "http":
            return
        line, findings = public(self.reason.line), self._findings()
        seen = f'"{_digest(json.dumps([line, findings]))}"'
        if scope["path"].startswith("/api/"):
            answer = problem(503, "cannot_start", line, {"findings": findings})
            kind, body = "application/problem+json", bytes(answer.body)
        else:
            kind, body = "text/html; charset=utf-8", page(line, findings, seen).encode()
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

    def _findings(self) -> list[dict[str, Any]] | None:
        if self.reason.findings is None:
            return None
        told = json.loads(public(json.dumps(list(self.reason.findings), ensure_ascii=False)))
        return sorted(told, key=lambda each: _ORDER.index(each["colour"]))


def page(line: str, findings: Sequence[Mapping[str, Any]] | None, seen: str = "") -> str:
    """Return the page: one clear line, what to do, and all that was found, worst first.

    It loads itself anew once what the station says is no longer `seen`, so that nobody who reads it is disturbed.
    """
    if findings is None:
        rest = "<p>The station is looking at the kit; the findings follow in a moment.</p>"
    else:
        bad = [each for each in findings if each["colour"] in ("red", "amber")]
        rest = f"<h2>What the check found</h2>{_list(bad)}<details><summary>all the rest</summary>"
        rest += f"{_list([each for each in findings if each not in bad])}</details>"
    return f"""<!doctype html>
<html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark"><link rel="icon" href="data:,">
<title>The station cannot start</title><style>{_STYLE}</style></head>
<body data-seen="{escape(seen)}"><main><h1>The station cannot start</h1>
<p class="reason">{escape(line)}</p>
<p>Mend that; the station tries again by itself within half a minute, and this page becomes the bench's. The record is
kept. Work on with an ordinary thermometer meanwhile.</p>
<p lang="de">Die Station kann nicht starten. Der Grund steht oben auf Englisch, wie im Protokoll des Systems. Ist er
behoben, startet sie von selbst innerhalb einer halben Minute. Die Aufzeichnung bleibt erhalten.</p>
{rest}</main><script>{_SCRIPT}</script></body></html>
"""


def _list(findings: Sequence[Mapping[str, Any]]) -> str:
    return f"<ul>{''.join(_finding(each) for each in findings)}</ul>" if findings else ""


def _finding(finding: Mapping[str, Any]) -> str:
    remedy = f"<br>→ {escape(finding['remedy'])}" if finding["remedy"] else ""
    return f"<li><b>{escape(finding['colour'])}: {escape(finding['text'])}</b>{remedy}</li>"
