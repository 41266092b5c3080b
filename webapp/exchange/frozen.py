"""Everything that a published booklet was printed with, as JSON to be kept beside it; and own words as JSON."""

from __future__ import annotations

import json
from dataclasses import asdict

from engine.booklet.choices import Choices
from engine.booklet.own import OwnWords
from engine.counting.workshop import Workshop


def frozen(choices: Choices, hand: str, workshop: Workshop) -> str:
    """The choices, the hand, and the maker's own numbers that stood behind every sum."""
    return json.dumps({"hand": hand, "choices": asdict(choices), "workshop": asdict(workshop)}, ensure_ascii=False)


def words_text(words: OwnWords) -> str:
    """Own words by place."""
    return json.dumps(dict(words.texts), ensure_ascii=False)


def words_of(text: str) -> OwnWords:
    """Own words as they were kept."""
    return OwnWords(tuple(json.loads(text or "{}").items()))
