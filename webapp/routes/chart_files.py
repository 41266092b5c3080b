"""The chart of a pattern for other tools: as text, as a table, as SVG and as PNG."""

from __future__ import annotations

from fastapi import APIRouter
from fastapi.responses import Response

from engine.drawing.charts import chart
from engine.drawing.svg import to_svg
from engine.pattern.pattern import Pattern
from webapp.exchange import chart_text
from webapp.exchange.pattern_file import SUFFIX, file_name
from webapp.pages.addresses import PATHS
from webapp.pictures.chart_image import chart_png
from webapp.routes.deps import Stored, TheServices
from webapp.routes.described import bytes_of

router = APIRouter(tags=["charts"])


@router.get(PATHS["chart_text"], response_class=Response, responses=bytes_of("text/plain"))
def as_text(stored: Stored, part: str = "chart", strung: bool = False) -> Response:
    """Beads in the notation, working order; `part` start, chart or end, or a part's number; `strung` reverses them."""
    return _file(stored.pattern, chart_text.as_text(stored.pattern, part, strung), "txt", "text/plain")


@router.get(PATHS["chart_table"], response_class=Response, responses=bytes_of("text/csv"))
def as_table(stored: Stored) -> Response:
    """A line a bead: part, row, place, round, bead, code, name; counted from one."""
    return _file(stored.pattern, chart_text.as_table(stored.pattern), "csv", "text/csv")


@router.get(PATHS["chart_svg"], response_class=Response, responses=bytes_of("image/svg+xml"))
def as_svg(stored: Stored, upright: bool = False, part: str = "chart") -> Response:
    """The whole chart with symbols, bars where rounds start and numbers of every tenth; lying, or upright."""
    drawn = chart_text.alone(stored.pattern, part)
    return _file(stored.pattern, to_svg(chart(drawn, upright=upright)), "svg", "image/svg+xml")


@router.get(PATHS["chart_png"], response_class=Response, responses=bytes_of("image/png"))
def as_png(
    stored: Stored, services: TheServices, upright: bool = False, symbols: bool = False, part: str = "chart"
) -> Response:
    """The whole chart in colours, with bars where rounds start, and with symbols if wanted; lying, or upright."""
    drawn = chart_text.alone(stored.pattern, part)
    with services.heavy.turn():
        picture = chart_png(drawn, upright, symbols=symbols)
        return _file(stored.pattern, picture, "png", "image/png")


def _file(pattern: Pattern, content: str | bytes, suffix: str, media_type: str) -> Response:
    name = f"{file_name(pattern.title).removesuffix(SUFFIX)}-chart.{suffix}"
    return Response(content, media_type=media_type, headers={"content-disposition": f'attachment; filename="{name}"'})
