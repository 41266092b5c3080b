"""A small example pattern of our own, and every page and part of a page that shows it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from pathlib import Path

from engine.booklet.errata import Published, errata
from engine.booklet.own import OwnWords
from engine.booklet.proof.proof import Proof
from engine.booklet.proof.readback import Remark
from engine.counting.kinds import KINDS
from engine.counting.questions import NamedSize, Question
from engine.counting.rope import Swatch
from engine.counting.workshop import Workshop
from engine.pattern.notation import parse, write
from engine.pattern.palette import Entry, Palette
from engine.pattern.pattern import Pattern
from tests.web.sample_beginnings import beginnings
from tests.web.sample_cabinet import cabinet_pages, colourway_pages, colourways_of, cost_pages
from tests.web.sample_in_work import in_work_pages, pieces_of
from tests.web.sample_kept import WHEN, backups, before, history
from tests.web.sample_parts import part_pages
from tests.web.sample_shop import shop_pages, shop_parts
from webapp.pages.forms import all as forms
from webapp.pages.forms.taken_back import typed_again
from webapp.pages.views import all as views
from webapp.pages.views.backups import STATE_WORDS as STATES
from webapp.pages.views.import_preview import LOOKING, TAKING
from webapp.pages.views.library import undo_of
from webapp.pages.views.mistake import mistake_page
from webapp.pages.views.own_words import Done
from webapp.records import (
    BackupContents,
    BackupFolder,
    Edition,
    EditionBooklet,
    FolderSizes,
    GivenCopy,
    KeptSwatch,
    MakerSettings,
    MissingLibrary,
    PatternInBackup,
    PatternInZip,
    PatternSummary,
    Photograph,
    PrintJob,
    Shelves,
    StoredPattern,
    SummaryPage,
    Wanted,
)

HOSTILE = "<script>alert(1)</script>\" onload=x '"

PALETTE = Palette(
    (
        Entry("A", "Sea glass", "#2f7f76", "matte"),
        Entry("B", "Candle", "#f5eddc"),
        Entry("C", "Lamp", "#d9932b", "lined", maker_code="L-7"),
    )
)
BUOYS = Pattern(
    "Buoys",
    6,
    PALETTE,
    parse("(3A 2B C)x5 A", PALETTE.codes),
    designer="Ada",
    notes="Slack tension.",
    tags=("bracelet", "sea"),
)
STORED = StoredPattern(7, BUOYS, 3, WHEN, False, 0, False, False)
SETTINGS = MakerSettings(maker="Lantern Street", licence="Sell what you make.", terms="uk")
FRAME = views.frame(SETTINGS, WHEN, "saved")
SWATCH = Swatch("11/0 round", 6, "slip", 240, 62.0, "2026-03-01", "tight")
WORKSHOP = Workshop()
MEASURED = Workshop(swatches=(SWATCH,))
OWN_SIZES = (NamedSize("Own", "Stall", Question(420.0, "glued")), NamedSize("Own", "Anklet", Question(wrist_mm=230.0)))
NUMBERS = ((3, WHEN, "As sampled"), (2, WHEN, ""))
JOB = PrintJob("k3", 7, "running", (("Count", "done"), ("Draw", "running"), ("Set the pages", "waiting")))
PROOF = Proof((Remark(False, "Licence", "Nothing says so.", "Write one.", "settings"),), 12, 90, 400)
BLOCKED = Proof((Remark(True, "List 1, entry 3", "The page says 3 A.", "Print again."), *PROOF.remarks), 12, 90, 400)
COPIES = (
    GivenCopy(1, 7, 1, "Standard, A4", "Marta Lind", False, WHEN, 0),
    GivenCopy(2, 7, 2, "Standard, A4", "Ole", True, WHEN, 0),
)
MISSING = MissingLibrary(("libpango-1.0-0",), (("Debian", "apt-get install libpango-1.0-0"),))


def summary(number: int = 1, **others: object) -> PatternSummary:
    """What a list says about pattern number so-and-so."""
    told = PatternSummary(
        number, "Buoys", 6, 31, 31, ("11/0 round",), ("#2f7f76", "#f5eddc"), ("sea",), WHEN, 3, False, "r3", False
    )
    return replace(told, **others)  # type: ignore[arg-type]


def edition(stored: StoredPattern, number: int) -> Edition:
    """An edition of one booklet."""
    return Edition(
        stored.id,
        number,
        number,
        WHEN,
        stored.pattern.title,
        "{}",
        (EditionBooklet("Standard, A4", "{}", 12, "0" * 64, 480_000),),
    )


def found(*patterns: PatternSummary, page: int = 1, pages: int = 1) -> SummaryPage:
    """A page of a list of those patterns."""
    return SummaryPage(patterns, page, pages, len(patterns), (("sea", 1),))


def hostile(stored: StoredPattern) -> StoredPattern:
    """The pattern with markup in every word of it."""
    entries = tuple(replace(entry, name=HOSTILE, maker_code=HOSTILE) for entry in stored.pattern.palette)
    pattern = replace(
        stored.pattern, title=HOSTILE, designer=HOSTILE, notes=HOSTILE, tags=(HOSTILE,), palette=Palette(entries)
    )
    return replace(stored, pattern=pattern)


Shown = tuple[str, object]


def wrong_editor() -> forms.EditorForm:
    """A form in which nearly everything is wrong."""
    return forms.read_editor(
        [
            ("around", "2"),
            ("beads", f"3A {HOSTILE}"),
            ("start", "9"),
            ("bead_code", "A"),
            ("bead_name", HOSTILE),
            ("made_from", "2"),
        ]
    )


def pages(stored: StoredPattern = STORED, maker: MakerSettings = SETTINGS) -> Mapping[str, Shown]:
    """Every page in every state that looks different: a name, its template and its value."""
    frame = views.frame(maker, WHEN, "saved")
    return {
        **part_pages(frame, stored, maker, WORKSHOP),
        **in_work_pages(frame, stored),
        **_of_the_library(frame, stored),
        **_of_a_pattern(frame, stored),
        **_counted(frame, stored, maker),
        **_printed(frame, stored, maker),
        **_settings(frame, stored, maker),
        **cabinet_pages(frame, stored, maker),
        **colourway_pages(frame, stored),
        **cost_pages(frame, stored, maker),
    }


def _of_the_library(frame: views.Frame, stored: StoredPattern) -> Mapping[str, Shown]:
    """The library, what comes into it, its backups, and what goes wrong."""
    one = summary(title=stored.pattern.title, tags=stored.pattern.tags)
    return {
        "library": (
            "library/page.html",
            views.library_page(
                frame,
                found(one, replace(one, example=True, colours=("#112233",) * 9), page=2, pages=3),
                forms.Finder(tag="sea"),
                1,
                2,
            ),
        ),
        "library, as a list": (
            "library/page.html",
            views.library_page(
                frame,
                found(replace(one, series=stored.pattern.title, difficulty=3, published=True)),
                forms.Finder(view="list", more=Wanted(series=stored.pattern.title, near="#112233")),
                0,
                0,
                Shelves((stored.pattern.title,), ("11/0 round",), (6,)),
                undo_of("untag", "1-2", stored.pattern.title),
            ),
        ),
        "library, nothing found": ("library/page.html", views.library_page(frame, found(), forms.Finder("zebra"))),
        "library, empty": ("library/page.html", views.library_page(views.frame(), found(), forms.Finder())),
        "bin": ("library/bin.html", views.bin_page(frame, found(one))),
        "bin, asked": ("library/bin.html", views.bin_page(frame, found(one), True)),
        "bin, empty": ("library/bin.html", views.bin_page(frame, found())),
        "import": ("library/import.html", views.import_page(frame)),
        "import, sent": (
            "library/import.html",
            views.import_page(frame, ((7, stored.pattern.title),), ((stored.pattern.title, "It is not JSON."),)),
        ),
        "import_progress": (
            "library/import_running.html",
            views.import_progress_page(frame, "0f", TAKING, 1200, 9600, False),
        ),
        "arriving, begun": (
            "library/import_running.html",
            views.import_progress_page(frame, "0f", LOOKING, 0, 0, False),
        ),
        "import_preview": (
            "library/import_preview.html",
            views.import_preview_page(
                frame,
                "0f",
                tuple(
                    PatternInZip(stored.pattern.title, state, number)
                    for state, number in (("new", 0), ("same", 7), ("different", 7))
                )
                * 501,
                "1 swatch and settings",
            ),
        ),
        "backups": (
            "backups/page.html",
            views.backups_page(
                frame, backups(stored), BackupFolder(Path("disk"), Path("disk"), ""), undo="before-restore.sqlite"
            ),
        ),
        "words and sums": ("help/page.html", views.help_page(frame)),
        "how the library is": (
            "care/page.html",
            views.care_page(
                frame,
                "1.2.3",
                stored.pattern.title,
                FolderSizes(9, 8, 7, 6, 5),
                None,
                [(WHEN, stored.pattern.title)],
                True,
            ),
        ),
        "how the library is, well": (
            "care/page.html",
            views.care_page(frame, "1.2.3", "here", FolderSizes(1, 2, 3, 4, 5), backups(stored)[0], [], False),
        ),
        "backups in trouble": (
            "backups/page.html",
            views.backups_page(
                views.frame(troubles=(stored.pattern.title,)),
                backups(stored),
                BackupFolder(Path("disk"), Path("disk"), ""),
                clock_asks=True,
            ),
        ),
        "backups, none": (
            "backups/page.html",
            views.backups_page(
                views.frame(),
                (),
                BackupFolder(Path("own"), Path(stored.pattern.title), stored.pattern.title),
                stored.pattern.title,
                stored.pattern.title,
            ),
        ),
        "inside a backup": (
            "backups/inside.html",
            views.inside_page(
                frame,
                BackupContents(
                    Path("one.sqlite"),
                    4,
                    1,
                    WHEN,
                    tuple(PatternInBackup(stored.pattern.title, state) for state in STATES) * 80,
                ),
            ),
        ),
        "error": ("error.html", views.error_page(frame, 404, stored.pattern.title)),
    }


def _of_a_pattern(frame: views.Frame, stored: StoredPattern) -> Mapping[str, Shown]:
    """A pattern, its words, its history and its chart."""
    editor, kinds = forms.editor_of(stored), tuple(WORKSHOP.kinds)
    return {
        **beginnings(frame, stored, kinds),
        "new": ("editor/page.html", views.new_page(frame, forms.blank_editor(), kinds)),
        "new, wrong": ("editor/page.html", views.new_page(frame, wrong_editor(), kinds)),
        "edit": ("editor/page.html", views.edit_page(frame, stored, editor, kinds)),
        "edit, stale": ("editor/page.html", views.edit_page(frame, stored, replace(editor, made_from=2), kinds, True)),
        "pattern": ("pattern/page.html", views.pattern_page(frame, stored, WORKSHOP, colourways_of(stored))),
        "pattern, in the bin": ("pattern/page.html", views.pattern_page(frame, replace(stored, binned=True), MEASURED)),
        "history": ("history/page.html", views.history_page(frame, stored, history(stored))),
        "history, undone": (
            "history/page.html",
            views.history_page(
                frame, replace(stored, working=True), history(stored, WHEN, pages=3), 2, stored.pattern.title
            ),
        ),
        "revision": ("history/revision.html", views.revision_page(frame, stored, history(stored).revisions[1])),
        "revision that stands": (
            "history/revision.html",
            views.revision_page(frame, stored, history(stored).revisions[0]),
        ),
        "compare": (
            "history/compare.html",
            views.compare_page(frame, stored, NUMBERS, (2, before(stored)), (0, stored.pattern)),
        ),
        "compare, the same": (
            "history/compare.html",
            views.compare_page(frame, stored, NUMBERS, (3, stored.pattern), (0, stored.pattern)),
        ),
        "compare, long": (
            "history/compare.html",
            views.compare_page(
                frame,
                stored,
                NUMBERS,
                (2, before(stored)),
                (0, replace(stored.pattern, chart=stored.pattern.chart * 200)),
                3000,
            ),
        ),
        "chart": ("chart/page.html", views.chart_page(frame, stored, WORKSHOP)),
        "blank chart": ("chart/blank.html", views.blank_page(frame, forms.blank_form(), kinds)),
        "blank chart, wrong": (
            "chart/blank.html",
            views.blank_page(
                frame,
                forms.read_blank([("title", ""), ("around", "2"), ("rounds", HOSTILE), ("colour", HOSTILE)]),
                kinds,
            ),
        ),
    }


def _counted(frame: views.Frame, stored: StoredPattern, maker: MakerSettings) -> Mapping[str, Shown]:
    """What is counted: lists, bills and answers."""
    sized = forms.read_size([("length", "19 cm"), ("closure", "clasp")], maker)
    ring = forms.read_size([("length", "19 cm"), ("closure", "ring"), ("hand", "left")], maker)
    bad = forms.read_size([("length", "5 x"), ("threads", "metres"), ("kind", "none"), ("spare", "lots")], maker)
    return {
        "mistake": ("stringing/mistake.html", mistake_page(frame, stored, sized, WORKSHOP, (("beads", "9A 2Z"),))),
        "mistake, found": (
            "stringing/mistake.html",
            mistake_page(
                frame, stored, sized, WORKSHOP, (("beads", write(stored.pattern.chart, stored.pattern.palette.codes)),)
            ),
        ),
        "stringing": ("stringing/page.html", views.stringing_page(frame, stored, sized, WORKSHOP)),
        "stringing, pieces in work": (
            "stringing/page.html",
            views.stringing_page(
                frame,
                stored,
                sized,
                WORKSHOP,
                asked=(("length", "19 cm"),),
                pieces=pieces_of(stored),
                wrong_name=stored.pattern.title,
            ),
        ),
        "stringing, left-handed": ("stringing/page.html", views.stringing_page(frame, stored, ring, WORKSHOP)),
        "stringing, wrong": ("stringing/page.html", views.stringing_page(frame, stored, bad, WORKSHOP)),
        "materials": ("materials/page.html", views.materials_page(frame, stored, sized, MEASURED)),
        "materials, ring": ("materials/page.html", views.materials_page(frame, stored, ring, WORKSHOP)),
        "materials, wrong": ("materials/page.html", views.materials_page(frame, stored, bad, WORKSHOP)),
        "answers": (
            "answers/page.html",
            desk(
                frame,
                stored,
                maker,
                length="18 cm",
                have="A 5, B 5, C 5",
                pieces="3",
                packs="20 at 3.50",
                worked="4/2",
                compare="sizes",
                threads="joins 90, 180",
                out_thread="thread 2: 40",
                thread_left="1",
                out_colour="A 9",
                beads_left="B 2",
            ),
        ),
        "answers, ring": ("answers/page.html", desk(frame, stored, maker, length="2-8", compare="kinds", have="Q 1")),
        "answers, wrong": ("answers/page.html", desk(frame, stored, maker, length="5 x", kind="5 mm")),
        "answers, several": ("answers/page.html", desk(frame, None, maker, pattern=stored.pattern.title)),
    }


def _printed(frame: views.Frame, stored: StoredPattern, maker: MakerSettings) -> Mapping[str, Shown]:
    """What is printed and sold."""
    booklet, bad_booklet = (
        forms.read_booklet([("length", "19 cm")], maker),
        forms.read_booklet([("paper", "A9")], maker),
    )
    done, failed = replace(JOB, state="done", pages=9), replace(JOB, state="failed", message=stored.pattern.title)
    return {
        **shop_pages(frame, stored, edition(stored, 2), WORKSHOP),
        "booklet": ("printing/booklet.html", views.booklet_page(frame, stored, booklet, WORKSHOP, None, (JOB, done))),
        "booklet, wrong": ("printing/booklet.html", views.booklet_page(frame, stored, bad_booklet, WORKSHOP, MISSING)),
        "print": ("printing/job.html", views.job_page(frame, stored, JOB)),
        "print, done": ("printing/job.html", views.job_page(frame, stored, done)),
        "print, proofed": ("printing/job.html", views.job_page(frame, stored, replace(done, proof=PROOF, published=2))),
        "print, blocked": (
            "printing/job.html",
            views.job_page(frame, stored, replace(done, proof=BLOCKED, published=2)),
        ),
        "own words": (
            "printing/own_words.html",
            views.own_words_page(
                frame,
                stored,
                forms.words_form(OwnWords((("tips", stored.pattern.title), ("own-title", "By the sea")))),
                (Photograph(1, stored.pattern.title, "", 900, 600), Photograph(2, "", "A ring", 600, 900)),
                10,
                (Photograph(3, "", stored.pattern.title, 900, 600),),
                Done(0, 3),
            ),
        ),
        "own words, wrong": (
            "printing/own_words.html",
            views.own_words_page(
                frame,
                stored,
                forms.read_words([("tips", "x" * 20_001)]),
                (),
                10,
                done=Done(wrong="“rope.gif” cannot be read."),
            ),
        ),
        "editions": (
            "printing/editions.html",
            views.editions_page(
                frame,
                stored,
                (edition(stored, 2), replace(edition(stored, 1), withdrawn=WHEN, why=stored.pattern.title)),
                COPIES,
                (
                    replace(done, proof=PROOF, published=3, revision=3, name="Standard, A4"),
                    replace(done, proof=BLOCKED, published=3, revision=3),
                    replace(done, proof=PROOF, published=3, revision=1),
                ),
            ),
        ),
        "editions, none": ("printing/editions.html", views.editions_page(frame, stored, (), ())),
        "editions, refused": (
            "printing/editions.html",
            views.editions_page(
                frame, stored, (edition(stored, 1),), (), (), forms.read_copy([("name", " ")]), 1, stored.pattern.title
            ),
        ),
        "editions, a copy made": (
            "printing/editions.html",
            views.editions_page(frame, stored, (edition(stored, 1),), COPIES, made=2),
        ),
        "errata": (
            "printing/errata.html",
            views.errata_page(
                frame,
                stored,
                (edition(stored, 2), edition(stored, 1)),
                1,
                2,
                errata(Published(1, "2026-01-02", before(stored)), Published(2, "2026-05-04", stored.pattern)),
                COPIES,
            ),
        ),
        "print, failed": ("printing/job.html", views.job_page(frame, stored, failed)),
    }


def _settings(frame: views.Frame, stored: StoredPattern, maker: MakerSettings) -> Mapping[str, Shown]:
    """What the maker says once."""
    bad_swatch = forms.read_swatch([("around", "x")], tuple(WORKSHOP.kinds))
    settings, own = forms.settings_of(maker), (KeptSwatch(4, replace(SWATCH, note=stored.pattern.title)),)
    return {
        "settings": ("settings/page.html", views.settings_page(frame, settings, own, WORKSHOP.kinds.values(), "data")),
        "settings, wrong": (
            "settings/page.html",
            views.settings_page(
                frame, forms.read_settings([("clasp", "4o")], maker), (), WORKSHOP.kinds.values(), "data", bad_swatch
            ),
        ),
        "settings, own": (
            "settings/page.html",
            views.settings_page(
                frame,
                settings,
                own,
                WORKSHOP.kinds.values(),
                "data",
                None,
                views.Own({"8/0 round": 3, "6/0 round": 0}, OWN_SIZES),
            ),
        ),
        "settings, own wrong": (
            "settings/page.html",
            views.settings_page(
                frame,
                settings,
                own,
                WORKSHOP.kinds.values(),
                "data",
                None,
                views.Own(
                    {},
                    (),
                    forms.read_kind(
                        [
                            ("name", stored.pattern.title),
                            ("diameter", "2"),
                            ("length", "2"),
                            ("hole", "1"),
                            ("per_gram", "1"),
                        ]
                    ),
                    forms.read_own_size([("name", stored.pattern.title)]),
                ),
            ),
        ),
        "settings, a swatch removed": (
            "settings/page.html",
            views.settings_page(
                frame,
                settings,
                own,
                WORKSHOP.kinds.values(),
                "data",
                None,
                None,
                typed_again(replace(SWATCH, note=stored.pattern.title)),
            ),
        ),
        "settings, a kind removed": (
            "settings/page.html",
            views.settings_page(
                frame,
                settings,
                own,
                WORKSHOP.kinds.values(),
                "data",
                None,
                views.Own(missed=2),
                typed_again(KINDS["8/0 round"]),
            ),
        ),
    }


def desk(frame: views.Frame, stored: StoredPattern | None, maker: MakerSettings, **typed: str) -> object:
    """The desk for that question, or with two patterns that may be meant."""
    form = forms.read_desk(typed.items(), maker, OWN_SIZES)
    near = () if stored else (summary(title=typed["pattern"]), summary(8, title=typed["pattern"]))
    return views.answers_page(frame, form, stored, WORKSHOP, maker, near, OWN_SIZES)


def parts(stored: StoredPattern = STORED) -> Mapping[str, tuple[str, object]]:
    """The pieces of pages that are sent alone."""
    return {
        "check": ("editor/_check.html", views.check_part(forms.editor_of(stored))),
        "check, wrong": ("editor/_check.html", views.check_part(wrong_editor())),
        "check, waiting": ("editor/_check.html", views.check_part(forms.blank_editor())),
        "steps": ("printing/_steps.html", views.job_page(FRAME, stored, JOB)),
        **shop_parts(FRAME, stored, edition(stored, 2), WORKSHOP),
    }
