"""Words of the trade, and how each number is made."""

from __future__ import annotations

from fastapi import APIRouter
from fastapi.responses import HTMLResponse

from webapp.pages.addresses import PATHS
from webapp.pages.views.help import help_page
from webapp.routes.deps import TheFrame, page

router = APIRouter(include_in_schema=False)


@router.get(PATHS["help"])
def words_and_sums(frame: TheFrame) -> HTMLResponse:
    return page("help/page.html", help_page(frame))
