"""Rows of a table beside the cabinet: new, changed or there already; the same table again brings nothing."""

from dataclasses import replace

from hypothesis import given
from hypothesis import strategies as st

from engine.cabinet.arrivals import FIELDS, Arrivals, Changed, Clash, Row, arrivals
from engine.cabinet.bead import Bead

SEA = Bead("Sea glass", "#2f7f76", maker_code="LS-4", supplier="Pier Nine", stock_mg=12_000, key="sea")
LAMP = Bead("Lamp", "#d9932b", key="lamp")
CABINET = {"sea": SEA, "lamp": LAMP}
EVERYTHING = frozenset(FIELDS)


def row(number, bead, said=EVERYTHING):
    return Row(number, bead, frozenset(said))


def test_a_bead_that_is_there_as_it_is_is_counted_and_no_more():
    assert arrivals([row(2, SEA), row(3, replace(LAMP, key=""))], CABINET) == Arrivals((), (), 2, ())


def test_a_bead_is_known_by_its_key_though_all_else_is_new():
    renamed = replace(LAMP, name="Lantern", colour="#dd9a30")
    found = arrivals([row(2, renamed)], CABINET)
    assert found.changed == (Changed(2, LAMP, renamed, ("name", "colour")),)


def test_without_a_key_kind_supplier_and_makers_code_tell_a_bead():
    stock = replace(SEA, key="", name="Sea", stock_mg=8_000)
    (changed,) = arrivals([row(2, stock)], CABINET).changed
    assert (changed.was, changed.now, changed.fields) == (SEA, replace(stock, key="sea"), ("name", "stock_mg"))


def test_a_bead_of_another_supplier_or_kind_is_another_bead():
    others = [row(2, replace(SEA, key="", supplier="Quay")), row(3, replace(LAMP, key="", kind="8/0 round"))]
    assert arrivals(others, CABINET).new == tuple(others)


def test_what_the_table_does_not_say_stays():
    (changed,) = arrivals(
        [
            row(
                2,
                Bead("Sea glass", "#2f7f70", maker_code="LS-4", supplier="Pier Nine"),
                ("name", "colour", "maker_code", "supplier"),
            )
        ],
        CABINET,
    ).changed
    assert changed.now == replace(SEA, colour="#2f7f70")


def test_a_table_without_suppliers_or_codes_is_about_the_bead_of_the_name():
    stock = Row(
        2, replace(SEA, key="", supplier="", maker_code="", stock_mg=8_000), frozenset({"name", "colour", "stock_mg"})
    )
    (changed,) = arrivals([stock], CABINET).changed
    assert changed.now == replace(SEA, stock_mg=8_000)


def test_a_row_that_says_that_there_is_no_code_is_about_a_bead_without_one():
    uncoded = row(2, replace(SEA, key="", maker_code=""))
    assert arrivals([uncoded], CABINET).new == (uncoded,)
    (changed,) = arrivals([row(2, replace(LAMP, key="", note="x"))], CABINET).changed
    assert changed.was == LAMP


def test_of_several_of_a_name_the_one_that_is_as_the_row_says_is_meant():
    twins = {"one": replace(LAMP, key="one", supplier="Quay"), "two": replace(LAMP, key="two", stock_mg=5)}
    said = Row(2, replace(LAMP, stock_mg=5), frozenset({"name", "colour", "stock_mg"}))
    assert arrivals([said], twins).same == 1
    (changed,) = arrivals([said._replace(bead=replace(LAMP, stock_mg=7))], twins).changed
    assert changed.was.key == "one"


def test_a_second_row_about_a_bead_is_refused_where_it_says_something_else():
    new = Bead("Dusk", "#4a4466")
    rows = [row(2, new), row(3, new), row(4, replace(new, stock_mg=5)), row(5, LAMP), row(6, replace(LAMP, note="x"))]
    found = arrivals(rows, CABINET)
    assert (found.new, found.same, found.clashes) == ((row(2, new),), 2, (Clash(4, 2), Clash(6, 5)))


beads = st.builds(
    Bead,
    name=st.sampled_from(("Sea", "Lamp", "Dusk")),
    colour=st.sampled_from(("#2f7f76", "#d9932b")),
    maker_code=st.sampled_from(("", "LS-1", "LS-2")),
    stock_mg=st.integers(0, 3),
)


columns = st.sets(st.sampled_from(("maker_code", "stock_mg", "supplier"))).map(lambda more: {"name", "colour", *more})


@given(st.lists(beads, max_size=8), st.lists(beads, max_size=6), columns)
def test_the_same_table_a_second_time_brings_nothing(table, kept, said):
    cabinet = {f"k{place}": replace(bead, key=f"k{place}") for place, bead in enumerate(kept)}
    usual = {"maker_code": "", "stock_mg": 0}
    unsaid = {name: value for name, value in usual.items() if name not in said}
    rows = [row(number, replace(bead, **unsaid), said) for number, bead in enumerate(table, 2)]
    first = arrivals(rows, cabinet)
    after = cabinet | {changed.now.key: changed.now for changed in first.changed}
    after |= {f"n{new.number}": replace(new.bead, key=f"n{new.number}") for new in first.new}
    again = arrivals([one for one in rows if one.number not in {clash.number for clash in first.clashes}], after)
    assert (again.new, again.changed, again.clashes) == ((), (), ())
    assert len(rows) == len(first.new) + len(first.changed) + first.same + len(first.clashes)
