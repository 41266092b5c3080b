"""The reply in the maker's words, and the offers and tables beside it."""

from hypothesis import given
from hypothesis import strategies as st

from engine.counting.answers import answer
from engine.counting.closures import CLOSURES
from engine.counting.kinds import KINDS
from engine.counting.offers import longer_threads, offers
from engine.counting.questions import NamedSize, Question
from engine.counting.reply import SECTIONS, Words, reply, reply_rows
from engine.counting.size_table import in_kinds, size_table
from engine.counting.sizes import size
from engine.counting.workshop import Workshop
from engine.pattern.pattern import Pattern
from engine.units import count, grams, metres
from tests.pictures import palette

ROPE = Pattern("Buoys", 6, palette("ABC"), bytes([0, 1, 1, 2, 0, 0, 0]) * 3)


def test_the_reply_says_everything_in_the_makers_words():
    found = answer(ROPE, Question(450.0, "clasp"), plan=4.0)
    assert (
        reply(found, Words("Dear Ada,", "Lantern Street Beads"))
        == """\
Dear Ada,

Buoys as a piece of 45.0 cm with a clasp takes about 1,642 beads: 78.19 passes of the chart, 2.30 m of strung beads on 1 thread.

Beads: 11/0 round, about 110 to a gram.
A Bead A: 937 beads, 8.5 g, buy 11 g
B Bead B: 470 beads, 4.3 g, buy 6 g
C Bead C: 235 beads, 2.1 g, buy 3 g
All together 1,642 beads, 14.9 g, buy 20 g. To buy counts 17.7 % spare, because the length is an estimate, and that a gram may hold few beads.

The rope is 42.5 cm long, its thickness about 6 mm, 5 to 7. Strung, the beads are 2.30 m long, without a join. Thread: nylon bead cord, tex 135; it takes about 19.77 m, 2.7 g (an estimate): buy 22.74 m.

How sure the length is: estimate ±15 %. Work a piece and measure it before you string the rest.

Lantern Street Beads"""
    )


def test_sections_are_on_or_off():
    found = answer(ROPE, Question(450.0, "clasp"))
    assert reply(found, Words(sections=())) == found.sentence
    assert "Eye pins, 2: 22 gauge (0.64 mm)" in reply(found, Words(sections=("findings",)))


@given(
    st.floats(100, 1200), st.sampled_from(tuple(CLOSURES)), st.sampled_from(["11/0 round", "8/0 round", "15/0 round"])
)
def test_bill_and_reply_carry_the_same_numbers(mm, closure, kind):
    found = answer(ROPE, Question(mm, closure, kind), plan=4.0)
    text, bill = reply(found, Words(sections=SECTIONS)), found.materials
    *rows, total = reply_rows(found)
    assert [row[1:] for row in rows] == [
        (count(need.beads), grams(need.grams), f"{need.buy_grams} g") for need in bill.colours
    ]
    assert all(" beads, ".join(row[:2]).split(" beads, ")[0] in text and row.weight in text for row in rows)
    assert f"All together {total.beads} beads, {total.weight}" in text
    assert text.count(metres(bill.thread_mm)) == 2
    assert count(bill.beads) == total.beads


@given(st.floats(100, 900), st.sampled_from(tuple(CLOSURES)))
def test_offers_stand_round_what_was_asked_for(mm, closure):
    found = offers(size(ROPE, Question(mm, closure)))
    beads = [offer.size.beads for offer in found]
    assert beads == sorted(set(beads))
    assert answer(ROPE, Question(mm, closure)).size.beads in beads
    assert all(offer.size.passes % 1 == 0 for offer in found if offer.rounding in ("up", "down"))


def test_longer_threads_are_offered_where_there_are_many():
    many = answer(ROPE, Question(450.0), plan="chart")
    found = longer_threads(many)
    assert found is not None
    assert (found.metres, found.threads) == (4.0, 1)
    assert found.saved_mm == 300 * (len(many.stringing.threads) - 1)
    few = answer(ROPE, Question(450.0), plan="whole")
    assert longer_threads(few) is None
    own = longer_threads(answer(ROPE, Question(450.0), Workshop(longest_mm=1500), plan="chart"))
    assert own is not None
    assert (own.metres, own.threads) == (1.5, 2)


def test_a_table_takes_the_makers_sizes_in_the_kind_that_was_asked_for():
    own = Workshop(sizes=(NamedSize("Own", "Stall", Question(420.0, "glued")),))
    (row,) = size_table(answer(ROPE, Question(900.0, kind="8/0 round"), own))
    assert (row.size.name, row.answer) == ("Stall", answer(ROPE, Question(420.0, "glued", "8/0 round"), own))
    assert [row.size.name for row in size_table(answer(ROPE, Question()))][:2] == ["Bracelet M", "Bangle 2-8"]


def test_joins_chosen_for_one_size_stay_where_other_sizes_have_them():
    own = Workshop(sizes=(NamedSize("Own", "Short", Question(100.0)), NamedSize("Own", "Long", Question(420.0))))
    rows = size_table(answer(ROPE, Question(450.0), own, (300, 900)))
    assert [[thread.last for thread in row.answer.stringing.threads][:-1] for row in rows] == [[300], [300, 900]]


def test_kinds_stand_side_by_side():
    rows = in_kinds(
        answer(ROPE, Question(450.0), Workshop(kinds={kind: KINDS[kind] for kind in ("11/0 round", "8/0 round")}))
    )
    assert [(row.size.name, row.answer.size.question.kind) for row in rows] == [("11/0 round",) * 2, ("8/0 round",) * 2]
