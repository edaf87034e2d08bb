"""Cuts that are alike, counted together: all the veins of all the leaves are one group."""

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from itertools import groupby

import numpy as np

from scorecraft.cuts import Cut, Kind, Layout
from scorecraft.errors import Place
from scorecraft.frozen import dataclass
from scorecraft.language.words import WORDS


@dataclass(frozen=True, slots=True)
class Group:
    """The cuts of one statement of the pattern that are the same part of the figure.

    `number` is what stands beside them on every print and screen. `key` says which they are and
    stays the same when knobs are turned or lines come and go: their `name`, such as `leaf vein`;
    where several statements make that name also which of them, `leaf vein 2 of 3`, in the order
    of the file. `cuts` are indexes into the layout's cuts. Lengths are true lengths on the dough;
    `length_mm` and `depth_mm` are means, `lengths_mm` and `depths_mm` the least and the most.
    """

    number: int
    name: str
    key: str
    place: Place
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


Alike = tuple[int, str]
"""What the cuts of a group have in common: their statement and their name."""


def groups(layout: Layout, order: Iterable[int] = ()) -> tuple[Group, ...]:
    """Group the cuts by statement and name, numbered from 1 as they come.

    They come in an order of indexes of cuts, such as that of the cutting; those that are not in it
    follow in the order of the pattern.
    """
    members: dict[Alike, list[int]] = {}
    for index in dict.fromkeys([*order, *range(len(layout.cuts))]):
        cut = layout.cuts[index]
        members.setdefault((cut.family, cut.name), []).append(index)
    lengths, keys = layout.lengths_mm, _keys(layout, members)
    return tuple(
        _group(layout, number, keys[alike], sorted(indexes), lengths)
        for number, (alike, indexes) in enumerate(members.items(), start=1)
    )


def _keys(layout: Layout, members: Mapping[Alike, Sequence[int]]) -> dict[Alike, str]:
    """Give each group its name, counted in the order of the file where several have it.

    The count tells its whole as well (`1 of 2`): with a statement more or less no old key stands
    for another cut.
    """
    named: dict[str, list[Alike]] = defaultdict(list)
    for alike in sorted(members, key=lambda each: _place(layout, each, members)):
        named[alike[1]].append(alike)
    return {
        alike: name if len(same) == 1 else f"{name} {count} of {len(same)}"
        for name, same in named.items()
        for count, alike in enumerate(same, start=1)
    }


def _place(
    layout: Layout, alike: Alike, members: Mapping[Alike, Sequence[int]]
) -> tuple[int, int, int]:
    """Tell where in the file a group's statement stands."""
    place = layout.cuts[members[alike][0]].place
    return place.line, place.column, alike[0]


def _group(layout: Layout, number: int, key: str, indexes: list[int], lengths: np.ndarray) -> Group:
    first = layout.cuts[indexes[0]]
    own = lengths[indexes]
    depths = np.array([layout.cuts[index].depth_mm for index in indexes])
    return Group(
        number=number,
        name=first.name,
        key=key,
        place=first.place,
        cuts=tuple(indexes),
        kind=first.kind,
        length_mm=float(own.mean()),
        lengths_mm=(float(own.min()), float(own.max())),
        depth_mm=float(depths.mean()),
        depths_mm=(float(depths.min()), float(depths.max())),
        blade_rad=first.blade_rad,
    )


def called(cut: Cut, count: int) -> str:
    """Call cuts by name, in the plural for more than one."""
    name = cut.name.replace("_", " ")
    word = WORDS.get(cut.word)
    if word is not None and word.group == "texture" and not name.endswith("s"):
        name += " line"
    if count == 1 or name.endswith("s"):
        return name
    return name + ("es" if name.endswith(("ch", "sh", "x", "z")) else "s")


def spans(numbers: Iterable[int]) -> str:
    """Write numbers rising, those in a row by the first and the last: `1–3, 5`."""
    runs = groupby(enumerate(sorted(numbers)), key=lambda counted: counted[1] - counted[0])
    parts = [[number for _, number in run] for _, run in runs]
    told = [f"{part[0]}–{part[-1]}" if len(part) > 2 else ", ".join(map(str, part))
            for part in parts]  # fmt: skip
    return ", ".join(told)


def numbers_of(told: Iterable[Group]) -> dict[int, int]:
    """Give the number of every cut by its index."""
    return {cut: group.number for group in told for cut in group.cuts}
