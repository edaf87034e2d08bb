"""A row of a practice sheet: the blade, strokes to trace, fading guides, and an empty frame."""

from collections.abc import Sequence

import numpy as np
import shapely

from scorecraft.arrays import Line
from scorecraft.curves import length
from scorecraft.drawing.arrow import arrow
from scorecraft.drawing.inks import HAIR_INK, LEAST_DASHES
from scorecraft.drawing.label_box import label_box
from scorecraft.drawing.paper.block import Block, gap, paragraph, stacked
from scorecraft.drawing.paper.table import LEAST_MM
from scorecraft.drawing.picture import BLACK, Ink, Item, Label, Layer, Shape, box, line, ring
from scorecraft.drawing.plan import along, on_paper
from scorecraft.drawing.practise.blade import WIDE_MM, blade
from scorecraft.drawing.practise.exercise import Exercise, bounds
from scorecraft.drawing.practise.words import FADING, FREE, TRACE
from scorecraft.frozen import dataclass, replace

NAME_MM = 4.4
BLADE_GAP_MM = 6.0
PAD_MM = 4.5
"""Room about the strokes of a cell."""
LEAST_CELL_MM = 13.0
LEAST_CELLS = 3
TRACED = Ink(0.5, color="#8a8a8a")
FADED = (
    Ink(0.5, color="#a0a0a0", dash=(3.0, 2.0), cap="butt"),
    Ink(0.5, color="#a8a8a8", dash=(1.2, 3.6), cap="butt"),
    Ink(0.6, color="#a0a0a0", dash=(0.0, 8.0)),
)
"""Guides, from dashes to a few dots; after them only dot and bar stand."""
BESIDE = Ink(0.3)
DOT_MM = 0.8
BAR_MM = 2.2
UPWARD = tuple(side * k * np.pi / 8 for k in range(9) for side in (-1, 1))
"""Where the number of a stroke may stand about its start: angles from straight above."""
WORDS_MM = 24.0
"""Room that the words above a row take at the most."""
ZONE_MM = 5.2
"""Room for the name of a zone above its cells."""


@dataclass(frozen=True, slots=True)
class Cells:
    """How an exercise is shared out: `count` cells (mm wide) to a line, and how many `lines`.

    The first of all cells are to trace, the next have fading guides, the rest are empty.
    """

    width: float
    count: int
    lines: int = 1

    @property
    def traced(self) -> int:
        """How many strokes are there in full."""
        return max(1, round(0.4 * self.count * self.lines))

    @property
    def faded(self) -> int:
        """How many have a guide that fades."""
        most = (len(FADED) + 1) * self.lines
        return max(1, min(most, round(0.32 * self.count * self.lines)))

    def strength(self, cell: int) -> int | None:
        """Tell how far the guide of a cell has faded: -1 is in full, None is empty."""
        if cell < self.traced:
            return -1
        step = cell - self.traced
        if step >= self.faded:
            return None
        return step if self.lines == 1 else step * (len(FADED) + 1) // self.faded


def cells(exercise: Exercise, width: float, lines: int = 1) -> Cells:
    """Share a row of a width (mm) out."""
    left, _, right, _ = bounds((*exercise.strokes, *exercise.beside))
    room = width - WIDE_MM - BLADE_GAP_MM
    cell = max(right - left + 2 * PAD_MM, LEAST_CELL_MM)
    return Cells(min(cell, room / LEAST_CELLS), max(LEAST_CELLS, int(room // cell)), lines)


def largest(width: float, height: float) -> tuple[float, float]:
    """Give how wide and high strokes can be in a row so wide and high, with its zones (mm)."""
    wide = (width - WIDE_MM - BLADE_GAP_MM) / LEAST_CELLS - 2 * PAD_MM
    return wide, height - WORDS_MM - ZONE_MM - 2 * PAD_MM


def row(exercise: Exercise, width: float, lines: int = 1) -> Block:
    """Draw an exercise in a row of a width (mm), its strokes in so many lines."""
    head, section = _words(exercise, width), blade(exercise.held)
    drawn = _zones(exercise, cells(exercise, width, lines), width - WIDE_MM - BLADE_GAP_MM)
    items = (
        *head.items,
        *section.shifted(0.0, head.height + ZONE_MM),
        *drawn.shifted(WIDE_MM + BLADE_GAP_MM, head.height),
    )
    group = Layer(f"exercise {exercise.name}", items)
    return Block((group,), row_height(exercise, width, lines))


def row_height(exercise: Exercise, width: float, lines: int = 1) -> float:
    """Give how high a row is (mm)."""
    section = ZONE_MM + blade(exercise.held).height
    return _words(exercise, width).height + max(lines * _line_height(exercise), section)


def _line_height(exercise: Exercise) -> float:
    _, low, _, high = bounds((*exercise.strokes, *exercise.beside))
    return ZONE_MM + high - low + 2 * PAD_MM


def _words(exercise: Exercise, width: float) -> Block:
    """Set the name of an exercise, and what is said of it."""
    told = paragraph(" ".join(exercise.told), width, LEAST_MM)
    return stacked([paragraph(exercise.name, width, NAME_MM, bold=True), gap(0.4), told, gap(2.0)])


def _zones(exercise: Exercise, shared: Cells, room: float) -> Block:
    """Draw all lines of cells, each zone under its name."""
    left, _, right, high = bounds((*exercise.strokes, *exercise.beside))
    tall = _line_height(exercise)
    items: list[Item] = []
    before = ""
    for cell in range(shared.count * shared.lines):
        line_of, place = divmod(cell, shared.count)
        x, top = place * shared.width, line_of * tall
        strength = shared.strength(cell)
        zone = FREE if strength is None else TRACE if strength < 0 else FADING
        if place == 0 or zone != before:
            items.append(Label(zone, (x + 1.0, top + LEAST_MM), LEAST_MM, color="#555555"))
            if strength is None:
                frame = box(x, top + ZONE_MM, room - x, tall - ZONE_MM)
                items.append(Shape((frame,), closed=True, ink=HAIR_INK))
        before = zone
        if strength is not None:
            middle = x + shared.width / 2 - (left + right) / 2
            centre = (middle, top + ZONE_MM + PAD_MM + high)
            items.append(_copy(exercise, centre, strength, first=cell == 0))
    return Block(tuple(items), tall * shared.lines)


def _copy(exercise: Exercise, centre: tuple[float, float], strength: int, *, first: bool) -> Layer:
    """Draw the strokes once: `strength` below 0 in full, else with the guide of that step."""
    lines = [on_paper(each, centre) for each in exercise.strokes]
    items: list[Item] = [Shape((on_paper(each, centre),), ink=BESIDE) for each in exercise.beside]
    if strength < len(FADED):
        ink = TRACED if strength < 0 else FADED[strength]
        items += [Shape((each,), ink=_dashed(ink, length(each))) for each in lines]
    if strength < 0:
        items += [arrow(each) for each in lines]
    items += [_dot(each) for each in lines]
    items += [Shape((_bar(each),), ink=Ink(0.35, cap="butt")) for each in lines]
    if first:
        items += _numbers(exercise.numbers, lines)
    name = "trace" if strength < 0 else "guide"
    return Layer(name, tuple(items))


def _dashed(ink: Ink, long: float) -> Ink:
    """Give a stroke so short (mm) that it would hold fewer than three dashes smaller ones."""
    scale = min(1.0, long / (LEAST_DASHES * sum(ink.dash))) if ink.dash else 1.0
    return replace(ink, dash=tuple(part * scale for part in ink.dash))


def _dot(points: Line) -> Shape:
    """Mark where a stroke begins."""
    x, y = points[0].tolist()
    return Shape((ring(x, y, DOT_MM),), closed=True, fill=BLACK)


def _bar(points: Line) -> Line:
    """Mark where a stroke ends: a short line across it."""
    end, angle = along(points, 1.0)
    across = BAR_MM / 2 * np.array([-np.sin(angle), np.cos(angle)])
    x, y = across.tolist()
    return line(end[0] - x, end[1] - y, end[0] + x, end[1] + y)


def _numbers(numbers: Sequence[str], lines: Sequence[Line]) -> list[Item]:
    """Write the number of a stroke beside its start, clear of all lines where there is room."""
    taken = [shapely.LineString(each) for each in lines]
    taken += [shapely.buffer(shapely.Point(each[0]), DOT_MM) for each in lines]
    items: list[Item] = []
    for number, points in zip(numbers, lines, strict=True):
        if number:
            label, frame = _clear(number, points[0], taken)
            items.append(label)
            taken.append(frame)
    return items


def _clear(
    number: str, start: Line, taken: Sequence[shapely.Geometry]
) -> tuple[Label, shapely.Geometry]:
    """Find the place about a start (mm) that is nearest to it and clear of what is taken."""
    every = shapely.GeometryCollection(list(taken))
    best: tuple[float, Label, shapely.Geometry] | None = None
    for far in (3.0, 4.0, 5.0, 6.5, 8.0):
        for angle in UPWARD:
            x, y = (start + far * np.array([np.sin(angle), -np.cos(angle)])).tolist()
            label = Label(number, (x, y), LEAST_MM, "middle", "middle", bold=True)
            frame = shapely.Polygon(label_box(label, descent=0.0))
            free = float(shapely.distance(frame, every))
            if free >= 0.6:
                return label, frame
            if best is None or free > best[0]:
                best = free, label, frame
    assert best is not None
    return best[1], best[2]
