"""Tables that Python and spreadsheets read as they were written, and of which no cell is run as a formula."""

import csv
import io
import zipfile
from dataclasses import replace
from datetime import UTC, datetime

from hypothesis import example, given
from hypothesis import strategies as st

from engine.errors import EngineError
from engine.pattern.palette import Entry, Palette
from tests.examples import harbour
from webapp.exchange import pattern_file, zip_writer
from webapp.exchange.chart_text import as_table
from webapp.exchange.portable import PortablePattern, PortableWorkshop
from webapp.exchange.table import RUN, write_table

NOW = datetime(2026, 3, 2, tzinfo=UTC)
WORDS = st.text(st.one_of(st.sampled_from("=+-@\t\r\n,;\"' ax"), st.characters(exclude_categories=["Cs"])), max_size=12)


def read(text: str) -> list[list[str]]:
    return list(csv.reader(io.StringIO(text, newline="")))


def as_shown(text: str) -> str:
    return f"'{text}" if text.startswith(RUN) else text


@given(st.lists(st.lists(WORDS, min_size=2, max_size=4), max_size=5))
@example([["=1+1", '+"a"', "-\n", "@x"], ["\t=1", "\r=1", "\n=1", 'a, "b"\r\nc']])
def test_what_is_written_is_read_back_the_same_and_no_cell_is_run(rows):
    kept = read(write_table(("a", "b"), rows))
    assert kept == [["a", "b"], *([as_shown(cell) for cell in row] for row in rows)]
    assert not any(cell.startswith(RUN) for row in kept for cell in row)


def test_numbers_stay_numbers():
    assert write_table(("beads",), [(-3,), (2.5,)]) == "beads\r\n-3\r\n2.5\r\n"


@given(WORDS)
@example('Sea, "deep"\nglass')
@example("=SUM(A1)")
def test_the_table_of_a_chart_has_the_names_of_the_beads(name):
    try:
        pattern = replace(harbour(), palette=Palette((Entry("A", name, "#102030"),)), chart=bytes(40))
    except EngineError:
        return
    kept = pattern.palette[0].name
    rows = list(csv.DictReader(io.StringIO(as_table(pattern), newline="")))
    assert [(row["bead"], row["code"], row["name"]) for row in rows[:2]] == [
        ("1", "A", as_shown(kept)),
        ("2", "A", as_shown(kept)),
    ]


@given(WORDS, st.lists(WORDS, max_size=3), WORDS)
@example("=1+1", ["-a"], '@b, "c"\n')
def test_the_index_of_a_library_has_its_titles_tags_and_series(title, tags, series):
    try:
        pattern = replace(harbour(), title=title, tags=tuple(tags))
    except EngineError:
        return
    portable = PortablePattern(pattern_file.write_file(pattern), NOW, NOW, series, beads=50)
    packed = b"".join(zip_writer.write([portable], PortableWorkshop(), NOW))
    with zipfile.ZipFile(io.BytesIO(packed)) as opened:
        (row,) = csv.DictReader(io.StringIO(opened.read("index.csv").decode(), newline=""))
    assert tuple(row) == zip_writer.COLUMNS
    assert (row["title"], row["tags"], row["series"]) == tuple(
        map(as_shown, (pattern.title, ", ".join(pattern.tags), series))
    )
