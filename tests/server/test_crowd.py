"""A crowd at the door: who sends slowly, opens very many connections or asks without end keeps nobody else out."""

import asyncio
import io
import logging
import time
from collections.abc import AsyncIterator, Callable
from contextlib import suppress
from pathlib import Path

import pytest
import pytest_asyncio
from starlette.types import Receive, Scope, Send

from station.server import serve as connections
from station.server.door.limits import LOOKS_AT_ONCE, WEIGHTS
from station.server.serve import FAULTS_AT_ONCE, FAULTS_PER_S, MOST, MOST_OF_ONE, Connection, FewFaults
from station.server.streaming import MOST_LISTENERS, Hub, Listener
from tests.conftest import PATIENCE_S
from tests.server.doors import Hand
from tests.server.live import Station, Stream, at_a_port, here, in_process, served

ELSEWHERE = "127.0.0.2"
POST = b"POST /api/acts HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/json\r\nContent-Length: 99\r\n\r\n"

SLOW: dict[str, list[bytes]] = {
    "nothing at all": [],
    "a head without end": [b"GET /api/state HTTP/1.1\r\n", *[b"X: y\r\n"] * 100],
    "a head byte by byte": [b"%c" % byte for byte in b"GET /api/state HTTP/1.1\r\nHost: localhost\r\nX: yyyyyyyyyyyy"],
    "a body byte by byte": [POST, *[b"{"] * 98],
    "a body that was refused": [POST.replace(b"application/json", b"text/plain"), *[b"{"] * 98],
    "a second request without end": [b"GET /api/state HTTP/1.1\r\nHost: localhost\r\n\r\n", *[b"GET "] * 100],
}


@pytest_asyncio.fixture(scope="module", loop_scope="module")
async def station(tmp_path_factory: pytest.TempPathFactory) -> AsyncIterator[Station]:
    async with served(tmp_path_factory.mktemp("crowd")) as opened:
        yield opened


async def _closed_after_s(station: Station, pieces: list[bytes]) -> float:
    """Send a piece every 20 ms; return how long the station put up with it."""
    clock = asyncio.get_running_loop().time
    reader, writer = await asyncio.open_connection("127.0.0.1", station.port)
    begun_s = clock()
    ended = asyncio.create_task(_ended(reader))
    for piece in [*pieces, *[b""] * 1000]:
        if ended.done():
            break
        with suppress(ConnectionError):
            writer.write(piece)
            await writer.drain()
        await asyncio.wait({ended}, timeout=0.02)
    assert ended.done()
    writer.close()
    return clock() - begun_s


async def _ended(reader: asyncio.StreamReader) -> None:
    with suppress(ConnectionError):
        while await reader.read(65_536):
            pass


@pytest.mark.fault("dripping-requests")
@pytest.mark.asyncio(loop_scope="module")
async def test_a_request_has_its_time_to_arrive_and_a_stream_all_the_time_it_wants(
    station: Station, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(connections, "REQUEST_WITHIN_S", 0.4)
    stream = await Stream.opened(station.port)
    took_s = await asyncio.gather(*(_closed_after_s(station, pieces) for pieces in SLOW.values()))
    assert {name: took > 0.3 for name, took in zip(SLOW, took_s, strict=True)} == dict.fromkeys(SLOW, True)
    newest = await station.sample(21.0)
    await stream.until("happened", newest)
    assert (await station.client.get("/api/state")).status_code == 200
    await stream.close()


@pytest.mark.asyncio(loop_scope="module")
async def test_idle_connections_make_room_for_who_comes_and_streams_stay(
    station: Station, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(connections, "MOST_OF_ONE", 6)
    stream = await Stream.opened(station.port)
    idle = [await asyncio.open_connection("127.0.0.1", station.port) for _ in range(30)]
    ends = [asyncio.create_task(_ended(reader)) for reader, _ in idle]
    assert (await station.client.get("/api/state")).status_code == 200
    await asyncio.wait(ends[:24], timeout=PATIENCE_S)
    assert all(end.done() for end in ends[:24]), "the oldest went first"
    assert established(station.port) <= 6
    newest = await station.sample(21.0)
    await stream.until("happened", newest)
    await stream.close()
    for _, writer in idle:
        writer.close()
    await asyncio.wait(ends)


@pytest.mark.asyncio(loop_scope="module")
async def test_where_all_are_answered_the_newest_is_turned_away(
    station: Station, monkeypatch: pytest.MonkeyPatch
) -> None:
    await station.client.aclose()
    await _until(lambda: established(station.port) == 0)
    monkeypatch.setattr(connections, "MOST_OF_ONE", 3)
    streams = [await Stream.opened(station.port) for _ in range(3)]
    reader, writer = await asyncio.open_connection("127.0.0.1", station.port)
    await asyncio.wait_for(_ended(reader), PATIENCE_S)
    writer.close()
    newest = await station.sample(21.0)
    for stream in streams:
        await stream.until("happened", newest)
        await stream.close()


@pytest.mark.fault("many-connections")
@pytest.mark.asyncio(loop_scope="module")
async def test_another_address_gets_in_however_many_one_has_opened(
    station: Station, monkeypatch: pytest.MonkeyPatch
) -> None:
    await _until(lambda: established(station.port) == 0)
    monkeypatch.setattr(connections, "MOST", 8)
    crowd = [await asyncio.open_connection("127.0.0.1", station.port, local_addr=(ELSEWHERE, 0)) for _ in range(20)]
    streams = [await Stream.opened(station.port) for _ in range(4)]
    newest = await station.sample(21.0)
    for stream in streams:
        await stream.until("happened", newest)
        await stream.close()
    for _, writer in crowd:
        writer.close()


@pytest.mark.fault("greedy-address")
@pytest.mark.asyncio(loop_scope="module")
async def test_one_address_cannot_fill_the_room_with_streams_either(
    station: Station, monkeypatch: pytest.MonkeyPatch
) -> None:
    await _until(lambda: established(station.port) == 0)
    monkeypatch.setattr(connections, "MOST", 4)
    streams = [await Stream.opened(station.port) for _ in range(4)]
    reader, writer = await asyncio.open_connection("127.0.0.1", station.port, local_addr=(ELSEWHERE, 0))
    writer.write(b"GET /api/state HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n")
    assert (await asyncio.wait_for(reader.read(), 5)).startswith(b"HTTP/1.1 200")
    writer.close()
    newest = await station.sample(21.0)
    for stream in streams[:3]:
        await stream.until("happened", newest)
    for stream in streams:
        await stream.close()


@pytest.mark.fault("nonsense")
@pytest.mark.asyncio(loop_scope="module")
async def test_a_request_that_breaks_off_into_nonsense_writes_nothing_into_the_log(
    station: Station, caplog: pytest.LogCaptureFixture
) -> None:
    """Forty lines for each such request would fill the card of whoever keeps a log."""
    log = logging.getLogger("uvicorn.error")
    log.addHandler(caplog.handler)
    head = POST.replace(b"Content-Length: 99", b"Transfer-Encoding: chunked")
    for nonsense in (head + b"zz\r\n", head.replace(b"acts", b"nothing") + b"zz\r\n", POST + b"{}" * 99, b"\0\r\n\r\n"):
        reader, writer = await asyncio.open_connection("127.0.0.1", station.port)
        writer.write(nonsense)
        await writer.drain()
        writer.write_eof()
        await asyncio.wait_for(_ended(reader), PATIENCE_S)
        writer.close()
    log.removeHandler(caplog.handler)
    assert caplog.text == ""
    stream = await Stream.opened(station.port)
    await stream.until("view")
    await stream.close()


async def _until(condition: Callable[[], bool], limit_s: float = PATIENCE_S) -> None:
    async with asyncio.timeout(limit_s):
        while not condition():  # noqa: ASYNC110 - the kernel tells nobody
            await asyncio.sleep(0.01)


def established(port: int) -> int:
    """How many accepted connections this port has (proc_net_tcp: local address, then the peer's, then 01)."""
    rows = [line.split() for line in Path("/proc/net/tcp").read_text().splitlines()[1:]]
    return sum(row[1].endswith(f":{port:04X}") and row[3] == "01" for row in rows)


def test_forty_pages_behind_one_address_have_room() -> None:
    """A browser opens at most six connections to one origin over HTTP/1.1, one of them for the stream."""
    assert MOST_OF_ONE >= 40 * 6
    assert MOST_LISTENERS >= 2 * 40
    assert MOST < 1024 - 100, "files that a process may have open (getrlimit(2), the usual soft limit), less our own"
    assert LOOKS_AT_ONCE >= 40 * 10
    assert issubclass(Connection, asyncio.Protocol)


@pytest.mark.fault("floods")
async def test_a_flood_of_looks_is_slowed_and_acts_still_pass(tmp_path: Path) -> None:
    clock = Hand()
    async with in_process(tmp_path, access=here(monotonic=clock)) as station:
        answers = [await station.client.get("/api/nothing") for _ in range(LOOKS_AT_ONCE + 20)]
        refused = [each for each in answers if each.status_code == 429]
        assert len(refused) == 20
        assert {(each.json()["code"], each.headers["retry-after"]) for each in refused} == {("too_many_looks", "1")}
        assert (await station.act("begin")).status_code == 200
        clock.now_s += 1.0
        assert (await station.client.get("/api/state")).status_code == 200


async def test_what_costs_the_station_more_counts_more(tmp_path: Path) -> None:
    clock = Hand()
    async with in_process(tmp_path, access=here(monotonic=clock)) as station:
        assert (await station.client.get("/api/state")).status_code == 200
        told = set((await station.client.get("/api/openapi.json")).json()["paths"])
        weighed = {path for path in WEIGHTS if not path.startswith("/api/room")}
        assert weighed <= told, "a path that is weighed is there"
        statuses = [(await station.client.get("/api/readings.csv")).status_code for _ in range(LOOKS_AT_ONCE // 10 + 5)]
    assert statuses.count(200) == LOOKS_AT_ONCE // WEIGHTS["/api/readings.csv"]


@pytest.mark.fault("many-connections")
def test_who_holds_the_most_streams_gives_way() -> None:
    hub = Hub()
    crowd = [hub.join("192.0.2.1") for _ in range(MOST_LISTENERS)]
    assert hub.join("192.0.2.1") is None
    newcomer = hub.join("192.0.2.2")
    assert isinstance(newcomer, Listener)
    assert hub.count == MOST_LISTENERS
    assert crowd[0] is not None and crowd[0].queue.get_nowait() is None, "the oldest has ended"
    hub.send(b"news", 1)
    assert newcomer.queue.get_nowait() == (1, b"news")


def test_two_crowds_share_and_neither_pushes_the_other_out() -> None:
    hub = Hub()
    for _ in range(MOST_LISTENERS):
        hub.join("192.0.2.1")
    pushed = sum(hub.join("192.0.2.2") is not None for _ in range(MOST_LISTENERS))
    assert pushed == MOST_LISTENERS // 2
    assert hub.join("192.0.2.1") is None


async def _fails(scope: Scope, receive: Receive, send: Send) -> None:
    raise RuntimeError("a fault of the station that somebody can provoke")


@pytest.mark.fault("full-log")
async def test_a_fault_that_somebody_provokes_without_end_does_not_fill_the_log() -> None:
    log, lines = logging.getLogger("uvicorn.error"), io.StringIO()
    handler = logging.StreamHandler(lines)
    begun_s = time.monotonic()
    async with at_a_port(_fails) as port:
        log.addHandler(handler)
        for _ in range(100):
            reader, writer = await asyncio.open_connection("127.0.0.1", port)
            writer.write(b"GET / HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n")
            assert b" 500 " in await asyncio.wait_for(reader.read(), 5)
            writer.close()
        log.removeHandler(handler)
    most = FAULTS_AT_ONCE + FAULTS_PER_S * (time.monotonic() - begun_s) + 1
    assert 1 <= lines.getvalue().count("Traceback") <= most


def test_what_was_left_out_of_the_log_is_told() -> None:
    clock = Hand()
    few = FewFaults(clock)

    def told() -> str | None:
        record = logging.LogRecord("uvicorn.error", logging.ERROR, "", 0, "fault %s", ("x",), None)
        return record.getMessage() if few.filter(record) else None

    assert [told() for _ in range(FAULTS_AT_ONCE + 9)] == ["fault x"] * FAULTS_AT_ONCE + [None] * 9
    clock.now_s += 1.0 / FAULTS_PER_S
    assert told() == "(9 faults left out) fault x"
    clock.now_s += 1.0 / FAULTS_PER_S
    assert told() == "fault x"
