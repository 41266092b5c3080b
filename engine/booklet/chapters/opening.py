"""Cover, what is said about the pattern, the maker's sample, and which edition it is."""

from __future__ import annotations

import re
from dataclasses import dataclass

from engine.booklet.choices import Choices, Imprint
from engine.booklet.papers import LARGE, STANDARD, Paper
from engine.booklet.terms import TERMS, Terms
from engine.counting.answers import Answer
from engine.dates import day_of
from engine.pattern.pattern import Pattern
from engine.units import count, counted, degrees, fixed, length, millimetres, plain

Facts = tuple[tuple[str, str], ...]

LEAD = 150  # letters of the notes that may stand on the cover
COVER_PX, STRIP_PX = 1120, (1240, 158)
COVER_MM = {"A4": 172.0, "Letter": 158.0, "A5": 112.0}  # height of the picture
LARGE_COVER_MM = 62.0
PRINTS = {STANDARD: "Standard print", LARGE: "Large print"}
MOST_IN_A_RING = 6000  # beads; a longer ring would only show as a thin line
SHORT_TITLE, LONG_TITLE = 28, 64  # letters


@dataclass(frozen=True)
class Picture:
    """A shaded picture to be drawn: `view` of that many beads (None: as many as the view wants), size in px."""

    key: str
    view: str
    beads: int | None
    width: int
    height: int
    background: str


@dataclass(frozen=True)
class Cover:
    """What the first page says; `size` is that of its title: short, long or longest."""

    lead: str
    facts: Facts
    maker: str
    edition: str
    alt: str
    size: str


@dataclass(frozen=True)
class Sample:
    """What the maker's sample measures, and the lines in which a buyer writes down their own."""

    facts: Facts
    own: tuple[str, ...]
    sum: str


def pictures(answered: Answer, choices: Choices, page: Paper) -> tuple[Picture, ...]:
    """The cover, a ring where the piece is one, and a strip of the rope; none where ink is saved."""
    if choices.ink_saving:
        return ()
    ring = answered.size.closure.worked_shut and answered.size.beads <= MOST_IN_A_RING
    view, beads = ("ring", answered.size.beads) if ring else ("necklace", None)
    share = LARGE_COVER_MM / page.text if page.large else COVER_MM[page.name] / page.width
    ground = "#ffffff" if page.large else "#eef0ec"
    found = Picture(
        key="picture-cover", view=view, beads=beads, width=COVER_PX, height=round(COVER_PX * share), background=ground
    )
    return (found,) if page.large else (found, Picture("picture-strip", "strip", None, *STRIP_PX, "#ffffff"))


def cover(pattern: Pattern, answered: Answer, choices: Choices) -> Cover:
    """The first page."""
    size, letters = answered.size, len(pattern.title)
    used = [need for need in answered.materials.colours if need.beads]
    kinds = ", ".join(dict.fromkeys(need.kind.name for need in used))
    inside = "inside" if answered.size.closure.worked_shut else "finished"
    facts = [
        ("Around", f"{pattern.around} beads"),
        ("Beads", f"{kinds}, {counted(len(used), 'colour')}"),
        ("Size", f"{length(size.finished_mm, choices.units)} {inside}"),
        ("Beads in all", count(size.beads)),
    ]
    if size.rope.measured:
        facts.insert(2, ("Thickness", millimetres(size.thickness_mm)))
    return Cover(
        lead=_lead(pattern, len(used)),
        facts=tuple(facts),
        maker=choices.imprint.maker,
        edition=edition(choices, pattern),
        alt=f"The rope, worked in {', '.join(need.name for need in used[:8])}.",
        size="short" if letters <= SHORT_TITLE else "long" if letters <= LONG_TITLE else "longest",
    )


def _lead(pattern: Pattern, colours: int) -> str:
    """The first sentence of the notes, or what can be said of any rope."""
    first = re.split(r"(?<=[.!?])\s|\n", pattern.notes.strip(), maxsplit=1)[0].strip()
    if 0 < len(first) <= LEAD:
        return first
    return f"A bead crochet rope, {pattern.around} beads around, in {counted(colours, 'colour')}."


def edition(choices: Choices, pattern: Pattern) -> str:
    """Which state it is, of which day if that is known, and for whom."""
    state = (
        f"Edition {choices.published}"
        if choices.published
        else f"Revision {choices.revision}"
        if choices.revision
        else ""
    )
    dated = ", ".join(filter(None, (state, day_of(choices.date) if choices.date else "")))
    ink = ", saving ink" if choices.ink_saving else ""
    said = f"{PRINTS[choices.format]}{ink}, {pattern.hand}-handed, {TERMS[choices.terms].name} terms."
    return f"{dated}. {said}" if dated else said


def last_title(imprint: Imprint) -> str:
    """The title of the last chapter, which says what there is."""
    words = [word for word, text in (("licence", imprint.licence), ("contact", imprint.contact)) if text]
    return " and ".join(words).capitalize() if words else "This booklet"


def about(pattern: Pattern, answered: Answer, choices: Choices) -> tuple[str, ...]:
    """The maker's notes, and what the chart makes."""
    notes = tuple(line.strip() for line in pattern.notes.split("\n") if line.strip())
    chart, drift = len(pattern.chart), pattern.drift
    makes = _short(chart * answered.size.rope.bead_mm, choices)
    turn = (
        "Its first bead stands straight above the first bead of the pass before."
        if drift.beads == 0
        else f"The next pass begins {_in_beads(drift.beads)} further round the rope ({degrees(drift.degrees)})."
    )
    left = (
        "This booklet is for left-handed work: chart, pictures and directions are those of the left hand. Worked "
        "with the right hand the same string gives the mirror image, and lettering would read backwards.",
    )
    return (
        *notes,
        f"One pass of the chart is {counted(chart, 'bead')} and makes {makes} of rope. {turn}",
        answered.sentence,
        *(left if pattern.hand == "left" else ()),
    )


def _in_beads(beads: float) -> str:
    return f"{plain(abs(beads), 1)} {'bead' if abs(beads) == 1 else 'beads'}"


def _short(mm: float, choices: Choices) -> str:
    return length(mm, choices.units) if mm >= 10 else millimetres(mm)


def sample(pattern: Pattern, answered: Answer, choices: Choices, terms: Terms) -> Sample:
    """The maker's sample, or the estimate that stands in for one, said to be one."""
    size, rope, chart = answered.size, answered.size.rope, len(pattern.chart)
    rounds, makes = plain(chart / pattern.around, 1), _short(chart * rope.bead_mm, choices)
    return Sample(
        (
            ("Bead", answered.size.main_kind.name),
            ("Around", f"{pattern.around} beads"),
            ("Stitch", f"{terms.stitch(size.stitch)} ({terms.name})"),
            ("One pass", f"{counted(chart, 'bead')}, {rounds} rounds: {makes}"),
            ("Ten rounds", millimetres(100 / rope.rounds_per_cm)),
            ("Thickness", millimetres(rope.thickness_mm) if rope.measured else "measure first: none was measured"),
            ("These come from", terms.translated(rope.source)),
        ),
        ("My ten rounds measure", "My rope is thick", "My thread for 20 beads", "My length, finished"),
        "Beads for a length of rope: its millimetres ÷ the millimetres of your ten rounds × "
        f"{count(10 * pattern.around)}. By the sample 100 mm take {fixed(100 / rope.bead_mm, 0)} beads.",
    )
