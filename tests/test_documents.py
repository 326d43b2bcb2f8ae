"""What is promised in words is there, and what is there is in the words."""

import re
import subprocess
from pathlib import Path

import pytest
from pydantic import BaseModel

from station.command.main import COMMANDS
from station.command.room_settings import RoomSettings
from station.command.settings import Settings
from station.practical.acts import ActName
from station.practical.events import EVENTS
from station.practical.plan import OncePlan, PortionsPlan
from station.practical.procedure import TABLE
from station.practical.state import Step

ROOT = Path(__file__).parent.parent
README = (ROOT / "README.md").read_text()
DEVELOPERS = (ROOT / "DEVELOPERS.md").read_text()
TOP_LEVEL = {
    "README.md", "DEVELOPERS.md", "pyproject.toml", "station", "web", "systemd", "tests", "hardware.md",
    "LICENSE", "CHANGELOG.md",
}  # fmt: skip


def keys_of(model: type[BaseModel]) -> set[str]:
    found: set[str] = set()
    for name, field in model.model_fields.items():
        found.add(name)
        parts = [field.annotation, *getattr(field.annotation, "__args__", ())]
        for part in parts:
            if isinstance(part, type) and issubclass(part, BaseModel):
                found |= keys_of(part)
    return found


@pytest.mark.parametrize("name", COMMANDS)
def test_every_command_is_in_the_readme(name: str) -> None:
    assert f"`station {name}" in README


KEYS = {key for model in (Settings, RoomSettings, PortionsPlan, OncePlan) for key in keys_of(model)}


@pytest.mark.parametrize("key", sorted(KEYS))
def test_every_setting_and_every_key_of_a_plan_is_in_the_readme(key: str) -> None:
    assert re.search(rf"\b{key}\b", README)


@pytest.mark.parametrize("kind", sorted(EVENTS))
def test_every_event_is_in_the_contributor_guide(kind: str) -> None:
    assert f"`{kind}`" in DEVELOPERS


@pytest.mark.parametrize("act", ActName.__args__)  # type: ignore[attr-defined]
def test_every_act_is_in_the_contributor_guide(act: str) -> None:
    assert f"`{act}`" in DEVELOPERS


def test_the_table_of_states_in_the_guide_is_the_one_in_the_code() -> None:
    rows = {step: [act for at, act in TABLE if at is step] for step in Step}
    for step, acts in rows.items():
        row = f"| {step} | {', '.join(f'`{act}`' for act in acts)} |"
        assert row in DEVELOPERS, row


def test_the_top_level_holds_only_what_it_may() -> None:
    tracked = subprocess.run(["git", "ls-files"], cwd=ROOT, capture_output=True, text=True, check=False).stdout
    if not tracked:
        pytest.skip("not a git checkout")
    tops = {line.split("/")[0] for line in tracked.splitlines()}
    assert {top for top in tops if not top.startswith(".")} <= TOP_LEVEL


def test_no_registry_and_no_folder_of_this_machine_is_in_a_tracked_file() -> None:
    words = ["registry" + ".npmjs", "pypi" + ".org", "files.python" + "hosted", "deb.deb" + "ian", str(ROOT) + "/"]
    for word in words:
        found = subprocess.run(
            ["git", "grep", "-lF", word], cwd=ROOT, capture_output=True, text=True, check=False
        ).stdout
        assert found == "", word
