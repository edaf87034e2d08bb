"""Where the bridges stand: each island is held, at its best places, evenly around its edge."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from math import ceil, floor

import numpy as np
import shapely

from scorecraft.arrays import Flags, Floats, Ints, Line
from scorecraft.plate.crossings import Crossings, crossings
from scorecraft.plate.doubles import pieces
from scorecraft.plate.islands import Islands, fields, islands
from scorecraft.plate.slits import Slit

BRIDGE_EVERY_MM = 70.0
"""An island is held once in so much of its edge."""
LEAST_BRIDGES = 2
"""An island is held at so many places, if it can be."""
UNEVEN = 3.0
"""What a bridge costs that stands where its neighbour on the edge should be."""
SLACK_MM = 0.02


@dataclass(frozen=True, slots=True)
class Bridge:
    """A bridge across a slot: from edge to edge of the slot (plan mm), and its width."""

    span: Line
    width_mm: float
    cut: int

    @property
    def at(self) -> Floats:
        """Middle of the bridge: (2,) in sheet mm."""
        middle: Floats = self.span.mean(axis=0)
        return middle


@dataclass(frozen=True, slots=True)
class Bridged:
    """Slits with gaps where the bridges stand; `loose` are islands that nothing holds."""

    slits: tuple[Slit, ...]
    bridges: tuple[Bridge, ...]
    loose: tuple[shapely.Polygon, ...]


def bridged(
    body: shapely.Polygon,
    drawn: Sequence[Slit],
    slits: Sequence[Slit],
    *,
    bridge_mm: float,
    web_mm: float,
) -> Bridged:
    """Set bridges until the plate is one piece.

    First the fields that the lines enclose as `drawn` are held, each by as many bridges as its
    edge asks for; then whatever still hangs on less than a web.
    """
    left, bridges = list(slits), []
    for stage in ("fields", "pieces"):
        if not left:
            break
        if stage == "fields":
            found, least = fields(body, drawn, left, bridge_mm), BRIDGE_EVERY_MM / 2
        else:
            found, least = islands(body, left, web_mm), 0.0
        if len(found.parts) > 1:
            places = crossings(body, left, bridge_mm)
            picked = _pick(found, places, bridge_mm, least)
            ends = np.stack([places.landing(side, 0.0) for side in (-1, 1)], axis=1)
            bridges += [Bridge(ends[k], bridge_mm, left[places.slit[k]].cut) for k in picked]
            left = _gapped(left, places, picked, bridge_mm)
    after = islands(body, left, web_mm)
    loose = [part for index, part in enumerate(after.parts) if index != after.ground]
    return Bridged(tuple(left), tuple(bridges), tuple(loose))


def _pick(found: Islands, places: Crossings, bridge_mm: float, least_mm: float) -> list[int]:
    """Choose places: for each island larger round than `least_mm`, then to join the rest."""
    sides = np.stack([found.at(places.landing(side, found.beside_mm)) for side in (-1, 1)], axis=1)
    useful = (sides >= 0).all(axis=1) & (sides[:, 0] != sides[:, 1])
    choice = _Choice(found, places, sides, useful, bridge_mm, [])
    sizes = np.array([part.convex_hull.length for part in found.parts])
    for island in np.argsort(np.round(sizes, 2), kind="stable").tolist():
        if island != found.ground and sizes[island] > least_mm:
            choice.hold(island)
    if not least_mm:
        choice.join()
    return choice.picked


@dataclass(slots=True)
class _Choice:
    """The choice as it grows: which places are still free, and which are taken."""

    found: Islands
    places: Crossings
    sides: Ints
    free: Flags
    bridge_mm: float
    picked: list[int]

    def hold(self, island: int) -> None:
        """Give an island as many bridges as its edge asks for, as far as there are places.

        Webs that hold it already count, as far as they are as wide as a bridge.
        """
        around = self.found.parts[island].convex_hull.length
        wanted = max(LEAST_BRIDGES, ceil(around / BRIDGE_EVERY_MM))
        have = [index for index in self.picked if island in self.sides[index]]
        missing = floor(wanted - self.found.held[island] + 0.5) - len(have)
        if not have and not len(self.found.gaps[island]):
            for index in self.even(island, wanted):
                if self.free[index]:
                    self.take(index)
                    have.append(index)
                    missing -= 1
        for _ in range(missing):
            best = self.farthest(island, have)
            if best is None:
                return
            self.take(best)
            have.append(best)

    def even(self, island: int, wanted: int) -> list[int]:
        """Choose places evenly spaced around an island's edge, at the cheapest offset."""
        mine = self.candidates(island)
        if not len(mine):
            return []
        ring = self.found.parts[island].exterior
        way, total = self.way(ring, mine), ring.length
        ideal = (way[:, None] + np.arange(wanted) * total / wanted) % total
        off = np.abs(ideal[:, :, None] - way)
        off = np.minimum(off, total - off) / (total / wanted)
        nearest = np.argmin(off * UNEVEN + self.places.cost[mine], axis=2)
        price = np.take_along_axis(off, nearest[:, :, None], axis=2)[:, :, 0] * UNEVEN
        price = (price + self.places.cost[mine][nearest]).sum(axis=1)
        return list(dict.fromkeys(mine[nearest[int(np.argmin(np.round(price, 4)))]].tolist()))

    def farthest(self, island: int, have: Sequence[int]) -> int | None:
        """Choose a place far from the bridges and webs there are, if it is not too dear."""
        mine = self.candidates(island)
        if not len(mine):
            return None
        part = self.found.parts[island]
        there = np.concatenate([self.places.at[list(have)], self.found.gaps[island]])
        price = self.places.cost[mine].copy()
        if len(there):
            off = shapely.distance(shapely.points(self.places.at[mine]), shapely.MultiPoint(there))
            price -= UNEVEN * np.minimum(1.0, 4 * off / part.convex_hull.length)
        return int(mine[int(np.argmin(np.round(price, 3)))])

    def candidates(self, island: int) -> Ints:
        """List the free places on an island's edge."""
        return np.flatnonzero(self.free & (self.sides == island).any(axis=1))

    def way(self, ring: shapely.LinearRing, which: Ints) -> Floats:
        """Tell how far along a ring each place lies."""
        points = shapely.points(self.places.at[which])
        way: Floats = shapely.line_locate_point(ring, points)
        return way

    def take(self, index: int) -> None:
        """Take a place; the ones too near to it are no longer free."""
        width = self.places.width[index]
        off = np.hypot(*(self.places.at - self.places.at[index]).T)
        self.free &= off > self.bridge_mm + 3 * width
        self.picked.append(index)

    def join(self) -> None:
        """Join what is still apart by the cheapest places."""
        group = np.arange(len(self.found.parts))
        for index in self.picked:
            _merge(group, *self.sides[index].tolist())
        for index in np.argsort(np.round(self.places.cost, 4), kind="stable").tolist():
            first, second = self.sides[index].tolist()
            if self.free[index] and group[first] != group[second]:
                self.take(index)
                _merge(group, first, second)


def _merge(group: Ints, first: int, second: int) -> None:
    group[group == group[second]] = group[first]


def _gapped(
    slits: Sequence[Slit], places: Crossings, picked: Sequence[int], bridge_mm: float
) -> list[Slit]:
    """Break the slits where bridges stand; round slot ends leave the bridge its full width."""
    out: list[Slit] = []
    for number, slit in enumerate(slits):
        own = [index for index in picked if places.slit[index] == number]
        if not own:
            out.append(slit)
            continue
        strips = [_strip(places, index, bridge_mm) for index in own]
        left = pieces(slit.line.difference(shapely.union_all(strips)))
        out += [replace(slit, line=line) for line in left]
    return out


def _strip(places: Crossings, index: int, bridge_mm: float) -> shapely.Polygon:
    """Give the part of a slot's line that makes way for a bridge: a box square to the slot."""
    width = places.width[index]
    along = places.tangent[index] * ((bridge_mm + width) / 2 + SLACK_MM)
    across = np.array([-along[1], along[0]]) * ((width + bridge_mm) / 2 / np.hypot(*along))
    corners = [along + across, along - across, -along - across, -along + across]
    return shapely.Polygon(places.at[index] + np.array(corners))
