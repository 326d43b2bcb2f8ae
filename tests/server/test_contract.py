"""Real answers of every state, and every message of the streams, are as the OpenAPI document says: no less, no more."""

import copy
import json
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import jsonschema_rs
import pytest

from station.practical.dataset import RepeatData, question_for
from station.practical.fold import fold
from station.practical.kinds import ready_plan
from station.practical.kinds.once.plan import OncePlan
from station.practical.predict import answer as predicted
from station.practical.results import answer as results_of
from station.practical.results import results
from station.practical.state import State, Step
from station.practical.view import shown_result
from station.record.exchange_in import read_exchange
from station.server.room.orders import Orders
from station.server.streaming import compact
from tests.practical.walk import Walk
from tests.records import record
from tests.room.lesson_in_jumps import events_of, with_results
from tests.server.live import PLAN, Station, in_process
from tests.server.room_live import Room, room_in_process
from web.contract import documents, merged, typescript

BENCH, ROOM, *_ = documents()


def closed(document: dict[str, Any]) -> dict[str, Any]:
    """The document's components, with nothing allowed that they do not name."""
    schemas = copy.deepcopy(document["components"]["schemas"])
    for schema in schemas.values():
        if "properties" in schema:
            schema.setdefault("additionalProperties", False)
    return {"components": {"schemas": schemas}}


CLOSED = {"bench": closed(BENCH), "room": closed(ROOM)}


def fits(told: Any, *shapes: str, of: str = "bench") -> None:
    """Raise ValidationError unless this is one of these shapes, as JSON has it."""
    schema = {**CLOSED[of], "anyOf": [{"$ref": f"#/components/schemas/{each}"} for each in shapes]}
    jsonschema_rs.validator_for(schema).validate(json.loads(compact(told)))


def fits_answer(body: dict[str, Any], *shapes: str, of: str = "bench") -> None:
    """The same of an answer, which has the messages in it beside."""
    fits({"messages": body.pop("messages")}, "Told", of=of)
    fits(body, *shapes, of=of)


def states() -> Iterator[State]:
    """A virtual practical at every kind of event, and what it does not come through."""
    state, seen = State(), set()
    for stamped in with_results(events_of(1), "at once"):
        state = fold(state, stamped)
        if (state.step, stamped.event.kind) not in seen:
            seen.add((state.step, stamped.event.kind))
            yield state
    paused = Walk()
    paused.to_pour()
    paused.portion(21.0)
    paused.act("note", text="The lid was loose.", repeat=1, portion=1)
    paused.act("portion_unsure", portion=1, reason="spilled")
    paused.act("group", label="Group 4")
    paused.act("pause")
    yield paused.state
    typed = Walk(repeats=1)
    typed.act("thermometer", division_c=0.1)
    yield typed.state
    own = Walk(repeats=1, prompts="own judgement")
    own.act("begin")
    yield own.state
    yield State(plan=ready_plan("mixed-once").without_prepared(), chosen=True)
    lost = Walk()
    for _ in range(4):
        lost.sample(None, "crc")
        yield lost.state


async def test_the_state_of_every_step(tmp_path: Path) -> None:
    steps, standing = set(), set()
    async with in_process(tmp_path) as station:
        for state in states():
            station.bench.state = state
            body = await station.state()
            steps.add(body["state"])
            standing.add(body["probe"])
            known = (await station.client.get("/api/state", params={"repeats_id": body["repeats_id"]})).json()
            fits_answer(body, "BenchState")
            fits_answer(known, "ShortState")
    assert steps == {each.value for each in Step}
    assert standing == {"ok", "failing", "lost"}


def messages(station: Station) -> list[tuple[str, dict[str, Any]]]:
    """What every page was sent, as it came."""
    heard: list[tuple[str, dict[str, Any]]] = []
    send = station.watch.hub.send

    def kept(message: bytes, seq: int = 0, *, short: bytes | None = None) -> None:
        for told in (message, *([short] if short is not None else [])):
            lines = dict(line.split(": ", 1) for line in told.decode().strip().splitlines())
            heard.append((lines["event"], json.loads(lines["data"])))
        send(message, seq, short=short)

    station.watch.hub.send = kept  # type: ignore[method-assign]
    return heard


async def test_everything_that_the_stream_says(tmp_path: Path) -> None:
    async with in_process(tmp_path) as station:
        heard = messages(station)
        accepted = await station.done("begin")
        await station.sample(20.0)
        await station.sample(None, "crc")
        await station.done("note", text="cold room")
        fits_answer(accepted, "ActDone")
        fits_answer((await station.client.get("/api/samples", params={"repeat": 1})).json(), "Trace")
        fits_answer((await station.client.get("/api/checks")).json(), "Checks")
    for event, data in heard:
        if event != "happened":
            fits({"messages": data.pop("messages")}, "Told")
        fits({"event": event, "data": data}, f"{event.capitalize()}Message")
    assert {event for event, _ in heard} == {"view", "live", "happened"}
    fits({"event": "reset", "data": {}}, "ResetMessage")


def test_results_of_portions() -> None:
    state = State()
    for stamped in events_of(1):
        state = fold(state, stamped)
    fits({"seq": 1, **shown_result(results_of(question_for(state)))}, "PortionsResult")
    traces = read_exchange(record(seed=4, hold_s=60).csv, "made.csv")
    own = PLAN.model_copy(update={"prompts": "own judgement"})
    found = shown_result(results(own, traces))
    assert found["judgement"] is not None
    fits({"seq": 1, **found}, "PortionsResult")
    fits({"seq": 1, **shown_result(results(PLAN, []))}, "PortionsResult")
    typed = [RepeatData(each.repeat, each.readings) for each in traces]
    fits({"seq": 1, **shown_result(results(PLAN, typed))}, "PortionsResult")


def test_results_of_one_mixing() -> None:
    plan = ready_plan("endothermic")
    assert isinstance(plan, OncePlan)
    before, after = plan.timing.before_s, plan.timing.after_s
    rows = tuple((float(t), 20.0 if t < before else 15.0 + 0.002 * (t - before)) for t in range(int(before + after)))
    repeat = RepeatData(1, (), rows, ((before, plan.portion_cm3, False),))
    for repeats in ([repeat, repeat], [RepeatData(1, ())], []):
        fits({"seq": 1, **shown_result(results(plan, repeats))}, "OnceResult")
    assert results(plan, [repeat])["mean"]["straight_lines"] is not None


@pytest.mark.parametrize("name", ["neutralisation", "mixed-once", "endothermic"])
async def test_plans_predictions_and_preparations(tmp_path: Path, name: str) -> None:
    plan = ready_plan(name).public()
    async with in_process(tmp_path) as station:
        post = station.client.post
        fits_answer((await station.client.get("/api/plans")).json(), "Plans")
        fits_answer((await post("/api/plan", json={"plan": plan})).json(), "PlanAnswer")
        fits_answer(
            (await post("/api/plan", json={"plan": {**plan, "repeats": 90, "strange": 1}})).json(), "PlanAnswer"
        )
        fits_answer((await post("/api/preparation", json={"plan": plan, "benches": 15})).json(), "Sheet")
        fits_answer((await station.client.get("/api/kit")).json(), "KitShown")
        fits_answer((await station.client.get("/api/session")).json(), "Standing")
    told = predicted({"plan": plan, "compare": True})
    fits(told, "PortionsPromise" if told["kind"] == "portions" else "OncePromise")


def test_a_plan_that_cannot_be_a_practical() -> None:
    both = {
        **ready_plan("neutralisation").model_dump(mode="json"),
        "alkali": {"name": "urea", "concentration_mol_dm3": 1},
    }
    fits(predicted({"plan": both, "compare": False}), "RefusedPlan")


async def room_answers(room: Room) -> None:
    """Everything that a page of the room asks for."""
    fits_answer(await room.room(), "Room", of="room")
    fits_answer((await room.get("/api/room/lessons")).json(), "Lessons", of="room")
    fits_answer((await room.get("/api/room/plans")).json(), "RoomPlans", of="room")
    for bench in room.desk.board.benches:
        fits_answer((await room.get(f"/api/room/bench/{bench}/state")).json(), "BenchState", of="room")
        fits_answer((await room.get(f"/api/room/bench/{bench}/samples", repeat=1)).json(), "Trace", of="room")
        fits_answer((await room.get(f"/api/room/bench/{bench}/session")).json(), "Standing", of="room")
    fits_answer(await room.class_result(), "ClassAnswer", of="room")


async def test_a_room_with_a_lesson_and_without(tmp_path: Path) -> None:
    lesson = {f"bench-{seed}": with_results(events_of(seed), "at once") for seed in (1, 2)}
    async with room_in_process(tmp_path / "full", lesson) as room:
        await room_answers(room)
        assert (await room.class_result())["result"] is not None
        number = await Orders(room.desk).give(["bench-1"], {"act": "quiet", "silent": True})
        fits({"accepted": True, "order": number}, "OrderGiven", of="room")
        ordered = await room.room()
        assert ordered["orders"][0]["act"] == "quiet"
        fits_answer(ordered, "Room", of="room")
        whole = json.loads(compact(room.desk.whole()))
        fits({"event": "room", "data": whole}, "RoomMessage", of="room")
        changed = {name: whole[name] for name in ("order", "tiles", "needs", "practice")}
        fits({"event": "tiles", "data": changed}, "TilesMessage", of="room")
    async with room_in_process(tmp_path / "empty", {}) as room:
        await room_answers(room)


def test_every_path_says_what_it_answers_with() -> None:
    for document in (BENCH, ROOM):
        for path, methods in document["paths"].items():
            for method, operation in methods.items():
                told = operation["responses"].get("200") or operation["responses"]["204"]
                for kind, content in told.get("content", {}).items():
                    said = content.get("schema") or content.get("x-message")
                    assert said or kind == "image/svg+xml", (method, path)
        assert not [name for name in document["components"]["schemas"] if "__" in name], "two shapes of one name"


def test_the_types_of_the_page_name_every_shape_once() -> None:
    schemas = merged([BENCH, ROOM])
    made = typescript(schemas)
    assert made.count("\nexport ") == len(schemas)
    assert "readonly [number, number | null]" in made
    with pytest.raises(ValueError, match="two shapes are called BenchState"):
        merged([BENCH, {"components": {"schemas": {"BenchState": {}}}}])


async def test_the_openapi_document_tells_acts_and_problems(tmp_path: Path) -> None:
    async with in_process(tmp_path) as station:
        document = (await station.client.get("/api/openapi.json")).json()
    assert document["openapi"].startswith("3.1")
    assert set(document["paths"]) >= {"/api/state", "/api/stream", "/api/samples", "/api/acts", "/api/session"}
    post = document["paths"]["/api/acts"]["post"]
    reference = post["requestBody"]["content"]["application/json"]["schema"]["$ref"]
    act = document["components"]["schemas"][reference.rpartition("/")[2]]
    assert set(act["required"]) == {"act", "key"}
    contract = {
        "begin", "alkali_temperature", "portion_added", "portion_undone", "portion_volume", "portion_unsure",
        "rinsed", "repeat_restarted", "pause", "resume", "finish",
    }  # fmt: skip
    assert contract <= set(act["properties"]["act"]["enum"])
    for path in document["paths"].values():
        for operation in path.values():
            assert "application/problem+json" in operation["responses"]["4XX"]["content"]
            assert "422" not in operation["responses"]
    stream = document["paths"]["/api/stream"]["get"]
    assert "text/event-stream" in stream["responses"]["200"]["content"]
