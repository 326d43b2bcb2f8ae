"""Whether the room is reached stands in the settings, in words."""

from pathlib import Path

from playwright.sync_api import expect

from tests.page.conftest import OpenPage, expect_accessible
from tests.page.hands import VIRTUAL, go_to, serving, short_plan
from tests.room.class_room import broker_in


def test_the_settings_say_whether_the_room_is_reached(tmp_path: Path, open_page: OpenPage) -> None:
    (tmp_path / "link-password").write_text("wrong")
    with broker_in(tmp_path / "broker") as broker:
        link = ("[link]", f'broker = "{broker.address}"', 'user = "bench-1"', 'password_file = "link-password"')
        with serving(tmp_path, *VIRTUAL, *link, plan=short_plan(count=2)) as station:
            page = open_page(station)
            go_to(page, "Settings")
            expect(page.get_by_role("heading", name="The room")).to_be_visible()
            told = page.locator(".settings-part .away")
            expect(told).to_have_text("The room's broker does not let this bench in: check link.user and its password.")
            page.get_by_label("Language").select_option(label="Deutsch")
            expect(told).to_contain_text("lässt diesen Platz nicht ein")
            expect_accessible(page)


def test_students_call_the_teacher_where_there_is_a_room(tmp_path: Path, open_page: OpenPage) -> None:
    (tmp_path / "link-password").write_text("wrong")
    with broker_in(tmp_path / "broker") as broker:
        link = ("[link]", f'broker = "{broker.address}"', 'user = "bench-1"', 'password_file = "link-password"')
        with serving(tmp_path, *VIRTUAL, *link, plan=short_plan(count=2)) as station:
            page = open_page(station)
            call = page.get_by_test_id("call")
            expect(call).to_have_text("Call the teacher")
            call.click()
            expect(call).to_have_attribute("aria-pressed", "true")
            assert "call_over" in station.state()["other_acts"]
            expect_accessible(page)
            call.click()
            expect(call).to_have_attribute("aria-pressed", "false")


def test_without_a_room_nobody_is_called(tmp_path: Path, open_page: OpenPage) -> None:
    with serving(tmp_path, *VIRTUAL, plan=short_plan(count=2)) as station:
        page = open_page(station)
        expect(page.locator(".instruction")).to_be_visible()
        expect(page.get_by_test_id("call")).to_have_count(0)
