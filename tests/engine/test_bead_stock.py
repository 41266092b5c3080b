"""What pieces take of the stock, what can be made of it, and what is to be bought."""

from dataclasses import replace

from engine.cabinet.bead import Bead
from engine.cabinet.money import Money
from engine.cabinet.stock import makeable, mg_of, shopping_list, take
from engine.counting.answers import answer
from engine.counting.kinds import KINDS
from engine.counting.questions import Question
from engine.pattern.palette import Entry, Palette
from engine.pattern.pattern import Pattern

SEA = Bead("Sea", "#2f7f76", pack_mg=20_000, price=350, currency="EUR", stock_mg=20_000, key="sea")
CANDLE = Bead("Candle", "#f5eddc", pack_mg=10_000, stock_mg=4_000, key="candle")
CABINET = {bead.key: bead for bead in (SEA, CANDLE)}
LINKED = Pattern("Linked", 6, Palette((SEA.entry("A"), CANDLE.entry("B"))), bytes((0, 0, 1)) * 70)  # 140 A, 70 B


def bill(pattern):
    return answer(pattern, Question()).materials


def test_a_piece_takes_the_weight_of_its_beads_at_most():
    needed = take(LINKED.palette, bill(LINKED), CABINET, pieces=3)
    assert [(of.bead.key, of.codes, of.beads) for of in needed.takings] == [
        ("sea", ("A",), 420),
        ("candle", ("B",), 210),
    ]
    assert [of.mg for of in needed.takings] == [4000, 2000]  # at 105 beads to the gram
    assert needed.enough


def test_what_is_missing_is_said_by_bead():
    needed = take(LINKED.palette, bill(LINKED), CABINET, pieces=9)
    assert [of.missing_mg for of in needed.takings] == [0, 2000]
    assert not needed.enough


def test_two_codes_that_point_at_one_bead_take_from_the_same_stock():
    twice = replace(LINKED, palette=Palette((SEA.entry("A"), SEA.entry("B"))))
    (taking,) = take(twice.palette, bill(twice), CABINET).takings
    assert (taking.codes, taking.beads) == (("A", "B"), 210)


def test_an_entry_without_a_bead_of_the_cabinet_stands_alone():
    alone = replace(LINKED, palette=Palette((SEA.entry("A"), Entry("B", "Lamp", "#d9932b", bead="gone"))))
    needed = take(alone.palette, bill(alone), CABINET, spare=10)
    assert [(of.code, of.beads) for of in needed.alone] == [("B", 77)]
    assert not needed.enough


def test_whole_pieces_are_as_many_as_the_scarcest_bead_allows():
    asked = answer(LINKED, Question())
    made = makeable(asked.size, asked.materials, CABINET)
    # 4 g of candle hold 420 beads: 6 pieces of 70; 20 g of sea hold 2,100: 15 pieces of 140
    assert (made.pieces, made.runs_out.key) == (6, "candle")
    assert made.longest.size.beads == 1262  # 420 candle beads, two sea beads before each and two behind
    assert dict(made.longest.left) == {"A": 2100 - 842, "B": 0}


def test_nothing_is_said_to_be_makeable_of_beads_that_are_not_in_the_cabinet():
    alone = replace(LINKED, palette=Palette((SEA.entry("A"), Entry("B", "Lamp", "#d9932b"))))
    asked = answer(alone, Question())
    assert makeable(asked.size, asked.materials, CABINET) is None


def test_out_of_stock_makes_nought_pieces_and_no_rope():
    asked = answer(LINKED, Question())
    made = makeable(asked.size, asked.materials, {**CABINET, "sea": replace(SEA, stock_mg=0)})
    assert (made.pieces, made.runs_out.key, made.longest) == (0, "sea", None)


def test_a_shopping_list_draws_together_what_several_patterns_take():
    lamp = replace(LINKED, palette=Palette((SEA.entry("A"), Entry("B", "Lamp", "#d9932b"))))
    lines = shopping_list(
        [
            ("First", take(LINKED.palette, bill(LINKED), CABINET, pieces=12)),
            ("Second", take(lamp.palette, bill(lamp), CABINET, pieces=5)),
            ("Third", take(lamp.palette, bill(lamp), CABINET, pieces=1)),
        ]
    )
    found = [(line.name, line.wanted_for, line.beads, line.missing_mg, line.packs, line.cost) for line in lines]
    assert found == [
        ("Candle", ("First",), 840, 4000, 1, None),
        ("Lamp", ("Second", "Third"), 420, 4000, 0, None),
        ("Sea", ("First", "Second", "Third"), 18 * 140, 4000, 1, Money(350, "EUR")),
    ]


def test_a_weight_is_rounded_up_to_the_milligram():
    assert mg_of(1, KINDS["11/0 round"]) == 10  # 1 / 105 g
