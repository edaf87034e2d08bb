"""Plates for a bed or a sheet that is too small: turned to fit, or parted along straight seams."""

from collections.abc import Iterator, Sequence
from itertools import combinations, product
from math import floor, radians
from string import ascii_uppercase

import numpy as np
import shapely

import scorecraft.plate.telling as telling
from scorecraft.arrays import Line
from scorecraft.frozen import dataclass, replace
from scorecraft.limits import SMALLEST_LOAF_MM
from scorecraft.loaf.dome import Loaf
from scorecraft.plate.plate import Joint, Plate, carried

TURNS_DEG = (0, 90, *(step * side for step in range(1, 90) for side in (1, -1)))
"""Turns that are tried, the plain ones first."""
SHIFTS = np.linspace(-0.16, 0.16, 33)
"""Where seams may run, off even spacing, as shares of the plate's size over their number."""
MOST_PARTS = 16
TRIED = 240
"""So many ways to lay a grid of seams are tried, those that cross the fewest slots first."""
ROUGH = 1.2
"""A grid whose even parts are so much too large for the bed is not tried."""
MARK_AT = (0.5, 0.35, 0.65, 0.2, 0.8)
"""Where on a seam the line of a joint may stand; the first is the best."""
MARK_MM = 6.0
"""Length of the line scored on either side of a joint."""


@dataclass(frozen=True, slots=True)
class Limit:
    """The plate or bed that a stencil is cut from: how wide and how high it is, mm."""

    width_mm: float
    height_mm: float

    def turn_deg(self, polygon: shapely.Geometry) -> int | None:
        """Find a turn (degrees, counter-clockwise) at which a polygon fits, or None."""
        corners = shapely.get_coordinates(shapely.convex_hull(polygon))
        turns = np.radians(TURNS_DEG)
        wide = np.ptp(corners @ np.array([np.cos(turns), -np.sin(turns)]), axis=0)
        high = np.ptp(corners @ np.array([np.sin(turns), np.cos(turns)]), axis=0)
        fits = np.flatnonzero((wide <= self.width_mm) & (high <= self.height_mm))
        return TURNS_DEG[fits[0]] if len(fits) else None


def limit_of(text: str) -> Limit:
    """Read `300x300mm` or `12x12in`; raises UsageError for what is none."""
    unit, factor = ("in", 25.4) if text.endswith("in") else ("mm", 1.0)
    wide, _, high = text.removesuffix(unit).lower().partition("x")
    try:
        limit = Limit(float(wide) * factor, float(high) * factor)
    except ValueError as error:
        raise telling.NO_PLATE_SIZE(text=text).usage() from error
    if not (50 <= limit.width_mm <= 5000 and 50 <= limit.height_mm <= 5000):
        raise telling.NO_PLATE_SIZE(text=text).usage()
    return limit


def turned_to_fit(plate: Plate, loaf: Loaf, limit: Limit) -> tuple[Plate, int]:
    """Turn a plate so that it fits, and tell by how much (degrees, counter-clockwise).

    Raises UsageError where it does not, with the largest loaf whose plate does, if any.
    """
    turn = limit.turn_deg(plate.polygon)
    if turn is None:
        left, low, right, high = plate.polygon.bounds
        size = (right - left, high - low)
        most = (limit.width_mm, limit.height_mm)
        beyond = (size[0] - loaf.width_mm, size[1] - loaf.length_mm)
        share = min((most[0] - beyond[0]) / loaf.width_mm, (most[1] - beyond[1]) / loaf.length_mm)
        width = floor(share * loaf.width_mm)
        said = telling.TOO_LARGE if width >= SMALLEST_LOAF_MM else telling.TOO_LARGE_FOR_ANY
        raise said(size=size, most=most, width_mm=width).usage()
    return (turned(plate, radians(turn)) if turn else plate), turn


def turned(plate: Plate, angle: float) -> Plate:
    """Turn a plate counter-clockwise about the crown (radians)."""
    c, s = np.cos(angle), np.sin(angle)
    return carried(plate, np.array([[c, s], [-s, c]]))


def parted(plate: Plate, limit: Limit, *, turn: bool = False) -> tuple[Plate, ...]:
    """Part a plate along straight seams, each part one piece that fits, turned or not.

    With `turn` each is turned as it fits.

    As few parts as can be, along seams that cross as few slots as can be; joints are lettered.
    Raises UsageError where there is no such grid.
    """
    for across, down in _grids(plate.polygon, limit):
        ways = [_seams(plate, axis, count) for axis, count in enumerate((across, down))]
        both = sorted(product(*ways), key=lambda way: tuple(np.add(way[0][:2], way[1][:2])))
        for (_, _, upright), (_, _, level) in both[:TRIED]:
            cells = list(_cells(plate.polygon, upright, level))
            if all(_fits(plate.polygon, cell, limit) for cell in cells):
                made = _joined([_part(plate, cell) for cell in cells])
                return tuple(_lying(each, limit) for each in made) if turn else made
    raise telling.NO_SEAM.usage()


def _lying(plate: Plate, limit: Limit) -> Plate:
    """Turn a part as it fits."""
    return turned(plate, radians(limit.turn_deg(plate.polygon) or 0))


def _grids(polygon: shapely.Polygon, limit: Limit) -> Iterator[tuple[int, int]]:
    """Yield grids (parts across, down) that are not far too coarse, the fewest parts first."""
    grids = [
        (across, down)
        for across, down in product(range(1, MOST_PARTS + 1), repeat=2)
        if 1 < across * down <= MOST_PARTS
    ]
    roughly = Limit(ROUGH * limit.width_mm, ROUGH * limit.height_mm)
    for across, down in sorted(grids, key=lambda each: (each[0] * each[1], sum(each))):
        even = [_even(polygon, axis, count) for axis, count in enumerate((across, down))]
        cells = _cells(polygon, *even)
        if all(roughly.turn_deg(shapely.intersection(polygon, cell)) is not None for cell in cells):
            yield across, down


def _even(polygon: shapely.Polygon, axis: int, count: int) -> tuple[float, ...]:
    """Give the places of seams that share a plate out evenly along an axis."""
    low, high = polygon.bounds[axis], polygon.bounds[axis + 2]
    return tuple(low + (high - low) * k / count for k in range(1, count))


Seams = tuple[int, float, tuple[float, ...]]
"""How many slots they cross, how far off they run, and where."""


def _seams(plate: Plate, axis: int, count: int) -> list[Seams]:
    """List ways to lay the seams along an axis."""
    if count == 1:
        return [(0, 0.0, ())]
    low, high = plate.polygon.bounds[axis], plate.polygon.bounds[axis + 2]
    spans = np.array([slot.bounds for slot in plate.slots]).reshape(-1, 4)[:, [axis, axis + 2]]
    ways: list[Seams] = []
    for shift in SHIFTS.tolist():
        off = 2 * shift * (high - low) / count
        places = tuple(place + off for place in _even(plate.polygon, axis, count))
        cut = sum(int(((spans[:, 0] < at) & (at < spans[:, 1])).sum()) for at in places)
        ways.append((cut, abs(shift), places))
    return ways


def _cells(
    polygon: shapely.Polygon, upright: Sequence[float], level: Sequence[float]
) -> Iterator[shapely.Polygon]:
    """Yield the boxes of a grid that hold some of a plate, row by row from the upper left."""
    left, low, right, high = polygon.bounds
    xs, ys = [left - 1, *upright, right + 1], [low - 1, *level, high + 1]
    for top in range(len(ys) - 1, 0, -1):
        for k in range(len(xs) - 1):
            cell = shapely.box(xs[k], ys[top - 1], xs[k + 1], ys[top])
            if shapely.intersects(polygon, cell):
                yield cell


def _fits(polygon: shapely.Polygon, cell: shapely.Polygon, limit: Limit) -> bool:
    """Whether what a cell holds of a plate is one piece that fits."""
    part = shapely.intersection(polygon, cell)
    return part.geom_type == "Polygon" and limit.turn_deg(part) is not None


def _part(plate: Plate, side: shapely.Polygon) -> Plate:
    """Keep of a plate what lies in one cell."""
    lines = [shapely.intersection(shapely.LineString(line), side) for line in plate.score_lines]
    rim = [part for line in lines for part in shapely.get_parts(line) if part.length > 1]
    return replace(
        plate,
        polygon=shapely.intersection(plate.polygon, side),
        slots=tuple(slot for slot in plate.slots if side.intersects(slot)),
        hair=tuple(slit for slit in plate.hair if side.contains(slit)),
        score_lines=tuple(shapely.get_coordinates(line) for line in rim),
        bridges=tuple(each for each in plate.bridges if side.contains(shapely.Point(each.at))),
    )


def _joined(made: Sequence[Plate]) -> tuple[Plate, ...]:
    """Count the parts, and letter the joints between them on both sides of their seams."""
    joints: list[list[Joint]] = [[] for _ in made]
    letters = iter(ascii_uppercase + ascii_uppercase.lower())
    for one, other in combinations(range(len(made)), 2):
        marks = _marks(made[one].polygon, made[other].polygon)
        if marks is not None:
            letter = next(letters)
            joints[one].append(Joint(letter, marks[0]))
            joints[other].append(Joint(letter, marks[1]))
    return tuple(
        replace(
            plate,
            part=f"{number} of {len(made)}",
            joints=tuple(own),
            score_lines=(*plate.score_lines, *(each.line for each in own)),
        )
        for number, (plate, own) in enumerate(zip(made, joints, strict=True), start=1)
    )


def _marks(one: shapely.Polygon, other: shapely.Polygon) -> tuple[Line, Line] | None:
    """Draw a short line from the seam into each of two parts, clear of their slots; None apart.

    It stands in the middle of the longest stretch where they meet, or else where it has room.
    """
    seam = shapely.get_parts(shapely.line_merge(shapely.intersection(one, other)))
    runs = sorted((run for run in seam if run.length > MARK_MM), key=shapely.length, reverse=True)
    tried = []
    for run, share in product(runs, MARK_AT):
        ends = shapely.get_coordinates(run)[[0, -1]]
        at, way = ends[0] + share * (ends[1] - ends[0]), (ends[1] - ends[0]) / run.length
        inward = MARK_MM * np.array([-way[1], way[0]])
        if not shapely.intersects_xy(one, *(at + 0.01 * inward)):
            inward = -inward
        marks = np.array([at, at + inward]), np.array([at, at - inward])
        tried.append(marks)
        both = zip((one, other), shapely.linestrings(marks), strict=True)
        if all(part.covers(line) for part, line in both):
            return marks
    return tried[0] if tried else None
