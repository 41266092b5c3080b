"""What a shop wants of a sample pattern: pictures for the listing, and the kit of an edition."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from engine.counting.workshop import Workshop
from engine.scenes.scene import Subject
from webapp.pages.forms import all as forms
from webapp.pages.views import all as views
from webapp.records import Edition, MakerSettings, StoredPattern

Shown = tuple[str, object]


def shop_pages(frame: views.Frame, stored: StoredPattern, edition: Edition, workshop: Workshop) -> Mapping[str, Shown]:
    """The pages of pictures and of the kit; titles are that of the pattern, which may be a hostile one."""
    subject, title = Subject(stored.pattern, workshop), stored.pattern.title

    def pictures(*asked: tuple[str, str], state: str = "") -> Shown:
        return "pictures/page.html", _pictures(frame, stored, subject, asked, state)

    def kit(work: views.KitWork | None = None, asked: Iterable[tuple[str, str]] = (), **said: str) -> Shown:
        return "kit/page.html", _kit(frame, stored, edition, subject, work, asked, **said)

    return {
        "pictures": pictures(),
        "pictures, lacking": pictures(("scene", "colourways")),
        "pictures, wrong": pictures(("ground", "clear"), ("form", "jpeg")),
        **{
            f"pictures, turning, {state}": pictures(("scene", "turning"), state=state)
            for state in ("none", "running", "done")
        },
        "kit": kit(),
        "kit, running": kit(views.KitWork("running", 2, 7, title)),
        "kit, ready": kit(views.KitWork("done", 0, 0, "")),
        "kit, failed": kit(wrong=title),
        "kit, refused": kit(refused="Edition 2 is withdrawn."),
        "kit, wrong": kit(asked=(("title", title),)),
    }


def shop_parts(frame: views.Frame, stored: StoredPattern, edition: Edition, workshop: Workshop) -> Mapping[str, Shown]:
    """The pieces of them that are sent alone."""
    subject, work = Subject(stored.pattern, workshop), views.KitWork("running", 2, 7, "Drawing")
    turning = _pictures(frame, stored, subject, [("scene", "turning")], "running")
    return {
        "kit steps": ("kit/_steps.html", _kit(frame, stored, edition, subject, work)),
        "turning": ("pictures/_turning.html", turning),
    }


def _pictures(
    frame: views.Frame, stored: StoredPattern, subject: Subject, asked: Iterable[tuple[str, str]], state: str
) -> object:
    turning = views.turning_part(state, 12) if state else None
    return views.pictures_page(frame, stored, subject, forms.read_pictures(asked), turning)


def _kit(
    frame: views.Frame,
    stored: StoredPattern,
    edition: Edition,
    subject: Subject,
    work: views.KitWork | None = None,
    asked: Iterable[tuple[str, str]] = (),
    **said: str,
) -> object:
    form, more = forms.read_kit(asked, MakerSettings()), ("standard-A5-right", "large-print-A4-left")
    return views.kit_page(frame, stored, edition, form, subject, more, work=work, **said)
