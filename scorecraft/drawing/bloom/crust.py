"""The crust of a baked loaf: its shadow on the board, its browning under the light, its flour.

All of it is plain fills and gradients. The dome is painted as caps, one on top of the other, each
with the gradient that the light makes along its edge: on an ellipsoid that is exactly linear.
"""

import math
from collections.abc import Iterator

import numpy as np
import shapely

from scorecraft.arrays import Line
from scorecraft.drawing.bloom.bread import (
    BLISTER,
    CRUST,
    FLOUR,
    GLEAM,
    SHADOW,
    SPECK,
    Ramp,
    lit,
    mixed,
    on_ramp,
)
from scorecraft.drawing.bloom.eye import LIGHT, POLYGON, Eye
from scorecraft.drawing.paint import LinearGradient, Stop
from scorecraft.drawing.picture import Ink, Item, Layer, Shape

CAPS = 34
GLUE_MM = 0.005
"""Patches of a cap overlap so much, that no gap is left between them."""
COVERED = 0.88
"""Inside this share of the way to the rim the layers of flour cover the crust."""
RIM_STATIONS = 240
STRAY_MM = 0.02
SHADOW_STEPS = 16
DUST_LAYERS = 56
DUST_REACH = (0.05, 0.97)
"""How far out the innermost and the outermost layer of flour reach, of the way to the rim."""
DUST_EACH = 0.055
"""How much each layer hides of what lies below it, until nearly all is hidden."""
DUST_MOST = 0.94
DUST_SOFT = 0.62
"""Flour scatters light: it shows only so much of the shades."""
UNEVEN = 0.026
"""How far the edge of a layer of flour wanders, of the way to the rim."""
UNEVEN_STATIONS = 240
SPECKS_PER_CM2 = 4.0
BLISTERS_PER_CM2 = 0.8
PER_PATH = 120
"""Specks drawn as one path."""
DOT = np.array([0.01, 0.0])
"""A dot is a line so short, with round ends."""


def shadow(eye: Eye) -> Layer:
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
    return Layer("shadow", tuple(items))


def crust(eye: Eye, ramp: Ramp = CRUST) -> Layer:
    """Paint the dome from the rim to the crown in the colours of a ramp.

    From above, flour covers all but the outermost caps, and the others are left out.
    """
    items: list[Item] = []
    for outer, inner, cap in caps(eye):
        if eye.from_above and outer < COVERED:
            break
        middle = (outer + inner) / 2
        paint = lit_paint(eye, middle, on_ramp(ramp, middle))
        items.append(Shape(cap, closed=True, fill=paint, css="crust"))
    return Layer("crust", tuple(items))


def caps(eye: Eye, count: int = CAPS) -> Iterator[tuple[float, float, tuple[Line, ...]]]:
    """Yield level by level what lies inside it as seen by the eye, from the rim to the crown.

    Each comes with the share of the way to the rim of its level and of the next one inside.
    """
    edges = np.sin(np.linspace(np.pi / 2, 0.0, count + 1))
    level_rings = [_level(eye, t) for t in edges]
    nested: list[shapely.Geometry] = []
    inside: shapely.Geometry = shapely.Polygon()
    for ring, t in zip(reversed(level_rings[:-1]), reversed(edges[:-1]), strict=True):
        inside = _joined(eye, inside, ring, float(t))
        nested.append(inside)
    for k, area in enumerate(reversed(nested)):
        parts = shapely.get_parts(shapely.simplify(area, STRAY_MM))
        areas = parts[shapely.get_type_id(parts) == POLYGON]  # a level seen edge-on is a line
        rings = [shapely.get_coordinates(each.exterior)[:-1] for each in areas]
        if rings:
            yield float(edges[k]), float(edges[k + 1]), tuple(rings)


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
    pieces = shapely.buffer(shapely.convex_hull(shapely.multipoints(quads)), GLUE_MM)
    return shapely.union_all([inside, *pieces])


def _base(eye: Eye) -> shapely.Polygon:
    """Where the loaf stands on the board, on the paper."""
    ring = _level(eye, 1.0)
    area = shapely.Polygon(ring)
    return area if area.area > 1 else shapely.buffer(shapely.LineString(ring), 1.0)


def lit_paint(eye: Eye, t: float, below: str, dust: str = "", hides: float = 0.0) -> LinearGradient:
    """Light a colour along the level at share t: the best linear gradient towards the light.

    Where a `dust` of another colour hides a part of it, the two are lit apart, then mixed.
    """
    plan = eye.loaf.outline.points(72) * t
    seen = eye.seen(plan)
    plan = plan[seen] if seen.sum() > 8 else plan
    way = LIGHT[:2] / math.hypot(*LIGHT[:2]) * [1, -1]
    paper = eye.paper(plan)
    along, shade = paper @ way, eye.shade(plan)
    low, high = float(along.min()), float(along.max())
    slope, start = np.polyfit(along, shade, 1) if high - low > 1e-6 else (0.0, float(shade.mean()))
    middle = paper.mean(axis=0)
    first, last = (middle + way * (at - float(middle @ way)) for at in (low, high))
    stops = []
    for part in (0.0, 0.25, 0.5, 0.75, 1.0):
        light = float(start + slope * (low + part * (high - low)))
        color = lit(below, light)
        if dust:
            color = mixed(color, lit(dust, 1 + DUST_SOFT * (light - 1)), hides)
        stops.append(Stop(part, color))
    return LinearGradient(_pair(first), _pair(last), tuple(stops))


def _pair(point: Line) -> tuple[float, float]:
    return float(point[0]), float(point[1])


def flour(
    eye: Eye,
    amount: float,
    rng: np.random.Generator,
    ramp: Ramp = CRUST,
    layers: int = DUST_LAYERS,
) -> Layer:
    """Dust the loaf: layers with uneven edges, thin at the rim and dense above, and loose grains.

    Every layer is opaque, in the colour of the crust (`ramp`) seen through the flour up to it:
    thin veils laid over one another would add up the rounding of their colours.
    """
    items: list[Item] = []
    inner, outer = DUST_REACH
    reaches = np.sin(np.linspace(math.asin(outer), math.asin(inner), layers))
    for number, reach in enumerate(reaches.tolist(), start=1):
        hides = min(1 - (1 - DUST_EACH) ** (number * DUST_LAYERS / layers), DUST_MOST) * amount
        paint = lit_paint(eye, reach, on_ramp(ramp, reach), on_ramp(FLOUR, reach), hides)
        for ring in eye.rings(shapely.Polygon(_uneven(eye, reach, rng))):
            items.append(Shape((ring,), closed=True, fill=paint, css="flour"))
    items += _grains(eye, amount, rng)
    return Layer("flour", tuple(items))


def _uneven(eye: Eye, reach: float, rng: np.random.Generator) -> Line:
    """Take a level and make its edge uneven: many waves, the short ones weaker.

    The waves are as high on the dough everywhere, so on the steep flank they are low in plan.
    """
    outline = eye.loaf.outline
    theta = outline.directions(UNEVEN_STATIONS)
    waves = np.arange(3, 50)
    phase = rng.uniform(0, math.tau, len(waves))
    size = rng.normal(0, 1, len(waves)) / waves**0.7
    noise = (size[:, None] * np.cos(waves[:, None] * theta + phase[:, None])).sum(axis=0)
    level = outline.radius(theta)[:, None] * np.column_stack([np.cos(theta), np.sin(theta)])
    upright = eye.loaf.normal(level * reach)[:, 2]
    t = np.clip(reach + UNEVEN * min(1.0, 3 * reach) * upright * noise, 0.01, 0.995)
    return np.asarray(t[:, None] * level)


def _scattered(eye: Eye, count: int, rng: np.random.Generator, low: float, high: float) -> Line:
    """Scatter plan points over the skin between two levels, of those the seen ones."""
    theta = rng.uniform(0, math.tau, count)
    upright = rng.uniform(math.sqrt(1 - high**2), math.sqrt(1 - low**2), count)
    t = np.sqrt(1 - upright**2)
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
        yield Shape(tuple(np.array([at, at + DOT]) for at in part), ink=ink, css="grain")


def blisters(eye: Eye, rng: np.random.Generator) -> Layer:
    """Raise small blisters where the crust is bare, bright towards the light, dark below."""
    count = int(eye.loaf.plan_area_mm2 / 100 * BLISTERS_PER_CM2)
    plan = _scattered(eye, count, rng, 0.8, 0.99)
    if not len(plan):
        return Layer("blisters", ())
    loops = np.stack([_blister(eye, at, rng) for at in plan])
    size = np.abs(loops).max(axis=(1, 2))[:, None, None]
    at = plan[:, None, :]
    away = LIGHT[:2] * size
    layers = (
        (at + loops - 0.4 * away, SPECK, 0.4),
        (at + loops, BLISTER, 0.35),
        (at + 0.45 * loops + 0.35 * away, GLEAM, 0.4),
    )
    return Layer(
        "blisters",
        tuple(
            Shape(tuple(rings), closed=True, fill=color, fill_opacity=opacity, css="blister")
            for areas, color, opacity in layers
            if (rings := eye.rings(shapely.polygons(areas)))
        ),
    )


def _blister(eye: Eye, at: Line, rng: np.random.Generator) -> Line:
    """Outline (8, 2) of one blister about its middle, lying on the slope of the dough."""
    angle = np.linspace(0, math.tau, 9)[:-1] + rng.uniform(0, math.tau)
    size, long = rng.gamma(2.0, 0.16) + 0.2, rng.uniform(1.0, 1.6)
    up, around = long * size * np.cos(angle), size * np.sin(angle)
    out = at / max(float(np.hypot(*at)), 1e-9)
    upright = float(eye.loaf.normal(at[None])[0, 2])
    aside = np.array([-out[1], out[0]])
    return np.asarray(np.outer(up * upright, out) + np.outer(around, aside))
