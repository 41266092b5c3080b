"""A connection that is silent before its request is whole is ended; one that is used stays."""

import asyncio
import socket
import threading
import time

import httpx
import pytest
import uvicorn

from webapp.server import connections


async def hello(scope, receive, send):
    await send({"type": "http.response.start", "status": 200, "headers": [(b"content-length", b"5")]})
    await send({"type": "http.response.body", "body": b"hello"})


@pytest.fixture
def address(monkeypatch):
    monkeypatch.setattr(connections, "PATIENCE_S", 0.3)
    listening = socket.create_server(("127.0.0.1", 0))
    config = uvicorn.Config(hello, http=connections.PatientProtocol, lifespan="off", log_config=None)
    server = uvicorn.Server(config)
    thread = threading.Thread(target=lambda: asyncio.run(server.serve([listening])), daemon=True)
    thread.start()
    while not server.started:
        time.sleep(0.01)
    yield listening.getsockname()
    server.should_exit = True
    thread.join(10)


@pytest.mark.parametrize("sent", [b"", b"GET / HTTP/1.1\r\nHost: 127.0.0.1\r\n"])
def test_a_half_open_connection_is_ended(address, sent):
    with socket.create_connection(address, timeout=10) as connection:
        connection.sendall(sent)
        assert connection.recv(100) == b""


def test_a_second_request_that_is_half_sent_is_ended_too(address):
    with socket.create_connection(address, timeout=10) as connection:
        connection.sendall(b"GET / HTTP/1.1\r\nHost: 127.0.0.1\r\n\r\n")
        assert b"200" in connection.recv(1000)
        connection.sendall(b"GET / HT")
        answers = b""
        while piece := connection.recv(1000):
            answers += piece
        assert answers in (b"", b"hello")


def test_a_connection_that_is_used_stays(address):
    with httpx.Client(base_url=f"http://127.0.0.1:{address[1]}") as client:
        for _ in range(3):
            assert client.get("/").text == "hello"
            time.sleep(0.2)
