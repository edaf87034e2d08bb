"""Contact: no overlap, no pull on closed panels, and the answer is the one of least energy."""

import numpy as np
import pytest
from scipy.optimize import nnls
from support.whole_matrix import whole

from scorecraft.errors import ScorecraftError
from scorecraft.opening import contact
from scorecraft.opening.contact import settle
from scorecraft.opening.elastic import elastic
from scorecraft.opening.held import held
from scorecraft.opening.ligament import springs
from scorecraft.opening.load import forces
from scorecraft.opening.panels import panels


def tangle(count, seed):
    random = np.random.default_rng(seed)
    lines = []
    for angle in random.uniform(0, np.pi, count):
        step = 30 * np.array([np.cos(angle), np.sin(angle)])
        middle = random.uniform(-40, 40, 2)
        lines.append(np.array([middle - step, middle + step]))
    return panels(lines, 5.0)


def matrix_of(parts, depth):
    return held(elastic(parts), springs(np.full(len(parts), depth), 12.0), None)


@pytest.mark.parametrize("seed", range(6))
@pytest.mark.parametrize("depth", [6.0, 11.0])
def test_least_energy_without_overlap(seed, depth):
    """Against non-negative least squares (Lawson & Hanson), which solves the same problem:
    least of b M b / 2 - f b over gaps >= 0."""
    parts = tangle(7, seed)
    equations = matrix_of(parts, depth)
    side = forces(parts) @ [0.1, -0.08, 0.05]
    done = settle(equations, side)
    count, matrix = len(parts), whole(parts) + np.diag(equations.stiff)
    gap_gap, gap_slide = matrix[:count, :count], matrix[:count, count:]
    slide = matrix[count:, count:]
    condensed = gap_gap - gap_slide @ np.linalg.solve(slide, gap_slide.T)
    push = side[:count] - gap_slide @ np.linalg.solve(slide, side[count:])
    lower = np.linalg.cholesky((condensed + condensed.T) / 2)
    best, _ = nnls(lower.T, np.linalg.solve(lower, push), maxiter=5000)
    assert 0 < len(done.closed) < count
    np.testing.assert_allclose(done.jumps[:count], best, atol=2e-5 * best.max())


def test_one_panel_at_a_time_ends_at_the_same_answer(monkeypatch):
    """The cautious rounds alone (what a cycle leads to) agree with the quick ones."""
    parts = tangle(6, 3)
    matrix = matrix_of(parts, 9.0)
    side = forces(parts) @ [0.1, -0.08, 0.05]
    quick = settle(matrix, side)
    every = contact._wrong
    monkeypatch.setattr(contact, "_wrong", lambda *args: every(*args)[-1:])
    slow = settle(matrix, side)
    np.testing.assert_array_equal(np.sort(slow.closed), quick.closed)
    np.testing.assert_allclose(slow.jumps, quick.jumps, atol=2e-5 * quick.jumps.max())


def test_rounds_that_do_not_end_are_an_error(monkeypatch):
    parts = tangle(3, 1)
    side = forces(parts) @ [0.1, -0.08, 0.05]
    monkeypatch.setattr(contact, "_wrong", lambda *args: np.array([0]))
    with pytest.raises(ScorecraftError, match="cannot decide which cuts"):
        settle(matrix_of(parts, 9.0), side)
