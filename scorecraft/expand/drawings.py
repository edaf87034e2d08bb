"""The drawings that a pattern names: found where they may lie, and each read once a run."""

from collections.abc import Callable
from pathlib import Path
from typing import TypeVar

from scorecraft.arrays import Line
from scorecraft.cuts import Stroke
from scorecraft.errors import ScorecraftError
from scorecraft.expand import telling as say

T = TypeVar("T")


class Drawings:
    """The SVG files of one run: names are looked up in a folder.

    They must lie in that folder or below it, unless whoever asks may read `anywhere`, as the
    words of a command line may: its names are relative to where the user stands.
    """

    def __init__(self, folder: Path | None, *, anywhere: bool = False) -> None:
        self.folder = folder
        self.anywhere = anywhere
        self.read: dict[tuple[str, str], list[Line] | ScorecraftError] = {}

    def strokes(self, file: str, width_mm: float) -> list[Stroke]:
        """Give the strokes of a drawing (mm), scaled to a width if one is given."""
        from scorecraft.trace import strokes

        lines = self.once("strokes", file, strokes)
        across = max(line[:, 0].max() for line in lines) - min(line[:, 0].min() for line in lines)
        factor = width_mm / across if width_mm and across else 1.0
        return [Stroke("trace", line * factor) for line in lines]

    def rims(self, file: str) -> list[Line]:
        """Give the rim that a drawing shows, and that of a hole in it, (N, 2) in mm."""
        from scorecraft.trace import traced_rims

        return self.once("rim", file, traced_rims)

    def once(self, what: str, file: str, read: Callable[[Path], list[Line]]) -> list[Line]:
        """Read a file, or give what was read of it before; what was wrong then still is.

        Raises ScorecraftError or OSError, as reading it does.
        """
        if (what, file) not in self.read:
            try:
                self.read[what, file] = read(self.place(file))
            except ScorecraftError as error:
                self.read[what, file] = error
        found = self.read[what, file]
        if isinstance(found, ScorecraftError):
            raise found.with_traceback(None)
        return found

    def place(self, file: str) -> Path:
        """Find where a named file lies; raises ScorecraftError where it must not."""
        if self.folder is None:
            raise say.NO_FOLDER(file=file).error()
        if self.anywhere:
            return self.folder / file
        try:
            path = (self.folder / file).resolve()
        except (RuntimeError, OSError, ValueError) as error:  # a loop of links, or no name at all
            raise say.NO_FILE(file=file).error() from error
        if not path.is_relative_to(self.folder.resolve()):
            raise say.OUTSIDE(file=file).error()
        return path
