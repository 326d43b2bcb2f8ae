"""What the applications of a bench and of a room share: limits, the guard at the door, problems in one shape."""

import functools
import inspect
import json
from collections.abc import Callable, Coroutine
from pathlib import Path
from typing import Any

from fastapi import FastAPI
from fastapi.exceptions import RequestValidationError
from fastapi.responses import FileResponse
from fastapi.routing import APIRoute
from fastapi.staticfiles import StaticFiles
from starlette.exceptions import HTTPException
from starlette.middleware.body_limit import RequestBodyLimitMiddleware
from starlette.middleware.gzip import GZipMiddleware
from starlette.requests import Request
from starlette.responses import Response

from station.practical.problems import is_deep
from station.server.contract import Described, shapes_of
from station.server.door.access import Access
from station.server.door.guard import LARGEST_BODY, Guard
from station.server.problems import PROBLEMS, on_crash, on_http, on_invalid, problem
from station.server.streaming import compact
from station.words import beside, say

# Serves the built pages: each is one HTML file that names its script and style.


PAGE = Path(__file__).parent.parent / "page"
BENCH_PAGES = {
    "/": "index.html",
    "/plan": "plan.html",
    "/prepare": "prepare.html",
    "/checks": "checks.html",
    "/kit": "kit.html",
}
"""Address and file of each page of a bench."""


def add_pages(app: FastAPI, pages: dict[str, str]) -> None:
    """Serve these pages and what they ask for under `/page`."""
    if PAGE.is_dir():
        app.mount("/page", StaticFiles(directory=PAGE), name="page")
    for address, name in pages.items():
        app.add_api_route(address, _served(PAGE / name), include_in_schema=False)


def _served(file: Path) -> Callable[[], Response]:
    def page() -> Response:
        """Serve the page."""
        if not file.is_file():
            return problem(404, "no_page", say("server-page-not-built"))
        return FileResponse(file, headers={"Cache-Control": "no-cache"})

    return page


LARGEST = 1e100
"""No number of a practical is beyond this; its square can still be reckoned with. Each quantity has its own limits."""


class _PlainRequest(Request):
    """A request whose body is JSON that others can read too (RFC 7493): whole letters, numbers that there are."""

    async def json(self) -> Any:
        """Return the body's values. Raises json.JSONDecodeError for what cannot be used; nobody is told its text."""
        try:
            values = json.loads(
                (await self.body()).decode(), parse_constant=_number, parse_float=_number, parse_int=_number
            )
            json.dumps(values, ensure_ascii=False).encode()  # half a surrogate pair is no letter
        except (ValueError, RecursionError) as error:
            raise json.JSONDecodeError(str(error)[:200], "", 0) from None
        if isinstance(values, dict | list) and is_deep(values):
            raise json.JSONDecodeError("nested too deeply", "", 0)
        return values


class _PlainRoute(APIRoute):
    """Reads bodies as `_PlainRequest` does; writes answers, with ids and values of their messages beside them."""

    def __init__(self, path: str, endpoint: Callable[..., Any], **options: Any) -> None:
        if any(shapes_of(endpoint)):  # the document tells of them (`contract.py`); an answer is sent as it is
            options["response_model"] = None
        super().__init__(path, _spoken(endpoint), **options)

    def get_route_handler(self) -> Callable[[Request], Coroutine[Any, Any, Response]]:
        """Return what serves a request."""
        handler = super().get_route_handler()

        async def plain(request: Request) -> Response:
            return await handler(_PlainRequest(request.scope, request.receive))

        return plain


def _spoken(endpoint: Callable[..., Any]) -> Callable[..., Any]:
    """Return the endpoint with its answer written as JSON, `messages` in it, where that is an object."""

    def told(answer: Any) -> Any:
        if not isinstance(answer, dict):
            return answer
        return Response(compact(beside(answer)), media_type="application/json")

    if inspect.iscoroutinefunction(endpoint):

        @functools.wraps(endpoint)
        async def asked(*given: Any, **named: Any) -> Any:
            return told(await endpoint(*given, **named))

        return asked

    @functools.wraps(endpoint)
    def looked_up(*given: Any, **named: Any) -> Any:
        return told(endpoint(*given, **named))

    return looked_up


def _number(text: str) -> int | float:
    value: int | float = float(text)
    if not abs(value) <= LARGEST:  # also NaN
        raise ValueError("a number that there is not")
    return int(text) if text.removeprefix("-").isdigit() else value


def bare_app(title: str, version: str, access: Access) -> FastAPI:
    """Return an application without any path of its own."""
    app = Described(
        title=title,
        version=version,
        openapi_url="/api/openapi.json",
        docs_url=None,
        redoc_url=None,
        telemetry={"auto_configure": False},
        responses=PROBLEMS,
        exception_handlers={
            RequestValidationError: on_invalid,
            HTTPException: on_http,
            Exception: on_crash,
        },
    )
    app.router.route_class = _PlainRoute
    # The guard is outermost; a body that does not tell its length is counted while it comes.
    app.add_middleware(RequestBodyLimitMiddleware, max_body_size=LARGEST_BODY)
    app.add_middleware(GZipMiddleware, minimum_size=1000, compresslevel=5)
    app.add_middleware(Guard, access=access)
    return app
