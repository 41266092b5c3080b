"""The proof: everything remarked on a booklet whose PDF was read back, what would mislead a buyer first."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from engine.booklet.choices import Choices
from engine.booklet.compose import compose
from engine.booklet.proof.drawn_charts import chart_remarks
from engine.booklet.proof.edition_lines import OtherPrint, edition_remarks
from engine.booklet.proof.gaps import advice, file_remarks
from engine.booklet.proof.letters import letter_remarks
from engine.booklet.proof.pages import page_remarks
from engine.booklet.proof.printed_lists import list_remarks, read_lists
from engine.booklet.proof.readback import ReadBooklet, Remark
from engine.booklet.proof.totals import total_remarks
from engine.cabinet.bead import Bead
from engine.counting.answers import answer
from engine.counting.workshop import Workshop
from engine.pattern.pattern import Pattern


@dataclass(frozen=True)
class Proof:
    """Remarks, and what was read: pages, entries of lists, beads of charts."""

    remarks: tuple[Remark, ...]
    pages: int
    entries: int
    beads: int

    @property
    def blocks(self) -> bool:
        """Whether something would mislead a buyer."""
        return any(remark.blocks for remark in self.remarks)


def proof(
    pattern: Pattern,
    choices: Choices,
    workshop: Workshop,
    read: ReadBooklet,
    beside: Iterable[OtherPrint] = (),
    cabinet: Sequence[Bead] = (),
) -> Proof:
    """The proof of the booklet that was printed of that pattern, in its hand, with those choices.

    `beside` are other prints of the same edition, `cabinet` the beads that could tell look-alikes apart. Raises
    SizeError, PlanError or ChoiceError where the size cannot be worked.
    """
    booklet, lists = compose(pattern, choices, workshop), read_lists(read)
    answered = answer(pattern, choices.question, workshop, choices.plan, choices.spare, choices.units)
    remarks = (
        *list_remarks(answered.size, answered.stringing, booklet.lists, lists),
        *total_remarks(pattern, answered.stringing, lists, read),
        *chart_remarks(booklet.charts, booklet.reading.example, pattern.palette, read),
        *edition_remarks(pattern, choices, read, beside),
        *page_remarks(booklet, read, pattern.around),
        *file_remarks(pattern, read),
        *letter_remarks(pattern, choices, read),
        *advice(pattern, choices, answered, cabinet),
    )
    return Proof(
        tuple(sorted(remarks, key=lambda remark: not remark.blocks)),
        len(read.pages),
        sum(len(listed.runs) for listed in lists),
        sum(not one.of_list for page in read.pages for one in page.beads),
    )
