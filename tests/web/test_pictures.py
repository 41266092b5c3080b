"""Studio pictures as files, and the folder that keeps them."""

import os
from dataclasses import replace
from io import BytesIO

import numpy as np
import pytest
from PIL import Image

from engine.drawing import studio
from engine.errors import ChoiceError
from engine.pattern.palette import Entry, Palette
from engine.pattern.part import Part
from engine.pattern.pattern import Pattern
from webapp.pictures.cache import BEGUN, PictureCache, Wanted, picture_name
from webapp.pictures.images import MEDIA_TYPES, VIEWS, encoded, pattern_png

TEAL, CHALK = Entry("A", "Teal", "#2f7f76", "matte"), Entry("B", "Chalk", "#f2ede0")
SPARE = Entry("C", "Spare", "#990000")
PALETTE = Palette((TEAL, CHALK, SPARE))
PATTERN = Pattern("Waves", 8, PALETTE, bytes([0, 0, 1]))
SMALL = Wanted(width=60, height=40)
PLAIN = np.full((4, 6, 3), (10, 200, 90), np.uint8)


@pytest.mark.parametrize("form", MEDIA_TYPES)
def test_a_picture_can_be_read_again_in_every_form(form):
    image = Image.open(BytesIO(encoded(PLAIN, form)))
    assert (image.size, image.format) == ((6, 4), form.upper())
    assert np.abs(np.asarray(image.convert("RGB")).astype(int) - PLAIN).max() <= 6


@pytest.mark.parametrize("form", ["png", "webp"])
def test_a_clear_ground_stays_clear(form):
    clear = np.dstack([PLAIN, np.zeros((4, 6), np.uint8)])
    assert np.asarray(Image.open(BytesIO(encoded(clear, form))))[:, :, 3].max() == 0


def test_a_clear_ground_is_refused_where_the_form_has_none():
    with pytest.raises(ValueError, match="no clear ground"):
        encoded(np.zeros((2, 2, 4), np.uint8), "jpeg")


def test_an_unknown_form_is_refused():
    with pytest.raises(KeyError):
        encoded(PLAIN, "tiff")


@pytest.mark.parametrize(("view", "size"), [("rope", (90, 60)), ("ring", (90, 68)), ("necklace", (90, 68))])
def test_every_view_of_a_pattern_comes_as_png_and_is_kept_as_that(view, size, tmp_path):
    data = pattern_png(PATTERN, view, 90)
    assert Image.open(BytesIO(data)).size == size
    assert PictureCache(tmp_path).png(PATTERN, view, 90) == data


def test_the_views_are_those_of_the_studio():
    assert VIEWS == studio.VIEWS
    with pytest.raises(ChoiceError, match="expected one of rope, ring, necklace"):
        pattern_png(PATTERN, "hat")


@pytest.mark.parametrize("view", VIEWS)
def test_the_narrowest_picture_can_be_drawn(view):
    assert Image.open(BytesIO(pattern_png(PATTERN, view, 16))).width == 16


@pytest.mark.parametrize(
    "changed",
    [
        replace(PATTERN, chart=bytes([0, 1, 1])),
        replace(PATTERN, around=9),
        replace(PATTERN, hand="left"),
        replace(PATTERN, palette=Palette((replace(TEAL, colour="#2f7f77"), CHALK))),
        replace(PATTERN, palette=Palette((replace(TEAL, finish="pearl"), CHALK))),
    ],
    ids=["beads", "around", "hand", "colour", "finish"],
)
def test_a_change_that_shows_gets_a_new_picture(changed):
    assert picture_name(changed, SMALL) != picture_name(PATTERN, SMALL)


@pytest.mark.parametrize(
    "changed",
    [
        replace(PATTERN, title="Other", notes="Words", designer="Someone"),
        replace(
            PATTERN, palette=Palette((replace(TEAL, code="Z", name="Sea", symbol="ring", kind="8/0 round"), CHALK))
        ),
        replace(PATTERN, palette=Palette((TEAL, CHALK, replace(SPARE, colour="#000000")))),
        replace(PATTERN, palette=Palette((CHALK, TEAL)), chart=bytes([1, 1, 0])),
    ],
    ids=["words", "code and symbol", "a bead not used", "order of the palette"],
)
def test_a_change_that_does_not_show_keeps_its_picture(changed):
    assert picture_name(changed, SMALL) == picture_name(PATTERN, SMALL)


@pytest.mark.parametrize(
    "other",
    [
        replace(SMALL, view="ring"),
        replace(SMALL, beads=40),
        replace(SMALL, width=61),
        replace(SMALL, background=None),
        replace(SMALL, form="png"),
    ],
)
def test_another_view_length_size_ground_or_form_is_another_picture(other):
    assert picture_name(PATTERN, other) != picture_name(PATTERN, SMALL)


def test_the_short_form_and_the_same_in_parts_have_one_picture(tmp_path):
    short = replace(PATTERN, start=b"\1", end=bytes([1, 1]))
    long = replace(short, chart=b"", start=b"", end=b"", in_parts=short.parts)
    for wanted in (SMALL, replace(SMALL, view="ring"), replace(SMALL, beads=33)):
        assert picture_name(long, wanted) == picture_name(short, wanted)
        one, other = (PictureCache(tmp_path / name) for name in ("short", "long"))
        assert other.picture(long, wanted) == one.picture(short, wanted)


def test_a_rope_of_parts_is_shown_with_all_of_them():
    rope, motif = Part("Rope", bytes([0, 0, 1]), None), Part("Motif", bytes([1] * 20))
    pattern = replace(PATTERN, chart=b"", in_parts=(rope, motif, rope))
    assert len({picture_name(pattern, SMALL), picture_name(PATTERN, SMALL)}) == 2
    longer = replace(pattern, in_parts=(rope, replace(motif, times=2), rope))
    assert picture_name(longer, SMALL) != picture_name(pattern, SMALL)


def test_beads_of_another_size_make_another_picture():
    assert picture_name(PATTERN, replace(SMALL, sizes=(1.0, 2.0))) != picture_name(PATTERN, SMALL)


def test_start_and_end_show_only_where_a_number_of_beads_is_asked_for():
    ended = replace(PATTERN, end=bytes([1, 1]))
    assert picture_name(ended, SMALL) == picture_name(PATTERN, SMALL)
    assert picture_name(ended, replace(SMALL, beads=30)) != picture_name(PATTERN, replace(SMALL, beads=30))


def test_a_picture_is_drawn_once_and_then_read_from_its_file(tmp_path):
    first = PictureCache(tmp_path).picture(PATTERN, SMALL)
    (file,) = tmp_path.iterdir()
    assert (file.name, file.read_bytes()) == (picture_name(PATTERN, SMALL), first)
    file.write_bytes(b"as kept")
    assert PictureCache(tmp_path).picture(PATTERN, SMALL) == b"as kept"


def test_the_file_longest_unused_goes_first(tmp_path):
    cache = PictureCache(tmp_path, most_bytes=100)
    for age, name in enumerate(["oldest", "older", "old"]):
        cache.get(name, lambda: bytes(30))
        os.utime(tmp_path / name, (1000 + age, 1000 + age))
    cache.get("oldest", lambda: b"never made")
    cache.get("new", lambda: bytes(30))
    assert {path.name for path in tmp_path.iterdir()} == {"oldest", "new"}


def test_files_of_an_earlier_run_count_towards_the_bound(tmp_path):
    (tmp_path / "left").write_bytes(bytes(90))
    os.utime(tmp_path / "left", (1000, 1000))
    PictureCache(tmp_path, most_bytes=100).get("new", lambda: bytes(30))
    assert [path.name for path in tmp_path.iterdir()] == ["new"]


def test_a_picture_larger_than_the_bound_is_kept_alone(tmp_path):
    cache = PictureCache(tmp_path, most_bytes=10)
    for name in ("one", "two"):
        cache.get(name, lambda: bytes(50))
    assert [path.name for path in tmp_path.iterdir()] == ["two"]


def test_a_folder_that_cannot_be_written_only_costs_time(tmp_path):
    (tmp_path / "file").write_bytes(b"")
    cache = PictureCache(tmp_path / "file")
    assert [cache.get("one", lambda: b"drawn") for _ in range(2)] == [b"drawn", b"drawn"]


def test_a_write_that_fails_leaves_nothing_begun(tmp_path, monkeypatch):
    def full(*_):
        raise OSError("disk full")

    monkeypatch.setattr("webapp.pictures.cache.os.replace", full)
    assert PictureCache(tmp_path).get("one", lambda: b"drawn") == b"drawn"
    assert not [path for path in tmp_path.iterdir() if path.name.startswith(BEGUN)]
