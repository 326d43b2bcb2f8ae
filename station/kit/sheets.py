"""The two sheets that a technician prints: labels for the benches, and the codes and passphrases to lock away."""

import secrets
from collections.abc import Sequence
from dataclasses import dataclass, field
from html import escape

import segno

from station.kit.table import Kit, Kits
from station.room.broker import new_password
from station.server.door.secrets import hashed
from station.words import ENGLISH, in_language, say

# Codes and passphrases that are made here, unique for each kit, from the system's own randomness.


CODE_LETTERS = "ABCDEFGHJKMNPQRSTUVWXYZ23456789"
"""Without what is easily confused: I and 1, O and 0, L."""
CODE_LENGTH = 8
CONSONANTS, VOWELS = "bdfghjklmnprstvz", "aeiou"
SYLLABLES = 8
"""Eight of eighty syllables: 50 bits, said and typed without a mistake."""


@dataclass(frozen=True)
class KitSecrets:
    """What is printed on the label (the code) and on the separate sheet; only hashes go onto the card."""

    bench_code: str
    teacher_passphrase: str
    technician_passphrase: str
    link_password: str = field(default="", repr=False)
    """For the room's broker; nobody types it, so it is long, and lies on this kit's card alone."""

    def hashes(self) -> dict[str, str]:
        """Return the lines of `[access]` in the card's settings."""
        return {
            "bench_code_hash": hashed("bench", self.bench_code),
            "teacher_passphrase_hash": hashed("teacher", self.teacher_passphrase),
            "technician_passphrase_hash": hashed("technician", self.technician_passphrase),
        }


def new_secrets(teacher: str | None = None, technician: str | None = None) -> KitSecrets:
    """Return fresh ones; passphrases that are given hold here, too."""
    return KitSecrets(_code(), teacher or _passphrase(), technician or _passphrase(), new_password())


def drawn_for(kits: Kits) -> list[tuple[Kit, KitSecrets]]:
    """Draw what each kit has of its own, and the room that is none of the kits.

    Teacher and technician have one passphrase for the whole set, chosen or made here, unless the table wants
    `own_passphrases`.
    """
    benches = [*kits.kit, *([kits.laptop] if kits.needs_laptop else [])]
    if kits.own_passphrases:
        return [(kit, new_secrets()) for kit in benches]
    teacher = kits.teacher_passphrase or _passphrase()
    technician = kits.technician_passphrase or _passphrase()
    return [(kit, new_secrets(teacher, technician)) for kit in benches]


def _code() -> str:
    letters = "".join(secrets.choice(CODE_LETTERS) for _ in range(CODE_LENGTH))
    return f"{letters[:4]}-{letters[4:]}"


def _passphrase() -> str:
    syllables = [secrets.choice(CONSONANTS) + secrets.choice(VOWELS) for _ in range(SYLLABLES)]
    return " ".join("".join(syllables[at : at + 2]) for at in range(0, SYLLABLES, 2))


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
.small { font-size: 9pt; margin: 0; } td.code { font-size: 11pt; } p { margin: 1mm 0; }
"""


def address(kit: Kit) -> str:
    """Return where a bench's page is found in a network that knows names (multicast DNS)."""
    return f"http://{kit.hostname}.local:{PORT}/"


def labels_sheet(kits: Sequence[tuple[Kit, KitSecrets]], language: str = ENGLISH, table: Kits | None = None) -> str:
    """Return the page of labels: name, number, address, QR code (ISO/IEC 18004), bench code; probe, Wi-Fi, lamps.

    The `table` tells which network is everybody's, and whether there are lamps.
    """
    boxes = "".join(_label(kit, secrets, language, table) for kit, secrets in kits)
    return _page(_html(say("kit-labels"), language), f'<div class="labels">{boxes}</div>', language)


def secrets_sheet(kits: Sequence[tuple[Kit, KitSecrets]], language: str = ENGLISH) -> str:
    """Return the page of codes and passphrases; nothing else holds them in words.

    Passphrases that all kits share stand once, above the table of codes.
    """
    heads = [say("kit-head-bench"), say("kit-head-code"), say("kit-head-teacher"), say("kit-head-technician")]
    shared = len(kits) > 1 and len({(of.teacher_passphrase, of.technician_passphrase) for _, of in kits}) == 1
    rows = []
    for kit, of in kits:
        cells = [_html(kit.label, language), "–" if kit.room else of.bench_code]
        cells += [] if shared else [escape(of.teacher_passphrase), escape(of.technician_passphrase)]
        words = "".join(f"<td class='code'>{each}</td>" for each in cells[1:])
        rows.append(f"<tr><td>{cells[0]}</td>{words}</tr>")
    for_all = ""
    if shared:
        teacher, technician = kits[0][1].teacher_passphrase, kits[0][1].technician_passphrase
        for_all = "".join(
            f'<p>{_html(head, language)} <span class="code">{escape(words)}</span></p>'
            for head, words in ((heads[2], teacher), (heads[3], technician))
        )
        for_all = f"<p>{_html(say('kit-for-all'), language)}</p>{for_all}"
    head = "".join(f"<th>{_html(each, language)}</th>" for each in (heads[:2] if shared else heads))
    title, lock_away = _html(say("kit-codes"), language), _html(say("kit-lock-away"), language)
    table = f"<table><tr>{head}</tr>{''.join(rows)}</table>"
    return _page(title, f"<h1>{title}</h1><p>{lock_away}</p>{for_all}{table}", language)


def _label(kit: Kit, secrets: KitSecrets, language: str, table: Kits | None) -> str:
    picture = segno.make(address(kit), error="m").svg_inline(border=2, omitsize=True)
    code = f'<p>{_html(say("kit-head-code"), language)} <span class="code">{secrets.bench_code}</span></p>'
    of_room = "" if kit.prefix is None else f" · {escape(kit.prefix)}"
    where = f"<h2>{_html(kit.label, language)}{of_room}</h2><p>{escape(address(kit))}</p>"
    network = kit.network or (None if table is None else table.network)
    more = [
        None if kit.name is None else say("kit-label-number", number=kit.number),
        None if network is None else say("kit-label-wifi", ssid_name=network.ssid),
        None if kit.probe_id is None else say("kit-label-probe", probe_name=kit.probe_id),
        say("kit-label-lamps") if table is not None and table.panel == "real" and not kit.room else None,
    ]
    small = "".join(f'<p class="small">{_html(each, language)}</p>' for each in more if each is not None)
    return f'<div class="label"><div>{where}{"" if kit.room else code}{small}</div>{picture}</div>'


def _html(message: str, language: str) -> str:
    """Return what a message says in this language, as HTML."""
    return escape(in_language(message, language))


def _page(title: str, body: str, language: str) -> str:
    """Return the page; title and body are HTML already."""
    return (
        f'<!doctype html>\n<html lang="{language}"><head><meta charset="utf-8"><title>{title}</title>'
        f"<style>{_STYLE}</style></head>\n<body>{body}</body></html>\n"
    )
