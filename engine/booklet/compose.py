"""The booklet as one value: everything that it says, in order, with the key of every picture that it shows."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace

from engine.booklet.choices import Choices, Imprint
from engine.booklet.finishing import TITLES, finishing
from engine.booklet.guide import Part, Piece, working
from engine.booklet.lists import PrintedList, numbers_in_words, printed, reads_as_entry
from engine.booklet.needs import Needs, found_for, main_kind, may_measure_core, needs
from engine.booklet.papers import Paper, paper
from engine.booklet.reading import Reading, reading
from engine.booklet.sheets import Layout, Overview, Sheet, cut, lay_out, overview
from engine.booklet.sizetable import SizeTable, size_table, told_to_a_buyer
from engine.booklet.terms import TERMS, Terms, abbreviations
from engine.booklet.words import CARE, REPORT, SAFETY, day
from engine.counting.answers import Answer, answer
from engine.counting.findings import Findings
from engine.counting.sizes import Workshop
from engine.counting.stringing import StringingList
from engine.pattern.lattice import rows
from engine.pattern.palette import Palette
from engine.pattern.pattern import Pattern
from engine.units import count, degrees, fixed, length, millimetres, plain

Facts = tuple[tuple[str, str], ...]

CHAPTERS: Facts = (
    ("need", "What you need"), ("sample", "The maker’s sample"), ("short", "Abbreviations"),
    ("read", "How to read chart and list"), ("chart", "Chart"), ("lists", "Stringing lists"), ("work", "Working guide"),
    ("finish", "Finishing guide"), ("sizes", "Sizes"), ("care", "Care and safety"))
LEAD = 150  # letters of the notes that may stand on the cover
LEGEND = 12  # more beads than this are explained once, not on every sheet
LEGEND_LINE, LEGEND_GAP = 7.4, 5.0  # mm
MOST_IN_A_RING = 6000  # beads; a longer ring would only show as a thin line on the cover


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
    """What the first page says."""

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


@dataclass(frozen=True)
class Stretch:
    """Start, chart or end on its sheets; `pattern` has it as its chart."""

    title: str
    lead: str
    pattern: Pattern
    sheets: tuple[Sheet, ...]
    rows: int
    overview: Overview


@dataclass(frozen=True)
class Legend:
    """Codes and names of beads, and on how many columns they stand; none at all where they would take too much room."""

    beads: tuple[tuple[str, str], ...]
    columns: int

    @property
    def height(self) -> float:
        return LEGEND_GAP + LEGEND_LINE * -(-len(self.beads) // self.columns) if self.beads else 0.0


@dataclass(frozen=True)
class Booklet:
    """Everything a printed booklet says, in the order in which it says it."""

    title: str
    paper: Paper
    palette: Palette
    hand: str
    pictures: tuple[Picture, ...]
    cover: Cover
    about: tuple[str, ...]
    needs: Needs
    true_mm: float | None
    sample: Sample
    terms: Terms
    abbreviations: tuple[tuple[str, str], ...]
    reading: Reading
    layout: Layout
    legend: Legend
    stretches: tuple[Stretch, ...]
    lists: tuple[PrintedList, ...]
    lists_intro: str
    list_legends: tuple[Legend, ...]
    lists_running: str
    working: tuple[Part, ...]
    finishing_title: str
    finishing: tuple[Part, ...]
    sizes: SizeTable
    care: tuple[str, ...]
    safety: Facts
    report: tuple[str, ...]
    last_title: str
    imprint: Imprint
    edition: str

    @property
    def chapters(self) -> Facts:
        """Key and title of every chapter, as the contents list them."""
        return (*CHAPTERS, ("licence", self.last_title))


def compose(pattern: Pattern, choices: Choices, workshop: Workshop | None = None) -> Booklet:
    """The booklet of a pattern that is already in the hand wanted.

    Raises SizeError, PlanError or ChoiceError where the size cannot be worked.
    """
    workshop = workshop or Workshop()
    answered = answer(pattern, choices.question, workshop, choices.plan, choices.spare, choices.units)
    terms, page, found = TERMS[choices.terms], paper(choices.paper), found_for(pattern, answered, workshop)
    piece = _piece(pattern, answered, found, choices, terms)
    legend = _legend(pattern.palette, set(pattern.start + pattern.chart + pattern.end), page.main)
    stretches, layout = _stretches(pattern, page, legend)
    lists = printed(answered.stringing.distinct, len(answered.stringing.threads), page)
    return Booklet(
        pattern.title, page, pattern.palette, pattern.hand, _pictures(answered, page), _cover(pattern, answered, choices),
        _about(pattern, answered, choices), needs(pattern, answered, found, workshop, terms),
        answered.size.thickness_mm if answered.size.rope.measured else None,
        _sample(pattern, answered, choices, workshop, terms), terms, abbreviations(terms, answered.size.stitch),
        reading(pattern, page), layout, legend, stretches, lists, _lists_intro(lists, answered.stringing),
        tuple(_legend(pattern.palette, {pattern.palette.index(code) for code in made.codes}, page.text, 2)
              for made in lists),
        "" if reads_as_entry(pattern.title) else pattern.title, working(piece), TITLES[piece.closure], finishing(piece),
        size_table(pattern, answered, choices, workshop), CARE, SAFETY, REPORT, _last_title(choices.imprint),
        choices.imprint, _edition(choices, pattern, terms))


def _piece(pattern: Pattern, answered: Answer, found: Findings, choices: Choices, terms: Terms) -> Piece:
    size, closure = answered.size, choices.question.closure
    return Piece(
        pattern.around, size.stitch, pattern.hand, closure, terms, choices.units, len(answered.stringing.threads),
        _which_list(answered.stringing), pattern.repeat, 100 / size.rope.rounds_per_cm, found.measured,
        size.thickness_mm, found.core if closure != "ring" else None, may_measure_core(found, closure),
        size.closing.beads, size.joins_end_to_start)


def _which_list(stringing: StringingList) -> str:
    """Which thread takes which list: "threads 1 to 3 take list 1, thread 4 takes list 2"."""
    said = []
    for number, (_, threads) in enumerate(stringing.distinct, 1):
        some = f"threads {numbers_in_words(threads)} take" if len(threads) > 1 else f"thread {threads[0]} takes"
        said.append(f"{some} list {number}")
    return ", ".join(said)


def _lists_intro(lists: tuple[PrintedList, ...], stringing: StringingList) -> str:
    threads = len(stringing.threads)
    if threads == 1:
        return "The rope is strung on one thread, from one list."
    which = _which_list(stringing)
    different = "one list" if len(lists) == 1 else f"{count(len(lists))} different lists"
    return f"The rope is worked on {count(threads)} threads from {different}: {which}. Thread 1 is worked first."


def _legend(palette: Palette, used: set[int], room: float, most_lines: int = 4) -> Legend:
    """The beads used, in as many columns as their names allow; empty where they need too many lines."""
    beads = tuple((entry.code, entry.name) for index, entry in enumerate(palette) if index in used)
    widest = max(len(name) for _, name in beads)
    columns = max(1, min(6, int(room / (14.0 + 1.95 * widest))))
    fits = len(beads) <= LEGEND and -(-len(beads) // columns) <= most_lines
    return Legend(beads if fits else (), columns)


def _stretches(pattern: Pattern, page: Paper, legend: Legend) -> tuple[tuple[Stretch, ...], Layout]:
    """Start, chart and end, each drawn from its own first bead."""
    named = (("Start", "worked once, before the chart", pattern.start), ("Chart", "", pattern.chart),
             ("End", "worked once, after the last pass of the chart", pattern.end))
    drawn = [(title, lead, replace(pattern, chart=beads, start=b"", end=b"")) for title, lead, beads in named if beads]
    longest = max(rows(part.around, len(part.chart)) for _, _, part in drawn)
    layout = lay_out(pattern.around, longest, page, legend.height)
    found: list[Stretch] = []
    for title, lead, part in drawn:
        before = sum(len(stretch.sheets) for stretch in found)
        high = rows(part.around, len(part.chart))
        found.append(Stretch(title, lead, part, cut(part, layout, before + 1), high, overview(part.around, high, layout)))
    return tuple(found), layout


def _pictures(answered: Answer, page: Paper) -> tuple[Picture, ...]:
    """The cover, as the closure would be laid out, and a strip of the rope."""
    high = 172.0 if page.name == "A4" else 158.0
    ring = answered.size.question.closure == "ring" and answered.size.beads <= MOST_IN_A_RING
    view, beads = ("ring", answered.size.beads) if ring else ("necklace", None)
    return (Picture("picture-cover", view, beads, 1280, round(1280 * high / page.width), "#eef0ec"),
            Picture("picture-strip", "strip", None, 1600, 204, "#ffffff"))


def _cover(pattern: Pattern, answered: Answer, choices: Choices) -> Cover:
    size, bill = answered.size, answered.materials
    used = [need for need in bill.colours if need.beads]
    kinds = list(dict.fromkeys(need.kind for need in used))
    inside = "inside" if choices.question.closure == "ring" else "finished"
    facts = [("Around", f"{pattern.around} beads"),
             ("Beads", f"{', '.join(kinds)}, {len(used)} {'colour' if len(used) == 1 else 'colours'}"),
             ("Size", f"{length(size.finished_mm, choices.units)} {inside}"), ("Beads in all", count(size.beads))]
    if size.rope.measured:
        facts.insert(2, ("Thickness", millimetres(size.thickness_mm)))
    names = ", ".join(need.name for need in used[:8])
    return Cover(_lead(pattern, len(used)), tuple(facts), choices.imprint.maker,
                 _edition(choices, pattern, TERMS[choices.terms]), f"The rope, worked in {names}.",
                 "short" if len(pattern.title) <= 28 else "long" if len(pattern.title) <= 64 else "longest")


def _lead(pattern: Pattern, colours: int) -> str:
    """The first sentence of the notes, or what can be said of any rope."""
    first = re.split(r"(?<=[.!?])\s|\n", pattern.notes.strip(), maxsplit=1)[0].strip()
    if 0 < len(first) <= LEAD:
        return first
    return (f"A bead crochet rope, {pattern.around} beads around, in {colours} {'colour' if colours == 1 else 'colours'}.")


def _edition(choices: Choices, pattern: Pattern, terms: Terms) -> str:
    said = f"{choices.edition.capitalize()} edition, {pattern.hand}-handed, {terms.name} terms"
    state = f"Revision {choices.revision}, " if choices.revision else ""
    return f"{state}{day(choices.date)}. {said}." if choices.date else f"{state}{said}."


def _last_title(imprint: Imprint) -> str:
    words = [word for word, text in (("licence", imprint.licence), ("contact", imprint.contact)) if text]
    return " and ".join(words).capitalize() if words else "This edition"


def _about(pattern: Pattern, answered: Answer, choices: Choices) -> tuple[str, ...]:
    notes = tuple(line.strip() for line in pattern.notes.split("\n") if line.strip())
    chart, drift = len(pattern.chart), pattern.drift
    pass_mm = chart * answered.size.rope.bead_mm
    one = f"One pass of the chart is {count(chart)} {'bead' if chart == 1 else 'beads'} and makes {_short(pass_mm, choices)} of rope."
    turn = ("Its first bead stands straight above the first bead of the pass before." if drift.beads == 0 else
            f"The next pass begins {plain(abs(drift.beads), 1)} {'bead' if abs(drift.beads) == 1 else 'beads'} further round "
            f"the rope ({degrees(drift.degrees)}).")
    left = ("This booklet is for left-handed work: chart, pictures and directions are those of the left hand. Worked with "
            "the right hand the same string gives the mirror image, and lettering would read backwards.",)
    return (*notes, f"{one} {turn}", answered.sentence, *(left if pattern.hand == "left" else ()))


def _short(mm: float, choices: Choices) -> str:
    return length(mm, choices.units) if mm >= 10 else millimetres(mm)


def _sample(pattern: Pattern, answered: Answer, choices: Choices, workshop: Workshop, terms: Terms) -> Sample:
    size, chart = answered.size, len(pattern.chart)
    rope, ten_mm = size.rope, 100 / size.rope.rounds_per_cm
    return Sample((
        ("Bead", main_kind(pattern, choices.question, workshop).name), ("Around", f"{pattern.around} beads"),
        ("Stitch", f"{terms.stitch(size.stitch)} ({terms.name})"),
        ("One pass", f"{count(chart)} beads, {plain(chart / pattern.around, 1)} rounds: {_short(chart * rope.bead_mm, choices)}"),
        ("Ten rounds", millimetres(ten_mm)),
        ("Thickness", millimetres(rope.thickness_mm) if rope.measured else "measure first: no sample of it was measured"),
        ("These come from", told_to_a_buyer(rope.source))),
        ("My ten rounds measure", "My rope is thick", "My thread for 20 beads", "My length, finished"),
        f"Beads for a length of rope: its millimetres ÷ the millimetres of your ten rounds × {count(10 * pattern.around)}. "
        f"By the sample 100 mm take {fixed(100 / rope.bead_mm, 0)} beads.")
