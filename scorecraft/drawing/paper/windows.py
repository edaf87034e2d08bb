"""Which windows of a large drawing go onto which sheets: few sheets, and seams in quiet places.

The drawing is cut into bands, from top to bottom or from left to right, each one sheet deep,
with upright and turned sheets mixed freely; a band is only as long as the ink in it. What the
sheets have to spare lets the bands shift, so that the seams keep off the crown and meet little ink.
"""

from collections.abc import Iterator, Sequence
from itertools import product
from math import ceil

import numpy as np

from scorecraft.arrays import Line
from scorecraft.drawing.paper.seams import TILE_OVERLAP_MM, Crown, Ground
from scorecraft.drawing.paper.sheet import Paper, Size
from scorecraft.errors import UsageError
from scorecraft.frozen import dataclass

MOST_SHEETS = 40
"""The most sheets one drawing is spread over."""
FOOT_MM = 20.0
"""Strip at the lower edge of every sheet for its name, the map and the rules."""
INK_MM = 1.0
"""White kept around the ink."""
MOST_MIXED = 6
"""Up to so many rows every mixture of upright and turned sheets is tried."""
SHIFT_MM = 2.0
"""Bands are shifted by steps of about so much."""
CROWN_COST = 1e6
"""A seam at the crown is worse than any ink."""
OFF_COST = 0.02
"""Of equal seams the one nearer to the middle, by this share of a point of ink for each mm."""


@dataclass(frozen=True, slots=True)
class Window:
    """A part of the drawing (mm, y down) that goes onto one sheet, and how the sheet is held."""

    name: str
    x: float
    y: float
    size: Size
    paper: Paper

    @property
    def right(self) -> float:
        """Right edge in the drawing."""
        return self.x + self.size.width

    @property
    def bottom(self) -> float:
        """Lower edge in the drawing."""
        return self.y + self.size.height


@dataclass(frozen=True, slots=True)
class _Band:
    """A row of windows: where it starts across the rows, its kind of sheet, where each starts.

    `cost` is what its inner seams run through.
    """

    start: float
    kind: int
    places: tuple[float, ...]
    cost: float


@dataclass(frozen=True, slots=True)
class _Bands:
    """Rows of windows that cover the ink, and what all their seams run through."""

    rows: tuple[_Band, ...]
    depth: float
    cost: float

    @property
    def count(self) -> int:
        """How many sheets there are."""
        return sum(len(band.places) for band in self.rows)

    @property
    def rank(self) -> tuple[int, float, int, float]:
        """What makes one better than another, the weightiest first."""
        return self.count, self.cost, len(self.rows), self.depth


def room_for_drawing(paper: Paper) -> Size:
    """Give the part of a sheet that shows the drawing: the printable part above its foot."""
    return Size(paper.printable.width, paper.printable.height - FOOT_MM)


def windows(ink: Line, paper: Paper, crown: Crown | None = None) -> tuple[Window, ...]:
    """Cover all ink points (N, 2; mm, about 1 mm apart) with the fewest windows of a paper.

    They are named A1, A2, B1, ...: letters count the bands, numbers the sheets within a band;
    neighbours overlap. Of equally few those are taken whose seams keep off the `crown`, then
    those whose seams meet the least ink. Raises UsageError where more sheets would be needed than
    anyone glues together.
    """
    held = (paper, paper.across)
    sizes = [room_for_drawing(each) for each in held]
    ground = Ground(ink, crown)
    rows = _fewest(ground, sizes)
    columns = _fewest(ground.turned, [Size(size.height, size.width) for size in sizes])
    best, upright = (rows, True) if rows.rank <= columns.rank else (columns, False)
    if best.count > MOST_SHEETS:
        raise UsageError(
            f"the drawing would take {best.count} sheets of {paper.name}",
            hint=f"at most {MOST_SHEETS:g} are printed; use a larger paper",
        )
    return tuple(_named(best.rows, upright, held, sizes))


def _fewest(ground: Ground, sizes: Sequence[Size]) -> _Bands:
    """Find the rows of sheets, from the top, that cover the ink best; of equals the first.

    Only what takes the fewest sheets when it lies in the middle is shifted.
    """
    middle = {kinds: _bands(ground, sizes, kinds, 0.0) for kinds in _sequences(ground.ink, sizes)}
    fewest = min(bands.count for bands in middle.values())
    shifted = (
        _bands(ground, sizes, kinds, np.inf)
        for kinds, bands in middle.items()
        if bands.count == fewest
    )
    return min(shifted, key=lambda bands: bands.rank)


def _sequences(ink: Line, sizes: Sequence[Size]) -> Iterator[tuple[int, ...]]:
    """Yield each sequence of upright (0) and turned (1) rows that is just deep enough."""
    overlap = TILE_OVERLAP_MM
    need = max(float(np.ptp(ink[:, 1])) + 2 * INK_MM - overlap, INK_MM)
    gains = [size.height - overlap for size in sizes]
    deepest = ceil(need / min(gains))
    if deepest > MOST_MIXED:
        yield from ((kind,) * ceil(need / gains[kind]) for kind in (0, 1))
        return
    for count in range(1, deepest + 1):
        for kinds in product((0, 1), repeat=count):
            depth = sum(gains[kind] for kind in kinds)
            if depth >= need > depth - min(gains[kind] for kind in kinds):
                yield kinds


def _bands(ground: Ground, sizes: Sequence[Size], kinds: Sequence[int], most: float) -> _Bands:
    """Lay rows of sheets over the ink, shifted at most so far (mm) to where seams are best."""
    overlap = TILE_OVERLAP_MM
    depth = sum(sizes[kind].height - overlap for kind in kinds) + overlap
    low, high = float(ground.ink[:, 1].min()), float(ground.ink[:, 1].max())
    tops = (low + high - depth) / 2 + _shifts(min(most, depth - (high - low) - 2 * INK_MM))
    off = OFF_COST * np.abs(tops - tops[len(tops) // 2])
    laid = (
        _laid(ground, sizes, kinds, float(top), float(far))
        for top, far in zip(tops, off, strict=True)
    )
    return min(laid, key=lambda bands: bands.rank)


def _shifts(spare: float) -> np.ndarray:
    """List shifts to both sides of the middle that use up what is spare (mm)."""
    half = max(0.0, spare / 2)
    steps = ceil(half / SHIFT_MM)
    return np.linspace(-half, half, 2 * steps + 1)


def _laid(
    ground: Ground, sizes: Sequence[Size], kinds: Sequence[int], top: float, cost: float
) -> _Bands:
    """Lay rows of sheets from `top` down; `cost` is that of the shift."""
    bands: list[_Band] = []
    start = top
    for kind in kinds:
        size = sizes[kind]
        ends = ground.ends(start - INK_MM, start + size.height + INK_MM)
        if ends:
            bands.append(_band(ground, size, kind, start, ends))
        start += size.height - TILE_OVERLAP_MM
    near, ink = ground.level([band.start for band in bands[1:]])
    cost += float(CROWN_COST * near.sum() + ink.sum()) + sum(band.cost for band in bands)
    depth = sum(sizes[kind].height for kind in kinds)
    return _Bands(tuple(bands), depth, round(cost, 6))


def _band(ground: Ground, size: Size, kind: int, start: float, ends: tuple[float, float]) -> _Band:
    """Set windows side by side over a stretch of ink, shifted to where their seams are best."""
    step = size.width - TILE_OVERLAP_MM
    need = ends[1] - ends[0] + 2 * INK_MM
    count = max(1, ceil((need - TILE_OVERLAP_MM) / step - 1e-9))
    whole = count * step + TILE_OVERLAP_MM
    shifts = _shifts(whole - need)
    first = (ends[0] + ends[1] - whole) / 2 + shifts
    seams = first[:, None] + step * np.arange(1, count)
    near, ink = ground.upright(seams, start, start + size.height)
    costs = (CROWN_COST * near + ink).sum(axis=1) + OFF_COST * np.abs(shifts)
    best = int(np.argmin(np.round(costs, 6)))
    places = tuple(float(first[best]) + index * step for index in range(count))
    return _Band(start, kind, places, float(costs[best]))


def _named(
    bands: Sequence[_Band], upright: bool, held: Sequence[Paper], sizes: Sequence[Size]
) -> Iterator[Window]:
    for letter, band in zip("ABCDEFGHIJKLMNOPQRSTUVWXYZ", bands, strict=False):
        for number, place in enumerate(band.places, start=1):
            size = sizes[band.kind]
            x, y = (place, band.start) if upright else (band.start, place)
            yield Window(f"{letter}{number}", x, y, size, held[band.kind])
