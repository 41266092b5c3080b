"""What a route may ask for: the services, the body, a form, the pattern as it stands, and a page to answer with."""

from __future__ import annotations

import re
from collections.abc import AsyncIterator, Collection, Iterable, Iterator
from contextlib import ExitStack
from dataclasses import dataclass
from typing import Annotated, BinaryIO
from urllib.parse import parse_qsl, urlencode, urlsplit

from fastapi import Depends, Query, Request
from fastapi.responses import HTMLResponse, RedirectResponse, StreamingResponse
from starlette.datastructures import UploadFile

from engine.counting.answers import Answer, answer
from engine.counting.options import SIZE_OPTIONS, in_hand, read_longest, read_plan, read_question, read_spare
from engine.counting.questions import NamedSize, Question
from engine.counting.workshop import Workshop
from engine.errors import EngineError, shortened
from engine.pattern.pattern import Pattern
from webapp.exchange import zip_writer
from webapp.exchange.pattern_file import LARGEST_BYTES
from webapp.exchange.works import Turns, Works
from webapp.pages.addresses import address
from webapp.pages.forms.answers import number_in
from webapp.pages.rendering import render
from webapp.pages.views.frame import Frame, frame
from webapp.pictures.cache import PictureCache
from webapp.printing.jobs import Jobs
from webapp.records import MakerSettings, StoredPattern
from webapp.settings import Settings
from webapp.storage import finding, library_export, patterns, workshop
from webapp.storage.database import Database
from webapp.storage.errors import LibraryError, NotFound
from webapp.storage.snapshot import snapshot

MOST_FIELDS = 2000
MOST_NAMESAKES = 50
_OWN = re.compile(r"/(?![/\\])[^\x00-\x20\\]*")  # browsers take // and /\ for another computer's address


@dataclass(frozen=True)
class Services:
    """What the whole app shares."""

    settings: Settings
    database: Database
    pictures: PictureCache
    jobs: Jobs
    works: Works
    heavy: Turns


def _services(request: Request) -> Services:
    services: Services = request.app.state.services
    return services


TheServices = Annotated[Services, Depends(_services)]


def _database(services: TheServices) -> Database:
    return services.database


TheDatabase = Annotated[Database, Depends(_database)]


def _maker(database: TheDatabase) -> MakerSettings:
    return workshop.settings(database)


Maker = Annotated[MakerSettings, Depends(_maker)]


def _stored(id: int, database: TheDatabase) -> StoredPattern:
    return patterns.load(database, id)


Stored = Annotated[StoredPattern, Depends(_stored)]


async def _body(request: Request) -> bytes:
    return await request.body()


Body = Annotated[bytes, Depends(_body)]
Pairs = list[tuple[str, str | UploadFile]]


async def _form(request: Request) -> AsyncIterator[Pairs]:
    """Every field of a form in the order of the page, uploads among them; they are closed with the request."""
    async with request.form(max_fields=MOST_FIELDS, max_files=MOST_FIELDS, max_part_size=LARGEST_BYTES) as form:
        yield list(form.multi_items())


Form = Annotated[Pairs, Depends(_form)]


def _asked(request: Request) -> list[tuple[str, str]]:
    return list(request.query_params.multi_items())


Asked = Annotated[list[tuple[str, str]], Depends(_asked)]


@dataclass(frozen=True)
class Options:
    """The options of a list, a bill or an answer, as they stand in an address."""

    length: Annotated[
        str | None,
        Query(description="Finished length such as 45 cm, or a named size: Opera, 2-8."),
    ] = None
    closure: Annotated[
        str | None,
        Query(
            description="open (the default), clasp, glued, ring, magnet, cone, button, tie, or usual: what is taken "
            "for granted."
        ),
    ] = None
    kind: str | None = None
    stitch: str | None = None
    wrist: str | None = None
    ease: str | None = None
    round: str | None = None
    pass_length: Annotated[str | None, Query(description="Your own pass: 61 mm, or 20 passes measure 36 mm.")] = None
    hand_girth: Annotated[str | None, Query(description="Of a bangle: girth of the hand, thumb tucked in.")] = None
    inner: Annotated[str | None, Query(description="Of a bangle: diameter inside.")] = None
    neck: Annotated[str | None, Query(description="Girth of the neck, for a piece that lies close.")] = None
    closure_length: Annotated[str | None, Query(description="What this clasp, or these ends, add.")] = None
    middle: Annotated[
        str | None,
        Query(description="Of whole passes: keep (the default) a motif in the middle, or free where it may be off it."),
    ] = None
    threads: Annotated[
        str | None, Query(description="balanced, whole, chart, metres such as 4, or joins 480, 960.")
    ] = None
    longest: Annotated[str | None, Query(description="The longest string of beads, in metres such as 3.")] = None
    spare: str | None = None
    hand: str | None = None
    keep_picture: bool = False

    def question(self, sizes: Iterable[NamedSize] = ()) -> Question:
        """The question; a length may name one of the maker's own `sizes` too."""
        return read_question(self.of_size, sizes=sizes)

    @property
    def of_size(self) -> dict[str, str | None]:
        return {name: getattr(self, name) for name in SIZE_OPTIONS}

    def worked(self, pattern: Pattern) -> Pattern:
        """The pattern in the hand that was asked for."""
        return in_hand(pattern, self.hand, self.keep_picture)

    def answer(self, pattern: Pattern, own: Workshop, maker: MakerSettings, sizes: Iterable[NamedSize] = ()) -> Answer:
        """The answer to the question. Raises an EngineError naming the option."""
        return answer(
            self.worked(pattern),
            self.question(sizes),
            own.with_longest(read_longest(self.longest)),
            read_plan(self.threads),
            read_spare(self.spare, maker.spare),
            maker.units,
        )


Asking = Annotated[Options, Depends()]


def _frame(request: Request, services: TheServices, said: Annotated[str, Query()] = "") -> Frame:
    own = request.url.path + (f"?{request.url.query}" if request.url.query else "")
    return frame_of(services, said, own if request.method == "GET" else "")


TheFrame = Annotated[Frame, Depends(_frame)]


def frame_of(services: Services, said: str = "", own: str = "") -> Frame:
    """What stands round a page of this library, which has that address."""
    troubles = services.database.health.troubles
    try:
        return frame(workshop.settings(services.database), workshop.last_backup(services.database), said, troubles, own)
    except LibraryError as error:  # the pages that lead out of it must be there
        return frame(said=said, troubles=troubles or (error.message,))


def page(template: str, value: object, status: int = 200) -> HTMLResponse:
    """The page of that value."""
    return HTMLResponse(render(template, value), status)


def go(name: str, said: str = "", **places: object) -> RedirectResponse:
    """After a form was taken: on to that page, which says what was done."""
    return RedirectResponse(address(name, said=said, **places), 303)


def go_back(own: str, said: str) -> RedirectResponse | None:
    """After a form that was sent with the address of its page: back there. None where that is no address of ours."""
    if not _OWN.fullmatch(own):
        return None
    parts = urlsplit(own)
    asked = [pair for pair in parse_qsl(parts.query, keep_blank_values=True) if pair[0] != "said"]
    return RedirectResponse(f"{parts.path}?{urlencode([*asked, ('said', said)])}", 303)


def pattern_named(database: Database, text: str) -> StoredPattern:
    """The pattern of a title or a number, as "Harbour lights", "3" or "Harbour lights, number 3".

    Raises EngineError where none, or more than one, is meant.
    """
    number = number_in(text)
    if number is None:
        found = finding.find(database, text, per_page=MOST_NAMESAKES).patterns if text else ()
        same = [one for one in found if one.title.casefold() == text.casefold()]
        if len(same) != 1:
            several = "Several patterns are called “{}”; add a number, such as Harbour lights, number 3."
            raise EngineError((several if same else "No pattern is called “{}”.").format(shortened(text)), "pattern")
        number = same[0].id
    try:
        return patterns.load(database, number)
    except NotFound:
        raise EngineError(f"There is no pattern number {number}.", "pattern") from None


def zip_answer(database: Database, numbers: Collection[int] | None = None) -> StreamingResponse:
    """The zip of those patterns, or of all, sent while it is made, so that the browser shows how far it is.

    It is made of a copy of the library: a download that stalls holds up nobody.
    """
    now = database.now()
    held = ExitStack()
    copy = held.enter_context(snapshot(database))

    def pieces() -> Iterator[bytes]:
        with held:
            patterns, own = library_export.export_patterns(copy, numbers), library_export.export_workshop(copy)
            yield from zip_writer.write(patterns, own, now)

    name = f"ropewright-library-{now:%Y-%m-%d}.zip"
    return StreamingResponse(
        pieces(), media_type="application/zip", headers={"content-disposition": f'attachment; filename="{name}"'}
    )


def uploads(pairs: Iterable[tuple[str, str | UploadFile]], name: str) -> list[tuple[str, BinaryIO]]:
    """Name of every file that was sent in that field, and the file, of which a large one lies on the disk."""
    return [
        (value.filename, value.file)
        for key, value in pairs
        if key == name and isinstance(value, UploadFile) and value.filename
    ]
