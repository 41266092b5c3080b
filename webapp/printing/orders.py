"""What is to be printed, the steps of a print, and the print itself, in this process."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from importlib import import_module
from types import ModuleType
from typing import TYPE_CHECKING

from engine.booklet.choices import Choices
from engine.booklet.compose import compose
from engine.booklet.proof.proof import Proof, proof
from engine.counting.answers import answer
from engine.counting.sizes import Workshop
from engine.errors import EngineError
from engine.pattern.pattern import Pattern
from webapp.machine import PANGO, Machine, advice
from webapp.printing.html import Image, page
from webapp.printing.pictures import drawn

if TYPE_CHECKING:
    from webapp.printing.pdf import Printed

Step = Callable[[str], None]
COUNTING, DRAWING, SETTING, LAYING, WRITING = STEPS = (
    "Counting beads", "Drawing the pictures", "Setting the pages", "Laying out", "Writing the PDF")
READING = "Reading it back"
CANNOT = "This computer cannot print booklets yet: Pango is missing. {}"


class PrintError(EngineError):
    """A booklet that could not be printed, in one sentence."""

    code = "print"


@dataclass(frozen=True)
class Order:
    """A pattern that is already in the hand wanted, what was chosen, and the maker's own numbers. It can be pickled.

    `proofread`: the finished PDF is read back and proofed, too.
    """

    pattern: Pattern
    choices: Choices
    workshop: Workshop
    proofread: bool = False

    def __post_init__(self) -> None:
        object.__setattr__(self, "workshop", replace(self.workshop, kinds=dict(self.workshop.kinds)))

    @property
    def steps(self) -> tuple[str, ...]:
        """The steps of this print in order."""
        return (*STEPS, READING) if self.proofread else STEPS

    def check(self) -> None:
        """Raises SizeError, PlanError or ChoiceError where the size cannot be worked."""
        answer(self.pattern, self.choices.question, self.workshop, self.choices.plan, self.choices.spare)


def print_booklet(order: Order, step: Step = lambda name: None) -> bytes:
    """The PDF of that order. As `printed`."""
    return printed(order, step).pdf


def printed(order: Order, step: Step = lambda name: None) -> Printed:
    """The PDF of that order and its number of pages; `step` is told every step of STEPS as it begins.

    Raises PrintError, or an error of the engine where the size cannot be worked.
    """
    step(COUNTING)
    booklet = compose(order.pattern, order.choices, order.workshop)
    setter = warm()
    step(DRAWING)
    pictures = drawn(order.pattern, booklet.pictures)
    step(SETTING)
    text, images = page(booklet, pictures)
    try:
        return _set(setter, text, images, step)
    except setter.NotSet as error:
        raise PrintError(str(error)) from error


def proofed(order: Order, pdf: bytes) -> Proof:
    """The proof of the PDF that was printed of that order."""
    from webapp.printing.proofread import read_back

    return proof(order.pattern, order.choices, order.workshop, read_back(pdf))


def _set(setter: ModuleType, text: str, images: dict[str, Image], step: Step) -> Printed:
    """Sets the pages; letters that no font of this computer has become question marks."""
    def once(text: str) -> Printed:
        made: Printed = setter.write_pdf(text, images, lambda: step(LAYING), lambda: step(WRITING))
        return made

    try:
        return once(text)
    except setter.NotSet as error:
        if not error.letters:
            raise
        return once(text.translate(dict.fromkeys(map(ord, error.letters), "?")))


def warm() -> ModuleType:
    """The module that sets pages, loaded only here: it takes a second, and libraries that a computer may lack.

    Raises PrintError where it lacks them.
    """
    try:
        return import_module("webapp.printing.pdf")
    except OSError as error:
        raise PrintError(CANNOT.format(advice(PANGO, Machine()))) from error
