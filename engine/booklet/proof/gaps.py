"""What a booklet lacks or makes hard, though nothing that it says is wrong: advice before it is published."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from engine.booklet.choices import Choices
from engine.booklet.proof.printed_lists import AGAIN
from engine.booklet.proof.readback import ReadBooklet, ReadPage, Remark
from engine.cabinet.bead import Bead
from engine.cabinet.finishes_in_words import finishes_in_words
from engine.cabinet.suggestions import suggestion
from engine.counting.answers import Answer
from engine.counting.ring_fit import fit_in_words
from engine.counting.rings import nearest_ring
from engine.pattern.colour import PLAIN, LookAlike, look_alikes
from engine.pattern.colour_changes import nearest_change
from engine.pattern.palette import Palette
from engine.pattern.pattern import Pattern
from engine.units import count, plain

FONT = "Ropewright"
LEAST_WORDS = 3  # beside the page's number and the running title


def file_remarks(pattern: Pattern, read: ReadBooklet) -> Iterator[Remark]:
    """Fonts that are missing, pages with nothing on them, no title, no tags."""
    lending = {name for name, _ in read.borrowed}
    for name, inside in sorted(read.fonts):
        if not inside:
            yield Remark(
                True, "Fonts", f"The font {name} is not in the file; another computer would print other letters.", AGAIN
            )
        elif not name.split("+")[-1].startswith(FONT) and name not in lending:
            yield Remark(True, "Fonts", f"{name} stands in for a font of the booklet that was not found.", AGAIN)
    for page in read.pages:
        if _empty(page, pattern.title):
            yield Remark(True, f"Page {page.number}", "There is nothing on this page.", AGAIN)
    if not read.title:
        yield Remark(True, "The file", "It has no title, which a screen reader would say first.", AGAIN)
    if not read.tagged:
        yield Remark(True, "The file", "It is not tagged, so a screen reader cannot find its way.", AGAIN)


def advice(pattern: Pattern, choices: Choices, answered: Answer, cabinet: Sequence[Bead] = ()) -> Iterator[Remark]:
    """Look-alike colours, codes, licence and contact that are missing, rings that do not close, estimates."""
    palette, imprint = pattern.palette, choices.imprint
    for pair in look_alikes(palette)[:3]:
        one, other = palette[pair.first], palette[pair.second]
        whom = "" if pair.sight == PLAIN else f" to {pair.sight} eyes"
        yield Remark(
            blocks=False,
            where="Colours",
            what=f"{one.code} {one.name} and {other.code} {other.name} look alike{whom} "
            f"(ΔE {plain(pair.difference, 1)}).",
            mend=f"{_what_helps(palette, pair, cabinet)} or say in a note how to tell them apart. They are "
            f"{finishes_in_words(one, other)}.",
            at="colourways#alike",
        )
    without = [entry.code for entry in palette if not entry.maker_code]
    if without:
        named = ", ".join(without[:6]) + (" and others" if len(without) > 6 else "")
        yield Remark(
            blocks=False,
            where="Beads",
            what=f"No maker’s code for {named}: buyers will ask which bead it is.",
            mend="Write the code beside the bead in the palette.",
            at="edit#palette",
        )
    if not imprint.licence:
        yield Remark(
            blocks=False,
            where="Licence",
            what="Nothing says what a buyer may do with the pattern.",
            mend="Write a licence line in the settings.",
            at="settings#licence",
        )
    if not imprint.contact:
        yield Remark(
            blocks=False,
            where="Contact",
            what="A buyer who finds a mistake cannot tell you.",
            mend="Write a contact in the settings.",
            at="settings#contact",
        )
    yield from _skill_and_time(choices)
    yield from _photographs(choices)
    yield from _ring(answered)
    if not answered.size.rope.measured:
        yield Remark(
            blocks=False,
            where="The maker’s sample",
            what=f"Lengths rest on no swatch: {answered.size.rope.source}.",
            mend="Work a sample, measure it and keep it as a swatch.",
            at="settings#swatches",
        )


def _skill_and_time(choices: Choices) -> Iterator[Remark]:
    """A buyer asks both before anything else."""
    asked = (("how hard it is", choices.skill), ("how many hours it takes", choices.own.hours))
    lacking = [what for what, said in asked if not said]
    if lacking:
        yield Remark(
            blocks=False,
            where="Cover",
            what=f"Nothing says {' or '.join(lacking)}.",
            mend="Say it once beside your words; it stands on every booklet.",
            at="own_words",
        )


def _what_helps(palette: Palette, pair: LookAlike, cabinet: Sequence[Bead]) -> str:
    """The bead of the cabinet that would tell the two apart, or else another colour that would."""
    if found := suggestion(palette, pair, cabinet):
        return f"{found.bead.name} of your cabinet would be told from all others in the place of " + (
            f"{palette[found.entry].code}. Take that,"
        )
    change = nearest_change(palette, pair)
    if change is None:
        return "Choose another colour,"
    return f"In {change.colour}, {change.words}, {palette[change.entry].code} would be told from all others. Take that,"


def _photographs(choices: Choices) -> Iterator[Remark]:
    if not choices.photographs:
        yield Remark(
            blocks=False,
            where="Photographs",
            what="There is no photograph of the worked piece.",
            mend="Add one: buyers look at it first.",
            at="own_words#photographs",
        )
    for number, photograph in enumerate(choices.photographs, 1):
        if not photograph.seen:
            yield Remark(
                blocks=False,
                where=f"Photograph {number}",
                what="Nothing says in words what is seen in it.",
                mend="Describe it for those who do not see it.",
                at="own_words#photographs",
            )


def _ring(answered: Answer) -> Iterator[Remark]:
    """A ring has to close, near what was asked for."""
    size = answered.size
    if size.closure.worked_shut and not size.closes:
        yield Remark(
            blocks=False,
            where="The ring",
            what=f"At {count(size.beads)} beads its colours do not meet at the seam; the nearest "
            f"ring that closes has {count(nearest_ring(size.pattern, size.beads))}.",
            mend="Round the size to a ring that closes.",
            at="booklet",
        )
    if far := fit_in_words(size):
        yield Remark(
            blocks=False,
            where="The ring",
            what=" ".join(far),
            mend="Take a ring beside it, or change the chart so that it closes nearer.",
            at="booklet",
        )


def _empty(page: ReadPage, title: str) -> bool:
    lines = (line for line in page.text.split("\n") if not line.strip().endswith(", goes on"))
    said = " ".join(" ".join(lines).split()).replace(" ".join(title.split()), "")
    words = re.sub(rf"\b{page.number} of \d+\b", "", said).split()
    return len(words) < LEAST_WORDS and not page.beads and not page.pictures
