"""Every address by name."""

from __future__ import annotations

import re

import pytest

from webapp.pages.addresses import PATHS, address, chart_picture, picture
from webapp.paths import TEMPLATES


def test_places_of_the_path_are_filled_and_the_rest_becomes_the_query() -> None:
    assert (
        address("stringing", id=7, length="50 cm", closure="ring") == "/patterns/7/stringing?length=50+cm&closure=ring"
    )


def test_what_is_empty_is_left_out() -> None:
    assert address("library", search="", tag=None, page=2) == "/?page=2"
    assert address("library", search="", tag=None) == "/"


def test_words_of_people_are_escaped_in_an_address() -> None:
    assert address("library", tag="sea & sand?#") == "/?tag=sea+%26+sand%3F%23"
    assert address("job", job="a b?") == "/jobs/a%20b%3F"


def test_a_name_that_is_not_known_or_a_place_left_open_is_an_error() -> None:
    with pytest.raises(KeyError):
        address("libary")
    with pytest.raises(KeyError):
        address("pattern")


def test_a_picture_has_a_new_address_when_the_pattern_changes() -> None:
    assert picture(7, "ring", 640, "3-0") == "/patterns/7/picture.webp?view=ring&width=640&version=3-0"
    assert chart_picture(7, "3-1") == "/patterns/7/chart.svg?version=3-1"


def test_no_two_names_share_a_path() -> None:
    assert len(set(PATHS.values())) == len(PATHS)


def test_templates_write_no_address_by_hand() -> None:
    written = {
        (path.name, found)
        for path in sorted(TEMPLATES.rglob("*.html"))
        if path.parent.name != "booklet"
        for found in re.findall(r'(?:href|action|src|formaction)="(?!\{\{|\{%|#)([^"]*)"', path.read_text("utf-8"))
    }
    assert written == set()


def test_templates_name_only_addresses_that_are_known() -> None:
    named = {
        found
        for path in TEMPLATES.rglob("*.html")
        for found in re.findall(r'"(\w+)" \| address', path.read_text("utf-8"))
    }
    assert named and named <= set(PATHS)
