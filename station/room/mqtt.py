"""A connection to the broker in the event loop, as both sides use it: paho-mqtt's client, driven by asyncio.

One connection, one object: it is lost once, and whoever wants another makes another. Everything has a time limit, and
closing leaves no socket and no task over, whatever state it was in.
"""

import asyncio
import contextlib
import socket
import threading
from collections.abc import AsyncIterator, Callable, Mapping
from contextlib import asynccontextmanager
from dataclasses import dataclass
from secrets import token_hex
from typing import Any, Final

from paho.mqtt import client as paho
from paho.mqtt.enums import CallbackAPIVersion, MQTTErrorCode, MQTTProtocolVersion

from station.room.wire import BrokerAddress
from station.words import say

KEEPALIVE_S: Final = 15
WITHIN_S: Final = 10.0
MISC_S: Final = 1.0
MOST_POSTED: Final = 5000
_REFUSED: Final = (0x86, 0x87)
"""User name or password wrong; not authorised (MQTT 5, 3.2.2.2)."""

OnMessage = Callable[[str, bytes, bool], None]
"""Called with topic, payload, and whether it was retained. It must not raise."""


class BrokerLost(Exception):  # noqa: N818 - a state of the network, not a mistake
    """There is no connection, or no more; `refused` when the broker does not let this user in."""

    def __init__(self, text: str, *, refused: bool = False) -> None:
        super().__init__(text)
        self.refused = refused


@dataclass(frozen=True)
class Publication:
    """Something to publish."""

    topic: str
    payload: bytes
    qos: int = 0
    retain: bool = False


@asynccontextmanager
async def connected(
    address: BrokerAddress, on_message: OnMessage, will: Publication | None = None, identifier: str | None = None
) -> AsyncIterator["Connection"]:
    """Yield a connection, with nothing left over from one before. Raises BrokerLost.

    `identifier` is its client id. The broker ends a connection when another, of any user, comes under the same one
    (MQTT 5, 3.1.4), so nobody else may know it: without one it is drawn for this connection alone.
    """
    connection = Connection(address, on_message, will, identifier or new_identifier())
    try:
        await connection.open()
        yield connection
    finally:
        connection.close()


def new_identifier() -> str:
    """Return a client id of 64 bits that nobody can guess; it is sent to the broker and told to nobody."""
    return token_hex(8)


class Connection:
    """One connection. Use it from the event loop that made it."""

    def __init__(
        self, address: BrokerAddress, on_message: OnMessage, will: Publication | None, identifier: str
    ) -> None:
        self._address, self._on_message = address, on_message
        self._loop = asyncio.get_running_loop()
        self._thread = threading.get_ident()
        self._open: asyncio.Future[None] = self._loop.create_future()
        self._lost: asyncio.Future[BrokerLost] = self._loop.create_future()
        self._answers: dict[int, asyncio.Future[None]] = {}
        self._posted: set[int] = set()
        self._sock: socket.socket | None = None
        self._closed = False
        self._misc: asyncio.TimerHandle | None = None
        self._client = self._paho(identifier, will)

    async def open(self) -> None:
        """Connect. Raises BrokerLost."""
        try:
            async with asyncio.timeout(WITHIN_S):
                await self._reached()
                await self._unless_lost(self._open)
        except TimeoutError:
            raise BrokerLost(say("link-no-answer")) from None
        except (OSError, ValueError, UnicodeError) as error:  # the last two: no name of a host
            raise BrokerLost(getattr(error, "strerror", None) or str(error)) from None
        self._misc = self._loop.call_later(MISC_S, self._keep_alive)

    def post(self, topic: str, payload: bytes, *, qos: int = 0) -> None:
        """Publish without waiting; who posts faster than the network takes it loses the connection."""
        info = self._client.publish(topic, payload, qos=qos)
        if info.rc == MQTTErrorCode.MQTT_ERR_SUCCESS:
            self._posted.add(info.mid)
        if info.rc != MQTTErrorCode.MQTT_ERR_SUCCESS or len(self._posted) > MOST_POSTED:
            self._lose(BrokerLost(say("link-takes-nothing")))

    def _reached(self) -> "asyncio.Future[None]":
        """Look the name up and wait for the handshake, in a thread that nobody waits for: a stop is not kept by it."""
        reached: asyncio.Future[None] = self._loop.create_future()

        def told(error: Exception | None) -> None:
            if reached.done():
                return
            if error is None:
                reached.set_result(None)
            else:
                reached.set_exception(error)

        def work() -> None:
            failed: Exception | None = None
            try:
                self._client.connect(self._address.host, self._address.port, KEEPALIVE_S)
            except Exception as error:  # whatever it is, who waits for it is told
                failed = error
            with contextlib.suppress(RuntimeError):  # the loop may be gone by then
                self._loop.call_soon_threadsafe(told, failed)

        threading.Thread(target=work, name="broker", daemon=True).start()
        return reached

    async def publish(self, topic: str, payload: bytes, *, qos: int = 0, retain: bool = False) -> None:
        """Publish, and wait until it is on its way (QoS 0) or the broker has it (QoS 1). Raises BrokerLost."""
        info = self._client.publish(topic, payload, qos=qos, retain=retain)
        await self._answer(info.mid, info.rc)

    async def subscribe(self, topics: Mapping[str, int]) -> None:
        """Subscribe to these topics at these qualities of service. Raises BrokerLost."""
        code, mid = self._client.subscribe(list(topics.items()))
        await self._answer(mid or 0, code)

    async def lost(self) -> None:
        """Wait until the connection is lost. Raises BrokerLost."""
        raise await asyncio.shield(self._lost)

    def close(self) -> None:
        """Say goodbye if the broker still reads, and leave nothing over. A second call does nothing."""
        self._closed = True
        if self._misc is not None:
            self._misc.cancel()
        if self._client.is_connected():
            self._client.disconnect()
            with contextlib.suppress(OSError, ValueError):
                self._client.loop_write()
        self._forget()
        self._lose(BrokerLost("closed"))

    async def _answer(self, mid: int, code: int) -> None:
        if code != MQTTErrorCode.MQTT_ERR_SUCCESS:
            self._lose(BrokerLost(paho.error_string(MQTTErrorCode(code))))
            raise self._lost.result()
        answer = self._answers[mid] = self._loop.create_future()
        try:
            async with asyncio.timeout(WITHIN_S):
                await self._unless_lost(answer)
        except TimeoutError:
            # A network that swallows everything: better a new connection than a queue that grows.
            self._lose(BrokerLost(say("link-no-answer")))
            raise self._lost.result() from None
        finally:
            self._answers.pop(mid, None)

    async def _unless_lost(self, wanted: asyncio.Future[None]) -> None:
        await asyncio.wait((wanted, self._lost), return_when=asyncio.FIRST_COMPLETED)
        if not wanted.done():
            raise self._lost.result()

    def _lose(self, reason: BrokerLost) -> None:
        if not self._lost.done():
            self._lost.set_result(reason)

    def _paho(self, identifier: str, will: Publication | None) -> paho.Client:
        client = paho.Client(
            CallbackAPIVersion.VERSION2,
            client_id=identifier,
            protocol=MQTTProtocolVersion.MQTTv5,
            reconnect_on_failure=False,
        )
        client.suppress_exceptions = True
        if self._address.user is not None:
            client.username_pw_set(self._address.user, self._address.password)
        if will is not None:
            client.will_set(will.topic, will.payload, will.qos, will.retain)
        client.on_connect = self._connected
        client.on_disconnect = self._disconnected
        client.on_publish = self._answered
        client.on_subscribe = self._answered
        client.on_message = self._received
        client.on_socket_open = lambda _, __, sock: self._in_loop(self._add, sock)
        client.on_socket_close = lambda *_: self._in_loop(self._remove)
        client.on_socket_register_write = lambda *_: self._in_loop(self._write_soon)
        client.on_socket_unregister_write = lambda *_: self._in_loop(self._write_no_more)
        return client

    def _in_loop(self, work: Callable[..., None], *values: Any) -> None:
        """The client also calls from the thread that connects; where it calls from the loop, order matters."""
        if threading.get_ident() == self._thread:
            work(*values)
        else:
            with contextlib.suppress(RuntimeError):  # the loop may be gone by then
                self._loop.call_soon_threadsafe(work, *values)

    def _add(self, sock: socket.socket) -> None:
        if self._closed:  # it was given up while the thread was still connecting
            sock.close()
            return
        self._sock = sock
        self._loop.add_reader(sock, self._client.loop_read)

    def _remove(self) -> None:
        sock, self._sock = self._sock, None
        if sock is not None and sock.fileno() >= 0:
            self._loop.remove_reader(sock)
            self._loop.remove_writer(sock)

    def _write_soon(self) -> None:
        if self._sock is not None:
            self._loop.add_writer(self._sock, self._client.loop_write)

    def _write_no_more(self) -> None:
        if self._sock is not None and self._sock.fileno() >= 0:
            self._loop.remove_writer(self._sock)

    def _forget(self) -> None:
        sock = self._sock
        self._remove()
        if sock is not None:
            sock.close()

    def _keep_alive(self) -> None:
        self._client.loop_misc()
        if not (self._closed or self._lost.done()):
            self._misc = self._loop.call_later(MISC_S, self._keep_alive)

    def _connected(self, _client: Any, _data: Any, _flags: Any, reason: Any, _properties: Any) -> None:
        if reason.is_failure:
            self._lose(BrokerLost(str(reason), refused=reason.value in _REFUSED))
        elif not self._open.done():
            self._open.set_result(None)

    def _disconnected(self, _client: Any, _data: Any, _flags: Any, reason: Any, _properties: Any) -> None:
        self._lose(BrokerLost(str(reason)))

    def _answered(self, _client: Any, _data: Any, mid: int, *_: Any) -> None:
        self._posted.discard(mid)
        answer = self._answers.get(mid)
        if answer is not None and not answer.done():
            answer.set_result(None)

    def _received(self, _client: Any, _data: Any, message: paho.MQTTMessage) -> None:
        self._on_message(message.topic, bytes(message.payload), bool(message.retain))
