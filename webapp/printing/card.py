"""The stringing card as one HTML file that asks for nothing: style and script stand in it, held by their hashes."""

from __future__ import annotations

from base64 import b64encode
from dataclasses import dataclass
from functools import lru_cache
from hashlib import sha256

from engine.booklet.card import Card, card
from engine.booklet.choices import Choices
from engine.counting.workshop import Workshop
from engine.pattern.pattern import Pattern
from webapp.pages.rendering import environment
from webapp.paths import TEMPLATES

STYLE = "card/style.css"
SCRIPTS = tuple(f"card/{name}.js" for name in ("read", "keep", "chart", "voice", "card"))


@dataclass(frozen=True)
class CardFile:
    """What the template sees: card, the files that it writes out, and the hashes by which the policy lets them in."""

    card: Card
    style: str
    style_hash: str
    scripts: tuple[str, ...]
    script_hash: str


def card_html(pattern: Pattern, choices: Choices, workshop: Workshop | None = None) -> bytes:
    """The card of a pattern that is already in the hand wanted; the same bytes for the same choices.

    Raises SizeError, PlanError or ChoiceError where the size cannot be worked.
    """
    page = CardFile(
        card=card(pattern, choices, workshop),
        style=STYLE,
        style_hash=_hash(STYLE),
        scripts=SCRIPTS,
        script_hash=_hash(*SCRIPTS),
    )
    return environment(TEMPLATES).get_template("card/card.html").render(page=page).encode()


@lru_cache
def _hash(*files: str) -> str:
    """The hash of those files as the template writes them out, one behind the other."""
    text = "".join(environment(TEMPLATES).get_template(file).render() for file in files)
    return f"sha256-{b64encode(sha256(text.encode()).digest()).decode()}"
