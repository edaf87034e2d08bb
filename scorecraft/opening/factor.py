"""Factors of a dense matrix that can be used again and again.

numpy solves but keeps no factors; contact and further loads need them.
"""

from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

from scorecraft.errors import ScorecraftError

BLOCK = 128
Matrix = NDArray[Any]
"""Real or complex, (n, k)."""


@dataclass(frozen=True, slots=True)
class Factors:
    """A matrix (n, n) split as L L*: L in its lower half, and the inverses of L's diagonal blocks.

    L* is the conjugate of L transposed.
    """

    lower: Matrix
    diagonal: tuple[Matrix, ...]

    def solve(self, sides: Matrix) -> Matrix:
        """Return the answers (n, k) to right-hand sides (n, k)."""
        return _backward(self, _forward(self, sides))


def factors(matrix: Matrix) -> Factors:
    """Factor a symmetric (or Hermitian) positive definite matrix (n, n) in its own place.

    Cholesky's elimination by blocks of columns (Golub & Van Loan, Matrix Computations, sec. 4.2;
    recalled, page not checked). Raises ScorecraftError where it is not positive: cuts without
    anything between them.
    """
    try:
        return _factored(matrix)
    except np.linalg.LinAlgError as error:
        raise ScorecraftError(
            "some cuts lie so close together that their openings cannot be told apart",
            hint="remove cuts drawn twice, or use longer panels",
        ) from error


def _factored(matrix: Matrix) -> Factors:
    diagonal: list[Matrix] = []
    for low, high in _blocks(len(matrix)):
        if low:
            matrix[low:, low:high] -= matrix[low:, :low] @ matrix[low:high, :low].conj().T
        diagonal.append(np.linalg.inv(np.linalg.cholesky(matrix[low:high, low:high])))
        if high < len(matrix):
            matrix[high:, low:high] = matrix[high:, low:high] @ diagonal[-1].conj().T
    return Factors(matrix, tuple(diagonal))


def _blocks(size: int) -> list[tuple[int, int]]:
    """Ranges that cover 0 ... size."""
    return [(low, min(low + BLOCK, size)) for low in range(0, size, BLOCK)]


def _forward(factored: Factors, sides: Matrix) -> Matrix:
    """Solve L y = sides."""
    y = np.array(sides, dtype=factored.lower.dtype)
    for (low, high), inverse in zip(_blocks(len(y)), factored.diagonal, strict=True):
        if low:
            y[low:high] -= factored.lower[low:high, :low] @ y[:low]
        y[low:high] = inverse @ y[low:high]
    return y


def _backward(factored: Factors, y: Matrix) -> Matrix:
    """Solve L* x = y in the place of y."""
    blocks = _blocks(len(y))
    for (low, high), inverse in zip(reversed(blocks), reversed(factored.diagonal), strict=True):
        if high < len(y):
            y[low:high] -= factored.lower[high:, low:high].conj().T @ y[high:]
        y[low:high] = inverse.conj().T @ y[low:high]
    return y
