"""The manual at `/manual`: the Markdown files of the package as pages, an index, and a list of sections to search in.

A page is rendered when it is first asked for, in one of the server's threads, and kept; the Markdown library is loaded
for that and not before, so that a station whose manual nobody reads starts as quickly and needs no more memory. The
pages are in English; where another language is chosen, the page's script shows the line of that language that says so.
"""

import functools
import re
from collections.abc import Callable, Iterator, Sequence
from dataclasses import asdict, dataclass
from html import escape
from pathlib import Path
from typing import TYPE_CHECKING, Any

from fastapi import FastAPI
from fastapi.responses import FileResponse, HTMLResponse, JSONResponse
from starlette.responses import Response

from station.server.problems import problem
from station.words import in_language, languages, say

if TYPE_CHECKING:
    from markdown_it.token import Token

FOLDER = Path(__file__).parent.parent / "manual"
_CHECKOUT = FOLDER.parent.parent
"""Where the hardware guide and its drawing lie in a checkout; a wheel carries both in the manual's folder."""
INDEX = "index"
DRAWING = "wiring.svg"
FRAME = Path(__file__).parent.parent / "page" / "manual.html"
"""The built page around every page of the manual; `{{content}}` and the like stand for what is put in here."""
_UNCHANGED = {"Cache-Control": "no-cache"}


@dataclass(frozen=True)
class Section:
    """What stands under one heading: the page's name and title, the heading with its anchor, the text."""

    page: str
    title: str
    heading: str
    anchor: str
    text: str


@dataclass(frozen=True)
class Page:
    """One page of the manual."""

    title: str
    html: str
    sections: tuple[Section, ...]


@functools.cache
def files() -> dict[str, Path]:
    """Return the file of each page by its name in the address, the index among them."""
    guide = _first(FOLDER / "hardware.md", _CHECKOUT / "hardware.md")
    found = sorted({*FOLDER.glob("*.md"), *guide})
    return {path.stem: path for path in found}


def _first(*paths: Path) -> list[Path]:
    return [path for path in paths if path.is_file()][:1]


@functools.cache
def page_of(name: str) -> Page:
    """Return a page, rendered. Raises KeyError where the manual has no page of this name."""
    from markdown_it import MarkdownIt  # noqa: PLC0415 -- only who reads the manual pays for it
    from markdown_it.renderer import RendererHTML  # noqa: PLC0415

    reader = MarkdownIt("commonmark", {"html": False}).enable("table")
    reader.add_render_rule("table_open", lambda _, *place: f"{_wide('Table', *place)}<table>\n")
    reader.add_render_rule("table_close", lambda *_: "</table>\n</div>\n")
    reader.add_render_rule(
        "fence", lambda own, *place: f"{_wide('Example', *place)}{RendererHTML.fence(own, *place)}</div>\n"
    )
    tokens = reader.parse(files()[name].read_text(encoding="utf-8"))
    sections = tuple(_sections(name, tokens))
    html: str = reader.renderer.render(tokens, reader.options, {})
    return Page(sections[0].title, html, sections)


def anchor_of(heading: str) -> str:
    """Return the anchor of a heading, as Git forges make it: small letters, hyphens for spaces."""
    return re.sub(r"[^\w\- ]", "", heading.lower()).replace(" ", "-")


def address_of_link(target: str) -> str:
    """Return where a link of a Markdown file leads on the station: to another page, a section, or the drawing."""
    path, mark, anchor = target.partition("#")
    name = path.rpartition("/")[2]
    if name.endswith(".md"):
        stem = name.removesuffix(".md")
        path = "/manual" if stem == INDEX else f"/manual/{stem}"
    elif name == DRAWING:
        path = f"/manual/{DRAWING}"
    return path + mark + anchor


def _wide(what: str, tokens: "Sequence[Token]", place: int, *_: Any) -> str:
    """Open a frame around what may be too wide for a screen: it scrolls, also by the keyboard, and so needs a name."""
    label = escape(f"{what}: {tokens[place].meta['heading']}")
    return f'<div class="wide" tabindex="0" role="group" aria-label="{label}">\n'


def _sections(name: str, tokens: "Sequence[Token]") -> Iterator[Section]:
    """Yield the sections of a page; give headings their anchors, links their addresses, wide parts their names."""
    title, heading, anchor, texts = "", "", "", list[str]()
    for place, token in enumerate(tokens):
        if token.type == "heading_open":
            if heading:
                yield Section(name, title, heading, anchor, " ".join(texts))
            heading, texts = _text(tokens[place + 1]), []
            title, anchor = title or heading, anchor_of(heading)
            token.attrSet("id", anchor)
        elif token.type == "inline":
            for child in token.children or ():
                for attribute in {"href", "src"} & child.attrs.keys():
                    child.attrSet(attribute, address_of_link(str(child.attrs[attribute])))
            if tokens[place - 1].type != "heading_open":
                texts.append(_text(token))
        elif token.type in ("table_open", "fence"):
            token.meta["heading"] = heading
            texts.append(token.content)
    yield Section(name, title, heading, anchor, " ".join(texts))


def _text(inline: "Token") -> str:
    """Return what is read of a line, without its marks."""
    parts = [" " if child.type == "softbreak" else child.content for child in inline.children or ()]
    return "".join(parts)


def add_manual(app: FastAPI, language: Callable[[], str | None]) -> None:
    """Add the manual to the application; `language` returns the one that the station is set to, if any."""

    def framed(title: str, html: str, status: int = 200) -> Response:
        if not FRAME.is_file():
            return problem(404, "no_page", "The page was not built: install the station again with pip.")
        put = {"title": escape(title), "station": language() or "", "notices": _notices(), "content": html}
        text = re.sub(r"\{\{(\w+)\}\}", lambda found: put[found[1]], FRAME.read_text(encoding="utf-8"))
        return HTMLResponse(text, status, _UNCHANGED)

    def index() -> Response:
        """Serve the list of pages."""
        return page(INDEX)

    def page(name: str) -> Response:
        """Serve one page."""
        if name not in files():
            return framed("No such page", _no_such_page(name), 404)
        found = page_of(name)
        return framed(found.title, found.html)

    def sections() -> Response:
        """Serve the text of all pages, to be searched in by the page's script."""
        found = [asdict(section) for name in files() for section in page_of(name).sections]
        return JSONResponse({"sections": found}, headers=_UNCHANGED)

    def drawing() -> Response:
        """Serve the drawing of the wiring."""
        (path,) = _first(FOLDER / DRAWING, _CHECKOUT / "web" / "drawings" / DRAWING)
        return FileResponse(path, headers=_UNCHANGED)

    app.add_api_route("/manual", index, include_in_schema=False)
    app.add_api_route("/manual/sections.json", sections, include_in_schema=False)
    app.add_api_route(f"/manual/{DRAWING}", drawing, include_in_schema=False)
    app.add_api_route("/manual/{name}", page, include_in_schema=False)


def _notices() -> str:
    """Return a line in each other language that says that the manual is in English, none of them shown yet."""
    told = say("manual-english-only")
    lines = [f'<p lang="{code}" hidden>{escape(in_language(told, code))}</p>' for code in languages()[1:]]
    return "\n      ".join(lines)


def _no_such_page(name: str) -> str:
    return (
        f"<h1>No such page</h1>\n<p>The manual has no page “{escape(name[:40])}”. "
        'All its pages stand in <a href="/manual">the list of pages</a>.</p>\n'
    )
