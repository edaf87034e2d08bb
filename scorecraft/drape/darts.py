"""Where the darts go: few enough, narrow enough petals, and between the figures."""

from collections.abc import Sequence

import numpy as np
import shapely

from scorecraft.arrays import Floats, Ints, Line
from scorecraft.drape.petals import Petal
from scorecraft.drape.rings import Rings

LEAST_PETALS = 5
"""A drape has no fewer petals."""
MOST_PETALS = 36
"""A drape has no more petals."""
DEGREES = 360
FROM = 0.15
"""Darts begin about here, as a part of the reach: cuts nearer to the crown are never split."""
BESIDE_MM = 1.5
"""A cut that runs along a dart closer than this is as bad as one that is crossed."""
ALONG_MM = 4.0
DART_COST = 0.35
UNEVEN_COST = 0.5


def widest_petal(rings: Rings, fit_mm: float) -> float | None:
    """Find the widest sector (radians) that fits everywhere to `fit_mm`; None if none does."""
    for count in range(LEAST_PETALS, MOST_PETALS + 1):
        sector = 2 * np.pi / count
        middles = np.arange(0, 2 * np.pi, np.radians(7.5))
        petals = [Petal(rings, middle - sector / 2, middle + sector / 2) for middle in middles]
        slack = (abs(each.slack(side)) for each in petals for side in (each.start, each.end))
        if max(slack) <= fit_mm:
            return sector
    return None


def dart_directions(rings: Rings, lines: Sequence[Line], widest: float) -> Floats:
    """Choose the directions of the darts (radians, rising): no petal wider than `widest`.

    The cheapest way around the circle: what counts is how many lines a dart would cross, then
    how many darts there are, then how even the petals are.
    """
    most = int(np.degrees(widest) + 1e-9)
    least = max(2, int(0.45 * most))
    price = np.round(dart_prices(rings, lines), 3)
    best, steps = _cheapest_round(price, least, most)
    return np.radians(np.array([best, *(best + np.cumsum(steps)[:-1])], dtype=np.float64))


def dart_prices(rings: Rings, lines: Sequence[Line]) -> Floats:
    """Price of a dart in each whole degree: lines crossed, and lines that run along it."""
    theta = np.radians(np.arange(DEGREES))
    reach = rings.loaf.reach(theta)
    way = np.column_stack([np.cos(theta), np.sin(theta)])
    ends = np.stack([way * (FROM * reach)[:, None], way * reach[:, None]], axis=1)
    rays = shapely.linestrings(ends)
    price = np.zeros(DEGREES)
    if not lines:
        return price
    strings = np.array([shapely.linestrings(line) for line in lines], dtype=object)
    tree = shapely.STRtree(strings)
    ray, line = tree.query(rays, predicate="intersects")
    np.add.at(price, ray, 1.0)
    beside = shapely.buffer(rays, BESIDE_MM, cap_style="flat")
    ray, line = tree.query(beside, predicate="intersects")
    run = shapely.length(shapely.intersection(beside[ray], strings[line]))
    np.add.at(price, ray, run / ALONG_MM)
    return price


def _cheapest_round(price: Floats, least: int, most: int) -> tuple[int, list[int]]:
    """Walk once around in steps of `least` to `most` degrees at the least price."""
    starts = np.arange(most)
    steps = np.arange(least, most + 1)
    step_cost = DART_COST + UNEVEN_COST * ((steps - most) / most) ** 2
    total = np.full((len(starts), DEGREES + 1), np.inf)
    total[:, 0] = 0.0
    came: Ints = np.zeros((len(starts), DEGREES + 1), dtype=np.intp)
    for gone in range(least, DEGREES + 1):
        usable = steps[steps <= gone]
        ways = total[:, gone - usable] + step_cost[: len(usable)]
        pick = np.argmin(np.round(ways, 6), axis=1)
        total[:, gone] = ways[starts, pick] + price[(starts + gone) % DEGREES]
        came[:, gone] = usable[pick]
    start = int(np.argmin(np.round(total[:, DEGREES], 6)))
    out: list[int] = []
    gone = DEGREES
    while gone > 0:
        out.insert(0, int(came[start, gone]))
        gone -= out[0]
    return start, out
