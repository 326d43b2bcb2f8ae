"""The wheel, installed elsewhere, runs the whole job and serves its page: nothing it needs was left in the checkout."""

import json
import os
import subprocess
import sys
import zipfile
from pathlib import Path

import pytest

from tests.conftest import PATIENCE_S

ROOT = Path(__file__).parent.parent


@pytest.fixture(scope="module")
def installed(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The wheel's content in a folder of its own; what it depends on comes from this environment."""
    folder = tmp_path_factory.mktemp("wheel")
    # The build tools are here already: fetching them again for each run would only take time.
    words = ["wheel", "--quiet", "--no-deps", "--no-build-isolation", "--wheel-dir", str(folder), str(ROOT)]
    subprocess.run([sys.executable, "-m", "pip", *words], check=True, capture_output=True)
    (wheel,) = folder.glob("benchwarm-*.whl")
    with zipfile.ZipFile(wheel) as content:
        content.extractall(folder / "site")
    return folder / "site"


def test_the_wheel_holds_the_page_and_nothing_of_the_tools(installed: Path) -> None:
    page = installed / "station" / "page"
    assert (page / "index.html").is_file()
    assert list(page.glob("*.js"))
    assert (installed / "station" / "words" / "en.ftl").is_file()
    assert (page / "manual.html").is_file()
    assert not list(installed.rglob("node_modules"))
    assert not list(installed.rglob("test_*.py"))


def test_the_wheel_holds_the_manual_with_the_hardware_guide(installed: Path) -> None:
    manual = installed / "station" / "manual"
    written = {path.name for path in (ROOT / "station" / "manual").glob("*.md")}
    assert {path.name for path in manual.iterdir()} == written | {"hardware.md", "wiring.svg"}


def test_the_wheel_runs_the_demo_from_another_folder(installed: Path, tmp_path: Path) -> None:
    environment = {**os.environ, "PYTHONPATH": str(installed), "HOME": str(tmp_path), "PYTHONSAFEPATH": "1"}
    words = ["-m", "station.command.main", "demo", "--speed", "100", "--once", "--json", "--port", "0"]
    done = subprocess.run(
        [sys.executable, *words],
        cwd=tmp_path,
        env=environment,
        capture_output=True,
        text=True,
        timeout=5 * PATIENCE_S,
        check=False,
    )
    assert done.returncode == 0, done.stderr
    lines = [json.loads(line) for line in done.stdout.splitlines()]
    assert lines[0]["kind"] == "serving"
    result = lines[-1]
    assert result["kind"] == "result"
    low, high = result["interval_95_cm3"]
    assert low <= result["end_point_cm3"] <= high
    assert [each["repeat"] for each in result["repeats"]] == [1, 2]
