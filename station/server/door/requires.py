"""The guard of an endpoint: which roles it lets through, and what it asks the request for."""

from collections.abc import Awaitable, Callable

from fastapi import Request

from station.server.door.access import STAFF, Access, Refusal, Role
from station.words import join, say

SAYS = ("role-teacher", "role-technician")
"""The roles of who signs in."""


def requires(*roles: Role) -> Callable[[Request], Awaitable[Role]]:
    """Return the dependency that lets only these roles through and gives the role."""
    staff_only = "bench" not in roles

    async def role_of(request: Request) -> Role:
        """Raise Refusal unless the device's role is among those that may."""
        role = role_now(request)
        if role in roles:
            return role
        if staff_only:
            named = join([say(f"role-{each}") for each in roles], "list-or")
            raise Refusal(403, "staff_only", say("access-sign-in", roles=named))
        raise Refusal(403, "needs_code", say("access-may-look"))

    return role_of


def role_now(request: Request) -> Role:
    """Return what the device that asks may do."""
    access = access_of(request)
    return access.role(cookie_of(request), address_of(request))


def is_staff(request: Request) -> bool:
    """Whether staff ask."""
    return role_now(request) in STAFF


def access_of(request: Request) -> Access:
    """Return the station's access."""
    access: Access = request.app.state.access
    return access


def cookie_of(request: Request) -> str | None:
    """Return the session's cookie that came with a request."""
    return request.cookies.get(access_of(request).sessions.cookie_name)


def address_of(request: Request) -> str:
    """Return the address that a request came from."""
    return request.client.host if request.client else ""
