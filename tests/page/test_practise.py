"""Practice without a kit in a real browser: one whole repeat by mouse, by touch and by keyboard."""

import time
from collections.abc import Iterator
from itertools import pairwise
from pathlib import Path
from typing import Any, ClassVar

import pytest
from playwright.sync_api import Locator, Page, ViewportSize, expect

from tests.conftest import PATIENCE_S
from tests.page.conftest import OpenContext, Station, expect_accessible
from tests.page.hands import MEANT_MS, serving, short_plan
from tests.page.test_one_view import LOOK

SIZES = ((360, 550), (360, 640), (390, 760), (740, 340), (768, 1024), (1280, 640), (1920, 940))
PORTION_CM3 = 5.0
LEFT_CM3 = 0.05
"""The scale shows tenths: so much may be left in a vessel that shows nothing."""
CUP = ('probe.driver = "virtual"', "virtual.speed = 15.0")
UNDER_BAR = """(names) => {
  const edge = document.querySelector('.practise-bar').getBoundingClientRect().top;
  const found = names.map((name) => document.querySelector(`[data-testid="${name}"]`)).filter(Boolean);
  return found.filter((each) => each.getBoundingClientRect().bottom > edge + 0.5).map((each) => each.dataset.testid);
}"""


class Mouse:
    """Hands with a mouse."""

    options: ClassVar[dict[str, object]] = {}

    def __init__(self, page: Page) -> None:
        self.page = page

    def press(self, button: Locator) -> None:
        button.click()

    def choose(self, place: str) -> None:
        self.page.locator(".practise-probe select").select_option(place)

    def hold(self, button: Locator, until: str) -> None:
        """Hold until the scale shows this."""
        button.hover()
        self.page.mouse.down()
        self.page.wait_for_function(until)
        self.page.mouse.up()


class Touch(Mouse):
    """A finger."""

    options: ClassVar[dict[str, object]] = {"has_touch": True}

    def press(self, button: Locator) -> None:
        button.tap()

    def hold(self, button: Locator, until: str) -> None:
        box = button.bounding_box()
        assert box is not None
        at = {"x": box["x"] + box["width"] / 2, "y": box["y"] + box["height"] / 2}
        finger = self.page.context.new_cdp_session(self.page)
        finger.send("Input.dispatchTouchEvent", {"type": "touchStart", "touchPoints": [at]})
        self.page.wait_for_function(until)
        finger.send("Input.dispatchTouchEvent", {"type": "touchEnd", "touchPoints": []})
        finger.detach()


class Keyboard(Mouse):
    """Keys alone: Tab to get there."""

    def reach(self, wanted: Locator) -> None:
        handle = wanted.element_handle()
        for _ in range(80):
            if handle.evaluate("(one) => one === document.activeElement"):
                return
            self.page.keyboard.press("Tab")
        pytest.fail("Tab does not lead there")

    def press(self, button: Locator) -> None:
        self.reach(button)
        self.page.keyboard.press("Enter")

    def choose(self, place: str) -> None:
        select = self.page.locator(".practise-probe select")
        self.reach(select)
        for _ in range(3):
            if select.input_value() == place:
                return
            self.page.keyboard.press("ArrowDown")

    def hold(self, button: Locator, until: str) -> None:
        self.reach(button)
        self.page.keyboard.down(" ")
        self.page.wait_for_function(until)
        self.page.keyboard.up(" ")


@pytest.fixture
def bench(tmp_path: Path, request: pytest.FixtureRequest) -> Iterator[Station]:
    """A bench that nobody works at, with practice beside it; its portions are measured with a syringe unless said."""
    plan = short_plan(repeats=1, count=3, more='results = "at once"')
    plan += f'glassware = "{getattr(request, "param", "syringe")}"\n'
    with serving(tmp_path, *CUP, plan=plan) as station:
        yield station


def set_up(hands: Mouse) -> None:
    """Go through the steps until the cup is filled and the probe stands in it."""
    for step in (".plain[data-act=alkali_left_out]", ".done[data-act=probe_rinsed]"):
        hands.page.locator(step).wait_for()
        hands.page.wait_for_timeout(MEANT_MS)
        hands.press(hands.page.locator(step))
    hands.page.locator(".done[data-act=begin]").wait_for()
    hands.press(hands.page.locator(".practise-bar").get_by_role("button", name="Fill with acid"))
    hands.choose("cup")


def scale(compare: str, volume_cm3: float) -> str:
    """What a person waits for who reads the scale."""
    return f"() => Number(document.querySelector('.ware').getAttribute('aria-valuenow')) {compare} {volume_cm3}"


@pytest.mark.parametrize("way", [Mouse, Touch, Keyboard], ids=lambda way: way.__name__.lower())
def test_a_whole_repeat_is_practised(bench: Station, open_context: OpenContext, way: type[Mouse]) -> None:
    context, _ = open_context(bench, **way.options)
    page = context.new_page()
    page.goto(bench.url)
    hands = way(page)
    hands.press(page.get_by_test_id("practise"))
    bar = page.locator(".practise-bar")
    bar.wait_for()
    assert "/practise/" in page.url
    expect(page.locator(".tag-virtual")).to_have_text("practice")

    set_up(hands)
    hands.press(bar.get_by_role("button", name="Lid is off"))
    hands.press(bar.get_by_role("button", name="Stir"))
    expect(bar.get_by_role("button", name="Lid is on")).to_be_visible()
    page.wait_for_timeout(MEANT_MS)
    hands.press(page.locator(".done[data-act=begin]"))
    for portion in (1, 2, 3):
        act = page.locator(f".done[data-act=portion_added][data-portion='{portion}']")
        hands.hold(bar.locator("[data-hand=draw]"), scale(">=", PORTION_CM3 - 0.1))
        act.wait_for()
        hands.hold(bar.locator("[data-hand=pour]"), scale("<=", 0.0))
        if portion != 2:  # forgotten: the judgement says so
            hands.press(bar.get_by_role("button", name="Stir"))
        hands.press(bar.get_by_role("button", name="Lid is off"))
        page.wait_for_timeout(MEANT_MS)
        hands.press(act)
        while portion < 3 and not act.count() and page.locator("main.state-settle .question-asked").count():
            hands.press(page.get_by_role("button", name="Later"))
    page.locator("main.state-done").wait_for(timeout=5000 * PATIENCE_S)
    judgement = page.get_by_test_id("judgement")
    expect(judgement).to_contain_text("In this cup the hydrochloric acid was")
    expect(judgement).to_contain_text("Repeat 1, portion 2: You did not stir after this portion.")
    expect(judgement).not_to_contain_text("portion 1: You did not stir")
    assert bench.state()["repeat"] == 0, "nothing of it happened at the bench itself"


IN_CYLINDER = pytest.mark.parametrize("bench", ["measuring cylinder"], indirect=True)
READ_OFF = """() => {
  const box = document.querySelector('.ware-surface').getBBox();
  const lines = document.querySelector('.ware-marks').getAttribute('d').split('M').filter(Boolean);
  const number = document.querySelector('.ware text');
  return {
    lowest: box.y + box.height,
    rim: box.y,
    lines: lines.map((line) => Number(line.split(/[ h]/)[1])),
    number: [Number(number.getAttribute('y')) - 4, Number(number.textContent)],
  };
}"""


def emptied(page: Page) -> dict[str, Any]:
    """Return the hand's vessel as the station has it, once all that was drawn has been poured."""
    end = time.monotonic() + PATIENCE_S
    while time.monotonic() < end:
        answer = page.request.get(page.url.replace("/practise/", "/api/practise/") + "/hands")
        ware: dict[str, Any] = answer.json()["hands"]["ware"]
        if ware["poured_cm3"] > 4 and ware["drawn_cm3"] - ware["poured_cm3"] < LEFT_CM3:
            return ware
        page.wait_for_timeout(50)
    pytest.fail(f"the cylinder was not emptied: {ware}")


@IN_CYLINDER
@pytest.mark.parametrize("way", [Mouse, Touch, Keyboard], ids=lambda way: way.__name__.lower())
def test_a_cylinder_is_filled_read_and_emptied(bench: Station, open_context: OpenContext, way: type[Mouse]) -> None:
    context, _ = open_context(bench, **way.options)
    page = context.new_page()
    page.goto(f"{bench.url}practise")
    hands, bar, meter = way(page), page.locator(".practise-bar"), page.get_by_role("meter")
    bar.wait_for()
    expect(meter).to_have_accessible_name("Measuring cylinder with sodium hydroxide")
    expect(bar).to_contain_text("Read the lowest point of the curved surface.")
    hands.press(bar.get_by_role("button", name="Fill with acid"))
    hands.hold(bar.locator("[data-hand=draw]"), scale(">=", PORTION_CM3 - 0.1))
    read_cm3 = float(meter.get_attribute("aria-valuenow") or 0)
    seen = page.evaluate(READ_OFF)
    gaps = [below - above for below, above in pairwise(seen["lines"])]
    assert gaps == pytest.approx([gaps[0]] * len(gaps), abs=0.02), "evenly divided"
    y, volume_cm3 = seen["number"]
    at_cm3 = volume_cm3 + 0.2 * (y - seen["lowest"]) / gaps[0]
    assert at_cm3 == pytest.approx(read_cm3, abs=0.06), "the surface is read at its lowest point"
    assert seen["rim"] < seen["lowest"] - 3, "it climbs the wall"
    heard_cm3 = float((meter.get_attribute("aria-valuetext") or "").removesuffix(" cm³"))
    assert heard_cm3 / 0.2 == pytest.approx(round(heard_cm3 / 0.2)), "to a line"
    assert heard_cm3 == pytest.approx(read_cm3, abs=0.151), "the nearest"
    hands.hold(bar.get_by_role("button", name="Pour in (hold)"), scale("<=", 0.0))
    told = emptied(page)
    assert told["ware"] == "cylinder"
    assert told["poured_cm3"] == pytest.approx(read_cm3, abs=0.11)
    expect_accessible(page)


def test_another_phone_has_another_cup_and_the_same_phone_its_own(bench: Station, open_context: OpenContext) -> None:
    one, _ = open_context(bench)
    other, _ = open_context(bench)
    pages = [context.new_page() for context in (one, one, other)]
    for page in pages:
        page.goto(f"{bench.url}practise")
        page.locator(".practise-bar").wait_for()
    assert pages[0].url == pages[1].url != pages[2].url
    pages[0].get_by_role("button", name="Fill with acid").click()
    expect(pages[0].get_by_role("button", name="Fresh acid")).to_be_visible()
    expect(pages[2].get_by_role("button", name="Fill with acid")).to_be_visible()


@pytest.mark.parametrize("bench", ["syringe", "measuring cylinder"], indirect=True)
def test_nothing_that_counts_lies_under_the_bar(bench: Station, open_context: OpenContext) -> None:
    names = ["instruction", "temperature", "total", "place", "trace"]
    context, _ = open_context(bench)
    wrong = []
    for language in ("en", "de"):
        page = context.new_page()
        page.goto(f"{bench.url}practise")
        page.goto(f"{page.url}?language={language}")
        page.locator(".practise-bar").wait_for()
        if language == "en":
            set_up(Mouse(page))
            expect(page.get_by_role("button", name="Fresh acid")).to_be_visible()
            page.wait_for_timeout(MEANT_MS)
            page.locator(".done[data-act=begin]").click()
        page.locator("main.state-pour").wait_for()
        for width, height in SIZES:
            page.set_viewport_size(ViewportSize(width=width, height=height))
            page.evaluate("() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)))")
            where, parts = f"{language} {width} x {height}", [*names, "act"]
            wrong += [f"{where}: {each}" for each in page.evaluate(LOOK, parts)]
            wrong += [f"{where}: {each} under the bar" for each in page.evaluate(UNDER_BAR, parts)]
        expect_accessible(page)
    assert wrong == []


def test_what_is_poured_into_an_empty_cup_is_refused_in_words(bench: Station, open_context: OpenContext) -> None:
    context, watched = open_context(bench)
    watched.expected = ("409",)
    page = context.new_page()
    page.goto(f"{bench.url}practise")
    page.locator(".practise-bar").wait_for()
    hands = Mouse(page)
    hands.hold(page.locator("[data-hand=draw]"), scale(">=", 1.0))
    page.locator("[data-hand=pour]").hover()
    page.mouse.down()
    expect(page.locator(".practise-refused")).to_have_text("The cup is empty: fill it with acid first.")
    page.mouse.up()
    page.evaluate(scale(">=", 1.0))
