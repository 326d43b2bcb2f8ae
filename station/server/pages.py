"""Serves the built pages: each is one HTML file that names its script and style."""

from collections.abc import Callable
from pathlib import Path

from fastapi import FastAPI
from fastapi.responses import FileResponse, Response
from fastapi.staticfiles import StaticFiles

from station.server.problems import problem

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
            return problem(404, "no_page", "The page was not built: install the station again with pip.")
        return FileResponse(file, headers={"Cache-Control": "no-cache"})

    return page
