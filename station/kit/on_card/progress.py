"""The page of a card that installs itself, where the bench's page will be: which step it is at, in plain words.

Reads `result.txt`, which install.sh writes, and `words.json`, which `station kit` makes from the catalogues. The unit
station-progress.service ends it when the station takes its place; the page in a browser goes on asking meanwhile, and
shows the station once that answers.
"""

import html
import json
import re
import socket
import sys
import tomllib
from base64 import b64encode
from collections.abc import Mapping
from hashlib import sha256
from http import HTTPStatus
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from typing import NamedTuple

PORT = 8080
AGAIN_S = 5
IDLE_S = 10
"""A connection that says nothing for so long is closed."""
LONGEST_BYTES = 20_000
LINES_SHOWN = 30

_STYLE = """
body { font: 1.2rem/1.5 system-ui, sans-serif; max-width: 40rem; margin: 2rem auto; padding: 0 1rem; }
.now { border-left: .4rem solid #1c6e3d; padding: .2rem 0 .2rem .8rem; font-size: 1.5rem; }
.failed .now { border-color: #b3261e; } progress { width: 100%; height: 1.2rem; }
pre { white-space: pre-wrap; overflow-wrap: anywhere; font-size: .9rem; }
@media (prefers-color-scheme: dark) { body { background: #15181c; color: #eee; } }
"""
_SCRIPT = """
setInterval(async () => {
  try {
    const answer = await fetch("/", { cache: "no-store" });
    if (answer.headers.get("etag") !== document.body.dataset.seen) location.reload();
  } catch { /* between this page and the station nobody answers */ }
}, 3000);
"""


class State(NamedTuple):
    """Where the installation is: `key` names its words (a step's number, "waits", "failed", "done"), then the lines."""

    key: str
    lines: tuple[str, ...] = ()


def state_of(result: str) -> State:
    """Return what a result.txt tells: the last step, whether it failed, whether all is done."""
    lines = result.splitlines()
    if lines and lines[-1] == "done":
        return State("done")
    if any(line.startswith("FAILED") for line in lines):
        return State("failed", tuple(lines[-LINES_SHOWN:]))
    steps = [found[1] for line in lines if (found := re.match(r"step (\d) of \d", line))]
    return State(steps[-1] if steps else "waits")


def port_of(boot: Path) -> int:
    """Return the port of the page that comes: as the card's settings say, else the station's own."""
    for name in ("station.toml", "room.toml"):
        try:
            port = tomllib.loads((boot / name).read_text(encoding="utf-8")).get("server", {}).get("port", PORT)
        except (OSError, ValueError, AttributeError):
            continue
        return port if isinstance(port, int) and 0 < port < 65536 else PORT
    return PORT


def language_of(accepted: str, known: Mapping[str, object], default: str) -> str:
    """Return the language of the catalogues that a browser likes best (RFC 9110, 12.5.4)."""
    liked = []
    for each in accepted.split(","):
        tag, _, weight = each.partition(";")
        code = tag.strip().lower().partition("-")[0]
        found = re.fullmatch(r"\s*q=([01](?:\.\d{0,3})?)\s*", weight)
        if code in known:
            liked.append((float(found[1]) if found else 0.0 if weight else 1.0, code))
    best = max(liked, key=lambda one: one[0], default=(0.0, default))
    return best[1] if best[0] > 0.0 else default


def page(state: State, words: Mapping[str, str], language: str, host: str) -> tuple[bytes, str]:
    """Return the page and its tag, which changes with what it tells."""

    def told(key: str) -> str:
        return html.escape(words.get(key, key))

    steps = sum(key.isdigit() for key in words)
    bar = f'<progress max="{steps}" value="{int(state.key) - 1}"></progress>' if state.key.isdigit() else ""
    more = f"<p>{told('failed-mend')}</p><pre>{html.escape(chr(10).join(state.lines))}</pre>" if state.lines else ""
    body = (
        f"<main><h1>{told('title')}</h1><p>{html.escape(host)}</p>"
        f'<p class="now">{told(state.key)}</p>{bar}{more}<p>{told("stay")}</p></main>'
    )
    seen = f'"{_digest(body)}"'
    whole = f"""<!doctype html>
<html lang="{language}"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark"><link rel="icon" href="data:,">
<noscript><meta http-equiv="refresh" content="{AGAIN_S}"></noscript>
<title>{told("title")}</title><style>{_STYLE}</style></head>
<body data-seen="{html.escape(seen)}" class="{"failed" if state.lines else ""}">{body}
<script>{_SCRIPT}</script></body></html>
"""
    return whole.encode(), seen


def _digest(text: str) -> str:
    return b64encode(sha256(text.encode()).digest()).decode()


_POLICY = (
    f"default-src 'none'; style-src 'sha256-{_digest(_STYLE)}'; script-src 'sha256-{_digest(_SCRIPT)}'; "
    "connect-src 'self'; img-src data:; frame-ancestors 'none'; base-uri 'none'"
)


class Progress(ThreadingHTTPServer):
    """Serves the progress of the card whose folder `benchwarm` is `here`."""

    address_family = socket.AF_INET6
    daemon_threads = True

    def __init__(self, here: Path, port: int) -> None:
        """Listen on all addresses, of IPv4 too."""
        self.here = here
        super().__init__(("::", port), _Answers)

    def server_bind(self) -> None:
        """Take IPv4 as well."""
        self.socket.setsockopt(socket.IPPROTO_IPV6, socket.IPV6_V6ONLY, 0)
        super().server_bind()

    def answer(self, accepted: str) -> tuple[bytes, str]:
        """Return the page in the reader's language, from the files as they are now."""
        try:
            result = (self.here / "result.txt").read_bytes()[-LONGEST_BYTES:].decode("utf-8", "replace")
        except OSError:
            result = ""
        try:
            catalogues = json.loads((self.here / "words.json").read_text(encoding="utf-8"))
        except (OSError, ValueError):
            catalogues = {"en": {}}
        language = language_of(accepted, catalogues, next(iter(catalogues)))
        return page(state_of(result), catalogues[language], language, socket.gethostname())


class _Answers(BaseHTTPRequestHandler):
    server: Progress
    timeout = IDLE_S
    server_version, sys_version = "installation", ""

    def do_GET(self) -> None:
        """Answer every path with the page; a program below /api learns that nothing is there yet."""
        body, seen = self.server.answer(self.headers.get("Accept-Language", ""))
        kind = "text/html; charset=utf-8"
        if self.path.startswith("/api/"):
            kind = "application/problem+json"
            body = json.dumps({"status": 503, "title": "installing"}).encode()
        self.send_response(HTTPStatus.SERVICE_UNAVAILABLE)
        for name, value in (
            ("Content-Type", kind),
            ("Content-Length", str(len(body))),
            ("Content-Security-Policy", _POLICY),
            ("X-Content-Type-Options", "nosniff"),
            ("Cache-Control", "no-store"),
            ("ETag", seen),
            ("Retry-After", str(AGAIN_S)),
            ("Connection", "close"),
        ):
            self.send_header(name, value)
        self.end_headers()
        if self.command != "HEAD":
            self.wfile.write(body)

    do_HEAD = do_GET  # noqa: N815 - the library's name

    def log_message(self, format: str, *args: object) -> None:  # noqa: A002 - the library's name
        """Who looked is of no interest."""


def main() -> None:
    """Serve until a signal ends the process."""
    here = Path(sys.argv[1]) if len(sys.argv) > 1 else Path(__file__).resolve().parent
    port = int(sys.argv[2]) if len(sys.argv) > 2 else port_of(here.parent)
    Progress(here, port).serve_forever()


if __name__ == "__main__":
    main()
