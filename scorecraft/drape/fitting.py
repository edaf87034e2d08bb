"""Whether flat paper can lie on a loaf at all, and how well the petals of a drape do."""

from collections.abc import Sequence

import numpy as np
import shapely

import scorecraft.drape.telling as telling
from scorecraft.arrays import Floats
from scorecraft.drape.petals import Petal
from scorecraft.drape.rings import Rings
from scorecraft.loaf.dome import Loaf
from scorecraft.loaf.places import clock

MOST_WIDER = 0.02
"""Dough may be wider around the crown than flat paper by this part: the darts' edges hide it."""
HOLLOW_MM = 1.0
"""A rim so far inside its own hull turns in."""
LONG = 1.5
"""A loaf so many times as long as wide is too long to be draped."""
TRIED = 120
"""Rings on which the fit is measured."""


def dart_width(left: Petal, right: Petal, distance: Floats) -> Floats:
    """Width (mm) of the wedge between two neighbouring petals at distances from the crown.

    Less than nothing where the petals would have to overlap: the dough is wider than flat paper.
    """
    theta = np.full(distance.shape, right.start)
    ends = left.angle(distance, theta + (left.end - right.start))
    turn = right.angle(distance, theta) - ends
    return np.asarray(distance * (np.mod(turn + np.pi, 2 * np.pi) - np.pi))


def misfit(petals: Sequence[Petal], first_mm: Sequence[float]) -> float:
    """Measure (mm) how much paper and dough differ at worst: along an edge, or around a ring.

    Around a ring what is left of the darts before their beginnings `first_mm` is too much, and
    where petals overlap there is too little.
    """
    edges = max(abs(each.slack(side)) for each in petals for side in (each.start, each.end))
    before = (petals[-1], *petals[:-1])
    reach = np.array([float(each.rings.loaf.reach(each.start)) for each in petals])
    distance = np.linspace(0.0, reach.max(), TRIED + 1)[1:]
    around = np.zeros(TRIED)
    for left, right, first, end in zip(before, petals, first_mm, reach, strict=True):
        wide = dart_width(left, right, distance)
        kept = np.where(distance < first, wide, np.minimum(wide, 0.0))
        around += np.where(distance <= end, kept, 0.0)
    return max(edges, float(np.abs(around).max()))


def check_can_lie(rings: Rings) -> None:
    """Refuse a loaf whose dough is anywhere wider around the crown than flat paper is.

    Raises ScorecraftError that says where, and what of the loaf's form is the reason.
    """
    if rings.loaf.hole is not None:
        raise telling.CANNOT_LIE(reason=telling.HAS_HOLE).error()
    theta = np.radians(np.arange(0, 361, 3.0))
    share = np.linspace(0.1, 1.0, 30)[:, None]
    distance = share * np.minimum(rings.loaf.reach(theta[1:]), rings.loaf.reach(theta[:-1]))
    around = rings.turned(distance, np.broadcast_to(theta[1:], distance.shape))
    around -= rings.turned(distance, np.broadcast_to(theta[:-1], distance.shape))
    wider = (around / np.diff(theta)).max(axis=0)
    if wider.max() > 1.0 + MOST_WIDER:
        raise telling.CANNOT_LIE(reason=_reason(rings.loaf, wider)).error()


def _reason(loaf: Loaf, wider: Floats) -> str:
    """Say what keeps paper off: `wider` is dough over paper in each direction, rising from +x."""
    theta = (np.arange(len(wider)) + 0.5) * (2 * np.pi / len(wider))
    worst = float(theta[np.argmax(wider)])
    if _hollow_mm(loaf, worst) > HOLLOW_MM:
        return telling.TURNS_IN.format(where=clock(worst))
    if max(loaf.length_mm, loaf.width_mm) > LONG * min(loaf.length_mm, loaf.width_mm):
        return telling.TOO_LONG
    return telling.WIDER.format(where=clock(worst), more=float(wider.max()) - 1.0)


def _hollow_mm(loaf: Loaf, theta: float) -> float:
    """Measure how far the rim lies inside its own hull in a direction."""
    hull = shapely.convex_hull(shapely.Polygon(loaf.outline.points(720)))
    at = loaf.outline.radius(theta) * np.array([np.cos(theta), np.sin(theta)])
    return float(shapely.distance(hull.exterior, shapely.Point(at)))
