"""Prints figures beside their budgets: python3 -m tests bench, with names only some of them."""

from __future__ import annotations

from collections.abc import Callable

from tests.bench import booklets, cabinet, chart, library, lists, photographs, pictures, start
from tests.bench.figures import Figures

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
}


def main(arguments: list[str]) -> int:
    """Exit status: 0, or 2 for a name that is not one of GROUPS."""
    unknown = [name for name in arguments if name not in GROUPS]
    if unknown:
        print(f"No such figures: {', '.join(unknown)}; there are {', '.join(GROUPS)}.")
        return 2
    for name in arguments or GROUPS:
        print(f"\n{name}")
        for what, measured, budget in GROUPS[name]():
            print(f"  {what:58} {measured:>28}   {budget}", flush=True)
    return 0
