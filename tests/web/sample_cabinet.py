"""Every page of the cabinet in every state that looks different."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from engine.cabinet.arrivals import Row, arrivals
from engine.cabinet.bead import Bead
from engine.cabinet.colourways import Colourway
from engine.cabinet.earnings import Earning
from engine.cabinet.finding import WantedBeads
from engine.cabinet.stock import makeable, shopping_list, take
from engine.counting.answers import answer
from engine.counting.kinds import KINDS
from engine.counting.questions import Question
from engine.counting.workshop import Workshop
from engine.drawing.telling_apart import told_apart
from engine.pattern.palette import Palette
from webapp.pages.forms import all as forms
from webapp.pages.forms.colourways import typed_entry
from webapp.pages.views import all as views
from webapp.records import (
    BeadPicture,
    BeadTable,
    KeptBead,
    KeptColourway,
    KeptEarning,
    MadePieces,
    MakerSettings,
    StoredPattern,
    WrongRow,
)

Shown = tuple[str, object]

SEA = Bead(
    name="Sea glass",
    colour="#2f7f76",
    finish="matte",
    maker_code="LS-4",
    supplier="Pier Nine",
    pack_mg=20_000,
    price=390,
    currency="EUR",
    stock_mg=18_500,
    note="Left.",
    key="sea",
)
BAY = replace(SEA, name="Bay", colour="#30807a", stock_mg=0, price=0, currency="", key="bay")


def cabinet_of(stored: StoredPattern) -> dict[str, KeptBead]:
    """Beads of the name of that pattern, so that a hostile one reaches every page."""
    title = stored.pattern.title[:100]
    named = [replace(bead, name=title, supplier=title, note=title) for bead in (SEA, BAY)]
    old = KeptBead(replace(BAY, name=title, key="old"), archived=True)
    return {bead.key: KeptBead(bead, picture="9f" if bead.price else "") for bead in named} | {"old": old}


def cabinet_pages(frame: views.Frame, stored: StoredPattern, maker: MakerSettings) -> Mapping[str, Shown]:
    """The cabinet, its beads and its tables."""
    cabinet, kinds, title = cabinet_of(stored), tuple(KINDS), stored.pattern.title
    narrowed = forms.BeadFinder(WantedBeads(search=title, kind="11/0 round", near="#2f7f76"), "near", page=2)
    shelf, old = [cabinet["sea"].bead, cabinet["bay"].bead], [cabinet["old"].bead]
    many = [replace(SEA, key=f"k{number}") for number in range(150)]
    sea = cabinet["sea"]
    used = ((7, title),)
    others = tuple(kept.bead for kept in cabinet.values())
    typed = forms.bead_form(sea.bead, maker)
    wrong = forms.read_bead([("name", title), ("price", "lots"), ("currency", "EUR"), ("kind", title)], kinds, "sea")
    photograph = BeadPicture(b"", 300, 900)
    rows = (
        Row(2, replace(sea.bead, stock_mg=1), frozenset({"stock_mg", "note"})),
        Row(3, replace(BAY, key="new"), frozenset()),
    )
    table = BeadTable(rows * 120, (WrongRow(4, "colour", title),) * 130, (title, "shelf"))
    bare = BeadTable((), (), ())
    return {
        "beads": ("beads/page.html", views.beads_page(frame, forms.BeadFinder(), shelf, 1, {"sea": 3}, maker)),
        "beads, narrowed": ("beads/page.html", views.beads_page(frame, narrowed, shelf, 0, {}, maker)),
        "beads, many": ("beads/page.html", views.beads_page(frame, forms.BeadFinder(page=2), many, 0, {}, maker)),
        "beads, archived": (
            "beads/page.html",
            views.beads_page(frame, forms.BeadFinder(archived=True), old, 1, {}, maker),
        ),
        "beads, none": ("beads/page.html", views.beads_page(views.frame(), forms.BeadFinder(), (), 0, {}, maker)),
        "bead": ("beads/bead.html", views.bead_page(frame, typed, kinds, sea, used, others, photograph)),
        "bead, sampled": (
            "beads/bead.html",
            views.bead_page(frame, typed, kinds, sea, used, others, photograph, sampled="#205060"),
        ),
        "bead, wrong": ("beads/bead.html", views.bead_page(frame, wrong, kinds, sea, wrong=title)),
        "bead, archived": ("beads/bead.html", views.bead_page(frame, typed, kinds, cabinet["old"])),
        "bead, new": ("beads/bead.html", views.bead_page(frame, forms.blank_bead(maker), kinds)),
        "import of beads": ("beads/import.html", views.bead_table_page(frame, ("name", "colour"), 5_000_000)),
        "import of beads, refused": (
            "beads/import.html",
            views.bead_table_page(frame, ("name", "colour"), 5_000_000, title),
        ),
        "preview of beads": (
            "beads/import_preview.html",
            views.bead_preview_page(frame, table, arrivals(table.rows, {"sea": sea.bead}), title, maker),
        ),
        "preview of beads, nothing": (
            "beads/import_preview.html",
            views.bead_preview_page(frame, bare, arrivals((), {}), "", maker),
        ),
    }


def colourways_of(stored: StoredPattern) -> list[KeptColourway]:
    """Two colourways of a pattern, of its own title."""
    title, palette = stored.pattern.title, stored.pattern.palette
    return [KeptColourway(number, stored.id, Colourway(title[:60], palette)) for number in (4, 5)]


def colourway_pages(frame: views.Frame, stored: StoredPattern) -> Mapping[str, Shown]:
    """Colourways side by side, bead by bead, and codes given out anew."""
    cabinet = {key: kept.bead for key, kept in cabinet_of(stored).items()}
    beads, title, kinds = tuple(cabinet.values()), stored.pattern.title, tuple(KINDS)
    own = stored.pattern.palette
    night = Palette((replace(cabinet["sea"].entry("A"), name=title), replace(own[1], colour="#2f7f78"), *list(own)[2:]))
    dusk = KeptColourway(4, stored.id, Colourway(title[:60], night))
    shown = replace(stored, pattern=replace(stored.pattern, palette=night))
    blank, finder = forms.blank_colourway(), forms.BeadFinder(WantedBeads(kind="11/0 round"))
    wrong = forms.read_colourway([("name", ""), ("begins", "stock"), ("length", title)], "cm")
    entry = forms.entry_form(own[0])
    wrong_entry = forms.read_entry([("name", title), ("colour", title), ("kind", "11/0 round")], own[0], kinds)
    return {
        "colourways": ("colourways/page.html", views.colourways_page(frame, stored, [dusk], beads, blank)),
        "colourways, look-alikes": (
            "colourways/page.html",
            views.colourways_page(frame, shown, [], beads, wrong, removed=4),
        ),
        "colourways, no stock": ("colourways/page.html", views.colourways_page(frame, shown, [], (), blank)),
        "colourway": ("colourways/way.html", views.way_page(frame, stored, dusk, cabinet, beads, False)),
        "colourway, renamed wrong": (
            "colourways/way.html",
            views.way_page(frame, stored, dusk, cabinet, beads, True, title, "A", typed_entry(night[0])),
        ),
        "colourway, as drawn": ("colourways/way.html", views.way_page(frame, stored, None, {}, (), False)),
        "bead exchanged": (
            "colourways/pick.html",
            views.pick_page(frame, stored, dusk, "A", beads, finder, entry, kinds),
        ),
        "bead exchanged, none found": (
            "colourways/pick.html",
            views.pick_page(
                frame, stored, None, "A", beads, forms.BeadFinder(WantedBeads(search="zebra")), wrong_entry, kinds
            ),
        ),
        "bead exchanged, no cabinet": (
            "colourways/pick.html",
            views.pick_page(frame, stored, None, "A", (), finder, entry, kinds),
        ),
        "codes": ("colourways/codes.html", views.codes_page(frame, stored)),
        "codes, as good as can be": (
            "colourways/codes.html",
            views.codes_page(
                frame, replace(stored, pattern=replace(stored.pattern, palette=told_apart(stored.pattern)))
            ),
        ),
    }


def cost_pages(frame: views.Frame, stored: StoredPattern, maker: MakerSettings) -> Mapping[str, Shown]:
    """Cost, stock, shopping lists, what can be made, and what was earned."""
    cabinet = {key: kept.bead for key, kept in cabinet_of(stored).items()}
    title, own = stored.pattern.title, stored.pattern.palette
    linked = Palette((replace(own[0], bead="sea"), replace(own[1], bead="bay"), *list(own)[2:]))
    shown = replace(stored, pattern=replace(stored.pattern, palette=linked))
    when = stored.revision_date
    made = [MadePieces(n, stored.id, title, when, n, title, {"sea": 900}, undone=n == 2) for n in (2, 1)]
    asked = [("length", "19 cm"), ("closure", "clasp"), ("hours", "2:30"), ("rate", "15"), ("other", "4.20")]
    wrong = [("length", "5 x"), ("pieces", title), ("hours", title), ("rate", title), ("other", title)]

    def cost(of: StoredPattern, pairs: list[tuple[str, str]], own_beads: dict[str, Bead]) -> views.CostPage:
        form, cost_form = forms.read_size(pairs, maker), forms.read_cost(pairs, maker)
        return views.cost_page(frame, of, form, cost_form, Workshop(), own_beads, made, maker)

    bill = answer(shown.pattern, Question(190.0, "clasp"))
    needed = shopping_list([(title, take(linked, bill.materials, cabinet, 4))])
    typed = forms.TypedWanted(title, "4", "19 cm", "clasp")
    size = forms.read_size([("length", "19 cm"), ("closure", "clasp")], maker)
    lines = [
        views.makeable_line(shown, makeable(bill.size, bill.materials, cabinet), "", "cm"),
        views.makeable_line(shown, None, title, "cm"),
    ]
    earning = Earning(stored.id, 1, "2026-03-01", 3, 950, 2000, "EUR", title[:200])
    noted = [KeptEarning(n, title, replace(earning, fee=n)) for n in range(120)]
    blank = forms.blank_earning([], maker, "2026-03-02")
    return {
        "cost": ("cost/page.html", cost(shown, asked, cabinet)),
        "cost, no cabinet": ("cost/page.html", cost(stored, asked[:2], {})),
        "cost, wrong": ("cost/page.html", cost(shown, wrong, cabinet)),
        "shopping": (
            "beads/shopping.html",
            views.shopping_page(
                frame, [views.WantedLine(typed, ""), views.WantedLine(typed, title)], needed, 10.0, maker, "sea.2-bay.1"
            ),
        ),
        "shopping, nothing": ("beads/shopping.html", views.shopping_page(frame, (), (), 10.0, maker)),
        "makeable": ("beads/makeable.html", views.makeable_page(frame, size, lines, 150, 2, 60)),
        "makeable, nothing": ("beads/makeable.html", views.makeable_page(frame, size, (), 0, 1, 60)),
        "earnings": ("earnings/page.html", views.earnings_page(frame, blank, noted, maker, stored.id, title)),
        "earnings, none": ("earnings/page.html", views.earnings_page(frame, blank, (), maker)),
        "earnings, wrong": (
            "earnings/page.html",
            views.earnings_page(frame, forms.read_earning([("copies", title), ("currency", "EUR")]), (), maker),
        ),
    }
