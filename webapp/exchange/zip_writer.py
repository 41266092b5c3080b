"""The whole library as a zip that any tool can open: plain pattern files, pictures, booklets and a readable index."""

from __future__ import annotations

import io
import json
import zipfile
from collections.abc import Callable, Generator, Iterable, Iterator
from dataclasses import asdict
from datetime import datetime
from html import escape

from webapp.exchange import pattern_file
from webapp.exchange.bead_table import write_beads
from webapp.exchange.portable import PortableBead, PortableEdition, PortablePattern, PortableWorkshop
from webapp.exchange.table import write_table

Put = Callable[..., None]
Taken = Callable[[], bytes]

FORMAT, VERSION = "ropewright-library", 1
MANIFEST = "library.json"
COLUMNS = ("title", "series", "tags", "around", "beads", "difficulty", "made", "changed", "editions", "file")
PAGE = """<!doctype html>
<html lang="en"><meta charset="utf-8"><title>Library</title>
<h1>Library</h1>
<p>{patterns} patterns. Each is a plain text file that Ropewright imports again; booklets and photographs lie
beside it. What was published and what stands is here; earlier states and who was given copies are not: a backup has
those.</p>
<table border="1" cellpadding="4"><tr>{heads}</tr>
{rows}
</table></html>
"""


def write(patterns: Iterable[PortablePattern], workshop: PortableWorkshop, now: datetime) -> Iterator[bytes]:
    """The bytes of the zip piece by piece, so that it can be sent while it is made. `now` dates its files."""
    sink = _Sink()
    stamp = now.timetuple()[:6]
    listed: list[dict[str, object]] = []
    rows: list[dict[str, object]] = []
    with zipfile.ZipFile(sink, "w", zipfile.ZIP_DEFLATED) as made:

        def put(name: str, data: bytes | str, packed: bool = True) -> None:
            info = zipfile.ZipInfo(name, stamp)
            made.writestr(info, data, zipfile.ZIP_DEFLATED if packed else zipfile.ZIP_STORED)

        for number, pattern in enumerate(patterns, 1):
            entry, row = yield from _put_pattern(put, sink.taken, number, pattern)
            listed.append(entry)
            rows.append(row)
            yield sink.taken()
        beads = yield from _put_beads(put, sink.taken, workshop.beads)
        own = {**_workshop(workshop), "beads": beads}
        put(
            MANIFEST,
            json.dumps(
                {"format": FORMAT, "version": VERSION, "patterns": listed, **own},
                ensure_ascii=False,
                indent=1,
            ),
        )
        if workshop.beads:
            put("beads.csv", write_beads(portable.bead for portable in workshop.beads))
        put("index.csv", write_table(COLUMNS, ([row[name] for name in COLUMNS] for row in rows)))
        put("index.html", _page(rows))
    yield sink.taken()


class _Sink(io.RawIOBase):
    """Takes what a zip writes, and hands it on; a zip that cannot seek writes sizes behind each file."""

    def __init__(self) -> None:
        self.parts: list[bytes] = []

    def writable(self) -> bool:
        return True

    def write(self, data: bytes) -> int:  # type: ignore[override]
        self.parts.append(bytes(data))
        return len(data)

    def taken(self) -> bytes:
        parts, self.parts = self.parts, []
        return b"".join(parts)


def _put_pattern(
    put: Put, taken: Taken, number: int, pattern: PortablePattern
) -> Generator[bytes, None, tuple[dict[str, object], dict[str, object]]]:
    """Writes a pattern and all that belongs to it, a booklet at a time, as together they may be larger than memory.

    Gives what the manifest and the index say of it.
    """
    document = json.loads(pattern.document)
    name = pattern_file.file_name(document["title"])
    folder = f"patterns/{number:05}-{name.removesuffix(pattern_file.SUFFIX)}"
    put(f"{folder}/{name}", pattern.document)
    photographs = []
    for place, photograph in enumerate(pattern.photographs, 1):
        put(f"{folder}/photographs/{place}.jpg", photograph.jpeg, packed=False)
        photographs.append({"file": f"{folder}/photographs/{place}.jpg", **photograph._asdict()})
        del photographs[-1]["jpeg"]
    editions = []
    for edition in pattern.editions:
        editions.append((yield from _put_edition(put, taken, folder, edition)))
    entry: dict[str, object] = {
        "file": f"{folder}/{name}",
        "made": _iso(pattern.made),
        "changed": _iso(pattern.changed),
        "series": pattern.series,
        "difficulty": pattern.difficulty,
        "own_words": dict(pattern.words),
        "photographs": photographs,
        "editions": editions,
        "colourways": [{"name": name, "palette": json.loads(palette)} for name, palette in pattern.colourways],
    }
    row = {
        "title": document["title"],
        "series": pattern.series,
        "tags": ", ".join(document.get("tags", ())),
        "around": document["around"],
        "beads": pattern.beads,
        "difficulty": pattern.difficulty or "",
        "made": _iso(pattern.made)[:10],
        "changed": _iso(pattern.changed)[:10],
        "editions": len(pattern.editions),
        "file": f"{folder}/{name}",
    }
    return entry, row


def _put_beads(
    put: Put, taken: Taken, beads: Iterable[PortableBead]
) -> Generator[bytes, None, list[dict[str, object]]]:
    """Writes the photographs of beads, one at a time; what the manifest says of the beads."""
    listed: list[dict[str, object]] = []
    for number, (bead, archived, photograph) in enumerate(beads, 1):
        file = f"beads/{number:05}.jpg" if photograph else ""
        if photograph:
            put(file, photograph.read()[0], packed=False)
            yield taken()
        listed.append({**asdict(bead), "archived": archived, "file": file})
    return listed


def _put_edition(
    put: Put, taken: Taken, folder: str, edition: PortableEdition
) -> Generator[bytes, None, dict[str, object]]:
    of = f"{folder}/editions/{edition.number}"
    put(f"{of}/edition-{edition.number}{pattern_file.SUFFIX}", edition.document)
    booklets = []
    for place, booklet in enumerate(edition.booklets, 1):
        file = f"{of}/{place}-{pattern_file.file_name(booklet.name).removesuffix(pattern_file.SUFFIX)}.pdf"
        put(file, booklet.pdf.read(), packed=False)
        yield taken()
        booklets.append({"file": file, "name": booklet.name, "choices": booklet.choices, "pages": booklet.pages})
    return {
        "number": edition.number,
        "published": _iso(edition.published),
        "note": edition.note,
        "words": edition.words,
        "withdrawn": _iso(edition.withdrawn),
        "why": edition.why,
        "pattern": f"{of}/edition-{edition.number}{pattern_file.SUFFIX}",
        "booklets": booklets,
    }


def _workshop(workshop: PortableWorkshop) -> dict[str, object]:
    return {
        "settings": dict(workshop.settings),
        "kinds": [asdict(kind) for kind in workshop.kinds],
        "swatches": [asdict(swatch) for swatch in workshop.swatches],
        "sizes": [{"name": size.name, **_without_nones(asdict(size.question))} for size in workshop.sizes],
    }


def _without_nones(asked: dict[str, object]) -> dict[str, object]:
    return {name: value for name, value in asked.items() if value is not None}


def _iso(moment: datetime | None) -> str:
    return moment.isoformat() if moment else ""


def _page(rows: list[dict[str, object]]) -> str:
    def cell(name: str, value: object) -> str:
        text = escape(str(value))
        return f'<td><a href="{text}">{text}</a></td>' if name == "file" else f"<td>{text}</td>"

    heads = "".join(f"<th>{name}</th>" for name in COLUMNS)
    body = "\n".join(f"<tr>{''.join(cell(name, row[name]) for name in COLUMNS)}</tr>" for row in rows)
    return PAGE.format(patterns=len(rows), heads=heads, rows=body)
