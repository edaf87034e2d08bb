"""Cuts that are alike, counted together: all the veins of all the leaves are one group."""

from collections.abc import Iterable
from dataclasses import dataclass

import numpy as np

from scorecraft.cuts import Kind, Layout


@dataclass(frozen=True, slots=True)
class Group:
    """The cuts of one statement of the pattern that are the same part of the figure.

    `cuts` are indexes into the layout's cuts. Lengths are true lengths on the dough; `length_mm`
    and `depth_mm` are means, `lengths_mm` and `depths_mm` the least and the most.
    """

    number: int
    name: str
    cuts: tuple[int, ...]
    kind: Kind
    length_mm: float
    lengths_mm: tuple[float, float]
    depth_mm: float
    depths_mm: tuple[float, float]
    blade_rad: float

    @property
    def count(self) -> int:
        """How many cuts there are."""
        return len(self.cuts)


def groups(layout: Layout, order: Iterable[int] = ()) -> tuple[Group, ...]:
    """Group the cuts by statement and part, numbered from 1 as they come.

    They come in an order of indexes of cuts, such as that of the cutting; those that are not in it
    follow in the order of the pattern.
    """
    members: dict[tuple[int, str], list[int]] = {}
    for index in dict.fromkeys([*order, *range(len(layout.cuts))]):
        cut = layout.cuts[index]
        members.setdefault((cut.family, cut.part), []).append(index)
    lengths = layout.lengths_mm
    return tuple(
        _group(layout, number, sorted(indexes), lengths)
        for number, indexes in enumerate(members.values(), start=1)
    )


def _group(layout: Layout, number: int, indexes: list[int], lengths: np.ndarray) -> Group:
    first = layout.cuts[indexes[0]]
    own = lengths[indexes]
    depths = np.array([layout.cuts[index].depth_mm for index in indexes])
    return Group(
        number=number,
        name=first.name,
        cuts=tuple(indexes),
        kind=first.kind,
        length_mm=float(own.mean()),
        lengths_mm=(float(own.min()), float(own.max())),
        depth_mm=float(depths.mean()),
        depths_mm=(float(depths.min()), float(depths.max())),
        blade_rad=first.blade_rad,
    )
