"""The papers a booklet is printed on, and the measures that cutting and stylesheet must agree on, in mm."""

from __future__ import annotations

from typing import NamedTuple


class Paper(NamedTuple):
    """A page and what fits on it.

    `width` × `height` is the sheet, `text` the width of the text, `main` that of its main column. `chart` is the height
    that chart and legend share under a chapter's title. `line` is the height of an entry of a list; a column holds
    `blocks` blocks of ten entries under the head of the list, and one more on the pages that go on with it.
    """

    name: str
    width: float
    height: float
    text: float
    main: float
    chart: float
    line: float
    blocks: int


_PAPERS = {paper.name: paper for paper in (
    Paper("A4", 210.0, 297.0, 170.0, 116.0, 218.0, 4.9, 3),
    Paper("Letter", 215.9, 279.4, 175.9, 121.9, 201.0, 4.5, 3),
)}


def paper(name: str) -> Paper:
    """Raises KeyError for a paper that there is not."""
    return _PAPERS[name]
