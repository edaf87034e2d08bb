"""Strokes that meet end to end become one, straightest first."""

from itertools import pairwise
from math import pi

import numpy as np
import pytest
import shapely

from scorecraft.textures.chain import chain


def line(*points):
    return np.array(points, dtype=float)


def test_pieces_of_a_straight_line_become_one():
    pieces = [line((10, 0), (20, 0)), line((10, 0), (0, 0)), line((20, 0), (35, 0))]
    (joined,) = chain(pieces, sharpest=0.1)
    assert sorted(joined[:, 0]) == [0, 10, 20, 35]


def test_at_a_crossing_the_straight_pairs_win():
    arms = [line((0, 0), end) for end in ((10, 0), (0, 10), (-10, 1), (1, -10))]
    strokes = chain(arms, sharpest=pi / 2)
    assert len(strokes) == 2
    for stroke in strokes:
        assert np.hypot(*(stroke[0] - stroke[-1])) > 19


def test_a_turn_sharper_than_allowed_stays_apart():
    corner = [line((0, 0), (10, 0)), line((10, 0), (10, 10))]
    assert len(chain(corner, sharpest=pi / 2)) == 1
    assert len(chain(corner, sharpest=pi / 3)) == 2


def test_a_loop_is_closed():
    square = [(0, 0), (10, 0), (10, 10), (0, 10), (0, 0)]
    sides = [line(a, b) for a, b in pairwise(square)]
    (loop,) = chain(sides, sharpest=pi / 2)
    assert np.array_equal(loop[0], loop[-1])
    assert len(loop) == 5


def test_nothing_is_lost():
    random = np.random.default_rng(4)
    grid = random.integers(0, 4, (60, 2, 2)) * 10.0
    pieces = [pair for pair in grid if not np.array_equal(pair[0], pair[1])]
    strokes = chain(pieces, sharpest=2.0)
    before = sum(shapely.LineString(piece).length for piece in pieces)
    after = sum(shapely.LineString(stroke).length for stroke in strokes)
    assert after == pytest.approx(before)
    assert len(strokes) < len(pieces)


def test_a_closed_piece_alone_stays_as_it_is():
    ring = line((0, 0), (10, 0), (0, 10), (0, 0))
    (same,) = chain([ring], sharpest=pi)
    assert np.array_equal(same, ring)


def test_no_strokes_no_chains():
    assert chain([], sharpest=1.0) == []
