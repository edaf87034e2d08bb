"""Conjugate gradients give the answers of the whole matrix, for any forces and any start."""

import numpy as np
import pytest
from support.whole_matrix import whole

from scorecraft.opening.elastic import elastic
from scorecraft.opening.held import Rest, held
from scorecraft.opening.ligament import springs
from scorecraft.opening.load import forces
from scorecraft.opening.panels import panels
from scorecraft.opening.stretch import Stretch

LINES = [np.array([[-40.0, y], [40.0, y + 3]]) for y in (0.0, 8.0, 20.0)]
PARTS = panels(LINES, 1.0)
AREA = 3e4
STRETCH = Stretch(0.1)


def matrices(depth, rest):
    around = Rest(forces(PARTS), np.linalg.inv(STRETCH.compliance) / AREA) if rest else None
    ours = held(elastic(PARTS, STRETCH), springs(np.full(len(PARTS), depth), 12.0), around)
    theirs = whole(PARTS, STRETCH) + np.diag(ours.stiff)
    if rest:
        theirs += around.unit @ around.stiffness @ around.unit.T
    return ours, theirs


@pytest.mark.parametrize("rest", [False, True])
@pytest.mark.parametrize("depth", [2.0, 9.0, 12.0])
def test_answers(depth, rest):
    ours, theirs = matrices(depth, rest)
    assert (ours.whole is None) == (depth < 12)
    random = np.random.default_rng(0)
    sides, start = random.standard_normal((2 * len(PARTS), 3)), random.standard_normal(len(theirs))
    expected = np.linalg.solve(theirs, sides)
    scale = np.abs(expected).max()
    np.testing.assert_allclose(ours.times(start), theirs @ start, atol=1e-10)
    np.testing.assert_allclose(ours.solve(sides[:, 0]), expected[:, 0], atol=3e-5 * scale)
    again = ours.solve(sides[:, 0], None, start)
    np.testing.assert_allclose(again, expected[:, 0], atol=3e-5 * scale)
    np.testing.assert_allclose(ours.each(sides, 1e-7), expected, atol=1e-6 * scale)


def test_nothing_is_where_it_is_closed():
    ours, theirs = matrices(6.0, rest=True)
    closed, side = np.array([3, 4, 50]), np.ones(len(theirs))
    free = np.setdiff1d(np.arange(len(theirs)), closed)
    jumps = ours.solve(side, closed)
    assert (jumps[closed] == 0).all()
    expected = np.linalg.solve(theirs[np.ix_(free, free)], side[free])
    np.testing.assert_allclose(jumps[free], expected, atol=3e-5 * np.abs(expected).max())


def test_no_force_moves_nothing():
    ours, _ = matrices(6.0, rest=False)
    assert (ours.solve(np.zeros(2 * len(PARTS))) == 0).all()
