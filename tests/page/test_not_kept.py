"""A record in memory looks like any other until the plug is pulled: then everybody should have known."""

import tempfile
from pathlib import Path

import pytest
from playwright.sync_api import expect

from tests.page.conftest import OpenPage, expect_accessible
from tests.page.hands import press, serving


@pytest.mark.fault("record-in-memory")
def test_a_record_in_memory_is_said_so_as_long_as_it_is(tmp_path: Path, open_page: OpenPage) -> None:
    """`/dev/shm` is a file system in memory (tmpfs(5)), like the overlay that the image's own setting makes."""
    with (
        tempfile.TemporaryDirectory(dir="/dev/shm") as memory,
        serving(tmp_path, 'probe.driver = "none"', f'record.folder = "{memory}"') as bench,
    ):
        page = open_page(bench)
        notice = page.locator(".notices .fault")
        expect(notice).to_have_text(
            "Results are not being saved: they are gone when the power is cut. Call your teacher."
        )
        page.locator('[data-division="1"]').click()
        press(page, "begin")
        expect(notice).to_be_visible()
        expect_accessible(page)
        page.close()
