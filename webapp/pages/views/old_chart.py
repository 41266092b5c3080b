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
from engine.pattern.old_charts.paper import Paper
from engine.pattern.starts.all import winds_in_words
from engine.units import count, counted
from webapp.pages.addresses import address
from webapp.pages.forms.old_chart import (
    CORNER_FIELDS,
    FIRSTS,
    FITS,
    FREE,
    FREE_FIELDS,
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
FREE_NAMES = ("Middle of the top", "Middle of the right", "Middle of the foot", "Middle of the left", "Middle")


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


@dataclass(frozen=True)
class OldChartPart:
    """What was read."""

    words: Annotated[str, "Beads, rows, and how many are in doubt."]
    chart: Annotated[Markup, "The chart lying, as SVG of our own drawing."]
    signs: Annotated[tuple[tuple[Sign, int], ...], "The beads with counts."]
    doubts: Annotated[tuple[Doubt, ...], "Beads in doubt, worst first, those beyond the most left out."]
    more: Annotated[int, "How many more are in doubt."]


@dataclass(frozen=True)
class OldChartPage:
    """An old chart and what was read of it, at `/patterns/begin/old-chart/{token}`."""

    frame: Frame
    form: OldChartForm
    own: Annotated[str, "Address of this page."]
    picture: Annotated[str, "Address of the whole picture."]
    corners: Annotated[tuple[tuple[str, str, str], ...], "Of every corner its two fields and its name."]
    free: Annotated[tuple[tuple[str, str, str], ...], "Of every point that can be pulled its two fields and its name."]
    free_places: Annotated[str, "Where those lie that were not pulled: x,y and a space between, per cent."]
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
        corners=tuple((x, y, name) for (x, y), name in zip(CORNER_FIELDS, CORNERS, strict=True)),
        free=tuple((x, y, name) for (x, y), name in zip(FREE_FIELDS, FREE_NAMES, strict=True)),
        free_places=" ".join(f"{100 * x:.2f},{100 * y:.2f}" for x, y in free),
        dots=_dots(form, range(len(form.reading.beads))) if form.reading else "",
        doubted=_dots(form, form.reading.doubts) if form.reading else "",
        choices=(
            ("rowing", "Rows hold", tuple(ROWINGS.items())),
            ("shape", "Drawn as", tuple(SHAPES.items())),
            ("way", "It stands", tuple(WAYS.items())),
            ("first", "The first row begins", tuple(FIRSTS.items())),
            ("side", "Rows are read", tuple(SIDES.items())),
            ("fit", "The lattice", tuple(FITS.items())),
        ),
        kinds=tuple((kind, kind) for kind in kinds),
        part=_part(token, form),
    )


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
        doubts=tuple(_doubts(token, form, beads)),
        more=max(0, len(reading.doubts) - MOST_DOUBTS),
    )


def _doubts(token: str, form: OldChartForm, beads: bytes) -> Iterable[Doubt]:
    assert form.paper and form.drawn and form.reading
    places, reach = places_of(form.paper, form.drawn), f"{_reach(form.paper, form.drawn, form.size):.4f}"
    starts = (0, *accumulate(form.drawn.row_length(row) for row in range(form.drawn.rows)))
    for bead in form.reading.doubts[:MOST_DOUBTS]:
        row = bisect_right(starts, bead) - 1
        x, y = places[bead]
        yield Doubt(
            bead=bead,
            words=f"Row {count(row + 1)}, bead {count(bead - starts[row] + 1)}",
            picture=address("old_chart_bead", token=token, x=f"{x:.4f}", y=f"{y:.4f}", reach=reach),
            colour=beads[bead],
        )


def _reach(paper: Paper, drawn: Drawn, size: tuple[int, int]) -> float:
    """How far a bead's neighbours stand from it, as a share of the picture's longer side."""
    wide, high = drawn.bead()
    (left, top), (right, foot) = paper.flat_places(((0.5, 0.5), (0.5 + wide, 0.5 + high)))
    return NEIGHBOURS * hypot((right - left) * size[0], (foot - top) * size[1]) / max(size)
