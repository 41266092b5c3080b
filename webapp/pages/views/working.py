"""From the size form to what it comes to, with every objection of the engine put beside its field."""

from __future__ import annotations

from dataclasses import dataclass

from engine.counting.answers import Answer, answer
from engine.counting.options import in_hand
from engine.counting.sizes import Workshop
from engine.errors import EngineError
from engine.pattern.pattern import Pattern
from webapp.pages.forms.size import SizeForm


@dataclass(frozen=True)
class Worked:
    """The form, with what is wrong in it, the pattern as it is worked, and the answer when nothing is wrong."""

    form: SizeForm
    pattern: Pattern
    answer: Answer | None


def worked(pattern: Pattern, form: SizeForm, workshop: Workshop, units: str) -> Worked:
    """Works the form out."""
    turned = in_hand(pattern, form.hand, form.keep_picture)
    if form.errors:
        return Worked(form, turned, None)
    try:
        return Worked(form, turned, answer(turned, form.question, workshop, form.plan, form.spare, units))
    except EngineError as error:
        return Worked(form.refused(error), turned, None)
