"""One slow listener loses its stream; nobody else loses a message or a moment."""

import pytest

from station.server.streaming import MOST_LISTENERS, QUEUE_LENGTH, RESET, Hub, Listener


def drained(listener: Listener) -> list[tuple[int, bytes] | None]:
    items = []
    while not listener.queue.empty():
        items.append(listener.queue.get_nowait())
    return items


def joined(hub: Hub) -> Listener:
    listener = hub.join()
    assert listener is not None
    return listener


def test_every_listener_gets_every_message_in_order() -> None:
    hub = Hub()
    listeners = [joined(hub) for _ in range(3)]
    for seq in range(1, 6):
        hub.send(b"%d" % seq, seq)
    hub.send(b"view")
    for listener in listeners:
        assert drained(listener) == [(1, b"1"), (2, b"2"), (3, b"3"), (4, b"4"), (5, b"5"), (0, b"view")]


def test_who_joins_later_gets_what_comes_later() -> None:
    hub = Hub()
    hub.send(b"1", 1)
    late = joined(hub)
    hub.send(b"2", 2)
    assert drained(late) == [(2, b"2")]


@pytest.mark.fault("slow-phone")
def test_a_listener_that_does_not_read_is_told_to_load_anew_and_ended() -> None:
    hub = Hub()
    slow, quick = joined(hub), joined(hub)
    got = []
    for seq in range(1, QUEUE_LENGTH + 50):
        hub.send(b"x", seq)
        got += drained(quick)
    assert drained(slow) == [(0, RESET), None]
    assert [item[0] for item in got if item] == list(range(1, QUEUE_LENGTH + 50))
    assert hub.count == 1


def test_a_queue_that_is_exactly_full_loses_nothing() -> None:
    hub = Hub()
    listener = joined(hub)
    for seq in range(1, QUEUE_LENGTH + 1):
        hub.send(b"x", seq)
    assert hub.count == 1
    assert len(drained(listener)) == QUEUE_LENGTH


def test_there_is_a_most_and_leaving_makes_room() -> None:
    hub = Hub()
    listeners = [joined(hub) for _ in range(MOST_LISTENERS)]
    assert hub.join() is None
    hub.leave(listeners[0])
    hub.leave(listeners[0])
    assert hub.count == MOST_LISTENERS - 1
    assert joined(hub)


def test_closing_ends_every_stream_even_a_full_one_and_lets_nobody_in() -> None:
    hub = Hub()
    full, idle = joined(hub), joined(hub)
    for seq in range(QUEUE_LENGTH):
        full.queue.put_nowait((seq, b"x"))
    hub.close()
    hub.close()
    assert drained(full)[-1] is None
    assert drained(idle)[0] is None
    assert hub.count == 0
    assert hub.join() is None
    hub.send(b"late", 9)
    assert drained(idle) == []


def test_staff_find_room_and_keep_it_however_many_addresses_look_on() -> None:
    hub = Hub()
    lookers = [hub.join(f"192.0.2.{number}") for number in range(MOST_LISTENERS)]
    assert hub.join("192.0.2.250") is None
    staff = hub.join("192.0.2.1", is_staff=True)
    assert staff is not None
    assert lookers[0] is not None
    assert drained(lookers[0]) == [None]
    for number in range(MOST_LISTENERS):
        hub.join(f"198.51.100.{number}")
    assert staff.queue.empty()
    assert hub.count == MOST_LISTENERS


def test_who_asked_for_short_messages_gets_them_and_nobody_else() -> None:
    hub = Hub()
    whole, short = joined(hub), joined(hub)
    short.is_short = True
    hub.send(b"whole", short=b"short")
    hub.send(b"7", 7)
    assert drained(whole) == [(0, b"whole"), (7, b"7")]
    assert drained(short) == [(0, b"short"), (7, b"7")]
