"""`/manual`: every page on bench and room, its links and anchors, what is searched in, what is said of languages."""

import re
import subprocess
import sys
from collections.abc import AsyncIterator
from html import unescape
from pathlib import Path
from urllib.parse import urljoin, urlparse

import httpx
import pytest
import pytest_asyncio

from station.server.door.limits import Rate
from station.server.manual import FOLDER, anchor_of, files, page_of
from station.words import languages
from tests.server.live import Station, in_process
from tests.server.room_live import room_in_process

NAMES = sorted(files())


@pytest_asyncio.fixture
async def station(tmp_path: Path) -> AsyncIterator[Station]:
    async with in_process(tmp_path) as opened:
        yield opened


def address(name: str) -> str:
    return "/manual" if name == "index" else f"/manual/{name}"


def targets(html: str) -> list[str]:
    """What a page links to or draws in its content."""
    return [unescape(each) for each in re.findall(r'(?:href|src)="([^"]+)"', html)]


def test_the_hardware_guide_is_a_page_too() -> None:
    assert "hardware" in NAMES
    assert len(NAMES) > 15


@pytest.mark.parametrize("name", NAMES)
async def test_each_page_is_served_and_all_its_links_lead_somewhere(station: Station, name: str) -> None:
    answer = await station.client.get(address(name))
    assert answer.status_code == 200
    assert answer.headers["content-type"] == "text/html; charset=utf-8"
    assert answer.headers["cache-control"] == "no-cache"
    assert "default-src 'self'" in answer.headers["content-security-policy"]
    assert f"<title>{page_of(name).title.replace('&', '&amp;')} – Manual</title>" in answer.text
    assert "{{" not in answer.text
    for target in targets(answer.text):
        if target.startswith("data:"):
            continue
        link = urlparse(urljoin(address(name), target))
        assert not link.netloc, f"{target}: nothing is elsewhere"
        found = await station.client.get(link.path)
        assert found.status_code == 200, target
        if link.fragment:
            assert f'id="{link.fragment}"' in found.text, target


@pytest.mark.parametrize("name", NAMES)
async def test_nothing_is_inline_and_nothing_moves_by_itself(station: Station, name: str) -> None:
    text = (await station.client.get(address(name))).text
    assert not re.search(r"<script(?![^>]*\bsrc=)|<style|\sstyle=|\son\w+=", text)


@pytest.mark.parametrize("name", NAMES)
def test_a_page_has_one_title_and_anchors_of_its_own(name: str) -> None:
    page = page_of(name)
    assert page.html.count("<h1 ") == 1
    anchors = [section.anchor for section in page.sections]
    assert len(set(anchors)) == len(anchors)
    assert all(anchors)


async def test_the_index_names_every_page(station: Station) -> None:
    linked = targets((await station.client.get("/manual")).text)
    assert {address(name) for name in NAMES} <= set(linked)


async def test_all_that_is_written_can_be_searched(station: Station) -> None:
    answer = await station.client.get("/manual/sections.json")
    assert answer.headers["cache-control"] == "no-cache"
    sections = answer.json()["sections"]
    assert {each["page"] for each in sections} == set(NAMES)
    (ice,) = [each for each in sections if each["page"] == "checks" and each["heading"] == "Ice point"]
    assert ice["anchor"] == "ice-point"
    assert "Crush ice of distilled water" in ice["text"]
    everything = " ".join(each["text"] for each in sections)
    assert "heat_capacity_j_k" in everything, "what stands in a table or an example"
    assert "prepared_mol_dm3" in everything
    assert "](" not in everything


@pytest.mark.parametrize("name", ["nothing", "../index", "index.md", "<script>alert(1)</script>", "x" * 5000])
async def test_an_unknown_page_is_said_so_in_words(station: Station, name: str) -> None:
    answer = await station.client.get(f"/manual/{name.replace('/', '%2F')}")
    assert answer.status_code == 404
    if answer.headers["content-type"].startswith("text/html"):
        assert "The manual has no page" in answer.text
        assert 'href="/manual"' in answer.text
        assert "<script>alert" not in answer.text
    else:  # a slash makes it no page of the manual at all
        assert "/" in name


async def test_a_plain_unknown_page_is_a_page(station: Station) -> None:
    answer = await station.client.get("/manual/nothing")
    assert "The manual has no page “nothing”." in answer.text
    assert answer.headers["content-type"].startswith("text/html")


async def test_each_other_language_has_its_line_that_the_script_may_show(station: Station) -> None:
    text = (await station.client.get("/manual")).text
    for code in languages()[1:]:
        assert re.search(rf'<p lang="{code}" hidden>\S', text)
    assert "Das Handbuch gibt es nur auf Englisch." in text
    assert 'data-station=""' in text


async def test_the_room_serves_it_too(tmp_path: Path) -> None:
    async with room_in_process(tmp_path, {}) as room:
        room.desk.about["language"] = "de"
        answer = await room.get("/manual/teacher")
        assert answer.status_code == 200
        assert 'data-station="de"' in answer.text
        assert (await room.get("/manual/wiring.svg")).headers["content-type"] == "image/svg+xml"
        assert (await room.get("/manual/nothing")).status_code == 404


async def test_many_who_look_are_slowed_like_anywhere_else(station: Station) -> None:
    station.access.looks = Rate(per_s=0.001, at_once=5)
    answers = [(await station.client.get("/manual/plan")).status_code for _ in range(20)]
    assert set(answers) == {200, 429}


def test_a_station_loads_the_markdown_library_only_for_a_page() -> None:
    words = "import sys; import station.server.bench.app, station.server.room.app; print('markdown_it' in sys.modules)"
    done = subprocess.run([sys.executable, "-c", words], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "False"


def test_links_of_the_files_lead_to_files(tmp_path: Path) -> None:
    """In a checkout, and on a forge, the same links lead from file to file."""
    for path in files().values():
        for target in re.findall(r"\]\(([^)\s]+)\)", path.read_text(encoding="utf-8")):
            name, _, anchor = target.partition("#")
            there = (path.parent / name).resolve() if name else path
            assert there.is_file(), f"{path.name}: {target}"
            if anchor and there.suffix == ".md":
                headings = re.findall(r"^#+ (.+)$", there.read_text(encoding="utf-8"), re.MULTILINE)
                assert anchor in map(anchor_of, headings), f"{path.name}: {target}"
    assert FOLDER.is_dir()


async def test_markup_in_a_page_is_text(station: Station) -> None:
    answer: httpx.Response = await station.client.get("/manual/commands")
    assert "<code>station kit kits.toml --out FOLDER" in answer.text
    assert "bench|teacher|technician" in answer.text
