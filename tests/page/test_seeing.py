"""The two views of the curve, and reading any point by pointer, finger or keys."""

import re

import httpx
import pytest
from playwright.sync_api import Locator, Page, expect

from tests.conftest import PATIENCE_S
from tests.page.conftest import PROJECTOR, OpenPage, Station, expect_accessible


def finished(station: Station, open_page: OpenPage, **options: object) -> Page:
    page = open_page(station, **options)
    page.wait_for_selector("main.state-done")
    page.wait_for_selector(".reader")
    return page


def with_single_repeats(page: Page) -> None:
    page.get_by_role("button", name="Show the single repeats").click()
    page.locator(".figure svg .series-1 path").first.wait_for()
    page.locator(".reader").scroll_into_view_if_needed()


def against_time(page: Page) -> None:
    page.get_by_role("button", name="against time").click()
    page.wait_for_selector(".figure .pours path", state="attached")  # an upright line has no width
    page.wait_for_selector(".figure .trace.series[d^=M]")
    page.locator(".figure .axes").get_by_text("time since the start of the repeat / s").first.wait_for()


def samples(station: Station, repeat: int) -> list[list[float]]:
    kept = httpx.get(f"{station.url}api/samples", params={"repeat": repeat}, timeout=PATIENCE_S).json()["samples"]
    return [sample for sample in kept if sample[1] is not None]


def spoken_at(point: Locator, begins: str) -> str:
    """What is said of the point, once it is the one of which it begins so."""
    expect(point).to_have_attribute("aria-valuetext", re.compile(f"^{re.escape(begins)}"))
    return point.get_attribute("aria-valuetext") or ""


def test_arrow_keys_step_through_the_readings(over: Station, open_page: OpenPage) -> None:
    page = finished(over, open_page)
    with_single_repeats(page)
    state = over.state()
    point = page.get_by_role("slider", name="Read a point of the curve")
    point.focus()
    page.keyboard.press("Home")
    for portion in range(14):
        first, second = (repeat["readings"][portion]["temperature_c"] for repeat in state["repeats"])
        at = "start: 0 cm³" if portion == 0 else f"portion {portion}: {3 * portion} cm³"
        spoken = spoken_at(point, at)
        shown = [float(each) for each in re.findall(r"(\d+\.\d\d) °C", spoken)]
        assert shown == pytest.approx([first, second, state["mean"][portion]["temperature_c"]], abs=0.00501)
        assert page.inner_text(".readout") == spoken
        page.keyboard.press("ArrowRight")
    ring = float(page.get_attribute(".cross-hair circle", "cy") or "nan")
    marks = page.locator(".figure svg .mean path").evaluate_all(
        "(all) => all.map((one) => Number(one.getAttribute('transform').match(/,([\\d.]+)/)[1]))"
    )
    assert ring == pytest.approx(marks[-1], abs=0.06), "the ring is about the mean"
    page.keyboard.press("Tab")
    expect(page.locator(".cross-hair")).to_have_count(0)


def test_the_pointer_reads_the_nearest_reading(over: Station, open_page: OpenPage) -> None:
    page = finished(over, open_page, viewport=PROJECTOR)
    with_single_repeats(page)
    mark = page.locator(".figure svg .series-1 path").nth(5).bounding_box()
    assert mark is not None
    page.mouse.move(mark["x"] + 6, mark["y"] - 40)
    expect(page.locator(".readout")).to_contain_text("portion 5: 15 cm³")
    line = page.locator(".cross-hair path").first.get_attribute("d") or ""
    box = page.locator(".cross-hair").bounding_box()
    assert box is not None
    assert box["x"] + float(line[1:].split(",")[0]) == pytest.approx(mark["x"] + mark["width"] / 2, abs=1)
    page.mouse.move(1, 1)
    expect(page.locator(".readout")).to_contain_text("Touch the curve")


def test_a_finger_reads_a_point_and_it_stays(over: Station, open_page: OpenPage) -> None:
    page = finished(over, open_page, has_touch=True)
    with_single_repeats(page)
    page.locator(".reader").scroll_into_view_if_needed()
    mark = page.locator(".figure svg .series-1 path").nth(3).bounding_box()
    assert mark is not None
    page.touchscreen.tap(mark["x"] + 2, mark["y"] + 2)
    expect(page.locator(".readout")).to_contain_text("portion 3: 9 cm³")


def test_the_whole_trace_is_fetched_when_it_is_opened_and_not_before(over: Station, open_page: OpenPage) -> None:
    page = finished(over, open_page)
    asked: list[str] = []
    page.on("request", lambda request: asked.append(request.url.removeprefix(over.url)))
    page.wait_for_timeout(600)
    assert not [each for each in asked if each.startswith("api/samples")]
    against_time(page)
    page.get_by_role("button", name="repeat 1").click()
    expect(page.get_by_role("button", name="repeat 1")).to_have_attribute("aria-pressed", "true")
    page.wait_for_selector(".trace.series-1[d^=M]")
    assert sorted(each for each in asked if each.startswith("api/samples")) == [
        "api/samples?repeat=1",
        "api/samples?repeat=2",
    ]


def test_every_pour_and_every_settled_reading_stands_at_its_time(over: Station, open_page: OpenPage) -> None:
    page = finished(over, open_page, viewport=PROJECTOR)
    against_time(page)
    repeat = over.state()["repeats"][-1]
    ticks = page.evaluate("""() => [...document.querySelectorAll('.figure svg .axes text[text-anchor=middle]')]
        .map((text) => [Number(text.textContent), Number(text.getAttribute('x'))])""")
    (first_s, first_x), (last_s, last_x) = ticks[0], ticks[-1]

    def at_s(x: float) -> float:
        return float(first_s + (x - first_x) / (last_x - first_x) * (last_s - first_s))

    lines = page.locator(".pours path").evaluate_all("(all) => all.map((one) => one.getAttribute('d'))")
    pours = [at_s(float(line[1:].split(",")[0])) for line in lines]
    assert pours == pytest.approx([each["time_s"] for each in repeat["portions"]], abs=0.5)
    rings = page.locator(".settled-marks circle").evaluate_all(
        "(all) => all.map((one) => Number(one.getAttribute('cx')))"
    )
    settled = [each["time_s"] for each in repeat["readings"] if each["settled"]]
    assert [at_s(x) for x in rings] == pytest.approx(settled, abs=0.5)


def test_any_sample_of_the_trace_can_be_read(over: Station, open_page: OpenPage) -> None:
    page = finished(over, open_page)
    against_time(page)
    page.get_by_role("button", name="repeat 1").click()
    kept = samples(over, 1)
    point = page.get_by_role("slider", name="Read a point of the curve")
    expect(point).to_have_attribute("max", str(len(kept) - 1))
    point.focus()
    page.keyboard.press("Home")
    for index in range(3):
        time_s, temperature_c = kept[index]
        whole_s = round(time_s)
        spoken = spoken_at(point, f"{whole_s // 60} min {whole_s % 60} s: ")
        assert float(re.findall(r"([\d.]+) °C", spoken)[0]) == pytest.approx(temperature_c, abs=0.00501)
        page.keyboard.press("ArrowRight")
    page.keyboard.press("End")
    expect(page.locator(".readout")).to_contain_text("after portion 13")


def test_the_open_trace_grows_with_the_stream(slow_demo: Station, open_page: OpenPage) -> None:
    page = open_page(slow_demo)
    page.get_by_role("button", name="against time").click()
    page.wait_for_selector(".trace.series[d^=M]")
    most = page.locator(".reader-range")
    grown = "(before) => Number(document.querySelector('.reader-range').max) > before"
    for _ in range(2):
        page.wait_for_function(grown, arg=int(most.get_attribute("max") or 0))


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_axe_knows_no_violation_in_either_view(over: Station, open_page: OpenPage, scheme: str) -> None:
    page = finished(over, open_page, color_scheme=scheme)
    page.locator(".reader-range").focus()
    expect_accessible(page)
    against_time(page)
    page.locator(".reader-range").focus()
    expect_accessible(page)
    heights = page.locator(".figure button:not(.term)").evaluate_all("(all) => all.map((one) => one.offsetHeight)")
    assert min(heights) >= 48
    assert page.evaluate("document.documentElement.scrollWidth <= innerWidth"), "nothing sticks out sideways"
