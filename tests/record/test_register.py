"""A wipe before the next class leaves nothing of the class, and the probe register."""

from pathlib import Path

import pytest

from station.command.main import main
from station.practical.checks.register import Probes
from station.practical.fold import fold_all
from station.record.journal import FILE_NAME, Journal, Moment, first_broken, read_events
from station.record.upkeep import wipe
from tests.practical.checking import PROBE, Checking


@pytest.fixture
def checked() -> Checking:
    """A bench with a saved ice point, a group's note and two samples that were bad."""
    walk = Checking()
    walk.ice(0.4)
    walk.act("note", text="Group 4 spilled")
    walk.sample(None, "crc")
    walk.staff("choose_plan", plan=walk.state.plan.model_dump(mode="json"))
    walk.sample(None, "crc")
    return walk


def kept(folder: Path, walk: Checking) -> None:
    journal = Journal(folder)
    journal.append(
        [(Moment("boot", at.time_s, at.time_s, "2026-11-12T08:00:00", "network"), at.event) for at in walk.happened]
    ).result()
    journal.close()


def register(folder: Path) -> Probes:
    return fold_all(read_events(folder)).probes


def test_a_wipe_keeps_what_is_about_probes_and_nothing_else(tmp_path: Path, checked: Checking) -> None:
    kept(tmp_path, checked)
    assert wipe(tmp_path) == 1
    left = [each.event.kind for each in read_events(tmp_path)]
    assert set(left) <= {"probe_checked", "probe_tallied", "probe_looked_at"}
    assert first_broken(tmp_path) is None
    after = register(tmp_path)
    assert after.checks[0].wall == "2026-11-12T08:00:00"
    assert after.entry(PROBE).tally == checked.state.probes.entry(PROBE).tally
    assert after.entry(PROBE).tally.bad == {"crc": 2}
    assert wipe(tmp_path) == 1, "once more changes nothing"
    assert register(tmp_path).entry(PROBE).tally == after.entry(PROBE).tally


def test_samples_that_no_tally_has_yet_are_counted(tmp_path: Path) -> None:
    walk = Checking()
    walk.staff("choose_plan", plan=walk.state.plan.model_dump(mode="json"))
    walk.ice(0.4)
    walk.staff("check_withdraw", number=1)
    kept(tmp_path, walk)
    assert wipe(tmp_path) == 1
    assert register(tmp_path).entry(PROBE).tally == walk.state.probes.entry(PROBE).tally
    assert register(tmp_path).checks[0].withdrawn


def test_the_register_goes_too_when_that_is_said(
    tmp_path: Path, checked: Checking, capsys: pytest.CaptureFixture[str]
) -> None:
    kept(tmp_path, checked)
    assert main(["wipe", "--yes", "--record", str(tmp_path)]) == 0
    assert "The probe register stays (1 checks)" in capsys.readouterr().out
    assert main(["wipe", "--yes", "--register", "--record", str(tmp_path)]) == 0
    assert not (tmp_path / FILE_NAME).exists()
