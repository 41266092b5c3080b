"""All page values and what makes them, under one name."""

from webapp.pages.views.answers import AnswersPage, answers_page
from webapp.pages.views.backups import BackupsPage, InsidePage, backups_page, inside_page
from webapp.pages.views.bead_table import BeadPreviewPage, BeadTablePage, bead_preview_page, bead_table_page
from webapp.pages.views.beads import BeadPage, BeadsPage, bead_page, beads_page
from webapp.pages.views.booklet import BookletPage, JobPage, booklet_page, job_page
from webapp.pages.views.care import CarePage, care_page
from webapp.pages.views.chart import BlankPage, ChartPage, blank_page, chart_page
from webapp.pages.views.colourways import (
    CodesPage,
    ColourwaysPage,
    PickPage,
    WayPage,
    codes_page,
    colourways_page,
    pick_page,
    way_page,
)
from webapp.pages.views.compared import ComparePage, compare_page
from webapp.pages.views.cost import CostPage, cost_page
from webapp.pages.views.earnings import EarningsPage, earnings_page
from webapp.pages.views.editions import EditionsPage, ErrataPage, editions_page, errata_page
from webapp.pages.views.editor import CheckPart, EditorPage, Theirs, check_part, edit_page, new_page
from webapp.pages.views.error import ErrorPage, error_page
from webapp.pages.views.frame import Frame, frame
from webapp.pages.views.glance import PatternPage, pattern_page
from webapp.pages.views.help import HelpPage, help_page
from webapp.pages.views.history import HistoryPage, RevisionPage, history_page, revision_page
from webapp.pages.views.import_preview import (
    ImportPreviewPage,
    ImportProgressPage,
    import_preview_page,
    import_progress_page,
)
from webapp.pages.views.in_work import PiecePage, piece_page
from webapp.pages.views.kept_answers import KeptAnswerPage, KeptAnswersPage, kept_answer_page, kept_answers_page
from webapp.pages.views.kit import KitPage, KitWork, kit_page
from webapp.pages.views.library import BinPage, ImportPage, LibraryPage, bin_page, import_page, library_page
from webapp.pages.views.materials import MaterialsPage, materials_page
from webapp.pages.views.own_words import OwnWordsPage, own_words_page
from webapp.pages.views.pictures import PicturesPage, pictures_page, turning_part
from webapp.pages.views.settings import Own, SettingsPage, settings_page
from webapp.pages.views.shopping import (
    MakeablePage,
    ShoppingPage,
    WantedLine,
    makeable_line,
    makeable_page,
    shopping_page,
)
from webapp.pages.views.stringing import StringingPage, stringing_page

PAGES = (
    PiecePage,
    KeptAnswersPage,
    KeptAnswerPage,
    ImportPreviewPage,
    ImportProgressPage,
    BackupsPage,
    CarePage,
    InsidePage,
    HistoryPage,
    RevisionPage,
    ComparePage,
    LibraryPage,
    BinPage,
    ImportPage,
    EditorPage,
    CheckPart,
    PatternPage,
    ChartPage,
    BlankPage,
    StringingPage,
    MaterialsPage,
    AnswersPage,
    BookletPage,
    JobPage,
    PicturesPage,
    KitPage,
    OwnWordsPage,
    EditionsPage,
    ErrataPage,
    SettingsPage,
    ErrorPage,
    BeadsPage,
    BeadPage,
    BeadTablePage,
    BeadPreviewPage,
    ColourwaysPage,
    WayPage,
    PickPage,
    CodesPage,
    CostPage,
    ShoppingPage,
    MakeablePage,
    EarningsPage,
)

__all__ = [
    "PAGES",
    "AnswersPage",
    "BackupsPage",
    "BeadPage",
    "BeadPreviewPage",
    "BeadTablePage",
    "BeadsPage",
    "BinPage",
    "BlankPage",
    "BookletPage",
    "CarePage",
    "ChartPage",
    "CheckPart",
    "CodesPage",
    "ColourwaysPage",
    "ComparePage",
    "CostPage",
    "EarningsPage",
    "EditionsPage",
    "EditorPage",
    "ErrataPage",
    "ErrorPage",
    "Frame",
    "HelpPage",
    "HistoryPage",
    "ImportPage",
    "ImportPreviewPage",
    "ImportProgressPage",
    "InsidePage",
    "JobPage",
    "KeptAnswerPage",
    "KeptAnswersPage",
    "KitPage",
    "KitWork",
    "LibraryPage",
    "MakeablePage",
    "MaterialsPage",
    "Own",
    "OwnWordsPage",
    "PatternPage",
    "PickPage",
    "PicturesPage",
    "PiecePage",
    "RevisionPage",
    "SettingsPage",
    "ShoppingPage",
    "StringingPage",
    "Theirs",
    "WantedLine",
    "WayPage",
    "answers_page",
    "backups_page",
    "bead_page",
    "bead_preview_page",
    "bead_table_page",
    "beads_page",
    "bin_page",
    "blank_page",
    "booklet_page",
    "care_page",
    "chart_page",
    "check_part",
    "codes_page",
    "colourways_page",
    "compare_page",
    "cost_page",
    "earnings_page",
    "edit_page",
    "editions_page",
    "errata_page",
    "error_page",
    "frame",
    "help_page",
    "history_page",
    "import_page",
    "import_preview_page",
    "import_progress_page",
    "inside_page",
    "job_page",
    "kept_answer_page",
    "kept_answers_page",
    "kit_page",
    "library_page",
    "makeable_line",
    "makeable_page",
    "materials_page",
    "new_page",
    "own_words_page",
    "pattern_page",
    "pick_page",
    "pictures_page",
    "piece_page",
    "revision_page",
    "settings_page",
    "shopping_page",
    "stringing_page",
    "turning_part",
    "way_page",
]
