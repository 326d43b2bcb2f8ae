"""Lets the virtual benches of a rehearsal into the room's private broker."""

import asyncio
from typing import Annotated, Any

from fastapi import Depends, FastAPI
from pydantic import BaseModel, ConfigDict, Field

from station.room.broker import new_password
from station.room.private_broker import PrivateBroker
from station.server.access import STAFF
from station.server.access_requires import requires

User = Annotated[str, Field(pattern=r"^rehearsal-[1-9][0-9]{0,2}$")]
"""Never the user of a real bench."""


class Rehearsal(BaseModel):
    """Who is to be let in."""

    model_config = ConfigDict(extra="forbid", frozen=True)

    users: Annotated[list[User], Field(min_length=1, max_length=200)]


def add_rehearsal(app: FastAPI, broker: PrivateBroker) -> None:
    """Add the endpoint to the application of a room with a private broker."""

    @app.post("/api/room/rehearsal", dependencies=[Depends(requires(*STAFF))])
    async def rehearsal(wanted: Rehearsal) -> dict[str, Any]:
        """Let virtual benches in; the answer says where the broker is, and their passwords."""
        passwords = {user: new_password() for user in wanted.users}
        await asyncio.to_thread(broker.add_users, passwords)
        return {"host": broker.address.host, "port": broker.address.port, "passwords": passwords}
