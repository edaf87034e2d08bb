"""Layouts for the bench, made by hand so that it is tested without the language."""

import math

import numpy as np

from scorecraft.baking import USUAL_C
from scorecraft.cuts import Bench, Cut, Layout, Marks
from scorecraft.errors import Place
from scorecraft.loaf.bake import Bake
from scorecraft.loaf.dome import make_loaf
from scorecraft.loaf.dough import Dough

PLACE = Place("made.score", 1, 1)


def turned(line, degrees):
    """Turn a line clockwise about the crown."""
    angle = math.radians(degrees)
    c, s = math.cos(angle), math.sin(angle)
    return np.asarray(line, float) @ np.array([[c, -s], [s, c]])


def cut(line, word="slash", part=None, figure=0, family=0, depth=3.0, blade=90.0, kind=None):
    kind = kind or ("expansion" if depth >= 5 else "decorative")
    line = np.asarray(line, float)
    return Cut(line, word, part or word, figure, family, depth, math.radians(blade), kind, PLACE)


def rays(count, *, first=0, depth=8.0, family=0, start=25, end=75):
    """Radial cuts about the crown, evenly spaced."""
    line = [[0, start], [0, end]]
    return [
        cut(turned(line, first + 360 * k / count), "ray", figure=100 * family + k, family=family,
            depth=depth)
        for k in range(count)
    ]  # fmt: skip


def sprigs(count, *, family=1, first=0):
    """Copies of a light stem with four veins about the crown."""
    veins = [[[0, y], [side * 8, y + 10]] for y in (35, 50) for side in (-1, 1)]
    return [
        cut(turned(line, first + 360 * k / count), "sprig", part, 100 * family + k, family, depth)
        for k in range(count)
        for part, line, depth in [
            ("stem", [[0, 25], [0, 75]], 3.0), *(("vein", vein, 2.0) for vein in veins)
        ]
    ]  # fmt: skip


def layout(cuts, loaf=None, marks=(), temperature_c=USUAL_C.value, **bench):
    loaf = loaf or make_loaf("round", 220.0, None, 95.0)
    hand, dough = Bench(**bench), Dough(temperature_c=temperature_c)
    return Layout(
        "Made", (), loaf, Bake(), tuple(cuts), Marks(tuple(marks)), bench=hand, dough=dough
    )
