"""Cuts runs into blocks of ten, blocks into columns, and columns into pages."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import ceil

from engine.booklet.papers import Paper
from engine.counting.stringing import Run

TEN = 10


@dataclass(frozen=True)
class Block:
    """Ten runs, the last block of a list may have fewer: their lines, their codes, and the beads strung so far."""

    text: str
    codes: tuple[str, ...]
    so_far: int


@dataclass(frozen=True)
class Column:
    """Blocks one below the other, and the sum of their beads."""

    number: int
    blocks: tuple[Block, ...]
    beads: int


@dataclass(frozen=True)
class ListPage:
    """What stands on one page: columns side by side, together `height` mm high; `figure` is the picture behind them.

    `ticked`: every entry has a box.
    """

    columns: tuple[Column, ...]
    height: float
    figure: str
    ticked: bool = True


@dataclass(frozen=True)
class Shape:
    """How a list is cut: into so many columns of that paper, counts `wide` digits wide; figures begin with `name`."""

    name: str
    paper: Paper
    columns: int
    wide: int

    def pages(
        self, runs: Sequence[Run], first: int, made: Sequence[ListPage] = (), before: int = 0
    ) -> tuple[ListPage, ...]:
        """The pages of those runs behind the pages `made`, on which `before` beads stand; columns are numbered on.

        On the first page a column holds `first` blocks; the last one is spread over all columns.
        """
        blocks, number = blocks_of(runs, self.wide, before), last_column(made) + 1
        pages: list[ListPage] = []
        at = 0
        while at < len(blocks):
            deep = min(self.paper.blocks if at else first, ceil((len(blocks) - at) / self.columns))
            here = blocks[at : at + deep * self.columns]
            columns = columns_of(here, deep, number, before)
            figure = f"{self.name}-{len(made) + len(pages) + 1}"
            pages.append(ListPage(columns, max(_height(column, self.paper) for column in columns), figure))
            at, number, before = at + len(here), number + len(columns), here[-1].so_far
        return tuple(pages)

    def short_group(self, runs: Sequence[Run]) -> ListPage:
        """A group that is read as one, without boxes, in columns of one length."""
        many = ceil(len(runs) / TEN)
        blocks = blocks_of(runs, self.wide, size=ceil(len(runs) / many))
        columns = columns_of(blocks, ceil(len(blocks) / self.columns), 1, 0)
        height = max(sum(len(block.codes) for block in column.blocks) for column in columns) * self.paper.line
        return ListPage(columns, round(height, 2), f"{self.name}-group", ticked=False)


class Room:
    """How much is left of the page that is being filled with lists, in mm, as far as it can be told beforehand."""

    def __init__(self, paper: Paper, left: float) -> None:
        self.paper, self.left = paper, left

    def make_room(self, high: float) -> None:
        """A new page is begun where something so high has no room."""
        if high > self.left:
            self.left = self.paper.page

    def blocks(self, head: float) -> int:
        """How many blocks of ten entries fit below a head, or where none does on the next page.

        There the head goes along, in large print the blocks stand alone.
        """
        paper = self.paper
        here, next_page = (self._fit(left - head) for left in (self.left, paper.page))
        return min(paper.blocks, here or (paper.blocks if paper.large else max(1, next_page)))

    def _fit(self, high: float) -> int:
        return max(0, int((high - self.paper.foot) / (TEN * self.paper.line + self.paper.total)))

    def put(self, head: float, pages: Sequence[ListPage]) -> None:
        """The first of those pages goes below its head; every other is a page of its own."""
        for place, page in enumerate(pages):
            if place:
                self.left = 0.0
            self.take((self.paper.goes_on if place else head) + page.height)

    def take(self, high: float) -> None:
        """Something so high is put on the page, or on the next one."""
        self.make_room(high)
        self.left -= high


def blocks_of(runs: Sequence[Run], wide: int, so_far: int = 0, size: int = TEN) -> tuple[Block, ...]:
    """Blocks of ten runs, or of so many, after `so_far` beads; counts are padded to `wide` digits."""
    blocks = []
    for at in range(0, len(runs), size):
        some = runs[at : at + size]
        so_far += sum(run.beads for run in some)
        lines = "\n".join(f"{_pad(run.beads, wide)}{run.beads} {run.code}" for run in some)
        blocks.append(Block(lines, tuple(run.code for run in some), so_far))
    return tuple(blocks)


def columns_of(blocks: Sequence[Block], deep: int, number: int, before: int) -> tuple[Column, ...]:
    """Columns of `deep` blocks from `number` on; `before` beads stand in those before."""
    columns: list[Column] = []
    for at in range(0, len(blocks), deep):
        part = tuple(blocks[at : at + deep])
        columns.append(Column(number + len(columns), part, part[-1].so_far - before))
        before = part[-1].so_far
    return tuple(columns)


def last_column(pages: Sequence[ListPage]) -> int:
    """The number of the last column with boxes on those pages, nought for none."""
    return max((column.number for page in pages if page.ticked for column in page.columns), default=0)


def _height(column: Column, paper: Paper) -> float:
    """Of a column, in mm."""
    entries = sum(len(block.codes) for block in column.blocks)
    return round(entries * paper.line + len(column.blocks) * paper.total + paper.foot, 2)


def _pad(beads: int, wide: int) -> str:
    """Two spaces for every digit that is missing: in print they are as wide."""
    return "  " * (wide - len(str(beads)))
