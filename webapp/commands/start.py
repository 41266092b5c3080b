"""Writes the pattern file of a starting point: stripes, spirals, zigzags and the like."""

from __future__ import annotations

from argparse import ArgumentParser, Namespace
from collections.abc import Iterator

from engine.errors import shortened
from engine.pattern.starts.all import STARTS, start_of
from engine.pattern.starts.start import Start
from webapp.commands import Refused, files
from webapp.exchange import pattern_file
from webapp.pages.forms.starts import AROUND, read_start
from webapp.pictures.lettering import drawn_letters


def add_options(parser: ArgumentParser) -> None:
    parser.add_argument("start", metavar="KIND", help=f"one of {', '.join(STARTS)}")
    parser.add_argument("-o", "--out", metavar="OUT.pattern.json", required=True, help="the pattern file to write")
    parser.add_argument("--around", metavar="N", default=AROUND, help=f"beads in one round (default {AROUND})")
    parser.add_argument(
        "--colours", metavar="COLOURS", default="", help='colours of A, B, C and so on: "#2f7f76 #f3ecdd"'
    )
    parser.add_argument("--title", metavar="WORDS", default="", help="the title (default: what the start is called)")
    parser.add_argument(
        "--say",
        metavar="KEY=VALUE",
        action="append",
        default=[],
        help=f"what the start asks, once for each: {'; '.join(_asks())}",
    )


def run(chosen: Namespace) -> int:
    start = start_of(chosen.start)
    asked = [("around", chosen.around), ("title", chosen.title), *_said(start, chosen.say)]
    colours = (("colour", colour) for colour in chosen.colours.replace(",", " ").split())
    form = read_start(start, [*asked, *colours], letters=drawn_letters)
    if form.pattern is None:
        raise Refused(next(iter(form.errors.values())))
    files.write_whole(files.check_folder(chosen.out), pattern_file.write_file(form.pattern).encode())
    return 0


def _asks() -> Iterator[str]:
    for start in STARTS.values():
        yield f"{start.key} {', '.join(ask.key for ask in start.asks)}"


def _said(start: Start, said: list[str]) -> Iterator[tuple[str, str]]:
    known = [ask.key for ask in start.asks]
    for words in said:
        key, equals, value = words.partition("=")
        if not equals or key not in known:
            raise Refused(
                f"“{shortened(words)}” is not what {start.key} asks; expected {', '.join(known)}, each as KEY=VALUE."
            )
        yield key, value.replace("\\n", "\n")
