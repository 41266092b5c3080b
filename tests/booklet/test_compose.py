"""The booklet as a value: everything in it agrees with the engine's own figures."""

from __future__ import annotations

import pickle
import re
from dataclasses import replace

import pytest

from engine.booklet.chapters.opening import edition
from engine.booklet.choices import Imprint, Photograph
from engine.booklet.compose import compose
from engine.booklet.own import OwnWords
from engine.counting.answers import answer
from engine.counting.questions import Question
from engine.drawing.symbols import assigned
from engine.errors import ChoiceError, PlanError, SizeError
from engine.pattern.palette import Entry, Palette
from engine.pattern.pattern import left_handed
from engine.units import count
from tests.booklets import IMPRINT, Choices, clasp, measured, parted, scattered


def test_bead_totals_agree_wherever_they_are_said() -> None:
    pattern, choices = scattered(12, 240), clasp(380.0)
    made, answered = compose(pattern, choices), answer(pattern, choices.question)
    beads = answered.size.beads
    assert made.needs.total_beads == count(beads)
    assert dict(made.cover.facts)["Beads in all"] == count(beads)
    assert made.sizes.lines[0].figures[2] == count(beads)
    assert sum(listed.beads * listed.times for listed in made.lists) == beads
    assert sum(int(line.beads.replace(",", "")) for line in made.needs.beads) == beads
    assert any(f"about {count(beads)} beads" in line for line in made.about)
    assert [line.beads for line in made.needs.beads] == list(made.sizes.lines[0].colours)


def test_beads_that_the_size_does_not_use_are_not_to_be_bought() -> None:
    pattern = scattered(12, 240, 3, palette=scattered(12, 240, 5).palette)
    assert [line.code for line in compose(pattern, Choices()).needs.beads] == ["A", "B", "C"]


def test_spare_is_bought_as_asked() -> None:
    pattern = scattered(12, 240)
    plain, spare = (compose(pattern, Choices(spare=percent)).needs for percent in (0.0, 50.0))
    assert plain.beads[0].buy.startswith(f"{plain.beads[0].beads} beads, ")
    assert "adds 50 %" in spare.note and plain.total_buy != spare.total_buy


def test_without_a_swatch_a_thickness_is_said_to_be_an_estimate() -> None:
    made = compose(scattered(12, 240), clasp())
    assert made.true_mm is None
    assert dict(made.cover.facts)["Thickness"].startswith("about ")
    assert re.fullmatch(r"about [\d.]+ to [\d.]+ mm: measure before you buy", dict(made.sample.facts)["Thickness"])
    assert made.sample.title == "Expected measures"
    assert dict(made.sample.facts)["These come from"] == "11/0 single crochet, wide: estimate ±10 %"


def test_a_swatch_is_the_makers_for_a_buyer() -> None:
    made = compose(scattered(12, 240), clasp(), measured(12, "single"))
    assert made.true_mm is not None
    assert dict(made.sample.facts)["These come from"] == (
        "the maker’s swatch of 2026-05-01: 11/0 round, 12 around, single crochet, 720 beads in 10.0 cm"
    )
    assert dict(made.cover.facts)["Thickness"] == dict(made.sample.facts)["Thickness"]


def test_chapters_stand_in_the_order_of_the_work() -> None:
    assert [title for _, title in compose(scattered(12, 240), Choices(imprint=IMPRINT)).chapters] == [
        "What you need",
        "Expected measures",
        "Abbreviations",
        "How to read chart and list",
        "Chart",
        "Stringing lists",
        "Working guide",
        "Finishing guide",
        "Sizes",
        "Care and safety",
        "License and contact",
    ]


@pytest.mark.parametrize(
    ("imprint", "title"),
    [
        (Imprint(), "This booklet"),
        (Imprint("Maker"), "This booklet"),
        (Imprint(licence="Mine."), "License"),
        (Imprint(contact="me@example.org"), "Contact"),
        (IMPRINT, "License and contact"),
    ],
)
def test_the_last_chapter_is_named_for_what_is_in_it(imprint: Imprint, title: str) -> None:
    assert compose(scattered(12, 240), Choices(imprint=imprint)).last_title == title


@pytest.mark.parametrize(
    ("choices", "said"),
    [
        (Choices(), "Standard print on A4, right-handed, US terms, metric."),
        (Choices(terms="uk", date="2026-03-09"), "9 March 2026. Standard print on A4, right-handed, UK terms, metric."),
        (
            Choices(date="2026-03-09", revision=4, units="in", picture="picture kept"),
            "Revision 4, 9 March 2026. Standard print on A4, right-handed, picture kept, US terms, inches.",
        ),
    ],
)
def test_the_edition_says_which_state_it_is(choices: Choices, said: str) -> None:
    assert compose(scattered(12, 240), choices).edition == said


def test_a_published_booklet_says_the_number_of_its_edition() -> None:
    made = compose(scattered(12, 240), Choices(date="2026-11-25", revision=4, published=2, ink_saving=True))
    assert (
        made.edition == "Edition 2, 25 November 2026. Standard print on A4, saving ink, right-handed, US terms, metric."
    )


def test_an_edition_for_the_other_hand_says_so_on_cover_foot_and_back_and_what_is_true_of_it() -> None:
    mirrored, kept = (
        compose(left_handed(scattered(12, 240)), Choices(picture=picture)) for picture in ("mirrored", "picture kept")
    )
    for made, picture in ((mirrored, "mirrored"), (kept, "picture kept")):
        assert f"left-handed, {picture}" in made.cover.edition and made.edition == made.cover.edition
        assert made.running == f"Harbour wall · left-handed, {picture}"
    assert "the lists are the same" in mirrored.about[-1] and "lettering can be read" in kept.about[-1]


@pytest.mark.parametrize("hand", ["right", "left"])
def test_no_two_editions_of_a_pattern_share_their_line(hand: str) -> None:
    pattern = left_handed(scattered(12, 240)) if hand == "left" else scattered(12, 240)
    made = [
        Choices(paper=paper, format=format, terms=terms, units=units, ink_saving=ink, picture=picture)
        for paper, format in (("A4", "standard"), ("A5", "standard"), ("Letter", "large-print"))
        for terms in ("us", "uk")
        for units in ("cm", "in", "both")
        for ink in (False, True)
        for picture in ("", "mirrored", "picture kept")
    ]
    assert len({edition(choices, pattern) for choices in made}) == len(made)
    assert len({choices.named(hand) for choices in made}) == len(made)


@pytest.mark.parametrize(
    ("terms", "own", "other"), [("us", "color", r"colour|licen[c]e|metre"), ("uk", "colour", r"\bcolor|licens|meter\b")]
)
def test_words_are_spelled_as_their_terms_are(terms: str, own: str, other: str) -> None:
    striped = replace(scattered(6, 6), chart=bytes([0, 1, 2, 0, 1, 2]))
    made = compose(striped, Choices(terms=terms))
    text = " ".join((made.cover.lead, made.last_title, *made.about, made.sizes.intro, *made.sizes.other))
    text += " ".join(step.text for part in (*made.working, *made.finishing) for step in part.steps)
    assert own in text and re.findall(other, text, re.IGNORECASE) == []


def test_a_booklet_in_inches_has_no_metres() -> None:
    made = compose(scattered(12, 240), clasp(units="in"), measured(12, "single"))
    text = " ".join((*made.about, made.sizes.intro, *made.sizes.other, *(text for _, text in made.cover.facts)))
    text += " ".join(text for _, text in (*made.sample.facts, *made.needs.things))
    text += " ".join(listed.strung for listed in made.lists)
    text += " ".join(figure for line in made.sizes.lines for figure in line.figures)
    assert re.findall(r"\d c?m\b|metre", text) == [] and "to the inch" in text and " yd" in text and " ft" in text


def test_the_makers_own_chapters_stand_among_the_others_only_where_she_wrote_them() -> None:
    own = OwnWords((("tips", "Wax the thread."), ("own", "I live by a harbour."), ("own-title", "The harbour")))
    seen = Photograph("photograph-1", "Worked", "A rope on a table", 900, 600)
    titles = [title for _, title in compose(scattered(12, 240), Choices(own=own, photographs=(seen,))).chapters]
    assert titles[0] == "Photographs" and titles[-2:] == ["The harbour", "This booklet"]
    assert titles[titles.index("Finishing guide") + 1] == "Tips"


def test_where_ink_is_saved_beads_keep_their_symbols_and_lose_their_fills() -> None:
    named = Palette((Entry("A", "Night water", "#1d3350", symbol="ring"), Entry("B", "Candle", "#f2e8d5")))
    made = compose(replace(scattered(12, 240, 2), palette=named), Choices(ink_saving=True))
    assert {entry.colour for entry in made.palette} == {"#ffffff"} and made.pictures == ()
    assert [symbol.name for symbol in assigned(made.palette)] == [symbol.name for symbol in assigned(named)]


def test_large_print_says_which_points_it_meets_and_leaves_out_a_chart_too_fine_for_it() -> None:
    made = compose(scattered(40, 800), Choices(format="large-print"))
    assert made.chapters[0] == ("large", "This large print") and "24 points" in made.reading.statement[0]
    assert made.charts.stretches == () and made.charts.left_out.startswith("The chart of a rope this wide")
    assert compose(scattered(12, 240), Choices(format="large-print")).charts.left_out == ""


def test_large_print_has_terms_in_place_of_abbreviations_and_speaks_of_nothing_that_it_lacks() -> None:
    large, usual = (
        compose(scattered(12, 240), Choices(format=edition, terms="uk")) for edition in ("large-print", "standard")
    )
    assert (dict(usual.chapters)["short"], dict(large.chapters)["short"]) == ("Abbreviations", "Crochet terms")
    assert usual.abbreviations and not large.abbreviations and "(dc)" not in large.terms_note
    assert "foot of a column" in " ".join(usual.reading.stringing) and "foot of" not in " ".join(
        large.reading.stringing
    )
    wide = compose(scattered(40, 800), Choices(format="large-print"))
    assert "chart" not in " ".join(step.text for part in wide.working for step in part.steps)


def test_start_and_end_have_sheets_of_their_own() -> None:
    made = compose(scattered(12, 240, start=bytes(30), end=bytes(13)), Choices())
    assert [(stretch.title, len(stretch.pattern.chart)) for stretch in made.charts.stretches] == [
        ("Start", 30),
        ("Chart", 240),
        ("End", 13),
    ]
    assert [sheet.number for stretch in made.charts.stretches for sheet in stretch.sheets] == [1, 2, 3]
    assert made.charts.stretches[0].sentence(made.charts.stretches[0].sheets[0]) == (
        "Worked once, before the chart. Rows 1 to 3 of 3, rounds 1 to 3, beads 1 to 30."
    )


def test_a_part_has_its_chart_once_and_says_how_often_it_is_worked() -> None:
    made = compose(parted(), clasp(450.0))
    told = [(stretch.title, stretch.lead) for stretch in made.charts.stretches]
    assert told == [
        (
            "Rope",
            "Parts 1 and 3 of 4: work this chart 19.32 times, then 20 times. The rope begins at bead 42 of the chart, "
            "so that this part ends as drawn. ",
        ),
        ("Focal", "Part 2 of 4: work this chart 2 times. "),
        ("Tail", "Part 4 of 4: work this chart once. "),
    ]
    assert [sheet.number for stretch in made.charts.stretches for sheet in stretch.sheets] == [1, 2, 3]


def test_the_whole_rope_is_shown_small_with_its_parts_numbered() -> None:
    made = compose(parted(), clasp(450.0))
    whole = made.charts.whole
    assert [(part.number, part.said.split(",")[0]) for part in whole.parts] == [
        (1, "Rope: 19.32 times"),
        (2, "Focal: 2 times"),
        (3, "Rope: 20 times"),
        (4, "Tail: once"),
    ]
    assert sum(part.share for part in whole.parts) == pytest.approx(100)
    assert whole.middle.startswith("The middle of the rope lies in “Focal”, which stands ")
    assert "picture-whole" in [picture.key for picture in made.pictures]
    saved = compose(parted(), replace(clasp(450.0), ink_saving=True)).charts.whole
    assert saved.parts == whole.parts and not saved.shown
    assert compose(scattered(12, 240, start=bytes(30)), Choices()).charts.whole is None


def test_lists_and_sizes_say_which_part_and_how_often() -> None:
    made = compose(parted(times=6), clasp(450.0))
    assert [dict(listed.facts)["For"] for listed in made.lists] == [
        "thread 1 (Rope, Focal)",
        "thread 2 (Focal, Rope, Tail)",
    ]
    sizes = made.sizes
    assert "In every size: “Focal” 6 times, “Tail” once." in sizes.intro
    at = sizes.heads.index("Parts, times")
    assert sizes.lines[0].figures[at].startswith("1: ") and "\n3: " in sizes.lines[0].figures[at]


def test_charts_of_one_name_are_told_apart() -> None:
    pattern = parted()
    other = replace(pattern.parts[2], beads=pattern.parts[2].beads[::-1])
    made = compose(replace(pattern, in_parts=(*pattern.parts[:2], other)), clasp(450.0))
    assert [stretch.title for stretch in made.charts.stretches] == ["Rope, part 1", "Focal", "Rope, part 3"]


def test_the_example_is_told_both_ways_round() -> None:
    told = compose(scattered(12, 240), Choices()).reading
    assert told.worked.split(", ") == told.strung.split(", ")[::-1]
    assert sum(int(entry.split()[0]) for entry in told.worked.split(", ")) == 25


def test_left_handed_the_chart_is_read_from_the_right() -> None:
    right = compose(scattered(12, 240), Choices())
    left = compose(left_handed(scattered(12, 240)), Choices())
    assert "from left to right" in right.reading.chart[0] and "bottom left" in right.reading.chart[0]
    assert "from right to left" in left.reading.chart[0] and "bottom right" in left.reading.chart[0]
    assert any("left-handed work" in line for line in left.about)
    assert not any("left-handed" in line for line in right.about)
    assert [listed.pages for listed in left.lists] == [listed.pages for listed in right.lists]


def test_skill_and_time_stand_on_the_cover_and_in_what_is_needed_where_the_maker_said_them() -> None:
    said = Choices(difficulty=2, own=OwnWords((("hours", "8 to 10"),)))
    made, silent = compose(scattered(12, 240), said), compose(scattered(12, 240), Choices())
    facts, things = dict(made.cover.facts), dict(made.needs.things)
    assert (facts["Skill level"], facts["Time to make"]) == ("Simple, 2 of 5", "8 to 10 hours")
    assert (things["Skill level"], things["Time"]) == ("Simple, 2 of 5.", "8 to 10 hours.")
    assert not {"Skill level", "Time to make"} & set(dict(silent.cover.facts))


def test_the_cover_says_what_kind_of_piece_it_is() -> None:
    def size(question: Question) -> str:
        return dict(compose(scattered(12, 240), Choices(question)).cover.facts)["Size"]

    assert size(Question(450.0, "clasp")) == "45.0 cm with a clasp"
    assert size(Question(1200.0, "open")) == "Rope of 120.0 cm"
    assert size(Question(200.0, "ring")).startswith("Ring of ")


def test_the_first_sentence_of_the_notes_stands_on_the_cover_if_it_is_short() -> None:
    told = "Waves and a wall. More of it.\n\nAnd a second paragraph."
    assert compose(scattered(12, 240, notes=told), Choices()).cover.lead == "Waves and a wall."
    long = compose(scattered(12, 240, notes="w" * 300), Choices()).cover.lead
    assert long == "A bead crochet rope, 12 beads around, in 4 colors."


def test_usual_sizes_stand_beside_the_booklets_own() -> None:
    names = [line.name for line in compose(scattered(12, 240), clasp()).sizes.lines]
    assert names == ["This booklet", "Bracelet M", "Bangle 2-8", "Choker", "Princess", "Matinée", "Opera"]


def test_a_usual_size_that_cannot_be_worked_is_left_out() -> None:
    long_start = scattered(12, 240, start=bytes(2000))
    names = [line.name for line in compose(long_start, Choices()).sizes.lines]
    assert "Bracelet M" not in names and "Opera" in names


def test_many_beads_are_explained_once_and_not_on_every_sheet() -> None:
    few, many = scattered(12, 400), scattered(12, 400, 6)
    assert len(compose(few, Choices()).charts.legend.beads) == 4
    assert len(compose(many, Choices()).charts.legend.beads) == 6
    long_names = scattered(
        12,
        400,
        palette=type(few.palette)(
            tuple(type(entry)(entry.code, entry.name * 10, entry.colour) for entry in few.palette)
        ),
    )
    assert compose(long_names, Choices()).list_legends[0].beads == ()


@pytest.mark.parametrize(
    ("choices", "error", "field"),
    [
        (Choices(Question(5, "clasp")), SizeError, "length"),
        (Choices(Question(400), 0.001), PlanError, "threads"),
        (Choices(Question(kind="5/0 square")), ChoiceError, "kind"),
    ],
)
def test_what_cannot_be_worked_is_refused_at_its_field(choices: Choices, error: type, field: str) -> None:
    with pytest.raises(error) as refused:
        compose(scattered(12, 240), choices)
    assert refused.value.field == field


def test_a_booklet_is_a_value() -> None:
    one, two = (compose(scattered(12, 240), clasp()) for _ in range(2))
    assert one == two and pickle.loads(pickle.dumps(one)) == one
