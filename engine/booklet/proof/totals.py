"""Holds every total of beads that is printed to the entries of the lists."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator, Sequence

from engine.booklet.proof.printed_lists import AGAIN, ReadList, number
from engine.booklet.proof.readback import ReadBooklet, Remark
from engine.counting.stringing import StringingList
from engine.pattern.pattern import Pattern
from engine.units import count

_ALL = re.compile(r"All beads ([\d,]+)")
_BILL = re.compile(r"^What you need$", re.MULTILINE)
_COVER = re.compile(r"Beads in all:? ([\d,]+)")
_HEAD = re.compile(r"Beads:? ([\d,]+)\.?\s+Entries:? ([\d,]+)")


def total_remarks(
    pattern: Pattern, stringing: StringingList, lists: Sequence[ReadList], read: ReadBooklet
) -> Iterator[Remark]:
    """Totals on the cover, in the bill, at the heads of the lists and in the table of sizes that do not agree."""
    beads = _by_code(stringing, lists)
    total = sum(beads.values())
    for page in read.pages:
        for told in (*_COVER.findall(page.flowing), *_ALL.findall(page.flowing)):
            if number(told) != total:
                yield Remark(
                    True,
                    f"Page {page.number}",
                    f"The sum of all beads is {told} here and {count(total)} in the lists.",
                    AGAIN,
                )
    if not any(_ALL.search(page.flowing) for page in read.pages):
        yield Remark(True, "What you need", "The sum of all beads is nowhere in the PDF.", AGAIN)
    yield from _bill(pattern, beads, read)
    yield from _heads(lists, read)


def _by_code(stringing: StringingList, lists: Sequence[ReadList]) -> Counter[str]:
    """Beads of each code in all threads, as the lists have them."""
    totals: Counter[str] = Counter()
    for listed, repeated in zip(lists, stringing.distinct, strict=False):
        for run in listed.runs:
            totals[run.code] += run.beads * len(repeated.numbers)
    return totals


def _bill(pattern: Pattern, beads: Counter[str], read: ReadBooklet) -> Iterator[Remark]:
    """The bill by bead: its code and name, then its sort and symbol, then the count."""
    bill = next((page.number for page in read.pages if _BILL.search(page.text)), 0)
    after = " ".join(page.flowing for page in read.pages if bill and page.number >= bill)
    for entry in pattern.palette:
        if not beads[entry.code]:
            continue
        name = re.escape(" ".join(entry.name.split()))
        code = rf"(?: {re.escape(entry.maker_code)})?" if entry.maker_code else ""
        line = re.search(rf"\b{entry.code} {name} .*?; symbol: [a-z ]+?{code} ([\d,]+) ", after)
        if line is None:
            yield Remark(True, "What you need", f"No line for {entry.code} {entry.name} can be read in the PDF.", AGAIN)
        elif number(line[1]) != beads[entry.code]:
            yield Remark(
                True,
                f"What you need, {entry.code} {entry.name}",
                f"The bill says {line[1]} beads; the lists have {count(beads[entry.code])}.",
                AGAIN,
            )


def _heads(lists: Sequence[ReadList], read: ReadBooklet) -> Iterator[Remark]:
    for listed in lists:
        page = next(page for page in read.pages if page.number == listed.page)
        head = re.search(rf"\bList {listed.number} For", page.flowing)
        told = _HEAD.search(page.flowing, head.end()) if head else None
        right = (sum(run.beads for run in listed.runs), len(listed.runs))
        if told is None or (number(told[1]), number(told[2])) != right:
            yield Remark(
                True,
                f"List {listed.number}, its head, page {listed.page}",
                f"The head does not say {count(right[0])} beads in {count(right[1])} entries.",
                AGAIN,
            )
