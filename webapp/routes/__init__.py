"""One file a resource, its pages and its JSON side by side, in the order of the menu."""

from __future__ import annotations

from webapp.routes import (
    answers,
    backups,
    bead_tables,
    beads,
    beads_api,
    booklet,
    care,
    chart,
    chart_files,
    colourways,
    colourways_api,
    costs,
    earnings,
    editions,
    help,
    history,
    import_export,
    library,
    materials,
    old_charts,
    own_words,
    patterns,
    photographs,
    picture_starts_api,
    pictures,
    settings,
    starts,
    stringing,
)

# new and checked patterns stand before those with a number in their address, pictures before starts by name
ROUTERS = tuple(
    module.router
    for module in (
        library,
        import_export,
        chart,
        photographs,
        old_charts,
        picture_starts_api,
        starts,
        patterns,
        history,
        pictures,
        chart_files,
        stringing,
        materials,
        costs,
        colourways,
        colourways_api,
        booklet,
        own_words,
        editions,
        bead_tables,
        beads,
        beads_api,
        answers,
        earnings,
        help,
        settings,
        backups,
        care,
    )
)
