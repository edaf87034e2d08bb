"""Layouts to draw, made by hand so that the drawings are tested without the language."""

import math

import numpy as np

from scorecraft.cuts import Cut, Layout, Marks
from scorecraft.drawing.bloom.mouths import Mouths
from scorecraft.errors import Place
from scorecraft.loaf.bake import Bake
from scorecraft.loaf.dome import make_loaf

PLACE = Place("made.score", 1, 1)


def turned(line, degrees):
    """Turn a line clockwise about the crown."""
    angle = math.radians(degrees)
    c, s = math.cos(angle), math.sin(angle)
    return np.asarray(line, float) @ np.array([[c, -s], [s, c]])


def cut(
    line, word="slash", part=None, figure=0, family=0, depth=4.0, blade=90.0, kind="decorative"
):
    return Cut(
        np.asarray(line, float),
        word,
        part or word,
        figure,
        family,
        depth,
        math.radians(blade),
        kind,
        PLACE,
    )


def petals(copies=8, start=25, length=50):
    """Copies of a rib, two curved edges and two veins about the crown."""
    t = np.linspace(0, 1, 30)
    edge = np.column_stack([9 * np.sin(math.pi * t), start + length * t])
    vein = [[0, start + 0.4 * length], [6, start + 0.55 * length]]
    parts = [
        ("rib", [[0, start + 2], [0, start + length - 5]], 6.5),
        ("edge", edge, 4.0),
        ("edge", edge * [-1, 1], 4.0),
        ("vein", vein, 2.0),
        ("vein", np.multiply(vein, [-1, 1]), 2.0),
    ]
    return [
        cut(turned(line, 360 * k / copies), "petal", part, k, 0, depth)
        for k in range(copies)
        for part, line, depth in parts
    ]


def make_layout(cuts, loaf=None, title="Petals", notes=("Cut the ribs last.",), marks=()):
    loaf = loaf or make_loaf("round", 220.0, None, 95.0)
    return Layout(title, tuple(notes), loaf, Bake(), tuple(cuts), Marks(tuple(marks)))


def ellipses(widest_mm, stations=41):
    """Make mouths that open as a lone straight slit does: an ellipse with its tips closed."""
    share = (1 - np.cos(np.linspace(0, np.pi, stations))) / 2
    shape = 2 * np.sqrt(share * (1 - share))
    return Mouths(tuple(share for _ in widest_mm), tuple(shape * wide for wide in widest_mm))
