"""The ring of degrees about a loaf: how far to turn the turntable."""

import numpy as np
import shapely

from scorecraft.arrays import Line
from scorecraft.drawing.inks import TICK_INK
from scorecraft.drawing.picture import Ink, Label, Layer, Shape
from scorecraft.drawing.plan import on_paper, rim_plan
from scorecraft.drawing.text import CAP_HEIGHT
from scorecraft.loaf.dome import Loaf

GAP_MM = 1.5
TICK_MM = 2.0
LONG_TICK_MM = 3.0
NUMBER_GAP_MM = 1.0
NUMBER_MM = 4.0
"""Height of the ring's digits: legible at arm's length."""
DIAL_MM = GAP_MM + LONG_TICK_MM + NUMBER_GAP_MM + NUMBER_MM
"""How far the ring reaches out from the rim."""
TICK_EVERY = 10
NUMBER_EVERY = 30


def dial(loaf: Loaf, centre: tuple[float, float]) -> Layer:
    """Draw ticks every 10 and numbers every 30 degrees around the rim, 0 at 12 o'clock.

    The ring keeps its distance from the rim of a loaf of any shape; degrees grow clockwise and
    each tick points from the crown.
    """
    rim = shapely.Polygon(rim_plan(loaf))
    inner, middle, outer = (
        shapely.buffer(rim, GAP_MM + out, quad_segs=64) for out in (0.0, TICK_MM, LONG_TICK_MM)
    )
    half = LONG_TICK_MM + NUMBER_GAP_MM + NUMBER_MM / 2
    track = shapely.buffer(rim, GAP_MM + half, quad_segs=64)
    ticks = []
    numbers = []
    for degree in range(0, 360, TICK_EVERY):
        long = degree % NUMBER_EVERY == 0
        ends = [crossing(inner, degree), crossing(outer if long else middle, degree)]
        ticks.append(on_paper(np.array(ends), centre))
        if long:
            numbers.append(_number(track, degree, centre))
    ring = on_paper(shapely.get_coordinates(inner.exterior)[:-1], centre)
    return Layer(
        "turntable ring",
        (
            Shape((ring,), closed=True, ink=Ink(0.18)),
            Shape(tuple(ticks), ink=TICK_INK),
            *numbers,
        ),
    )


def crossing(area: shapely.Polygon, degree: float) -> Line:
    """Find where the ray from the crown at a turntable angle leaves a star-shaped area (mm)."""
    angle = np.radians(degree)
    far = 2 * max(abs(value) for value in area.bounds)
    ray = shapely.LineString([(0, 0), (far * np.sin(angle), far * np.cos(angle))])
    points = shapely.get_coordinates(shapely.intersection(ray, area.exterior))
    farthest: Line = points[np.argmax(np.hypot(*points.T))]
    return farthest


def _number(track: shapely.Polygon, degree: int, centre: tuple[float, float]) -> Label:
    """Set a number along the ring, read from inside above and from outside below."""
    turn = outward(track, degree) + (np.pi if 90 < degree < 270 else 0.0)
    x, y = on_paper(crossing(track, degree), centre).tolist()
    size, bold = NUMBER_MM / CAP_HEIGHT, degree == 0
    return Label(f"{degree}°", (x, y), size, "middle", "middle", bold, turn=turn)


def outward(track: shapely.Polygon, degree: float) -> float:
    """Give the turntable angle (radians) of the track's outward normal at a turntable angle."""
    before, after = crossing(track, degree - 1), crossing(track, degree + 1)
    tangent = after - before
    return float(np.arctan2(-tangent[1], tangent[0]))
