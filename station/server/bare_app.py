"""What the applications of a bench and of a room share: limits, the guard at the door, problems in one shape."""

from fastapi import FastAPI
from fastapi.exceptions import RequestValidationError
from starlette.exceptions import HTTPException
from starlette.middleware.body_limit import RequestBodyLimitMiddleware
from starlette.middleware.gzip import GZipMiddleware

from station.server.access import Access
from station.server.guard import LARGEST_BODY, Guard
from station.server.problems import PROBLEMS, on_crash, on_http, on_invalid


def bare_app(title: str, version: str, access: Access) -> FastAPI:
    """Return an application without any path of its own."""
    app = FastAPI(
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
    # The guard is outermost; a body that does not tell its length is counted while it comes.
    app.add_middleware(RequestBodyLimitMiddleware, max_body_size=LARGEST_BODY)
    app.add_middleware(GZipMiddleware, minimum_size=1000, compresslevel=5)
    app.add_middleware(Guard, access=access)
    return app
