"""hardware.md and its drawing say what the station does: pins, positions, rhythms, sums."""

import math
import re
from itertools import groupby
from pathlib import Path
from typing import Any
from xml.etree import ElementTree as ET

import pytest
from gpiozero.pins.mock import MockFactory

from station.bench.panel.pins import BEEP_S, ONE_WIRE_GPIO, PanelPins
from station.bench.panel.signals import PATTERNS, Lamps, Signal, lamps

ROOT = Path(__file__).parents[1]
TEXT = (ROOT / "hardware.md").read_text()
DRAWING = ROOT / "web" / "drawings" / "wiring.svg"
PINS = PanelPins()

WIRED = {
    "probe data": ONE_WIRE_GPIO,
    "lamp wait": PINS.wait_gpio,
    "lamp act": PINS.act_gpio,
    "lamp attention": PINS.attention_gpio,
    "buzzer": PINS.buzzer_gpio,
    "button": PINS.button_gpio,
}


def rows(head: str) -> list[dict[str, str]]:
    """The rows of the table whose head line begins so."""
    lines = TEXT[TEXT.index(f"| {head} |") :].split("\n\n")[0].splitlines()
    cells = [[cell.strip() for cell in line.strip("|").split("|")] for line in lines]
    return [dict(zip(cells[0], row, strict=True)) for row in cells[2:]]


def header() -> dict[int, str]:
    """Position to name on the 40-pin header, from gpiozero's own board data (Pi 3B, revision a02082)."""
    board: Any = MockFactory(revision="a02082").board_info
    return {number: pin.name for number, pin in board.headers["J8"].pins.items()}


def drawn() -> list[dict[str, str]]:
    """Every wire of the drawing that leaves the header."""
    paths = ET.parse(DRAWING).getroot().iter("{http://www.w3.org/2000/svg}path")  # our own file
    return [{k.removeprefix("data-"): v for k, v in p.attrib.items()} for p in paths if "data-pin" in p.attrib]


def test_the_table_has_the_stations_pins() -> None:
    table = {row["from"]: int(row["GPIO"]) for row in rows("from") if row["GPIO"]}
    assert table == WIRED


def test_positions_carry_what_the_table_says() -> None:
    names = {"3.3 V": "3V3", "5 V": "5V", "ground": "GND"}
    for row in rows("from"):
        expected = f"GPIO{row['GPIO']}" if row["GPIO"] else names[row["from"]]
        assert header()[int(row["position"])] == expected, row


def test_the_drawing_agrees_with_the_table() -> None:
    table = {row["from"].replace(" ", "-"): row for row in rows("from") if row["GPIO"]}
    wires = {wire["part"]: wire for wire in drawn() if "gpio" in wire}
    assert wires.keys() == table.keys()
    for part, wire in wires.items():
        assert (wire["pin"], wire["gpio"]) == (table[part]["position"], table[part]["GPIO"])


def test_every_wire_of_the_drawing_is_in_the_table_and_the_other_way_round() -> None:
    assert {wire["pin"] for wire in drawn()} == {row["position"] for row in rows("from")}
    for wire in drawn():
        name = header()[int(wire["pin"])]
        if wire["part"].endswith(("-gnd", "-down")):
            assert name == "GND", wire
        elif wire["part"] == "probe-vdd":
            assert name == "3V3", "5 V on the data line's pull-up would harm the processor"


def test_the_drawing_is_ours_alone_and_has_words_for_those_who_cannot_see_it() -> None:
    text = DRAWING.read_text()
    root = ET.fromstring(text)
    assert root.attrib["role"] == "img"
    assert [child.tag.split("}")[1] for child in root][:2] == ["title", "desc"]
    assert not re.search(r"href|url\(|<script|@import|<image", text), "nothing is loaded from elsewhere"
    assert "web/drawings/wiring.svg" in TEXT


def test_resistors_in_drawing_and_table_are_the_same() -> None:
    pattern = r"\d+(?:\.\d+)? k?Ω"
    through = " ".join(row["through"] + row["to"] for row in rows("from"))
    assert set(re.findall(pattern, DRAWING.read_text())) == set(re.findall(pattern, through))


def test_each_resistor_is_in_the_parts_list() -> None:
    parts = " ".join(row["part"] for row in rows("part"))
    for value in set(re.findall(r"\d+(?:\.\d+)? k?Ω", " ".join(row["through"] + row["to"] for row in rows("from")))):
        assert f"{value} resistor" in parts


def test_the_total_is_the_sum_of_the_parts() -> None:
    prices = [(row["price, from memory"].split(" to "), int(row["quantity"])) for row in rows("part")]
    least, most = (sum(float(price[end]) * count for price, count in prices) for end in (0, -1))
    assert f"**All of it: {least:.0f} to {most:.0f} euro**" in TEXT


def test_what_was_tried_stands_in_the_appendix_alone() -> None:
    before, _, appendix = TEXT.partition("## Tried, read, from memory")
    assert not re.search(r"\((T|R|M)\b|\*\*[TRM]\*\*", TEXT)
    assert "Not tried at all" in appendix
    assert "(#tried-read-from-memory)" in before


def test_config_lines() -> None:
    block = re.search(r"```\n(dtoverlay.*?)```", TEXT, re.DOTALL)
    assert block is not None
    overlay, low, strict = block[1].split()
    assert overlay == "dtoverlay=w1-gpio", "its default pin is GPIO4, the one the station keeps free"
    numbers, state = low.removeprefix("gpio=").split("=")
    assert {int(n) for n in numbers.split(",")} == set(PINS.outputs)
    assert state == "op,dl"
    assert strict == "dtparam=strict_gpiod"


def test_the_build_tests_the_right_pins() -> None:
    steps = TEXT[TEXT.index("## Build it") :]
    assert {int(n) for n in re.findall(r"pinctrl set (\d+) op", steps)} == {PINS.wait_gpio, PINS.buzzer_gpio}
    assert f"{PINS.act_gpio} act, {PINS.attention_gpio} attention" in steps
    assert f"pinctrl get {PINS.button_gpio}" in steps


def test_each_build_step_has_a_check() -> None:
    steps = re.split(r"^\d+\. ", TEXT[TEXT.index("## Build it") : TEXT.index("## Tried, read")], flags=re.MULTILINE)[1:]
    assert len(steps) == 9
    assert all("*Check:*" in step for step in steps)


@pytest.mark.parametrize("row", rows("signal"), ids=lambda row: row["signal"])
def test_the_lamps_say_what_the_table_says(row: dict[str, str]) -> None:
    signal = Signal(row["signal"])
    pattern = PATTERNS[signal]
    assert pattern.lamp == Lamps(**{row["lamp"]: True})
    assert pattern.beeps == int(row["beeps"])
    lit = [any(lamps(signal, k / 100)) for k in range(round(pattern.period_s * 100))]
    runs = [len(list(run)) / 100 for _, run in groupby(lit)]
    assert row["lit / dark in s"] == ("steady" if all(lit) else " / ".join(f"{run:g}" for run in runs))


def test_every_signal_but_off_is_in_the_table() -> None:
    assert {row["signal"] for row in rows("signal")} == set(Signal) - {Signal.OFF}
    assert f"A beep lasts {BEEP_S:g} s" in TEXT


def test_the_sums() -> None:
    """Ohm's law, and the discharge of a capacitor; the voltages are usual values, from memory."""
    lamp_ma = (3.3 - 2.0) / 470 * 1000
    base_ma = (3.3 - 0.7) / 2200 * 1000
    assert f"(3.3 V − 2.0 V) / 470 Ω = {lamp_ma:.1f} mA each, {3 * lamp_ma:.1f} mA in all" in TEXT
    assert f"(3.3 V − 0.7 V) / 2.2 kΩ = {base_ma:.1f} mA into the base" in TEXT
    assert f"switches 30 mA with a gain of {30 / base_ma:.0f}" in TEXT
    short_s, long_s = (330e3 * 1e-6 * math.log(3.3 / threshold_v) for threshold_v in (2.0, 1.0))
    assert f"= {short_s:.2f} to {long_s:.2f} s" in TEXT
    assert short_s >= BEEP_S, "the wanted beep is not cut"
    assert long_s <= 0.5


def test_the_cup_and_the_whole_bench_cost_what_their_parts_do() -> None:
    cup = sum(float(row["price, from memory"]) * int(row["quantity"]) for row in rows("for the cup"))
    assert f"**The cup: {cup:.0f} euro.**" in TEXT
    found = re.search(r"\*\*All of it: (\d+) to (\d+) euro\*\*", TEXT)
    assert found is not None
    least, most = (int(price) + round(cup) for price in found.groups())
    assert f"a bench costs **{least} to {most} euro**" in TEXT


def test_the_strips_join_what_the_wiring_does() -> None:
    strips = [row["joins"] for row in rows("strip")]
    positions = [int(each) for strip in strips for each in re.findall(r"position (\d+)", strip)]
    assert sorted(positions) == sorted({int(row["position"]) for row in rows("from")})
    parts = {row["part"]: int(row["quantity"]) for row in rows("part")}
    for value in ("4.7 kΩ", "470 Ω", "2.2 kΩ", "10 kΩ", "1 kΩ"):
        ends = sum(len(re.findall(rf"(?<![\d.]){re.escape(value)}", strip)) for strip in strips)
        assert ends == 2 * parts[f"{value} resistor"], value
    ground = next(strip for strip in strips if "position 9" in strip)
    assert all(each in ground for each in ("emitter", "10 kΩ", "probe ground", "short legs", "button"))
    assert not re.search(r"position 2\b", ground)


def test_the_current_from_the_3v3_pins_is_not_the_gpio_figure() -> None:
    pull_up_ma = 3.3 / 4700 * 1000
    assert f"3.3 V / 4.7 kΩ = {pull_up_ma:.1f} mA for the pull-up" in TEXT
    assert "GPIO pins together" in TEXT


def test_the_way_of_a_card_takes_two_minutes_of_hands_and_says_how_sure_that_is() -> None:
    steps = rows("step")
    seconds = sum(int(row["hands, estimated"].split()[0]) for row in steps if row["hands, estimated"] != "none")
    assert f"About {seconds // 60} min {seconds % 60} s of hands" in TEXT
    assert seconds <= 120
    assert all(re.search("tested|not provable here", row["how sure"]) for row in steps)


def test_no_soldering_wires_every_function_of_the_panel() -> None:
    assert [row["for"] for row in rows("for")][1:] == ["probe", "lamps", "buzzer", "button"]
