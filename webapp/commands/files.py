"""What commands on a pattern file share: reading it, the size options, whose numbers count, writing it whole."""

from __future__ import annotations

import sys
from argparse import ArgumentParser, Namespace
from contextlib import closing
from pathlib import Path

from engine.counting.closures import CLOSURES
from engine.counting.cuts import PLANS
from engine.counting.options import SIZE_OPTIONS, in_hand, read_longest, read_question
from engine.counting.questions import MIDDLES, ROUNDINGS, NamedSize, Question
from engine.counting.workshop import Workshop
from engine.errors import shortened
from engine.pattern.pattern import HANDS, STITCHES, Pattern
from webapp.commands import Refused
from webapp.exchange import pattern_file
from webapp.paths import default_data_folder
from webapp.records import MakerSettings
from webapp.storage import workshop
from webapp.storage.library import open_library


def add_file(parser: ArgumentParser) -> None:
    """The pattern file, and whose numbers count."""
    parser.add_argument("file", metavar="FILE", help="a pattern file (.pattern.json), or - for standard input")
    parser.add_argument("--data", metavar="DIR", help="count with the swatches, kinds and settings of this library")


def add_size(parser: ArgumentParser) -> None:
    """The options of a finished size."""
    group = parser.add_argument_group("size", "Without a length or a wrist: one pass of the chart.")
    group.add_argument(
        "--length",
        metavar="LENGTH",
        help='finished length with its unit: "50 cm", "500mm", "6 1/2 in"; or a named size: Opera, 2-8',
    )
    group.add_argument(
        "--closure", metavar="WORD", help=f"{', '.join(CLOSURES)} (default open), or usual: what is taken for granted"
    )
    group.add_argument("--kind", metavar="KIND", help='bead kind, such as "8/0 round", in place of the pattern\'s own')
    group.add_argument("--stitch", metavar="WORD", help=f"{', '.join(STITCHES)}, in place of the pattern's own")
    group.add_argument("--wrist", metavar="LENGTH", help="girth of the wrist, for a piece that lies close")
    group.add_argument("--neck", metavar="LENGTH", help="girth of the neck, for a piece that lies close")
    group.add_argument("--closure-length", metavar="LENGTH", help="what this clasp, or these ends, add to the rope")
    group.add_argument("--ease", metavar="LENGTH", help='room over wrist or neck (default "15 mm" over a wrist)')
    group.add_argument(
        "--hand-girth",
        metavar="LENGTH",
        help="for a bangle: round the hand at its widest, thumb tucked in; not the wrist",
    )
    group.add_argument("--inner", metavar="LENGTH", help="for a bangle: diameter inside")
    group.add_argument("--round", metavar="WORD", help=f"{', '.join(ROUNDINGS)}: round to beads (default) or passes")
    group.add_argument(
        "--middle",
        metavar="WORD",
        help=f"{', '.join(MIDDLES)}: whole passes keep a motif in the middle (default) or not",
    )
    group.add_argument("--pass-length", metavar="LENGTH", help='your own pass: "61 mm", or "20 passes measure 36 mm"')


def add_hand(parser: ArgumentParser) -> None:
    """Which hand works it."""
    parser.add_argument("--hand", metavar="WORD", help=f"{', '.join(HANDS)}: the hand it is worked with")
    parser.add_argument("--keep-picture", action="store_true", help="keep the picture for the other hand: another list")


def add_threads(parser: ArgumentParser) -> None:
    """How the worked rope is cut into threads."""
    parser.add_argument(
        "--threads",
        metavar="PLAN",
        help=f"{', '.join(PLANS)} (balanced is the default), at most so many metres, such as 4, or "
        'the beads after which a thread is joined: "joins 480, 960"',
    )
    parser.add_argument("--longest", metavar="METRES", help="the longest string of beads on a thread (default 4)")


def pattern(chosen: Namespace) -> Pattern:
    """The pattern of the file, in the hand that was asked for."""
    return in_hand(pattern_as_written(chosen), getattr(chosen, "hand", None), getattr(chosen, "keep_picture", False))


def pattern_as_written(chosen: Namespace) -> Pattern:
    """The pattern of the file, in its own hand."""
    return pattern_file.read(read_bytes(chosen.file), own(chosen).kinds)


def question(chosen: Namespace) -> Question:
    return read_question({name: getattr(chosen, name) for name in SIZE_OPTIONS}, sizes=own_sizes(chosen))


def own_sizes(chosen: Namespace) -> tuple[NamedSize, ...]:
    """The finished sizes of the library's own, which a length may name."""
    if not chosen.data:
        return ()
    with closing(open_library(_existing(chosen.data))) as database:
        return workshop.own_sizes(database)


def own(chosen: Namespace) -> Workshop:
    """Built-in kinds and defaults, or with `--data` the library's own."""
    longest_mm = read_longest(getattr(chosen, "longest", None))
    if not chosen.data:
        return Workshop().with_longest(longest_mm)
    with closing(open_library(_existing(chosen.data))) as database:
        return workshop.workshop(database).with_longest(longest_mm)


def settings(chosen: Namespace) -> MakerSettings:
    """The maker's settings of `--data`, or the defaults."""
    if not chosen.data:
        return MakerSettings()
    with closing(open_library(_existing(chosen.data))) as database:
        return workshop.settings(database)


def data_folder(chosen: Namespace) -> Path:
    """The data folder that was named, or the platform's."""
    return _resolved(chosen.data) if chosen.data else default_data_folder()


def read_bytes(name: str) -> bytes:
    """The bytes of a file, or of standard input for "-". Raises Refused in a sentence."""
    if name == "-":
        return sys.stdin.buffer.read(pattern_file.LARGEST_BYTES + 1)
    path = Path(name)
    if not path.is_file():
        raise Refused(f"There is no file {name}.")
    if path.stat().st_size > pattern_file.LARGEST_BYTES:
        raise Refused(f"{name} is larger than {pattern_file.LARGEST_BYTES // 1_000_000} MB, which no pattern file is.")
    return path.read_bytes()


def check_folder(name: str) -> Path:
    """The path of a file to be written. Raises Refused where its folder does not exist."""
    path = Path(name)
    if not path.parent.is_dir():
        raise Refused(f"The folder {path.parent} does not exist; make it first or name another.")
    if path.is_dir():
        raise Refused(f"{name} is a folder; expected the name of a file.")
    return path


def write_whole(path: Path, data: bytes) -> None:
    """Writes the file whole, or leaves what was there."""
    unfinished = path.with_name(f".{path.name}.part")
    try:
        unfinished.write_bytes(data)
        unfinished.replace(path)
    finally:
        unfinished.unlink(missing_ok=True)


def _existing(name: str) -> Path:
    path = _resolved(name)
    if not path.is_dir():
        raise Refused(f"There is no data folder {name}.")
    return path


def _resolved(name: str) -> Path:
    """The whole path of a folder. Raises Refused for a name that no folder can have."""
    try:
        path = Path(name).expanduser().resolve()
        path.exists()
    except (OSError, RuntimeError, ValueError):
        raise Refused(f"“{shortened(name, 60)}” is not the path of a folder.") from None
    return path
