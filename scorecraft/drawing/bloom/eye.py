"""Where a loaf is looked at from, and how that view is laid on paper.

The view is orthographic (Snyder, Map Projections, 1987, chapter 20): a point of the dome falls on
the paper along the line of sight. The light always comes from the upper left of the picture.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import cached_property
from typing import TypeAlias

import numpy as np
import shapely

import scorecraft.drawing.bloom.telling as telling
from scorecraft.arrays import Flags, Floats, Ints, Line, Shapes
from scorecraft.errors import UsageError
from scorecraft.loaf.dome import Loaf

LOW_LOOK_DEG = 20.0
"""Front and side views look down on the bench so much."""
LIGHT = np.array([-0.45, 0.52, 0.73]) / math.sqrt(0.45**2 + 0.52**2 + 0.73**2)
"""Towards the light: to the right and up on the paper, and towards the eye."""
AMBIENT = 0.55
"""Share of the light that reaches a slope turned away."""
STATIONS = 720
"""Directions in which the edge of what is seen is looked for."""
STRAY_MM = 0.06
LINE_STRAY_MM = 0.015
"""Points of areas and of lines closer to the straight way than this are left out."""
DIGITS = 2
"""Points on the paper are kept to 0.01 mm, which the eye cannot tell."""
HIDING_LEVELS = 48
"""Levels of the patches that are tried for standing behind another part."""
POLYGON = 3
"""Shapely's number for the type of a polygon."""
Areas: TypeAlias = shapely.Geometry | Sequence[shapely.Geometry] | Shapes
HIDDEN_MM = 0.05
"""A point this far behind another part of the loaf is hidden."""


@dataclass(frozen=True)
class Eye:
    """A loaf seen from an elevation above the bench (radians) and a side of the table.

    `turn` is the direction the eye stands in, mathematical, from the crown: -pi/2 is the baker.
    `centre` is where the middle of the base falls on the paper (mm), `scale` paper over loaf.
    """

    loaf: Loaf
    elevation: float = math.pi / 2
    turn: float = -math.pi / 2
    centre: tuple[float, float] = (0.0, 0.0)
    scale: float = 1.0

    @property
    def size(self) -> tuple[float, float]:
        """Width and height of the loaf on the paper, mm."""
        low, high = self._extent()
        return float(high[0] - low[0]), float(high[1] - low[1])

    @property
    def middle(self) -> tuple[float, float]:
        """Middle of what is seen, on the paper (mm)."""
        low, high = self._extent()
        x, y = (low + high) / 2
        return float(x), float(y)

    def centred(self, x: float, y: float) -> "Eye":
        """Return the same look with the middle of what is seen at a point of the paper (mm)."""
        now_x, now_y = self.middle
        return replace(self, centre=(self.centre[0] + x - now_x, self.centre[1] + y - now_y))

    def _extent(self) -> tuple[Line, Line]:
        levels = np.sin(np.linspace(0, math.pi / 2, 60))
        points = levels[:, None, None] * self.loaf.outline.points(360)
        flat = self.flat(points.reshape(-1, 2)) * [self.scale, -self.scale] + self.centre
        return flat.min(axis=0), flat.max(axis=0)

    @cached_property
    def axes(self) -> Line:
        """Rows: to the right of the paper, up the paper, towards the eye; in plan axes and z."""
        cos, sin = math.cos(self.turn), math.sin(self.turn)
        low, high = math.cos(self.elevation), math.sin(self.elevation)
        return np.array(
            [[-sin, cos, 0.0], [-high * cos, -high * sin, low], [low * cos, low * sin, high]]
        )

    @property
    def from_above(self) -> bool:
        """Whether the eye is straight above, where every point is seen."""
        return self.elevation > math.pi / 2 - 1e-9

    def flat(self, points: Line) -> Line:
        """Project plan points (N, 2) of the dome to (N, 2) mm right and up."""
        if self.from_above:
            return np.asarray(points @ self.axes[:2, :2].T)
        projected: Line = self.loaf.surface(points) @ self.axes[:2].T
        return projected

    def paper(self, points: Line) -> Line:
        """Project plan points (N, 2) of the dome to the paper, y down."""
        laid: Line = np.array(self.centre) + self.flat(points) * [self.scale, -self.scale]
        return np.round(laid, DIGITS)

    def shade(self, points: Line) -> Floats:
        """Give the light on the dome at plan points: 1 at the brightness of a level top.

        Points are (N, 2) mm, the light is (N,).
        """
        facing = self.loaf.normal(points) @ (self.axes.T @ LIGHT)
        level = LIGHT[2]
        light: Floats = AMBIENT + (1 - AMBIENT) * np.maximum(facing, 0.0) / level
        return light

    def seen(self, points: Line) -> Flags:
        """Tell which plan points of the dome the eye sees: they face it with nothing between.

        Points are (N, 2) mm, the answer is (N,).
        """
        if self.from_above:
            return np.ones(len(points), dtype=bool)
        facing = self.loaf.normal(points) @ self.axes[2]
        shown: Flags = facing > -1e-9
        return shown & ~self._behind(points) if self._hollow else shown

    @property
    def _hollow(self) -> bool:
        """Whether one part of the loaf may hide another: only a traced rim is not convex."""
        return bool(self.loaf.outline.samples)

    def _behind(self, points: Line) -> Flags:
        """Walk from each point towards the eye and tell whether the loaf is in the way."""
        low, high = math.cos(self.elevation), math.sin(self.elevation)
        longest = 2 * max(self.loaf.outline.extremes)
        if high > 0:
            longest = min(longest, self.loaf.height_mm / math.tan(self.elevation) + 1)
        steps = np.linspace(0.0, longest, 80)[1:]
        start = self.loaf.height_at(points)
        ahead = self.axes[2, :2] / max(low, 1e-12)
        hidden = np.zeros(len(points), dtype=bool)
        for step in steps:
            above = self.loaf.height_at(points + step * ahead)
            hidden |= above > start + step * high / max(low, 1e-12) + HIDDEN_MM
        return hidden

    @cached_property
    def window(self) -> shapely.Geometry | None:
        """The part of the plan that the eye sees; None from above, where that is all of it."""
        if self.from_above:
            return None
        theta = self.loaf.outline.directions(STATIONS)
        rim = self.loaf.outline.radius(theta)[:, None] * np.column_stack(
            [np.cos(theta), np.sin(theta)]
        )
        low, high = np.zeros(STATIONS), np.ones(STATIONS)
        for _ in range(26):
            middle = (low + high) / 2
            faces = self.loaf.normal(rim * middle[:, None]) @ self.axes[2] > 0
            low, high = np.where(faces, middle, low), np.where(faces, high, middle)
        facing = shapely.Polygon(rim * np.maximum(low, 1e-6)[:, None]).buffer(0)
        return self._unhidden(facing, rim[::4]) if self._hollow else facing

    def _unhidden(self, facing: shapely.Geometry, rim: Line) -> shapely.Geometry:
        """Take away the patches of the loaf that stand behind another part of it."""
        edges = np.linspace(0.0, 1.0, HIDING_LEVELS + 1)[:, None, None] * rim
        after = np.roll(edges, -1, axis=1)
        corners = np.stack([edges[:-1], edges[1:], after[1:], after[:-1]], axis=2).reshape(-1, 4, 2)
        hidden = self._behind(corners.mean(axis=1))
        patches = shapely.buffer(shapely.polygons(corners[hidden]), 0.01)
        return shapely.difference(facing, shapely.union_all(patches))

    def rings(self, areas: Areas) -> list[Line]:
        """Lay plan areas on the paper, each cut down to what the eye sees, as rings for one shape.

        Holes are rings like others: a shape is filled by the even-odd rule.
        """
        if self.window is not None:
            areas = shapely.intersection(areas, self.window)
        parts = shapely.get_parts(np.atleast_1d(areas))
        rings = shapely.get_rings(parts[shapely.get_type_id(parts) == POLYGON])
        if not len(rings):
            return []
        points, owner = shapely.get_coordinates(rings, return_index=True)
        laid = shapely.linearrings(self.paper(points), indices=owner)
        simple = shapely.simplify(laid, STRAY_MM * min(self.scale, 1.0))
        return [np.asarray(shapely.get_coordinates(each)[:-1]) for each in simple]

    def lines(self, lines: Sequence[Line]) -> list[Line]:
        """Lay plan lines on the paper, the parts that the eye does not see left out."""
        if not lines:
            return []
        points = np.concatenate(lines)
        paper, seen = self.paper(points), self.seen(points)
        shown = []
        for start, length in zip(_starts(lines), map(len, lines), strict=True):
            for run in _runs(seen[start : start + length]):
                if len(run) > 1:
                    shown.append(shapely.LineString(paper[start + run]))
        simple = shapely.simplify(shown, LINE_STRAY_MM * min(self.scale, 1.0))
        return [np.asarray(shapely.get_coordinates(each)) for each in simple]


def _starts(lines: Sequence[Line]) -> Ints:
    """Index of the first point of each line among the points of all."""
    ends = np.cumsum([len(each) for each in lines])
    return np.asarray(np.concatenate([[0], ends[:-1]]))


def _runs(flags: Flags) -> list[Ints]:
    """Indexes of the runs of True."""
    where = np.flatnonzero(flags)
    return np.split(where, np.flatnonzero(np.diff(where) > 1) + 1) if len(where) else []


def look(loaf: Loaf, view: str | float, scale: float = 1.0) -> Eye:
    """Look at a loaf from the `top`, the `front`, the `side`, or at an angle above the bench.

    The front is the baker's side, the side is the right one; an angle (degrees, or a text like
    `30` or `30deg`) is taken from the baker's side. `scale` is paper over loaf.
    Raises UsageError for another word and for an angle outside 0 to 90.
    """
    low = math.radians(LOW_LOOK_DEG)
    named = {"top": (math.pi / 2, -math.pi / 2), "front": (low, -math.pi / 2), "side": (low, 0.0)}
    if view in named:
        elevation, turn = named[str(view)]
        return Eye(loaf, elevation, turn, scale=scale)
    degrees = _degrees(view)
    if degrees is None or not 0 <= degrees <= 90:
        raise UsageError(telling.no_view(view), None, telling.VIEWS)
    return Eye(loaf, math.radians(degrees), scale=scale)


def _degrees(view: str | float) -> float | None:
    try:
        return float(str(view).removesuffix("deg").removesuffix("°"))
    except ValueError:
        return None
