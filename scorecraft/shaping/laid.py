"""Pieces cut with scissors and laid to the left and right, as for an ear of wheat."""

import math

import numpy as np
import shapely

from scorecraft.arrays import Floats, Line
from scorecraft.curves import turned
from scorecraft.cuts import Layout
from scorecraft.loaf.areas import on_plan
from scorecraft.practice import LAID_DEG
from scorecraft.shaping.slab import Slab

HINGE_SHARE = 0.5
"""A piece reaches so far over its hinge, as a part of its length."""
FULL = 0.56
"""Where a piece is broadest, from its tip, as a part of its length."""
GRAIN = 0.82
"""Breadth of a piece where it is broadest, over that of the loaf."""
SPINE = 0.56
"""Breadth of what holds the pieces together, over that of the loaf."""


def laid_slabs(layout: Layout) -> tuple[Slab, ...]:
    """Make the bodies of the pieces as they are laid, and what holds them together.

    Every cut lays what lies behind it, back to the cut before it or the loaf's end; what is ahead
    of the last stays as it is. Plan mm.
    """
    cuts = [cut for cut in layout.cuts if cut.hinge_mm is not None]
    plans = [layout.loaf.sheet_to_plan(cut.line) for cut in cuts]
    places = [plan[len(plan) // 2] for plan in plans]
    way = np.sum([(plan[0] + plan[-1]) / 2 for plan in plans] - np.array(places), axis=0)
    ahead = way / np.hypot(*way)  # which way the scissors point, on the whole
    order = np.argsort([place @ ahead for place in places])
    dough = on_plan(layout.loaf)
    rim = shapely.get_coordinates(dough) @ ahead
    tip, end = float(rim.min()), float(rim.max())
    high = layout.loaf.height_mm
    slabs: list[Slab] = []
    for k in order:
        here = float(places[k] @ ahead)
        wide = _wide(layout, here, ahead)
        slabs.append(_piece(tip, here, wide, cuts[k].laid, ahead, high))
        tip = here
    slabs.append(_rest(tip, end, _wide(layout, tip, ahead), ahead, high))
    first = float(places[order[0]] @ ahead)
    slabs.append(_spine(first, tip, SPINE * slabs[0].round_mm, ahead, high))
    return tuple(slabs)


def _wide(layout: Layout, here: float, ahead: Floats) -> float:
    """Breadth (mm) of the loaf square to the way ahead, at a place along it."""
    middle, aside = here * ahead, np.array([-ahead[1], ahead[0]]) * 2 * layout.loaf.length_mm
    line = shapely.LineString([middle - aside, middle + aside])
    return max(float(shapely.length(shapely.intersection(line, on_plan(layout.loaf)))), 10.0)


def _piece(tip: float, hinge: float, wide: float, side: int, ahead: Floats, high: float) -> Slab:
    """Draw a grain: pointed at its tip, broad toward its hinge, turned about that."""
    long = (hinge - tip) * (1 + HINGE_SHARE)
    share = np.linspace(0.0, 1.0, 61)
    warped = share ** (math.log(0.5) / math.log(FULL))  # broadest where it is to be
    half = 0.5 * GRAIN * wide * np.sin(np.pi * warped) ** 0.9
    along = tip + share * long
    ring = np.vstack([np.column_stack([-half, along]), np.column_stack([half, along])[::-1]])
    middle = (0.0, hinge)  # the tip goes to the side: to the right for 1
    laid = turned(ring - middle, -side * math.radians(LAID_DEG.value)) + middle
    return Slab(shapely.Polygon(_on_plan(laid, ahead)).buffer(0), high, GRAIN * wide / 2)


def _rest(tip: float, end: float, wide: float, ahead: Floats, high: float) -> Slab:
    """Draw what is ahead of the last cut: pointed at the cut, round at the loaf's end."""
    share = np.linspace(0.0, 1.0, 61)
    half = 0.5 * wide * np.sin(np.pi * share**0.9) ** 0.6
    along = tip + share * (end - tip)
    ring = np.vstack([np.column_stack([-half, along]), np.column_stack([half, along])[::-1]])
    return Slab(shapely.Polygon(_on_plan(ring, ahead)).buffer(0), high, wide / 2)


def _spine(first: float, last: float, wide: float, ahead: Floats, high: float) -> Slab:
    line = shapely.LineString(_on_plan(np.array([[0.0, first], [0.0, last + wide]]), ahead))
    return Slab(line.buffer(wide), 0.55 * high, wide)


def _on_plan(ring: Line, ahead: Floats) -> Line:
    """Carry points (to the right, ahead) to the plan."""
    right = np.array([ahead[1], -ahead[0]])
    return np.asarray(ring[:, :1] * right + ring[:, 1:] * ahead)
