"""Where cuts meet: the points at which two cuts cross, or one ends on the other."""

import numpy as np
import shapely

from scorecraft.arrays import Flags, Floats, Ints, Shapes
from scorecraft.checks.neighbours import near_pairs
from scorecraft.cuts import Layout
from scorecraft.frozen import dataclass
from scorecraft.loaf.dome import Loaf
from scorecraft.practice import JOIN_MM

POINT = 0
"""Shapely's type number of a point."""


@dataclass(frozen=True, eq=False, slots=True)
class Meetings:
    """Points (K, 2) in sheet mm where the cuts `first` and `second` (K,) meet.

    `along_first` and `along_second` are the ways from the cuts' starts, mm; `crosses` is False
    where either cut ends there; `angle` is the angle between them on the dough, radians. `whole`
    is False where there are more points than were looked for.
    """

    first: Ints
    second: Ints
    point: Floats
    along_first: Floats
    along_second: Floats
    crosses: Flags
    angle: Floats
    whole: bool


def meetings(layout: Layout, lines: Shapes) -> Meetings:
    """Find all points where two cuts meet, or a sample where everything meets everything.

    `lines` are the cuts as line strings (sheet mm); lines on one another are left out.
    """
    near = near_pairs(layout, lines)
    first, second, loaf = near.first, near.second, layout.loaf
    shared = shapely.intersection(lines[first], lines[second])
    parts, pair = shapely.get_parts(shared, return_index=True)
    single = shapely.get_type_id(parts) == POINT
    parts, pair = parts[single], pair[single]
    first, second = first[pair], second[pair]
    along_first = np.asarray(shapely.line_locate_point(lines[first], parts))
    along_second = np.asarray(shapely.line_locate_point(lines[second], parts))
    inner = _inner(lines[first], along_first) & _inner(lines[second], along_second)
    here = _direction(lines[first], along_first, loaf)
    there = _direction(lines[second], along_second, loaf)
    cosine = np.abs((here * there).sum(axis=1))
    angle = np.arccos(np.clip(cosine, 0.0, 1.0))
    point = np.column_stack([shapely.get_x(parts), shapely.get_y(parts)])
    return Meetings(first, second, point, along_first, along_second, inner, angle, near.whole)


def _inner(lines: Shapes, along: Floats) -> Flags:
    """Whether places along lines are away from their ends; a closed line has none."""
    left = np.minimum(along, shapely.length(lines) - along)
    return np.asarray((left > JOIN_MM.value) | shapely.is_closed(lines))


def _direction(lines: Shapes, along: Floats, loaf: Loaf) -> Floats:
    """Give unit directions (K, 3) on the dough of lines at places along them."""
    length = shapely.length(lines)
    step = np.minimum(0.25, length / 4)
    before = np.clip(along - step, 0.0, length - 2 * step)
    ends = [
        shapely.get_coordinates(shapely.line_interpolate_point(lines, at))
        for at in (before, before + 2 * step)
    ]
    solid = [loaf.surface(loaf.sheet_to_plan(end)) for end in ends]
    side = solid[1] - solid[0]
    return np.asarray(side / np.maximum(np.linalg.norm(side, axis=1, keepdims=True), 1e-12))
