"""Cost of a pattern, what making it takes off the stock, shopping lists, and what can be made of the stock."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from urllib.parse import urlencode

from fastapi import APIRouter
from fastapi.responses import HTMLResponse, PlainTextResponse, RedirectResponse, Response

from engine.cabinet.stock import Makeable, Take, ToBuyLine, makeable, shopping_list, take
from engine.counting.answers import answer
from engine.counting.closures import CLOSURES
from engine.counting.questions import Question
from engine.errors import EngineError
from webapp.exchange.table import write_table
from webapp.pages.addresses import PATHS, address
from webapp.pages.forms.answers import number_in, numbered
from webapp.pages.forms.cost import TypedWanted, read_bought, read_cost, read_pieces, read_wanted
from webapp.pages.forms.sent import Objections, Sent
from webapp.pages.forms.size import SizeForm, read_size, work_size
from webapp.pages.views.cost import cost_page, size_in_words
from webapp.pages.views.shopping import (
    COLUMNS,
    WantedLine,
    makeable_line,
    makeable_page,
    shopping_page,
    shopping_rows,
    shopping_text,
)
from webapp.records import MakerSettings, StoredPattern
from webapp.routes.deps import Asked, Form, Maker, Stored, TheDatabase, TheFrame, go, page, pattern_named
from webapp.storage import beads, making, patterns, workshop
from webapp.storage.database import Database

router = APIRouter(include_in_schema=False)
PER_PAGE, MOST_PAGES = 60, 1_000_000
NOT_LINKED = "Not every bead of it is linked to the cabinet."


@router.get(PATHS["cost"])
def cost(stored: Stored, asked: Asked, database: TheDatabase, frame: TheFrame, maker: Maker) -> HTMLResponse:
    value = cost_page(
        frame=frame,
        stored=stored,
        form=read_size(asked, maker, workshop.own_sizes(database)),
        cost_form=read_cost(asked, maker),
        workshop=workshop.workshop(database, stored.id),
        cabinet=beads.by_key(database),
        made=making.last_made(database, stored.id),
        maker=maker,
    )
    return page("cost/page.html", value)


@router.post(PATHS["note_made"])
def note_made(stored: Stored, sent: Form, database: TheDatabase, maker: Maker) -> RedirectResponse:
    """Notes that pieces of that size were made; raises an EngineError where the size cannot be worked."""
    size = read_size(sent, maker, workshop.own_sizes(database))
    pieces = read_pieces(Sent(sent).one("pieces", "1"))
    done = work_size(stored.pattern, size, workshop.workshop(database, stored.id), maker.units)
    if done.answer is None:
        raise EngineError(next(iter(done.form.errors.values())), "length")
    taken = take(stored.pattern.palette, done.answer.materials, beads.by_key(database), pieces)
    takes = {of.bead.key: of.mg for of in taken.takings}
    making.note_made(database, stored.id, pieces, size_in_words(done.answer, maker.units), takes)
    return _back(stored, sent, "made-pieces")


@router.post(PATHS["undo_made"])
def undo_made(stored: Stored, made: int, sent: Form, database: TheDatabase) -> RedirectResponse:
    making.undo(database, made)
    return _back(stored, sent, "made-undone")


@router.get(PATHS["shopping"])
def shopping(asked: Asked, database: TheDatabase, frame: TheFrame, maker: Maker) -> HTMLResponse:
    wanted, needed = _shopping(asked, database, maker)
    value = shopping_page(frame, wanted, needed, maker.spare, maker, Sent(asked).one("bought"))
    return page("beads/shopping.html", value)


@router.get(PATHS["shopping_table"])
def shopping_as_table(asked: Asked, database: TheDatabase, maker: Maker) -> Response:
    rows = shopping_rows(_shopping(asked, database, maker)[1], maker)
    return Response(
        write_table(COLUMNS, rows),
        media_type="text/csv; charset=utf-8",
        headers={"content-disposition": 'attachment; filename="shopping-list.csv"'},
    )


@router.get(PATHS["shopping_text"])
def shopping_as_text(asked: Asked, database: TheDatabase, maker: Maker) -> PlainTextResponse:
    return PlainTextResponse(shopping_text(_shopping(asked, database, maker)[1], maker))


@router.post(PATHS["bought"])
def bought(sent: Form, database: TheDatabase) -> RedirectResponse:
    """Puts packs into the stock, or takes them out again; then back to where that was said."""
    fields, packs = Sent(sent), read_bought(sent)
    undone = fields.has("undo")
    beads.restock(database, {key: -number if undone else number for key, number in packs.items()})
    said = "bought-undone" if undone else "bought"
    if not fields.has("list"):
        return go("bead", said, bead=fields.one("bead")) if packs else go("beads")
    undo = "" if undone else "-".join(f"{key}.{number}" for key, number in packs.items())
    return RedirectResponse(f"{address('shopping', said=said, bought=undo)}&{fields.one('list')}", 303)


@router.get(PATHS["makeable"])
def what_can_be_made(asked: Asked, database: TheDatabase, frame: TheFrame, maker: Maker) -> HTMLResponse:
    """A page of the patterns that point at the cabinet, those of which most pieces can be made first."""
    form = read_size(asked, maker, workshop.own_sizes(database))
    listed = max(1, next(iter(Sent(asked).places("page", MOST_PAGES)), 1))
    numbers, total = beads.linked_patterns(database, listed, PER_PAGE)
    lines = []
    for stored in (patterns.load(database, of) for of in numbers):
        made, why = _makeable(stored, form.question, database)
        lines.append((made, makeable_line(stored, made, why, maker.units)))
    lines.sort(key=lambda line: -(line[0].pieces if line[0] else -1))
    value = makeable_page(frame, form, (line for _, line in lines), total, listed, PER_PAGE)
    return page("beads/makeable.html", value, 422 if form.errors else 200)


def _makeable(stored: StoredPattern, question: Question, database: Database) -> tuple[Makeable | None, str]:
    try:
        asked = answer(stored.pattern, question, workshop.workshop(database))
    except EngineError as error:
        return None, error.message
    made = makeable(asked.size, asked.materials, beads.by_key(database))
    return made, "" if made else NOT_LINKED


def _shopping(
    asked: Iterable[tuple[str, object]], database: Database, maker: MakerSettings
) -> tuple[tuple[WantedLine, ...], tuple[ToBuyLine, ...]]:
    """The patterns that are wanted, and what is needed for those that can be counted."""
    lines: list[WantedLine] = []
    wanted: list[tuple[str, Take]] = []
    for typed in read_wanted(asked):
        line, needed = _line(typed, database, maker)
        lines.append(line)
        wanted += [needed] if needed else []
    return tuple(lines), shopping_list(wanted)


def _line(typed: TypedWanted, database: Database, maker: MakerSettings) -> tuple[WantedLine, tuple[str, Take] | None]:
    """A line of the list with all that is wrong with it, and title and beads of its pieces where nothing is."""
    wrong = Objections()
    stored = wrong.read("pattern", lambda: pattern_named(database, typed.pattern), None)
    pieces = wrong.read("pieces", lambda: read_pieces(typed.pieces), 1)
    closure = typed.closure if typed.closure in CLOSURES else TypedWanted().closure
    size = read_size((("length", typed.length), ("closure", closure)), maker, workshop.own_sizes(database))
    if stored is None:
        return WantedLine(typed, wrong.by_field | _of_length(size)), None
    if number_in(typed.pattern) is not None:
        typed = replace(typed, pattern=numbered(stored.pattern.title, stored.id))
    done = work_size(stored.pattern, size, workshop.workshop(database), maker.units)
    errors = wrong.by_field | _of_length(done.form)
    if errors or done.answer is None:
        return WantedLine(typed, errors), None
    bill = done.answer.materials
    needed = take(stored.pattern.palette, bill, beads.by_key(database), pieces, bill.spare)
    return WantedLine(typed, {}, size_in_words(done.answer, maker.units)), (stored.pattern.title, needed)


def _of_length(form: SizeForm) -> dict[str, str]:
    """What is wrong with a size, beside the one field that the list has for it."""
    return {"length": next(iter(form.errors.values()))} if form.errors else {}


def _back(stored: StoredPattern, sent: Form, said: str) -> RedirectResponse:
    """On to the page of the cost, with the question that was asked there."""
    kept = [(name, value) for name, value in Sent(sent).pairs if value and name != "said"]
    return RedirectResponse(f"{address('cost', id=stored.id, said=said)}&{urlencode(kept)}", 303)
