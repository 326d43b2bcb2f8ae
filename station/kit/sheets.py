"""The two sheets that a technician prints: labels for the benches, and the codes and passphrases to lock away."""

from collections.abc import Sequence
from html import escape

import segno

from station.kit.table import Kit
from station.kit.words import KitSecrets

PORT = 8080

_STYLE = """
@page { size: A4; margin: 10mm; }
body { font: 11pt/1.35 system-ui, sans-serif; color: #111; background: #fff; margin: 0; }
.labels { display: grid; grid-template-columns: 1fr 1fr; gap: 4mm; }
.label { border: 1px solid #111; padding: 3mm; break-inside: avoid; display: grid; grid-template-columns: 1fr 32mm;
  min-height: 40mm; }
.label h2 { font-size: 16pt; margin: 0; } .label svg { width: 32mm; height: 32mm; }
.code { font: 700 16pt/1.4 ui-monospace, monospace; }
table { border-collapse: collapse; width: 100%; } td, th { border: 1px solid #777; padding: 2mm; text-align: left; }
td.code { font-size: 11pt; } p { margin: 1mm 0; }
"""


def address(kit: Kit) -> str:
    """Return where a bench's page is found in a network that knows names (multicast DNS)."""
    return f"http://{kit.hostname}.local:{PORT}/"


def labels_sheet(kits: Sequence[tuple[Kit, KitSecrets]]) -> str:
    """Return the page of labels: name, address, QR code (ISO/IEC 18004), bench code."""
    boxes = "".join(_label(kit, secrets) for kit, secrets in kits)
    return _page("Labels", f'<div class="labels">{boxes}</div>')


def secrets_sheet(kits: Sequence[tuple[Kit, KitSecrets]]) -> str:
    """Return the page of codes and passphrases; nothing else holds them in words."""
    rows = "".join(
        f"<tr><td>{escape(kit.label)}</td><td class='code'>{'–' if kit.room else secrets.bench_code}</td>"
        f"<td class='code'>{secrets.teacher_passphrase}</td><td class='code'>{secrets.technician_passphrase}</td></tr>"
        for kit, secrets in kits
    )
    head = "<tr><th>bench</th><th>code</th><th>teacher's passphrase</th><th>technician's passphrase</th></tr>"
    return _page(
        "Codes and passphrases",
        "<h1>Codes and passphrases</h1><p>Lock this sheet away, then delete the file: the cards hold only hashes, and "
        f"nobody can read the words back.</p><table>{head}{rows}</table>",
    )


def _label(kit: Kit, secrets: KitSecrets) -> str:
    picture = segno.make(address(kit), error="m").svg_inline(border=2, omitsize=True)
    code = "" if kit.room else f'<p>code <span class="code">{secrets.bench_code}</span></p>'
    where = f"<h2>{escape(kit.label)}</h2><p>{escape(address(kit))}</p>"
    return f'<div class="label"><div>{where}{code}</div>{picture}</div>'


def _page(title: str, body: str) -> str:
    return (
        f'<!doctype html>\n<html lang="en"><head><meta charset="utf-8"><title>{escape(title)}</title>'
        f"<style>{_STYLE}</style></head>\n<body>{body}</body></html>\n"
    )
