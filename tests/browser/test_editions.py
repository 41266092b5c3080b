"""The road of a booklet that is sold: words and a photograph, proof, edition, copies, a mistake mended, errata, withdrawn."""

from __future__ import annotations

import re
from pathlib import Path

from playwright.sync_api import Page, expect
from pypdf import PdfReader

from tests.browser.pages import SAVE, a_photograph
from tests.examples import harbour
from webapp.pages.addresses import address
from webapp.storage import editions, patterns


def test_an_edition_from_the_makers_own_words_to_the_errata(page, site, tmp_path):
    number = patterns.create(site.database, harbour()).id
    words_and_a_photograph_are_added_and_taken_back(page, number)
    printed_for_the_next_edition(page, number)
    every_remark_leads_to_where_it_is_mended(page)
    published(page, 1)
    personal = a_copy_is_given(page, "Marta Lind", False, tmp_path / "personal.pdf")
    assert all("Personal copy for Marta Lind" in text for text in personal)
    test = a_copy_is_given(page, "Ole Brandt", True, tmp_path / "test.pdf")
    assert all("Test copy, not for sale, for Ole Brandt" in text for text in test)
    assert any("Made for long evenings." in text for text in personal)

    the_first_bead_is_changed(page, number)
    printed_for_the_next_edition(page, number)
    published(page, 2)
    the_errata_are_sent(page, tmp_path / "errata.pdf")
    withdrawn(page, 2, "The wrong one")
    given_out_again(page, 2)
    withdrawn(page, 1, "The first bead was wrong")
    kept = editions.editions(site.database, number)
    assert [(edition.number, edition.revision, edition.why) for edition in kept] == [
        (2, 2, ""),
        (1, 1, "The first bead was wrong"),
    ]


def words_and_a_photograph_are_added_and_taken_back(page: Page, number: int) -> None:
    page.goto(address("own_words", id=number))
    page.get_by_label("Introduction").fill("Made for long evenings.")
    page.get_by_role("button", name="Save skill, time and your words").click()
    page.set_input_files("#photographs-new", [{"name": "ring.png", "mimeType": "image/png", "buffer": a_photograph()}])
    page.get_by_role("button", name="Add", exact=True).click()
    page.get_by_label("Caption").fill("Closed")
    page.get_by_role("button", name="Save", exact=True).click()
    expect(page.locator(".photograph .notice")).to_contain_text("are saved")
    page.get_by_role("button", name="Remove photograph 1").click()
    expect(page.locator(".photograph")).to_have_count(0)
    page.reload()
    page.get_by_role("button", name="Take it back", exact=True).click()
    expect(page.get_by_label("Caption")).to_have_value("Closed")


def printed_for_the_next_edition(page: Page, number: int) -> None:
    page.goto(address("editions", id=number))
    page.get_by_role("link", name=re.compile("Print for edition")).click()
    expect(page.locator("[name=purpose][value=edition]")).to_be_checked()
    page.fill("[name=length]", "20 cm")
    page.get_by_role("button", name="Print", exact=True).click()
    expect(page.get_by_role("heading", name="Proof")).to_be_visible(timeout=60_000)
    expect(page.locator(".proof")).to_contain_text("agree with the chart")


def every_remark_leads_to_where_it_is_mended(page: Page) -> None:
    proof, links = (
        page.url,
        page.locator(".remarks a").evaluate_all(
            "links => links.map(link => [link.textContent, link.getAttribute('href')])"
        ),
    )
    assert {"Settings", "Words and photographs", "Palette and words"} <= {words for words, _ in links}
    for _, place in links:
        page.goto(place)
        assert page.locator(f"#{place.partition('#')[2] or 'main'}").is_visible(), place
    page.goto(proof)


def published(page: Page, number: int) -> None:
    page.get_by_role("link", name="On to publishing").click()
    page.get_by_role("button", name=f"Publish edition {number}").click()
    expect(page.locator(f"#edition-{number} .booklets a:not([download])")).to_have_text("Standard, A4")


def a_copy_is_given(page: Page, name: str, test: bool, path: Path) -> list[str]:
    """The text of every page of the copy that was downloaded."""
    page.locator("#edition-1 summary", has_text="Give somebody a copy").click()
    page.locator("#name-1").fill(name)
    page.locator("#edition-1 [name=test]").set_checked(test)
    page.get_by_role("button", name="Note it and make the copy").click()
    expect(page.locator("#copies tbody th").first).to_have_text(name)
    saved(page, "Download the copy", path)
    return [sheet.extract_text() for sheet in PdfReader(path).pages]


def the_first_bead_is_changed(page: Page, number: int) -> None:
    page.goto(address("edit", id=number))
    beads = page.input_value("[name=beads]")
    count, code, rest = re.match(r"(\d*)([A-Z]+)(.*)", beads, re.DOTALL).groups()
    page.fill("[name=beads]", f"{'B' if code == 'A' else 'A'} {int(count or 1) - 1}{code} {rest}")
    page.click(SAVE)
    expect(page.locator(".said")).to_have_text("Saved as a new revision.")


def the_errata_are_sent(page: Page, path: Path) -> None:
    page.get_by_role("link", name="Errata to the newest edition").click()
    expect(page.locator("main")).to_contain_text("Round 1, bead 1: ")
    text = page.request.get(page.get_by_role("link", name="As text to send").get_attribute("href")).text()
    saved(page, "The sheet as PDF", path)
    told = PdfReader(path).pages[0].extract_text()
    for line in page.locator(".differences li").all_inner_texts():
        assert line in text and line in " ".join(told.split())
    assert page.locator(".ready strong").all_inner_texts() == ["Ole Brandt", "Marta Lind"]
    page.get_by_role("button", name="Note that it was sent to them").click()
    page.get_by_role("link", name="All editions").click()
    assert page.locator("#copies td:last-child").all_inner_texts() == ["was sent the errata up to edition 2"] * 2


def withdrawn(page: Page, number: int, why: str) -> None:
    page.locator(f"#edition-{number} summary", has_text="Withdraw").click()
    page.locator(f"#why-{number}").fill(why)
    page.get_by_role("button", name=f"Withdraw edition {number}").click()
    expect(page.locator(f"#edition-{number} .notice")).to_contain_text(why)
    expect(page.locator(f"#edition-{number}")).not_to_contain_text("Give somebody a copy")


def given_out_again(page: Page, number: int) -> None:
    page.get_by_role("button", name=f"Give edition {number} out again").click()
    expect(page.locator(f"#edition-{number}")).to_contain_text("Give somebody a copy")


def saved(page: Page, words: str, path: Path) -> None:
    """Saves what a link downloads."""
    with page.expect_download() as arriving:
        page.get_by_role("link", name=words).click()
    arriving.value.save_as(path)
