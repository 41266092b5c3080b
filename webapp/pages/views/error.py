"""The page that says what went wrong, that nothing is lost, and the way back."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated

from webapp.pages.addresses import address
from webapp.pages.views.frame import Frame

WORDS = {
    400: ("That could not be read", "The browser sent neither a form nor a pattern file."),
    403: ("That came from another page", "Only Ropewright's own pages on this computer may change anything here."),
    404: (
        "There is nothing at this address",
        "It may have been removed, or the address is incomplete. A pattern may be in the bin.",
    ),
    405: ("That cannot be done here", "This address does not take what the browser sent."),
    409: ("It was changed in the meantime", "Another page has saved the same thing since this one was opened."),
    408: ("It stopped halfway", "The browser sent nothing more for a while; please send it again."),
    413: ("That is too large", "Pattern files may have up to 20 MB."),
    422: ("Something in it is wrong", "Go back, mend it and send it again."),
    503: ("Too much at once", "Other work is going on; try again in a moment."),
    507: ("The disk is full", "Make room on it and try again."),
    500: ("Something went wrong in Ropewright", "What was saved before is safe. Try it once more."),
}

NOTHING_LOST = "Nothing was changed and nothing is lost."


@dataclass(frozen=True)
class ErrorPage:
    """An error as a page."""

    frame: Frame
    status: Annotated[int, "The HTTP status."]
    heading: Annotated[str, "What went wrong, in a few words."]
    sentence: Annotated[str, "What it means for the person."]
    lost: Annotated[str, "That nothing is lost, where that is known; else empty."]
    ways: Annotated[tuple[tuple[str, str], ...], "Ways on: words and address, the first the usual one."]


def error_page(frame: Frame, status: int, sentence: str = "") -> ErrorPage:
    """The page for that status; a sentence of the engine or of storage takes the place of the usual one.

    Of what is not there, it is the heading.
    """
    heading, usual = WORDS.get(status, WORDS[500] if status >= 500 else WORDS[400])
    if status == 404 and sentence:
        heading, sentence = sentence.removesuffix("."), ""
    ways = (("Library", address("library")),) + ((("Look in the bin", address("bin")),) if status == 404 else ())
    return ErrorPage(
        frame=frame,
        status=status,
        heading=heading,
        sentence=sentence or usual,
        lost=NOTHING_LOST if status < 500 else "",
        ways=ways,
    )
