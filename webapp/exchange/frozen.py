"""Everything that a published booklet was printed with, as JSON to be kept beside it; and own words as JSON."""

from __future__ import annotations

import json
from dataclasses import asdict

from engine.booklet.choices import Choices
from engine.booklet.own import OwnWords
from engine.counting.workshop import Workshop
from engine.pattern.pattern import Pattern
from webapp.exchange.pattern_file import palette_document


def frozen(choices: Choices, pattern: Pattern, workshop: Workshop) -> str:
    """The choices, hand and palette of the pattern as printed, and the maker's own numbers that stood behind every sum.

    The palette is said where it is not the pattern's own but that of a colourway.
    """
    palette = {"palette": palette_document(pattern.palette)} if choices.colourway else {}
    said = {"hand": pattern.hand, **palette, "choices": asdict(choices), "workshop": asdict(workshop)}
    return json.dumps(said, ensure_ascii=False)


def words_text(words: OwnWords) -> str:
    """Own words by place."""
    return json.dumps(dict(words.texts), ensure_ascii=False)


def words_of(text: str) -> OwnWords:
    """Own words as they were kept."""
    return OwnWords(tuple(json.loads(text or "{}").items()))
