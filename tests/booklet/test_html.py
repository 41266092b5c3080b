"""The booklet's HTML: every picture it names is there, every name is text, every chapter can be found."""

from __future__ import annotations

import re
from dataclasses import replace
from html.parser import HTMLParser

import pytest

from engine.booklet.compose import compose
from engine.pattern.palette import Entry, Palette
from tests.booklets import IMPRINT, Choices, clasp, measured, scattered
from webapp.printing.html import SCHEME, held, page


class Elements(HTMLParser):
    """Every tag with its attributes, and all text."""

    def __init__(self, text: str) -> None:
        super().__init__()
        self.tags: list[tuple[str, dict[str, str | None]]] = []
        self.text = ""
        self.feed(text)

    def handle_starttag(self, tag, attrs):
        self.tags.append((tag, dict(attrs)))

    def handle_data(self, data):
        self.text += data


def html_of(pattern, choices=None, workshop=None) -> tuple[str, dict]:
    booklet = compose(pattern, choices or Choices(), workshop)
    return page(booklet, {picture.key: b"picture" for picture in booklet.pictures})


@pytest.mark.parametrize(
    ("pattern", "choices", "workshop"),
    [
        (scattered(12, 240), Choices(), None),
        (scattered(12, 900, start=bytes(30)), clasp(), measured(12, "single")),
        (scattered(60, 6000, 6), Choices(paper="Letter"), None),
    ],
)
def test_every_picture_that_is_named_is_there(pattern, choices, workshop) -> None:
    text, images = html_of(pattern, choices, workshop)
    named = {f"{SCHEME}{name}" for name in re.findall(rf"{SCHEME}([\w-]+)", text)}
    assert named <= set(images)
    assert {key for key in images if key.startswith((f"{SCHEME}sheet", f"{SCHEME}list"))} <= named


def test_no_line_ends_between_a_number_and_its_unit() -> None:
    assert (
        held("45.0 cm of rope, 0.8 mm or 8.2 g; ±10 % of 4 in")
        == "45.0\xa0cm of rope, 0.8\xa0mm or 8.2\xa0g; ±10\xa0% of 4\xa0in"
    )
    assert held("1 M, 12 months, 3 inside") == "1 M, 12 months, 3 inside"
    text, _ = html_of(scattered(12, 900), clasp(), measured(12, "single"))
    assert re.findall(r"\d (?:mm|cm|m|g|%)(?![a-z])", Elements(text).text) == []


def test_every_picture_says_what_it_shows() -> None:
    text, _ = html_of(scattered(12, 900), clasp(), measured(12, "single"))
    images = [attributes for tag, attributes in Elements(text).tags if tag == "img"]
    assert images and all(attributes["alt"] for attributes in images)


def test_names_titles_and_notes_are_text_and_nothing_else() -> None:
    nasty = '<script src="http://evil.example/x.js"></script><img src=x onerror=alert(1)> & "quoted" \'so\''
    entries = (Entry("A", nasty[:100], "#102030", maker_code="</b><i>"), Entry("B", "{{ 7 * 7 }}", "#f0f0f0"))
    pattern = replace(scattered(12, 240, 2), title=nasty[:100], palette=Palette(entries), notes=nasty)
    imprint = type(IMPRINT)(nasty, nasty, nasty)
    text, _ = html_of(pattern, Choices(imprint=imprint))
    read = Elements(text)
    assert {tag for tag, _ in read.tags} & {"script", "i"} == set()
    assert all("onerror" not in attributes for _, attributes in read.tags)
    assert "{{ 7 * 7 }}" in read.text and nasty in read.text
    sources = [value for _, attributes in read.tags for name, value in attributes.items() if name in ("src", "href")]
    assert all(value.startswith((SCHEME, "#", "booklet.css", "guide.css")) for value in sources)


def test_every_chapter_of_the_contents_can_be_found() -> None:
    text, _ = html_of(scattered(12, 240), clasp())
    read = Elements(text)
    links = [attributes["href"] for tag, attributes in read.tags if tag == "a"]
    identities = [attributes["id"] for _, attributes in read.tags if "id" in attributes]
    assert len(links) >= 11 and {link.removeprefix("#") for link in links} <= set(identities)
    assert len(identities) == len(set(identities))


def test_letter_paper_has_a_stylesheet_of_its_own() -> None:
    assert "letter.css" not in html_of(scattered(12, 240))[0]
    assert "letter.css" in html_of(scattered(12, 240), Choices(paper="Letter"))[0]


def test_a_list_is_text_in_reading_order() -> None:
    pattern = scattered(12, 240)
    text, _ = html_of(pattern)
    (listed,) = compose(pattern, Choices()).lists
    blocks = re.findall(r'<p class="runs"[^>]*>([^<]*)</p>', text)
    assert blocks == [block.text for part in listed.pages for column in part.columns for block in column.blocks]


@pytest.mark.parametrize(("title", "running"), [("Harbour wall", "Harbour wall"), ("A rope", "")])
def test_list_pages_have_no_running_title_that_reads_as_an_entry(title: str, running: str) -> None:
    text, _ = html_of(replace(scattered(12, 240), title=title))
    lists = next(attributes for _, attributes in Elements(text).tags if attributes.get("id") == "lists")
    assert lists["data-running"] == running


def test_a_booklet_without_maker_contact_and_licence_leaves_no_empty_lines() -> None:
    text, _ = html_of(scattered(12, 240))
    assert "<h3>Contact</h3>" not in text and "<h3>Licence</h3>" not in text and 'class="maker"' not in text
    assert re.findall(r"<(p|li|h\d)[^>]*>\s*</\1>", text) == []
