"""Every page there is, as a person comes to it."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import replace
from io import BytesIO

from PIL import Image
from playwright.sync_api import Page

from engine.booklet.choices import Choices
from engine.cabinet.bead import Bead
from engine.counting.kinds import KINDS
from engine.counting.workshop import Workshop
from engine.pattern.palette import Entry, Palette
from engine.pattern.pattern import Pattern
from tests.photographed import photographed, random_rope
from webapp.demo import demo_beads
from webapp.exchange.frozen import frozen
from webapp.pages.addresses import PATHS, address
from webapp.pictures import handed_in
from webapp.pictures.photographs import bead_photograph, shrunk
from webapp.records import BeadPicture, Counted, FreshBooklet
from webapp.storage import (
    backup_folder,
    beads,
    editions,
    given_answers,
    in_work,
    patterns,
    photographs,
    revisions,
    workshop,
)
from webapp.storage.database import Database

SAVE = "#editor button[name=save]:not([aria-hidden])"
SIZE = {"length": "20 cm", "closure": "clasp"}
# posted to, parts of pages, files
NO_PAGES = {
    "add_photographs",
    "photograph",
    "describe_photograph",
    "move_photograph",
    "remove_photograph",
    "take_back_photograph",
    "forget_photographs",
    "scene_picture",
    "kit",
    "kit_steps",
    "stop_kit",
    "kit_zip",
    "turning",
    "turning_steps",
    "stop_turning",
    "edition_pdf",
    "edition_card",
    "pieces",
    "piece",
    "move_piece",
    "rename_piece",
    "put_piece",
    "remove_piece",
    "kept_answer",
    "forget_answer",
    "withdraw",
    "bring_back_edition",
    "give_copy",
    "copy_pdf",
    "errata",
    "errata_pdf",
    "errata_text",
    "tell_errata",
    "empty_bin",
    "remove_examples",
    "check",
    "copy",
    "to_bin",
    "take_back",
    "pattern_file",
    "picture",
    "symmetric_picture",
    "start_picture",
    "old_chart",
    "old_chart_shown",
    "old_chart_bead",
    "photograph_start",
    "photograph_shown",
    "photograph_chart",
    "photograph_rope",
    "chart_picture",
    "chart_left",
    "chart_state",
    "compare_chart",
    "revision_strip",
    "revision_chart",
    "mark_revision",
    "bring_back",
    "job",
    "job_steps",
    "cancel_job",
    "job_pdf",
    "add_swatch",
    "remove_swatch",
    "add_kind",
    "remove_kind",
    "add_size",
    "remove_size",
    "pick_sizes",
    "backup",
    "bulk",
    "check_library",
    "trust_clock",
    "shelve",
    "chart_text",
    "chart_table",
    "chart_svg",
    "chart_png",
    "import_preview",
    "import_progress",
    "take_import",
    "stop_import",
    "library_zip",
    "make_backup",
    "backup_folder",
    "backup_inside",
    "backup_file",
    "restore_backup",
    "bought",
    "note_made",
    "undo_made",
    "shopping_table",
    "shopping_text",
    "earnings_table",
    "remove_earning",
    "colourway_picture",
    "remove_colourway",
    "take_back_colourway",
    "link_beads",
    "refresh_beads",
    "demo_beads",
    "bead_table",
    "take_beads",
    "archive_bead",
    "take_back_bead",
    "remove_bead",
    "bead_picture",
    "set_bead_picture",
    "remove_bead_picture",
    "sample_bead",
    "static",
    "api_patterns",
    "api_pattern",
    "api_working",
}
PAGES = {name: path for name, path in PATHS.items() if name not in NO_PAGES and not path.startswith("/api")}


def addresses(database: Database) -> dict[str, str]:
    """Every address that a page answers at, by what is seen there."""
    unwieldy = patterns.create(database, the_most_unwieldy()).id
    patterns.put_into_bin(database, patterns.create(database, the_most_unwieldy("Thrown away")).id)
    revisions.save(
        database,
        unwieldy,
        replace(the_most_unwieldy("W" * 118), chart=bytes(k * 11 % 64 for k in range(400))),
        1,
        "W" * 120,
    )
    for number in (1, 2):
        editions.publish(
            database,
            unwieldy,
            number,
            [FreshBooklet("Large print, Letter, ink-saving, left-handed", "{}", 70, b"%PDF")],
            note="W" * 300,
        )
        editions.give(database, unwieldy, number, "Large print, Letter, ink-saving, left-handed", "W" * 80)
    editions.withdraw(database, unwieldy, 1, "W" * 300)
    _, _, gone = photographs.add_all(database, unwieldy, [(shrunk("plain.png", a_photograph()).jpeg, 300, 900)] * 3)
    photographs.remove(database, unwieldy, gone)
    beads.save_all(database, (), (*demo_beads(), *unwieldy_beads()))
    beads.set_picture(database, "bead", BeadPicture(*bead_photograph("plain.png", a_photograph())))
    found = {name: first(name, path) for name, path in PAGES.items()}
    found |= {f"{name}, of a size": address(name, id=1, **SIZE) for name in ("stringing", "materials", "booklet")}
    found |= {f"{name}, unwieldy": first(name, path, unwieldy) for name, path in PAGES.items() if "{id}" in path}
    found |= {
        "two states compared": address("compare", id=unwieldy, old=1, new=2),
        "an old state brought back": address("history", id=unwieldy, said="brought", undo=1),
    }
    found |= {
        "library as a list": address("library", view="list"),
        "a shopping list": address("shopping", pattern="2", pieces="3", length="45 cm", closure="clasp"),
        "a shopping list, refused": address("shopping", pattern="Nowhere", pieces="many", length="45"),
        "what can be made": address("makeable", length="45 cm", closure="clasp"),
        "cost worked out": address("cost", id=2, length="45 cm", closure="clasp", hours="6:30", rate="15", other="4"),
        "earnings of a pattern": address("earnings", pattern=2, edition=1),
        "beads narrowed": address("beads", by_colour="yes", near="#1d3350", kind="11/0 round", stock="in"),
        "beads, another page": address("beads", page=2),
        "beads, not found": address("beads", search="zither"),
        "a colour taken": address("bead", bead="bead", said="bead-colour", sampled="#205060"),
        "library narrowed": address("library", by_colour="yes", near="#1d3350", kind="11/0 round"),
        "something to undo": address("library", said="binned", undo="take-back", chosen="1-2"),
    }
    for number, name in ((1, "For Marta"), (unwieldy, "W" * 80)):
        counted = Counted(patterns.load(database, number).pattern, 1, text_counted(database, number))
        piece = in_work.begin(database, number, name, counted, "")
        given = given_answers.keep(database, number, name, counted, f"pattern={number}", "W" * 300, 1)
        found[f"piece {name[:9]}"] = address("piece", id=number, piece=piece)
        found[f"kept_answer {name[:9]}"] = address("kept_answer", answer=given)
    found["kept_answers, not found"] = address("kept_answers", search="zither")
    found["own words, one photograph removed"] = address(
        "own_words", id=unwieldy, said="photograph-gone", at=0, undo=gone
    )
    token = handed_in.keep(database.folder, handed_in.taken("plain.png", a_photograph()), database.now().timestamp())
    found["a picture laid round the rope"] = address("photograph_start", token=token)
    found["an old chart read"] = an_old_chart(database)
    found["a shop kit, refused"] = address("kit", id=unwieldy, edition=2)
    found["a shop kit"] = an_edition(database)
    found["errata"] = address("errata", id=unwieldy, old=1, new=2)
    found["inside a backup"] = address("backup_inside", file=backup_folder.make(database).name)
    desk = {
        "compare": "sizes",
        "worked": "3/2",
        "pieces": "3",
        "packs": "20 at 3.50",
        "threads": "joins 90, 400",
        "have": "A 20, B 2 x 10 g",
        "out_thread": "thread 2: 40",
        "thread_left": "1",
        "out_colour": "A 9",
        "beads_left": "B 2",
    }
    found |= {
        "answers, of a size": address("answers", pattern=1, length="18 cm", **desk),
        "answers, a ring": address("answers", pattern=1, length="2-8", compare="kinds"),
        "answers, refused": address("answers", pattern=1, length="45 ells"),
        "answers, unwieldy": address("answers", pattern=unwieldy, length="Princess", **desk),
    }
    return found | {
        "a search that finds": address("library", search="harbour"),
        "a search that does not": address("library", search="zither"),
        "the bin, about to be emptied": address("bin", asked="yes"),
        "no such page": "/nowhere",
        "no such pattern": address("pattern", id=999),
        "stringing, refused": address("stringing", id=1, length="45 ells"),
        "materials, refused": address("materials", id=1, length="1 mm"),
        "pictures, a turning rope": address("pictures", id=1, scene="turning"),
        "pictures, refused": address("pictures", id=1, ground="clear", form="jpeg"),
        "booklet, refused": address("booklet", id=1, length="45"),
        "something said": address("library", said="binned"),
    }


def an_edition(database: Database) -> str:
    """The page of the kit of an edition that was printed with what is kept beside it."""
    pattern = patterns.create(database, the_most_unwieldy("Published")).id
    kept = frozen(Choices(published=1), the_most_unwieldy("Published"), Workshop(kinds=dict(KINDS)))
    editions.publish(database, pattern, 1, [FreshBooklet("Standard, A4", kept, 70, b"%PDF")])
    return address("kit", id=pattern, edition=1)


def an_old_chart(database: Database) -> str:
    """The page of one that was photographed badly, so that beads are in doubt."""
    taken = photographed(random_rope(12, 40, 5, seed=3), long_px=480, off_px=1, grain=9, quality=45)
    token = handed_in.keep(database.folder, handed_in.taken("chart.jpg", taken.jpeg), database.now().timestamp())
    marked = {
        f"{name}{number}": f"{100 * place:.1f}"
        for number, corner in enumerate(taken.corners, 1)
        for name, place in zip("xy", corner, strict=True)
    }
    return address("old_chart", token=token, around=12, many=5, **marked)


def text_counted(database: Database, number: int) -> str:
    """What a list of that pattern is counted with when a piece is begun."""
    return frozen(Choices(), patterns.load(database, number).pattern, workshop.workshop(database, number))


def of_one_pattern(place: str) -> bool:
    """Whether an address is that of a page about one pattern."""
    return re.match(r"/patterns/\d", place) is not None


def a_photograph() -> bytes:
    """A plain upright picture as a file."""
    out = BytesIO()
    Image.new("RGB", (300, 900), "#2f7f76").save(out, "PNG")
    return out.getvalue()


def first(name: str, path: str, number: int = 1) -> str:
    """The address of a page of that pattern, of its first revision where it is about one."""
    return address(
        name,
        **{
            place: value
            for place, value in (
                ("id", number),
                ("revision", 1),
                ("bead", "bead"),
                ("start", "zigzag"),
                ("way", 0),
                ("code", "A"),
            )
            if f"{{{place}}}" in path
        },
    )


def unwieldy_beads() -> tuple[Bead, ...]:
    """Beads with everything as long as it may be; the first is called by the key "bead"."""
    long = "W" * 120
    first_bead = Bead(
        name=long,
        colour="#2f7f76",
        maker_code=long,
        supplier=long,
        pack_mg=99_999_999,
        price=99_999_999,
        currency="EUR",
        stock_mg=99_999_999,
        note="W" * 2000,
        key="bead",
    )
    return (first_bead, *(replace(first_bead, key=f"bead{number}") for number in range(70)))


def sent_wrong(page: Page) -> dict[str, Callable[[], None]]:
    """Pages that come when a form is sent with something wrong in it."""

    def editor() -> None:
        page.goto(address("new"))
        page.fill("[name=beads]", "3A (2B")
        page.click(SAVE)

    def settings() -> None:
        page.goto(address("settings"))
        page.fill("[name=clasp]", "an ell")
        page.click(f"form[action='{address('settings')}'] button")

    def swatch() -> None:
        page.goto(address("settings"))
        page.click(f"form[action='{address('add_swatch')}'] button")

    def kind() -> None:
        page.goto(address("settings"))
        page.click(f"form[action='{address('add_kind')}'] button")

    def own_size() -> None:
        page.goto(address("settings"))
        page.click(f"form[action='{address('add_size')}'] button")

    return {
        "new, refused": editor,
        "settings, refused": settings,
        "swatch, refused": swatch,
        "kind, refused": kind,
        "own size, refused": own_size,
    }


def the_most_unwieldy(title: str = "W" * 120) -> Pattern:
    """A title without a gap, 60 around, 64 beads with long names."""
    codes = [
        *"ABCDEFGHIJKLMNOPQRSTUVWXYZ",
        *(f"Q{letter}" for letter in "ABCDEFGHIJKLMNOPQRSTUVWXYZ"),
        *(f"Z{letter}" for letter in "ABCDEFGHIJKL"),
    ]
    entries = tuple(
        Entry(code, f"{'Wideawake' * 6} {code}", f"#{number * 4:02x}8{number % 10}{255 - number * 4:02x}")
        for number, code in enumerate(codes)
    )
    return Pattern(
        title,
        60,
        Palette(entries),
        bytes(k * 7 % 64 for k in range(640)),
        notes="W" * 400,
        tags=("W" * 40, "two words"),
    )
