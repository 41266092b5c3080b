"""Work by keyboard, a place that is kept, two tabs on one pattern."""

from __future__ import annotations

import re
from dataclasses import replace
from random import Random

import pytest
from playwright.sync_api import Page, expect

from tests.browser.pages import SAVE
from tests.examples import harbour
from webapp.pages.addresses import address
from webapp.pages.views import stringing
from webapp.storage import patterns

FOCUSED = """() => {
    const at = document.activeElement;
    return [at.tagName, at.getAttribute("href") ?? at.getAttribute("name") ?? at.textContent.trim()].join(" ");
}"""
SEEN = """() => {
    const ringed = element => {
        const style = getComputedStyle(element);
        return (style.outlineStyle != "none" && parseFloat(style.outlineWidth) > 0) || style.boxShadow != "none";
    };
    const at = document.activeElement, box = at.getBoundingClientRect();
    // inside a date field the browser rings its own parts; a label or a card may stand in for what is in it
    const stand = at.type == "date" && !at.matches(":focus-visible") ? true : [at, at.closest("label"), at.closest("li")].some(one => one && ringed(one));
    return stand && box.width > 0 && box.right > 0 && box.left < innerWidth;
}"""


def tab_to(page: Page, wanted: str, most: int = 60) -> None:
    """Presses Tab until what has that name or address is in focus."""
    for _ in range(most):
        page.keyboard.press("Tab")
        if page.evaluate(FOCUSED).endswith(f" {wanted}"):
            return
    pytest.fail(f"the tab order does not reach {wanted}")


def test_a_pattern_is_made_without_a_mouse(page, site):
    page.goto("/")
    page.keyboard.press("Tab")
    page.keyboard.press("Enter")
    expect(page).to_have_url(re.compile("#main$"))
    for name in ("begin", "new"):
        tab_to(page, address(name))
        page.keyboard.press("Enter")
        page.wait_for_url(f"**{address(name)}")
    for field, text in (("title", "By hand"), ("around", "6"), ("beads", "5A 2B (A C)x2 B")):
        tab_to(page, field)
        page.keyboard.type(text)
    tab_to(page, "save")
    page.keyboard.press("Enter")
    page.wait_for_url(re.compile(r"/patterns/\d+\?"))
    expect(page.locator("h1")).to_have_text("By hand")
    tab_to(page, page.locator("nav a[href$='/stringing']").get_attribute("href"))
    page.keyboard.press("Enter")
    expect(page.locator("section[data-place]")).to_have_count(1)


@pytest.mark.parametrize(
    ("name", "scheme"),
    [
        *((name, "light") for name in ("library", "new", "settings", "pattern", "stringing", "materials", "booklet")),
        *((name, "dark") for name in ("library", "settings", "stringing")),
    ],
)
def test_what_is_in_focus_is_seen_all_the_way_round(opened, name, scheme):
    page = opened(color_scheme=scheme)
    page.goto(address(name, **({} if name in ("library", "new", "settings") else {"id": 1})))
    places, hidden = [], []
    for _ in range(150):
        page.keyboard.press("Tab")
        place, seen = page.evaluate(f"[({FOCUSED})(), ({SEEN})()]")
        if place.startswith("BODY") or (places and place == places[0] and len(places) > 3):
            break
        places.append(place)
        if not seen:
            hidden.append(place)
    assert hidden == []
    assert len(places) > 8


def test_the_place_in_a_list_is_kept(page):
    page.goto(address("stringing", id=1))
    first = page.locator("section[data-place]").first
    runs = first.locator("ol label").all_inner_texts()
    first.locator("[data-forward]").click()
    first.locator("[data-forward]").click()
    page.keyboard.press("ArrowRight")
    page.keyboard.press("ArrowLeft")
    expect(first.locator("input:checked")).to_have_count(2)
    page.reload()
    expect(first.locator("input:checked")).to_have_count(2)
    beads, code = runs[2].split()
    expect(first.locator("[data-count]")).to_have_text(beads)
    expect(first.locator("[data-code]")).to_have_text(code)
    first.locator("[data-back]").click()
    expect(first.locator("input:checked")).to_have_count(1)


def test_a_phone_shows_what_comes_next_wherever_one_ticks_and_short_columns_are_short(opened):
    page = opened(viewport={"width": 390, "height": 844})
    page.goto(address("stringing", id=1))
    first = page.locator("section[data-place]").first
    columns = first.locator(".run-column")
    assert columns.last.bounding_box()["height"] < columns.first.bounding_box()["height"]
    first.locator("ol input").nth(72).check()
    expect(first.locator("[data-where]")).to_contain_text("Run 74 of")
    for name in ("where", "count", "name", "then", "forward"):
        expect(first.locator(f"[data-{name}]")).to_be_in_viewport(ratio=1)


def test_a_list_that_repeats_is_ticked_group_by_group(page):
    page.goto(address("stringing", id=3, length="45 cm"))
    thread = page.locator("section[data-place]").first
    group = [" ".join(run.split()) for run in thread.locator(".group-run").all_inner_texts()]
    runs = thread.locator(".ten label").count()
    assert len(group) > 1 and 0 < runs < len(group)
    expect(thread.locator("[data-where]")).to_have_text(re.compile(r"Group 1 of \d+"))
    expect(thread.locator("[data-code]")).to_have_text(", ".join(group))
    thread.locator("[data-number='3'] input").check()
    expect(thread.locator("[data-where]")).to_have_text(re.compile(r"Group 4 of \d+"))
    page.reload()
    expect(thread.locator("[data-where]")).to_have_text(re.compile(r"Group 4 of \d+"))
    thread.locator("[data-number] input").last.check()
    expect(thread.locator("[data-where]")).to_have_text(f"Run 1 of {runs}")


def test_a_part_of_a_very_long_list_says_the_number_of_the_run_in_the_whole_list(page, site, monkeypatch):
    monkeypatch.setattr(stringing, "MOST_RUNS", 20)
    chance = Random(7)
    beads = bytes(number % 2 for number in range(49) for _ in range(chance.randint(1, 9)))
    made = patterns.create(site.database, replace(harbour(), chart=beads)).id
    page.goto(address("stringing", id=made, threads="whole", part=2))
    thread = page.locator("section[data-place]")
    expect(thread.locator("h2")).to_have_text("Thread 1, runs 21 to 40")
    expect(thread.locator("[data-where]")).to_have_text("Run 21 of 49")
    thread.locator("[data-forward]").click()
    page.reload()
    expect(thread.locator("[data-where]")).to_have_text("Run 22 of 49")
    thread.locator("input").last.check()
    expect(thread.locator("[data-where]")).to_have_text("This part is strung")
    page.get_by_role("link", name="The next part").first.click()
    expect(thread.locator("[data-where]")).to_have_text("Run 41 of 49")


def test_a_save_from_an_older_tab_is_refused_with_a_choice_and_nothing_is_lost(page, site):
    here, there = page, page.context.new_page()
    for tab in (here, there):
        tab.goto(address("edit", id=1))
    before = patterns.load(site.database, 1)
    there.fill("[name=beads]", "12A 24B")
    there.click(SAVE)
    there.wait_for_url(re.compile(r"/patterns/1\?"))
    here.fill("[name=title]", "Mine")
    here.fill("[name=beads]", "30A 6B")
    here.click(SAVE)
    expect(here.locator("#theirs")).to_have_value("12A 24B")
    expect(here.locator("#mine")).to_have_value("30A 6B")
    expect(here.locator("[name=title]")).to_have_value("Mine")
    assert patterns.load(site.database, 1).pattern.title == before.pattern.title
    here.click("button[name=copy]")
    here.wait_for_url(re.compile(r"/patterns/(?!1\b)\d+\?"))
    copy = patterns.load(site.database, int(here.url.split("?")[0].rpartition("/")[2])).pattern
    assert (copy.chart, "Mine" in copy.title) == (bytes([0] * 30 + [1] * 6), True)
    theirs = patterns.load(site.database, 1)
    assert (theirs.revision, theirs.pattern.chart) == (before.revision + 1, bytes([0] * 12 + [1] * 24))


def test_a_pattern_goes_to_the_bin_and_comes_back(page, site):
    page.goto(address("pattern", id=1))
    page.click(f"form[action='{address('to_bin', id=1)}'] button")
    page.wait_for_url(re.compile(r"/(\?|$)"))
    expect(page.locator(f"a[href='{address('pattern', id=1)}']")).to_have_count(0)
    page.goto(address("pattern", id=1))
    page.click(f"form[action='{address('take_back', id=1)}'] button")
    page.goto("/")
    expect(page.locator(f"a[href='{address('pattern', id=1)}']").first).to_be_visible()


def test_a_pattern_file_leaves_by_the_browser_and_comes_in_again(page, site, tmp_path):
    page.goto(address("pattern", id=1))
    with page.expect_download() as leaving:
        page.click(f"a[href='{address('pattern_file', id=1)}']")
    file = tmp_path / leaving.value.suggested_filename
    leaving.value.save_as(file)
    page.goto(address("import"))
    page.set_input_files("input[type=file]", file)
    page.click(f"form[action='{address('import')}'] button")
    brought = page.locator("main a[href^='/patterns/']").first
    expect(brought).to_be_visible()
    number = int(str(brought.get_attribute("href")).rpartition("/")[2])
    assert number != 1
    assert patterns.load(site.database, number).pattern == patterns.load(site.database, 1).pattern


def test_a_backup_leaves_by_the_browser(page, tmp_path):
    page.goto(address("settings"))
    with page.expect_download() as leaving:
        page.click(f"form[action='{address('backup')}'] button")
    leaving.value.save_as(tmp_path / "copy.sqlite")
    assert (tmp_path / "copy.sqlite").read_bytes().startswith(b"SQLite format 3\0")
