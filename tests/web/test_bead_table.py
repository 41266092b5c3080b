"""The cabinet as a table: out harmless, in again the same, and bad rows named by number and column."""

import csv
import io

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from engine.cabinet.bead import Bead
from engine.counting.kinds import KINDS
from engine.errors import EngineError
from engine.pattern.palette import FINISHES
from webapp.exchange.bead_table import COLUMNS, LARGEST_BYTES, read_beads, write_beads
from webapp.exchange.table import RUN

DUSK = Bead(
    name="Dusk",
    colour="#4a4466",
    finish="matte",
    maker_code="LS-12",
    supplier="Pier Nine",
    pack_mg=20_000,
    price=350,
    currency="EUR",
    stock_mg=1_012_500,
    note="Left, of the lamp order.",
    key="dusk",
)
WORDS = st.text(
    st.one_of(st.sampled_from("=+-@,;\"' ax"), st.characters(exclude_categories=["C", "Z"])), min_size=1
).map(lambda text: text[:20])
BEADS = st.builds(
    Bead,
    name=WORDS.filter(str.strip).map(str.strip),
    colour=st.integers(0, 0xFFFFFF).map(lambda number: f"#{number:06x}"),
    kind=st.sampled_from(list(KINDS)),
    finish=st.sampled_from(FINISHES),
    maker_code=WORDS.map(str.strip),
    supplier=WORDS.map(str.strip),
    pack_mg=st.integers(0, 10**8),
    price=st.integers(1, 10**8),
    currency=st.sampled_from(("EUR", "JPY", "KWD")),
    stock_mg=st.integers(0, 10**8),
    key=st.text("abc012", max_size=8),
)


def read(text, currency="EUR"):
    return read_beads(text, KINDS, currency)


def beads(text):
    return [row.bead for row in read(text).rows]


def wrong(text):
    return [(row.number, row.column, row.sentence) for row in read(text).wrong]


def test_a_bead_stands_in_one_row():
    assert write_beads([DUSK]) == (
        "kind,name,colour,finish,maker_code,supplier,pack_grams,price,currency,stock_grams,note,key\r\n"
        '11/0 round,Dusk,#4a4466,matte,LS-12,Pier Nine,20,3.50,EUR,1012.5,"Left, of the lamp order.",dusk\r\n'
    )


@given(st.lists(BEADS, max_size=4))
@example([Bead("=1+1", "#000000", maker_code="@x", supplier="-y", note="+z")])
@example([Bead("'=1+1", "#000000", maker_code="''@x", supplier="'y")])
def test_what_is_written_is_read_again_and_no_cell_is_run(given_beads):
    text = write_beads(given_beads)
    assert beads(text) == given_beads
    assert wrong(text) == []
    cells = [cell for row in csv.reader(io.StringIO(text, newline="")) for cell in row]
    assert not any(cell.startswith(RUN) for cell in cells)


@pytest.mark.parametrize("separator", [",", ";", "\t"])
def test_cells_are_parted_by_what_parts_the_names_of_the_columns(separator):
    text = separator.join(("Name", "Colour", "Stock grams")) + "\n" + separator.join(("Dusk", "#4A4466", '"12,5"'))
    assert beads(text) == [Bead("Dusk", "#4a4466", stock_mg=12_500)]


def test_only_name_and_colour_are_needed_and_unknown_columns_are_named():
    table = read("name,colour,shelf\nDusk,#4a4466,3\n")
    assert [row.bead for row in table.rows] == [Bead("Dusk", "#4a4466")]
    assert (table.rows[0].said, table.unknown) == ({"name", "colour"}, ("shelf",))


def test_a_price_without_a_currency_is_in_the_makers_own():
    (row,) = read("name,colour,price\nDusk,#4a4466,350\n", "JPY").rows
    assert (row.bead.price, row.bead.currency) == (350, "JPY")


def test_every_bad_row_is_named_with_its_column_and_the_good_ones_are_read():
    text = (
        "name,colour,kind,finish,pack_grams,price,currency,stock_grams\n"
        "Dusk,#4a4466,11/0 round,matte,20,3.50,EUR,12\n"
        ",#4a4466,,,,,,\n"
        "Dawn,pink,,,,,,\n"
        "Dawn,#f0c0c0,13/0 round,,,,,\n"
        "Dawn,#f0c0c0,,shiny,,,,\n"
        "Dawn,#f0c0c0,,,a lot,,,\n"
        "Dawn,#f0c0c0,,,,3.505,EUR,\n"
        "Dawn,#f0c0c0,,,,3,Taler,\n"
        "Dawn,#f0c0c0,,,,,,-4\n"
        "Dawn,#f0c0c0\n"
        "\n"
        "Lamp,#d9932b,,,,,,\n"
    )
    assert [bead.name for bead in beads(text)] == ["Dusk", "Lamp"]
    assert [(number, column) for number, column, _ in wrong(text)] == [
        (3, "name"),
        (4, "colour"),
        (5, "kind"),
        (6, "finish"),
        (7, "pack_grams"),
        (8, "price"),
        (9, "currency"),
        (10, "stock_grams"),
        (11, "colour"),
    ]
    assert {number: sentence for number, _, sentence in wrong(text)}[11] == (
        "The row has 2 cells where the first row has 8."
    )


def test_a_file_cut_off_within_a_row_keeps_the_rows_before():
    text = 'name,colour,note\nDusk,#4a4466,left\nDawn,#f0c0c0,"and th'
    assert [bead.name for bead in beads(text)] == ["Dusk"]
    ((number, column, sentence),) = wrong(text)
    assert (number, column) == (3, "")
    assert sentence.startswith("The row cannot be read: unexpected end of data")


@pytest.mark.parametrize(
    ("data", "sentence"),
    [
        (b"", "The first row names no column “name”"),
        (b"kind,name\n", "The first row names no column “colour”. The columns are kind, name, colour"),
        (b"name,colour,name\n", "The column “name” stands twice in the table."),
        ("name,colour\nÜber,#000000\n".encode("latin-1"), "The table is not UTF-8 text: byte 13 cannot be read."),
        ("name,colour\n".encode("utf-16"), "The table is not UTF-8 text: byte 1 cannot be read."),
        (b"name,colour\nDusk\0,#000000\n", "The file is not text"),
        (b"\x89PNG\r\n", "The table is not UTF-8 text"),
        (b"x" * (LARGEST_BYTES + 1), "The table is larger than 5 MB"),
        (b"name,colour\n" + b"D,#000000\n" * 20_001, "The table has more than 20,000 rows"),
        (b'"name,colour', "The first row names the columns, and cannot be read."),
    ],
)
def test_a_file_that_is_no_table_is_refused_in_a_sentence(data, sentence):
    with pytest.raises(EngineError) as refused:
        read(data)
    assert refused.value.message.startswith(sentence)


def test_a_file_of_a_spreadsheet_may_begin_with_its_mark():
    assert beads("name,colour\nÜber,#000000\n".encode("utf-8-sig"))[0].name == "Über"


@given(st.binary(max_size=300))
def test_whatever_comes_is_read_or_refused(noise):
    try:
        read(b"name,colour,price\n" + noise)
    except EngineError as error:
        assert error.message


def test_the_columns_are_those_that_are_described():
    assert set(COLUMNS) == set(next(csv.reader(io.StringIO(write_beads([])))))
