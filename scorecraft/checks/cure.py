"""Cures as data: what to change in the cuts, so that a page or a program can do it at a tap."""

from typing import Literal

from scorecraft.frozen import dataclass

Point = tuple[float, float]
"""A place or a way on the dough sheet, mm."""
End = Literal["first", "last", "both"]
"""Which end of a cut, in the direction of its stroke."""
ChangeKind = Literal[
    "deeper",
    "shallower",
    "steeper",
    "longer",
    "shorter",
    "move",
    "turn",
    "gap",
    "remove",
    "add",
]


@dataclass(frozen=True, slots=True)
class Change:
    """One change of a layout; every kind uses some of the fields, all lengths in mm of the sheet.

    `deeper`, `shallower`: the `cuts` (indexes) are cut to the depth `mm`. `steeper`: their blade is
    held at `rad`. `longer`, `shorter`: each grows or shrinks by `mm` at its end of `ends`, by `mm`
    at each of both. `move`: each goes its way of `points`. `turn`: all turn counter-clockwise by
    `rad` about `points[0]`. `gap`: each keeps a gap of `mm` around its place of `points`.
    `remove`: they are left out. `add`: expansion cuts along `lines`, `mm` deep, the blade at `rad`.
    """

    kind: ChangeKind
    cuts: tuple[int, ...] = ()
    mm: float = 0.0
    rad: float = 0.0
    ends: tuple[End, ...] = ()
    points: tuple[Point, ...] = ()
    lines: tuple[tuple[Point, ...], ...] = ()


@dataclass(frozen=True, slots=True)
class Cure:
    """What would take a finding away, in a baker's words and as changes made one after another.

    The indexes are those of the layout as it was found, in every change.
    """

    told: str
    changes: tuple[Change, ...]
