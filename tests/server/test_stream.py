"""The live stream loses nothing and doubles nothing, wherever it is cut, and nobody waits for a slow reader."""

import asyncio
import logging
import random
import shutil
import socket
from collections.abc import AsyncIterator, Callable
from pathlib import Path

import pytest
import pytest_asyncio
from starlette.types import ASGIApp
from starlette.types import Message as Message_

from station.record.journal import read_events
from station.server import serve as serving
from station.server.bench import stream as streaming
from station.server.bench.app import make_app
from station.server.streaming import MOST_LISTENERS
from tests.conftest import PATIENCE_S
from tests.room.lesson_in_jumps import events_of, until
from tests.server.live import Message, Station, Stream, here, in_process, served
from tests.server.room_live import room_in_process


@pytest_asyncio.fixture
async def station(tmp_path: Path) -> AsyncIterator[Station]:
    async with served(tmp_path) as opened:
        yield opened


async def samples(station: Station, count: int) -> None:
    for number in range(count):
        await station.sample(20.0 + number % 16 / 16)


@pytest.mark.fault("proxy")
async def test_the_reply_begins_at_once_and_asks_proxies_not_to_hold_it(station: Station) -> None:
    stream = await Stream.opened(station.port, after=0)
    head = stream.head.lower()
    assert head.startswith("http/1.1 200")
    assert "content-type: text/event-stream" in head
    assert "cache-control: no-cache, no-transform" in head
    assert "x-accel-buffering: no" in head
    padding = await stream.until(":")
    assert stream.retry_ms == 1500
    assert len(padding.data) > 2000
    await stream.close()


async def test_it_is_never_compressed_even_for_who_takes_it(station: Station) -> None:
    """A compressor would hold small messages back."""
    async with station.client.stream("GET", "/api/stream", headers={"accept-encoding": "gzip, br"}) as reply:
        assert "content-encoding" not in reply.headers
        assert (await anext(reply.aiter_raw())).startswith(b"retry: 1500")


async def test_ids_are_the_journals_numbers_and_every_event_comes_in_order(station: Station) -> None:
    await samples(station, 3)
    stream = await Stream.opened(station.port, after=0)
    await station.done("begin")
    await samples(station, 3)
    answer = await station.done("portion_added", portion=1)
    message = await stream.until("happened", answer["seq"])
    assert message.data["kind"] == "portion_added"
    assert stream.happened() == list(range(1, answer["seq"] + 1))
    told = [each.data for each in stream.seen if each.event == "happened"]
    assert told == [
        {"seq": each.seq, "time_s": each.time_s, "kind": each.event.kind, "body": each.event.to_body()}
        for each in read_events(station.bench.journal.path.parent)
    ]
    await stream.close()


async def test_a_view_follows_a_change_and_a_live_value_each_sample(station: Station) -> None:
    stream = await Stream.opened(station.port, after=0)
    await stream.until("view")
    seq = await station.sample(21.0)
    await stream.until("happened", seq)
    live = await stream.until("live")
    assert live.data["live"]["temperature_c"] == 21.0
    assert set(live.data) == {"time_s", "settle", "live", "last_good", "probe", "clock", "messages"}
    await station.done("begin")
    view = await stream.until("view")
    state = await station.state()
    assert set(view.data) == set(state) - {"trace"}
    assert (view.data["seq"], view.data["state"]) == (state["seq"], "start")
    await stream.close()


@pytest.mark.fault("stream-cut")
async def test_wherever_it_is_cut_it_goes_on_without_loss_or_doubling(station: Station) -> None:
    """Thirty cuts at random places, while samples and acts go on."""
    chance = random.Random(4)
    await station.done("begin")
    writing = asyncio.create_task(_write(station, 240))
    heard: list[Message] = []
    last: int | None = None
    for _ in range(30):
        stream = await Stream.opened(station.port, 0, None if last is None else str(last))
        for _ in range(chance.randrange(1, 25)):
            await asyncio.sleep(0)
            await stream.next()
        heard += [each for each in stream.seen if each.event == "happened"]
        last = heard[-1].seq if heard else None
        await stream.close()
    await writing
    newest = station.bench.seq
    stream = await Stream.opened(station.port, 0, str(last))
    if last != newest:
        await stream.until("happened", newest)
    heard += [each for each in stream.seen if each.event == "happened"]
    await stream.close()
    assert [each.seq for each in heard] == list(range(1, newest + 1))
    assert station.bench.journal.last_seq == newest


async def _write(station: Station, count: int) -> None:
    for number in range(count):
        await station.sample(21.0 + number % 3 / 16)
        if number % 40 == 39:
            await station.done("pause" if number % 80 == 39 else "resume")
        await asyncio.sleep(0.001)


@pytest.mark.fault("stream-cut")
async def test_a_restart_of_the_station_goes_on_with_the_numbers(tmp_path: Path) -> None:
    async with served(tmp_path) as station:
        stream = await Stream.opened(station.port, after=0)
        await station.done("begin")
        last = await station.sample(21.0)
        await stream.until("happened", last)
        heard = stream.happened()
    await stream.rest()  # the station ends its streams when it stops
    async with served(tmp_path) as station:
        stream = await Stream.opened(station.port, after=0, last_event_id=str(heard[-1]))
        newest = await station.sample(21.125)
        await stream.until("happened", newest)
        assert heard + stream.happened() == list(range(1, newest + 1))
        assert next(each.data["kind"] for each in stream.seen if each.seq) == "station_started"
        assert (await station.state())["state"] == "start"
        await stream.close()


async def test_a_newer_last_event_id_counts_more_than_the_address(station: Station) -> None:
    """A browser that reconnects asks the old address with its newest id."""
    await samples(station, 5)
    stream = await Stream.opened(station.port, after=1, last_event_id="5")
    await stream.until("view")
    assert stream.happened() == [6, 7]
    await stream.close()


@pytest.mark.parametrize("last", ["1000", "99999999999999999999999", "abc", "-1", "3.5", "0x2", "٣", ""])
async def test_a_place_that_no_journal_has_means_load_anew(station: Station, last: str) -> None:
    stream = await Stream.opened(station.port, after=0, last_event_id=last)
    if last.isascii():
        message = await stream.until("reset")
        assert message.seq is None
    await stream.rest()
    assert stream.happened() == []
    assert station.watch.hub.count == 0


async def test_who_is_too_far_behind_is_told_to_load_anew(station: Station, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(streaming, "MOST_MISSED", 10)
    await samples(station, 20)
    stream = await Stream.opened(station.port, after=3)
    await stream.until("reset")
    await stream.rest()
    assert stream.happened() == []
    state = await station.state()
    stream = await Stream.opened(station.port, after=state["seq"])
    newest = await station.sample(21.0)
    await stream.until("happened", newest)
    assert stream.happened() == [newest]
    await stream.close()


async def test_a_silent_stream_still_beats(station: Station, monkeypatch: pytest.MonkeyPatch) -> None:
    assert streaming.HEARTBEAT_S <= 5
    monkeypatch.setattr(streaming, "HEARTBEAT_S", 0.02)
    stream = await Stream.opened(station.port, after=0)
    await stream.until("view")
    beats = [await stream.next() for _ in range(3)]
    assert [each and each.event for each in beats] == [":", ":", ":"]
    await stream.close()


async def test_who_goes_away_is_forgotten(station: Station, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(streaming, "HEARTBEAT_S", 0.02)
    streams = [await Stream.opened(station.port, after=0) for _ in range(5)]
    for stream in streams:
        await stream.until("view")
    assert station.watch.hub.count == 5
    for stream in streams[:3]:
        await stream.close()
    await _until(lambda: station.watch.hub.count == 2)
    for stream in streams[3:]:
        await stream.close()


async def _until(condition: Callable[[], bool], limit_s: float = PATIENCE_S) -> None:
    async with asyncio.timeout(limit_s):
        while not condition():  # noqa: ASYNC110 - the kernel and the hub tell nobody
            await asyncio.sleep(0.01)


async def test_one_page_too_many_is_a_problem_and_the_others_go_on(
    station: Station, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("station.server.streaming.MOST_LISTENERS", 2)
    assert MOST_LISTENERS >= 40
    streams = [await Stream.opened(station.port, after=0) for _ in range(2)]
    answer = await station.client.get("/api/stream")
    assert answer.status_code == 503
    assert answer.json()["code"] == "too_many_streams"
    newest = await station.sample(21.0)
    for stream in streams:
        await stream.until("happened", newest)
        await stream.close()


def reads_nothing(port: int) -> socket.socket:
    """Open a stream over a socket with a small buffer and never read from it."""
    client = socket.socket()
    client.setsockopt(socket.SOL_SOCKET, socket.SO_RCVBUF, 4096)
    client.connect(("127.0.0.1", port))
    client.sendall(b"GET /api/stream?after=0 HTTP/1.1\r\nHost: localhost\r\n\r\n")
    return client


def established(port: int) -> int:
    """How many accepted connections this port has (proc_net_tcp: local address, then the peer's, then 01)."""
    rows = [line.split() for line in Path("/proc/net/tcp").read_text().splitlines()[1:]]
    return sum(row[1].endswith(f":{port:04X}") and row[3] == "01" for row in rows)


@pytest.mark.fault("slow-phone")
async def test_nobody_waits_for_a_reader_that_sleeps_and_its_connection_is_let_go(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(serving, "SILENT_MS", 500)
    async with served(tmp_path) as station:
        asleep = reads_nothing(station.port)
        stream = await Stream.opened(station.port, after=0)
        await stream.until("view")
        await _until(lambda: station.watch.hub.count == 2)
        long = b"event: happened\ndata: " + b'"' + b"x" * 32_000 + b'"' + b"\n\n"
        for number in range(1000, 1300):
            station.watch.hub.send(b"id: %d\n" % number + long, number)
            await stream.until("happened", number)
        assert station.watch.hub.count == 1
        newest = await station.sample(21.0)
        assert newest < 1000
        await stream.until("live")
        await _until(lambda: established(station.port) == 1)
        asleep.close()
        await stream.close()


@pytest.mark.fault("record-moved")
async def test_a_record_that_is_gone_ends_no_stream_in_a_fault(
    tmp_path: Path, caplog: pytest.LogCaptureFixture
) -> None:
    log = logging.getLogger("uvicorn.error")
    async with served(tmp_path / "record") as station:
        first = await Stream.opened(station.port, after=0)
        await first.until("view")
        await first.close()
        newest = await station.sample(21.0)
        log.addHandler(caplog.handler)
        shutil.rmtree(tmp_path / "record")
        assert (await station.act("begin")).status_code == 503
        behind = await Stream.opened(station.port, after=0)
        await behind.until("reset")
        await behind.rest()
        stream = await Stream.opened(station.port, after=newest)
        view = (await stream.until("view")).data
        assert "moved or deleted" in view["fault"]
        station.probe.read(21.0625)
        station.probe.read(21.0625)  # after a gap the gate waits for a second one
        while (await stream.until("live")).data["live"]["temperature_c"] != 21.0625:
            pass
        await stream.close()
        log.removeHandler(caplog.handler)
    assert caplog.text == ""


async def gone_at_once(app: ASGIApp, path: str) -> None:
    """Ask for a stream and be gone before its first byte is made."""
    scope = {
        "type": "http", "asgi": {"version": "3.0", "spec_version": "2.3"}, "http_version": "1.1", "method": "GET",
        "scheme": "http", "path": path, "raw_path": path.encode(), "query_string": b"", "root_path": "",
        "headers": [(b"host", b"bench.local")], "client": ("192.0.2.1", 1), "server": ("192.0.2.2", 80), "state": {},
    }  # fmt: skip

    async def receive() -> Message_:
        return {"type": "http.disconnect"}

    async def send(_: Message_) -> None:
        return

    await app(scope, receive, send)


@pytest.mark.fault("closed-early")
async def test_who_is_gone_before_the_first_byte_leaves_no_slot_taken(tmp_path: Path) -> None:
    async with in_process(tmp_path / "bench", access=here()) as station:
        for _ in range(3):
            await gone_at_once(make_app(station.watch, "0", station.access), "/api/stream")
        assert station.watch.hub.count == 0
    async with room_in_process(tmp_path / "room", {"bench-1": until(events_of(1), 200.0)}) as room:
        for path in ("/api/room/stream", "/api/room/bench/bench-1/stream"):
            await gone_at_once(room.app, path)
        assert room.desk.hub.count == 0
        assert room.app.state.views._hubs == {}


async def test_a_view_holds_the_repeats_again_only_when_they_changed(station: Station) -> None:
    await station.done("begin")
    await station.sample(21.0)
    reader, writer = await asyncio.open_connection("127.0.0.1", station.port)
    short = Stream(reader, writer)
    writer.write(f"GET /api/stream?repeats=changed HTTP/1.1\r\nHost: 127.0.0.1:{station.port}\r\n\r\n".encode())
    await reader.readuntil(b"\r\n\r\n")
    whole = await Stream.opened(station.port)
    first = (await short.until("view")).data
    assert len(first["repeats"]) == 1
    await whole.until("view")
    await station.done("note", text="cold room")
    noted = (await short.until("view")).data
    assert {"repeats", "mean"} & set(noted) == set()
    assert (noted["repeats_id"], noted["notes"][0]["text"]) == (first["repeats_id"], "cold room")
    assert (await whole.until("view")).data["repeats"] == first["repeats"]
    await station.done("portion_added", portion=1)
    while "repeats" not in (poured := (await short.until("view")).data):
        pass
    assert len(poured["repeats"][0]["portions"]) == 1
    assert poured["repeats_id"] != first["repeats_id"]
    await short.close()
    await whole.close()


async def test_a_sample_has_the_same_time_in_the_stream_and_in_the_state(station: Station) -> None:
    await station.done("begin")
    stream = await Stream.opened(station.port)
    await stream.until("view")
    for _ in range(8):
        await stream.until("happened", await station.sample(21.0))
    await stream.close()
    told = [each.data for each in stream.seen if each.event == "happened"]
    heard = [each["time_s"] for each in told if each["kind"] == "sample_taken"]
    assert [time_s for time_s, _ in (await station.state())["trace"]["samples"]] == heard
