"""How the drawing is looked at: facts, passes, parts, palette, zoom and panning, touch, ring, pictures, and who can use it."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest
from playwright.sync_api import expect

from engine.pattern.palette import Palette
from tests.browser.chart.editors import Editor, drawing
from tests.browser.conftest import WIDE
from tests.browser.looks import COLOURS, forgive_axe, violations
from tests.pictures import assert_same_chart, pattern
from webapp.pages.addresses import address

SPIRAL = """
     B A A B A
    A A B A A B
     A A B A A
    B A A B A A
"""
DIALOGS = ("exchange", "merge", "refit", "part", "keep", "runs", "keys", "ring")
TOOLS, OPEN = {"include": [".options", ".rail"]}, {"include": ["dialog[open]"]}  # what a press changes
INKS = """place => { const rule = document.querySelector(place);
    const {data} = rule.getContext("2d").getImageData(0, 0, rule.width / 4, rule.height);
    return new Set(new Uint32Array(data.buffer).filter(pixel => pixel >>> 24 === 255)).size; }"""
READBACK = re.compile(
    "GPU stall due to ReadPixels|Automatic fallback to software WebGL"
)  # software graphics say so themselves


@pytest.fixture
def editor(page, site):
    editor = drawing(page, site.database, pattern(SPIRAL, 5, "ABC"))
    editor.page.locator("[name=reach][value=one]").check(force=True)
    return editor


@pytest.fixture
def harbour(page):
    page.goto(address("chart", id=2))
    page.wait_for_selector("[data-draw][data-ready]")
    return Editor(page, None, 2)


def facts(editor):
    return dict(
        editor.page.evaluate(
            "[...document.querySelectorAll('[data-facts] span')].map(fact => [fact.firstChild.data.trim(), fact.querySelector('b').textContent])"
        )
    )


def test_the_facts_follow_the_drawing_at_once(editor):
    expect(editor.page.locator("[data-facts]")).to_contain_text("Repeat 22 beads")
    assert facts(editor) | {"Length": ""} == {
        "Around": "5",
        "Chart": "22 beads",
        "Rounds": "4.4",
        "Repeat": "22 beads",
        "Drift": "none",
        "Ring": "closes, next at 44",
        "Length": "",
    }
    editor.tool("Flood")
    editor.bead("A")
    editor.page.get_by_label("All of the colour").check(force=True)
    editor.click(0)
    expect(editor.page.locator("[data-facts]")).to_contain_text("Repeat 1 bead")


def test_the_tray_counts_the_beads(editor):
    counts = editor.page.locator("[data-count]")
    expect(counts).to_have_text(["15 beads", "7 beads", "0 beads"])
    editor.bead("C")
    editor.click(0)
    expect(counts).to_have_text(["15 beads", "6 beads", "1 bead"])


def test_the_bead_under_the_pointer_is_named(editor):
    editor.page.mouse.move(*editor.at(8))
    expect(editor.page.locator("[data-status]")).to_have_text("B Bead B · bead 9 of 22 · round 2, place 4")
    editor.page.mouse.move(*editor.at(22 + 8))
    expect(editor.page.locator("[data-status]")).to_have_text("B Bead B · bead 9 of 22 · pass 2")


@pytest.mark.parametrize("width", [1440, 1024])
def test_the_line_that_names_a_bead_is_never_cut_and_nothing_moves_for_it(opened, site, width):
    long = replace(pattern(SPIRAL, 5, "ABC"), chart=bytes(k * 7 % 3 for k in range(4000)))
    names = ("Sea", "Deep water of the outer harbour in the last light of an evening in November, matte", "Foam")
    entries = tuple(replace(entry, name=name) for entry, name in zip(long.palette, names, strict=True))
    editor = drawing(
        opened(viewport={"width": width, "height": 800}), site.database, replace(long, palette=Palette(entries))
    )
    line, chart = editor.page.locator("[data-status]"), editor.page.locator("[data-chart]")
    tall = chart.bounding_box()
    for bead in (0, 1, 2, 60):
        editor.page.mouse.move(*editor.at(bead))
        expect(line).to_contain_text(f"bead {bead + 1} of 4,000")
        assert line.evaluate("line => line.scrollWidth <= line.clientWidth && line.scrollHeight <= line.clientHeight")
        assert chart.bounding_box() == tall


def test_a_bead_painted_in_a_dimmed_pass_is_painted_in_the_chart(editor):
    editor.page.get_by_label("Passes").fill("3")
    editor.press("Tab")
    editor.bead("C")
    editor.click(22 + 7)
    assert_same_chart(
        5,
        editor.kept().chart,
        """
         B A A B A
        A A B A A B
         A C B A A
        B A A B A A
    """,
    )
    assert editor.page.evaluate("document.querySelector('[data-draw]').store.state.pattern.beads.length") == 22


def test_a_press_on_a_pass_that_follows_draws_the_bead_it_repeats_and_a_patch_stays_in_the_chart(editor):
    along = editor.page.locator("[data-along]").get_attribute("max")
    editor.bead("C")
    editor.drag(21, 22 + 0)
    assert editor.state("cursor") == 21
    assert (editor.kept().chart[0], editor.kept().chart[21]) == (2, 2)
    editor.tool("Take colour")
    editor.click(44 + 1)
    assert (editor.state("cursor"), editor.state("colour")) == (1, editor.kept().chart[1])
    editor.tool("Patch")
    editor.drag(22 + 5, 22 + 7)
    assert editor.state("patch") is None
    assert (len(editor.kept().chart), along) == (22, editor.page.locator("[data-along]").get_attribute("max"))


def test_start_and_end_are_set_and_beads_move_between_them(editor):
    editor.click(6)
    editor.tool("Parts")
    editor.page.get_by_role("button", name="Begin at the cursor").click()
    editor.page.get_by_label("Ends at bead").fill("17")
    editor.page.locator("#part").get_by_role("button", name="Set").click()
    kept = editor.kept()
    assert (len(kept.start), len(kept.chart), len(kept.end)) == (6, 11, 5)
    editor.page.mouse.move(*editor.at(18))
    expect(editor.page.locator("[data-status]")).to_contain_text("bead 2 of 5 of the end")


def test_the_chart_becomes_as_long_as_one_says(editor):
    editor.bead("C")
    editor.tool("Parts")
    editor.page.get_by_label("Length, in beads").fill("24")
    editor.page.locator("#part").get_by_role("button", name="Set").click()
    kept = editor.kept()
    assert (len(kept.chart), kept.chart[-2:]) == (24, bytes([2, 2]))


def test_a_bead_is_added_changed_and_merged(editor):
    editor.page.get_by_role("button", name="Add a bead").click()
    editor.page.locator("#bead [name=code]").fill("a")
    editor.page.locator("#bead").get_by_role("button", name="Done").click()
    expect(editor.page.locator("#bead [data-wrong]")).to_have_text("The code A stands in the palette already.")
    editor.page.locator("#bead [name=code]").fill("lg")
    editor.page.locator("#bead [name=name]").fill("Lamp gold")
    editor.page.locator("#bead [name=colour]").fill("#dfa63a")
    editor.page.locator("#bead [name=finish]").select_option("lined")
    editor.page.locator("#bead").get_by_role("button", name="Done").click()
    expect(editor.page.locator(".tube[data-code=LG]")).to_be_visible()
    editor.click(1)
    kept = editor.kept()
    entry = kept.palette[3]
    assert (entry.code, entry.name, entry.colour, entry.finish, kept.chart[1]) == (
        "LG",
        "Lamp gold",
        "#dfa63a",
        "lined",
        3,
    )
    editor.page.get_by_role("button", name="Merge").click()
    editor.page.locator("#merge select").last.select_option(label="B Bead B")
    editor.page.locator("#merge").get_by_role("button", name="Merge").click()
    kept = editor.kept()
    assert (kept.palette.codes, kept.chart[1]) == (("A", "B", "C"), 1)


def test_a_colour_that_looks_like_another_is_said_where_it_is_chosen(editor):
    editor.page.locator("[data-bead=edit]").click()
    other = editor.state("pattern.palette")[0]["colour"]
    said = editor.page.locator("[data-alike]")
    editor.page.locator("#bead [name=colour]").fill(other)
    expect(said).to_have_text("Looks like A Bead A in plain sight: 0 apart, from 7 on two are told apart.")
    editor.page.locator("#bead [name=colour]").fill("#ffe95a")
    expect(said).to_be_empty()


def test_a_bead_that_is_not_used_can_leave_the_palette(editor):
    editor.bead("C")
    editor.page.get_by_role("button", name="Edit", exact=True).click()
    editor.page.get_by_role("button", name="Remove from the palette").click()
    assert editor.kept().palette.codes == ("A", "B")


def test_the_wheel_pans_and_with_ctrl_zooms_to_the_pointer(harbour):
    x, y = harbour.at(60)
    harbour.page.mouse.move(x, y)
    harbour.page.mouse.wheel(0, 200)
    harbour.until("camera.left", lambda left: left == 200)
    bead = harbour.state("under")
    harbour.page.mouse.move(x, y + 1)
    bead = harbour.state("under")
    before = harbour.state("camera.pitch")
    harbour.page.keyboard.down("Control")
    harbour.page.mouse.wheel(0, -200)
    harbour.page.keyboard.up("Control")
    harbour.until("camera.pitch", lambda pitch: pitch > before)
    harbour.page.mouse.move(x, y)
    assert harbour.state("under") == bead


def test_space_and_drag_pan_without_painting(harbour):
    harbour.page.mouse.wheel(0, 0)
    harbour.focus()
    at = harbour.at(120)
    harbour.page.mouse.move(*at)
    harbour.page.keyboard.down("Space")
    harbour.page.mouse.down()
    harbour.page.mouse.move(at[0] - 100, at[1], steps=3)
    harbour.page.mouse.up()
    harbour.page.keyboard.up("Space")
    assert abs(harbour.state("camera.left") - 100) <= 1
    assert harbour.state("history.done.length") == 0


def test_the_strip_shows_where_one_is_and_leads_elsewhere(harbour):
    strip = harbour.page.locator("[data-overview]")
    strip.click(position={"x": strip.bounding_box()["width"] - 4, "y": 10})
    along = harbour.page.locator("[data-along]")
    expect(along).not_to_have_value("0")
    assert harbour.state("camera.left") > 0
    along.press("Home")
    harbour.until("camera.left", lambda left: left == 0)


def test_fewer_passes_bring_the_chart_back_into_sight(harbour):
    passes, first = harbour.page.get_by_label("Passes"), harbour.page.locator("[data-along]").get_attribute("max")
    passes.fill("20")
    harbour.press("Tab")
    expect(harbour.page.locator("[data-along]")).not_to_have_attribute("max", first)
    harbour.page.locator("[data-along]").press("End")
    harbour.until("camera.left", lambda left: left > 2000)
    passes.fill("1")
    harbour.press("Tab")
    beads, around = len(harbour.state("pattern.beads")), harbour.state("pattern.around")
    width = beads / (around + 0.5) * harbour.state("camera.pitch")
    assert harbour.state("camera.left") <= max(
        0, width + 2 * harbour.state("camera.pitch") - harbour.state("camera.width")
    )
    assert harbour.state("camera.left") >= 0


def test_dragging_the_rope_turns_it(harbour):
    rope = harbour.page.locator("[data-rope]").bounding_box()
    x, y = rope["x"] + 200, rope["y"] + 30
    harbour.page.mouse.move(x, y)
    harbour.page.mouse.down()
    harbour.page.mouse.move(x, y + 40, steps=4)
    harbour.page.mouse.up()
    assert harbour.state("turn") == 220
    assert harbour.page.get_by_label("Turn the rope, in degrees").input_value() == "220"


def watch_moves(page):
    """From the first moment on the page sums up what moves by itself, each move by its share of the window."""
    page.add_init_script(
        "window.moved = 0; new PerformanceObserver(list => { for (const { value } of list.getEntries()) window.moved += value; }).observe({ type: 'layout-shift', buffered: true });"
    )


def moved(page) -> float:
    """What has moved until two frames from now."""
    return page.evaluate(
        "new Promise(r => requestAnimationFrame(() => requestAnimationFrame(() => setTimeout(() => r(moved)))))"
    )


def test_spin_turns_the_rope_slowly_and_not_at_all_for_those_who_want_it_still(opened, site):
    for motion, steps in (("no-preference", None), ("reduce", 30)):
        page = opened(reduced_motion=motion)
        page.goto(address("chart", id=2))
        page.wait_for_selector("[data-draw][data-ready]")
        page.get_by_role("button", name="Spin").first.click()
        editor = Editor(page, site.database, 2)
        editor.until("turn", lambda turn, steps=steps: turn == 180 + steps if steps else turn > 182)
        page.get_by_role("button", name="Spin").first.click()


def fingers(page):
    """A function that puts fingers down, moves and lifts them."""
    session = page.context.new_cdp_session(page)

    def touch(kind, *points):
        session.send(
            "Input.dispatchTouchEvent",
            {"type": kind, "touchPoints": [{"x": x, "y": y, "id": i} for i, (x, y) in enumerate(points)]},
        )

    return touch


def test_a_finger_draws_and_two_fingers_pan_and_zoom_without_drawing(opened, site):
    page = opened(has_touch=True)
    editor = drawing(page, site.database, pattern(SPIRAL, 5, "ABC"))
    page.locator("[name=reach][value=one]").check(force=True)
    editor.bead("C")
    touch, one, other = fingers(page), editor.at(1), editor.at(3)
    touch("touchStart", one)
    touch("touchMove", other)
    touch("touchEnd")
    assert editor.kept().chart[:5] == bytes([1, 2, 2, 2, 0])
    pitch, (x, y) = editor.state("camera.pitch"), editor.at(14)
    touch("touchStart", (x, y))
    touch("touchStart", (x, y), (x + 60, y))
    touch("touchMove", (x - 20, y), (x + 80, y))
    touch("touchEnd")
    assert editor.state("camera.pitch") > pitch
    assert editor.state("history.done.length") == 1
    assert editor.kept().chart[14] == 0


def drawn_pixels(page, selector):
    return page.evaluate(
        """selector => { const canvas = document.querySelector(selector), copy = new OffscreenCanvas(canvas.width, canvas.height), pen = copy.getContext("2d");
        pen.drawImage(canvas, 0, 0); return pen.getImageData(0, 0, canvas.width, canvas.height).data.filter((part, i) => i % 4 === 3 && part > 0).length; }""",
        selector,
    )


@pytest.fixture
def quiet(watch):
    """Software graphics complain of themselves while a ring is drawn."""
    yield
    watch.complaints = [complaint for complaint in watch.complaints if not READBACK.search(complaint)]


def test_the_ring_is_drawn_turned_and_told(harbour, quiet):
    harbour.page.get_by_role("button", name="Ring").click()
    expect(harbour.page.locator("[data-ring-words]")).to_have_text("900 beads, closing turn none")
    harbour.page.locator("canvas[data-ring]").press("ArrowRight")
    assert harbour.page.locator("[data-ring-yaw]").input_value() == "5"
    harbour.page.get_by_label("Repeats").fill("2")
    harbour.page.get_by_label("Repeats").press("Tab")
    expect(harbour.page.locator("[data-ring-words]")).to_contain_text("1,800 beads")


def test_where_webgl_is_missing_the_ring_says_so_and_the_rest_works(opened, site):
    page = opened()
    page.add_init_script(
        "HTMLCanvasElement.prototype.getContext = (own => function (kind, ...others) { return kind === 'webgl2' ? null : own.call(this, kind, ...others); })(HTMLCanvasElement.prototype.getContext)"
    )
    watch_moves(page)
    page.goto(address("chart", id=2))
    page.wait_for_selector("[data-draw][data-ready]")
    assert moved(page) < 0.05, "what stands on the page stays where it is when the script comes"
    page.get_by_role("button", name="Ring").click()
    expect(page.locator("[data-no-ring]")).to_contain_text("no WebGL2")
    expect(page.locator("[data-ring-words]")).to_contain_text("900 beads")
    page.keyboard.press("Escape")
    assert drawn_pixels(page, "[data-rope]") > 10_000


def test_rope_and_ring_are_saved_as_pictures(harbour, quiet):
    with harbour.page.expect_download() as rope:
        harbour.page.get_by_role("button", name="Save rope").click()
    assert rope.value.suggested_filename == "harbour-lights-rope.png"
    assert rope.value.path().read_bytes()[:8] == b"\x89PNG\r\n\x1a\n"
    harbour.page.get_by_role("button", name="Ring").click()
    with harbour.page.expect_download() as ring:
        harbour.page.locator("#ring").get_by_role("button", name="Save").click()
    assert ring.value.suggested_filename == "harbour-lights-ring.png"
    assert len(ring.value.path().read_bytes()) > 20_000


def test_left_handed_work_is_drawn_as_the_mirror_image(page, site):
    right = drawing(page, site.database, pattern(SPIRAL, 5, "ABC"))
    top = right.at(0)[1] < right.at(3)[1]
    left = drawing(page, site.database, pattern(SPIRAL, 5, "ABC", hand="left"))
    assert (top, left.at(0)[1] > left.at(3)[1]) == (True, True)
    left.page.locator("[name=reach][value=one]").check(force=True)
    left.bead("C")
    left.click(1)
    assert left.kept().chart[:2] == bytes([1, 2])


@pytest.mark.parametrize(("scheme", "rules"), [("light", {}), ("dark", COLOURS)], ids=["light", "dark"])
def test_nothing_bars_a_person_from_any_dialog(opened, watch, site, scheme, rules):
    page = opened(color_scheme=scheme)
    page.goto(address("chart", id=2))
    page.wait_for_selector("[data-draw][data-ready]")
    barred = {"page": violations(page, rules)}
    for tool in ("line", "flood", "take", "patch", "add", "remove", "slide"):
        page.locator(f"[data-tool={tool}]").click()
        barred[tool] = violations(page, rules, TOOLS)
    for name in DIALOGS:
        page.locator(f"[data-opens={name}]:visible").first.click()
        barred[name] = violations(page, rules, OPEN)
        page.keyboard.press("Escape")
    page.locator("[data-bead=edit]").click()
    barred["bead"] = violations(page, rules, OPEN)
    page.keyboard.press("Escape")
    page.evaluate("document.querySelector('#stale').showModal()")
    barred["stale"] = violations(page, rules, OPEN)
    assert {dialog.get_attribute("id") for dialog in page.locator("dialog").all()} <= set(barred)
    forgive_axe(watch)
    assert {name: found for name, found in barred.items() if found} == {}


def test_a_narrow_window_shows_the_pattern_and_says_that_drawing_wants_a_wider_one(opened, site):
    page = opened(viewport={"width": 390, "height": 844}, has_touch=True)
    watch_moves(page)
    page.goto(address("chart", id=2))
    page.wait_for_selector("[data-draw][data-ready]")
    assert moved(page) < 0.05
    expect(page.get_by_text("drawing wants a wider one")).to_be_visible()
    expect(page.locator(".rail")).to_be_hidden()
    assert drawn_pixels(page, "[data-rope]") > 3_000


def test_on_paper_stand_the_title_the_chart_in_sight_and_every_bead_without_a_tool(harbour):
    page = harbour.page
    page.emulate_media(media="print")
    page.set_viewport_size({"width": 680, "height": 960})
    seen = [".draw-title", ".only-printed", "[data-beads]", "[data-rope]"]
    assert [place for place in seen if not page.locator(place).is_visible()] == []
    tools = ".rail, .options, .strip, .views, .saved, [data-status]"
    assert [tool for tool in page.locator(tools).all() if tool.is_visible()] == []
    assert page.evaluate("""[...document.querySelectorAll(".pictures canvas, .tube")]
        .every(part => part.getBoundingClientRect().right <= innerWidth)""")
    page.emulate_media(media="screen")
    page.set_viewport_size(WIDE)


def test_the_rule_is_read_where_the_system_chooses_the_colours(opened):
    page = opened(forced_colors="active")
    page.goto(address("chart", id=2))
    page.wait_for_selector("[data-draw][data-ready]")
    assert page.evaluate(INKS, "[data-rule]") > 1


def test_without_script_the_page_leads_to_the_beads_as_text(opened, site):
    page = opened(java_script_enabled=False)
    page.goto(address("chart", id=2))
    page.get_by_role("link", name="The beads can be edited as text.").click()
    expect(page).to_have_url(re.compile(f"{address('edit', id=2)}$"))


def test_a_new_pattern_begins_as_a_blank_chart(page, site):
    page.goto("/")
    page.get_by_role("link", name="New pattern").click()
    page.get_by_role("link", name="Draw a chart").click()
    page.get_by_label("Title").fill("Moonlight")
    page.get_by_role("button", name="Begin to draw").click()
    page.wait_for_selector("[data-draw][data-ready]")
    expect(page.locator("h1")).to_have_text("Moonlight")
    assert page.evaluate("document.querySelector('[data-draw]').store.state.reach") == "one"


def test_a_hundred_thousand_beads_open(page, site):
    wide = pattern(
        "\n".join(" ".join("AB"[(row + k) % 2] for k in range(40 + (row % 2 == 0))) for row in reversed(range(2468))),
        40,
    )
    editor = drawing(page, site.database, wide)
    assert (
        editor.page.evaluate("document.querySelector('[data-draw]').store.state.pattern.beads.length")
        == len(wide.chart)
        > 99_900
    )
    editor.page.locator("[name=reach][value=one]").check(force=True)
    editor.bead("C")
    editor.click(5)
    assert editor.kept().chart[5] == 2
