"""The students' own lines: placed by finger, mouse, keys or typed values, committed to, and given nothing away by."""

import re
import time
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import httpx
import pytest
from playwright.sync_api import Locator, Page, expect

from station.server.door.secrets import hashed
from tests.conftest import PATIENCE_S
from tests.page.conftest import PHONE, PROJECTOR, OpenPage, Station, expect_accessible, serve_settings, work
from tests.page.hands import MEANT_MS

PLAN = """
results = "{rule}"
repeats = 1
[acid]
name = "nitric acid"
volume_cm3 = 25.0
[alkali]
name = "potassium hydroxide"
concentration_mol_dm3 = 0.4
[portions]
volume_cm3 = 4.0
count = 10
"""
TEACHER = "five blue kettles"
BEFORE, AFTER = (0, 1), (2, 3)


def done_bench(folder: Path, rule: str) -> Station:
    """A bench whose one repeat is done, and whose teacher has a passphrase."""
    settings = serve_settings(folder, "127.0.0.1", plan=PLAN.format(rule=rule))
    with settings.open("a", encoding="utf-8") as file:
        file.write(f'\naccess.teacher_passphrase_hash = "{hashed("teacher", TEACHER)}"\n')
    station = Station("serve", "--config", str(settings))
    station.start()
    work(station, until="done", repeat=1)
    return station


@pytest.fixture(scope="module")
def patient(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Station]:
    """Results are shown by the teacher: until then an own reading may be changed."""
    station = done_bench(tmp_path_factory.mktemp("patient"), "when shown")
    yield station
    station.stop()


@pytest.fixture
def eager(tmp_path: Path) -> Iterator[Station]:
    """Results follow the own reading."""
    station = done_bench(tmp_path, "after own reading")
    yield station
    station.stop()


def placing(station: Station, open_page: OpenPage, **options: Any) -> Page:
    """A page on which lines can be placed, from the start or again."""
    page = open_page(station, **options)
    page.wait_for_selector("main.state-done")
    again = page.get_by_role("button", name="Change our reading")
    page.locator(".handle").first.or_(again).wait_for()
    if again.count():
        again.click()
    page.wait_for_selector(".handle")
    return page


def degree_px(page: Page) -> float:
    """How many pixels a degree has on the axis."""
    ticks = page.evaluate("""() => [...document.querySelectorAll('.figure svg .grid + text')]
        .map((text) => [Number(text.textContent), Number(text.previousElementSibling.getAttribute('y1'))])""")
    (low_c, low_y), (high_c, high_y) = ticks[0], ticks[-1]
    return float((low_y - high_y) / (high_c - low_c))


def handle_c(handle: Locator) -> float:
    return float(handle.get_attribute("aria-valuenow") or "nan")


def middle(handle: Locator) -> tuple[float, float]:
    handle.scroll_into_view_if_needed()
    box = handle.locator(".knob").bounding_box()
    assert box is not None
    return box["x"] + box["width"] / 2, box["y"] + box["height"] / 2


def drag(page: Page, which: int, to_c: float) -> None:
    """Drag a handle to a temperature with the mouse."""
    handle = page.locator(".handle").nth(which)
    x, y = middle(handle)
    page.mouse.move(x, y)
    page.mouse.down()
    page.mouse.move(x, y - (to_c - handle_c(handle)) * degree_px(page), steps=3)
    page.mouse.up()
    expect_at(handle, to_c, 1.5 / degree_px(page))


def expect_at(handle: Locator, to_c: float, within_c: float) -> None:
    """The handle is there, once the browser has drawn it."""
    until = time.monotonic() + PATIENCE_S
    while abs(handle_c(handle) - to_c) > within_c and time.monotonic() < until:
        time.sleep(0.05)
    assert handle_c(handle) == pytest.approx(to_c, abs=within_c)


def mean_c(station: Station, volume_cm3: float) -> float:
    points = station.state()["mean"]
    return float(next(point["temperature_c"] for point in points if abs(point["volume_cm3"] - volume_cm3) < 0.01))


def handle_volumes(page: Page) -> list[float]:
    names = page.locator(".handle").evaluate_all("(all) => all.map((one) => one.getAttribute('aria-label'))")
    return [float(re.findall(r"handle at ([\d.]+)", name)[0]) for name in names]


def meeting_cm3(volumes: list[float], temperatures: list[float]) -> float:
    """Where the two lines through these four points cross."""
    slopes = [
        (temperatures[high] - temperatures[low]) / (volumes[high] - volumes[low]) for low, high in (BEFORE, AFTER)
    ]
    intercepts = [
        temperatures[low] - slope * volumes[low] for slope, (low, _) in zip(slopes, (BEFORE, AFTER), strict=True)
    ]
    return (intercepts[1] - intercepts[0]) / (slopes[0] - slopes[1])


def crossing_cm3(page: Page) -> float:
    found = re.fullmatch(r"neutralisation volume ([\d.]+) cm³", page.inner_text(".own-crossing"))
    assert found, page.inner_text(".own-crossing")
    return float(found[1])


def test_the_lines_start_flat_and_give_nothing_away(patient: Station, open_page: OpenPage) -> None:
    page = placing(patient, open_page)
    assert patient.state()["result"] is None
    expect(page.get_by_role("heading", name="Your own lines first")).to_be_visible()
    expect(page.locator(".result, .crossing, .band")).to_have_count(0)
    own = page.locator(".own-before[x1], .own-after[x1]")
    assert (
        own.evaluate_all("(all) => all.map((one) => one.getAttribute('y1') === one.getAttribute('y2'))") == [True] * 2
    )


@pytest.mark.parametrize("viewport", [PHONE, PROJECTOR], ids=["phone", "projector"])
def test_lines_are_dragged_and_their_crossing_is_read_out(patient: Station, open_page: OpenPage, viewport: Any) -> None:
    page = placing(patient, open_page, viewport=viewport)
    volumes = handle_volumes(page)
    for which, volume_cm3 in enumerate(volumes):
        drag(page, which, mean_c(patient, volume_cm3))
    temperatures = [handle_c(page.locator(".handle").nth(which)) for which in range(4)]
    assert crossing_cm3(page) == pytest.approx(meeting_cm3(volumes, temperatures), abs=0.051)
    expect(page.get_by_label("Our neutralisation volume")).to_have_value(str(crossing_cm3(page)))


def test_a_finger_moves_a_handle_and_not_the_page(patient: Station, open_page: OpenPage) -> None:
    page = placing(patient, open_page, has_touch=True)
    handle = page.locator(".handle").nth(1)
    x, y = middle(handle)
    before_c, scrolled = handle_c(handle), page.evaluate("scrollY")
    session = page.context.new_cdp_session(page)
    session.send("Input.dispatchTouchEvent", {"type": "touchStart", "touchPoints": [{"x": x, "y": y}]})
    for up in range(5, 45, 5):
        session.send("Input.dispatchTouchEvent", {"type": "touchMove", "touchPoints": [{"x": x, "y": y - up}]})
        page.wait_for_timeout(20)
    session.send("Input.dispatchTouchEvent", {"type": "touchEnd", "touchPoints": []})
    expect_at(handle, before_c + 40 / degree_px(page), 2 / degree_px(page))
    assert page.evaluate("scrollY") == scrolled
    sizes = page.locator(".handle .target").evaluate_all(
        "(all) => all.map((one) => one.getBoundingClientRect()).map(({ width, height }) => Math.min(width, height))"
    )
    assert min(sizes) >= 48


def commit(page: Page, answer: str = "Yes, this is our reading") -> None:
    """Commit to the reading: it is asked once, and a number without lines is given a reason in a tap."""
    page.get_by_role("button", name="This is our reading").click()
    page.wait_for_timeout(MEANT_MS)
    page.get_by_role("button", name=answer).click()


def test_the_keyboard_alone_places_lines_and_commits(patient: Station, open_page: OpenPage) -> None:
    page = placing(patient, open_page)
    before = patient.state()["own_reading"]
    volumes = handle_volumes(page)
    handles = page.locator(".handle")
    handles.first.focus()
    for which, volume_cm3 in enumerate(volumes):
        handle = handles.nth(which)
        expect(handle).to_be_focused()
        wanted_c, before_c = mean_c(patient, volume_cm3), handle_c(handle)
        at_first = handle.get_attribute("aria-valuenow") or ""
        page.keyboard.press("ArrowUp")
        expect(handle).not_to_have_attribute("aria-valuenow", at_first)
        step_c = handle_c(handle) - before_c
        assert step_c > 0
        page.keyboard.press("ArrowDown")
        for _ in range(round(abs(wanted_c - before_c) / step_c)):
            page.keyboard.press("ArrowUp" if wanted_c > before_c else "ArrowDown")
        expect_at(handle, wanted_c, 0.51 * step_c)
        spoken = handle.get_attribute("aria-valuetext") or ""
        assert spoken == f"{handle_c(handle):.2f} °C"
        page.keyboard.press("Tab")
    read_cm3 = crossing_cm3(page)
    page.get_by_role("button", name="This is our reading").focus()
    page.keyboard.press("Enter")
    expect(page.get_by_role("button", name="Yes, this is our reading")).to_be_focused()
    assert patient.state()["own_reading"] == before, "it is asked once"
    page.wait_for_timeout(MEANT_MS)
    page.keyboard.press("Enter")
    expect(page.locator(".own-committed")).to_have_text(f"Your reading: {read_cm3:g} cm³")
    expect(page.locator(".figure")).to_contain_text("Results come when your teacher shows them.")
    kept = patient.state()["own_reading"]
    assert kept["end_point_cm3"] == read_cm3
    slopes = kept["before"]["slope_c_cm3"] - kept["after"]["slope_c_cm3"]
    meeting = (kept["after"]["intercept_c"] - kept["before"]["intercept_c"]) / slopes
    assert meeting == pytest.approx(read_cm3, abs=0.051)
    assert patient.state()["result"] is None


def test_lines_and_volume_may_be_typed(patient: Station, open_page: OpenPage) -> None:
    page = placing(patient, open_page)
    page.get_by_text("Type the lines instead").click()
    for name, typed in (("line before at 0", "19,5"), ("line before at 16", "21.5"), ("line after at 40", "21.3")):
        page.get_by_label(name).fill(typed)
        page.keyboard.press("Tab")
    page.get_by_label("line after at 28").fill("21.9")
    page.keyboard.press("Tab")
    meeting = meeting_cm3([0, 16, 28, 40], [19.5, 21.5, 21.9, 21.3])
    expect(page.locator(".own-crossing")).to_have_text(f"neutralisation volume {meeting:.1f} cm³")
    volume = page.get_by_label("Our neutralisation volume")
    for wrong in ("", "-3", "400", "many"):
        volume.fill(wrong)
        page.get_by_role("button", name="This is our reading").click()
        expect(page.get_by_role("alert").filter(has_text="between 0 and 40 cm³")).to_be_visible()
    volume.fill("23,7")
    commit(page)
    expect(page.locator(".own-committed")).to_have_text("Your reading: 23.7 cm³")
    assert patient.state()["own_reading"]["end_point_cm3"] == 23.7
    page.get_by_role("button", name="Change our reading").click()
    page.wait_for_selector(".handle")
    temperatures = [handle_c(page.locator(".handle").nth(which)) for which in range(4)]
    assert temperatures == pytest.approx([19.5, 21.5, 21.9, 21.3]), "committed lines stand where they were"


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("viewport", [PHONE, PROJECTOR], ids=["phone", "projector"])
def test_axe_knows_no_violation_while_lines_are_placed(
    patient: Station, open_page: OpenPage, scheme: str, viewport: Any
) -> None:
    page = placing(patient, open_page, color_scheme=scheme, viewport=viewport)
    page.get_by_text("Type the lines instead").click()
    expect_accessible(page)
    assert page.evaluate("document.documentElement.scrollWidth <= innerWidth"), "nothing sticks out sideways"


def test_a_reading_is_committed_before_results_come_and_stays(eager: Station, open_page: OpenPage) -> None:
    page = placing(eager, open_page)
    late = open_page(eager, viewport=PROJECTOR)
    expect(late.get_by_role("heading", name="Your own lines first")).to_be_visible()
    for which, volume_cm3 in enumerate(handle_volumes(page)):
        drag(page, which, mean_c(eager, volume_cm3))
    read_cm3 = crossing_cm3(page)
    commit(page)
    result = eager.final_state()["result"]
    for each in (page, late):
        each.wait_for_selector(".compared")
        expect(each.locator(".handle")).to_have_count(0)
        expect(each.locator(".own-drawn .own")).to_have_count(2)
        expect(each.get_by_role("button", name="Change our reading")).to_have_count(0)
        rows = each.locator(".compared tbody tr")
        expect(rows.nth(0)).to_contain_text(f"{read_cm3:g} cm³")
        for row, method in ((1, "straight_lines"), (2, "heat_balance")):
            off_cm3 = read_cm3 - result[method]["end_point_cm3"]
            said = rows.nth(row).inner_text().replace("\xa0", " ")
            found = re.search(r"yours is ([\d.]+) cm³ (more|less)", said)
            assert found, said
            assert float(found[1]) == pytest.approx(abs(off_cm3), abs=0.051)
            assert found[2] == ("more" if off_cm3 > 0 else "less")
    refused = eager.act(act="own_reading", end_point_cm3=20.0)
    assert refused.status_code == 409
    assert eager.state()["own_reading"]["end_point_cm3"] == read_cm3


@pytest.fixture
def withheld(tmp_path: Path) -> Iterator[Station]:
    """Results wait for the teacher."""
    station = done_bench(tmp_path, "when shown")
    yield station
    station.stop()


def test_who_cannot_read_anything_says_why_and_goes_on(withheld: Station, open_page: OpenPage) -> None:
    page = placing(withheld, open_page)
    page.get_by_role("button", name="We could not read anything").click()
    page.get_by_role("button", name="No, leave it").click()
    assert withheld.state()["own_reading"] is None
    page.get_by_role("button", name="We could not read anything").click()
    expect(page.get_by_role("button", name="Yes, we could not")).to_be_disabled()
    page.get_by_label("Reason").select_option("too few readings")
    expect_accessible(page)
    page.get_by_role("button", name="Yes, we could not").click()
    expect(page.locator(".own-committed")).to_have_text("You noted that you could not read anything: too few readings.")
    kept = withheld.state()["own_reading"]
    assert kept["reason"] == "too few readings"
    assert [kept[name] for name in ("end_point_cm3", "change_c", "before", "after")] == [None] * 4


def test_handles_survive_a_reload(withheld: Station, open_page: OpenPage) -> None:
    page = placing(withheld, open_page)
    for which, volume_cm3 in enumerate(handle_volumes(page)):
        drag(page, which, mean_c(withheld, volume_cm3))
    placed = [handle_c(page.locator(".handle").nth(which)) for which in range(4)]
    page.reload()
    page.wait_for_selector(".handle")
    assert [handle_c(page.locator(".handle").nth(which)) for which in range(4)] == placed


def test_a_number_without_lines_is_given_a_reason_in_a_tap(withheld: Station, open_page: OpenPage) -> None:
    page = placing(withheld, open_page)
    page.get_by_label("Our neutralisation volume").fill("22")
    page.get_by_role("button", name="This is our reading").click()
    expect(page.locator(".own-ask")).to_contain_text("You give 22 cm³ without two lines that cross.")
    expect_accessible(page)
    page.get_by_role("button", name="Not yet").click()
    expect(page.locator(".handle")).to_have_count(4)
    assert withheld.state()["own_reading"] is None
    commit(page, "lines drawn on paper")
    expect(page.locator(".own-committed")).to_be_visible()
    kept = withheld.state()["own_reading"]
    assert (kept["end_point_cm3"], kept["reason"], kept["before"]) == (22.0, "lines drawn on paper", None)


def test_results_come_when_the_teacher_shows_them(withheld: Station, open_page: OpenPage) -> None:
    page = placing(withheld, open_page)
    page.get_by_label("Our neutralisation volume").fill("22")
    commit(page, "read off the points")
    expect(page.locator(".figure")).to_contain_text("Results come when your teacher shows them.")
    with httpx.Client(base_url=withheld.url, timeout=PATIENCE_S) as teacher:
        teacher.post("/api/session", json={"role": "teacher", "passphrase": TEACHER}).raise_for_status()
        expect(page.locator("body")).not_to_contain_text("0.345")
        shown = {"act": "show_results", "shown": True, "prepared_mol_dm3": 0.345, "key": "lesson over"}
        teacher.post("/api/staff", json=shown).raise_for_status()
    page.wait_for_selector(".result-lines")
    expect(page.locator(".compared tbody tr").first).to_contain_text("your reading")
    expect(page.locator(".own-drawn")).to_have_count(0)
    expect(page.get_by_test_id("answer")).to_contain_text("The bottle was made up to 0.345 mol/dm³.")
