"""The socket that the server listens on; the server itself is tried as a process in tests/server."""

import socket

import pytest

from tests.server.servers import free_port
from webapp.commands import Refused
from webapp.commands.serve import free_socket


def test_an_answer_is_not_held_back_until_its_first_part_is_acknowledged():
    """Without the protocol said, asyncio leaves small packets to be gathered, and every page takes 40 ms longer."""
    with free_socket(free_port()) as listening:
        assert (listening.proto, listening.getsockname()[0]) == (socket.IPPROTO_TCP, "127.0.0.1")


def test_the_last_port_has_no_next():
    with free_socket(65535) as last:
        assert last.getsockname()[1] == 65535
        with pytest.raises(Refused, match="No port from 65535 on is free"):
            free_socket(65535)
