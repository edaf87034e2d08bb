"""The blade in the dough, seen along the stroke by who pulls it: angle and depth at full size."""

import math

import numpy as np

from scorecraft.arrays import Line
from scorecraft.drawing.inks import HAIR_INK
from scorecraft.drawing.paper.block import Block
from scorecraft.drawing.picture import Ink, Item, Label, Layer, Shape, box, line
from scorecraft.drawing.practise.exercise import Held

WIDE_MM = 40.0
BELOW_MM = 5.0
EDGE_MM = 10.0
"""The cut begins at least so far from the edge of the section."""
LEAST_ROOM_MM = 4.0
"""The words of a lower depth stand beneath it."""
MOST_UNDER_MM, WIDE_SLIT_MM = 20.0, 17.0
"""How far a slit can run under the skin here, and from where on words have room below it."""
HANDLE_MM = 20.0
"""How long handle and blade are drawn above the dough."""
ARC_MM = 7.5
LETTERS_MM = 3.4
DOUGH = "#e9e9e9"
EDGE = Ink(0.35, cap="butt")
STEEL = Ink(1.0, cap="butt")
HANDLE = Ink(2.4, color="#8c8c8c")
SLIT = Ink(0.7, cap="butt")


def blade(held: Held) -> Block:
    """Draw a section of dough with the blade in it, as deep as the middle of the stroke.

    A slit that runs too far under the skin for the section is drawn as far as that goes.
    """
    depth = held.depths_mm[1]
    side = 1.0 if held.right else -1.0
    way = np.array([side * math.cos(held.blade_rad), -math.sin(held.blade_rad)])
    aside = abs(float(way[0]))
    sunk = min(depth / math.sin(held.blade_rad), MOST_UNDER_MM / max(aside, 1e-9))
    begin = max(EDGE_MM, EDGE_MM / 3 + aside * sunk)
    high = HANDLE_MM * math.sin(held.blade_rad) + 2.0
    foot = np.array([begin if held.right else WIDE_MM - begin, high])
    out = way * min(HANDLE_MM, (WIDE_MM - begin - 1.2) / max(aside, 1e-9))
    dough = box(0, high, WIDE_MM, depth + BELOW_MM)
    items: tuple[Item, ...] = (
        Shape((dough,), closed=True, fill=DOUGH),
        Shape((line(0, high, WIDE_MM, high),), ink=EDGE),
        Shape((np.array([foot + 0.45 * out, foot + out]),), ink=HANDLE),
        Shape((np.array([foot, foot + 0.55 * out]),), ink=STEEL),
        Shape((np.array([foot - way * sunk, foot]),), ink=SLIT),
        *_depth(foot, foot - way * sunk, side, depth),
        *_angle(held, foot, side),
    )
    return Block((Layer("blade", items),), high + depth + BELOW_MM)


def _depth(foot: Line, tip: Line, side: float, depth: float) -> list[Item]:
    """Measure the depth below the handle; its words stand under a wide slit, else beyond it."""
    high, low = float(foot[1]), float(foot[1]) + depth
    x = float(foot[0]) + side * 3.0
    ends = (line(x - 1.0, high, x + 1.0, high), line(x - 1.0, low, x + 1.0, low))
    wide = abs(float(tip[0] - foot[0])) > WIDE_SLIT_MM
    out = -side if wide else side
    y = low + 2.2 if depth < LEAST_ROOM_MM else low - 2.2 if wide else high + depth / 2
    text = f"{round(2 * depth) / 2:g} mm"
    dots = (line(x, low, float(tip[0]), low),) if low - tip[1] < 0.01 else ()
    return [
        Shape((line(x, high, x, low), *ends), ink=Ink(0.25, cap="butt")),
        Shape(dots, ink=Ink(0.18, dash=(0.6, 0.6), cap="butt")),
        Label(text, (x + out * 1.4, y), LETTERS_MM, "start" if out > 0 else "end", "middle"),
    ]


def _angle(held: Held, foot: Line, side: float) -> list[Item]:
    """Draw the angle between the blade and the dough, with its degrees."""
    angles = np.linspace(0.0, held.blade_rad, 24)
    bow = foot + ARC_MM * np.column_stack([side * np.cos(angles), -np.sin(angles)])
    half = held.blade_rad / 2
    text = f"{math.degrees(held.blade_rad):.0f}°"
    out = ARC_MM + 1.4
    x, y = (foot + out * np.array([side * math.cos(half), -math.sin(half)])).tolist()
    return [
        Shape((bow,), ink=HAIR_INK),
        Label(text, (x, y), LETTERS_MM, "start" if side > 0 else "end", "middle"),
    ]
