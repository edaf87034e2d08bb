"""The drape on paper: a flower of petals to cut out, darts in grey, the pattern in true length."""

from collections.abc import Sequence

import numpy as np
import shapely

from scorecraft.arrays import Line
from scorecraft.curves import length
from scorecraft.cuts import Layout
from scorecraft.drape.drape import Drape
from scorecraft.drape.petals import Petal
from scorecraft.drawing.crown import crown_mark
from scorecraft.drawing.inks import HAIR_INK, MARK_INK, NUMBER_CLEAR_MM, cut_ink
from scorecraft.drawing.label_box import label_box
from scorecraft.drawing.paper.cautions import DRAPE
from scorecraft.drawing.paper.full_size import FullSize
from scorecraft.drawing.paper.telling import loaf_words
from scorecraft.drawing.picture import BLACK, Ink, Item, Label, Layer, Shape, walk
from scorecraft.drawing.plan import on_paper
from scorecraft.drawing.templates.telling import TRUE_LENGTH, drape_words
from scorecraft.practice import RIM_MARGIN_MM
from scorecraft.units import turntable_degrees

CUT_INK = Ink(0.35)
FOLD_INK = Ink(0.18, dash=(2.0, 1.2), cap="butt", color="#606060")
DART_FILL = "#e2e2e2"
BORDER_MM = 2.0
TICK_EVERY_MM = 20.0
TICK_MM = 1.6
NUMBER_MM = 3.6
BACK_MM = (0.0, 3.0, 6.0, 10.0, 15.0, 20.0, 30.0, 40.0)
BESIDE_MM = (3.2, -3.2, 6.0, -6.0, 9.0, -9.0, 13.0, -13.0)
"""Where a petal's number may stand: back from the rim and to the side of the fold, best first."""


def drape_sheet(drape: Drape, layout: Layout) -> FullSize:
    """Draw a drape at full size, with how to cut, fold and lay it."""
    edge = outline(drape)
    left, low, right, high = shapely.Polygon(edge).bounds
    centre = (BORDER_MM - left, BORDER_MM + high)
    laid = on_paper(edge, centre)
    edges: tuple[Item, ...] = (
        Layer("folds", (Shape(tuple(_folds(drape, centre)), ink=FOLD_INK),)),
        Layer("pattern", _pattern(drape, layout, centre)),
        Layer("edge", (Shape((laid,), closed=True, ink=CUT_INK),)),
        Layer("marks on the edges", (Shape(tuple(_ticks(drape, centre)), ink=HAIR_INK),)),
    )
    lines = [each for item in walk(edges) if isinstance(item, Shape) for each in item.lines]
    items: tuple[Item, ...] = (
        Layer("darts", tuple(_dart_areas(drape, centre))),
        *edges,
        crown_mark(centre),
        Layer("numbers", tuple(_numbers(drape, centre, lines))),
    )
    return FullSize(
        items,
        laid,
        right - left + 2 * BORDER_MM,
        high - low + 2 * BORDER_MM,
        f"{layout.title}: drape",
        loaf_words(layout.loaf, TRUE_LENGTH),
        drape_words(drape, TICK_EVERY_MM),
        "drape",
        centre,
        DRAPE,
    )


def outline(drape: Drape) -> Line:
    """Trace the flower's edge counter-clockwise: petal by petal, in and out of every dart."""
    parts = []
    for index, petal in enumerate(drape.petals):
        before, after = drape.darts[index], drape.darts[(index + 1) % len(drape.darts)]
        parts += [before.left, petal.rim(), after.right[::-1]]
    return np.concatenate(parts)


def _dart_areas(drape: Drape, centre: tuple[float, float]) -> list[Shape]:
    wedges = (np.concatenate([dart.right, dart.left[::-1]]) for dart in drape.darts)
    return [Shape((on_paper(each, centre),), closed=True, fill=DART_FILL) for each in wedges]


def _folds(drape: Drape, centre: tuple[float, float]) -> list[Line]:
    first = min(dart.first_mm for dart in drape.darts)
    return [
        on_paper(petal.edge(petal.middle, min(first, 20.0))[[0, -1]], centre)
        for petal in drape.petals
    ]


def _pattern(drape: Drape, layout: Layout, centre: tuple[float, float]) -> tuple[Shape, ...]:
    """Draw all lines, deep cuts on top; a split cut keeps the dashes of the whole."""
    shapes = []
    for each in sorted(drape.lines, key=lambda line: _depth(layout, line.cut)):
        points = on_paper(each.line, centre)
        if each.cut < 0:
            shapes.append(Shape((points,), ink=MARK_INK))
            continue
        ink = cut_ink(_depth(layout, each.cut), length(layout.cuts[each.cut].line))
        shapes.append(Shape((points,), ink=ink, data={"cut": str(each.cut)}))
    return tuple(shapes)


def _depth(layout: Layout, cut: int) -> float:
    return layout.cuts[cut].depth_mm if cut >= 0 else 0.0


def _ticks(drape: Drape, centre: tuple[float, float]) -> list[Line]:
    """Short marks across both edges of every dart, at whole distances from the crown."""
    ticks = []
    for dart in drape.darts:
        for edge, side in ((dart.right, -1.0), (dart.left, 1.0)):
            distance = np.hypot(*edge.T)
            for at in np.arange(TICK_EVERY_MM, distance[-1] - TICK_MM, TICK_EVERY_MM):
                if at > distance[0]:
                    angle = float(np.interp(at, distance, np.unwrap(np.arctan2(*edge.T[::-1]))))
                    inward = angle + side * TICK_MM / at
                    both = np.array([angle, inward])
                    points = at * np.column_stack([np.cos(both), np.sin(both)])
                    ticks.append(on_paper(points, centre))
    return ticks


def _numbers(drape: Drape, centre: tuple[float, float], lines: Sequence[Line]) -> list[Item]:
    """Write the petals' numbers, clockwise from 12 o'clock, clear of all lines, near the rim."""
    order = sorted(drape.petals, key=lambda petal: turntable_degrees(petal.middle) % 359.99)
    start = order.index(min(order, key=_from_twelve))
    arrow = _arrow(drape, centre)
    tree = shapely.STRtree([shapely.linestrings(each) for each in (*lines, *arrow.lines)])
    ways = enumerate(order[start:] + order[:start], start=1)
    return [*(_number(number, petal, centre, tree) for number, petal in ways), arrow]


def _number(number: int, petal: Petal, centre: tuple[float, float], tree: shapely.STRtree) -> Label:
    """Set a number beside the fold of its petal where it is clear, as near the rim as it can be.

    Where no place is clear it stands where it has the most room.
    """
    tried = [_label(number, petal, centre, away, side) for away in BACK_MM for side in BESIDE_MM]
    boxes = [shapely.Polygon(label_box(each, descent=0.0)) for each in tried]
    clear = tree.query_nearest(boxes, return_distance=True, all_matches=False)[1]
    free = np.flatnonzero(clear >= NUMBER_CLEAR_MM)
    return tried[int(free[0]) if len(free) else int(np.argmax(clear))]


def _label(
    number: int, petal: Petal, centre: tuple[float, float], back: float, beside: float
) -> Label:
    """Set a number so far (mm) back from the rim and to the side of the fold."""
    away = float(petal.rings.loaf.reach(petal.middle)) - RIM_MARGIN_MM.value / 2 - back
    way = np.array([np.cos(petal.middle), np.sin(petal.middle)])
    x, y = on_paper(away * way + beside * np.array([way[1], -way[0]]), centre).tolist()
    turn = np.radians(turntable_degrees(petal.middle))
    turn += np.pi if np.pi / 2 < turn < 3 * np.pi / 2 else 0.0
    return Label(f"{number}", (x, y), NUMBER_MM, "middle", "middle", True, BLACK, turn)


def _from_twelve(petal: Petal) -> float:
    off = turntable_degrees(petal.middle)
    return round(min(off, 360 - off), 3) + (0.001 if off > 180 else 0.0)


def _arrow(drape: Drape, centre: tuple[float, float]) -> Shape:
    """Draw an arrowhead just inside the rim that points to 12 o'clock."""
    north = np.pi / 2
    petal = next(
        each
        for each in drape.petals
        if (north - each.start) % (2 * np.pi) <= each.end - each.start + 1e-9
    )
    reach = float(petal.rings.loaf.reach(north))
    sheet = reach * np.array([[0.0, 0.99], [-0.018, 0.955], [0.018, 0.955]])
    return Shape((on_paper(petal.on_paper(sheet), centre),), closed=True, fill=BLACK)
