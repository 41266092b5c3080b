"""The booklet as one value: everything that it says, in order, with the key of every picture that it shows."""

from __future__ import annotations

from dataclasses import dataclass, replace

from engine.booklet.chapters.charts import Charts, Legend, charts, legend
from engine.booklet.chapters.colourways import WayBill, drawn_in, way_bills
from engine.booklet.chapters.needs import Needs, may_measure_core, needs
from engine.booklet.chapters.opening import (
    Cover,
    Picture,
    Sample,
    about,
    cover,
    edition,
    last_title,
    pictures,
    sample,
)
from engine.booklet.chapters.parts import whole
from engine.booklet.chapters.reading import Reading, reading
from engine.booklet.chapters.sizes import SizeTable, size_table
from engine.booklet.choices import Choices, Imprint, Photograph
from engine.booklet.guides.finishing import finishing
from engine.booklet.guides.growth import Grown, growth
from engine.booklet.guides.guide import Part, Piece, tools_of
from engine.booklet.guides.working import working
from engine.booklet.lists import PrintedList, lists_in_words, printed, reads_as_entry, which_list
from engine.booklet.measures import Measures
from engine.booklet.own import SECTION, TIPS, OwnWords
from engine.booklet.papers import LARGE, Paper, paper
from engine.booklet.terms import TERMS, Terms, abbreviations, in_full
from engine.booklet.words import CARE, REPORT, SAFETY
from engine.counting.answers import Answer, answer
from engine.counting.findings import Findings, findings
from engine.counting.workshop import Workshop
from engine.drawing.symbols import assigned
from engine.pattern.palette import Palette
from engine.pattern.pattern import Pattern

Facts = tuple[tuple[str, str], ...]

CHAPTERS: Facts = (
    ("large", "This large print"),
    ("seen", "Photographs"),
    ("need", "What you need"),
    ("ways", "In other colours"),
    ("sample", "The maker’s sample"),
    ("short", "Abbreviations"),
    ("read", "How to read chart and list"),
    ("chart", "Chart"),
    ("lists", "Stringing lists"),
    ("work", "Working guide"),
    ("finish", "Finishing guide"),
    ("tips", "Tips"),
    ("sizes", "Sizes"),
    ("care", "Care and safety"),
)
WHITE = "#ffffff"
LEGEND_LINES = 2  # at the head of a list


@dataclass(frozen=True)
class Booklet:
    """Everything a printed booklet says, in the order in which it says it.

    `true_mm` is the thickness in which the rope is shown at its true size, None where nobody has measured it.
    `list_legends` go with `lists`. `running` is the running title; `lists_running` that of their pages, empty where it
    could be taken for an entry. `palette` is as it is drawn: white throughout where ink is saved.
    """

    title: str
    paper: Paper
    measures: Measures
    palette: Palette
    hand: str
    pictures: tuple[Picture, ...]
    cover: Cover
    about: tuple[str, ...]
    needs: Needs
    true_mm: float | None
    sample: Sample
    terms: Terms
    terms_note: str
    abbreviations: Facts
    reading: Reading
    charts: Charts
    lists_intro: str
    lists: tuple[PrintedList, ...]
    list_legends: tuple[Legend, ...]
    running: str
    lists_running: str
    working: tuple[Part, ...]
    growth: tuple[Grown, ...]
    finishing_title: str
    finishing: tuple[Part, ...]
    sizes: SizeTable
    care: tuple[str, ...]
    safety: Facts
    report: tuple[str, ...]
    last_title: str
    imprint: Imprint
    edition: str
    own: OwnWords
    photographs: tuple[Photograph, ...]
    colourway: str
    ways: tuple[WayBill, ...]

    def codes(self, listed: PrintedList) -> Facts:
        """Code and name of every bead of a list."""
        return tuple((entry.code, entry.name) for entry in self.palette if entry.code in listed.codes)

    def spelled(self, text: str) -> str:
        """The booklet's own words in the spelling of its crochet terms."""
        return self.terms.spelled(text)

    @property
    def small_pictures(self) -> bool:
        """Whether the text has small pictures of the rope and of the whole chart beside it."""
        return bool(self.pictures) and not self.paper.large

    @property
    def terms_title(self) -> str:
        """The title of the chapter that names the crochet terms, and the short forms where there are any."""
        return "Abbreviations" if self.abbreviations else "Crochet terms"

    @property
    def chapters(self) -> Facts:
        """Key and title of every chapter, as the contents list them."""
        absent = {
            key
            for key, there in (
                ("large", self.paper.large),
                ("seen", self.photographs),
                ("ways", self.ways),
                ("tips", self.own.text(TIPS)),
            )
            if not there
        }
        titles = dict(CHAPTERS) | {
            "short": self.terms_title,
            "sample": self.sample.title,
            "ways": self.spelled("In other colours"),
        }
        own = (("own", self.own.title),) if self.own.text(SECTION) else ()
        return (
            *((key, title) for key, title in titles.items() if key not in absent),
            *own,
            ("licence", self.last_title),
        )


def compose(pattern: Pattern, choices: Choices, workshop: Workshop | None = None) -> Booklet:
    """The booklet of a pattern that is already in the hand wanted.

    Raises SizeError, PlanError or ChoiceError where the size cannot be worked.
    """
    answered = answer(pattern, choices.question, workshop, choices.plan, choices.spare, choices.units)
    terms, page = TERMS[choices.terms], paper(choices.paper, choices.format)
    supplies = findings(answered.size)
    drawn, stringing = replace(pattern, palette=_drawn(pattern.palette, choices.ink_saving)), answered.stringing
    parts = whole(answered, choices.units, pictured=not (page.large or choices.ink_saving))
    charted = charts(drawn, page, answered.size.laid, choices.own.blocks("chart"), parts)
    bead_grams = {need.code: need.grams / need.beads for need in answered.materials.colours if need.beads}
    lists = printed(
        stringing.distinct,
        len(stringing.threads),
        page,
        bead_grams,
        Measures(choices.units),
        bool(choices.own.text("lists")),
    )
    grouped = any(listed.group for listed in lists)
    piece = _piece(pattern, answered, supplies, choices, terms, not charted.left_out, grouped)
    return Booklet(
        title=pattern.title,
        paper=page,
        measures=Measures(choices.units),
        palette=drawn.palette,
        hand=pattern.hand,
        pictures=pictures(answered, choices, page, charted),
        cover=cover(pattern, answered, choices),
        about=about(pattern, answered, choices),
        needs=needs(pattern, answered, supplies, choices),
        true_mm=answered.size.thickness_mm if answered.size.rope.measured else None,
        sample=sample(pattern, answered, choices, terms),
        terms=terms,
        terms_note=in_full(terms.note) if page.large else terms.note,
        abbreviations=() if page.large else abbreviations(terms, answered.size.stitch),
        reading=reading(drawn, page, grouped, charted.layout.numbered if charted.layout else 0),
        charts=charted,
        lists_intro=lists_in_words(stringing),
        lists=lists,
        list_legends=tuple(_list_legend(pattern.palette, listed, page) for listed in lists),
        running=_running(pattern, choices),
        lists_running="" if reads_as_entry(pattern.title) else _running(pattern, choices),
        working=working(piece),
        growth=growth(drawn, answered, choices.units),
        finishing_title=piece.closure.guide_title,
        finishing=finishing(piece),
        sizes=size_table(answered, choices),
        care=CARE,
        safety=SAFETY,
        report=REPORT,
        last_title=last_title(choices.imprint, terms),
        imprint=choices.imprint,
        edition=edition(choices, pattern),
        own=choices.own,
        photographs=choices.photographs,
        colourway=choices.colourway,
        ways=_ways(pattern, choices, workshop),
    )


def _ways(pattern: Pattern, choices: Choices, workshop: Workshop | None) -> tuple[WayBill, ...]:
    bills = way_bills(pattern, choices, workshop)
    return tuple(drawn_in(bill, WHITE) for bill in bills) if choices.ink_saving else bills


def _running(pattern: Pattern, choices: Choices) -> str:
    """Title of the pattern, and for which hand where that is to be told apart."""
    handed = choices.handed(pattern.hand) if choices.picture or pattern.hand == "left" else ""
    return " · ".join(filter(None, (pattern.title, handed)))


def _piece(
    pattern: Pattern,
    answered: Answer,
    supplies: Findings,
    choices: Choices,
    terms: Terms,
    charted: bool,
    grouped: bool,
) -> Piece:
    size, closure = answered.size, answered.size.closure
    return Piece(
        around=pattern.around,
        stitch=size.stitch,
        hand=pattern.hand,
        closure=closure,
        terms=terms,
        units=choices.units,
        threads=len(answered.stringing.threads),
        lists=which_list(answered.stringing),
        repeat=pattern.repeat,
        ten_rounds_mm=100 / size.rope.rounds_per_cm,
        measured=supplies.measured,
        thickness_mm=size.thickness_mm,
        button_mm=supplies.button_mm,
        loop_beads=supplies.loop_beads,
        **tools_of(supplies),
        core=supplies.core if closure.takes_core else None,
        measure_core=may_measure_core(supplies, closure),
        turn=size.closing.beads,
        joins_end_to_start=size.joins_end_to_start,
        several=not pattern.one_chart,
        large=choices.format == LARGE,
        charted=charted,
        grouped=grouped,
    )


def _drawn(palette: Palette, ink_saving: bool) -> Palette:
    """The palette as it is drawn; its colours do not enter where ink is saved, its symbols always do."""
    if not ink_saving:
        return palette
    named = zip(palette, assigned(palette), strict=True)
    return Palette(tuple(replace(entry, colour=WHITE, symbol=symbol.name) for entry, symbol in named))


def _list_legend(palette: Palette, listed: PrintedList, page: Paper) -> Legend:
    if page.large:
        return Legend((), 1)
    used = {palette.index(code) for code in listed.codes}
    return legend(palette, used, page.text, LEGEND_LINES)
