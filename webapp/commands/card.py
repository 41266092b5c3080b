"""Writes the stringing card of a pattern file: one HTML file for a phone."""

from __future__ import annotations

from argparse import ArgumentParser, Namespace

from engine.booklet.choices import Choices, Imprint, picture_in_hand
from engine.booklet.terms import TERMS
from engine.counting.options import read_plan
from webapp.commands import files
from webapp.printing.card import card_html


def add_options(parser: ArgumentParser) -> None:
    files.add_file(parser)
    parser.add_argument("-o", "--output", metavar="OUT.html", required=True, help="the HTML file to write")
    parser.add_argument("--terms", metavar="WORD", help=f"{', '.join(TERMS)}: crochet terms (default us)")
    files.add_threads(parser)
    files.add_hand(parser)
    files.add_size(parser)


def run(chosen: Namespace) -> int:
    target, kept, pattern = files.check_folder(chosen.output), files.settings(chosen), files.pattern(chosen)
    choices = Choices(
        question=files.question(chosen),
        plan=read_plan(chosen.threads),
        terms=chosen.terms or kept.terms,
        units=kept.units,
        imprint=Imprint(kept.maker or pattern.designer, kept.contact, kept.licence),
        picture=picture_in_hand(files.pattern_as_written(chosen), chosen.hand, chosen.keep_picture),
    )
    files.write_whole(target, card_html(pattern, choices, files.own(chosen)))
    return 0
