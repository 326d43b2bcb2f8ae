"""Plans on the page: computed by the station for anybody; what staff made up comes from staff and goes to them only."""

import asyncio
import json
import tomllib
from collections.abc import AsyncIterator
from pathlib import Path
from typing import Any

import httpx
import pytest
import pytest_asyncio
from hypothesis import given, settings
from hypothesis import strategies as st

from station.bench.calculation import prediction as module
from station.bench.calculation.prediction import (
    MOST_ADDRESSES,
    MOST_WAITING,
    STAFF_FIRST,
    Predictor,
    Superseded,
)
from station.chemistry.preparation import GLASSWARE
from station.practical.kinds import READY_NAMES, plan_from, read_plan, ready_plan
from station.practical.kinds.answers import Promise
from station.practical.kinds.portions.plan import PortionsPlan
from station.practical.plan import Plan
from station.practical.plan_check import check_plan, plan_toml
from station.practical.predict import predict
from station.practical.prepare.amounts import preparation
from station.practical.prepare.sheet import sheet
from station.words import beside
from tests.records import PLAN_TEXT
from tests.server.doors import GIVEN, SECRETS
from tests.server.live import Station, here, in_process

PLAN: dict[str, Any] = tomllib.loads(PLAN_TEXT)
SECRET = 0.35719
PREPARED = {**PLAN, "acid": {**PLAN["acid"], "prepared_mol_dm3": SECRET}}
STRONG = {**PLAN, "alkali": {"name": "sodium hydroxide", "concentration_mol_dm3": 1.5}}
URL = "/api/plan"


@pytest_asyncio.fixture
async def station(tmp_path: Path) -> AsyncIterator[Station]:
    async with in_process(tmp_path, access=here(SECRETS)) as opened:
        yield opened
        await opened.watch.predictor.close()


async def sign_in(station: Station, role: str = "teacher") -> None:
    assert (await station.client.post("/api/session", json=GIVEN[role])).status_code == 204


async def checked(station: Station, plan: dict[str, Any]) -> dict[str, Any]:
    answer = await station.client.post(URL, json={"plan": plan})
    assert answer.status_code == 200, answer.text
    found: dict[str, Any] = answer.json()
    return found


def changed(table: str, **values: Any) -> dict[str, Any]:
    return {**PLAN, table: {**PLAN[table], **values}}


@pytest.mark.parametrize(
    ("plan", "where", "says"),
    [
        (changed("acid", name="moonshine"), ["acid", "name"], "Known: hydrochloric acid"),
        (changed("acid", volume_cm3=-1), ["acid", "volume_cm3"], "Must be at least 0.1."),
        (changed("acid", volume_cm3=1e-80), ["acid", "volume_cm3"], "Must be at least 0.1."),
        ({**PLAN, "cup": {"heat_capacity_j_k": 1e-80}}, ["cup", "heat_capacity_j_k"], "0 or at least 0.001"),
        (changed("alkali", concentration_mol_dm3=99), ["alkali", "concentration_mol_dm3"], "Must be at most 20."),
        (changed("alkali", concentration_mol_dm3=None), ["alkali", "concentration_mol_dm3"], "Missing."),
        (changed("portions", count="many"), ["portions", "count"], "Must be a whole number."),
        (changed("portions", count=3), ["portions", "count"], "plan at least 4 portions"),
        (changed("portions", glassware="bucket"), ["portions", "glassware"], "known: measuring cylinder"),
        (changed("alkali", name="urea"), ["alkali", "name"], "urea is not an alkali"),
        ({**PLAN, "pace": "slow"}, ["pace"], "'graph' or 'quick'"),
        ({**PLAN, "spoons": 2}, ["spoons"], "not known"),
        ({**PLAN, "acid": "nitric"}, ["acid"], "Must be a table"),
        (changed("acid", name=5), ["acid", "name"], "Must be a text"),
        (changed("acid", concentration_mol_dm3=1, prepared_mol_dm3=1), [], "not both"),
    ],
)
def test_a_refusal_stands_beside_its_key(plan: dict[str, Any], where: list[str], says: str) -> None:
    found = check_plan(plan)
    assert found["plan"] is None
    assert [each["where"] for each in found["problems"]] == [where]
    assert says.lower() in found["problems"][0]["text"].lower()


async def test_a_plan_that_can_be_used_tells_hazards_minutes_and_its_file(tmp_path: Path) -> None:
    async with in_process(tmp_path) as station:  # nobody can sign in there, so that anybody may save
        found = await checked(station, PLAN)
    assert found["problems"] == found["strong"] == []
    assert read_plan(found["toml"]) == plan_from(PLAN)
    acid, alkali = found["hazards"]
    assert (acid["concentration_mol_dm3"], acid["assumed"]) == (0.512, True), "as strong as this plan could find it"
    assert alkali["label"]["pictograms"] == ["GHS05"]
    assert (found["minutes"]["total"], found["name"]) == (21.0, "How strong is the nitric acid?")


async def test_only_staff_save_where_there_are_staff(station: Station) -> None:
    assert (await checked(station, PLAN))["toml"] is None
    await sign_in(station, "bench")
    assert (await checked(station, PLAN))["toml"] is None
    await sign_in(station)
    assert read_plan((await checked(station, PLAN))["toml"]) == plan_from(PLAN)


async def test_a_plan_file_is_read_whatever_is_in_it(station: Station) -> None:
    text = "\ufeff" + PLAN_TEXT.replace("25.0", "inf").replace("\n", "\r\n") + "\n[more]\nday = 2026-01-02\n"
    answer = await station.client.post(URL, json={"plan_toml": text})
    found = answer.json()
    assert [(each["where"], each["text"], each["unknown"]) for each in found["problems"]] == [
        (["acid", "volume_cm3"], "Must be a number.", False),
        (["more"], "This key is not known here.", True),
    ]
    assert found["values"]["acid"] == {"name": "nitric acid", "volume_cm3": None}
    assert found["values"]["more"] == {"day": "2026-01-02"}
    bad = await station.client.post(URL, json={"plan_toml": "[acid"})
    assert (bad.status_code, bad.json()["code"]) == (422, "no_toml")
    assert (await station.client.post(URL, json={})).status_code == 422


async def test_what_staff_made_up_is_for_staff(station: Station) -> None:
    station.watch.remember(plan_from(PREPARED))
    for path, more in ((URL, {}), (f"{URL}/prediction", {"page": "one"}), ("/api/preparation", {"benches": 3})):
        answer = await station.client.post(path, json={"plan": PREPARED, **more})
        assert (answer.status_code, answer.json()["code"]) == (403, "staff_only")
        assert str(SECRET) not in answer.text
    seen = (await station.client.get("/api/plans")).text
    assert "prepared_mol_dm3" not in seen
    assert str(SECRET) not in seen
    await sign_in(station)
    seen = (await station.client.get("/api/plans")).json()
    assert seen["bench"]["acid"]["prepared_mol_dm3"] == SECRET
    assert seen["ready"][0]["plan"]["acid"]["prepared_mol_dm3"] == 0.36


async def test_staff_find_what_they_made_up_again_and_students_do_not(station: Station) -> None:
    await sign_in(station)
    answer = await station.client.post("/api/staff", json={"act": "choose_plan", "plan": {**PREPARED, "repeats": 3}})
    assert answer.status_code == 200
    assert str(SECRET) not in answer.text
    assert (await station.client.get("/api/plans")).json()["bench"]["acid"]["prepared_mol_dm3"] == SECRET
    await station.client.delete("/api/session")
    bench = (await station.client.get("/api/plans")).json()["bench"]
    assert (bench["repeats"], "prepared_mol_dm3" in bench["acid"]) == (3, False)


async def test_the_prediction_is_the_commands(station: Station) -> None:
    asked = {"plan": PLAN, "page": "one"}
    found = (await station.client.post(f"{URL}/prediction", json=asked)).json()
    expected = json.loads(json.dumps(beside(predict(plan_from(PLAN), compare=False))))
    assert found == expected
    assert found["comparison"] is None
    kept = (await station.client.post(f"{URL}/prediction", json={**asked, "page": "two"})).json()
    assert kept == found
    bad = await station.client.post(f"{URL}/prediction", json={**asked, "plan": changed("portions", count=0)})
    assert (bad.status_code, bad.json()["code"]) == (422, "bad_plan")


async def test_the_preparation_is_the_commands(station: Station) -> None:
    answer = await station.client.post("/api/preparation", json={"plan": PLAN, "benches": 4})
    assert answer.json() == json.loads(json.dumps(beside(sheet(preparation(plan_from(PLAN), 4)))))
    assert "0.128 to 0.512 mol/dm³" in answer.text, "the acid is not said: the range that the plan can find"
    await sign_in(station)
    own = {"plan": PREPARED, "benches": 4, "stocks": {"nitric acid": 2.0}}
    acid = (await station.client.post("/api/preparation", json=own)).json()["sections"][0]
    assert acid["head"].startswith(f"nitric acid, {SECRET} mol/dm³: make ")
    assert "the school's own bottle" in acid["head"]
    bottles = (await station.client.post("/api/preparation", json=own)).json()["bottles"]
    assert [(each["concentration_mol_dm3"], each["store"]) for each in bottles] == [
        (None, False),
        (0.4, False),
        (SECRET, True),
        (0.4, True),
    ]


@pytest.mark.parametrize(
    ("more", "says"),
    [
        ({"benches": 0}, "benches"),
        ({"benches": 3, "stocks": {"moonshine": 2}}, "moonshine"),
        ({"benches": 3, "stocks": {"nitric acid": -1}}, "stocks"),
        ({"benches": 3, "plan": {}}, "missing"),
    ],
)
async def test_a_mistake_is_told_in_words(station: Station, more: dict[str, Any], says: str) -> None:
    answer = await station.client.post("/api/preparation", json={"plan": PLAN, **more})
    assert answer.status_code == 422
    assert says in answer.json()["detail"]


async def test_above_1_mol_dm3_staff_confirm(station: Station) -> None:
    await sign_in(station)
    assert "sodium hydroxide (1.5 mol/dm³)" in (await checked(station, STRONG))["strong"][0]
    act = {"act": "choose_plan", "plan": STRONG}
    before = station.bench.seq
    answer = await station.client.post("/api/staff", json=act)
    assert (answer.status_code, answer.json()["code"]) == (409, "not_confirmed")
    assert station.bench.seq == before
    answer = await station.client.post("/api/staff", json={**act, "confirmed": True})
    assert answer.json()["state"]["plan"]["alkali"]["concentration_mol_dm3"] == 1.5


DANGEROUS: dict[str, Any] = {
    "kind": "once",
    "liquid": {"name": "water", "volume_cm3": 25.0},
    "addition": {"name": "sodium hydroxide", "mass_g": 30.0},
}


@pytest.mark.fault("dangerous-plan")
async def test_a_plan_that_leads_into_danger_is_a_problem_and_never_begins(station: Station) -> None:
    found = await checked(station, DANGEROUS)
    assert found["plan"] is None
    assert {each["id"] for each in found["problems"]} == {"too-hot", "insoluble", "violent"}
    assert all(each["where"] == ["addition", "mass_g"] and each["text"].endswith(".") for each in found["problems"])
    for path, more in ((f"{URL}/prediction", {"page": "one"}), ("/api/preparation", {"benches": 3})):
        answer = await station.client.post(path, json={"plan": DANGEROUS, **more})
        assert (answer.status_code, answer.json()["code"]) == (422, "bad_plan")
        assert "would boil and spit" in answer.json()["detail"]
    await sign_in(station)
    act = {"act": "choose_plan", "plan": DANGEROUS, "confirmed": True}
    answer = await station.client.post("/api/staff", json=act)
    assert answer.json()["code"] == "bad_plan"
    assert answer.status_code >= 400


async def test_warnings_are_in_the_answer_with_id_and_text(station: Station) -> None:
    white = {**DANGEROUS, "addition": {"name": "copper(II) sulfate", "mass_g": 4.0}}
    found = await checked(station, white)
    assert [each["id"] for each in found["warnings"]] == ["anhydrous", "heats"]
    assert "copper(II) sulfate pentahydrate" in found["warnings"][0]["text"]
    assert (await checked(station, PLAN))["warnings"] == []


async def test_an_old_record_with_a_plan_that_is_refused_now_opens_all_the_same(tmp_path: Path) -> None:
    for _ in range(2):  # the second time from the record
        async with in_process(tmp_path, plan=plan_from(DANGEROUS)) as old:
            assert (await old.state())["plan"]["addition"]["mass_g"] == 30.0
            assert (await old.client.get("/api/record.csv")).status_code == 200


async def test_what_can_be_weighed_and_what_has_hydrates_is_told(station: Station) -> None:
    reagents = {each["name"]: each for each in (await station.client.get("/api/plans")).json()["reagents"]}
    assert not reagents["hydrochloric acid"]["solid"]
    assert reagents["copper(II) sulfate"]["solid"]
    assert reagents["copper(II) sulfate"]["anhydrous"]
    assert not reagents["copper(II) sulfate pentahydrate"]["anhydrous"]


@pytest.mark.parametrize("name", READY_NAMES)
def test_the_ready_plans_promise_well(name: str) -> None:
    plan = ready_plan(name)
    promised = predict(plan, compare=False)
    # Seven cups are a double lesson, and the plan says so.
    double = name == "mixing-ratios"
    assert [each["id"] for each in promised["warnings"]] == (["too-long"] if double else [])
    if name == "endothermic":
        assert promised["change_c"] < -3
    made = preparation(plan, 15)
    assert made["unknown"] == []
    assert not any(each["near_edge"] for each in made["solutions"])
    assert double or min(table["left_min"] for table in made["timetable"].values()) >= 0
    assert read_plan(plan_toml(plan)) == plan


@settings(max_examples=40)
@given(
    st.text(st.characters(codec="utf-8", categories=["L", "N", "P"]), min_size=1, max_size=20),
    st.floats(0.1, 900),
    st.floats(0.01, 20),
    st.integers(1, 60),
    st.sampled_from([None, *GLASSWARE]),
    st.one_of(st.none(), st.floats(-5, 60)),
    st.sampled_from(["at once", "after own reading", "when shown"]),
)
def test_a_saved_plan_is_the_same_plan(
    title: str, cm3: float, mol_dm3: float, count: int, ware: str | None, room_c: float | None, results: str
) -> None:
    plan = plan_from(
        {
            "title": title,
            "results": results,
            "acid": {"name": "nitric acid", "volume_cm3": cm3, "prepared_mol_dm3": mol_dm3},
            "alkali": {"name": "sodium hydroxide", "concentration_mol_dm3": mol_dm3},
            "portions": {"volume_cm3": cm3, "count": count, "glassware": ware},
            "surroundings": {"room_c": room_c},
        }
    )
    assert read_plan(plan_toml(plan)) == plan


class Child:
    """Stands where the worker is: how it answers is test_calculator.py's."""

    def __init__(self) -> None:
        self.asked: list[float] = []
        self.began, self.go = asyncio.Event(), asyncio.Event()

    async def answered(self, kind: str, question: dict[str, Any]) -> dict[str, Any]:
        assert kind == "prediction"
        self.asked.append(question["plan"]["acid"]["volume_cm3"])
        self.began.set()
        await self.go.wait()
        return {"volume_cm3": self.asked[-1]}


def of(volume_cm3: float) -> Plan:
    plan = read_plan(PLAN_TEXT)
    assert isinstance(plan, PortionsPlan)
    return plan.model_copy(update={"acid": plan.acid.model_copy(update={"volume_cm3": volume_cm3})})


async def nothing() -> None:
    return None


async def test_the_newest_question_comes_first_and_replaces_the_same_pages_older_one(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    child = Child()
    monkeypatch.setattr(module, "answered", child.answered)
    predictor = Predictor(nothing)

    def ask(volume_cm3: float, page: str) -> asyncio.Task[Promise]:
        return asyncio.create_task(predictor.predict(of(volume_cm3), page, compare=False))

    first = ask(1, "a")
    await child.began.wait()
    older, other, newer = ask(2, "b"), ask(3, "c"), ask(4, "b")
    await asyncio.sleep(0)
    child.go.set()
    with pytest.raises(Superseded):
        await older
    assert [dict(await each)["volume_cm3"] for each in (first, newer, other)] == [1, 4, 3]
    assert child.asked == [1, 4, 3]
    assert dict(await ask(4, "d"))["volume_cm3"] == 4
    assert child.asked == [1, 4, 3], "the same plan is not computed again"


async def test_no_more_than_a_few_wait_and_all_are_let_go_at_the_end(monkeypatch: pytest.MonkeyPatch) -> None:
    child = Child()
    monkeypatch.setattr(module, "answered", child.answered)
    predictor = Predictor(nothing)
    asked = [
        asyncio.create_task(predictor.predict(of(cm3), f"page {cm3}", compare=False))
        for cm3 in range(1, MOST_WAITING + 3)
    ]
    await child.began.wait()
    await predictor.close()
    for each in asked:
        with pytest.raises(Superseded):
            await each
    with pytest.raises(Superseded):
        await predictor.predict(of(99), "late", compare=False)


async def test_staff_come_first_and_one_address_waits_for_itself(monkeypatch: pytest.MonkeyPatch) -> None:
    child = Child()
    monkeypatch.setattr(module, "answered", child.answered)
    predictor = Predictor(nothing)
    order: list[str] = []

    async def ask(volume_cm3: float, page: str, address: str) -> None:
        try:
            await predictor.predict(of(volume_cm3), page, address, compare=False)
            order.append(address)
        except Superseded:
            order.append(f"not {address}")

    asked = [asyncio.create_task(ask(1, "a", "192.0.2.1"))]
    await child.began.wait()
    others = ["192.0.2.1"] * 2 * MOST_WAITING + ["192.0.2.2", "192.0.2.3", STAFF_FIRST, STAFF_FIRST]
    asked += [asyncio.create_task(ask(number, f"page {number}", address)) for number, address in enumerate(others, 2)]
    await asyncio.sleep(0)
    child.go.set()
    await asyncio.gather(*asked)
    answered = [each for each in order if not each.startswith("not")]
    assert order.count("not 192.0.2.1") == MOST_WAITING, "its own, and nobody else's"
    assert answered[:6] == ["192.0.2.1", STAFF_FIRST, STAFF_FIRST, "192.0.2.1", "192.0.2.2", "192.0.2.3"]
    assert len(answered) == 1 + MOST_WAITING + 4


async def test_however_many_addresses_ask_those_that_wait_are_answered_and_staff_are_let_in(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    child = Child()
    monkeypatch.setattr(module, "answered", child.answered)
    predictor = Predictor(nothing)

    def ask(number: int, address: str) -> asyncio.Task[Promise]:
        return asyncio.create_task(predictor.predict(of(1 + number), "page", address, compare=False))

    first = ask(0, "192.0.2.0")
    await child.began.wait()
    waiting = [ask(number, f"192.0.2.{number}") for number in range(1, MOST_ADDRESSES + 1)]
    late, staff = ask(90, "192.0.2.90"), ask(91, STAFF_FIRST)
    await asyncio.sleep(0)
    child.go.set()
    with pytest.raises(Superseded):
        await late
    await asyncio.gather(first, staff, *waiting)
    assert child.asked[:2] == [1, 92]


@pytest.mark.fault("greedy-address")
async def test_predictions_of_six_addresses_take_none_of_the_teachers(
    station: Station, monkeypatch: pytest.MonkeyPatch
) -> None:
    child = Child()
    child.go.set()
    monkeypatch.setattr(module, "answered", child.answered)
    app = station.client._transport.app  # type: ignore[attr-defined]
    await sign_in(station)

    async def loop(address: str) -> None:
        transport = httpx.ASGITransport(app, client=(address, 1))
        async with httpx.AsyncClient(transport=transport, base_url="http://bench.local") as looker:
            for number in range(40):
                asked = changed("acid", volume_cm3=float(address.rpartition(".")[2]) + number / 50)
                await looker.post(f"{URL}/prediction", json={"plan": asked, "page": f"page {number}"})

    crowd = [asyncio.create_task(loop(f"192.0.2.{10 + number}")) for number in range(6) for _ in range(4)]
    statuses = []
    for number in range(12):
        asked = {"plan": changed("acid", volume_cm3=100.0 + number), "page": "teacher"}
        statuses.append((await station.client.post(f"{URL}/prediction", json=asked)).status_code)
    for each in crowd:
        each.cancel()
    await asyncio.wait(crowd)
    assert statuses == [200] * 12
