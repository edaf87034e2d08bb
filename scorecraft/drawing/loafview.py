"""A small picture of the loaf with its cuts: for the gallery, a notebook, the steps of a card."""

from collections.abc import Collection, Sequence

import numpy as np

from scorecraft.arrays import Line
from scorecraft.cuts import Cut, Layout
from scorecraft.drawing.inks import band
from scorecraft.drawing.paint import Paint, RadialGradient, Stop
from scorecraft.drawing.picture import BLACK, Ink, Layer, Picture, Shape
from scorecraft.drawing.plan import cut_plans, on_paper, rim_plan, rim_plans
from scorecraft.loaf.dome import Loaf

DOUGH = (Stop(0.0, "#fdf8ee"), Stop(0.55, "#f6ead4"), Stop(0.86, "#ead6b4"), Stop(1.0, "#d5b98d"))
"""Floured dough in soft light from the upper left, darker where the dome falls away."""
RIM_COLOR = "#b8986a"
CUT_COLOR = "#3b2a1b"
FAINT_COLOR = "#b9b2a8"
MARGIN = 0.04
"""White around the loaf, as a part of the picture's width."""
THINNEST_MM = 0.12


def loaf_picture(
    layout: Layout,
    *,
    width_mm: float,
    strong: Collection[int] | None = None,
    shaded: bool = True,
) -> Picture:
    """Draw the loaf from above, `width_mm` wide with its white margin.

    `strong` are the indexes of cuts to draw dark, the others faint; None draws all dark.
    Unshaded, the loaf is a plain outline for printing in black.
    """
    edge = MARGIN * width_mm
    left, low, right, high = _bounds(layout.loaf)
    scale = (width_mm - 2 * edge) / (right - left)
    height = (high - low) * scale + 2 * edge
    centre = (edge - left * scale, edge + high * scale)
    layer = loaf_layer(layout, centre, scale, strong=strong, shaded=shaded)
    return Picture(
        width_mm,
        height,
        layout.title,
        f"{layout.loaf.called} from above with {len(layout.cuts)} cuts",
        (layer,),
        css="loafview",
    )


def loaf_layer(
    layout: Layout,
    centre: tuple[float, float],
    scale: float,
    *,
    strong: Collection[int] | None = None,
    shaded: bool = True,
    plans: Sequence[Line] | None = None,
) -> Layer:
    """Draw the loaf at a scale with its crown at `centre` (paper mm); deep and strong on top.

    `plans` are the cuts' plan lines (`cut_plans`), if they are known already.
    """
    lines = cut_plans(layout) if plans is None else plans
    rims = tuple(on_paper(rim, centre, scale) for rim in rim_plans(layout.loaf))
    ink = Ink(_ink_width(0.8, scale), color=RIM_COLOR if shaded else BLACK)
    dough = Shape(rims, closed=True, ink=ink, fill=_dough(rims[0]) if shaded else None, css="dough")
    dark = set(range(len(lines)) if strong is None else strong)
    order = sorted(
        range(len(lines)), key=lambda index: (index in dark, layout.cuts[index].depth_mm)
    )
    cuts = []
    for index in order:
        points = on_paper(lines[index], centre, scale)
        if index in dark:
            cuts.append(_cut(layout.cuts[index], index, points, scale))
        else:
            cuts.append(_faint(index, points, scale))
    return Layer("loaf", (dough, Layer("cuts", tuple(cuts))))


def _bounds(loaf: Loaf) -> tuple[float, float, float, float]:
    rim = rim_plan(loaf)
    (left, low), (right, high) = rim.min(axis=0), rim.max(axis=0)
    return float(left), float(low), float(right), float(high)


def _cut(cut: Cut, index: int, points: Line, scale: float) -> Shape:
    return Shape(
        (points,),
        ink=Ink(_ink_width(0.4 + 0.14 * cut.depth_mm, scale), color=CUT_COLOR),
        css=f"cut {band(cut.depth_mm)} {cut.kind}",
        data={"cut": str(index)},
        title=f"{cut.name}, {cut.depth_mm:.3g} mm deep",
    )


def _faint(index: int, points: Line, scale: float) -> Shape:
    ink = Ink(_ink_width(0.4, scale), color=FAINT_COLOR)
    return Shape((points,), ink=ink, css="cut faint", data={"cut": str(index)})


def _ink_width(full_size: float, scale: float) -> float:
    """Scale a line's width, a little less than the drawing: thin lines must stay visible."""
    return max(THINNEST_MM, full_size * float(np.sqrt(scale)) * (0.5 + 0.5 * scale))


def _dough(rim: Line) -> Paint:
    """Light a dome: an ellipse about the rim's box, brightest up and to the left."""
    low, high = rim.min(axis=0), rim.max(axis=0)
    (x, y), (rx, ry) = (low + high) / 2, (high - low) / 2
    reach = float(np.max(np.hypot(*((rim - (x, y)) / (rx, ry)).T)))
    radii = (float(rx) * reach, float(ry) * reach)
    focus = (float(x - 0.18 * rx), float(y - 0.22 * ry))
    return RadialGradient((float(x), float(y)), radii, DOUGH, focus)
