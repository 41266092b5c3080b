"""What a piece and a kit cost, worked by hand, and the price that follows from cost, hours and rate."""

import pytest

from engine.cabinet.bead import Bead
from engine.cabinet.cost import cost, price
from engine.cabinet.money import Money
from engine.counting.answers import answer
from engine.counting.questions import Question
from engine.errors import EngineError
from engine.pattern.palette import Entry, Palette
from engine.pattern.pattern import Pattern

PLAIN = Pattern(
    "Plain", 6, Palette((Entry("A", "Sea", "#2f7f76"), Entry("B", "Candle", "#f5eddc"))), bytes((0, 0, 1)) * 6
)
SEA = Bead("Sea", "#2f7f76", pack_mg=20_000, price=350, currency="EUR", key="sea")
CANDLE = Bead("Candle", "#f5eddc", pack_mg=10_000, price=499, currency="EUR", key="candle")


def bill(beads, spare=10.0):
    """The bill of a rope of so many beads, a third of them candle."""
    passes = beads // 18
    size_mm = answer(PLAIN, Question()).size.rope_mm * passes
    found = answer(PLAIN, Question(size_mm), spare=spare).materials
    assert [need.beads for need in found.colours] == [2 * beads // 3, beads // 3]
    return found


def test_a_piece_takes_its_share_of_every_pack():
    # 2,100 beads at 105 to the gram are 20 g, a whole pack at 3.50; 1,050 are 10 g, a whole pack at 4.99
    found = cost(bill(3150), {"A": SEA, "B": CANDLE})
    assert [line.share for line in found.lines] == [Money(350, "EUR"), Money(499, "EUR")]
    assert found.piece == (Money(849, "EUR"),)


def test_a_kit_takes_whole_packs_with_spare():
    # estimates of ±15 % ask for 17.7 % spare: 2,100 become 2,472 beads, 23.5 g, two packs
    found = cost(bill(3150), {"A": SEA, "B": CANDLE})
    assert [(line.kit_beads, line.packs, line.cost) for line in found.lines] == [
        (found.lines[0].kit_beads, 2, Money(700, "EUR")),
        (found.lines[1].kit_beads, 2, Money(998, "EUR")),
    ]
    assert found.lines[0].kit_beads == -(-2100 * (1000 + round(10 * found.spare)) // 1000)
    assert found.kit == (Money(1698, "EUR"),)
    assert cost(bill(3150), {"A": SEA, "B": CANDLE}, 5).lines[0].packs == 6


def test_what_has_no_price_is_named_and_in_no_sum():
    unpriced = Bead("Candle", "#f5eddc", pack_mg=10_000, key="candle")
    found = cost(bill(3150), {"A": SEA, "B": unpriced})
    assert (found.without_price, found.kit) == (("B",), (Money(700, "EUR"),))
    assert found.lines[1].packs == 2
    assert cost(bill(3150), {}).without_price == ("A", "B")


def test_currencies_are_not_mixed():
    dollars = Bead("Candle", "#f5eddc", pack_mg=10_000, price=600, currency="USD", key="candle")
    assert cost(bill(3150), {"A": SEA, "B": dollars}).kit == (Money(700, "EUR"), Money(1200, "USD"))


def test_a_kit_is_for_at_least_one_piece():
    with pytest.raises(EngineError, match="A kit is for 1 to 10,000 pieces"):
        cost(bill(3150), {}, 0)


def test_a_price_is_cost_and_other_material_and_hours_at_a_rate():
    worked = price(Money(849, "EUR"), other=250, minutes=390, rate=1500)
    assert worked == (Money(849, "EUR"), Money(250, "EUR"), Money(9750, "EUR"))
    assert worked.total == Money(10_849, "EUR")
