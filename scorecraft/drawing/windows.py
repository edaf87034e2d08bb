"""Which windows of a large drawing go onto which sheets, so that few sheets are used.

The drawing is cut into bands, from top to bottom or from left to right, each one sheet deep,
with upright and turned sheets mixed freely; a band is only as long as the ink in it.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import product
from math import ceil

import numpy as np

from scorecraft.drawing.picture import Line
from scorecraft.drawing.sheet import Paper, Size
from scorecraft.errors import UsageError
from scorecraft.practice import MOST_SHEETS, TILE_OVERLAP_MM

FOOT_MM = 20.0
"""Strip at the lower edge of every sheet for its name, the map and the rules."""
INK_MM = 1.0
"""White kept around the ink."""
MOST_MIXED = 6
"""Up to so many rows every mixture of upright and turned sheets is tried."""


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
    """A row of windows: where it starts across the rows, its kind of sheet, where each starts."""

    start: float
    kind: int
    places: tuple[float, ...]


def room_for_drawing(paper: Paper) -> Size:
    """Give the part of a sheet that shows the drawing: the printable part above its foot."""
    return Size(paper.printable.width, paper.printable.height - FOOT_MM)


def windows(ink: Line, paper: Paper) -> tuple[Window, ...]:
    """Cover all ink points (N, 2; mm) with the fewest windows of a paper, named A1, A2, B1, ...

    Letters count the bands, numbers the sheets within a band; neighbours overlap. Raises
    UsageError where more sheets would be needed than anyone glues together.
    """
    held = (paper, paper.across)
    sizes = [room_for_drawing(each) for each in held]
    rows = _fewest(ink, sizes)
    columns = _fewest(ink[:, ::-1], [Size(size.height, size.width) for size in sizes])
    best, upright = (rows, True) if _count(rows) <= _count(columns) else (columns, False)
    if _count(best) > MOST_SHEETS.value:
        raise UsageError(
            f"the drawing would take {_count(best)} sheets of {paper.name}",
            hint=f"at most {MOST_SHEETS.value:g} are printed; use a larger paper",
        )
    return tuple(_named(best, upright, held, sizes))


def _count(bands: Sequence[_Band]) -> int:
    return sum(len(band.places) for band in bands)


def _fewest(ink: Line, sizes: Sequence[Size]) -> tuple[_Band, ...]:
    """Find the rows of sheets, from the top, that cover the ink with the fewest sheets.

    Of equals the one with the fewest rows, then the least deep, then the first found.
    """

    def cost(bands: Sequence[_Band]) -> tuple[int, int, float]:
        return _count(bands), len(bands), sum(sizes[band.kind].height for band in bands)

    return min((_bands(ink, sizes, kinds) for kinds in _sequences(ink, sizes)), key=cost)


def _sequences(ink: Line, sizes: Sequence[Size]) -> Iterator[tuple[int, ...]]:
    """Yield each sequence of upright (0) and turned (1) rows that is just deep enough."""
    overlap = TILE_OVERLAP_MM.value
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


def _bands(ink: Line, sizes: Sequence[Size], kinds: Sequence[int]) -> tuple[_Band, ...]:
    """Lay rows of sheets over the ink, the spare depth shared by both ends."""
    overlap = TILE_OVERLAP_MM.value
    depth = sum(sizes[kind].height - overlap for kind in kinds) + overlap
    top = (ink[:, 1].min() + ink[:, 1].max() - depth) / 2
    bands = []
    for kind in kinds:
        size = sizes[kind]
        inside = (ink[:, 1] >= top - INK_MM) & (ink[:, 1] <= top + size.height + INK_MM)
        if inside.any():
            places = _places(ink[inside, 0], size.width)
            bands.append(_Band(float(top), kind, places))
        top += size.height - overlap
    return tuple(bands)


def _places(across: np.ndarray, width: float) -> tuple[float, ...]:
    """Set windows of a width side by side over a stretch of ink, centred on it."""
    overlap = TILE_OVERLAP_MM.value
    need = float(np.ptp(across)) + 2 * INK_MM
    count = max(1, ceil((need - overlap) / (width - overlap) - 1e-9))
    whole = count * (width - overlap) + overlap
    first = (float(across.min()) + float(across.max()) - whole) / 2
    return tuple(first + index * (width - overlap) for index in range(count))


def _named(
    bands: Sequence[_Band], upright: bool, held: Sequence[Paper], sizes: Sequence[Size]
) -> Iterator[Window]:
    for letter, band in zip("ABCDEFGHIJKLMNOPQRSTUVWXYZ", bands, strict=False):
        for number, place in enumerate(band.places, start=1):
            size = sizes[band.kind]
            x, y = (place, band.start) if upright else (band.start, place)
            yield Window(f"{letter}{number}", x, y, size, held[band.kind])
