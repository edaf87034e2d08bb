"""Lines and rays in small pieces: to measure along them, and to add up over them."""

import numpy as np

from scorecraft.arrays import Floats, Ints

PIECE_MM = 6.0
"""A line on the dough is measured in pieces no longer than this, each twice."""


def gauss(count: int) -> tuple[Floats, Floats]:
    """Gauss-Legendre points and weights on [0, 1].

    By the eigenvalues of the recurrence (Golub & Welsch, Math. Comp. 23 (1969) 221-230; recalled):
    importing numpy's own takes longer than all that is added up with them.
    """
    order = np.arange(1.0, count)
    nodes, vectors = np.linalg.eigh(np.diag(order / np.sqrt(4 * order**2 - 1), -1))
    return np.asarray((nodes + 1) / 2), np.asarray(vectors[0] ** 2)


def ratio(new: Floats, old: Floats) -> Floats:
    """Divide lengths, 1 where the old one is nothing (at the crown)."""
    small = old < 1e-9
    return np.asarray(np.where(small, 1.0, new / np.where(small, 1.0, old)))


def bilinear(table: Floats, row: Floats, column: Floats) -> Floats:
    """Look up a table between its rows and columns by straight lines; places of any shape."""
    i = np.minimum(row.astype(np.intp), table.shape[0] - 2)
    j = np.minimum(column.astype(np.intp), table.shape[1] - 2)
    a, b = row - i, column - j
    near = table[i, j] * (1 - b) + table[i, j + 1] * b
    far = table[i + 1, j] * (1 - b) + table[i + 1, j + 1] * b
    return np.asarray(near + a * (far - near))


def distance(a: Floats, b: Floats) -> Floats:
    """Distances (N,) between points, row by row."""
    return np.asarray(np.sqrt(((a - b) ** 2).sum(axis=-1)))


def halved(start: Floats, end: Floats) -> tuple[Floats, Ints, Ints]:
    """Cut segments into pieces and halve them: nodes, first node and segment of each piece."""
    side = end - start
    pieces = np.maximum(1, np.ceil(np.hypot(*side.T) / PIECE_MM)).astype(np.intp)
    counts = 2 * pieces + 1
    segment = np.repeat(np.arange(len(start)), counts)
    begin = np.cumsum(counts) - counts
    number = np.arange(len(segment)) - begin[segment]
    nodes = start[segment] + (number / (2.0 * pieces[segment]))[:, None] * side[segment]
    first = np.flatnonzero((number % 2 == 0) & (number < counts[segment] - 1))
    return nodes, first, segment[first]
