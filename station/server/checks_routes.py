"""The probe register and the check under way, to look at; what staff do about them goes through `/api/staff`."""

from typing import Any

from fastapi import FastAPI

from station.practical.checks_view import checks_view
from station.server.watch import Watch


def add_checks(app: FastAPI, watch: Watch) -> None:
    """Add the path to the application."""

    @app.get("/api/checks")
    async def checks() -> dict[str, Any]:
        """The check under way, the probes with what was found of them, and the cups that were tested."""
        bench = watch.bench
        time_s = bench.clock.time_s()
        moment = bench.clock.moment(time_s)
        return {
            "time_s": round(time_s, 3),
            "speed": bench.clock.speed,
            **checks_view(bench.state, time_s, moment.wall, moment.clock),
        }
