"""`station check`: is this kit ready? Exit status 0 green, 1 amber, 2 red."""

import argparse
import json
import os
import sys
import textwrap
import time
from dataclasses import replace
from pathlib import Path
from typing import Any, TextIO, get_args

from station.bench.check.finding import EXIT_STATUS, Colour, Finding, Kit, as_json, panel_signal, status_of
from station.bench.check.run import check_kit
from station.bench.panel.panel import TICK_S, open_panel
from station.bench.panel.pins import PanelPins, PanelPinsError, PanelUnavailable
from station.bench.panel.signals import Signal
from station.command.check.link import link
from station.command.check.room import check_room, room_settings_path
from station.command.helping import add_command
from station.command.settings import Settings, default_record_folder, load_safe_plan, load_settings, settings_path
from station.command.terminal import CommandError
from station.server.door.hosts import addresses
from station.words import say
from station.words.speaking import spoken

SERVICE_FOLDER = Path("/var/lib/station")
"""The service's StateDirectory: a check typed by hand looks at the record of the service, not at one's own."""

LAMPS_S = 5.0


def add_to(commands: Any) -> None:
    """Add the command to the parser."""
    parser = add_command(
        commands,
        "check",
        does="is this kit ready? bus, probe, pins, storage, clock, power, network",
        example="check --reads 10",
        statuses={0: "ready", 1: "something should be looked at", 2: "not ready, or something to change"},
    )
    parser.add_argument("--config", type=Path, metavar="FILE", help="settings (default: the card's station.toml)")
    parser.add_argument("--json", action="store_true", help="the findings as one JSON object")
    parser.add_argument("--reads", type=_reads, default=Kit.reads, metavar="N", help="reads of the probe")
    parser.add_argument("--qr", action="store_true", help="the page's address as a QR code")
    parser.add_argument("--lamps", action="store_true", help="the worst colour on the panel, for 5 s")
    parser.set_defaults(work=_check)


def _reads(text: str) -> int:
    number = int(text) if text.isdecimal() else 0
    if not 1 <= number <= 1000:
        raise argparse.ArgumentTypeError("give a whole number from 1 to 1000")
    return number


def run_checks(settings: Settings, base: Path, reads: int = Kit.reads) -> list[Finding]:
    """Return what the pre-flight finds on this machine with these settings; takes about `reads` seconds.

    `base` is the folder that the settings' relative paths start from. Blocks: call it from a thread.
    """
    return [_plan(settings, base), link(settings), *check_kit(kit_of(settings, base, reads))]


def kit_of(settings: Settings, base: Path, reads: int = Kit.reads) -> Kit:
    """Return the settings as the pre-flight wants them."""
    return Kit(
        bench=settings.bench.name,
        driver=settings.probe.driver,
        tree=settings.probe.tree,
        probe_id=settings.probe.id,
        panel=settings.panel.pins,
        pins=_pins(settings),
        folder=_folder(settings, base),
        host=settings.server.host,
        port=settings.server.port,
        addresses=tuple(addresses(settings.server.host, settings.server.port)),
        reads=reads,
    )


def _pins(settings: Settings) -> dict[str, int]:
    return settings.panel.model_dump(exclude={"pins", "silent"}, exclude_none=True)


def _folder(settings: Settings, base: Path) -> Path:
    if settings.record.folder is not None:
        return base / settings.record.folder
    if "STATE_DIRECTORY" not in os.environ and SERVICE_FOLDER.exists():
        return SERVICE_FOLDER
    return default_record_folder()


def _plan(settings: Settings, base: Path) -> Finding:
    if settings.plan is None:
        return Finding("plan", "green", say("check-plan-none"))
    try:
        load_safe_plan(base / settings.plan)
    except CommandError as error:
        return Finding("plan", "red", str(error), say("check-plan-correct"))
    return Finding("plan", "green", say("check-read-from", path=str(base / settings.plan)))


def _check(options: argparse.Namespace) -> int:
    room = room_settings_path(options.config)
    if room is not None:
        name, findings = check_room(room)
        print(json.dumps(as_json(findings), ensure_ascii=False) if options.json else _words(name, findings))
        return EXIT_STATUS[status_of(findings)]
    if sys.stderr.isatty():
        print(spoken(say("told-takes-seconds", seconds=options.reads)), file=sys.stderr)
    settings, findings = _all(options.config, options.reads)
    status = status_of(findings)
    print(json.dumps(as_json(findings), ensure_ascii=False) if options.json else _words(settings.bench.name, findings))
    if options.qr:
        _show_qr(settings, sys.stderr if options.json else sys.stdout)
    if options.lamps:
        _light(settings, panel_signal(status))
    return EXIT_STATUS[status]


def _all(named: Path | None, reads: int) -> tuple[Settings, list[Finding]]:
    """Look at the settings first; where they cannot be read, at everything that does not depend on them."""
    try:
        settings, base = load_settings(named)
    except CommandError as error:
        defaults = Settings()
        kit = replace(kit_of(defaults, Path(), reads), panel=None)
        return defaults, [Finding("settings", "red", str(error), say("check-settings-correct")), *check_kit(kit)]
    path = settings_path(named)
    text = say("check-settings-none") if path is None else say("check-read-from", path=str(path))
    found = Finding("settings", "green", text, values={"path": None if path is None else str(path)})
    return settings, [found, *run_checks(settings, base, reads)]


def _words(bench: str, findings: list[Finding]) -> str:
    """Return a line for each finding: the colour as a word first, then what to do."""
    lines = [spoken(say("check-status", name=bench, colour=status_of(findings)))]
    colours = {colour: spoken(say("check-colour", colour=colour)) for colour in get_args(Colour)}
    width = max(8, *map(len, colours.values()))
    for each in findings:
        lines += _wrapped(f"{colours[each.colour]:<{width}} {each.name:<17} ", each.text)
        if each.remedy:
            lines += _wrapped(f"{'':{width}} {'':17} → ", each.remedy)
    return "\n".join(lines)


def _wrapped(head: str, message: str) -> list[str]:
    return textwrap.wrap(
        spoken(message), 100, initial_indent=head, subsequent_indent=" " * len(head), break_on_hyphens=False
    )


def _show_qr(settings: Settings, out: TextIO) -> None:
    try:
        import segno  # noqa: PLC0415 - only who asks for it needs it
    except ImportError:
        print(spoken(say("told-no-qr")), file=sys.stderr)
        return
    address = addresses(settings.server.host, settings.server.port)[0]
    print(address, file=out)
    segno.make(address, micro=False).terminal(out=out, compact=True)


def _light(settings: Settings, signal: Signal) -> None:
    """Show the signal on the panel for some seconds; a station at work has it, and keeps it."""
    if settings.panel.pins == "none":
        print(spoken(say("told-no-lamps-none")), file=sys.stderr)
        return
    try:
        with open_panel(settings.panel.pins, PanelPins(**_pins(settings)), lambda: None) as panel:
            panel.show(signal)
            until_s = time.monotonic() + LAMPS_S
            while time.monotonic() < until_s:
                panel.tick(time.monotonic())
                time.sleep(TICK_S)
    except (PanelUnavailable, PanelPinsError) as error:
        print(spoken(say("told-no-lamps", reason=str(error))), file=sys.stderr)
