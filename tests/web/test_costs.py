"""Cost and stock: what a piece costs, what making it takes, shopping lists, what can be made, and what was earned."""

from __future__ import annotations

import csv
import io
import re
from dataclasses import replace

import pytest

from engine.cabinet.bead import Bead
from engine.pattern.palette import Palette
from engine.pattern.pattern import Pattern
from tests.conftest import flat
from webapp.storage import beads, patterns

SEA = Bead("Sea", "#2f7f76", pack_mg=20_000, price=350, currency="EUR", stock_mg=20_000, key="sea")
CANDLE = Bead("Candle", "#f5eddc", pack_mg=10_000, price=499, currency="EUR", stock_mg=4_000, key="candle")
ROPE = Pattern("Rope", 6, Palette((SEA.entry("A"), CANDLE.entry("B"))), bytes((0, 0, 1)) * 70)  # 140 A, 70 B


@pytest.fixture
def library(app):
    return app.state.services.database


@pytest.fixture
def number(library):
    """A pattern of two beads of the cabinet; a pass of it takes 1.34 g and 0.67 g at most."""
    beads.save_all(library, (), (SEA, CANDLE))
    return patterns.create(library, ROPE).id


def stock(library):
    return {key: bead.stock_mg for key, bead in beads.by_key(library).items()}


def test_a_piece_has_a_cost_and_a_price_that_follows(client, number):
    shown = flat(client.get(f"/patterns/{number}/cost?hours=6:30&rate=15&other=2,50").text)
    for words in ("€0.23", "€0.33", "€0.56", "€2.50", "€97.50", "€100.56", "A calculator and no more"):
        assert words in shown


def test_the_bill_says_how_many_packs_of_the_cabinet_that_is(client, number):
    shown = flat(client.get(f"/patterns/{number}/materials?length=60+cm").text)
    assert "of 10 g" in shown and "of 20 g" in shown


def test_the_desk_counts_packs_of_the_cabinet_where_none_are_typed(client, number):
    asked = f"pattern={number}&length=60+cm&pieces=30"
    shown = flat(client.get(f"/answers?{asked}").text)
    assert "Packs as the cabinet has them: A 20 g, B 10 g." in shown
    assert f'href="/patterns/{number}/cost?length=60+cm' in shown and "pieces=30" in shown
    found = client.get(f"/api/answers?{asked}").json()["kit"]
    assert [line["grams"] / line["packs"] for line in found["lines"]] == [20, 10]


@pytest.mark.parametrize("beside", ["packs=5", "kind=8/0+round"])
def test_typed_packs_go_before_those_of_the_cabinet_and_another_kind_has_none(client, number, beside):
    asked = f"pattern={number}&length=60+cm&pieces=30&{beside}"
    assert "Packs as the cabinet has them" not in flat(client.get(f"/answers?{asked}").text)
    lines = client.get(f"/api/answers?{asked}").json()["kit"]["lines"]
    assert all(line["packs"] * 5 == (line["grams"] if "packs" in beside else 0) for line in lines)


def test_without_hours_or_a_rate_it_is_said_what_is_missing(client, number):
    assert "Say how many hours a piece takes." in client.get(f"/patterns/{number}/cost").text
    assert "Say what an hour of yours costs" in client.get(f"/patterns/{number}/cost?hours=2").text
    wrong = client.get(f"/patterns/{number}/cost?hours=soon&pieces=none&rate=much").text
    for sentence in ("“soon” is not a number", "“none” is not a whole number", "“much” is not a rate an hour"):
        assert sentence in wrong


def test_prices_of_another_currency_are_shown_and_not_converted(client, library, number):
    beads.save(library, replace(CANDLE, currency="USD"))
    shown = client.get(f"/patterns/{number}/cost?hours=2&rate=15").text
    assert "€0.23 and $0.33" in shown
    assert "Some prices are not in EUR, and nothing is converted." in shown


def test_a_sum_says_which_beads_it_is_without(client, library, number):
    beads.save(library, replace(SEA, price=0, currency="", stock_mg=0))
    cost = flat(client.get(f"/patterns/{number}/cost?hours=2&rate=15").text)
    assert "<dt>Beads, without A</dt><dd>€0.33</dd>" in cost
    shown = flat(client.get("/beads/shopping?pattern=Rope&pieces=9&closure=open").text)
    assert "Together, without 1 bead that has no price" in shown


def test_making_a_piece_takes_its_beads_and_undo_puts_them_back(client, library, number):
    made = client.post(f"/patterns/{number}/made", data={"pieces": "3", "length": "", "closure": "open"})
    assert made.status_code == 303
    assert stock(library) == {"sea": 16_000, "candle": 2_000}
    assert "3 pieces" in client.get(made.headers["location"]).text
    undone = client.post(f"/patterns/{number}/made/1/undo", data={"pieces": "3"})
    assert "pieces=3" in undone.headers["location"]
    assert stock(library) == {"sea": 20_000, "candle": 4_000}
    assert client.post(f"/patterns/{number}/made", data={"pieces": "0"}).status_code == 422
    assert client.post(f"/patterns/{number}/made", data={"length": "5 x"}).status_code == 422


def test_what_is_missing_is_said(client, number):
    shown = flat(client.get(f"/patterns/{number}/cost?pieces=9").text)
    assert "2.0 g</strong>" in shown
    assert "Enough is in stock" not in shown
    assert "Enough is in stock" in client.get(f"/patterns/{number}/cost").text


def test_a_shopping_list_is_a_page_a_table_and_text(client, library, number):
    patterns.create(library, replace(ROPE, title="Other rope"))
    asked = "pattern=Rope&pieces=9&length=&closure=open&pattern=other+rope&pieces=1&length=&closure=open"
    shown = flat(client.get(f"/beads/shopping?{asked}").text)
    assert "1 sort of bead is missing" in shown and "Rope, Other rope" in shown
    rows = list(csv.DictReader(io.StringIO(client.get(f"/beads/shopping.csv?{asked}").text)))
    # 70 candle beads each and 10 % spare: 693 and 77 make 770, 7.334 g; 4 g are there
    assert [(row["name"], row["beads"], row["missing_grams"], row["packs"], row["cost"]) for row in rows] == [
        ("Candle", "770", "3.334", "1", "€4.99"),
        ("Sea", "1540", "0.0", "", ""),
    ]
    assert client.get(f"/beads/shopping.txt?{asked}").text == (
        "To buy:\n- Candle (11/0 round): 3.4 g, 1 pack, €4.99\nTogether €4.99.\n"
    )


def test_packs_that_were_bought_are_put_into_the_stock_and_out_again(client, library, number):
    asked = "pattern=Rope&pieces=9&length=&closure=open"
    assert "I bought these packs" in flat(client.get(f"/beads/shopping?{asked}").text)
    done = client.post("/beads/bought", data={"bead": "candle", "packs": "1", "list": asked})
    assert stock(library) == {"sea": 20_000, "candle": 14_000}
    shown = flat(client.get(done.headers["location"]).text)
    assert "Nothing is missing" in shown and "Take them out of the stock again" in shown
    client.post("/beads/bought", data={"bead": "candle", "packs": "1", "list": asked, "undo": "yes"})
    assert stock(library) == {"sea": 20_000, "candle": 4_000}
    assert client.post("/beads/bought", data={"bead": "sea", "packs": "2"}).headers["location"].startswith("/beads/sea")
    assert stock(library)["sea"] == 60_000


@pytest.mark.parametrize(
    ("sent", "status", "sentence"),
    [
        ({"bead": "sea", "packs": "two"}, 422, "“two” is not a whole number"),
        ({"bead": "none", "packs": "2"}, 404, "There is no such bead"),
        ({"bead": "bare", "packs": "2"}, 409, "It is not known what a pack of Bare holds; say so first."),
        ({"bead": "sea", "packs": "9999999"}, 409, "more of Sea than can be in stock"),
    ],
)
def test_packs_that_cannot_be_counted_change_nothing(client, library, number, sent, status, sentence):
    beads.add(library, Bead("Bare", "#111111", key="bare"))
    before = stock(library)
    refused = client.post("/beads/bought", data=sent)
    assert (refused.status_code, stock(library)) == (status, before)
    assert sentence in refused.text


def test_what_cannot_be_counted_is_named_beside_its_line(client, library, number):
    patterns.create(library, ROPE)
    for asked, sentence in (
        ("pattern=Nowhere", "No pattern is called “Nowhere”."),
        ("pattern=Rope", "Several patterns are called “Rope”; add a number"),
        ("pattern=99", "There is no pattern number 99."),
        ("pattern=1&pieces=many", "“many” is not a whole number"),
        ("pattern=1&length=45+ells", "“ells” is not a unit of length here"),
    ):
        assert sentence in client.get(f"/beads/shopping?{asked}").text
    assert client.get("/beads/shopping.txt?pattern=Nowhere").text == "Nothing is missing.\n"


def test_all_that_is_wrong_with_a_line_is_marked_at_once(client, number):
    shown = flat(client.get("/beads/shopping?pattern=Nowhere&pieces=many&length=45+ells").text)
    for sentence in (
        "No pattern is called “Nowhere”.",
        "“many” is not a whole number",
        "“ells” is not a unit of length",
    ):
        assert sentence in shown
    assert shown.count('aria-invalid="true"') == 3


def test_a_line_shows_the_title_and_the_length_that_was_counted(client, number):
    shown = flat(client.get(f"/beads/shopping?pattern={number}&length=45").text)
    assert f'value="Rope, number {number}"' in shown and "Counted: 45.0 cm, open." in shown


def test_of_a_bead_that_is_not_in_stock_as_much_is_missing_as_is_needed(client, library, number):
    alone = Palette(tuple(replace(entry, bead="") for entry in ROPE.palette))
    patterns.create(library, replace(ROPE, title="Alone", palette=alone))
    shown = flat(client.get("/beads/shopping?pattern=Alone").text)
    needed, missing = re.findall(r"<small>([0-9.]+ g)", shown), re.findall(r"<strong>([0-9.]+ g)", shown)
    assert needed == missing != []


def test_without_prices_beads_are_in_no_total(client, library):
    alone = Palette(tuple(replace(entry, bead="") for entry in ROPE.palette))
    number = patterns.create(library, replace(ROPE, palette=alone)).id
    shown = flat(client.get(f"/patterns/{number}/cost?hours=2&rate=15").text)
    assert "<dt>Beads</dt><dd>prices not known</dd>" in shown and "Together, without beads" in shown
    assert "€0.00" not in shown.partition("Other material")[0]


def test_it_is_told_what_the_stock_makes(client, library, number):
    shown = flat(client.get("/beads/makeable").text)
    # 4 g of candle hold 420 beads: 6 pieces of 70
    for words in ("1 pattern is linked to beads of the cabinet", "6 whole pieces", "Candle"):
        assert words in shown
    alone = Palette((SEA.entry("A"), replace(CANDLE.entry("B"), bead="")))
    patterns.create(library, replace(ROPE, title="Half", palette=alone))
    assert "Not every bead of it is linked to the cabinet." in flat(client.get("/beads/makeable").text)
    assert client.get("/beads/makeable?length=5+x").status_code == 422


def test_without_a_pattern_that_is_linked_to_the_cabinet_the_way_there_is_shown(client):
    assert "No pattern is linked to the cabinet yet" in client.get("/beads/makeable").text


@pytest.mark.parametrize("number", ["0", "-1", str(2**63), "9" * 5000])
def test_numbers_that_nothing_can_have_find_nothing(client, number):
    assert client.get(f"/beads/makeable?page={number}").status_code == 200
    if len(number) < 100:  # longer ones are no numbers to whoever reads the address
        assert client.get(f"/earnings.csv?pattern={number}").text.count("\n") == 1


EARNED = {"pattern": "Rope", "edition": "1", "date": "2026-03-01", "copies": "3", "price": "9,50", "currency": "EUR"}


def test_earnings_are_noted_by_edition_and_summed_by_month(client, number):
    assert client.post("/earnings", data=EARNED).headers["location"] == f"/earnings?said=earned&pattern={number}"
    client.post("/earnings", data={**EARNED, "date": "2026-03-09", "copies": "", "price": "", "fee": "40"})
    shown = flat(client.get("/earnings").text)
    for words in ("March 2026", "€28.50", "€40.00", "€68.50 in all", "edition 1 · 3 copies at €9.50"):
        assert words in shown
    rows = list(csv.DictReader(io.StringIO(client.get(f"/earnings.csv?pattern={number}").text)))
    assert [(row["date"], row["copies"], row["fee"], row["total"]) for row in rows] == [
        ("2026-03-09", "0", "40.00", "40.00"),
        ("2026-03-01", "3", "", "28.50"),
    ]


def test_a_note_that_was_removed_stands_in_the_form(client, number):
    client.post("/earnings", data=EARNED)
    gone = client.post("/earnings/1/remove")
    shown = client.get(gone.headers["location"]).text
    assert 'value="Rope, number 1"' in shown and 'value="9.50"' in shown
    assert "Nothing is noted yet." in shown
    assert client.post("/earnings/1/remove").status_code == 404


@pytest.mark.parametrize(
    ("wrong", "sentence"),
    [
        ({"pattern": "Nowhere"}, "No pattern is called “Nowhere”."),
        ({"copies": ""}, "Say how many copies were sold, or a fee."),
        ({"price": "cheap"}, "“cheap” is not a price"),
        ({"date": "soon"}, "Say the day as year, month and day"),
        ({"currency": "Taler"}, "Choose a currency from the list."),
    ],
)
def test_what_was_not_earned_so_stays_in_the_form_with_its_sentence(client, number, wrong, sentence):
    refused = client.post("/earnings", data={**EARNED, **wrong})
    assert refused.status_code == 422
    assert sentence in refused.text
