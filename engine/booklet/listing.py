"""The words of a shop listing for a published pattern, of the same numbers as its booklets; plain and as HTML."""

from __future__ import annotations

from collections.abc import Collection, Iterable
from dataclasses import dataclass
from html import escape
from typing import NamedTuple

from engine.booklet.chapters.needs import things
from engine.booklet.choices import Choices
from engine.booklet.measures import Measures
from engine.booklet.terms import TERMS
from engine.counting.answers import Answer, answer
from engine.counting.findings import findings
from engine.counting.finished import asked_in_words
from engine.counting.size_table import size_table
from engine.counting.workshop import Workshop
from engine.errors import EngineError
from engine.pattern.pattern import Pattern
from engine.units import count, counted, grams, length, millimetres

LEAST_TITLE, MOST_TITLE = 20, 500
LEAST_DESCRIPTION, MOST_DESCRIPTION = 80, 50_000
SHORTENED = "…"
NOT_FOR_CHILDREN = "Small parts: the finished piece is not for children under three."


class GivenBooklet(NamedTuple):
    """A booklet that the buyer gets: which one, and its pages."""

    name: str
    pages: int


class Seen(NamedTuple):
    """A picture of the listing: its file, and its alternative text."""

    file: str
    words: str


@dataclass(frozen=True)
class Section:
    """A part of the listing: its heading, then its lines, as a list where there are several things of one sort."""

    heading: str
    lines: tuple[str, ...]
    listed: bool = False


@dataclass(frozen=True)
class Listing:
    """Title and description, cut to the lengths that were asked for, the whole text in sections, the pictures."""

    title: str
    description: str
    sections: tuple[Section, ...]
    pictures: tuple[Seen, ...]


def listing(
    pattern: Pattern,
    choices: Choices,
    workshop: Workshop,
    booklets: Iterable[GivenBooklet],
    hands: Collection[str],
    pictures: Iterable[Seen],
    longest_title: int,
    longest_description: int,
) -> Listing:
    """The listing of an edition: of its pattern, choices and numbers as they were kept. Raises EngineError.

    `hands` are those for which there is a stringing card.
    """
    answered = answer(pattern, choices.question, workshop, choices.plan, choices.spare, choices.units)
    sections = tuple(
        section
        for section in (
            Section("What it is", _what(answered, choices)),
            Section("What you get", _given(booklets, hands, choices), listed=True),
            Section("Sizes", _sizes(answered, choices), listed=True),
            Section("Materials", _materials(answered, choices), listed=True),
            Section("Skills", _skills(pattern, choices)),
            Section("Crochet terms", (TERMS[choices.terms].note,)),
            Section(TERMS[choices.terms].spelled("Licence"), tuple(choices.imprint.licence.splitlines())),
            Section("Safety", (NOT_FOR_CHILDREN,)),
        )
        if section.lines
    )
    return Listing(
        title=cut(f"{pattern.title}: bead crochet rope pattern, {pattern.around} around, PDF", longest_title),
        description=cut(_as_text(sections), longest_description),
        sections=sections,
        pictures=tuple(pictures),
    )


def plain_text(made: Listing) -> str:
    """The listing as plain text, every section under its heading."""
    parts = [
        _headed("Title", made.title),
        _headed("Description", made.description),
        _headed("The whole text", _as_text(made.sections)),
    ]
    if made.pictures:
        parts.append(_headed("Alternative texts", "\n".join(f"{seen.file}: {seen.words}" for seen in made.pictures)))
    return "\n\n".join(parts) + "\n"


def html_text(made: Listing) -> str:
    """The listing as a page of its own, without style or script; whatever people wrote in it is escaped."""
    body = [f"<h1>{escape(made.title)}</h1>"]
    for section in made.sections:
        body.append(f"<h2>{escape(section.heading)}</h2>")
        if section.listed:
            body.append(f"<ul>{''.join(f'<li>{escape(line)}</li>' for line in section.lines)}</ul>")
        else:
            body += [f"<p>{escape(line)}</p>" for line in section.lines if line.strip()]
    if made.pictures:
        body.append("<h2>Alternative texts</h2>")
        rows = (f"<dt>{escape(seen.file)}</dt><dd>{escape(seen.words)}</dd>" for seen in made.pictures)
        body.append(f"<dl>{''.join(rows)}</dl>")
    head = f'<meta charset="utf-8"><title>{escape(made.title)}</title>'
    return f'<!doctype html>\n<html lang="en"><head>{head}</head>\n<body>\n{chr(10).join(body)}\n</body></html>\n'


def cut(text: str, most: int) -> str:
    """The text, or as many of its whole words as fit into so many characters with what shows that it goes on."""
    if len(text) <= most:
        return text
    kept = text[: most - len(SHORTENED) + 1]
    words = kept.rpartition(" ")[0] or kept[:-1]
    return f"{words.rstrip(' ,;:.–')}{SHORTENED}"


def _as_text(sections: Iterable[Section]) -> str:
    return "\n\n".join(
        _headed(section.heading, "\n".join(f"- {line}" if section.listed else line for line in section.lines))
        for section in sections
    )


def _headed(heading: str, text: str) -> str:
    return f"{heading.upper()}\n{text}"


def _what(answered: Answer, choices: Choices) -> tuple[str, ...]:
    pattern, size = answered.pattern, answered.size
    stitch = TERMS[choices.terms].stitch(size.stitch)
    colours = counted(sum(need.beads > 0 for need in answered.materials.colours), "colour")
    colours = TERMS[choices.terms].spelled(colours)
    by = f" by {choices.imprint.maker}" if choices.imprint.maker else ""
    return (
        f"“{pattern.title}”{by} is a pattern for a bead crochet rope, {pattern.around} beads around, in {colours}, "
        f"worked in {stitch}. You get files to print or to read on a screen, not the finished piece.",
        f"As a {_piece(answered, choices)} it takes about {counted(size.beads, 'bead')}. The rope is about "
        f"{millimetres(size.thickness_mm)} thick ({TERMS[choices.terms].translated(size.rope.source)}).",
    )


def _piece(answered: Answer, choices: Choices) -> str:
    """What the booklet is for: "piece of 45.0 cm with a clasp"."""
    return answered.size.closure.piece.format(length(answered.size.finished_mm, choices.units))


def _given(booklets: Iterable[GivenBooklet], hands: Collection[str], choices: Choices) -> tuple[str, ...]:
    cards = [f" ({hand}-handed)" if len(hands) > 1 else "" for hand in hands]
    return (
        *(f"PDF booklet: {booklet.name}, {counted(booklet.pages, 'page')}" for booklet in booklets),
        *(
            f"Stringing card for your phone{card}, an HTML file: keeps your place bead by bead, works offline"
            for card in cards
        ),
        "Chart, stringing list by threads, bill of materials, working and finishing guide in every booklet",
        f"Edition {choices.published}, proofed against its chart",
    )


def _sizes(answered: Answer, choices: Choices) -> tuple[str, ...]:
    """The size that is listed in full, then those of the booklet's table."""
    rows = size_table(answered, choices.units)
    listed = f"{_piece(answered, choices)}, {counted(answered.size.beads, 'bead')}"
    return (
        f"The stringing list is for a {listed}",
        *(
            f"{row.size.name}, {asked_in_words(row.size.question, choices.units)}: "
            f"{counted(row.answer.size.beads, 'bead')}"
            for row in rows
        ),
        "The booklet has a table of these sizes, and the sum for any other",
    )


def _materials(answered: Answer, choices: Choices) -> tuple[str, ...]:
    """The beads by colour, of the size that the booklet is for; thread, hook, needles, what the closure asks for."""
    measures, supplies, terms = Measures(choices.units), findings(answered.size), TERMS[choices.terms]
    needed = dict(things(answered, supplies, measures))
    needed["Thread"] = f"{supplies.thread}, {measures.thread(answered.materials.buy_thread_mm)}"
    lines = (
        (need, ", ".join(filter(None, (need.kind.name, entry.finish, entry.maker_code))))
        for need, entry in zip(answered.materials.colours, answered.pattern.palette, strict=True)
        if need.beads
    )
    return (
        f"For a {_piece(answered, choices)}, beads without spare",
        *(f"{need.name} ({sort}): {counted(need.beads, 'bead')}, {grams(need.grams)}" for need, sort in lines),
        *(f"{name}: {terms.spelled(text).rstrip('.')}" for name, text in needed.items()),
    )


def _skills(pattern: Pattern, choices: Choices) -> tuple[str, ...]:
    stitch = TERMS[choices.terms].stitch(pattern.stitch_worked)
    level = (f"Level: {choices.skill.lower()}.",) if choices.skill else ()
    return (*level, f"You string beads by a list and work rounds in {stitch}; both are explained step by step.")


def read_longest(text: str, least: int, most: int, field: str) -> int:
    """A greatest length as typed. Raises EngineError."""
    number = text.replace(",", "").strip()
    if not (number.isascii() and number.isdigit() and len(number) < 8 and least <= int(number) <= most):
        raise EngineError(f"Write how many characters, {count(least)} to {count(most)}.", field)
    return int(number)
