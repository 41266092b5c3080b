"""The library as a person keeps it: found while one types, several patterns at once, an old state brought back, a restore undone."""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path
from threading import Event

import pytest
from playwright.sync_api import expect

from tests.browser.conftest import Browsers, Site, begun_site
from webapp.demo import FILES
from webapp.exchange import zip_writer
from webapp.exchange.portable import PortableWorkshop
from webapp.pages.addresses import address
from webapp.storage import library_export, patterns


@pytest.fixture
def site(tmp_path: Path, begun_library: Path, pictures: Path, browsers: Browsers) -> Iterator[Site]:
    """A site of its own for every test: they empty its library."""
    with begun_site(begun_library, tmp_path / "data", pictures, browsers) as site:
        yield site


def test_the_list_follows_the_search_and_the_address_holds_it(page):
    page.goto("/")
    expect(page.locator(".card")).to_have_count(len(FILES))
    page.locator("#search").press_sequentially("harb")
    expect(page.locator(".card")).to_have_count(1)
    expect(page.locator("#found [role=status]")).to_have_text("1 pattern found")
    assert page.locator("#search").evaluate("field => field === document.activeElement")
    page.goto(page.url)
    expect(page.locator(".card")).to_have_count(1)


@pytest.mark.parametrize("script", [True, False])
def test_chosen_patterns_go_into_the_bin_and_come_back(opened, script):
    page = opened(java_script_enabled=script)
    page.goto("/")
    page.get_by_label("Choose Harbour Lights").check()
    page.get_by_label("Choose Meadow Path").check()
    page.get_by_role("button", name="Put in the bin").click()
    expect(page.locator(".card")).to_have_count(len(FILES) - 2)
    page.get_by_role("button", name="Take them back").click()
    expect(page.locator(".card")).to_have_count(len(FILES))


def test_all_of_a_page_are_chosen_at_once_also_after_a_search(page):
    page.goto("/?view=list")
    page.locator("#search").fill("me")
    expect(page.locator("tbody tr")).to_have_count(1)
    page.get_by_role("button", name="Choose all on this page").click()
    expect(page.locator("input[name=chosen]:checked")).to_have_count(1)
    page.locator("#search").fill("mea")
    expect(page).to_have_url(re.compile("search=mea&"))
    expect(page.locator("input[name=chosen]:checked")).to_have_count(1)


@pytest.mark.parametrize("script", [True, False])
def test_an_old_state_is_compared_brought_back_and_that_is_undone(opened, script):
    page = opened(java_script_enabled=script)
    page.goto("/patterns/1/edit")
    page.fill("[name=title]", "Another title")
    page.click("#editor button[name=save]:not([aria-hidden])")
    page.get_by_role("link", name="History").click()
    page.get_by_role("link", name="What changed in revision 2").click()
    expect(page.locator(".differences")).to_contain_text("title: “Another title”")
    page.get_by_role("button", name="Bring back revision 1").click()
    expect(page.locator("h1")).not_to_have_text("Another title")
    page.get_by_role("button", name="Undo").click()
    expect(page.locator("h1")).to_have_text("Another title")


def test_a_backup_is_looked_into_restored_and_that_is_undone(page):
    page.goto("/backups")
    page.get_by_role("button", name="Back up now").click()
    page.goto("/")
    page.get_by_role("button", name="Remove the examples").click()
    page.goto("/backups")
    page.get_by_role("link", name="What is inside").first.click()
    expect(page.locator("form.notice")).to_contain_text(f"{len(FILES)} go back to what they were")
    page.get_by_role("button", name="Restore").click()
    page.goto("/")
    expect(page.locator(".card")).to_have_count(len(FILES))
    page.go_back()
    page.get_by_role("button", name="Undo").click()
    page.goto("/")
    expect(page.locator("h1")).to_have_text("Your first rope")


@pytest.mark.parametrize("script", [True, False], ids=["with script", "without script"])
def test_a_zip_that_takes_a_while_says_how_far_it_is_and_then_what_it_brings(opened, site, tmp_path, script):
    (tmp_path / "library.zip").write_bytes(
        b"".join(
            zip_writer.write(library_export.export_patterns(site.database), PortableWorkshop(), site.database.now())
        )
    )
    for number in range(1, len(FILES) + 1):
        patterns.put_into_bin(site.database, number)
    release = Event()
    site.works.begin("another", lambda work: release.wait())
    page = opened(java_script_enabled=script)
    page.goto(address("import"))
    page.fill("[name=where]", str(tmp_path / "library.zip"))
    page.get_by_role("button", name="Import").click()
    expect(page.get_by_role("heading", name="Reading the file")).to_be_visible()
    release.set()
    page.get_by_role("button", name="Import as chosen").click()
    expect(page.locator(".card")).to_have_count(len(FILES))


def test_pictures_begin_high_and_what_can_be_done_comes_with_a_choice(opened):
    page = opened()
    page.goto("/")
    assert page.locator(".card").first.bounding_box()["y"] <= 320
    expect(page.get_by_role("button", name="Put in the bin")).to_be_hidden()
    page.get_by_label("Choose Harbour Lights").check()
    expect(page.get_by_role("button", name="Put in the bin")).to_be_visible()
    plain = opened(java_script_enabled=False)
    plain.goto("/")
    expect(plain.get_by_role("button", name="Put in the bin")).to_be_visible()
