"""Whatever the OpenAPI document lets anybody ask is answered as the document says, and never with a five-hundred."""

from pathlib import Path

import pytest

from tests.reliability.openapi import LEFT_OUT, asked, station

SLOW = ("/api/kit", "/api/plan/prediction", "/api/records.zip")


@pytest.mark.fault("spoilt-files")
def test_a_running_station_answers_as_its_document_says(tmp_path: Path) -> None:
    with station(tmp_path) as served:
        done = asked(served, 2, left_out=(*LEFT_OUT, *SLOW))
        assert done.failed == 0, done.report
        assert done.requests > 15
        assert served.state()["fault"] is None
        served.terminate()
        assert "Traceback" not in served.errors()
