"""Crochet terms: short forms told apart from words, and written out for those whom they bar."""

from __future__ import annotations

import pytest

from engine.booklet.terms import SHORT, TERMS, abbreviations, in_full


@pytest.mark.parametrize(
    ("short", "full"),
    [
        (
            "Work 1 single crochet (sc) in the second ch from the hook and in every ch to the end: 12 sc.",
            "Work 1 single crochet in the second chain from the hook and in every chain to the end: 12 single crochet.",
        ),
        (
            "Yo and pull through both loops. This is one bead sc.",
            "Yarn over and pull through both loops. This is one bead single crochet.",
        ),
        (
            "Work 1 rnd, then gather the 12 st of the last rnd, st by st.",
            "Work 1 round, then gather the 12 stitches of the last round, stitch by stitch.",
        ),
        ("Make 13 chains (ch); both rnds meet the 6 ch.", "Make 13 chains; both rounds meet the 6 chains."),
        (
            "UK double crochet (dc) is what US patterns call sc.",
            "UK double crochet is what US patterns call single crochet.",
        ),
        ("The 1st stretch of the chart is charged.", "The 1st stretch of the chart is charged."),
    ],
)
def test_short_forms_are_written_out(short: str, full: str) -> None:
    assert in_full(short) == full


@pytest.mark.parametrize("stitch", ["slip", "single"])
@pytest.mark.parametrize("country", TERMS)
def test_every_abbreviation_that_is_explained_can_be_written_out(country: str, stitch: str) -> None:
    for short, words in abbreviations(TERMS[country], stitch):
        assert in_full(short) == words


def test_the_terms_of_both_countries_are_in_the_one_table() -> None:
    for terms in TERMS.values():
        assert SHORT[terms.sc] == terms.single and SHORT[terms.yo] == terms.over
