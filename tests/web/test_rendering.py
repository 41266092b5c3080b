"""Page values to text: escaped, complete, and within the content security policy."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import replace
from functools import cache
from html.parser import HTMLParser
from itertools import pairwise
from pathlib import Path

import pytest
from jinja2 import UndefinedError

from tests.web.sample_pages import HOSTILE, SETTINGS, STORED, hostile, pages, parts
from webapp.pages.rendering import environment, held_together, render
from webapp.pages.static import static
from webapp.pages.views import all as views
from webapp.paths import STATIC, TEMPLATES

PAGES, PARTS = pages(), parts()
EVERYTHING = {**PAGES, **PARTS}
every_page = pytest.mark.parametrize("name", PAGES)
everything = pytest.mark.parametrize("name", EVERYTHING)

VOID = {"area", "base", "br", "col", "hr", "img", "input", "link", "meta", "path", "rect", "circle", "ellipse", "use"}


class Outline(HTMLParser):
    """What a page is made of: its elements with attributes in order, and whether every one is closed."""

    def __init__(self, text: str) -> None:
        super().__init__()
        self.elements: list[tuple[str, dict[str, str | None]]] = []
        self.open: list[str] = []
        self.unlabelled: list[dict[str, str | None]] = []
        self.feed(text)
        self.close()

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.elements.append((tag, dict(attrs)))
        if tag in ("input", "select", "textarea") and "label" not in self.open:
            self.unlabelled.append(dict(attrs))
        if tag not in VOID:
            self.open.append(tag)

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.elements.append((tag, dict(attrs)))

    def handle_endtag(self, tag: str) -> None:
        assert self.open and self.open[-1] == tag, f"</{tag}> closes {self.open[-3:]}"
        self.open.pop()

    def all(self, *tags: str) -> list[dict[str, str | None]]:
        return [attributes for tag, attributes in self.elements if tag in tags]

    def values(self, attribute: str) -> list[str]:
        return [value for _, attributes in self.elements if (value := attributes.get(attribute)) is not None]


@cache
def outline(name: str) -> Outline:
    return Outline(render(*EVERYTHING[name]))


@cache
def hostile_pages() -> Mapping[str, tuple[str, object]]:
    """Every page and part of a pattern whose words would be markup."""
    return {**pages(hostile(STORED)), **parts(hostile(STORED))}


@everything
def test_every_element_is_closed_where_it_was_opened(name: str) -> None:
    assert outline(name).open == []


@everything
def test_no_script_and_no_style_stands_in_a_page(name: str) -> None:
    page = outline(name)
    assert not [
        attribute
        for _, attributes in page.elements
        for attribute in attributes
        if attribute == "style" or attribute.startswith("on")
    ]
    assert page.all("style") == []
    assert all("src" in script for script in page.all("script"))


@everything
def test_no_two_elements_share_an_id(name: str) -> None:
    ids = outline(name).values("id")
    assert sorted(ids) == sorted(set(ids))


@everything
def test_every_field_has_its_label(name: str) -> None:
    page = outline(name)
    labelled = {label.get("for") for label in page.all("label")}
    assert [
        field for field in page.unlabelled if field.get("type") != "hidden" and field.get("id") not in labelled
    ] == []


@everything
def test_what_describes_and_labels_is_there(name: str) -> None:
    page = outline(name)
    named = {
        part
        for attribute in ("aria-describedby", "aria-labelledby", "for", "form")
        for value in page.values(attribute)
        for part in value.split()
    }
    assert named <= set(page.values("id"))


@every_page
def test_headings_begin_with_one_of_the_first_rank_and_leave_none_out(name: str) -> None:
    ranks = [int(tag[1]) for tag, _ in outline(name).elements if re.fullmatch("h[1-6]", tag)]
    assert ranks[0] == 1 and ranks.count(1) == 1
    assert all(later <= earlier + 1 for earlier, later in pairwise(ranks))


@every_page
def test_files_that_a_page_names_are_there(name: str) -> None:
    page = outline(name)
    place = static("")
    linked = [
        value.removeprefix(place)
        for value in (*page.values("href"), *page.values("src"))
        if value.startswith("/static/")
    ]
    assert linked and all((STATIC / file).is_file() for file in linked)


@every_page
def test_every_picture_has_words(name: str) -> None:
    assert all(picture.get("alt") for picture in outline(name).all("img"))


@every_page
def test_forms_are_sent_with_get_or_post_or_close_their_dialog(name: str) -> None:
    assert {form.get("method", "get") for form in outline(name).all("form")} <= {"get", "post", "dialog"}


@pytest.mark.parametrize("name", EVERYTHING)
def test_words_of_people_never_become_markup(name: str) -> None:
    text = render(*hostile_pages()[name])
    assert "<script>alert" not in text
    assert [tag for tag, _ in Outline(text).elements if tag == "script"] == [
        tag for tag, _ in outline(name).elements if tag == "script"
    ]


def test_hostile_words_are_shown_as_they_were_typed() -> None:
    text = render(*pages(hostile(STORED))["pattern"])
    assert "&lt;script&gt;alert(1)&lt;/script&gt;&#34; onload=x &#39;" in text
    assert HOSTILE not in text


def test_a_name_that_is_not_defined_is_an_error(tmp_path: Path) -> None:
    (tmp_path / "page.html").write_text("{{ page.titel }}", "utf-8")
    with pytest.raises(UndefinedError):
        environment(tmp_path).get_template("page.html").render(page=views.frame())


def test_templates_see_the_page_and_nothing_that_computes(tmp_path: Path) -> None:
    (tmp_path / "page.html").write_text("{{ range(3) }}", "utf-8")
    with pytest.raises(UndefinedError):
        environment(tmp_path).get_template("page.html").render(page=None)


def test_the_look_that_was_chosen_stands_on_the_page() -> None:
    assert outline("library").all("html") == [{"lang": "en"}]
    dark = views.error_page(views.frame(replace(SETTINGS, look="dark")), 404)
    assert Outline(render("error.html", dark)).all("html") == [{"lang": "en", "data-theme": "dark"}]


def test_every_template_of_a_page_is_tried_here() -> None:
    tried = {template for template, _ in EVERYTHING.values()}
    whole = {
        str(path.relative_to(TEMPLATES))
        for path in TEMPLATES.rglob("*.html")
        if not path.name.startswith("_") and path.relative_to(TEMPLATES).parts[0] not in ("booklet", "card")
    }
    assert whole - tried == {"base.html"}


def test_a_number_and_its_unit_stay_on_one_line_of_a_page_and_are_left_alone_where_they_are_typed_or_copied():
    read = '<p title="9.6 cm">9.6 cm and 5\n  g, 10 %; 17.7 in, 4 in stock, 3 grams</p>'
    typed = '<textarea>4.82 m</textarea><input value="45 cm">'
    held = '<p title="9.6 cm">9.6\u00a0cm and 5\u00a0g, 10\u00a0%; 17.7\u00a0in, 4 in stock, 3 grams</p>'
    assert held_together(read + typed) == held + typed
