"""Layouts made by hand: a round loaf and straight cuts, each a figure of its own."""

import math
from dataclasses import replace

import numpy as np
import pytest

from scorecraft.cuts import Cut, Layout, Size
from scorecraft.errors import Place
from scorecraft.loaf.bake import Bake
from scorecraft.loaf.dome import make_loaf

ROUND = make_loaf("round", 220, None, 95)


def make_cut(
    *points, depth=3.0, blade=90.0, kind=None, figure=0, family=1, word="slash", part=None
):
    return Cut(
        line=np.array(points, dtype=float),
        word=word,
        part=part or word,
        figure=figure,
        family=family,
        depth_mm=depth,
        blade_rad=math.radians(blade),
        kind=kind or ("expansion" if depth >= 5 else "decorative"),
        place=Place("test.score", family, 1),
    )


def make_layout(*cuts, loaf=ROUND, bake=None, size=None):
    numbered = [
        cut if cut.figure else replace(cut, figure=k) for k, cut in enumerate(cuts, start=1000)
    ]
    return Layout("test", (), loaf, bake or Bake(), tuple(numbered), size=size or Size())


@pytest.fixture
def cut():
    return make_cut


@pytest.fixture
def lay():
    return make_layout


@pytest.fixture
def arc():
    """Points of an arc about a centre, degrees counter-clockwise from +x."""

    def points(radius, start, end, centre=(0.0, 0.0), n=60):
        turn = np.radians(np.linspace(start, end, n))
        return radius * np.column_stack([np.cos(turn), np.sin(turn)]) + centre

    return points
