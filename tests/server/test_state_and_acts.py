"""State, acts and problems: what a page asks and tells, and what it is answered when something is wrong."""

import asyncio
import json
import sqlite3
from collections.abc import AsyncIterator
from pathlib import Path
from typing import Any

import httpx
import pytest
import pytest_asyncio

from station.practical import events as e
from station.practical.kinds.portions.settling import _judged
from station.practical.staff import StaffAct
from station.record.journal import read_events
from station.server.streaming import compact
from station.words import beside
from tests.conftest import PATIENCE_S
from tests.record.cards import small_card
from tests.server.live import Station, in_process, portions_plan


@pytest_asyncio.fixture
async def station(tmp_path: Path) -> AsyncIterator[Station]:
    async with in_process(tmp_path) as opened:
        yield opened


def kept(station: Station) -> list[e.Event]:
    return [each.event for each in read_events(station.bench.journal.path.parent)]


def assert_problem(answer: httpx.Response, status: int) -> dict[str, Any]:
    """RFC 9457: media type, `type`, `title`, `status` as the reply's, `detail`; 4.2.1: the phrase as the title."""
    assert answer.status_code == status
    assert answer.headers["content-type"] == "application/problem+json"
    body: dict[str, Any] = answer.json()
    assert body["type"] == "about:blank"
    assert body["status"] == status
    assert body["title"]
    assert body["detail"]
    assert body["code"]
    return body


async def test_the_state_has_what_a_page_needs(station: Station) -> None:
    state = await station.state()
    assert state["seq"] == station.bench.journal.last_seq == 2
    assert state["bench"] == {"name": "Bench 7", "virtual": False, "panel": "none"}
    assert (state["state"], state["repeat"], state["portion"]) == ("ready", 0, 0)
    assert (state["repeats_planned"], state["portions_planned"], state["total_added_cm3"]) == (2, 10, 0.0)
    assert state["instruction"]["act"] == "alkali_temperature"
    assert {"alkali_left_out", "begin", "finish"} <= set(state["other_acts"])
    assert state["live"] is None
    assert state["last_good"] is None
    assert state["result"] is None
    assert state["trace"] == {"repeat": 0, "samples": []}
    assert state["fault"] is None


async def test_a_practical_is_driven_by_acts_and_samples(station: Station) -> None:
    await station.sample(21.5)
    before = (await station.state())["trace"]
    assert (before["repeat"], [celsius for _, celsius in before["samples"]]) == (0, [21.5])
    answer = await station.done("begin")
    assert answer["state"]["state"] == "start"
    answer = await station.done("portion_added", portion=1)
    assert answer["seq"] == answer["state"]["seq"]
    (repeat,) = answer["state"]["repeats"]
    assert [(each["portion"], each["volume_cm3"], each["early"]) for each in repeat["portions"]] == [(1, 4.0, True)]
    answer = await station.done("portion_volume", portion=1, volume_cm3=5.0)
    assert answer["state"]["total_added_cm3"] == 5.0
    await station.sample(22.25)
    state = await station.state()
    assert state["live"]["temperature_c"] == state["last_good"]["temperature_c"] == 22.25
    await station.sample(None, "crc")
    state = await station.state()
    assert (state["live"]["temperature_c"], state["live"]["bad"]) == (None, "crc")
    assert state["last_good"]["temperature_c"] == 22.25
    assert state["probe"] == "failing"
    assert [celsius for _, celsius in state["trace"]["samples"]] == [22.25, None]
    samples = (await station.client.get("/api/samples?repeat=1")).json()
    assert samples["repeat"] == 1
    assert [celsius for _, celsius in samples["samples"]] == [22.25, None]
    assert all(0 <= time_s < 10 for time_s, _ in samples["samples"])
    assert (await station.done("finish"))["state"]["state"] == "done"


async def test_the_same_key_again_gets_the_same_number_and_adds_nothing(station: Station) -> None:
    await station.done("begin")
    first = await station.client.post("/api/acts", json={"act": "portion_added", "portion": 1, "key": "double"})
    await station.done("portion_added", portion=2)
    before = kept(station)
    again = await station.client.post("/api/acts", json={"act": "portion_added", "portion": 1, "key": "double"})
    assert again.status_code == first.status_code == 200
    assert again.json()["seq"] == first.json()["seq"]
    assert kept(station) == before


@pytest.mark.fault("two-phones")
async def test_ten_posts_of_one_key_at_once_are_one_portion(station: Station) -> None:
    await station.done("begin")
    act = {"act": "portion_added", "portion": 1, "key": "impatient"}
    answers = await asyncio.gather(*(station.client.post("/api/acts", json=act) for _ in range(10)))
    assert {each.status_code for each in answers} == {200}
    assert len({each.json()["seq"] for each in answers}) == 1
    assert sum(isinstance(each, e.PortionAdded) for each in kept(station)) == 1


@pytest.mark.fault("two-phones")
async def test_of_two_phones_that_tell_of_one_portion_one_is_accepted(station: Station) -> None:
    await station.done("begin")
    acts = [{"act": "portion_added", "portion": 1, "key": key} for key in ("phone a", "phone b")]
    answers = await asyncio.gather(*(station.client.post("/api/acts", json=act) for act in acts))
    accepted, refused = sorted(answers, key=lambda each: each.status_code)
    assert accepted.json()["state"]["portion"] == 1
    body = assert_problem(refused, 409)
    assert body["code"] == "already_in"
    assert body["state"]["portion"] == 1
    assert body["state"]["seq"] == accepted.json()["seq"]
    assert sum(isinstance(each, e.PortionAdded) for each in kept(station)) == 1


async def test_a_key_outlives_a_restart(tmp_path: Path) -> None:
    async with in_process(tmp_path) as station:
        first = await station.client.post("/api/acts", json={"act": "begin", "key": "before"})
    async with in_process(tmp_path) as station:
        again = await station.client.post("/api/acts", json={"act": "begin", "key": "before"})
        assert again.json()["seq"] == first.json()["seq"]
        assert len((await station.state())["repeats"]) == 1


async def test_an_impossible_act_changes_nothing_and_says_why(station: Station) -> None:
    before = kept(station)
    body = assert_problem(await station.act("portion_added", portion=1), 409)
    assert (body["code"], body["detail"]) == ("not_now", "The practical has not begun.")
    assert body["state"]["state"] == "ready"
    await station.done("begin")
    body = assert_problem(await station.act("portion_added", portion=7), 409)
    assert body["detail"] == "Portion 1 comes next, not portion 7."
    assert len(kept(station)) == len(before) + 1


async def test_a_page_cannot_pass_for_the_button(station: Station) -> None:
    await station.done("begin")
    await station.done("portion_added", portion=1, by="button")
    assert [each.by for each in kept(station) if isinstance(each, e.PortionAdded)] == ["page"]


JSON = {"content-type": "application/json"}
GOOD = json.dumps({"act": "begin", "key": "k"})


@pytest.mark.parametrize(
    ("headers", "body", "status", "code"),
    [
        (JSON, "{", 422, "not_json"),
        (JSON, "", 422, "not_understood"),
        (JSON, "[]", 422, "not_understood"),
        (JSON, '"begin"', 422, "not_understood"),
        (JSON, '{"act": "begin"}', 422, "not_understood"),
        (JSON, '{"act": "boil", "key": "k"}', 422, "not_understood"),
        (JSON, '{"act": "begin", "key": ""}', 422, "not_understood"),
        (JSON, '{"act": "begin", "key": "k", "colour": 1}', 422, "not_understood"),
        (JSON, '{"act": "portion_added", "key": "k", "portion": 1.5}', 422, "not_understood"),
        (JSON, '{"act": "portion_volume", "key": "k", "portion": 1, "volume_cm3": NaN}', 422, "not_json"),
        (JSON, '{"act": "portion_volume", "key": "k", "portion": 1, "volume_cm3": -4}', 422, "not_understood"),
        (JSON, '{"act": "repeat_restarted", "key": "k", "reason": "\\u202e"}', 422, "not_understood"),
        (JSON, '{"act": "repeat_restarted", "key": "k", "reason": "\\ud800"}', 422, "not_json"),
        (JSON, b'{"act": "begin", "key": "\xff"}', 422, "not_json"),
        ({"content-type": "text/plain"}, GOOD, 415, "not_json"),
        ({"content-type": "application/x-www-form-urlencoded"}, GOOD, 415, "not_json"),
        ({}, GOOD, 415, "not_json"),
        (JSON | {"origin": "http://elsewhere.example"}, GOOD, 403, "other_origin"),
        (JSON | {"origin": "null"}, GOOD, 403, "other_origin"),
        (JSON | {"origin": "http://bench.local.elsewhere.example"}, GOOD, 403, "other_origin"),
        (JSON | {"origin": "http://bench.local:8081"}, GOOD, 403, "other_origin"),
        (JSON, '{"act": "begin", "key": "' + "k" * 20_000 + '"}', 413, "too_large"),
        (JSON, "[" * 16_000, 422, "not_json"),
    ],
)
async def test_what_is_not_an_act_is_a_problem_and_changes_nothing(
    station: Station, headers: dict[str, str], body: str | bytes, status: int, code: str
) -> None:
    before = kept(station)
    problem = assert_problem(await station.client.post("/api/acts", content=body, headers=headers), status)
    assert problem["code"] == code
    assert "Traceback" not in problem["detail"]
    assert kept(station) == before


@pytest.mark.parametrize(
    ("typed", "words"),
    [
        ({"volume_cm3": -3}, "Type the volume as a number from 0.01 to 1000 cm³, like 4.5."),
        ({"volume_cm3": "abc"}, "Type the volume as a number from 0.01 to 1000 cm³, like 4.5."),
        ({"volume_cm3": 1e-320}, "Type the volume as a number from 0.01 to 1000 cm³, like 4.5."),
        ({"temperature_c": 400}, "Type the temperature as a number from -5 to 60 °C, like 21.5."),
        ({"end_point_cm3": -1}, "Type your volume as a number from 0 to 1000 cm³, like 23.5."),
        ({"change_c": 90}, "Type your change of temperature as a number from -65 to 65 °C, like +6.2 or -3.5."),
        ({"division_c": 3}, "Choose a thermometer with divisions of 1, 0.5, 0.2 or 0.1 °C."),
        (
            {"label": "x" * 25},
            "Write plain text, on one line: a name or label up to 24 characters, anything else up to 200.",
        ),
    ],
)
async def test_what_a_person_typed_wrong_is_answered_without_the_name_of_a_key(
    station: Station, typed: dict[str, object], words: str
) -> None:
    answer = await station.act("portion_volume", portion=1, **typed)
    assert assert_problem(answer, 422)["detail"] == words


@pytest.mark.parametrize("headers", [{"origin": "http://bench.local"}, {"origin": "http://Bench.local"}, {}])
@pytest.mark.parametrize("kind", ["application/json", "Application/JSON; charset=utf-8"])
async def test_the_stations_own_page_is_let_in(station: Station, headers: dict[str, str], kind: str) -> None:
    answer = await station.client.post("/api/acts", content=GOOD, headers={"content-type": kind, **headers})
    assert answer.status_code == 200


@pytest.mark.fault("bodies")
async def test_a_body_that_grows_without_telling_its_length_is_cut(station: Station) -> None:
    async def chunks() -> AsyncIterator[bytes]:
        for _ in range(40):
            yield b" " * 1000

    answer = await station.client.post("/api/acts", content=chunks(), headers=JSON)
    assert_problem(answer, 413)


@pytest.mark.parametrize(
    ("method", "path", "status"),
    [
        ("GET", "/api/nothing", 404),
        ("GET", "/nothing", 404),
        ("GET", "/page/nothing.js", 404),
        ("GET", "/page/..%2fserver%2fapp.py", 404),
        ("GET", "/docs", 404),
        ("GET", "/redoc", 404),
        ("GET", "/api/acts", 405),
        ("DELETE", "/api/acts", 405),
        ("GET", "/api/samples?repeat=1", 404),
        ("GET", "/api/samples?repeat=-1", 422),
        ("GET", "/api/samples?repeat=one", 422),
        ("GET", "/api/samples", 422),
        ("GET", "/api/stream?after=x", 422),
        ("GET", "/api/stream?after=-1", 422),
    ],
)
async def test_what_is_not_there_is_a_problem(station: Station, method: str, path: str, status: int) -> None:
    answer = await station.client.request(method, path)
    assert_problem(answer, status)
    if status == 405:
        assert answer.headers["allow"] == "POST"


@pytest.mark.fault("from-elsewhere")
async def test_every_reply_keeps_foreign_content_out(station: Station) -> None:
    for path in ("/", "/api/state", "/api/nothing"):
        headers = (await station.client.get(path)).headers
        policy = headers["content-security-policy"]
        assert "default-src 'self'" in policy
        assert "unsafe" not in policy
        assert headers["x-content-type-options"] == "nosniff"
        assert "access-control-allow-origin" not in headers
    assert (await station.client.get("/api/state")).headers["cache-control"] == "no-store"
    refused = await station.client.post("/api/acts", content="x" * 20_000, headers=JSON)
    assert refused.headers["x-content-type-options"] == "nosniff"


async def test_the_page_is_served_and_its_built_files_may_be_kept_for_ever(station: Station) -> None:
    page = await station.client.get("/")
    assert page.status_code == 200
    assert page.headers["content-type"].startswith("text/html")
    assert page.headers["cache-control"] == "no-cache"
    (script,) = [each.split('"')[0] for each in page.text.split('src="')[1:]]
    built = await station.client.get(script)
    assert built.status_code == 200
    assert "immutable" in built.headers["cache-control"]


async def test_who_goes_away_in_the_middle_leaves_state_and_record_alike(station: Station) -> None:
    folder = station.bench.journal.path.parent
    holder = sqlite3.connect(folder / "journal.sqlite3", isolation_level=None)
    holder.execute("BEGIN IMMEDIATE")
    post = asyncio.create_task(station.act("begin"))
    for _ in range(20):
        await asyncio.sleep(0)  # the act is on its way to the journal, which waits
    post.cancel()
    holder.execute("ROLLBACK")
    holder.close()
    await station.done("portion_added", portion=1)  # waits behind it
    assert station.bench.seq == station.bench.journal.last_seq
    assert len((await station.state())["repeats"]) == 1


@pytest.mark.fault("card-full")
async def test_on_a_full_card_acts_are_refused_and_the_temperature_goes_on() -> None:
    with small_card() as card:
        async with in_process(card) as station:
            await station.done("begin")
            await station.sample(21.0)
            ballast = card / "ballast"
            ballast.write_bytes(b"x" * 100)
            with pytest.raises(OSError, match="space"), ballast.open("wb") as file:
                while True:
                    file.write(b"x" * 4096)
                    file.flush()
            await _fill(station)
            told = len(kept(station))
            body = assert_problem(await station.act("portion_added", portion=1), 503)
            assert body["code"] == "not_kept"
            assert "disk is full" in body["detail"]
            seq = station.bench.seq
            station.probe.read(21.5)
            state = await _live(station, 21.5)
            assert "cannot write the record" in state["fault"]
            assert (state["seq"], state["portion"]) == (seq, 0)
            station.probe.read(None, "empty")
            assert (await _live(station, None))["last_good"]["temperature_c"] == 21.5
            ballast.unlink()
            await station.sample(22.0)
            answer = await station.done("portion_added", portion=1)
            assert answer["state"]["fault"] is None
            assert answer["seq"] == len(kept(station)) > told


async def _fill(station: Station) -> None:
    """Let the probe read until nothing more can be kept."""
    while station.bench.fault is None:
        station.probe.read(21.0)
        await asyncio.sleep(0.001)


async def _live(station: Station, celsius: float | None) -> dict[str, Any]:
    async with asyncio.timeout(PATIENCE_S):
        while (state := await station.state())["live"]["temperature_c"] != celsius:  # noqa: ASYNC110 - it is the screen that is looked at
            await asyncio.sleep(0.002)
        return state


async def settling(station: Station, samples: int = 12) -> None:
    """A first portion that has been in the cup for some samples."""
    await station.sample(20.0)
    await station.done("begin")
    await station.sample(20.0)
    await station.done("portion_added", portion=1)
    for sample in range(samples):
        await station.sample(20.0 + 0.0625 * sample)


async def test_a_sample_is_judged_once_however_many_ask(station: Station) -> None:
    await settling(station)
    for sample in range(3):
        before = _judged.cache_info().misses
        await station.sample(21.0 + 0.0625 * sample)
        for _ in range(5):
            assert (await station.state())["settle"]["sure"] is not None
        await station.done("note", text="looks fine")
        assert_problem(await station.act("rinsed"), 409)
        assert _judged.cache_info().misses == before + 1


async def test_what_is_written_anew_is_what_changed_and_nothing_old_is_told(station: Station) -> None:
    """The reply is put together of parts that are kept: after everything that can happen it says how things stand."""
    pages = 0

    async def told() -> None:
        nonlocal pages
        body, known = await station.state(), json.loads(compact(beside(station.watch.whole())))
        moving = {"time_s", "settle"}
        assert {key: body[key] for key in body if key not in moving} == {
            key: known[key] for key in known if key not in moving
        }
        assert body.keys() == known.keys()
        assert known["seq"] == station.bench.seq
        pages += 1

    await told()
    await settling(station)
    await told()
    await station.sample(None, "crc")
    await told()
    for act, values in (
        ("portion_volume", {"portion": 1, "volume_cm3": 5.0}),
        ("note", {"text": "x"}),
        ("group", {"label": "Group 3"}),
        ("finish", {}),
        ("own_reading", {"reason": "the bell rang"}),
    ):
        await station.done(act, **values)
        await told()
    await station.watch.calculator.finished()
    await told()
    assert (await station.state())["result"] is not None
    await station.bench.do(StaffAct(act="show_results", shown=False, key="not yet"))
    await told()
    assert (await station.state())["result"] is None
    await station.bench.do(StaffAct(act="rename", name="Bench 9", key="name"))
    await told()
    assert pages == 11


async def test_the_wait_that_is_left_is_counted_down_between_samples(station: Station) -> None:
    await settling(station)
    first = await station.state()
    assert first["settle"]["left_s"] is not None
    now = await station.state()
    passed_s = now["time_s"] - first["time_s"]
    assert first["settle"]["left_s"] - now["settle"]["left_s"] == pytest.approx(passed_s, abs=0.01)


async def test_results_and_judgement_follow_a_practical_that_is_finished_in_the_middle(tmp_path: Path) -> None:
    plan = portions_plan().model_copy(update={"prompts": "own judgement", "results": "at once"})
    async with in_process(tmp_path, plan) as station:
        await station.sample(20.0)
        await station.done("begin")
        for portion in range(4):
            if portion:
                await station.done("portion_added", portion=portion)
            await station.sample(20.0 + portion)
            await station.done("read_now", portion=portion)
        await station.watch.calculator.finished()
        under_way = (await station.state())["result"]
        assert under_way is not None
        assert "judgement" not in under_way, "a repeat is under way"
        finished = await station.done("finish")  # everything that is in the cup has been read
        await station.watch.calculator.finished()
        result = (await station.state())["result"]
        assert result["seq"] == finished["seq"]
        assert [each["portion"] for each in result["judgement"]["repeats"][0]["portions"]] == [0, 1, 2, 3]


async def test_a_state_leaves_the_repeats_out_for_who_has_them(station: Station) -> None:
    await station.done("adopt", label="Bench 4", csv="repeat,volume_cm3,temperature_c\n1,0,20\n1,3,21\n1,6,22\n")
    whole = await station.state()
    known = {"repeats_id": whole["repeats_id"]}
    short = (await station.client.get("/api/state", params=known)).json()
    assert set(whole) - set(short) == {"repeats", "mean"}
    await station.done("group", label="Group 4")
    short = (await station.client.get("/api/state", params=known)).json()
    assert short["group"] == "Group 4"
    assert "repeats" not in short, "a label changes no reading"
    await station.done("adopt_returned")
    again = (await station.client.get("/api/state", params=known)).json()
    assert again["repeats"] == []
    assert again["repeats_id"] != whole["repeats_id"]


@pytest.mark.fault("bodies")
@pytest.mark.parametrize("path", ["/api/acts", "/api/plan", "/api/session"])
@pytest.mark.parametrize(
    "body",
    [
        '{"plan": {"title": "\\ud800"}}',
        '{"plan": {"\\udfff": 1}}',
        '{"plan_toml": "a = \\ud800"}',
        '{"plan": {"acid": {"volume_cm3": 1e400}}}',
        '{"plan": {"acid": {"volume_cm3": NaN}}}',
        '{"plan": {"acid": {"volume_cm3": -Infinity}}}',
        f'{{"plan": {{"acid": {{"volume_cm3": 1{"0" * 400}}}}}}}',
        f'{{"plan": {{"acid": {{"volume_cm3": 1{"0" * 5000}}}}}}}',
        f'{{"plan": {"[" * 30}1{"]" * 30}}}',
        f'{{"plan": {"[" * 7000}1{"]" * 7000}}}',
        "\x00",
    ],
)
async def test_a_body_that_no_other_program_could_read_is_refused_in_words(
    station: Station, path: str, body: str
) -> None:
    answer = await station.client.post(path, content=body, headers={"content-type": "application/json"})
    problem = assert_problem(answer, 422)
    assert problem["code"] == ("not_understood" if path == "/api/session" else "not_json")
    assert kept(station)[-1].kind == "plan_chosen", "nothing happened"


async def test_a_plan_file_nested_without_end_or_with_an_endless_number_is_refused_in_words(station: Station) -> None:
    for text in (f"a{'.b' * 4000} = 1", f"a = {'[' * 3000}", f"a = {'1' * 5000}"):
        answer = await station.client.post("/api/plan", json={"plan_toml": text})
        assert assert_problem(answer, 422)["code"] == "no_toml"
