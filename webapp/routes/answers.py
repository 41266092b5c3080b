"""A customer's question, at the desk and as JSON."""

from __future__ import annotations

from collections.abc import Iterable
from contextlib import suppress
from dataclasses import asdict, dataclass, replace
from typing import Annotated, Any
from urllib.parse import parse_qsl

from fastapi import APIRouter, Depends, Query
from fastapi.responses import HTMLResponse

from engine.cabinet.cost import packs_of
from engine.counting.answers import Answer, again
from engine.counting.change import Change, change_since
from engine.counting.follow_ups import answer_follow_ups, read_follow_ups
from engine.counting.options import USUAL as USUAL_ENDING
from engine.counting.options import Errors, read_question
from engine.counting.questions import NamedSize
from engine.counting.reply import USUAL
from engine.errors import ChoiceError, EngineError
from engine.units import UNITS
from webapp.exchange.results.answers import AnswerResult
from webapp.pages.addresses import PATHS
from webapp.pages.forms.answers import number_in, read_desk
from webapp.pages.views.answers import answers_page, words
from webapp.records import MakerSettings, PatternSummary, StoredPattern
from webapp.routes.deps import Asked, Asking, Maker, TheDatabase, TheFrame, page
from webapp.routes.described import answers
from webapp.storage import beads, finding, patterns, workshop
from webapp.storage.database import Database
from webapp.storage.errors import NotFound

NEAR = 12

router = APIRouter()


@router.get(PATHS["answers"], include_in_schema=False)
def desk(asked: Asked, database: TheDatabase, frame: TheFrame, maker: Maker) -> HTMLResponse:
    own = workshop.own_sizes(database)
    form = read_desk(asked, maker, own)
    stored, near = _meant(database, form.typed.pattern)
    numbers = workshop.workshop(database, stored.id if stored else None)
    value = answers_page(frame, form, stored, numbers, maker, near, own, beads.by_key(database))
    return page("answers/page.html", value)


@dataclass(frozen=True)
class FollowUpOptions:
    """What may be asked after an answer, written as at the desk."""

    last: str = Query("", description="An earlier question, such as length=45+cm: what changed since, as `change`.")
    units: str = Query("", description="cm, in or both: lengths in sentence and reply; empty: as in the settings.")
    compare: str = Query("", description="sizes or kinds: the pattern in several of them, as `compared`.")
    compare_sizes: str = Query("", description="Sizes to compare in place of the usual ones: 40 cm, 45 cm, Opera.")
    have: str = Query("", description="Beads in hand, such as A 20, B 2 x 10 g, C 300 beads: as `longest`.")
    pieces: str = Query("", description="Number of pieces of a shopping list: as `kit`.")
    packs: str = Query(
        "",
        description="What a pack holds and costs: 20 at 3.50, or A 20 at 3.50, B 500 beads; else the cabinet's.",
    )
    worked: str = Query("", description="Beads worked, or round and place such as 12/3: what is left, as `remaining`.")
    out_thread: str = Query("", description="Where the thread ended, also thread 2: 40; as `out_of_thread`.")
    thread_left: str = Query("", description="Thread left on the reel, in metres.")
    out_colour: str = Query("", description="The colour that ran out: B 120, or B at 340; as `out_of_colour`.")
    beads_left: str = Query("", description="Beads left by colour, such as A 200, C 50.")


@router.get("/api/answers", tags=["answers"], responses=answers(AnswerResult))
def get_answer(
    pattern: int, options: Asking, asked: Annotated[FollowUpOptions, Depends()], database: TheDatabase, maker: Maker
) -> dict[str, Any]:
    """How many beads that size takes: the sentence and its table, what goes with it, and the reply.

    Whatever is asked after it is answered under a key of its own, which is left out where it was not asked.
    """
    stored, sizes = patterns.load(database, pattern), workshop.own_sizes(database)
    maker = _in_units(maker, asked.units)
    own = workshop.workshop(database, pattern)
    answered = options.answer(stored.pattern, own, maker, sizes)
    change = _change(asked.last, answered, sizes)
    closure = "" if options.closure == USUAL_ENDING else options.closure or ""
    packs = packs_of(answered.materials, stored.pattern.palette, beads.by_key(database))
    follow_ups = read_follow_ups(asdict(asked), answered.size, closure, maker.units, sizes, packs)
    answers_after = answer_follow_ups(answered, follow_ups, maker.units)
    Errors(dict(answers_after.errors)).check()
    result = AnswerResult.of_answer(answered, answers_after, words(maker, USUAL), stored.id, stored.revision, change)
    return result.json_value()


def _change(last: str, answered: Answer, sizes: Iterable[NamedSize]) -> Change | None:
    """What changed since the question that was asked before. Raises an EngineError naming `last`."""
    if not last:
        return None
    try:
        return change_since(again(answered, read_question(dict(parse_qsl(last)), sizes=sizes)), answered)
    except EngineError as error:
        raise error.at("last") from None


def _in_units(maker: MakerSettings, units: str) -> MakerSettings:
    if units and units not in UNITS:
        raise ChoiceError("Units", units, UNITS, "units")
    return replace(maker, units=units or maker.units)


def _meant(database: Database, text: str) -> tuple[StoredPattern | None, tuple[PatternSummary, ...]]:
    """The pattern of that number or name, if one alone is meant, and those near it; without a name the newest."""
    number = number_in(text)
    with suppress(NotFound):
        if number is not None:
            stored = patterns.load(database, number)
            return stored, finding.find(database, stored.pattern.title, per_page=NEAR).patterns
    near = finding.find(database, text, per_page=NEAR).patterns
    same = [one for one in near if one.title.casefold() == text.casefold()]
    if number is not None:
        near = tuple(same)
    same = same or list(near if text else near[:1])
    return (patterns.load(database, same[0].id) if len(same) == 1 else None), near
