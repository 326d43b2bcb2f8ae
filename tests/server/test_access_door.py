"""The door: other names, other sites, forms and floods are turned away before anything else happens."""

import asyncio
import socket
from collections.abc import AsyncIterator
from pathlib import Path
from typing import Any

import pytest
import pytest_asyncio
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from station.server.door.limits import ACTS_AT_ONCE, LOOKS_AT_ONCE, Rate, network_of
from tests.conftest import PATIENCE_S
from tests.server.doors import GIVEN, LOOKER, SECRETS, Hand
from tests.server.live import Station, Stream, here, in_process, served

POSTED: list[tuple[str, dict[str, Any]]] = [
    ("/api/acts", {"act": "begin", "key": "k"}),
    ("/api/session", GIVEN["bench"]),
    ("/api/staff", {"act": "quiet", "silent": True}),
]
FORM = "application/x-www-form-urlencoded"


@pytest_asyncio.fixture
async def station(tmp_path: Path) -> AsyncIterator[Station]:
    async with in_process(tmp_path, access=here(SECRETS)) as opened:
        for role in ("bench", "technician"):
            await opened.client.post("/api/session", json=GIVEN[role])
        yield opened


@pytest.mark.fault("rebinding")
@pytest.mark.parametrize("host", ["evil.example", "evil.example:8080", "bench.local.evil.example", "", "203.0.113.9"])
@pytest.mark.parametrize("method", ["GET", "HEAD", "POST", "PUT", "DELETE", "OPTIONS"])
@pytest.mark.parametrize("path", ["/api/state", "/api/acts", "/api/session", "/api/nothing", "/page/x.js"])
async def test_another_name_is_turned_away_whatever_it_asks(
    station: Station, method: str, path: str, host: str
) -> None:
    """A page whose own name was pointed here has an `Origin` that equals its `Host`; only the name gives it away."""
    before = station.bench.seq
    headers = {"host": host, "origin": f"http://{host}", "content-type": "application/json"}
    answer = await station.client.request(method, path, headers=headers, content=b"{}")
    assert answer.status_code == 421
    assert "set-cookie" not in answer.headers
    assert station.bench.seq == before


async def test_two_names_are_one_too_many(station: Station) -> None:
    for hosts in (["bench.local", "evil.example"], ["bench.local", "bench.local"]):
        answer = await station.client.get("/api/state", headers=[("host", host) for host in hosts])
        assert answer.status_code == 421


async def test_who_opens_the_page_by_another_name_reads_what_to_do(station: Station) -> None:
    answer = await station.client.get("/", headers={"host": "evil.example"})
    assert (answer.status_code, answer.headers["content-type"]) == (421, "text/plain; charset=utf-8")
    assert "address on its label" in answer.text
    told = (await station.client.get("/api/state", headers={"host": "evil.example"})).json()
    assert (told["status"], told["title"], told["code"]) == (421, "Misdirected Request", "other_host")
    assert told["detail"] == answer.text.strip()
    assert (told["id"], told["values"]) == ("server-unknown-host", {})
    german = {"host": "evil.example", "accept-language": "de-DE,de;q=0.9,en;q=0.5"}
    answer = await station.client.get("/", headers=german)
    assert (answer.status_code, answer.headers["content-language"]) == (421, "de")
    assert answer.text.startswith("Diese Station hört nicht auf den Namen in der Adresszeile.")


@pytest.mark.fault("rebinding")
async def test_another_name_gets_no_stream_and_its_own_name_does(tmp_path: Path) -> None:
    async with served(tmp_path, access=here(SECRETS)) as station:
        for headers in ("Host: evil.example", "Host: localhost\r\nHost: evil.example", "X: y"):
            reader, writer = await asyncio.open_connection("127.0.0.1", station.port)
            writer.write(f"GET /api/stream HTTP/1.1\r\n{headers}\r\nConnection: close\r\n\r\n".encode())
            told = await asyncio.wait_for(reader.read(), PATIENCE_S)
            assert told.startswith((b"HTTP/1.1 421", b"HTTP/1.1 400"))
            assert b"event:" not in told
            writer.close()
        assert station.watch.hub.count == 0
        looker = await Stream.opened(station.port)
        assert looker.head.startswith("HTTP/1.1 200")
        await looker.until("view")
        await looker.close()


@pytest.mark.fault("other-sites")
@pytest.mark.parametrize(("path", "body"), POSTED)
@pytest.mark.parametrize(
    ("headers", "status"),
    [
        ({"origin": "http://evil.example"}, 403),
        ({"origin": "null"}, 403),
        ({"origin": "http://bench.local:81"}, 403),
        ({"origin": "http://bench.local.evil.example"}, 403),
        ({"origin": ""}, 403),
        ({"origin": "http://["}, 403),
        ({"origin": "http://[::1"}, 403),
        ({"origin": "://bench.local"}, 403),
        ({"origin": "http://bench.local/"}, 403),
        ({"content-type": FORM}, 415),
        ({"content-type": "text/plain"}, 415),
        ({"content-type": "multipart/form-data; boundary=x"}, 415),
        ({"content-type": "application/jsonp"}, 415),
        ({"content-type": ""}, 415),
        ({"content-length": "16385"}, 413),
    ],
)
async def test_other_sites_and_forms_change_nothing(
    station: Station, path: str, body: dict[str, Any], headers: dict[str, str], status: int
) -> None:
    before = station.bench.seq
    request = station.client.build_request("POST", path, json=body)
    request.headers.update(headers)
    answer = await station.client.send(request)
    assert answer.status_code == status
    assert answer.headers["content-type"] == "application/problem+json"
    assert "set-cookie" not in answer.headers
    assert "access-control-allow-origin" not in answer.headers
    assert station.bench.seq == before


@pytest.mark.parametrize("path", ["/api/session", "/api/sessions"])
async def test_another_site_signs_nobody_out(station: Station, path: str) -> None:
    answer = await station.client.delete(path, headers={"origin": "http://evil.example"})
    assert answer.status_code == 403
    assert (await station.client.get("/api/session")).json()["role"] == "technician"


@pytest.mark.fault("other-sites")
@pytest.mark.parametrize("path", [path for path, _ in POSTED])
async def test_another_site_is_not_told_that_it_may_ask(station: Station, path: str) -> None:
    """The Fetch standard's preflight: what is not allowed by name is not sent."""
    headers = {"origin": "http://evil.example", "access-control-request-method": "POST"}
    answer = await station.client.options(path, headers=headers)
    assert not any(name.startswith("access-control-") for name in answer.headers)


async def test_nothing_needs_a_header_that_plain_http_leaves_out(station: Station) -> None:
    """To origins that are not trustworthy browsers send no `Sec-Fetch-Site` (W3C Fetch Metadata Request Headers)."""
    answer = await station.client.post("/api/acts", json={"act": "begin", "key": "k"})
    assert answer.status_code == 200


@pytest.mark.fault("floods")
async def test_a_flood_of_acts_is_slowed_and_told_when_to_come_again(tmp_path: Path) -> None:
    clock = Hand()
    async with in_process(tmp_path, access=here(monotonic=clock)) as station:
        answers = [await station.act("resume") for _ in range(ACTS_AT_ONCE + 20)]
        refused = [each for each in answers if each.status_code == 429]
        assert len(refused) == 20
        assert {each.headers["retry-after"] for each in refused} == {"1"}
        assert {each.json()["code"] for each in refused} == {"too_many_acts"}
        assert (await station.client.get("/api/state")).status_code == 200
        clock.now_s += 1.0
        assert (await station.act("begin")).status_code == 200


@pytest.mark.fault("other-sites")
async def test_who_is_refused_all_the_time_is_slowed_too(tmp_path: Path) -> None:
    """Else a page elsewhere, or a script, has the station answer as often as it likes."""
    async with in_process(tmp_path, access=here(monotonic=Hand())) as station:
        for method, headers, most in (
            ("POST", {"origin": "http://["}, ACTS_AT_ONCE),
            ("GET", {"host": "evil.example"}, LOOKS_AT_ONCE),
        ):
            answers = [await station.client.request(method, "/api/state", headers=headers) for _ in range(most + 20)]
            assert [each.status_code for each in answers].count(429) == 20


@pytest.mark.fault("greedy-address")
async def test_staff_are_let_through_whoever_floods_from_their_address(tmp_path: Path) -> None:
    async with in_process(tmp_path, access=here(SECRETS, monotonic=Hand())) as station:
        await station.client.post("/api/session", json=GIVEN["teacher"])
        signed_in = dict(station.client.cookies)
        station.client.cookies.clear()
        for _ in range(ACTS_AT_ONCE + 1):
            act = await station.act("resume")
        for _ in range(LOOKS_AT_ONCE + 1):
            look = await station.client.get("/api/nothing")
        assert (act.status_code, look.status_code) == (429, 429)
        station.client.cookies.update(signed_in)
        assert (await station.client.get("/api/state")).status_code == 200
        assert (await station.client.post("/api/staff", json={"act": "quiet", "silent": True})).status_code == 200


@pytest_asyncio.fixture
async def looked_at(tmp_path: Path) -> AsyncIterator[Station]:
    """A bench on which nobody has signed in."""
    async with in_process(tmp_path, access=here(SECRETS)) as opened:
        yield opened


ANY_BYTES = settings(max_examples=80, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])


@ANY_BYTES
@given(raw=st.binary(max_size=200), named=st.booleans())
async def test_any_bytes_as_cookie_are_a_looker(looked_at: Station, raw: bytes, named: bool) -> None:
    value = looked_at.access.sessions.cookie_name.encode() + b"=" + raw if named else raw
    answer = await looked_at.client.get("/api/session", headers=[(b"cookie", value)])
    assert answer.json() == {**LOOKER, "messages": {}}


@ANY_BYTES
@given(raw=st.binary(max_size=80))
async def test_any_bytes_as_host_are_turned_away(looked_at: Station, raw: bytes) -> None:
    answer = await looked_at.client.get("/api/state", headers=[(b"host", raw)])
    assert answer.status_code == 421


@pytest.mark.fault("bodies")
@ANY_BYTES
@given(raw=st.binary(max_size=80), path=st.sampled_from([path for path, _ in POSTED]))
async def test_any_bytes_as_body_are_a_problem(looked_at: Station, raw: bytes, path: str) -> None:
    looked_at.access.rate = Rate()
    answer = await looked_at.client.post(path, content=raw, headers={"content-type": "application/json"})
    assert answer.status_code in {400, 403, 422}
    assert answer.headers["content-type"] == "application/problem+json"


@pytest.mark.fault("dripping-requests")
async def test_a_request_that_never_ends_holds_up_nobody(tmp_path: Path) -> None:
    async with served(tmp_path, access=here(SECRETS)) as station:
        slow = []
        for _ in range(20):
            client = socket.create_connection(("127.0.0.1", station.port))
            client.sendall(b"POST /api/session HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/json\r\n")
            client.sendall(b"Content-Length: 40\r\n\r\n{")
            slow.append(client)
        answer = await station.client.post("/api/session", json=GIVEN["bench"])
        assert answer.status_code == 204
        for client in slow:
            client.close()


async def test_nobody_names_the_address_that_the_waits_go_by(tmp_path: Path) -> None:
    async with served(tmp_path, access=here(SECRETS, monotonic=Hand())) as station:
        statuses = []
        for number in range(5):
            claimed = {"x-forwarded-for": f"192.0.2.{number}", "forwarded": f"for=192.0.2.{number}"}
            answer = await station.client.post("/api/session", json={"code": "WRONG-1"}, headers=claimed)
            statuses.append(answer.status_code)
        assert statuses == [403, 429, 429, 429, 429]


@pytest.mark.parametrize(
    ("one", "other", "same"),
    [
        ("192.0.2.7", "192.0.2.8", False),
        ("192.0.2.7", "::ffff:192.0.2.7", True),
        ("2001:db8::1", "2001:db8::ffff:1", True),
        ("2001:db8::1", "2001:db8:0:1::1", False),
        ("fe80::1%eth0", "fe80::2%eth0", False),
        ("::1", "2001:db8::1", False),
        ("", "192.0.2.7", False),
    ],
)
def test_what_counts_as_one_address(one: str, other: str, same: bool) -> None:
    assert (network_of(one) == network_of(other)) == same
