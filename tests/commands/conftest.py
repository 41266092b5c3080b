"""A command run in this process, and the files it is run on."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path
from typing import NamedTuple

import pytest

from tests.examples import FOLDER
from webapp.commands import main


class Outcome(NamedTuple):
    """What a command left behind."""

    status: int
    out: str
    error: str


@pytest.fixture
def run(capsys) -> Callable[..., Outcome]:
    """Runs a command with those arguments."""

    def run(*arguments: object) -> Outcome:
        capsys.readouterr()
        status = main([str(argument) for argument in arguments])
        return Outcome(status, *capsys.readouterr())

    return run


@pytest.fixture
def harbour_file() -> Path:
    """The pattern file of the small example."""
    return FOLDER / "small-harbour.pattern.json"


@pytest.fixture
def file_of(tmp_path) -> Callable[[object], Path]:
    """Writes a document, or bytes as they are, as a pattern file."""

    def file_of(content: object, name: str = "trial") -> Path:
        path = tmp_path / f"{name}.pattern.json"
        path.write_bytes(content if isinstance(content, bytes) else json.dumps(content).encode())
        return path

    return file_of


@pytest.fixture
def data(tmp_path) -> Path:
    """A data folder that is not there yet."""
    return tmp_path / "data"


@pytest.fixture
def printed() -> Callable[[str], str]:
    """What a command printed when it was read and found right."""
    return lambda name: (Path(__file__).parent / "outputs" / name).read_text(encoding="utf-8")


@pytest.fixture
def as_json() -> Callable[[str], object]:
    """The document of a text, to the millionth: the last digits differ between computers."""
    return lambda text: json.loads(text, parse_float=lambda number: round(float(number), 6))
