"""Pictures of a pattern as it stands: shaded, as PNG, and its chart, as SVG."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Annotated

from fastapi import APIRouter, Query
from fastapi.responses import Response

from engine.counting.kinds import bead_sizes
from engine.drawing.charts import chart
from engine.drawing.svg import to_svg
from engine.errors import PatternError
from engine.pattern.pattern import Pattern
from engine.pattern.starts.all import start_of
from webapp.pages.addresses import PATHS
from webapp.pages.forms.starts import read_start
from webapp.pages.forms.symmetric import read_symmetric
from webapp.pictures.cache import Wanted
from webapp.pictures.lettering import drawn_letters
from webapp.routes.deps import Asked, Services, Stored, TheDatabase, TheServices
from webapp.routes.described import bytes_of
from webapp.storage import workshop

router = APIRouter()
CHART_BEAD_MM = 4.0
MOST_DRAWN = 6000
Width = Annotated[int, Query(ge=16, le=4000)]
PageWidth = Annotated[int, Query(ge=16, le=1600)]
PAGE_SHAPE = 2 / 3
KEEP = {"cache-control": "private, max-age=31536000, immutable"}


@router.get(
    "/api/patterns/{id}/picture.png", tags=["patterns"], response_class=Response, responses=bytes_of("image/png")
)
def picture(
    stored: Stored, services: TheServices, database: TheDatabase, view: str = "rope", width: Width = 1600
) -> Response:
    """The rope, a ring or a necklace as PNG, on the studio's table."""
    sizes = bead_sizes(stored.pattern, workshop.kinds(database))
    with services.heavy.turn():
        return Response(services.pictures.png(stored.pattern, view, width, sizes), media_type="image/png")


@router.get(PATHS["picture"], include_in_schema=False)
def page_picture(
    stored: Stored,
    services: TheServices,
    database: TheDatabase,
    view: str = "rope",
    width: PageWidth = 1600,
    version: str = "",
) -> Response:
    """The same on a clear ground, for light and dark pages."""
    sizes = bead_sizes(stored.pattern, workshop.kinds(database))
    wanted = Wanted(view, None, width, round(width * PAGE_SHAPE), background=None, form="webp", sizes=sizes)
    data = services.pictures.picture(stored.pattern, wanted, services.heavy.turn)
    return Response(data, media_type="image/webp", headers=KEEP if version else {})


@router.get(PATHS["chart_picture"], include_in_schema=False)
def chart_picture(stored: Stored, version: str = "", part: Annotated[int, Query(ge=0)] = 0) -> Response:
    pattern = stored.pattern
    shown = pattern.alone(pattern.parts[part - 1].beads) if 0 < part <= len(pattern.parts) else pattern
    drawn = min(len(shown.main.beads), MOST_DRAWN)
    svg = to_svg(chart(shown, 0, drawn, CHART_BEAD_MM, upright=False))
    return Response(svg, media_type="image/svg+xml", headers=KEEP if version else {})


@router.get(PATHS["symmetric_picture"], include_in_schema=False)
def symmetric_picture(asked: Asked, services: TheServices, view: str = "rope", width: PageWidth = 400) -> Response:
    """The picture of the symmetric motif that the address says."""
    with services.heavy.turn():
        form = read_symmetric(asked)
        return _of_a_start(services, form.pattern, form.errors, view, width)


@router.get(PATHS["start_picture"], include_in_schema=False)
def start_picture(
    start: str, asked: Asked, services: TheServices, view: str = "rope", width: PageWidth = 400
) -> Response:
    """The picture of the starting point that the address says."""
    with services.heavy.turn():  # the chart itself may take a while
        form = read_start(start_of(start), asked, letters=drawn_letters)
        return _of_a_start(services, form.pattern, form.errors, view, width)


def _of_a_start(
    services: Services, pattern: Pattern | None, errors: Mapping[str, str], view: str, width: int
) -> Response:
    """A picture of all that an address says; as that never changes, browsers keep it.

    Raises PatternError where what it says is wrong.
    """
    if pattern is None:
        raise PatternError(next(iter(errors.values())))
    wanted = Wanted(view, None, width, round(width * PAGE_SHAPE), background=None, form="webp")
    return Response(services.pictures.picture(pattern, wanted), media_type="image/webp", headers=KEEP)
