"""All forms and what reads them, under one name."""

from webapp.pages.forms.answers import DeskForm, read_desk
from webapp.pages.forms.beads import (
    BeadFinder,
    BeadForm,
    bead_form,
    blank_bead,
    read_bead,
    read_bead_finder,
    read_place,
)
from webapp.pages.forms.booklet import BookletForm, read_booklet
from webapp.pages.forms.chart import BlankForm, blank_form, read_blank
from webapp.pages.forms.colourways import (
    ColourwayForm,
    EntryForm,
    blank_colourway,
    entry_form,
    read_colourway,
    read_entry,
)
from webapp.pages.forms.cost import (
    CostForm,
    EarningForm,
    TypedWanted,
    again,
    blank_earning,
    read_bought,
    read_cost,
    read_earning,
    read_pieces,
    read_wanted,
)
from webapp.pages.forms.editor import EditorForm, blank_editor, editor_of, read_check, read_editor
from webapp.pages.forms.finder import Finder, read_finder
from webapp.pages.forms.kit import KitForm, read_kit
from webapp.pages.forms.own import KindForm, OwnSizeForm, read_kind, read_own_size
from webapp.pages.forms.own_words import CopyForm, OwnWordsForm, read_copy, read_note, read_words, words_form
from webapp.pages.forms.pictures import PicturesForm, read_pictures
from webapp.pages.forms.sent import Sent
from webapp.pages.forms.settings import SettingsForm, SwatchForm, blank_swatch, read_settings, read_swatch, settings_of
from webapp.pages.forms.size import SizeForm, read_size

__all__ = [
    "BeadFinder",
    "BeadForm",
    "BlankForm",
    "BookletForm",
    "ColourwayForm",
    "CopyForm",
    "CostForm",
    "DeskForm",
    "EarningForm",
    "EditorForm",
    "EntryForm",
    "Finder",
    "KindForm",
    "KitForm",
    "OwnSizeForm",
    "OwnWordsForm",
    "PicturesForm",
    "Sent",
    "SettingsForm",
    "SizeForm",
    "SwatchForm",
    "TypedWanted",
    "again",
    "bead_form",
    "blank_bead",
    "blank_colourway",
    "blank_earning",
    "blank_editor",
    "blank_form",
    "blank_swatch",
    "editor_of",
    "entry_form",
    "read_bead",
    "read_bead_finder",
    "read_blank",
    "read_booklet",
    "read_bought",
    "read_check",
    "read_colourway",
    "read_copy",
    "read_cost",
    "read_desk",
    "read_earning",
    "read_editor",
    "read_entry",
    "read_finder",
    "read_kind",
    "read_kit",
    "read_note",
    "read_own_size",
    "read_pictures",
    "read_pieces",
    "read_place",
    "read_settings",
    "read_size",
    "read_swatch",
    "read_wanted",
    "read_words",
    "settings_of",
    "words_form",
]
