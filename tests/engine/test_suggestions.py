"""The bead of the cabinet that would tell two look-alike beads apart."""

from engine.cabinet.bead import Bead
from engine.cabinet.suggestions import suggestion
from engine.pattern.colour import look_alikes
from engine.pattern.palette import Entry, Palette

BLUES = Palette((Entry("A", "Night", "#1d3350"), Entry("B", "Ink", "#203755"), Entry("C", "Foam", "#f2e8d5")))


def bead(key, colour, kind="11/0 round"):
    return Bead(key.capitalize(), colour, kind=kind, key=key)


def test_the_nearest_bead_of_the_kind_that_nobody_mistakes_is_suggested():
    beads = [
        bead("twin", "#213856"),
        bead("bay", "#3f6ea8"),
        bead("large", "#2a4a70", "8/0 round"),
        bead("foam", "#f1e7d4"),
        bead("leaf", "#2c8a4a"),
    ]
    found = suggestion(BLUES, look_alikes(BLUES)[0], beads)
    assert (found.entry, found.bead.key) == (1, "bay")
    after = Palette(
        tuple(found.bead.entry(entry.code) if place == found.entry else entry for place, entry in enumerate(BLUES))
    )
    assert look_alikes(after) == ()


def test_a_bead_that_stands_in_the_palette_already_is_not_suggested_again():
    taken = Palette((*BLUES, bead("bay", "#3f6ea8").entry("D")))
    assert suggestion(taken, look_alikes(taken)[0], [bead("bay", "#3f6ea8")]) is None


def test_without_a_bead_that_helps_nothing_is_suggested():
    assert suggestion(BLUES, look_alikes(BLUES)[0], [bead("twin", "#213856")]) is None
    assert suggestion(BLUES, look_alikes(BLUES)[0], []) is None
