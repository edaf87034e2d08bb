"""A branch: a stem with leaves on both sides, along a path of its own or straight on."""

from collections.abc import Sequence

import numpy as np
import shapely

from scorecraft import curves
from scorecraft.arrays import Line
from scorecraft.curves import bezier
from scorecraft.cuts import Stroke
from scorecraft.errors import UsageError
from scorecraft.motifs.petal import leaflet

BOW = 0.07
"""How far the stem swings aside where no path is given, as a share of the length."""
FIRST, LAST = 0.16, 0.94
"""Where the lowest and the highest leaf stand, as shares of the way along the stem."""
LEAN_RAD = 0.75
"""How far a leaf leans from the stem."""
SLIM = 0.34
"""Width of a leaf over its length."""
OFF = 0.12
"""How far beside the stem a leaf begins, as a share of its length."""
SMALLER = 0.3
"""How much smaller the topmost leaf is than the lowest."""


def branch(
    *,
    length: float,
    leaves: int,
    leaf_length: float,
    points: Sequence[tuple[float, float]] | None = None,
) -> list[Stroke]:
    """Draw a branch from the origin `length` (mm) along +y, or along `points` (N, 2) in mm.

    `leaves` counts them on both sides together, in turn left and right, the lowest `leaf_length`
    (mm) long; one more ends the stem. Raises UsageError where fewer than two points differ.
    """
    stem = _stem(length) if points is None else curves.smooth(np.asarray(points, dtype=np.float64))
    if len(stem) < 2:
        raise UsageError("a branch needs at least two different points")
    way = shapely.LineString(stem)
    strokes = [Stroke("stem", stem)]
    for k, share in enumerate(np.linspace(FIRST, LAST, leaves).tolist()):
        at, heading = _there(way, share * way.length)
        lean = LEAN_RAD if k % 2 else -LEAN_RAD
        size = leaf_length * (1 - SMALLER * share)
        strokes += leaflet(at, heading + lean, size, SLIM, OFF)
    at, heading = _there(way, way.length)
    return [*strokes, *leaflet(at, heading, leaf_length * (1 - SMALLER), SLIM, OFF)]


def _stem(length: float) -> Line:
    """Stem that swings a little to the right and back."""
    return bezier((0, 0), (BOW * length, 0.3 * length), (-BOW * length, 0.62 * length), (0, length))


def _there(way: shapely.LineString, along: float) -> tuple[Line, float]:
    """Give a point along a way (mm), and the turntable angle it heads for there (radians)."""
    before, at, after = (
        shapely.get_coordinates(way.interpolate(min(max(along + step, 0.0), way.length)))[0]
        for step in (-0.2, 0.0, 0.2)
    )
    return at, float(np.arctan2(*(after - before)))
