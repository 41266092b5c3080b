"""The history of a pattern: its revisions, one of them looked at, and any two compared."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime
from itertools import pairwise
from typing import Annotated

from engine.pattern.differences import differences
from engine.pattern.differences_in_words import in_short
from engine.pattern.pattern import Pattern
from engine.units import count
from webapp.pages.addresses import address
from webapp.pages.views.frame import Frame, Head, head
from webapp.pages.views.signs import Sign, signs
from webapp.records import KeptRevision, RevisionList, StoredPattern

MOST_COMPARED = 20_000  # beads; what changed in a larger chart is told on the page that compares


@dataclass(frozen=True)
class RevisionLine:
    """A revision in the list."""

    number: Annotated[int, "Its number."]
    made: Annotated[datetime, "When it was made."]
    automatic: Annotated[bool, "Whether the program made it by itself."]
    note: Annotated[str, "Its note; may be empty."]
    mark: Annotated[str, "Its name; may be empty."]
    editions: Annotated[str, "The editions published from it, in words; may be empty."]
    changed: Annotated[str, "What changed since the one before, in short; may be empty."]
    strip: Annotated[str, "Address of a strip of its chart."]
    before: Annotated[int, "Number of the one before; nought for the first."]


@dataclass(frozen=True)
class HistoryPage:
    """The revisions of a pattern at `/patterns/{id}/history`."""

    frame: Frame
    head: Head
    lines: Annotated[tuple[RevisionLine, ...], "The revisions of this page, the newest first."]
    newest: Annotated[int, "Number of the newest."]
    total: Annotated[int, "How many there are."]
    working: Annotated[datetime | None, "Since when there is a working copy."]
    undo: Annotated[int, "The revision that undoes what was just done; nought where nothing was."]
    wrong: Annotated[str, "What is wrong with the name that was sent; may be empty."]
    page: Annotated[int, "Which page of the list this is, from one."]
    pages: Annotated[int, "How many pages the list has."]
    newer: Annotated[str, "Address of the page before; empty on the first."]
    older: Annotated[str, "Address of the page after; empty on the last."]


@dataclass(frozen=True)
class RevisionPage:
    """One revision looked at, at `/patterns/{id}/history/{revision}`."""

    frame: Frame
    head: Head
    revision: Annotated[KeptRevision, "The revision."]
    editions: Annotated[str, "The editions published from it, in words; may be empty."]
    stands: Annotated[bool, "Whether this is what stands now."]
    chart: Annotated[str, "Address of its chart, lying."]
    palette: Annotated[tuple[Sign, ...], "Its beads."]
    words: Annotated[str, "Around, beads and so on in one line."]


def history_page(
    frame: Frame, stored: StoredPattern, kept: RevisionList, undo: int = 0, wrong: str = ""
) -> HistoryPage:
    """The list of revisions."""
    patterns = [revision.pattern for revision in kept.revisions] + ([kept.before] if kept.before else [])
    changed = [_changed(old, new) for new, old in pairwise(patterns)] + [""]
    numbers = [revision.number for revision in kept.revisions[1:]] + [0]
    lines = tuple(
        _line(stored.id, revision, before, words)
        for revision, before, words in zip(kept.revisions, numbers, changed, strict=False)
    )
    return HistoryPage(
        frame=frame,
        head=head(stored),
        lines=lines,
        newest=stored.revision,
        total=kept.total,
        working=kept.working,
        undo=undo,
        wrong=wrong,
        page=kept.page,
        pages=kept.pages,
        newer=address("history", id=stored.id, page=kept.page - 1) if kept.page > 1 else "",
        older=address("history", id=stored.id, page=kept.page + 1) if kept.page < kept.pages else "",
    )


def revision_page(frame: Frame, stored: StoredPattern, revision: KeptRevision) -> RevisionPage:
    """One revision as it was."""
    pattern = revision.pattern
    words = f"{pattern.around} around · {count(pattern.beads)} beads · repeat {count(pattern.repeat)}"
    return RevisionPage(
        frame=frame,
        head=head(stored),
        revision=revision,
        editions=editions_in_words(revision.editions),
        stands=not stored.working and revision.number == stored.revision,
        chart=address("revision_chart", id=stored.id, revision=revision.number),
        palette=signs(pattern.palette),
        words=words,
    )


def editions_in_words(numbers: Sequence[int]) -> str:
    """The editions of a revision: "Edition 1", "Editions 1 and 2"."""
    if not numbers:
        return ""
    if len(numbers) == 1:
        return f"Edition {numbers[0]}"
    return f"Editions {', '.join(map(str, numbers[:-1]))} and {numbers[-1]}"


def _line(number: int, revision: KeptRevision, before: int, changed: str) -> RevisionLine:
    return RevisionLine(
        number=revision.number,
        made=revision.made,
        automatic=revision.automatic,
        note=revision.note,
        mark=revision.mark,
        editions=editions_in_words(revision.editions),
        changed=changed,
        strip=address("revision_strip", id=number, revision=revision.number),
        before=before,
    )


def _changed(old: Pattern, new: Pattern) -> str:
    if max(old.beads, new.beads) > MOST_COMPARED:
        return ""
    return in_short(differences(old, new)) or "nothing"
