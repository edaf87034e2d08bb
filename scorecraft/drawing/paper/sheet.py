"""The paper: its sizes, which one a household has, and which one a drawing fits on."""

from collections.abc import Iterable, Mapping
from typing import Literal, NamedTuple

from scorecraft.errors import UsageError, nearest
from scorecraft.frozen import dataclass, replace
from scorecraft.practice import PRINTER_MARGIN_MM

Family = Literal["ISO", "ANSI"]


class Size(NamedTuple):
    """A width and a height in mm."""

    width: float
    height: float


@dataclass(frozen=True, slots=True)
class Paper:
    """A sheet of paper as it is held: width across, height upward, mm."""

    name: str
    width_mm: float
    height_mm: float
    family: Family

    @property
    def across(self) -> "Paper":
        """The same paper turned a quarter: landscape for portrait."""
        return replace(self, width_mm=self.height_mm, height_mm=self.width_mm)

    @property
    def printable(self) -> Size:
        """The part most printers can reach, in mm."""
        edge = 2 * PRINTER_MARGIN_MM.value
        return Size(self.width_mm - edge, self.height_mm - edge)

    def holds(self, size: Size) -> bool:
        """Tell whether a drawing of this size fits within the printable part as held."""
        room = self.printable
        return size.width <= room.width + 1e-6 and size.height <= room.height + 1e-6


PAPERS = (
    Paper("A4", 210.0, 297.0, "ISO"),
    Paper("A3", 297.0, 420.0, "ISO"),
    Paper("Letter", 215.9, 279.4, "ANSI"),
    Paper("Tabloid", 279.4, 431.8, "ANSI"),
)
"""The papers of a household or a copy shop, upright, each family from small to large.

Sizes of ISO 216 and of ANSI/ASME Y14.1 A and B (8.5 x 11 in, 11 x 17 in).
"""

LETTER_LANDS = frozenset(
    {"US", "CA", "MX", "CL", "CO", "CR", "GT", "NI", "PA", "PH", "PR", "SV", "VE"}
)
"""Territories where Letter is the usual paper (from the CLDR; recalled)."""


A4 = PAPERS[0]


def paper(name: str) -> Paper:
    """Find a paper by its name in any case; raises UsageError naming the papers there are."""
    known = {each.name.lower(): each for each in PAPERS}
    found = known.get(name.strip().lower())
    if found:
        return found
    near = nearest(name.strip().lower(), known)
    names = ", ".join(each.name for each in PAPERS)
    hint = f"did you mean {known[near].name}?" if near else ""
    raise UsageError(f'"{name}" is not a paper; the papers are {names}', hint=hint)


def home_paper(environment: Mapping[str, str]) -> Paper:
    """Choose A4 or Letter by the locale in the environment (LC_ALL, else LC_PAPER, else LANG)."""
    names = (environment.get(key, "") for key in ("LC_ALL", "LC_PAPER", "LANG"))
    locale = next((name for name in names if name), "")
    territory = locale.split(".")[0].split("@")[0].partition("_")[2].upper()
    return paper("Letter" if territory in LETTER_LANDS else "A4")


def fitting(sizes: Iterable[Size], papers: Iterable[Paper]) -> Paper | None:
    """Find the first paper, upright or turned, that holds the drawing in one of its sizes.

    Of the sizes that fit on a paper the one listed first decides how it is held.
    """
    ways = tuple((size, turned) for size in sizes for turned in (False, True))
    for each in papers:
        for size, turned in ways:
            held = each.across if turned else each
            if held.holds(size):
                return held
    return None


@dataclass(frozen=True, slots=True)
class Choice:
    """The paper for a drawing, and whether one sheet of it holds the drawing."""

    paper: Paper
    whole: bool


def choose(
    sizes: Iterable[Size],
    asked: str | None,
    home: Paper,
    *,
    tiled: bool = False,
    one_sheet: bool = False,
) -> Choice:
    """Choose the paper for a drawing that can take one of several sizes (mm, without margins).

    The asked one, or `tiled` the home paper; where none is asked for, the smallest of the family
    of the home paper. What it does not hold goes onto several sheets of the asked or home paper,
    or onto `one_sheet` as large as the drawing needs.
    """
    sizes = tuple(sizes)
    wanted = paper(asked) if asked else home
    family = [each for each in PAPERS if each.family == wanted.family]
    found = fitting(sizes, [wanted] if asked or tiled else family)
    if found or not one_sheet or asked or tiled:
        return Choice(found or wanted, found is not None)
    least = min(sizes, key=lambda size: size.width * size.height)
    edge = 2 * PRINTER_MARGIN_MM.value
    return Choice(Paper("own", least.width + edge, least.height + edge, home.family), True)
