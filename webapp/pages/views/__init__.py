"""One frozen value per page, every field with a sentence, and the pure function that makes it."""

from webapp.pages.views.answers import AnswersPage, answers_page
from webapp.pages.views.booklet import BookletPage, JobPage, booklet_page, job_page
from webapp.pages.views.chart import BlankPage, ChartPage, blank_page, chart_page
from webapp.pages.views.editor import CheckPart, EditorPage, Theirs, check_part, edit_page, new_page
from webapp.pages.views.error import ErrorPage, error_page
from webapp.pages.views.frame import Frame, frame
from webapp.pages.views.glance import PatternPage, pattern_page
from webapp.pages.views.library import BinPage, ImportPage, LibraryPage, bin_page, import_page, library_page
from webapp.pages.views.materials import MaterialsPage, materials_page
from webapp.pages.views.settings import Own, SettingsPage, settings_page
from webapp.pages.views.stringing import StringingPage, stringing_page

PAGES = (LibraryPage, BinPage, ImportPage, EditorPage, CheckPart, PatternPage, ChartPage, BlankPage, StringingPage,
         MaterialsPage, AnswersPage, BookletPage, JobPage, SettingsPage, ErrorPage)

__all__ = ["PAGES", "AnswersPage", "BinPage", "BlankPage", "BookletPage", "ChartPage", "CheckPart", "EditorPage",
           "ErrorPage", "Frame", "ImportPage", "JobPage", "LibraryPage", "MaterialsPage", "Own", "PatternPage",
           "SettingsPage", "StringingPage", "Theirs", "answers_page", "bin_page", "blank_page", "booklet_page",
           "chart_page", "check_part", "edit_page", "error_page", "frame", "import_page", "job_page", "library_page",
           "materials_page", "new_page", "pattern_page", "settings_page", "stringing_page"]
