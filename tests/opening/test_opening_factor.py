"""Block factors give the answers of the library's own solver."""

import numpy as np
import pytest

from scorecraft.errors import ScorecraftError
from scorecraft.opening.factor import BLOCK, factors


@pytest.mark.parametrize("size", [1, 7, BLOCK, BLOCK + 1, 2 * BLOCK + 40])
@pytest.mark.parametrize("imaginary", [0.0, 1j])
def test_answers(size, imaginary):
    random = np.random.default_rng(size)
    half = random.standard_normal((size, size)) + imaginary * random.standard_normal((size, size))
    matrix = half @ half.conj().T + size * np.eye(size)
    sides = random.standard_normal((size, 3)) + imaginary
    answers = factors(matrix.copy()).solve(sides)
    np.testing.assert_allclose(answers, np.linalg.solve(matrix, sides), rtol=1e-9, atol=1e-12)


def test_matrix_that_is_not_positive_is_refused():
    with pytest.raises(ScorecraftError, match="close together"):
        factors(np.diag([1.0, -1.0]))
