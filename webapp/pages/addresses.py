"""Every address of the app by name, in one place: routes are declared with PATHS, pages ask `address` for a link."""

from __future__ import annotations

import re
from urllib.parse import quote, urlencode

PATHS = {
    "library": "/",
    "bulk": "/library/chosen",
    "bin": "/bin",
    "empty_bin": "/bin/empty",
    "remove_examples": "/examples/remove",
    "import": "/patterns/import",
    "import_preview": "/patterns/import/{token}",
    "import_progress": "/patterns/import/{token}/steps",
    "take_import": "/patterns/import/{token}/take",
    "stop_import": "/patterns/import/{token}/stop",
    "library_zip": "/library.zip",
    "begin": "/patterns/begin",
    "repeats": "/patterns/begin/repeats",
    "bring": "/patterns/begin/bring",
    "symmetric": "/patterns/begin/symmetric",
    "photograph_new": "/patterns/begin/photograph",
    "photograph_start": "/patterns/begin/photograph/{token}",
    "photograph_shown": "/patterns/begin/photograph/{token}/picture.webp",
    "photograph_chart": "/patterns/begin/photograph/{token}/chart.png",
    "photograph_rope": "/patterns/begin/photograph/{token}/rope.webp",
    "old_chart_new": "/patterns/begin/old-chart",
    "old_chart": "/patterns/begin/old-chart/{token}",
    "old_chart_shown": "/patterns/begin/old-chart/{token}/picture.webp",
    "old_chart_bead": "/patterns/begin/old-chart/{token}/bead.webp",
    "start": "/patterns/begin/{start}",
    "start_picture": "/patterns/begin/{start}/picture.webp",
    "new": "/patterns/new",
    "blank": "/patterns/new/chart",
    "check": "/patterns/check",
    "pattern": "/patterns/{id}",
    "edit": "/patterns/{id}/edit",
    "copy": "/patterns/{id}/copy",
    "shelve": "/patterns/{id}/shelf",
    "to_bin": "/patterns/{id}/bin",
    "take_back": "/patterns/{id}/take-back",
    "pattern_file": "/patterns/{id}/file",
    "picture": "/patterns/{id}/picture.webp",
    "chart_picture": "/patterns/{id}/chart.svg",
    "chart": "/patterns/{id}/chart",
    "chart_left": "/patterns/{id}/chart/left",
    "chart_state": "/patterns/{id}/chart/state",
    "history": "/patterns/{id}/history",
    "compare": "/patterns/{id}/history/compare",
    "compare_chart": "/patterns/{id}/history/compare.svg",
    "revision": "/patterns/{id}/history/{revision}",
    "revision_strip": "/patterns/{id}/history/{revision}/strip.svg",
    "revision_chart": "/patterns/{id}/history/{revision}/chart.svg",
    "mark_revision": "/patterns/{id}/history/{revision}/mark",
    "bring_back": "/patterns/{id}/history/{revision}/bring-back",
    "stringing": "/patterns/{id}/stringing",
    "mistake": "/patterns/{id}/mistake",
    "materials": "/patterns/{id}/materials",
    "pick_sizes": "/patterns/{id}/sizes",
    "cost": "/patterns/{id}/cost",
    "note_made": "/patterns/{id}/made",
    "undo_made": "/patterns/{id}/made/{made}/undo",
    "colourways": "/patterns/{id}/colourways",
    "colourway": "/patterns/{id}/colourways/{way}",
    "colourway_picture": "/patterns/{id}/colourways/{way}/picture.webp",
    "remove_colourway": "/patterns/{id}/colourways/{way}/remove",
    "take_back_colourway": "/patterns/{id}/colourways/{way}/take-back",
    "link_beads": "/patterns/{id}/colourways/{way}/link",
    "refresh_beads": "/patterns/{id}/colourways/{way}/refresh",
    "pick_bead": "/patterns/{id}/colourways/{way}/beads/{code}",
    "codes": "/patterns/{id}/codes",
    "pictures": "/patterns/{id}/pictures",
    "scene_picture": "/patterns/{id}/pictures/file",
    "turning": "/patterns/{id}/pictures/turning",
    "turning_steps": "/patterns/{id}/pictures/turning/steps",
    "stop_turning": "/patterns/{id}/pictures/turning/stop",
    "booklet": "/patterns/{id}/booklet",
    "own_words": "/patterns/{id}/words",
    "add_photographs": "/patterns/{id}/photographs",
    "photograph": "/patterns/{id}/photographs/{photograph}",
    "describe_photograph": "/patterns/{id}/photographs/{photograph}/words",
    "move_photograph": "/patterns/{id}/photographs/{photograph}/move",
    "remove_photograph": "/patterns/{id}/photographs/{photograph}/remove",
    "take_back_photograph": "/patterns/{id}/photographs/{photograph}/take-back",
    "forget_photographs": "/patterns/{id}/photographs/removed/forget",
    "editions": "/patterns/{id}/editions",
    "edition_pdf": "/patterns/{id}/editions/{edition}/booklet.pdf",
    "kit": "/patterns/{id}/editions/{edition}/kit",
    "kit_steps": "/patterns/{id}/editions/{edition}/kit/steps",
    "stop_kit": "/patterns/{id}/editions/{edition}/kit/stop",
    "kit_zip": "/patterns/{id}/editions/{edition}/kit.zip",
    "edition_card": "/patterns/{id}/editions/{edition}/card.html",
    "withdraw": "/patterns/{id}/editions/{edition}/withdraw",
    "bring_back_edition": "/patterns/{id}/editions/{edition}/bring-back",
    "give_copy": "/patterns/{id}/editions/{edition}/copies",
    "copy_pdf": "/copies/{copy}/booklet.pdf",
    "errata": "/patterns/{id}/errata",
    "errata_pdf": "/patterns/{id}/errata.pdf",
    "errata_text": "/patterns/{id}/errata.txt",
    "tell_errata": "/patterns/{id}/errata/told",
    "job": "/jobs/{job}",
    "job_steps": "/jobs/{job}/steps",
    "cancel_job": "/jobs/{job}/cancel",
    "job_pdf": "/jobs/{job}/booklet.pdf",
    "answers": "/answers",
    "beads": "/beads",
    "new_bead": "/beads/new",
    "demo_beads": "/beads/demo",
    "bead_table": "/beads.csv",
    "import_beads": "/beads/import",
    "take_beads": "/beads/import/take",
    "makeable": "/beads/makeable",
    "shopping": "/beads/shopping",
    "shopping_table": "/beads/shopping.csv",
    "shopping_text": "/beads/shopping.txt",
    "bought": "/beads/bought",
    "bead": "/beads/{bead}/edit",
    "archive_bead": "/beads/{bead}/archive",
    "take_back_bead": "/beads/{bead}/take-back",
    "remove_bead": "/beads/{bead}/remove",
    "bead_picture": "/beads/{bead}/picture.jpg",
    "set_bead_picture": "/beads/{bead}/picture",
    "remove_bead_picture": "/beads/{bead}/picture/remove",
    "sample_bead": "/beads/{bead}/colour",
    "earnings": "/earnings",
    "earnings_table": "/earnings.csv",
    "remove_earning": "/earnings/{earning}/remove",
    "help": "/help",
    "settings": "/settings",
    "add_swatch": "/settings/swatches",
    "remove_swatch": "/settings/swatches/{swatch}/remove",
    "add_kind": "/settings/kinds",
    "remove_kind": "/settings/kinds/remove",
    "add_size": "/settings/sizes",
    "remove_size": "/settings/sizes/remove",
    "backup": "/settings/backup",
    "care": "/settings/library",
    "check_library": "/settings/library/check",
    "backups": "/backups",
    "make_backup": "/backups/make",
    "backup_folder": "/backups/folder",
    "backup_inside": "/backups/inside",
    "backup_file": "/backups/file",
    "restore_backup": "/backups/restore",
    "trust_clock": "/backups/clock",
    "static": "/static/{stamp}/{file}",
    "api_patterns": "/api/patterns",
    "api_pattern": "/api/patterns/{id}",
    "chart_text": "/api/patterns/{id}/chart.txt",
    "chart_table": "/api/patterns/{id}/chart.csv",
    "chart_svg": "/api/patterns/{id}/chart.svg",
    "chart_png": "/api/patterns/{id}/chart.png",
    "api_scene": "/api/patterns/{id}/scene",
    "api_working": "/api/patterns/{id}/working",
    "api_piece": "/api/patterns/{id}/piece",
    "api_look_alikes": "/api/look-alikes",
}

_PLACE = re.compile(r"\{(\w+)\}")


def address(name: str, **values: object) -> str:
    """The address of that name. Values that the path has no place for become the query: empty ones are left
    out, several of one name stand one after another.

    >>> address("stringing", id=7, length="50 cm", kind="")
    '/patterns/7/stringing?length=50+cm'

    Raises KeyError for an unknown name and for a place that is not filled.
    """
    path = PATHS[name]
    places = set(_PLACE.findall(path))
    filled = _PLACE.sub(lambda place: quote(str(values[place.group(1)])), path)
    asked = [(key, value) for key, value in values.items() if key not in places and value not in ("", None)]
    query = urlencode(asked, doseq=True)
    return f"{filled}?{query}" if query else filled


def picture(id: int, view: str, width: int, version: str) -> str:
    """The shaded picture of a pattern: view "rope", "ring" or "necklace", width in pixels."""
    return address("picture", id=id, view=view, width=width, version=version)


def chart_picture(id: int, version: str, part: int = 0) -> str:
    """The chart of a pattern as it stands, lying along the page: of that part, counted from one, or of the main one."""
    return address("chart_picture", id=id, version=version, part=part or "")
