"""The machine below the bench, on staff's page `/kit`: network, names and codes, record, update, power.

All of it needs root, and is done by a helper of its own (`desk.ask`), which takes named requests only. Passphrases are
hashed here; only the hashes go further.
"""

from typing import Annotated, Any, Literal

from fastapi import Depends, FastAPI
from fastapi.responses import Response
from pydantic import BaseModel, ConfigDict, Field

from station.server.bench.contract import MachineDone, MachineShown
from station.server.bench.watch import Watch
from station.server.door.access import STAFF
from station.server.door.requires import requires
from station.server.door.secrets import Holder, hashed
from station.server.problems import problem
from station.words import plain, say

Short = Annotated[str, Field(max_length=100)] | None
Words = Annotated[str | None, Field(max_length=200, repr=False)]


class MachineAsked(BaseModel):
    """One request and its values; which values belong to which is the helper's to judge."""

    model_config = ConfigDict(extra="forbid", frozen=True)

    do: Literal["network", "restart", "shut-down", "wipe", "restore", "backup", "update", "settings"]
    ssid: Short = None
    password: Words = None
    hidden: bool | None = None
    country: Short = None
    wired: bool | None = None
    place: Short = None
    file: Short = None
    sha256: Short = None
    name: Short = None
    bench_code: Words = None
    teacher_passphrase: Words = None
    technician_passphrase: Words = None

    def request(self) -> dict[str, Any]:
        """Return what the helper is asked. Raises ValueError for a code or passphrase that is too short or too long."""
        given = self.model_dump(exclude_none=True)
        secrets: dict[str, Holder] = {
            "bench_code": "bench",
            "teacher_passphrase": "teacher",
            "technician_passphrase": "technician",
        }
        for key, holder in secrets.items():
            if key in given:
                given[f"{key}_hash"] = hashed(holder, given.pop(key))
        return given


def add_machine(app: FastAPI, watch: Watch) -> None:
    """Add the paths to the application."""

    @app.get("/api/kit/machine", dependencies=[Depends(requires(*STAFF))])
    async def machine() -> MachineShown | Response:
        """The network as the card has it, what became of the newest request, and the copies that can be restored."""
        if watch.desk is None:
            return problem(503, "not_here", say("kit-cannot-look"))
        here, told, found = await watch.desk.ask({"do": "look"})
        return {
            "here": here,
            "at_work": bool(found.get("at_work")),
            "told": told,
            "ssid": found.get("ssid"),
            "wired": bool(found.get("wired")),
            "country": found.get("country"),
            "copies": list(found.get("copies", [])),
        }

    @app.post("/api/kit/machine", dependencies=[Depends(requires(*STAFF))])
    async def ask(asked: MachineAsked) -> MachineDone | Response:
        """Have it done by the helper, or be told why not."""
        if watch.desk is None:
            return problem(503, "not_here", say("kit-cannot-look"))
        try:
            request = asked.request()
        except ValueError as error:
            return problem(422, "bad_words", error.args[0] if error.args else plain(str(error)))
        done, told, _ = await watch.desk.ask(request)
        return {"told": told} if done else problem(409, "not_done", told)
