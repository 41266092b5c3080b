"""Files that become pattern files, as JSON: the file is the body, what is asked stands in the address."""

from __future__ import annotations

from typing import Any

from fastapi import APIRouter, Query

from engine.errors import PatternError
from engine.pattern.old_charts.drawn import Drawn
from engine.pattern.old_charts.fitting import fitted
from engine.pattern.old_charts.marks import read_marks
from engine.pattern.old_charts.paper import Paper
from engine.pattern.old_charts.reading import Reading
from engine.pattern.pattern import Pattern
from webapp.exchange import pattern_file
from webapp.exchange.pattern_file import PatternFields
from webapp.pages.forms.brought import MAKE as BROUGHT
from webapp.pages.forms.brought import BroughtForm, read_brought
from webapp.pages.forms.old_chart import MAKE, OldChartForm, read_old_chart
from webapp.pages.forms.photograph import PhotographForm, read_photograph
from webapp.pictures import handed_in
from webapp.pictures.list_files import list_text
from webapp.routes.deps import Asked, Body, TheDatabase, TheServices
from webapp.routes.described import answers
from webapp.storage import beads

router = APIRouter(prefix="/api/starts", tags=["starts"])
FILE = {
    "requestBody": {
        "required": True,
        "content": {"application/octet-stream": {"schema": {"type": "string", "format": "binary"}}},
    }
}


@router.post("/photograph", openapi_extra=FILE, responses=answers(PatternFields))
def post_photograph(
    body: Body,
    asked: Asked,
    services: TheServices,
    database: TheDatabase,
    around: str = Query("24", description="Beads in one round, 3 to 60."),
    many: str = Query("6", description="How many colours are found, 1 to 24."),
) -> dict[str, Any]:
    """The pattern file of a JPEG, PNG or WebP picture laid round the rope.

    The address may say whatever the page asks: title, turn, tilt, left, top, right, bottom, high, rows, gap, source,
    colour, mixing, contrast, calm, ground.
    """
    with services.heavy.turn():
        picture = handed_in.decoded_picture("The picture", body)
        form = read_photograph(
            asked, lambda turn, box: handed_in.summed_part(picture, turn, box), beads.cabinet(database)
        )
    return _document(form)


@router.post("/old-chart", openapi_extra=FILE, responses=answers(PatternFields))
def post_old_chart(
    body: Body,
    asked: Asked,
    services: TheServices,
    around: str = Query("", description="Beads in one round, 3 to 60."),
    pdf_page: int = Query(1, ge=1, le=100_000, description="Which page of a PDF."),
) -> dict[str, Any]:
    """The pattern file of an old chart in a JPEG, PNG or WebP picture or on a page of a PDF.

    The address may say whatever the page asks: the corners x1, y1 to x4, y4 from the upper left as a clock goes, in per
    cent of the picture, or of them x1, y1, x3, y3 and a point rowx, rowy along a row; title, rows, many, rowing, shape,
    way, first, side, fit, marks (colours or symbols), and of symbols code-0, colour-0 and so on, most frequent first.
    """
    with services.heavy.turn():
        pixels = handed_in.plain_pixels(handed_in.picture_of("The picture", body, pdf_page))

        def read(paper: Paper, drawn: Drawn, many: int, fit: bool, marks: str) -> tuple[Paper, Reading]:
            laid = fitted(pixels, paper, drawn) if fit else paper
            return laid, read_marks(pixels, laid, drawn, many, marks)

        high, wide = pixels.shape[:2]
        form = read_old_chart([*asked, ("do", MAKE)], (wide, high), read)
    return _document(form)


@router.post("/list", openapi_extra=FILE, responses=answers(PatternFields))
def post_list(
    body: Body,
    asked: Asked,
    services: TheServices,
    written: str = Query("strung", description="strung, worked, table (first row at the bottom) or table-down."),
    around: str = Query("8", description="Beads in one round; a table says it itself."),
    pages: str = Query("", description="Pages of a PDF, such as 3 or 3-5; all where none are said."),
) -> dict[str, Any]:
    """The pattern file of a list or a table in a PDF or a text file; lists of a booklet give the whole rope."""
    with services.heavy.turn():
        text = list_text("The file", body, pages)
    return _document(read_brought([("text", text), *asked, ("do", BROUGHT)]))


def _document(form: PhotographForm | OldChartForm | BroughtForm) -> dict[str, Any]:
    pattern: Pattern | None = form.pattern
    if pattern is None:
        field, sentence = next(iter(form.errors.items()))
        raise PatternError(sentence, field)
    return pattern_file.to_document(pattern)
