"""Everything that a shop wants of an edition, as one zip: booklets, pictures, listing text, and the sums of all files.

The same kit gives the same bytes: files stand in a fixed order and carry the date of the edition.
"""

from __future__ import annotations

import io
import zipfile
from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass
from datetime import datetime
from hashlib import sha256
from typing import NamedTuple

from engine.booklet.listing import GivenBooklet, Seen, html_text, listing, plain_text
from webapp.exchange.frozen import PrintedFrom
from webapp.exchange.pattern_file import SUFFIX, file_name

SUMS = "SHA256SUMS.txt"
PACKED = (".txt", ".html")  # everything else is packed already


class KitFile(NamedTuple):
    """A file of a kit: its path inside, of plain letters, and its bytes."""

    path: str
    data: bytes


class KitBooklet(NamedTuple):
    """A booklet of an edition: which one, its pages, its bytes."""

    name: str
    pages: int
    pdf: bytes


class KitPicture(NamedTuple):
    """A picture: the key of its scene, the suffix of its file, its alternative text, its bytes."""

    key: str
    suffix: str
    seen: str
    data: bytes


@dataclass(frozen=True)
class Kit:
    """What a kit is made of: the edition as it was kept, its booklets and pictures, and the lengths that were set.

    `hands` are those that its booklets are for, the edition's own first.
    """

    title: str
    edition: int
    published: datetime
    kept: PrintedFrom
    booklets: tuple[KitBooklet, ...]
    pictures: tuple[KitPicture, ...]
    hands: tuple[str, ...]
    longest_title: int
    longest_description: int


Maker = Callable[[Kit], Iterable[KitFile]]


def booklet_files(kit: Kit) -> Iterator[KitFile]:
    """The booklets, byte for byte."""
    for booklet in kit.booklets:
        yield KitFile(f"booklets/{plain_name(booklet.name)}.pdf", booklet.pdf)


def picture_files(kit: Kit) -> Iterator[KitFile]:
    """The pictures."""
    for picture in kit.pictures:
        yield KitFile(_picture_path(picture), picture.data)


def listing_files(kit: Kit) -> Iterator[KitFile]:
    """The listing as plain text and as HTML."""
    made = listing(
        kit.kept.pattern,
        kit.kept.choices,
        kit.kept.workshop,
        booklets=(GivenBooklet(booklet.name, booklet.pages) for booklet in kit.booklets),
        hands=kit.hands,
        pictures=(Seen(_picture_path(picture), picture.seen) for picture in kit.pictures),
        longest_title=kit.longest_title,
        longest_description=kit.longest_description,
    )
    yield KitFile("listing.txt", plain_text(made).encode())
    yield KitFile("listing.html", html_text(made).encode())


def zipped(kit: Kit, makers: Iterable[Maker]) -> bytes:
    """The zip of what those makers make, and of a list of the sums. Raises EngineError."""
    folder = f"{plain_name(kit.title)}-edition-{kit.edition}"
    files = _apart(file for maker in makers for file in maker(kit))
    sums = "".join(f"{sha256(file.data).hexdigest()}  {file.path}\n" for file in files)
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w") as made:
        for file in (*files, KitFile(SUMS, sums.encode())):
            info = zipfile.ZipInfo(f"{folder}/{file.path}", kit.published.timetuple()[:6])
            info.create_system, info.external_attr = 3, 0o644 << 16  # the same on every computer
            packed = file.path.endswith(PACKED)
            made.writestr(info, file.data, zipfile.ZIP_DEFLATED if packed else zipfile.ZIP_STORED, 6)
    return out.getvalue()


def plain_name(words: str) -> str:
    """The words as a name for a file or folder: letters a to z, digits and hyphens."""
    return file_name(words).removesuffix(SUFFIX)


def _picture_path(picture: KitPicture) -> str:
    return f"pictures/{picture.key}.{picture.suffix}"


def _apart(files: Iterable[KitFile]) -> list[KitFile]:
    """The files, those of one name numbered: names of colourways may become the same in plain letters."""
    taken: dict[str, int] = {}
    apart = []
    for path, data in files:
        taken[path] = taken.get(path, 0) + 1
        stem, _, suffix = path.rpartition(".")
        apart.append(KitFile(f"{stem}-{taken[path]}.{suffix}" if taken[path] > 1 else path, data))
    return apart
