"""The stringing list of a pattern, as a page and as JSON."""

from __future__ import annotations

from typing import Annotated, Any

from fastapi import APIRouter, Query
from fastapi.responses import HTMLResponse

from engine.counting.mistakes import ORDERS, STRUNG, find_mistakes, read_stretch
from engine.counting.options import read_longest, read_plan
from engine.counting.sizes import size
from engine.counting.stringing import string
from engine.errors import ChoiceError
from webapp.exchange.results.fits import FitResult
from webapp.exchange.results.lists import StringingResult, stringing_json
from webapp.pages.addresses import PATHS
from webapp.pages.forms.size import read_size
from webapp.pages.views.mistake import mistake_page
from webapp.pages.views.stringing import stringing_page
from webapp.routes.deps import Asked, Asking, Maker, Stored, TheDatabase, TheFrame, page
from webapp.routes.described import answers
from webapp.storage import in_work, workshop

router = APIRouter()


@router.get(PATHS["stringing"], include_in_schema=False)
def stringing(
    stored: Stored, asked: Asked, database: TheDatabase, frame: TheFrame, maker: Maker, part: int = 1
) -> HTMLResponse:
    form = read_size(asked, maker, workshop.own_sizes(database))
    pieces = in_work.pieces(database, stored.id)
    value = stringing_page(frame, stored, form, workshop.workshop(database), part, asked, pieces)
    return page("stringing/page.html", value)


@router.get(PATHS["mistake"], include_in_schema=False)
def mistake(stored: Stored, asked: Asked, database: TheDatabase, frame: TheFrame, maker: Maker) -> HTMLResponse:
    form = read_size(asked, maker, workshop.own_sizes(database))
    return page("stringing/mistake.html", mistake_page(frame, stored, form, workshop.workshop(database), asked))


@router.get("/api/patterns/{id}/mistakes", tags=["patterns"], responses=answers(FitResult))
def get_mistakes(
    stored: Stored,
    options: Asking,
    database: TheDatabase,
    beads: Annotated[str, Query(description="What was strung, in any usual way of writing: 3A 2B, A x 3.")],
    read: Annotated[str, Query(description="strung or worked: the order in which it was read.")] = STRUNG,
) -> dict[str, Any]:
    """Where a stretch fits, in either direction, and what is wrong with it; the places are empty where none fits."""
    if read not in ORDERS:
        raise ChoiceError("Order", read, ORDERS, "read")
    sized = size(
        options.worked(stored.pattern),
        options.question(workshop.own_sizes(database)),
        workshop.workshop(database).with_longest(read_longest(options.longest)),
    )
    stretch = read_stretch(beads, sized.pattern.palette)
    return FitResult.of_fit(find_mistakes(sized, string(sized, read_plan(options.threads)), stretch, read == STRUNG))


@router.get("/api/patterns/{id}/stringing", tags=["patterns"], responses=answers(StringingResult))
def get_stringing(stored: Stored, options: Asking, database: TheDatabase) -> dict[str, Any]:
    """The stringing list: of one pass of the chart, and the threads of the size asked for."""
    question = options.question(workshop.own_sizes(database))
    sized = size(
        options.worked(stored.pattern),
        question,
        workshop.workshop(database).with_longest(read_longest(options.longest)),
    )
    return stringing_json(string(sized, read_plan(options.threads)))
