"""Openings measured on the baked loaf: a CSV file of cuts by name, and their widths."""

import csv
import re
from collections.abc import Sequence
from difflib import get_close_matches
from pathlib import Path

from scorecraft.errors import PatternError, Place, Problem, UsageError
from scorecraft.frozen import dataclass
from scorecraft.groups import Group
from scorecraft.limits import MOST_BYTES, MOST_MEASURED, WIDEST_MEASURED_MM
from scorecraft.reading import read_text
from scorecraft.tune import slips

HEADS = ("cut", "name", "number", "no", "no.", "nr", "width", "width mm", "mm", "opening")
"""Words a first line may begin with to be a heading."""
LONGEST_ROW = 400


@dataclass(frozen=True, slots=True)
class Measured:
    """A measured opening: which cuts, by their group's key, the width in mm, where it is told."""

    key: str
    width_mm: float
    place: Place


def read_measured(path: Path, told: Sequence[Group]) -> tuple[Measured, ...]:
    """Read the measured openings of a design's groups of cuts.

    A row is a cut's name and a width in mm, parted by a comma, semicolon or tab; its number may
    stand before the name. More rows of the same cut are more copies of it. Raises PatternError
    with every bad row, UsageError where the file cannot be read or is empty.
    """
    text = read_text(path, MOST_BYTES, slips.LISTS)
    problems: list[Problem] = []
    rows: list[Measured] = []
    for count, line in enumerate(text.splitlines(), start=1):
        if not line.strip() or line.lstrip().startswith("#") or (count == 1 and _is_head(line)):
            continue
        place = Place(str(path), count, 1, max(1, len(line)))
        try:
            rows.append(_row(line, place, told))
        except UsageError as error:
            problems.append(Problem(error.message, place, error.hint))
    if problems:
        raise PatternError(problems, text)
    if not rows:
        raise slips.NO_OPENINGS(path=path).usage()
    if len(rows) > MOST_MEASURED:
        raise slips.MANY_OPENINGS(path=path, count=len(rows), most=MOST_MEASURED).usage()
    return tuple(rows)


def _is_head(line: str) -> bool:
    return len(line) <= LONGEST_ROW and _cells(line)[0].lower() in HEADS


def _row(line: str, place: Place, told: Sequence[Group]) -> Measured:
    if len(line) > LONGEST_ROW:
        raise slips.LONG_ROW.usage()
    cells = _cells(line)
    while cells[2:] and not cells[-1]:
        cells.pop()
    if len(cells) == 2 and _whole(cells[0]):
        raise slips.bare_number(int(cells[0]), cells[1], told).usage()
    if len(cells) == 3 and _whole(cells[0]):
        del cells[0]  # the number of the day: the name says which cut it is
    if len(cells) < 2 or not cells[1]:
        raise slips.NO_WIDTH.usage()
    if len(cells) > 2:
        raise slips.MANY_VALUES.usage()
    return Measured(_key(cells[0], told), _width(cells[1].replace(",", ".")), place)


def _cells(line: str) -> list[str]:
    """Part a row at semicolons or tabs, so that 12,5 may have a comma; else at commas."""
    sign = next((each for each in (";", "\t") if each in line), ",")
    found = next(csv.reader([line], delimiter=sign, skipinitialspace=True))
    return [cell.strip() for cell in found]


def _whole(cell: str) -> bool:
    return re.fullmatch(r"[0-9]{1,6}", cell) is not None


def _key(cell: str, told: Sequence[Group]) -> str:
    """Find the key that a name means; one that means none, or several, is refused."""
    wanted = _plain(cell)
    known = {_plain(group.key): group.key for group in told}
    if wanted in known:
        return known[wanted]
    same = [group for group in told if _plain(group.name) == wanted]
    if same:
        raise slips.several(cell, same).usage()
    near = [known[each] for each in get_close_matches(wanted, list(known), n=3, cutoff=0.5)]
    raise slips.unknown_cut(cell, near, told).usage()


def _plain(name: str) -> str:
    """Write a name without what may be written one way or another."""
    return " ".join(name.replace("_", " ").lower().split())


def _width(cell: str) -> float:
    number = cell.removesuffix("mm").rstrip()
    if not re.fullmatch(r"[+-]?(?:[0-9]{0,9}\.)?[0-9]{1,20}", number):
        raise slips.NO_NUMBER(cell=cell).usage()
    width = float(number)
    if not 0 <= width <= WIDEST_MEASURED_MM:
        raise slips.IMPOSSIBLE_WIDTH(cell=cell).usage()
    return width
