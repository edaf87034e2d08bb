"""Factors give the answers of numpy's own solver, and keep no second copy of a real matrix."""

import numpy as np
import pytest

from scorecraft.errors import ScorecraftError
from scorecraft.opening.factor import factors


@pytest.mark.parametrize("size", [1, 7, 128, 297])
@pytest.mark.parametrize("imaginary", [0.0, 1j])
def test_answers(size, imaginary):
    random = np.random.default_rng(size)
    half = random.standard_normal((size, size)) + imaginary * random.standard_normal((size, size))
    matrix = half @ half.conj().T + size * np.eye(size)
    sides = random.standard_normal((size, 3)) + imaginary
    answers = factors(matrix.copy()).solve(sides)
    np.testing.assert_allclose(answers, np.linalg.solve(matrix, sides), rtol=1e-9, atol=1e-12)


def test_a_real_matrix_is_factored_in_its_own_place():
    matrix = np.diag([4.0, 9.0, 16.0])
    assert np.shares_memory(factors(matrix).lower, matrix)


def test_matrix_that_is_not_positive_is_refused():
    with pytest.raises(ScorecraftError, match="close together"):
        factors(np.diag([1.0, -1.0]))
