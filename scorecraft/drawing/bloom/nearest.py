"""Which opened cut is nearest to every pixel, and where the pixel lies across it."""

import math
from collections.abc import Sequence
from itertools import pairwise

import numpy as np

from scorecraft.arrays import Field, Flags, Floats, Ints
from scorecraft.drawing.bloom.lens import Lens
from scorecraft.frozen import dataclass

FAR_MM = 99.0
BLOCK = 5
"""Squares of so many pixels a side share the pieces that may be nearest in them."""
TOGETHER = 600
"""So many of them are looked through at a time: that much stays close to the processor."""


@dataclass(frozen=True, slots=True)
class Place:
    """For pixels (N,) their nearest cut, -1 for none, and where they lie to that, mm on the dough.

    `out` is the distance beyond the edge of the mouth (less than 0 inside), `half` half the width
    there, `across` the way to the left of the stroke, `along` the way along it.
    """

    cut: Ints
    out: Field
    half: Field
    across: Field
    along: Field


@dataclass(frozen=True, slots=True)
class Pieces:
    """Straight pieces of opened cuts, (N,) or (2, N): where they start, their way, what changes.

    `left` is where one mm on the dough to the left of the stroke falls in plan.
    """

    start: Field
    way: Field
    half: Field
    wider: Field
    left: Field
    cut: Ints
    gone: Field

    @classmethod
    def of(cls, opened: Sequence[Lens]) -> "Pieces":
        """Take opened cuts apart."""
        gone = [np.cumsum(np.hypot(*np.diff(each.middle, axis=0).T)) for each in opened]
        start, way, half, wider, left, before = (
            np.concatenate(each).T.astype(np.float32)
            for each in (
                [each.middle[:-1] for each in opened],
                [np.diff(each.middle, axis=0) for each in opened],
                [each.half[:-1] for each in opened],
                [np.diff(each.half) for each in opened],
                [(each.left[:-1] + each.left[1:]) / 2 for each in opened],
                [np.append(0.0, each[:-1]) for each in gone],
            )
        )
        cut = np.repeat([each.cut for each in opened], [len(each) for each in gone])
        return cls(start, way, half, wider, left, cut, before)

    def measured(self, piece: Ints, x: Field, y: Field) -> tuple[Field, ...]:
        """Out, half and across of points to their pieces, mm, and the part of these gone by."""
        way, left = self.way, self.left
        ahead = way / np.maximum((way * way).sum(axis=0), np.float32(1e-12))
        aside = left / np.maximum((left * left).sum(axis=0), np.float32(1e-6))
        x, y = x - self.start[0][piece], y - self.start[1][piece]
        part = x * ahead[0][piece]
        part += y * ahead[1][piece]
        np.clip(part, 0, 1, out=part)
        x, y = x - part * way[0][piece], y - part * way[1][piece]
        across = x * aside[0][piece]
        across += y * aside[1][piece]
        x -= across * left[0][piece]
        y -= across * left[1][piece]
        half = self.half[piece] + part * self.wider[piece]
        out = across * across
        for each in (x, y):
            each *= each
            out += each
        return np.sqrt(out, out=out) - half, half, across, part


def nearest(opened: Sequence[Lens], x: Floats, y: Floats, reach_mm: Floats, covers: Flags) -> Place:
    """Find for pixels in rows y and columns x (mm, both rising evenly) the cut nearest by its edge.

    Only pixels count whose distance from the edge is within the cut's `reach_mm`, one an opening.
    Those that the loaf `covers` (rows, columns) are told, row by row.
    """
    row, column = np.nonzero(covers)
    cut, values = np.full(len(row), -1), np.zeros((4, len(row)), dtype=np.float32)
    values[0] = FAR_MM
    if opened:
        pieces = Pieces.of(opened)
        reach = np.repeat(reach_mm, [len(each.half) - 1 for each in opened]).astype(np.float32)
        right, up = (each.astype(np.float32) for each in (x, y))
        best = _best(pieces, right, up, reach)[covers]
        where = np.flatnonzero(best >= 0)
        found = best[where]
        cut[where] = pieces.cut[found]
        *across, part = pieces.measured(found, right[column[where]], up[row[where]])
        along = pieces.gone[found] + part * np.hypot(*pieces.way)[found]
        values[:, where] = *across, along
    return Place(cut, *values)


def _best(pieces: Pieces, x: Field, y: Field, reach: Field) -> Ints:
    """Find the piece nearest to every pixel, -1 where none is within its reach."""
    step = float(x[-1] - x[0]) / (len(x) - 1)
    columns, rows = x[::BLOCK], y[::BLOCK]
    piece, row, column = _candidates(pieces, columns, rows, reach, step)
    down, right = np.float32(step) * np.indices((BLOCK, BLOCK), np.float32).reshape(2, -1, 1)
    best = np.full((BLOCK, BLOCK, len(rows), len(columns)), -1)
    block = row * len(columns) + column
    first = np.flatnonzero(np.diff(block, prepend=-1))
    for start, end in pairwise([*first[::TOGETHER], len(block)]):
        some = slice(start, end)
        near, *_ = pieces.measured(
            piece[some], columns[column[some]] + right, rows[row[some]] + down
        )
        np.copyto(near, FAR_MM, where=near >= reach[piece[some]])
        starts = np.flatnonzero(np.diff(block[some], prepend=-1))
        least = np.minimum.reduceat(near, starts, axis=1)
        least = np.repeat(least, np.diff(starts, append=end - start), axis=1)
        chosen = np.flatnonzero((near == least) & (near < FAR_MM))
        pixel, pair = np.divmod(chosen, end - start)
        best.reshape(BLOCK**2, -1)[pixel, block[some][pair]] = piece[some][pair]
    best = best.transpose(2, 0, 3, 1)
    return best.reshape(len(rows) * BLOCK, -1)[: len(y), : len(x)]


def _candidates(
    pieces: Pieces, columns: Field, rows: Field, reach: Field, step: float
) -> tuple[Ints, Ints, Ints]:
    """Give pieces that may be nearest within a block of pixels, with its row and its column.

    From the middle of a block its pixels are no farther than `slack` on the dough of a piece.
    """
    half = step * (BLOCK - 1) / 2
    slack = np.float32(math.sqrt(2) * half) / np.maximum(np.hypot(*pieces.left), np.float32(1e-3))
    slack += np.abs(pieces.wider)
    ends = np.stack([pieces.start, pieces.start + pieces.way])
    far = reach + np.maximum(pieces.half, pieces.half + pieces.wider) + half
    corner, size = np.array([[columns[0]], [rows[0]]]) + half, BLOCK * step
    first = np.ceil((ends.min(axis=0) - far - corner) / size).astype(int)
    last = np.floor((ends.max(axis=0) + far - corner) / size).astype(int) + 1
    first, last = np.maximum(first, 0), np.minimum(last, [[len(columns)], [len(rows)]])
    wide, high = np.maximum(last - first, 0)
    piece, row = _counted(np.arange(len(reach)), first[1], high)
    run, column = _counted(np.arange(len(piece)), first[0][piece], wide[piece])
    piece, row = piece[run], row[run]
    near, *_ = pieces.measured(
        piece, columns[column] + np.float32(half), rows[row] + np.float32(half)
    )
    block = row * len(columns) + column
    least = np.full(len(rows) * len(columns), FAR_MM, dtype=np.float32)
    np.minimum.at(least, block, near + slack[piece])
    chosen = np.flatnonzero(near - slack[piece] < np.minimum(reach[piece], least[block]))
    chosen = chosen[np.argsort(block[chosen], kind="stable")]
    return piece[chosen], row[chosen], column[chosen]


def _counted(which: Ints, start: Ints, count: Ints) -> tuple[Ints, Ints]:
    """Repeat each number as often as it counts, and count from its start."""
    times = count[which]
    before = np.cumsum(times) - times - start[which]
    return np.repeat(which, times), np.arange(times.sum()) - np.repeat(before, times)
