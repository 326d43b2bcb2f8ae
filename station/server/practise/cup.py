"""One practice cup: a bench with a virtual cup, a person's hands on it, and the application that serves both."""

import asyncio
import contextlib
import random
from collections.abc import Callable, Sequence

from fastapi import Depends, FastAPI, Response

from station.bench.clock import Clock
from station.bench.virtual.cup import of_plan
from station.bench.virtual.driver import VirtualDriver
from station.bench.virtual.hands import HandAct, HandRefused, Hands
from station.bench.virtual.practice import practised, truth
from station.practical import events as e
from station.practical.plan import Plan
from station.practical.state import Step
from station.server.bare_app import add_pages, bare_app
from station.server.bench.app import add_acting, add_looking
from station.server.bench.downloads import add_downloads
from station.server.bench.watch import Watch
from station.server.door.access import ACTING, Access
from station.server.door.requires import requires
from station.server.door.routes import add_sessions
from station.server.practise.contract import Practice
from station.server.problems import problem


class Cup:
    """A bench of which a person has the virtual cup in hand; `begin` before anything else, then `run`.

    `plan` says what is practised, asked anew for each practice. `close` lets go what the bench was made of.
    """

    def __init__(
        self, watch: Watch, driver: VirtualDriver, plan: Callable[[], Plan], started: e.StationStarted,
        close: Callable[[], None],
    ) -> None:  # fmt: skip
        self.watch, self._driver, self._plan, self._started, self._close = watch, driver, plan, started, close
        watch.asks_early = False  # thirty cups together would do little else
        self.hands = Hands(driver)
        self._random = random.SystemRandom()

    @property
    def clock(self) -> Clock:
        """The cup's time."""
        return self.watch.bench.clock

    async def begin(self) -> None:
        """A practice begins, with an unknown of its own; the one before stays in the record."""
        plan, cup = practised(self._plan(), self._random)
        await self.watch.bench.start(plan, self._started, anew=True, practice=True)
        self.watch.remember(plan)
        self._driver.reagents = lambda: of_plan(cup, plan.of_cup(self.watch.bench.state.cup))
        self._truth = truth(plan, cup)
        self.hands.begin(plan, self.clock.time_s(), self.clock.speed)

    async def run(self) -> None:
        """Let the bench work until it is cancelled."""
        try:
            self.watch.bench.listen(self._heard)
            self.watch.begin()
            await self.watch.bench.run()
        finally:
            self.watch.hub.close()
            with contextlib.suppress(asyncio.CancelledError):
                await self.watch.calculator.close()
            self._close()

    def practice(self) -> Practice:
        """Return the cup as its person sees it."""
        state = self.watch.bench.state
        over = state.step is Step.DONE and self.watch.results_shown
        return {
            "hands": self.hands.shown(self.clock.time_s()),
            "judgement": self.hands.technique.judgement(state, self._truth) if over else None,
        }

    def _heard(self, stamped: Sequence[e.Stamped]) -> None:
        self.hands.heard(stamped, self.watch.bench.state)


def practice_app(cup: Cup, version: str, access: Access) -> FastAPI:
    """Return the application that serves this cup."""
    app = bare_app("Benchwarm practice", version, access)
    add_looking(app, cup.watch)
    add_acting(app, cup.watch)
    add_sessions(app, access)
    add_downloads(app, cup.watch)
    add_hands(app, cup)
    add_pages(app, {"/": "index.html"})
    return app


def add_hands(app: FastAPI, cup: Cup) -> None:
    """Add the virtual cup in its person's hands."""
    acting = [Depends(requires(*ACTING))]

    @app.get("/api/hands")
    async def look() -> Practice:
        """The virtual cup, and the judgement of technique once results are shown."""
        return cup.practice()

    @app.post("/api/hands", dependencies=acting)
    async def act(act: HandAct) -> Practice | Response:
        """Do something with the virtual cup."""
        try:
            cup.hands.do(act, cup.clock.time_s())
        except HandRefused as refusal:
            return problem(409, "not_now", str(refusal))
        return cup.practice()

    @app.post("/api/hands/again", dependencies=acting)
    async def again() -> Practice:
        """Begin another practice, with another unknown."""
        await cup.begin()
        return cup.practice()
