"""Signing in and out, and the acts of staff."""

import secrets
from typing import Annotated, Literal, Self

from fastapi import Depends, FastAPI, Request, Response
from pydantic import BaseModel, ConfigDict, Field, model_validator
from typing_extensions import TypedDict

from station.practical.acts import ActRefused
from station.practical.staff import StaffAct, chosen_plan
from station.record.journal import JournalError
from station.server.bench.contract import ActDone
from station.server.bench.watch import Watch
from station.server.door.access import STAFF, Access, Refusal, Role, on_refusal
from station.server.door.requires import access_of, address_of, cookie_of, requires, role_now
from station.server.door.secrets import Staff
from station.server.door.sessions import BENCH_S
from station.server.problems import problem
from station.words import say

LONGEST_SECRET = 500


class Credential(BaseModel):
    """One of three: the code on the bench's label; role and passphrase; `recovery` after the button was held."""

    model_config = ConfigDict(extra="forbid", frozen=True)

    code: Annotated[str, Field(max_length=LONGEST_SECRET)] | None = None
    role: Staff | None = None
    passphrase: Annotated[str, Field(max_length=LONGEST_SECRET)] | None = None
    recovery: Literal[True] | None = None

    @model_validator(mode="after")
    def _is_one(self) -> Self:
        given = self.model_fields_set
        if given not in ({"code"}, {"role", "passphrase"}, {"recovery"}) or any(
            getattr(self, each) is None for each in given
        ):
            raise ValueError(say("server-send-code"))
        return self


class Standing(TypedDict):
    """What this device may do; with `needs_code` it operates the bench only after giving its code.

    `passphrases`: the staff for whom one is set, so who can sign in at all.
    """

    role: Role
    needs_code: bool
    passphrases: list[Staff]


def add_access(app: FastAPI, watch: Watch, access: Access) -> None:
    """Add the paths to the application, and what `requires` needs."""
    add_sessions(app, access)
    _add_staff(app, watch)


def add_sessions(app: FastAPI, access: Access) -> None:
    """Add signing in and out, and what `requires` needs."""
    app.state.access = access
    app.add_exception_handler(Refusal, on_refusal)

    @app.get("/api/session")
    async def session(request: Request) -> Standing:
        """What this device may do."""
        role = role_now(request)
        passphrases = access_of(request).secrets.passphrases
        return {"role": role, "needs_code": role == "looker", "passphrases": passphrases}

    @app.post("/api/session", status_code=204, response_class=Response)
    async def sign_in(credential: Credential, request: Request) -> Response:
        """Sign this device in; the answer carries the cookie."""
        access, address = access_of(request), address_of(request)
        if credential.recovery:
            cookie = await access.recover(address)
        elif credential.code is not None:
            cookie = await access.sign_in("bench", credential.code, cookie_of(request), address)
        else:
            role, passphrase = credential.role or "teacher", credential.passphrase or ""
            cookie = await access.sign_in(role, passphrase, cookie_of(request), address)
        answer = Response(status_code=204)
        # Not `secure`: benches are plain http. The browser's clock ends it late or early; the station's decides.
        answer.set_cookie(access.sessions.cookie_name, cookie, max_age=BENCH_S, httponly=True, samesite="strict")
        return answer

    @app.delete("/api/session", status_code=204, response_class=Response)
    async def sign_out(request: Request) -> Response:
        """Sign this device out; its cookie is worth nothing from then on, also to who copied it."""
        access = access_of(request)
        await access.sign_out(cookie_of(request))
        answer = Response(status_code=204)
        answer.delete_cookie(access.sessions.cookie_name, httponly=True, samesite="strict")
        return answer

    @app.delete("/api/sessions", status_code=204, response_class=Response, dependencies=[Depends(requires(*STAFF))])
    async def sign_out_all(request: Request) -> Response:
        """Sign every device out, this one too."""
        await access_of(request).sign_out_all()
        return Response(status_code=204)


def _add_staff(app: FastAPI, watch: Watch) -> None:
    @app.post("/api/staff")
    async def staff(act: StaffAct, role: Annotated[Role, Depends(requires(*STAFF))]) -> ActDone | Response:
        """Do what only staff may; answered once it is kept."""
        known = {"by": role, "key": act.key or f"staff-{secrets.token_hex(8)}"}
        try:
            seq = await watch.bench.do(act.model_copy(update=known))
            if act.act == "choose_plan":
                watch.remember(chosen_plan(act))
        except ActRefused as refusal:
            return problem(409, refusal.code, str(refusal), {"state": watch.whole()})
        except JournalError as error:
            return problem(503, "not_kept", say("server-not-kept", reason=str(error)))
        return {"accepted": True, "seq": seq, "state": watch.whole()}
