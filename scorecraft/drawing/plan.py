"""The loaf seen from straight above, laid on paper."""

from collections.abc import Callable, Sequence
from functools import lru_cache

import numpy as np
import shapely

from scorecraft.arrays import Line
from scorecraft.cuts import Layout
from scorecraft.drawing.inks import band
from scorecraft.drawing.picture import Ink, Layer, Shape
from scorecraft.loaf.areas import on_plan, rims_of
from scorecraft.loaf.dome import Loaf
from scorecraft.loaf.plan import STRAY_MM, plan_strings

RIM_POINTS = 1440


def plan_lines(loaf: Loaf, lines: Sequence[Line]) -> list[Line]:
    """Project sheet lines (mm) to plan, point by point."""
    return [shapely.get_coordinates(each) for each in plan_strings(loaf, lines)]


def cut_plans(layout: Layout) -> list[Line]:
    """Project every cut of a layout to plan, in order (mm)."""
    return plan_lines(layout.loaf, [cut.line for cut in layout.cuts])


def mark_plans(layout: Layout) -> list[Line]:
    """Project the string lines of a layout to plan (mm), as far as they lie on the loaf."""
    lines = plan_strings(layout.loaf, layout.marks.lines)
    kept = shapely.intersection(lines, on_plan(layout.loaf, RIM_POINTS))
    parts = shapely.get_parts(kept)
    whole = parts[shapely.length(parts) > 0]
    return [shapely.get_coordinates(each) for each in whole]


def rim_plan(loaf: Loaf) -> Line:
    """Return the outer rim as an open ring of plan points (mm), for a closed shape."""
    return rim_plans(loaf)[0]


@lru_cache(maxsize=8)
def rim_plans(loaf: Loaf) -> tuple[Line, ...]:
    """Return the rim, and that of a hole, as open rings of plan points (mm)."""
    rims = tuple(rims_of(shapely.simplify(on_plan(loaf, RIM_POINTS), STRAY_MM)))
    for rim in rims:
        rim.setflags(write=False)
    return rims


def on_paper(points: Line, centre: tuple[float, float], scale: float = 1.0) -> Line:
    """Lay plan points (y away from the baker) on paper (y down), the crown at `centre`."""
    laid: Line = np.array(centre) + points * np.array([scale, -scale])
    return laid


def cut_layer(layout: Layout, lines: Sequence[Line], ink_of: Callable[[float, Line], Ink]) -> Layer:
    """Draw cuts by depth, the deep ones on top; `lines` are the cuts on paper, in order.

    `ink_of` gives the ink of a cut by its depth (mm) and its line.
    """
    order = sorted(range(len(lines)), key=lambda index: layout.cuts[index].depth_mm)
    cuts = []
    for index in order:
        cut, line = layout.cuts[index], lines[index]
        css = f"cut {band(cut.depth_mm)} {cut.kind}"
        title = f"{cut.name}, {cut.depth_mm:.3g} mm deep"
        ink = ink_of(cut.depth_mm, line)
        cuts.append(Shape((line,), ink=ink, css=css, data={"cut": str(index)}, title=title))
    return Layer("cuts", tuple(cuts))


def along(points: Line, part: float) -> tuple[Line, float]:
    """Find the point at a part (0 to 1) of a polyline's length, and the line's angle there.

    The angle is in radians from +x towards +y of the points' own axes.
    """
    steps = np.hypot(*np.diff(points, axis=0).T)
    gone = np.concatenate([[0.0], np.cumsum(steps)])
    at = part * gone[-1]
    index = min(int(np.searchsorted(gone, at, side="right")) - 1, len(steps) - 1)
    leg = points[index + 1] - points[index]
    share = (at - gone[index]) / steps[index] if steps[index] else 0.0
    return points[index] + share * leg, float(np.arctan2(leg[1], leg[0]))
