"""Connections that do not hold on to the server: one that is silent before its request is whole is ended."""

from __future__ import annotations

from asyncio import Transport
from typing import Any

import h11
from uvicorn.protocols.http.h11_impl import H11Protocol

PATIENCE_S = 10.0


class PatientProtocol(H11Protocol):
    """HTTP/1.1 that waits PATIENCE_S for the head of a request."""

    _deadline: Any = None

    def connection_made(self, transport: Transport) -> None:  # type: ignore[override]
        super().connection_made(transport)
        self._wait()

    def data_received(self, data: bytes) -> None:
        super().data_received(data)
        half_sent = self.conn.their_state is h11.IDLE and bool(self.conn.trailing_data[0])
        if half_sent:
            self._wait()
        else:
            self._stop_waiting()

    def connection_lost(self, exc: Exception | None) -> None:
        self._stop_waiting()
        super().connection_lost(exc)

    def _wait(self) -> None:
        if self._deadline is None:
            self._deadline = self.loop.call_later(PATIENCE_S, self._end)

    def _stop_waiting(self) -> None:
        if self._deadline is not None:
            self._deadline.cancel()
            self._deadline = None

    def _end(self) -> None:
        if not self.transport.is_closing():
            self.transport.close()
