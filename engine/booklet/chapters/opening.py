"""Cover, what is said about the pattern, the maker's sample, and which edition it is."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace

from engine.booklet.chapters.charts import Charts, RopeBeside
from engine.booklet.chapters.parts import STRIP_PX as WHOLE_PX
from engine.booklet.choices import KEPT, MIRRORED, Choices, Imprint
from engine.booklet.measures import Measures
from engine.booklet.papers import LARGE, STANDARD, Paper
from engine.booklet.terms import TERMS, Terms
from engine.booklet.words import times
from engine.counting.answers import Answer
from engine.counting.kinds import bead_sizes
from engine.counting.parts import parts_in_words
from engine.counting.ring_fit import fit_in_words, ring_measures
from engine.dates import day_of
from engine.pattern.part import CHART
from engine.pattern.pattern import Pattern
from engine.units import count, counted, plain

Facts = tuple[tuple[str, str], ...]

LEAD = 150  # letters of the notes that may stand on the cover
COVER_PX, STRIP_PX = 1120, (1240, 158)
ROPE_PX = 5.0  # to the mm, of a rope beside a chart
WHOLE = "picture-whole"
COVER_MM = {"A4": 172.0, "Letter": 158.0, "A5": 104.0}  # height of the picture
LARGE_COVER_MM = 50.0
UNITS = {"cm": "metric", "in": "inches", "both": "metric and inches"}
PRINTS = {STANDARD: "Standard print", LARGE: "Large print"}
MOST_IN_A_RING = 6000  # beads; a longer ring would only show as a thin line
SHORT_TITLE, LONG_TITLE = 28, 64  # letters
MOST_FACTS = 4  # of the cover, side by side


@dataclass(frozen=True)
class Picture:
    """A shaded picture to be drawn: `view` of that many beads (None: as many as the view wants), size in px.

    `worked` are the beads of a stretch, drawn upright from its foot, where it is not the whole pattern that is drawn;
    `sizes` the diameters of the palette's beads, where they differ.
    """

    key: str
    view: str
    beads: int | None
    width: int
    height: int
    background: str
    worked: bytes = b""
    sizes: tuple[float, ...] = ()


@dataclass(frozen=True)
class Cover:
    """What the first page says; `size` is that of its title: short, long or longest."""

    lead: str
    facts: Facts
    maker: str
    copyright: str
    edition: str
    alt: str
    size: str

    @property
    def columns(self) -> int:
        """How many facts stand side by side."""
        return min(len(self.facts), MOST_FACTS)


@dataclass(frozen=True)
class Sample:
    """What the maker's sample measures, or what is expected; the lines in which a buyer writes down their own."""

    title: str
    facts: Facts
    own: tuple[str, ...]
    sum: str


def pictures(answered: Answer, choices: Choices, page: Paper, charted: Charts) -> tuple[Picture, ...]:
    """The cover, a ring where the piece is one, a strip of the rope, the whole of several parts, ropes beside a chart.

    None where ink is saved.
    """
    if choices.ink_saving:
        return ()
    ring = answered.size.closure.worked_shut and answered.size.beads <= MOST_IN_A_RING
    view, beads = ("ring", answered.size.beads) if ring else ("necklace", None)
    share = LARGE_COVER_MM / page.text if page.large else COVER_MM[page.name] / page.width
    ground = "#ffffff" if page.large else "#eef0ec"
    cover = Picture(
        key="picture-cover", view=view, beads=beads, width=COVER_PX, height=round(COVER_PX * share), background=ground
    )
    sizes = bead_sizes(answered.pattern, answered.workshop.kinds)
    if page.large:
        return (replace(cover, sizes=sizes),)
    strip = _strip("picture-strip", None, STRIP_PX)
    whole = charted.whole is not None and charted.whole.shown
    parts = (_strip(WHOLE, answered.size.beads, WHOLE_PX),) if whole else ()
    all_pictures = (cover, strip, *parts, *(_rope(rope) for rope in charted.ropes))
    return tuple(replace(one, sizes=sizes) for one in all_pictures) if sizes else all_pictures


def _strip(key: str, beads: int | None, size_px: tuple[int, int]) -> Picture:
    width, height = size_px
    return Picture(key=key, view="strip", beads=beads, width=width, height=height, background="#ffffff")


def _rope(rope: RopeBeside) -> Picture:
    return Picture(
        key=rope.key,
        view="strip",
        beads=None,
        width=round(rope.width * ROPE_PX),
        height=round(rope.height * ROPE_PX),
        background="#ffffff",
        worked=rope.beads,
    )


def cover(pattern: Pattern, answered: Answer, choices: Choices) -> Cover:
    """The first page."""
    size, letters = answered.size, len(pattern.title)
    terms, measures = TERMS[choices.terms], Measures(choices.units)
    used = [need for need in answered.materials.colours if need.beads]
    kinds = ", ".join(dict.fromkeys(need.kind.name for need in used))
    facts = (
        ("Size", _size(size.closure.piece.format(measures.length(size.finished_mm)))),
        ("Thickness", _thickness(answered, measures)),
        ("Around", f"{pattern.around} beads"),
        ("Beads", terms.spelled(f"{kinds}, {counted(len(used), 'colour')}")),
        ("Beads in all", count(size.beads)),
        ("Colourway", choices.colourway),
        ("Skill level", choices.skill),
        ("Time to make", choices.own.hours),
    )
    return Cover(
        lead=_lead(pattern, len(used), terms),
        facts=tuple(fact for fact in facts if fact[1]),
        maker=choices.imprint.maker,
        copyright=copyright_line(choices),
        edition=edition(choices, pattern),
        alt=f"The rope, worked in {', '.join(need.name for need in used[:8])}.",
        size="short" if letters <= SHORT_TITLE else "long" if letters <= LONG_TITLE else "longest",
    )


def _size(piece: str) -> str:
    """What kind of piece it is, and how long: "45.0 cm with a clasp", "Ring of 20.0 cm inner girth"."""
    said = piece.removeprefix("piece of ")
    return f"{said[0].upper()}{said[1:]}"


def _thickness(answered: Answer, measures: Measures) -> str:
    """The thickness as measured, else the range of the estimate."""
    rope = answered.size.rope
    return measures.small(rope.thickness_mm) if rope.measured else f"about {measures.roughly(*rope.thickness_range_mm)}"


def _lead(pattern: Pattern, colours: int, terms: Terms) -> str:
    """The first sentence of the notes, or what can be said of any rope."""
    first = re.split(r"(?<=[.!?])\s|\n", pattern.notes.strip(), maxsplit=1)[0].strip()
    if 0 < len(first) <= LEAD:
        return first
    return terms.spelled(f"A bead crochet rope, {pattern.around} beads around, in {counted(colours, 'colour')}.")


def copyright_line(choices: Choices) -> str:
    """Whose the pattern is, since the year of this edition; empty where nobody is named."""
    year = f"{choices.date[:4]} " if choices.date else ""
    return f"© {year}{choices.imprint.maker}" if choices.imprint.maker else ""


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
    told = (
        f"{PRINTS[choices.format]} on {choices.paper}",
        "saving ink" if choices.ink_saving else "",
        choices.handed(pattern.hand),
        choices.coloured,
        f"{TERMS[choices.terms].name} terms",
        UNITS[choices.units],
    )
    which = f"{', '.join(filter(None, told))}."
    return f"{dated}. {which}" if dated else which


def last_title(imprint: Imprint, terms: Terms) -> str:
    """The title of the last chapter, which says what there is."""
    words = [word for word, text in (("licence", imprint.licence), ("contact", imprint.contact)) if text]
    return terms.spelled(" and ".join(words).capitalize()) if words else "This booklet"


def about(pattern: Pattern, answered: Answer, choices: Choices) -> tuple[str, ...]:
    """The maker's notes, what the chart makes, and what is true of this edition."""
    notes = tuple(line.strip() for line in pattern.notes.split("\n") if line.strip())
    chart, drift = len(pattern.main.beads), pattern.drift
    makes = Measures(choices.units).length(chart * answered.size.rope.bead_mm)
    turn = (
        "The next time begins straight above its first bead."
        if drift.beads == 0
        else f"The next time begins {_in_beads(drift.beads)} further round the rope."
    )
    return (
        *notes,
        f"Once through {chart_called(pattern)} is {counted(chart, 'bead')} and makes {makes} of rope. {turn}",
        _sentence(answered, choices),
        *_for_the_hand(pattern, choices),
    )


def _sentence(answered: Answer, choices: Choices) -> str:
    """What this booklet is for."""
    size, threads, measures = answered.size, len(answered.stringing.threads), Measures(choices.units)
    piece = size.closure.piece.format(measures.length(size.finished_mm))
    return (
        f"This booklet is for a {piece}. It takes about {count(size.beads)} beads: {_worked(answered)}, "
        f"{measures.strung(answered.stringing.strung_mm)} of strung beads on {counted(threads, 'thread')}."
        f"{_ring(answered, choices.units)}"
    )


def chart_called(pattern: Pattern) -> str:
    """The chart that stands for the pattern, by its name where the rope has parts of its own names."""
    return "the chart" if pattern.main.name == CHART else f"the chart of “{pattern.main.name}”"


def _worked(answered: Answer) -> str:
    """How often the chart is worked, or the parts."""
    if answered.pattern.one_chart:
        return f"{times(answered.size.passes)} through {chart_called(answered.pattern)}"
    return parts_in_words(answered.size)


def _ring(answered: Answer, units: str) -> str:
    """What a ring measures, and how far it is from what was asked for."""
    size = answered.size
    if not size.closure.worked_shut:
        return ""
    return " ".join(("", f"The ring is {ring_measures(size, units)}.", *fit_in_words(size, units)[:1]))


def _for_the_hand(pattern: Pattern, choices: Choices) -> tuple[str, ...]:
    """What is true of an edition for the other hand, or for the left hand alone."""
    if choices.picture == KEPT:
        return (
            f"This edition is {choices.handed(pattern.hand)}: the rope looks as it does in the edition for the other "
            "hand, and lettering can be read. Its chart and lists are its own: beads strung from the other edition's "
            "lists would give another picture.",
        )
    if choices.picture == MIRRORED:
        return (
            f"This edition is {choices.handed(pattern.hand)}: chart, pictures and directions are the mirror image of "
            "the edition for the other hand, and the lists are the same. Lettering comes out as in a mirror.",
        )
    if pattern.hand == "left":
        return (
            "This booklet is for left-handed work: chart, pictures and directions are those of the left hand. Worked "
            "with the right hand the same string gives the mirror image, and lettering would read backwards.",
        )
    return ()


def _in_beads(beads: float) -> str:
    return f"{plain(abs(beads), 1)} {'bead' if abs(beads) == 1 else 'beads'}"


def _once(pattern: Pattern) -> str:
    return "Chart, once" if pattern.main.name == CHART else f"“{pattern.main.name}”, once"


def sample(pattern: Pattern, answered: Answer, choices: Choices, terms: Terms) -> Sample:
    """The maker's sample, or the estimate that stands in for one, said to be one."""
    size, rope, chart = answered.size, answered.size.rope, len(pattern.main.beads)
    measures = Measures(choices.units)
    rounds, makes = plain(chart / pattern.around, 1), measures.length(chart * rope.bead_mm)
    thick = rope.thickness_mm
    thickness = (
        measures.small(thick)
        if rope.measured
        else f"about {measures.between(thick * (1 - rope.sure), thick * (1 + rope.sure))}: measure before you buy"
    )
    return Sample(
        "The maker’s sample" if rope.measured else "Expected measures",
        (
            ("Bead", answered.size.main_kind.name),
            ("Around", f"{pattern.around} beads"),
            ("Stitch", f"{terms.stitch(size.stitch)} ({terms.name})"),
            (_once(pattern), f"{counted(chart, 'bead')}, {rounds} rounds: {makes}"),
            ("Ten rounds", measures.small(100 / rope.rounds_per_cm)),
            ("Thickness", thickness),
            ("These come from", measures.in_units(terms.translated(rope.source))),
        ),
        ("My ten rounds measure", "My rope is thick", "My thread for 20 beads", "My length, finished"),
        f"Beads for another length of rope: the length ÷ the length of your ten rounds × {count(10 * pattern.around)}.",
    )
