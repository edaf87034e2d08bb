"""Layouts for plates, made by hand."""

import math

import numpy as np

from scorecraft.cuts import Cut, Layout
from scorecraft.errors import Place
from scorecraft.loaf.bake import Bake
from scorecraft.loaf.dome import make_loaf

PLACE = Place("made.score", 1, 1)


def cut(line, word="slash", part=None, figure=0, depth=2.0, kind="decorative"):
    return Cut(
        np.asarray(line, float), word, part or word, figure, 0, depth, math.pi / 2, kind, PLACE
    )


def circle(radius, x=0.0, y=0.0, word="ring", **more):
    angle = np.linspace(0, 2 * math.pi, 181)
    line = np.column_stack([x + radius * np.cos(angle), y + radius * np.sin(angle)])
    line[-1] = line[0]
    return cut(line, word, **more)


def layout(*cuts, loaf=None):
    loaf = loaf or make_loaf("round", 200.0, None, 80.0)
    return Layout("Made", (), loaf, Bake(), tuple(cuts))
