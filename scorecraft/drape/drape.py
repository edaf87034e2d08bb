"""The drape of a layout: petals joined at the crown, with the pattern in true length."""

import numpy as np
import shapely

import scorecraft.drape.telling as telling
from scorecraft.arrays import Line
from scorecraft.cuts import Layout
from scorecraft.drape.darts import MOST_PETALS, dart_directions, widest_petal
from scorecraft.drape.fitting import check_can_lie, dart_width, misfit
from scorecraft.drape.petals import Petal
from scorecraft.drape.rings import Rings
from scorecraft.frozen import dataclass

DRAPE_FIT_MM = 1.5
"""An edge of a drape, or all around it, may be longer than the dough by this."""
DART_MM = 0.5
"""A narrower dart is not cut: paper gives that much."""
WHOLE_MIDDLE = 0.1
"""No dart is cut in this part of the way from crown to rim."""
STEP_MM = 1.0
STRAY_MM = 0.01
CRUMB_MM = 0.05


@dataclass(frozen=True, slots=True)
class Dart:
    """The wedge between two petals: where it begins, and its edges out to the rim (paper mm)."""

    theta: float
    first_mm: float
    right: Line
    left: Line


@dataclass(frozen=True, slots=True)
class DrapeLine:
    """A stretch of a line on the paper (mm), and the cut it belongs to; -1 is a string mark."""

    line: Line
    cut: int


@dataclass(frozen=True, slots=True)
class Drape:
    """Petals counter-clockwise, the dart before each of them, and all lines on the paper.

    Paper mm, the crown in the origin, y away from the baker. `fit_mm` is how much the paper is
    longer or shorter than the dough under it, along the edge of a petal or all around a ring,
    where that is worst; `split` counts the cuts that a dart runs across.
    """

    petals: tuple[Petal, ...]
    darts: tuple[Dart, ...]
    lines: tuple[DrapeLine, ...]
    fit_mm: float
    split: int


def make_drape(layout: Layout, *, fit_mm: float | None = None) -> Drape:
    """Make the drape of a layout with as few darts as fit to `fit_mm`, away from the cuts.

    Raises UsageError for a fit that asks for too many darts, and ScorecraftError for a loaf that
    no sheet joined at the crown lies on.
    """
    fit_mm = DRAPE_FIT_MM if fit_mm is None else fit_mm
    if not fit_mm > 0:
        raise telling.NO_SUCH_FIT(fit_mm=fit_mm).usage()
    rings = Rings(layout.loaf)
    check_can_lie(rings)
    widest = widest_petal(rings, fit_mm)
    if widest is None:
        raise telling.TOO_CLOSE(petals=MOST_PETALS, fit_mm=fit_mm).usage()
    cuts = [cut.line for cut in layout.cuts]
    directions = dart_directions(rings, cuts, widest)
    ends = np.append(directions[1:], directions[0] + 2 * np.pi)
    petals = tuple(
        Petal(rings, float(start), float(end)) for start, end in zip(directions, ends, strict=True)
    )
    before = (petals[-1], *petals[:-1])
    least = min(DART_MM, fit_mm / len(petals))
    darts = tuple(_dart(left, right, least) for left, right in zip(before, petals, strict=True))
    drawn = [_drawn(petal, cuts, layout.marks.lines) for petal in petals]
    lines = tuple(line for each in drawn for line in each)
    worst = misfit(petals, [dart.first_mm for dart in darts])
    return Drape(petals, darts, lines, worst, _split(darts, cuts))


def _dart(left: Petal, right: Petal, least_mm: float) -> Dart:
    """Open the dart between the petal that ends in a direction and the one that starts there.

    It is cut from where it is wider than `least_mm` (mm) on.
    """
    theta = right.start
    reach = float(left.rings.loaf.reach(theta))
    distance = np.linspace(WHOLE_MIDDLE * reach, reach, 400)
    open_ = np.flatnonzero(dart_width(left, right, distance) > least_mm)
    first = float(distance[max(open_[0] - 1, 0)]) if len(open_) else reach
    return Dart(theta, first, left.edge(left.end, first), right.edge(right.start, first))


def _drawn(petal: Petal, cuts: list[Line], marks: tuple[Line, ...]) -> list[DrapeLine]:
    """Carry what lies in a petal's sector to the paper."""
    sector, out = _sector(petal), []
    for index, line in [*enumerate(cuts), *((-1, mark) for mark in marks)]:
        string = shapely.linestrings(line)
        if not sector.intersects(string):
            continue
        for part in shapely.get_parts(shapely.intersection(string, sector)):
            if part.geom_type == "LineString" and part.length > CRUMB_MM:
                dense = shapely.get_coordinates(shapely.segmentize(part, STEP_MM))
                laid = shapely.simplify(shapely.linestrings(petal.on_paper(dense)), STRAY_MM)
                out.append(DrapeLine(shapely.get_coordinates(laid), index))
    return out


def _sector(petal: Petal) -> shapely.Polygon:
    """Give the petal's part of the sheet, out to the rim."""
    theta = np.linspace(petal.start, petal.end, 120)
    rays = np.column_stack([np.cos(theta), np.sin(theta)])
    rim = petal.rings.loaf.reach(theta)[:, None] * rays
    return shapely.Polygon(np.vstack([np.zeros((1, 2)), rim]))


def _split(darts: tuple[Dart, ...], cuts: list[Line]) -> int:
    """Count the cuts that darts run across, each cut once."""
    ways = [np.outer((d.first_mm, 2000.0), (np.cos(d.theta), np.sin(d.theta))) for d in darts]
    if not cuts:
        return 0
    tree = shapely.STRtree([shapely.linestrings(cut) for cut in cuts])
    return len(set(tree.query(shapely.linestrings(ways), predicate="intersects")[1].tolist()))
