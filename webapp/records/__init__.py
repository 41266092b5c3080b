"""The frozen values that storage gives and pages show."""

from webapp.records.backups import BackupContents, BackupFolder, FolderSizes, KeptBackup, PatternInBackup
from webapp.records.cabinet import BeadPicture, BeadTable, KeptBead, KeptColourway, KeptEarning, MadePieces, WrongRow
from webapp.records.editions import Edition, EditionBooklet, FreshBooklet, GivenCopy
from webapp.records.history import KeptRevision, RevisionList
from webapp.records.in_work import Counted, GivenAnswer, Piece
from webapp.records.maker import KeptSwatch, MakerSettings
from webapp.records.patterns import PatternInZip, PatternSummary, Shelves, StoredPattern, SummaryPage, Wanted
from webapp.records.prints import MissingLibrary, Photograph, PrintJob

__all__ = [
    "BackupContents",
    "BackupFolder",
    "BeadPicture",
    "BeadTable",
    "Counted",
    "Edition",
    "EditionBooklet",
    "FolderSizes",
    "FreshBooklet",
    "GivenAnswer",
    "GivenCopy",
    "KeptBackup",
    "KeptBead",
    "KeptColourway",
    "KeptEarning",
    "KeptRevision",
    "KeptSwatch",
    "MadePieces",
    "MakerSettings",
    "MissingLibrary",
    "PatternInBackup",
    "PatternInZip",
    "PatternSummary",
    "Photograph",
    "Piece",
    "PrintJob",
    "RevisionList",
    "Shelves",
    "StoredPattern",
    "SummaryPage",
    "Wanted",
    "WrongRow",
]
