"""Balance: whether one side of the loaf is cut, and so opens, more than the other.

One slash off the middle, a crescent or a single deep figure beside light ones is a classic and no
fault (common practice, no source): only where several figures open the loaf are cuts weighed, and
the advice is never to move them to the middle.
"""

import math

import numpy as np

from scorecraft.arrays import Floats
from scorecraft.checks import telling_loaf as say
from scorecraft.checks.changes import added
from scorecraft.checks.cures import has_place
from scorecraft.checks.finding import Finding, Offer, Severity
from scorecraft.checks.linework import STATION_MM, stations
from scorecraft.cuts import Layout
from scorecraft.frozen import dataclass
from scorecraft.loaf.places import clock
from scorecraft.practice import ASIDE_NOTE, ASIDE_WARN

ADDED_CUT_SHARE = 0.6
"""Where a cut is added that evens out others, as a share of the reach."""


@dataclass(frozen=True, slots=True)
class Balance:
    """Where the middle of all cutting lies: `aside_mm` from the crown toward `theta` (radians).

    `cutting` is the sum of length times depth (mm2), `heavier` the share of it on the half of the
    loaf that way.
    """

    aside_mm: float
    theta: float
    cutting: float
    heavier: float


def balance(layout: Layout, opening_mm: Floats | None = None) -> list[Finding]:
    """Find a layout that opens the loaf more on one side.

    Cuts count by their predicted opening (mm, one a cut) where it is known, else by their depth.
    """
    if len({cut.figure for cut in layout.cuts if cut.kind == "expansion"}) < 2:
        return []
    depths = layout.depths_mm
    weights = depths if opening_mm is None else opening_mm
    found = weigh(layout, weights)
    share = found.aside_mm / float(layout.loaf.reach(found.theta))
    if share <= ASIDE_NOTE.value:
        return []
    severity: Severity = "warning" if share > ASIDE_WARN.value else "note"
    toward, back = clock(found.theta), clock(found.theta + math.pi)
    message = say.one_sided(found.heavier, opening_mm is not None, toward)
    length, depth, away = _added(layout, found, weights)
    blade = layout.cuts[int(np.argmax(weights))].blade_rad
    line = _across(found, length, away)
    offers: tuple[Offer, ...] = ()
    if has_place(layout, line, depth):
        told = say.ADD_CUT(length=length, depth=depth, back=back, away=away)
        offers = (Offer(told, layout, lambda: (added([line], depth, blade),)),)
    hint = say.CUT_LESS_ON_ONE_SIDE(toward=toward, back=back)
    figures = {
        "aside_mm": found.aside_mm,
        "aside_share": share,
        "heavier": found.heavier,
        "theta_rad": found.theta,
        "add_mm": length,
        "add_depth_mm": depth,
        "add_at_mm": away,
    }
    place = max(cut.place for cut in layout.cuts)
    return [Finding("balance", severity, message, hint, place, figures, offers=offers)]


def weigh(layout: Layout, weights: Floats) -> Balance:
    """Find the middle of the cuts, each counting by its length times its weight.

    `weights` (one a cut) is the depth, or a predicted opening, in mm.
    """
    spots = stations(layout, STATION_MM)
    weight = spots.step * weights[spots.cut]
    total = max(float(weight.sum()), 1e-12)
    x, y = (weight @ spots.point) / total
    theta = math.atan2(y, x)
    ahead = spots.point @ np.array([math.cos(theta), math.sin(theta)])
    heavier = float(weight[ahead > 0].sum()) / total
    return Balance(math.hypot(x, y), theta, total, heavier)


def _across(found: Balance, length: float, away: float) -> Floats:
    """Lay a straight cut (2, 2) of a length square to the way to the crown, opposite the others."""
    way = -np.array([math.cos(found.theta), math.sin(found.theta)])
    side = np.array([-way[1], way[0]]) * length / 2
    return np.array([away * way - side, away * way + side])


def _added(layout: Layout, found: Balance, weights: Floats) -> tuple[float, float, float]:
    """Give length and depth of a cut that evens out the others, and how far out it stands (mm).

    It is cut like the one that weighs most.
    """
    most = int(np.argmax(weights))
    away = ADDED_CUT_SHARE * float(layout.loaf.reach(found.theta + math.pi))
    length = found.cutting * found.aside_mm / (float(weights[most]) * away)
    return length, layout.cuts[most].depth_mm, away
