"""Pictures that a pattern begins with, in a real browser: points moved by pointer and key, and what follows them."""

from __future__ import annotations

import pytest
from playwright.sync_api import expect

from tests.browser.pages import an_old_chart
from tests.photographed import Photographed, photographed, random_rope
from webapp.pages.addresses import address


def taken() -> Photographed:
    return photographed(random_rope(10, 24, 3, seed=4), long_px=900, off_px=0.5)


@pytest.fixture
def handed_in(opened):
    """The page of a picture after it was handed in."""

    def hand_in(name: str):
        page = opened(reduced_motion="reduce")
        page.goto(address(name))
        page.set_input_files("#picture", {"name": "chart.jpg", "mimeType": "image/jpeg", "buffer": taken().jpeg})
        page.click("form .button-main")
        expect(page.locator(".marked-point").first).to_be_visible()
        expect(page.locator(".marked img")).to_have_js_property("complete", True)
        return page

    return hand_in


def test_a_corner_is_dragged_or_moved_by_key_and_the_chart_follows(handed_in):
    page = handed_in("photograph_new")
    whole = page.locator(".beside img").first.get_attribute("src")
    corner, marked = page.locator(".marked-point").first, page.locator(".marked").bounding_box()
    corner.hover()
    page.mouse.down()
    page.mouse.move(marked["x"] + marked["width"] / 4, marked["y"] + marked["height"] / 2)
    page.mouse.up()
    expect(page.locator("#left")).to_have_value("25.0")
    expect(page.locator("#top")).to_have_value("50.0")
    page.keyboard.press("ArrowRight")
    page.keyboard.press("Shift+ArrowUp")
    expect(page.locator("#left")).to_have_value("25.5")
    expect(page.locator("#top")).to_have_value("45.0")
    expect(page.locator(f'.beside img[src="{whole}"]')).to_have_count(0)
    page.wait_for_url("**left=25.5**")
    page.locator("#many").fill("3")
    expect(page.locator('output[for="many"]')).to_have_text("3")
    expect(page.locator(".counts li")).to_have_count(3)


def test_an_old_chart_is_marked_read_and_bent(handed_in):
    page = handed_in("old_chart_new")
    page.locator(".places summary").click()
    for number, (x, y) in enumerate(taken().corners, 1):
        page.fill(f"#x{number}", f"{100 * x:.1f}")
        page.fill(f"#y{number}", f"{100 * y:.1f}")
    page.fill("#around", "10")
    expect(page.locator("#made [role=status]")).to_contain_text("252 beads in 24 rows, 10 around")
    middle = page.locator(".marked-free").last
    middle.focus()
    page.keyboard.press("ArrowDown")
    expect(page.locator("#pull5x")).not_to_have_value("")
    expect(page.locator("#made [role=status]")).to_contain_text("252 beads")
    page.get_by_role("button", name="Put pulled points back").click()
    expect(page.locator("#pull5x")).to_have_value("")
    expect(page.locator("#around")).to_have_value("10")


def test_beads_in_doubt_come_one_after_another_until_each_is_put_right(page, site):
    page.goto(an_old_chart(site.database))
    shown, left = page.locator(".doubts > li:visible"), page.locator("[data-left]")
    expect(shown).to_have_count(1)
    many, first = page.locator(".doubts > li").count(), shown.get_attribute("data-bead")
    expect(left).to_have_text(f"1 of {many}, {many - 1} left")
    page.get_by_role("button", name="Next", exact=True).click()
    expect(left).to_have_text(f"2 of {many}, {many - 2} left")
    page.keyboard.press("PageUp")
    expect(left).to_have_text(f"1 of {many}, {many - 1} left")
    shown.locator("label").nth(1).click()
    expect(left).to_have_text(f"2 of {many}, {many - 2} left")
    expect(page.locator(f'.doubts > li[data-bead="{first}"] input').nth(1)).to_be_checked()
    page.wait_for_url(f"**fix-{first}=**")
    expect(left).to_have_text(f"2 of {many}, {many - 2} left")
