"""The baker's own files: one folder of patterns, and never a path outside it."""

import hashlib
import os
import re
import threading
from itertools import chain, count
from pathlib import Path

from scorecraft.errors import ScorecraftError
from scorecraft.frozen import dataclass
from scorecraft.limits import MOST_BYTES
from scorecraft.reading import decoded, read_bytes
from scorecraft.shelf import SUFFIX
from scorecraft.web import telling as say
from scorecraft.writing import sync_folder, write_whole

MOST_FILES = 500
LONGEST_NAME = 80
MOST_NAME_BYTES = 220
"""A little less than disks take: the temporary file beside it has a longer name."""
ODD = re.compile(r'[\x00-\x1f\x7f/\\:*?"<>|]')
TRASH = "trash"
"""The folder, beside the patterns, that deleted ones are moved to."""
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
            raise say.NO_FOLDER(path=path).usage()

    def names(self) -> list[str]:
        """List the pattern files, without hidden ones."""
        found = (path for path in self.path.glob(f"*{SUFFIX}") if self.holds(path))
        return sorted((path.name for path in found), key=str.casefold)[:MOST_FILES]

    def changed(self, name: str) -> float:
        """Give when a pattern file was last written, in seconds since 1970."""
        return self.file(name).stat().st_mtime

    def holds(self, path: Path) -> bool:
        """Tell whether a file is a plain one in this folder, not a link out of it."""
        return is_within(self.path, path) and path.name[0] != "."

    def file(self, name: str) -> Path:
        """Find the path of a name; raises UsageError for anything but a plain file name."""
        plain = name.strip()
        if not plain or plain[0] == "." or ODD.search(plain) or TAKEN.fullmatch(plain):
            raise say.NO_FILE_NAME(name=name).usage()
        if len(plain) > LONGEST_NAME:
            raise say.NAME_OVER(most=LONGEST_NAME).usage()
        path = self.path / (plain if plain.endswith(SUFFIX) else plain + SUFFIX)
        if len(os.fsencode(path.name)) > MOST_NAME_BYTES:
            raise say.NAME_TOO_LONG.usage()
        if os.path.lexists(path) and not self.holds(path):
            raise say.NO_PLAIN_FILE(name=name).usage()
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
            old = read_bytes(path, MOST_BYTES, "a pattern") if path.exists() else None
            there = None if old is None else mark_of(old)
            if there is not None and there != mark:
                slip = say.changed_on_disk(path.name, new=mark is None)
                raise ChangedError(slip.message, slip.hint, there)
            write_whole(path, data)
        return Opened(path.name, text, mark_of(data))

    def rename(self, name: str, new: str) -> str:
        """Give a pattern file another name, and give that name back.

        Raises UsageError where there is no such file, or another one has that name already.
        """
        old, path = self.there(name), self.file(new)
        with self.saving:
            if os.path.lexists(path) and not is_same(old, path):
                raise say.NAME_TAKEN(name=path.name).usage()
            moved(old, path)
        return path.name

    def duplicate(self, name: str) -> str:
        """Write a copy of a pattern file beside it, and give its name.

        Raises UsageError where there is no such file, or it is no pattern.
        """
        old = self.there(name)
        data = read_bytes(old, MOST_BYTES, "a pattern")
        with self.saving:
            path = free(self.path, f"{old.stem[: LONGEST_NAME - 20]} copy")
            write_whole(self.file(path.name), data)
        return path.name

    def delete(self, name: str) -> Path:
        """Move a pattern file to the trash folder, and give where it lies now.

        Raises UsageError where there is no such file, or there can be no trash folder.
        """
        old = self.there(name)
        trash = self.path / TRASH
        with self.saving:
            try:
                trash.mkdir(exist_ok=True)
            except OSError as error:
                raise say.NO_TRASH(path=trash).usage() from error
            if trash.is_symlink():
                raise say.NO_TRASH(path=trash).usage()
            path = free(trash, old.stem)
            moved(old, path)
        return path

    def there(self, name: str) -> Path:
        """Find the path of a file that is there; raises UsageError where it is not."""
        path = self.file(name)
        if not path.exists():
            raise say.NO_SUCH_FILE(name=path.name).usage()
        return path


def moved(old: Path, new: Path) -> None:
    """Move a file to a name that is free; raises UsageError where the system does not let it."""
    try:
        old.rename(new)
    except OSError as error:
        why = (error.strerror or str(error)).lower()
        raise say.NOT_MOVED(name=old.name, why=why).usage() from error
    sync_folder(new.parent)


def free(folder: Path, stem: str) -> Path:
    """Find a name that no file of a folder has: the stem, or the stem and a number."""
    endings = chain([""], (f" {number}" for number in count(2)))
    paths = (folder / f"{stem}{each}{SUFFIX}" for each in endings)
    return next(path for path in paths if not os.path.lexists(path))


def is_same(one: Path, other: Path) -> bool:
    """Whether two names are one file on a disk that takes capitals and small letters for one."""
    return other.exists() and one.samefile(other) and one.name.lower() == other.name.lower()


def is_within(folder: Path, path: Path) -> bool:
    """Whether a path is an ordinary file of a folder, also behind links, and none elsewhere."""
    return path.is_file() and path.resolve().parent == folder.resolve()


def mark_of(data: bytes) -> str:
    """Give the mark of a file's content."""
    return hashlib.sha256(data).hexdigest()[:24]
