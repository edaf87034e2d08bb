"""Where cuts run side by side: how wide the strip of dough between them is, and how long."""

import math
from collections.abc import Iterator

import numpy as np
import shapely

from scorecraft.arrays import Flags, Floats, Ints
from scorecraft.checks.linework import STATION_MM, Stations, stations
from scorecraft.checks.neighbours import by_turns
from scorecraft.cuts import Layout
from scorecraft.frozen import dataclass
from scorecraft.practice import SAME_LINE_MM

STRIP_RUN_MM = 10.0
"""A strip is told from this length on."""
STRIP_RUN_SHARE = 0.6
"""A strip is told from this share of the shorter cut on, too."""
MOST_STATION_BOXES = 2_000_000
"""The most boxes around stations held together."""
MOST_FACINGS = 100_000
"""The most stations found alongside a cut."""
LEAST_STRETCH = 0.4
"""The least true length per sheet length that is reckoned with when looking for neighbours."""

CHUNK = 500
"""About how many stations are looked at in one go."""


@dataclass(frozen=True, eq=False, slots=True)
class Alongside:
    """Stations (indexes `here`, `there`) that face each other over a strip of dough.

    `width` is the strip's true width at that place (mm), `flat` its width on the sheet,
    `same_way` whether the strokes run the same way. `whole` is False where more stations face each
    other than were looked for; of the cuts looked at all are found.
    """

    stations: Stations
    here: Ints
    there: Ints
    width: Floats
    flat: Floats
    same_way: Flags
    whole: bool


def alongside(layout: Layout, reach: Floats, parting_deg: float) -> Alongside:
    """Find facing stations nearer than the sum of their cuts' `reach` (mm, one a cut).

    Cuts that part by more than `parting_deg` make a point and no strip. Lines nearer than
    SAME_LINE_MM are one line and left to the check of overlaps. Every facing is found from its
    cut of the greater reach, or from both.
    """
    spots = stations(layout, STATION_MM)
    here, there, whole = _strip_stations(layout, spots, reach, math.radians(parting_deg))
    keep = _apart(layout, spots, here, there)
    here, there = here[keep], there[keep]
    width, flat = _widths(spots, here, there)
    same_way = (spots.tangent[here] * spots.tangent[there]).sum(axis=1) > 0
    return Alongside(spots, here, there, width, flat, same_way, whole)


def _strip_stations(
    layout: Layout, spots: Stations, reach: Floats, parting_rad: float
) -> tuple[Ints, Ints, bool]:
    """Find stations that face each other, by turns of the cuts until there are MOST_FACINGS."""
    found, boxes, facings = [np.zeros((2, 0), dtype=np.intp)], 0, 0
    whole = True
    for here, there in _near(layout, spots, reach):
        if boxes > MOST_STATION_BOXES or facings > MOST_FACINGS:
            whole = False
            break
        boxes += len(here)
        face = _facing(spots, here, there, math.cos(parting_rad))
        here, there = here[face], there[face]
        width, _ = _widths(spots, here, there)
        limit = reach[spots.cut[here]] + reach[spots.cut[there]]
        strip = (width > SAME_LINE_MM.value) & (width < limit)
        found.append(np.stack([here[strip], there[strip]]))
        facings += int(strip.sum())
    here, there = np.concatenate(found, axis=1)
    order = np.argsort(here, kind="stable")
    return here[order], there[order], whole


def _near(layout: Layout, spots: Stations, reach: Floats) -> Iterator[tuple[Ints, Ints]]:
    """Give stations that may be near each other, all those of some cuts at a time."""
    _, across = layout.loaf.stretch(spots.point)
    search = 2 * reach[spots.cut] / np.clip(across, LEAST_STRETCH, 1.0)
    x, y = spots.point.T
    tree = shapely.STRtree(shapely.points(spots.point))
    boxes = shapely.box(x - search, y - search, x + search, y + search)
    order = by_turns(layout)
    rank = np.argsort(order)
    by_cut = np.argsort(rank[spots.cut], kind="stable")
    count = np.bincount(spots.cut)[order]
    chunk = np.cumsum(count) // CHUNK
    ends = np.cumsum(count)[np.flatnonzero(np.diff(chunk))]
    for some in np.split(by_cut, ends):
        here, there = tree.query(boxes[some])
        yield some[here], there


def _facing(spots: Stations, here: Ints, there: Ints, parting: float) -> Flags:
    """Whether a station lies square across from the other, and their cuts are near parallel."""
    (x, y), (along, up) = spots.point.T.copy(), spots.tangent.T.copy()
    ahead = (x[there] - x[here]) * along[here] + (y[there] - y[here]) * up[here]
    parallel = along[here] * along[there] + up[here] * up[there]
    square = np.abs(ahead) <= 0.6 * STATION_MM
    return np.asarray(square & (np.abs(parallel) >= parting) & (here != there))


def _widths(spots: Stations, here: Ints, there: Ints) -> tuple[Floats, Floats]:
    """Measure the gap square to the cut, on the dough and on the sheet."""
    gap = spots.point[there] - spots.point[here]
    tangent = spots.tangent[here]
    across = np.abs(gap[:, 0] * tangent[:, 1] - gap[:, 1] * tangent[:, 0])
    sheet = np.maximum(np.hypot(gap[:, 0], gap[:, 1]), 1e-12)
    dough = np.linalg.norm(spots.solid[there] - spots.solid[here], axis=1)
    return np.asarray(across * dough / sheet), across


def _apart(layout: Layout, spots: Stations, here: Ints, there: Ints) -> Flags:
    """Whether two stations of one cut are on different turns of it."""
    length = np.bincount(spots.cut, weights=spots.step, minlength=len(layout.cuts))
    closed = np.array([bool((cut.line[0] == cut.line[-1]).all()) for cut in layout.cuts])
    own = spots.cut[here]
    between = np.abs(spots.along[here] - spots.along[there])
    round_again = np.where(closed[own], length[own] - between, np.inf)
    straight = np.linalg.norm(spots.point[there] - spots.point[here], axis=1)
    way = np.minimum(between, round_again)
    return np.asarray((own != spots.cut[there]) | (way > 2 * straight + 2 * STATION_MM))
