"""What travels is what was sent, and what is no message is told by name: no payload does more than be refused."""

import json
import random
import zlib

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from station.practical import events as e
from station.room import wire
from station.room.store.store import row_of

JOURNAL, KIT = "0123456789abcdef", "fedcba9876543210"


def row(seq: int, temperature_c: float = 21.5) -> wire.Row:
    return row_of(e.Stamped(seq, "boot", 1.0 * seq, 2.0 * seq, "2026-01-01", "none", e.SampleTaken(temperature_c)))


@given(st.lists(st.tuples(st.integers(1, 2**53), st.floats(-50, 150)), max_size=40, unique_by=lambda each: each[0]))
@settings(max_examples=50)
def test_a_batch_comes_out_as_it_went_in(happened: list[tuple[int, float]]) -> None:
    rows = sorted(row(seq, celsius) for seq, celsius in happened)
    batch = wire.unpacked(wire.Batch, wire.packed_batch(JOURNAL, KIT, rows))
    assert batch.rows == rows
    assert (batch.journal, batch.kit) == (JOURNAL, KIT)


def test_many_samples_travel_packed() -> None:
    rows = [row(seq, 20.0 + seq / 16) for seq in range(1, 301)]
    sent = wire.packed_batch(JOURNAL, KIT, rows)
    assert len(sent) < 20 * len(rows)
    assert wire.unpacked(wire.Batch, sent).rows == rows


def test_an_event_of_a_newer_station_is_kept_as_it_came() -> None:
    event = [1, "b", 0.0, 0.0, "", "none", "sample_taken", {"temperature_c": 20.0, "colour": [1, {"deep": None}]}]
    unknown = [2, "b", 0.0, 0.0, "", "none", "tea_served", {"cups": 3}]
    sent = wire.packed({"journal": JOURNAL, "kit": KIT, "events": [event, unknown]})
    first, second = wire.unpacked(wire.Batch, sent).rows
    assert json.loads(first[7]) == event[7]
    assert wire.stamped(first).event == e.SampleTaken(20.0)
    assert wire.stamped(second).event == e.Unknown("tea_served", {"cups": 3})


def one(**changes: object) -> bytes:
    parts = {"seq": 1, "boot": "b", "monotonic_s": 0, "time_s": 0, "wall": "", "clock": "none", "kind": "probe_found"}
    values = [*{**parts, **changes}.values()]
    if "body" not in changes:
        values.append({})
    return json.dumps({"journal": JOURNAL, "kit": KIT, "events": [values]}).encode()


RUBBISH = {
    "nothing": b"",
    "text": b"hello",
    "html": b"<img src=x onerror=alert(1)>",
    "a list": b"[]",
    "deep": b'{"a":' * 5000,
    "cut": wire.packed_batch(JOURNAL, KIT, [row(seq) for seq in range(1, 100)])[:-9],
    "too long": b"{" + b" " * wire.LARGEST_BYTES,
    "unpacks to too much": zlib.compress(b'{"journal":"' + b"0" * 50_000_000 + b'"}'),
    "too many": json.dumps({"journal": JOURNAL, "kit": KIT, "events": [[1]] * 501}).encode(),
    "no journal": json.dumps({"journal": "../../x", "kit": KIT, "events": []}).encode(),
    "nan": b'{"journal":"0123456789abcdef","kit":"0123456789abcdef","events":[[1,"b",NaN,0,"","","probe_found",{}]]}',
    "infinite": one(time_s=1).replace(b"0, 1,", b"0, 1e999,"),
    "infinite inside": one(kind="new", body={"a": 1}).replace(b'"a": 1', b'"a": 1e999'),
    "a digit too many": one(seq=1).replace(b"[[1,", b"[[" + b"9" * 5000 + b","),
    "number 0": one(seq=0),
    "number true": one(seq=True),
    "number beyond": one(seq=2**60),
    "a time of text": one(time_s="soon"),
    "control characters": one(boot="a\nb"),
    "hostile kind": one(kind="<script>"),
    "no body": one(body=[]),
    "a deep body": one(kind="new", body=json.loads('{"a":' * 25 + "1" + "}" * 25)),
    "a deep list": one(kind="new", body={"a": json.loads("[" * 400 + "]" * 400)}),
    "half a letter": one(kind="new", body={"a": "\ud800"}),
    "a time beyond": one(time_s=1).replace(b"0, 1,", b"0, 1" + b"0" * 400 + b","),
    "seven parts": one(body={}).replace(b", {}]", b"]"),
}


@pytest.mark.parametrize("payload", RUBBISH.values(), ids=RUBBISH.keys())
def test_rubbish_is_refused_by_name_and_not_repeated(payload: bytes) -> None:
    with pytest.raises(wire.WireError) as caught:
        _ = wire.unpacked(wire.Batch, payload).rows
    assert len(str(caught.value)) < 200
    assert "<" not in str(caught.value)


@pytest.mark.parametrize(
    ("kind", "body"),
    [
        ("sample_taken", {"temperature_c": "hot"}),
        ("sample_taken", {"temperature_c": True}),
        ("portion_added", {"repeat": 1}),
        ("portion_added", {"repeat": 1, "portion": 1.5, "volume_cm3": 4.0, "early": False}),
        ("order_taken", {"room": 1, "order": "1", "act": None}),
        ("plan_chosen", {"plan": "acid"}),
    ],
)
def test_a_body_that_is_not_as_it_should_be_is_kept_and_not_believed(kind: str, body: dict[str, object]) -> None:
    (row,) = wire.unpacked(wire.Batch, one(kind=kind, body=body)).rows
    assert wire.stamped(row).event == e.Unknown(kind, body)


@given(st.binary(max_size=300) | st.text(max_size=100).map(lambda text: ("{" + text).encode()))
@settings(max_examples=150)
def test_no_bytes_do_more_than_be_refused(payload: bytes) -> None:
    for kind in (wire.Batch, wire.Here, wire.Live, wire.KeptMessage, wire.Orders):
        with pytest.raises(wire.WireError):
            wire.unpacked(kind, payload)


def test_garbled_batches_are_refused_or_are_batches() -> None:
    sent = wire.packed_batch(JOURNAL, KIT, [row(seq) for seq in range(1, 60)])
    draw = random.Random(5)
    for _ in range(300):
        garbled = bytearray(sent)
        garbled[draw.randrange(len(sent))] ^= 1 << draw.randrange(8)
        try:
            assert len(wire.unpacked(wire.Batch, bytes(garbled)).rows) == 59
        except wire.WireError:
            continue


def test_who_is_here_gives_only_addresses_of_pages() -> None:
    here = {"journal": JOURNAL, "kit": KIT, "name": "<b>Bench</b>"}
    assert wire.unpacked(wire.Here, wire.packed({**here, "addresses": ["http://10.0.0.7:8080/", "http://[fe80::1]/"]}))
    for address in ("javascript:alert(1)", "http://a/", "https://10.0.0.7/", 'http://10.0.0.7"/', "http://10.0.0.7/x"):
        with pytest.raises(wire.WireError, match="addresses"):
            wire.unpacked(wire.Here, wire.packed({**here, "addresses": [address]}))
    with pytest.raises(wire.WireError, match="name"):
        wire.unpacked(wire.Here, wire.packed({**here, "name": "a\u202eb"}))


def test_a_message_that_would_be_too_long_is_not_made() -> None:
    with pytest.raises(wire.WireError, match="too many"):
        wire.packed({"noise": "".join(random.Random(1).choices("0123456789abcdef", k=300_000))})


def test_topics_have_user_and_what() -> None:
    assert wire.topic("bench-7", wire.EVENTS_TOPIC) == "benchwarm/1/bench-7/events"
    assert wire.parts("benchwarm/1/bench-7/live") == ("bench-7", "live")


@pytest.mark.fault("rubbish-from-a-bench")
@pytest.mark.parametrize("user", ["", "+", "#", "a/b", "bench 7", "<b>", "bänk", "a" * 41, "a\nb"])
def test_no_topic_of_a_hostile_user(user: str) -> None:
    with pytest.raises(ValueError, match="cannot be a bench's user"):
        wire.topic(user, wire.EVENTS_TOPIC)
    assert wire.parts(f"benchwarm/1/{user}/events") is None


@pytest.mark.parametrize(
    "name", ["", "benchwarm/1/a", "benchwarm/2/a/events", "x/benchwarm/1/a/events", "benchwarm/1/a/b"]
)
def test_other_topics_are_none_of_ours(name: str) -> None:
    assert wire.parts(name) is None


def test_what_a_bench_says_of_itself_is_cut_to_what_is_understood() -> None:
    here = wire.Here.said(
        journal=JOURNAL,
        kit=KIT,
        name="A\nbench\u202e with far too long a name for a tile",
        version="0.1.0.dev1+g0123456789abcdef",
        board="0" * 40,
        addresses=["http://localhost:8080/", "http://bench.example/", "http://10.0.0.7:8080/"],
    )
    assert here.addresses == ("http://10.0.0.7:8080/",)
    assert wire.unpacked(wire.Here, wire.packed(here)) == here
