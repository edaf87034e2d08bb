"""Drawings for cutting machines: flat thin lines in mm, one named layer for each job or depth.

No clip, use, transform, dash or fill, and no line twice. A line of 100 mm in a group of its own
shows whether the machine's program read the size right: leave it out when cutting.
"""

from collections.abc import Sequence

import numpy as np
import shapely

from scorecraft.arrays import Line
from scorecraft.cuts import Layout
from scorecraft.drawing.picture import BLACK, Ink, Item, Layer, Picture, Shape, line
from scorecraft.drawing.plan import cut_plans, on_paper, rim_plans
from scorecraft.drawing.templates.telling import CUTTER
from scorecraft.plate.doubles import without_doubles
from scorecraft.plate.plate import Plate

HAIRLINE_MM = 0.1
"""Line width of the drawings for cutting machines."""
CUT, MARKED = BLACK, "#808080"
"""Black is cut and grey is marked or left alone; the names of the layers say which."""
EDGE_MM = 5.0
CHECK_MM = 100.0
CHECK_GAP_MM = 6.0
STRAY_MM = 0.01


def plate_cutter(plate: Plate, title: str) -> Picture:
    """Draw a plate for a cutter: mark the rim, then cut the holes, then the edge."""
    layers = (
        ("mark rim", MARKED, plate.score_lines, False),
        ("cut slots", CUT, [unrepeated(ring) for ring in plate.polygon.interiors], True),
        ("cut edge", CUT, [unrepeated(plate.polygon.exterior)], True),
    )
    return _flat(plate.polygon.bounds, layers, f"{title}: stencil to cut")


def cuts_cutter(layout: Layout) -> Picture:
    """Draw the cut lines of a layout, seen from above, one group for each depth; and the rim."""
    strings = [shapely.linestrings(each) for each in cut_plans(layout)]
    single = without_doubles(strings)
    depths = sorted({round(cut.depth_mm, 2) for cut in layout.cuts}, reverse=True)
    layers: list[Lines] = []
    for depth in depths:
        lines = [
            np.asarray(piece.coords)
            for cut, pieces in zip(layout.cuts, single, strict=True)
            if round(cut.depth_mm, 2) == depth
            for piece in pieces
        ]
        layers.append((f"cut {depth:g} mm deep", CUT, lines, False))
    rims = rim_plans(layout.loaf)
    layers.append(("mark rim", MARKED, rims, True))
    drawn = shapely.MultiLineString([*strings, np.vstack([rims[0], rims[0][:1]])])
    return _flat(drawn.bounds, layers, f"{layout.title}: cut lines")


Lines = tuple[str, str, Sequence[Line], bool]
"""Name, colour, lines (plan mm, y up) and whether they are closed."""


def _flat(
    bounds: tuple[float, float, float, float], layers: Sequence[Lines], title: str
) -> Picture:
    """Lay plan lines on a sheet of their size, with the check line below them."""
    left, low, right, high = bounds
    width = max(right - left, CHECK_MM) + 2 * EDGE_MM
    centre = (width / 2 - (left + right) / 2, EDGE_MM + high)
    below = EDGE_MM + high - low + CHECK_GAP_MM
    groups: list[Item] = []
    for name, color, lines, closed in layers:
        ink = Ink(HAIRLINE_MM, color=color)
        shapes = [Shape((on_paper(each, centre),), closed=closed, ink=ink) for each in lines]
        if shapes:
            groups.append(Layer(name, tuple(shapes)))
    check = line(EDGE_MM, below, EDGE_MM + CHECK_MM, below)
    groups.append(Layer("check 100 mm", (Shape((check,), ink=Ink(HAIRLINE_MM, color=MARKED)),)))
    return Picture(width, below + EDGE_MM, title, CUTTER, tuple(groups), css="cutter")


def unrepeated(ring: shapely.LinearRing) -> Line:
    """Thin out a closed ring a little and drop its repeated end."""
    thin = shapely.simplify(shapely.Polygon(ring), STRAY_MM)
    corners: Line = shapely.get_coordinates(thin.exterior)[:-1]
    return corners
