"""Figures drawn freely, brought to the sizes that were asked for."""

from collections.abc import Sequence

import numpy as np

from scorecraft.cuts import Stroke


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
