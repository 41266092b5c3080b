"""Drawings as SVG text."""

import re
from collections.abc import Iterator
from xml.etree import ElementTree

import pytest
from hypothesis import given
from hypothesis import strategies as st

from engine.drawing.shapes import Drawing, Group, Line, Paint, Path, Rect, Stamp, Text, box
from engine.drawing.svg import number, path_data, to_svg

INK = Paint("#20242a")
MEASURES = st.floats(-999, 999)
NUMBER = r"-?(?:\d+(?:\.\d+)?|\.\d+)"


def points(path: str) -> Iterator[tuple[float, float]]:
    """Every point of a path as the grammar of SVG 2 reads it (9.3.9): a number ends where the next can begin."""
    x = y = left = top = 0.0
    for letter, text in re.findall("([MmLlCcHhVvz])([^MmLlCcHhVvz]*)", path):
        numbers = [float(one) for one in re.findall(NUMBER, text)]
        if letter == "z":
            x, y = left, top
        elif letter in "hv":
            x, y = (x + numbers[0], y) if letter == "h" else (x, y + numbers[0])
            yield x, y
        else:
            from_x, from_y = (0.0, 0.0) if letter == "M" else (x, y)
            for dx, dy in zip(numbers[::2], numbers[1::2], strict=True):
                x, y = from_x + dx, from_y + dy
                yield x, y
            if letter in "Mm":
                left, top = x, y


def test_a_small_drawing_written_out_in_full():
    drawing = Drawing(
        20,
        10.5,
        (
            Group("bead A", (Rect(0.5, 1, 4, 3.25, 1, Paint("#ff0000", "#000000", 0.1)),)),
            Line((0, 0), (0, 5), Paint(line="#20242a", line_mm=0.5)),
            Path(box(1, 1, 2, 2), INK),
            Text(3, 4, "10", 2.5, "end", INK),
        ),
        "A chart",
        "A B\nC D",
        -1,
        0,
    )
    assert to_svg(drawing) == (
        '<svg xmlns="http://www.w3.org/2000/svg" width="20mm" height="10.5mm" viewBox="-1 0 20 10.5" role="img">'
        "<title>A chart</title><desc>A B\nC D</desc>"
        '<g class="bead A"><rect x=".5" y="1" width="4" height="3.25" rx="1" fill="#ff0000" stroke="#000000" '
        'stroke-width=".1"/></g>'
        '<path d="M0 0L0 5" fill="none" stroke="#20242a" stroke-width=".5"/>'
        '<path fill-rule="evenodd" d="M1 1L3 1L3 3L1 3Z" fill="#20242a"/>'
        '<text x="3" y="4" font-family="sans-serif" font-size="2.5" text-anchor="end" fill="#20242a">10</text></svg>'
    )


def test_every_stamped_copy_is_the_same_text_after_its_move():
    svg = to_svg(Drawing(9, 9, (Stamp(box(-1, -1, 2, 2), ((2, 3), (5.125, 6)), INK),), "Two"))
    assert 'd="M1 2h2v2h-2zM4.12 5h2v2h-2z"' in svg


def test_a_stamp_is_written_without_a_blank_that_could_be_spared():
    outline = (("M", 0, 0), ("C", 0.5, 0, 0.9, 0.4, 0.9, 1), ("L", 2, -0.5), ("Z",), ("M", 1, 1), ("L", 1, 3), ("Z",))
    svg = to_svg(Drawing(9, 9, (Stamp(outline, ((5, 5),)),), "One"))
    assert 'd="M5 5c.5 0 .9.4.9 1l1.1-1.5zm1 1v2z"' in svg


@given(
    st.lists(
        st.one_of(
            st.tuples(st.just("L"), *[MEASURES] * 2),
            st.tuples(st.just("C"), *[MEASURES] * 6),
            st.tuples(st.just("M"), *[MEASURES] * 2),
            st.just(("Z",)),
        ),
        max_size=8,
    ),
    st.tuples(MEASURES, MEASURES),
)
def test_a_stamp_ends_each_step_where_the_outline_does(steps, at):
    outline = (("M", 1.111, 0.777), *steps)
    svg = to_svg(Drawing(9, 9, (Stamp(outline, (at,)),), "One"))
    wanted = [
        (x + at[0], y + at[1])
        for letter, *numbers in outline
        if letter != "Z"
        for x, y in zip(numbers[::2], numbers[1::2], strict=True)
    ]
    written = list(points(svg.split(' d="')[1].split('"')[0]))
    assert len(written) == len(wanted)
    for point, there in zip(written, wanted, strict=True):
        assert point == pytest.approx(there, abs=0.0101)


@pytest.mark.parametrize(
    ("value", "text"),
    [
        (2.0, "2"),
        (0.5, ".5"),
        (-0.5, "-.5"),
        (-0.001, "0"),
        (10.0, "10"),
        (100.10, "100.1"),
        (0, "0"),
        (10.05, "10.05"),
    ],
)
def test_numbers_are_as_short_as_can_be(value, text):
    assert number(value) == text


@given(st.floats(-1e6, 1e6))
def test_a_short_number_is_within_half_a_hundredth(value):
    assert abs(float(number(value)) - value) <= 0.005001


@given(st.text())
def test_no_text_breaks_the_picture(text):
    drawing = Drawing(1, 1, (Group(text, (Text(0, 0, text, 1),)),), text, text)
    root = ElementTree.fromstring(to_svg(drawing))
    assert root[0].tag.endswith("title")


def test_hostile_words_stay_words():
    group = Group('"><script>', (Text(0, 0, "</text><script>alert(1)</script>", 1),))
    svg = to_svg(Drawing(1, 1, (group,), "<b>&", "]]>"))
    assert "<script" not in svg
    assert "<title>&lt;b&gt;&amp;</title>" in svg


def test_nothing_is_styled_inline():
    svg = to_svg(Drawing(1, 1, (Path(box(0, 0, 1, 1), Paint("#123456", "#654321", 1)),), "Box"))
    assert "style" not in svg


def test_path_data_is_absolute():
    assert path_data(box(0, 0, 1.5, 1)) == "M0 0L1.5 0L1.5 1L0 1Z"
