"""What holds on every page of one pattern, also of the most unwieldy: whole, barring nobody, no wider than a phone."""

from __future__ import annotations

from tests.browser.looks import forgive_axe, seen_wrong_at
from tests.browser.pages import addresses, of_one_pattern


def test_every_page_is_whole_and_bars_nobody_light_or_dark_wide_or_on_a_phone(opened, watch, site):
    """Besides, whatever is said on the console or asked of anybody else fails this test at its end."""
    page = opened(reduced_motion="reduce")
    pages = {name: address for name, address in addresses(site.database).items() if of_one_pattern(address)}
    assert seen_wrong_at(page, pages) == {}
    forgive_axe(watch)
