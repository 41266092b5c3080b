"""Lists and tables brought along: shown as they are understood, then made."""

from __future__ import annotations

from io import BytesIO

import pytest
from pypdf import PdfReader, PdfWriter

from engine.booklet.choices import Choices
from engine.pattern.notation import parse
from engine.pattern.starts.colour_names import guessed
from tests.booklets import print_of, scattered
from tests.web.test_old_chart_pages import a_pdf
from webapp.pages.addresses import address
from webapp.storage import finding, patterns


@pytest.mark.parametrize(
    ("written", "text", "chart"),
    [
        ("strung", "3 A 2 B", [1, 1, 0, 0, 0]),
        ("worked", "3 A 2 B", [0, 0, 0, 1, 1]),
        ("table", "A B A\nB B B", [1, 1, 1, 0, 1, 0]),
        ("table-down", "A B A\nB B B", [0, 1, 0, 1, 1, 1]),
    ],
)
def test_what_is_brought_becomes_a_pattern_in_the_order_that_is_said(client, app, written, text, chart):
    looked = client.post(address("bring"), data={"written": written, "text": text, "around": "3"})
    assert f"{len(chart)} beads, 3 around." in looked.text
    made = client.post(address("bring"), data={"written": written, "text": text, "around": "3", "do": "make"})
    assert made.headers["location"] == address("chart", id=1)
    assert patterns.load(app.state.services.database, 1).pattern.chart == bytes(chart)


def test_names_become_colours_where_they_are_known(client, app):
    client.post(address("bring"), data={"text": "3 dark blue, 2 Stormy", "do": "make"})
    palette = patterns.load(app.state.services.database, 1).pattern.palette
    assert [(entry.code, entry.name) for entry in palette] == [("A", "dark blue"), ("B", "Stormy")]
    assert palette[0].colour == guessed("dark blue") == "#1c3963"


def test_what_is_not_understood_is_said_and_nothing_is_made(client, app):
    sent = client.post(address("bring"), data={"text": "3A\n4", "do": "make"})
    assert sent.status_code == 422
    assert "Line 2, column 1: the count 4 has no bead behind it." in sent.text
    assert client.post(address("bring"), data={"do": "make"}).status_code == 422
    assert client.post(address("bring"), data={"text": "3A", "around": "99", "do": "make"}).status_code == 422
    assert finding.counts(app.state.services.database) == (0, 0)


ROPE = scattered(9, 120)


def booklet() -> bytes:
    return print_of(ROPE, Choices()).pdf


def locked() -> bytes:
    writer, out = PdfWriter(PdfReader(BytesIO(booklet()))), BytesIO()
    writer.encrypt("secret", algorithm="RC4-128")
    writer.write(out)
    return out.getvalue()


def taken(client, data: bytes, name: str = "list.pdf", **fields: str):
    return client.post(address("bring"), files={"file": (name, data)}, data=fields)


def test_the_list_of_a_booklet_is_taken_from_its_pdf(client):
    looked = taken(client, booklet(), around="9")
    assert looked.status_code == 200
    assert "120 beads, 9 around." in looked.text
    assert "End of list" not in looked.text
    made = client.post("/api/starts/list?around=9", content=booklet()).json()
    codes = [bead["code"] for bead in made["palette"]]
    assert [codes[bead] for bead in parse(made["beads"], codes)] == [ROPE.palette.codes[bead] for bead in ROPE.chart]


@pytest.mark.parametrize(
    "data", ["3 A\r\n2 weiß".encode(), "3 A\n2 weiß".encode("utf-16"), "3 A\n2 weiß".encode("latin-1")]
)
def test_a_text_file_is_taken_and_can_be_put_right_on_the_page(client, data):
    looked = taken(client, data, "list.txt", around="5")
    assert "5 beads, 5 around." in looked.text
    assert "3 A\n2 weiß</textarea>" in looked.text.replace("\r\n", "\n")


def test_what_a_file_holds_beside_a_list_is_told_with_its_place(client):
    looked = taken(client, b"My rope\n3 A\n2 B\n7", "list.txt")
    assert "Line 4, column 1: the count 7 has no bead behind it." in looked.text


@pytest.mark.parametrize(
    ("made", "pages", "sentence"),
    [
        (a_pdf, "", "“list.pdf” has no text there, only pictures; type the list, or read its chart."),
        (locked, "", "“list.pdf” is locked with a password; one without is wanted."),
        (lambda: a_pdf()[:200], "", "“list.pdf” cannot be read as a PDF."),
        (lambda: b"%PDF-" + bytes(20_000_000), "", "“list.pdf” has more than 20 MB, the most that is read."),
        (lambda: bytes(8_000_001), "", "“list.pdf” is too long for a list; at most 2,000,000 letters are read."),
        (lambda: b"GIF89a\0\0", "", "“list.pdf” is neither a PDF nor plain text."),
        (lambda: b" \n", "", "“list.pdf” is empty."),
        (a_pdf, "7", "“list.pdf” has 2 pages, and no page 7."),
        (a_pdf, "5-3", "Pages 5 to 3 cannot be; the first is 1, and the last comes after it."),
        (a_pdf, "all", "“all” are no pages; write 3, or 3-5."),
    ],
    ids=range(10),
)
def test_a_file_that_is_no_list_is_refused_in_a_sentence(client, app, made, pages, sentence):
    refused = taken(client, made(), pages=pages)
    assert refused.status_code == 422
    assert sentence in refused.text
    assert finding.counts(app.state.services.database) == (0, 0)


def test_without_a_file_one_is_asked_for_and_what_was_typed_stays(client):
    answer = client.post(address("bring"), data={"do": "file", "title": "Bay", "text": "3A 2B", "around": "5"})
    assert answer.status_code == 422 and "Choose a file first: a PDF or plain text." in answer.text
    assert 'value="Bay"' in answer.text and "3A 2B</textarea>" in answer.text
