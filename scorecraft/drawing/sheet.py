"""The paper: its sizes, which one a household has, and which one a drawing fits on."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from difflib import get_close_matches
from typing import Literal, NamedTuple

from scorecraft.errors import UsageError
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
"""Territories where Letter is the usual paper (recalled from the CLDR, page not checked)."""


A4 = PAPERS[0]


def paper(name: str) -> Paper:
    """Find a paper by its name in any case; raises UsageError naming the papers there are."""
    known = {each.name.lower(): each for each in PAPERS}
    found = known.get(name.strip().lower())
    if found:
        return found
    near = get_close_matches(name.strip().lower(), known, n=1)
    names = ", ".join(each.name for each in PAPERS)
    hint = f"did you mean {known[near[0]].name}?" if near else ""
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


def choose(sizes: Iterable[Size], asked: str | None, home: Paper) -> Paper:
    """Choose the paper for a drawing that can take one of several sizes (mm, without margins).

    The asked one if it holds the drawing; where none is asked for, the smallest of the family
    of the home paper. Raises UsageError with a paper that fits where the asked one does not.
    """
    sizes = tuple(sizes)
    wanted = paper(asked) if asked else None
    family = [each for each in PAPERS if each.family == (wanted or home).family]
    found = fitting(sizes, [wanted] if wanted else family)
    if found:
        return found
    raise _too_big(sizes, wanted, family)


def _too_big(sizes: tuple[Size, ...], wanted: Paper | None, family: list[Paper]) -> UsageError:
    """Say how much too big, and the way out: a larger paper, else several sheets."""
    refused = wanted or family[-1]
    least = min(sizes, key=lambda size: size.width * size.height)
    edge = 2 * PRINTER_MARGIN_MM.value
    message = (
        f"at full size the drawing needs {least.width + edge:.0f} x {least.height + edge:.0f} mm "
        f"with its margins; {refused.name} is {refused.width_mm:g} x {refused.height_mm:g} mm"
    )
    larger = fitting(sizes, family) or fitting(sizes, PAPERS)
    way_out = f"use --paper {larger.name}" if larger else "no paper here is large enough"
    return UsageError(message, hint=f"{way_out}, or print it on several sheets with --tiled")
