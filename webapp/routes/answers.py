"""A customer's question, at the desk and as JSON."""

from __future__ import annotations

from collections.abc import Callable
from contextlib import suppress
from dataclasses import asdict, dataclass, replace
from typing import Annotated, Any

from fastapi import APIRouter, Depends, Query
from fastapi.responses import HTMLResponse

from engine.counting.answers import answer
from engine.counting.options import read_plan, read_spare
from engine.counting.reply import USUAL
from engine.errors import ChoiceError, SizeError
from webapp.exchange.desk_results import (
    compared_json,
    kit_json,
    longest_json,
    out_of_colour_json,
    out_of_thread_json,
    remaining_json,
)
from webapp.exchange.results import answer_json, beside_json
from webapp.pages.addresses import PATHS
from webapp.pages.forms.answers import TypedDesk, number_in, read_desk
from webapp.pages.forms.settings import UNITS
from webapp.pages.views.answers import answers_page, words
from webapp.pages.views.beside import Beside, beside
from webapp.records import MakerSettings, PatternSummary, StoredPattern
from webapp.routes.deps import Asked, Asking, Maker, TheDatabase, TheFrame, page
from webapp.routes.described import AnswerAnswer, answers
from webapp.storage import finding, patterns, workshop
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
    return page("answers/page.html", answers_page(frame, form, stored, numbers, maker, near, own))


@dataclass(frozen=True)
class AskedBeside:
    """What may be asked beside an answer, written as at the desk."""

    units: str = Query("", description="cm, in or both: lengths in sentence and reply; empty: as in the settings.")
    compare: str = Query("", description="sizes or kinds: the pattern in several of them, as `compared`.")
    compare_sizes: str = Query("", description="Sizes to compare in place of the usual ones: 40 cm, 45 cm, Opera.")
    have: str = Query("", description="Beads in hand, such as A 20, B 2 x 10 g, C 300 beads: as `longest`.")
    pieces: str = Query("", description="Number of pieces of a shopping list: as `kit`.")
    packs: str = Query("", description="What a pack holds and costs, such as 20 at 3.50, or A 20 at 3.50, B 500 beads.")
    worked: str = Query("", description="Beads worked, or round and place such as 12/3: what is left, as `remaining`.")
    out_thread: str = Query("", description="Where the thread ended, also thread 2: 40; as `out_of_thread`.")
    thread_left: str = Query("", description="Thread left on the reel, in metres.")
    out_colour: str = Query("", description="The colour that ran out: B 120, or B at 340; as `out_of_colour`.")
    beads_left: str = Query("", description="Beads left by colour, such as A 200, C 50.")


@router.get("/api/answers", tags=["answers"], responses=answers(AnswerAnswer))
def get_answer(
    pattern: int, options: Asking, asked: Annotated[AskedBeside, Depends()], database: TheDatabase, maker: Maker
) -> dict[str, Any]:
    """How many beads that size takes: the sentence and its table, what goes with it, and the reply.

    Whatever is asked beside it is answered under a key of its own, which is left out where it was not asked.
    """
    stored, own = patterns.load(database, pattern), workshop.workshop(database, pattern)
    made, plan, maker = options.worked(stored.pattern), read_plan(options.threads), _in_units(maker, asked.units)
    found = answer(made, options.question, own, plan, read_spare(options.spare, maker.spare), maker.units)
    return {
        "pattern": stored.id,
        "title": stored.pattern.title,
        "revision": stored.revision,
        **answer_json(found),
        **beside_json(made, found, words(maker, USUAL), own),
        **_asked_beside(
            beside(
                made,
                found,
                TypedDesk(closure=options.closure or "", **asdict(asked)),
                own,
                plan,
                maker.units,
                workshop.own_sizes(database),
            )
        ),
    }


def _in_units(maker: MakerSettings, units: str) -> MakerSettings:
    if units and units not in UNITS:
        raise ChoiceError("Units", units, UNITS, "units")
    return replace(maker, units=units or maker.units)


def _asked_beside(found: Beside) -> dict[str, Any]:
    """Raises the first objection, naming its field."""
    for field, sentence in found.errors.items():
        raise SizeError(sentence, field)
    made: dict[str, tuple[Any, Callable[[Any], Any]]] = {
        "compared": (found.compared, compared_json),
        "longest": (found.longest, longest_json),
        "kit": (found.kit, kit_json),
        "remaining": (found.remaining, remaining_json),
        "out_of_thread": (found.out_thread, out_of_thread_json),
        "out_of_colour": (found.out_colour, out_of_colour_json),
    }
    return {name: to_json(value) for name, (value, to_json) in made.items() if value}


def _meant(database: Database, text: str) -> tuple[StoredPattern | None, tuple[PatternSummary, ...]]:
    """The pattern of that number or name, if one alone is meant, and those near it; without a name the newest."""
    number = number_in(text)
    with suppress(NotFound):
        if number is not None:
            found = patterns.load(database, number)
            return found, finding.find(database, found.pattern.title, per_page=NEAR).patterns
    near = finding.find(database, text, per_page=NEAR).patterns
    same = [one for one in near if one.title.casefold() == text.casefold()]
    if number is not None:
        near = tuple(same)
    same = same or list(near if text else near[:1])
    return (patterns.load(database, same[0].id) if len(same) == 1 else None), near
