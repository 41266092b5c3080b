"""Prints figures beside their budgets: python3 -m tests bench, with names only some of them.

python3 -m tests bench write makes the table in DEVELOPERS.md of those that have a budget, and with names these rows anew.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable

from tests.bench import booklets, cabinet, chart, growth, library, lists, photographs, pictures, start
from tests.bench.figures import Figure, Figures
from webapp.paths import ROOT

GROUPS: dict[str, Callable[[], Figures]] = {
    "lists": lists.figures,
    "library": library.figures,
    "cabinet": cabinet.figures,
    "pictures": pictures.figures,
    "photographs": photographs.figures,
    "chart": chart.figures,
    "start": start.figures,
    "booklets": booklets.figures,
    "printing": booklets.figures_beside,
    "growth": growth.figures,
}
WRITE = "write"
TABLE = re.compile(r"(?<=<!-- figures -->\n).*?(?=<!-- end of figures -->)", re.DOTALL)


def main(arguments: list[str]) -> int:
    """Exit status: 0, or 2 for a name that is not one of GROUPS."""
    write = arguments[:1] == [WRITE]
    names = arguments[1:] if write else arguments
    unknown = [name for name in names if name not in GROUPS]
    if unknown:
        print(f"No such figures: {', '.join(unknown)}; there are {', '.join(GROUPS)}.")
        return 2
    taken = [figure for name in names or GROUPS for figure in _printed(name)]
    if write:
        page = ROOT / "DEVELOPERS.md"
        page.write_text(TABLE.sub(lambda old: table(taken, old[0] if names else ""), page.read_text("utf-8")), "utf-8")
    return 0


def _printed(name: str) -> list[Figure]:
    print(f"\n{name}")
    taken = []
    for told in GROUPS[name]():
        taken.append(figure := Figure(*told))
        print(f"  {figure.what:58} {figure.measured:>28}   {figure.budget:14} {figure.rival}".rstrip(), flush=True)
    return taken


def table(figures: Iterable[Figure], standing: str = "") -> str:
    """Those with a budget or a rival as a table; rows of one that stands already stay unless they were taken again.

    >>> print(table([Figure("a list", "8.0 ms", "20 ms"), Figure("all of it", "9.0 ms")]), end="")
    | what | figure | budget | rival way |
    | --- | --- | --- | --- |
    | a list | 8.0 ms | 20 ms |  |
    """
    rows = {row.removeprefix("| ").partition(" | ")[0]: row for row in standing.splitlines()[2:]}
    rows |= {one.what.strip(): f"| {' | '.join(one)} |" for one in figures if one.budget or one.rival}
    return "\n".join(("| what | figure | budget | rival way |", "| --- | --- | --- | --- |", *rows.values(), ""))
