"""A list that is typed in a real browser: it is looked at as one types, and made only when that is asked for."""

from __future__ import annotations

from playwright.sync_api import expect

from webapp.pages.addresses import address
from webapp.storage import finding


def test_a_list_is_only_looked_at_while_the_button_that_makes_it_has_the_focus(page, site):
    before = finding.find(site.database).total
    page.goto(address("bring"))
    page.fill("#text", "3A 2B")
    make = page.get_by_role("button", name="Make the pattern")
    make.focus()
    expect(page.locator("#made [role=status]")).to_contain_text("5 beads")
    assert finding.find(site.database).total == before
    make.click()
    expect(page).to_have_title("Brought along, chart – Ropewright")
    assert finding.find(site.database).total == before + 1
