"""The papers a booklet is printed on, and the measures that cutting and stylesheet must agree on, in mm."""

from __future__ import annotations

from typing import NamedTuple

from engine.errors import ChoiceError

STANDARD, LARGE = "standard", "large-print"
EDITIONS = (STANDARD, LARGE)


class Paper(NamedTuple):
    """A page and what fits on it.

    `width` × `height` is the sheet, `text` the width of the text, `main` that of its main column. `chart` is the height
    that chart and legend share under a chapter's title; a chart's bead is `least` to `largest` wide, `numbers` is the
    room beside it for "round 120". An entry of a list is `line` high, the running total after ten of them `total`, the
    sum of a column `foot`. A column holds `first` blocks of ten entries under the head of the list, `blocks` on the
    pages that go on with it; there are at most `columns`. `large`: 24 points, one column, nothing small.
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
    columns: int = 6
    least: float = 2.2
    largest: float = 6.0
    numbers: float = 18.0
    total: float = 5.4
    foot: float = 6.5
    large: bool = False


_PAPERS = {
    (paper.name, LARGE if paper.large else STANDARD): paper
    for paper in (
        Paper("A4", 210.0, 297.0, 170.0, 116.0, 218.0, 4.9, 3, 4),
        Paper("Letter", 215.9, 279.4, 175.9, 121.9, 201.0, 4.5, 3, 4),
        Paper("A5", 148.0, 210.0, 120.0, 86.0, 146.0, 4.3, 2, 3, 4, largest=4.4, numbers=17.0),
        Paper("A4", 210.0, 297.0, 159.2, 159.2, 122.0, 10.0, 2, 2, 1, 4.0, 9.6, 22.0, 10.6, 0.0, True),
        Paper("Letter", 215.9, 279.4, 165.1, 165.1, 106.0, 9.6, 2, 2, 1, 4.0, 9.6, 22.0, 10.0, 0.0, True),
    )
}
PAPERS = tuple(name for name, edition in _PAPERS if edition == STANDARD)


def paper(name: str, edition: str = STANDARD) -> Paper:
    """Raises ChoiceError for a paper that there is not, and for large print on paper too small for it."""
    if (name, edition) not in _PAPERS:
        raise ChoiceError("Paper", name, (name for name, of in _PAPERS if of == edition), "paper")
    return _PAPERS[name, edition]
