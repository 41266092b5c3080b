"""A customer's question as JSON."""

from __future__ import annotations

from typing import Any

from fastapi import APIRouter

from engine.counting.answers import answer
from engine.counting.options import read_plan, read_spare
from webapp.exchange.results import answer_json
from webapp.routes.deps import Asking, Maker, TheDatabase
from webapp.routes.described import AnswerAnswer, answers
from webapp.storage import patterns, workshop

router = APIRouter()


@router.get("/api/answers", tags=["answers"], responses=answers(AnswerAnswer))
def get_answer(pattern: int, options: Asking, database: TheDatabase, maker: Maker) -> dict[str, Any]:
    """How many beads that size takes: the sentence and its table."""
    stored = patterns.load(database, pattern)
    found = answer(options.worked(stored.pattern), options.question, workshop.workshop(database),
                   read_plan(options.threads), read_spare(options.spare, maker.spare), maker.units)
    return {"pattern": stored.id, "title": stored.pattern.title, "revision": stored.revision, **answer_json(found)}
