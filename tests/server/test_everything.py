"""All records in one zip are for staff, and hold no result before it may be seen."""

import io
import tempfile
import zipfile
from pathlib import Path

import pytest
from openpyxl import load_workbook

from tests.server.doors import GIVEN, SECRETS
from tests.server.live import PLAN, STARTED, here, in_process
from tests.server.test_withheld import CSV


async def test_staff_take_all_away_and_results_stay_withheld(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(tempfile, "tempdir", str(tmp_path))  # this bench's own turn to calculate, not the machine's
    async with in_process(tmp_path, access=here(SECRETS)) as station:
        assert (await station.client.get("/api/records.zip")).json()["code"] == "staff_only"
        await station.client.post("/api/session", json=GIVEN["teacher"])
        await station.done("adopt", label="Bench 4", csv=CSV)
        await station.done("own_reading", end_point_cm3=20.0)
        await station.bench.start(PLAN, STARTED, anew=True)  # the next group, whose results are withheld
        await station.done("adopt", label="Bench 4", csv=CSV)
        answer = await station.client.get("/api/records.zip")
        assert answer.headers["content-type"] == "application/zip"
        assert answer.headers["content-disposition"] == 'attachment; filename="bench-7-records.zip"'
        with zipfile.ZipFile(io.BytesIO(answer.content)) as zipped:
            first, second = sorted({name.partition("/")[0] for name in zipped.namelist()})
            sheets = {
                at: load_workbook(io.BytesIO(zipped.read(f"{at}/record.xlsx"))).sheetnames for at in (first, second)
            }
        assert "Results" in sheets[first]
        assert "Results" not in sheets[second]
