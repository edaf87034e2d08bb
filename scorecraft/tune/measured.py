"""Openings measured on the baked loaf: a CSV file of cut numbers and widths."""

import math
import re
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from scorecraft.errors import PatternError, Place, Problem, UsageError
from scorecraft.practice import MOST_BYTES, MOST_MEASURED, WIDEST_MEASURED_MM
from scorecraft.reading import read_text

HEADS = ("cut", "number", "no", "no.", "nr", "width", "width mm", "mm", "opening")
"""Words a first line may begin with to be a heading."""


@dataclass(frozen=True, slots=True)
class Measured:
    """A measured opening: the number of the cut as on the guide, the width in mm, where it is."""

    number: int
    width_mm: float
    place: Place


def read_measured(path: Path, numbers: Sequence[int]) -> tuple[Measured, ...]:
    """Read the measured openings of cuts with known numbers.

    A row is a cut number and a width in mm, parted by a comma, semicolon or tab; more rows with
    the same number are more copies of that cut. Raises PatternError with every bad row, UsageError
    where the file cannot be read or is empty.
    """
    text = read_text(path, int(MOST_BYTES.value), "a list of openings")
    problems: list[Problem] = []
    rows: list[Measured] = []
    for count, line in enumerate(text.splitlines(), start=1):
        if not line.strip() or line.lstrip().startswith("#") or (count == 1 and _is_head(line)):
            continue
        place = Place(str(path), count, 1, max(1, len(line)))
        try:
            rows.append(_row(line, place, numbers))
        except UsageError as error:
            problems.append(Problem(error.message, place, error.hint))
    if problems:
        raise PatternError(problems, text)
    if not rows:
        raise UsageError(f'"{path}" holds no openings', None, "write a row such as 1, 12.5")
    if len(rows) > MOST_MEASURED.value:
        message = f'"{path}" holds {len(rows)} openings; {MOST_MEASURED.value:.0f} are enough'
        raise UsageError(message, None, "leave some out")
    return tuple(rows)


def _is_head(line: str) -> bool:
    first = re.split(r"[,;\t]", line.lower())[0].strip().strip('"')
    return first in HEADS


def _row(line: str, place: Place, numbers: Sequence[int]) -> Measured:
    cells = [cell.strip().strip('"') for cell in _parted(line)]
    if len(cells) < 2 or not cells[1]:
        raise UsageError("this row has no width", None, "write the cut number, a comma, the mm")
    if len(cells) > 2 and any(cells[2:]):
        raise UsageError("this row has more than two values", None, "one opening a row")
    return Measured(_number(cells[0], numbers), _width(cells[1]), place)


def _parted(line: str) -> list[str]:
    """Part a row at semicolons or tabs, so that 12,5 may have a comma; else at commas."""
    for sign in (";", "\t"):
        if sign in line:
            return line.replace(",", ".").split(sign)
    return line.split(",")


def _number(cell: str, numbers: Sequence[int]) -> int:
    known = f"the guide numbers the cuts {min(numbers)} to {max(numbers)}" if numbers else ""
    if not re.fullmatch(r"[0-9]{1,6}", cell):
        raise UsageError(f'"{cell}" is no cut number', None, known)
    if int(cell) not in numbers:
        raise UsageError(f"there is no cut {int(cell)}", None, known)
    return int(cell)


def _width(cell: str) -> float:
    found = re.fullmatch(r"([+-]?[0-9]*\.?[0-9]+)\s*(mm)?", cell, re.ASCII)
    if not found:
        raise UsageError(f'"{cell}" is no width in mm', None, "like 12 or 12.5")
    width = float(found.group(1))
    if not math.isfinite(width) or not 0 <= width <= WIDEST_MEASURED_MM.value:
        hint = f"an opening is 0 to {WIDEST_MEASURED_MM.value:.0f} mm"
        raise UsageError(f"{cell} is no width of a cut", None, hint)
    return width
