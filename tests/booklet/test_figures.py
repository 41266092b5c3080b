"""Pictures that draw themselves: beads stand where the chart has them, and no error adds up."""

from __future__ import annotations

import re
from dataclasses import replace
from itertools import accumulate

import pytest

from engine.booklet.columns import Block, Column, ListPage
from engine.booklet.papers import paper
from engine.booklet.sheets import PAD, Sheet, cut, lay_out
from engine.drawing.charts import cells, round_starts
from engine.pattern.lattice import rows
from engine.pattern.pattern import Pattern, left_handed
from tests.booklets import palette, scattered
from webapp.printing.figures import PX, ArrowFigure, BeadFigure, SheetFigure, SquaresFigure, colour, stamped
from webapp.printing.overview import overview


class Page:
    """A content stream that keeps what is written."""

    def __init__(self) -> None:
        self.stream: list[bytes] = []
        self.depth = 0
        self.alphas: list[float] = []

    def push_state(self) -> None:
        self.depth += 1

    def pop_state(self) -> None:
        self.depth -= 1

    def set_alpha(self, alpha: float) -> None:
        self.alphas.append(alpha)

    @property
    def text(self) -> str:
        return b"\n".join(self.stream).decode()


SCALE = 3.0137  # so odd that no place lies between two roundings


def drawn(figure, scale: float = 1.0) -> Page:
    page = Page()
    figure.draw(page, figure.width * scale, figure.height * scale, None)
    assert page.depth == 0
    assert page.text.split().count("q") == page.text.split().count("Q")
    return page


def places(text: str) -> list[tuple[float, float]]:
    """Where the moves of each group of stamps lead, one after the other."""
    found = []
    for group in re.findall(r"^q\n(.*?)^Q$", text, re.DOTALL | re.MULTILINE):
        moves = [(float(x), float(y)) for x, y in re.findall(r"^1 0 0 1 (\S+) (\S+) cm", group, re.MULTILINE)]
        found += zip(accumulate(x for x, _ in moves), accumulate(y for _, y in moves), strict=True)
    return [(round(x, 2), round(y, 2)) for x, y in found]


def sheets_of(pattern: Pattern) -> tuple[Sheet, ...]:
    layout = lay_out(pattern.around, rows(pattern.around, len(pattern.chart)), paper("A4"))
    return cut(pattern, layout)


@pytest.mark.parametrize("pattern", [scattered(12, 900), left_handed(scattered(12, 900)), scattered(40, 3000)])
def test_beads_of_a_sheet_stand_where_the_chart_has_them(pattern: Pattern) -> None:
    sheet = sheets_of(pattern)[-1]
    found = set(places(drawn(SheetFigure(pattern, sheet), SCALE).text))
    wanted = {
        (round(SCALE * (PAD + cell.x), 2), round(SCALE * (PAD + cell.y), 2))
        for cell in cells(pattern, sheet.first, sheet.last, sheet.bead)
    }
    assert wanted <= found
    bars = {
        (round(SCALE * (PAD + start.edge[0]), 2), round(SCALE * (PAD + start.edge[1]), 2))
        for start in round_starts(pattern, sheet.first, sheet.last, sheet.bead)
    }
    assert found - wanted == bars - wanted


def test_moves_lead_to_the_rounded_places_however_many_there_are() -> None:
    wanted = [(i * 3.3333, i * 1.6667) for i in range(5000)]
    assert places("\n".join(stamped("S", wanted))) == [(round(x, 2), round(y, 2)) for x, y in wanted]


def test_a_repeated_bead_is_the_same_text_every_time() -> None:
    pattern = scattered(12, 900, 1)
    lines = drawn(SheetFigure(pattern, sheets_of(pattern)[0])).text.split("\n")
    assert len({line.split(" cm ")[1] for line in lines if line.endswith(" B")}) == 1


def test_rows_shown_again_lie_under_a_veil() -> None:
    pattern = scattered(12, 900)
    first, second = sheets_of(pattern)
    assert drawn(SheetFigure(pattern, first)).alphas == []
    page = drawn(SheetFigure(pattern, second))
    assert page.alphas == [0.62]
    assert page.text.endswith(f"0 {second.height - second.pale:.2f} {second.width:.2f} {second.pale:.2f} re f")


def test_every_colour_is_drawn_once_with_its_symbol_in_the_ink_that_reads() -> None:
    text = drawn(SheetFigure(scattered(12, 240), sheets_of(scattered(12, 240))[0])).text
    for bead, ink in zip(palette(4), ("#ffffff", "#20242a", "#ffffff", "#20242a"), strict=True):
        assert text.count(f"\n{colour(bead.colour)}\n") == 1
        after = text.split(f"\n{colour(bead.colour)}\n")[1]
        assert re.search(r"^(\S+ \S+ \S+) rg$", after, re.MULTILINE)[0] == colour(ink)


def lines_of_repeats(pattern: Pattern) -> list[str]:
    """The paths that are drawn over the beads of its first sheet, without their colour and width."""
    text = drawn(SheetFigure(pattern, sheets_of(pattern)[0])).text
    return [line.split(" w ")[1] for line in text.split("\n") if line.startswith("0 J ")]


def test_a_line_parts_every_long_repeat_from_the_next_on_a_light_edge() -> None:
    once = scattered(6, 40)
    pattern = replace(once, chart=once.chart * 3)
    edge, line = lines_of_repeats(pattern)
    assert edge == line and line.count(" m") == 2
    assert lines_of_repeats(once) == []


def test_of_short_repeats_only_the_first_is_closed() -> None:
    (_, line) = lines_of_repeats(replace(scattered(6, 7), chart=bytes((0, 1, 2, 0, 3)) * 9))
    assert line.count(" m") == 1 and line.count(" l") == 3


def test_a_page_of_a_list_has_a_box_to_tick_and_a_square_on_every_line_of_every_column() -> None:
    low = paper("A4")._replace(line=5.0, total=4.0)
    blocks = (Block("", ("A", "B"), 2), Block("", ("A",), 3)), (Block("", ("B",), 4),)
    page = ListPage(tuple(Column(number, of, 0) for number, of in enumerate(blocks, 1)), 23.0, "list-1-1")
    figure = SquaresFigure(palette(), page, 30.0, low)
    assert (figure.width, figure.height) == (60.0, 23.0)
    assert figure.get_intrinsic_size(1, 1)[:2] == (60.0 * PX, 23.0 * PX)
    found = places(drawn(figure).text)
    assert sorted({y for x, y in found if x < 30}) == [2.5, 7.5, 16.5] and {y for x, y in found if x > 30} == {2.5}
    assert sorted({round(x % 30, 2) for x, _ in found}) == [1.9, 7.3]


def test_a_single_bead_stands_in_the_middle() -> None:
    assert set(places(drawn(BeadFigure(palette(), 2, 7.0)).text)) == {(3.5, 3.5)}


def test_the_arrow_of_a_left_hand_points_the_other_way() -> None:
    right, left = (drawn(ArrowFigure(hand)).text for hand in (False, True))
    assert places(right) == [(0.0, 1.2)] and places(left) == [(7.0, 1.2)]
    assert "7.00 0 m" in right and "-7.00 0 m" in left


def test_the_overview_has_two_pixels_a_bead_and_odd_rows_half_a_bead_in() -> None:
    pattern = Pattern("Small", 3, palette(2), bytes([0, 0, 0, 1, 1, 1, 1]))
    dark, light, ground = (29, 51, 80), (242, 232, 213), (255, 255, 255)
    picture = [[tuple(int(part) for part in pixel) for pixel in row] for row in overview(pattern)]
    assert picture[0] == picture[1] == [ground, *[light] * 6, ground]
    assert picture[2] == picture[3] == [*[dark] * 6, *[light] * 2]
    mirrored = [[tuple(int(part) for part in pixel) for pixel in row] for row in overview(left_handed(pattern))]
    assert mirrored == [row[::-1] for row in picture]
