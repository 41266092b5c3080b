"""Writes the pattern file of a starting point: stripes, spirals, zigzags and the like, a photograph, an old chart."""

from __future__ import annotations

import re
from argparse import ArgumentParser, Namespace
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import fields
from pathlib import Path

from engine.errors import shortened
from engine.numbers import whole_number
from engine.pattern.old_charts.drawn import Drawn
from engine.pattern.old_charts.fitting import fitted
from engine.pattern.old_charts.marks import read_marks
from engine.pattern.old_charts.paper import Paper
from engine.pattern.old_charts.reading import Reading
from engine.pattern.pattern import Pattern
from engine.pattern.starts.all import STARTS, start_of
from webapp.commands import Refused, files
from webapp.exchange import pattern_file
from webapp.pages.forms.brought import MAKE as BROUGHT
from webapp.pages.forms.brought import read_brought
from webapp.pages.forms.old_chart import (
    CODE,
    COLOUR,
    CORNER_FIELDS,
    FREE_FIELDS,
    MAKE,
    ROW_FIELDS,
    TypedOldChart,
    read_old_chart,
)
from webapp.pages.forms.photograph import CHOSEN, TypedPhotograph, read_photograph
from webapp.pages.forms.starts import AROUND, read_start
from webapp.pages.forms.symmetric import read_symmetric
from webapp.pictures import handed_in
from webapp.pictures.lettering import drawn_letters
from webapp.pictures.list_files import list_text

PHOTOGRAPH = "photograph"
SAID_OF_PHOTOGRAPHS = tuple(
    field.name for field in fields(TypedPhotograph) if field.name not in ("title", "around", "colours")
)
SYMMETRIC, SAID_OF_SYMMETRIC = "symmetric", ("group", "repeat", "drawn", "kind")
LIST, SAID_OF_LISTS = "list", ("text", "written", "kind", "pages")
OLD_CHART = "old-chart"
SAID_OF_OLD_CHARTS = (
    *(name for pair in (*CORNER_FIELDS, ROW_FIELDS, *FREE_FIELDS) for name in pair),
    *(field.name for field in fields(TypedOldChart) if field.name not in ("places", "title", "around")),
)
OF_SYMBOLS = re.compile(rf"(?:{CODE}|{COLOUR})\d+")  # code-1, colour-1 and so on: which bead a symbol means
Made = tuple[Pattern | None, Mapping[str, str]]


def add_options(parser: ArgumentParser) -> None:
    parser.add_argument("start", metavar="KIND", help=f"one of {', '.join((*STARTS, *OTHERS))}")
    parser.add_argument("-o", "--out", metavar="OUT.pattern.json", required=True, help="the pattern file to write")
    parser.add_argument(
        "--around",
        metavar="N",
        default="",
        help=f"beads in one round (default {AROUND}, for {PHOTOGRAPH} {TypedPhotograph().around})",
    )
    parser.add_argument(
        "--colours", metavar="COLOURS", default="", help='colours of A, B, C and so on: "#2f7f76 #f3ecdd"'
    )
    parser.add_argument(
        "--picture",
        metavar="FILE",
        default="",
        help=f"for {PHOTOGRAPH} and {OLD_CHART}: a JPEG, PNG or WebP file; for {OLD_CHART} also a PDF",
    )
    parser.add_argument(
        "--file",
        metavar="FILE",
        default="",
        help=f"for {LIST}: a PDF or a text file; the lists of a booklet give the whole rope",
    )
    parser.add_argument("--page", metavar="N", default="1", help="which page of a PDF (default 1)")
    parser.add_argument("--title", metavar="WORDS", default="", help="the title (default: what the start is called)")
    parser.add_argument(
        "--say",
        metavar="KEY=VALUE",
        action="append",
        default=[],
        help=f"what the start asks, once for each: {'; '.join(_asks())}",
    )


def run(chosen: Namespace) -> int:
    target = files.check_folder(chosen.out)
    pattern, errors = OTHERS.get(chosen.start, _start)(chosen)
    if pattern is None:
        raise Refused(next(iter(errors.values())))
    files.write_whole(target, pattern_file.write_file(pattern).encode())
    return 0


def _start(chosen: Namespace) -> Made:
    start = start_of(chosen.start)
    answers = _read_answers(start.key, [ask.key for ask in start.asks], chosen.say)
    form = read_start(start, [*_common(chosen), *answers], letters=drawn_letters)
    return form.pattern, form.errors


def _photograph(chosen: Namespace) -> Made:
    picture = handed_in.decoded_picture(chosen.picture, _picture(chosen))
    answers = list(_read_answers(PHOTOGRAPH, SAID_OF_PHOTOGRAPHS, chosen.say))
    source = [("source", CHOSEN)] if chosen.colours and "source" not in dict(answers) else []
    form = read_photograph(
        [*_common(chosen), *answers, *source], lambda turn, box: handed_in.summed_part(picture, turn, box)
    )
    return form.pattern, form.errors


def _old_chart(chosen: Namespace) -> Made:
    number = whole_number(chosen.page, "which page of a PDF, such as 1")
    pixels = handed_in.plain_pixels(handed_in.picture_of(chosen.picture, _picture(chosen), number))
    answers = _read_answers(OLD_CHART, SAID_OF_OLD_CHARTS, chosen.say, OF_SYMBOLS)

    def read(paper: Paper, drawn: Drawn, many: int, fit: bool, marks: str) -> tuple[Paper, Reading]:
        laid = fitted(pixels, paper, drawn) if fit else paper
        return laid, read_marks(pixels, laid, drawn, many, marks)

    high, wide = pixels.shape[:2]
    form = read_old_chart([*_common(chosen), *answers, ("do", MAKE)], (wide, high), read)
    return form.pattern, form.errors


def _symmetric(chosen: Namespace) -> Made:
    form = read_symmetric([*_common(chosen), *_read_answers(SYMMETRIC, SAID_OF_SYMMETRIC, chosen.say)])
    return form.pattern, form.errors


def _list(chosen: Namespace) -> Made:
    answers = list(_read_answers(LIST, SAID_OF_LISTS, chosen.say))
    if chosen.file:
        text = list_text(chosen.file, _content(chosen.file), dict(answers).get("pages", ""))
        answers = [("text", text), *answers]
    form = read_brought([*_common(chosen), *answers, ("do", BROUGHT)])
    return form.pattern, form.errors


OTHERS: Mapping[str, Callable[[Namespace], Made]] = {
    SYMMETRIC: _symmetric,
    LIST: _list,
    PHOTOGRAPH: _photograph,
    OLD_CHART: _old_chart,
}


def _picture(chosen: Namespace) -> bytes:
    if not chosen.picture:
        raise Refused(f"{chosen.start} needs a picture; say --picture FILE.")
    return _content(chosen.picture)


def _content(path: str) -> bytes:
    try:
        return Path(path).read_bytes()
    except OSError as error:
        raise Refused(f"{shortened(path)} cannot be read: {error.strerror}.") from None


def _common(chosen: Namespace) -> list[tuple[str, str]]:
    colours = [("colour", colour) for colour in chosen.colours.replace(",", " ").split()]
    around = [("around", chosen.around)] if chosen.around else []
    return [*around, ("title", chosen.title), *colours]


def _asks() -> Iterator[str]:
    for start in STARTS.values():
        yield f"{start.key} {', '.join(ask.key for ask in start.asks)}"
    yield f"{SYMMETRIC} {', '.join(SAID_OF_SYMMETRIC)}"
    yield f"{LIST} {', '.join(SAID_OF_LISTS)}"
    yield f"{PHOTOGRAPH} {', '.join(SAID_OF_PHOTOGRAPHS)}"
    yield f"{OLD_CHART} {', '.join(SAID_OF_OLD_CHARTS)}, and of symbols {CODE}1, {COLOUR}1 and so on"


def _read_answers(
    key: str, known: Sequence[str], typed: list[str], besides: re.Pattern[str] | None = None
) -> Iterator[tuple[str, str]]:
    for words in typed:
        name, equals, value = words.partition("=")
        if not equals or not (name in known or (besides and besides.fullmatch(name))):
            raise Refused(
                f"“{shortened(words)}” is not what {key} asks; expected {', '.join(known)}, each as KEY=VALUE."
            )
        yield name, value.replace("\\n", "\n")
