"""Pickled messages between processes: the length first, in eight bytes."""

from __future__ import annotations

import pickle
from typing import IO, Any

LENGTH = 8


def send(way: IO[bytes], message: object) -> None:
    """Raises OSError where the other side is gone."""
    packed = pickle.dumps(message)
    way.write(len(packed).to_bytes(LENGTH) + packed)
    way.flush()


def received(way: IO[bytes]) -> Any:
    """The next message; None where the other side is gone or was cut short."""
    size = way.read(LENGTH)
    if len(size) < LENGTH:
        return None
    packed = way.read(int.from_bytes(size))
    return pickle.loads(packed) if len(packed) == int.from_bytes(size) else None
