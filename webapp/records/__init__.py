"""The frozen values that storage gives and pages show."""

from webapp.records.backups import BackupFolder, BackupInside, KeptBackup, PatternInside
from webapp.records.editions import Edition, EditionBooklet, FreshBooklet, GivenCopy
from webapp.records.history import KeptRevision, RevisionList
from webapp.records.maker import KeptSwatch, MakerSettings
from webapp.records.patterns import ArrivedPattern, PatternSummary, Shelves, StoredPattern, SummaryPage, Wanted
from webapp.records.prints import MissingLibrary, Photograph, PrintJob

__all__ = [
    "ArrivedPattern",
    "BackupFolder",
    "BackupInside",
    "Edition",
    "EditionBooklet",
    "FreshBooklet",
    "GivenCopy",
    "KeptBackup",
    "KeptRevision",
    "KeptSwatch",
    "MakerSettings",
    "MissingLibrary",
    "PatternInside",
    "PatternSummary",
    "Photograph",
    "PrintJob",
    "RevisionList",
    "Shelves",
    "StoredPattern",
    "SummaryPage",
    "Wanted",
]
