"""The form of an old chart: where it lies in its picture, how it is drawn, and what is put right by hand."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, fields
from math import dist
from string import ascii_uppercase

from engine.errors import ChoiceError, EngineError
from engine.numbers import decimal_number, whole_number
from engine.pattern.old_charts.drawn import BRICKS, HEXAGONS, SHIFTED, SQUARES, STRAIGHT, TURNS, Drawn, rows_in
from engine.pattern.old_charts.marks import COLOURS, SYMBOLS
from engine.pattern.old_charts.paper import Paper, Place, squared
from engine.pattern.old_charts.reading import Reading
from engine.pattern.palette import Entry, Palette
from engine.pattern.pattern import Pattern, read_around
from engine.pattern.photographs.few_colours import MOST_FOUND
from webapp.pages.forms.editor import NEW_COLOURS
from webapp.pages.forms.sent import Objections, Sent
from webapp.pages.forms.starts import palette_of

ROWINGS = {
    TURNS: "N + 1 and N beads by turns",
    SHIFTED: "N beads, every other row half a bead over",
    STRAIGHT: "N beads, straight over one another",
}
SHAPES = {BRICKS: "Bricks, or beads as they lie", SQUARES: "Squares", HEXAGONS: "Hexagons"}
UPRIGHT, LYING = "upright", "lying"
WAYS = {UPRIGHT: "Upright: first row at the bottom", LYING: "Lying: first row at the left"}
EDGE, INSET = "edge", "inset"
FIRSTS = {EDGE: "At the edge", INSET: "Half a bead in"}
FORWARDS, BACKWARDS = "forwards", "backwards"
SIDES = {FORWARDS: "From the left, lying from the top", BACKWARDS: "From the right, lying from the bottom"}
FIT, STAY = "fit", "stay"
FITS = {FIT: "Fit it to the beads", STAY: "Leave it where I put it"}
MARKS = {COLOURS: "By their colours", SYMBOLS: "By a symbol or letter in each"}
FREE: tuple[Place, ...] = ((0.5, 0.0), (1.0, 0.5), (0.5, 1.0), (0.0, 0.5), (0.5, 0.5))  # of the sheet, to be pulled
CORNER_FIELDS = tuple((f"x{number}", f"y{number}") for number in range(1, 5))
ROW_FIELDS = ("rowx", "rowy")  # a point along a row, from the first corner
FOLLOWING_FIELDS = (CORNER_FIELDS[1], CORNER_FIELDS[3])
FREE_FIELDS = tuple((f"pull{number}x", f"pull{number}y") for number in range(1, 6))
FLAT, MAKE = "flat", "make"
USUAL = {"x1": "10", "y1": "10", "x3": "90", "y3": "90"}  # per cent; the other two corners follow
CODE, COLOUR = "code-", "colour-"  # of a symbol, by its place
FIX, NUMBER = "fix-", re.compile("[0-9]{1,6}")
MOST_ROWS = 20_000

Read = Callable[[Paper, Drawn, int, bool, str], tuple[Paper, Reading]]
"""The picture, read: its sheet, how it is drawn, how many colours or symbols, whether it is fitted, and which MARKS."""


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
    marks: str = COLOURS


@dataclass(frozen=True)
class Group:
    """Beads that look alike: how many, the palette's place they have, and the bead that looks most like all of them."""

    beads: int
    entry: int
    example: int


@dataclass(frozen=True)
class OldChartForm:
    """What was typed, what is wrong by field, and when nothing is: sheet, how it is drawn, reading and pattern.

    `fixed` are the groups put right by hand, by bead; `size` is that of the picture in pixels, `corners` are places of
    it, also of those that follow from the others. `groups` are those of a reading in their order.
    """

    typed: TypedOldChart
    errors: Mapping[str, str]
    fixed: Mapping[int, int]
    size: tuple[int, int]
    paper: Paper | None = None
    drawn: Drawn | None = None
    reading: Reading | None = None
    pattern: Pattern | None = None
    corners: tuple[Place, ...] = ()
    groups: tuple[Group, ...] = ()


def read_old_chart(
    pairs: Iterable[tuple[str, object]], size: tuple[int, int], read: Read, designer: str = ""
) -> OldChartForm:
    """The form as it stands in an address or was sent; nothing is read before it is said how many go around."""
    sent, wrong = Sent(pairs), Objections()
    typed = _typed(sent)
    nowhere: tuple[Place, ...] = ()
    corners = wrong.read("corners", lambda: _corners(typed, size), nowhere)
    paper = _paper(typed, corners, wrong) if corners else None
    if not typed.around and sent.one("do") != MAKE:
        return OldChartForm(typed=typed, errors=wrong.by_field, fixed={}, size=size, paper=paper, corners=corners)
    drawn = _drawn(typed, size, corners, wrong)
    many = wrong.read("many", lambda: _many(typed.many), 0)
    if paper is None or drawn is None or wrong.by_field:
        return OldChartForm(typed=typed, errors=wrong.by_field, fixed={}, size=size, paper=paper, corners=corners)
    try:
        paper, reading = read(paper, drawn, many, typed.fit == FIT, typed.marks)
        palette, entries = _palette(sent, reading, typed.kind)
        fixed = _fixed(sent, len(reading.beads), len(entries))
        beads = bytes(entries[fixed.get(bead, group)] for bead, group in enumerate(reading.beads))
        pattern = Pattern(typed.title, drawn.around, palette, beads, designer=designer)
    except EngineError as error:
        field = (error.field or "title").rpartition(".")[2]
        return OldChartForm(
            typed=typed, errors={field: error.message}, fixed={}, size=size, paper=paper, corners=corners
        )
    examples = reading.examples or (0,) * len(entries)
    return OldChartForm(
        typed=typed,
        errors={},
        fixed=fixed,
        size=size,
        paper=paper,
        drawn=drawn,
        reading=reading,
        pattern=pattern,
        corners=corners,
        groups=tuple(map(Group, map(reading.beads.count, range(len(entries))), entries, examples)),
    )


def _palette(sent: Sent, reading: Reading, kind: str) -> tuple[Palette, tuple[int, ...]]:
    """The palette, and its place of every group; of symbols, groups that are given one code are one bead."""
    if not reading.examples:
        return palette_of(reading.colours, kind), tuple(range(len(reading.colours)))
    colours: dict[str, str] = {}
    codes = []
    for place in range(len(reading.colours)):
        code = sent.one(f"{CODE}{place}").upper() or ascii_uppercase[place]
        colours.setdefault(code, sent.one(f"{COLOUR}{place}") or NEW_COLOURS[place % len(NEW_COLOURS)])
        codes.append(code)
    entries = tuple(Entry(code, f"Bead {code}", colour.lower(), kind=kind) for code, colour in colours.items())
    return Palette(entries), tuple(list(colours).index(code) for code in codes)


def _typed(sent: Sent) -> TypedOldChart:
    flat = sent.one("do") == FLAT
    places = {name: sent.one(name, usual) or usual for name, usual in USUAL.items()}
    pulled = (*FOLLOWING_FIELDS, ROW_FIELDS, *FREE_FIELDS)
    places |= {name: "" if flat and pair != ROW_FIELDS else sent.one(name) for pair in pulled for name in pair}
    usual = {field.name: str(field.default) for field in fields(TypedOldChart) if field.name != "places"}
    return TypedOldChart(places, **{name: sent.one(name) or text for name, text in usual.items()})


def _corners(typed: TypedOldChart, size: tuple[int, int]) -> tuple[Place, ...]:
    """The four corners; the second and the fourth, where they were not pulled, as the others and a row have them."""
    first, opposite = (_place(typed, CORNER_FIELDS[corner]) for corner in (0, 2))
    row = _place(typed, ROW_FIELDS) if _is_typed(typed, ROW_FIELDS) else (opposite[0], first[1])
    second, fourth = (_place(typed, pair) if _is_typed(typed, pair) else None for pair in FOLLOWING_FIELDS)
    if second is None and fourth is None:
        wide, high = size
        in_pixels = [(x * wide, y * high) for x, y in (first, opposite, row)]
        second, fourth = ((x / wide, y / high) for x, y in squared(*in_pixels))
    second, fourth = second or _across_from(fourth, first, opposite), fourth or _across_from(second, first, opposite)
    return first, second, opposite, fourth


def _across_from(corner: Place | None, first: Place, opposite: Place) -> Place:
    """The corner that is missing, as if the sheet lay square before the camera."""
    x, y = corner or first
    return first[0] + opposite[0] - x, first[1] + opposite[1] - y


def _is_typed(typed: TypedOldChart, pair: tuple[str, str]) -> bool:
    return all(typed.places[name] for name in pair)


def _paper(typed: TypedOldChart, corners: tuple[Place, ...], wrong: Objections) -> Paper | None:
    try:
        pulled = [
            (sheet, _place(typed, pair))
            for sheet, pair in zip(FREE, FREE_FIELDS, strict=True)
            if _is_typed(typed, pair)
        ]
        return Paper(corners, pulled)
    except EngineError as error:
        wrong.add("corners", error.message)
        return None


def _place(typed: TypedOldChart, pair: tuple[str, str]) -> Place:
    x, y = (decimal_number(typed.places[name], "where that point lies, in per cent such as 12.5") for name in pair)
    return x / 100, y / 100


def _drawn(typed: TypedOldChart, size: tuple[int, int], corners: tuple[Place, ...], wrong: Objections) -> Drawn | None:
    for name, label, words in (
        ("rowing", "Rows hold", ROWINGS),
        ("shape", "Drawn as", SHAPES),
        ("way", "Direction", WAYS),
        ("first", "The first row begins", FIRSTS),
        ("side", "Rows are read", SIDES),
        ("fit", "The lattice", FITS),
        ("marks", "Beads are told apart", MARKS),
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

    return wrong.read("rows", lambda: drawn(rows or _likely_rows(corners, size, drawn(1))), None)


def _likely_rows(corners: tuple[Place, ...], size: tuple[int, int], drawn: Drawn) -> int:
    """How many rows the marked box likely holds."""
    one, two, three, four = ((x * size[0], y * size[1]) for x, y in corners)
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
    """Groups by bead from fields such as fix-12, all counted from nought; what no bead or colour is, is left out."""
    fixed = {}
    for name, colour in sent.pairs:
        bead = name.removeprefix(FIX)
        if name != bead and NUMBER.fullmatch(bead) and NUMBER.fullmatch(colour):
            fixed[int(bead)] = int(colour)
    return {bead: colour for bead, colour in fixed.items() if bead < beads and colour < colours}


def places_of(paper: Paper, drawn: Drawn) -> tuple[Place, ...]:
    """Where every bead lies, shares of the picture."""
    return tuple((x, y) for x, y in paper.places(drawn.middles()).tolist())
