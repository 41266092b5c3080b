"""Outlines as values, and their text for PDF."""

from engine.drawing.operators import operators
from engine.drawing.shapes import box, circle, joined, moved, polygon, rounded_box, turned


def test_a_box_is_told_corner_by_corner():
    assert box(1, 2, 3, 4) == (("M", 1, 2), ("L", 4, 2), ("L", 4, 6), ("L", 1, 6), ("Z",))


def test_moving_scales_first_and_then_shifts():
    assert moved(polygon((1, 2), (3, 4), (0, 0)), 2, 10, 20) == (("M", 12, 24), ("L", 16, 28), ("L", 10, 20), ("Z",))


def test_a_quarter_turn_is_clockwise_as_seen_on_paper():
    up = polygon((0, -1), (1, 1), (-1, 1))
    assert turned(up, 1) == polygon((1, 0), (-1, 1), (-1, -1))
    assert turned(up, 4) == up


def test_a_rounded_box_without_rounding_reaches_the_corners_of_its_box():
    corners = {step[-2:] for step in rounded_box(4, 2, 0) if len(step) > 1}
    assert corners == {(-2, -1), (2, -1), (2, 1), (-2, 1)}


def test_a_circle_comes_back_to_where_it_began():
    steps = circle(2, 5, 6)
    assert steps[0] == ("M", 7, 6)
    assert steps[-2][-2:] == (7, 6)


def test_outlines_are_joined_in_their_order():
    assert joined((box(0, 0, 1, 1), box(2, 2, 1, 1))) == box(0, 0, 1, 1) + box(2, 2, 1, 1)


def test_operators_are_pdf_words_with_short_numbers():
    assert operators(polygon((0, 0.5), (1, -0.00001), (1.25, 2)), 2) == "0 1 m 2 0 l 2.5 4 l h"
    assert operators(circle(1)).count(" c") == 4
