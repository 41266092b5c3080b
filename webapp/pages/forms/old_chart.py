"""The form of an old chart: where it lies in its picture, how it is drawn, and what is put right by hand."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, fields
from math import dist

from engine.errors import ChoiceError, EngineError
from engine.numbers import decimal_number, whole_number
from engine.pattern.old_charts.drawn import BRICKS, HEXAGONS, SHIFTED, SQUARES, STRAIGHT, TURNS, Drawn, rows_in
from engine.pattern.old_charts.paper import Paper, Place
from engine.pattern.old_charts.reading import Reading
from engine.pattern.pattern import Pattern, read_around
from engine.pattern.photographs.few_colours import MOST_FOUND
from webapp.pages.forms.sent import Objections, Sent
from webapp.pages.forms.starts import palette_of

ROWINGS = {
    TURNS: "N + 1 and N beads by turns",
    SHIFTED: "N beads, every other row half a bead over",
    STRAIGHT: "N beads, straight over one another",
}
SHAPES = {BRICKS: "Bricks, or beads as they lie", SQUARES: "Squares", HEXAGONS: "Hexagons"}
UPRIGHT, LYING = "upright", "lying"
WAYS = {UPRIGHT: "Upright: first row at the foot", LYING: "Lying: first row at the left"}
EDGE, INSET = "edge", "inset"
FIRSTS = {EDGE: "At the edge", INSET: "Half a bead in"}
FORWARDS, BACKWARDS = "forwards", "backwards"
SIDES = {FORWARDS: "From the left, lying from the top", BACKWARDS: "From the right, lying from the foot"}
FIT, STAY = "fit", "stay"
FITS = {FIT: "Fit it to the beads", STAY: "Leave it where I put it"}
FREE: tuple[Place, ...] = ((0.5, 0.0), (1.0, 0.5), (0.5, 1.0), (0.0, 0.5), (0.5, 0.5))  # of the sheet, to be pulled
CORNER_FIELDS = tuple((f"x{number}", f"y{number}") for number in range(1, 5))
FREE_FIELDS = tuple((f"pull{number}x", f"pull{number}y") for number in range(1, 6))
FLAT, MAKE = "flat", "make"
USUAL = {"x1": "10", "y1": "10", "x2": "90", "y2": "10", "x3": "90", "y3": "90", "x4": "10", "y4": "90"}
FIX, NUMBER = "fix-", re.compile("[0-9]{1,6}")
MOST_ROWS = 20_000

Read = Callable[[Paper, Drawn, int, bool], tuple[Paper, Reading]]  # the picture, read: sheet, chart, colours, fitting


@dataclass(frozen=True)
class TypedOldChart:
    """The form as typed. `places` are those of the corners and of what was pulled, per cent of the picture."""

    places: Mapping[str, str]
    title: str = "An old chart"
    around: str = ""
    rows: str = ""
    kind: str = "11/0 round"
    rowing: str = TURNS
    shape: str = BRICKS
    way: str = UPRIGHT
    first: str = EDGE
    side: str = FORWARDS
    fit: str = FIT
    many: str = ""


@dataclass(frozen=True)
class OldChartForm:
    """What was typed, what is wrong by field, and when nothing is: sheet, how it is drawn, reading and pattern.

    `fixed` are the colours put right by hand, by bead; `size` is that of the picture in pixels.
    """

    typed: TypedOldChart
    errors: Mapping[str, str]
    fixed: Mapping[int, int]
    size: tuple[int, int]
    paper: Paper | None = None
    drawn: Drawn | None = None
    reading: Reading | None = None
    pattern: Pattern | None = None


def read_old_chart(
    pairs: Iterable[tuple[str, object]], size: tuple[int, int], read: Read, designer: str = ""
) -> OldChartForm:
    """The form as it stands in an address or was sent; nothing is read before it is said how many go around."""
    sent, wrong = Sent(pairs), Objections()
    typed = _typed(sent)
    paper = _paper(typed, wrong)
    if not typed.around and sent.one("do") != MAKE:
        return OldChartForm(typed, wrong.by_field, {}, size, paper)
    drawn = _drawn(typed, size, wrong)
    many = wrong.read("many", lambda: _many(typed.many), 0)
    if paper is None or drawn is None or wrong.by_field:
        return OldChartForm(typed, wrong.by_field, {}, size, paper)
    try:
        paper, reading = read(paper, drawn, many, typed.fit == FIT)
        fixed = _fixed(sent, len(reading.beads), len(reading.colours))
        beads = bytes(fixed.get(bead, colour) for bead, colour in enumerate(reading.beads))
        palette = palette_of(reading.colours, typed.kind)
        pattern = Pattern(typed.title, drawn.around, palette, beads, designer=designer)
    except EngineError as error:
        return OldChartForm(typed, {(error.field or "title").rpartition(".")[2]: error.message}, {}, size, paper)
    return OldChartForm(typed, {}, fixed, size, paper, drawn, reading, pattern)


def _typed(sent: Sent) -> TypedOldChart:
    flat = sent.one("do") == FLAT
    places = {name: sent.one(name, usual) or usual for name, usual in USUAL.items()}
    places |= {name: "" if flat else sent.one(name) for pair in FREE_FIELDS for name in pair}
    usual = {field.name: str(field.default) for field in fields(TypedOldChart) if field.name != "places"}
    return TypedOldChart(places, **{name: sent.one(name) or text for name, text in usual.items()})


def _paper(typed: TypedOldChart, wrong: Objections) -> Paper | None:
    try:
        corners = [_place(typed, pair) for pair in CORNER_FIELDS]
        pulled = [
            (sheet, _place(typed, pair))
            for sheet, pair in zip(FREE, FREE_FIELDS, strict=True)
            if all(typed.places[name] for name in pair)
        ]
        return Paper(corners, pulled)
    except EngineError as error:
        wrong.add("corners", error.message)
        return None


def _place(typed: TypedOldChart, pair: tuple[str, str]) -> Place:
    x, y = (decimal_number(typed.places[name], "where that point lies, in per cent such as 12.5") for name in pair)
    return x / 100, y / 100


def _drawn(typed: TypedOldChart, size: tuple[int, int], wrong: Objections) -> Drawn | None:
    for name, label, words in (
        ("rowing", "Rows hold", ROWINGS),
        ("shape", "Drawn as", SHAPES),
        ("way", "It stands", WAYS),
        ("first", "The first row begins", FIRSTS),
        ("side", "Rows are read", SIDES),
        ("fit", "The lattice", FITS),
    ):
        if getattr(typed, name) not in words:
            wrong.add(name, ChoiceError(label, getattr(typed, name), words).message)
    around = wrong.read("around", lambda: read_around(typed.around), 3)
    rows = wrong.read("rows", lambda: _rows(typed.rows), 0)
    if wrong.by_field:
        return None

    def drawn(rows: int) -> Drawn:
        return Drawn(
            around=around,
            rows=rows,
            rowing=typed.rowing,
            shape=typed.shape,
            lying=typed.way == LYING,
            inset=typed.first == INSET,
            backwards=typed.side == BACKWARDS,
        )

    return wrong.read("rows", lambda: drawn(rows or _likely_rows(typed, size, drawn(1))), None)


def _likely_rows(typed: TypedOldChart, size: tuple[int, int], drawn: Drawn) -> int:
    """How many rows the marked box likely holds."""
    one, two, three, four = (
        tuple(float(typed.places[name].replace(",", ".")) * side for name, side in zip(pair, size, strict=True))
        for pair in CORNER_FIELDS
    )
    wide, high = dist(one, two) + dist(four, three), dist(one, four) + dist(two, three)
    return min(MOST_ROWS, rows_in(drawn.across, drawn.shape, wide / high if drawn.lying else high / wide))


def _rows(text: str) -> int:
    rows = whole_number(text, "how many rows the chart has, such as 40") if text else 0
    if text and not 1 <= rows <= MOST_ROWS:
        raise EngineError(f"{rows:,} rows cannot be; expected 1 to {MOST_ROWS:,}.")
    return rows


def _many(text: str) -> int:
    many = whole_number(text, "how many colours it has, such as 4") if text else 0
    if many > MOST_FOUND:
        raise EngineError(f"{many:,} colours are too many; at most {MOST_FOUND} are told apart.")
    return many


def _fixed(sent: Sent, beads: int, colours: int) -> dict[int, int]:
    """Colours by bead from fields such as fix-12, all counted from nought; what no bead or colour is, is left out."""
    fixed = {}
    for name, colour in sent.pairs:
        bead = name.removeprefix(FIX)
        if name != bead and NUMBER.fullmatch(bead) and NUMBER.fullmatch(colour):
            fixed[int(bead)] = int(colour)
    return {bead: colour for bead, colour in fixed.items() if bead < beads and colour < colours}


def places_of(paper: Paper, drawn: Drawn) -> tuple[Place, ...]:
    """Where every bead lies, shares of the picture."""
    return tuple((x, y) for x, y in paper.places(drawn.middles()).tolist())
