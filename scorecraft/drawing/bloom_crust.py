"""The crust of a baked loaf: its shadow on the board, its browning under the light, its flour.

All of it is plain fills and gradients. The dome is painted as caps, one on top of the other, each
with the gradient that the light makes along its edge: on an ellipsoid that is exactly linear.
"""

import math
from collections.abc import Iterator

import numpy as np
import shapely

from scorecraft.drawing.bread import (
    BLISTER,
    CRUST,
    FLOUR,
    GLEAM,
    SHADOW,
    SPECK,
    Ramp,
    lit,
    on_ramp,
)
from scorecraft.drawing.eye import LIGHT, Eye
from scorecraft.drawing.picture import Group, Ink, Item, Line, LinearGradient, Shape, Stop

CAPS = 34
RIM_STATIONS = 240
STRAY_MM = 0.02
SHADOW_STEPS = 16
DUST_LAYERS = 26
DUST_REACH = (0.45, 0.97)
"""How far out the innermost and the outermost layer of flour reach, of the way to the rim."""
DUST_OPACITY = 0.092
DUST_SOFT = 0.62
"""Flour scatters light: it shows only so much of the shades."""
SPECKS_PER_CM2 = 5.0
PER_PATH = 120
"""Specks drawn as one path."""


def shadow(eye: Eye) -> Group:
    """Draw the loaf's soft shadow on the board, as layers that grow and fade."""
    base = _base(eye)
    away = -LIGHT[:2] * np.array([1, -1]) * eye.loaf.height_mm * eye.scale
    items = []
    for step in range(SHADOW_STEPS):
        part = step / (SHADOW_STEPS - 1)
        grown = shapely.buffer(base, (7.0 * (1 - part) - 1.0) * eye.scale)
        shift = away * (0.02 + 0.1 * (1 - part) * (1 if eye.from_above else 0.4))
        ring = shapely.get_coordinates(shapely.simplify(grown, 0.1).exterior)[:-1] + shift
        items.append(Shape((ring,), closed=True, fill=SHADOW, fill_opacity=0.03, css="shadow"))
    return Group("shadow", tuple(items))


def crust(eye: Eye, ramp: Ramp = CRUST) -> Group:
    """Paint the dome from the rim to the crown in the colours of a ramp."""
    items: list[Item] = []
    for outer, inner, cap in caps(eye):
        middle = (outer + inner) / 2
        paint = lit_paint(eye, middle, on_ramp(ramp, middle))
        items.append(Shape((cap,), closed=True, fill=paint, css="crust"))
    return Group("crust", tuple(items))


def caps(eye: Eye, count: int = CAPS) -> Iterator[tuple[float, float, Line]]:
    """Yield level by level what lies inside it as seen by the eye, from the rim to the crown.

    Each comes with the share of the way to the rim of its level and of the next one inside.
    """
    edges = np.sin(np.linspace(np.pi / 2, 0.0, count + 1))
    level_rings = [_level(eye, t) for t in edges]
    nested: list[shapely.Geometry] = []
    inside: shapely.Geometry = shapely.Point(level_rings[-1][0])
    for ring, t in zip(reversed(level_rings[:-1]), reversed(edges[:-1]), strict=True):
        inside = _joined(eye, inside, ring, float(t))
        nested.append(inside)
    for k, area in enumerate(reversed(nested)):
        outline = shapely.simplify(area, STRAY_MM)
        yield float(edges[k]), float(edges[k + 1]), shapely.get_coordinates(outline.exterior)[:-1]


def _level(eye: Eye, t: float) -> Line:
    return eye.paper(eye.loaf.outline.points(RIM_STATIONS) * min(t, 1.0))


def _joined(eye: Eye, inside: shapely.Geometry, ring: Line, t: float) -> shapely.Geometry:
    """Add a level to the cap above it: a convex dome's cap is the hull of its levels."""
    if eye.from_above:
        return shapely.Polygon(ring)
    if not eye.loaf.outline.samples:
        return shapely.convex_hull(shapely.union(inside, shapely.MultiPoint(ring)))
    closed = np.vstack([ring, ring[:1]])
    inner = eye.paper(eye.loaf.outline.points(RIM_STATIONS) * max(t - 1.5 / CAPS, 0.0))
    inner = np.vstack([inner, inner[:1]])
    quads = np.stack([closed[:-1], closed[1:], inner[1:], inner[:-1]], axis=1)
    return shapely.union_all([inside, *shapely.convex_hull(shapely.multipoints(quads))])


def _base(eye: Eye) -> shapely.Polygon:
    """Where the loaf stands on the board, on the paper."""
    ring = _level(eye, 1.0)
    area = shapely.Polygon(ring)
    return area if area.area > 1 else shapely.buffer(shapely.LineString(ring), 1.0)


def lit_paint(eye: Eye, t: float, color: str, strength: float = 1.0) -> LinearGradient:
    """Light a colour along the level at share t: the best linear gradient towards the light."""
    plan = eye.loaf.outline.points(72) * t
    plan = plan[eye.seen(plan)] if eye.seen(plan).sum() > 8 else plan
    way = LIGHT[:2] / math.hypot(*LIGHT[:2])
    paper = eye.paper(plan)
    along = paper @ (way * [1, -1])
    shade = 1 + strength * (eye.shade(plan) - 1)
    low, high = float(along.min()), float(along.max())
    slope, start = np.polyfit(along, shade, 1) if high - low > 1e-6 else (0.0, float(shade.mean()))
    middle = paper.mean(axis=0)
    offset = float(middle @ (way * [1, -1]))
    first, last = (middle + way * [1, -1] * (at - offset) for at in (low, high))
    stops = tuple(
        Stop(round(part, 3), lit(color, float(start + slope * (low + part * (high - low)))))
        for part in (0.0, 0.25, 0.5, 0.75, 1.0)
    )
    return LinearGradient(_pair(first), _pair(last), stops)


def _pair(point: Line) -> tuple[float, float]:
    return float(point[0]), float(point[1])


def flour(eye: Eye, amount: float, rng: np.random.Generator) -> Group:
    """Dust the loaf: layers with uneven edges that thin out towards the rim, and loose grains."""
    items: list[Item] = []
    inner, outer = DUST_REACH
    for reach in outer - (outer - inner) * np.linspace(0, 1, DUST_LAYERS) ** 1.5:
        paint = lit_paint(eye, reach * 0.9, on_ramp(FLOUR, reach), DUST_SOFT)
        opacity = round(DUST_OPACITY * amount, 3)
        for laid in eye.rings(shapely.Polygon(_uneven(eye, reach, 0.01 + 0.05 * (1 - reach), rng))):
            items.append(
                Shape((laid,), closed=True, fill=paint, fill_opacity=opacity, css="flour")
            )
    items += _grains(eye, amount, rng)
    return Group("flour", tuple(items))


def _uneven(eye: Eye, reach: float, strength: float, rng: np.random.Generator) -> Line:
    """Take a level and make its edge uneven: many waves, the short ones weaker."""
    outline = eye.loaf.outline
    theta = outline.directions(360)
    waves = np.arange(3, 70)
    phase = rng.uniform(0, math.tau, len(waves))
    size = rng.normal(0, 1, len(waves)) / np.sqrt(waves)
    noise = (size[:, None] * np.cos(waves[:, None] * theta + phase[:, None])).sum(axis=0)
    t = np.clip(reach + strength * noise, 0.02, 0.995)
    return np.asarray((t * outline.radius(theta))[:, None] * np.column_stack([np.cos(theta), np.sin(theta)]))


def _scattered(eye: Eye, count: int, rng: np.random.Generator, low: float, high: float) -> Line:
    """Scatter plan points evenly between two levels, of those the seen ones."""
    theta = rng.uniform(0, math.tau, count)
    t = np.sqrt(rng.uniform(low**2, high**2, count))
    radius = eye.loaf.outline.radius(theta)
    accepted = rng.uniform(0, 1, count) < (radius / eye.loaf.outline.extremes[1]) ** 2
    plan = ((t * radius)[:, None] * np.column_stack([np.cos(theta), np.sin(theta)]))[accepted]
    return np.asarray(plan[eye.seen(plan)])


def _grains(eye: Eye, amount: float, rng: np.random.Generator) -> list[Item]:
    """Scatter grains of flour near the rim and bare brown pricks within the dust."""
    circle = math.pi * eye.loaf.outline.extremes[1] ** 2 / 100
    count = int(circle * SPECKS_PER_CM2)
    items: list[Item] = []
    for width, share, opacity in ((0.5, 0.5, 0.5), (0.85, 0.3, 0.4), (1.4, 0.12, 0.25)):
        white = _scattered(eye, int(count * share), rng, 0.82, 0.995)
        items += _dots(eye, white, width, on_ramp(FLOUR, 0.7), opacity * (0.4 + 0.6 * amount))
        bare = _scattered(eye, int(count * share), rng, 0.0, 0.97)
        items += _dots(eye, bare, width * 0.8, SPECK, opacity * 0.42)
    return items


def _dots(eye: Eye, plan: Line, width: float, color: str, opacity: float) -> Iterator[Item]:
    """Draw points as round dots, many in one path."""
    paper = eye.paper(plan)
    ink = Ink(width * eye.scale, color=color, opacity=round(opacity, 3))
    for first in range(0, len(paper), PER_PATH):
        part = paper[first : first + PER_PATH]
        yield Shape(tuple(np.array([at, at + [0.01, 0]]) for at in part), ink=ink, css="grain")


def blisters(eye: Eye, rng: np.random.Generator) -> Group:
    """Raise small blisters where the crust is bare: each dark below and bright towards the light."""
    area = eye.loaf.plan_area_mm2 / 100
    plan = _scattered(eye, int(area * 0.8), rng, 0.8, 0.995)
    size = rng.gamma(2.0, 0.16, len(plan)) + 0.2
    low, body, gleam = [], [], []
    angle = np.linspace(0, math.tau, 9)[:-1]
    for at, radius in zip(plan, size, strict=True):
        turn, long = rng.uniform(0, math.tau), rng.uniform(1.0, 1.7)
        loop = np.column_stack([long * np.cos(angle), np.sin(angle)]) * radius
        loop = loop @ np.array([[math.cos(turn), math.sin(turn)], [-math.sin(turn), math.cos(turn)]])
        low.append(at + loop + np.array([0.22, -0.26]) * radius)
        body.append(at + loop)
        gleam.append(at + 0.45 * loop + np.array([-0.25, 0.3]) * radius)
    layers = ((low, SPECK, 0.4), (body, BLISTER, 0.35), (gleam, GLEAM, 0.4))
    return Group(
        "blisters",
        tuple(
            Shape(tuple(eye.rings(shapely.polygons(np.array(rings)))), closed=True, fill=color, fill_opacity=opacity, css="blister")
            for rings, color, opacity in layers
            if rings
        ),
    )
