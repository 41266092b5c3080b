"""The stringing list of a pattern, as a page and as JSON."""

from __future__ import annotations

from typing import Any

from fastapi import APIRouter
from fastapi.responses import HTMLResponse

from engine.counting.options import read_longest, read_plan
from engine.counting.sizes import size
from engine.counting.stringing import string
from webapp.exchange.results import StringingResult, stringing_json
from webapp.pages.addresses import PATHS
from webapp.pages.forms.size import read_size
from webapp.pages.views.stringing import stringing_page
from webapp.routes.deps import Asked, Asking, Maker, Stored, TheDatabase, TheFrame, page
from webapp.routes.described import answers
from webapp.storage import workshop

router = APIRouter()


@router.get(PATHS["stringing"], include_in_schema=False)
def stringing(
    stored: Stored, asked: Asked, database: TheDatabase, frame: TheFrame, maker: Maker, part: int = 1
) -> HTMLResponse:
    form = read_size(asked, maker, workshop.own_sizes(database))
    value = stringing_page(frame, stored, form, workshop.workshop(database), part, asked)
    return page("stringing/page.html", value)


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
