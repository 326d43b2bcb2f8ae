"""Everything once, in order, whole: whatever comes twice, late, or from a journal that began anew."""

import random
import shutil
import sqlite3
import threading
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from station.practical import events as e
from station.record.journal import JournalError
from station.room.store.database import FILE_NAME, StoreError
from station.room.store.store import Differs, Kept, RoomStore, Sent, row_of
from station.room.store.upkeep import backup_room, restore_room
from station.room.wire import digest_of

FIRST, SECOND = "aaaaaaaaaaaaaaaa", "bbbbbbbbbbbbbbbb"


def happened(count: int, start: int = 1) -> list[e.Stamped]:
    return [
        e.Stamped(seq, "boot", seq * 1.0, seq * 1.0, "2026-01-01", "none", e.SampleTaken(20 + seq / 16))
        for seq in range(start, start + count)
    ]


@pytest.fixture
def store(tmp_path: Path) -> RoomStore:
    return RoomStore(tmp_path)


def test_what_is_kept_is_told_and_read_back(store: RoomStore) -> None:
    assert store.keep("bench-1", FIRST, happened(5)) == 5
    assert list(store.events("bench-1")) == happened(5)
    assert list(store.events("bench-1", after=3)) == happened(2, 4)
    (bench,) = store.benches()
    assert (bench.bench, bench.journal, bench.last_seq, bench.name) == ("bench-1", FIRST, 5, None)


@pytest.mark.fault("batches")
@given(st.randoms(use_true_random=False), st.integers(1, 60))
@settings(max_examples=15, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
def test_reordered_and_repeated_batches_end_whole(store: RoomStore, draw: random.Random, count: int) -> None:
    bench = f"b{len(store.benches())}"
    everything = happened(count)
    pieces = [everything[at : at + draw.randint(1, 9)] for at in range(0, count, 3)] * 2
    draw.shuffle(pieces)
    fresh = []
    for piece in pieces:
        (kept,) = store.keep_many([Sent(bench, FIRST, [row_of(each) for each in piece])])
        assert isinstance(kept, Kept)
        fresh += [row[0] for row in kept.fresh]
    covered = {each.seq for piece in pieces for each in piece}
    whole = next(seq for seq in range(count + 1) if seq + 1 not in covered)
    assert fresh == list(range(1, whole + 1))
    assert list(store.events(bench)) == everything[:whole]


@pytest.mark.fault("batches")
def test_a_gap_is_waited_for(store: RoomStore) -> None:
    assert store.keep("b", FIRST, happened(2)) == 2
    assert store.keep("b", FIRST, happened(2, 5)) == 2
    assert [each.seq for each in store.events("b")] == [1, 2]
    assert store.keep("b", FIRST, happened(2, 3)) == 6
    assert [each.seq for each in store.events("b")] == [1, 2, 3, 4, 5, 6]


def test_another_event_under_a_number_that_is_kept_is_named_and_not_merged(store: RoomStore) -> None:
    store.keep("b", FIRST, happened(3))
    other = e.Stamped(2, "boot", 2.0, 2.0, "2026-01-01", "none", e.ProbeFound())
    with pytest.raises(Differs, match="b: event 2 of journal aaaa"):
        store.keep("b", FIRST, [*happened(1, 4), other])
    assert list(store.events("b")) == happened(3)


def test_one_that_differs_does_not_take_the_others_with_it(store: RoomStore) -> None:
    store.keep("a", FIRST, happened(1))
    other = row_of(e.Stamped(1, "boot", 2.0, 2.0, "", "none", e.ProbeFound()))
    differs, kept = store.keep_many([Sent("a", FIRST, [other]), Sent("b", FIRST, [other])])
    assert isinstance(differs, Differs)
    assert kept == Kept(1, digest_of(other), [other])


@pytest.mark.parametrize(
    "body",
    [
        f'{{"room":"r","order":{10**40},"act":"quiet"}}',
        '{"room":1}',
        "[" * 5000,
        '{"a":' * 3000 + "1" + "}" * 3000,
    ],
)
def test_nothing_that_one_bench_sends_keeps_another_from_being_kept(store: RoomStore, body: str) -> None:
    odd = (1, "b", 0.0, 0.0, "", "none", "order_taken", body)
    good = row_of(happened(1)[0])
    _, kept = store.keep_many([Sent("odd", FIRST, [odd]), Sent("good", FIRST, [good])])
    assert kept == Kept(1, digest_of(good), [good])
    assert list(store.events("good")) == happened(1)


def test_a_bench_begins_only_so_many_records(store: RoomStore, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("station.room.store.store.MOST_HISTORIES", 3)
    answers = store.keep_many([Sent("odd", f"{number:016x}") for number in range(4)])
    assert [type(each).__name__ for each in answers] == ["Kept", "Kept", "Kept", "Unusable"]
    assert store.keep("odd", f"{0:016x}", happened(1)) == 1


def test_a_journal_that_began_anew_is_another_history_and_loses_nothing(store: RoomStore) -> None:
    store.keep("b", FIRST, happened(9))
    store.keep("b", SECOND, happened(4))
    assert [(each.journal, each.last_seq) for each in store.histories("b")] == [(FIRST, 9), (SECOND, 4)]
    assert len(list(store.events("b"))) == 4
    assert len(list(store.events("b", journal=FIRST))) == 9


def test_the_journal_that_says_it_is_here_is_the_present_one(store: RoomStore) -> None:
    store.keep("b", FIRST, happened(9))
    store.keep("b", SECOND, happened(4))
    (kept,) = store.keep_many([Sent("b", FIRST, name="By the window")])
    assert isinstance(kept, Kept)
    assert (kept.seq, kept.digest) == (9, digest_of(row_of(happened(9)[-1])))
    (bench,) = store.benches()
    assert (bench.journal, bench.name) == (FIRST, "By the window")


def test_kinds_are_chosen_across_the_pieces(store: RoomStore) -> None:
    lost = e.Stamped(2501, "boot", 0.0, 0.0, "", "none", e.ProbeLost("no_answer"))
    store.keep("b", FIRST, [*happened(2500), lost])
    assert len(list(store.events("b"))) == 2501
    assert list(store.events("b", kinds=("probe_lost",))) == [lost]
    assert list(store.events("nobody")) == []


def test_what_is_kept_survives_and_the_room_keeps_its_id(tmp_path: Path) -> None:
    store = RoomStore(tmp_path)
    store.keep("b", FIRST, happened(3))
    room = store.room
    store.close()
    again = RoomStore(tmp_path)
    assert (again.room, list(again.events("b"))) == (room, happened(3))


def test_nothing_that_is_kept_can_be_altered(store: RoomStore) -> None:
    store.keep("b", FIRST, happened(1))
    with pytest.raises(sqlite3.IntegrityError, match="only added"):
        sqlite3.connect(store.path).execute("UPDATE events SET body = '{}'")


def test_many_threads_write_and_read(store: RoomStore) -> None:
    def work(bench: str) -> None:
        for start in range(1, 100, 9):
            store.keep(bench, FIRST, happened(9, start))

    threads = [threading.Thread(target=work, args=(f"b{number}",)) for number in range(4)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert [each.last_seq for each in store.benches()] == [99] * 4


def test_what_cannot_be_opened_is_told(tmp_path: Path) -> None:
    (tmp_path / "room.sqlite3").write_text("this is not a database, and much longer than a hundred bytes" * 9)
    with pytest.raises(StoreError, match=r"damaged .* the benches send what they have"):
        RoomStore(tmp_path)
    newer = tmp_path / "newer"
    newer.mkdir()
    sqlite3.connect(newer / "room.sqlite3").execute("PRAGMA user_version = 9")
    with pytest.raises(StoreError, match="newer room"):
        RoomStore(newer)


def taken(room: str, order: int, refused: str | None, seq: int = 1) -> e.Stamped:
    return e.Stamped(seq, "boot", 0.0, 0.0, "", "none", e.OrderTaken(room, order, "quiet", refused))


def taken_of_another_room(order: int) -> e.Stamped:
    return taken("ffffffffffffffff", order, "never mind", seq=2)


def test_two_rooms_do_not_share_a_folder(tmp_path: Path) -> None:
    first, second = RoomStore(tmp_path), RoomStore(tmp_path)
    first.hold()
    with pytest.raises(StoreError, match="another room is running here"):
        second.hold()
    first.close()
    second.hold()
    second.close()


def test_orders_have_numbers_that_go_up_and_are_done_once(store: RoomStore) -> None:
    first = store.give(["a", "b"], {"act": "quiet", "silent": True}, supersedes=("quiet",))
    second = store.give(["a"], {"act": "quiet", "silent": False}, supersedes=("quiet",))
    assert second > first
    assert [each.order for each in store.pending("a")] == [second]
    assert [each.act for each in store.pending("b")] == [{"act": "quiet", "silent": True}]
    store.keep("a", FIRST, [taken(store.room, second, None), taken_of_another_room(first)])
    store.keep("b", FIRST, [taken(store.room, first, "There is no buzzer.")])
    assert store.pending("a") == store.pending("b") == []
    assert [(each.bench, each.state, each.why) for each in store.orders()] == [
        ("a", "superseded", None),
        ("b", "refused", "There is no buzzer."),
        ("a", "taken", None),
    ]


def test_an_order_can_be_withdrawn_as_long_as_it_is_pending(store: RoomStore) -> None:
    store.give(["a"], {"act": "pause"})
    store.withdraw(["a"])
    assert store.pending("a") == []


def test_lessons_are_kept_apart(store: RoomStore) -> None:
    first = store.begin_lesson("10b")
    store.add_practical(first, "a", FIRST, 2)
    second = store.begin_lesson("10c")
    store.add_practical(second, "a", FIRST, 2)
    store.add_practical(second, "a", FIRST, 90)
    assert store.practicals(first) == [("a", FIRST, 2)]
    assert store.practicals(second) == [("a", FIRST, 90)]
    assert [(each.label, each.ended is None) for each in store.lessons()] == [("10c", True), ("10b", False)]


@pytest.mark.fault("log-deleted")
def test_what_the_room_keeps_outlives_a_kill_after_its_log_was_deleted(tmp_path: Path) -> None:
    """SQLite writes on into a deleted log: the benches were told that it is kept, and nobody gave the order twice."""
    folder, killed = tmp_path / "room", tmp_path / "killed"
    store = RoomStore(folder)
    for number in range(1, 20):
        if number % 5 == 0:
            (folder / f"{FILE_NAME}-wal").unlink()
        assert store.keep("b", FIRST, happened(1, number)) == number
        assert store.give(["b"], {"act": "note", "text": str(number)}) == number
        shutil.copytree(folder, killed)
        after = RoomStore(killed)
        assert list(after.events("b")) == happened(number)
        assert [each.order for each in after.pending("b")] == list(range(1, number + 1))
        after.close()
        shutil.rmtree(killed)
    (folder / FILE_NAME).unlink()
    with pytest.raises(StoreError, match="moved or deleted; restart the room"):
        store.keep("b", FIRST, happened(1, 20))
    store.close()


@pytest.mark.fault("no-backup")
def test_a_backup_of_a_room_at_work_comes_back_and_what_was_there_is_set_aside(
    store: RoomStore, tmp_path: Path
) -> None:
    store.hold()
    store.keep("bench-1", FIRST, happened(5))
    target = tmp_path / "stick" / "room.backup"
    target.parent.mkdir()
    assert backup_room(tmp_path, target) == 5
    assert [each.name for each in target.parent.iterdir()] == ["room.backup"], "one file that stands alone"
    assert target.stat().st_mode & 0o077 == 0
    store.keep("bench-1", FIRST, happened(2, 6))
    with pytest.raises(JournalError):
        restore_room(target, tmp_path)  # the room is at work
    store.close()
    count, aside = restore_room(target, tmp_path)
    assert count == 5
    assert aside is not None
    assert len(list(RoomStore(aside).events("bench-1"))) == 7
    assert list(RoomStore(tmp_path).events("bench-1")) == happened(5)


@pytest.mark.fault("no-backup")
@pytest.mark.parametrize("content", [b"", b"no database at all", b"SQLite format 3\0" * 300])
def test_what_is_no_backup_of_a_room_is_refused_and_changes_nothing(
    store: RoomStore, tmp_path: Path, content: bytes
) -> None:
    store.keep("bench-1", FIRST, happened(3))
    store.close()
    (tmp_path / "spoilt").write_bytes(content)
    with pytest.raises(JournalError):
        restore_room(tmp_path / "spoilt", tmp_path)
    assert len(list(RoomStore(tmp_path).events("bench-1"))) == 3
