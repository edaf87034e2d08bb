"""Every place where a bridge could cross a slot."""

from collections.abc import Sequence

import numpy as np
import shapely

from scorecraft.arrays import Flags, Floats, Ints, Shapes
from scorecraft.frozen import dataclass
from scorecraft.plate.slits import Slit

EVERY_MM = 1.0
"""Places are tried so far apart along a slot."""
ROOM_MM = 6.0
"""A place with so much room around it is no better for still more."""
SEGMENT_MM = 2.0
SLACK_MM = 0.02
TIP, TIP_MM = 2.0, 40.0
"""What it costs to stand at a tip, and how far from tips a place is as good as any."""
STRAIGHT = 0.92
"""Cosine of the bend that a slot may take beside a bridge."""
WIDE = 12.0
"""What it costs to break a slot twice as wide as the narrowest: deep cuts stay whole."""


@dataclass(frozen=True, slots=True)
class Crossings:
    """Places for bridges, arrays over places, mm.

    `at` (M, 2) and `slit` say where, `along` how far along the slit's line, `tangent` (M, 2) its
    direction; `width` is the slot's width there and `cost` how little the place is liked.
    """

    at: Floats
    tangent: Floats
    slit: Ints
    along: Floats
    width: Floats
    cost: Floats

    def landing(self, side: int, beyond_mm: float) -> Floats:
        """Points (M, 2) beside the slot, `beyond_mm` from its edge, on one side (1 or -1)."""
        normal = np.column_stack([-self.tangent[:, 1], self.tangent[:, 0]])
        out: Floats = self.at + side * (self.width / 2 + beyond_mm)[:, None] * normal
        return out


def crossings(body: shapely.Polygon, slits: Sequence[Slit], bridge_mm: float) -> Crossings:
    """List the places where a bridge of the width fits: clear of tips and of every other slot."""
    at, tangent, owner, along = _sampled(slits, bridge_mm)
    width = np.array([slits[index].width_mm for index in owner.tolist()])
    normal = np.column_stack([-tangent[:, 1], tangent[:, 0]])
    reach = (width / 2)[:, None] * normal
    spans = shapely.linestrings(np.stack([at - reach, at + reach], axis=1))
    clear = _clearance(spans, slits, owner, along, bridge_mm)
    clear = np.minimum(clear, shapely.distance(spans, shapely.boundary(body)))
    straight = _straight(slits, at, tangent, owner, along, (bridge_mm + width) / 2)
    fits = straight & (clear >= bridge_mm / 2 + SLACK_MM)
    slot = min((slit.width_mm for slit in slits), default=1.0)
    lengths = np.array([slit.line.length for slit in slits])
    closed = np.array([slit.closed for slit in slits])
    tip = _tip_room(owner, along, lengths, closed, np.zeros(len(slits)))
    cost = WIDE * (width / slot - 1) + 1 - np.minimum(clear, ROOM_MM) / ROOM_MM
    cost += TIP * (1 - np.minimum(tip, TIP_MM) / TIP_MM)
    return Crossings(at[fits], tangent[fits], owner[fits], along[fits], width[fits], cost[fits])


def _sampled(slits: Sequence[Slit], bridge_mm: float) -> tuple[Floats, Floats, Ints, Floats]:
    """Points, tangents, slit and way along for places that leave no stub at a tip."""
    rows: list[tuple[Floats, Floats, Ints, Floats]] = []
    for index, slit in enumerate(slits):
        edge = 0.0 if slit.closed else (bridge_mm + slit.width_mm) / 2 + 1.5 * slit.width_mm
        length = slit.line.length
        if length <= 2 * edge or length < 2 * (bridge_mm + slit.width_mm):
            continue
        count = max(1, round((length - 2 * edge) / EVERY_MM)) + 1
        along = np.linspace(edge, length - edge, count)
        along = along[:-1] if slit.closed else along
        tangent = _tangents(slit.line, along)
        points = shapely.get_coordinates(shapely.line_interpolate_point(slit.line, along))
        rows.append((points, tangent, np.full(len(along), index, dtype=np.intp), along))
    if not rows:
        return np.zeros((0, 2)), np.zeros((0, 2)), np.zeros(0, dtype=np.intp), np.zeros(0)
    at, tangent, owner, along = (np.concatenate(each) for each in zip(*rows, strict=True))
    return at, tangent, owner, along


def _tangents(line: shapely.LineString, along: Floats) -> Floats:
    ends = np.clip([along - 0.25, along + 0.25], 0, line.length)
    points = shapely.get_coordinates(shapely.line_interpolate_point(line, ends))
    way = points[len(along) :] - points[: len(along)]
    tangent: Floats = way / np.hypot(*way.T)[:, None]
    return tangent


def _straight(
    slits: Sequence[Slit], at: Floats, tangent: Floats, owner: Ints, along: Floats,
    half: Floats,
) -> Flags:  # fmt: skip
    """Tell where a slot runs on straight enough, half a gap to each side, for a square gap."""
    lines = np.array([slit.line for slit in slits], dtype=object)[owner]
    lengths = shapely.length(lines)
    least = np.full(len(at), np.inf)
    for side in (-1.0, 1.0):
        points = shapely.line_interpolate_point(lines, np.mod(along + side * half, lengths))
        way = side * (shapely.get_coordinates(points) - at)
        least = np.minimum(least, (way * tangent).sum(axis=1) / np.hypot(*way.T))
    return np.asarray(least >= STRAIGHT)


def _clearance(
    spans: Shapes, slits: Sequence[Slit], owner: Ints, along: Floats,
    bridge_mm: float,
) -> Floats:  # fmt: skip
    """Distance (mm) from each span to the nearest slot but the stretch it crosses."""
    segments, line_of, middle = _segments(slits)
    widths = np.array([slit.width_mm for slit in slits])
    lengths = np.array([slit.line.length for slit in slits])
    closed = np.array([slit.closed for slit in slits])
    far = ROOM_MM + float(widths.max(initial=0.0))
    span, seg = shapely.STRtree(segments).query(spans, predicate="dwithin", distance=far)
    off = np.abs(middle[seg] - along[span])
    around = closed[line_of[seg]]
    off = np.where(around, np.minimum(off, lengths[line_of[seg]] - off), off)
    own = (line_of[seg] == owner[span]) & (
        off <= (bridge_mm + widths[owner[span]]) / 2 + SEGMENT_MM
    )
    clear = np.full(len(spans), ROOM_MM)
    other, seg = span[~own], seg[~own]
    room = shapely.distance(spans[other], segments[seg]) - widths[line_of[seg]] / 2
    np.minimum.at(clear, other, room)
    return np.asarray(np.minimum(clear, _tip_room(owner, along, lengths, closed, widths)))


def _tip_room(owner: Ints, along: Floats, lengths: Floats, closed: Flags, widths: Floats) -> Floats:
    """How far (mm) each place is from the tips of its own slot; far on a closed one."""
    room: Floats = np.minimum(along, lengths[owner] - along) - widths[owner] / 2
    return np.asarray(np.where(closed[owner], TIP_MM, room))


def _segments(slits: Sequence[Slit]) -> tuple[Shapes, Ints, Floats]:
    """Short segments of all lines, the line each belongs to, and how far along its middle is."""
    dense = shapely.segmentize(np.array([slit.line for slit in slits], dtype=object), SEGMENT_MM)
    points, line_of = shapely.get_coordinates(dense, return_index=True)
    inner = np.flatnonzero(line_of[1:] == line_of[:-1])
    segments = shapely.linestrings(np.stack([points[inner], points[inner + 1]], axis=1))
    owner = line_of[inner]
    size = shapely.length(segments)
    gone = np.cumsum(size) - size
    first = np.concatenate([[0], np.flatnonzero(np.diff(owner)) + 1]) if len(owner) else owner
    start = np.repeat(gone[first], np.diff(np.append(first, len(owner))))
    return segments, owner, gone - start + size / 2
