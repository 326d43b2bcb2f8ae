"""Guessed codes and passphrases, and the bench button as the way out, through the application itself."""

import asyncio
import time
from collections.abc import AsyncIterator
from contextlib import asynccontextmanager
from pathlib import Path
from typing import Any

import httpx
import pytest

from station.server.bench.app import make_app
from station.server.door.secrets import BURST, LONGEST_WAIT_S
from tests.server.doors import CODE, GIVEN, HASHED, SECRETS, TECHNICIAN, Hand
from tests.server.live import Station, here, in_process

WRONG: list[dict[str, object]] = [
    {"code": "WRONG-1"},
    {"role": "teacher", "passphrase": "guess guess guess"},
    {"role": "technician", "passphrase": "guess guess guess"},
]


@asynccontextmanager
async def guarded(folder: Path, clock: Hand, **known: Any) -> AsyncIterator[Station]:
    async with in_process(folder, access=here(SECRETS, monotonic=clock, **known)) as station:
        yield station


def device(station: Station, address: str) -> httpx.AsyncClient:
    """A device at this address, with a cookie jar of its own."""
    app = make_app(station.watch, "0", station.access)
    transport = httpx.ASGITransport(app, raise_app_exceptions=False, client=(address, 50_000))
    return httpx.AsyncClient(transport=transport, base_url="http://bench.local")


async def post(client: httpx.AsyncClient, body: dict[str, object]) -> tuple[int, int]:
    """Return the status, and the seconds to wait."""
    answer = await client.post("/api/session", json=body)
    if answer.status_code == 429:
        assert answer.json()["code"] in {"too_many_tries", "too_many_acts"}
        assert f"Wait {answer.headers['retry-after']} s" in answer.json()["detail"]
    return answer.status_code, int(answer.headers.get("retry-after", 0))


@pytest.mark.fault("guessing")
async def test_a_thousand_guesses_from_one_address_and_the_right_code_is_still_taken(tmp_path: Path) -> None:
    clock = Hand()
    async with guarded(tmp_path, clock) as station:
        looked_at = 0
        for number in range(1000):
            status, wait_s = await post(station.client, WRONG[number % 3])
            looked_at += status == 403
            assert wait_s <= LONGEST_WAIT_S
            clock.now_s += 1.0  # it does not wait as it is told
        assert looked_at <= 6 + 1000 / LONGEST_WAIT_S
        status, wait_s = await post(station.client, GIVEN["bench"])
        clock.now_s += wait_s
        assert (await post(station.client, GIVEN["bench"]))[0] == 204


@pytest.mark.fault("guessing")
async def test_guesses_from_many_addresses_and_one_more_device_gets_in(tmp_path: Path) -> None:
    clock = Hand()
    async with guarded(tmp_path, clock) as station:
        guessers = [device(station, f"10.0.0.{k}") for k in range(1, 41)]
        looked_at = 0
        for number in range(1000):
            status, _ = await post(guessers[number % 40], WRONG[number % 3])
            looked_at += status == 403
            clock.now_s += 0.1
        assert looked_at <= BURST + 100 + 1
        teacher = device(station, "10.0.0.99")
        status, wait_s = await post(teacher, GIVEN["teacher"])
        assert (status, wait_s <= 45) == (429, True)
        for _ in range(wait_s * 10):
            await post(guessers[int(clock.now_s * 10) % 40], WRONG[0])
            clock.now_s += 0.1
        assert (await post(teacher, GIVEN["teacher"]))[0] == 204
        for client in (*guessers, teacher):
            await client.aclose()


async def test_who_knows_the_code_guesses_passphrases_no_faster(tmp_path: Path) -> None:
    clock = Hand()
    async with guarded(tmp_path, clock) as station:
        looked_at = 0
        for _ in range(300):
            await post(station.client, GIVEN["bench"])
            looked_at += (await post(station.client, WRONG[1]))[0] == 403
            clock.now_s += 1.0
        assert looked_at <= 6 + 300 / LONGEST_WAIT_S


async def test_a_hundred_guesses_at_once_from_one_address_are_one(tmp_path: Path) -> None:
    clock = Hand()
    async with in_process(tmp_path, access=here(HASHED, monotonic=clock)) as station:
        answers = await asyncio.gather(*(post(station.client, WRONG[1]) for _ in range(50)))
        assert sorted(status for status, _ in answers) == [403] + [429] * 49


@pytest.mark.fault("wrong-clock")
@pytest.mark.parametrize("jump_s", [-31_536_000.0, 31_536_000.0])
async def test_setting_the_wall_clock_forgives_nothing(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, jump_s: float
) -> None:
    clock = Hand()
    async with guarded(tmp_path, clock) as station:
        for _ in range(40):
            await post(station.client, WRONG[0])
            clock.now_s += 10.0
        assert await post(station.client, WRONG[0]) != (403, 0)
        before = await post(station.client, WRONG[0])
        wall = time.time() + jump_s
        monkeypatch.setattr(time, "time", lambda: wall)
        assert await post(station.client, WRONG[0]) == before
        monkeypatch.undo()


async def role(client: httpx.AsyncClient) -> str:
    told: str = (await client.get("/api/session")).json()["role"]
    return told


async def test_a_held_button_lets_one_device_operate_the_bench_and_no_more(tmp_path: Path) -> None:
    clock = Hand()
    async with guarded(tmp_path, clock) as station:
        first, second = device(station, "10.0.0.1"), device(station, "10.0.0.2")
        assert (await post(first, {"recovery": True}))[0] == 403
        clock.now_s += 5.0
        station.access.recovery_opened()
        assert (await post(first, {"recovery": True}))[0] == 204
        assert await role(first) == "bench", "not staff: every student reaches the button"
        assert (await first.post("/api/acts", json={"act": "begin", "key": "k"})).status_code == 200
        assert (await first.post("/api/staff", json={"act": "quiet", "silent": True})).status_code == 403
        assert (await post(second, {"recovery": True}))[0] == 403
        for client in (first, second):
            await client.aclose()


async def test_the_window_closes_after_a_minute_whatever_the_wall_clock_does(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    clock = Hand()
    async with guarded(tmp_path, clock) as station:
        station.access.recovery_opened()
        clock.now_s += 60.0
        wall = time.time() - 31_536_000.0
        monkeypatch.setattr(time, "time", lambda: wall)
        assert (await post(station.client, {"recovery": True}))[0] == 403
        monkeypatch.undo()


async def test_holding_again_shakes_off_a_device_that_was_faster(tmp_path: Path) -> None:
    clock = Hand()
    async with guarded(tmp_path, clock) as station:
        thief, technician = device(station, "10.0.0.1"), device(station, "10.0.0.2")
        station.access.recovery_opened()
        assert (await post(thief, {"recovery": True}))[0] == 204
        station.access.recovery_opened()
        assert await role(thief) == "looker"
        assert (await post(technician, {"recovery": True}))[0] == 204
        assert (await role(technician), await role(thief)) == ("bench", "looker")
        for client in (thief, technician):
            await client.aclose()


async def test_who_asks_for_the_window_all_the_time_is_slowed(tmp_path: Path) -> None:
    clock, looked_at = Hand(), 0
    async with guarded(tmp_path, clock) as station:
        for _ in range(600):
            looked_at += (await post(station.client, {"recovery": True}))[0] == 403
            clock.now_s += 1.0
        assert looked_at <= 6 + 600 / LONGEST_WAIT_S
        await post(station.client, {"recovery": True})
        station.access.recovery_opened()
        other = device(station, "10.0.0.2")
        assert (await post(other, {"recovery": True}))[0] == 204, "a device that did not ask before is let in at once"
        await other.aclose()


async def test_the_button_takes_a_device_past_the_queue_of_guessers(tmp_path: Path) -> None:
    clock = Hand()
    async with guarded(tmp_path, clock) as station:
        guessers = [device(station, f"10.0.0.{k}") for k in range(1, 101)]
        for number in range(200):
            await post(guessers[number % 100], WRONG[0])
        technician = device(station, "10.0.0.1")  # the very address of a guesser, as behind an access point
        assert (await post(technician, GIVEN["technician"]))[0] == 429
        station.access.recovery_opened()
        assert (await post(technician, {"recovery": True}))[0] == 204
        assert (await post(technician, {"role": "technician", "passphrase": TECHNICIAN}))[0] == 204
        assert await role(technician) == "technician"
        for client in (*guessers, technician):
            await client.aclose()


async def test_the_buttons_own_lane_is_no_way_to_guess_faster(tmp_path: Path) -> None:
    clock, looked_at = Hand(), 0
    async with guarded(tmp_path, clock) as station:
        for hold in range(60):
            student = device(station, f"10.0.1.{hold}")
            station.access.recovery_opened()
            assert (await post(student, {"recovery": True}))[0] == 204
            for _ in range(6):
                looked_at += (await post(student, WRONG[2]))[0] == 403
                clock.now_s += 1.0
            await student.aclose()
        assert looked_at <= 6 + 360 / LONGEST_WAIT_S
        assert CODE not in repr(station.access.__dict__)
