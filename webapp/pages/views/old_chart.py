"""The pages for an old chart: handing it in, the lattice over its picture, and beads to be put right."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Iterable
from dataclasses import dataclass
from itertools import accumulate, islice
from math import hypot
from typing import Annotated

from markupsafe import Markup

from engine.drawing.charts import chart
from engine.drawing.svg import to_svg
from engine.pattern.old_charts.drawn import Drawn
from engine.pattern.old_charts.paper import CORNERS as CORNERS_OF_SHEET
from engine.pattern.old_charts.paper import Paper, Place
from engine.pattern.starts.all import winds_in_words
from engine.units import count, counted
from webapp.pages.addresses import address
from webapp.pages.forms.old_chart import (
    CODE,
    COLOUR,
    CORNER_FIELDS,
    FIRSTS,
    FITS,
    FREE,
    FREE_FIELDS,
    MARKS,
    ROW_FIELDS,
    ROWINGS,
    SHAPES,
    SIDES,
    WAYS,
    OldChartForm,
    places_of,
)
from webapp.pages.views.frame import Frame
from webapp.pages.views.signs import Sign, signs

MOST_DRAWN, BEAD_MM = 1200, 4.0
MOST_DOTS = 6000
NEIGHBOURS = 1.8  # of a bead's size from corner to corner are seen round it
MOST_DOUBTS = 60  # shown at a time
CORNERS = ("Upper left corner", "Upper right corner", "Lower right corner", "Lower left corner")
ROW_NAME = "Along a row, from the upper left corner"
FREE_NAMES = ("Middle of the top", "Middle of the right", "Middle of the bottom", "Middle of the left", "Middle")


Point = tuple[str, str, str, str]  # its two fields, its name, and where it lies unless they say: "x,y" in per cent


@dataclass(frozen=True)
class OldChartIn:
    """An old chart to be handed in, at `/patterns/begin/old-chart`."""

    frame: Frame
    errors: Annotated[dict[str, str], "What is wrong with the file, by field."]
    pdf_page: Annotated[str, "The page of a PDF, as typed."]


@dataclass(frozen=True)
class Doubt:
    """A bead in doubt."""

    bead: Annotated[int, "Counted from nought."]
    words: Annotated[str, "Row and place."]
    picture: Annotated[str, "Address of the picture round it."]
    colour: Annotated[int, "The palette's place that it has now."]
    x: Annotated[str, "Where it lies in the picture across, per cent."]
    y: Annotated[str, "The same down."]


@dataclass(frozen=True)
class SymbolGroup:
    """Beads with one symbol."""

    words: Annotated[str, "How many."]
    picture: Annotated[str, "Address of the picture of one of them."]
    code: Annotated[tuple[str, str], "Its field, and the code in it."]
    colour: Annotated[tuple[str, str], "Its field, and the colour in it."]


@dataclass(frozen=True)
class OldChartPart:
    """What was read."""

    words: Annotated[str, "Beads, rows, and how many are in doubt."]
    chart: Annotated[Markup, "The chart lying, as SVG of our own drawing."]
    signs: Annotated[tuple[tuple[Sign, int], ...], "The beads with counts."]
    values: Annotated[tuple[int, ...], "What says each of those beads in a field that puts one right."]
    symbols: Annotated[tuple[SymbolGroup, ...], "The symbols of a chart in symbols, the most frequent first."]
    doubts: Annotated[tuple[Doubt, ...], "Beads in doubt, worst first, those beyond the most left out."]
    more: Annotated[int, "How many more are in doubt."]


@dataclass(frozen=True)
class OldChartPage:
    """An old chart and what was read of it, at `/patterns/begin/old-chart/{token}`."""

    frame: Frame
    form: OldChartForm
    own: Annotated[str, "Address of this page."]
    picture: Annotated[str, "Address of the whole picture."]
    corners: Annotated[tuple[Point, ...], "The four corners."]
    row: Annotated[Point, "The point along a row."]
    free: Annotated[tuple[Point, ...], "Every point that can be pulled."]
    dots: Annotated[str, "The middle of every bead, as a path; empty before it is read."]
    doubted: Annotated[str, "The middle of every bead in doubt, as a path."]
    choices: Annotated[tuple[tuple[str, str, tuple[tuple[str, str], ...]], ...], "Field, words, values of each choice."]
    kinds: Annotated[tuple[tuple[str, str], ...], "The bead kinds to choose from: value and words."]
    part: Annotated[OldChartPart | None, "What was read."]


def old_chart_in(frame: Frame, sentence: str = "", field: str = "picture", pdf_page: str = "1") -> OldChartIn:
    """The page that asks for the picture."""
    return OldChartIn(frame, {field: sentence} if sentence else {}, pdf_page)


def old_chart_page(frame: Frame, token: str, form: OldChartForm, kinds: Iterable[str]) -> OldChartPage:
    """The picture with what was marked and read."""
    free = form.paper.flat_places(FREE) if form.paper else FREE
    return OldChartPage(
        frame=frame,
        form=form,
        own=address("old_chart", token=token),
        picture=address("old_chart_shown", token=token),
        corners=tuple(
            (x, y, name, _lies(form, corner))
            for corner, ((x, y), name) in enumerate(zip(CORNER_FIELDS, CORNERS, strict=True))
        ),
        row=(*ROW_FIELDS, ROW_NAME, _along_a_row(form)),
        free=tuple(
            (x, y, name, _in_per_cent(place)) for (x, y), name, place in zip(FREE_FIELDS, FREE_NAMES, free, strict=True)
        ),
        dots=_dots(form, range(len(form.reading.beads))) if form.reading else "",
        doubted=_dots(form, form.reading.doubts) if form.reading else "",
        choices=(
            ("rowing", "Rows hold", tuple(ROWINGS.items())),
            ("shape", "Drawn as", tuple(SHAPES.items())),
            ("way", "Direction", tuple(WAYS.items())),
            ("first", "The first row begins", tuple(FIRSTS.items())),
            ("side", "Rows are read", tuple(SIDES.items())),
            ("fit", "The lattice", tuple(FITS.items())),
            ("marks", "Beads are told apart", tuple(MARKS.items())),
        ),
        kinds=tuple((kind, kind) for kind in kinds),
        part=_part(token, form),
    )


def _lies(form: OldChartForm, corner: int) -> str:
    return _in_per_cent(form.corners[corner] if form.corners else CORNERS_OF_SHEET[corner])


def _along_a_row(form: OldChartForm) -> str:
    """Three quarters along the first edge, clear of the point in its middle."""
    (ax, ay), (bx, by), *_ = form.corners or CORNERS_OF_SHEET
    return _in_per_cent(((ax + 3 * bx) / 4, (ay + 3 * by) / 4))


def _in_per_cent(place: Place) -> str:
    return f"{100 * place[0]:.2f},{100 * place[1]:.2f}"


def _dots(form: OldChartForm, beads: Iterable[int]) -> str:
    if form.paper is None or form.drawn is None:
        return ""
    places = places_of(form.paper, form.drawn)
    some = (places[bead] for bead in islice(beads, MOST_DOTS))
    return "".join(f"M{100 * x:.2f},{100 * y:.2f}h.01" for x, y in some)


def _part(token: str, form: OldChartForm) -> OldChartPart | None:
    pattern, reading, drawn = form.pattern, form.reading, form.drawn
    if pattern is None or reading is None or drawn is None:
        return None
    beads = pattern.chart
    doubts = f"{counted(len(reading.doubts), 'bead')} in doubt" if reading.doubts else "none of them in doubt"
    return OldChartPart(
        words=f"{counted(len(beads), 'bead')} in {count(drawn.rows)} rows, {pattern.around} around; {doubts}. "
        f"{winds_in_words(pattern.around, beads)}",
        chart=Markup(to_svg(chart(pattern, 0, min(len(beads), MOST_DRAWN), BEAD_MM, upright=False))),
        signs=tuple(zip(signs(pattern.palette), map(beads.count, range(len(pattern.palette))), strict=True)),
        values=tuple(
            next(place for place, group in enumerate(form.groups) if group.entry == entry)
            for entry in range(len(pattern.palette))
        ),
        symbols=tuple(_symbols(token, form)) if reading.examples else (),
        doubts=tuple(_doubts(token, form, beads)),
        more=max(0, len(reading.doubts) - MOST_DOUBTS),
    )


def _symbols(token: str, form: OldChartForm) -> Iterable[SymbolGroup]:
    assert form.paper and form.drawn and form.pattern
    places, reach = places_of(form.paper, form.drawn), _reach(form.paper, form.drawn, form.size) / 3
    for place, group in enumerate(form.groups):
        entry = form.pattern.palette[group.entry]
        x, y = places[group.example]
        yield SymbolGroup(
            words=counted(group.beads, "bead"),
            picture=_seen(token, x, y, reach),
            code=(f"{CODE}{place}", entry.code),
            colour=(f"{COLOUR}{place}", entry.colour),
        )


def _seen(token: str, x: float, y: float, reach: float) -> str:
    x, y = min(1.0, max(0.0, x)), min(1.0, max(0.0, y))
    return address("old_chart_bead", token=token, x=f"{x:.4f}", y=f"{y:.4f}", reach=f"{min(1.0, reach):.4f}")


def _doubts(token: str, form: OldChartForm, beads: bytes) -> Iterable[Doubt]:
    assert form.paper and form.drawn and form.reading
    places, reach = places_of(form.paper, form.drawn), _reach(form.paper, form.drawn, form.size)
    starts = (0, *accumulate(form.drawn.row_length(row) for row in range(form.drawn.rows)))
    for bead in form.reading.doubts[:MOST_DOUBTS]:
        row = bisect_right(starts, bead) - 1
        x, y = places[bead]
        yield Doubt(
            bead=bead,
            words=f"Row {count(row + 1)}, bead {count(bead - starts[row] + 1)}",
            picture=_seen(token, x, y, reach),
            colour=beads[bead],
            x=f"{100 * x:.2f}",
            y=f"{100 * y:.2f}",
        )


def _reach(paper: Paper, drawn: Drawn, size: tuple[int, int]) -> float:
    """How far a bead's neighbours stand from it, as a share of the picture's longer side."""
    wide, high = drawn.bead()
    (left, top), (right, foot) = paper.flat_places(((0.5, 0.5), (0.5 + wide, 0.5 + high)))
    return NEIGHBOURS * hypot((right - left) * size[0], (foot - top) * size[1]) / max(size)
