"""The stencil on paper: a plate at full size, to print, stick on and cut out."""

import numpy as np
import shapely

from scorecraft.cuts import Layout
from scorecraft.drawing.inks import MARK_INK
from scorecraft.drawing.paper.cautions import STENCIL
from scorecraft.drawing.paper.full_size import FullSize
from scorecraft.drawing.paper.telling import loaf_words
from scorecraft.drawing.picture import Ink, Item, Label, Layer, Shape
from scorecraft.drawing.plan import on_paper
from scorecraft.drawing.templates.cutter import unrepeated
from scorecraft.drawing.templates.telling import SIDE_DOWN, SIDE_UP, stencil_title, stencil_words
from scorecraft.drawing.text import shortened
from scorecraft.limits import PLATE_EDGE_MM
from scorecraft.plate.parts import MARK_MM
from scorecraft.plate.plate import Plate

CUT_INK = Ink(0.25)
FALLS_OUT = "#d2d2d2"
"""Grey of what is cut away."""
BORDER_MM = 2.0
NAME_MM = 4.2
NAME_ASIDE_MM = 14.0
"""So far to either side a plate must reach to bear its name."""


def stencil(plate: Plate, layout: Layout, layer: str = "") -> FullSize:
    """Draw a plate at full size, what is cut away in grey, with what to know about it.

    A `layer` names what is dusted through it.
    """
    left, low, right, high = plate.polygon.bounds
    centre = (BORDER_MM - left, BORDER_MM + high)
    exterior = on_paper(unrepeated(plate.polygon.exterior), centre)
    holes = tuple(on_paper(unrepeated(ring), centre) for ring in plate.polygon.interiors)
    rim = tuple(on_paper(each, centre) for each in plate.score_lines)
    items: tuple[Item, ...] = (
        Layer("edge", (Shape((exterior,), closed=True, ink=CUT_INK),)),
        Layer("slots", (Shape(holes, closed=True, ink=CUT_INK, fill=FALLS_OUT),)),
        Layer("rim", (Shape(rim, ink=MARK_INK),)),
        Layer("names", _names(plate, layout, centre, layer)),
        Layer("joints", _letters(plate, centre)),
    )
    return FullSize(
        items,
        exterior,
        right - left + 2 * BORDER_MM,
        high - low + 2 * BORDER_MM,
        stencil_title(layout.title, layer, plate.part),
        loaf_words(layout.loaf),
        stencil_words(plate),
        "stencil",
        centre,
        STENCIL,
    )


def _letters(plate: Plate, centre: tuple[float, float]) -> tuple[Label, ...]:
    """Write at every joint its letter, beside the line that is scored there."""
    found = []
    for joint in plate.joints:
        seam, end = on_paper(joint.line, centre)
        aside = np.array([seam[1] - end[1], end[0] - seam[0]]) * (0.75 * NAME_MM / MARK_MM)
        x, y = (seam + 0.6 * (end - seam) + aside).tolist()
        found.append(Label(joint.letter, (x, y), NAME_MM, "middle", "middle", bold=True))
    return tuple(found)


def _names(
    plate: Plate, layout: Layout, centre: tuple[float, float], layer: str
) -> tuple[Label, ...]:
    """Write on the border what the plate is: 12 at the notch, its name and layer opposite."""
    rim = layout.loaf.length_mm / 2
    half = PLATE_EDGE_MM / 2
    places = np.array([[0.0, rim + 3.0], [0.0, -rim - half]])
    hull = shapely.convex_hull(plate.polygon)
    there = [
        bool(shapely.contains_xy(hull, [x - aside, x, x + aside], y).all())
        for (x, y), aside in zip(places.tolist(), (2.5, NAME_ASIDE_MM), strict=True)
    ]
    twelve, name = on_paper(places, centre).tolist()
    told = f"{layout.title}, {layer}" if layer else layout.title
    title = shortened(told, 0.45 * layout.loaf.width_mm, NAME_MM, bold=True)
    side = SIDE_DOWN if plate.mirrored else SIDE_UP
    labels = (
        Label("12", tuple(twelve), 3.6, anchor="middle", level="middle", bold=True),
        Label(title, (name[0], name[1] - 2.4), NAME_MM, "middle", "middle", bold=True),
        Label(side, (name[0], name[1] + 2.6), 2.8, "middle", "middle"),
    )
    return (labels if there[1] else labels[:1])[0 if there[0] else 1 :]
