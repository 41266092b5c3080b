"""Writes the pattern file of a starting point: stripes, spirals, zigzags and the like, or a photograph."""

from __future__ import annotations

from argparse import ArgumentParser, Namespace
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import fields
from pathlib import Path

from engine.errors import shortened
from engine.pattern.pattern import Pattern
from engine.pattern.starts.all import STARTS, start_of
from webapp.commands import Refused, files
from webapp.exchange import pattern_file
from webapp.pages.forms.photograph import CHOSEN, TypedPhotograph, read_photograph
from webapp.pages.forms.starts import AROUND, read_start
from webapp.pictures import handed_in
from webapp.pictures.lettering import drawn_letters

PHOTOGRAPH = "photograph"
SAID_OF_PHOTOGRAPHS = tuple(
    field.name for field in fields(TypedPhotograph) if field.name not in ("title", "around", "colours")
)
Made = tuple[Pattern | None, Mapping[str, str]]


def add_options(parser: ArgumentParser) -> None:
    parser.add_argument("start", metavar="KIND", help=f"one of {', '.join(STARTS)}, {PHOTOGRAPH}")
    parser.add_argument("-o", "--out", metavar="OUT.pattern.json", required=True, help="the pattern file to write")
    parser.add_argument(
        "--around",
        metavar="N",
        default="",
        help=f"beads in one round (default {AROUND}, of {PHOTOGRAPH} {TypedPhotograph().around})",
    )
    parser.add_argument(
        "--colours", metavar="COLOURS", default="", help='colours of A, B, C and so on: "#2f7f76 #f3ecdd"'
    )
    parser.add_argument("--picture", metavar="FILE", default="", help=f"of {PHOTOGRAPH}: a JPEG, PNG or WebP file")
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
    pattern, errors = _photograph(chosen) if chosen.start == PHOTOGRAPH else _start(chosen)
    if pattern is None:
        raise Refused(next(iter(errors.values())))
    files.write_whole(target, pattern_file.write_file(pattern).encode())
    return 0


def _start(chosen: Namespace) -> Made:
    start = start_of(chosen.start)
    said = _said(start.key, [ask.key for ask in start.asks], chosen.say)
    form = read_start(start, [*_common(chosen), *said], letters=drawn_letters)
    return form.pattern, form.errors


def _photograph(chosen: Namespace) -> Made:
    if not chosen.picture:
        raise Refused(f"{PHOTOGRAPH} needs a picture; say --picture FILE.")
    try:
        picture = handed_in.decoded_picture(chosen.picture, Path(chosen.picture).read_bytes())
    except OSError as error:
        raise Refused(f"{shortened(chosen.picture)} cannot be read: {error.strerror}.") from None
    said = list(_said(PHOTOGRAPH, SAID_OF_PHOTOGRAPHS, chosen.say))
    source = [("source", CHOSEN)] if chosen.colours and "source" not in dict(said) else []
    form = read_photograph(
        [*_common(chosen), *said, *source], lambda turn, box: handed_in.summed_part(picture, turn, box)
    )
    return form.pattern, form.errors


def _common(chosen: Namespace) -> list[tuple[str, str]]:
    colours = [("colour", colour) for colour in chosen.colours.replace(",", " ").split()]
    around = [("around", chosen.around)] if chosen.around else []
    return [*around, ("title", chosen.title), *colours]


def _asks() -> Iterator[str]:
    for start in STARTS.values():
        yield f"{start.key} {', '.join(ask.key for ask in start.asks)}"
    yield f"{PHOTOGRAPH} {', '.join(SAID_OF_PHOTOGRAPHS)}"


def _said(key: str, known: Sequence[str], said: list[str]) -> Iterator[tuple[str, str]]:
    for words in said:
        name, equals, value = words.partition("=")
        if not equals or name not in known:
            raise Refused(
                f"“{shortened(words)}” is not what {key} asks; expected {', '.join(known)}, each as KEY=VALUE."
            )
        yield name, value.replace("\\n", "\n")
