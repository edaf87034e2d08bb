"""Plates for a bed or a sheet that is too small: turned to fit, or parted in two along a seam."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from math import floor, radians

import numpy as np
import shapely

import scorecraft.plate.telling as telling
from scorecraft.arrays import Line
from scorecraft.errors import UsageError
from scorecraft.loaf.dome import Loaf
from scorecraft.plate.plate import Plate

TURNS_DEG = (0, 90, *(step * side for step in range(1, 90) for side in (1, -1)))
"""Turns that are tried, the plain ones first."""
SHIFTS = np.linspace(-0.16, 0.16, 33)
"""Where a seam may run, off the middle, as shares of the plate's size."""


@dataclass(frozen=True, slots=True)
class Limit:
    """The plate or bed that a stencil is cut from: how wide and how high it is, mm."""

    width_mm: float
    height_mm: float

    def turn_deg(self, polygon: shapely.Geometry) -> int | None:
        """Find a turn (degrees, counter-clockwise) at which a polygon fits, or None."""
        corners = shapely.get_coordinates(shapely.convex_hull(polygon))
        for turn in TURNS_DEG:
            c, s = np.cos(radians(turn)), np.sin(radians(turn))
            wide, high = np.ptp(corners @ np.array([[c, s], [-s, c]]), axis=0)
            if wide <= self.width_mm and high <= self.height_mm:
                return turn
        return None


def limit_of(text: str) -> Limit:
    """Read `300x300mm` or `12x12in`; raises UsageError for what is none."""
    unit, factor = ("in", 25.4) if text.endswith("in") else ("mm", 1.0)
    wide, _, high = text.removesuffix(unit).lower().partition("x")
    try:
        limit = Limit(float(wide) * factor, float(high) * factor)
    except ValueError as error:
        raise UsageError(telling.no_plate_size(text), None, telling.PLATE_LIKE) from error
    if not (50 <= limit.width_mm <= 5000 and 50 <= limit.height_mm <= 5000):
        raise UsageError(telling.no_plate_size(text), None, telling.PLATE_LIKE)
    return limit


def turned_to_fit(plate: Plate, loaf: Loaf, limit: Limit) -> tuple[Plate, int]:
    """Turn a plate so that it fits, and tell by how much (degrees, counter-clockwise).

    Raises UsageError where it does not, with the largest loaf whose plate does.
    """
    turn = limit.turn_deg(plate.polygon)
    if turn is None:
        left, low, right, high = plate.polygon.bounds
        size = (right - left, high - low)
        most = (limit.width_mm, limit.height_mm)
        beyond = (size[0] - loaf.width_mm, size[1] - loaf.length_mm)
        share = min((most[0] - beyond[0]) / loaf.width_mm, (most[1] - beyond[1]) / loaf.length_mm)
        advice = telling.smaller_loaf(floor(share * loaf.width_mm))
        raise UsageError(telling.too_large(size, most), None, advice)
    return (turned(plate, radians(turn)) if turn else plate), turn


def turned(plate: Plate, angle: float) -> Plate:
    """Turn a plate counter-clockwise about the crown (radians)."""
    c, s = np.cos(angle), np.sin(angle)
    way = np.array([[c, s], [-s, c]])

    def over(points: Line) -> Line:
        return np.asarray(points @ way)

    return replace(
        plate,
        polygon=shapely.transform(plate.polygon, over),
        slots=tuple(shapely.transform(slot, over) for slot in plate.slots),
        hair=tuple(shapely.transform(slit, over) for slit in plate.hair),
        score_lines=tuple(over(line) for line in plate.score_lines),
        bridges=tuple(replace(each, span=over(each.span)) for each in plate.bridges),
    )


def halves(plate: Plate, limit: Limit) -> tuple[Plate, Plate]:
    """Part a plate in two along a straight seam, each half one piece that fits as it lies.

    The seam crosses as few slots as can be. Raises UsageError where there is no such seam.
    """
    best: tuple[int, float, tuple[Plate, Plate]] | None = None
    for shift, seam, sides in _seams(plate.polygon):
        parts = [shapely.intersection(plate.polygon, side) for side in sides]
        if any(part.geom_type != "Polygon" or limit.turn_deg(part) is None for part in parts):
            continue
        cut = sum(1 for slot in plate.slots if slot.crosses(seam) or slot.intersects(seam))
        if best is None or (cut, shift) < best[:2]:
            first, second = (_part(plate, part, side) for part, side in zip(parts, sides,
                             strict=True))  # fmt: skip
            best = cut, shift, (first, second)
    if best is None:
        raise UsageError(telling.NO_SEAM, None, telling.FEWER_SLOTS)
    return best[2]


def _seams(
    polygon: shapely.Polygon,
) -> Iterator[tuple[float, shapely.LineString, tuple[shapely.Polygon, shapely.Polygon]]]:
    """Yield seams upright and level: how far off the middle, the line, and its two sides."""
    left, low, right, high = (side + more for side, more in zip(polygon.bounds, (-1, -1, 1, 1),
                              strict=True))  # fmt: skip
    for shift in SHIFTS.tolist():
        x, y = ((a + b) / 2 + shift * (b - a) for a, b in ((left, right), (low, high)))
        upright = shapely.LineString([(x, low), (x, high)])
        level = shapely.LineString([(left, y), (right, y)])
        box = shapely.box
        yield abs(shift), upright, (box(left, low, x, high), box(x, low, right, high))
        yield abs(shift), level, (box(left, y, right, high), box(left, low, right, y))


def _part(plate: Plate, polygon: shapely.Polygon, side: shapely.Polygon) -> Plate:
    """Keep of a plate what lies on one side of the seam."""
    lines = [shapely.intersection(shapely.LineString(line), side) for line in plate.score_lines]
    rim = [part for line in lines for part in shapely.get_parts(line) if part.length > 1]
    return replace(
        plate,
        polygon=polygon,
        slots=tuple(slot for slot in plate.slots if side.intersects(slot)),
        hair=tuple(slit for slit in plate.hair if side.contains(slit)),
        score_lines=tuple(shapely.get_coordinates(line) for line in rim),
        bridges=tuple(each for each in plate.bridges if side.contains(shapely.Point(each.at))),
    )
