"""Stringing lists cut into pages of columns: nothing lost, sums right, nothing that could be taken for an entry."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as some

from engine.booklet.lists import PrintedList, lists_in_words, printed, reads_as_entry
from engine.booklet.measures import Measures
from engine.booklet.papers import LARGE, PAPERS, STANDARD, paper
from engine.counting.questions import Question
from engine.counting.sizes import size
from engine.counting.stringing import Run, string
from tests.booklets import scattered

GRAMS = dict.fromkeys("ABCDEF", 0.01)
CM = Measures("cm")
SETS = (*((name, STANDARD) for name in PAPERS), ("A4", LARGE), ("Letter", LARGE))


def lists_of(pattern, question: Question, plan="chart", name: str = "A4") -> tuple[PrintedList, ...]:
    stringing = string(size(pattern, question), plan)
    return printed(stringing.distinct, len(stringing.threads), paper(name), GRAMS, CM)


def columns(listed: PrintedList):
    return [column for page in listed.all_pages if page.ticked for column in page.columns]


def entries(listed: PrintedList, others: Sequence[PrintedList] = ()) -> tuple[Run, ...]:
    """The list run by run, a group as often as it is strung, be it one of another list."""
    return (
        *read(listed.pages),
        *of_group(listed, others) * (listed.group.times if listed.group else 0),
        *read(listed.after),
    )


def of_group(listed: PrintedList, others: Sequence[PrintedList]) -> tuple[Run, ...]:
    """The runs that are strung again and again, once."""
    if listed.group is None:
        return ()
    if not listed.group.of:
        return read(listed.group.pages)
    other = others[listed.group.of - 1]
    return of_group(other, others) if listed.group.elsewhere.startswith("the group") else entries(other, others)


def read(pages) -> tuple[Run, ...]:
    lines = "\n".join(block.text for page in pages for column in page.columns for block in column.blocks)
    return tuple(Run(code, int(beads)) for beads, code in re.findall(r"^ *(\d+) ([A-Z]+)$", lines, re.MULTILINE))


@settings(max_examples=40)
@given(
    some.integers(3, 30),
    some.integers(1, 3000),
    some.sampled_from(("chart", "whole", 1.0)),
    some.sampled_from(SETS),
    some.booleans(),
)
def test_printed_lists_hold_every_run_and_their_sums_agree(around: int, beads: int, plan, name, noted: bool) -> None:
    pattern = scattered(around, beads)
    stringing = string(size(pattern, Question(300, "open")), plan)
    made = printed(stringing.distinct, len(stringing.threads), paper(*name), GRAMS, CM, noted)
    assert [entries(listed, made) for listed in made] == [repeated.thread.runs for repeated in stringing.distinct]
    for listed in made:
        group = listed.group
        shown = bool(group and group.pages and group.pages[0].ticked)
        again = sum(run.beads for run in of_group(listed, made)) * (group.times - shown) if group else 0
        assert sum(column.beads for column in columns(listed)) + again == listed.beads
        assert (
            group.tens[-1].so_far if group and not listed.after else columns(listed)[-1].blocks[-1].so_far
        ) == listed.beads
        assert sum(row.boxes for row in group.tens) == group.times if group else True
        assert [column.number for column in columns(listed)] == list(range(1, len(columns(listed)) + 1))
        assert all(len(page.columns) * listed.column <= paper(*name).text for page in listed.pages)
        for pages in (listed.pages, listed.after):
            blocks = [block for page in pages for column in page.columns for block in column.blocks]
            assert all(len(block.codes) == 10 for block in blocks[:-1])


def test_a_thread_of_several_times_through_the_chart_is_listed_once_with_a_box_for_each_time() -> None:
    pattern = scattered(12, 400)
    stringing = string(size(pattern, Question(3 * 400 * size(pattern, Question()).rope.bead_mm, "open")), "whole")
    (listed,) = printed(stringing.distinct, 1, paper("A4"), GRAMS, CM)
    assert listed.group is not None and listed.group.times >= 2
    assert entries(listed) == stringing.threads[0].runs
    assert sum(len(block.codes) for column in columns(listed) for block in column.blocks) < 0.6 * listed.entries


def test_a_list_that_holds_a_pass_of_an_earlier_one_sends_back_to_it() -> None:
    pattern = scattered(12, 400)
    per_bead = size(pattern, Question()).rope.bead_mm
    first, second = lists_of(pattern, Question(5.4 * 400 * per_bead, "open"), plan=(1200,))
    assert first.group is not None and (first.group.times, first.group.of) == (3, 0)
    assert second.group is not None and second.group.pages == ()
    assert (second.group.elsewhere, second.group.often) == ("the group of list 1", "2 times")
    assert (
        entries(second, (first, second))
        == string(size(pattern, Question(5.4 * 400 * per_bead, "open")), (1200,)).threads[1].runs
    )
    once, rest = lists_of(pattern, Question(2.4 * 400 * per_bead, "open"), plan=(400,))
    assert once.group is None and rest.group is not None
    assert (rest.group.elsewhere, rest.group.often) == ("all of list 1", "once")


def test_the_next_list_begins_on_a_page_with_as_many_blocks_as_have_room() -> None:
    def deep(beads: int, threads: tuple[int, ...]) -> list[int]:
        pattern = scattered(12, beads)
        wanted = Question(size(pattern, Question()).rope_mm, "open")
        return [len(listed.pages[0].columns[0].blocks) for listed in lists_of(pattern, wanted, plan=threads)]

    assert deep(1800, (20,)) == [1, 1]
    assert deep(2600, (1200,)) == [3, 3]


def test_a_short_group_stands_in_columns_of_one_length() -> None:
    eleven = replace(scattered(6, 11), chart=bytes((0, 1, 2, 0, 3, 1, 0, 2, 3, 1, 2)))
    (listed,) = lists_of(eleven, Question(200, "open"), plan="whole")
    assert listed.group is not None
    assert [sum(len(block.codes) for block in column.blocks) for column in listed.group.pages[0].columns] == [6, 5]


def test_a_short_list_is_spread_over_its_columns() -> None:
    (listed,) = lists_of(scattered(6, 90), Question())
    assert [[len(column.blocks) for column in page.columns] for page in listed.pages] == [[1, 1, 1]]


def test_a_long_list_goes_on_with_one_block_more_to_a_column() -> None:
    (listed,) = lists_of(scattered(12, 1800), Question())
    assert [max(len(column.blocks) for column in page.columns) for page in listed.pages] == [3, 4]


@given(some.integers(3, 30), some.integers(1, 4000), some.sampled_from(SETS))
def test_the_last_page_is_no_deeper_than_its_columns_make_it_and_as_high_as_its_highest(
    around: int, beads: int, name
) -> None:
    measures = paper(*name)
    (listed,) = printed(
        string(size(scattered(around, beads), Question()), "whole").distinct,
        1,
        measures,
        GRAMS,
        CM,
    )
    last, many = listed.pages[-1], max(len(page.columns) for page in listed.pages)
    assert max(len(column.blocks) for column in last.columns) == -(
        -sum(len(column.blocks) for column in last.columns) // many
    )
    for page in listed.pages:
        heights = [
            sum(len(block.codes) * measures.line + measures.total for block in column.blocks) + measures.foot
            for column in page.columns
        ]
        assert page.height == pytest.approx(max(heights), abs=0.01)


def test_counts_are_padded_with_two_spaces_a_digit() -> None:
    pattern = scattered(6, 12)
    (listed,) = printed(string(size(pattern, Question())).distinct, 1, paper("A4"), GRAMS, CM)
    assert {len(line) for line in columns(listed)[0].blocks[0].text.split("\n")} == {3}
    long = scattered(6, 40).__class__("Long", 6, pattern.palette, bytes([0] * 120 + [1]))
    (listed,) = lists_of(long, Question())
    assert columns(listed)[0].blocks[0].text == "    1 B\n120 A"


def test_a_list_says_for_which_threads_it_is_and_how_often() -> None:
    made = lists_of(scattered(12, 200), Question(150, "open"))
    assert [(listed.threads, listed.times) for listed in made] == [
        ("threads 1 to 5: string it 5 times", 5),
        ("thread 6", 1),
    ]
    assert made[0].facts[1:] == (
        ("Beads", "200"),
        ("Entries", str(made[0].entries)),
        ("Strung length", "28 cm"),
        ("Weight", "2.0 g"),
    )
    assert made[0].check == "Strung: about 2.0 g."
    assert made[0].end == f"End of list 1: 200 beads in {made[0].entries} entries."


def test_threads_are_told_in_one_sentence() -> None:
    pattern = scattered(12, 200)
    stringing = string(size(pattern, Question(150, "open")), "chart")
    assert lists_in_words(stringing) == (
        "The rope is worked on 6 threads from 2 different lists: threads 1 to 5 take list "
        "1, thread 6 takes list 2. Thread 1 is worked first."
    )


@pytest.mark.parametrize(
    ("title", "taken"),
    [("Harbour lights", False), ("A rope", True), ("Route 66 B", True), ("Go", True), ("3A", True), ("Seven 7", False)],
)
def test_a_title_that_could_be_taken_for_an_entry_is_known(title: str, taken: bool) -> None:
    assert reads_as_entry(title) is taken
