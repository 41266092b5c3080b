"""What holds on every page: nothing is said on the console, nothing fetched elsewhere, nothing hidden from anybody."""

from __future__ import annotations

import pytest
from playwright.sync_api import Page

from tests.browser.pages import addresses, sent_wrong
from webapp.paths import ROOT

AXE = (ROOT / "tests" / "vendor" / "axe-core" / "axe.min.js").read_text(encoding="utf-8")
WIDE, PHONE = {"width": 1280, "height": 900}, {"width": 360, "height": 740}
LOOKS = [("light", WIDE), ("dark", WIDE), ("light", PHONE)]
# in the dark look only colours differ
RULES = {"light": {}, "dark": {"runOnly": {"type": "rule", "values": ["color-contrast", "link-in-text-block"]}}}
VIOLATIONS = """async (rules) => (await axe.run(document, {resultTypes: ["violations"], preload: false, ...rules})).violations.map(found =>
    found.id + ": " + found.nodes.slice(0, 3).map(node => node.target.join(" ") + " " + node.failureSummary).join(" | "))"""
OWN_STYLE = "Applying inline style violates"  # axe puts one into the page, which the policy refuses


@pytest.mark.parametrize(("scheme", "size"), LOOKS, ids=lambda value: value if isinstance(value, str) else f"{value['width']}")
def test_nothing_bars_a_person_from_any_page(opened, watch, site, scheme, size):
    page = opened(color_scheme=scheme, viewport=size)
    barred = {}
    for name, address in addresses(site.database).items():
        page.goto(address)
        barred[name] = violations(page, scheme)
    for name, send in sent_wrong(page).items():
        send()
        barred[name] = violations(page, scheme)
    watch.complaints = [complaint for complaint in watch.complaints if not complaint.startswith(OWN_STYLE)]
    assert {name: found for name, found in barred.items() if found} == {}


def violations(page: Page, scheme: str) -> list[str]:
    page.evaluate(AXE)
    return page.evaluate(VIOLATIONS, RULES[scheme])


def test_no_page_is_wider_than_a_phone(opened, site):
    page = opened(viewport=PHONE)
    wide = {}
    for name, address in addresses(site.database).items():
        page.goto(address)
        wide[name] = page.evaluate("document.documentElement.scrollWidth")
    assert {name: width for name, width in wide.items() if width > PHONE["width"]} == {}


def test_every_page_is_whole(page, site):
    """Besides, whatever is said on the console or asked of anybody else fails this test at its end."""
    for name, address in addresses(site.database).items():
        assert page.goto(address).status in (200, 404, 422), name
        assert page.locator("h1").count() == 1, name
        assert page.title().endswith("Ropewright"), name
        assert page.locator("html").get_attribute("lang") == "en", name
        page.evaluate("Promise.allSettled([...document.images].map(image => { image.loading = 'eager'; return image.decode(); }))")
        assert page.evaluate("[...document.images].filter(image => !image.naturalWidth).map(image => image.src)") == [], name


def test_pages_are_set_in_our_own_fonts(page):
    page.goto("/")
    page.evaluate("document.fonts.ready")
    loaded = page.evaluate("[...document.fonts].filter(font => font.status == 'loaded').map(font => font.family.replaceAll('\"', ''))")
    assert any("Atkinson" in family for family in loaded)
    assert any("Source" in family for family in loaded)
