"""Sets a booklet's text: HTML from templates/booklet, and the pictures that it names."""

from __future__ import annotations

import re
from collections.abc import Mapping

from engine.booklet.compose import Booklet
from engine.booklet.errata import Errata
from engine.drawing.symbols import assigned
from engine.pattern.palette import INK
from webapp.pages.rendering import environment
from webapp.paths import TEMPLATES
from webapp.pictures.images import encoded
from webapp.printing.figures import (
    ACCENT,
    ArrowFigure,
    BeadFigure,
    BoxesFigure,
    CoverChartFigure,
    ExampleFigure,
    Figure,
    SheetFigure,
    SquaresFigure,
)
from webapp.printing.growing import GrownFigure
from webapp.printing.overview import overview
from webapp.printing.pictures import Awaited
from webapp.printing.stamps import stamps

SWATCH_MM, LEGEND_MM = 7.0, 5.2
SCHEME = "booklet:"  # an address of two letters or more before the colon, or it is not taken for one

_BEFORE_UNIT = re.compile(r"(?<=\d) (?=(?:mm|cm|m|g|in|ft|yd)\b|%)")

Image = Figure | Awaited | bytes


def page(booklet: Booklet, pictures: Mapping[str, Awaited | bytes]) -> tuple[str, dict[str, Image]]:
    """The HTML, and every picture that it names by its address: drawn ones as figures, others as bytes or awaited."""
    template = environment(TEMPLATES).get_template("booklet/booklet.html")
    text = template.render(booklet=booklet, symbols=[symbol.name for symbol in assigned(booklet.palette)])
    return held(text), {SCHEME + key: image for key, image in {**pictures, **_figures(booklet)}.items()}


def errata_page(errata: Errata) -> str:
    """The HTML of a sheet of errata, which names no picture."""
    return held(environment(TEMPLATES).get_template("booklet/errata.html").render(errata=errata))


def held(text: str) -> str:
    """The text with no line that ends between a number and its unit."""
    return _BEFORE_UNIT.sub("\N{NO-BREAK SPACE}", text)


def _figures(booklet: Booklet) -> dict[str, Image]:
    palette = booklet.palette
    images: dict[str, Image] = {
        "arrow": ArrowFigure(booklet.hand == "left", _tone(booklet)),
        "example": ExampleFigure(booklet.reading.example, _tone(booklet)),
    }
    for listed in booklet.lists:
        images |= {part.figure: SquaresFigure(palette, part, listed.column, booklet.paper) for part in listed.all_pages}
        rows = listed.group.tens if listed.group else ()
        images |= {f"boxes-{row.boxes}": BoxesFigure(row.boxes, booklet.paper.large) for row in rows}
    if not booklet.pictures and booklet.charts.stretches:
        images["cover-chart"] = CoverChartFigure(booklet.charts.longest, booklet.paper)
    if booklet.paper.large:
        return images | _sheets(booklet)
    images |= stamps(booklet.working + booklet.finishing, booklet.hand)
    if booklet.small_pictures:
        images |= {grown.figure: GrownFigure(grown) for grown in booklet.growth}
    for index, entry in enumerate(palette):
        images[f"bead-{entry.code}"] = BeadFigure(palette, index, SWATCH_MM)
        images[f"legend-{entry.code}"] = BeadFigure(palette, index, LEGEND_MM)
    for way in booklet.ways:
        for bead in way.beads:
            images[bead.figure] = BeadFigure(way.palette, way.palette.index(bead.code), SWATCH_MM)
    return images | _sheets(booklet)


def _tone(booklet: Booklet) -> str:
    """The colour of arrows and lines: black in large print, and where ink is saved."""
    return ACCENT if booklet.small_pictures else INK


def _sheets(booklet: Booklet) -> dict[str, Image]:
    images: dict[str, Image] = {}
    for stretch in booklet.charts.stretches:
        images |= {sheet.figure: SheetFigure(stretch.pattern, sheet, _tone(booklet)) for sheet in stretch.sheets}
        if booklet.small_pictures and len(stretch.sheets) > 1:
            images[stretch.figure] = encoded(overview(stretch.pattern), "png")
    return images
