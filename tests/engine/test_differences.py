"""What differs between two states of a pattern, bead by bead."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from engine.pattern.differences import PARTS, BeadsChange, EntryChange, FieldChange, differences
from engine.pattern.palette import Entry, Palette
from engine.pattern.part import Part
from engine.pattern.pattern import Pattern
from tests.pictures import palette, pattern

NAMES = ("Sea glass", "Candle", "Slate")


@st.composite
def patterns(draw) -> Pattern:
    """Small patterns with palettes near enough to one another to have much in common."""
    codes = draw(st.lists(st.sampled_from("ABCDE"), min_size=1, max_size=4, unique=True))
    entries = tuple(
        Entry(code, draw(st.sampled_from(NAMES)), draw(st.sampled_from(("#112233", "#eeddcc")))) for code in codes
    )
    beads = st.lists(st.integers(0, len(codes) - 1), max_size=24).map(bytes)
    return Pattern(
        draw(st.sampled_from(("One", "Two"))),
        draw(st.integers(3, 5)),
        Palette(entries),
        draw(beads.filter(bool)),
        draw(beads),
        draw(beads),
        hand=draw(st.sampled_from(("right", "left"))),
        tags=tuple(draw(st.lists(st.sampled_from("xyz"), max_size=2))),
    )


def put_right(old: Pattern, new: Pattern) -> dict[str, list[tuple[str, ...]]]:
    """Every part of the old pattern with what differs put in its place, told by look."""
    found = differences(old, new)
    looks = {entry.code: entry for entry in new.palette}
    pairs = {change.was.code: change.now.code for change in found.entries if change.was and change.now}
    kept = {
        entry.code: looks[pairs.get(entry.code, entry.code)]
        for entry in old.palette
        if pairs.get(entry.code, entry.code) in looks
    }
    parts = {}
    for part in PARTS:
        beads = [kept.get(old.palette[bead].code) for bead in getattr(old, part)]
        for change in reversed(found.of_part(part)):
            assert (
                tuple(
                    old.palette[bead].code
                    for bead in getattr(old, part)[change.was_first : change.was_first + len(change.was)]
                )
                == change.was
            )
            beads[change.was_first : change.was_first + len(change.was)] = [looks[code] for code in change.now]
        parts[part] = beads
    return parts


@given(patterns())
def test_a_pattern_does_not_differ_from_itself(pattern):
    assert not differences(pattern, replace(pattern))


@given(patterns(), patterns())
def test_where_nothing_differs_the_patterns_are_equal(old, new):
    assert bool(differences(old, new)) == (old != new)


@given(patterns(), patterns())
def test_what_differs_put_in_its_place_gives_the_new_beads(old, new):
    assert put_right(old, new) == {part: [new.palette[bead] for bead in getattr(new, part)] for part in PARTS}


@given(patterns(), patterns())
def test_beads_exchanged_are_of_one_colour_then_and_of_one_colour_now(old, new):
    for change in differences(old, new).beads:
        assert change.was or change.now
        assert not (change.was and change.now) or (
            len(change.was) == len(change.now) and len(set(change.was)) == len(set(change.now)) == 1
        )


@given(patterns(), st.data())
def test_a_stretch_put_in_is_found_as_one_whatever_stands_beside_it(old, data):
    at = data.draw(st.integers(0, len(old.chart)))
    more = bytes(data.draw(st.lists(st.integers(0, len(old.palette) - 1), min_size=1, max_size=9)))
    new = replace(old, chart=old.chart[:at] + more + old.chart[at:])
    (change,) = differences(old, new).beads
    assert (change.part, change.was, len(change.now)) == ("chart", (), len(more))
    (back,) = differences(new, old).beads
    assert (back.now, len(back.was)) == ((), len(more))


def test_single_beads_are_found_in_their_places():
    old = pattern(
        """
         A B A
        A A A A
        """,
        3,
    )
    new = pattern(
        """
         A A A
        A A C C
        """,
        3,
    )
    assert differences(old, new).beads == (
        BeadsChange("chart", 2, 2, ("A", "A"), ("C", "C")),
        BeadsChange("chart", 5, 5, ("B",), ("A",)),
    )


def test_a_round_exchanged_behind_a_round_put_in_is_told_apart_from_it():
    old = replace(pattern("A A A A", 3), chart=bytes([0, 0, 1, 2, 0, 1, 2, 3]))
    new = replace(old, chart=bytes([0, 0, 3, 3, 3, 1, 2, 1, 1, 2, 3]))
    assert differences(old, new).beads == (
        BeadsChange("chart", 2, 2, (), ("D", "D", "D")),
        BeadsChange("chart", 4, 7, ("A",), ("B",)),
    )


def test_another_order_of_the_palette_changes_no_bead():
    old = pattern("A B C D", 3)
    turned = Palette(tuple(reversed(old.palette.entries)))
    found = differences(old, replace(old, palette=turned, chart=bytes(3 - bead for bead in old.chart)))
    assert (found.fields, found.entries, found.reordered, found.beads) == ((), (), True, ())


def test_a_bead_that_looks_the_same_is_the_same_under_another_code():
    old = pattern("A B A B", 3, "AB")
    a, b = old.palette
    found = differences(old, replace(old, palette=Palette((replace(a, code="X"), b))))
    assert found.entries == (EntryChange(a, replace(a, code="X")),)
    assert found.entries[0].fields == ("code",)
    assert not found.beads


def test_another_colour_under_the_same_code_is_told_in_the_palette_and_not_bead_by_bead():
    old = pattern("A B A B", 3, "AB")
    a, b = old.palette
    ruby = replace(a, name="Ruby", colour="#991122")
    found = differences(old, replace(old, palette=Palette((ruby, b))))
    assert (found.entries, found.beads) == ((EntryChange(a, ruby),), ())


def test_beads_of_the_palette_that_are_added_or_taken_away_are_told():
    old = replace(pattern("A B A B", 3, "AB"), chart=bytes([0, 0]))
    new = replace(old, palette=palette("AC"))
    assert differences(old, new).entries == (EntryChange(old.palette[1], None), EntryChange(None, new.palette[1]))


@pytest.mark.parametrize(
    ("field", "now"),
    [
        ("title", "Other"),
        ("around", 5),
        ("hand", "left"),
        ("stitch", "slip"),
        ("designer", "Me"),
        ("tags", ("x",)),
        ("notes", "Words"),
    ],
)
def test_words_and_measures_are_told_as_they_were_and_are(field, now):
    old = pattern("A B A B", 3)
    found = differences(old, replace(old, **{field: now}))
    assert found.fields == (FieldChange(field, getattr(old, field), now),)
    assert not (found.entries or found.reordered or found.beads)


ROPE, FOCAL = Part("Rope", b"\0\0\1", None), Part("Focal", b"\2\2\2\2", 2)


def parted(*parts):
    return Pattern("Parts", 3, palette(), in_parts=parts)


def test_parts_are_paired_by_name_and_compared_bead_by_bead():
    found = differences(parted(ROPE, FOCAL, ROPE), parted(ROPE, Part("Focal", b"\2\3\2\2", 3), ROPE))
    assert found.fields == (FieldChange("part 2 “Focal”, times", 2, 3),)
    assert found.beads == (BeadsChange("part 2 “Focal”", 1, 1, ("C",), ("D",)),)


def test_a_part_that_was_added_or_taken_away_is_told_whole():
    found = differences(parted(ROPE, FOCAL), parted(Part("Head", b"\3\3"), ROPE))
    assert found.fields == (
        FieldChange("part 1 “Head”, times", "", 1),
        FieldChange("part 2 “Focal” as it was, times", 2, ""),
    )
    assert found.beads == (
        BeadsChange("part 1 “Head”", 0, 0, (), ("D", "D")),
        BeadsChange("part 2 “Focal” as it was", 0, 0, ("C",) * 4, ()),
    )


def test_a_part_of_another_name_in_its_place_is_that_part_renamed():
    found = differences(parted(ROPE, FOCAL), parted(ROPE, replace(FOCAL, name="Motif")))
    assert found.fields == (FieldChange("part 2 “Motif”, name", "Focal", "Motif"),)
    assert not found.beads


def test_the_same_rope_in_the_other_form_does_not_differ():
    short = Pattern("Same", 3, palette(), b"\0\1", end=b"\2")
    assert not differences(short, replace(short, chart=b"", end=b"", in_parts=short.parts))
