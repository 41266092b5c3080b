"""Prints the booklet of a pattern file."""

from __future__ import annotations

import sys
from argparse import ArgumentParser, Namespace

from engine.booklet.choices import Choices, Imprint, picture_in_hand
from engine.booklet.papers import FORMATS, PAPERS, STANDARD
from engine.booklet.terms import TERMS
from engine.counting.options import read_plan, read_spare
from webapp.commands import files
from webapp.printing.orders import Order, print_booklet


def add_options(parser: ArgumentParser) -> None:
    files.add_file(parser)
    parser.add_argument("-o", "--output", metavar="OUT.pdf", required=True, help="the PDF to write")
    parser.add_argument("--paper", metavar="WORD", help=f"{', '.join(PAPERS)} (default A4)")
    parser.add_argument("--edition", metavar="WORD", help=f"{', '.join(FORMATS)} (default standard)")
    parser.add_argument("--ink-saving", action="store_true", help="symbols without fills, no shaded pictures")
    parser.add_argument("--terms", metavar="WORD", help=f"{', '.join(TERMS)}: crochet terms (default us)")
    parser.add_argument("--spare", metavar="PERCENT", help="beads to buy beyond those worked (default 10)")
    files.add_threads(parser)
    files.add_hand(parser)
    files.add_size(parser)


def run(chosen: Namespace) -> int:
    target, kept, pattern = files.check_folder(chosen.output), files.settings(chosen), files.pattern(chosen)
    choices = Choices(
        question=files.question(chosen),
        plan=read_plan(chosen.threads),
        paper=chosen.paper or kept.paper,
        format=chosen.edition or STANDARD,
        terms=chosen.terms or kept.terms,
        spare=read_spare(chosen.spare, kept.spare),
        units=kept.units,
        imprint=Imprint(kept.maker or pattern.designer, kept.contact, kept.licence),
        ink_saving=chosen.ink_saving,
        picture=picture_in_hand(files.pattern_as_written(chosen), chosen.hand, chosen.keep_picture),
    )

    def step(name: str) -> None:
        print(f"{name} …", file=sys.stderr)

    files.write_whole(target, print_booklet(Order(pattern, choices, files.own(chosen)), step))
    return 0
