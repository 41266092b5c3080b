"""The stringing card on a phone with the network off: strung, crocheted, undone, rested, and come back to."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from itertools import accumulate, groupby
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from engine.booklet.choices import Choices
from engine.counting.answers import answer
from engine.counting.groups import group_runs
from engine.counting.questions import Question
from engine.pattern.palette import Entry, Palette
from engine.pattern.part import Part
from engine.pattern.pattern import Pattern, left_handed
from tests.booklets import COLOURS, NAMES
from tests.browser.conftest import Browsers, cleared
from tests.browser.looks import COLOURS as COLOUR_RULES
from tests.browser.looks import OWN_STYLE, violations
from webapp.paths import STATIC
from webapp.printing.card import card_html

PHONE = {"width": 390, "height": 844}
PALETTE = Palette(
    tuple(Entry(code, name, colour) for code, name, colour in zip(["A", "B", "QQ"], NAMES, COLOURS, strict=False))
)
SNAKE = Pattern(
    "Garden snake",
    6,
    PALETTE,
    in_parts=(
        Part("Head", bytes([2] * 14 + [0, 1] * 6 + [0])),
        Part("Back", bytes([0, 0, 0, 1, 2]), None),
        Part("Tail", bytes([1] * 8)),
    ),
)
CHOICES = Choices(Question(300.0), 0.6)


@pytest.fixture
def carried(browsers: Browsers, tmp_path: Path) -> Iterator[Callable[..., Page]]:
    """The card of the snake in a phone's browser without a network; whatever it asks for or complains of fails."""
    file, wrong, contexts = tmp_path / "card.html", [], set()

    def carried(pattern: Pattern = SNAKE, **options: object) -> Page:
        file.write_bytes(card_html(pattern, CHOICES))
        context = browsers.on(STATIC.parent.as_uri(), viewport=PHONE, offline=True, has_touch=True, **options)
        contexts.add(context)
        page = context.new_page()
        page.on("request", lambda asked: asked.url == file.as_uri() or wrong.append(asked.url))
        page.on("console", lambda message: message.text.startswith(OWN_STYLE) or wrong.append(message.text))
        page.on("pageerror", lambda error: wrong.append(str(error)))
        page.goto(file.as_uri())
        return page

    yield carried
    for context in contexts:
        cleared(context)
    assert wrong == []


def worked_in_words(pattern: Pattern = SNAKE) -> list[str]:
    """The worked rope bead by bead, as codes."""
    codes = pattern.palette.codes
    return [codes[bead] for bead in answer(pattern, CHOICES.question, plan=CHOICES.plan).size.worked]


COUNTED_WRITES = """window.writes = []; const set = Storage.prototype.setItem;
    Storage.prototype.setItem = function (name, value) { writes.push(name); set.call(this, name, value); };"""


def test_a_card_that_is_opened_again_writes_nothing_until_something_is_done(carried):
    page = carried()
    page.locator("#next").tap()
    done = page.locator("#done").text_content()
    page.add_init_script(COUNTED_WRITES)
    page.reload()
    expect(page.locator("#done")).to_have_text(done)
    assert page.evaluate("writes") == []
    page.locator("#next").tap()
    assert page.evaluate("writes.length") == 1


def test_the_place_is_kept_through_taps_keys_swipes_a_rest_an_undo_and_a_reload(carried):
    page = carried()
    threads = answer(SNAKE, CHOICES.question, plan=CHOICES.plan).stringing.threads
    where, now, sums = page.locator("#place"), page.locator("#runs"), page.locator("#done")
    assert page.evaluate("[...card.rope].map(index => card.entries[index].code)") == worked_in_words()
    expect(page.locator("#where")).to_have_text(f"Thread 1 of {len(threads)}")
    first = where.text_content()
    now.tap()
    page.keyboard.press("ArrowRight")
    page.locator("#next").tap()
    box = page.locator("#now").bounding_box()
    across, down = box["x"] + box["width"] / 2, box["y"] + box["height"] / 2
    page.mouse.move(across + 80, down)
    page.mouse.down()
    page.mouse.move(across - 80, down)
    page.mouse.up()
    expect(page.locator("#heard")).not_to_be_empty()
    steps = page.evaluate("thread().list.upto[4]")
    expect(sums).to_have_text(f"{steps} strung, {threads[0].beads - steps} left")
    page.locator("#rest").tap()
    expect(page.locator("#rest")).to_have_text("Rest is marked")
    page.locator("#back").tap()
    expect(page.locator("#rest")).to_have_text("Mark a rest")
    expect(sums).not_to_have_text(re.compile(f"^{steps} strung"))
    page.locator("#undo").tap()
    expect(sums).to_have_text(re.compile(f"^{steps} strung"))
    page.get_by_role("button", name="More").tap()
    page.locator("#to-thread").fill("2")
    page.locator("#to-beads").fill("9999")
    page.locator("#go").tap()
    expect(page.get_by_role("alert")).to_contain_text("“9999” is not a number of beads of thread 2")
    page.locator("#to-beads").fill("0")
    page.locator("#go").tap()
    expect(page.locator("#where")).to_have_text(f"Thread 2 of {len(threads)}")
    page.reload()
    expect(page.locator("#where")).to_have_text(f"Thread 2 of {len(threads)}")
    expect(page.locator("#rested")).to_contain_text(f"thread 1, {steps} beads strung on it")
    page.locator("#to-rest").tap()
    expect(sums).to_have_text(re.compile(f"^{steps} strung"))
    assert where.text_content() != first


def test_every_tap_of_a_thread_shows_the_next_of_its_list_and_a_check_after_every_ten(carried):
    page = carried()
    (thread, *_) = answer(SNAKE, CHOICES.question, plan=CHOICES.plan).stringing.threads
    shown, checks = page.evaluate(
        """() => { const shown = [], checks = [];
          while (by("place").textContent !== "Strung") {
            shown.push([...document.querySelectorAll("#runs .run")].map(run => [run.lastChild.textContent, Number(run.firstChild.textContent)]));
            by("next").click();
            if (!by("check").hidden) checks.push(by("check").textContent);
          }
          return [shown, checks]; }"""
    )
    seen = [(code, beads) for tap in shown for code, beads in tap]
    assert tuple(seen) == thread.runs
    told = group_runs(thread.runs)
    begun = told.before_beads + told.times * told.group_beads
    after = list(accumulate((run.beads for run in told.after), initial=begun))
    due = [beads for times, beads in told.totals if times % 10 == 0] + after[10::10] + [thread.beads]
    assert checks == [f"Check: {beads} beads are on thread 1 by now." for beads in due]


def test_crocheted_round_by_round_the_card_says_the_chart_and_which_bead_of_which_part_comes_next(carried):
    page = carried()
    crochet(page)
    rope = worked_in_words()
    for first in (0, 6, 12):
        expect(page.locator("#where")).to_have_text(re.compile(f"^Round {first // 6 + 1} of "))
        runs = [(code, len(list(run))) for code, run in groupby(rope[first : first + 6])]
        shown = re.findall(r"(\d+)\s+(A|B|QQ)\b", page.locator("#runs").inner_text())
        assert [(code, int(beads)) for beads, code in shown] == runs
        page.locator("#next").tap()
    page.get_by_role("button", name="A bead", exact=True).tap()
    page.locator("#next").tap()
    expect(page.locator("#place")).to_have_text("bead 2 of 6")
    expect(page.locator("#spot")).to_contain_text("Pass 1, bead 20 of 27 in the chart of part 1, “Head”.")
    page.get_by_role("button", name="A run", exact=True).tap()
    page.locator("#back").tap()
    expect(page.locator("#place")).to_have_text("bead 1 of 6")


def test_a_step_ends_where_its_thread_ends_and_the_card_says_then_to_join_the_next(carried):
    page = carried()
    crochet(page)
    threads = answer(SNAKE, CHOICES.question, plan=CHOICES.plan).stringing.threads
    ends = list(accumulate(thread.beads for thread in threads))
    assert any(end % SNAKE.around for end in ends[:-1])
    joins, back = page.evaluate(
        """() => { const joins = [], places = [0], back = [];
          while (piece().place.worked < card.rope.length) {
            by("next").click();
            places.push(piece().place.worked);
            if (by("check").textContent.includes("join")) joins.push([piece().place.worked, by("check").textContent, by("heard").textContent]);
          }
          while (piece().place.worked) { back.push(piece().place.worked); by("back").click(); }
          return [joins, String([...back, 0].reverse()) === String(places)]; }"""
    )
    assert [(end, said) for end, said, _ in joins] == [
        (end, f"Thread {number} is used up: join thread {number + 1}.") for number, end in enumerate(ends[:-1], 1)
    ]
    assert back and all(heard.startswith(said) for _, said, heard in joins)


def test_undo_shows_what_it_takes_back(carried):
    page = carried()
    page.locator("#next").tap()
    crochet(page)
    page.locator("#next").tap()
    page.get_by_role("button", name="String", exact=True).tap()
    page.locator("#undo").tap()
    expect(page.locator("#where")).to_have_text(re.compile("^Round 1 of "))
    page.locator("#undo").tap()
    expect(page.locator("#done")).to_have_text(re.compile("^0 strung"))


def test_whoever_goes_to_the_middle_of_a_step_is_told_what_is_on_the_thread_already(carried):
    page = carried()
    (thread, *_) = answer(SNAKE, CHOICES.question, plan=CHOICES.plan).stringing.threads
    step = next(beads for beads in page.evaluate("[...thread().list.items].map(item => item.beads)") if beads > 1)
    upto = page.evaluate("step => thread().list.upto[thread().list.items.findIndex(item => item.beads === step)]", step)
    page.get_by_role("button", name="More").tap()
    page.locator("#to-thread").fill("1")
    page.locator("#to-beads").fill(str(upto + 1))
    page.locator("#go").tap()
    expect(page.locator("#done")).to_have_text(f"{upto} strung, {thread.beads - upto} left")
    assert page.evaluate("scrollY") == 0
    expect(page.locator("#check")).to_have_text("Of what stands here, 1 bead is on the thread already.")
    page.locator("#next").tap()
    expect(page.locator("#check")).not_to_contain_text("already")


def test_the_chart_and_what_comes_next_stand_above_the_buttons(carried):
    page = carried()
    crochet(page)
    chart, hold = page.locator("#chart").bounding_box(), page.locator(".hold").bounding_box()
    assert chart["y"] + chart["height"] <= hold["y"]
    expect(page.locator("#hint")).to_have_text(re.compile("^Tap when crocheted, in this order$|^Tap when it is "))


def test_the_chart_for_the_left_hand_is_the_mirror_image_of_that_for_the_right(carried):
    right, left = (chart_drawn(carried(pattern)) for pattern in (SNAKE, left_handed(SNAKE)))
    assert alike(right, [row[::-1] for row in left]) > 0.98 > alike(right, left)


def crochet(page: Page) -> None:
    page.get_by_role("button", name="Crochet", exact=True).tap()
    expect(page.locator("#chart")).to_be_visible()


def chart_drawn(page: Page) -> list[list[int]]:
    """The red of every fifth row of the chart, without the margins in which rounds are numbered."""
    crochet(page)
    return page.evaluate(
        """() => { const canvas = document.getElementById("chart"), { width, height } = canvas;
          const { data } = canvas.getContext("2d").getImageData(0, 0, width, height), reds = [];
          for (let y = 0; y < height; y += 5)
            reds.push(Array.from({ length: width }, (_, x) => data[4 * (y * width + x)]).slice(45, -45));
          return reds; }"""
    )


def alike(one: list[list[int]], other: list[list[int]]) -> float:
    """The share of pixels that two pictures have alike."""
    pairs = [pair for rows in zip(one, other, strict=True) for pair in zip(*rows, strict=True)]
    return sum(abs(first - second) < 40 for first, second in pairs) / len(pairs)


def test_several_pieces_keep_places_of_their_own_and_a_removed_one_comes_back(carried):
    page = carried()
    page.locator("#next").tap()
    page.get_by_role("button", name="More").tap()
    page.locator("#name").fill("For Ada")
    page.locator("#add").tap()
    pieces = page.locator("#pieces li")
    expect(pieces).to_have_count(2)
    expect(pieces.nth(1)).to_contain_text("For Ada: thread 1, 0 beads strung on it")
    page.get_by_role("button", name="Remove Piece 1").tap()
    expect(pieces).to_have_count(1)
    page.locator("#take-back").tap()
    expect(pieces.nth(0)).not_to_contain_text("thread 1, 0 beads strung on it")


def test_without_storage_the_card_works_and_says_that_it_keeps_nothing(carried):
    page = carried()
    expect(page.locator("#refused")).to_be_hidden()
    page.add_init_script("Object.defineProperty(window, 'localStorage', { get() { throw new Error('refused'); } })")
    page.reload()
    expect(page.locator("#refused")).to_be_visible()
    page.locator("#next").tap()
    expect(page.locator("#done")).not_to_have_text(re.compile("^0 strung"))


def test_without_script_the_lists_stand_there_to_be_read(carried):
    page = carried(java_script_enabled=False)
    expect(page.get_by_role("heading", name="List 1")).to_be_visible()
    expect(page.locator("#app")).to_be_hidden()
    expect(page.locator("noscript p")).to_be_visible()


def test_the_card_bars_nobody_in_any_look_and_is_no_wider_than_a_phone(carried):
    page = carried()
    wrong = []
    for look, rules in (("light", {}), ("dark", COLOUR_RULES), ("contrast", COLOUR_RULES)):
        for view in ("String", "Crochet", "Lists", "More"):
            page.get_by_role("button", name="More").tap()
            page.locator(f"button[data-look={look}]").tap()
            page.get_by_role("button", name=view, exact=True).tap()
            wrong += violations(page, rules)
            wide = page.evaluate("document.documentElement.scrollWidth")
            wrong += [f"{view} is {wide} px wide"] if wide > PHONE["width"] else []
    assert wrong == []
