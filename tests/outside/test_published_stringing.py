"""Stringing lists against a published project and a published rule.

Source: a beading magazine's project "Crochet Rope", https://www.beadingmag.info/fire-polished/crochet-rope.html: "the
first bead you string on the spool will be the last bead you crochet"; its stringing sequence is seven groups of six.
"""

from engine.counting.questions import Question
from engine.counting.sizes import size
from engine.counting.stringing import string
from engine.pattern.notation import parse
from engine.pattern.palette import Entry, Palette
from engine.pattern.pattern import Pattern

# "8CCCCC 88CCCC 8C8CCC 8CC8CC 8CCC8C 8CCCC8 8CCCCC", with the fire-polished bead 8 called F here
STRUNG = "FCCCCC FFCCCC FCFCCC FCCFCC FCCCFC FCCCCF FCCCCC".replace("C", " C").replace("F", " F")
RUNS = (1, 5, 2, 4, 1, 1, 1, 3, 1, 2, 1, 2, 1, 3, 1, 1, 1, 4, 2, 5)


def published():
    palette = Palette((Entry("F", "Fire-polished", "#8a3b2e"), Entry("C", "Cube", "#2f7f76")))
    return Pattern("Published", 6, palette, parse(STRUNG, palette.codes, strung=True))


def test_the_published_sequence_of_42_beads_has_its_20_runs_in_stringing_order():
    rope = published()
    found = string(size(rope, Question()))
    assert tuple(run.beads for run in found.runs) == RUNS
    assert [run.code for run in found.runs] == ["F", "C"] * 10
    assert (found.beads, rope.chart.count(0), rope.chart.count(1)) == (42, 12, 30)


def test_the_last_bead_strung_is_the_first_that_is_crocheted():
    rope = published()
    worked = [rope.palette[bead].code for bead in rope.chart]
    assert worked[:5] == ["C"] * 5
    assert worked[-1] == "F"
