"""Geometric fills of a region: one file a texture, one plain function each.

A texture draws its own upright lattice over a box; `fill` turns and shifts it, and clips it to
the region.
"""

from collections.abc import Callable, Mapping
from importlib import import_module
from math import cos, sin, sqrt

import numpy as np
import shapely

from scorecraft.arrays import Floats, Line
from scorecraft.errors import UsageError
from scorecraft.frozen import dataclass
from scorecraft.regions import clip

MOST_TEXTURE_CELLS = 40_000
"""The most cells, a texture's size square, that one fill may cover."""


@dataclass(frozen=True, slots=True)
class Filled:
    """Strokes of a texture inside its region (sheet mm), and how many crumbs were dropped."""

    lines: tuple[Line, ...]
    dropped: int


def fill(
    name: str,
    region: shapely.Geometry,
    *,
    size: float,
    turn: float,
    shift: tuple[float, float],
    shortest: float,
    **own: float | str,
) -> Filled:
    """Fill a region (sheet mm) with a texture of a size (mm), clipped exactly to its edge.

    The lattice is turned clockwise by `turn` (radians) about its origin, which stands at `shift`
    (mm). Cut-off pieces shorter than `shortest` (mm) are dropped. Raises UsageError where the
    size is too fine for the region.
    """
    if shapely.is_empty(region):
        return Filled((), 0)
    draw: Callable[..., list[Line]] = getattr(import_module(f"{__name__}.{name}"), name)
    frame = np.array([[cos(turn), sin(turn)], [-sin(turn), cos(turn)]])
    upright = shapely.transform(region, lambda points: (points - shift) @ frame)
    _check_size(name, shapely.bounds(upright), size, own)
    clipped = clip(draw(shapely.bounds(upright), size=size, **own), upright, shortest=shortest)
    return Filled(_placed(clipped.lines, frame, np.asarray(shift)), clipped.dropped)


def _placed(lines: tuple[Line, ...], frame: Floats, shift: Floats) -> tuple[Line, ...]:
    """Carry lines from the lattice's own frame to the sheet."""
    if not lines:
        return ()
    ends = np.cumsum([len(line) for line in lines])[:-1]
    return tuple(np.split(np.concatenate(lines) @ frame.T + shift, ends))


def _check_size(
    name: str, bounds: tuple[float, ...], size: float, own: Mapping[str, float | str]
) -> None:
    """Refuse a texture that would have too many strokes in a box."""
    left, low, right, high = bounds
    width, height = right - left, high - low
    fine = min(size, float(own.get("gap", size)))
    most = MOST_TEXTURE_CELLS / max(float(own.get(key, 1)) for key in ("strokes", "rings"))
    # (width / finest + 1) (height / finest + 1) cells are the most there may be
    around = width + height
    finest = (around + sqrt(around**2 + 4 * (most - 1) * width * height)) / (2 * (most - 1))
    if not fine > finest:
        raise UsageError(
            f"{name.replace('_', ' ')} of size {size:g} mm is too fine for this region",
            hint=f"choose a size above {finest:.2g} mm, or a smaller region",
        )
