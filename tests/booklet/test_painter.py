"""Shaded pictures drawn in a process beside: the same bytes, whatever becomes of that process."""

from __future__ import annotations

import os
import signal
from collections.abc import Iterator
from contextlib import closing
from io import BytesIO

import pytest
from PIL import Image

from engine.booklet.chapters.opening import Picture
from tests.booklet.test_jobs import gone, until
from tests.booklets import Choices, scattered
from webapp.printing.orders import Order, Workshop, printed
from webapp.printing.painter import Painter
from webapp.printing.pictures import awaited, drawn, when_asked

ROPE = scattered(8, 120)
WANTED = (Picture("cover", "necklace", None, 120, 90, "#eef0ec"), Picture("strip", "strip", None, 160, 20, "#ffffff"))


@pytest.fixture
def painter() -> Iterator[Painter]:
    with closing(Painter()) as made:
        yield made


def test_a_painter_draws_what_is_drawn_here_for_one_booklet_after_the_other(painter: Painter) -> None:
    assert painter.begin(ROPE, WANTED)() == drawn(ROPE, WANTED)
    other = scattered(5, 60)
    assert painter.begin(other, WANTED[1:])() == drawn(other, WANTED[1:])


def test_without_pictures_nothing_is_asked_of_it(painter: Painter) -> None:
    assert painter.begin(ROPE, ())() == {}
    assert painter.begin(ROPE, WANTED[1:])() == drawn(ROPE, WANTED[1:])


def test_the_pictures_of_a_painter_that_died_are_drawn_here(painter: Painter) -> None:
    waiting = painter.begin(ROPE, WANTED)
    os.kill(painter.child.pid, signal.SIGKILL)
    assert waiting() == drawn(ROPE, WANTED)
    assert painter.begin(ROPE, WANTED)() == drawn(ROPE, WANTED)


def test_a_painter_ends_when_its_input_is_closed(painter: Painter) -> None:
    painter.child.input.close()
    until(lambda: gone(painter.child.pid))


def test_a_booklet_is_the_same_bytes_whoever_draws_its_pictures(painter: Painter) -> None:
    order = Order(ROPE, Choices(), Workshop())
    assert printed(order, begin=painter.begin).pdf == printed(order).pdf


def test_a_picture_is_as_large_as_was_said_before_it_was_drawn() -> None:
    for key, picture in awaited(WANTED, when_asked(ROPE, WANTED)).items():
        assert Image.open(BytesIO(picture.bytes())).size == (picture.width, picture.height), key
