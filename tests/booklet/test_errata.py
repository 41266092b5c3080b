"""Errata say what a later edition changed: beads by round and place, counts, palette, words."""

from __future__ import annotations

from dataclasses import replace

import page as validation

from engine.booklet.errata import Published, errata
from engine.booklet.own import OwnWords
from engine.pattern.palette import Palette
from tests.booklets import palette, parted, scattered, text_of
from webapp.printing.orders import ErrataOrder

WALL = scattered(12, 240)
FIRST = Published(1, "2026-01-02", WALL, OwnWords((("tips", "Wax it."),)))


def changed() -> Published:
    chart = bytearray(WALL.chart)
    chart[30] = 0
    named = Palette((*palette(3), replace(palette(4)[3], name="Old gold")))
    return Published(
        2, "2026-11-25", replace(WALL, chart=bytes(chart), palette=named), OwnWords((("care", "Keep it dry."),))
    )


def test_the_sheet_names_round_and_place_counts_palette_and_words() -> None:
    assert WALL.chart[30] == 2
    assert (
        errata(FIRST, changed(), "hello@lantern-street.example").text
        == """Errata: Harbour wall

For those who have edition 1 of 2 January 2026. Edition 2 of 25 November 2026 changes this:

Beads
- Round 3, bead 7: Night water (A) instead of Buoy red (C).

Bead counts
- One pass: A Night water 41, was 40.
- One pass: C Buoy red 42, was 43.

Palette
- Bead D: name “Old gold”, was “Lamp gold”.

Words
- Care and safety: words added.
- The tips: words taken out.

Rounds and beads count from one, in the order in which they are crocheted. If you have strung already, look for the beads named here before you work them. Questions: hello@lantern-street.example
"""
    )


def test_where_nothing_differs_the_sheet_says_so() -> None:
    sheet = errata(FIRST, replace(FIRST, number=2, date="2026-11-25"))
    assert sheet.groups == () and sheet.about.endswith(
        "Edition 2 of 25 November 2026 has the same beads and the same words."
    )


def test_the_sheet_is_printed_accessibly() -> None:
    made = ErrataOrder(errata(FIRST, changed())).carry_out()
    report = validation.validate_pdf_bytes(made.pdf, profile="ua1")
    assert report.is_compliant, sorted({f"{failure.rule_id}: {failure.message}" for failure in report.failures})
    assert "Round 3, bead 7: Night water (A) instead of Buoy red (C)." in " ".join(text_of(made.pdf).split())


def test_beads_of_parts_are_told_by_their_part_and_counted_over_all() -> None:
    pattern = parted()
    focal = pattern.parts[1]
    other = replace(focal, beads=bytes([(focal.beads[0] + 1) % 4]) + focal.beads[1:], times=3)
    later = replace(pattern, in_parts=(pattern.parts[0], other, *pattern.parts[2:]))
    sheet = errata(Published(1, "2026-05-01", pattern), Published(2, "2026-11-25", later))
    groups = dict(sheet.groups)
    assert groups["Beads"][0].startswith("Part 2 “Focal”, round 1, bead 1: ")
    assert groups["Words"] == ("Part 2 “Focal”, times: 3, was 2.",)
    assert all(line.startswith("All parts, each drawn once: ") for line in groups["Bead counts"])
