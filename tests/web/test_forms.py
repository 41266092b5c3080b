"""What a browser sent, as typed values with errors beside their fields."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from engine.counting.closures import usual_allowances
from engine.counting.questions import Question
from engine.errors import EngineError, LengthError, SizeError
from engine.numbers import length_to_type, typed_length, typed_nought_or_length
from tests.web.sample_pages import BUOYS, SETTINGS, STORED, WORKSHOP
from webapp.pages.forms import all as forms
from webapp.pages.forms.sent import Sent
from webapp.records import MakerSettings

ROWS = [
    ("bead_code", "a"),
    ("bead_name", "Sea glass"),
    ("bead_colour", "#2F7F76"),
    ("bead_finish", "matte"),
    ("bead_kind", "8/0 round"),
    ("bead_code", "B"),
    ("bead_name", ""),
    ("bead_colour", "#f5eddc"),
    ("bead_finish", ""),
    ("bead_kind", ""),
    ("bead_code", "C"),
    ("bead_name", ""),
    ("bead_colour", "#d9932b"),
    ("bead_finish", "opaque"),
    ("bead_kind", "11/0 round"),
]
FILLED = [("title", " Buoys "), ("around", "6"), ("beads", "3a 2B"), ("tags", "sea, , night, sea"), *ROWS]


def without(name: str, *instead: tuple[str, str]) -> list[tuple[str, str]]:
    return [pair for pair in FILLED if pair[0] != name] + list(instead)


# what was sent


def test_text_comes_without_the_space_around_it_and_files_are_passed_over() -> None:
    sent = Sent([("title", " Buoys \n"), ("file", object()), ("tag", "a"), ("tag", "b")])
    assert (sent.one("title"), sent.one("file", "none"), sent.all("tag"), sent.has("file")) == (
        "Buoys",
        "none",
        ("a", "b"),
        False,
    )


def test_places_are_those_that_there_are() -> None:
    sent = Sent([("row", text) for text in ("1", "3", "-1", "x", "٣", "9" * 5000, "02")])
    assert (sent.places("row", 3), sent.places("row", 100), sent.places("row", 0)) == ((1,), (1, 3, 2), ())


# lengths


@pytest.mark.parametrize(
    ("text", "units", "mm"),
    [
        ("50 cm", "cm", 500),
        ("17,5", "cm", 175),
        ("18", "in", 457.2),
        ("18 in", "cm", 457.2),
        ("40", "both", 400),
        (".5", "cm", 5),
    ],
)
def test_a_bare_number_is_in_the_makers_own_unit(text: str, units: str, mm: float) -> None:
    assert typed_length(text, units) == pytest.approx(mm)


def test_no_length_at_all_is_asked_for_in_the_makers_unit() -> None:
    with pytest.raises(LengthError, match="Say how long, such as 16 in"):
        typed_length(" ", "in")


@pytest.mark.parametrize(("text", "mm"), [("0", 0), ("0,0 cm", 0), ("1.5", 15)])
def test_ease_and_closures_may_be_nothing(text: str, mm: float) -> None:
    assert typed_nought_or_length(text) == mm


@given(st.integers(1, 9999), st.sampled_from(["cm", "in", "both"]))
def test_a_length_that_is_shown_can_be_typed_back(hundredths: int, units: str) -> None:
    unit_mm = 25.4 if units == "in" else 10.0
    assert typed_length(length_to_type(hundredths / 100 * unit_mm, units), units) == pytest.approx(
        hundredths / 100 * unit_mm
    )


# size


def test_an_empty_size_form_asks_for_one_pass_on_few_threads() -> None:
    form = forms.read_size([], SETTINGS)
    assert (form.question, form.plan, form.hand, form.spare, form.errors) == (Question(), "balanced", "", 10.0, {})


def test_the_size_form_reads_all_its_fields() -> None:
    form = forms.read_size(
        [
            ("wrist", "16,5"),
            ("ease", "0"),
            ("closure", "clasp"),
            ("kind", "8/0 round"),
            ("stitch", "slip"),
            ("round", "pass"),
            ("threads", "metres"),
            ("metres", "2,5"),
            ("hand", "left"),
            ("keep_picture", "yes"),
            ("spare", "15"),
        ],
        SETTINGS,
    )
    assert form.question == Question(None, "clasp", "8/0 round", "slip", 165.0, 0.0, "pass")
    assert (form.plan, form.hand, form.keep_picture, form.spare, form.errors) == (2.5, "left", True, 15.0, {})


def test_joins_are_read_from_their_own_field_or_as_the_api_writes_them() -> None:
    for sent in ([("threads", "joins"), ("joins", "48, 96")], [("threads", "joins 48, 96")]):
        form = forms.read_size(sent, SETTINGS)
        assert (form.plan, form.typed.threads, form.typed.joins, form.errors) == ((48, 96), "joins", "48, 96", {})
    for text in ("", "x", "1,200"):
        assert list(forms.read_size([("threads", "joins"), ("joins", text)], SETTINGS).errors) == ["joins"]


def test_metres_in_an_address_are_understood_as_the_api_writes_them() -> None:
    form = forms.read_size([("threads", "4")], SETTINGS)
    assert (form.plan, form.typed.threads, form.typed.metres) == (4.0, "metres", "4")


@pytest.mark.parametrize(
    ("name", "text"),
    [
        ("length", "5 parsecs"),
        ("closure", "knot"),
        ("stitch", "purl"),
        ("ease", "2 cm"),
        ("round", "inch"),
        ("hand", "both"),
        ("spare", "lots"),
        ("spare", "1001"),
        ("metres", ""),
    ],
)
def test_what_is_wrong_stands_beside_its_field_and_what_was_typed_is_kept(name: str, text: str) -> None:
    form = forms.read_size(
        [("threads", "metres"), ("metres", "3"), (name, text)] if name != "metres" else [("threads", "metres")],
        SETTINGS,
    )
    assert list(form.errors) == [name]
    assert getattr(form.typed, name) == text


def test_length_and_wrist_together_are_refused_beside_the_wrist() -> None:
    assert forms.read_size([("length", "40"), ("wrist", "16")], SETTINGS).errors == {
        "wrist": "Give a length or a wrist, not both."
    }


def test_an_objection_of_the_engine_finds_its_field_or_stands_over_the_form() -> None:
    form = forms.read_size([], SETTINGS)
    assert form.refused(SizeError("Too short.", "length")).errors == {"length": "Too short."}
    assert form.refused(SizeError("Too odd.", "seam")).errors == {"": "Too odd."}


# booklet and library


def test_the_booklet_takes_what_is_not_said_from_the_settings() -> None:
    form = forms.read_booklet([], replace(SETTINGS, paper="Letter", terms="uk"))
    assert (form.paper, form.terms, form.errors) == ("Letter", "uk", {})


def test_a_paper_that_is_not_sold_here_is_refused() -> None:
    assert list(forms.read_booklet([("paper", "A9"), ("terms", "fr"), ("length", "x")], SETTINGS).errors) == [
        "length",
        "paper",
        "terms",
    ]


@pytest.mark.parametrize(
    ("sent", "finder"),
    [
        ([], forms.Finder()),
        (
            [("search", " sea "), ("tag", "night"), ("sort", "title"), ("page", "3")],
            forms.Finder("sea", "night", "title", 3),
        ),
        ([("sort", "price"), ("page", "-1")], forms.Finder()),
        ([("page", "0")], forms.Finder()),
        ([("page", "²")], forms.Finder()),
        ([("page", "9" * 30)], forms.Finder()),
    ],
)
def test_a_search_that_cannot_be_meant_takes_its_usual_values(
    sent: list[tuple[str, str]], finder: forms.Finder
) -> None:
    assert forms.read_finder(sent) == finder


# editor


def test_a_filled_editor_gives_the_pattern() -> None:
    pattern = forms.read_editor(FILLED).pattern
    assert pattern is not None
    assert (pattern.title, pattern.around, pattern.chart, pattern.tags) == (
        "Buoys",
        6,
        bytes([0, 0, 0, 1, 1]),
        ("sea", "night"),
    )
    assert [(e.code, e.name, e.colour, e.finish, e.kind) for e in pattern.palette] == [
        ("A", "Sea glass", "#2f7f76", "matte", "8/0 round"),
        ("B", "Bead B", "#f5eddc", "opaque", "11/0 round"),
    ]


def test_a_row_without_a_name_counts_only_where_its_code_is_used() -> None:
    pattern = forms.read_editor(without("beads", ("beads", "2C A"))).pattern
    assert pattern is not None
    assert (pattern.palette.codes, pattern.chart) == (("A", "C"), bytes([1, 1, 0]))


def test_a_list_in_stringing_order_is_turned_round() -> None:
    pattern = forms.read_editor([*FILLED, ("written", "strung")]).pattern
    assert pattern is not None and pattern.chart == bytes([1, 1, 0, 0, 0])


def test_letter_rows_are_read_from_the_bottom() -> None:
    pattern = forms.read_editor(without("beads", ("beads", "B B\nA A A A A A B"), ("written", "rows"))).pattern
    assert pattern is not None and pattern.chart == bytes([0] * 6 + [1] * 3)


@pytest.mark.parametrize(
    ("name", "text", "field", "sentence"),
    [
        ("title", "", "title", "A pattern needs a title."),
        ("around", "six", "around", "“six” is not a whole number; say how many beads go around, such as 12."),
        ("around", "61", "around", "61 around does not work; a rope has 3 to 60 beads around."),
        ("beads", "", "beads", "Line 1, column 1: there are no beads; write counts and codes, such as 3A 2B."),
        ("beads", "A\n2Q", "beads", "Line 2, column 2: “Q” is not a code of the palette; expected one of A, B, C."),
        (
            "end",
            "4",
            "end",
            "Line 1, column 1: a count has no code behind it: the text ends, expected one or two letters.",
        ),
        ("hand", "third", "hand", "Hand: “third” is not known here; expected one of right, left."),
        ("stitch", "purl", "stitch", "Stitch: “purl” is not known here; expected one of slip, single."),
    ],
)
def test_every_error_of_the_editor_names_its_field(name: str, text: str, field: str, sentence: str) -> None:
    form = forms.read_editor(without(name, (name, text)))
    assert (form.pattern, form.errors, getattr(form.typed, name)) == (None, {field: sentence}, text)


def test_an_error_in_the_palette_names_the_row_of_the_page_even_behind_a_row_that_does_not_count() -> None:
    form = forms.read_editor(
        [
            ("title", "T"),
            ("around", "6"),
            ("beads", "A"),
            ("bead_code", "A"),
            ("bead_name", "One"),
            ("bead_code", "B"),
            ("bead_name", ""),
            ("bead_code", "A"),
            ("bead_name", "Two"),
        ]
    )
    assert form.errors == {"palette.2.code": "The code A stands twice in the palette; every bead needs its own."}


def test_a_palette_without_rows_is_an_error_and_not_a_crash() -> None:
    form = forms.read_editor([("title", "T"), ("around", "6"), ("beads", "A")])
    assert form.pattern is None and form.errors


def test_a_row_is_added_with_the_first_free_letter_and_nothing_else_is_judged() -> None:
    form = forms.read_editor([*without("beads", ("beads", "?!")), ("add", "row")])
    assert (form.asked, form.errors, form.typed.beads) == ("rows", {}, "?!")
    assert [row.code for row in form.typed.palette] == ["a", "B", "C", "D"]


def test_the_row_that_was_pressed_is_removed() -> None:
    form = forms.read_editor([*FILLED, ("remove", "1")])
    assert [row.code for row in form.typed.palette] == ["a", "C"]
    assert (
        len(forms.read_editor([*FILLED, ("remove", "9"), ("remove", "x"), ("remove", "9" * 5000)]).typed.palette) == 3
    )


def test_keeping_mine_as_a_copy_is_told_from_saving() -> None:
    assert forms.read_editor([*FILLED, ("copy", "yes")]).asked == "copy"
    assert (forms.read_editor([*FILLED, ("made_from", "12")]).made_from, forms.read_editor(FILLED).made_from) == (12, 0)


def test_a_pattern_that_is_edited_and_sent_unchanged_is_the_same_pattern() -> None:
    typed = forms.editor_of(STORED).typed
    words = [
        (name, getattr(typed, name))
        for name in (
            "title",
            "around",
            "hand",
            "stitch",
            "written",
            "beads",
            "start",
            "end",
            "designer",
            "notes",
            "tags",
        )
    ]
    rows = [
        (f"bead_{name}", getattr(row, name))
        for row in typed.palette
        for name in ("code", "name", "colour", "finish", "kind", "symbol", "maker_code")
    ]
    assert forms.read_editor([*words, *rows]).pattern == BUOYS


def test_while_one_types_a_title_may_still_be_to_come() -> None:
    assert forms.read_check(without("title")).pattern is not None


def test_a_new_editor_begins_with_a_few_beads_that_differ() -> None:
    palette = forms.blank_editor("Ada", "rows").typed.palette
    assert [row.code for row in palette] == ["A", "B", "C"]
    assert len({row.colour for row in palette}) == 3


@given(
    st.lists(
        st.tuples(
            st.sampled_from(
                [
                    "title",
                    "around",
                    "beads",
                    "start",
                    "written",
                    "bead_code",
                    "bead_name",
                    "bead_colour",
                    "bead_kind",
                    "add",
                    "remove",
                    "copy",
                    "made_from",
                    "hand",
                    "tags",
                ]
            ),
            st.text(max_size=8),
        ),
        max_size=14,
    )
)
def test_whatever_is_sent_there_is_a_pattern_or_something_is_said(pairs: list[tuple[str, str]]) -> None:
    form = forms.read_editor(pairs)
    assert form.asked == "rows" or (form.pattern is None) == bool(form.errors)


# settings and swatches


def test_settings_that_are_shown_and_sent_back_are_the_same() -> None:
    kept = MakerSettings(
        maker="Ada",
        contact="a@b.example",
        licence="All mine.",
        units="in",
        terms="uk",
        paper="Letter",
        spare=7.5,
        look="dark",
        allowances=dict.fromkeys(usual_allowances(), 12.7) | {"clasp": 25.4},
    )
    typed = forms.settings_of(kept).typed
    sent = [
        (name, getattr(typed, name))
        for name in ("maker", "contact", "licence", "units", "terms", "paper", "spare", "look")
    ]
    sent += typed.allowances.items()
    assert forms.read_settings(sent, MakerSettings()).settings == kept


def test_a_choice_that_was_not_offered_stays_as_it_was_kept() -> None:
    form = forms.read_settings([("units", "ells"), ("look", "pink")], replace(SETTINGS, units="both", look="dark"))
    assert form.settings is not None and (form.settings.units, form.settings.look) == ("both", "dark")


def test_wrong_settings_are_kept_as_typed_and_not_taken() -> None:
    form = forms.read_settings([("clasp", "4o"), ("spare", "x"), ("maker", "m" * 501)], SETTINGS)
    assert (form.settings, list(form.errors), form.typed.allowances["clasp"]) == (
        None,
        ["spare", "clasp", "maker"],
        "4o",
    )


def test_a_swatch_may_count_beads_or_rows_of_half_a_bead_more() -> None:
    sent = [
        ("kind", "11/0 round"),
        ("around", "6"),
        ("stitch", "slip"),
        ("number", "40"),
        ("length", "6"),
        ("date", "2026-03-01"),
    ]
    by_rows = forms.read_swatch([*sent, ("counted", "rows")], WORKSHOP.kinds).swatch
    by_beads = forms.read_swatch([*sent, ("counted", "beads")], WORKSHOP.kinds).swatch
    assert by_rows is not None and by_beads is not None
    assert (by_rows.beads, by_beads.beads, by_rows.length_mm) == (260, 40, 60.0)


def test_a_swatch_may_tell_the_thread_of_twenty_unravelled_beads() -> None:
    sent = [("kind", "11/0 round"), ("around", "6"), ("stitch", "slip"), ("number", "200"), ("length", "5 cm")]
    swatch = forms.read_swatch([*sent, ("unravelled", "23,6")], WORKSHOP.kinds).swatch
    assert swatch is not None and swatch.thread_mm == pytest.approx(11.8)
    without = forms.read_swatch(sent, WORKSHOP.kinds).swatch
    assert without is not None and without.unravelled_mm == 0
    wrong = forms.read_swatch([*sent, ("unravelled", "3 m")], WORKSHOP.kinds)
    assert (wrong.swatch, list(wrong.errors)) == (None, ["unravelled"])


def test_everything_wrong_with_a_swatch_is_said_at_once() -> None:
    form = forms.read_swatch([("kind", "9/0"), ("around", "x"), ("number", "4o"), ("date", "1 March")], WORKSHOP.kinds)
    assert (form.swatch, sorted(form.errors)) == (None, ["around", "date", "kind", "length", "number", "stitch"])


def test_beads_and_length_that_do_not_go_together_are_refused() -> None:
    form = forms.read_swatch(
        [
            ("kind", "11/0 round"),
            ("around", "6"),
            ("stitch", "slip"),
            ("counted", "beads"),
            ("number", "40"),
            ("length", "9 m"),
        ],
        WORKSHOP.kinds,
    )
    assert form.swatch is None and list(form.errors) == ["length"]


def test_errors_of_reading_are_errors_of_the_engine() -> None:
    with pytest.raises(EngineError, match="not a length"):
        typed_length("--")
