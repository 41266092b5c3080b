"""Answers of the desk that were kept with who asked: found again, asked again, and forgotten."""

from __future__ import annotations

from contextlib import suppress
from urllib.parse import parse_qsl

from fastapi import APIRouter
from fastapi.responses import HTMLResponse, RedirectResponse

from engine.booklet.choices import Choices, picture_in_hand
from engine.counting.answers import Answer, answer
from engine.counting.reply import reply
from engine.errors import EngineError
from engine.pattern.words import check_line
from webapp.exchange.frozen import PrintedFrom, frozen, thawed
from webapp.pages.addresses import PATHS
from webapp.pages.forms.answers import read_desk
from webapp.pages.forms.sent import Sent
from webapp.pages.forms.size import work_size
from webapp.pages.views.answers import in_units
from webapp.pages.views.answers import words as words_of
from webapp.pages.views.kept_answers import kept_answer_page, kept_answers_page
from webapp.records import Counted, GivenAnswer, MakerSettings, StoredPattern
from webapp.records.in_work import LONGEST_NAME
from webapp.routes.deps import Form, Maker, TheDatabase, TheFrame, go, page, pattern_named
from webapp.storage import given_answers, patterns, workshop
from webapp.storage.database import Database
from webapp.storage.errors import NotFound

router = APIRouter(include_in_schema=False)


@router.get(PATHS["kept_answers"])
def all_kept(database: TheDatabase, frame: TheFrame, search: str = "") -> HTMLResponse:
    search = search.strip()
    return page("answers/kept.html", kept_answers_page(frame, search, given_answers.find(database, search)))


@router.post(PATHS["kept_answers"])
def keep(sent: Form, database: TheDatabase, frame: TheFrame, maker: Maker) -> RedirectResponse:
    """Keeps the answer to the `question` of the desk, counted anew. Raises an EngineError where there is none."""
    fields = Sent(sent)
    name, question = fields.one("name"), fields.one("question")
    check_line(name, "name of who asked", LONGEST_NAME, "name")
    form = read_desk(parse_qsl(question), maker, workshop.own_sizes(database))
    stored = pattern_named(database, form.typed.pattern)
    _, maker = in_units(frame, maker, form.typed.units)
    own = workshop.workshop(database, stored.id)
    done = work_size(stored.pattern, form.size, own, maker.units)
    if done.answer is None:
        raise EngineError(next(iter(done.form.errors.values())), "question")
    choices = Choices(
        question=form.size.question,
        plan=form.size.plan,
        spare=form.size.spare,
        units=maker.units,
        picture=picture_in_hand(stored.pattern, form.size.hand, form.size.keep_picture),
    )
    text = frozen(choices, done.pattern, own.with_longest(form.size.longest_mm))
    kept = given_answers.keep(
        database,
        stored.id,
        name,
        Counted(stored.pattern, stored.revision, text),
        question,
        reply(done.answer, words_of(maker, form.sections)),
        done.answer.materials.beads,
    )
    return go("kept_answer", "answer-kept", answer=kept)


@router.get(PATHS["kept_answer"])
def show(answer: int, database: TheDatabase, frame: TheFrame, maker: Maker) -> HTMLResponse:
    given = given_answers.load(database, answer)
    kept = thawed(given.counted.text, given.counted.pattern)
    frame, _ = in_units(frame, maker, kept.choices.units)
    stored, now, refused = _today(database, given, maker)
    return page("answers/kept_one.html", kept_answer_page(frame, given, _answered(kept), now, stored, refused))


@router.post(PATHS["forget_answer"])
def forget(answer: int, database: TheDatabase) -> RedirectResponse:
    given_answers.remove(database, answer)
    return go("kept_answers", "answer-removed")


def _answered(kept: PrintedFrom) -> Answer:
    choices = kept.choices
    return answer(kept.pattern, choices.question, kept.workshop, choices.plan, choices.spare, choices.units)


def _today(
    database: Database, given: GivenAnswer, maker: MakerSettings
) -> tuple[StoredPattern | None, Answer | None, str]:
    """The pattern as it stands, today's answer to the same question as it was typed, and why there is none."""
    stored = None
    with suppress(NotFound):
        stored = patterns.load(database, given.of)
    if stored is None or stored.binned:
        return None, None, ""
    form = read_desk(parse_qsl(given.question), maker, workshop.own_sizes(database)).size
    done = work_size(stored.pattern, form, workshop.workshop(database, stored.id), maker.units)
    return stored, done.answer, next(iter(done.form.errors.values()), "")
