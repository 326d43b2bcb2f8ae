"""Puts a bench together from settings: record, clock, probe, panel, and the virtual cup where it is asked for."""

import sys
import tempfile
from collections.abc import Iterator, Sequence
from contextlib import ExitStack, contextmanager
from dataclasses import dataclass, replace
from importlib.metadata import version
from pathlib import Path
from typing import Any

from station.bench.check.storage import kept_in_memory
from station.bench.clock import Clock
from station.bench.loop import Bench, last_event
from station.bench.no_probe import NoProbe
from station.bench.onewire import OneWireReader
from station.bench.panel import Panel, PanelPins, PanelPinsError, PanelUnavailable, open_panel
from station.bench.reading import Probe, ProbeError
from station.bench.virtual.checking import follow_check
from station.bench.virtual.driver import VirtualDriver
from station.bench.virtual.faults import FaultScript, FaultScriptError
from station.bench.virtual.parameters import SCENARIOS
from station.bench.virtual.student import follow_press
from station.command.errors import EXIT_FAILED, EXIT_RECORD, CommandError
from station.command.say import say
from station.command.settings import Settings
from station.practical import events as e
from station.practical.plan import Plan
from station.record.journal import Journal, JournalError
from station.record.salvage import opened_journal
from station.server.access import Access, Role
from station.server.hosts import Hosts
from station.server.sessions import Sessions
from station.server.watch import Watch

VERSION = version("benchwarm")


class ButtonRelay:
    """Carries the button's presses to a bench and its access, which are opened only after the panel."""

    def __init__(self) -> None:
        self.bench: Bench | None = None
        self.access: Access | None = None

    def __call__(self) -> None:
        """Pass a press on."""
        if self.bench is not None:
            self.bench.press()

    def hold(self) -> None:
        """Pass a long press on."""
        if self.access is not None:
            self.access.recovery_opened()


@dataclass(frozen=True)
class Parts:
    """What a bench is made of; `driver` is the virtual cup's."""

    settings: Settings
    journal: Journal
    clock: Clock
    probe: Probe
    panel: Panel
    relay: ButtonRelay
    driver: VirtualDriver | None
    salvaged: e.RecordSalvaged | None = None


@contextmanager
def opened_parts(settings: Settings, folder: Path) -> Iterator[Parts]:
    """Open everything as the settings say; close it at the end. Raises CommandError."""
    with ExitStack() as stack:
        try:
            journal, salvaged = opened_journal(folder)
            stack.callback(journal.close)
            virtual = settings.virtual if settings.probe.driver == "virtual" else None
            clock = Clock.started(last_event(journal), virtual.speed if virtual else 1.0)
            driver = _virtual_driver(settings, clock, stack) if virtual else None
            probe = _reader(settings, clock, driver)
            stack.callback(probe.close)
            relay = ButtonRelay()
            panel = open_panel(settings.panel.pins, _pins(settings), relay, relay.hold, silent=settings.panel.silent)
            stack.callback(panel.close)
        except (ProbeError, PanelPinsError, FaultScriptError) as error:
            raise CommandError(str(error)) from None
        except PanelUnavailable as error:
            # Not the settings' fault for sure: right after boot the chip may not have its group yet.
            raise CommandError(str(error), EXIT_FAILED) from None
        except JournalError as error:
            raise CommandError(str(error), EXIT_RECORD) from None
        yield Parts(settings, journal, clock, probe, panel, relay, driver, salvaged)


async def watched_bench(parts: Parts, plan: Plan, *, anew: bool = False) -> Watch:
    """Return the bench as its journal left it, ready to be served."""
    settings = parts.settings
    bench = Bench.opened(parts.journal, parts.clock, parts.probe, parts.panel)
    parts.relay.bench = bench
    started = e.StationStarted(VERSION, settings.probe.driver, parts.probe.probe_id, settings.panel.pins)
    try:
        if parts.salvaged is not None:
            say(_SALVAGED.format(parts.salvaged), sys.stderr)
        await bench.start(plan, started, anew=anew, salvaged=parts.salvaged)
    except JournalError as error:
        raise CommandError(str(error), EXIT_RECORD) from None
    in_memory = parts.driver is None and kept_in_memory(parts.journal.path.parent)
    if in_memory:
        say(_IN_MEMORY.format(parts.journal.path.parent), sys.stderr)
    about = {
        "name": settings.bench.name,
        "in_memory": in_memory,
        "virtual": parts.driver is not None,
        "panel": settings.panel.pins,
        "language": settings.page.language,
        "units": settings.page.units,
    }
    watch = Watch(bench, about)
    watch.remember(plan)
    return watch


_IN_MEMORY = "The record in {} is kept in memory: it is gone at power-off. See `station check`."
_SALVAGED = "The record was damaged: {0.kept} events could be read and go on; the damaged one is in {0.aside}."


def opened_access(parts: Parts, *, everyone: Role = "looker") -> Access:
    """Return who may do what on this bench; its sessions are kept beside the record."""
    settings = parts.settings.access
    secrets = settings.secrets()
    sessions = Sessions(secrets, parts.journal.path.parent)
    access = Access(secrets, sessions, everyone=everyone, hosts=Hosts(settings.names))
    parts.relay.access = access
    return access


def follow_presses(bench: Bench, driver: VirtualDriver) -> None:
    """Let the virtual cup do what a person at the page says was done."""

    def follow(stamped: Sequence[e.Stamped]) -> None:
        for each in stamped:
            act = _ACTS.get(each.event.kind)
            if act is not None:
                values: dict[str, Any] = {**each.event.to_body(), "act": act}
                follow_press(driver, values, each.time_s, bench.state.plan.portion_cm3)
            follow_check(driver, bench.state.probes.check, each.event, each.time_s, driver.world.room_temperature_c)

    bench.listen(follow)


_ACTS = {
    e.PortionAdded.kind: "portion_added",
    e.RepeatBegun.kind: "begin",
    e.AlkaliDipBegun.kind: "alkali_temperature",
}


def _pins(settings: Settings) -> PanelPins:
    chosen = settings.panel.model_dump(exclude={"pins", "silent"}, exclude_none=True)
    return PanelPins(**chosen)


def _reader(settings: Settings, clock: Clock, driver: VirtualDriver | None) -> Probe:
    if settings.probe.driver == "none":
        return NoProbe()
    if driver is None:
        return OneWireReader(clock, settings.probe.tree, settings.probe.id)
    return OneWireReader(clock, driver.tree.folder, driver.tree.probe_id, driver.prepare)


def _virtual_driver(settings: Settings, clock: Clock, stack: ExitStack) -> VirtualDriver:
    virtual = settings.virtual
    scratch = stack.enter_context(tempfile.TemporaryDirectory(prefix="benchwarm-cup-"))
    parameters = next(iter(SCENARIOS.values()))(virtual.seed)
    if virtual.acid_mol_dm3 is not None:
        parameters = replace(parameters, acid_concentration_mol_dm3=virtual.acid_mol_dm3)
    driver = VirtualDriver(
        Path(scratch) / "devices",
        parameters,
        seed=virtual.seed,
        faults=FaultScript.parse(virtual.faults, virtual.seed) if virtual.faults else None,
        speed=virtual.speed,
        start_s=clock.time_s(),
    )
    stack.callback(driver.close)
    return driver
