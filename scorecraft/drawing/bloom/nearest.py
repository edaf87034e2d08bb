"""Which opened cut is nearest to every pixel, and where the pixel lies across it."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np

from scorecraft.arrays import Field, Floats, Ints, Line
from scorecraft.drawing.bloom.lens import Lens

FAR_MM = 99.0


@dataclass(frozen=True, slots=True)
class Place:
    """For every pixel its nearest cut, -1 for none, and where it lies to that, in mm on the dough.

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
    """Straight pieces of opened cuts, (N,) or (N, 2): where they start, their way, what changes.

    `aside` carries a step in the plan to mm on the dough to the left of the stroke.
    """

    start: Line
    way: Line
    half: Floats
    wider: Floats
    left: Line
    cut: Ints
    gone: Floats

    @classmethod
    def of(cls, opened: Sequence[Lens]) -> "Pieces":
        """Take opened cuts apart."""
        gone = [np.cumsum(np.hypot(*np.diff(each.middle, axis=0).T)) for each in opened]
        return cls(
            np.concatenate([each.middle[:-1] for each in opened]),
            np.concatenate([np.diff(each.middle, axis=0) for each in opened]),
            np.concatenate([each.half[:-1] for each in opened]),
            np.concatenate([np.diff(each.half) for each in opened]),
            np.concatenate([(each.left[:-1] + each.left[1:]) / 2 for each in opened]),
            np.repeat([each.cut for each in opened], [len(each) for each in gone]),
            np.concatenate([np.concatenate([[0.0], each[:-1]]) for each in gone]),
        )

    def measured(self, piece: int | Ints, x: Floats, y: Floats) -> tuple[Floats, ...]:
        """Out, half and across of points to their pieces, mm, and the part of these gone by."""
        way_x, way_y = self.way[piece].T
        left_x, left_y = self.left[piece].T
        square = np.maximum(way_x**2 + way_y**2, 1e-12)
        x, y = x - self.start[piece, 0], y - self.start[piece, 1]
        part = x * (way_x / square) + y * (way_y / square)
        part = np.minimum(np.maximum(part, 0.0), 1.0)  # np.clip costs more on small boxes
        x, y = x - part * way_x, y - part * way_y
        across = (x * left_x + y * left_y) / np.maximum(left_x**2 + left_y**2, 1e-6)
        x, y = x - across * left_x, y - across * left_y
        half = self.half[piece] + part * self.wider[piece]
        out = np.sqrt(across * across + x * x + y * y) - half
        return out, half, across, part


def nearest(opened: Sequence[Lens], x: Floats, y: Floats, reach_mm: Floats) -> Place:
    """Find for pixels in rows y and columns x (mm, both rising evenly) the cut nearest by its edge.

    Only pixels count whose distance from the edge is within the cut's `reach_mm`, one an opening.
    """
    shape = (len(y), len(x))
    out, best = np.full(shape, FAR_MM), np.full(shape, -1)
    cut, values = np.full(shape, -1), np.zeros((4, *shape), dtype=np.float32)
    if opened:
        pieces = Pieces.of(opened)
        reach = np.repeat(reach_mm, [len(each.half) - 1 for each in opened])
        for piece, box in _boxes(pieces, x, y, reach):
            near, *_ = pieces.measured(piece, x[box[1]], y[box[0], None])
            better = near < np.minimum(out[box], reach[piece])
            np.copyto(out[box], near, where=better)
            np.copyto(best[box], piece, where=better)
        row, column = np.nonzero(best >= 0)
        found = best[row, column]
        cut[row, column] = pieces.cut[found]
        *across, part = pieces.measured(found, x[column], y[row])
        along = pieces.gone[found] + part * np.hypot(*pieces.way[found].T)
        values[:, row, column] = *across, along
    values[0][best < 0] = FAR_MM
    return Place(cut, *values)


def _boxes(
    pieces: Pieces, x: Floats, y: Floats, reach: Floats
) -> Iterator[tuple[int, tuple[slice, slice]]]:
    """Yield every piece with the rows and columns about it."""
    step, corner = x[1] - x[0], np.array([x[0], y[0]])
    reach = (reach + np.maximum(pieces.half, pieces.half + pieces.wider))[:, None]
    ends = np.stack([pieces.start, pieces.start + pieces.way])
    first = np.ceil((ends.min(axis=0) - reach - corner) / step).astype(int)
    last = np.floor((ends.max(axis=0) + reach - corner) / step).astype(int) + 1
    first, last = np.maximum(first, 0), np.minimum(last, [len(x), len(y)])
    for piece in np.flatnonzero((last > first).all(axis=1)).tolist():
        (left, low), (right, high) = first[piece].tolist(), last[piece].tolist()
        yield piece, (slice(low, high), slice(left, right))
