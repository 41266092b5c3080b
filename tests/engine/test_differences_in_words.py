"""Differences between two states of a pattern in words."""

from dataclasses import replace

from engine.pattern.differences import differences
from engine.pattern.differences_in_words import MOST_LINES, bead_lines, field_lines, in_short, palette_lines
from engine.pattern.palette import Entry, Palette
from engine.pattern.part import Part
from engine.pattern.pattern import Pattern

SEA = Palette((Entry("A", "Sea glass", "#2f7f76"), Entry("B", "Candle", "#f5eddc"), Entry("C", "Slate", "#445566")))
ROPE = Pattern("Trial", 12, SEA, bytes(12 * 40))


def told(old: Pattern, new: Pattern) -> tuple[str, ...]:
    return bead_lines(old, new, differences(old, new))


def painted(pattern: Pattern, bead: int, *places: int) -> Pattern:
    chart = bytearray(pattern.chart)
    for place in places:
        chart[place] = bead
    return replace(pattern, chart=bytes(chart))


def test_one_bead_is_told_by_round_and_place():
    assert told(painted(ROPE, 1, 136), ROPE) == ("round 12, bead 5: Sea glass (A) instead of Candle (B)",)


def test_beads_side_by_side_are_told_together():
    assert told(ROPE, painted(ROPE, 1, 12, 13, 14)) == ("round 2, beads 1 to 3: Candle (B) instead of Sea glass (A)",)
    assert told(ROPE, painted(ROPE, 1, 11, 12)) == (
        "round 1, bead 12 to round 2, bead 1: Candle (B) instead of Sea glass (A)",
    )


def test_beads_put_in_and_taken_out_are_told_with_their_colours():
    longer = replace(ROPE, chart=ROPE.chart[:24] + bytes([1] * 11 + [2]) + ROPE.chart[24:])
    assert told(ROPE, longer) == ("round 3, beads 1 to 12: put in, 11 Candle (B), 1 Slate (C)",)
    assert told(longer, ROPE) == ("round 3, beads 1 to 12 as it was: taken out, 11 Candle (B), 1 Slate (C)",)


def test_start_and_end_say_so():
    assert told(ROPE, replace(ROPE, start=b"\1", end=b"\2\2")) == (
        "start, round 1, bead 1: put in, 1 Candle (B)",
        "end, round 1, beads 1 to 2: put in, 2 Slate (C)",
    )


def test_many_beads_are_counted_by_stretch():
    many = painted(painted(ROPE, 1, *range(0, 72, 2)), 2, *range(240, 264, 3))
    assert len(differences(ROPE, many).beads) > MOST_LINES
    assert told(ROPE, many) == (
        "rounds 1 to 6: 36 beads differ (36 Candle (B) instead of Sea glass (A))",
        "rounds 21 to 22: 8 beads differ (8 Slate (C) instead of Sea glass (A))",
    )


def test_beads_of_one_name_are_told_apart_by_their_codes():
    twins = replace(ROPE, palette=Palette((*SEA, Entry("D", "Candle", "#ffeedd"))))
    assert told(painted(twins, 1, 0), painted(twins, 3, 0)) == ("round 1, bead 1: Candle (D) instead of Candle (B)",)


def test_a_new_bead_with_the_name_of_an_old_one_is_told_apart_by_its_code():
    was = replace(ROPE, palette=Palette(SEA.entries[:2]), chart=b"\1\0")
    now = replace(ROPE, palette=Palette((*SEA.entries[:2], Entry("X", "Candle", "#ffffff"))), chart=b"\2\0")
    assert told(was, now) == ("round 1, bead 1: Candle (X) instead of Candle (B)",)


def test_words_are_told_as_they_are_and_were():
    now = replace(ROPE, title="Harbour", around=14, tags=("sea", "blue"), notes="Long\nwords", hand="left")
    assert field_lines(differences(ROPE, now)) == (
        "title: “Harbour”, was “Trial”",
        "around: 14, was 12",
        "hand: “left”, was “right”",
        "tags: “sea”, “blue”, was none",
        "notes: other words",
    )


def test_the_palette_is_told_by_code():
    ruby = Entry("A", "Ruby", "#991122", maker_code="R-1")
    now = replace(ROPE, palette=Palette((Entry("D", "Dune", "#ccbb99"), SEA[1], ruby)), chart=bytes([2] * 480))
    assert palette_lines(differences(ROPE, now)) == (
        "bead A: name “Ruby”, was “Sea glass”; colour “#991122”, was “#2f7f76”; maker's code “R-1”, was none",
        "bead C: Slate taken away",
        "bead D: Dune added",
        "The palette stands in another order.",
    )


def test_in_short_the_kinds_of_difference_are_named():
    longer = replace(ROPE, title="Harbour", around=14, palette=Palette(SEA.entries[:2]), chart=ROPE.chart + bytes(7))
    assert in_short(differences(ROPE, longer)) == "7 beads, palette, title, around"
    assert in_short(differences(ROPE, painted(ROPE, 1, 3))) == "1 bead"
    assert in_short(differences(ROPE, ROPE)) == ""


def test_beads_of_parts_are_told_by_the_parts_number_and_name():
    rope, focal = Part("Rope", bytes(24), None), Part("Focal", bytes(36), 2)
    was = Pattern("Parts", 12, SEA, in_parts=(rope, focal))
    now = replace(was, in_parts=(rope, Part("Focal", bytes(13) + b"\1" + bytes(22), 2)))
    assert told(was, now) == ("part 2 “Focal”, round 2, bead 2: Candle (B) instead of Sea glass (A)",)
    assert field_lines(differences(was, replace(was, in_parts=(rope, replace(focal, times=3))))) == (
        "part 2 “Focal”, times: 3, was 2",
    )
