"""A map of the tension that the cuts leave in the skin: where a loaf would burst."""

from collections.abc import Callable, Sequence

import numpy as np
import shapely

from scorecraft.arrays import Floats, Line
from scorecraft.curves import length
from scorecraft.cuts import Layout
from scorecraft.drawing.inks import WRITING
from scorecraft.drawing.picture import Ink, Item, Label, Layer, Picture, Shape, box
from scorecraft.drawing.plan import cut_plans, on_paper, rim_plans
from scorecraft.drawing.tension.contour import above, grid_triangles, inner_edges
from scorecraft.drawing.tension.telling import TENSION
from scorecraft.drawing.text import width_mm as text_width
from scorecraft.drawing.text import wrapped

Field = Callable[[Floats], Floats]
"""Tension at sheet points (N, 2), mm: (N, 2, 2) as parts of that of the uncut skin, or (N,)."""

MAP = ("#fbf5e6", "#f6e6c4", "#efcf9a", "#e2ae73", "#cd8455", "#a9573f", "#7b3230")
"""Tension from none to more than the uncut skin has: every step is darker than the last."""
MAP_LINE = "#6b4636"
MAP_CUT = "#26303a"
BOARD = "#efe9df"
MARGIN_MM = 12.0
STEPS = 72
"""Points across the loaf at which the tension is taken."""
LEVELS = (0.2, 0.4, 0.6, 0.8, 1.0, 1.2)
LEVEL_INK_MM = 0.25
LETTER_MM = 5.0
CLEAR_MM = 6.0
"""A label so far from all cuts is clear enough."""
LABEL_LEAST_MM = 20.0
"""A contour shorter than this goes without a label."""
SWATCH_MM = 5.0
FIRST_ROW_MM = SWATCH_MM + 2 * LETTER_MM + 4.0
"""How far below the top of the legend its first line stands."""
ROW = 1.35
"""Distance of the legend's lines, in letters."""
DIGITS = 5
SMOOTH_MM = 0.15
SPECK_MM2 = 12.0


def tension_map(layout: Layout, tension_at: Field, *, width_mm: float | None = None) -> Picture:
    """Map the greatest tension left at every place of the loaf, seen from above, with a legend.

    Full size unless a picture width (mm) is given. Values are told by shade, by contour lines
    and by labels on them.
    """
    wide = layout.loaf.width_mm + 2 * MARGIN_MM
    wide = max(wide, 150.0)
    high = layout.loaf.length_mm + 2 * MARGIN_MM
    scale = 1.0 if width_mm is None else width_mm / wide
    centre = (wide / 2 * scale, high / 2 * scale)
    rows = wrapped(TENSION, wide - 2 * MARGIN_MM, LETTER_MM)
    height = (high + FIRST_ROW_MM + len(rows) * ROW * LETTER_MM + MARGIN_MM / 2) * scale
    ground = Shape((box(0, 0, wide * scale, height),), closed=True, fill=BOARD, css="board")
    items = (
        ground,
        tension_layer(layout, tension_at, centre, scale),
        _legend(high * scale, wide * scale, scale, rows),
    )
    return Picture(wide * scale, height, f"{layout.title}: tension", TENSION, items, css="tension")


def tension_layer(
    layout: Layout, tension_at: Field, centre: tuple[float, float], scale: float = 1.0
) -> Layer:
    """Draw the map alone, the crown at `centre` of the paper (mm)."""
    plan, values = tension_grid(layout, tension_at)
    rims = rim_plans(layout.loaf)
    rim = shapely.Polygon(rims[0], rims[1:])
    triangles = grid_triangles(STEPS, STEPS)
    areas: list[Item] = [_area(rim, MAP[0], centre, scale)]
    lines: list[Item] = []
    contours: list[tuple[float, list[Line]]] = []
    for level, color in zip(LEVELS, MAP[1:], strict=True):
        over = shapely.simplify(above(plan, values, triangles, level), SMOOTH_MM)
        over = without_specks(shapely.intersection(over, rim))
        if over.is_empty:
            continue
        areas.append(_area(over, color, centre, scale))
        edges = list(inner_edges(over, rim))
        contours.append((level, edges))
        ink = Ink(LEVEL_INK_MM * scale, color=MAP_LINE)
        lines.append(
            Shape(tuple(on_paper(each, centre, scale) for each in edges), ink=ink, css="contour")
        )
    cuts = Layer("cuts", tuple(_cuts(layout, centre, scale)))
    frame = Shape(
        tuple(on_paper(each, centre, scale) for each in rims),
        closed=True,
        ink=Ink(0.5 * scale, color=MAP_LINE),
        css="rim",
    )
    labels = [item for each in _labels(contours, layout) for item in _label(*each, centre, scale)]
    return Layer("tension", (*areas, *lines, cuts, frame, *labels))


def without_specks(area: shapely.Geometry) -> shapely.Geometry:
    """Leave out the pieces of an area that are too small to mean anything."""
    parts = shapely.get_parts(area)
    return shapely.union_all(parts[shapely.area(parts) >= SPECK_MM2])


def tension_grid(layout: Layout, tension_at: Field) -> tuple[Line, Floats]:
    """Take the greatest tension on a square grid over the loaf: plan points (N, 2), values (N,).

    Points beyond the rim are taken at the rim. Values are rounded: their last digits hang on how
    many threads solved for them.
    """
    half = np.array([layout.loaf.width_mm, layout.loaf.length_mm]) / 2 * 1.01
    x, y = (np.linspace(-reach, reach, STEPS) for reach in half)
    plan = np.stack(np.meshgrid(x, y), axis=-1).reshape(-1, 2)
    radius = layout.loaf.outline.radius(np.arctan2(plan[:, 1], plan[:, 0]))
    inside = plan * np.minimum(1.0, radius / np.maximum(np.hypot(*plan.T), 1e-9))[:, None]
    values: Floats = np.asarray(tension_at(layout.loaf.plan_to_sheet(inside)), dtype=np.float64)
    if values.ndim == 3:
        values = np.asarray(np.linalg.eigvalsh(values)[:, -1], dtype=np.float64)
    return plan, np.round(_smoothed(values.reshape(STEPS, STEPS)).ravel(), DIGITS)


def _smoothed(values: Floats) -> Floats:
    """Average each point a little with its neighbours: next to a cut its panels show through."""
    wide = np.pad(values, 1, mode="edge")
    down = wide[:-2] + 2 * wide[1:-1] + wide[2:]
    return np.asarray((down[:, :-2] + 2 * down[:, 1:-1] + down[:, 2:]) / 16)


def _area(area: shapely.Geometry, color: str, centre: tuple[float, float], scale: float) -> Shape:
    parts = shapely.get_parts(area)
    rings = shapely.get_rings(parts[shapely.get_type_id(parts) == 3])
    laid = tuple(on_paper(shapely.get_coordinates(ring)[:-1], centre, scale) for ring in rings)
    return Shape(laid, closed=True, fill=color, css="tension")


def _labels(levels: list[tuple[float, list[Line]]], layout: Layout) -> list[tuple[float, Line]]:
    """Find for every level the place on its contours that is clearest of cuts and other labels."""
    taken = [*(shapely.LineString(each) for each in cut_plans(layout))]
    found = []
    for level, edges in levels:
        edges = [each for each in edges if length(each) > LABEL_LEAST_MM]
        if not edges:
            continue
        tries = shapely.points(np.concatenate([_spread(each) for each in edges]))
        clear = np.array([shapely.distance(tries, each) for each in taken]).min(axis=0)
        best = int(np.argmax(np.minimum(clear, CLEAR_MM)))
        found.append((level, shapely.get_coordinates(tries[best])[0]))
        taken.append(tries[best])
    return found


def _spread(edge: Line) -> Line:
    """Points every few mm along a contour."""
    parts = np.linspace(0.0, 1.0, max(4, int(length(edge) / 3)))
    line = shapely.LineString(edge)
    return np.asarray(shapely.get_coordinates(line.interpolate(parts, normalized=True)))


def _label(level: float, at: Line, centre: tuple[float, float], scale: float) -> list[Item]:
    """Write a level in a box of its own, so that it can be read."""
    x, y = on_paper(at, centre, scale)
    text, size = f"{level * 100:.0f}", 0.8 * LETTER_MM * scale
    wide = text_width(text, size) + 0.6 * size
    ground = box(x - wide / 2, y - 0.65 * size, wide, 1.3 * size)
    return [
        Shape((ground,), closed=True, fill=BOARD, fill_opacity=0.9, css="label"),
        Label(text, (float(x), float(y)), size, "middle", "middle", color=WRITING),
    ]


def _cuts(layout: Layout, centre: tuple[float, float], scale: float) -> list[Item]:
    """Draw the cuts, the deeper the bolder, in a light casing that parts them from the map."""
    items: list[Item] = []
    plans = [on_paper(each, centre, scale) for each in cut_plans(layout)]
    for case in (True, False):
        for index, points in enumerate(plans):
            wide = (0.3 + 0.09 * layout.cuts[index].depth_mm) * scale
            ink = Ink(wide + (0.9 * scale if case else 0), color=BOARD if case else MAP_CUT)
            data = {} if case else {"cut": str(index)}
            items.append(Shape((points,), ink=ink, css="casing" if case else "cut", data=data))
    return items


def _legend(top: float, wide: float, scale: float, rows: Sequence[str]) -> Layer:
    """Draw the shades with their percentages, and say what they mean."""
    margin, swatch = MARGIN_MM * scale, SWATCH_MM * scale
    step = (wide - 2 * margin) / len(MAP)
    size = LETTER_MM * scale
    items: list[Item] = []
    for number, color in enumerate(MAP):
        x = margin + number * step
        ring = box(x, top, step, swatch)
        ink = Ink(LEVEL_INK_MM * scale, color=MAP_LINE, cap="butt", join="miter")
        items.append(Shape((ring,), closed=True, ink=ink, fill=color, css="key"))
        if number:
            text = f"{LEVELS[number - 1] * 100:.0f} %"
            at = (x, top + swatch + 1.5 * scale)
            items.append(Label(text, at, size, "middle", "top", color=WRITING))
    first = top + FIRST_ROW_MM * scale
    for row, text in enumerate(rows):
        items.append(Label(text, (margin, first + row * ROW * size), size, color=WRITING))
    return Layer("legend", tuple(items))
