"""Pieces in work: begun from the page of the list, and their place kept in the library."""

from __future__ import annotations

from contextlib import suppress
from typing import Annotated, Any
from urllib.parse import urlencode

from fastapi import APIRouter, Depends
from fastapi.responses import HTMLResponse, RedirectResponse, Response

from engine.booklet.choices import Choices, picture_in_hand
from engine.counting.answers import Answer, answer
from engine.errors import ChoiceError, EngineError
from engine.pattern.words import check_line
from webapp.exchange import pattern_file
from webapp.exchange.frozen import frozen, thawed
from webapp.pages.addresses import PATHS
from webapp.pages.forms.sent import Objections, Sent
from webapp.pages.forms.size import read_size, work_size
from webapp.pages.views.in_work import entries_of, piece_page
from webapp.pages.views.stringing import NOT_ASKED, stringing_page
from webapp.records import Counted, Piece, StoredPattern
from webapp.records.in_work import LONGEST_NAME, STATES
from webapp.routes.deps import Body, Form, Maker, Stored, TheDatabase, TheFrame, go, page
from webapp.routes.described import Sequence, answers
from webapp.storage import in_work, workshop
from webapp.storage.database import Database

MOST = 1_000_000  # entries; no list has so many
_COUNT = {"type": "integer", "minimum": 0, "maximum": MOST}
_FIELDS = {"thread": {**_COUNT, "minimum": 1}, "strung": _COUNT, "sequence": _COUNT}
_SCHEMA = {"type": "object", "required": [*_FIELDS], "properties": _FIELDS}
PLACE = {"requestBody": {"required": True, "content": {"application/json": {"schema": _SCHEMA}}}}

router = APIRouter()


def _piece(stored: Stored, piece: int, database: TheDatabase) -> Piece:
    return in_work.piece(database, stored.id, piece)


ThePiece = Annotated[Piece, Depends(_piece)]


@router.post(PATHS["pieces"], include_in_schema=False)
def begin(stored: Stored, sent: Form, database: TheDatabase, frame: TheFrame, maker: Maker) -> Response:
    """Keeps the pattern, the question and the maker's own numbers as they are now, so that the list stays as it is."""
    asked = [(name, value) for name, value in Sent(sent).pairs if name not in NOT_ASKED]
    form, own = read_size(asked, maker, workshop.own_sizes(database)), workshop.workshop(database)
    done, wrong = work_size(stored.pattern, form, own, frame.units), Objections()
    name = Sent(sent).one("name")
    wrong.read("name", lambda: _check_name(name), None)
    if done.answer is None or wrong.by_field:
        pieces = in_work.pieces(database, stored.id)
        value = stringing_page(
            frame, stored, form, own, asked=asked, pieces=pieces, name=name, wrong_name=wrong.by_field.get("name", "")
        )
        return page("stringing/page.html", value, 422)
    choices = Choices(
        question=form.question,
        plan=form.plan,
        units=frame.units,
        picture=picture_in_hand(stored.pattern, form.hand, form.keep_picture),
    )
    text = frozen(choices, done.pattern, own.with_longest(form.longest_mm))
    counted = Counted(stored.pattern, stored.revision, text)
    number = in_work.begin(database, stored.id, name, counted, urlencode(asked))
    return go("piece", "piece-begun", id=stored.id, piece=number)


@router.get(PATHS["piece"], include_in_schema=False)
def show(stored: Stored, piece: ThePiece, database: TheDatabase, frame: TheFrame) -> HTMLResponse:
    begun, today = _answers(stored, piece, database)
    return page("stringing/piece.html", piece_page(frame, stored, piece, begun, today))


@router.post(PATHS["move_piece"], include_in_schema=False)
def move(stored: Stored, piece: ThePiece, sent: Form, database: TheDatabase) -> RedirectResponse:
    """Where there is no script: one entry on or back, or the beginning of a thread."""
    fields = Sent(sent)
    threads = _answers(stored, piece, database)[0].stringing.threads
    many = [len(entries_of(thread)) for thread in threads]
    thread = min(max(_number(fields, "thread", piece.thread), 1), len(many))
    strung = min(_number(fields, "strung", piece.strung), many[thread - 1])
    match fields.one("move"):
        case "thread":
            thread, strung = min(max(_number(fields, "to", thread), 1), len(many)), 0
        case "forward" if strung < many[thread - 1]:
            strung += 1
        case "forward" if thread < len(many):
            thread, strung = thread + 1, 0
        case "back" if strung:
            strung -= 1
        case "back" if thread > 1:
            thread, strung = thread - 1, many[thread - 2]
    in_work.move(database, piece.id, thread, strung, _number(fields, "sequence", piece.sequence))
    return go("piece", id=stored.id, piece=piece.id)


@router.put(PATHS["api_place"], tags=["patterns"], openapi_extra=PLACE, responses=answers(Sequence))
def put_place(piece: ThePiece, body: Body, database: TheDatabase) -> dict[str, Any]:
    """Keeps the place of a piece in work: `thread`, from one, and the entries `strung` of its list.

    `sequence` is the number last seen, and 409 when another page has moved on since.
    """
    document = pattern_file.load(body)
    thread, strung, sequence = (pattern_file.whole_number(document, name) for name in ("thread", "strung", "sequence"))
    if not (0 < thread <= MOST and 0 <= strung <= MOST):
        raise pattern_file.FileError("“thread” counts from 1, and “strung” from 0.", "thread")
    return {"sequence": in_work.move(database, piece.id, thread, strung, sequence)}


@router.post(PATHS["rename_piece"], include_in_schema=False)
def rename(stored: Stored, piece: ThePiece, sent: Form, database: TheDatabase, frame: TheFrame) -> Response:
    name = Sent(sent).one("name")
    try:
        _check_name(name)
    except EngineError as error:
        begun, today = _answers(stored, piece, database)
        return page("stringing/piece.html", piece_page(frame, stored, piece, begun, today, error.message), 422)
    in_work.rename(database, piece.id, name)
    return go("piece", "piece-named", id=stored.id, piece=piece.id)


@router.post(PATHS["put_piece"], include_in_schema=False)
def put(stored: Stored, piece: ThePiece, sent: Form, database: TheDatabase) -> RedirectResponse:
    state = Sent(sent).one("state")
    if state not in STATES:
        raise ChoiceError("State of the piece", state, STATES, "state")
    in_work.put(database, piece.id, state)
    return go("piece", f"piece-{state}", id=stored.id, piece=piece.id)


@router.post(PATHS["remove_piece"], include_in_schema=False)
def remove(stored: Stored, piece: ThePiece, database: TheDatabase) -> RedirectResponse:
    in_work.remove(database, piece.id)
    return go("stringing", "piece-removed", id=stored.id)


def _check_name(name: str) -> None:
    check_line(name, "name of the piece", LONGEST_NAME, "name")


def _number(fields: Sent, name: str, otherwise: int) -> int:
    text = fields.one(name)
    return int(text) if text.isascii() and text.isdigit() and len(text) < 8 else otherwise


def _answers(stored: StoredPattern, piece: Piece, database: Database) -> tuple[Answer, Answer | None]:
    """The piece's answer as it was begun, and that of the same question today; None where there is none any more."""
    kept = thawed(piece.counted.text, piece.counted.pattern)
    begun = answer(kept.pattern, kept.choices.question, kept.workshop, kept.choices.plan)
    today, own = None, workshop.workshop(database)
    longest_mm = kept.workshop.longest_mm
    with suppress(EngineError):
        today = answer(kept.pattern, kept.choices.question, own.with_longest(longest_mm), kept.choices.plan)
    return begun, today
