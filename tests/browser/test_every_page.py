"""What holds on every page but those of one pattern: it is whole, bars nobody, fits a phone, and asks nobody else."""

from __future__ import annotations

from tests.browser.looks import BY_TURNS, forgive_axe, seen_wrong, seen_wrong_at
from tests.browser.pages import addresses, of_one_pattern, sent_wrong


def test_every_page_is_whole_and_bars_nobody_light_or_dark_wide_or_on_a_phone(opened, watch, site):
    """Besides, whatever is said on the console or asked of anybody else fails this test at its end."""
    page = opened(reduced_motion="reduce")
    others = {name: address for name, address in addresses(site.database).items() if not of_one_pattern(address)}
    assert seen_wrong_at(page, others) == {}
    forgive_axe(watch)


def test_a_form_sent_wrong_comes_back_whole_and_bars_nobody(opened, watch, site):
    page, wrong = opened(reduced_motion="reduce"), {}
    for place, (name, send) in enumerate(sent_wrong(page).items()):
        send()
        wrong[name] = seen_wrong(page, BY_TURNS[place % 2])
    assert {name: found for name, found in wrong.items() if found} == {}
    forgive_axe(watch)


def test_pages_are_set_in_our_own_fonts(page):
    page.goto("/")
    page.evaluate("document.fonts.ready")
    loaded = page.evaluate(
        "[...document.fonts].filter(font => font.status == 'loaded').map(font => font.family.replaceAll('\"', ''))"
    )
    assert any("Atkinson" in family for family in loaded)
    assert any("Source" in family for family in loaded)
