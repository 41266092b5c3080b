"""The zip of a shop kit: its files, their sums, its bytes; and what a booklet was printed with, read back."""

import zipfile
from dataclasses import replace
from datetime import UTC, datetime
from hashlib import sha256
from io import BytesIO

import pytest

from engine.booklet.choices import KEPT, MIRRORED, Choices, Photograph
from engine.booklet.own import OwnWords
from engine.cabinet.colourways import Colourway
from engine.counting.finished import named
from engine.counting.kinds import KINDS
from engine.counting.questions import Question
from engine.counting.rope import Swatch
from engine.counting.workshop import Workshop
from engine.pattern.pattern import keep_the_picture, left_handed
from tests.examples import harbour
from webapp.exchange.frozen import Thawed, frozen, thawed
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
    kept=Thawed(harbour(), Choices(published=2), WORKSHOP),
    booklets=(KitBooklet("Standard, A4", 12, b"%PDF-one"), KitBooklet("Standard, A4, in Dusk", 12, b"%PDF-two")),
    pictures=(KitPicture("ring", "jpg", "A ring.", b"jpeg"),),
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


@pytest.mark.parametrize("plan", ["balanced", 2.5, (60, 90)])
def test_what_a_booklet_was_printed_with_is_read_back_as_it_was(plan):
    dusk = Colourway("Dusk", harbour().palette)
    choices = Choices(
        Question(450.0, "clasp"),
        plan,
        own=OwnWords((("tips", "Wax it."),)),
        photographs=(Photograph("photograph-1", "Closed", "A ring", 900, 600),),
        published=3,
        colourway="Dusk",
        others=(dusk,),
    )
    kept = thawed(frozen(choices, harbour(), WORKSHOP), harbour())
    assert kept == Thawed(harbour(), choices, WORKSHOP)


def test_the_other_hand_is_read_back_mirrored_or_with_its_picture_kept():
    for picture, worked in ((MIRRORED, left_handed(harbour())), (KEPT, keep_the_picture(harbour()))):
        text = frozen(Choices(picture=picture), worked, WORKSHOP)
        assert thawed(text, harbour()).pattern == worked


@pytest.mark.parametrize("text", ["{}", "", "[1]", '{"hand": "right", "choices": 3, "workshop": {}}'])
def test_what_is_not_said_of_a_booklet_is_not_made_up(text):
    assert thawed(text, harbour()) is None
