"""A rope of several parts, and every page on which it looks otherwise."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from engine.counting.workshop import Workshop
from engine.pattern.part import Part
from webapp.pages.forms import all as forms
from webapp.pages.views import all as views
from webapp.records import MakerSettings, StoredPattern

Shown = tuple[str, object]


def part_pages(
    frame: views.Frame, stored: StoredPattern, maker: MakerSettings, workshop: Workshop
) -> Mapping[str, Shown]:
    """Its pages, their templates and values by name."""
    of_parts = parted(stored)
    sized = forms.read_size([("length", "30 cm"), ("closure", "clasp"), ("threads", "chart")], maker)
    asked = forms.read_desk([("length", "30 cm")], maker, ())
    other = replace(of_parts.pattern, in_parts=of_parts.pattern.in_parts[:2])
    compared = views.compare_page(frame, of_parts, (), (0, other), (0, of_parts.pattern), part="part 1 “Rope”")
    editor, kinds = forms.editor_of(of_parts), tuple(workshop.kinds)
    return {
        "pattern of parts": ("pattern/page.html", views.pattern_page(frame, of_parts, workshop)),
        "edit, parts": ("editor/page.html", views.edit_page(frame, of_parts, editor, kinds)),
        "compare, parts": ("history/compare.html", compared),
        "stringing of parts": ("stringing/page.html", views.stringing_page(frame, of_parts, sized, workshop)),
        "materials of parts": ("materials/page.html", views.materials_page(frame, of_parts, sized, workshop)),
        "answers of parts": ("answers/page.html", views.answers_page(frame, asked, of_parts, workshop, maker)),
    }


def parted(stored: StoredPattern) -> StoredPattern:
    """The pattern as the middle of a rope of three parts, which is called by its title."""
    pattern, rope = stored.pattern, Part("Rope", stored.pattern.chart[:7], None)
    middle = Part(pattern.title[:40], pattern.chart, 2)
    return replace(stored, pattern=replace(pattern, chart=b"", in_parts=(rope, middle, rope)))
