"""The maker's road in ten minutes: from an empty form to a booklet in the hand, with script and without."""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from engine.counting.answers import Answer, answer
from engine.counting.questions import Question
from tests.browser.conftest import Browsers, Site, begun_site
from tests.browser.pages import SAVE
from webapp.pages.addresses import address
from webapp.printing import jobs
from webapp.printing.process import WorkerProcess
from webapp.storage import patterns

MISTAKEN, MENDED = "7A 2B (A 2C)x3 B\n4A 11Q", "7A 2B (A 2C)x3 B\n4A 11B"
RUNS = "labels => labels.map(label => `${label.querySelector('b').textContent} ${label.querySelector('span').textContent}`)"
SENTENCE = "Line 2, column 6: “Q” is not a code of the palette"


@pytest.fixture
def site(tmp_path: Path, begun_library: Path, pictures: Path, browsers: Browsers) -> Iterator[Site]:
    """A site of its own for every road: at its end settings are changed."""
    with begun_site(begun_library, tmp_path / "data", pictures, browsers) as site:
        yield site


@pytest.mark.parametrize("script", [True, False], ids=["with script", "without script"])
def test_from_an_empty_form_to_the_printed_booklet(opened, site, tmp_path, monkeypatch, script):
    if script:  # This one booklet is printed as a person's is, in a process of its own.
        monkeypatch.setattr(jobs, "WorkerProcess", WorkerProcess)
    page = opened(java_script_enabled=script)
    page.goto("/")
    page.click(f"a[href='{address('begin')}']")
    page.click(f"a[href='{address('new')}']")
    page.wait_for_load_state()
    make_with_a_mistake_that_is_mended(page, script)
    number = int(page.url.split("?")[0].rpartition("/")[2])
    made = patterns.load(site.database, number).pattern
    assert (made.title, made.around, len(made.chart), made.tags) == ("Tide line", 9, 34, ("sea", "evening"))
    expect(page.locator("h1")).to_have_text("Tide line")

    question = Question(450.0, "clasp")
    the_list_is_the_engines(page, number, answer(made, question, None, "chart"))
    the_bill_is_the_engines(page, number, answer(made, question))
    the_booklet_is_printed(page, number, tmp_path)
    the_settings_are_kept(page)

    page.click(f"header a[href='{address('library')}'] >> nth=0")
    expect(page.locator(f".cards li >> nth=0 >> a[href='{address('pattern', id=number)}']").first).to_be_visible()


def make_with_a_mistake_that_is_mended(page: Page, script: bool) -> None:
    page.fill("[name=title]", "Tide line")
    page.fill("[name=around]", "9")
    page.fill("[name=tags]", "sea, evening")
    page.fill("[name=bead_name] >> nth=0", "Wet sand")
    page.fill("[name=beads]", MISTAKEN)
    if script:
        expect(page.locator("[data-check]")).to_contain_text(SENTENCE)
    else:
        page.click(SAVE)
        expect(page.locator("main")).to_contain_text(SENTENCE)
        expect(page.locator("[name=beads]")).to_have_value(MISTAKEN)
    page.fill("[name=beads]", MENDED)
    if script:
        expect(page.locator("[data-check]")).to_contain_text("34 beads")
    page.click(SAVE)
    page.wait_for_url(re.compile(r"/patterns/\d+\?"))


def the_list_is_the_engines(page: Page, number: int, found: Answer) -> None:
    go_to(page, "stringing", number)
    ask(page, length="45 cm", closure="clasp", threads="chart")
    lists = page.locator("section[data-place]")
    assert lists.count() == len(found.stringing.distinct)
    for place, (thread, _) in enumerate(found.stringing.distinct):
        assert lists.nth(place).locator("ol label").evaluate_all(RUNS) == [
            f"{run.beads} {run.code}" for run in thread.runs
        ]
    expect(page.locator("main")).to_contain_text(found.sentence)


def the_bill_is_the_engines(page: Page, number: int, found: Answer) -> None:
    go_to(page, "materials", number)
    ask(page, length="45 cm", closure="clasp")
    expect(page.locator("main")).to_contain_text(found.sentence)
    rows = page.locator("table").first.locator("tbody tr")
    assert rows.count() == len(found.materials.colours)
    for place, need in enumerate(found.materials.colours):
        cells = [text.replace("\xa0", " ") for text in rows.nth(place).locator("th, td").all_inner_texts()]
        assert cells[0].split() == [need.code, *need.name.split()]
        assert [cells[2], cells[4], cells[5]] == [f"{need.beads:,}", f"{need.buy_beads:,}", f"{need.buy_grams:,} g"]


def the_booklet_is_printed(page: Page, number: int, tmp_path: Path) -> None:
    go_to(page, "booklet", number)
    page.fill("[name=length]", "45 cm")
    page.select_option("[name=closure]", "clasp")
    page.locator("label:has([name=paper][value=Letter])").click()
    page.click("main form[method=post] button:not([formmethod])")
    page.wait_for_url(re.compile("/jobs/"))
    page.wait_for_selector("[data-state=done]", timeout=90_000)
    with page.expect_download() as arriving:
        page.click("main a[href*='download']")
    arriving.value.save_as(tmp_path / "booklet.pdf")
    assert (tmp_path / "booklet.pdf").read_bytes().startswith(b"%PDF")
    assert arriving.value.suggested_filename == "tide-line-booklet.pdf"


def the_settings_are_kept(page: Page) -> None:
    page.click(f"header a[href='{address('settings')}']")
    page.fill("[name=maker]", "Quay Lane Ropes")
    page.locator("label:has([name=units][value=both])").click()
    page.click(f"form[action='{address('settings')}'] button")
    page.goto(address("settings"))
    expect(page.locator("[name=maker]")).to_have_value("Quay Lane Ropes")
    expect(page.locator("[name=units][value=both]")).to_be_checked()
    expect(page.locator("header")).to_contain_text("Quay Lane Ropes")


def go_to(page: Page, name: str, number: int) -> None:
    page.click(f"nav a[href='{address(name, id=number)}']")
    page.wait_for_url(f"**{address(name, id=number)}")


def ask(page: Page, length: str, **choices: str) -> None:
    """Fills the form of a size and sends it."""
    page.fill("[name=length]", length)
    for name, value in choices.items():
        page.select_option(f"[name={name}]", value)
    page.click("form[method=get] button >> nth=0")
    page.wait_for_url(re.compile("length="))
