"""One value per page: every field with a sentence, every field used, and what the builders put into them."""

from __future__ import annotations

import re
from dataclasses import fields, is_dataclass, replace
from random import Random
from typing import Annotated, get_args, get_origin, get_type_hints

import pytest

from engine.counting.rope import Swatch
from engine.counting.workshop import Workshop
from engine.pattern.notation import parse
from engine.pattern.palette import Entry, Palette
from tests.web.sample_pages import (
    BUOYS,
    FRAME,
    JOB,
    MEASURED,
    PALETTE,
    SETTINGS,
    STORED,
    WORKSHOP,
    found,
    pages,
    parts,
    summary,
    wrong_editor,
)
from webapp.pages.forms import all as forms
from webapp.pages.views import all as views
from webapp.pages.views.glance import closing_in_words, drift_in_words
from webapp.paths import TEMPLATES
from webapp.records import KeptSwatch, StoredPattern

EVERYTHING = {**pages(), **parts()}


def sized(**typed: str) -> forms.SizeForm:
    return forms.read_size(typed.items(), SETTINGS)


# the contract between value and template


def told_values(kind: type) -> set[type]:
    """The page values that stand in the fields of a page value, itself among them."""
    found_types, waiting = set(), [kind]
    while waiting:
        value = waiting.pop()
        if is_dataclass(value) and value.__module__.startswith("webapp.pages.views") and value not in found_types:
            found_types.add(value)
            waiting += list(get_type_hints(value).values())
        else:
            waiting += [part for part in get_args(value) if part is not Ellipsis]
    return found_types


@pytest.mark.parametrize("page", views.PAGES)
def test_every_field_of_a_page_value_has_its_sentence(page: type) -> None:
    values = told_values(page)
    for value in values:
        hints = get_type_hints(value, include_extras=True)
        assert value.__doc__ and value.__doc__.endswith(".")
        for field in fields(value):
            hint = hints[field.name]
            if hint in values:
                continue  # Its class says what it is.
            assert get_origin(hint) is Annotated and str(hint.__metadata__[0]).endswith("."), (
                f"{value.__name__}.{field.name}"
            )


def source(template: str, seen: set[str]) -> str:
    """The text of a template with all that it extends, includes and imports."""
    if template in seen:
        return ""
    seen.add(template)
    text = (TEMPLATES / template).read_text("utf-8")
    others = re.findall(r'{% (?:extends|include|import|from) "([^"]+)"', text)
    return text + "".join(source(other, seen) for other in others)


@pytest.mark.parametrize("page", views.PAGES)
def test_a_template_names_exactly_the_fields_that_its_value_has(page: type) -> None:
    templates = {template for template, value in EVERYTHING.values() if type(value) is page}
    used = {
        name for template in templates for name in re.findall(r"(?<!/)\b(?:page|check)\.(\w+)", source(template, set()))
    }
    given = {field.name for field in fields(page)}
    if page is views.EditorPage:
        given |= {field.name for field in fields(views.CheckPart)}
    assert templates and used == given


def test_page_values_do_not_change() -> None:
    assert all(kind.__dataclass_params__.frozen for page in views.PAGES for kind in told_values(page))  # type: ignore[attr-defined]


# frame


def test_what_was_done_is_said_only_from_the_table() -> None:
    assert views.frame(SETTINGS, said="saved").said == "Saved as a new revision."
    assert views.frame(SETTINGS, said="<b>Send money</b>").said == ""


def test_stitches_go_by_the_makers_terms() -> None:
    uk, us = (
        views.pattern_page(views.frame(replace(SETTINGS, terms=terms)), wide(), WORKSHOP) for terms in ("uk", "us")
    )
    assert (uk.facts[-1].more, us.facts[-1].more) == ("double crochet", "single crochet")
    assert FRAME.stitches == (("slip", "Slip stitch"), ("single", "Double crochet"))


def wide() -> StoredPattern:
    return replace(STORED, pattern=replace(BUOYS, around=12))


# library


def test_pages_of_the_library_keep_the_search() -> None:
    page = views.library_page(FRAME, found(summary(), page=2, pages=3), forms.Finder("sea", "night", "title", 2))
    assert (page.newer, page.older) == ("/?search=sea&tag=night&sort=title", "/?search=sea&tag=night&sort=title&page=3")


def test_the_first_and_the_last_page_lead_nowhere_else() -> None:
    page = views.library_page(FRAME, found(summary()), forms.Finder())
    assert (page.newer, page.older) == ("", "")


def test_a_tag_narrows_and_pressed_again_lets_go() -> None:
    free = views.library_page(FRAME, found(summary()), forms.Finder("x")).tags[0]
    held = views.library_page(FRAME, found(summary()), forms.Finder("x", "sea")).tags[0]
    assert (free.address, free.chosen, held.address, held.chosen) == ("/?search=x&tag=sea", False, "/?search=x", True)


def test_nothing_kept_is_told_from_nothing_found() -> None:
    assert views.library_page(FRAME, found(), forms.Finder()).empty
    assert not views.library_page(FRAME, found(), forms.Finder("zebra")).empty


def test_a_card_shows_a_few_colours_and_says_how_many_more() -> None:
    card = views.library_page(
        FRAME, found(summary(colours=tuple(f"#00000{n}" for n in range(9)))), forms.Finder()
    ).cards[0]
    assert (len(card.colours), card.more) == (6, 3)
    assert card.facts == "6 around · 11/0 round · repeat 31"
    assert card.picture == "/patterns/1/picture.webp?view=ring&width=640&version=r3"


# one pattern


def test_the_facts_of_a_pattern() -> None:
    page = views.pattern_page(FRAME, STORED, WORKSHOP)
    assert [(fact.name, fact.value, fact.more) for fact in page.facts] == [
        ("Around", "6 beads", ""),
        ("Chart", "31 beads", "5.17 rounds"),
        ("Repeat", "31 beads", "the whole chart"),
        ("Drift", "−1.5 beads", "−83° round the rope in one pass"),
        ("Rope thickness", "about 6 mm, 5 to 7", "measure before you buy caps"),
        ("Rounds per cm", "6.44", "estimate ±15 %"),
        ("Closes to a ring", "at every 31 beads", ""),
        ("Worked", "right-handed", "slip stitch"),
    ]


def test_beads_that_look_alike_are_named_and_to_whom() -> None:
    palette = replace(
        BUOYS.palette,
        entries=tuple(
            replace(entry, colour=colour)
            for entry, colour in zip(BUOYS.palette, ("#a39000", "#ff0000", "#2040c0"), strict=False)
        ),
    )
    page = views.pattern_page(FRAME, replace(STORED, pattern=replace(BUOYS, palette=palette)), WORKSHOP)
    first, second = palette[0], palette[1]
    assert page.alike == (
        f"{first.code} {first.name} and {second.code} {second.name} look alike to eyes weak in green: "
        "difference 1.1, where 7 can be told apart. "
        f"{first.code} {first.name} can be told apart when it is lighter and greyer, such as #b4a041.",
    )
    assert views.pattern_page(FRAME, STORED, WORKSHOP).alike == ()


def test_of_many_beads_that_look_alike_the_page_tells_the_nearest_and_counts_the_rest():
    greys = Palette(tuple(Entry(chr(65 + place), f"Grey {place}", f"#{128 + place:02x}8080") for place in range(10)))
    page = views.pattern_page(FRAME, replace(STORED, pattern=replace(BUOYS, palette=greys)), WORKSHOP)
    assert (len(page.alike), page.more_alike) == (6, 45 - 6)


def test_a_swatch_makes_the_thickness_known() -> None:
    page = views.pattern_page(FRAME, STORED, MEASURED)
    thickness = {fact.name: fact.value for fact in page.facts}["Rope thickness"]
    assert page.measuring is None and thickness == "6.2 mm"


def test_beads_of_the_palette_add_up() -> None:
    page = views.pattern_page(FRAME, replace(STORED, pattern=replace(BUOYS, start=b"\x02\x02", end=b"\x01")), WORKSHOP)
    assert [line.beads for line in page.palette] == [16, 11, 7]
    assert page.beads == 34 and sum(line.share for line in page.palette) == pytest.approx(100)
    assert ("Start and end", "2 and 1 beads") in [(fact.name, fact.value) for fact in page.facts]


@pytest.mark.parametrize(
    ("text", "around", "words"),
    [
        ("13A", 6, ("none", "a pass ends where it began")),
        ("14A", 6, ("+1 beads", "+55° round the rope in one pass")),
        ("12A", 6, ("−1 beads", "−55° round the rope in one pass")),
    ],
)
def test_drift_in_words(text: str, around: int, words: tuple[str, str]) -> None:
    assert drift_in_words(replace(BUOYS, around=around, chart=parse(text, PALETTE.codes)).drift) == words


def test_a_short_repeat_closes_only_from_the_least_ring_on() -> None:
    assert closing_in_words(replace(BUOYS, chart=parse("2A 2B", PALETTE.codes))) == (
        "at every 4 beads",
        "from 16 beads on",
    )
    assert closing_in_words(replace(BUOYS, start=b"\x00"))[1] == "the seam joins the end to the start"


# editor


def test_the_check_draws_and_counts() -> None:
    part = views.check_part(forms.editor_of(STORED))
    assert part.sentence == (
        "31 beads, 5.17 rounds. Repeat 31 beads, drift −1.5 beads. A ring closes at every 31 beads."
    )
    assert part.chart.startswith("<svg") and " style=" not in part.chart
    assert [(sign.code, beads) for sign, beads in part.signs] == [("A", 16), ("B", 10), ("C", 5)]


def test_the_check_says_what_is_wrong_with_the_beads_but_waits_for_a_title() -> None:
    assert views.check_part(forms.read_editor([("beads", "2Q"), ("around", "6"), ("bead_code", "A")])).errors == (
        "Line 1, column 2: “Q” is not a code of the palette; expected one of A.",
    )
    assert views.check_part(forms.blank_editor()).waiting


def test_a_long_chart_is_drawn_in_part() -> None:
    long = replace(STORED, pattern=replace(BUOYS, chart=parse("9000A B", PALETTE.codes)))
    part = views.check_part(forms.editor_of(long))
    assert (part.drawn, part.beads) == (1150, 9001)


def test_a_stale_save_shows_what_was_saved_meanwhile() -> None:
    mine = replace(forms.editor_of(STORED), made_from=2)
    page = views.edit_page(FRAME, STORED, mine, WORKSHOP.kinds, stale=True)
    assert page.theirs is not None
    assert (page.theirs.revision, page.theirs.beads[:9], page.form.made_from) == (3, "3A 2B C 3", 2)


def test_a_kind_of_ones_own_can_still_be_chosen() -> None:
    entries = (replace(PALETTE[0], kind="9/0 three-cut"), *PALETTE.entries[1:])
    stored = replace(STORED, pattern=replace(BUOYS, palette=type(PALETTE)(entries)))
    assert "9/0 three-cut" in views.edit_page(FRAME, stored, forms.editor_of(stored), WORKSHOP.kinds).kinds


def test_what_was_typed_stays_on_the_page() -> None:
    page = views.new_page(FRAME, wrong_editor(), WORKSHOP.kinds)
    assert page.form.typed.around == "2" and page.form.errors


# stringing


def test_equal_lists_are_shown_once_and_say_how_often() -> None:
    page = views.stringing_page(FRAME, STORED, sized(length="20 cm", threads="chart"), WORKSHOP)
    assert [(one.title, one.say, one.beads) for one in page.lists] == [
        ("Threads 1 to 24", "String this list 24 times", 31),
        ("Thread 25", "", 29),
    ]
    assert page.joins == 24


def test_lengths_of_a_list_say_whether_they_are_measured_and_in_the_makers_terms() -> None:
    swatch = Swatch("11/0 round", 12, "single", 480, 80.0)
    estimate, measured = (
        views.stringing_page(FRAME, wide(), sized(length="20 cm"), workshop)
        for workshop in (WORKSHOP, Workshop(swatches=(swatch,)))
    )
    assert (estimate.source, estimate.measured) == ("11/0 double crochet, wide: estimate ±10 %", False)
    assert measured.measured


def test_running_totals_grow_to_the_beads_of_the_thread() -> None:
    uneven = replace(BUOYS, chart=bytes(Random(5).choices(range(3), k=400)))
    page = views.stringing_page(FRAME, replace(STORED, pattern=uneven), sized(threads="whole"), WORKSHOP)
    thread = page.lists[0]
    lines = [run for column in thread.columns for ten in column.tens for run in ten.runs]
    assert (thread.group, thread.after) == (None, ())
    assert [line.number for line in lines] == list(range(1, thread.runs + 1))
    assert [sum(line.beads for line in lines[: at + 1]) for at in range(len(lines))] == [line.upto for line in lines]
    assert thread.columns[-1].total == thread.beads == sum(column.beads for column in thread.columns)
    assert {len(ten.runs) for column in thread.columns for ten in column.tens[:-1]} == {10}
    assert all(ten.total == ten.runs[-1].upto for column in thread.columns for ten in column.tens)
    assert {column.last - column.first + 1 for column in thread.columns[:-1]} == {20}


def test_a_list_that_repeats_is_told_as_groups_between_what_stands_before_and_behind() -> None:
    pattern = replace(BUOYS, start=b"\2\2", end=b"\2\2\2")
    page = views.stringing_page(FRAME, replace(STORED, pattern=pattern), sized(length="30 cm"), WORKSHOP)
    (thread,) = page.lists
    group = thread.group
    assert group is not None and thread.columns and thread.after
    assert group.beads == sum(run.beads for run in group.runs) == BUOYS.repeat
    assert [number for ten in group.tens for number in ten.numbers] == list(range(1, group.times + 1))
    before = thread.columns[-1].total
    assert [ten.total for ten in group.tens] == [before + ten.numbers[-1] * group.beads for ten in group.tens]
    assert thread.after[-1].total == thread.beads
    runs = sum(column.last - column.first + 1 for column in (*thread.columns, *thread.after))
    assert runs + group.times * len(group.runs) == thread.runs == thread.after[-1].last


def test_the_last_bead_worked_stands_first_in_the_list() -> None:
    page = views.stringing_page(
        FRAME, replace(STORED, pattern=replace(BUOYS, chart=BUOYS.chart[:6])), sized(), WORKSHOP
    )
    first = page.lists[0].columns[0].tens[0].runs
    worked = [BUOYS.palette[bead].code for bead in BUOYS.chart[:6]]
    assert [run.code for run in first for _ in range(run.beads)] == worked[::-1]


def test_threads_are_balanced_where_nothing_else_is_chosen() -> None:
    page, balanced, charts = (
        views.stringing_page(FRAME, STORED, sized(length="300 cm", **chosen), WORKSHOP)
        for chosen in ({}, {"threads": "balanced"}, {"threads": "chart"})
    )
    assert page.lists == balanced.lists != charts.lists
    assert 0 < page.joins < charts.joins


def test_a_very_long_list_is_shown_in_parts_that_make_up_the_whole() -> None:
    chance = Random(7)
    beads = bytes(number % 2 for number in range(7_000) for _ in range(chance.randint(1, 3)))
    long = replace(STORED, pattern=replace(BUOYS, chart=beads))
    asked = [("threads", "whole"), ("name", "x"), ("part", "2")]
    value = [
        views.stringing_page(FRAME, long, sized(threads="whole"), WORKSHOP, part, asked) for part in (0, 1, 2, 3, 9)
    ]
    assert [(page.part, page.parts, page.earlier, page.later) for page in value[1:4]] == [
        (1, 3, "", "/patterns/7/stringing?threads=whole&part=2"),
        (2, 3, "/patterns/7/stringing?threads=whole&part=1", "/patterns/7/stringing?threads=whole&part=3"),
        (3, 3, "/patterns/7/stringing?threads=whole&part=2", ""),
    ]
    assert (value[0].part, value[4].part) == (1, 3)
    lines = [run for page in value[1:4] for column in page.lists[0].columns for ten in column.tens for run in ten.runs]
    assert [run.number for run in lines] == [*range(1, 7_001)]
    assert lines[-1].upto == len(beads) == sum(run.beads for run in lines)
    assert [page.lists[0].title for page in value[1:4]] == [
        "Thread 1, runs 1 to 3,000",
        "Thread 1, runs 3,001 to 6,000",
        "Thread 1, runs 6,001 to 7,000",
    ]
    assert [(page.lists[0].earlier, page.lists[0].of) for page in value[1:4]] == [
        (0, 7_000),
        (3_000, 7_000),
        (6_000, 7_000),
    ]
    assert len({page.lists[0].key for page in value[1:4]}) == 3


def test_a_kept_place_belongs_to_one_list_only() -> None:
    def key(stored: StoredPattern, **typed: str) -> str:
        return views.stringing_page(FRAME, stored, sized(**typed), WORKSHOP).lists[0].key

    other = replace(STORED, pattern=replace(BUOYS, chart=BUOYS.chart[:-1]))
    assert key(STORED) == key(STORED, length="20 cm", threads="chart")
    assert len({key(STORED), key(other), key(replace(STORED, id=8)), key(STORED, length="20 cm", threads="whole")}) == 4


def test_the_other_hand_mirrors_the_picture_or_takes_another_list() -> None:
    same = views.stringing_page(FRAME, STORED, sized(hand="left"), WORKSHOP)
    kept = views.stringing_page(FRAME, STORED, sized(hand="left", keep_picture="yes"), WORKSHOP)
    own = views.stringing_page(FRAME, STORED, sized(), WORKSHOP)
    assert same.lists == own.lists != kept.lists
    assert (own.mirrored, same.hand, kept.hand) == ("", "left", "left")
    assert "lettering comes out mirrored" in same.mirrored and "not the usual one" in kept.mirrored


def test_a_size_that_cannot_be_worked_leaves_the_form_with_its_reason() -> None:
    page = views.stringing_page(FRAME, STORED, sized(length="1 mm"), WORKSHOP)
    assert (page.lists, page.sentence, list(page.form.errors)) == ((), "", ["length"])


# materials


def test_the_bill_adds_up_on_the_page() -> None:
    page = views.materials_page(FRAME, STORED, sized(length="45 cm", closure="clasp"), WORKSHOP)
    assert page.bill is not None
    assert sum(line.need.beads for line in page.lines) == page.bill.beads
    assert page.buy_beads == sum(line.need.buy_beads for line in page.lines)
    assert page.buy_grams == sum(line.need.buy_grams for line in page.lines)
    assert [line.sign.code for line in page.lines] == [line.need.code for line in page.lines] == ["A", "B", "C"]


def test_list_and_bill_of_one_question_have_the_same_beads() -> None:
    form = sized(length="19 cm", closure="ring")
    page, listed = (make(FRAME, STORED, form, WORKSHOP) for make in (views.materials_page, views.stringing_page))
    strung = sum(one.beads * (int(one.say.split()[3]) if one.say else 1) for one in listed.lists)
    assert page.bill is not None and strung == page.bill.beads


def test_thickness_caps_and_core_are_a_range_without_a_swatch() -> None:
    form = sized(length="45 cm", closure="clasp")
    guessed, known = (views.materials_page(FRAME, STORED, form, workshop) for workshop in (WORKSHOP, MEASURED))
    for name in ("Thickness", "Bead caps, 2"):
        values = [{fact.name: fact.value for fact in page.facts}[name] for page in (guessed, known)]
        assert values[0].startswith("about ") and not values[1].startswith("about ")
    notes = {fact.name: fact.more for fact in guessed.facts}
    assert notes["Thickness"] == "measure before you buy caps"


def test_another_length_than_asked_for_is_said() -> None:
    page = views.materials_page(FRAME, STORED, sized(length="19 cm", closure="ring"), MEASURED)
    finished = {fact.name: fact for fact in page.facts}["Finished"]
    assert finished.value != "19.0 cm" and finished.more.endswith("19.0 cm was asked for")


def test_usual_sizes_are_billed_in_the_kind_that_was_asked_for() -> None:
    usual, larger = (
        views.materials_page(FRAME, STORED, sized(kind=kind), WORKSHOP).usual for kind in ("", "6/0 round")
    )
    assert [line.name for line in usual] == ["Bracelet M", "Bangle 2-8", "Choker", "Princess", "Matinée", "Opera"]
    assert usual[3].asked == "46.0 cm with a clasp"
    assert all(large.bill.beads < small.bill.beads for small, large in zip(usual, larger, strict=True))


def test_a_usual_size_that_cannot_be_worked_is_left_out() -> None:
    page = views.materials_page(FRAME, STORED, sized(), Workshop(allowances={"clasp": 600.0}))
    assert [line.name for line in page.usual] == ["Bangle 2-8", "Opera"]


def test_a_wrong_form_has_no_bill() -> None:
    page = views.materials_page(FRAME, STORED, sized(kind="9/0"), WORKSHOP)
    assert (page.bill, page.lines, page.usual, list(page.form.errors)) == (None, (), (), ["kind"])


# booklet


def test_an_objection_to_the_size_stands_among_the_booklets_own() -> None:
    page = views.booklet_page(
        FRAME, STORED, forms.read_booklet([("length", "1 mm"), ("paper", "A9")], SETTINGS), WORKSHOP
    )
    assert sorted(page.form.errors) == ["length", "paper"] and page.sentence == ""


@pytest.mark.parametrize(
    ("state", "words", "pdf"),
    [
        ("waiting", "Waiting for the print before it", ""),
        ("running", "Printing", ""),
        ("done", "The booklet is printed", "/jobs/k3/booklet.pdf"),
        ("failed", "The booklet could not be printed", ""),
        ("cancelled", "The print was cancelled", ""),
    ],
)
def test_a_print_says_how_it_stands(state: str, words: str, pdf: str) -> None:
    page = views.job_page(FRAME, STORED, replace(JOB, state=state))
    assert (page.state, page.pdf, page.done, page.again) == (words, pdf, 1, "/patterns/7/booklet")
    assert page.job.over == (state in ("done", "failed", "cancelled"))


# settings and errors


def test_the_newest_swatch_stands_first() -> None:
    page = EVERYTHING["settings"][1]
    assert isinstance(page, views.SettingsPage)
    older = replace(page.swatches[0].swatch, date="2025-01-01")
    kept = [KeptSwatch(number, swatch) for number, swatch in enumerate((older, page.swatches[0].swatch))]
    shown = views.settings_page(FRAME, page.form, kept, WORKSHOP.kinds.values(), "data").swatches
    assert [line.id for line in shown] == [1, 0]


@pytest.mark.parametrize("status", [400, 403, 404, 405, 409, 413, 415, 422, 500, 503])
def test_every_error_has_its_words_and_a_way_back(status: int) -> None:
    page = views.error_page(FRAME, status)
    assert page.heading and page.sentence and page.ways[0] == ("Library", "/")
    assert bool(page.lost) == (status < 500)


def test_a_sentence_that_is_known_takes_the_place_of_the_usual_one() -> None:
    gone = views.error_page(FRAME, 404, "There is no pattern 41.")
    assert (gone.heading, gone.sentence) == (
        "There is no pattern 41",
        "It may have been removed, or the address is incomplete. A pattern may be in the bin.",
    )
