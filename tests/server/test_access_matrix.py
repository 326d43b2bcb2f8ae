"""Every endpoint for every role: who may, and who is told what to do first."""

import asyncio
from collections.abc import AsyncIterator
from pathlib import Path
from typing import Any

import httpx
import pytest
import pytest_asyncio

from station.record.journal import read_events
from station.server.door.access import Access
from tests.conftest import PATIENCE_S
from tests.server.doors import CODE, GIVEN, HASHED, LOOKER, SECRETS, TEACHER, Hand
from tests.server.live import PLAN, STARTED, Station, here, in_process

ROLES = ("looker", "bench", "teacher", "technician")
FREE = dict.fromkeys(ROLES, 200)
ACTING = FREE | {"looker": 403}
STAFF = ACTING | {"bench": 403}

MATRIX: dict[tuple[str, str], tuple[dict[str, int], dict[str, object] | None]] = {
    ("GET", "/api/state"): (FREE, None),
    ("GET", "/api/samples"): (FREE, None),
    ("GET", "/api/session"): (FREE, None),
    ("GET", "/api/record.csv"): (FREE, None),
    ("GET", "/api/readings.csv"): (FREE, None),
    ("GET", "/api/table.csv"): (FREE, None),
    ("GET", "/api/record.xlsx"): (FREE, None),
    ("GET", "/api/journal.jsonl"): (FREE, None),
    ("POST", "/api/preparation"): (FREE, {"plan": PLAN.model_dump(mode="json"), "benches": 3}),
    ("GET", "/api/plans"): (FREE, None),
    ("POST", "/api/plan"): (FREE, {"plan": PLAN.model_dump(mode="json")}),
    ("POST", "/api/plan/prediction"): (dict.fromkeys(ROLES, 422), {"plan": {}, "page": "matrix"}),
    ("GET", "/api/checks"): (FREE, None),
    ("GET", "/api/kit"): (FREE, None),
    ("GET", "/api/kit/address.svg"): (FREE, None),
    ("GET", "/api/records.zip"): (STAFF, None),
    ("POST", "/api/kit/cards"): (STAFF, {"kits_toml": "[[kit]]\nnumber = 1\n"}),
    ("POST", "/api/kit/lamps"): (STAFF | {"teacher": 409, "technician": 409}, {}),
    ("GET", "/api/kit/machine"): (STAFF, None),
    ("POST", "/api/kit/machine"): (STAFF | {"teacher": 409, "technician": 409}, {"do": "restart"}),
    ("POST", "/api/acts"): (ACTING, {"act": "pause", "key": "matrix"}),
    ("POST", "/api/staff"): (STAFF, {"act": "rename", "name": "Bench by the door"}),
    ("POST", "/api/session"): (dict.fromkeys(ROLES, 204), GIVEN["bench"]),
    ("DELETE", "/api/session"): (dict.fromkeys(ROLES, 204), None),
    ("DELETE", "/api/sessions"): (STAFF | {"teacher": 204, "technician": 204}, None),
}
ELSEWHERE = {("GET", "/api/stream")}
"""A stream never ends, so it is asked in test_access_door.py, by a looker."""


@pytest_asyncio.fixture
async def station(tmp_path: Path) -> AsyncIterator[Station]:
    async with in_process(tmp_path, access=here(SECRETS)) as opened:
        await sign_in(opened.client, "bench")
        await opened.done("begin")
        await opened.client.delete("/api/session")
        yield opened


async def sign_in(client: httpx.AsyncClient, role: str) -> None:
    """Become this role; a looker gives nothing."""
    if role != "looker":
        answer = await client.post("/api/session", json=GIVEN[role])
        assert (answer.status_code, answer.content) == (204, b"")


@pytest.mark.parametrize("role", ROLES)
@pytest.mark.parametrize(("method", "path"), MATRIX)
async def test_who_may_do_what(station: Station, method: str, path: str, role: str) -> None:
    expected, body = MATRIX[method, path]
    await sign_in(station.client, role)
    query = {"repeat": 1} if path == "/api/samples" else None
    before = station.bench.seq
    answer = await station.client.request(method, path, json=body, params=query)
    assert answer.status_code == expected[role], answer.text
    if answer.status_code == 403:
        assert answer.headers["content-type"] == "application/problem+json"
        assert answer.json()["code"] == ("needs_code" if path == "/api/acts" else "staff_only")
        assert station.bench.seq == before


async def test_the_matrix_knows_every_endpoint(station: Station) -> None:
    document = (await station.client.get("/api/openapi.json")).json()
    there = {(method.upper(), path) for path, methods in document["paths"].items() for method in methods}
    assert there == set(MATRIX) | ELSEWHERE


@pytest.mark.parametrize("role", ROLES)
async def test_a_device_is_told_what_it_may_do(station: Station, role: str) -> None:
    await sign_in(station.client, role)
    assert (await station.client.get("/api/session")).json() == {
        "role": role,
        "needs_code": role == "looker",
        "passphrases": ["teacher", "technician"],
        "messages": {},
    }


async def test_a_bench_whose_settings_name_no_code_is_open_and_has_no_staff(tmp_path: Path) -> None:
    clock = Hand()
    async with in_process(tmp_path, access=here(monotonic=clock)) as station:
        assert (await station.client.get("/api/session")).json() == {
            "role": "bench",
            "needs_code": False,
            "passphrases": [],
            "messages": {},
        }
        await station.done("begin")
        answer = await station.client.post("/api/staff", json={"act": "quiet", "silent": True})
        assert (answer.status_code, answer.json()["code"]) == (403, "staff_only")
        for given in GIVEN.values():
            clock.now_s += 60.0
            assert (await station.client.post("/api/session", json=given)).status_code == 403


@pytest.mark.parametrize(
    ("address", "role"),
    [
        ("127.0.0.1", "technician"),
        ("::1", "technician"),
        ("192.0.2.9", "bench"),
        ("127.0.0.1.evil.example", "bench"),
        ("", "bench"),
    ],
)
def test_a_demonstration_is_open_to_this_machine_only(address: str, role: str) -> None:
    assert Access(everyone="technician").role(None, address) == role
    assert Access(SECRETS).role(None, address) == "looker"


async def test_the_cookie_is_hidden_from_scripts_and_from_other_sites(station: Station) -> None:
    answer = await station.client.post("/api/session", json=GIVEN["bench"])
    name, *attributes = answer.headers["set-cookie"].split("; ")
    assert name.startswith("bench_")
    assert {each.lower() for each in attributes} == {"httponly", "samesite=strict", "path=/", "max-age=43200"}
    assert "secure" not in answer.headers["set-cookie"].lower()  # plain http
    assert answer.headers["cache-control"] == "no-store"


@pytest.mark.fault("cookies")
async def test_signing_out_ends_the_session_also_for_who_copied_the_cookie(station: Station) -> None:
    await sign_in(station.client, "teacher")
    stolen = dict(station.client.cookies)
    assert (await station.client.delete("/api/session")).status_code == 204
    assert not station.client.cookies
    for path, body in (("/api/staff", {"act": "rename", "name": "x"}), ("/api/acts", {"act": "pause", "key": "k"})):
        answer = await station.client.post(
            path, json=body, headers={"cookie": "; ".join(map("=".join, stolen.items()))}
        )
        assert answer.status_code == 403


async def test_all_devices_are_signed_out_at_once(station: Station) -> None:
    await sign_in(station.client, "bench")
    phone = dict(station.client.cookies)
    await sign_in(station.client, "technician")
    assert (await station.client.delete("/api/sessions")).status_code == 204
    for cookies in (phone, dict(station.client.cookies)):
        known = "; ".join(map("=".join, cookies.items()))
        answer = await station.client.get("/api/session", headers={"cookie": known})
        assert answer.json() == {**LOOKER, "messages": {}}


async def test_what_was_not_accepted_is_answered_alike(tmp_path: Path) -> None:
    clock, answers = Hand(), []
    for number, secrets in enumerate((SECRETS, HASHED)):
        async with in_process(tmp_path / str(number), access=here(secrets, monotonic=clock)) as station:
            for given in (
                {"code": "WRONG-CODE"},
                {"code": ""},
                {"code": TEACHER},
                {"role": "teacher", "passphrase": "wrong passphrase"},
                {"role": "technician", "passphrase": TEACHER},
                {"role": "technician", "passphrase": ""},
            ):
                clock.now_s += 60.0
                answers.append(await station.client.post("/api/session", json=given))
    assert {each.status_code for each in answers} == {403}
    assert len({each.text for each in answers}) == 1
    assert not any("set-cookie" in each.headers for each in answers)


@pytest.mark.parametrize(
    ("given", "words"),
    [
        ({"code": CODE}, "No code is set: this bench can be operated without one."),
        ({"role": "teacher", "passphrase": TEACHER}, "`station passphrase teacher`"),
        ({"role": "technician", "passphrase": TEACHER}, "`station passphrase technician`"),
    ],
)
async def test_where_nothing_is_set_it_says_so_and_how_to_set_it(
    tmp_path: Path, given: dict[str, str], words: str
) -> None:
    async with in_process(tmp_path) as station:
        for _ in range(8):
            answer = await station.client.post("/api/session", json=given)
            assert (answer.status_code, answer.json()["code"]) == (403, "none_set"), "no guess, so never slowed"
            assert words in answer.json()["detail"]
            assert "set-cookie" not in answer.headers


@pytest.mark.parametrize(
    "body",
    [
        {},
        [],
        "code",
        {"code": None},
        {"code": 123_456},
        {"code": ["K7M-4QX"]},
        {"code": CODE, "role": "teacher", "passphrase": TEACHER},
        {"code": CODE, "recovery": True},
        {"role": "teacher"},
        {"passphrase": TEACHER},
        {"role": "looker", "passphrase": TEACHER},
        {"role": "root", "passphrase": TEACHER},
        {"role": "teacher", "passphrase": [TEACHER]},
        {"recovery": False},
        {"recovery": "yes"},
        {"code": CODE, "key": TEACHER},
    ],
)
async def test_what_is_no_credential_is_not_understood_and_not_repeated(station: Station, body: Any) -> None:
    answer = await station.client.post("/api/session", json=body)
    assert answer.status_code == 422
    assert answer.json()["code"] == "not_understood"
    assert TEACHER not in answer.text
    assert CODE not in answer.text
    assert "123456" not in answer.text


@pytest.mark.parametrize("role", ["teacher", "technician"])
async def test_staff_set_aside_quiet_and_rename(station: Station, role: str) -> None:
    await sign_in(station.client, role)
    post = station.client.post
    answer = await post("/api/staff", json={"act": "set_aside", "repeat": 1, "reason": "the lid was off"})
    assert answer.status_code == 200
    assert answer.json()["state"]["repeats"][0]["status"] == "set aside"
    again = await post("/api/staff", json={"act": "set_aside", "repeat": 1, "reason": "again"})
    assert (again.status_code, again.json()["code"]) == (409, "already_aside")
    assert again.json()["state"]["seq"] == answer.json()["seq"]
    assert (await post("/api/staff", json={"act": "quiet", "silent": True})).json()["state"]["silent"] is True
    state = (await post("/api/staff", json={"act": "rename", "name": "Curie", "by": "technician"})).json()["state"]
    assert state["bench"]["name"] == "Curie"
    kept = list(read_events(station.bench.journal.path.parent, kinds=("quieted", "bench_renamed")))
    assert [each.event.to_body()["by"] for each in kept] == [role, role]
    assert (await post("/api/staff", json={"act": "rename"})).json()["state"]["bench"]["name"] == "Bench 7"


@pytest.mark.fault("many-buzzers")
async def test_quiet_reaches_the_panel_and_ends_with_the_practical(station: Station) -> None:
    await sign_in(station.client, "teacher")

    async def panel(silent: bool) -> None:
        async with asyncio.timeout(PATIENCE_S):
            while station.bench.panel.silent != silent:  # noqa: ASYNC110 - the panel's next tick
                await asyncio.sleep(0.005)

    for silent in (True, False, True):
        await station.client.post("/api/staff", json={"act": "quiet", "silent": silent})
        await panel(silent)
    await station.bench.start(PLAN, STARTED, anew=True)
    await panel(False)


async def test_a_name_outlasts_a_restart_and_the_same_key_is_done_once(tmp_path: Path) -> None:
    async with in_process(tmp_path, access=here(SECRETS)) as station:
        await sign_in(station.client, "teacher")
        act = {"act": "rename", "name": "Curie", "key": "once"}
        seqs = {(await station.client.post("/api/staff", json=act)).json()["seq"] for _ in range(3)}
        assert len(seqs) == 1
    async with in_process(tmp_path, access=here(SECRETS)) as station:
        assert (await station.state())["bench"]["name"] == "Curie"


@pytest.mark.fault("secrets")
async def test_no_secret_is_in_a_reply_or_in_the_record(station: Station) -> None:
    seen = ""
    for role in ROLES:
        await sign_in(station.client, role)
        for path in ("/api/state", "/api/samples?repeat=1", "/api/session", "/api/openapi.json", "/"):
            seen += (await station.client.get(path)).text
    folder = station.bench.journal.path.parent
    raw = b"".join(each.read_bytes() for each in folder.iterdir() if each.is_file()) + seen.encode()
    for each in vars(SECRETS).values():
        assert each is None or each.encode() not in raw
    assert TEACHER.encode() not in raw
