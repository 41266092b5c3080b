"""Charts, strips, legends and swatches as shapes."""

import json
from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from engine.drawing.charts import ROW, cells, chart, extent, letters, round_starts, strip
from engine.drawing.shapes import Group, Stamp, Text
from engine.drawing.svg import to_svg
from engine.pattern.lattice import place, rows
from engine.pattern.palette import Entry, Palette
from engine.pattern.pattern import Pattern

SENSE = json.loads((Path(__file__).parents[1] / "shared" / "helix-sense.json").read_text(encoding="utf-8"))
PALETTE = Palette((Entry("A", "Night", "#20305a"), Entry("B", "Straw", "#ecd28a")))
SMALL = Pattern("Small", 3, PALETTE, bytes([0, 0, 1, 1, 1, 0, 0]))
TOWARD = {"right": (0, 1), "left": (0, -1), "down": (1, 1), "up": (1, -1)}


@pytest.mark.parametrize("hand", ["right", "left"])
@pytest.mark.parametrize("view", ["chart_upright", "chart_lying"])
def test_beads_follow_one_another_in_the_sense_of_the_helix(view, hand):
    pattern = Pattern("Sense", SENSE["around"], PALETTE, bytes(SENSE["beads"]), hand=hand)
    found = cells(pattern, upright=view == "chart_upright")
    for chain in SENSE["views"][view][hand]:
        axis, sign = TOWARD[chain["toward"]]
        along = [sign * (found[bead].x, found[bead].y)[axis] for bead in chain["beads"]]
        assert along == sorted(set(along)), chain


def test_an_upright_chart_is_read_from_the_bottom_and_odd_rows_stand_half_a_bead_in():
    assert [(cell.entry, round(cell.x, 3), round(cell.y, 3)) for cell in cells(SMALL)] == [
        (0, 0.5, 1.299),
        (0, 1.5, 1.299),
        (1, 2.5, 1.299),
        (1, 3.5, 1.299),
        (1, 1.0, 0.433),
        (0, 2.0, 0.433),
        (0, 3.0, 0.433),
    ]


@given(around=st.integers(3, 12), beads=st.integers(1, 200), first=st.integers(0, 199), mm=st.floats(0.5, 9))
def test_beads_stand_on_the_true_lattice(around, beads, first, mm):
    first = min(first, beads - 1)
    pattern = Pattern("Any", around, PALETTE, bytes(beads))
    bottom = place(around, first).row
    height = (rows(around, beads) - bottom) * ROW * mm
    assert extent(pattern, first, beads, mm) == pytest.approx(((around + 1) * mm, height))
    for k, cell in enumerate(cells(pattern, first, beads, mm), first):
        row, x = place(around, k)
        assert (cell.x, height - cell.y) == pytest.approx(((x + 0.5) * mm, (row - bottom + 0.5) * ROW * mm))


@given(around=st.integers(3, 12), beads=st.integers(1, 120), hand=st.sampled_from(["right", "left"]))
def test_lying_the_chart_is_the_upright_one_turned_clockwise_by_a_quarter(around, beads, hand):
    pattern = Pattern("Any", around, PALETTE, bytes(beads), hand=hand)
    height = extent(pattern)[1]
    turned = [(height - cell.y, cell.x) for cell in cells(pattern)]
    assert [(cell.x, cell.y) for cell in cells(pattern, upright=False)] == [pytest.approx(middle) for middle in turned]


@given(around=st.integers(3, 12), beads=st.integers(1, 120))
def test_a_left_handed_chart_is_the_mirror_image(around, beads):
    pattern = Pattern("Any", around, PALETTE, bytes(beads))
    mirrored = cells(replace(pattern, hand="left"))
    assert mirrored == tuple(cell._replace(x=pytest.approx(around + 1 - cell.x)) for cell in cells(pattern))


def test_every_round_starts_n_beads_after_the_one_before():
    pattern = Pattern("Long", 3, PALETTE, bytes(40))
    found = cells(pattern)
    starts = round_starts(pattern)
    assert [start.round for start in starts] == list(range(1, 15))
    assert [(start.x, start.y) for start in starts] == [(found[k].x, found[k].y) for k in range(0, 40, 3)]


@pytest.mark.parametrize(
    ("hand", "upright", "side"),
    [("right", True, (-0.5, 0)), ("left", True, (0.5, 0)), ("right", False, (0, -0.5)), ("left", False, (0, 0.5))],
)
def test_the_bar_stands_on_the_side_from_which_the_round_is_worked(hand, upright, side):
    start = round_starts(replace(SMALL, hand=hand), upright=upright)[1]
    assert (start.edge[0] - start.x, start.edge[1] - start.y) == pytest.approx(side)


def test_a_stretch_counts_rounds_from_the_start_of_the_chart():
    pattern = Pattern("Long", 3, PALETTE, bytes(70))
    assert [start.round for start in round_starts(pattern, 28, 40)] == [11, 12, 13, 14]


def test_a_chart_names_its_parts_and_every_tenth_round():
    drawing = chart(Pattern("Long", 3, PALETTE, bytes([0, 1] * 35)))
    names = [shape.name for shape in drawing.shapes if isinstance(shape, Group)]
    ten = [*["round start"] * 9, "tenth round start"]
    assert names == ["bead A", "bead B", *ten, *ten, *["round start"] * 4, "round number", "round number"]
    numbers = [shape.shapes[0] for shape in drawing.shapes if isinstance(shape, Group) and shape.name == "round number"]
    assert [number.text for number in numbers if isinstance(number, Text)] == ["10", "20"]


@pytest.mark.parametrize("upright", [True, False])
@pytest.mark.parametrize("hand", ["right", "left"])
def test_the_numbers_of_the_rounds_stand_inside_the_drawing(hand, upright):
    drawing = chart(Pattern("Long", 3, PALETTE, bytes(3000), hand=hand), upright=upright)
    for shape in drawing.shapes:
        if shape.name == "round number":
            text = shape.shapes[0]
            reach = 0.65 * text.size * len(text.text)
            left = text.x - {"start": 0, "middle": reach / 2, "end": reach}[text.anchor]
            assert drawing.left <= left
            assert left + reach <= drawing.left + drawing.width
            assert drawing.top <= text.y - 0.75 * text.size
            assert text.y <= drawing.top + drawing.height


def test_the_chart_says_its_letter_picture_and_the_left_handed_one_says_it_mirrored():
    assert chart(SMALL).description == " B A A\nA A B B"
    assert chart(replace(SMALL, hand="left")).description == " A A B\nB B A A"


def test_a_sheet_says_only_its_own_rows():
    assert letters(SMALL, 4, 7) == " B A A"


def test_codes_of_two_letters_are_said_by_one():
    palette = Palette((Entry("AA", "Night", "#20305a"), Entry("AB", "Straw", "#ecd28a")))
    assert letters(replace(SMALL, palette=palette)) == " B A A\nA A B B"


def test_every_bead_is_stamped_once_with_its_symbol():
    stamped = [
        (shape.name, [len(part.places) for part in shape.shapes if isinstance(part, Stamp)])
        for shape in chart(SMALL).shapes
    ]
    assert stamped[:2] == [("bead A", [4, 4]), ("bead B", [3, 3])]


def test_a_strip_lies_and_has_neither_symbols_nor_bars():
    drawing = strip(SMALL, bead_mm=1)
    assert drawing.width < drawing.height
    assert [(shape.name, len(shape.shapes)) for shape in drawing.shapes] == [("bead A", 1), ("bead B", 1)]


def test_a_whole_chart_written_out_in_full():
    beads = Pattern("Tiny", 3, PALETTE, bytes([0, 1]))
    assert to_svg(chart(beads, bead_mm=10, symbols=False, ticks=False)) == (
        '<svg xmlns="http://www.w3.org/2000/svg" width="40.4mm" height="9.06mm" viewBox="-.2 -.2 40.4 9.06" role="img">'
        "<title>Chart, beads 1 to 2</title><desc>A B</desc>"
        '<g class="bead A"><path fill-rule="evenodd" d="M2.72 .26h4.56'
        "c1.33 0 2.42 1.09 2.42 2.42v3.3c0 1.33-1.09 2.42-2.42 2.42h-4.56c-1.33 0-2.42-1.09-2.42-2.42"
        'v-3.3c0-1.33 1.09-2.42 2.42-2.42z" fill="#20305a" stroke="#20242a" stroke-width=".2"/></g>'
        '<g class="bead B"><path fill-rule="evenodd" d="M12.72 .26h4.56'
        "c1.33 0 2.42 1.09 2.42 2.42v3.3c0 1.33-1.09 2.42-2.42 2.42h-4.56c-1.33 0-2.42-1.09-2.42-2.42"
        'v-3.3c0-1.33 1.09-2.42 2.42-2.42z" fill="#ecd28a" stroke="#20242a" stroke-width=".2"/></g></svg>'
    )
