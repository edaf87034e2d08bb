"""The baker's own files: one folder of patterns, and never a path outside it."""

import hashlib
import os
import re
import threading
from dataclasses import dataclass
from pathlib import Path

from scorecraft.errors import ScorecraftError
from scorecraft.limits import MOST_BYTES
from scorecraft.reading import decoded, read_bytes
from scorecraft.shelf import SUFFIX
from scorecraft.web import telling as say
from scorecraft.writing import write_whole

MOST_FILES = 500
LONGEST_NAME = 80
MOST_NAME_BYTES = 220
"""A little less than disks take: the temporary file beside it has a longer name."""
ODD = re.compile(r'[\x00-\x1f\x7f/\\:*?"<>|]')
TAKEN = re.compile(r"(con|prn|aux|nul|com\d|lpt\d)(\..*+)?", re.IGNORECASE)
"""Names that Windows keeps for its devices."""


class ChangedError(ScorecraftError):
    """The file on disk is not the one that was opened; `mark` tells what is there now."""

    def __init__(self, message: str, hint: str, mark: str) -> None:
        super().__init__(message, None, hint)
        self.mark = mark


@dataclass(frozen=True, slots=True)
class Opened:
    """A file's text, and the mark that tells whether it is still the same."""

    name: str
    text: str
    mark: str


class Folder:
    """A folder of patterns that can be listed, opened and saved to."""

    def __init__(self, path: Path) -> None:
        self.path = path.resolve()
        self.saving = threading.Lock()
        if not self.path.is_dir():
            raise say.no_folder(path).usage()

    def names(self) -> list[str]:
        """List the pattern files, without hidden ones."""
        found = (path for path in self.path.glob(f"*{SUFFIX}") if self.holds(path))
        return sorted((path.name for path in found), key=str.casefold)[:MOST_FILES]

    def holds(self, path: Path) -> bool:
        """Tell whether a file is a plain one in this folder, not a link out of it."""
        return is_within(self.path, path) and path.name[0] != "."

    def file(self, name: str) -> Path:
        """Find the path of a name; raises UsageError for anything but a plain file name."""
        plain = name.strip()
        if not plain or plain[0] == "." or ODD.search(plain) or TAKEN.fullmatch(plain):
            raise say.no_file_name(name).usage()
        if len(plain) > LONGEST_NAME:
            raise say.name_too_long(LONGEST_NAME).usage()
        path = self.path / (plain if plain.endswith(SUFFIX) else plain + SUFFIX)
        if len(os.fsencode(path.name)) > MOST_NAME_BYTES:
            raise say.name_too_long().usage()
        if os.path.lexists(path) and not self.holds(path):
            raise say.no_plain_file(name).usage()
        return path

    def open(self, name: str) -> Opened:
        """Read a pattern file; raises UsageError where it cannot be read."""
        path = self.file(name)
        data = read_bytes(path, MOST_BYTES, "a pattern")
        return Opened(path.name, decoded(data, path.name), mark_of(data))

    def save(self, name: str, text: str, mark: str | None) -> Opened:
        """Write a pattern file, whole or not at all, over the one with `mark` or as a new one.

        Raises ChangedError where another file is there, UsageError where that is no pattern.
        """
        path = self.file(name)
        data = text.encode("utf-8")
        with self.saving:
            there = None
            if path.exists():
                there = mark_of(read_bytes(path, MOST_BYTES, "a pattern"))
            if there is not None and there != mark:
                slip = say.changed_on_disk(path.name, new=mark is None)
                raise ChangedError(slip.message, slip.hint, there)
            write_whole(path, data)
        return Opened(path.name, text, mark_of(data))


def is_within(folder: Path, path: Path) -> bool:
    """Whether a path is an ordinary file of a folder, also behind links, and none elsewhere."""
    return path.is_file() and path.resolve().parent == folder.resolve()


def mark_of(data: bytes) -> str:
    """Give the mark of a file's content."""
    return hashlib.sha256(data).hexdigest()[:24]
