"""Factors of a dense matrix that can be used again and again: contact and further loads need them.

The only file that knows scipy's linear algebra, which is loaded when something is to be solved.
"""

from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

from scorecraft.errors import ScorecraftError

Matrix = NDArray[Any]
"""Real or complex, (n, k): numpy has no name for either, hence the Any."""


@dataclass(frozen=True, slots=True)
class Factors:
    """A matrix (n, n) split as L L*, L in its lower half; L* is L conjugated and transposed."""

    lower: Matrix

    def solve(self, sides: Matrix) -> Matrix:
        """Return the answers (n, k) to right-hand sides (n, k)."""
        from scipy.linalg import cho_solve

        answers: Matrix = cho_solve((self.lower, True), sides, check_finite=False)
        return answers


def factors(matrix: Matrix) -> Factors:
    """Factor a symmetric (or Hermitian) positive definite matrix (n, n) by LAPACK, in its place.

    Raises ScorecraftError where it is not positive: cuts without anything between them.
    """
    from scipy.linalg import cho_factor

    # LAPACK counts by columns: seen so, a matrix stored by rows is its own conjugate
    columns = matrix.conj().T if np.iscomplexobj(matrix) else matrix.T
    try:
        lower, _ = cho_factor(columns, lower=True, overwrite_a=True, check_finite=False)
    except np.linalg.LinAlgError as error:
        raise ScorecraftError(
            "some cuts lie so close together that their openings cannot be told apart",
            hint="remove cuts drawn twice, or use longer panels",
        ) from error
    return Factors(lower)
