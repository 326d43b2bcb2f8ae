"""The build hook rebuilds exactly when a source of the page has changed, and the lock file names no host."""

import json
import shutil
from pathlib import Path

import pytest

from web.build_hook import CATALOGUES, DIGEST_FILE, DRAWINGS, MADE, NODE_WHEEL, PageBuildHook, is_fresh, source_digest

WEB = Path(__file__).parents[2] / "web"


@pytest.fixture
def built(tmp_path: Path) -> tuple[Path, Path]:
    """A copy of the sources and a page that claims to be built from them."""
    web, page = tmp_path / "web", tmp_path / "station" / "page"
    shutil.copytree(WEB, web, ignore=shutil.ignore_patterns("node_modules"))
    page.mkdir(parents=True)
    (page.parent / "chemistry").mkdir()
    shutil.copy(WEB / DRAWINGS, web / DRAWINGS)
    shutil.copytree(WEB / CATALOGUES, web / CATALOGUES)
    (page / "index.html").write_text("<!doctype html>", encoding="ascii")
    (page / DIGEST_FILE).write_text(source_digest(web) + "\n", encoding="ascii")
    return web, page


def node_wanted(root: Path) -> list[str]:
    return PageBuildHook(str(root), {}, None, None, "", "wheel").dependencies()  # type: ignore[arg-type]


def test_a_page_built_from_these_sources_needs_no_node(built: tuple[Path, Path]) -> None:
    web, page = built
    assert is_fresh(web, page)
    assert node_wanted(web.parent) == []


@pytest.mark.parametrize(
    "name",
    [
        f"{CATALOGUES}/en.ftl",
        f"{CATALOGUES}/xx.ftl",
        "words.mjs",
        "package-lock.json",
        "build.mjs",
        "index.html",
        "src/new.ts",
        DRAWINGS,
    ],
)
def test_a_changed_source_makes_the_page_stale(built: tuple[Path, Path], name: str) -> None:
    web, page = built
    with (web / name).open("a", encoding="utf-8") as source:
        source.write("\n")
    assert not is_fresh(web, page)
    assert node_wanted(web.parent) == [NODE_WHEEL]


def test_what_the_build_writes_does_not(built: tuple[Path, Path]) -> None:
    web, page = built
    for name in MADE:
        (web / name).write_text("export interface Values {}", encoding="ascii")
    assert is_fresh(web, page)


def test_a_changed_test_of_the_page_does_not(built: tuple[Path, Path]) -> None:
    web, page = built
    (web / "test" / "new.test.ts").write_text("", encoding="ascii")
    assert is_fresh(web, page)


@pytest.mark.parametrize("name", ["index.html", DIGEST_FILE])
def test_half_a_page_is_stale(built: tuple[Path, Path], name: str) -> None:
    web, page = built
    (page / name).unlink()
    assert not is_fresh(web, page)


def test_the_lock_file_names_no_host() -> None:
    packages = json.loads((WEB / "package-lock.json").read_text(encoding="utf-8"))["packages"]
    assert packages
    assert all("resolved" not in package for package in packages.values())
    assert all("integrity" in package for name, package in packages.items() if name)
