"""The printed booklet: valid, with our fonts, from our folder alone, the same bytes every time, its lists as counted."""

from __future__ import annotations

import logging
import os
import pickle
import subprocess
import sys
from ctypes import byref, c_float
from dataclasses import replace
from xml.etree import ElementTree

import page as validation
import pypdfium2
import pypdfium2.raw as pdfium
import pytest
from pypdf.generic import IndirectObject

from engine.booklet.compose import compose
from engine.booklet.own import OwnWords
from engine.booklet.papers import PAPERS
from engine.booklet.proof.proof import proof
from engine.counting.answers import answer
from engine.counting.questions import Question
from engine.pattern.palette import Entry, Palette
from engine.pattern.pattern import left_handed
from engine.units import count
from tests.booklets import (
    IMPRINT,
    Choices,
    clasp,
    palette,
    parted,
    print_of,
    read_lists,
    reader,
    scattered,
    text_of,
    texts_of,
)
from webapp.paths import ROOT
from webapp.printing.html import held, page
from webapp.printing.orders import COUNTING, STEPS, Order, PrintError, Workshop, printed
from webapp.printing.pdf import Local, NotSet, write_pdf
from webapp.printing.proofread import read_back

WALL, SMALL = scattered(12, 240), scattered(6, 60)
OWN = OwnWords(
    (
        ("introduction", "Worked by the *sea* in two evenings.\n\n- small\n- large"),
        ("need", "Matte beads look best."),
        ("lists", "Count <b>twice</b> & tick."),
        ("tips", "1. Wax the thread.\n2. Work by daylight."),
        ("own", "I live by a harbour."),
    )
)
LONG = replace(scattered(20, 900), title="A harbour wall that goes on and on, " * 3, notes="Waves. " * 900)
MANY = scattered(
    30,
    600,
    palette=Palette(
        tuple(
            Entry(a + b, f"Shade {a}{b}", f"#{40 * i:02x}{30 * j:02x}60")
            for i, a in enumerate("ABCDEF")
            for j, b in enumerate("ABCDEFGH")
        )
    ),
)
# Editions, papers, hands, closures, terms, units, own words and saved ink in pairs, and what is hard to set.
PRINTS = {
    "clasp": (WALL, clasp(380.0, imprint=IMPRINT, date="2026-11-23", revision=3)),
    "Letter, 48 colours": (MANY, Choices(paper="Letter")),
    "ring, left hand, UK": (left_handed(scattered(8, 320)), Choices(Question(200, "ring"), 1.5, terms="uk")),
    "ink-saving, glued, inches": (
        scattered(6, 60),
        Choices(Question(400, "glued"), units="in", ink_saving=True, own=OWN),
    ),
    "start and end": (scattered(12, 400, start=bytes(40), end=bytes(40)), Choices(Question(300))),
    "parts": (parted(), Choices(Question(450.0, "clasp"))),
    "long words": (LONG, Choices(plan="whole")),
    "one bead": (scattered(3, 1, 1), Choices()),
    "60 around": (scattered(60, 1200), Choices()),
    "A5, 40 around, own words": (
        left_handed(scattered(40, 800)),
        Choices(paper="A5", plan="whole", imprint=IMPRINT, own=OWN),
    ),
    "large print, Letter, 60 around, own words": (
        scattered(60, 600),
        Choices(format="large-print", paper="Letter", terms="uk", imprint=IMPRINT, own=OWN),
    ),
}
DRAWN = (
    "clasp",
    "ring, left hand, UK",
    "ink-saving, glued, inches",
    "A5, 40 around, own words",
)  # with guides in drawings


@pytest.mark.parametrize("name", PRINTS)
def test_the_booklet_is_accessible_and_has_no_empty_page(name: str) -> None:
    made = print_of(*PRINTS[name])
    report = validation.validate_pdf_bytes(made.pdf, profile="ua1")
    assert report.is_compliant, sorted({f"{failure.rule_id}: {failure.message}" for failure in report.failures})
    pages = texts_of(made.pdf)
    assert len(pages) == made.pages
    assert [number for number, text in enumerate(pages, 1) if len(text.split()) < 8] == []


@pytest.mark.parametrize("name", PRINTS)
def test_the_text_stands_in_the_file_in_the_order_in_which_it_is_read(name: str) -> None:
    made, said = print_of(*PRINTS[name]), compose(*PRINTS[name])
    text = " ".join("\n".join(texts_of(made.pdf)[2:]).split())
    inside = {
        "need": [said.needs.note],
        "sample": ["Your own measure"],
        "sizes": [said.sizes.intro],
        "finish": [said.finishing_title],
    }
    for key, parts in (("work", said.working), ("finish", said.finishing)):
        inside[key] = inside.get(key, []) + [
            line
            for part in parts
            for line in (
                part.title,
                *(
                    f"{mark} {step.text}"
                    for mark, step in zip("abcd" if part.strip else range(1, 99), part.steps, strict=False)
                ),
            )
        ]
    at = 0
    for line in (line for key, title in said.chapters for line in (title, *inside.get(key, []))):
        here = text.find(" ".join(line.split()[:6]), at)
        assert here >= 0, f"{line!r} does not stand behind {text[max(0, at - 40) : at]!r}"
        at = here


@pytest.mark.parametrize("name", PRINTS)
def test_the_printed_lists_are_those_of_the_engine(name: str) -> None:
    pattern, choices = PRINTS[name]
    stringing = answer(pattern, choices.question, None, choices.plan).stringing
    assert read_lists(text_of(print_of(pattern, choices).pdf)) == [
        repeated.thread.runs for repeated in stringing.distinct
    ]


@pytest.mark.parametrize("name", PRINTS)
def test_the_proof_finds_nothing_that_would_mislead_a_buyer(name: str) -> None:
    pattern, choices = PRINTS[name]
    found = proof(pattern, choices, Workshop(), read_back(print_of(pattern, choices).pdf))
    assert [remark for remark in found.remarks if remark.blocks] == []
    drawn = sum(map(len, {part.beads for part in pattern.parts}))
    assert found.beads >= drawn * (choices.format == "standard")
    assert found.entries


def items(node, found: list) -> list:
    """Every list item of the structure tree with a picture in it."""
    node = node.get_object() if isinstance(node, IndirectObject) else node
    if isinstance(node, list):
        for kid in node:
            items(kid, found)
    elif isinstance(node, dict):
        if node.get("/S") == "/LI" and figures(node):
            found.append(node)
        items(node.get("/K", []), found)
    return found


def figures(node) -> list:
    node = node.get_object() if isinstance(node, IndirectObject) else node
    if isinstance(node, list):
        return [figure for kid in node for figure in figures(kid)]
    if not isinstance(node, dict):
        return []
    return [node] if node.get("/S") == "/Figure" else figures(node.get("/K", []))


def pages_of(node) -> set[int]:
    """The pages on which a part of the structure tree is printed."""
    node = node.get_object() if isinstance(node, IndirectObject) else node
    if isinstance(node, list):
        return {number for kid in node for number in pages_of(kid)}
    if not isinstance(node, dict):
        return set()
    own = {node.raw_get("/Pg").idnum} if "/Pg" in node else set()
    return own | pages_of(node.get("/K", []))


@pytest.mark.parametrize("name", DRAWN)
def test_no_drawing_is_parted_from_its_step_by_the_end_of_a_page(name: str) -> None:
    made, said = print_of(*PRINTS[name]), compose(*PRINTS[name])
    parts = said.working + said.finishing
    shown = [held(step.shows) for part in parts for step in part.steps if step.drawing]
    found = items(reader(made.pdf).trailer["/Root"]["/StructTreeRoot"]["/K"], [])
    assert [figure["/Alt"] for item in found for figure in figures(item)] == shown
    assert [len(pages_of(item)) for item in found] == [1] * len(shown)


def test_the_makers_own_words_are_printed_as_they_were_written() -> None:
    for name in (name for name, (_, choices) in PRINTS.items() if choices.own == OWN):
        text = " ".join(text_of(print_of(*PRINTS[name]).pdf).split())
        for words in (
            "Worked by the sea in two evenings.",
            "Count <b>twice</b> & tick.",
            "Wax the thread.",
            "I live by a harbour.",
        ):
            assert words in text, (name, words)


def test_nothing_in_large_print_is_set_smaller_than_24_points() -> None:
    document = pypdfium2.PdfDocument(print_of(*PRINTS["large print, Letter, 60 around, own words"]).pdf)
    sizes = set()
    for number in range(len(document)):
        page = document[number]
        for place in range(pdfium.FPDFPage_CountObjects(page.raw)):
            thing, size, matrix = pdfium.FPDFPage_GetObject(page.raw, place), c_float(), pdfium.FS_MATRIX()
            if pdfium.FPDFPageObj_GetType(thing) == pdfium.FPDF_PAGEOBJ_TEXT:
                pdfium.FPDFTextObj_GetFontSize(thing, byref(size))
                pdfium.FPDFPageObj_GetMatrix(thing, matrix)
                sizes.add(round(size.value * abs(matrix.d), 1))
    assert min(sizes) >= 24.0, sorted(sizes)


@pytest.mark.parametrize("name", PRINTS)
def test_the_total_of_beads_is_the_same_wherever_it_is_printed(name: str) -> None:
    pattern, choices = PRINTS[name]
    beads = count(answer(pattern, choices.question, None, choices.plan).size.beads)
    text = text_of(print_of(pattern, choices).pdf)
    flowing = " ".join(text.split())
    assert f"Beads in all {beads}" in flowing.replace("all:", "all")
    assert f"All beads {beads}" in flowing
    assert f"about {beads} bead" in " ".join(text.split())


def test_only_our_own_fonts_are_in_the_file() -> None:
    names = {
        font["/BaseFont"].split("+")[-1]
        for page in reader(print_of(*PRINTS["clasp"]).pdf).pages
        for font in (page["/Resources"].get("/Font") or {}).values()
        for font in (font.get_object(),)
    }
    assert names and all(name.lstrip("/").startswith("Ropewright") for name in names), names


def test_title_author_and_language_are_told_to_the_reader() -> None:
    read = reader(print_of(*PRINTS["clasp"]).pdf)
    assert (read.metadata.title, read.metadata.author) == ("Harbour wall, a bead crochet rope", "Lantern Street Beads")
    assert read.trailer["/Root"]["/Lang"] == "en"


@pytest.mark.parametrize(("name", "paper"), [("clasp", "A4"), ("Letter, 48 colours", "Letter")])
def test_every_page_has_the_size_of_its_paper(name: str, paper: str) -> None:
    sizes = {
        tuple(round(float(side)) for side in page.mediabox[2:]) for page in reader(print_of(*PRINTS[name]).pdf).pages
    }
    assert paper in PAPERS and sizes == {{"A4": (595, 842), "Letter": (612, 792)}[paper]}


def test_contents_name_the_page_on_which_each_chapter_begins() -> None:
    pages = texts_of(print_of(*PRINTS["clasp"]).pdf)
    lines = [line.strip() for line in pages[1].split("\n")]
    for title in ("What you need", "Chart", "Stringing lists", "Working guide", "Sizes", "License and contact"):
        number = next(int(line.removeprefix(title)) for line in lines if line.startswith(title) and line[-1].isdigit())
        assert title in pages[number - 1].split("\n"), title


def test_every_safety_line_is_printed() -> None:
    always = ("Not for children under three", "Cover your eyes", "Broken glass flies", "Nickel and lead.")
    for name, lines in (
        ("one bead", always),
        ("clasp", (*always, "Cut wire flies")),
        ("ink-saving, glued, inches", (*always, "work with fresh air")),
    ):
        text = " ".join(text_of(print_of(*PRINTS[name]).pdf).split())
        assert [line for line in lines if line.lower() not in text.lower()] == []
    assert "glue" not in " ".join(text_of(print_of(*PRINTS["clasp"]).pdf).split()).lower()


def test_uk_terms_are_used_throughout() -> None:
    text = text_of(print_of(*PRINTS["large print, Letter, 60 around, own words"]).pdf)
    assert "single crochet" not in text and "double crochet" in text


def test_steps_are_told_in_their_order() -> None:
    told: list[str] = []
    printed(Order(SMALL, Choices(), Workshop()), told.append)
    assert tuple(told) == STEPS


def test_the_same_order_gives_the_same_bytes_in_any_other_process() -> None:
    pattern, choices = PRINTS["start and end"]
    script = (
        "import pickle, sys; from webapp.printing.orders import printed; "
        "sys.stdout.buffer.write(printed(pickle.load(sys.stdin.buffer)).pdf)"
    )
    there = subprocess.run(
        (sys.executable, "-c", script),
        cwd=ROOT,
        env={**os.environ, "PYTHONHASHSEED": "7"},
        check=True,
        input=pickle.dumps(Order(pattern, choices, Workshop())),
        stdout=subprocess.PIPE,
    ).stdout
    assert there == printed(Order(pattern, choices, Workshop())).pdf


def test_nothing_is_logged_while_a_booklet_prints(caplog: pytest.LogCaptureFixture) -> None:
    with caplog.at_level(logging.WARNING):
        printed(Order(SMALL, clasp(), Workshop()))
    assert caplog.messages == []


@pytest.mark.parametrize(
    "html",
    [
        '<img src="booklet:nowhere" alt="">',
        '<link rel="stylesheet" href="http://127.0.0.1:9/x.css">',
        '<img src="file:///etc/hostname" alt="x">',
        '<img src="../../README.md" alt="x">',
        '<img src="data:image/png;base64,AAAA" alt="x">',
        '<link rel="stylesheet" href="//files.example/x.css">',
    ],
)
def test_nothing_is_fetched_from_outside_the_booklets_folder(html: str) -> None:
    with pytest.raises(NotSet) as refused:
        write_pdf(f"<html lang=en><title>x</title>{html}<p>Text</html>", {})
    assert refused.value.message.startswith("The booklet could not be set: ")


def test_what_is_handed_in_is_given_and_a_file_of_the_folder_too() -> None:
    local = Local({"booklet:one": b"one"})
    assert local.fetch("booklet:one").read() == b"one"
    folder = (ROOT / "templates" / "booklet" / "letter.css").as_uri()
    assert b"Letter" in local.fetch(folder).read()


def test_a_picture_that_cannot_be_read_is_a_fault_and_not_a_gap() -> None:
    with pytest.raises(NotSet):
        write_pdf(
            '<html lang=en><title>x</title><img src="booklet:one" alt="x"></html>', {"booklet:one": b"no picture"}
        )


def test_letters_that_no_font_has_become_question_marks() -> None:
    odd = replace(
        SMALL, title="Harbour \U0010fffd wall", palette=Palette((*palette(3), Entry("D", "\ue123 gold", "#dfa63a")))
    )
    text = text_of(printed(Order(odd, Choices(), Workshop())).pdf)
    assert "Harbour ? wall" in text and "? gold" in text


def test_a_size_that_cannot_be_worked_is_refused_in_one_sentence() -> None:
    told: list[str] = []
    with pytest.raises(Exception, match="less than one round") as refused:
        printed(Order(WALL, clasp(26.0), Workshop()), told.append)
    assert told == [COUNTING] and not isinstance(refused.value, PrintError)


def test_every_booklet_is_xml_and_html_that_is_none_is_set_as_well() -> None:
    for pattern, choices in PRINTS.values():
        text, _ = page(compose(pattern, choices, Workshop()), {})
        ElementTree.fromstring(text)
    plain = write_pdf('<html lang="en"><head><title>A</title></head><body><p>Before<br>after</p></body></html>', {})
    assert "Before\nafter" in text_of(plain.pdf)


def test_a_style_sheet_is_read_once_and_the_next_page_is_the_same_bytes() -> None:
    html = (
        '<html lang="en"><head><title>Beads</title><link rel="stylesheet" href="booklet.css"/></head>'
        "<body><h2>Beads</h2></body></html>"
    )
    assert write_pdf(html, {}).pdf == write_pdf(html, {}).pdf


def test_the_short_form_and_the_same_in_parts_are_printed_alike() -> None:
    pattern, choices = PRINTS["start and end"]
    long = replace(pattern, chart=b"", start=b"", end=b"", in_parts=pattern.parts)
    assert print_of(long, choices).pdf == print_of(pattern, choices).pdf
