"""Figures drawn freely, brought to the sizes that were asked for."""

from collections.abc import Iterable, Sequence

import numpy as np

from scorecraft.arrays import Line
from scorecraft.curves import bezier, join
from scorecraft.cuts import Stroke

Share = tuple[float, float]
"""A point of a drawing: across and along, as shares of its sizes."""
Drawn = tuple[str, *tuple[Sequence[Share], ...]]
"""A stroke: which part it is, and the control points of the curves it is joined from."""


def both(part: str, line: Line) -> list[Stroke]:
    """Give a stroke (N, 2) of the right half and its mirror image on the left, that one first."""
    return [Stroke(part, line * (side, 1)) for side in (-1, 1)]


def bend(across: float, along: float, *points: Share) -> Line:
    """Bezier curve (N, 2) through four control points given as shares of two sizes (mm)."""
    return bezier(*((x * across, y * along) for x, y in points))


def bends(across: float, along: float, *pieces: Sequence[Share]) -> Line:
    """Bezier curves laid end to end, each by its four control points as in `bend`."""
    return join(*(bend(across, along, *points) for points in pieces))


def halves(across: float, along: float, drawn: Iterable[Drawn]) -> list[Stroke]:
    """Draw the strokes of a right half and their mirror images, in shares of two sizes (mm)."""
    return [each for part, *pieces in drawn for each in both(part, bends(across, along, *pieces))]


def fitted(strokes: Sequence[Stroke], width: float, length: float, foot: float) -> list[Stroke]:
    """Stretch strokes a little: `width` (mm) across, and from y = `foot` up by `length` (mm)."""
    points = np.concatenate([stroke.line for stroke in strokes])
    wide, high = np.ptp(points, axis=0).tolist()
    scale, low = np.array([width / wide, length / high]), float(points[:, 1].min())
    return [
        Stroke(stroke.part, (stroke.line - (0.0, low)) * scale + (0.0, foot)) for stroke in strokes
    ]


def reaching(strokes: Sequence[Stroke], radius: float) -> list[Stroke]:
    """Scale strokes about the origin so that the farthest point lies at a radius (mm)."""
    far = max(float(np.hypot(*stroke.line.T).max()) for stroke in strokes)
    return [Stroke(stroke.part, stroke.line * (radius / far)) for stroke in strokes]
