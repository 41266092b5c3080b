"""Beads that could stand for an entry, and what each would be mistaken for."""

from dataclasses import replace

from hypothesis import given, settings
from hypothesis import strategies as st

from engine.cabinet.bead import Bead
from engine.cabinet.candidates import candidates
from engine.pattern.colour import look_alikes
from engine.pattern.palette import Entry, Palette

colours = st.integers(0, 0xFFFFFF).map(lambda number: f"#{number:06x}")


def palette(*of):
    return Palette(tuple(Entry(code, f"Bead {code}", colour) for code, colour in zip("ABCDEFGH", of, strict=False)))


def cabinet(*of):
    return [Bead(f"Bead {number}", colour, key=f"b{number}") for number, colour in enumerate(of)]


def test_the_nearest_stand_first_and_say_what_they_would_be_mistaken_for():
    found = candidates(palette("#1d3350", "#2f7f76", "#f2e8d5"), 0, cabinet("#d9932b", "#31817a", "#20365a"), 2)
    assert [(one.bead.key, [of.code for of in one.mistaken]) for one in found] == [("b2", []), ("b1", ["B"])]
    assert found[1].mistaken[0].sight == "plain"


def test_some_are_mistaken_only_by_some_eyes():
    (found,) = candidates(palette("#2040c0", "#a39000"), 0, cabinet("#ff0000"), 9)
    assert [(of.code, of.sight) for of in found.mistaken] == [("B", "deutan")]


def test_a_palette_of_one_bead_takes_any():
    assert [one.mistaken for one in candidates(palette("#2040c0"), 0, cabinet("#2040c1", "#ffffff"), 9)] == [(), ()]
    assert candidates(palette("#2040c0"), 0, [], 9) == ()


@settings(max_examples=60)
@given(st.lists(colours, min_size=2, max_size=5), colours, st.data())
def test_a_candidate_is_mistaken_for_what_the_palette_with_it_has_for_look_alikes(of, colour, data):
    place = data.draw(st.integers(0, len(of) - 1))
    before = palette(*of)
    (found,) = candidates(before, place, cabinet(colour), 9)
    after = Palette(tuple(replace(entry, colour=colour) if n == place else entry for n, entry in enumerate(before)))
    alike = {
        before[pair.first + pair.second - place].code: pair.sight
        for pair in look_alikes(after)
        if place in (pair.first, pair.second)
    }
    assert {of.code: of.sight for of in found.mistaken} == alike
