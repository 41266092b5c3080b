"""A bead of the cabinet: what may be kept of it, how many are in a weight, and how palettes follow it."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from engine.cabinet.bead import SHOWN, Bead, followed
from engine.counting.kinds import KINDS
from engine.errors import EngineError
from engine.pattern.palette import FINISHES, Entry

DUSK = Bead("Dusk", "#4a4466", finish="matte", maker_code="LS-12", key="dusk")
words = st.text("abcXYZ 09-", min_size=1, max_size=12).filter(str.strip)
beads = st.builds(
    Bead,
    name=words,
    colour=st.integers(0, 0xFFFFFF).map(lambda number: f"#{number:06x}"),
    kind=st.sampled_from(list(KINDS)),
    finish=st.sampled_from(FINISHES),
    maker_code=words,
)


@pytest.mark.parametrize(
    ("wrong", "field", "sentence"),
    [
        ({"name": " "}, "name", "The name of the bead is empty; expected 1 to 120 characters."),
        ({"colour": "#12"}, "colour", "“#12” is not a colour; write # and six digits or letters a to f"),
        ({"finish": "shiny"}, "finish", "Finish: “shiny” is not known here"),
        ({"pack_mg": -1}, "pack_mg", "A pack is nought or more"),
        ({"stock_mg": 10**9}, "stock_mg", "The stock is nought or more, and not beyond all measure."),
        ({"price": 350}, "currency", "A price needs its currency, such as EUR."),
        ({"currency": "euro"}, "currency", "A currency is three letters, such as EUR."),
        ({"key": "A B"}, "key", "“A B” is not the key of a bead"),
    ],
)
def test_what_is_no_bead_is_refused_by_its_field(wrong, field, sentence):
    with pytest.raises(EngineError) as refused:
        replace(DUSK, **wrong)
    assert (refused.value.field, refused.value.message[: len(sentence)]) == (field, sentence)


def test_a_weight_holds_the_fewest_beads_of_its_kind():
    assert DUSK.beads_in(20_000, KINDS["11/0 round"]) == 2100  # 20 g at 105 to the gram, REFERENCE 1.3


def test_a_bead_becomes_the_entry_that_points_at_it():
    assert DUSK.entry("C", "dot") == Entry(
        "C", "Dusk", "#4a4466", "matte", "11/0 round", symbol="dot", maker_code="LS-12", bead="dusk"
    )


@given(beads, beads)
def test_an_entry_that_says_what_its_bead_says_follows_it_in_all(was, now):
    assert followed(was.entry("A"), was, now) == replace(now.entry("A"), bead=was.key)


def test_what_an_entry_says_of_its_own_stays():
    renamed = replace(DUSK.entry("A"), name="Evening")
    now = replace(DUSK, name="Dusk II", colour="#4b4567")
    assert followed(renamed, DUSK, now) == replace(renamed, colour="#4b4567")


@given(beads, beads, st.sampled_from(SHOWN))
def test_only_what_differs_from_the_bead_is_the_entrys_own(was, now, name):
    entry = replace(was.entry("A"), **{name: getattr(now, name)})
    after = followed(entry, was, was)
    assert after == entry
