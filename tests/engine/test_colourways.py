"""Colourways: the same chart in other beads, and one made of what is in stock."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from engine.cabinet.bead import Bead
from engine.cabinet.colourways import Colourway, check_name_free, fitted, in_colourway, matched
from engine.errors import EngineError
from engine.pattern.colour import TOO_NEAR, colour_pairs
from engine.pattern.palette import Entry, Palette
from tests.examples import harbour

colours = st.integers(0, 0xFFFFFF).map(lambda number: f"#{number:06x}")


def palette(*of):
    return Palette(tuple(Entry(code, f"Bead {code}", colour) for code, colour in zip("ABCDEFGH", of, strict=False)))


def stock(*of, mg=20_000):
    return [Bead(f"Stock {number}", colour, stock_mg=mg, key=f"s{number}") for number, colour in enumerate(of)]


def test_a_colourway_changes_the_beads_and_nothing_of_the_chart():
    pattern = harbour()
    dusk = Palette(tuple(Entry(entry.code, f"Dusk {entry.code}", "#4a4466") for entry in pattern.palette))
    worked = in_colourway(pattern, Colourway("Dusk", dusk))
    assert (worked.chart, worked.title, worked.around) == (pattern.chart, pattern.title, pattern.around)
    assert [entry.name for entry in worked.palette] == [f"Dusk {code}" for code in pattern.palette.codes]


def test_a_colourway_follows_the_codes_symbols_and_number_of_the_patterns_beads():
    own = Palette((Entry("B", "Own B", "#111111", symbol="dot"), Entry("N", "New", "#222222")))
    dusk = Palette((Entry("A", "Gone", "#333333"), Entry("B", "Dusk B", "#444444", symbol="ring")))
    assert fitted(dusk, own) == Palette((Entry("B", "Dusk B", "#444444", symbol="dot"), Entry("N", "New", "#222222")))


def test_the_nearest_beads_in_stock_stand_for_those_of_the_palette():
    made = matched(palette("#1d3350", "#f2e8d5"), stock("#efe6d0", "#d9932b", "#20365a"), uses=(10, 40), least_mg={})
    assert [entry.bead for entry in made.palette] == ["s2", "s0"]
    assert (made.palette.codes, made.unmatched, made.alike) == (("A", "B"), (), ())


def test_a_bead_is_taken_once_and_the_most_used_colour_chooses_first():
    made = matched(palette("#203755", "#1d3350"), stock("#1f3553"), uses=(10, 40), least_mg={})
    assert [entry.bead for entry in made.palette] == ["", "s0"]
    assert made.unmatched == ("A",)


def test_only_beads_of_the_kind_of_which_enough_is_there_count():
    large = Bead("Large", "#1d3350", kind="8/0 round", stock_mg=20_000, key="large")
    little = Bead("Little", "#1d3350", stock_mg=400, key="little")
    enough = Bead("Enough", "#2f5f86", stock_mg=900, key="enough")
    made = matched(palette("#1d3350"), [large, little, enough], uses=(1,), least_mg={"A": 500})
    assert made.palette[0].bead == "enough"


def test_colours_that_could_be_told_apart_stay_so():
    twins = stock("#1f3553", "#1f3554", "#6f8fc0")
    made = matched(palette("#1d3350", "#3f6ea8"), twins, uses=(40, 10), least_mg={})
    assert [entry.bead for entry in made.palette] == ["s0", "s2"]
    assert made.alike == ()


def test_pairs_that_no_bead_in_stock_keeps_apart_are_named():
    made = matched(palette("#1d3350", "#f2e8d5"), stock("#1f3553", "#213755"), uses=(40, 10), least_mg={})
    assert made.alike == (("A", "B"),)


@settings(max_examples=40)
@given(st.lists(colours, min_size=1, max_size=5, unique=True), st.lists(colours, max_size=8), st.data())
def test_whatever_is_in_stock_codes_stay_no_bead_stands_twice_and_lost_pairs_are_named(of, held, data):
    beads = palette(*of)
    uses = data.draw(st.lists(st.integers(0, 99), min_size=len(of), max_size=len(of)))
    made = matched(beads, stock(*held), uses, {})
    taken = [entry.bead for entry in made.palette if entry.bead]
    assert made.palette.codes == beads.codes
    assert len(set(taken)) == len(taken) == min(len(of), len(held))
    lost = {
        (made.palette[now.first].code, made.palette[now.second].code)
        for was, now in zip(colour_pairs(beads), colour_pairs(made.palette), strict=True)
        if was.least >= TOO_NEAR > now.least
    }
    assert set(made.alike) == lost


def test_a_colourway_has_a_name_of_its_own():
    dusk = Colourway("Dusk", palette("#4a4466"))
    with pytest.raises(EngineError, match="There is a colourway “DUSK” already"):
        check_name_free("DUSK", [dusk])
    with pytest.raises(EngineError, match="The name of the colourway is empty"):
        Colourway(" ", palette("#4a4466"))
