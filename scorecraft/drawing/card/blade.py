"""The blade in the dough, drawn as the cutter holds it: its angle, and the handle's tilt.

What leans to the left or right is seen from where the cutter stands; what leans away or toward
the cutter is seen from the side, the cutter on the left.
"""

import math

import numpy as np

from scorecraft.arrays import Line
from scorecraft.bench.blade import upright
from scorecraft.bench.telling import Handling
from scorecraft.drawing.picture import Ink, Item, Label, Shape, line, ring
from scorecraft.drawing.text import width_mm

GREY = "#999999"
YOU, YOU_HIGH = "you", 0.30
"""Stands at the cutter's end of what is seen from the side; its height as a share of the width."""
ABOVE, BELOW = 0.62, 0.30
"""How far the blade reaches out of the dough and into it, as shares of the picture's width."""
GAPE_RAD = math.radians(13)
"""How far each blade of scissors stands from their middle."""
SIDES = {"right": 1, "away": 1, "left": -1, "toward you": -1}
"""To which side of the picture a handle leans."""


def blade_picture(handling: Handling, x: float, base: float, size: float) -> list[Item]:
    """Draw a blade in a picture of `size` mm from x on, beside the words that stand on `base`.

    Where handles of like cuts lean to no one side, a slanted blade is drawn to either side.
    """
    at = np.array([x + blade_wide(handling, size) - size / 2, base - 0.30 * size])
    straight = upright(handling.blade_rad)
    blade = math.pi / 2 if straight else handling.blade_rad
    if not (handling.lean or handling.held_upright):
        sides = (1,) if straight else (1, -1)
        return [_dough(at, 0.0, size), *(_edge(handling, at, side, blade, size) for side in sides)]
    side = SIDES.get(handling.lean, 1)
    rises = math.pi / 2 - (handling.tilt_rad if handling.lean else 0.0)
    slope = side * (blade - rises)
    if not handling.lean:
        return [_dough(at, slope, size), _edge(handling, at, side, rises, size)]
    items: list[Item] = [_dough(at, slope, size), _upright(at, size)]
    items.append(_edge(handling, at, side, rises, size))
    if _aside(handling):
        end = float(at[1] - 0.5 * size * math.sin(slope))
        items.append(Label(YOU, (x, end), YOU_HIGH * size, level="middle", color=GREY))
    return items


def blade_wide(handling: Handling, size: float) -> float:
    """Tell how wide the picture of a blade is, with what stands beside it."""
    beside = width_mm(YOU, YOU_HIGH * size) if _aside(handling) else 0.0
    return size + beside


def _aside(handling: Handling) -> bool:
    """Whether the blade is seen from the side, not from where the cutter stands."""
    return handling.lean in ("away", "toward you")


def _dough(at: Line, slope_rad: float, size: float) -> Item:
    """Draw the dough's skin through the cut, falling to the right by an angle."""
    half = 0.5 * size * np.array([math.cos(slope_rad), math.sin(slope_rad)])
    return Shape((np.array([at - half, at + half]),), ink=Ink(0.045 * size, color=GREY))


def _upright(at: Line, size: float) -> Item:
    """Draw what the handle is tilted from."""
    x, y = at
    dashed = Ink(0.03 * size, color=GREY, dash=(0.09 * size, 0.07 * size), cap="butt")
    return Shape((line(x, y - ABOVE * size, x, y),), ink=dashed)


def _edge(handling: Handling, at: Line, side: int, rises_rad: float, size: float) -> Item:
    """Draw the blade to a side, rising from the bench by an angle; one that is curved is bowed."""
    if handling.form == "scissors":
        return _scissors(at, math.pi / 2 - side * (math.pi / 2 - rises_rad), size)
    way = np.array([side * math.cos(rises_rad), -math.sin(rises_rad)])
    tip, top = at - BELOW * size * way, at + ABOVE * size * way
    share = np.linspace(0, 1, 21)[:, None]
    aside = np.array([way[1], -way[0]]) * -side * (ABOVE + BELOW) * size
    bow = 0.10 if handling.form == "curved" else 0.0
    blade: Line = tip + share * (top - tip) + bow * 4 * share * (1 - share) * aside
    return Shape((blade,), ink=Ink(0.11 * size))


def _scissors(at: Line, rises_rad: float, size: float) -> Item:
    """Draw scissors a little open, their rings at a rise (radians from the right) of the dough."""
    parts: list[Line] = []
    for open_rad in (GAPE_RAD, -GAPE_RAD):
        way = np.array([math.cos(rises_rad + open_rad), -math.sin(rises_rad + open_rad)])
        pivot = at + 0.12 * size * np.array([math.cos(rises_rad), -math.sin(rises_rad)])
        end = pivot + 0.42 * size * way
        x, y = (end + 0.1 * size * way).tolist()
        parts += [np.array([pivot - 0.5 * size * way, end]), ring(x, y, 0.1 * size)]
    return Shape(tuple(parts), ink=Ink(0.07 * size))
