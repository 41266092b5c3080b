"""A piece in work: every tick is kept in the library, and a second page that missed one is told instead of overwriting."""

from __future__ import annotations

import re

import pytest
from playwright.sync_api import expect

from tests.examples import harbour
from webapp.pages.addresses import address
from webapp.storage import patterns


@pytest.fixture
def number(site):
    """A pattern with a short list."""
    return patterns.create(site.database, harbour()).id


def test_ticks_are_kept_in_the_library_and_a_page_that_missed_one_says_so(opened, number):
    page, other = opened(), opened()
    page.goto(address("stringing", id=number))
    page.get_by_text("Pieces in work").click()
    page.get_by_label("Begin a piece of this list, for").fill("Bracelet for Ada")
    page.get_by_role("button", name="Begin it").click()
    expect(page.get_by_role("heading", name="Bracelet for Ada")).to_be_visible()
    other.goto(page.url)
    where = page.locator("[data-where]")
    for run in (2, 3, 4):
        with page.expect_response("**/place"):
            page.locator("[data-forward]").click()
        expect(where).to_have_text(re.compile(f"^Run {run} of "))
    expect(page.locator("[data-kept]")).to_have_text("Your place is kept in the library.")
    other.locator("[data-forward]").click()
    expect(other.locator("[data-kept]")).to_contain_text("changed on another page")
    other.reload()
    expect(other.locator("[data-where]")).to_have_text(re.compile("^Run 4 of "))
    expect(other.locator(".unscripted")).to_be_hidden()


def test_without_script_the_place_is_kept_by_buttons(opened, number):
    page = opened(java_script_enabled=False)
    page.goto(address("stringing", id=number))
    page.get_by_text("Pieces in work").click()
    page.get_by_label("Begin a piece of this list, for").fill("For the fair")
    page.get_by_role("button", name="Begin it").click()
    page.get_by_role("button", name="Strung, next", exact=True).click()
    expect(page.locator(".unscripted p")).to_contain_text("1 of ")
