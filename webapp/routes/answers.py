"""A customer's question, at the desk and as JSON."""

from __future__ import annotations

from typing import Any

from fastapi import APIRouter
from fastapi.responses import HTMLResponse

from engine.counting.answers import answer
from engine.counting.options import read_plan, read_spare
from engine.counting.reply import USUAL
from webapp.exchange.results import answer_json, beside_json
from webapp.pages.addresses import PATHS
from webapp.pages.forms.answers import read_desk
from webapp.pages.views.answers import answers_page, words
from webapp.records import PatternSummary, StoredPattern
from webapp.routes.deps import Asked, Asking, Maker, TheDatabase, TheFrame, page
from webapp.routes.described import AnswerAnswer, answers
from webapp.storage import patterns, workshop
from webapp.storage.database import Database
from webapp.storage.errors import NotFound

NEAR = 12
LONGEST_NUMBER = 9

router = APIRouter()


@router.get(PATHS["answers"], include_in_schema=False)
def desk(asked: Asked, database: TheDatabase, frame: TheFrame, maker: Maker) -> HTMLResponse:
    own = workshop.own_sizes(database)
    form = read_desk(asked, maker, own)
    stored, near = _meant(database, form.typed.pattern)
    numbers = workshop.workshop(database, stored.id if stored else None)
    return page("answers/page.html", answers_page(frame, form, stored, numbers, maker, near, own))


@router.get("/api/answers", tags=["answers"], responses=answers(AnswerAnswer))
def get_answer(pattern: int, options: Asking, database: TheDatabase, maker: Maker) -> dict[str, Any]:
    """How many beads that size takes: the sentence and its table, what goes with it, and the reply."""
    stored, own = patterns.load(database, pattern), workshop.workshop(database)
    made, question = options.worked(stored.pattern), options.question
    found = answer(made, question, own, read_plan(options.threads), read_spare(options.spare, maker.spare), maker.units)
    return {"pattern": stored.id, "title": stored.pattern.title, "revision": stored.revision, **answer_json(found),
            **beside_json(made, found, words(maker, USUAL), own)}


def _meant(database: Database, text: str) -> tuple[StoredPattern | None, tuple[PatternSummary, ...]]:
    """The pattern of that number or name, if one alone is meant, and those near it; without a name the newest."""
    if text.isdecimal() and len(text) <= LONGEST_NUMBER:
        try:
            return patterns.load(database, int(text)), ()
        except NotFound:
            return None, ()
    near = patterns.find(database, text, per_page=NEAR).patterns
    same = [one for one in near if one.title.casefold() == text.casefold()] or list(near if text else near[:1])
    return (patterns.load(database, same[0].id) if len(same) == 1 else None), near
