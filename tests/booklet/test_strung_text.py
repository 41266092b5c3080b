"""The lists of a printed booklet, taken from the text of its PDF, give back the rope that they string."""

from __future__ import annotations

import pytest

from engine.booklet.proof.strung_text import strung_text
from engine.counting.sizes import size
from engine.counting.workshop import Workshop
from engine.errors import EngineError
from engine.pattern.starts.written_lists import read_list
from tests.booklets import clasp, parted, print_of, texts_of

HEAD = "List {number}\nFor\nthread {number}\nBeads\n5\nA Water B Candle\n"


def of(*pages: str) -> str:
    return strung_text(enumerate(pages, 1))


def test_the_rope_is_read_back_from_its_booklet() -> None:
    """Two threads, the parts of a rope, and a group that repeats."""
    pattern, choices = parted(), clasp(600.0)
    written = read_list(of(*texts_of(print_of(pattern, choices).pdf)))
    codes = [bead.code for bead in written.palette]
    worked = size(pattern, choices.question, Workshop()).worked
    assert [codes[bead] for bead in reversed(written.beads)] == [pattern.palette.codes[bead] for bead in worked]


def test_a_list_in_large_print_says_its_threads_in_a_sentence() -> None:
    text = """List 1
For: threads 1 to 3: string it 3 times.
Beads: 2. Entries: 1.
 2 A
End of list 1: 2 beads in 1
entry.
List 2
For: thread 4. Beads: 1. Entries: 1.
 1 B
End of list 2: 1 bead in 1 entry."""
    assert read_list(of(text)).beads == bytes([0, 1, 1, 1, 1, 1, 1])


def test_the_thread_worked_last_is_strung_first() -> None:
    first, second = (HEAD.format(number=number) + run for number, run in ((1, " 5 A"), (2, " 2 A\n 3 B")))
    ends = ("\nEnd of list 1: 5 beads in 1 entry.\n", "\nEnd of list 2: 5 beads in 2 entries.")
    assert of(first + ends[0], second + ends[1]) == "Thread 2\n2 A  3 B\n\nThread 1\n5 A"


def test_pages_without_a_list_give_nothing() -> None:
    assert of("How to read the list: 3 B, 2 D.", "") == ""


@pytest.mark.parametrize(
    ("text", "sentence"),
    [
        (
            "List 1\n 5 A\nEnd of list 1: 6 beads in 1 entry.",
            "List 1, its end: the end of the list does not say 5 beads",
        ),
        (
            "List 1\n 5 A\nso far 4\nEnd of list 1: 5 beads in 1 entry.",
            "List 1, page 1: a sum says 4; the entries come to 5.",
        ),
        ("List 1\n 5 A", "List 1, its end: the end of the list does not say 5 beads in 1 entries."),
        (
            "List 2\nFor\nthread 2\n 5 A\nEnd of list 2: 5 beads in 1 entry.",
            "The list of thread 1 is not on these pages.",
        ),
        (
            2 * "List 1\n 5 A\nEnd of list 1: 5 beads in 1 entry.\n",
            "List 1 on page 1 does not say for which thread it is.",
        ),
        (
            "List 1\nString this group 900,000,000 times:\n 5 A\n1 times: so far 5",
            "List 1 on page 1 has more entries than a rope has beads: 900,000,000.",
        ),
    ],
)
def test_a_list_that_does_not_hold_is_refused_with_its_place(text: str, sentence: str) -> None:
    with pytest.raises(EngineError) as refused:
        of(text)
    assert refused.value.message.startswith(sentence)
