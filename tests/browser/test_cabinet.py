"""The cabinet in a real browser: a colour taken where a photograph is clicked, a search that follows, a bead exchanged."""

from __future__ import annotations

from io import BytesIO

from PIL import Image
from playwright.sync_api import expect

from webapp.demo import demo_beads
from webapp.pages.addresses import address
from webapp.storage import beads


def photograph() -> bytes:
    """Green on the left, red on the right, larger than the page shows it."""
    picture, out = Image.new("RGB", (900, 600), "#2f7f76"), BytesIO()
    picture.paste("#b23a30", (450, 0, 900, 600))
    picture.save(out, "PNG")
    return out.getvalue()


def test_a_bead_takes_its_colour_from_where_its_photograph_is_clicked(page, site):
    page.goto(address("new_bead"))
    page.get_by_label("Name").fill("Buoy")
    page.get_by_role("button", name="Add to the cabinet").click()
    page.set_input_files("#new-picture", {"name": "two.png", "mimeType": "image/png", "buffer": photograph()})
    page.get_by_role("button", name="Save the photograph").click()
    shown = page.locator("#photograph")
    box = shown.bounding_box()
    shown.click(position={"x": box["width"] * 0.9, "y": box["height"] * 0.9})
    expect(page.get_by_text("Taken from the photograph: #b")).to_be_visible()
    taken = page.locator("#colour").input_value()
    assert abs(int(taken[1:3], 16) - 0xB2) <= 2
    page.get_by_role("button", name="Save", exact=True).click()
    (kept,) = beads.everything(site.database).values()
    assert kept.bead.colour == taken


def test_the_list_of_beads_follows_the_search_and_a_bead_is_exchanged_and_put_back(page, site):
    beads.save_all(site.database, (), demo_beads())
    page.goto(address("beads"))
    page.locator("#search").press_sequentially("rose")
    expect(page.locator("#found tbody tr")).to_have_count(1)
    assert page.locator("#search").evaluate("field => field === document.activeElement")
    page.goto(address("pick_bead", id=2, way=0, code="B"))
    before = page.locator("h1 + p").inner_text()
    page.get_by_role("button", name="Take Rose").click()
    expect(page.get_by_role("row", name="B Rose")).to_be_visible()
    page.get_by_role("button", name="back as B").click()
    expect(page.get_by_role("row", name=f"B {before.split()[0]}")).to_be_visible()
