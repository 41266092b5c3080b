"""Looks at pages as people see them: wide and light, dark on a small phone, and printed."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Set

from playwright.sync_api import Page

from tests.browser.conftest import WIDE, Watch
from webapp.paths import ROOT

AXE = (ROOT / "tests" / "vendor" / "axe-core" / "axe.min.js").read_text(encoding="utf-8")
BY_TURNS = (frozenset({"wide"}), frozenset({"phone"}))
LOOKS = frozenset().union(*BY_TURNS)
NUMBERS = re.compile("[0-9a-f]{32}|[0-9]+")
PHONE = {"width": 320, "height": 740}
# in a dark look only colours differ
COLOURS = {"runOnly": {"type": "rule", "values": ["color-contrast", "link-in-text-block"]}}
# on a dark phone colours, places and sizes differ: what is pressed is 24 px or more each way, or has room round it
ON_A_PHONE = {
    "runOnly": {
        "type": "rule",
        "values": ["color-contrast", "link-in-text-block", "scrollable-region-focusable", "target-size"],
    },
    "rules": {"target-size": {"enabled": True}},
}
# of a long list, whose colours would take seconds, the first rows are looked at
EVERYWHERE, BEGINNINGS = {"include": ["html"]}, {"exclude": [["ol > li:nth-of-type(n+4)"]]}
VIOLATIONS = """async ([rules, where]) => (await axe.run(where, {resultTypes: ["violations"], preload: false, ...rules})).violations.map(found =>
    found.id + ": " + found.nodes.slice(0, 3).map(node => node.target.join(" ") + " " + node.failureSummary).join(" | "))"""
WHOLE = """async () => {
    await Promise.allSettled([...document.images].map(image => { image.loading = 'eager'; return image.decode(); }));
    const missing = [...document.images].filter(image => !image.naturalWidth).map(image => `no picture at ${image.src}`);
    if (document.querySelectorAll('h1').length != 1) missing.push('not one heading of the first rank');
    if (!document.title.endsWith('Ropewright')) missing.push(`title ${document.title}`);
    if (document.documentElement.lang != 'en') missing.push('no language');
    return missing; }"""
PRINTED = """() => [...document.querySelectorAll('nav, summary, .button, .hint, .marked-point, form.notice, [type=file]')]
    .filter(part => part.checkVisibility()).map(part => `printed: ${part.textContent.trim().slice(0, 40)}`)"""
WIDTH = "new Promise(settled => requestAnimationFrame(() => settled(document.documentElement.scrollWidth)))"
OWN_STYLE = "Applying inline style violates"  # axe puts one into the page, which the policy refuses


def seen_wrong_at(page: Page, addresses: Mapping[str, str]) -> dict[str, list[str]]:
    """What is wrong with the pages at those addresses, by name; pages without fault are left out.

    Pages that differ in numbers or in what is asked alone share the looks among them, any other page has both.
    """
    looks = _shared_out(addresses)
    return {
        name: found
        for name, address in addresses.items()
        if (found := [*_answered(page, address), *seen_wrong(page, looks[name])])
    }


def seen_wrong(page: Page, looks: Set[str] = LOOKS) -> list[str]:
    """What is wrong with the page that is shown: it is not whole, bars somebody, or is wider than a phone."""
    return list(_seen_wrong(page, looks))


def _shared_out(addresses: Mapping[str, str]) -> dict[str, Set[str]]:
    """Which looks each of these pages is given, by name: one or the other by turns."""
    kinds: dict[str, list[str]] = {}
    for name, address in addresses.items():
        kinds.setdefault(NUMBERS.sub("", address.partition("?")[0]), []).append(name)
    return {
        name: BY_TURNS[place % 2] if len(alike) > 1 else LOOKS
        for alike in kinds.values()
        for place, name in enumerate(alike)
    }


def violations(page: Page, rules: Mapping[str, object], where: Mapping[str, object] = EVERYWHERE) -> list[str]:
    """What bars somebody from the page as it is shown, by those rules of axe; by all where none are named."""
    if not page.evaluate("'axe' in window"):
        page.evaluate(AXE)
    return page.evaluate(VIOLATIONS, [rules, where])


def forgive_axe(watch: Watch) -> None:
    """Takes out of the complaints what only this look gave rise to."""
    watch.complaints = [complaint for complaint in watch.complaints if not complaint.startswith(OWN_STYLE)]


def _answered(page: Page, address: str) -> Iterator[str]:
    status = page.goto(address).status
    if status not in (200, 404, 422):
        yield f"status {status}"


def _seen_wrong(page: Page, looks: Set[str]) -> Iterator[str]:
    yield from page.evaluate(WHOLE)
    if "wide" in looks:
        yield from (f"wide: {found}" for found in violations(page, {}, BEGINNINGS))
    page.emulate_media(media="print")
    yield from page.evaluate(PRINTED)
    page.emulate_media(media="screen")
    page.set_viewport_size(PHONE)
    if (width := page.evaluate(WIDTH)) > PHONE["width"]:
        yield f"{width} wide on a phone"
    if "phone" in looks:
        page.emulate_media(color_scheme="dark")
        yield from (f"phone: {found}" for found in violations(page, ON_A_PHONE, BEGINNINGS))
        page.emulate_media(color_scheme="light")
    page.set_viewport_size(WIDE)
