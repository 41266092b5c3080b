"""What a zip would bring, pattern for pattern, before anything of it is taken in."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Annotated

from webapp.pages.views.frame import Frame
from webapp.records import PatternInZip

MOST_LISTED = 1500
LOOKING, TAKING = "Reading the file", "Importing it"
USUAL = {"new": "take", "same": "leave", "different": "leave"}
STATES = {"different": "differs from the one of this title", "new": "new", "same": "in the library already"}
CHOICES = {
    "new": (("take", "Import"), ("leave", "Leave out")),
    "same": (("leave", "Leave out"), ("take", "Import once more")),
    "different": (("leave", "Keep mine"), ("revise", "Make it the newest revision of mine"), ("take", "Keep both")),
}


@dataclass(frozen=True)
class PreviewLine:
    """A pattern of the zip."""

    place: Annotated[int, "Its place in the zip, from nought."]
    title: Annotated[str, "Its title."]
    state: Annotated[str, "New, same or different, in words."]
    number: Annotated[int, "The pattern of its title in the library; nought where there is none."]
    usual: Annotated[str, "What happens unless something else is chosen."]
    choices: Annotated[tuple[tuple[str, str], ...], "What can be chosen: value and words."]


@dataclass(frozen=True)
class ImportPreviewPage:
    """A zip looked at, at `/patterns/import/{token}`."""

    frame: Frame
    token: Annotated[str, "The name under which the zip is kept."]
    counts: Annotated[tuple[tuple[str, int], ...], "How many are new, the same and different."]
    lines: Annotated[tuple[PreviewLine, ...], "The patterns, those that differ first."]
    more: Annotated[int, "How many are not listed and follow the usual choice."]
    workshop: Annotated[str, "Swatches and settings that came along, in words; empty where none did."]


@dataclass(frozen=True)
class ImportProgressPage:
    """A zip that is looked at or taken in just now; how far that is is also sent alone, to be asked for again."""

    frame: Frame
    token: Annotated[str, "The name under which the zip is kept."]
    what: Annotated[str, "What is done with it, in words."]
    done: Annotated[int, "How many patterns are through."]
    total: Annotated[int, "How many there are; nought before that is known."]
    over: Annotated[bool, "Whether it is over."]


def import_progress_page(frame: Frame, token: str, what: str, done: int, total: int, over: bool) -> ImportProgressPage:
    """The page for how far it is."""
    return ImportProgressPage(frame=frame, token=token, what=what, done=done, total=total, over=over)


def import_preview_page(
    frame: Frame, token: str, lines: Sequence[PatternInZip], workshop: str = ""
) -> ImportPreviewPage:
    """The page for what stands in the zip."""
    counts = Counter(line.state for line in lines)
    order = sorted(enumerate(lines), key=lambda placed: tuple(STATES).index(placed[1].state))
    listed = tuple(_line(place, line) for place, line in order[:MOST_LISTED])
    return ImportPreviewPage(
        frame=frame,
        token=token,
        counts=tuple((state, counts[state]) for state in ("new", "same", "different")),
        lines=listed,
        more=len(lines) - len(listed),
        workshop=workshop,
    )


def _line(place: int, line: PatternInZip) -> PreviewLine:
    return PreviewLine(
        place=place,
        title=line.title,
        state=STATES[line.state],
        number=line.number,
        usual=USUAL[line.state],
        choices=CHOICES[line.state],
    )
