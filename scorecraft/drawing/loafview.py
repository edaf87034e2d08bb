"""A small picture of the loaf with its cuts: for the gallery, a notebook, the steps of a card."""

from collections.abc import Sequence

import numpy as np

from scorecraft.arrays import Line
from scorecraft.cuts import Layout
from scorecraft.drawing.paint import Paint, RadialGradient, Stop
from scorecraft.drawing.picture import Ink, Layer, Picture, Shape
from scorecraft.drawing.plan import cut_layer, cut_plans, on_paper, rim_plan, rim_plans

DOUGH = (Stop(0.0, "#fdf8ee"), Stop(0.55, "#f6ead4"), Stop(0.86, "#ead6b4"), Stop(1.0, "#d5b98d"))
"""Floured dough in soft light from the upper left, darker where the dome falls away."""
RIM_COLOR = "#b8986a"
CUT_COLOR = "#3b2a1b"
MARGIN = 0.04
"""White around the loaf, as a part of the picture's width."""
THINNEST_MM = 0.12


def loaf_picture(layout: Layout, *, width_mm: float) -> Picture:
    """Draw the loaf from above, `width_mm` wide with its white margin."""
    edge = MARGIN * width_mm
    rim = rim_plan(layout.loaf)
    (left, low), (right, high) = rim.min(axis=0).tolist(), rim.max(axis=0).tolist()
    scale = (width_mm - 2 * edge) / (right - left)
    height = (high - low) * scale + 2 * edge
    centre = (edge - left * scale, edge + high * scale)
    layer = loaf_layer(layout, centre, scale)
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
    plans: Sequence[Line] | None = None,
    under: Sequence[Layer] = (),
) -> Layer:
    """Draw the loaf at a scale with its crown at `centre` (paper mm), the deep cuts on top.

    `plans` are the cuts' plan lines (`cut_plans`), if they are known already; what lies `under` the
    cuts is drawn on the dough.
    """
    lines = cut_plans(layout) if plans is None else plans
    rims = tuple(on_paper(rim, centre, scale) for rim in rim_plans(layout.loaf))
    ink = Ink(_ink_width(0.8, scale), color=RIM_COLOR)
    dough = Shape(rims, closed=True, ink=ink, fill=_dough(rims[0]), css="dough")
    cuts = [on_paper(each, centre, scale) for each in lines]

    def ink_of(depth_mm: float, _: Line) -> Ink:
        return Ink(_ink_width(0.4 + 0.14 * depth_mm, scale), color=CUT_COLOR)

    return Layer("loaf", (dough, *under, cut_layer(layout, cuts, ink_of)))


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
