"""Crochet terms of the US and the UK, one table; and the side each hand works towards."""

from __future__ import annotations

from typing import NamedTuple

from engine.counting.rope import STITCH_NAMES


class Terms(NamedTuple):
    """`single` is the stitch of wide ropes, `over` the thread laid round the hook; each with its short form."""

    name: str
    single: str
    sc: str
    over: str
    yo: str
    note: str

    def stitch(self, stitch: str) -> str:
        """A pattern's stitch in these terms."""
        return {"slip": "slip stitch", "single": self.single}[stitch]

    def translated(self, source: str) -> str:
        """Where a number comes from, as a buyer reads it: in these terms, and the swatch is the maker's."""
        return source.replace("your swatch", "the maker’s swatch", 1).replace(STITCH_NAMES["single"], self.single)


TERMS = {
    "us": Terms("US", "single crochet", "sc", "yarn over", "yo",
                "Crochet terms are US terms. US single crochet is UK double crochet; chain and slip stitch have the "
                "same name in both."),
    "uk": Terms("UK", "double crochet", "dc", "yarn over hook", "yoh",
                "Crochet terms are UK terms. UK double crochet (dc) is what US patterns call sc; chain and slip stitch "
                "have the same name in both."),
}


def abbreviations(terms: Terms, stitch: str) -> tuple[tuple[str, str], ...]:
    """The short forms that a booklet uses for a rope in that stitch, in alphabetical order."""
    found = {"ch": "chain", "rnd": "round", "sl st": "slip stitch", "st": "stitch", terms.yo: terms.over}
    if stitch == "single":
        found |= {terms.sc: terms.single, f"bead {terms.sc}": f"bead {terms.single}"}
    else:
        found |= {"bead sl st": "bead slip stitch"}
    return tuple(sorted(found.items()))


class Sides(NamedTuple):
    """Where a hand works to, seen from inside the tube as the person working sees it: a right hand to the left."""

    towards: str
    back: str
    hand: str


SIDES = {"right": Sides("left", "right", "right"), "left": Sides("right", "left", "left")}
