"""The journal as outbox: where it was left, under which name, and when it begins anew."""

from pathlib import Path

import pytest

from station.bench.clock import Clock
from station.practical import events as e
from station.record.journal import Journal, JournalError, read_rows
from station.room.link.outbox import MOST_BODY_BYTES, Outbox
from station.room.wire import MOST_EVENTS, Batch, digest_of, unpacked

KIT = "fedcba9876543210"


def keep(folder: Path, *events: e.Event) -> None:
    journal = Journal(folder)
    moment = Clock.started().moment()
    journal.append([(moment, event) for event in events]).result()
    journal.close()


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    keep(tmp_path, *(e.SampleTaken(20.0 + number / 16) for number in range(10)))
    return tmp_path


def digest_at(folder: Path, seq: int) -> str:
    (row,) = read_rows(folder, seq - 1, 1)
    return digest_of(row)


def test_it_goes_on_where_it_was_left(folder: Path) -> None:
    outbox = Outbox.opened(folder)
    assert [row[0] for row in outbox.next_rows()] == list(range(1, 11))
    assert outbox.forget(7, digest_at(folder, 7))
    outbox.save()
    again = Outbox.opened(folder)
    assert (again.journal, again.acknowledged) == (outbox.journal, 7)
    assert [row[0] for row in again.next_rows()] == [8, 9, 10]


@pytest.mark.parametrize("spoilt", [None, b"", b"{", b"[]", b'{"seq": "x"}', b"\xff"])
def test_a_lost_or_spoilt_note_costs_nothing_but_the_question(folder: Path, spoilt: bytes | None) -> None:
    name = Outbox.opened(folder).journal
    if spoilt is not None:
        (folder / "link.json").write_bytes(spoilt)
    outbox = Outbox.opened(folder)
    assert (outbox.journal, outbox.acknowledged) == (name, 0)


def test_an_event_that_is_not_ours_is_not_forgotten(folder: Path) -> None:
    outbox = Outbox.opened(folder)
    assert not outbox.forget(7, digest_at(folder, 6))
    assert not outbox.forget(99, digest_at(folder, 7))
    assert outbox.acknowledged == 0


def test_a_journal_without_the_event_that_the_room_kept_last_takes_another_name(folder: Path, tmp_path: Path) -> None:
    outbox = Outbox.opened(folder)
    assert outbox.forget(10, digest_at(folder, 10))
    outbox.save()
    for part in folder.glob("journal*"):
        part.unlink()
    keep(folder, *(e.SampleTaken(20.0) for _ in range(12)))
    anew = Outbox.opened(folder)
    assert anew.journal != outbox.journal
    assert (anew.acknowledged, len(anew.next_rows())) == (0, 12)
    assert Outbox.opened(folder).journal == anew.journal


def test_a_batch_is_no_longer_than_a_message_may_be(folder: Path) -> None:
    keep(folder, *(e.NoteWritten(number, "ä" * 3000) for number in range(1, 200)), *[e.SampleTaken(20.0)] * 600)
    outbox = Outbox.opened(folder)
    seen: list[int] = []
    while True:
        count, message = outbox.next_batch(KIT)
        if not count:
            break
        rows = unpacked(Batch, message).rows
        assert len(rows) == count <= MOST_EVENTS
        assert sum(len(row[7].encode()) for row in rows) <= MOST_BODY_BYTES
        seen += [row[0] for row in rows]
        assert outbox.forget(rows[-1][0], digest_of(rows[-1]))
    assert seen == list(range(1, 10 + 199 + 600 + 1))


def test_without_a_first_event_there_is_no_name(tmp_path: Path) -> None:
    Journal(tmp_path).close()
    with pytest.raises(JournalError, match="no first event"):
        Outbox.opened(tmp_path)
