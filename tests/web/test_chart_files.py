"""A chart taken out for other tools: text, table and pictures."""

import csv
import io
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st
from PIL import Image, ImageColor

from engine.drawing.charts import SYMBOL, cells
from engine.errors import ChoiceError
from engine.pattern.lattice import first_of_row
from engine.pattern.notation import parse
from engine.pattern.palette import ink_on
from engine.pattern.part import Part
from tests.pictures import pattern as drawn
from webapp.exchange.chart_text import COLUMNS, LINE, as_table, as_text
from webapp.pictures.chart_image import BEAD_PX, EDGE, MOST_PIXELS, chart_png
from webapp.storage import patterns

ROPE = replace(
    drawn(
        """
     A B A
    A A C C
    """,
        3,
    ),
    start=b"\3",
    end=b"\1\1",
)


@given(st.lists(st.integers(0, 3), min_size=1, max_size=400).map(bytes), st.booleans())
def test_the_text_read_again_gives_the_chart(beads, strung):
    text = as_text(replace(ROPE, chart=beads), strung=strung)
    assert parse(text, ROPE.palette.codes, strung) == beads
    assert max(map(len, text.splitlines())) <= LINE


def test_start_and_end_are_asked_for_by_name():
    assert (as_text(ROPE), as_text(ROPE, "start"), as_text(ROPE, "end")) == ("2A 2C A B A\n", "D\n", "2B\n")
    assert as_text(replace(ROPE, end=b""), "end") == "\n"
    with pytest.raises(ChoiceError, match="expected one of start, chart, end"):
        as_text(ROPE, "middle")


def test_the_table_has_a_line_a_bead_in_working_order():
    assert as_table(ROPE).splitlines() == [
        "part,row,place,round,bead,code,name",
        "start,1,1,1,1,D,Bead D",
        "chart,1,1,1,1,A,Bead A",
        "chart,1,2,1,2,A,Bead A",
        "chart,1,3,1,3,C,Bead C",
        "chart,1,4,2,1,C,Bead C",
        "chart,2,1,2,2,A,Bead A",
        "chart,2,2,2,3,B,Bead B",
        "chart,2,3,3,1,A,Bead A",
        "end,1,1,1,1,B,Bead B",
        "end,1,2,1,2,B,Bead B",
    ]


@given(st.integers(3, 12), st.integers(1, 90))
def test_rows_and_places_of_the_table_are_those_of_the_lattice(around, beads):
    rows = list(
        csv.DictReader(io.StringIO(as_table(replace(ROPE, around=around, start=b"", end=b"", chart=bytes(beads)))))
    )
    assert tuple(rows[0]) == COLUMNS
    assert [first_of_row(around, int(of["row"]) - 1) + int(of["place"]) - 1 for of in rows] == list(range(beads))
    assert [(int(of["round"]) - 1) * around + int(of["bead"]) - 1 for of in rows] == list(range(beads))


def test_a_name_that_a_spreadsheet_would_run_is_set_behind_an_apostrophe():
    entries = tuple(replace(entry, name=f"={entry.name}") for entry in ROPE.palette)
    assert "D,'=Bead D" in as_table(replace(ROPE, palette=replace(ROPE.palette, entries=entries)))


def colours_at(png, upright):
    """The colour in the middle of every bead of the chart, as drawn."""
    image = Image.open(io.BytesIO(png))
    return [
        image.getpixel((round((of.x + EDGE) * BEAD_PX), round((of.y + EDGE) * BEAD_PX)))[:3]
        for of in cells(ROPE, upright=upright)
    ]


@pytest.mark.parametrize("upright", [True, False])
def test_every_bead_of_the_picture_has_its_colour(upright):
    wanted = [tuple(bytes.fromhex(ROPE.palette[bead].colour[1:])) for bead in ROPE.chart]
    assert colours_at(chart_png(ROPE, upright), upright) == wanted


def squares(png):
    """The square in which the symbol of every bead of the lying chart stands, in black where its ink is."""
    image, half = Image.open(io.BytesIO(png)).convert("RGB"), round(SYMBOL * BEAD_PX)
    for of, bead in zip(cells(ROPE, upright=False), ROPE.chart, strict=True):
        x, y, entry = (of.x + EDGE) * BEAD_PX, (of.y + EDGE) * BEAD_PX, ROPE.palette[bead]
        square = image.crop((round(x) - half, round(y) - half, round(x) + half, round(y) + half))
        ink, colour = (ImageColor.getrgb(text) for text in (ink_on(entry.colour), entry.colour))
        yield bead, [near(pixel, ink) < near(pixel, colour) for pixel in square.get_flattened_data()]


def near(one, other):
    return sum(abs(a - b) for a, b in zip(one, other, strict=True))


def test_every_bead_carries_its_symbol_where_that_is_wanted():
    drawn, plain = (list(squares(chart_png(ROPE, symbols=wanted))) for wanted in (True, False))
    assert not any(any(inked) for _, inked in plain)
    shapes = {bead: [inked for other, inked in drawn if other == bead] for bead, _ in drawn}
    assert len(shapes) > 2
    for bead, inked in shapes.items():
        assert all(apart(inked[0], one) < 0.15 for one in inked)
        assert all(apart(inked[0], others[0]) > 0.15 for other, others in shapes.items() if other != bead)


def apart(one, other):
    """In how large a share of their pixels two symbols differ."""
    return sum(a != b for a, b in zip(one, other, strict=True)) / len(one)


def test_a_very_long_chart_is_drawn_smaller():
    image = Image.open(io.BytesIO(chart_png(replace(ROPE, around=20, chart=bytes(30_000)))))
    assert image.width * image.height <= MOST_PIXELS
    assert image.getextrema()[3] == (0, 255)


@pytest.mark.parametrize(
    ("suffix", "kind", "begin"),
    [
        ("txt", "text/plain; charset=utf-8", b"20A"),
        ("csv", "text/csv; charset=utf-8", b"part,row"),
        ("svg", "image/svg+xml", b"<svg"),
        ("png", "image/png", b"\x89PNG"),
    ],
)
def test_each_is_handed_out_as_a_file_of_its_own(client, document, suffix, kind, begin):
    number = client.post("/api/patterns", json={**document, "beads": "20A 5B"}).json()["id"]
    answer = client.get(f"/api/patterns/{number}/chart.{suffix}")
    assert (answer.status_code, answer.headers["content-type"]) == (200, kind)
    assert answer.headers["content-disposition"] == f'attachment; filename="small-harbour-chart.{suffix}"'
    assert answer.content.startswith(begin)
    assert f"/api/patterns/{number}/chart.{suffix}" in client.get(f"/patterns/{number}").text


def test_parts_are_taken_out_by_their_numbers(client, database):
    parts = (Part("Rope", b"\0\0\1", None), Part("Star", b"\2\2"), Part("Rope", b"\0\0\1", None))
    number = patterns.create(database, replace(ROPE.alone(b"\0"), chart=b"", in_parts=parts)).id

    def taken(kind, **asked):
        return client.get(f"/api/patterns/{number}/chart.{kind}", params=asked)

    assert [taken("txt", part=part).text for part in ("1", "2", "chart")] == ["2A B\n", "2C\n", "2A B\n"]
    assert [line.split(",")[0] for line in taken("csv").text.splitlines()[3:6]] == ["1 Rope", "2 Star", "2 Star"]
    assert taken("svg", part="2").status_code == taken("png", part="2").status_code == 200
    refused = taken("svg", part="4")
    assert refused.status_code == 422 and "expected one of chart, 1, 2, 3" in refused.text
    assert "3. Rope" in client.get(f"/patterns/{number}").text
