"""The papers a booklet is printed on, and the measures that layout and style sheet must agree on, in mm."""

from __future__ import annotations

from typing import NamedTuple

from engine.errors import ChoiceError

STANDARD, LARGE = "standard", "large-print"
FORMATS = (STANDARD, LARGE)


class Paper(NamedTuple):
    """A page and what fits on it.

    `width` × `height` is the sheet, `text` the width of the text, `main` that of its main column. `chart` is the height
    that chart and legend share under a chapter's title; a chart's bead is `least` to `largest` wide, `numbers` is the
    room beside it for row numbers and "round 120". An entry of a list is `line` high, the running total after ten of
    them `total`, the sum of a column `foot`. A column holds `first` blocks of ten entries under the title of the
    chapter and the head of the list, `blocks` on the pages that go on with it; there are at most `columns`. `page` is
    the height of the text, of which `head` goes to the head of a list, `goes_on` to that of a page that goes on,
    `group_head` to what stands over a group, `end` to the end of a list and the
    gap behind it.
    Rows of boxes for ten times a group stand `tens` side by side, each `ten` high. `large`: 24 points, text in one
    column, nothing small.
    """

    name: str
    width: float
    height: float
    text: float
    main: float
    chart: float
    line: float
    first: int
    blocks: int
    page: float
    head: float = 44.0
    goes_on: float = 36.0
    group_head: float = 11.6
    end: float = 17.0
    columns: int = 6
    tens: int = 2
    ten: float = 6.2
    least: float = 2.2
    largest: float = 6.0
    numbers: float = 23.0
    total: float = 5.4
    foot: float = 6.5
    large: bool = False


_PAPERS = {
    (paper.name, LARGE if paper.large else STANDARD): paper
    for paper in (
        Paper(
            name="A4",
            width=210.0,
            height=297.0,
            text=170.0,
            main=116.0,
            chart=218.0,
            line=4.9,
            first=3,
            blocks=4,
            page=257.0,
        ),
        Paper(
            name="Letter",
            width=215.9,
            height=279.4,
            text=175.9,
            main=121.9,
            chart=201.0,
            line=4.5,
            first=3,
            blocks=4,
            page=241.4,
        ),
        Paper(
            name="A5",
            width=148.0,
            height=210.0,
            text=120.0,
            main=86.0,
            chart=146.0,
            line=4.3,
            first=2,
            blocks=3,
            page=182.0,
            head=40.0,
            goes_on=32.0,
            tens=1,
            columns=4,
            largest=4.4,
            numbers=21.0,
        ),
        Paper(
            name="A4",
            width=210.0,
            height=297.0,
            text=159.2,
            main=159.2,
            chart=142.0,
            line=9.0,
            first=1,
            blocks=2,
            page=246.2,
            head=84.0,
            goes_on=14.0,
            group_head=26.0,
            end=38.0,
            tens=1,
            ten=18.4,
            columns=2,
            least=4.0,
            largest=9.6,
            numbers=22.0,
            total=9.2,
            foot=0.0,
            large=True,
        ),
        Paper(
            name="Letter",
            width=215.9,
            height=279.4,
            text=165.1,
            main=165.1,
            chart=124.0,
            line=9.0,
            first=1,
            blocks=2,
            page=228.6,
            head=84.0,
            goes_on=14.0,
            group_head=26.0,
            end=38.0,
            tens=1,
            ten=18.4,
            columns=2,
            least=4.0,
            largest=9.6,
            numbers=22.0,
            total=9.2,
            foot=0.0,
            large=True,
        ),
    )
}
PAPERS = tuple(name for name, format in _PAPERS if format == STANDARD)


def paper(name: str, format: str = STANDARD) -> Paper:
    """Raises ChoiceError for a paper that there is not, and for large print on paper too small for it."""
    if (name, format) not in _PAPERS:
        raise ChoiceError("Paper", name, (paper for paper, of in _PAPERS if of == format), "paper")
    return _PAPERS[name, format]
