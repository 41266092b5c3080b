"""The zip of a shop kit: its files, their sums, its bytes; and what a booklet was printed with, read back."""

import zipfile
from dataclasses import replace
from datetime import UTC, datetime
from hashlib import sha256
from io import BytesIO

from engine.booklet.choices import Choices
from engine.counting.finished import named
from engine.counting.kinds import KINDS
from engine.counting.rope import Swatch
from engine.counting.workshop import Workshop
from tests.examples import harbour
from webapp.exchange.frozen import PrintedFrom
from webapp.exchange.shop_kit import (
    SUMS,
    Kit,
    KitBooklet,
    KitFile,
    KitPicture,
    booklet_files,
    listing_files,
    picture_files,
    zipped,
)

MAKERS = (booklet_files, picture_files, listing_files)
WORKSHOP = Workshop(
    dict(KINDS), (Swatch("11/0 round", 6, "slip", 240, 62.0),), dict(Workshop().allowances), sizes=named()
)
KIT = Kit(
    title="Small Harbour",
    edition=2,
    published=datetime(2026, 5, 4, 9, 7, 12, tzinfo=UTC),
    kept=PrintedFrom(harbour(), Choices(published=2), WORKSHOP),
    booklets=(KitBooklet("Standard, A4", 12, b"%PDF-one"), KitBooklet("Standard, A4, in Dusk", 12, b"%PDF-two")),
    pictures=(KitPicture("ring", "jpg", "A ring.", b"jpeg"),),
    hands=("right",),
    longest_title=80,
    longest_description=500,
)


def read(data: bytes) -> dict[str, bytes]:
    with zipfile.ZipFile(BytesIO(data)) as opened:
        assert opened.testzip() is None
        return {name: opened.read(name) for name in opened.namelist()}


def test_a_kit_holds_every_file_in_order_with_the_sums_of_all():
    files = read(zipped(KIT, MAKERS))
    of = "small-harbour-edition-2"
    assert list(files) == [
        f"{of}/booklets/standard-a4.pdf",
        f"{of}/booklets/standard-a4-in-dusk.pdf",
        f"{of}/pictures/ring.jpg",
        f"{of}/listing.txt",
        f"{of}/listing.html",
        f"{of}/{SUMS}",
    ]
    assert files[f"{of}/booklets/standard-a4.pdf"] == b"%PDF-one"
    lines = files[f"{of}/{SUMS}"].decode().splitlines()
    assert lines == [f"{sha256(data).hexdigest()}  {name[len(of) + 1 :]}" for name, data in files.items()][:-1]
    assert b"pictures/ring.jpg: A ring." in files[f"{of}/listing.txt"]


def test_the_same_kit_gives_the_same_bytes_and_its_files_are_dated_as_the_edition():
    data = zipped(KIT, MAKERS)
    assert data == zipped(replace(KIT), MAKERS)
    with zipfile.ZipFile(BytesIO(data)) as opened:
        assert {info.date_time for info in opened.infolist()} == {(2026, 5, 4, 9, 7, 12)}


def test_one_more_sort_of_file_is_one_more_maker():
    made = read(zipped(KIT, (*MAKERS, lambda kit: [KitFile("card.html", kit.title.encode())])))
    assert made["small-harbour-edition-2/card.html"] == b"Small Harbour"
    assert b"  card.html\n" in made[f"small-harbour-edition-2/{SUMS}"]


def test_hostile_names_become_harmless_and_names_that_become_the_same_are_numbered():
    names = ("Standard, A4, in ../../etc", "Standard, A4, in ..\\ETC", "Ω\0/")
    kit = replace(KIT, title="../../<b>\\", booklets=tuple(KitBooklet(name, 1, b"%PDF") for name in names))
    assert list(read(zipped(kit, (booklet_files,)))) == [
        "b-edition-2/booklets/standard-a4-in-etc.pdf",
        "b-edition-2/booklets/standard-a4-in-etc-2.pdf",
        "b-edition-2/booklets/pattern.pdf",
        f"b-edition-2/{SUMS}",
    ]
