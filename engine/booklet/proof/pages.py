"""Holds pages to what should stand there: boxes to tick, drawings of the number around; pages almost empty."""

from __future__ import annotations

import re
from collections.abc import Iterator

from engine.booklet.compose import Booklet
from engine.booklet.guides.guide import DRAWN_FOR
from engine.booklet.proof.printed_lists import AGAIN
from engine.booklet.proof.readback import ReadBooklet, Remark
from engine.units import count

LEAST_FILLED, BEYOND = 1 / 3, 1.002  # of a page's height

_OF_A_NUMBER = re.compile(r".*-(\d)")


def page_remarks(booklet: Booklet, read: ReadBooklet, around: int) -> Iterator[Remark]:
    """Boxes that lack, drawings whose numbers are not those of the piece, pages with too little on them or too much."""
    yield from _boxes(booklet, read)
    yield from _drawings(booklet, around)
    for page in read.pages:
        if page.filled > BEYOND:
            yield Remark(True, f"Page {page.number}", "Something on this page reaches beyond its foot.", AGAIN)
    for page in read.pages[1:-1]:
        if page.filled < LEAST_FILLED:
            yield Remark(
                blocks=False,
                where=f"Page {page.number}",
                what="Less than a third of this page is filled.",
                mend="Other threads, another paper or shorter words of your own may close the gap.",
                at="booklet",
            )


def _boxes(booklet: Booklet, read: ReadBooklet) -> Iterator[Remark]:
    wanted = sum(
        len(block.codes)
        for listed in booklet.lists
        for page in listed.all_pages
        if page.ticked
        for column in page.columns
        for block in column.blocks
    ) + sum(row.boxes for listed in booklet.lists if listed.group for row in listed.group.tens)
    drawn = sum(page.boxes for page in read.pages)
    if drawn != wanted:
        yield Remark(
            blocks=True,
            where="Stringing lists",
            what=f"{count(drawn)} boxes to tick are drawn where {count(wanted)} should stand.",
            mend=AGAIN,
        )


def _drawings(booklet: Booklet, around: int) -> Iterator[Remark]:
    """A drawing is of the number around, or says for how many it is drawn."""
    for part in (*booklet.working, *booklet.finishing):
        for number, step in enumerate(part.steps, 1):
            drawn = _OF_A_NUMBER.fullmatch(step.drawing)
            if drawn is None or int(drawn[1]) == around:
                continue
            if int(drawn[1]) != DRAWN_FOR or f"Drawn for {DRAWN_FOR} around" not in step.note:
                yield Remark(
                    blocks=True,
                    where=f"{part.title}, step {number}",
                    what=f"Its drawing shows {drawn[1]} around; the rope has {count(around)}.",
                    mend=AGAIN,
                )
