"""Writes a shaded picture of a pattern file as PNG."""

from __future__ import annotations

from argparse import ArgumentParser, Namespace

from engine.counting.kinds import bead_sizes
from webapp.commands import Refused, files
from webapp.pictures.images import VIEWS, pattern_png

NARROWEST, WIDEST = 16, 4000


def add_options(parser: ArgumentParser) -> None:
    files.add_file(parser)
    parser.add_argument("-o", "--output", metavar="OUT.png", required=True, help="the picture to write")
    parser.add_argument("--view", metavar="WORD", default="rope", help=f"{', '.join(VIEWS)} (default rope)")
    parser.add_argument("--width", metavar="PIXELS", default="1600", help=f"{NARROWEST} to {WIDEST} (default 1600)")
    files.add_hand(parser)


def run(chosen: Namespace) -> int:
    target = files.check_folder(chosen.output)
    pattern, width = files.pattern(chosen), _width(chosen.width)
    sizes = bead_sizes(pattern, files.own(chosen).kinds)
    files.write_whole(target, pattern_png(pattern, chosen.view, width, sizes))
    return 0


def _width(text: str) -> int:
    if not (text.isascii() and text.isdigit() and len(text) < 6 and NARROWEST <= int(text) <= WIDEST):
        raise Refused(f"“{text[:40]}” is not a width; expected {NARROWEST} to {WIDEST} pixels.")
    return int(text)
