"""Figures drawn freely, brought to the sizes that were asked for."""

from collections.abc import Sequence

import numpy as np

from scorecraft.arrays import Line
from scorecraft.curves import bezier
from scorecraft.cuts import Stroke

Share = tuple[float, float]
"""A point of a drawing: across and along, as shares of its sizes."""


def both(part: str, line: Line) -> list[Stroke]:
    """Give a stroke (N, 2) of the right half and its mirror image on the left, that one first."""
    return [Stroke(part, line * (side, 1)) for side in (-1, 1)]


def bend(across: float, along: float, *points: Share) -> Line:
    """Bezier curve (N, 2) through four control points given as shares of two sizes (mm)."""
    return bezier(*((x * across, y * along) for x, y in points))


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
