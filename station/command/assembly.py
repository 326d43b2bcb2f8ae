"""Puts a bench together from settings: record, clock, probe, panel, and the virtual cup where it is asked for."""

import os
import shutil
import sys
import tempfile
from collections.abc import Callable, Iterator, Sequence
from contextlib import ExitStack, contextmanager
from dataclasses import dataclass
from importlib.metadata import version
from pathlib import Path
from typing import Any

from station.bench.check.storage import kept_in_memory
from station.bench.clock import VIRTUAL_LEAD_S, Clock
from station.bench.loop import Bench, last_event
from station.bench.panel.panel import Panel, open_panel
from station.bench.panel.pins import PanelPins, PanelPinsError, PanelUnavailable
from station.bench.probes.one_wire import OneWireReader
from station.bench.probes.probe import NoProbe, Probe, ProbeError
from station.bench.virtual.cup import SCENARIOS, of_plan
from station.bench.virtual.driver import VirtualDriver, follow_check
from station.bench.virtual.faults import FaultScript, FaultScriptError
from station.bench.virtual.student import follow_press
from station.command.settings import Settings
from station.command.terminal import EXIT_FAILED, EXIT_RECORD, CommandError, tell
from station.practical import events as e
from station.practical.plan import Plan
from station.record.journal import Journal, JournalError
from station.record.salvage import opened_journal
from station.server.bench.contract import About
from station.server.bench.watch import Watch
from station.server.door.access import Access, Role
from station.server.door.hosts import Hosts
from station.server.door.sessions import Sessions
from station.words import say

VERSION = version("benchwarm")
IN_MEMORY = Path("/dev/shm")  # noqa: S108 - a file system without a disk, where there is one
SCRATCH = "benchwarm-scratch-"


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
def scratch_folder() -> Iterator[Path]:
    """Yield a folder for what is worth nothing afterwards, in memory where that can be written; deleted at the end.

    A process that was killed cannot delete its own: folders carry the number of their process, and what belongs to
    none that lives is deleted first.
    """
    within = IN_MEMORY if os.access(IN_MEMORY, os.W_OK) else Path(tempfile.gettempdir())
    for left in within.glob(f"{SCRATCH}*"):
        number = left.name.removeprefix(SCRATCH).partition("-")[0]
        if number.isdecimal() and not Path("/proc", number).exists():
            shutil.rmtree(left, ignore_errors=True)
    made = tempfile.TemporaryDirectory(prefix=f"{SCRATCH}{os.getpid()}-", dir=within, ignore_cleanup_errors=True)
    with made as folder:
        yield Path(folder)


@contextmanager
def opened_parts(settings: Settings, folder: Path) -> Iterator[Parts]:
    """Open everything as the settings say; close it at the end. Raises CommandError."""
    with ExitStack() as stack:
        try:
            journal, salvaged = opened_journal(folder)
            stack.callback(journal.close)
            virtual = settings.virtual if settings.probe.driver == "virtual" else None
            last = last_event(journal)
            clock = Clock.started(last, virtual.speed, VIRTUAL_LEAD_S) if virtual else Clock.started(last)
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


async def watched_bench(parts: Parts, plan: Plan, *, anew: bool = False, practises: bool = False) -> Watch:
    """Return the bench as its journal left it, ready to be served; `practises`: beside practice cups."""
    settings = parts.settings
    bench = Bench.opened(parts.journal, parts.clock, parts.probe, parts.panel)
    parts.relay.bench = bench
    started = e.StationStarted(VERSION, settings.probe.driver, parts.probe.probe_id, settings.panel.pins)
    try:
        if parts.salvaged is not None:
            told = say("told-record-salvaged", count=parts.salvaged.kept, path=str(parts.salvaged.aside))
            tell(told, sys.stderr)
        await bench.start(plan, started, anew=anew, salvaged=parts.salvaged)
    except JournalError as error:
        raise CommandError(str(error), EXIT_RECORD) from None
    in_memory = parts.driver is None and kept_in_memory(parts.journal.path.parent)
    if in_memory:
        tell(say("told-record-in-memory", path=str(parts.journal.path.parent)), sys.stderr)
    about: About = {
        "name": settings.bench.name,
        "in_memory": in_memory,
        "virtual": parts.driver is not None,
        "panel": settings.panel.pins,
        "language": settings.page.language,
        "units": settings.page.units,
        "practises": practises,
    }
    watch = Watch(bench, about)
    watch.remember(plan)
    if parts.driver is not None:
        follow_plan(parts.driver, watch.cup_plan_of_staff, settings.virtual.acid_mol_dm3)
    return watch


def opened_access(parts: Parts, *, everyone: Role = "looker") -> Access:
    """Return who may do what on this bench; its sessions are kept beside the record."""
    settings = parts.settings.access
    secrets = settings.secrets()
    sessions = Sessions(secrets, parts.journal.path.parent)
    access = Access(secrets, sessions, everyone=everyone, hosts=Hosts(settings.names))
    parts.relay.access = access
    return access


def follow_plan(driver: VirtualDriver, plan: Callable[[], Plan], acid_mol_dm3: float | None) -> None:
    """Fill the virtual cup from now on with what `plan` says at that moment; it is told of nobody's page."""
    drawn = driver.world.parameters
    driver.reagents = lambda: of_plan(drawn, plan(), acid_mol_dm3)


def follow_presses(bench: Bench, driver: VirtualDriver) -> None:
    """Let the virtual cup do what a person at the page says was done."""

    def follow(stamped: Sequence[e.Stamped]) -> None:
        for each in stamped:
            act = _ACTS.get(each.event.kind)
            if act is not None:
                values: dict[str, Any] = {**each.event.to_body(), "act": act}
                follow_press(driver, values, each.time_s, bench.state.cup_plan.portion_amount)
            follow_check(driver, bench.state.probes.check, each.event, each.time_s, driver.world.room_temperature_c)

    bench.listen(follow)


_ACTS = {
    e.PortionAdded.kind: "portion_added",
    e.PortionUndone.kind: "portion_undone",
    e.RepeatBegun.kind: "begin",
    e.AlkaliDipBegun.kind: "alkali_temperature",
    e.SetUpStepDone.kind: "probe_rinsed",
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
    parameters = next(iter(SCENARIOS.values()))(virtual.seed)
    driver = VirtualDriver(
        stack.enter_context(scratch_folder()) / "devices",
        parameters,
        seed=virtual.seed,
        faults=FaultScript.parse(virtual.faults, virtual.seed) if virtual.faults else None,
        speed=virtual.speed,
        start_s=clock.time_s(),
    )
    stack.callback(driver.close)
    return driver
