"""What is promised in words is there, and what is there is in the words."""

import re
import subprocess
from collections.abc import Callable
from pathlib import Path

import pytest
from pydantic import BaseModel

from station.command.main import COMMANDS
from station.command.room.settings import RoomSettings
from station.command.settings import Settings
from station.kit.on_card.network import read as read_network
from station.kit.table import Kits, kits_from
from station.practical.acts import ActName
from station.practical.events import EVENTS
from station.practical.kinds import read_plan
from station.practical.kinds.once.plan import OncePlan
from station.practical.kinds.portions.plan import PortionsPlan
from station.practical.procedure import TABLE
from station.practical.state import Step

ROOT = Path(__file__).parent.parent
MANUAL = ROOT / "station" / "manual"
TOP_LEVEL = {
    "README.md", "DEVELOPERS.md", "pyproject.toml", "station", "web", "systemd", "tests", "hardware.md",
    "LICENSE", "CHANGELOG.md",
}  # fmt: skip
PAGE_OF: dict[type[BaseModel], str] = {
    Settings: "station.md",
    RoomSettings: "room.md",
    Kits: "kits.md",
    PortionsPlan: "plan.md",
    OncePlan: "plan.md",
}
"""The page of the manual that explains each file that users write."""


def page(name: str) -> str:
    return (MANUAL / name).read_text(encoding="utf-8")


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
def test_every_command_is_in_the_manual(name: str) -> None:
    assert f"`station {name}" in page("commands.md")


def test_every_option_of_a_command_is_in_the_manual() -> None:
    for module in (ROOT / "station" / "command").rglob("*.py"):
        for option in re.findall(r'add_argument\(\s*"(--[a-z-]+)"', module.read_text(encoding="utf-8")):
            assert option in page("commands.md"), f"{module.name}: {option}"


KEYS = sorted((PAGE_OF[model], key) for model in PAGE_OF for key in keys_of(model))


@pytest.mark.parametrize(("file", "key"), sorted(set(KEYS)))
def test_every_setting_and_every_key_of_a_plan_is_on_its_page(file: str, key: str) -> None:
    assert re.search(rf"\b{key}\b", page(file))


@pytest.mark.parametrize(
    ("file", "read", "count"),
    [("plan.md", read_plan, 2), ("kits.md", kits_from, 1), ("network.md", lambda text, _: read_network(text), 1)],
)
def test_the_examples_of_the_manual_are_files_that_the_station_takes(
    file: str, read: Callable[[str, str], object], count: int
) -> None:
    examples = re.findall(r"```toml\n(.*?)```", page(file), re.DOTALL)
    assert len(examples) == count
    for example in examples:
        read(example, file)


@pytest.mark.parametrize("kind", sorted(EVENTS))
def test_every_event_is_in_the_manual(kind: str) -> None:
    assert f"`{kind}`" in page("events.md")


@pytest.mark.parametrize("act", ActName.__args__)  # type: ignore[attr-defined]
def test_every_act_is_in_the_manual(act: str) -> None:
    assert f"`{act}`" in page("events.md")


def test_the_table_of_states_is_the_one_in_the_code() -> None:
    rows = {step: [act for at, act in TABLE if at is step] for step in Step}
    for step, acts in rows.items():
        row = f"| {step} | {', '.join(f'`{act}`' for act in acts)} |"
        assert row in page("events.md"), row


@pytest.mark.parametrize(("name", "most"), [("README.md", 140), ("DEVELOPERS.md", 250)])
def test_what_is_read_first_stays_short(name: str, most: int) -> None:
    lines = (ROOT / name).read_text(encoding="utf-8").splitlines()
    assert len(lines) <= most
    assert max(len(line) for line in lines if not line.startswith("|")) <= 150, "a line is a line"


@pytest.mark.parametrize("name", ["README.md", "DEVELOPERS.md", "CHANGELOG.md"])
def test_links_lead_to_files(name: str) -> None:
    for target in re.findall(r"\]\(([^)\s]+)\)", (ROOT / name).read_text(encoding="utf-8")):
        assert (ROOT / target.partition("#")[0]).exists(), target


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
