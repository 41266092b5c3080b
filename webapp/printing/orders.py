"""What is to be printed, the steps of a print, and the print itself, in this process."""

from __future__ import annotations

import gc
from abc import ABC, abstractmethod
from collections.abc import Callable
from dataclasses import dataclass, replace
from functools import partial
from importlib import import_module
from types import ModuleType
from typing import TYPE_CHECKING

from engine.booklet.choices import Choices
from engine.booklet.compose import compose
from engine.booklet.errata import Errata
from engine.booklet.proof.edition_lines import OtherPrint
from engine.booklet.proof.proof import Proof, proof
from engine.cabinet.bead import Bead
from engine.counting.workshop import Workshop
from engine.errors import SizeError
from engine.pattern.palette import Entry, Palette
from engine.pattern.pattern import Pattern
from engine.units import count
from webapp.machine import PANGO, Machine, advice
from webapp.printing.errors import PrintError
from webapp.printing.html import Image, errata_page, page
from webapp.printing.pictures import Begin, awaited, when_asked
from webapp.printing.stamps import paint_album

if TYPE_CHECKING:
    from webapp.printing.pdf import Printed

Step = Callable[[str], None]
COUNTING, SETTING, LAYING, DRAWING, WRITING = STEPS = (
    "Counting beads",
    "Setting the pages",
    "Laying out",
    "Drawing the pictures",
    "Writing the PDF",
)
READING = "Reading it back"
MOST_ENTRIES = 36_000  # with ten photographs some 40 s of processor time and 730 MB; 39,000 take 800 MB
TOO_MANY = (
    "The lists of this booklet would have {} entries, and at most {} are printed: choose a shorter size, or string "
    "from the page of the list."
)
CANNOT = "This computer cannot print booklets yet: Pango is missing. {}"


class AnyOrder(ABC):
    """Something to be printed: which booklet it is, the steps of its print, and the print itself. It can be pickled."""

    @property
    @abstractmethod
    def name(self) -> str:
        """Which booklet of a pattern it is."""

    @property
    @abstractmethod
    def steps(self) -> tuple[str, ...]:
        """The steps of this print in order."""

    @property
    def revision(self) -> int:
        """Of which state of the pattern; nought for none."""
        return 0

    @property
    def published(self) -> int:
        """For which edition; nought for none."""
        return 0

    @property
    def booklet(self) -> Order | None:
        """The same where it is a booklet that is to be printed."""
        return None

    @abstractmethod
    def carry_out(self, step: Step = lambda name: None, begin: Begin = when_asked) -> Printed:
        """The PDF and its number of pages. Raises as `printed` does."""

    def proof(self, made: Printed, step: Step) -> Proof | None:
        """The proof of what was printed; None where it is not to be read back."""
        return None


@dataclass(frozen=True)
class Order(AnyOrder):
    """A pattern that is already in the hand wanted, what was chosen, and the maker's own numbers.

    `photographs` are JPEG bytes by the key that the choices name; `proofread`: the finished PDF is read back, too, and
    held to the prints `beside` it of the same edition; beads of the `cabinet` are named where they would help.
    """

    pattern: Pattern
    choices: Choices
    workshop: Workshop
    proofread: bool = False
    photographs: tuple[tuple[str, bytes], ...] = ()
    beside: tuple[OtherPrint, ...] = ()
    cabinet: tuple[Bead, ...] = ()

    def __post_init__(self) -> None:
        object.__setattr__(self, "workshop", replace(self.workshop, kinds=dict(self.workshop.kinds)))

    @property
    def name(self) -> str:
        return self.choices.named(self.pattern.hand)

    @property
    def steps(self) -> tuple[str, ...]:
        return (*STEPS, READING) if self.proofread else STEPS

    @property
    def revision(self) -> int:
        return self.choices.revision

    @property
    def published(self) -> int:
        return self.choices.published

    @property
    def booklet(self) -> Order:
        return self

    def check(self) -> None:
        """Raises an error of the engine where the size cannot be worked, the chart not be read on that paper, or the
        lists are too long to be printed in a minute and with 800 MB.
        """
        booklet = compose(self.pattern, self.choices, self.workshop)
        entries = sum(listed.entries for listed in booklet.lists)
        if entries > MOST_ENTRIES:
            raise SizeError(TOO_MANY.format(count(entries), count(MOST_ENTRIES)), "length")

    def carry_out(self, step: Step = lambda name: None, begin: Begin = when_asked) -> Printed:
        return printed(self, step, begin)

    def proof(self, made: Printed, step: Step) -> Proof | None:
        if not self.proofread:
            return None
        step(READING)
        return proofed(self, made.pdf, made.lost)


@dataclass(frozen=True)
class ErrataOrder(AnyOrder):
    """A sheet of errata that is to be printed."""

    errata: Errata

    @property
    def name(self) -> str:
        return "Errata"

    @property
    def steps(self) -> tuple[str, ...]:
        return (SETTING, LAYING, WRITING)

    def carry_out(self, step: Step = lambda name: None, begin: Begin = when_asked) -> Printed:
        setter = warm()
        step(SETTING)
        return _set(setter, errata_page(self.errata), {}, step)


@dataclass(frozen=True)
class CopyOrder(AnyOrder):
    """A kept booklet that is to have a line at the foot of every page."""

    pdf: bytes
    line: str

    @property
    def name(self) -> str:
        return "Copy"

    @property
    def steps(self) -> tuple[str, ...]:
        return (LAYING, WRITING)

    def carry_out(self, step: Step = lambda name: None, begin: Begin = when_asked) -> Printed:
        from webapp.printing.copies import line_page, stamped

        made = _set(warm(), line_page(self.pdf, self.line), {}, step, variant=None)
        copy, pages = stamped(self.pdf, made.pdf)
        return made._replace(pdf=copy, pages=pages)


def print_booklet(order: Order, step: Step = lambda name: None, begin: Begin = when_asked) -> bytes:
    """The PDF of that order. As `printed`."""
    return printed(order, step, begin).pdf


def printed(order: Order, step: Step = lambda name: None, begin: Begin = when_asked) -> Printed:
    """The PDF of that order and its number of pages; `step` is told every step of STEPS as it begins.

    `begin` sets about the shaded pictures, which are waited for when the pages stand. Raises PrintError, or an error of
    the engine where the size cannot be worked.
    """
    step(COUNTING)
    booklet = compose(order.pattern, order.choices, order.workshop)
    waiting = begin(order.pattern, booklet.pictures)
    setter = warm()
    step(SETTING)
    text, images = page(booklet, {**awaited(booklet.pictures, waiting), **dict(order.photographs)})
    return _set(setter, text, images, step)


def proofed(order: Order, pdf: bytes, lost: str = "") -> Proof:
    """The proof of the PDF that was printed of that order, with those letters lost."""
    from webapp.printing.proofread import read_back

    return proof(order.pattern, order.choices, order.workshop, read_back(pdf, lost), order.beside, order.cabinet)


def rehearse(begin: Begin = when_asked) -> None:
    """Prints and proofs a small booklet that nobody keeps: the next finds templates, styles, fonts, drawings ready."""
    paint_album()
    beads = Palette((Entry("A", "Dark", "#20242a"), Entry("B", "Light", "#f5eddc")))
    order = Order(Pattern("Rehearsal", 6, beads, bytes((0, 1)) * 30), Choices(), Workshop())
    proofed(order, printed(order, begin=begin).pdf)
    gc.collect()


def _set(setter: ModuleType, text: str, images: dict[str, Image], step: Step, **how: str | None) -> Printed:
    """Sets the pages; letters that no font of this computer has become question marks. Raises PrintError."""

    def once(text: str) -> Printed:
        steps = (partial(step, name) for name in (LAYING, DRAWING, WRITING))
        made: Printed = setter.write_pdf(text, images, *steps, **how)
        return made

    try:
        return _set_twice(setter, once, text)
    except setter.NotSet as error:
        raise PrintError(str(error)) from error


def _set_twice(setter: ModuleType, once: Callable[[str], Printed], text: str) -> Printed:
    """The print, where fonts lack letters with "?" in their places; the letters are named as lost."""
    try:
        return once(text)
    except setter.NotSet as error:
        if not error.letters:
            raise
        return once(text.translate(dict.fromkeys(map(ord, error.letters), "?")))._replace(lost=error.letters)


def warm() -> ModuleType:
    """The module that sets pages, loaded only here: it takes a second, and libraries that a computer may lack.

    Raises PrintError where it lacks them.
    """
    try:
        return import_module("webapp.printing.pdf")
    except OSError as error:
        raise PrintError(CANNOT.format(advice(PANGO, Machine()))) from error
