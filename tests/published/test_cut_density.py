"""Cut density against integral geometry, and crack density against its definition.

Cauchy-Crofton: a random line that meets a convex outline of perimeter P crosses curves of total
length L inside it 2 L / P times on average; the mean length of the curves' shadow is 2 L / pi
(Santalo, Integral Geometry and Geometric Probability, 1976, chapter 3; recalled, page not
checked). Crack density: the sum of a^2 / A, a half a crack's length (Bristow 1960; Kachanov,
Appl. Mech. Rev. 45 (1992) 304-335; recalled).
"""

import math

import numpy as np
import pytest

from scorecraft.checks.density import cut_density
from scorecraft.cuts import Cut, Layout
from scorecraft.errors import Place
from scorecraft.loaf.bake import Bake
from scorecraft.loaf.dome import make_loaf

FLAT = make_loaf("round", 800, None, 20)
INSIDE = 60.0


HERE = Place("", 1, 1)


def layout(lines, loaf=FLAT, depth=3.0):
    cuts = [
        Cut(
            np.asarray(line, float), "path", "path", k, 1, depth, 1.5, "decorative", Place("", 1, 1)
        )
        for k, line in enumerate(lines)
    ]
    return Layout("", (), loaf, Bake(), tuple(cuts))


def curves():
    rng = np.random.default_rng(7)
    made = []
    for _ in range(25):
        start, turn = rng.uniform(-25, 25, 2), rng.uniform(0, math.tau)
        bend = rng.uniform(-0.15, 0.15)
        way = turn + bend * np.arange(12)
        steps = 2.0 * np.column_stack([np.cos(way), np.sin(way)])
        made.append(start + np.cumsum(steps, axis=0))
    return made


def test_mean_crossings_of_random_lines():
    lines = curves()
    length = cut_density(layout(lines)).length_mm.sum()
    assert max(np.hypot(*line.T).max() for line in lines) < INSIDE
    start = np.concatenate([line[:-1] for line in lines])
    end = np.concatenate([line[1:] for line in lines])
    counts = []
    for turn in (np.arange(180) + 0.5) * (math.pi / 180):
        normal = np.array([math.cos(turn), math.sin(turn)])
        low, high = np.sort([start @ normal, end @ normal], axis=0)
        offset = np.linspace(-INSIDE, INSIDE, 400)[:, None]
        counts.append(((low < offset) & (offset <= high)).sum(axis=1).mean())
    perimeter = math.tau * INSIDE
    assert np.mean(counts) == pytest.approx(2 * length / perimeter, rel=0.01)


def test_mean_shadow():
    lines = curves()
    length = cut_density(layout(lines)).length_mm.sum()
    sides = np.concatenate([np.diff(line, axis=0) for line in lines])
    turns = (np.arange(720) + 0.5) * (math.pi / 720)
    shadow = np.abs(sides @ np.array([np.cos(turns), np.sin(turns)])).sum(axis=0).mean()
    assert shadow == pytest.approx(2 * length / math.pi, rel=0.005)


@pytest.mark.parametrize("pitch", [5.0, 8.0])
def test_square_lattice_has_two_over_pitch(pitch):
    """Line length per area of a square lattice: 2 / s (textbook geometry)."""
    at = np.arange(-520, 520, pitch) + pitch / 2
    rows = [[(-520, y), (520, y)] for y in at]
    columns = [[(x, -520), (x, 520)] for x in at]
    crown = cut_density(layout(rows + columns)).mm_per_cm2[0]
    assert crown == pytest.approx(np.full(4, 100 * 2 / pitch), rel=0.02)


def test_crack_density_of_one_meridian():
    """A cut over the crown of a half sphere, 60 deg to either side: a = 100 pi / 3 mm."""
    dome = make_loaf("round", 200, None, 100)
    half = 100 * math.pi / 3
    found = cut_density(layout([[(-half, 0), (half, 0)]], dome, depth=5.0))
    assert found.deep_cracks == pytest.approx(half**2 / (2 * math.pi * 100**2), rel=1e-3)
