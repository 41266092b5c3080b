"""Crochet terms of the US and the UK, one table; and the side each hand works towards."""

from __future__ import annotations

import re
from typing import NamedTuple

from engine.counting.rope import STITCH_NAMES

SHORT = {
    "sl st": "slip stitch",
    "st": "stitch",
    "ch": "chain",
    "rnd": "round",
    "sc": "single crochet",
    "dc": "double crochet",
    "yoh": "yarn over hook",
    "yo": "yarn over",
}
COUNTED = {"st": "stitches", "ch": "chains", "rnd": "rounds"}

AMERICAN = {
    british: american
    for british, american in (("colour", "color"), ("licence", "license"), ("grey", "gray"), ("practise", "practice"))
    for british, american in ((british, american), (f"{british}s", f"{american}s"))
} | {f"{part}metre{many}": f"{part}meter{many}" for part in ("", "centi", "milli") for many in ("", "s")}

_BRITISH = re.compile(rf"\b(?:{'|'.join(AMERICAN)})\b", re.IGNORECASE)
_SHORT = "|".join(SHORT)
_NAMED = re.compile(rf" \((?:{_SHORT})\)")
_MANY = re.compile(rf"(?<=\d )(?<!\b1 )({'|'.join(COUNTED)})\b|\b({'|'.join(COUNTED)})s\b")
_ONE = re.compile(rf"\b({_SHORT})\b", re.IGNORECASE)


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

    def spelled(self, text: str) -> str:
        """The booklet's own words as they are spelled where these terms are used."""
        return _BRITISH.sub(lambda word: _as(word[0], AMERICAN[word[0].lower()]), text) if self.name == "US" else text

    def translated(self, source: str) -> str:
        """Where a number comes from, as a buyer reads it: in these terms, and the swatch is the maker's."""
        return source.replace("your swatch", "the maker’s swatch", 1).replace(STITCH_NAMES["single"], self.single)


TERMS = {
    "us": Terms(
        name="US",
        single="single crochet",
        sc="sc",
        over="yarn over",
        yo="yo",
        note="Crochet terms are US terms. US single crochet is UK double crochet; chain and slip stitch have the "
        "same name in both.",
    ),
    "uk": Terms(
        name="UK",
        single="double crochet",
        sc="dc",
        over="yarn over hook",
        yo="yoh",
        note="Crochet terms are UK terms. UK double crochet (dc) is what US patterns call sc; chain and slip stitch "
        "have the same name in both.",
    ),
}


def abbreviations(terms: Terms, stitch: str) -> tuple[tuple[str, str], ...]:
    """The short forms that a booklet uses for a rope in that stitch, in alphabetical order."""
    abbreviations = {short: SHORT[short] for short in ("ch", "rnd", "sl st", "st")} | {terms.yo: terms.over}
    if stitch == "single":
        abbreviations |= {terms.sc: terms.single, f"bead {terms.sc}": f"bead {terms.single}"}
    else:
        abbreviations |= {"bead sl st": "bead slip stitch"}
    return tuple(sorted(abbreviations.items()))


def in_full(text: str) -> str:
    """The text without short forms, for those whom they bar.

    >>> in_full("Yo, then 1 single crochet (sc) in every ch to the end: 12 st. The last rnds")
    'Yarn over, then 1 single crochet in every chain to the end: 12 stitches. The last rounds'
    """
    text = _MANY.sub(lambda match: COUNTED[match[1] or match[2]], _NAMED.sub("", text))
    return _ONE.sub(lambda match: _as(match[0], SHORT[match[0].lower()]), text)


def _as(short: str, words: str) -> str:
    return words.capitalize() if short[0].isupper() else words


class Sides(NamedTuple):
    """Where a hand works to, seen from inside the tube as the person working sees it: a right hand to the left."""

    towards: str
    back: str
    hand: str


SIDES = {"right": Sides("left", "right", "right"), "left": Sides("right", "left", "left")}
